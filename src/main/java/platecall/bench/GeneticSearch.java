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

    private static final int LARGE_POPULATION = 150;
    private static final int HUGE_POPULATION = 300;
    private static final int HUGE_TASKS = 100;
    private static final int SMALL_POPULATION = 60;
    private static final long SMALL_BUDGET_SCHEDULES = 100_000;
    private static final double MUTATION_RATE = 0.05;
    /** Children per member without a new best before the population starts anew. */
    private static final int PATIENCE = 200;

    private final Project project;
    private final Budget budget;
    private final SplittableRandom random;
    private final int target;
    private final int tasks;
    private final int population;
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

        Side(SerialPass pass, int[][] before, int[][] after) {
            this.pass = pass;
            this.before = before;
            this.after = after;
        }

        int betterOfTwo() {
            int one = random.nextInt(population);
            int other = random.nextInt(population);
            return costs[one] <= costs[other] ? one : other;
        }

        int worstOfFour() {
            int worst = random.nextInt(population);
            for (int i = 1; i < 4; i++) {
                int other = random.nextInt(population);
                worst = costs[other] > costs[worst] ? other : worst;
            }
            return worst;
        }

        boolean holds(long cost) {
            for (long known : costs) {
                if (known == cost) {
                    return true;
                }
            }
            return false;
        }
    }

    GeneticSearch(Project project, Budget budget, long seed, int target) {
        this.project = project;
        this.budget = budget;
        this.random = new SplittableRandom(seed);
        this.target = target;
        this.tasks = project.tasks;
        this.population = budget.schedules() <= SMALL_BUDGET_SCHEDULES
                ? SMALL_POPULATION
                : tasks < HUGE_TASKS ? LARGE_POPULATION : HUGE_POPULATION;
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

    private void evolve() {
        for (int side = 0; side < 2; side++) {
            for (int member = 0; member < population; member++) {
                sample(member == 0);
                // Two passes more or three, so that the list is one for this side.
                justify(0, side == 0 ? 2 : 3);
                replace(sides[side], member, cost());
                if (done()) {
                    return;
                }
            }
            sides[side].bestCost = Long.MAX_VALUE;
        }
        int stalled = 0;
        for (int children = 0; stalled < 2 * PATIENCE * population; children++) {
            if ((children & 15) == 0 && done()) {
                return;
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
            justify(from, 3);
            Side home = sides[1 - from];
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
        return ((long) makespan << 40) + sum;
    }

    /** Builds the child, first in the direction of {@code side}, then to and fro. */
    private void justify(int side, int passes) {
        makespan = sides[side].pass.run(child, starts);
        record(side);
        for (int i = 1; i < passes; i++) {
            sides[side].pass.mirror(starts, makespan, mirrored);
            side = 1 - side;
            sides[side].pass.sort(mirrored, makespan, child);
            makespan = sides[side].pass.run(child, starts);
            record(side);
        }
        sides[side].pass.mirror(starts, makespan, mirrored);
        budget.count(passes);
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

    /** Two-point crossover: the mother's front, then tasks in the father's order, then the rest in the mother's. */
    private void cross(int[] mother, int[] father) {
        int one = random.nextInt(tasks);
        int other = random.nextInt(tasks);
        int from = Math.min(one, other);
        int to = Math.max(one, other);
        Arrays.fill(taken, false);
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
        int reach = Math.max(3, tasks / 4);
        int shifts = 0;
        for (int i = 0; i < tasks; i++) {
            shifts += random.nextDouble() < MUTATION_RATE ? 1 : 0;
        }
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
