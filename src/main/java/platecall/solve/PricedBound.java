package platecall.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;

/**
 * Least points for the looks of some copies, from prices for what is scarce (Lagrangian relaxation). Each minute of a station
 * and of each set of hands has a price of 0 or more. Each copy alone chooses the times that cost it least, prices included;
 * what all minutes together are worth is taken off. A plan uses no minute more often than it is there, so that no plan
 * costs less, whatever the prices; they are raised where more is asked for than there is. Copies that share an oven at
 * several temperatures choose together ({@link OvenOrder}).
 *
 * <p>Only tasks bound to camera by limited waits count. Prices are whole thousandths of a point and all sums are of whole
 * numbers, so that no rounding lifts the bound.
 */
final class PricedBound {

    private static final long SCALE = 1000;
    static final long NEVER = Long.MAX_VALUE / 8;
    static final int OUTSIDE = -1;
    private static final int ENDLESS = Integer.MAX_VALUE / 4;
    /** Plate-up is looked at from so many minutes before its peak is lost; earlier costs no less than at the edge. */
    static final int EARLY = 120;
    /** Minutes after the call that are looked at. */
    private static final int LATE = 3;
    /** Longer waits count as unlimited. */
    private static final int LONGEST_WAIT = 240;

    private static final int ROUNDS = 120;
    /** What shares an oven chooses its order anew every so many rounds. */
    private static final int AGAIN = 4;

    /** Thousandths of a point by which a price moves in the first and in the last round. */
    private static final double FIRST_STEP = 1500;

    private static final double LAST_STEP = 50;
    /** Shares of earlier rounds in what is taken for too much asked, and for how much that varies. */
    private static final double DRIFT = 0.8;

    private static final double SPREAD = 0.95;

    final TaskNet net;
    private final int minutes;
    private final long[] hands;
    private final List<BreakTask> breaks;
    private final List<int[]> capacity = new ArrayList<>();
    private final Map<Long, Integer> handRow = new LinkedHashMap<>();
    /** What hands of a mask cost: of every set that holds them all. */
    private final Map<Long, long[]> handsUpTo = new LinkedHashMap<>();

    private final int[] groupSize;
    final List<Tree> trees = new ArrayList<>();
    final List<OvenOrder> ovens = new ArrayList<>();
    private final long[][] price;
    private final long[][] upTo;
    private final double[][] use;
    private int begin = Integer.MAX_VALUE;
    private int end = 0;

    /** A task of a recipe, in a tree whose root is plate-up. */
    static final class Node {
        final Task task;
        final int least;
        final int most;
        int share = 1;
        int parent = OUTSIDE;
        /** Starts that are looked at, the last included. */
        int from;

        int to;
        /** First and last minute at which it may start, counted from the start of its parent. */
        int windowLow;

        int windowHigh;
        int waitRow = OUTSIDE;
        /** Which ways fit, for each start in an otherwise empty kitchen. */
        boolean[][] open;

        long[] hands;
        long[] own;
        long[] cost;
        int[] way;
        /** Least cost for each start of the parent, and the start that has it. */
        long[] best;

        int[] at;

        Node(Task task) {
            this.task = task;
            least = task.leastMinutes();
            most = task.minutesFor(task.batchMost());
        }

        boolean lasts() {
            return least == most;
        }
    }

    /** Copies of one recipe, as seen for the same time, in order of their calls. */
    final class Tree {
        final Recipe recipe;
        final Node[] nodes;
        final int root;
        final List<Copy> copies = new ArrayList<>();
        final List<long[]> looks = new ArrayList<>();
        final List<Long> elsewhere = new ArrayList<>();
        final long lateWeight;
        boolean ordered;

        Tree(Recipe recipe, long lateWeight) {
            this.recipe = recipe;
            this.lateWeight = lateWeight;
            root = recipe.plated();
            nodes = nodes(recipe);
        }
    }

