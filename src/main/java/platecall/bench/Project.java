package platecall.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A resource-constrained project: tasks of fixed duration, finish-to-start precedence, renewable resources of constant
 * capacity. Tasks and resources are numbered from 0; times are whole time units from 0.
 *
 * <p>For fast fit tests all resources stand side by side in one {@code long}: each has a lane just wide enough for its
 * capacity and a guard bit on top, so {@code ((free - request) & guard) == 0} says whether a request fits.
 */
final class Project {

    final String name;
    final int tasks;
    final int[] durations;
    final int[][] successors;
    final int[][] predecessors;
    /** Units of each resource while a task runs: {@code requests[task][resource]}. */
    final int[][] requests;

    final int[] capacities;
    /** All tasks, each behind its predecessors. */
    final int[] topological;
    /** Longest path from the project's start to the start of a task. */
    final int[] heads;
    /** Longest path from the start of a task to the project's end; its own duration is inside. */
    final int[] tails;
    /** Longest path through the project. */
    final int criticalPath;
    /** Sum of all durations: one task after the other always fits. */
    final int horizon;

    final long packedCapacity;
    final long[] packedRequests;
    final long guard;

    /** @throws IllegalArgumentException if the project cannot be carried out; the message lists every reason */
    Project(String name, int[] durations, int[][] successors, int[][] requests, int[] capacities) {
        this.name = name;
        this.tasks = durations.length;
        this.durations = durations;
        this.successors = successors;
        this.requests = requests;
        this.capacities = capacities;
        refuse(misfits());
        this.predecessors = predecessors(successors);
        this.topological = topological();
        this.heads = new int[tasks];
        this.tails = new int[tasks];
        for (int task : topological) {
            for (int before : predecessors[task]) {
                heads[task] = Math.max(heads[task], heads[before] + durations[before]);
            }
        }
        for (int i = tasks - 1; i >= 0; i--) {
            int task = topological[i];
            for (int after : successors[task]) {
                tails[task] = Math.max(tails[task], tails[after]);
            }
            tails[task] += durations[task];
        }
        this.criticalPath = Arrays.stream(tails).max().orElse(0);
        this.horizon = Arrays.stream(durations).sum();

        int[] shifts = new int[capacities.length];
        long guards = 0;
        int bit = 0;
        for (int k = 0; k < capacities.length; k++) {
            shifts[k] = bit;
            bit += laneBits(capacities[k]);
            guards |= 1L << (bit - 1);
        }
        this.guard = guards;
        this.packedCapacity = pack(capacities, shifts);
        this.packedRequests =
                Arrays.stream(requests).mapToLong(r -> pack(r, shifts)).toArray();
    }

    private List<String> misfits() {
        List<String> problems = new ArrayList<>();
        if (tasks == 0) {
            problems.add("there are no tasks");
        }
        long sum = 0;
        for (int task = 0; task < tasks; task++) {
            sum += durations[task];
            if (durations[task] < 0) {
                problems.add(text("task %d has the duration %d", task + 1, durations[task]));
            }
            for (int after : successors[task]) {
                if (after < 0 || after >= tasks) {
                    problems.add(text("task %d has the successor %d; tasks are 1 to %d", task + 1, after + 1, tasks));
                }
            }
            for (int k = 0; k < capacities.length; k++) {
                if (requests[task][k] < 0 || requests[task][k] > capacities[k]) {
                    problems.add(text(
                            "task %d asks for %d of resource %d, which has %d",
                            task + 1, requests[task][k], k + 1, capacities[k]));
                }
            }
        }
        if (sum > 1_000_000) {
            problems.add(text("the durations sum to %d; at most 1000000 can be planned", sum));
        }
        if (Arrays.stream(capacities).anyMatch(c -> c < 0)) {
            problems.add("a capacity is negative");
        } else if (Arrays.stream(capacities).map(Project::laneBits).sum() > 64) {
            problems.add(text("%d resources of this capacity do not fit into 64 bits", capacities.length));
        }
        return problems;
    }

    private int[] topological() {
        int[] open = new int[tasks];
        int[] order = new int[tasks];
        int known = 0;
        for (int task = 0; task < tasks; task++) {
            open[task] = predecessors[task].length;
            if (open[task] == 0) {
                order[known++] = task;
            }
        }
        for (int i = 0; i < known; i++) {
            for (int after : successors[order[i]]) {
                if (--open[after] == 0) {
                    order[known++] = after;
                }
            }
        }
        if (known < tasks) {
            List<String> circle = new ArrayList<>();
            for (int task = 0; task < tasks; task++) {
                if (open[task] > 0 && circle.size() < 10) {
                    circle.add(String.valueOf(task + 1));
                }
            }
            refuse(List.of("the precedence runs in a circle at or before tasks " + String.join(", ", circle)));
        }
        return order;
    }

    private static int[][] predecessors(int[][] successors) {
        int[] counts = new int[successors.length];
        for (int[] all : successors) {
            for (int after : all) {
                counts[after]++;
            }
        }
        int[][] predecessors = new int[successors.length][];
        Arrays.setAll(predecessors, task -> new int[counts[task]]);
        for (int task = 0; task < successors.length; task++) {
            for (int after : successors[task]) {
                predecessors[after][--counts[after]] = task;
            }
        }
        return predecessors;
    }

    private static void refuse(List<String> problems) {
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", problems));
        }
    }

    private static int laneBits(int capacity) {
        return 33 - Integer.numberOfLeadingZeros(capacity);
    }

    private static long pack(int[] amounts, int[] shifts) {
        long packed = 0;
        for (int k = 0; k < amounts.length; k++) {
            packed |= (long) amounts[k] << shifts[k];
        }
        return packed;
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
