package platecall.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Moment;

/** What a new plan of a day under way changes for those who have the old one in their hands. */
public final class Changes {

    private static final String NEW = "new";
    private static final String DROPPED = "dropped";

    private final Day day;
    private final Plan before;
    private final Plan after;
    private final List<Change> all;

    /**
     * A work that isn't done as it was to be.
     *
     * @param was it as it was to be done; empty if it is new
     * @param is it as it is done now; empty if it isn't any more
     * @param copies of these
     */
    private record Change(Optional<Work> was, Optional<Work> is, List<String> copies) {

        Work either() {
            return is.orElseGet(was::orElseThrow);
        }

        Moment first() {
            return Stream.concat(was.stream(), is.stream())
                    .map(work -> work.span().start())
                    .min(Moment::compareTo)
                    .orElseThrow();
        }

        int minutesLater() {
            return was.isEmpty() || is.isEmpty()
                    ? 0
                    : was.get().span().start().minutesUntil(is.get().span().start());
        }

        boolean otherHands() {
            return was.isPresent() && is.isPresent() && !who(was.get()).equals(who(is.get()));
        }

        boolean otherStations() {
            return was.isPresent() && is.isPresent() && !where(was.get()).equals(where(is.get()));
        }

        /** What changes, in words. */
        String words() {
            if (was.isEmpty() || is.isEmpty()) {
                return was.isEmpty() ? NEW : DROPPED;
            }
            List<String> words = new ArrayList<>();
            int later = minutesLater();
            if (later != 0) {
                words.add(Math.abs(later) + " min " + (later > 0 ? "later" : "earlier"));
            }
            if (otherHands()) {
                words.add("other hands");
            }
            if (otherStations()) {
                words.add("another station");
            }
            return String.join(", ", words);
        }
    }

    private Changes(Day day, Plan before, Plan after, List<Change> all) {
        this.day = day;
        this.before = before;
        this.after = after;
        this.all = all;
    }

    /**
     * Compares two plans.
     *
     * @param before what people have on paper and have not begun
     * @param after the new plan; what has begun in it isn't compared
     */
    public static Changes of(Day day, Plan before, Plan after) {
        Map<String, Work> old = new LinkedHashMap<>();
        before.work().forEach(work -> work.copies().forEach(copy -> old.put(key(copy, work), work)));
        Map<String, Work> now = new LinkedHashMap<>();
        after.work().stream()
                .filter(work -> !after.hasBegun(work.span().start()))
                .forEach(work -> work.copies().forEach(copy -> now.put(key(copy, work), work)));
        Map<List<Optional<Work>>, List<String>> changed = new LinkedHashMap<>();
        now.forEach((key, work) -> {
            Optional<Work> was = Optional.ofNullable(old.remove(key));
            note(changed, key, was, Optional.of(work));
        });
        old.forEach((key, work) -> note(changed, key, Optional.of(work), Optional.empty()));
        return new Changes(
                day,
                before,
                after,
                changed.entrySet().stream()
                        .map(change -> new Change(
                                change.getKey().get(0), change.getKey().get(1), change.getValue()))
                        .filter(change -> !change.words().isEmpty())
                        .sorted(Comparator.comparing(Change::first))
                        .toList());
    }

    private static void note(
            Map<List<Optional<Work>>, List<String>> changed, String key, Optional<Work> was, Optional<Work> is) {
        changed.computeIfAbsent(List.of(was, is), it -> new ArrayList<>()).add(key.substring(0, key.lastIndexOf('\t')));
    }

    private static String key(String copy, Work work) {
        return copy + "\t" + work.kind() + work.step();
    }

    private static String who(Work work) {
        return work.hands().stream().map(Hands::person).distinct().sorted().collect(Collectors.joining(", "));
    }

    private static String where(Work work) {
        return work.stations().stream()
                .map(StationHold::station)
                .distinct()
                .sorted()
                .collect(Collectors.joining(", "));
    }

    /** No other plan was there before. */
    public static Changes none(Day day, Plan plan) {
        return new Changes(day, plan, plan, List.of());
    }

    /** What those who do a work must know of its change: {@code was 12:31, Tilda}, or {@code new}; empty if it doesn't change. */
    Optional<String> note(Work work, Clock clock) {
        List<String> notes = all.stream()
                .filter(change -> change.is().equals(Optional.of(work)))
                .map(change -> change.was()
                        .map(was -> "was "
                                + clock.time(was.span().start(), work.span().start())
                                + (change.otherHands() && !who(was).isEmpty() ? ", " + who(was) : "")
                                + (change.otherStations() ? ", " + where(was) : ""))
                        .orElse(NEW))
                .distinct()
                .toList();
        return notes.isEmpty() ? Optional.empty() : Optional.of(Wording.plain(String.join("; ", notes)));
    }

    /** All changes in one line. */
    public String line() {
        if (all.isEmpty()) {
            return "Nothing changes.";
        }
        List<String> parts = new ArrayList<>();
        int most = all.stream()
                .mapToInt(change -> Math.abs(change.minutesLater()))
                .max()
                .orElse(0);
        count(parts, "at another time (by up to " + most + " min)", change -> change.minutesLater() != 0);
        count(parts, "by other hands", Change::otherHands);
        count(parts, "at another station", Change::otherStations);
        count(parts, "new", change -> change.was().isEmpty());
        count(parts, "dropped", change -> change.is().isEmpty());
        return "Works that change: " + String.join(", ", parts) + "; see changes.csv.";
    }

    private void count(List<String> parts, String what, Predicate<Change> which) {
        long count = all.stream().filter(which).count();
        if (count > 0) {
            parts.add(count + " " + what);
        }
    }

    /** A row for each work that changes, the first to be noticed first. */
    public byte[] csv() {
        Wording old = new Wording(day, before);
        Wording now = new Wording(day, after);
        Rows rows = new Rows(
                "was",
                "is",
                "change",
                "what",
                "dish",
                "copy",
                "setup",
                "who before",
                "who",
                "station before",
                "station");
        for (Change change : all) {
            Wording wording = change.is().isPresent() ? now : old;
            rows.add(
                    change.was()
                            .map(work -> old.clock.stamp(work.span().start()))
                            .orElse(""),
                    change.is()
                            .map(work -> now.clock.stamp(work.span().start()))
                            .orElse(""),
                    change.words(),
                    change.either().step(),
                    wording.dish(change.either().dish()),
                    wording.copies.names(change.copies()),
                    wording.setups(change.either()),
                    change.was().map(Changes::who).orElse(""),
                    change.is().map(Changes::who).orElse(""),
                    change.was().map(Changes::where).orElse(""),
                    change.is().map(Changes::where).orElse(""));
        }
        return rows.bytes();
    }
}
