package platecall.solve;

import java.util.Arrays;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.Recipe;

/**
 * Finds a place for one copy, or for the part of it that is missing: plate-up as late as the call allows, then each
 * earlier task as late as its waits allow, with bounded backtracking; later than the call only if nothing else fits.
 */
final class Placer {

    private static final int MOST_TRIES = 40;
    private static final double TAIL_SLACK = 0.4;
    /** Share of steps per batch that look for a batch to ride in first: one that is opened needlessly costs nothing but hands' time. */
    private static final double JOIN_FIRST = 0.98;
    /** Share of opened batches that have room for all copies where room takes time. */
    private static final double ROOMY = 0.8;

    private static final int FIRST_DOWN = 60;
    private static final int FIRST_UP = 120;
    private static final long ENDLESS = Long.MAX_VALUE / 4;
    private static final int OWN_BATCH = -2;
    private static final int[] NO_TASKS = {};

    private final Kitchen kitchen;
    private final Dice dice;
    private final int longest;
    private final Memory kept;
    private final Memory keptLate;
    private int[] tail;
    private int[] head;
    private final boolean[] branching;
    private final int[] tailSlack;
    private final long[] able;
    private int tries;
    private boolean ripe;
    private boolean roomy = true;
    /** The plan that is held, or null, and whose hands do each task in it. */
    private Published published;

    private long[] publishedA;
    private long[] publishedB;

    Placer(Kitchen kitchen, Dice dice) {
        this.kitchen = kitchen;
        this.dice = dice;
        longest = Arrays.stream(kitchen.recipe).mapToInt(Recipe::size).max().orElse(1);
        kept = new Memory();
        keptLate = new Memory();
        branching = new boolean[kitchen.copies];
        tailSlack = new int[kitchen.copies];
        able = new long[kitchen.copies];
        for (int c = 0; c < kitchen.copies; c++) {
            able[c] = -1L;
            for (int g = kitchen.base[c]; g < kitchen.base[c + 1]; g++) {
                branching[c] |= kitchen.into[g].length > 1;
                able[c] &= kitchen.kind[g].partA == null ? -1L : kitchen.kind[g].handMask;
                for (Arc arc : kitchen.into[g]) {
                    tailSlack[c] += arc.most() == Integer.MAX_VALUE ? 0 : arc.most() - arc.least();
                }
            }
        }
    }

    /** From now on tasks go to those rather who have them in a plan that is held. */
    void hold(Published plan) {
        published = plan;
        publishedA = new long[kitchen.tasks];
        publishedB = new long[kitchen.tasks];
        for (int c = 0; c < kitchen.copies; c++) {
            if (plan.kept(c) == null) {
                continue;
            }
            Published.Kept copy = plan.kept(c).with(kitchen::bits);
            for (int g = kitchen.base[c]; g < kitchen.base[c + 1]; g++) {
                publishedA[g] = copy.handsA()[g - kitchen.base[c]];
                publishedB[g] = copy.handsB()[g - kitchen.base[c]];
            }
        }
    }

    /**
     * Places the tail of a copy, or the whole of it.
     *
     * @param whole whether the head is placed with it
     * @param budget points that it may cost at most
     * @param free whether it may aim earlier than need be, to make room
     * @return whether it is placed
     */
    boolean placeCopy(int c, boolean whole, long budget, boolean free) {
        chooseHands();
        Recipe recipe = kitchen.recipe[c];
        int last = kitchen.base[c + 1] - 1;
        tail = sort(c, kitchen.tail[c], true);
        head = whole ? sort(c, kitchen.head[c], false) : NO_TASKS;
        int early = free ? aim(recipe, budget) : 0;
        if (recipe.plated() == recipe.last()) {
            early += recipe.peakFrom();
        }
        ripe = true;
        int mark = kitchen.mark();
        if (free && dice.chance(0.08) && up(c, last, dice.below(20), budget)) {
            return true;
        }
        boolean found = down(c, last, early, budget);
        long cost = found ? kitchen.lookCost(c) : ENDLESS;
        boolean poor = cost > recipe.lateWeight() || cost > 0 && early > 0;
        if (!found || poor) {
            if (found) {
                kept.remember(c);
            }
            kitchen.rollback(mark);
            boolean other = up(c, last, 0, Math.min(budget, cost - 1));
            long otherCost = other ? kitchen.lookCost(c) : ENDLESS;
            if (recipe.peakFrom() > 0 && Math.min(cost, otherCost) > 0) {
                if (other) {
                    keptLate.remember(c);
                }
                kitchen.rollback(mark);
                ripe = false;
                long limit = Math.min(budget, Math.min(cost, otherCost) - 1);
                if (down(c, last, 0, limit)) {
                    return true;
                }
                if (other) {
                    keptLate.recall(c);
                }
            }
            if (!other && found) {
                kept.recall(c);
            }
            return other || found;
        }
        return true;
    }

