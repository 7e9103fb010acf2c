package platecall.solve;

import java.util.Arrays;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Window;

/**
 * Moves one task by some minutes and pushes whatever is in its way the same way, no farther than it must go, whoever's
 * copy it belongs to; who comes before whom stays as it is. Where no minute is free, a task can only go earlier if others
 * go earlier with it: copies taken out and put back one by one never find that.
 */
final class Nudge {

    /** Tasks, batches and breaks after which a nudge is given up, and those in the way of one of them. */
    private static final int MOST_STEPS = 40;

    private static final int MOST_BLOCKERS = 8;

    private final Kitchen kitchen;
    private final Dice dice;
    private final boolean[] frozen;
    private final int longestChange;

    private boolean earlier;
    private int stamp;
    private final int[] stampOf;
    private final int[] was;
    private final int[] to;
    private final int[] leader;
    private final int[] membersFrom;
    private final int[] membersTo;
    private final int[] room;
    private int[] members = new int[256];
    private int memberCount;
    private final int[] queue = new int[16 * MOST_STEPS];
    private int head;
    private int tail;

    private final int[] stampOfCopy;
    /** Copies of which a task was moved by the last nudge, and how many. */
    final int[] copies;

    int copyCount;
    /** Breaks that were moved by the last nudge, where they were, and how many. */
    final int[] breaks;

    final int[] breakWas;
    int breakCount;

    /** @param frozen copies whose tails must stay */
    Nudge(Kitchen kitchen, Dice dice, boolean[] frozen) {
        this.kitchen = kitchen;
        this.dice = dice;
        this.frozen = frozen;
        int things = kitchen.tasks + kitchen.breaks.length;
        stampOf = new int[things];
        was = new int[things];
        to = new int[things];
        leader = new int[things];
        membersFrom = new int[things];
        membersTo = new int[things];
        room = new int[things];
        stampOfCopy = new int[kitchen.copies];
        copies = new int[kitchen.copies];
        breaks = new int[kitchen.breaks.length];
        breakWas = new int[kitchen.breaks.length];
        longestChange = kitchen.net.ovens().stream()
                .mapToInt(TaskNet.Oven::longestChange)
                .max()
                .orElse(0);
    }

    /**
     * Moves a task to another minute, with all that is in its way.
     *
     * @return whether it could; if not, everything is where it was
     */
    boolean move(int g, int at) {
        begin(at < kitchen.start[g]);
        return end(need(g, at));
    }

    /**
     * Gives a batch that isn't full no more minutes than what is in it takes: it begins later or else ends earlier.
     *
     * @return whether it could; if not, everything is where it was
     */
    boolean shrink(int g, boolean beginLater) {
        begin(!beginLater);
        int riders = kitchen.batchCount[kitchen.batch[g]];
        int start = kitchen.start[g];
        int end = kitchen.end(g);
        boolean done = takeOut(g);
        if (done) {
            room[g] = riders;
            kitchen.duration[g] = kitchen.kind[g].minutesFor(riders);
            to[g] = beginLater ? end - kitchen.duration[g] : start;
            queue[tail++] = g;
        }
        return end(done);
    }

    /**
     * Puts all that is in the batch of {@code g} into that of {@code h}, which gets the minutes that it takes then: it begins when it
     * was to and what comes after is pushed later, or it ends when it was to and what comes before is pushed earlier.
     *
     * @return whether it could; if not, everything is where it was
     */
    boolean merge(int g, int h, boolean toEarlier) {
        begin(toEarlier);
        int riders = kitchen.batchCount[kitchen.batch[g]] + kitchen.batchCount[kitchen.batch[h]];
        int start = kitchen.start[h];
        int end = kitchen.end(h);
        boolean done = takeOut(g) && takeOut(h);
        if (done) {
            membersFrom[h] = membersFrom[g];
            for (int i = membersFrom[h]; i < membersTo[h]; i++) {
                leader[members[i]] = h;
            }
            room[h] = riders;
            kitchen.duration[h] = kitchen.kind[h].minutesFor(riders);
            to[h] = toEarlier ? end - kitchen.duration[h] : start;
            queue[tail++] = h;
        }
        return end(done);
    }

    private void begin(boolean toEarlier) {
        stamp++;
        head = 0;
        tail = 0;
        memberCount = 0;
        copyCount = 0;
        breakCount = 0;
        earlier = toEarlier;
    }

    private boolean end(boolean begun) {
        boolean done = begun;
        for (int steps = 0; done && head < tail; steps++) {
            done = steps < MOST_STEPS && settle(queue[head++]);
        }
        kitchen.asked = -1L;
        if (done && keepsWaits()) {
            return true;
        }
        giveBack();
        return false;
    }

