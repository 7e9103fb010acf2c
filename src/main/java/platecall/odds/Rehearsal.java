package platecall.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Span;

/**
 * A plan carried out again and again, each time with other minutes for its steps. Everybody keeps the plan's order, on every
 * station and with every pair of hands; nothing begins before its planned minute, and whatever is held up begins as soon as it
 * can. Calls stay where they are. Storage always has room, circuits bear all, stations stay open and nobody goes home or away:
 * only work, silence and an oven's temperature hold up work.
 */
final class Rehearsal {

    private static final int NONE = -1;

    /** A work that seems to have taken so many times its most minutes was begun later. */
    private static final int FAR_TOO_LONG = 2;

    /** No minute is known. */
    static final long UNKNOWN = Long.MIN_VALUE;

    /**
     * What is known of a work or break: when it began and ended or will end, by when it must have ended, no minute before which it
     * begins, and whether it can't have begun later than it was to though it ended far later.
     */
    static final class Fact {
        long began = UNKNOWN;
        long ended = UNKNOWN;
        long endedBy = Long.MAX_VALUE;
        long notBefore = UNKNOWN;
        boolean notPutOff;
    }

    /** A work begins, or people come back for its last part; in the order of the planned minutes. */
    private record Event(int node, boolean end, long minute) {}

    /** A work that must have ended before, and the least and most minutes from then on. */
    private record Before(int node, int least, int most) {}

    /** Hands of a person on a work: until so many minutes after its start or end, or from so many before its end. */
    private record Part(int person, boolean untilEnd, int from, int to) {}

    private record Use(int station, int units) {}

    /** The temperature of an oven, in which of its openings, from when on it has it and until when it is needed, each with what made it so. */
    private static final class Heat {
        private int celsius;
        private int opening;
        private long from;
        private int fromBy;
        private long end;
        private int endBy;

        void clear() {
            opening = NONE;
            from = Long.MIN_VALUE;
            end = Long.MIN_VALUE;
            endBy = NONE;
        }
    }

    /** Where each work, then each break, begins in the plan, its minutes there, and those that its step likely takes. */
    private final long[] planned;

    private final int[] plannedMinutes;
    private final int[] low;
    private final int[] likely;
    private final int[] high;
    /** Minutes for which a work had been under way when the plan was made. */
    private final int[] begunFor;

    private final StepMinutes[] minutes;
    private final SplittableRandom[] dice;
    private final Before[][] before;
    private final Part[][] first;
    private final Part[][] last;
    private final Use[][] uses;
    private final int[] oven;
    private final int[] celsius;
    /** In which of its oven's openings a work begins: it is cold before each, and the plan has the time to heat it. */
    private final int[] opening;

    private final boolean[] noisy;
    /** What is known of each work and break of a day under way; null in a rehearsal. */
    private Fact[] facts;

    private long knownUntil;
    private boolean[] carried;

    private final Event[] events;
    private final long[][] quiet;
    private final Station[] stations;
    private final Map<CopyStep, Integer> nodeOf = new HashMap<>();
    private final List<Work> works;

    /** Where each work begins and ends in the last rehearsal, as minutes since 1970. */
    final long[] start;

    final long[] end;
    /** Minutes by which a work took longer than likely. */
    private final int[] over;

    private final boolean[] kept;
    /** Whether a work has given its stations back. */
    private final boolean[] left;
    /** What held up each start and each end: a work, itself or, written {@code -2 - work}, only its start; or {@link #NONE}. */
    private final int[] startBy;

    private final int[] endBy;

    /** When what is being looked at begins, and what held it up last, if anything. */
    private long beginsAt;

    private int heldUpBy;

    private final long[] free;
    private final int[] freeBy;
    private final Units[] units;
    /** What the ovens among the stations are at. */
    private final Heat[] heats;