    /** Minutes before the call to aim at: within the look-life often, before it seldom and never dearer than the budget. */
    private int aim(Recipe recipe, long budget) {
        double luck = dice.unit();
        int life = Math.min(kitchen.horizon, recipe.peakTo() - recipe.peakFrom());
        if (luck < 0.5) {
            return dice.below(life + 2);
        }
        if (luck < 0.6 && recipe.offPeakWeight() > 0) {
            return life + dice.below((int) Math.min(120, 2 + budget / recipe.offPeakWeight()));
        }
        return 0;
    }

    /** Places the head of a copy whose tail is placed. */
    boolean placeHead(int c) {
        if (kitchen.head[c].length == 0) {
            return true;
        }
        int[] tasks = sort(c, kitchen.head[c], false);
        chooseHands();
        tries = 0;
        resume = ANYWHERE;
        return placeFrom(c, tasks, 0, true);
    }

    /** Where the tasks of a copy were. */
    private final class Memory {
        private final int[] start = new int[longest];
        private final int[] duration = new int[longest];
        private final int[] way = new int[longest];
        private final int[] batch = new int[longest];
        private final int[] room = new int[longest];
        private final long[] handsA = new long[longest];
        private final long[] handsB = new long[longest];

        void remember(int c) {
            int from = kitchen.base[c];
            for (int g = from; g < kitchen.base[c + 1]; g++) {
                int i = g - from;
                int b = kitchen.batch[g];
                start[i] = kitchen.start[g];
                duration[i] = kitchen.duration[g];
                way[i] = kitchen.way[g];
                batch[i] = b >= 0 && kitchen.batchCount[b] == 1 ? OWN_BATCH : b;
                room[i] = b < 0 ? 0 : kitchen.batchRoom[b];
                handsA[i] = kitchen.handsA[g];
                handsB[i] = kitchen.handsB[g];
            }
        }

        /**
         * Places a copy as remembered, into the state in which it was remembered; a batch of its own gets a new number,
         * since another of its batches may have taken the old one by now.
         */
        void recall(int c) {
            int from = kitchen.base[c];
            for (int g = kitchen.base[c + 1] - 1; g >= from; g--) {
                int i = g - from;
                if (start[i] != Kitchen.NONE && kitchen.start[g] == Kitchen.NONE) {
                    int b = batch[i] == OWN_BATCH ? kitchen.newBatch(room[i]) : batch[i];
                    kitchen.place(g, start[i], duration[i], way[i], handsA[i], handsB[i], b);
                }
            }
        }
    }

    /** Tasks of one part of a copy, each before those it comes after; ties now and then at random. */
    private int[] sort(int c, int[] lastFirst, boolean tail) {
        int count = lastFirst.length;
        if (!branching[c] || count < 2 || !dice.chance(0.5)) {
            return lastFirst;
        }
        int[] sorted = lastFirst.clone();
        int first = tail ? 1 : 0;
        for (int pass = dice.below(count); pass >= 0; pass--) {
            for (int i = first; i + 1 < count; i++) {
                if (dice.chance(0.5) && !follows(c, sorted[i], sorted[i + 1])) {
                    int swap = sorted[i];
                    sorted[i] = sorted[i + 1];
                    sorted[i + 1] = swap;
                }
            }
        }
        return sorted;
    }

