package platecall.solve;

import java.util.Arrays;
import java.util.stream.IntStream;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.Window;

/**
 * Chooses what a move takes out: a seed, rather a costly copy, and copies that may have to give way with it. Some lose all
 * their tasks, others only their movable heads.
 */
final class Ruin {

    /** Most copies that a move takes out, in whole or by their heads. */
    static final int MOST = 80;
    /** Share of moved breaks that may go anywhere in their person's day; the others stay between the breaks around them. */
    private static final double FAR_BREAKS = 0.6;
    /** Copies of which a move takes the costliest to begin with: many, since on large days few cost much. */
    private static final int SEED_DRAWS = 16;
    /** The same once hands count; there 4 to 16 differ by less than seeds do. */
    private static final int SEED_DRAWS_FINE = 8;
    /** As many copies are too much to take out for the sake of one pair of hands. */
    private static final int MOST_FOR_ONE = 6;
    /** Share of moves of late copies on too full days that take out what is called while the copy is late. */
    private static final double WHILE_LATE = 0.9;
    /** Minutes by which a copy off its peak is moved at most, and less than so many by which it may miss its call. */
    private static final int MOST_SHIFT = 120;

    private static final int NEAR_CALL = 8;
    /** What a copy that must be taken out for room counts for where a head counts for one. */
    private static final int COPY_IN_WAY = 8;
    /** Minutes, less than so many, before and after each task that a person gets free for it. */
    private static final int MOST_ROOM_FOR_ONE = 11;

    private final Kitchen kitchen;
    private final Dice dice;
    private final long[] cost;
    private final boolean[] frozen;
    private final long[] tailLanes;
    private final int[] lateOnes;
    private int lateCount;
    /** Copies that the search works on, by call. */
    private int[] byDue;

    private final int[] rank;
    private final int[][] ofSetup;
    /** Noisy tasks of each copy that one pair of hands does. */
    private final int[][] noisy;

    private final int[] underWay;
    private int underWayCount;
    private final byte[] role;
    private int most;

    /** Copies that lose all their tasks, and how many. */
    final int[] full;

    int fullCount;
    /** How many of them, the first, are to be done by one person. */
    int forOne;
    /** Copies that lose their heads, and how many. */
    final int[] heads;

    int headCount;
    /** Breaks that a move gives other times, these times, and how many. */
    final int[] breaks;

    final int[] breakTimes;
    int breakCount;

    /**
     * @param cost points of each copy, kept up to date by the search
     * @param frozen copies whose tails must stay
     */
    Ruin(Kitchen kitchen, Dice dice, long[] cost, boolean[] frozen) {
        this.kitchen = kitchen;
        this.dice = dice;
        this.cost = cost;
        this.frozen = frozen;
        int copies = kitchen.copies;
        rank = new int[copies];
        ofSetup = new int[1 + Arrays.stream(kitchen.setup).max().orElse(0)][];
        lateOnes = new int[copies];
        underWay = new int[kitchen.tasks];
        noisy = IntStream.range(0, copies)
                .mapToObj(c -> IntStream.range(kitchen.base[c], kitchen.base[c + 1])
                        .filter(g -> kitchen.kind[g].ways[0].noisy && kitchen.kind[g].handsNeeded == 1)
                        .toArray())
                .toArray(int[][]::new);
        full = new int[copies];
        heads = new int[copies];
        breaks = new int[kitchen.breaks.length];
        breakTimes = new int[kitchen.breaks.length];
        role = new byte[copies];
        tailLanes = new long[copies];
        for (int c = 0; c < copies; c++) {
            for (int g : kitchen.tail[c]) {
                for (TaskNet.Mode mode : kitchen.kind[g].task.modes()) {
                    for (int lane : mode.lanes()) {
                        tailLanes[c] |= 1L << lane;
                    }
                }
            }
        }
    }

