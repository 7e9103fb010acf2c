package platecall.intake;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Trouble;

/** A day that can't be used, with all that is wrong about it. */
@SuppressWarnings("serial")
public final class BadDay extends RuntimeException {

    private static final int MOST_PRINTED = 100;

    private final transient Whereabouts whereabouts;
    private final transient List<Trouble> troubles;
    private final int count;
    private final transient Optional<MendedDay> mended;
    private final boolean moreLater;

    private BadDay(
            Whereabouts whereabouts, List<Trouble> troubles, int count, Optional<MendedDay> mended, boolean moreLater) {
        this.moreLater = moreLater;
        this.whereabouts = whereabouts;
        this.troubles = List.copyOf(troubles);
        this.count = count;
        this.mended = mended;
    }

    BadDay(Whereabouts whereabouts, Troubles troubles) {
        this(whereabouts, troubles.list(), troubles.count(), Optional.empty(), false);
        initCause(troubles.cause());
    }

    /** A day that could be read but can't work, as its checks say. */
    public BadDay(DayFile day, List<Trouble> troubles) {
        this(day.whereabouts(), troubles, troubles.size(), Optional.empty(), false);
    }

    /** Something else than a day's content is wrong: a file that is missing or can't be written. */
    static BadDay file(String file, String what, String wayOut) {
        return new BadDay(
                Whereabouts.of(file), List.of(new Trouble("", -1, "", "", what, wayOut)), 1, Optional.empty(), false);
    }

    /** The same with a day in which what can't be read is mended. */
    BadDay mended(Optional<MendedDay> day) {
        BadDay bad = new BadDay(whereabouts, troubles, count, day, moreLater);
        bad.initCause(getCause());
        return bad;
    }

    /**
     * The same with what else is wrong, as far as it can be told although not all can be read; the report says that more will be
     * checked, unless there is no day at all.
     *
     * @param names tells what is wrong with a day's names; what else it says must not depend on other cells
     */
    public BadDay with(Function<Day, List<Trouble>> names) {
        List<Trouble> more = mended.map(day ->
                        names.apply(day.day()).stream().filter(day::vouchesFor).toList())
                .orElse(List.of());
        List<String> sheets = DaySheets.ALL.stream().map(Sheet::name).toList();
        List<Trouble> all = Stream.concat(troubles.stream(), more.stream())
                .sorted(Comparator.comparingInt((Trouble trouble) -> sheets.indexOf(trouble.sheet()))
                        .thenComparingInt(Trouble::row))
                .toList();
        boolean inSheets =
                troubles.stream().anyMatch(trouble -> !trouble.sheet().isEmpty());
        BadDay bad = new BadDay(
                whereabouts, more.isEmpty() ? troubles : all, count + more.size(), Optional.empty(), inSheets);
        bad.initCause(getCause());
        return bad;
    }

    /** The report. */
    @Override
    public String getMessage() {
        return report();
    }

    /** Name of the file or folder. */
    public String file() {
        return whereabouts.file();
    }

    /** All that is wrong, the first thousand at most. */
    public List<Trouble> troubles() {
        return troubles;
    }

    /**
     * One line for each trouble, lines separated by LF; beyond the first hundred only how many more there are. A last line says if
     * not all could be checked.
     */
    public String report() {
        Stream<String> lines = troubles.stream().limit(MOST_PRINTED).map(whereabouts::tell);
        Stream<String> rest =
                count > MOST_PRINTED ? Stream.of("and " + (count - MOST_PRINTED) + " more.") : Stream.of();
        Stream<String> later = moreLater ? Stream.of("More will be checked once these are right.") : Stream.of();
        return Stream.concat(Stream.concat(lines, rest), later).collect(Collectors.joining("\n"));
    }
}