    private void giveBack() {
        for (int i = 0; i < breakCount; i++) {
            if (kitchen.breakStart[breaks[i]] != Kitchen.NONE) {
                kitchen.removeBreak(breaks[i]);
            }
        }
        kitchen.rollback(0);
        for (int i = 0; i < breakCount; i++) {
            kitchen.placeBreak(breaks[i], breakWas[i]);
        }
    }

    private int now(int g) {
        return g < kitchen.tasks ? kitchen.start[g] : kitchen.breakStart[g - kitchen.tasks];
    }

    private boolean isOut(int g) {
        return stampOf[g] == stamp && now(g) == Kitchen.NONE;
    }

    /** Where it stood before this nudge. */
    private int before(int g) {
        return stampOf[g] == stamp ? was[g] : now(g);
    }

    /** Whether {@code at} is not yet as far as {@code wanted}. */
    private boolean shortOf(int at, int wanted) {
        return earlier ? at > wanted : at < wanted;
    }

    /** A task or break must start at {@code at} or farther on. */
    private boolean need(int g, int at) {
        if (isOut(g)) {
            if (shortOf(to[leader[g]], at)) {
                to[leader[g]] = at;
            }
            return true;
        }
        if (!shortOf(now(g), at)) {
            return true;
        }
        if (tail == queue.length || !takeOut(g)) {
            return false;
        }
        to[g] = at;
        queue[tail++] = g;
        return true;
    }

    private boolean takeOut(int g) {
        membersFrom[g] = memberCount;
        if (g >= kitchen.tasks) {
            int i = g - kitchen.tasks;
            if (stampOf[g] != stamp) {
                stampOf[g] = stamp;
                was[g] = kitchen.breakStart[i];
                breaks[breakCount] = i;
                breakWas[breakCount++] = was[g];
            }
            leader[g] = g;
            kitchen.removeBreak(i);
            return true;
        }
        int b = kitchen.batch[g];
        if (b < 0) {
            add(g, g);
        } else {
            room[g] = kitchen.batchRoom[b];
            for (int m : kitchen.groupMembers[kitchen.kind[g].group]) {
                if (kitchen.batch[m] == b) {
                    add(m, g);
                }
            }
        }
        membersTo[g] = memberCount;
        for (int i = membersFrom[g]; i < memberCount; i++) {
            int m = members[i];
            if (kitchen.inTail[m] && frozen[kitchen.copyOf[m]]) {
                return false;
            }
        }
        for (int i = membersFrom[g]; i < memberCount; i++) {
            kitchen.remove(members[i]);
        }
        return true;
    }

    private void add(int m, int lead) {
        if (stampOf[m] != stamp) {
            stampOf[m] = stamp;
            was[m] = kitchen.start[m];
            int c = kitchen.copyOf[m];
            if (stampOfCopy[c] != stamp) {
                stampOfCopy[c] = stamp;
                copies[copyCount++] = c;
            }
        }
        leader[m] = lead;
        if (memberCount == members.length) {
            members = Arrays.copyOf(members, 2 * memberCount);
        }
        members[memberCount++] = m;
    }

    /** Finds a place for what has been taken out, at its wanted minute; pushes what is in the way there. */
    private boolean settle(int lead) {
        if (lead >= kitchen.tasks) {
            return settleBreak(lead);
        }
        Kind k = kitchen.kind[lead];
        int d = kitchen.duration[lead];
        int w = kitchen.way[lead];
        int s = to[lead];
        if (s < 0 || s + d > kitchen.horizon) {
            return false;
        }
        for (int i = membersFrom[lead]; i < membersTo[lead]; i++) {
            Kind each = kitchen.kind[members[i]];
            if (s < each.earliest || s > each.latest || !pushNeighbours(members[i], s, s + d)) {
                return false;
            }
        }
        long own = kitchen.handsA[lead] | kitchen.handsB[lead];
        for (int tries = 0; ; tries++) {
            kitchen.asked = k.partA == null ? -1L : own;
            if (kitchen.fits(k, w, d, s)) {
                break;
            }
            if (k.partA != null && dice.chance(0.3)) {
                kitchen.asked = -1L;
                if (kitchen.fits(k, w, d, s)) {
                    break;
                }
            }
            if (tries == MOST_BLOCKERS) {
                return false;
            }
            int blocker = blocker(lead, k, w, d, s);
            if (blocker == Kitchen.NONE || !need(blocker, pushedTo)) {
                return false;
            }
        }
        long a = k.partA == null ? 0 : pick(kitchen.foundA, kitchen.handsA[lead], k.handsNeeded);
        long b = k.partB == null ? 0 : pick(kitchen.foundB, kitchen.handsB[lead], k.handsNeeded);
        int number = k.batchMost > 0 ? kitchen.newBatch(room[lead]) : -1;
        for (int i = membersFrom[lead]; i < membersTo[lead]; i++) {
            kitchen.place(members[i], s, d, w, a, b, number);
        }
        return true;
    }