    Rehearsal(Day day, Plan plan, long seed) {
        works = plan.work();
        int count = works.size() + plan.breaks().size();
        planned = new long[count];
        plannedMinutes = new int[count];
        low = new int[count];
        likely = new int[count];
        high = new int[count];
        begunFor = new int[count];
        minutes = new StepMinutes[count];
        dice = new SplittableRandom[count];
        before = new Before[count][];
        first = new Part[count][];
        last = new Part[count][];
        uses = new Use[count][];
        oven = new int[count];
        celsius = new int[count];
        opening = new int[count];
        noisy = new boolean[count];
        start = new long[count];
        end = new long[count];
        over = new int[count];
        kept = new boolean[count];
        left = new boolean[count];
        startBy = new int[count];
        endBy = new int[count];
        stations = day.stations().toArray(Station[]::new);
        quiet = day.quietSpans().stream()
                .map(span -> new long[] {span.start().epochMinute(), span.end().epochMinute()})
                .toArray(long[][]::new);
        for (int i = 0; i < works.size(); i++) {
            for (String copy : works.get(i).copies()) {
                nodeOf.putIfAbsent(works.get(i).with(copy), i);
            }
        }
        Map<String, Integer> people = new HashMap<>();
        List<Event> order = new ArrayList<>();
        for (int i = 0; i < works.size(); i++) {
            Work work = works.get(i);
            prepare(i, work.span(), work.hands(), people, order);
            prepareWork(day, plan, i, work, seed);
        }
        for (int n = 0; n < plan.breaks().size(); n++) {
            Break pause = plan.breaks().get(n);
            int i = works.size() + n;
            prepare(i, pause.span(), List.of(new Hands(pause.person(), pause.span())), people, order);
            before[i] = new Before[0];
            uses[i] = new Use[0];
            oven[i] = NONE;
        }
        order.sort(Comparator.comparingLong(Event::minute).thenComparing(event -> !event.end()));
        events = order.toArray(Event[]::new);
        free = new long[people.size()];
        freeBy = new int[people.size()];
        units = new Units[stations.length];
        int[] mostUsed = mostUsed();
        Arrays.setAll(units, s -> new Units(Math.max(stations[s].capacity(), mostUsed[s])));
        heats = Stream.generate(Heat::new).limit(stations.length).toArray(Heat[]::new);
    }

    /** Most units of each station that the plan uses at a time: more than there are if the day has changed since. */
    private int[] mostUsed() {
        int[] most = new int[stations.length];
        for (int i = 0; i < works.size(); i++) {
            for (Use use : uses[i]) {
                int at = 0;
                for (int j = 0; j < works.size(); j++) {
                    boolean then = planned[j] <= planned[i] && planned[i] < planned[j] + plannedMinutes[j];
                    for (Use other : uses[j]) {
                        at += then && other.station() == use.station() ? other.units() : 0;
                    }
                }
                most[use.station()] = Math.max(most[use.station()], at);
            }
        }
        return most;
    }

    private void prepare(int i, Span span, List<Hands> hands, Map<String, Integer> people, List<Event> order) {
        planned[i] = span.start().epochMinute();
        plannedMinutes[i] = span.minutes();
        List<Part> atFirst = new ArrayList<>();
        List<Part> atLast = new ArrayList<>();
        for (Hands hand : hands) {
            int person = people.computeIfAbsent(hand.person(), name -> people.size());
            int from = span.start().minutesUntil(hand.span().start());
            boolean toTheEnd = !hand.span().end().isBefore(span.end());
            if (from <= 0) {
                atFirst.add(new Part(
                        person,
                        toTheEnd,
                        0,
                        toTheEnd
                                ? span.end().minutesUntil(hand.span().end())
                                : span.start().minutesUntil(hand.span().end())));
            } else {
                atLast.add(new Part(
                        person,
                        true,
                        hand.span().start().minutesUntil(span.end()),
                        span.end().minutesUntil(hand.span().end())));
            }
        }
        first[i] = atFirst.toArray(Part[]::new);
        last[i] = atLast.toArray(Part[]::new);
        order.add(new Event(i, false, planned[i]));
        if (!atLast.isEmpty()) {
            int longest = atLast.stream().mapToInt(Part::from).max().orElse(0);
            order.add(new Event(i, true, span.end().epochMinute() - Math.max(0, longest)));
        }
    }

