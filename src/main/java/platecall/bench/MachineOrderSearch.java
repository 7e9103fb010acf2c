package platecall.bench;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Search for job shops: every task needs one machine that carries one task at a time, so a schedule is an order of
 * tasks on each machine. Tabu search moves a task of the critical path to or from an end of its block (Balas and
 * Vazacopoulos, Management Science 44, 1998, 262-275; Zhang, Li, Guan and Rao, Computers and Operations Research 34,
 * 2007, 3229-3242); a small population of its results is bred by blending the order of two parents.
 */
final class MachineOrderSearch {

    private static final int POPULATION = 20;
    private static final int PATIENCE = 6_000;

    private final Project project;
    private final Budget budget;
    private final SplittableRandom random;
    private final int target;
    private final int tasks;
    private final int[] durations;
    private final int[] machine;
    private final int tenure;

    // The current machine orders, as links from task to task; -1 at the ends.
    private final int[] before;
    private final int[] after;
    /** All tasks, each behind its job and machine predecessors. */
    private final int[] order;

    private final int[] heads;
    private final int[] tails;
    private final int[] open;
    private int makespan;

    private final int[] runBest;
    private final int[] best;
    private int bestMakespan = Integer.MAX_VALUE;

    /** Until which step a task may not be put in front of another again: {@code [task * tasks + other]}. */
    private final int[] tabuUntil;

    private int step;
    private final int[] segmentHeads;

    private Move chosen;

    /** Task {@code moved} leaves its place and goes right behind ({@code forward}) or right before {@code anchor}. */
    private record Move(int moved, int anchor, boolean forward) {}

    MachineOrderSearch(Project project, Budget budget, long seed, int target) {
        this.project = project;
        this.budget = budget;
        this.random = new SplittableRandom(seed);
        this.target = target;
        this.tasks = project.tasks;
        this.durations = project.durations;
        this.machine = IntStream.range(0, tasks)
                .map(task -> IntStream.range(0, project.capacities.length)
                        .filter(k -> project.requests[task][k] > 0)
                        .findFirst()
                        .orElse(-1))
                .toArray();
        int machines = project.capacities.length;
        this.tenure = 10 + tasks / (machines * machines);
        this.before = new int[tasks];
        this.after = new int[tasks];
        this.order = new int[tasks];
        this.heads = new int[tasks];
        this.tails = new int[tasks];
        this.open = new int[tasks];
        this.runBest = new int[tasks];
        this.best = new int[tasks];
        this.tabuUntil = new int[tasks * tasks];
        this.segmentHeads = new int[tasks];
    }

    /** Whether every task needs one unit of one resource of capacity 1, or nothing and no time. */
    static boolean suits(Project project) {
        return IntStream.range(0, project.tasks).allMatch(task -> {
            int[] request = project.requests[task];
            boolean milestone =
                    project.durations[task] == 0 && Arrays.stream(request).sum() == 0;
            boolean operation = project.durations[task] > 0
                    && Arrays.stream(request).sum() == 1
                    && IntStream.range(0, request.length).allMatch(k -> request[k] == 0 || project.capacities[k] == 1);
            return milestone || operation;
        });
    }

    /** Runs until the target or the budget is reached; returns the starts of the best schedule. */
    int[] run() {
        int[][] population = new int[POPULATION][];
        int[] makespans = new int[POPULATION];
        for (int i = 0; i < POPULATION && !done(); i++) {
            double[] keys = random.doubles(tasks).toArray();
            adopt(keys);
            makespans[i] = improve();
            population[i] = runBest.clone();
        }
        while (!done()) {
            int mother = random.nextInt(POPULATION);
            int father = random.nextInt(POPULATION - 1);
            father += father >= mother ? 1 : 0;
            double weight = 0.3 + 0.4 * random.nextDouble();
            double[] keys = new double[tasks];
            for (int position = 0; position < tasks; position++) {
                keys[population[mother][position]] += weight * position;
                keys[population[father][position]] += (1 - weight) * position;
            }
            adopt(keys);
            int result = improve();
            int worst = IntStream.range(0, POPULATION)
                    .reduce((a, b) -> makespans[b] >= makespans[a] ? b : a)
                    .orElseThrow();
            boolean known = IntStream.range(0, POPULATION)
                    .anyMatch(i -> makespans[i] == result && Arrays.equals(population[i], runBest));
            if (!known && result <= makespans[worst]) {
                makespans[worst] = result;
                population[worst] = runBest.clone();
            }
        }
        return best;
    }