    /**
     * @param copies the copies that count
     * @param breaks meal breaks of the day, perhaps with narrower windows
     * @param kept points of each late minute that do not count here, at most those of the least late minute
     */
    PricedBound(TaskNet net, List<Copy> copies, List<BreakTask> breaks, long kept) {
        this.net = net;
        this.breaks = breaks;
        minutes = net.minutes();
        hands = net.handsFree().clone();
        for (BreakTask task : breaks) {
            // Whenever the break begins, these minutes are within it.
            for (int t = Math.max(0, task.latest()); t < Math.min(minutes, task.earliest() + task.minutes()); t++) {
                hands[t] &= ~(1L << task.person());
            }
        }
        net.lanes().forEach(lane -> capacity.add(lane.free()));
        groupSize = new int[net.batchGroups()];
        long everybody = 0;
        for (Copy copy : net.copies()) {
            for (Task task : copy.recipe().tasks()) {
                if (task.perBatch()) {
                    groupSize[task.batchGroup()]++;
                }
            }
        }
        for (Copy copy : copies) {
            for (Task task : copy.recipe().tasks()) {
                if (!task.handParts().isEmpty()) {
                    everybody |= task.handMask();
                    addHands(task.handMask());
                }
            }
        }
        addHands(everybody);
        handRow.keySet().forEach(mask -> handsUpTo.put(mask, new long[minutes + 1]));
        breaks.forEach(task -> handsUpTo.put(1L << task.person(), new long[minutes + 1]));
        price = new long[capacity.size()][minutes];
        upTo = new long[capacity.size()][minutes + 1];
        use = new double[capacity.size()][minutes + 1];
        Map<List<Object>, Tree> known = new HashMap<>();
        copies.stream().sorted(Comparator.comparingInt(Copy::due)).forEach(copy -> {
            // A record's equals would compare whole recipes.
            List<Object> key = List.of(System.identityHashCode(copy.recipe()), copy.show());
            known.computeIfAbsent(key, fresh -> {
                        Tree tree = new Tree(copy.recipe(), copy.recipe().lateWeight() - kept);
                        trees.add(tree);
                        return tree;
                    })
                    .copies
                    .add(copy);
        });
        for (Tree tree : trees) {
            lay(tree);
            for (Node node : tree.nodes) {
                begin = Math.min(begin, node == null ? begin : node.from);
                end = Math.max(end, node == null ? end : node.to + node.most);
            }
        }
        begin = Math.max(0, Math.min(begin, minutes));
        end = Math.min(end, minutes);
        OvenOrder.groups(this);
    }

    private void addHands(long mask) {
        handRow.computeIfAbsent(mask, fresh -> {
            capacity.add(Arrays.stream(hands)
                    .mapToInt(free -> Long.bitCount(free & mask))
                    .toArray());
            return capacity.size() - 1;
        });
    }

    // ---- what a copy may do -----------------------------------------------------------------------------------

    /** The tasks that are bound to plate-up by limited waits, and the carry. */
    private Node[] nodes(Recipe recipe) {
        Node[] nodes = new Node[recipe.size()];
        int root = recipe.plated();
        for (int i = root; i < nodes.length; i++) {
            nodes[i] = new Node(recipe.tasks().get(i));
        }
        for (int i = root + 1; i < nodes.length; i++) {
            Arc arc = recipe.into().get(i).get(0);
            Node before = nodes[arc.before()];
            nodes[i].parent = arc.before();
            nodes[i].windowLow = before.least + arc.least();
            nodes[i].windowHigh = before.most + Math.min(arc.most(), ENDLESS);
        }
        for (int i = root - 1; i >= 0; i--) {
            // Where several tasks follow, one of the arcs is kept: a relaxation.
            for (Arc arc : recipe.outOf().get(i)) {
                boolean tighter = nodes[i] == null || -arc.most() - nodes[i].most > nodes[i].windowLow;
                if (arc.after() <= root && nodes[arc.after()] != null && arc.most() <= LONGEST_WAIT && tighter) {
                    Node node = new Node(recipe.tasks().get(i));
                    node.parent = arc.after();
                    node.windowLow = -arc.most() - node.most;
                    node.windowHigh = -arc.least() - node.least;
                    // what keeps its place in a closed storage takes nothing of what is free there
                    boolean needsPlace = net.placeFrom(node.task) <= net.past().now();
                    node.waitRow = node.lasts() && needsPlace ? node.task.waitLane() : OUTSIDE;
                    nodes[i] = node;
                }
            }
        }
        for (Node node : nodes) {
            if (node != null && node.task.perBatch()) {
                // Riders of a batch each carry an even part of the largest that it can be.
                node.share = Math.max(1, Math.min(node.task.batchMost(), groupSize[node.task.batchGroup()]));
            }
        }
        return nodes;
    }