    private void prepareWork(Day day, Plan plan, int i, Work work, long seed) {
        Optional<Step> step = day.step(work.dish(), work.step()).filter(it -> work.kind() == Work.Kind.STEP);
        low[i] = step.map(Step::minutesLow).orElse(0);
        high[i] = step.map(Step::minutesHigh).orElse(0);
        likely[i] = step.map(Step::minutesLikely).orElse(0);
        begunFor[i] = plan.hasBegun(work.span().start())
                ? work.span().start().minutesUntil(plan.asOf().orElseThrow())
                : 0;
        boolean ended = begunFor[i] >= work.span().minutes();
        if (step.isPresent() && step.get().minutesLow() < step.get().minutesHigh() && !ended) {
            minutes[i] = StepMinutes.of(step.get());
            // from the copy's name, so that other plans of the day are tried with the same luck
            long name = (work.dish() + " " + work.step() + " " + String.join(";", work.copies())).hashCode();
            dice[i] = new SplittableRandom(new SplittableRandom(seed).nextLong() + name);
        }
        before[i] = befores(day, work, step);
        uses[i] = work.stations().stream()
                .map(hold -> new Use(indexOf(hold), hold.units()))
                .filter(use -> use.station() >= 0)
                .toArray(Use[]::new);
        oven[i] = NONE;
        for (Use use : uses[i]) {
            if (work.ovenCelsius().isPresent() && stations[use.station()].kind() == Station.Kind.OVEN) {
                oven[i] = use.station();
                celsius[i] = work.ovenCelsius().get();
                opening[i] = (int) day.hoursOf(stations[use.station()]).stream()
                        .filter(open -> !open.end().isAfter(work.span().start()))
                        .count();
            }
        }
        List<String> at = work.stations().stream().map(StationHold::station).toList();
        noisy[i] = step.map(it -> day.disturbsSet(it, at)).orElse(false);
    }

    private int indexOf(StationHold hold) {
        for (int s = 0; s < stations.length; s++) {
            if (stations[s].id().equals(hold.station())) {
                return s;
            }
        }
        return NONE;
    }

    private Before[] befores(Day day, Work work, Optional<Step> step) {
        List<Before> all = new ArrayList<>();
        for (String copy : work.copies()) {
            if (step.isPresent()) {
                for (String earlier : step.get().predecessors()) {
                    boolean timed = step.get().after().contains(earlier);
                    add(
                            all,
                            work,
                            work(copy, earlier),
                            timed ? step.get().leastWait() : 0,
                            timed ? step.get().mostWait().orElse(Integer.MAX_VALUE) : Integer.MAX_VALUE);
                }
            } else {
                day.stepsOf(work.dish()).forEach(it -> add(all, work, work(copy, it.id()), 0, Integer.MAX_VALUE));
            }
        }
        return all.stream().distinct().toArray(Before[]::new);
    }

    /**
     * A plan that has them in another order, or too close, is not sound, or is older than the day; then what begins later can't hold
     * up what begins before, and a wait is as short as the plan has it.
     */
    private void add(List<Before> all, Work work, int node, int least, int most) {
        int waits = node < 0
                ? -1
                : works.get(node).span().end().minutesUntil(work.span().start());
        if (waits >= 0) {
            all.add(new Before(node, Math.min(least, waits), most));
        }
    }

    /** The number of a copy's work at a step, or -1. */
    int work(String copy, String step) {
        return nodeOf.getOrDefault(CopyStep.of(copy, step), NONE);
    }

    /** The works that come before a work in its copies' recipe; of a meal break those that had ended because it began. */
    int[] before(int i) {
        return Arrays.stream(before[i]).mapToInt(Before::node).toArray();
    }

    /** The number of a copy's way to camera, or -1. */
    int carry(String copy) {
        return nodeOf.getOrDefault(CopyStep.toCamera(copy), NONE);
    }

    /**
     * Carries the plan out with likely minutes and with what is known: it is taken as it is, and what must have ended before has
     * ended before.
     *
     * @param known for each work, then each break
     * @param until the minute until which it is known
     * @param only whether each work or break is carried out; null: all
     */
    void carryOut(Fact[] known, long until, boolean[] only) {
        facts = known;
        knownUntil = until;
        carried = only;
        do {
            for (int i = 0; i < works.size(); i++) {
                long began = facts[i].began != UNKNOWN ? facts[i].began : facts[i].ended;
                if (began != UNKNOWN) {
                    endedBefore(i, began);
                }
            }
            next(inKnownOrder());
        } while (holdsCutShort() | mealsCutShort());
        facts = null;
        carried = null;
    }

    /**
     * The events in the order of what is known: nobody waits for a work that was to begin and has not, or was to end and did later,
     * and what comes after it in its recipe comes later, too.
     */
    private Event[] inKnownOrder() {
        long[] at = new long[facts.length];
        Event[] order = new Event[events.length];
        for (int e = 0; e < events.length; e++) {
            int i = events[e].node();
            if (!events[e].end()) {
                Fact fact = facts[i];
                at[i] = fact.began != UNKNOWN
                        ? fact.began
                        : fact.ended != UNKNOWN
                                ? isPutOff(i, fact.ended - planned[i]) || fact.ended <= planned[i]
                                        ? fact.ended - plannedMinutes[i]
                                        : planned[i]
                                : Math.max(planned[i], fact.notBefore);
                for (Before earlier : before[i]) {
                    at[i] = Math.max(at[i], at[earlier.node()]);
                }
            }
            boolean told = events[e].end() && facts[i].ended != UNKNOWN;
            long moved = told ? facts[i].ended - planned[i] - plannedMinutes[i] : at[i] - planned[i];
            order[e] = new Event(i, events[e].end(), events[e].minute() + moved);
        }
        Arrays.sort(order, Comparator.comparingLong(Event::minute));
        return order;
    }