    private boolean follows(int c, int after, int before) {
        int base = kitchen.base[c];
        for (Arc arc : kitchen.outOf[before]) {
            if (base + arc.after() == after) {
                return true;
            }
        }
        return false;
    }

    /** Whether batches that are opened from now on may have room for others than who opens them. */
    void letBatchesHaveRoom(boolean room) {
        roomy = room;
    }

    /** Copies that a batch opened now should have room for. */
    private int roomFor(Kind k) {
        if (!roomy) {
            return 1;
        }
        int most = Math.min(k.batchMost, kitchen.groupMembers[k.group].length);
        return k.minutesPerCopy == 0 || dice.chance(ROOMY) ? most : 1 + dice.below(most);
    }

    private boolean down(int c, int last, int early, long budget) {
        Recipe recipe = kitchen.recipe[c];
        Kind k = kitchen.kind[last];
        int target = kitchen.due[c] - early;
        long staleMost = recipe.offPeakWeight() == 0 ? ENDLESS : budget / recipe.offPeakWeight();
        int low = k.earliest;
        if (staleMost < kitchen.horizon) {
            int latestPlated = kitchen.due[c] + kitchen.show[c] - recipe.peakTo() - (int) staleMost;
            low = Math.max(
                    low, recipe.plated() == recipe.last() ? latestPlated - k.minutesFor(k.batchMost) : latestPlated);
        }
        // what is called first must not wait for what is called later only to be carried with it
        boolean carried = k.task.step() == null;
        if (k.batchMost > 0
                && (carried || dice.chance(JOIN_FIRST))
                && downByJoining(c, last, carried ? target - k.minutes : low, target)) {
            return true;
        }
        int room = k.batchMost > 0 ? roomFor(k) : 0;
        int d = k.minutesFor(room);
        int count = 0;
        ask(c, k);
        int t = kitchen.findLatest(k, d, low, Math.min(target - d, k.latest));
        while (t != Kitchen.NONE) {
            if (begin(c, last, t, d, room)) {
                return true;
            }
            int step = 1 + (++count > FIRST_DOWN ? count / 4 : 0);
            ask(c, k);
            t = kitchen.findLatest(k, d, low, Math.min(t - step, resume));
        }
        return carried && k.batchMost > 0 && downByJoining(c, last, low, target);
    }

    /** Places the last task of a copy with a batch that starts in {@code low} or later and ends by {@code target}, and the rest. */
    private boolean downByJoining(int c, int last, int low, int target) {
        Kind k = kitchen.kind[last];
        int b = joinable(k, low, target, false, NO_LIMIT);
        while (b >= 0) {
            int start = kitchen.batchStart[b];
            if (finish(c, last, b)) {
                return true;
            }
            b = joinable(k, low, target, false, start);
        }
        return false;
    }

    private boolean up(int c, int last, int later, long budget) {
        Recipe recipe = kitchen.recipe[c];
        Kind k = kitchen.kind[last];
        int room = k.batchMost > 0 ? roomFor(k) : 0;
        int d = k.minutesFor(room);
        long lateMost =
                recipe.lateWeight() == 0 ? kitchen.horizon : Math.min(kitchen.horizon, budget / recipe.lateWeight());
        int high = Math.min(k.latest, (int) Math.min(kitchen.horizon, kitchen.due[c] + lateMost) - d);
        if (k.batchMost > 0) {
            int b = joinable(
                    k, kitchen.due[c] - k.minutesFor(k.batchMost), kitchen.due[c] + (int) lateMost, false, NO_LIMIT);
            while (b >= 0) {
                int start = kitchen.batchStart[b];
                if (finish(c, last, b)) {
                    return true;
                }
                b = joinable(
                        k, kitchen.due[c] - k.minutesFor(k.batchMost), kitchen.due[c] + (int) lateMost, false, start);
            }
        }
        int count = 0;
        ask(c, k);
        int t = kitchen.findEarliest(k, d, Math.max(k.earliest, kitchen.due[c] - d + 1 + later), high);
        while (t != Kitchen.NONE) {
            if (begin(c, last, t, d, room)) {
                return true;
            }
            int step = 1 + (++count > FIRST_UP ? count / 4 : 0);
            ask(c, k);
            t = kitchen.findEarliest(k, d, t + step, high);
        }
        return false;
    }

