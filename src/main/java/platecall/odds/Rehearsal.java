package platecall.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.Step;
import platecall.odds.Job.Before;
import platecall.odds.Job.Part;
import platecall.odds.Job.Use;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A plan carried out again and again, each time with other minutes for its steps. Everybody keeps the plan's order, on every
 * station and with every pair of hands; nothing begins before its planned minute, and whatever is held up begins as soon as it
 * can. Calls stay where they are. Storage always has room, circuits bear all, stations stay open and nobody goes home or away:
 * only work, silence and an oven's temperature hold up work.
 */
final class Rehearsal {

    static final int NONE = -1;

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
    private record Event(int job, boolean end, long minute) {}

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

    private final List<Work> works;
    /** Each work, then each break. */
    private final Job[] jobs;

    private final Event[] events;
    private final long[][] quiet;
    private final Station[] stations;
    private final Map<CopyStep, Integer> jobOf = new HashMap<>();
    /** What is known of each work and break of a day under way; null in a rehearsal. */
    private Fact[] facts;

    private long knownUntil;
    private boolean[] carried;

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
        stations = day.stations().toArray(Station[]::new);
        quiet = day.quietSpans().stream()
                .map(span -> new long[] {span.start().epochMinute(), span.end().epochMinute()})
                .toArray(long[][]::new);
        Map<String, Integer> people = new HashMap<>();
        List<Job> all = new ArrayList<>();
        for (Work work : works) {
            for (String copy : work.copies()) {
                jobOf.putIfAbsent(work.with(copy), all.size());
            }
            all.add(Job.of(day, plan, work, people, seed));
        }
        for (Break meal : plan.breaks()) {
            all.add(new Job(meal.span(), List.of(new Hands(meal.person(), meal.span())), people));
        }
        jobs = all.toArray(Job[]::new);
        for (int i = 0; i < works.size(); i++) {
            jobs[i].before = befores(day, works.get(i));
        }
        events = events();
        start = new long[jobs.length];
        end = new long[jobs.length];
        over = new int[jobs.length];
        kept = new boolean[jobs.length];
        left = new boolean[jobs.length];
        startBy = new int[jobs.length];
        endBy = new int[jobs.length];
        free = new long[people.size()];
        freeBy = new int[people.size()];
        int[] mostUsed = mostUsed();
        units = new Units[stations.length];
        Arrays.setAll(units, s -> new Units(Math.max(stations[s].capacity(), mostUsed[s])));
        heats = Stream.generate(Heat::new).limit(stations.length).toArray(Heat[]::new);
    }

    private Event[] events() {
        List<Event> order = new ArrayList<>();
        for (int i = 0; i < jobs.length; i++) {
            Job job = jobs[i];
            order.add(new Event(i, false, job.planned));
            if (job.last.length > 0) {
                int longest = Arrays.stream(job.last).mapToInt(Part::from).max().orElse(0);
                order.add(new Event(i, true, job.planned + job.minutes - Math.max(0, longest)));
            }
        }
        order.sort(Comparator.comparingLong(Event::minute).thenComparing(event -> !event.end()));
        return order.toArray(Event[]::new);
    }

    /** Most units of each station that the plan uses at a time: more than there are if the day has changed since. */
    private int[] mostUsed() {
        int[] most = new int[stations.length];
        for (int i = 0; i < works.size(); i++) {
            long minute = jobs[i].planned;
            for (Use use : jobs[i].uses) {
                int at = Arrays.stream(jobs, 0, works.size())
                        .filter(job -> job.planned <= minute && minute < job.planned + job.minutes)
                        .mapToInt(job -> job.unitsOf(use.station()))
                        .sum();
                most[use.station()] = Math.max(most[use.station()], at);
            }
        }
        return most;
    }

    private Before[] befores(Day day, Work work) {
        Optional<Step> step = day.step(work.dish(), work.step()).filter(it -> work.kind() == Work.Kind.STEP);
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
    private void add(List<Before> all, Work work, int earlier, int least, int most) {
        int waits = earlier < 0
                ? -1
                : works.get(earlier).span().end().minutesUntil(work.span().start());
        if (waits >= 0) {
            all.add(new Before(earlier, Math.min(least, waits), most));
        }
    }

    /** The number of a copy's work at a step, or -1. */
    int work(String copy, String step) {
        return jobOf.getOrDefault(CopyStep.of(copy, step), NONE);
    }

    /** The works that come before a work in its copies' recipe; of a meal break those that had ended because it began. */
    int[] before(int i) {
        return Arrays.stream(jobs[i].before).mapToInt(Before::work).toArray();
    }

    /** When a work or break was done in the last rehearsal. */
    Span span(int i) {
        return new Span(new Moment(start[i]), new Moment(end[i]));
    }

    /** The number of a copy's way to camera, or -1. */
    int carry(String copy) {
        return jobOf.getOrDefault(CopyStep.toCamera(copy), NONE);
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
            int i = events[e].job();
            Job job = jobs[i];
            if (!events[e].end()) {
                Fact fact = facts[i];
                at[i] = fact.began != UNKNOWN
                        ? fact.began
                        : fact.ended != UNKNOWN
                                ? isPutOff(i, fact.ended - job.planned) || fact.ended <= job.planned
                                        ? fact.ended - job.minutes
                                        : job.planned
                                : Math.max(job.planned, fact.notBefore);
                for (Before earlier : job.before) {
                    at[i] = Math.max(at[i], at[earlier.work()]);
                }
            }
            boolean told = events[e].end() && facts[i].ended != UNKNOWN;
            long moved = told ? facts[i].ended - job.planned - job.minutes : at[i] - job.planned;
            order[e] = new Event(i, events[e].end(), events[e].minute() + moved);
        }
        Arrays.sort(order, Comparator.comparingLong(Event::minute));
        return order;
    }

    /** What comes before a work in its recipe has ended by the minute at which it began. */
    private void endedBefore(int i, long began) {
        for (Before earlier : jobs[i].before) {
            Fact fact = facts[earlier.work()];
            if (fact.began == UNKNOWN && fact.ended == UNKNOWN && began < fact.endedBy) {
                fact.endedBy = began;
                endedBefore(earlier.work(), began - 1);
            }
        }
    }

    /**
     * Whether a work of which only the end is known began later than it was to: it can't well have taken so many minutes. What is
     * known to end has begun by now.
     */
    private boolean isPutOff(int i, long taken) {
        Job job = jobs[i];
        return !facts[i].notPutOff
                && facts[i].ended - job.minutes < knownUntil
                && taken > FAR_TOO_LONG * (job.minutes + job.high - job.likely);
    }

    /** Whether a work that was put off found hands and stations too late for its least minutes; it isn't put off any more. */
    private boolean holdsCutShort() {
        boolean any = false;
        for (int i = 0; i < works.size(); i++) {
            Fact fact = facts[i];
            Job job = jobs[i];
            boolean onlyEnd = fact.began == UNKNOWN && fact.ended != UNKNOWN && (carried == null || carried[i]);
            int least = job.minutes - (job.likely - job.low);
            if (onlyEnd && isPutOff(i, fact.ended - job.planned) && end[i] - start[i] < least) {
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
                    any |= part.person() == jobs[meal].first[0].person() && isCutShort(i, part, meal);
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
        if (Arrays.stream(jobs[meal].before).noneMatch(it -> it.work() == i)) {
            jobs[meal].before = Stream.concat(
                            Arrays.stream(jobs[meal].before), Stream.of(new Before(i, part.to(), Integer.MAX_VALUE)))
                    .toArray(Before[]::new);
        }
        return earlier;
    }

    private List<Part> parts(int i) {
        return Stream.of(jobs[i].first, jobs[i].last).flatMap(Arrays::stream).toList();
    }

    private long handsFrom(int i, Part part) {
        return Arrays.asList(jobs[i].last).contains(part) ? end[i] - part.from() : start[i];
    }

    private long handsTo(int i, Part part) {
        return part.untilEnd() ? end[i] + part.to() : start[i] + part.to();
    }

    /** The works, as carried out last, that somebody is still at when a meal of his or hers begins. */
    List<Work> stillAt(int meal) {
        return IntStream.range(0, works.size())
                .filter(i -> parts(i).stream()
                        .anyMatch(part -> part.person() == jobs[meal].first[0].person()
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
            if (carried != null && !carried[event.job()]) {
                continue;
            }
            if (event.end()) {
                finish(event.job());
            } else {
                begin(event.job());
            }
        }
    }

    /** Minutes beyond those of the plan that a work takes in a share of all cases at most; it takes longer than it has taken already. */
    private int extra(int i, double share) {
        Job job = jobs[i];
        int taken = job.likely + job.begunFor - job.minutes;
        return (job.begunFor == 0 ? job.fall.at(share) : job.fall.longerThan(taken, share)) - job.likely;
    }

    private void begin(int i) {
        Job job = jobs[i];
        int extra = job.fall == null || facts != null ? 0 : extra(i, job.dice.nextDouble());
        int length = job.minutes + extra;
        over[i] = extra;
        waitForAll(i, length);
        long at = beginsAt;
        kept[i] = true;
        for (Before earlier : job.before) {
            kept[i] &= kept[earlier.work()] && at - end[earlier.work()] <= earlier.most();
        }
        start[i] = at;
        startBy[i] = heldUpBy;
        end[i] = at + length;
        endBy[i] = i;
        if (facts != null) {
            take(facts[i], i, at, length);
        }
        for (Part part : job.first) {
            free[part.person()] = part.untilEnd() ? end[i] + part.to() : start[i] + part.to();
            freeBy[part.person()] = part.untilEnd() ? i : -2 - i;
        }
        left[i] = false;
        if (job.last.length == 0) {
            leave(i);
        }
    }

    /** Finds the minute at which a work can begin; what was under way when the plan was made has begun as planned. */
    private void waitForAll(int i, int length) {
        Job job = jobs[i];
        beginsAt = job.planned;
        heldUpBy = NONE;
        for (Before earlier : job.before) {
            waitUntil(end[earlier.work()] + earlier.least(), earlier.work());
        }
        for (Part part : job.first) {
            waitUntil(free[part.person()], freeBy[part.person()]);
        }
        waitForStations(i);
        if (job.oven >= 0) {
            waitForOven(i);
        }
        if (job.begunFor > 0) {
            beginsAt = job.planned;
            heldUpBy = NONE;
        } else if (job.noisy) {
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
        for (Use use : jobs[i].uses) {
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
        Job job = jobs[i];
        Heat heat = heats[job.oven];
        if (heat.celsius != job.celsius || heat.opening != job.opening) {
            if (heat.opening != job.opening) {
                heat.from = Long.MIN_VALUE;
            } else {
                heat.from = heat.end + stations[job.oven].minutesToChange(heat.celsius, job.celsius);
                heat.fromBy = heat.endBy;
            }
            heat.celsius = job.celsius;
            heat.opening = job.opening;
            heat.end = Long.MIN_VALUE;
        }
        waitUntil(heat.from, heat.fromBy);
    }

    private void waitForNoiseAllowed(int i, int length) {
        // what was not held up was done as planned, whatever the calls are by now
        if (facts != null && beginsAt == jobs[i].planned && beginsAt < knownUntil) {
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
            boolean there = !left[i] && Arrays.stream(jobs[i].uses).anyMatch(use -> use.station() == station);
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
        for (Part part : jobs[i].last) {
            if (!known && free[part.person()] + part.from() > end[i]) {
                end[i] = free[part.person()] + part.from();
                endBy[i] = freeBy[part.person()];
            }
        }
        for (Part part : jobs[i].last) {
            free[part.person()] = end[i] + part.to();
            freeBy[part.person()] = i;
        }
        leave(i);
    }

    private void leave(int i) {
        Job job = jobs[i];
        if (left[i]) {
            return;
        }
        left[i] = true;
        for (Use use : job.uses) {
            units[use.station()].giveBack(use.units(), end[i], i);
        }
        if (job.oven >= 0 && end[i] > heats[job.oven].end) {
            heats[job.oven].end = end[i];
            heats[job.oven].endBy = i;
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
