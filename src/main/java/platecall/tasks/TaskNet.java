package platecall.tasks;

import java.util.List;
import java.util.Optional;
import platecall.day.Need;
import platecall.day.Prices;
import platecall.day.Step;
import platecall.looks.LookLife;
import platecall.plan.CopyStep;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Moment;

/**
 * A day broken into tasks: what the search works on. Times are minutes from {@code origin}; spans are half-open.
 *
 * @param origin minute 0
 * @param minutes length of the horizon; every task lies within {@code [0, minutes)}
 * @param lanes what is shared and limited: stations, then circuits
 * @param ovens stations with a temperature
 * @param people whose hands there are, at most 60
 * @param handsFree for each minute the people at work, one bit each
 * @param noiseAllowed for each minute whether a noisy task may run
 * @param kitchenSpans kitchen hours, sorted
 * @param recipes what a copy of each need goes through
 * @param copies every copy that is wanted
 * @param breaks every meal break that is due
 * @param batchGroups number of batch groups; a group is a step per batch of one dish
 * @param prices the day's prices
 * @param past what has happened by now, if the day is under way
 */
public record TaskNet(
        Moment origin,
        int minutes,
        List<Lane> lanes,
        List<Oven> ovens,
        List<String> people,
        long[] handsFree,
        boolean[] noiseAllowed,
        List<Window> kitchenSpans,
        List<Recipe> recipes,
        List<Copy> copies,
        List<BreakTask> breaks,
        int batchGroups,
        Prices prices,
        Past past) {

    /** Number of tasks of all copies, breaks not counted. */
    public int size() {
        return copies.stream().mapToInt(copy -> copy.recipe().size()).sum();
    }

    /** Kitchen hours in which nothing has begun yet, so that it is still open when the kitchen opens. */
    public List<Window> unopenedSpans() {
        return kitchenSpans.stream()
                .filter(span -> past.begun().stream()
                        .noneMatch(work -> work.start() >= span.start() && work.start() < span.end()))
                .toList();
    }

    /** The same where it costs nothing that a task is elsewhere than in a plan that is held. */
    public TaskNet withMovesFree() {
        return new TaskNet(
                origin,
                minutes,
                lanes,
                ovens,
                people,
                handsFree,
                noiseAllowed,
                kitchenSpans,
                recipes,
                copies,
                breaks,
                batchGroups,
                new Prices(prices.lateMinute(), prices.offPeakMinute(), prices.kitchenMinute(), prices.handChange(), 0),
                past);
    }

    /** The same day with other recipes, copies of them and meal breaks. */
    public TaskNet with(List<Recipe> otherRecipes, List<Copy> otherCopies, List<BreakTask> otherBreaks) {
        return new TaskNet(
                origin,
                minutes,
                lanes,
                ovens,
                people,
                handsFree,
                noiseAllowed,
                kitchenSpans,
                otherRecipes,
                otherCopies,
                otherBreaks,
                batchGroups,
                prices,
                past);
    }

    /**
     * Minute from which on a copy needs a place in the storage after a task, never before now: what stands there while that is closed
     * stays in the place that it has until that opens.
     */
    public int placeFrom(Task task) {
        boolean stands = task.hasBegun() && task.waitLane() >= 0 && task.earliest() + task.minutes() <= past.now();
        return stands ? Math.max(past.now(), lanes.get(task.waitLane()).opens()) : past.now();
    }

    public Moment momentOf(int minute) {
        return origin.plus(minute);
    }

    /**
     * What has happened by now on a day that is under way.
     *
     * @param now minute from which on is planned; nothing that hasn't begun begins before
     * @param begun every work that has begun, in order of time
     * @param breaks every meal break that has begun; the net has those that are still due
     * @param done copies whose every task has begun: none of the net's copies
     * @param missed copies that weren't made while their setup was shot, and aren't made any more: none of the net's either
     */
    public record Past(int now, List<Begun> begun, List<Break> breaks, List<Copy> done, List<Copy> missed) {

        /** Nothing yet. */
        public static final Past NONE = new Past(0, List.of(), List.of(), List.of(), List.of());
    }

    /**
     * A work that has begun. What it still takes of stations and hands is taken off what is free.
     *
     * @param work it, as it happens
     * @param start its first minute
     * @param end minute after its last one
     * @param mode how it is done
     * @param ovenCelsius temperature of the oven; 0: none
     * @param raw whether the food is raw afterwards
     * @param people whose hands do it, one bit each
     */
    public record Begun(Work work, int start, int end, Mode mode, int ovenCelsius, boolean raw, long people) {}

    /** A half-open span of minutes. */
    public record Window(int start, int end) {}

    /**
     * Something shared and limited.
     *
     * @param station the station's id; empty for a circuit
     * @param free for each minute the units that tasks may use, what is held until release taken off
     * @param keepsApart whether raw food and food ready to eat may both come here, so that they must be kept apart
     * @param opens minute at which a storage opens again that is closed now; 0 if it is open, or nothing is stored in it
     */
    public record Lane(String station, int[] free, boolean keepsApart, int opens) {}

    /**
     * An oven.
     *
     * @param lane its lane
     * @param heatPerMinute degrees a minute
     * @param coolPerMinute degrees a minute
     * @param longestChange minutes that its longest change of temperature takes
     * @param open for each minute whether it is open; it is cold before each opening
     */
    public record Oven(int lane, double heatPerMinute, double coolPerMinute, int longestChange, boolean[] open) {

        /** Whole minutes from one temperature to another, both in degrees Celsius; 0 if they are the same. */
        public int minutesToChange(int from, int to) {
            if (from == to) {
                return 0;
            }
            double rate = to > from ? heatPerMinute : coolPerMinute;
            return (int) Math.ceil(Math.abs(to - from) / rate - 1e-9);
        }
    }

    /**
     * A way to do a task.
     *
     * @param lanes lanes used throughout
     * @param units units of each
     * @param oven index of the oven whose temperature it needs, or -1
     * @param noisy whether it is heard on set
     * @param stations the same use in the stylist's words
     */
    public record Mode(int[] lanes, int[] units, int oven, boolean noisy, List<StationHold> stations) {}

    /**
     * Hands needed during a part of a task.
     *
     * @param fromEnd whether the part is counted from the task's end rather than from its start
     * @param length minutes; may reach beyond the end of a carry, 0 means the whole task
     */
    public record HandPart(boolean fromEnd, int length) {

        /** Minutes after the task's start at which this part begins, for a task of {@code duration} minutes. */
        public int offset(int duration) {
            return fromEnd ? duration - length : 0;
        }

        /** Length of this part in a task of {@code duration} minutes. */
        public int lengthIn(int duration) {
            return length == 0 ? duration : length;
        }
    }

    /**
     * One step of a recipe as every copy of it meets it.
     *
     * @param step the step; null for the way to camera
     * @param name step id, or {@code carry}
     * @param minutes minutes per copy, or the fixed minutes of a batch
     * @param minutesPerCopy further minutes for each copy of a batch
     * @param batchMost most copies of a batch; 0: done copy by copy
     * @param batchGroup index of its batch group, or -1
     * @param modes ways to do it, at least one
     * @param ovenCelsius temperature needed; 0: none
     * @param handsNeeded pairs of hands in each part
     * @param handMask people with the skill, one bit each
     * @param handParts parts in which hands are on; none, one or two
     * @param earliest first minute at which it can start: supplies and the steps before
     * @param waitLane lane of the storage in which a copy waits afterwards, or -1
     * @param waitUnits units that it takes there
     * @param raw whether the food is raw afterwards
     * @param latest last minute at which it can start
     * @param begun number of the work that does it, if that has begun, among those of the past; else -1. A task that has
     *     begun needs nothing any more but the storage afterwards
     */
    public record Task(
            Step step,
            String name,
            int minutes,
            int minutesPerCopy,
            int batchMost,
            int batchGroup,
            List<Mode> modes,
            int ovenCelsius,
            int handsNeeded,
            long handMask,
            List<HandPart> handParts,
            int earliest,
            int waitLane,
            int waitUnits,
            boolean raw,
            int latest,
            int begun) {

        public boolean hasBegun() {
            return begun >= 0;
        }

        public boolean perBatch() {
            return batchMost > 0;
        }

        public int minutesFor(int copies) {
            return minutes + minutesPerCopy * copies;
        }

        /** Least minutes that it can take. */
        public int leastMinutes() {
            return minutesFor(perBatch() ? 1 : 0);
        }
    }

    /**
     * Task {@code before} ends, then {@code least} to {@code most} minutes pass, then task {@code after} starts.
     *
     * @param most {@link Integer#MAX_VALUE}: no limit
     */
    public record Arc(int before, int after, int least, int most) {}

    /**
     * What a copy of a need goes through.
     *
     * @param need the need
     * @param tasks in an order in which each comes after those it needs; the last one ends at camera
     * @param into for each task the arcs that end in it
     * @param outOf for each task the arcs that begin in it
     * @param plated index of the task whose end is plate-up; the last, or the one before a carry
     * @param tail for each task whether it is bound to the last one by limited waits, so that it can't be moved alone
     * @param look how long it looks right
     * @param peakFrom minute after plate-up from which it surely looks its best
     * @param peakTo minute until which it does
     * @param usableTo minute after which it can't be shown
     * @param lateWeight points for a late minute
     * @param offPeakWeight points for a minute outside the peak
     */
    public record Recipe(
            Need need,
            List<Task> tasks,
            List<List<Arc>> into,
            List<List<Arc>> outOf,
            int plated,
            boolean[] tail,
            LookLife look,
            int peakFrom,
            int peakTo,
            int usableTo,
            long lateWeight,
            long offPeakWeight) {

        public int size() {
            return tasks.size();
        }

        public int last() {
            return tasks.size() - 1;
        }

        /** The same with other tasks, one for each, and other arcs between them. */
        public Recipe with(List<Task> otherTasks, List<List<Arc>> otherInto, List<List<Arc>> otherOutOf) {
            return new Recipe(
                    need,
                    otherTasks,
                    otherInto,
                    otherOutOf,
                    plated,
                    tail,
                    look,
                    peakFrom,
                    peakTo,
                    usableTo,
                    lateWeight,
                    offPeakWeight);
        }

        /** Minutes by which a copy with these times is ready after it is due, and from the end of its use to the cut. */
        public int lateMinutes(int due, int show, int platedAt, int ready) {
            int roll = Math.max(due, ready);
            return Math.max(0, ready - due) + Math.max(0, roll + show - (platedAt + usableTo));
        }

        /** Minutes from the roll to its peak and from its end to the cut, also those in which the camera does not roll. */
        public int offPeakMinutes(int due, int show, int platedAt, int ready) {
            int roll = Math.max(due, ready);
            return Math.max(0, platedAt + peakFrom - roll) + Math.max(0, roll + show - (platedAt + peakTo));
        }
    }

    /**
     * A copy that is wanted.
     *
     * @param recipe what it goes through
     * @param setup index of its setup, in sheet order
     * @param number counted from 1 within its need
     * @param due minute at which it is wanted at camera
     * @param show minutes in which the camera sees it
     */
    public record Copy(Recipe recipe, int setup, int number, int due, int show) {

        /** {@code setup/dish/stage/part#number} */
        public String id() {
            return recipe.need().key() + "#" + number;
        }

        /** What one of its recipe's tasks does with it. */
        public CopyStep with(Task task) {
            return new CopyStep(id(), Optional.ofNullable(task.step()).map(Step::id));
        }
    }

    /**
     * A meal break that is due.
     *
     * @param person index of the person
     * @param minutes its length
     * @param earliest first minute at which it may start
     * @param latest last minute at which it may start
     * @param after index of the break before it in the same shift, or -1
     * @param mostApart most minutes between the end of one break and the start of the next
     */
    public record BreakTask(int person, int minutes, int earliest, int latest, int after, int mostApart) {}
}