    private boolean begin(int c, int g, int t, int d, int room) {
        int mark = kitchen.mark();
        putFound(c, g, t, d, room);
        return rest(c, mark);
    }

    private boolean finish(int c, int g, int batch) {
        int mark = kitchen.mark();
        join(g, batch);
        return rest(c, mark);
    }

    private boolean rest(int c, int mark) {
        tries = 0;
        resume = ANYWHERE;
        if (placeFrom(c, tail, 1, false)) {
            tries = 0;
            if (head.length == 0 || placeFrom(c, head, 0, true)) {
                return true;
            }
            resume = resumeOfLast(c, head[0]);
        }
        kitchen.rollback(mark);
        return false;
    }

    /** Where the last task must go so that the head, which failed, may fit before the tail. */
    private int resumeOfLast(int c, int firstOfHead) {
        if (resume == ANYWHERE || resume == NOTHING || kitchen.outOf[firstOfHead].length > 1) {
            return resume == NOTHING ? NOTHING : ANYWHERE;
        }
        int next = kitchen.base[c] + kitchen.outOf[firstOfHead][0].after();
        int last = kitchen.base[c + 1] - 1;
        return kitchen.start[last] - Math.max(1, kitchen.start[next] - resume - tailSlack[c]);
    }

    private static final int NO_WAIT = -1;
    private static final int NEAR = 30;
    private int windowStart;
    private int windowEnd;
    private int windowWait;

    /**
     * When a task may end, given the tasks after it: at {@code windowStart} to {@code windowEnd}; the copy then waits in its
     * storage until {@code windowWait}.
     */
    private void findWindow(int c, int g) {
        Kind k = kitchen.kind[g];
        Recipe recipe = kitchen.recipe[c];
        int base = kitchen.base[c];
        int latestEnd = kitchen.horizon;
        int earliestEnd = 0;
        int waitsUntil = 0;
        for (Arc arc : kitchen.outOf[g]) {
            int next = kitchen.start[base + arc.after()];
            latestEnd = Math.min(latestEnd, next - arc.least());
            if (arc.most() != Integer.MAX_VALUE) {
                earliestEnd = Math.max(earliestEnd, next - arc.most());
            }
            waitsUntil = Math.max(waitsUntil, next);
        }
        if (ripe && g == base + recipe.plated() && g != base + recipe.last()) {
            latestEnd = Math.min(latestEnd, Math.max(kitchen.due[c], kitchen.end(g + 1)) - recipe.peakFrom());
        }
        windowStart = earliestEnd;
        windowEnd = latestEnd;
        windowWait = k.waitWord >= 0 ? waitsUntil : NO_WAIT;
    }

    /** The latest start in {@code [lo, hi]} at which a task fits and from whose end the copy can wait in its storage. */
    private int latest(int c, Kind k, int d, int lo, int hi, int waitsUntil) {
        ask(c, k);
        if (waitsUntil == NO_WAIT) {
            return kitchen.findLatest(k, d, lo, hi);
        }
        int near = Math.max(lo, hi - NEAR);
        int s = kitchen.findLatest(k, d, near, hi);
        if (s != Kitchen.NONE) {
            return canWait(k, s + d, waitsUntil) ? s : Kitchen.NONE;
        }
        int from = Math.max(lo, kitchen.storedFrom(k, waitsUntil, lo + d) - d);
        return from < near ? kitchen.findLatest(k, d, from, near - 1) : Kitchen.NONE;
    }

    private boolean canWait(Kind k, int end, int waitsUntil) {
        return waitsUntil == NO_WAIT || kitchen.storedFrom(k, waitsUntil, end) <= end;
    }