    /** What comes before a work in its recipe has ended by the minute at which it began. */
    private void endedBefore(int i, long began) {
        for (Before earlier : before[i]) {
            Fact fact = facts[earlier.node()];
            if (fact.began == UNKNOWN && fact.ended == UNKNOWN && began < fact.endedBy) {
                fact.endedBy = began;
                endedBefore(earlier.node(), began - 1);
            }
        }
    }

    /** Whether a work of which only the end is known began later than it was to: it can't well have taken so many minutes. */
    private boolean isPutOff(int i, long taken) {
        return !facts[i].notPutOff && taken > FAR_TOO_LONG * (plannedMinutes[i] + Math.max(0, high[i] - likely[i]));
    }

    /** Whether a work that was put off found hands and stations too late for its least minutes; it isn't put off any more. */
    private boolean holdsCutShort() {
        boolean any = false;
        for (int i = 0; i < works.size(); i++) {
            Fact fact = facts[i];
            boolean onlyEnd = fact.began == UNKNOWN && fact.ended != UNKNOWN && (carried == null || carried[i]);
            int least = plannedMinutes[i] - Math.max(0, likely[i] - low[i]);
            if (onlyEnd && isPutOff(i, fact.ended - planned[i]) && end[i] - start[i] < least) {
                fact.notPutOff = true;
                any = true;
            }
        }
        return any;
    }

    /** Whether somebody whose meal is known to have begun was still at work then, which had ended, or has not begun, if that isn't known. */
    private boolean mealsCutShort() {
        boolean any = false;
        for (int meal = works.size(); meal < facts.length; meal++) {
            for (int i = 0; facts[meal].began != UNKNOWN && i < works.size(); i++) {
                for (Part part : parts(i)) {
                    any |= part.person() == first[meal][0].person() && isCutShort(i, part, meal);
                }
            }
        }
        return any;
    }

    private boolean isCutShort(int i, Part part, int meal) {
        Fact fact = facts[i];
        boolean out = carried != null && !carried[i];
        if (out || fact.ended != UNKNOWN || handsFrom(i, part) >= end[meal] || handsTo(i, part) <= start[meal]) {
            return false;
        }
        if (start[i] >= start[meal]) {
            boolean later = fact.began == UNKNOWN && fact.notBefore < end[meal];
            fact.notBefore = later ? end[meal] : fact.notBefore;
            return later;
        }
        if (handsFrom(i, part) >= start[meal] || !part.untilEnd() && fact.began != UNKNOWN) {
            return false;
        }
        if (!part.untilEnd()) {
            fact.began = start[meal] - part.to();
            return true;
        }
        boolean earlier = start[meal] - part.to() < fact.endedBy;
        fact.endedBy = Math.min(fact.endedBy, start[meal] - part.to());
        if (Arrays.stream(before[meal]).noneMatch(it -> it.node() == i)) {
            before[meal] = Arrays.copyOf(before[meal], before[meal].length + 1);
            before[meal][before[meal].length - 1] = new Before(i, part.to(), Integer.MAX_VALUE);
        }
        return earlier;
    }

    private List<Part> parts(int i) {
        return Stream.of(first[i], last[i]).flatMap(Arrays::stream).toList();
    }

    private long handsFrom(int i, Part part) {
        return Arrays.asList(last[i]).contains(part) ? end[i] - part.from() : start[i];
    }

    private long handsTo(int i, Part part) {
        return part.untilEnd() ? end[i] + part.to() : start[i] + part.to();
    }

    /** The works, as carried out last, that somebody is still at when a meal of his or hers begins. */
    List<Work> stillAt(int meal) {
        return IntStream.range(0, works.size())
                .filter(i -> parts(i).stream()
                        .anyMatch(part -> part.person() == first[meal][0].person()
                                && handsFrom(i, part) < start[meal]
                                && handsTo(i, part) > start[meal]))
                .mapToObj(works::get)
                .toList();
    }