    private static long pick(long free, long own, int needed) {
        if ((free & own) == own && own != 0) {
            return own;
        }
        long picked = 0;
        for (int n = 0; n < needed; n++) {
            picked |= Long.lowestOneBit(free & ~picked);
        }
        return picked;
    }

    private boolean settleBreak(int lead) {
        int i = lead - kitchen.tasks;
        int s = to[lead];
        Window window = kitchen.breakWindow(i);
        if (s < window.start() || s > window.end()) {
            return false;
        }
        for (int tries = 0; kitchen.findBreak(i, s, s, s) == Kitchen.NONE; tries++) {
            if (tries == MOST_BLOCKERS) {
                return false;
            }
            int blocker = blocker(lead, null, 0, kitchen.breaks[i].minutes(), s);
            if (blocker == Kitchen.NONE || !need(blocker, pushedTo)) {
                return false;
            }
        }
        kitchen.placeBreak(i, s);
        return true;
    }

    /** Pushes the tasks of the same copy that come before and after. */
    private boolean pushNeighbours(int m, int start, int end) {
        int base = kitchen.base[kitchen.copyOf[m]];
        for (Arc arc : kitchen.into[m]) {
            int p = base + arc.before();
            int d = kitchen.duration[p];
            if (earlier) {
                if (!need(p, start - arc.least() - d)) {
                    return false;
                }
            } else if (arc.most() != Integer.MAX_VALUE && !need(p, start - arc.most() - d)) {
                return false;
            }
        }
        for (Arc arc : kitchen.outOf[m]) {
            int n = base + arc.after();
            if (!earlier) {
                if (!need(n, end + arc.least())) {
                    return false;
                }
            } else if (arc.most() != Integer.MAX_VALUE && !need(n, end + arc.most())) {
                return false;
            }
        }
        return true;
    }

    private int pushedTo;

    /** One of those in the way of what is to start at {@code s}; where it must go is left in {@code pushedTo}. */
    private int blocker(int lead, Kind k, int w, int d, int s) {
        int pad = k != null && k.ways[w].oven >= 0 ? longestChange : 0;
        int reach = Math.max(pad, kitchen.longestWayBack);
        int chosen = Kitchen.NONE;
        int count = 0;
        int hi = Math.min(kitchen.horizon - 1, s + d + pad - 1);
        for (int at = Math.max(0, s - kitchen.longest - pad); at <= hi; at++) {
            at = kitchen.firstStart(at, hi + 1);
            if (at == Kitchen.NONE) {
                break;
            }
            for (int h = kitchen.firstAt[at]; h != Kitchen.NONE; h = kitchen.nextAt[h]) {
                if (kitchen.end(h) > s - reach && inOrder(h, lead)) {
                    int target = target(h, lead, k, w, d, s);
                    if (target != FREE && dice.below(++count) == 0) {
                        chosen = h;
                        pushedTo = target;
                    }
                }
            }
        }
        for (int i = 0; i < kitchen.breaks.length && k != null && k.partA != null; i++) {
            int h = kitchen.tasks + i;
            int at = kitchen.breakStart[i];
            if (at != Kitchen.NONE && inOrder(h, lead)) {
                int length = kitchen.breaks[i].minutes();
                long person = kitchen.bits(1L << kitchen.breaks[i].person());
                int target = handsTarget(lead, k, d, s, person, at, 0, length);
                if (target != FREE && dice.below(++count) == 0) {
                    chosen = h;
                    pushedTo = target;
                }
            }
        }
        return chosen;
    }

    /** Whether {@code h} was on the side of {@code lead} to which everything is pushed. */
    private boolean inOrder(int h, int lead) {
        int a = before(h);
        int b = before(lead);
        return a == b ? earlier == h < lead : earlier == a < b;
    }

    private static final int FREE = Integer.MIN_VALUE;