    private boolean done() {
        return bestMakespan <= target || budget.spent();
    }

    /** Orders the tasks by key as far as precedence allows, and each machine in that order. */
    private void adopt(double[] keys) {
        for (int task = 0; task < tasks; task++) {
            open[task] = project.predecessors[task].length;
        }
        boolean[] taken = new boolean[tasks];
        for (int position = 0; position < tasks; position++) {
            int next = -1;
            for (int task = 0; task < tasks; task++) {
                if (!taken[task] && open[task] == 0 && (next < 0 || keys[task] < keys[next])) {
                    next = task;
                }
            }
            taken[next] = true;
            order[position] = next;
            for (int successor : project.successors[next]) {
                open[successor]--;
            }
        }
        int[] last = new int[project.capacities.length];
        Arrays.fill(last, -1);
        Arrays.fill(before, -1);
        Arrays.fill(after, -1);
        for (int task : order) {
            if (machine[task] >= 0) {
                before[task] = last[machine[task]];
                if (before[task] >= 0) {
                    after[before[task]] = task;
                }
                last[machine[task]] = task;
            }
        }
    }

    /** Tabu search from the current orders; leaves its best order of tasks in {@code runBest}. */
    private int improve() {
        int runMakespan = Integer.MAX_VALUE;
        int patience = PATIENCE;
        Arrays.fill(tabuUntil, 0);
        step = 0;
        while (patience-- > 0) {
            evaluate();
            budget.count(1);
            if (makespan < runMakespan) {
                runMakespan = makespan;
                System.arraycopy(order, 0, runBest, 0, tasks);
                patience = PATIENCE;
                if (makespan < bestMakespan) {
                    bestMakespan = makespan;
                    System.arraycopy(heads, 0, best, 0, tasks);
                }
            }
            step++;
            if ((step & 63) == 0 && done() || bestMakespan <= target) {
                break;
            }
            chooseMove(runMakespan);
            if (chosen == null) {
                break;
            }
            apply(chosen);
        }
        return runMakespan;
    }

    /** Longest paths from the start and to the end, over jobs and machine orders. */
    private void evaluate() {
        int known = 0;
        for (int task = 0; task < tasks; task++) {
            open[task] = project.predecessors[task].length + (before[task] >= 0 ? 1 : 0);
            heads[task] = 0;
            if (open[task] == 0) {
                order[known++] = task;
            }
        }
        makespan = 0;
        for (int i = 0; i < known; i++) {
            int task = order[i];
            int end = heads[task] + durations[task];
            makespan = Math.max(makespan, end);
            for (int successor : project.successors[task]) {
                heads[successor] = Math.max(heads[successor], end);
                if (--open[successor] == 0) {
                    order[known++] = successor;
                }
            }
            int next = after[task];
            if (next >= 0) {
                heads[next] = Math.max(heads[next], end);
                if (--open[next] == 0) {
                    order[known++] = next;
                }
            }
        }
        for (int i = tasks - 1; i >= 0; i--) {
            int task = order[i];
            tails[task] = durations[task] + Math.max(jobTail(task), tailOf(after[task]));
        }
    }

    private int tailOf(int task) {
        return task < 0 ? 0 : tails[task];
    }

    private int endOf(int task) {
        return task < 0 ? 0 : heads[task] + durations[task];
    }

    private int jobHead(int task) {
        int head = 0;
        for (int predecessor : project.predecessors[task]) {
            head = Math.max(head, endOf(predecessor));
        }
        return head;
    }

    private int jobTail(int task) {
        int tail = 0;
        for (int successor : project.successors[task]) {
            tail = Math.max(tail, tails[successor]);
        }
        return tail;
    }

    private int bestEstimate;
    private int ties;
    private int tabuMoves;
    private Move tabuMove;

    /** Walks a random critical path and keeps the best allowed move of its blocks. */
    private void chooseMove(int runMakespan) {
        chosen = null;
        tabuMove = null;
        bestEstimate = Integer.MAX_VALUE;
        ties = 0;
        tabuMoves = 0;
        int task = randomCritical(order, -1);
        while (task >= 0) {
            int first = task;
            int last = task;
            while (after[last] >= 0 && isCritical(after[last]) && heads[after[last]] == endOf(last)) {
                last = after[last];
            }
            if (first != last) {
                offerBlock(first, last, runMakespan);
            }
            task = nextOnPath(last);
        }
        if (chosen == null) {
            chosen = tabuMove;
        }
    }

