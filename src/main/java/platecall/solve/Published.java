package platecall.solve;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongUnaryOperator;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Task;

/** What a published plan does for each task and when it has breaks, so that a new plan can stay close to it. */
final class Published {

    /** Minutes that a task may as well move as be in the hands of another person, or at another station. */
    private static final int OTHERWISE = 5;

    private final TaskNet net;
    private final Plan.Work[][] work;
    private final int[][] starts;
    private final int[] breaks;

    private Published(TaskNet net, Plan.Work[][] work, int[][] starts, int[] breaks) {
        this.net = net;
        this.work = work;
        this.starts = starts;
        this.breaks = breaks;
    }

    static Published of(TaskNet net, Plan plan) {
        Map<CopyStep, Plan.Work> known = new HashMap<>();
        for (Plan.Work work : plan.work()) {
            for (String copy : work.copies()) {
                known.put(work.with(copy), work);
            }
        }
        List<Copy> copies = net.copies();
        Plan.Work[][] work = new Plan.Work[copies.size()][];
        int[][] starts = new int[copies.size()][];
        for (int c = 0; c < work.length; c++) {
            Copy copy = copies.get(c);
            List<Task> tasks = copy.recipe().tasks();
            if (tasks.stream().allMatch(task -> known.containsKey(copy.with(task)))) {
                work[c] = tasks.stream().map(task -> known.get(copy.with(task))).toArray(Plan.Work[]::new);
                starts[c] = new int[work[c].length];
                for (int i = 0; i < starts[c].length; i++) {
                    starts[c][i] = net.origin().minutesUntil(work[c][i].span().start());
                }
            }
        }
        return new Published(net, work, starts, breaks(net, plan));
    }

    private static int[] breaks(TaskNet net, Plan plan) {
        Map<String, Integer> met = new HashMap<>();
        int[] starts = new int[net.breaks().size()];
        for (int i = 0; i < starts.length; i++) {
            BreakTask task = net.breaks().get(i);
            String person = net.people().get(task.person());
            int number = met.merge(person, 1, Integer::sum) - 1;
            starts[i] = plan.breaks().stream()
                    .filter(known -> known.person().equals(person))
                    .map(known -> net.origin().minutesUntil(known.span().start()))
                    .filter(start -> start >= net.past().now())
                    .sorted(Comparator.naturalOrder())
                    .skip(number)
                    .findFirst()
                    .orElse(Kitchen.NONE);
        }
        return starts;
    }

    /** Start of each task of a copy, or null if the plan does not have it. */
    int[] starts(int copy) {
        return starts[copy];
    }

    /**
     * A copy as the published plan has it.
     *
     * @param start minute of each task
     * @param handsA people of the first hand part of each task, one bit each
     * @param handsB people of the second hand part
     * @param way how it is done, or {@link Kitchen#NONE} if it can't be done so any more
     */
    record Kept(int[] start, long[] handsA, long[] handsB, int[] way) {

        /** Minutes by which a task is at another time than published, and what other hands and another station count. */
        int moved(int task, int at, long a, long b, int its) {
            int others = Long.bitCount(a & ~handsA[task]) + Long.bitCount(b & ~handsB[task]);
            boolean elsewhere = way[task] != Kitchen.NONE && its != way[task];
            return Math.abs(at - start[task]) + OTHERWISE * (others + (elsewhere ? 1 : 0));
        }

        /** The same with people numbered otherwise. */
        Kept with(LongUnaryOperator people) {
            return new Kept(
                    start,
                    Arrays.stream(handsA).map(people).toArray(),
                    Arrays.stream(handsB).map(people).toArray(),
                    way);
        }
    }

    /** A copy as published, or null if the plan does not have it. */
    Kept kept(int copy) {
        if (starts[copy] == null) {
            return null;
        }
        List<Task> tasks = net.copies().get(copy).recipe().tasks();
        long[] a = new long[tasks.size()];
        long[] b = new long[tasks.size()];
        int[] ways = new int[tasks.size()];
        for (int i = 0; i < a.length; i++) {
            Plan.Work known = work[copy][i];
            ways[i] = way(copy, i);
            boolean two = tasks.get(i).handParts().size() == 2;
            for (Plan.Hands hands : known.hands()) {
                boolean first = !two || hands.span().start().equals(known.span().start());
                a[i] |= first ? bit(hands.person()) : 0;
                b[i] |= first ? 0 : bit(hands.person());
            }
        }
        return new Kept(starts[copy], a, b, ways);
    }

    private long bit(String person) {
        int p = net.people().indexOf(person);
        return p < 0 ? 0 : 1L << p;
    }

    int minutes(int copy, int task) {
        return work[copy][task].span().minutes();
    }

    /** Whether two copies had a step done in one go. */
    boolean together(int copy, int task, int otherCopy, int otherTask) {
        return work[otherCopy] != null && work[copy][task] == work[otherCopy][otherTask];
    }

    /** The way that uses the same stations, or -1. */
    int way(int copy, int task) {
        List<TaskNet.Mode> modes =
                net.copies().get(copy).recipe().tasks().get(task).modes();
        for (int way = 0; way < modes.size(); way++) {
            if (modes.get(way).stations().equals(work[copy][task].stations())) {
                return way;
            }
        }
        return Kitchen.NONE;
    }

    /** Whose hands did a task, one bit each. */
    long people(int copy, int task) {
        long people = 0;
        for (Plan.Hands hands : work[copy][task].hands()) {
            people |= bit(hands.person());
        }
        return people;
    }

    /** Start of a break, or {@link Kitchen#NONE}. */
    int breakStart(int index) {
        return breaks[index];
    }
}
