package platecall.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** What a new plan of a day under way changes for those who have the old one in their hands. */
public final class Changes {

    /** What is to be done with food in a store that is off. */
    public static final String HOW_WARM =
            "Take its temperature at once: what is cold or hot enough by your local code goes into"
                    + " a store that is on, nobody eats what isn't: note it as lost.";

    private static final String NEW = "new";
    private static final String DROPPED = "dropped";

    private final Day day;
    private final Plan before;
    private final Plan after;
    private final List<Change> all;
    /** Works under way that end at another time or by other hands, and meal breaks that begin at another time. */
    private final List<Moved> moved;

    /** What everybody must know beside it, one sentence each. */
    private final List<String> news;

    /**
     * Something that goes on or is to come at another time, or goes on by other hands.
     *
     * @param work what is under way, empty for a meal break
     * @param person whose break, empty for a work
     * @param was when it was to end, or the break to begin; empty if the break is new
     * @param is when it does
     * @param whoBefore by whose hands a work was to go on that it doesn't go on by; empty if there is nobody
     */
    private record Moved(Optional<Work> work, String person, Optional<Moment> was, Moment is, String whoBefore) {

        boolean otherHands() {
            return !whoBefore.isEmpty();
        }

        int minutesLater() {
            return was.map(then -> then.minutesUntil(is)).orElse(0);
        }

        String words() {
            if (was.isEmpty()) {
                return NEW;
            }
            int later = minutesLater();
            String time = later == 0
                    ? ""
                    : (work.isPresent() ? "ends " : "") + Math.abs(later) + " min " + (later > 0 ? "later" : "earlier");
            return time + (later != 0 && otherHands() ? ", " : "") + (otherHands() ? "other hands" : "");
        }
    }

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

    private Changes(Day day, Plan before, Plan after, List<Change> all, List<Moved> moved, List<String> news) {
        this.day = day;
        this.before = before;
        this.after = after;
        this.all = all;
        this.moved = moved;
        this.news = news;
    }

    /**
     * The same, with what everybody must know of the food that has begun.
     *
     * @param gone copies, by the id that they had before, that can't be used any more
     * @param renamed for each copy that takes another's place the id of that one
     * @param stopped works under way that are of no use any more, with the copies that they had before
     * @param warming for each fridge, freezer and hot hold that is or was closed the copies in it, by the id that they had before
     * @param unwanted for each storage the copies in it that nobody asks for any more, by the same id
     */
    public Changes telling(
            Collection<String> gone,
            Map<String, String> renamed,
            List<Work> stopped,
            Map<String, ? extends Collection<String>> warming,
            Map<String, ? extends Collection<String>> unwanted) {
        Wording wording = new Wording(day, before);
        List<String> told = new ArrayList<>();
        warming.forEach((store, copies) -> byNeed(wording, copies)
                .forEach((food, ids) -> told.add("In " + store + ", which is or was closed: " + food + ", "
                        + wording.copies.names(ids) + ". " + HOW_WARM)));
        unwanted.forEach((store, copies) -> byNeed(wording, copies)
                .forEach((food, ids) -> told.add("Not wanted any more: " + food + ", " + wording.copies.names(ids)
                        + (ids.stream().anyMatch(id -> isRaw(id, store)) ? ", raw" : "") + ", in " + store
                        + ": take " + (ids.size() > 1 ? "them" : "it") + " out.")));
        Set<String> still =
                after.work().stream().flatMap(work -> work.copies().stream()).collect(Collectors.toSet());
        byNeed(wording, gone)
                .forEach((food, ids) -> told.add("Not to be used any more: " + food + ", " + wording.copies.names(ids)
                        + (ids.stream().anyMatch(still::contains)
                                ? ", as numbered until now; others get these numbers."
                                : ".")));
        byNeed(wording, renamed.keySet())
                .forEach((food, ids) -> told.add("Numbered anew: " + food + ", "
                        + ids.stream()
                                .map(id -> wording.copies.name(wording.copies.copy(id)) + " is now "
                                        + wording.copies.copy(renamed.get(id)).number())
                                .collect(Collectors.joining(", "))
                        + "."));
        after.work().stream()
                // what is carried is on its way, and what serves nobody is to be stopped
                .filter(work -> work.kind() == Work.Kind.STEP && !work.copies().isEmpty())
                .flatMap(work -> alone(wording, work).stream())
                .forEach(told::add);
        stopped.stream()
                .map(work -> "To be stopped: " + wording.dish(work.dish()) + ", " + work.step() + " of "
                        + wording.copies.names(work.copies(), true)
                        + (where(work).isEmpty() ? "" : " in " + where(work))
                        + (who(work).isEmpty() ? "" : ", by " + who(work)) + ".")
                .distinct()
                .forEach(told::add);
        return new Changes(
                day,
                before,
                after,
                all,
                moved,
                told.stream().map(Wording::plain).toList());
    }