    /**
     * Places one task whose successors are placed, as late as they allow, without going back on any of them; a last task
     * goes before its call, else after it.
     */
    boolean placeTask(int c, int g, boolean free, long budget) {
        chooseHands();
        Kind k = kitchen.kind[g];
        Recipe recipe = kitchen.recipe[c];
        boolean last = g == kitchen.base[c + 1] - 1;
        if (last) {
            ripe = true;
            int early = free && dice.chance(0.3) ? aim(recipe, budget) : 0;
            windowStart = 0;
            windowWait = NO_WAIT;
            windowEnd = kitchen.due[c] - early - (recipe.plated() == recipe.last() ? recipe.peakFrom() : 0);
        } else {
            findWindow(c, g);
        }
        int earliestEnd = windowStart;
        int latestEnd = windowEnd;
        if (k.batchMost > 0 && dice.chance(JOIN_FIRST)) {
            int b = joinable(k, earliestEnd, latestEnd, true, NO_LIMIT);
            if (b >= 0 && canWait(k, kitchen.batchStart[b] + kitchen.batchMinutes[b], windowWait)) {
                join(g, b);
                return true;
            }
        }
        int room = k.batchMost > 0 ? roomFor(k) : 0;
        int d = k.minutesFor(room);
        int hi = Math.min(latestEnd - d, k.latest);
        int t = latest(c, k, d, Math.max(k.earliest, earliestEnd - d), hi, windowWait);
        if (t == Kitchen.NONE && last) {
            int high = Math.min(kitchen.horizon - d, k.latest);
            t = kitchen.findEarliest(k, d, Math.max(k.earliest, kitchen.due[c] - d + 1), high);
        }
        if (t == Kitchen.NONE) {
            return false;
        }
        putFound(c, g, t, d, room);
        return true;
    }

    /**
     * Places a task that has just been taken out where it was, with the hands that are free now.
     *
     * @param batch its batch, or -1; if others still ride in it, their hands do it for this copy as well
     */
    boolean placeAgain(int c, int g, int start, int duration, int way, int batch, int room) {
        Kind k = kitchen.kind[g];
        if (batch >= 0) {
            int b = sameBatch(k, start, duration, way);
            if (b >= 0) {
                join(g, b);
                return true;
            }
        }
        kitchen.asked = -1L;
        if (!kitchen.hasHands(k, duration, start)) {
            return false;
        }
        kitchen.foundWay = way;
        putFound(c, g, start, duration, room);
        return true;
    }

    /** Places a copy where the plan that is held has all its tasks, if it has them and they fit. */
    boolean placeAsPublished(int c) {
        int mark = kitchen.mark();
        boolean fits = published.starts(c) != null;
        for (int i = kitchen.recipe[c].last(); fits && i >= 0; i--) {
            fits = placeAsPublished(c, i);
        }
        if (!fits) {
            kitchen.rollback(mark);
        }
        return fits;
    }

    /** Places a task where it is published, by the same hands if they are free, with its batch if that is there. */
    private boolean placeAsPublished(int c, int task) {
        int g = kitchen.base[c] + task;
        Kind k = kitchen.kind[g];
        int start = published.starts(c)[task];
        int d = published.minutes(c, task);
        int room = k.batchMost == 0 ? 0 : k.minutesPerCopy == 0 ? k.batchMost : (d - k.minutes) / k.minutesPerCopy;
        if (room < 0 || room > k.batchMost || d != k.minutesFor(room) || start < k.earliest || start > k.latest) {
            return false;
        }
        windowWait = NO_WAIT;
        if (task < kitchen.recipe[c].last()) {
            findWindow(c, g);
            if (start + d < windowStart || start + d > windowEnd || !canWait(k, start + d, windowWait)) {
                return false;
            }
        }
        int b = k.batchMost > 0 ? publishedBatch(c, task, k) : -1;
        if (b >= 0) {
            join(g, b);
            return true;
        }
        int way = published.way(c, task);
        kitchen.asked = kitchen.bits(published.people(c, task)) & k.handMask;
        if (Long.bitCount(kitchen.asked) < k.handsNeeded || !kitchen.fits(k, way, d, start)) {
            kitchen.asked = -1L;
            if (!kitchen.fits(k, way, d, start) && kitchen.findLatest(k, d, start, start) == Kitchen.NONE) {
                return false;
            }
        }
        putFound(c, g, start, d, room);
        return true;
    }

