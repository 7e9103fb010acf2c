package platecall.bench;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A makespan that no schedule can beat, by refutation: give every task the time window that a trial makespan leaves it,
 * narrow the windows by precedence, by pairs that cannot share a resource and by the minutes in which a task must run;
 * if a window closes or an interval needs more energy than its resource has, the trial makespan is impossible.
 */
final class LowerBound {

    private final Project project;
    private final int tasks;
    /** For each task the tasks that never run beside it because some resource cannot hold both. */
    private final int[][] rivals;

    private final int[][] users;
    private final int[] earliest;
    private final int[] latest;
    private final long[] free;

    private LowerBound(Project project) {
        this.project = project;
        this.tasks = project.tasks;
        this.rivals = new int[tasks][];
        Arrays.setAll(rivals, this::rivalsOf);
        this.users = new int[project.capacities.length][];
        Arrays.setAll(
                users,
                k -> IntStream.range(0, tasks)
                        .filter(task -> project.requests[task][k] > 0 && project.durations[task] > 0)
                        .toArray());
        this.earliest = new int[tasks];
        this.latest = new int[tasks];
        this.free = new long[project.horizon + 1];
    }

    private int[] rivalsOf(int task) {
        return IntStream.range(0, tasks)
                .filter(other -> other != task
                        && project.durations[task] > 0
                        && project.durations[other] > 0
                        && IntStream.range(0, project.capacities.length)
                                .anyMatch(k ->
                                        project.requests[task][k] + project.requests[other][k] > project.capacities[k]))
                .toArray();
    }

    /**
     * @param upperBound makespan of some schedule
     * @return a lower bound, at least the critical path and at most {@code upperBound}
     */
    static int of(Project project, int upperBound) {
        LowerBound bound = new LowerBound(project);
        int low = project.criticalPath;
        int high = upperBound;
        // What is refuted stays refuted below, so halving is sound even where the narrowing is weak.
        while (low < high) {
            int trial = (low + high) >>> 1;
            if (bound.refutes(trial)) {
                low = trial + 1;
            } else {
                high = trial;
            }
        }
        return low;
    }

    /** Whether no schedule of {@code project} can be as short as {@code makespan}, as far as one trial tells. */
    static boolean refutes(Project project, int makespan) {
        return makespan < project.criticalPath
                || makespan < project.horizon && new LowerBound(project).refutes(makespan);
    }

    private boolean refutes(int makespan) {
        for (int task = 0; task < tasks; task++) {
            earliest[task] = project.heads[task];
            latest[task] = makespan - project.tails[task];
        }
        boolean narrowed = true;
        while (narrowed) {
            narrowed = narrowByPrecedence();
            for (int task = 0; task < tasks; task++) {
                narrowed |= narrowByRivals(task);
                if (earliest[task] > latest[task]) {
                    return true;
                }
            }
            if (!bookCompulsoryParts(makespan)) {
                return true;
            }
            for (int task = 0; task < tasks; task++) {
                narrowed |= narrowByProfile(task);
                if (earliest[task] > latest[task]) {
                    return true;
                }
            }
        }
        return IntStream.range(0, users.length).anyMatch(this::overloaded);
    }

    private boolean narrowByPrecedence() {
        boolean narrowed = false;
        for (int task : project.topological) {
            for (int after : project.successors[task]) {
                narrowed |= raise(after, earliest[task] + project.durations[task]);
            }
        }
        for (int i = tasks - 1; i >= 0; i--) {
            int task = project.topological[i];
            for (int before : project.predecessors[task]) {
                narrowed |= lower(before, latest[task] - project.durations[before]);
            }
        }
        return narrowed;
    }

    /** A task that cannot come before its rival must wait for it. */
    private boolean narrowByRivals(int task) {
        boolean narrowed = false;
        for (int rival : rivals[task]) {
            if (earliest[task] + project.durations[task] > latest[rival]) {
                narrowed |= raise(task, earliest[rival] + project.durations[rival]);
                narrowed |= lower(rival, latest[task] - project.durations[rival]);
            }
        }
        return narrowed;
    }

    private boolean bookCompulsoryParts(int makespan) {
        Arrays.fill(free, 0, makespan, project.packedCapacity);
        for (int task = 0; task < tasks; task++) {
            for (int t = latest[task]; t < earliest[task] + project.durations[task]; t++) {
                if (!fits(t, task)) {
                    return false;
                }
                free[t] -= project.packedRequests[task];
            }
        }
        return true;
    }

    /** Slides both ends of the window off the minutes that other tasks must fill. */
    private boolean narrowByProfile(int task) {
        int duration = project.durations[task];
        int partStart = latest[task];
        int partEnd = earliest[task] + duration;
        if (duration == 0 || project.packedRequests[task] == 0) {
            return false;
        }
        for (int t = partStart; t < partEnd; t++) {
            free[t] += project.packedRequests[task];
        }
        int start = earliest[task];
        for (int t = start + duration - 1; t >= start && start <= latest[task]; t--) {
            if (!fits(t, task)) {
                start = t + 1;
                t = start + duration;
            }
        }
        int end = latest[task] + duration;
        for (int t = end - duration; t < end && end - duration >= start; t++) {
            if (!fits(t, task)) {
                end = t;
                t = end - duration - 1;
            }
        }
        for (int t = partStart; t < partEnd; t++) {
            free[t] -= project.packedRequests[task];
        }
        return raise(task, start) | lower(task, end - duration);
    }

    private boolean fits(int t, int task) {
        return ((free[t] - project.packedRequests[task]) & project.guard) == 0;
    }

    /** Whether some interval needs more of resource {@code k} than the resource can give in it. */
    private boolean overloaded(int k) {
        int[] starts =
                Arrays.stream(users[k]).map(task -> earliest[task]).distinct().toArray();
        int[] ends = Arrays.stream(users[k])
                .map(task -> latest[task] + project.durations[task])
                .distinct()
                .toArray();
        for (int start : starts) {
            for (int end : ends) {
                if (start < end && energy(k, start, end) > (long) project.capacities[k] * (end - start)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Least energy that the tasks must spend in {@code [start, end)}, pushed out of it left or right. */
    private long energy(int k, int start, int end) {
        long sum = 0;
        for (int task : users[k]) {
            int duration = project.durations[task];
            int inside = Math.min(
                    Math.min(duration, end - start), Math.min(earliest[task] + duration - start, end - latest[task]));
            if (inside > 0) {
                sum += (long) inside * project.requests[task][k];
            }
        }
        return sum;
    }

    private boolean raise(int task, int time) {
        boolean higher = time > earliest[task];
        earliest[task] = Math.max(earliest[task], time);
        return higher;
    }

    private boolean lower(int task, int time) {
        boolean lower = time < latest[task];
        latest[task] = Math.min(latest[task], time);
        return lower;
    }
}