    /** Whether a copy is raw while it waits in a storage for what has yet to begin, as far as the sheets still know its recipe. */
    private boolean isRaw(String copy, String store) {
        return before.work().stream()
                .filter(next -> next.copies().contains(copy))
                .flatMap(next -> day.step(next.dish(), next.step()).stream())
                .flatMap(next -> next.predecessors().stream().flatMap(step -> day.step(next.dish(), step).stream()))
                .anyMatch(step -> step.raw() && step.waitsIn().equals(Optional.of(store)));
    }

    /** What is told of a work under way whose person isn't there any more, and that nobody could be given. */
    private List<String> alone(Wording wording, Work work) {
        Moment now = after.asOf().orElse(work.span().start());
        return work.hands().stream()
                .filter(hands ->
                        hands.span().end().isAfter(now) && work.span().start().isBefore(now))
                .map(hands -> new Span(
                        Moment.later(now, hands.span().start()), hands.span().end()))
                .distinct()
                .filter(rest -> work.hands().stream()
                        .filter(hands -> hands.span().overlaps(rest))
                        .anyMatch(hands -> day.people().stream()
                                .filter(person -> person.id().equals(hands.person()))
                                .flatMap(person -> day.hoursOf(person).stream())
                                .noneMatch(on -> on.contains(rest))))
                .map(rest -> "Nobody is there for " + wording.dish(work.dish()) + ", " + work.step() + " of "
                        + new Copies(after).names(work.copies()) + ", from " + wording.clock.time(rest.start()) + " to "
                        + wording.clock.time(rest.end()) + ": find somebody.")
                .toList();
    }

    /** Copies by the food that they are, in words. */
    private static Map<String, List<String>> byNeed(Wording wording, Collection<String> ids) {
        return ids.stream()
                .collect(Collectors.groupingBy(
                        id -> wording.dish(wording.copies.copy(id).dish()) + " for setup "
                                + wording.copies.copy(id).setup(),
                        LinkedHashMap::new,
                        Collectors.toList()));
    }

    /** What everybody must know beside the changes, one sentence each. */
    List<String> news() {
        return news;
    }