    private boolean isCritical(int task) {
        return heads[task] + tails[task] == makespan;
    }

    private int randomCritical(int[] candidates, int end) {
        int found = -1;
        int count = 0;
        for (int task : candidates) {
            boolean starts = end < 0 ? heads[task] == 0 && durations[task] > 0 : heads[task] == end;
            if (starts && isCritical(task) && random.nextInt(++count) == 0) {
                found = task;
            }
        }
        return found;
    }

    private int nextOnPath(int task) {
        int next = randomCritical(project.successors[task], endOf(task));
        return next;
    }

    private void offerBlock(int first, int last, int runMakespan) {
        for (int task = first; task != last; task = after[task]) {
            offer(new Move(task, last, true), runMakespan);
            offer(new Move(after[task], first, false), runMakespan);
            if (task != first) {
                offer(new Move(first, task, true), runMakespan);
                offer(new Move(last, task, false), runMakespan);
            }
        }
    }

    private void offer(Move move, int runMakespan) {
        if (!keepsOrder(move)) {
            return;
        }
        int estimate = estimate(move);
        if (isTabu(move) && estimate >= runMakespan) {
            if (random.nextInt(++tabuMoves) == 0) {
                tabuMove = move;
            }
        } else if (estimate < bestEstimate || estimate == bestEstimate && random.nextInt(++ties) == 0) {
            if (estimate < bestEstimate) {
                ties = 1;
            }
            bestEstimate = estimate;
            chosen = move;
        }
    }

    /** Sufficient for no circle: no job successor of a task moved back lies on a path to the anchor, and mirrored. */
    private boolean keepsOrder(Move move) {
        return move.forward ? tails[move.anchor] >= jobTail(move.moved) : endOf(move.anchor) >= jobHead(move.moved);
    }

    private boolean isTabu(Move move) {
        int task = move.moved;
        while (task != move.anchor) {
            task = move.forward ? after[task] : before[task];
            int arc = move.forward ? task * tasks + move.moved : move.moved * tasks + task;
            if (tabuUntil[arc] > step) {
                return true;
            }
        }
        return false;
    }

    /** Longest path through the tasks of the changed stretch, exact or a little low. */
    private int estimate(Move move) {
        int moved = move.moved;
        int anchor = move.anchor;
        int longest = 0;
        if (move.forward) {
            int end = endOf(before[moved]);
            for (int task = after[moved]; ; task = after[task]) {
                segmentHeads[task] = Math.max(end, jobHead(task));
                end = segmentHeads[task] + durations[task];
                if (task == anchor) {
                    break;
                }
            }
            int head = Math.max(end, jobHead(moved));
            int tail = durations[moved] + Math.max(jobTail(moved), tailOf(after[anchor]));
            longest = head + tail;
            for (int task = anchor; task != moved; task = before[task]) {
                tail = durations[task] + Math.max(jobTail(task), tail);
                longest = Math.max(longest, segmentHeads[task] + tail);
            }
        } else {
            int head = Math.max(endOf(before[anchor]), jobHead(moved));
            int end = head + durations[moved];
            for (int task = anchor; task != moved; task = after[task]) {
                segmentHeads[task] = Math.max(end, jobHead(task));
                end = segmentHeads[task] + durations[task];
            }
            int tail = tailOf(after[moved]);
            for (int task = before[moved]; ; task = before[task]) {
                tail = durations[task] + Math.max(jobTail(task), tail);
                longest = Math.max(longest, segmentHeads[task] + tail);
                if (task == anchor) {
                    break;
                }
            }
            longest = Math.max(longest, head + durations[moved] + Math.max(jobTail(moved), tail));
        }
        return longest;
    }

    private void apply(Move move) {
        int moved = move.moved;
        int until = step + tenure + random.nextInt(tenure / 2 + 1);
        for (int task = moved; task != move.anchor; ) {
            task = move.forward ? after[task] : before[task];
            tabuUntil[move.forward ? moved * tasks + task : task * tasks + moved] = until;
        }
        link(before[moved], after[moved]);
        if (move.forward) {
            int next = after[move.anchor];
            link(move.anchor, moved);
            link(moved, next);
        } else {
            int previous = before[move.anchor];
            link(previous, moved);
            link(moved, move.anchor);
        }
    }

    private void link(int first, int second) {
        if (first >= 0) {
            after[first] = second;
        }
        if (second >= 0) {
            before[second] = first;
        }
    }
}
