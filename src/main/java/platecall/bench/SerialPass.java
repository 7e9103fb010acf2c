package platecall.bench;

import java.util.Arrays;

/**
 * Serial schedule generation in one direction of time: takes the tasks in list order and starts each as early as its
 * predecessors and the free capacity allow. The backward pass is the same pass over the reversed precedence, with time
 * counted from the project's end. Keeps working arrays, so each search thread needs its own.
 */
final class SerialPass {

    private static final int NEAR = 3;

    private final int tasks;
    private final int[] durations;
    private final int[] order;
    /** Longest path from the start of a task to the end of the project in this direction. */
    private final int[] tails;
    /** The first three predecessors of each task, filled up with a task that has no number and ends at 0. */
    private final int[] near;

    private final int[] ends;
    private final int[] firstPredecessor;
    private final int[] predecessors;
    private final long[] requests;
    private final long guard;
    private final long[] empty;
    private final long[] free;
    private final int[] counts;
    private int used;

    private SerialPass(Project project, int[][] before, int[] order, int[] tails) {
        this.tasks = project.tasks;
        this.durations = project.durations;
        this.order = order;
        this.tails = tails;
        this.firstPredecessor = new int[tasks + 1];
        for (int task = 0; task < tasks; task++) {
            firstPredecessor[task + 1] = firstPredecessor[task] + before[task].length;
        }
        this.predecessors = Arrays.stream(before).flatMapToInt(Arrays::stream).toArray();
        this.near = new int[NEAR * tasks];
        Arrays.fill(near, tasks);
        for (int task = 0; task < tasks; task++) {
            System.arraycopy(before[task], 0, near, NEAR * task, Math.min(NEAR, before[task].length));
        }
        this.ends = new int[tasks + 1];
        this.requests = project.packedRequests;
        this.guard = project.guard;
        this.empty = new long[project.horizon + 1];
        Arrays.fill(empty, project.packedCapacity);
        this.free = empty.clone();
        this.counts = new int[project.horizon + 2];
    }

    static SerialPass forward(Project project) {
        return new SerialPass(project, project.predecessors, project.topological, project.tails);
    }

    static SerialPass backward(Project project) {
        int[] reversed = new int[project.tasks];
        Arrays.setAll(reversed, i -> project.topological[project.tasks - 1 - i]);
        int[] tails = new int[project.tasks];
        Arrays.setAll(tails, task -> project.heads[task] + project.durations[task]);
        return new SerialPass(project, project.successors, reversed, tails);
    }

    /**
     * Builds the schedule of a list.
     *
     * @param list all tasks, each behind its predecessors in this direction
     * @param starts receives the start of each task
     * @return the makespan
     */
    int run(int[] list, int[] starts) {
        return run(list, starts, Integer.MAX_VALUE);
    }

    /**
     * As {@link #run(int[], int[])}, but gives up, with the rest of {@code starts} as it was, once the makespan must
     * exceed the limit.
     *
     * @return the makespan; if it would exceed the limit, some number above the limit
     */
    int run(int[] list, int[] starts, int limit) {
        System.arraycopy(empty, 0, free, 0, used);
        int makespan = 0;
        for (int task : list) {
            int close = NEAR * task;
            int earliest = Math.max(Math.max(ends[near[close]], ends[near[close + 1]]), ends[near[close + 2]]);
            for (int i = firstPredecessor[task] + NEAR; i < firstPredecessor[task + 1]; i++) {
                earliest = Math.max(earliest, ends[predecessors[i]]);
            }
            int duration = durations[task];
            int end = earliest;
            if (duration > 0) {
                long request = requests[task];
                // No jumps: a count that a conflict sets to 0 needs no branch that the processor could guess wrong.
                for (int fitting = 0; fitting < duration; end++) {
                    fitting = ((free[end] - request) & guard) == 0 ? fitting + 1 : 0;
                }
                earliest = end - duration;
                book(earliest, duration, request);
            }
            starts[task] = earliest;
            ends[task] = end;
            if (earliest + tails[task] > makespan) {
                makespan = earliest + tails[task];
                if (makespan > limit) {
                    break;
                }
            }
        }
        used = makespan;
        return makespan;
    }

    /** Unrolled by hand: as a loop it is made for long stretches, but most tasks are short. */
    @SuppressWarnings("fallthrough")
    private void book(int start, int duration, long request) {
        switch (duration) {
            default:
                for (int t = start + 10; t < start + duration; t++) {
                    free[t] -= request;
                }
            case 10:
                free[start + 9] -= request;
            case 9:
                free[start + 8] -= request;
            case 8:
                free[start + 7] -= request;
            case 7:
                free[start + 6] -= request;
            case 6:
                free[start + 5] -= request;
            case 5:
                free[start + 4] -= request;
            case 4:
                free[start + 3] -= request;
            case 3:
                free[start + 2] -= request;
            case 2:
                free[start + 1] -= request;
            case 1:
                free[start] -= request;
        }
    }

    /** Sorts the tasks by a time each (0 to the horizon); equal times stay behind their predecessors. */
    void sort(int[] times, int latest, int[] list) {
        Arrays.fill(counts, 0, latest + 2, 0);
        for (int time : times) {
            counts[time + 1]++;
        }
        for (int t = 1; t <= latest; t++) {
            counts[t] += counts[t - 1];
        }
        for (int task : order) {
            list[counts[times[task]]++] = task;
        }
    }

    /** Turns time around: from the starts of this direction to the starts of the other one. */
    void mirror(int[] starts, int makespan, int[] mirrored) {
        for (int task = 0; task < tasks; task++) {
            mirrored[task] = makespan - starts[task] - durations[task];
        }
    }
}