    /** The batch that a copy made in the same go is in already, if it has room; -1 if none: another of that minute won't do. */
    private int publishedBatch(int c, int task, Kind k) {
        for (int member : kitchen.groupMembers[k.group]) {
            int other = kitchen.copyOf[member];
            int b = kitchen.batch[member];
            if (kitchen.start[member] == published.starts(c)[task]
                    && kitchen.batchCount[b] < kitchen.batchRoom[b]
                    && published.together(c, task, other, member - kitchen.base[other])) {
                return b;
            }
        }
        return -1;
    }

    /** Places {@code tasks} from {@code index} on, each as late as those after it allow. */
    private boolean placeFrom(int c, int[] tasks, int index, boolean ofHead) {
        if (index == tasks.length) {
            return true;
        }
        int g = tasks[index];
        Kind k = kitchen.kind[g];
        int room = k.batchMost > 0 ? roomFor(k) : 0;
        int d = k.minutesFor(room);
        findWindow(c, g);
        int latestEnd = windowEnd;
        int earliestEnd = windowStart;
        int waitsUntil = windowWait;
        if (earliestEnd > latestEnd) {
            resume = ANYWHERE;
            return false;
        }
        boolean joinFirst = k.batchMost > 0 && dice.chance(JOIN_FIRST);
        int lo = Math.max(k.earliest, earliestEnd - d);
        int below = lo - 1;
        if (joinFirst) {
            if (placeByJoining(c, tasks, index, ofHead, earliestEnd, latestEnd, waitsUntil)) {
                return true;
            }
            below = Math.min(below, resume);
        }
        int hi = Math.min(latestEnd - d, k.latest);
        int s = Kitchen.NONE;
        boolean skipped = false;
        if (hi >= lo) {
            boolean slack = ofHead ? dice.chance(index == 0 ? 0.3 : 0.1) : dice.chance(TAIL_SLACK);
            if (slack) {
                int width = Math.min(hi - lo, 30);
                if (ofHead && dice.chance(0.33)) {
                    int from = waitsUntil == NO_WAIT ? lo : kitchen.storedFrom(k, waitsUntil, lo + d) - d;
                    width = Math.max(0, hi - from);
                }
                s = latest(c, k, d, lo, hi - dice.below(width + 1), waitsUntil);
                skipped = s != Kitchen.NONE;
            }
            if (s == Kitchen.NONE) {
                s = latest(c, k, d, lo, hi, waitsUntil);
            }
        }
        while (s != Kitchen.NONE) {
            int mark = kitchen.mark();
            putFound(c, g, s, d, room);
            resume = ANYWHERE;
            if (placeFrom(c, tasks, index + 1, ofHead)) {
                return true;
            }
            kitchen.rollback(mark);
            if (++tries > MOST_TRIES) {
                resume = ANYWHERE;
                return false;
            }
            if (resume == UNRELATED) {
                resume = ANYWHERE;
                return false;
            }
            below = Math.min(below, resume);
            s = latest(c, k, d, lo, Math.min(s - 1, resume), waitsUntil);
        }
        if (k.batchMost > 0 && !joinFirst) {
            if (placeByJoining(c, tasks, index, ofHead, earliestEnd, latestEnd, waitsUntil)) {
                return true;
            }
            below = Math.min(below, resume);
        }
        resume = skipped || k.minutesPerCopy > 0
                ? ANYWHERE
                : resumeFor(c, g, index == 0 ? NOTHING : tasks[index - 1], d, lo, latestEnd, below, waitsUntil);
        return false;
    }

    private static final int ANYWHERE = Integer.MAX_VALUE;
    private static final int NOTHING = -1;
    private static final int UNRELATED = -2;

    /** Latest start, for the task that was placed just before one that found no place, at which that one may find one. */
    private int resume;