    private void lay(Tree tree) {
        Node root = tree.nodes[tree.root];
        int carry = tree.root == tree.nodes.length - 1
                ? 0
                : tree.nodes[tree.root + 1].windowLow - root.least + tree.nodes[tree.root + 1].least;
        int low = Integer.MAX_VALUE;
        int high = root.task.earliest() + root.least + carry + LATE;
        for (Copy copy : tree.copies) {
            int peak = Math.max(0, Math.min(EARLY, tree.recipe.peakTo() - copy.show()));
            low = Math.min(low, copy.due() - peak - EARLY);
            high = Math.max(high, copy.due() + LATE);
        }
        span(root, low, high);
        for (int i = tree.root - 1; i >= 0; i--) {
            Node node = tree.nodes[i];
            if (node != null) {
                Node parent = tree.nodes[node.parent];
                span(node, parent.from + node.windowLow, parent.to + node.windowHigh);
            }
        }
        for (int i = tree.root + 1; i < tree.nodes.length; i++) {
            Node node = tree.nodes[i];
            Node parent = tree.nodes[node.parent];
            span(node, parent.from + node.windowLow, parent.to + Math.min(node.windowHigh, node.windowLow + EARLY));
            // A carry that may wait longer than that is left out.
            node.hands = node.windowHigh > node.windowLow + EARLY ? null : node.hands;
        }
        for (Node node : tree.nodes) {
            if (node != null && node.parent != OUTSIDE) {
                node.best = new long[tree.nodes[node.parent].own.length];
                node.at = new int[tree.nodes[node.parent].own.length];
            }
        }
        for (Copy copy : tree.copies) {
            long[] looks = new long[root.own.length];
            for (int x = 0; x < looks.length; x++) {
                int s = root.from + x;
                looks[x] = SCALE * leastLook(tree, copy, s + root.least, s + root.most, carry);
            }
            tree.looks.add(looks);
            long early = root.from <= root.task.earliest()
                    ? NEVER
                    : leastLook(tree, copy, 0, root.from - 1 + root.most, carry);
            long late = leastLook(tree, copy, root.to + 1 + root.least, ENDLESS, carry);
            tree.elsewhere.add(SCALE * Math.min(early, late));
        }
    }

    /** Least points for looks of a copy plated in {@code [from, to]}: convex in that minute, so that corners tell it. */
    private static long leastLook(Tree tree, Copy copy, int from, int to, int carry) {
        Recipe recipe = tree.recipe;
        int due = copy.due();
        long least = NEVER / SCALE;
        int[] corners = {
            due - carry,
            due - recipe.peakFrom(),
            due + copy.show() - recipe.peakTo(),
            due + copy.show() - recipe.usableTo()
        };
        for (int corner : corners) {
            int plated = Math.max(from, Math.min(to, corner));
            // Linear between the corners of the minute at which it is ready, too.
            int[] readies = {
                plated + carry,
                due,
                plated + recipe.peakFrom(),
                plated + recipe.peakTo() - copy.show(),
                plated + recipe.usableTo() - copy.show()
            };
            for (int wanted : readies) {
                int ready = Math.max(plated + carry, wanted);
                least = Math.min(
                        least,
                        tree.lateWeight * recipe.lateMinutes(due, copy.show(), plated, ready)
                                + recipe.offPeakWeight() * recipe.offPeakMinutes(due, copy.show(), plated, ready));
            }
        }
        return least;
    }