    /** When a work begins and ends, given what is known of it and when it would begin and end. */
    private void take(Fact fact, int i, long at, int length) {
        long begins = fact.began != UNKNOWN ? fact.began : Math.max(at, fact.notBefore);
        if (fact.began == UNKNOWN && fact.ended != UNKNOWN && isPutOff(i, fact.ended - begins)) {
            begins = fact.ended - length;
        }
        long ends = fact.ended != UNKNOWN ? fact.ended : Math.min(begins + length, fact.endedBy);
        ends = Math.max(ends, fact.began == UNKNOWN ? Long.MIN_VALUE : fact.began + 1);
        start[i] = begins < ends ? begins : ends - Math.max(1, length);
        end[i] = ends;
    }

    /** Carries the plan out once, with new minutes for every step. */
    void next() {
        next(events);
    }

    private void next(Event[] order) {
        Arrays.fill(free, Long.MIN_VALUE);
        Arrays.fill(freeBy, NONE);
        Arrays.fill(left, true);
        for (Heat heat : heats) {
            heat.clear();
        }
        for (Units each : units) {
            each.clear();
        }
        for (Event event : order) {
            if (carried != null && !carried[event.node()]) {
                continue;
            }
            if (event.end()) {
                finish(event.node());
            } else {
                begin(event.node());
            }
        }
    }

    /** Minutes beyond those of the plan that a work takes in a share of all cases at most; it takes longer than it has taken already. */
    private int extra(int i, double share) {
        int taken = likely[i] + begunFor[i] - plannedMinutes[i];
        return (begunFor[i] == 0 ? minutes[i].at(share) : minutes[i].longerThan(taken, share)) - likely[i];
    }

    private void begin(int i) {
        int extra = minutes[i] == null || facts != null ? 0 : extra(i, dice[i].nextDouble());
        int length = plannedMinutes[i] + extra;
        over[i] = extra;
        waitForAll(i, length);
        long at = beginsAt;
        kept[i] = true;
        for (Before earlier : before[i]) {
            kept[i] &= kept[earlier.node()] && at - end[earlier.node()] <= earlier.most();
        }
        start[i] = at;
        startBy[i] = heldUpBy;
        end[i] = at + length;
        endBy[i] = i;
        if (facts != null) {
            take(facts[i], i, at, length);
        }
        for (Part part : first[i]) {
            free[part.person()] = part.untilEnd() ? end[i] + part.to() : start[i] + part.to();
            freeBy[part.person()] = part.untilEnd() ? i : -2 - i;
        }
        left[i] = false;
        if (last[i].length == 0) {
            leave(i);
        }
    }

    /** Finds the minute at which a work can begin; what was under way when the plan was made has begun as planned. */
    private void waitForAll(int i, int length) {
        beginsAt = planned[i];
        heldUpBy = NONE;
        for (Before earlier : before[i]) {
            waitUntil(end[earlier.node()] + earlier.least(), earlier.node());
        }
        for (Part part : first[i]) {
            waitUntil(free[part.person()], freeBy[part.person()]);
        }
        waitForStations(i);
        if (oven[i] >= 0) {
            waitForOven(i);
        }
        if (begunFor[i] > 0) {
            beginsAt = planned[i];
            heldUpBy = NONE;
        } else if (noisy[i]) {
            waitForNoiseAllowed(i, length);
        }
    }

    private void waitUntil(long minute, int by) {
        if (minute > beginsAt) {
            beginsAt = minute;
            heldUpBy = by;
        }
    }

    private void waitForStations(int i) {
        for (Use use : uses[i]) {
            Units station = units[use.station()];
            int missing = use.units();
            do {
                missing = station.take(missing, beginsAt);
                waitUntil(station.from, station.giver);
            } while (missing > 0 && nextLeaves(use.station()));
        }
    }

    /** Waits until the oven has the temperature; a work that needs another one than it has changes it. */
    private void waitForOven(int i) {
        Heat heat = heats[oven[i]];
        if (heat.celsius != celsius[i] || heat.opening != opening[i]) {
            if (heat.opening != opening[i]) {
                heat.from = Long.MIN_VALUE;
            } else {
                heat.from = heat.end + stations[oven[i]].minutesToChange(heat.celsius, celsius[i]);
                heat.fromBy = heat.endBy;
            }
            heat.celsius = celsius[i];
            heat.opening = opening[i];
            heat.end = Long.MIN_VALUE;
        }
        waitUntil(heat.from, heat.fromBy);
    }