    /** From now on only these copies are searched, in the order of their calls. */
    void activate(int[] copies) {
        byDue = copies;
        for (int r = 0; r < byDue.length; r++) {
            rank[byDue[r]] = r;
        }
        for (int s = 0; s < ofSetup.length; s++) {
            int wanted = s;
            ofSetup[s] =
                    Arrays.stream(byDue).filter(c -> kitchen.setup[c] == wanted).toArray();
        }
    }

    /** Forgets what the last move took out. */
    void clear() {
        for (int i = 0; i < fullCount; i++) {
            role[full[i]] = 0;
        }
        for (int i = 0; i < headCount; i++) {
            role[heads[i]] = 0;
        }
        fullCount = 0;
        forOne = 0;
        headCount = 0;
    }

    boolean hasHead(int c) {
        return kitchen.head[c].length > 0;
    }

    /** Whether a copy comes late, or not at all. */
    boolean isLate(int c) {
        return kitchen.recipe[c].lateWeight() > 0 && cost[c] >= kitchen.recipe[c].lateWeight();
    }

    /** Any copy. */
    private int any() {
        return byDue[dice.below(byDue.length)];
    }

    /** A copy at most so many calls before or after. */
    private int near(int c, int before, int after) {
        int lo = Math.max(0, rank[c] - before);
        int hi = Math.min(byDue.length - 1, rank[c] + after);
        return byDue[lo + dice.below(hi - lo + 1)];
    }

    /** Looks which copies are late; they are seeds more often. */
    void findLate() {
        lateCount = 0;
        for (int c : byDue) {
            if (isLate(c)) {
                lateOnes[lateCount++] = c;
            }
        }
    }

    /**
     * The copy that a move begins with.
     *
     * @param fine whether the search is so cool that hands count
     */
    int seed(boolean fine) {
        // Where much is late, it gets its share of moves anyway.
        if (lateCount > 0 && 10 * lateCount <= byDue.length && dice.chance(0.1)) {
            return lateOnes[dice.below(lateCount)];
        }
        if (dice.chance(0.5)) {
            int worst = any();
            for (int i = fine ? SEED_DRAWS_FINE : SEED_DRAWS; i > 1; i--) {
                int other = any();
                if (cost[other] > cost[worst]) {
                    worst = other;
                }
            }
            return worst;
        }
        if (dice.chance(0.125)) {
            return opener();
        }
        return any();
    }

    /** A copy whose work opens the kitchen in some span of its hours. */
    private int opener() {
        Window span = kitchen.net
                .kitchenSpans()
                .get(dice.below(kitchen.net.kitchenSpans().size()));
        int first = kitchen.firstStart(span.start(), span.end());
        if (first == Kitchen.NONE) {
            return any();
        }
        return kitchen.copyOf[kitchen.firstAt[first]];
    }

    /**
     * Takes out the seed with copies near it in calls, stations, setup or batch, and heads that may be in their way.
     *
     * @param atMost copies that may be taken out
     * @param tooFull whether what is late stays late for long, so that it competes with what is called by then
     */
    void choose(int seed, int atMost, boolean tooFull) {
        most = atMost;
        int copies = kitchen.copies;
        addFull(seed);
        int centre = tooFull && isLate(seed) && dice.chance(WHILE_LATE) ? calledWhileLate(seed) : seed;
        int k = 1 + dice.below(dice.chance(0.1) ? 12 : 5);
        if (tailLanes[seed] != 0 && dice.chance(0.1)) {
            addUsersOf(seed);
        } else if (tailLanes[seed] != 0 && dice.chance(0.25)) {
            int wanted = Math.min(k + 1 + dice.below(3), copies);
            for (int tries = 0; tries < 4 * wanted && fullCount < wanted; tries++) {
                int c = near(centre, 16, 16);
                if ((tailLanes[c] & tailLanes[seed]) != 0) {
                    addFull(c);
                }
            }
        } else {
            int w = k + dice.below(8);
            for (int tries = 0; tries < 3 * k && fullCount < k; tries++) {
                addFull(near(centre, w, w));
            }
        }
        if (dice.chance(0.25)) {
            for (int c : ofSetup[kitchen.setup[seed]]) {
                addFull(c);
            }
        }
        if (kitchen.groupMembers.length > 0 && dice.chance(0.25)) {
            addBatchOf(seed);
        }
        if (dice.chance(0.5)) {
            addHeadsInWindow(centre);
        } else {
            for (int n = dice.below(9); n > 0; n--) {
                addHead(near(centre, 8, 21));
            }
        }
    }