    private void span(Node node, int from, int to) {
        node.from = Math.max(from, node.task.earliest());
        node.to = Math.max(node.from - 1, Math.min(to, minutes - node.least));
        int length = node.to - node.from + 1;
        node.own = new long[length];
        node.cost = new long[length];
        node.way = new int[length];
        node.hands = node.task.handParts().isEmpty() ? null : handsUpTo.get(node.task.handMask());
        node.open = new boolean[node.task.modes().size()][length];
        for (int m = 0; m < node.open.length; m++) {
            for (int x = 0; x < length; x++) {
                node.open[m][x] = fits(node, node.task.modes().get(m), node.from + x);
            }
        }
    }

    /** Whether a task can run in an otherwise empty kitchen; of a batch only its least minutes are looked at. */
    private boolean fits(Node node, Mode mode, int start) {
        int finish = start + node.least;
        for (int t = start; t < finish; t++) {
            if (mode.noisy() && !net.noiseAllowed()[t]) {
                return false;
            }
            for (int k = 0; k < mode.lanes().length; k++) {
                if (net.lanes().get(mode.lanes()[k]).free()[t] < mode.units()[k]) {
                    return false;
                }
            }
        }
        for (HandPart part : node.task.handParts()) {
            if (node.lasts() || !part.fromEnd()) {
                int from = start + part.offset(node.least);
                int to = Math.min(minutes, from + part.lengthIn(node.least));
                long people = node.task.handMask();
                for (int t = Math.max(0, from); t < to; t++) {
                    people &= hands[t];
                }
                if (Long.bitCount(people) < node.task.handsNeeded()) {
                    return false;
                }
            }
        }
        return true;
    }

    // ---- the bound --------------------------------------------------------------------------------------------

    /** Least points for the looks of the copies. */
    long points() {
        long best = 0;
        double[][] drift = new double[price.length][minutes];
        double[][] spread = new double[price.length][minutes];
        double[][] fine = new double[price.length][minutes];
        for (int round = 0; round <= ROUNDS; round++) {
            boolean exact = round % AGAIN == 0;
            long value = evaluate(exact);
            best = exact ? Math.max(best, value) : best;
            double step = FIRST_STEP * Math.pow(LAST_STEP / FIRST_STEP, round / (double) ROUNDS);
            boolean over = false;
            for (int r = 0; r < price.length; r++) {
                int[] there = capacity.get(r);
                double asked = 0;
                for (int t = begin; t < end; t++) {
                    asked += use[r][t];
                    double excess = asked - there[t];
                    over |= excess > 1e-9;
                    drift[r][t] = DRIFT * drift[r][t] + (1 - DRIFT) * excess;
                    spread[r][t] = SPREAD * spread[r][t] + (1 - SPREAD) * excess * excess;
                    if (fine[r][t] > 0 || drift[r][t] > 0) {
                        fine[r][t] = Math.max(0, fine[r][t] + step * drift[r][t] / Math.sqrt(spread[r][t] + 1e-9));
                        price[r][t] = Math.round(fine[r][t]);
                    }
                }
            }
            if (round == 0 && !over) {
                break;
            }
        }
        // A plan costs whole points.
        return -Math.floorDiv(-best, SCALE);
    }

    /** @param exact whether what shares an oven chooses anew; if not, the value is no bound */
    private long evaluate(boolean exact) {
        for (int r = 0; r < price.length; r++) {
            Arrays.fill(use[r], 0);
            for (int t = begin; t < end; t++) {
                upTo[r][t + 1] = upTo[r][t] + price[r][t];
            }
            Arrays.fill(upTo[r], end, minutes + 1, upTo[r][end]);
        }
        handsUpTo.forEach((mask, all) -> {
            Arrays.fill(all, 0);
            handRow.forEach((set, row) -> {
                if ((mask & ~set) == 0) {
                    for (int t = begin; t <= minutes; t++) {
                        all[t] += upTo[row][t];
                    }
                }
            });
        });
        long sum = 0;
        for (Tree tree : trees) {
            sum += least(tree);
        }
        for (OvenOrder oven : ovens) {
            sum += exact ? oven.least() : oven.askAgain();
        }
        for (BreakTask task : breaks) {
            sum += least(task);
        }
        for (int r = 0; r < price.length; r++) {
            int[] there = capacity.get(r);
            for (int t = begin; t < end; t++) {
                sum -= price[r][t] * there[t];
            }
        }
        return sum;
    }

