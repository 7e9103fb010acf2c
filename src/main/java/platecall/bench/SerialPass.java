package platecall.bench;

import java.util.Arrays;

/**
 * Serial schedule generation in one direction of time: takes the tasks in list order and starts each as early as its
 * predecessors and the free capacity allow. The backward pass is the same pass over the reversed precedence, with time
 * counted from the project's end. Keeps working arrays, so each search thread needs its own.
 */
final class SerialPass {

    private final int tasks;
    private final int[] durations;
    private final int[] order;
    private final int[] firstPredecessor;
    private final int[] predecessors;
    private final long[] requests;
    private final long guard;
    private final long[] empty;
    private final long[] free;
    private final int[] counts;
    private int used;

    private SerialPass(Project project, int[][] before, int[] order) {
        this.tasks = project.tasks;
        this.durations = project.durations;
        this.order = order;
        this.firstPredecessor = new int[tasks + 1];
        for (int task = 0; task < tasks; task++) {
            firstPredecessor[task + 1] = firstPredecessor[task] + before[task].length;
        }
        this.predecessors = Arrays.stream(before).flatMapToInt(Arrays::stream).toArray();
        this.requests = project.packedRequests;
        this.guard = project.guard;
        this.empty = new long[project.horizon + 1];
        Arrays.fill(empty, project.packedCapacity);
        this.free = empty.clone();
        this.counts = new int[project.horizon + 2];
    }

    static SerialPass forward(Project project) {
        return new SerialPass(project, project.predecessors, project.topological);
    }

    static SerialPass backward(Project project) {
        int[] reversed = new int[project.tasks];
        Arrays.setAll(reversed, i -> project.topological[project.tasks - 1 - i]);
        return new SerialPass(project, project.successors, reversed);
    }

    /**
     * Builds the schedule of a list.
     *
     * @param list all tasks, each behind its predecessors in this direction
     * @param starts receives the start of each task
     * @return the makespan
     */
    int run(int[] list, int[] starts) {
        System.arraycopy(empty, 0, free, 0, used);
        int makespan = 0;
        for (int task : list) {
            int earliest = 0;
            for (int i = firstPredecessor[task]; i < firstPredecessor[task + 1]; i++) {
                int before = predecessors[i];
                earliest = Math.max(earliest, starts[before] + durations[before]);
            }
            int duration = durations[task];
            if (duration > 0) {
                long request = requests[task];
                int end = earliest + duration;
                int unknown = earliest;
                // From the far end, so that a conflict jumps as far as possible; what fitted is not tested again.
                for (int unit = end - 1; unit >= unknown; unit--) {
                    if (((free[unit] - request) & guard) != 0) {
                        unknown = end;
                        earliest = unit + 1;
                        end = earliest + duration;
                        unit = end;
                    }
                }
                for (int t = earliest; t < end; t++) {
                    free[t] -= request;
                }
                makespan = Math.max(makespan, end);
            }
            starts[task] = earliest;
        }
        used = makespan;
        return makespan;
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
