package platecall.solve;

import static platecall.solve.PricedBound.EARLY;
import static platecall.solve.PricedBound.NEVER;
import static platecall.solve.PricedBound.OUTSIDE;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import platecall.day.Station;
import platecall.solve.PricedBound.Node;
import platecall.solve.PricedBound.Tree;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Oven;
import platecall.tasks.TaskNet.Task;

/**
 * Copies whose food goes into one oven at several temperatures, or more than it has room for, choose their times
 * together: in any plan, food sorted by its start leaves time to change the temperature between neighbours. Copies of
 * one recipe go in order of their calls: swapping two costs no less, as looks are convex in the minute of plate-up.
 */
final class OvenOrder {

    /** Food that is at most so many minutes away in an oven is ordered together. */
    private static final int NEAR = 60;

    private static final int MOST_STATES = 1300;
    private static final int MOST_WORK = 10_000;
    private static final int SKIPPED = 1 << 30;
    private static final int NEVER_CLOSED = 1 << 29;

    private final PricedBound bound;
    private final Oven oven;
    private final List<Tree> members;
    private final int[] node;
    private final int[] radix;
    private final int from;
    private final int length;
    /** By state, then by the recipe that went in last and its start. */
    private final long[][][] least;

    /** Copies that went in as a group after others, or less than 0: after their own recipe; or who was left out. */
    private final int[][][] choice;

    /** Recipe, number and start of each copy in the best course. */
    private final List<int[]> chosenLast = new ArrayList<>();

    private final long[] empty;
    private final long[][] upTo;
    private final int[][] where;
    private final long[][][] cost;
    private final int[] room;
    private final int[][] gap;

    OvenOrder(PricedBound bound, Oven oven, List<Tree> members) {
        this.bound = bound;
        this.oven = oven;
        this.members = members;
        int count = members.size();
        node = members.stream().mapToInt(OvenOrder::ovenNode).toArray();
        radix = new int[count + 1];
        radix[0] = 1;
        int low = Integer.MAX_VALUE;
        int high = 0;
        gap = new int[count][count];
        for (int a = 0; a < count; a++) {
            radix[a + 1] = radix[a] * (members.get(a).copies.size() + 1);
            low = Math.min(low, in(a).from);
            high = Math.max(high, in(a).to + 1);
            for (int b = 0; b < count; b++) {
                gap[a][b] = gap(bound, oven, in(a).task, in(b).task);
            }
        }
        from = low;
        length = high - low;
        least = new long[radix[count]][count][length];
        choice = new int[radix[count]][count][length];
        empty = new long[radix[count]];
        upTo = new long[count][length];
        where = new int[count][length];
        cost = members.stream().map(tree -> new long[tree.copies.size()][]).toArray(long[][][]::new);
        room = new int[count];
        for (int a = 0; a < count; a++) {
            room[a] = Math.max(1, Math.min(cost[a].length, roomFor(bound, oven, in(a).task)));
        }
        members.forEach(tree -> tree.ordered = true);
    }

    private Node in(int member) {
        return members.get(member).nodes[node[member]];
    }

    /** The task of a recipe that can only be done in one oven, or {@link #OUTSIDE}. */
    private static int ovenNode(Tree tree) {
        for (int i = 0; i < tree.nodes.length; i++) {
            Node node = tree.nodes[i];
            if (node != null
                    && node.task.modes().size() == 1
                    && node.task.modes().get(0).oven() >= 0) {
                return i;
            }
        }
        return OUTSIDE;
    }

    /** Splits the copies of each oven into groups that may be in each other's way, none too large. */
    static void groups(PricedBound bound) {
        for (int o = 0; o < bound.net.ovens().size(); o++) {
            Oven oven = bound.net.ovens().get(o);
            List<Tree> users = new ArrayList<>();
            for (Tree tree : bound.trees) {
                int i = ovenNode(tree);
                if (i != OUTSIDE && tree.nodes[i].task.modes().get(0).oven() == o && tree.nodes[i].own.length > 0) {
                    users.add(tree);
                }
            }
            List<Tree> group = new ArrayList<>();
            for (Tree tree : users) {
                long states = tree.copies.size() + 1L;
                boolean meets = group.isEmpty();
                for (Tree other : group) {
                    states *= other.copies.size() + 1L;
                    meets |= meet(bound, oven, other, tree);
                }
                if (!meets || states > MOST_STATES) {
                    close(bound, oven, group);
                    group = new ArrayList<>();
                }
                group.add(tree);
            }
            close(bound, oven, group);
        }
    }