    /** Where {@code h} must go to be out of the way, or {@link #FREE} if it isn't in it. */
    private int target(int h, int lead, Kind k, int w, int d, int s) {
        Kind other = kitchen.kind[h];
        int at = kitchen.start[h];
        int minutes = kitchen.duration[h];
        int target = FREE;
        if (other.partA != null) {
            target = handsTarget(
                    lead, k, d, s, kitchen.handsA[h], at, other.partA.offset(minutes), other.partA.lengthIn(minutes));
            if (other.partB != null) {
                target = farther(
                        target,
                        handsTarget(
                                lead,
                                k,
                                d,
                                s,
                                kitchen.handsB[h],
                                at,
                                other.partB.offset(minutes),
                                other.partB.lengthIn(minutes)));
            }
        }
        if (k == null) {
            return target;
        }
        Kind.Way mine = k.ways[w];
        Kind.Way its = other.ways[kitchen.way[h]];
        int from = Math.max(s, at);
        int until = Math.min(s + d, at + minutes);
        for (int i = 0; i < mine.words.length && from < until; i++) {
            for (int j = 0; j < its.words.length; j++) {
                if (mine.words[i] == its.words[j]
                        && (kitchen.lacking(mine.words[i], mine.requests[i], from, until) & its.requests[j]) != 0) {
                    target = farther(target, earlier ? s - minutes : s + d);
                }
            }
        }
        if (mine.oven >= 0 && mine.oven == its.oven && k.celsius != other.celsius) {
            TaskNet.Oven oven = kitchen.net.ovens().get(mine.oven);
            int gapBefore = oven.minutesToChange(other.celsius, k.celsius);
            int gapAfter = oven.minutesToChange(k.celsius, other.celsius);
            if (at < s + d + gapAfter && at + minutes + gapBefore > s) {
                target = farther(target, earlier ? s - gapBefore - minutes : s + d + gapAfter);
            }
        }
        return target;
    }

    private int farther(int a, int b) {
        return a == FREE ? b : b == FREE ? a : earlier ? Math.min(a, b) : Math.max(a, b);
    }

    /** Where something that keeps people busy must go so that those whom the lead needs have their hands free. */
    private int handsTarget(int lead, Kind k, int d, int s, long people, int at, int offset, int length) {
        if (k == null) {
            long person = kitchen.bits(1L << kitchen.breaks[lead - kitchen.tasks].person());
            return clash(person & people, s, d, at, offset, length);
        }
        if (k.partA == null) {
            return FREE;
        }
        int target = part(k.partA, kitchen.handsA[lead] & people, d, s, at, offset, length);
        return k.partB == null
                ? target
                : farther(target, part(k.partB, kitchen.handsB[lead] & people, d, s, at, offset, length));
    }

    private int part(HandPart part, long shared, int d, int s, int at, int offset, int length) {
        return clash(shared, s + part.offset(d), part.lengthIn(d), at, offset, length);
    }

    private int clash(long shared, int from, int minutes, int at, int offset, int length) {
        if (shared == 0 || at + offset >= from + minutes || at + offset + length <= from) {
            return FREE;
        }
        return earlier ? from - offset - length : from + minutes - offset;
    }

    /** Whether all waits are kept and there is room to wait; books the holds anew of what now waits at other times. */
    private boolean keepsWaits() {
        for (int i = 0; i < copyCount; i++) {
            int c = copies[i];
            int base = kitchen.base[c];
            for (int g = base; g < kitchen.base[c + 1]; g++) {
                int end = kitchen.end(g);
                int until = Kitchen.NONE;
                for (Arc arc : kitchen.outOf[g]) {
                    int next = kitchen.start[base + arc.after()];
                    if (next - end < arc.least() || arc.most() != Integer.MAX_VALUE && next - end > arc.most()) {
                        return false;
                    }
                    until = Math.max(until, next);
                }
                boolean waitsAnew = stampOf[g] == stamp || kitchen.heldTo[g] != until;
                if (kitchen.kind[g].waitWord >= 0 && waitsAnew && !holdAnew(g, until)) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean holdAnew(int g, int until) {
        int s = kitchen.start[g];
        int d = kitchen.duration[g];
        int b = kitchen.batch[g];
        int rooms = b < 0 ? 0 : kitchen.batchRoom[b];
        boolean alone = b >= 0 && kitchen.batchCount[b] == 1;
        kitchen.remove(g);
        if (kitchen.storedFrom(kitchen.kind[g], until, s + d) > s + d) {
            return false;
        }
        kitchen.place(
                g, s, d, kitchen.way[g], kitchen.handsA[g], kitchen.handsB[g], alone ? kitchen.newBatch(rooms) : b);
        return true;
    }
}
