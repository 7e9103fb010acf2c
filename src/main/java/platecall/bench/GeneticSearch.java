package platecall.bench;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Genetic search over task lists for the makespan of a resource-constrained project. Two populations face each other:
 * one of schedules pushed to the start, one of schedules pushed to the end of the project. The children of one are
 * built in the other direction and join the other population, so each crossover works on a schedule that has just been
 * justified (Valls, Ballestin and Quintanilla, European Journal of Operational Research 165, 2005, 375-386; Debels and
 * Vanhoucke, Operations Research 55, 2007, 457-469).
 */
final class GeneticSearch {

    private static final int MAKESPAN_SHIFT = 40;
    private static final int FEW_TASKS = 50;
    private static final int MANY_TASKS = 100;
    private static final int FEW_TASKS_POPULATION = 40;
    private static final int POPULATION = 200;
    private static final int MANY_TASKS_POPULATION = 500;
    private static final int SMALL_BUDGET_POPULATION = 100;
    private static final long SMALL_BUDGET_SCHEDULES = 100_000;
    /** How much of the population is left when the budget is spent. */
    private static final double LAST_SHARE = 0.05;

    private static final int LEAST_POPULATION = 5;
    /** Share of the crossovers that leave the mother's tasks of a stretch in the stretch. */
    private static final double WITHIN_STRETCH = 0.7;

    /** Children per member without a new best before the population starts anew. */
    private static final int PATIENCE = 200;

    private final Project project;
    private final Budget budget;
    private final SplittableRandom random;
    private final int target;
    private final int tasks;
    private final int population;
    private final double lastShare;
    private final Side[] sides;

    private final int[] child;
    private final int[] position;
    private final boolean[] taken;
    private final int[] starts;
    private final int[] mirrored;
    private int makespan;

    private final int[] best;
    private int bestMakespan = Integer.MAX_VALUE;

    /** A direction of time, and the population whose lists are made to be built in this direction. */
    private final class Side {
        final SerialPass pass;
        final int[][] before;
        final int[][] after;
        final int[][] lists = new int[population][tasks];
        final long[] costs = new long[population];
        long bestCost;
        /** Members in use, at the front of the arrays. */
        int size;
        /** A first schedule above this is not worth pushing to and fro. */
        int hopeful;

        Side(SerialPass pass, int[][] before, int[][] after) {
            this.pass = pass;
            this.before = before;
            this.after = after;
        }

        int betterOfTwo() {
            int one = random.nextInt(size);
            int other = random.nextInt(size);
            return costs[one] <= costs[other] ? one : other;
        }

        int worstOfFour() {
            int worst = random.nextInt(size);
            for (int i = 1; i < 4; i++) {
                int other = random.nextInt(size);
                worst = costs[other] > costs[worst] ? other : worst;
            }
            return worst;
        }

        boolean holds(long cost) {
            for (int i = 0; i < size; i++) {
                if (costs[i] == cost) {
                    return true;
                }
            }
            return false;
        }

        int worst() {
            int worst = 0;
            for (int i = 1; i < size; i++) {
                worst = costs[i] > costs[worst] ? i : worst;
            }
            return worst;
        }

        /** Drops the worst members. */
        void shrink(int to) {
            while (size > to) {
                int worst = worst();
                size--;
                int[] list = lists[worst];
                lists[worst] = lists[size];
                lists[size] = list;
                costs[worst] = costs[size];
            }
            int worstMakespan = (int) (costs[worst()] >> MAKESPAN_SHIFT);
            hopeful = worstMakespan + 1 + worstMakespan / 40;
        }
    }