    private static void close(PricedBound bound, Oven oven, List<Tree> group) {
        long states = 1;
        long choices = 0;
        for (Tree tree : group) {
            states *= tree.copies.size() + 1L;
            choices += Math.min(tree.copies.size(), roomFor(bound, oven, tree.nodes[ovenNode(tree)].task));
        }
        boolean alone = group.size() == 1 && !meet(bound, oven, group.get(0), group.get(0));
        if (states * choices <= MOST_WORK && !alone && !group.isEmpty()) {
            bound.ovens.add(new OvenOrder(bound, oven, group));
        }
    }

    /** Whether two recipes may be in each other's way if they are at their peak, or a little off it. */
    private static boolean meet(PricedBound bound, Oven oven, Tree one, Tree other) {
        Node a = one.nodes[ovenNode(one)];
        Node b = other.nodes[ovenNode(other)];
        if (one == other) {
            return one.copies.size() > roomFor(bound, oven, a.task);
        }
        return (gap(bound, oven, a.task, b.task) > 0 || gap(bound, oven, b.task, a.task) > 0)
                && Math.max(a.from, b.from) + EARLY < Math.min(a.to + a.least, b.to + b.least) + NEAR;
    }

    /**
     * Costs of a copy for each start of each task on the way from plate-up to the oven, plate-up first: of that task, of
     * those on the way before it and of all beside the way, each at its best.
     */
    private long[][] costs(int member, int number) {
        Tree tree = members.get(member);
        int[] path = path(member);
        long[][] costs = new long[path.length][];
        for (int k = 0; k < path.length; k++) {
            Node child = tree.nodes[path[k]];
            int next = k + 1 < path.length ? path[k + 1] : OUTSIDE;
            costs[k] = new long[child.own.length];
            for (int x = 0; x < child.own.length; x++) {
                long above = k == 0 ? tree.looks.get(number)[x] : NEVER;
                int best = k == 0 ? OUTSIDE : bestAbove(tree, path, k, x, costs[k - 1]);
                if (best != OUTSIDE) {
                    above = costs[k - 1][best]
                            + bound.waited(child, tree.nodes[path[k - 1]].from + best)
                            - bound.waited(child, child.from + x + child.least);
                }
                costs[k][x] = above >= NEVER / 2 ? NEVER : above + bound.aside(tree, path[k], next, x);
            }
        }
        return costs;
    }