    /**
     * Where the task {@code after} that was placed just before {@code g} must go before {@code g} can have a place, none
     * being left in its window; for the first task of a head: where the one task that comes after it must go.
     *
     * @param below the latest start of {@code g} that has not been found wanting
     */
    private int resumeFor(int c, int g, int after, int d, int lo, int latestEnd, int below, int waitsUntil) {
        Arc[] arcs = kitchen.outOf[g];
        for (Arc arc : arcs) {
            int next = kitchen.base[c] + arc.after();
            if (next != after && (after != NOTHING || arcs.length > 1)) {
                continue;
            }
            Kind k = kitchen.kind[g];
            int least = Kitchen.NONE;
            if (waitsUntil == kitchen.start[next]) {
                int stored = kitchen.storedFrom(k, waitsUntil, lo + d);
                least = stored > lo + d ? stored - 1 : Kitchen.NONE;
            }
            if (arc.most() == Integer.MAX_VALUE || below < k.earliest) {
                return least;
            }
            ask(c, k);
            int start = kitchen.findLatest(k, d, k.earliest, Math.min(below, k.latest));
            int end = start == Kitchen.NONE ? Kitchen.NONE : start + d;
            if (k.batchMost > 0) {
                int b = joinable(k, 0, kitchen.horizon, false, below + 1);
                end = b < 0 ? end : Math.max(end, kitchen.batchStart[b] + kitchen.batchMinutes[b]);
            }
            return end == Kitchen.NONE ? least : Math.max(least, end + arc.most());
        }
        if (after == NOTHING) {
            return ANYWHERE;
        }
        boolean inTheWay = kitchen.start[after] < latestEnd && kitchen.end(after) > lo;
        return inTheWay ? kitchen.start[after] - d : UNRELATED;
    }

    /** Places a task with a batch in its window and what comes before it; if not, {@link #resume} tells where it might go instead. */
    private boolean placeByJoining(
            int c, int[] tasks, int index, boolean ofHead, int earliestEnd, int latestEnd, int waitsUntil) {
        int g = tasks[index];
        Kind k = kitchen.kind[g];
        int b = joinable(k, earliestEnd, latestEnd, true, NO_LIMIT);
        int below = ANYWHERE;
        while (b >= 0) {
            int at = kitchen.batchStart[b];
            if (canWait(k, at + kitchen.batchMinutes[b], waitsUntil)) {
                int mark = kitchen.mark();
                join(g, b);
                resume = ANYWHERE;
                if (placeFrom(c, tasks, index + 1, ofHead)) {
                    return true;
                }
                kitchen.rollback(mark);
                if (++tries > MOST_TRIES) {
                    resume = ANYWHERE;
                    return false;
                }
                below = resume == UNRELATED ? below : Math.min(below, resume);
            }
            b = joinable(k, earliestEnd, latestEnd, true, at);
        }
        resume = below;
        return false;
    }

    private static final int NO_LIMIT = Integer.MAX_VALUE;

    /**
     * The latest batch of the task's group, started before {@code below}, that has room, ends by {@code latest} and ends
     * ({@code byEnd}) or starts at {@code earliest} or later; -1 if none.
     */
    private int joinable(Kind k, int earliest, int latest, boolean byEnd, int below) {
        int best = -1;
        int bestStart = -1;
        int[] open = kitchen.batchesOf[k.group];
        for (int i = 0; i < kitchen.batchesIn[k.group]; i++) {
            int b = open[i];
            int at = kitchen.batchStart[b];
            if (at <= bestStart || at >= below || kitchen.batchCount[b] >= kitchen.batchRoom[b]) {
                continue;
            }
            int end = at + kitchen.batchMinutes[b];
            if (end <= latest && (byEnd ? end : at) >= earliest && at >= k.earliest && at <= k.latest) {
                best = b;
                bestStart = at;
            }
        }
        return best;
    }