    /** What a break costs at its cheapest; the minutes that it surely takes are no longer there to be sold. */
    private long least(BreakTask task) {
        long mask = 1L << task.person();
        long[] prices = handsUpTo.get(mask);
        long least = NEVER;
        int at = OUTSIDE;
        for (int s = Math.max(0, task.earliest()); s <= task.latest(); s++) {
            long cost = paid(prices, s, s + task.minutes());
            if (cost < least) {
                least = cost;
                at = s;
            }
        }
        if (at == OUTSIDE) {
            return 0;
        }
        askHands(mask, at, at + task.minutes(), 1);
        if (task.latest() < task.earliest() + task.minutes()) {
            least -= paid(prices, task.latest(), task.earliest() + task.minutes());
            askHands(mask, task.latest(), task.earliest() + task.minutes(), -1);
        }
        return least;
    }

    private long paid(long[] prices, int from, int to) {
        return prices[Math.max(0, Math.min(minutes, to))] - prices[Math.max(0, Math.min(minutes, from))];
    }

    private long least(Tree tree) {
        for (int i = tree.nodes.length - 1; i > tree.root; i--) {
            own(tree.nodes[i]);
            System.arraycopy(tree.nodes[i].own, 0, tree.nodes[i].cost, 0, tree.nodes[i].own.length);
            windows(tree.nodes[i], tree.nodes[tree.nodes[i].parent]);
        }
        for (int i = 0; i <= tree.root; i++) {
            Node node = tree.nodes[i];
            if (node == null) {
                continue;
            }
            own(node);
            System.arraycopy(node.own, 0, node.cost, 0, node.own.length);
            for (Node child : tree.nodes) {
                if (child != null && child.parent == i) {
                    for (int x = 0; x < node.cost.length; x++) {
                        node.cost[x] = Math.min(NEVER, node.cost[x] + child.best[x]);
                    }
                }
            }
            if (i < tree.root) {
                windows(node, tree.nodes[node.parent]);
            }
        }
        Node root = tree.nodes[tree.root];
        long sum = 0;
        for (int c = 0; c < tree.copies.size() && !tree.ordered; c++) {
            long[] looks = tree.looks.get(c);
            long least = tree.elsewhere.get(c);
            int at = OUTSIDE;
            for (int x = 0; x < looks.length; x++) {
                long cost = looks[x] + root.cost[x];
                if (cost < least) {
                    least = cost;
                    at = x;
                }
            }
            sum += least;
            if (at != OUTSIDE) {
                ask(tree, tree.root, at, OUTSIDE);
            }
        }
        return sum;
    }

    /** What a task alone costs for each start. */
    private void own(Node node) {
        Arrays.fill(node.own, NEVER);
        for (int m = 0; m < node.open.length; m++) {
            Mode mode = node.task.modes().get(m);
            for (int x = 0; x < node.own.length; x++) {
                if (node.open[m][x]) {
                    int s = node.from + x;
                    long cost = 0;
                    for (int k = 0; k < mode.units().length; k++) {
                        cost += mode.units()[k] * (upTo[mode.lanes()[k]][s + node.least] - upTo[mode.lanes()[k]][s]);
                    }
                    if (cost < node.own[x]) {
                        node.own[x] = cost;
                        node.way[x] = m;
                    }
                }
            }
        }
        for (HandPart part : node.task.handParts()) {
            if (node.hands != null && (node.lasts() || !part.fromEnd())) {
                int offset = part.offset(node.least);
                int length = part.lengthIn(node.least);
                for (int x = 0; x < node.own.length; x++) {
                    if (node.own[x] < NEVER) {
                        int from = node.from + x + offset;
                        node.own[x] += node.task.handsNeeded() * paid(node.hands, from, from + length);
                    }
                }
            }
        }
        if (node.share > 1) {
            for (int x = 0; x < node.own.length; x++) {
                node.own[x] = node.own[x] < NEVER ? node.own[x] / node.share : NEVER;
            }
        }
    }