    /**
     * Compares two plans.
     *
     * @param before what people have on paper and have not begun
     * @param after the new plan; of what has begun in it only the ends are compared
     * @param inHand the plan before, begun or not
     * @param renamed for each copy that takes another's place the id of that one
     */
    public static Changes of(Day day, Plan before, Plan after, Plan inHand, Map<String, String> renamed) {
        Map<CopyStep, Work> old = new LinkedHashMap<>();
        before.work().forEach(work -> work.copies().forEach(copy -> old.put(work.with(copy), work)));
        Map<CopyStep, Work> now = new LinkedHashMap<>();
        after.work().stream()
                .filter(work -> !after.hasBegun(work.span().start()))
                .forEach(work -> work.copies().forEach(copy -> now.put(work.with(copy), work)));
        Map<String, String> foodIn = new HashMap<>();
        renamed.forEach((food, place) -> foodIn.put(place, food));
        Map<CopyStep, Work> was = new HashMap<>();
        // first what is done when it was to be, for the copy that has the number now or for what it is made of
        for (boolean sameTime : new boolean[] {true, false}) {
            now.forEach((key, work) -> {
                for (String id : List.of(key.copy(), foodIn.getOrDefault(key.copy(), key.copy()))) {
                    Work one = old.get(work.with(id));
                    if (one != null
                            && !was.containsKey(key)
                            && (!sameTime
                                    || one.span().start().equals(work.span().start()))) {
                        was.put(key, one);
                        old.remove(work.with(id));
                    }
                }
            });
        }
        Map<List<Optional<Work>>, List<String>> changed = new LinkedHashMap<>();
        now.forEach((key, work) -> note(changed, key, Optional.ofNullable(was.get(key)), Optional.of(work)));
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
                        .toList(),
                moved(inHand, after, foodIn),
                List.of());
    }

    /** @param foodIn for each copy whose place another has taken the id that this one had */
    private static List<Moved> moved(Plan before, Plan after, Map<String, String> foodIn) {
        Map<CopyStep, Work> old = new LinkedHashMap<>();
        before.work().forEach(work -> work.copies().forEach(copy -> old.put(work.with(copy), work)));
        List<Moved> moved = new ArrayList<>();
        for (Work work : after.work()) {
            boolean goesOn = after.hasBegun(work.span().start())
                    && !after.hasBegun(work.span().end());
            work.copies().stream()
                    .map(copy -> old.get(work.with(foodIn.getOrDefault(copy, copy))))
                    .filter(was -> goesOn
                            && was != null
                            && (!was.span().end().equals(work.span().end())
                                    || !relieved(after, was, work).isEmpty()))
                    .findFirst()
                    .ifPresent(was -> moved.add(new Moved(
                            Optional.of(work),
                            "",
                            Optional.of(was.span().end()),
                            work.span().end(),
                            relieved(after, was, work))));
        }
        Map<String, List<Moment>> breaks = breaks(before);
        breaks(after).forEach((person, times) -> {
            List<Moment> were = breaks.getOrDefault(person, List.of());
            for (int i = 0; i < times.size(); i++) {
                Optional<Moment> was = were.stream().skip(i).findFirst();
                if (!was.equals(Optional.of(times.get(i))) && !after.hasBegun(times.get(i))) {
                    moved.add(new Moved(Optional.empty(), person, was, times.get(i), ""));
                }
            }
        });
        moved.sort(Comparator.comparing(Moved::is));
        return moved;
    }

    private static Map<String, List<Moment>> breaks(Plan plan) {
        return plan.breaks().stream()
                .collect(Collectors.groupingBy(
                        Plan.Break::person,
                        TreeMap::new,
                        Collectors.mapping(
                                meal -> meal.span().start(),
                                Collectors.collectingAndThen(
                                        Collectors.toList(),
                                        times -> times.stream().sorted().toList()))));
    }

    private static void note(
            Map<List<Optional<Work>>, List<String>> changed, CopyStep key, Optional<Work> was, Optional<Work> is) {
        changed.computeIfAbsent(List.of(was, is), it -> new ArrayList<>()).add(key.copy());
    }

    private static String who(Work work) {
        return work.hands().stream().map(Hands::person).distinct().sorted().collect(Collectors.joining(", "));
    }

    /** Who was to have hands on a work after now and hasn't any more. */
    private static String relieved(Plan after, Work was, Work is) {
        return stillOn(after, was)
                .filter(person -> stillOn(after, is).noneMatch(person::equals))
                .collect(Collectors.joining(", "));
    }

    private static Stream<String> stillOn(Plan after, Work work) {
        return work.hands().stream()
                .filter(hands ->
                        after.asOf().filter(hands.span().end()::isAfter).isPresent())
                .map(Hands::person)
                .distinct()
                .sorted();
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
        return new Changes(day, plan, plan, List.of(), List.of(), List.of());
    }

    /** What those who do a work must know of its change: {@code was 12:31, Tilda}, or {@code new}; empty if it doesn't change. */
    Optional<String> note(Work work, Clock clock) {
        Map<String, List<String>> copiesOf = new LinkedHashMap<>();
        all.stream()
                .filter(change -> change.is().equals(Optional.of(work)))
                .forEach(change -> copiesOf.computeIfAbsent(noteOf(change, work, clock), note -> new ArrayList<>())
                        .addAll(change.copies()));
        boolean ofAll =
                copiesOf.size() == 1 && copiesOf.values().iterator().next().containsAll(work.copies());
        Copies names = new Copies(after);
        boolean severalSetups = names.setups(work.copies()).size() > 1;
        String note = copiesOf.entrySet().stream()
                .map(entry -> (ofAll ? "" : names.names(entry.getValue(), severalSetups) + " ") + entry.getKey())
                .collect(Collectors.joining("; "));
        return Optional.of(Wording.plain(note)).filter(words -> !words.isEmpty());
    }

    private static String noteOf(Change change, Work is, Clock clock) {
        return change.was()
                .map(was -> "was "
                        + clock.time(was.span().start(), is.span().start())
                        + (change.otherHands() && !who(was).isEmpty() ? ", " + who(was) : "")
                        + (change.otherStations() ? ", " + where(was) : ""))
                .orElse(NEW);
    }

    /** What must be known of the end of a work, from {@code at} on: {@code was 13:03}, {@code instead of Mila}; empty if that doesn't change. */
    Optional<String> noteOfEnd(Work work, Moment at, Clock clock) {
        Optional<String> others = moved.stream()
                .filter(one -> one.work().equals(Optional.of(work)) && one.otherHands())
                .findFirst()
                .map(one -> "instead of " + one.whoBefore());
        Stream<Moment> ends = Stream.concat(
                moved.stream()
                        .filter(one -> one.work().equals(Optional.of(work)))
                        .flatMap(one -> one.was().stream()),
                all.stream()
                        .filter(change -> change.is().equals(Optional.of(work)))
                        .flatMap(change -> change.was().stream())
                        .map(was -> was.span().end()));
        // who takes over when others go has to know when it ends; who comes back for the end, when that is
        boolean takesOver = after.hasBegun(work.span().start())
                && work.hands().stream().anyMatch(hands -> hands.span().end().equals(at));
        int ahead = takesOver ? 0 : at.minutesUntil(work.span().end());
        Moment is = work.span().end().plus(-ahead);
        Optional<String> time = ends.map(was -> was.plus(-ahead))
                .filter(was -> !was.equals(is))
                .findFirst()
                .map(was -> (takesOver ? "ends " + clock.time(is, at) + ", " : "") + "was " + clock.time(was, at));
        String note = Stream.concat(time.stream(), others.stream()).collect(Collectors.joining(", "));
        return Optional.of(Wording.plain(note)).filter(words -> !words.isEmpty());
    }

    /** What must be known of setting an oven: {@code was 10:47}; empty if that doesn't change, or if it wasn't to be set so. */
    Optional<String> noteOfOven(OvenChange change, Clock clock) {
        List<OvenChange> were = sameSettings(before, change);
        int number = sameSettings(after, change).indexOf(change);
        return Optional.of(number)
                .filter(n -> n >= 0 && n < were.size())
                .map(n -> were.get(n).at())
                .filter(was -> !was.equals(change.at()))
                .map(was -> "was " + clock.time(was, change.at())
                        + (after.hasBegun(was) ? ", so it may be on already" : ""));
    }

    /** When an oven is set to the same temperature, of what is still to come. */
    private List<OvenChange> sameSettings(Plan plan, OvenChange change) {
        return day.stations().stream()
                .filter(station -> station.id().equals(change.oven()))
                .flatMap(station -> OvenChange.of(day, station, plan).stream())
                .filter(other -> other.celsius() == change.celsius() && !after.hasBegun(other.by()))
                .toList();
    }

    /** What must be known of a meal break: {@code was 13:05}; empty if it doesn't change. */
    Optional<String> noteOfBreak(Plan.Break meal, Clock clock) {
        return moved.stream()
                .filter(one -> one.person().equals(meal.person())
                        && one.is().equals(meal.span().start()))
                .findFirst()
                .map(one ->
                        one.was().map(was -> "was " + clock.time(was, one.is())).orElse(NEW));
    }

    /** All changes in one line. */
    public String line() {
        if (all.isEmpty() && moved.isEmpty()) {
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
        long breaks = moved.stream()
                .filter(one -> one.work().isEmpty() && one.was().isPresent())
                .count();
        long newBreaks = moved.stream().filter(one -> one.was().isEmpty()).count();
        long otherEnds = moved.stream()
                .filter(one -> one.work().isPresent() && one.minutesLater() != 0)
                .count();
        if (otherEnds > 0) {
            parts.add(otherEnds + " under way to another time");
        }
        long handedOver = moved.stream().filter(Moved::otherHands).count();
        if (handedOver > 0) {
            parts.add(handedOver + " under way by other hands");
        }
        if (breaks > 0) {
            parts.add(ReadinessPage.count((int) breaks, "meal break moves", "meal breaks move"));
        }
        if (newBreaks > 0) {
            parts.add(ReadinessPage.count((int) newBreaks, "more meal break", "more meal breaks"));
        }
        return "Jobs that change: " + String.join(", ", parts) + "; see changes.csv.";
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
                    String.join(", ", wording.copies.setups(change.copies())),
                    change.was().map(Changes::who).orElse(""),
                    change.is().map(Changes::who).orElse(""),
                    change.was().map(Changes::where).orElse(""),
                    change.is().map(Changes::where).orElse(""));
        }
        for (Moved one : moved) {
            Optional<Work> work = one.work();
            String who = one.otherHands()
                    ? stillOn(after, work.orElseThrow()).collect(Collectors.joining(", "))
                    : work.map(Changes::who).orElse(one.person());
            String where = work.map(Changes::where).orElse("");
            rows.add(
                    one.was().map(old.clock::stamp).orElse(""),
                    now.clock.stamp(one.is()),
                    one.words(),
                    work.map(it -> it.step() + ", end").orElse("meal break"),
                    work.map(it -> now.dish(it.dish())).orElse(""),
                    work.map(it -> now.copies.names(it.copies())).orElse(""),
                    work.map(now::setups).orElse(""),
                    one.otherHands() ? one.whoBefore() : who,
                    who,
                    where,
                    where);
        }
        return rows.bytes();
    }
}