    /** A batch of the task's group at that very place and time that has room; -1 if none: another oven's won't do. */
    private int sameBatch(Kind k, int start, int duration, int way) {
        int[] open = kitchen.batchesOf[k.group];
        for (int i = 0; i < kitchen.batchesIn[k.group]; i++) {
            int b = open[i];
            if (kitchen.batchStart[b] == start
                    && kitchen.batchMinutes[b] == duration
                    && kitchen.batchWay[b] == way
                    && kitchen.batchCount[b] < kitchen.batchRoom[b]) {
                return b;
            }
        }
        return -1;
    }

    private void join(int g, int b) {
        kitchen.place(
                g,
                kitchen.batchStart[b],
                kitchen.batchMinutes[b],
                kitchen.batchWay[b],
                kitchen.batchHandsA[b],
                kitchen.batchHandsB[b],
                b);
    }

    private void putFound(int c, int g, int t, int d, int room) {
        Kind k = kitchen.kind[g];
        int way = kitchen.foundWay;
        long freeA = kitchen.foundA;
        long freeB = kitchen.foundB;
        long a = k.partA == null ? k.begunBy : pick(c, publishedA == null ? 0 : publishedA[g], freeA, k.handsNeeded);
        long b = k.partB == null ? 0 : pick(c, publishedB == null ? 0 : publishedB[g], freeB, k.handsNeeded);
        kitchen.place(g, t, d, way, a, b, k.batchMost > 0 ? kitchen.newBatch(room) : -1);
    }

    /** How hands are chosen for the copy at work. */
    private enum Choice {
        /** Nobody but who has the copy in hand already, if he or she can do it. */
        SAME_ONLY,
        /** Who has the copy in hand already, if free. */
        SAME_IF_FREE,
        /** Who can do the least else. */
        LEAST_ABLE,
        ANYBODY
    }

    private Choice choice = Choice.LEAST_ABLE;
    private boolean handsCount = true;
    private long only;

    /** From now on one person is to do all that he or she can and that takes one; 0: anybody. */
    void insistOn(long person) {
        only = person;
    }

    /** Whether it counts how many hands a copy passes through; if not, who can do the least else does each task. */
    void letHandsCount(boolean count) {
        handsCount = count;
    }

    /** Draws how hands are chosen from now on. */
    void chooseHands() {
        if (!handsCount) {
            choice = Choice.LEAST_ABLE;
            return;
        }
        double luck = dice.unit();
        choice = luck < 0.35
                ? Choice.SAME_ONLY
                : luck < 0.75 ? Choice.SAME_IF_FREE : luck < 0.95 ? Choice.LEAST_ABLE : Choice.ANYBODY;
    }

    /** Asks the kitchen for certain hands only, if the choice says so. */
    private void ask(int c, Kind k) {
        kitchen.asked = -1L;
        if (only != 0 && k.partA != null && k.handsNeeded == 1 && (k.handMask & only) != 0) {
            kitchen.asked = only;
        } else if (choice == Choice.SAME_ONLY && k.partA != null) {
            long used = inHand(c);
            long same = k.handMask & (used != 0 ? used : able[c]);
            if (Long.bitCount(same) >= k.handsNeeded) {
                kitchen.asked = same;
            }
        }
    }

    private long inHand(int c) {
        long used = 0;
        for (int g = kitchen.base[c]; g < kitchen.base[c + 1]; g++) {
            if (kitchen.start[g] != Kitchen.NONE) {
                used |= kitchen.handsA[g] | kitchen.handsB[g];
            }
        }
        return used;
    }

    /** @param rather who has it in the plan that is held, if one is */
    private long pick(int c, long rather, long mask, int needed) {
        long picked = 0;
        long used = rather != 0 ? rather : choice == Choice.SAME_IF_FREE ? inHand(c) : 0;
        for (int n = 0; n < needed; n++) {
            long open = mask & ~picked;
            long kept = open & used;
            long from = kept != 0 ? kept : open;
            if (choice == Choice.ANYBODY) {
                int skip = dice.below(Long.bitCount(from));
                while (skip-- > 0) {
                    from &= from - 1;
                }
            }
            picked |= Long.lowestOneBit(from);
        }
        return picked;
    }
}