    /** The copy called last before some minute between a late copy's call and when it is ready. */
    private int calledWhileLate(int c) {
        int ready = cost[c] == Score.MISSING ? kitchen.due[c] : kitchen.end(kitchen.base[c + 1] - 1);
        int minute = between(kitchen.due[c], Math.max(kitchen.due[c], ready));
        int low = rank[c];
        int high = byDue.length - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (kitchen.due[byDue[middle]] <= minute) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return byDue[low];
    }

    /** Takes out what a task belongs to: the head of its copy, or all of it. */
    private void addTask(int g) {
        if (kitchen.inTail[g]) {
            addFull(kitchen.copyOf[g]);
        } else {
            addHead(kitchen.copyOf[g]);
        }
    }

    private void addFull(int c) {
        if (frozen[c] && cost[c] != Score.MISSING) {
            addHead(c);
        } else {
            addWhole(c);
        }
    }

    private void addWhole(int c) {
        if (role[c] == 0 && fullCount + headCount < most) {
            role[c] = 1;
            full[fullCount++] = c;
        }
    }

    private void addHead(int c) {
        if (role[c] == 0 && fullCount + headCount < most && hasHead(c) && cost[c] != Score.MISSING) {
            role[c] = 2;
            heads[headCount++] = c;
        }
    }

    /** Copies whose tails use a station of the seed's tail, at about the same time: they may have to change places. */
    private void addUsersOf(int seed) {
        int from = kitchen.base[seed];
        int g = from + dice.below(kitchen.base[seed + 1] - from);
        while (kitchen.start[g] == Kitchen.NONE || !kitchen.inTail[g] || lanes(g).length == 0) {
            if (++g == kitchen.base[seed + 1]) {
                return;
            }
        }
        int lane = lanes(g)[0];
        int reach = 10 + dice.below(dice.chance(0.5) ? 40 : 120);
        int wanted = 4 + dice.below(12);
        int lo = Math.max(0, rank[seed] - 24);
        int count = Math.min(byDue.length - 1, rank[seed] + 24) - lo + 1;
        int rotate = dice.below(count);
        for (int i = 0; i < count && fullCount < wanted; i++) {
            int c = byDue[lo + (i + rotate) % count];
            if (role[c] == 0 && usesNear(c, lane, kitchen.start[g] - reach, kitchen.end(g) + reach)) {
                addFull(c);
            }
        }
    }

    private int[] lanes(int g) {
        return kitchen.kind[g].task.modes().get(kitchen.way[g]).lanes();
    }