    private void waitForNoiseAllowed(int i, int length) {
        // what was not held up was done as planned, whatever the calls are by now
        if (facts != null && beginsAt == planned[i] && beginsAt < knownUntil) {
            return;
        }
        for (long[] span : quiet) {
            if (beginsAt < span[1] && beginsAt + length > span[0]) {
                beginsAt = span[1];
            }
        }
    }

    /** What ends first of all that still is on a station leaves it; false if nothing is. What is known may be out of the plan's order. */
    private boolean nextLeaves(int station) {
        int next = NONE;
        for (int i = 0; i < works.size(); i++) {
            boolean there = !left[i] && Arrays.stream(uses[i]).anyMatch(use -> use.station() == station);
            next = there && (next == NONE || end[i] < end[next]) ? i : next;
        }
        if (next != NONE) {
            leave(next);
        }
        return next != NONE;
    }

    /** The last part of a work that people come back to: it waits for them. */
    private void finish(int i) {
        boolean known = facts != null && (facts[i].ended != UNKNOWN || facts[i].endedBy != Long.MAX_VALUE);
        for (Part part : last[i]) {
            if (!known && free[part.person()] + part.from() > end[i]) {
                end[i] = free[part.person()] + part.from();
                endBy[i] = freeBy[part.person()];
            }
        }
        for (Part part : last[i]) {
            free[part.person()] = end[i] + part.to();
            freeBy[part.person()] = i;
        }
        leave(i);
    }

    private void leave(int i) {
        if (left[i]) {
            return;
        }
        left[i] = true;
        for (Use use : uses[i]) {
            units[use.station()].giveBack(use.units(), end[i], i);
        }
        if (oven[i] >= 0 && end[i] > heats[oven[i]].end) {
            heats[oven[i]].end = end[i];
            heats[oven[i]].endBy = i;
        }
    }

    /** Whether no wait on the way to a work, and to what came before it, was longer than it may be. */
    boolean keptWaits(int i) {
        return kept[i];
    }

    /**
     * Tells which works took longer than likely and so made another late, the last first: each held up the start of the one told
     * before it, or the end if it is the first.
     *
     * @param i the work that is late
     */
    void ranOver(int i, Consumer<Work> told) {
        int at = i;
        boolean toItsEnd = true;
        for (int steps = 0; at != NONE && steps < events.length; steps++) {
            int by = startBy[at];
            if (toItsEnd && endBy[at] != at) {
                by = endBy[at];
            } else if (toItsEnd && over[at] > 0) {
                told.accept(works.get(at));
            }
            toItsEnd = by >= NONE;
            at = by >= NONE ? by : -2 - by;
        }
    }

    /** Units of a station, each free from some minute on. */
    private static final class Units {

        private final int capacity;
        private long[] times = new long[8];
        private int[] amounts = new int[8];
        private int[] givers = new int[8];
        private int size;
        /** From when on the units taken last are free, and what had them before. */
        long from;

        int giver;

        Units(int capacity) {
            this.capacity = capacity;
        }

        void clear() {
            size = 0;
            giveBack(capacity, Long.MIN_VALUE, NONE);
        }

        void giveBack(int amount, long time, int giver) {
            if (size == times.length) {
                times = Arrays.copyOf(times, 2 * size);
                amounts = Arrays.copyOf(amounts, 2 * size);
                givers = Arrays.copyOf(givers, 2 * size);
            }
            times[size] = time;
            amounts[size] = amount;
            givers[size++] = giver;
        }

        /**
         * Takes units that are free by a minute, those that were given back last, and if they aren't enough, the next ones.
         *
         * @return how many are missing
         */
        int take(int wanted, long by) {
            from = Long.MIN_VALUE;
            giver = NONE;
            int missing = wanted;
            while (missing > 0 && size > 0) {
                int chosen = 0;
                for (int n = 1; n < size; n++) {
                    boolean free = times[n] <= by;
                    boolean better = times[chosen] <= by ? free && times[n] > times[chosen] : times[n] < times[chosen];
                    chosen = better ? n : chosen;
                }
                if (times[chosen] > from) {
                    from = times[chosen];
                    giver = givers[chosen];
                }
                int taken = Math.min(missing, amounts[chosen]);
                missing -= taken;
                amounts[chosen] -= taken;
                if (amounts[chosen] == 0) {
                    size--;
                    times[chosen] = times[size];
                    amounts[chosen] = amounts[size];
                    givers[chosen] = givers[size];
                }
            }
            return missing;
        }
    }
}
