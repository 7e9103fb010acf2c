package platecall.intake;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Trouble;

/** A day that can't be used, with all that is wrong about it. */
@SuppressWarnings("serial")
public final class BadDay extends RuntimeException {

    private static final int MOST_PRINTED = 100;

    private final transient Whereabouts whereabouts;
    private final transient List<Trouble> troubles;
    private final int count;

    BadDay(Whereabouts whereabouts, List<Trouble> troubles, int count) {
        this.whereabouts = whereabouts;
        this.troubles = List.copyOf(troubles);
        this.count = count;
    }

    BadDay(Whereabouts whereabouts, Troubles troubles) {
        this(whereabouts, troubles.list(), troubles.count());
        initCause(troubles.cause());
    }

    /** A day that could be read but can't work, as its checks say. */
    public BadDay(DayFile day, List<Trouble> troubles) {
        this(day.whereabouts(), troubles, troubles.size());
    }

    /** Something else than a day's content is wrong: a file that is missing or can't be written. */
    static BadDay file(String file, String what, String wayOut) {
        return new BadDay(Whereabouts.of(file), List.of(new Trouble("", -1, "", "", what, wayOut)), 1);
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

    /** One line for each trouble, lines separated by LF; beyond the first hundred only how many more there are. */
    public String report() {
        Stream<String> lines = troubles.stream().limit(MOST_PRINTED).map(whereabouts::tell);
        Stream<String> rest =
                count > MOST_PRINTED ? Stream.of("and " + (count - MOST_PRINTED) + " more.") : Stream.of();
        return Stream.concat(lines, rest).collect(Collectors.joining("\n"));
    }
}