    GeneticSearch(Project project, Budget budget, long seed, int target) {
        this.project = project;
        this.budget = budget;
        this.random = new SplittableRandom(seed);
        this.target = target;
        this.tasks = project.tasks;
        this.population = tasks < FEW_TASKS
                ? FEW_TASKS_POPULATION
                : budget.schedules() <= SMALL_BUDGET_SCHEDULES
                        ? SMALL_BUDGET_POPULATION
                        : tasks < MANY_TASKS ? POPULATION : MANY_TASKS_POPULATION;
        // A small population converges soon; it starts anew from time to time instead of shrinking.
        this.lastShare = tasks < FEW_TASKS ? 1 : LAST_SHARE;
        this.sides = new Side[] {
            new Side(SerialPass.forward(project), project.predecessors, project.successors),
            new Side(SerialPass.backward(project), project.successors, project.predecessors)
        };
        this.child = new int[tasks];
        this.position = new int[tasks];
        this.taken = new boolean[tasks];
        this.starts = new int[tasks];
        this.mirrored = new int[tasks];
        this.best = new int[tasks];
    }

    /** Runs until the target or the budget is reached; returns the starts of the best schedule. */
    int[] run() {
        while (!done()) {
            evolve();
        }
        return best;
    }

    private boolean done() {
        return bestMakespan <= target || budget.spent();
    }

    /** Wide search while much of the budget is left, a narrow one at its end. */
    private int size() {
        double share = 1 - (1 - lastShare) * budget.share();
        return Math.max(LEAST_POPULATION, (int) (population * share));
    }

    private void evolve() {
        int size = size();
        for (int side = 0; side < 2; side++) {
            sides[side].size = size;
            for (int member = 0; member < size; member++) {
                sample(member == 0);
                build(0, Integer.MAX_VALUE);
                // One pass more or two, so that the list is one for this side.
                justify(0, side == 0 ? 1 : 2);
                replace(sides[side], member, cost());
                if (done()) {
                    return;
                }
            }
            sides[side].bestCost = Long.MAX_VALUE;
        }
        int stalled = 0;
        for (int children = 0; stalled < 2 * PATIENCE * size; children++) {
            if ((children & 15) == 0) {
                if (done()) {
                    return;
                }
                size = Math.min(size, size());
                sides[0].shrink(size);
                sides[1].shrink(size);
            }
            stalled++;
            int from = random.nextInt(2);
            Side parents = sides[from];
            int mother = parents.betterOfTwo();
            int father = parents.betterOfTwo();
            while (father == mother) {
                father = parents.betterOfTwo();
            }
            cross(parents.lists[mother], parents.lists[father]);
            mutate(parents);
            Side home = sides[1 - from];
            build(from, home.hopeful);
            if (makespan > home.hopeful) {
                continue;
            }
            justify(from, 2);
            long cost = cost();
            if (!home.holds(cost)) {
                int victim = home.worstOfFour();
                if (cost <= home.costs[victim]) {
                    replace(home, victim, cost);
                    if (cost < home.bestCost) {
                        home.bestCost = cost;
                        stalled = 0;
                    }
                }
            }
        }
    }

    /** Makespan first, then the sum of starts: among equals the fuller schedule is the better parent. */
    private long cost() {
        long sum = 0;
        for (int start : starts) {
            sum += start;
        }
        return ((long) makespan << MAKESPAN_SHIFT) + sum;
    }

    /** Builds the child in the direction of {@code side}, as far as it stays within the limit. */
    private void build(int side, int limit) {
        makespan = sides[side].pass.run(child, starts, limit);
        budget.count(1);
        record(side);
    }

    /** Pushes the schedule, built in the direction of {@code side}, to and fro. */
    private void justify(int side, int passes) {
        for (int i = 0; i < passes; i++) {
            sides[side].pass.mirror(starts, makespan, mirrored);
            side = 1 - side;
            sides[side].pass.sort(mirrored, makespan, child);
            build(side, Integer.MAX_VALUE);
        }
        sides[side].pass.mirror(starts, makespan, mirrored);
    }

    private void record(int side) {
        if (makespan < bestMakespan) {
            bestMakespan = makespan;
            if (side == 0) {
                System.arraycopy(starts, 0, best, 0, tasks);
            } else {
                sides[1].pass.mirror(starts, makespan, best);
            }
        }
    }