    private boolean usesNear(int c, int lane, int from, int to) {
        if ((tailLanes[c] >>> lane & 1) == 0) {
            return false;
        }
        for (int g : kitchen.tail[c]) {
            if (kitchen.start[g] < to && kitchen.start[g] != Kitchen.NONE && kitchen.end(g) > from) {
                for (int used : lanes(g)) {
                    if (used == lane) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /**
     * Takes out a copy on which several work, with what else one of them does at that time: he or she is to do it alone. What
     * rides with it in others' batches is taken out, to be done by the same person.
     *
     * @return that person, or 0 if nobody can do all of it or too much is in the way; the copies that he or she is to do
     *     come first
     */
    long chooseForOne(int seed) {
        long able = -1L;
        long inHand = 0;
        for (int g = kitchen.base[seed]; g < kitchen.base[seed + 1]; g++) {
            if (kitchen.kind[g].partA != null) {
                able &= kitchen.kind[g].handMask;
                inHand |= kitchen.handsA[g] | kitchen.handsB[g];
            }
        }
        long from = (inHand & able) != 0 ? inHand & able : able;
        for (int skip = dice.below(Math.max(1, Long.bitCount(from))); skip > 0; skip--) {
            from &= from - 1;
        }
        long person = Long.lowestOneBit(from);
        if (person == 0) {
            return 0;
        }
        most = MOST_FOR_ONE;
        addWhole(seed);
        for (int g = kitchen.base[seed]; g < kitchen.base[seed + 1]; g++) {
            if (kitchen.batch[g] >= 0 && !isBy(person, g)) {
                addRiders(g);
            }
        }
        forOne = fullCount;
        int slack = dice.below(MOST_ROOM_FOR_ONE);
        for (int i = 0; i < forOne; i++) {
            for (int g : kitchen.tail[full[i]]) {
                if (kitchen.start[g] != Kitchen.NONE && kitchen.kind[g].partA != null && !isBy(person, g)) {
                    addWorkOf(person, kitchen.start[g] - slack, kitchen.end(g) + slack);
                }
            }
        }
        if (fullCount + headCount == most) {
            clear();
            return 0;
        }
        return person;
    }

    private boolean isBy(long person, int g) {
        return ((kitchen.handsA[g] | kitchen.handsB[g]) & person) != 0;
    }

    private void addRiders(int g) {
        for (int member : kitchen.groupMembers[kitchen.kind[g].group]) {
            if (kitchen.batch[member] == kitchen.batch[g]) {
                addFull(kitchen.copyOf[member]);
            }
        }
    }

    /** Takes out what a person does between two minutes: of preparation only heads. */
    private void addWorkOf(long person, int from, int to) {
        findUnderWay(from, to);
        for (int i = 0; i < underWayCount; i++) {
            if (isBy(person, underWay[i])) {
                addTask(underWay[i]);
            }
        }
    }

    /** Finds all tasks that are under way between two minutes. */
    private void findUnderWay(int from, int to) {
        underWayCount = 0;
        int end = Math.min(to, kitchen.horizon);
        int at = Math.max(0, from - kitchen.longest);
        while (at < end && (at = kitchen.firstStart(at, end)) != Kitchen.NONE) {
            for (int g = kitchen.firstAt[at]; g != Kitchen.NONE; g = kitchen.nextAt[g]) {
                if (kitchen.end(g) > from) {
                    underWay[underWayCount++] = g;
                }
            }
            at++;
        }
    }

    /**
     * Takes out a copy that is ready off its peak, and what people do who could do its tail nearer to its call: rather
     * preparation, which costs nothing elsewhere.
     *
     * @return whether there are such people
     */
    boolean chooseForRoom(int seed) {
        if (cost[seed] == Score.MISSING || frozen[seed] || kitchen.lookCost(seed) == 0) {
            return false;
        }
        int gap = kitchen.due[seed] - kitchen.end(kitchen.base[seed + 1] - 1);
        int reach = Math.min(Math.abs(gap), MOST_SHIFT);
        if (reach == 0) {
            return false;
        }
        int minutes = dice.chance(0.5) ? reach - dice.below(Math.min(reach, NEAR_CALL)) : 1 + dice.below(reach);
        int shift = gap > 0 ? minutes : -minutes;
        most = MOST;
        addWhole(seed);
        for (int g : kitchen.tail[seed]) {
            Kind kind = kitchen.kind[g];
            if (kind.partA != null && kind.handsNeeded == 1 && kind.batchMost == 0) {
                int from = kitchen.start[g] + shift;
                int to = kitchen.end(g) + shift;
                long person = leastInWay(kind.handMask, seed, from, to);
                if (person == 0) {
                    clear();
                    return false;
                }
                addWorkOf(person, from, to);
            }
        }
        return true;
    }

    /**
     * Takes out a copy that makes noise, and what one of those people does who could make it at some time before the call at
     * which noise is allowed: there may be few such times, and most of them long before.
     *
     * @return whether there are such people
     */
    boolean chooseForNoise(int seed) {
        if (frozen[seed] || noisy[seed].length == 0) {
            return false;
        }
        Kind kind = kitchen.kind[noisy[seed][dice.below(noisy[seed].length)]];
        int minutes = kind.minutesFor(Math.min(1, kind.batchMost));
        int at = Kitchen.NONE;
        int found = 0;
        for (Window span : kitchen.loud) {
            int from = Math.max(span.start(), kind.earliest);
            int last = Math.min(span.end(), kitchen.due[seed]) - minutes;
            if (from <= last && dice.below(++found) == 0) {
                at = between(from, last);
            }
        }
        long person = at == Kitchen.NONE ? 0 : leastInWay(kind.handMask, seed, at, at + minutes);
        if (person == 0) {
            return false;
        }
        most = MOST;
        addWhole(seed);
        addWorkOf(person, at, at + minutes);
        return true;
    }

    /** Whose work between two minutes is least in the way of a copy; 0 if all of them are away or have a break then. */
    private long leastInWay(long people, int seed, int from, int to) {
        findUnderWay(from, to);
        long chosen = 0;
        int least = Integer.MAX_VALUE;
        for (long rest = people; rest != 0; rest &= rest - 1) {
            long person = Long.lowestOneBit(rest);
            int inWay = 2 * dice.below(2);
            for (int i = 0; i < underWayCount; i++) {
                int g = underWay[i];
                if (isBy(person, g) && kitchen.copyOf[g] != seed) {
                    inWay += kitchen.inTail[g] ? COPY_IN_WAY : 1;
                }
            }
            if (inWay < least && isThere(person, from, to)) {
                least = inWay;
                chosen = person;
            }
        }
        return chosen;
    }

    private boolean isThere(long person, int from, int to) {
        for (int t = Math.max(0, from); t < Math.min(to, kitchen.horizon); t++) {
            if ((kitchen.present[t] & person) == 0) {
                return false;
            }
        }
        for (int i = 0; i < kitchen.breaks.length; i++) {
            int at = kitchen.breakStart[i];
            if (at != Kitchen.NONE
                    && at < to
                    && at + kitchen.breaks[i].minutes() > from
                    && kitchen.bits(1L << kitchen.breaks[i].person()) == person) {
                return false;
            }
        }
        return true;
    }

    /** Takes out a few whole copies near the seed, for others' hands to do them. */
    void chooseForHands(int seed) {
        most = MOST;
        addWhole(seed);
        int wanted = 2 + dice.below(4);
        for (int tries = 0; tries < 3 * wanted && fullCount < wanted; tries++) {
            int c = near(seed, 8, 8);
            if (cost[c] != Score.MISSING) {
                addWhole(c);
            }
        }
    }

    /** All that ride with the seed in one of its batches: in its head they lose the head, in its tail everything. */
    private void addBatchOf(int seed) {
        int from = kitchen.base[seed];
        int g = from + dice.below(kitchen.base[seed + 1] - from);
        int b = kitchen.batch[g];
        if (b < 0) {
            return;
        }
        for (int member : kitchen.groupMembers[kitchen.kind[g].group]) {
            if (kitchen.batch[member] == b) {
                addTask(member);
            }
        }
    }

    private void addHeadsInWindow(int seed) {
        int to = kitchen.due[seed] + dice.below(10) - (dice.chance(0.33) ? dice.below(60) : 0);
        int from = to - 8 - dice.below(90);
        double q = dice.chance(0.5) ? 1 : 0.3 + 0.7 * dice.unit();
        boolean withHold = dice.chance(0.3);
        int lo = Math.max(0, rank[seed] - 12);
        int hi = Math.min(byDue.length - 1, rank[seed] + 35);
        int count = hi - lo + 1;
        int rotate = dice.below(count);
        for (int i = 0; i < count; i++) {
            int c = byDue[lo + (i + rotate) % count];
            if (role[c] == 0
                    && cost[c] != Score.MISSING
                    && hasHead(c)
                    && headOverlaps(c, from, to, withHold)
                    && dice.chance(q)) {
                addHead(c);
            }
        }
    }

    private boolean headOverlaps(int c, int from, int to, boolean withHold) {
        for (int g : kitchen.head[c]) {
            int end = withHold && kitchen.heldTo[g] > 0 ? kitchen.heldTo[g] : kitchen.end(g);
            if (kitchen.start[g] < to && end > from) {
                return true;
            }
        }
        return false;
    }

    /**
     * Takes out whatever keeps a person from having a break at another time, and some of what the old time was in the way
     * of. That time may be out of reach of the person's breaks before and after: then these move too.
     *
     * @return whether there are such times; they stand in {@link #breaks} and {@link #breakTimes}
     */
    boolean chooseForBreak(int index) {
        most = MOST;
        breakCount = 0;
        BreakTask task = kitchen.breaks[index];
        boolean far = dice.chance(FAR_BREAKS);
        Window window = far ? new Window(task.earliest(), task.latest()) : kitchen.breakWindow(index);
        int lo = window.start();
        int hi = window.end();
        if (!far && dice.chance(0.5)) {
            lo = Math.max(lo, kitchen.breakStart[index] - 30);
            hi = Math.min(hi, kitchen.breakStart[index] + 30);
        }
        addBreak(index, between(lo, Math.max(lo, hi)));
        boolean found = moveLaterBreaks() && moveEarlierBreaks();
        int any = dice.below(breakCount);
        addCostlyNear(dice.chance(0.5) ? kitchen.breakStart[breaks[any]] : breakTimes[any]);
        return found;
    }

    private int between(int lo, int hi) {
        return lo + dice.below(hi - lo + 1);
    }

    private boolean moveLaterBreaks() {
        int i = breaks[0];
        int at = breakTimes[0];
        while (i + 1 < kitchen.breaks.length && kitchen.breaks[i + 1].after() == i) {
            BreakTask next = kitchen.breaks[++i];
            int free = at + next.minutes();
            int was = kitchen.breakStart[i];
            if (was == Kitchen.NONE || was >= free && was <= free + next.mostApart()) {
                return true;
            }
            at = addBreakWithin(i, Math.max(next.earliest(), free), Math.min(next.latest(), free + next.mostApart()));
            if (at == Kitchen.NONE) {
                return false;
            }
        }
        return true;
    }

    private boolean moveEarlierBreaks() {
        int i = breaks[0];
        int at = breakTimes[0];
        while (kitchen.breaks[i].after() >= 0) {
            int latest = at - kitchen.breaks[i].minutes();
            int earliest = latest - kitchen.breaks[i].mostApart();
            BreakTask before = kitchen.breaks[--i];
            int was = kitchen.breakStart[i];
            if (was == Kitchen.NONE || was >= earliest && was <= latest) {
                return true;
            }
            at = addBreakWithin(i, Math.max(before.earliest(), earliest), Math.min(before.latest(), latest));
            if (at == Kitchen.NONE) {
                return false;
            }
        }
        return true;
    }

    /** Moves a break by as little as need be, or anywhere between two minutes; returns where to, if there is any. */
    private int addBreakWithin(int i, int lo, int hi) {
        if (lo > hi) {
            return Kitchen.NONE;
        }
        int at = dice.chance(0.5) ? Math.max(lo, Math.min(hi, kitchen.breakStart[i])) : between(lo, hi);
        addBreak(i, at);
        return at;
    }

    private void addBreak(int index, int at) {
        breaks[breakCount] = index;
        breakTimes[breakCount++] = at;
        addWorkOf(kitchen.bits(1L << kitchen.breaks[index].person()), at, at + kitchen.breaks[index].minutes());
    }

    /** Takes out up to four rather costly copies with calls soon after a minute. */
    private void addCostlyNear(int at) {
        for (int n = dice.below(5); n > 0; n--) {
            int worst = -1;
            for (int i = 0; i < 4; i++) {
                int c = any();
                int away = kitchen.due[c] - at;
                if (role[c] == 0 && away > -30 && away < 90 && (worst < 0 || cost[c] > cost[worst])) {
                    worst = c;
                }
            }
            if (worst >= 0) {
                addFull(worst);
            }
        }
    }
}