    private int[] queue = new int[1024];

    /** Least cost of a child for each start of its parent: the least within a window that moves along. */
    private void windows(Node node, Node parent) {
        int n = node.cost.length;
        if (queue.length < n) {
            queue = new int[2 * n];
        }
        if (node.waitRow != OUTSIDE) {
            for (int x = 0; x < n; x++) {
                node.cost[x] -= waited(node, node.from + x + node.least);
            }
        }
        int head = 0;
        int tail = 0;
        int next = 0;
        for (int x = 0; x < node.best.length; x++) {
            int s = parent.from + x;
            int low = s + node.windowLow - node.from;
            int high = Math.min(n - 1, s + node.windowHigh - node.from);
            while (next <= high) {
                while (tail > head && node.cost[queue[tail - 1]] >= node.cost[next]) {
                    tail--;
                }
                queue[tail++] = next++;
            }
            while (head < tail && queue[head] < low) {
                head++;
            }
            boolean found = head < tail && node.cost[queue[head]] < NEVER / 2;
            node.best[x] = found ? node.cost[queue[head]] + waited(node, s) : NEVER;
            node.at[x] = found ? queue[head] : OUTSIDE;
        }
    }

    long waited(Node node, int until) {
        return node.waitRow == OUTSIDE
                ? 0
                : node.task.waitUnits() * upTo[node.waitRow][Math.max(0, Math.min(minutes, until))];
    }

    // ---- what is asked for ------------------------------------------------------------------------------------

    private void askHands(long mask, int from, int to, double amount) {
        handRow.forEach((set, row) -> {
            if ((mask & ~set) == 0) {
                ask(row, from, to, amount);
            }
        });
    }

    void ask(int row, int from, int to, double amount) {
        use[row][Math.max(begin, Math.min(minutes, from))] += amount;
        use[row][Math.max(begin, Math.min(minutes, to))] -= amount;
    }

    /** Asks for what a task and those before it use, the task {@code but} and those before that left out. */
    void ask(Tree tree, int i, int x, int but) {
        Node node = tree.nodes[i];
        int start = node.from + x;
        Mode mode = node.task.modes().get(node.way[x]);
        for (int k = 0; k < mode.units().length; k++) {
            ask(mode.lanes()[k], start, start + node.least, (double) mode.units()[k] / node.share);
        }
        for (HandPart part : node.task.handParts()) {
            if (node.hands != null && (node.lasts() || !part.fromEnd())) {
                int from = start + part.offset(node.least);
                double amount = (double) node.task.handsNeeded() / node.share;
                askHands(node.task.handMask(), from, from + part.lengthIn(node.least), amount);
            }
        }
        for (int j = 0; j < tree.nodes.length; j++) {
            Node child = tree.nodes[j];
            if (j != but && child != null && child.parent == i && child.at[x] != OUTSIDE) {
                ask(tree, j, child.at[x], but);
                if (child.waitRow != OUTSIDE) {
                    ask(child.waitRow, child.from + child.at[x] + child.least, start, child.task.waitUnits());
                }
            }
        }
    }

    /** What a task costs at a start with all those before it but one. */
    long aside(Tree tree, int i, int but, int x) {
        long cost = tree.nodes[i].own[x];
        for (int j = 0; j < tree.nodes.length; j++) {
            if (j != but && tree.nodes[j] != null && tree.nodes[j].parent == i) {
                cost = Math.min(NEVER, cost + tree.nodes[j].best[x]);
            }
        }
        return Math.min(NEVER, cost);
    }
}