    private void replace(Side side, int member, long cost) {
        side.pass.sort(mirrored, makespan, side.lists[member]);
        side.costs[member] = cost;
    }

    /**
     * Two-point crossover. Either the mother's tasks of a stretch, put into the father's order; or her front, then
     * tasks in the father's order, then the rest in hers.
     */
    private void cross(int[] mother, int[] father) {
        // A stretch of a quarter to three quarters of the list: shorter or longer ones make children too like a parent.
        int stretch = tasks / 4 + random.nextInt(tasks / 2 + 1);
        int from = random.nextInt(tasks - stretch + 1);
        int to = from + stretch;
        Arrays.fill(taken, false);
        if (random.nextDouble() < WITHIN_STRETCH) {
            System.arraycopy(mother, 0, child, 0, tasks);
            for (int i = from; i < to; i++) {
                taken[mother[i]] = true;
            }
            int place = from;
            for (int task : father) {
                if (taken[task]) {
                    child[place++] = task;
                }
            }
            return;
        }
        int length = 0;
        while (length < from) {
            taken[mother[length]] = true;
            child[length] = mother[length];
            length++;
        }
        for (int i = 0; length < to; i++) {
            if (!taken[father[i]]) {
                taken[father[i]] = true;
                child[length++] = father[i];
            }
        }
        for (int task : mother) {
            if (!taken[task]) {
                child[length++] = task;
            }
        }
    }

    /** Shifts a few tasks within the stretch that their neighbours in the precedence leave them. */
    private void mutate(Side side) {
        int reach = Math.max(3, tasks / 2);
        int few = Math.max(1, Math.round(tasks / 40f));
        int shifts = few + random.nextInt(2 * few + 1);
        for (int i = 0; i < tasks; i++) {
            position[child[i]] = i;
        }
        while (shifts-- > 0) {
            int place = random.nextInt(tasks);
            int task = child[place];
            int low = Math.max(0, place - reach);
            int high = Math.min(tasks - 1, place + reach);
            for (int other : side.before[task]) {
                low = Math.max(low, position[other] + 1);
            }
            for (int other : side.after[task]) {
                high = Math.min(high, position[other] - 1);
            }
            if (low < high) {
                int to = low + random.nextInt(high - low);
                shift(task, place, to >= place ? to + 1 : to);
            }
        }
    }

    private void shift(int task, int place, int to) {
        int step = to > place ? 1 : -1;
        for (int i = place; i != to; i += step) {
            child[i] = child[i + step];
            position[child[i]] = i;
        }
        child[to] = task;
        position[task] = to;
    }

    /** Fills the child by drawing ready tasks, those with a long way to the end more often, or strictly first. */
    private void sample(boolean strict) {
        int[] open = new int[tasks];
        int[] ready = new int[tasks];
        double[] cumulative = new double[tasks];
        int readyCount = 0;
        for (int task = 0; task < tasks; task++) {
            open[task] = project.predecessors[task].length;
            if (open[task] == 0) {
                ready[readyCount++] = task;
            }
        }
        int bias = 1 + random.nextInt(4);
        for (int length = 0; length < tasks; length++) {
            int pick = 0;
            int shortest = Integer.MAX_VALUE;
            for (int i = 0; i < readyCount; i++) {
                shortest = Math.min(shortest, project.tails[ready[i]]);
                pick = project.tails[ready[i]] > project.tails[ready[pick]] ? i : pick;
            }
            if (!strict) {
                double sum = 0;
                for (int i = 0; i < readyCount; i++) {
                    sum += Math.pow(project.tails[ready[i]] - shortest + 1, bias);
                    cumulative[i] = sum;
                }
                double draw = random.nextDouble() * sum;
                for (pick = 0; cumulative[pick] <= draw; ) {
                    pick++;
                }
            }
            int task = ready[pick];
            ready[pick] = ready[--readyCount];
            child[length] = task;
            for (int successor : project.successors[task]) {
                if (--open[successor] == 0) {
                    ready[readyCount++] = successor;
                }
            }
        }
    }
}