    /** The tasks from plate-up back to the oven. */
    private int[] path(int member) {
        List<Integer> path = new ArrayList<>();
        for (int i = node[member]; i != OUTSIDE; i = members.get(member).nodes[i].parent) {
            path.add(0, i);
        }
        return path.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Least cost of all its copies; asks for what they then use. A state is how many copies of each recipe are done, which
     * recipe went in last and when. Neighbours of one recipe go in as groups of as many as there is room for, the first
     * group perhaps smaller: each group's last goes in when the last of the group before it is out.
     */
    long least() {
        int count = members.size();
        for (int a = 0; a < count; a++) {
            for (int n = 0; n < cost[a].length; n++) {
                long[][] costs = costs(a, n);
                cost[a][n] = costs[costs.length - 1];
            }
        }
        // What copies cost that go elsewhere before any food is in the oven.
        Arrays.fill(empty, NEVER);
        empty[0] = 0;
        for (long[][] ofState : least) {
            for (long[] row : ofState) {
                Arrays.fill(row, NEVER);
            }
        }
        for (int state = 0; state < least.length; state++) {
            running(state);
            for (int b = 0; b < count; b++) {
                int number = done(state, b);
                if (number < cost[b].length) {
                    leaveOut(state, b, members.get(b).elsewhere.get(number));
                    putIn(state, b);
                }
            }
        }
        return follow();
    }

    /** Asks for what its copies use if food goes into the oven as before. */
    long askAgain() {
        for (int[] known : chosenLast) {
            askFor(known[0], known[1], known[2]);
        }
        return 0;
    }

    private int done(int state, int member) {
        return state / radix[member] % (cost[member].length + 1);
    }

    /** Least cost up to each start, and the start that has it. */
    private void running(int state) {
        for (int last = 0; last < upTo.length; last++) {
            runningLeast(least[state][last], upTo[last], where[last]);
        }
    }

    private static void runningLeast(long[] values, long[] upTo, int[] where) {
        long best = NEVER;
        int at = OUTSIDE;
        for (int x = 0; x < values.length; x++) {
            if (values[x] < best) {
                best = values[x];
                at = x;
            }
            upTo[x] = best;
            where[x] = at;
        }
    }

    private void leaveOut(int state, int b, long elsewhere) {
        int next = state + radix[b];
        empty[next] = Math.min(empty[next], empty[state] + elsewhere);
        for (int last = 0; last < upTo.length; last++) {
            long[] here = least[state][last];
            long[] there = least[next][last];
            for (int x = 0; x < length; x++) {
                if (here[x] < NEVER && here[x] + elsewhere < there[x]) {
                    there[x] = here[x] + elsewhere;
                    choice[next][last][x] = SKIPPED + b;
                }
            }
        }
    }

    /** What comes before a recipe that goes in at a start after others: their last and its start, or {@link #OUTSIDE}. */
    private int source(int state, int b, int x) {
        long best = empty[state];
        int source = OUTSIDE;
        for (int a = 0; a < upTo.length; a++) {
            int y = x - gap[a][b];
            if (a != b && y >= 0 && upTo[a][y] < best) {
                best = upTo[a][y];
                source = a * length + where[a][y];
            }
        }
        return source;
    }

    private long costOf(int state, int source) {
        return source == OUTSIDE ? empty[state] : least[state][source / length][source % length];
    }

    /** Tries every group of a recipe that may go in next. */
    private void putIn(int state, int b) {
        long[] after = new long[length];
        long[] run = new long[length];
        int[] spare = new int[length];
        for (int x = 0; x < length; x++) {
            after[x] = costOf(state, source(state, b, x));
        }
        int number = done(state, b);
        for (int g = 1; g <= room[b] && number + g <= cost[b].length; g++) {
            addCost(after, b, number + g - 1);
            addCost(run, b, number + g - 1);
            long[] there = least[state + g * radix[b]][b];
            int[] chosen = choice[state + g * radix[b]][b];
            for (int x = 0; x < length; x++) {
                if (after[x] < there[x]) {
                    there[x] = after[x];
                    chosen[x] = g;
                }
                int y = x - in(b).least;
                if (g == room[b] && y >= 0 && upTo[b][y] < NEVER && upTo[b][y] + run[x] < there[x]) {
                    there[x] = upTo[b][y] + run[x];
                    chosen[x] = -g;
                }
            }
            runningLeast(after, after, spare);
            runningLeast(run, run, spare);
        }
    }

    private void addCost(long[] values, int b, int number) {
        int shift = in(b).from - from;
        for (int x = 0; x < length; x++) {
            int y = x - shift;
            boolean possible = values[x] < NEVER && y >= 0 && y < cost[b][number].length;
            values[x] = possible ? Math.min(NEVER, values[x] + cost[b][number][y]) : NEVER;
        }
    }

    /** Follows the best course back and asks for what its copies use. */
    private long follow() {
        int state = least.length - 1;
        long best = empty[state];
        int at = OUTSIDE;
        for (int last = 0; last < upTo.length; last++) {
            for (int x = 0; x < length; x++) {
                if (least[state][last][x] < best) {
                    best = least[state][last][x];
                    at = last * length + x;
                }
            }
        }
        chosenLast.clear();
        while (at != OUTSIDE) {
            int b = at / length;
            int chosen = choice[state][b][at % length];
            if (chosen >= SKIPPED) {
                state -= radix[chosen - SKIPPED];
            } else {
                state -= Math.abs(chosen) * radix[b];
                at = followGroup(state, b, chosen, at % length);
            }
        }
        return best;
    }

    /** Asks for what a group uses whose last goes in at {@code x}; returns what came before it. */
    private int followGroup(int state, int b, int chosen, int x) {
        running(state);
        int size = Math.abs(chosen);
        int number = done(state, b);
        int[][] before = new int[size][length];
        long[] values = new long[length];
        for (int y = 0; y < length && chosen > 0; y++) {
            values[y] = costOf(state, source(state, b, y));
        }
        for (int g = 0; g < size; g++) {
            addCost(values, b, number + g);
            runningLeast(values, values, before[g]);
        }
        int at = x;
        for (int g = size - 1; g >= 0; g--) {
            // The last of a group goes in at x, each before it where it costs least up to the next.
            at = g == size - 1 ? x : before[g][at];
            int[] known = {b, number + g, at + from - in(b).from};
            chosenLast.add(known);
            askFor(known[0], known[1], known[2]);
        }
        return chosen > 0 ? source(state, b, at) : b * length + where[b][x - in(b).least];
    }

    /** Asks for what a copy uses whose food goes into the oven at a start. */
    private void askFor(int member, int number, int x) {
        Tree tree = members.get(member);
        int[] path = path(member);
        long[][] costs = costs(member, number);
        bound.ask(tree, node[member], x, OUTSIDE);
        int at = x;
        for (int k = path.length - 1; k > 0; k--) {
            Node child = tree.nodes[path[k]];
            int best = bestAbove(tree, path, k, at, costs[k - 1]);
            bound.ask(tree, path[k - 1], best, path[k]);
            if (child.waitRow != OUTSIDE) {
                int until = tree.nodes[path[k - 1]].from + best;
                bound.ask(child.waitRow, child.from + at + child.least, until, child.task.waitUnits());
            }
            at = best;
        }
    }

    /** The start of the task that follows on the way to plate-up at which it costs least. */
    private int bestAbove(Tree tree, int[] path, int k, int x, long[] above) {
        Node child = tree.nodes[path[k]];
        Node parent = tree.nodes[path[k - 1]];
        int s = child.from + x;
        int low = Math.max(0, s - child.windowHigh - parent.from);
        int high = Math.min(above.length - 1, s - child.windowLow - parent.from);
        int best = OUTSIDE;
        for (int y = low; y <= high; y++) {
            if (above[y] < NEVER / 2
                    && (best == OUTSIDE
                            || above[y] + bound.waited(child, parent.from + y)
                                    < above[best] + bound.waited(child, parent.from + best))) {
                best = y;
            }
        }
        return best;
    }

    /** Least minutes from the start of one task in an oven to the start of another that starts no earlier. */
    private static int gap(PricedBound bound, Oven oven, Task one, Task other) {
        if (one.ovenCelsius() != other.ovenCelsius()) {
            int change = oven.minutesToChange(one.ovenCelsius(), other.ovenCelsius());
            int anew = shortestClosing(oven) + oven.minutesToChange(Station.COLD_OVEN_CELSIUS, other.ovenCelsius());
            return one.leastMinutes() + Math.min(change, anew);
        }
        return units(oven, one) + units(oven, other) > most(bound, oven) ? one.leastMinutes() : 0;
    }

    /** Least minutes for which an oven is closed between two openings: it is cold after them, however hot it was. */
    private static int shortestClosing(Oven oven) {
        int shortest = NEVER_CLOSED;
        int since = NEVER_CLOSED;
        for (int t = 1; t < oven.open().length; t++) {
            if (oven.open()[t - 1] && !oven.open()[t]) {
                since = t;
            } else if (!oven.open()[t - 1] && oven.open()[t] && since != NEVER_CLOSED) {
                shortest = Math.min(shortest, t - since);
            }
        }
        return shortest;
    }

    private static int most(PricedBound bound, Oven oven) {
        return Arrays.stream(bound.net.lanes().get(oven.lane()).free()).max().orElse(0);
    }

    /** How many of a recipe have room at a time; riders of a batch share it. */
    private static int roomFor(PricedBound bound, Oven oven, Task task) {
        int units = units(oven, task);
        return task.perBatch() || units == 0 ? Integer.MAX_VALUE : most(bound, oven) / units;
    }

    private static int units(Oven oven, Task task) {
        Mode mode = task.modes().get(0);
        for (int k = 0; k < mode.lanes().length; k++) {
            if (mode.lanes()[k] == oven.lane()) {
                return mode.units()[k];
            }
        }
        return 0;
    }
}
