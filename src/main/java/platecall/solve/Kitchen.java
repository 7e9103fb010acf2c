package platecall.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Window;

/**
 * The kitchen minute by minute, with every task that has a place in it. Whatever is placed keeps every rule, so each
 * state is a sound plan of the copies that are placed. Every change is written to a journal and can be taken back.
 *
 * <p>Remaining capacity is packed, four lanes of 15 bits to a word: a minute fits if
 * {@code ((free - request) & GUARD) == 0}.
 */
final class Kitchen {

    static final long GUARD = 0x8000_8000_8000_8000L;
    static final int NONE = -1;

    final TaskNet net;
    final int horizon;
    private final List<Window> unopened;
    final int copies;
    final int tasks;
    final int[] base;
    final Recipe[] recipe;
    final int[] due;
    final int[] show;
    final int[] setup;
    final Kind[] kind;
    final int[] copyOf;
    final Arc[][] into;
    final Arc[][] outOf;
    final boolean[] inTail;
    /** Most minutes that any task can take. */
    final int longest;
    /** Most minutes for which hands are away after a task's end, on their way back. */
    final int longestWayBack;
    /** The tasks of each copy's tail and of its head, last first. */
    final int[][] tail;

    final int[][] head;
    final int[][] groupMembers;
    final BreakTask[] breaks;

    final int[] start;
    final int[] duration;
    final int[] way;
    final long[] handsA;
    final long[] handsB;
    final int[] batch;
    final int[] heldTo;
    final int[] batchCount;
    final int[] batchRoom;
    final int[] batchStart;
    final int[] batchMinutes;
    final int[] batchWay;
    final long[] batchHandsA;
    final long[] batchHandsB;
    final int[][] batchesOf;
    final int[] batchesIn;
    final int[] breakStart;
    /** When noise is allowed: spans, first to last. */
    final Window[] loud;
    /** People who are there at each minute, whatever they do. */
    final long[] present;

    private final int padded;
    final long[][] free;
    private final int headcount;
    /** A bit for each minute at which a person is free: for each 64 minutes a word for each person. */
    private final long[] freeMinutes;
    /** Starts at which so many people and one more are free, while they are counted. */
    private final long[] levels;

    private final boolean[] noise;
    private final short[][] ovenCelsius;
    private final short[][] ovenUses;
    private final short[][][] apartUses;
    /** A task that starts at a minute, and the next one that does, or {@link #NONE}. */
    final int[] firstAt;

    final int[] nextAt;
    private final int[] previousAt;
    private final long[] startBits;
    private final int[] personBit;
    private final int[] personOfBit;
    private final int[] batchRank;
    private final int[] freeBatches;
    private int freeBatchCount;

    private int[] journal = new int[1024];
    private int[] saved = new int[4096];
    private long[] savedHands = new long[2048];
    private int journalSize;
    private int savedSize;
    private int savedHandsSize;

    /** Whose hands are asked for; all bits: anybody's. */
    long asked = -1L;

    int foundWay;
    long foundA;
    long foundB;

    Kitchen(TaskNet net) {
        this.net = net;
        horizon = net.minutes();
        unopened = net.unopenedSpans();
        copies = net.copies().size();
        personBit = flexibilityOrder(net);
        personOfBit = new int[personBit.length];
        for (int p = 0; p < personBit.length; p++) {
            personOfBit[personBit[p]] = p;
        }
        int[] apartOf = apartNumbers(net);
        base = new int[copies + 1];
        recipe = new Recipe[copies];
        due = new int[copies];
        show = new int[copies];
        setup = new int[copies];
        for (int c = 0; c < copies; c++) {
            TaskNet.Copy copy = net.copies().get(c);
            recipe[c] = copy.recipe();
            due[c] = copy.due();
            show[c] = copy.show();
            setup[c] = copy.setup();
            base[c + 1] = base[c] + copy.recipe().size();
        }
        tasks = base[copies];
        kind = new Kind[tasks];
        copyOf = new int[tasks];
        into = new Arc[tasks][];
        outOf = new Arc[tasks][];
        inTail = new boolean[tasks];
        Map<Recipe, Kind[]> packed = new IdentityHashMap<>();
        for (int c = 0; c < copies; c++) {
            Recipe r = recipe[c];
            Kind[] kinds = packed.computeIfAbsent(
                    r,
                    key -> key.tasks().stream()
                            .map(task -> new Kind(net, task, apartOf, personBit))
                            .toArray(Kind[]::new));
            for (int i = 0; i < r.size(); i++) {
                int g = base[c] + i;
                kind[g] = kinds[i];
                copyOf[g] = c;
                into[g] = r.into().get(i).toArray(Arc[]::new);
                outOf[g] = r.outOf().get(i).toArray(Arc[]::new);
                inTail[g] = r.tail()[i];
            }
        }
        longest = Arrays.stream(kind)
                .mapToInt(k -> k.minutesFor(k.batchMost))
                .max()
                .orElse(0);
        longestWayBack = Arrays.stream(kind)
                .flatMapToInt(k -> k.task.handParts().stream().mapToInt(part -> part.length() - k.task.leastMinutes()))
                .filter(minutes -> minutes > 0)
                .max()
                .orElse(0);
        tail = IntStream.range(0, copies).mapToObj(c -> lastFirst(c, true)).toArray(int[][]::new);
        head = IntStream.range(0, copies).mapToObj(c -> lastFirst(c, false)).toArray(int[][]::new);
        groupMembers = new int[net.batchGroups()][];
        for (int group = 0; group < groupMembers.length; group++) {
            int wanted = group;
            groupMembers[group] = IntStream.range(0, tasks)
                    .filter(g -> kind[g].group == wanted)
                    .toArray();
        }
        breaks = net.breaks().toArray(BreakTask[]::new);

        start = filled(tasks, NONE);
        duration = new int[tasks];
        way = new int[tasks];
        handsA = new long[tasks];
        handsB = new long[tasks];
        batch = filled(tasks, NONE);
        heldTo = filled(tasks, NONE);
        breakStart = filled(breaks.length, NONE);
        int batchTasks =
                Arrays.stream(groupMembers).mapToInt(members -> members.length).sum();
        batchCount = new int[batchTasks];
        batchRoom = new int[batchTasks];
        batchStart = new int[batchTasks];
        batchMinutes = new int[batchTasks];
        batchWay = new int[batchTasks];
        batchHandsA = new long[batchTasks];
        batchHandsB = new long[batchTasks];
        batchRank = new int[batchTasks];
        batchesOf = Arrays.stream(groupMembers)
                .map(members -> new int[members.length])
                .toArray(int[][]::new);
        batchesIn = new int[groupMembers.length];
        freeBatches = new int[batchTasks];
        for (int b = 0; b < batchTasks; b++) {
            freeBatches[b] = batchTasks - 1 - b;
        }
        freeBatchCount = batchTasks;

        padded = horizon + 512;
        free = freeUnits(net, padded);
        headcount = net.people().size();
        levels = new long[headcount];
        freeMinutes = new long[headcount * (padded / 64 + 2)];
        present = new long[horizon];
        noise = new boolean[padded];
        for (int t = 0; t < horizon; t++) {
            present[t] = bits(net.handsFree()[t]);
            noise[t] = net.noiseAllowed()[t];
            for (int p = 0; p < headcount; p++) {
                freeMinutes[(t >> 6) * headcount + p] |= (present[t] >>> p & 1) << t;
            }
        }
        loud = runs(noise);
        ovenCelsius = new short[net.ovens().size()][padded];
        ovenUses = new short[net.ovens().size()][padded];
        apartUses = new short[Arrays.stream(apartOf).max().orElse(-1) + 1][2][padded];
        firstAt = filled(padded, NONE);
        nextAt = new int[tasks];
        previousAt = new int[tasks];
        startBits = new long[padded / 64 + 1];
        net.past().begun().forEach(work -> bookBegun(work, apartOf));
    }

    /** For each lane its number among those that keep raw food apart, or -1. */
    private static int[] apartNumbers(TaskNet net) {
        int[] apartOf = new int[net.lanes().size()];
        int aparts = 0;
        for (int lane = 0; lane < apartOf.length; lane++) {
            apartOf[lane] = net.lanes().get(lane).keepsApart() ? aparts++ : -1;
        }
        return apartOf;
    }

    /** The units of each lane that are free at each minute, packed; none after the last minute of the net. */
    private static long[][] freeUnits(TaskNet net, int padded) {
        long[][] free = new long[net.lanes().size() / Kind.LANES_A_WORD + 1][padded];
        for (int lane = 0; lane < net.lanes().size(); lane++) {
            int[] units = net.lanes().get(lane).free();
            for (int t = 0; t < net.minutes(); t++) {
                if (units[t] >= 1 << (Kind.BITS - 1)) {
                    throw new IllegalArgumentException(
                            "a lane holds at most 32767 units, but it has [" + units[t] + "]");
                }
                free[lane / Kind.LANES_A_WORD][t] += Kind.request(lane, units[t]);
            }
        }
        return free;
    }

    /** The tasks of a copy's tail, or of its head, last first. */
    private int[] lastFirst(int c, boolean ofTail) {
        int last = base[c + 1] - 1;
        return IntStream.rangeClosed(base[c], last)
                .map(g -> base[c] + last - g)
                .filter(g -> inTail[g] == ofTail)
                .toArray();
    }

    /** An oven is still hot, and a store still raw, from what has begun; stations and hands are off what is free already. */
    private void bookBegun(TaskNet.Begun work, int[] apartOf) {
        int from = Math.max(0, work.start());
        int to = Math.max(from, Math.min(horizon, work.end()));
        if (work.mode().oven() >= 0) {
            Arrays.fill(ovenCelsius[work.mode().oven()], from, to, (short) work.ovenCelsius());
            Arrays.fill(ovenUses[work.mode().oven()], from, to, (short) 1);
        }
        for (int lane : work.mode().lanes()) {
            if (apartOf[lane] >= 0) {
                Arrays.fill(apartUses[apartOf[lane]][work.raw() ? 1 : 0], from, to, (short) 1);
            }
        }
    }

    /** The bit of each person: who can do the least gets the lowest, so that he or she is taken first. */
    private static int[] flexibilityOrder(TaskNet net) {
        int people = net.people().size();
        long[] canDo = new long[people];
        for (TaskNet.Copy copy : net.copies()) {
            for (TaskNet.Task task : copy.recipe().tasks()) {
                for (int p = 0; p < people; p++) {
                    canDo[p] += task.handsNeeded() > 0 && (task.handMask() >>> p & 1) != 0 ? 1 : 0;
                }
            }
        }
        List<Integer> order = new ArrayList<>(IntStream.range(0, people).boxed().toList());
        order.sort(Comparator.comparingLong((Integer p) -> canDo[p]).thenComparing(p -> p));
        int[] bit = new int[people];
        for (int i = 0; i < people; i++) {
            bit[order.get(i)] = i;
        }
        return bit;
    }

    private static Window[] runs(boolean[] minutes) {
        List<Window> runs = new ArrayList<>();
        for (int t = 0, from = 0; t < minutes.length; t++) {
            from = t == 0 || !minutes[t - 1] ? t : from;
            if (minutes[t] && (t + 1 == minutes.length || !minutes[t + 1])) {
                runs.add(new Window(from, t + 1));
            }
        }
        return runs.toArray(Window[]::new);
    }

    private static int[] filled(int length, int value) {
        int[] array = new int[length];
        Arrays.fill(array, value);
        return array;
    }

    /** The people of a mask of the search, as the day numbers them. */
    long people(long mask) {
        return Kind.reordered(mask, personOfBit);
    }

    /** The mask of the search for people as the day numbers them. */
    long bits(long people) {
        return Kind.reordered(people, personBit);
    }

    boolean placed(int copy) {
        return start[base[copy + 1] - 1] != NONE;
    }

    int end(int g) {
        return start[g] + duration[g];
    }

    /** When the first task of a copy's placed tail starts. */
    int tailStart(int c) {
        int first = Integer.MAX_VALUE;
        for (int g : tail[c]) {
            first = Math.min(first, start[g]);
        }
        return first;
    }

    // ---- where a task fits ------------------------------------------------------------------------------------

    /**
     * The latest start in {@code [lo, hi]} at which a task fits, or {@link #NONE}; leaves the way and the people that
     * are free for each part of its hands in the found fields.
     */
    int findLatest(Kind k, int d, int lo, int hi) {
        int best = NONE;
        int low = Math.max(lo, 0);
        for (int w = 0; w < k.ways.length; w++) {
            int t = latest(k, k.ways[w], d, best == NONE ? low : best + 1, Math.min(hi, horizon - d));
            if (t != NONE) {
                best = t;
                foundWay = w;
            }
        }
        if (best != NONE) {
            readHands(k, d, best);
        }
        return best;
    }

    /** The earliest start in {@code [lo, hi]} at which a task fits, or {@link #NONE}. */
    int findEarliest(Kind k, int d, int lo, int hi) {
        int best = NONE;
        int high = Math.min(hi, horizon - d);
        for (int w = 0; w < k.ways.length; w++) {
            int t = earliest(k, k.ways[w], d, Math.max(lo, 0), best == NONE ? high : best - 1);
            if (t != NONE) {
                best = t;
                foundWay = w;
            }
        }
        if (best != NONE) {
            readHands(k, d, best);
        }
        return best;
    }

    /** Whether a task fits at {@code t} in that way; if so, leaves it and the people that are free in the found fields. */
    boolean fits(Kind k, int way, int d, int t) {
        if (way == NONE || t < 0 || t > horizon - d || firstConflict(k, k.ways[way], d, t, t) != NO_CONFLICT) {
            return false;
        }
        foundWay = way;
        readHands(k, d, t);
        return true;
    }

    /** Whether hands for a task at {@code t} are free; leaves whose in the found fields. */
    boolean hasHands(Kind k, int d, int t) {
        readHands(k, d, t);
        return (k.partA == null || Long.bitCount(foundA) >= k.handsNeeded)
                && (k.partB == null || Long.bitCount(foundB) >= k.handsNeeded);
    }

    private void readHands(Kind k, int d, int t) {
        foundA = k.partA == null ? 0 : freeHands(k, t + k.partA.offset(d), k.partA.lengthIn(d));
        foundB = k.partB == null ? 0 : freeHands(k, t + k.partB.offset(d), k.partB.lengthIn(d));
    }

    private long freeHands(Kind k, int from, int length) {
        long who = k.handMask & asked;
        int to = from + length;
        for (int u = from; u < to && who != 0; u = (u | 63) + 1) {
            long minutes = minutesOfWord(u, to);
            int row = (u >> 6) * headcount;
            for (long rest = who; rest != 0; rest &= rest - 1) {
                if ((freeMinutes[row + Long.numberOfTrailingZeros(rest)] & minutes) != minutes) {
                    who ^= Long.lowestOneBit(rest);
                }
            }
        }
        return who;
    }

    private int latest(Kind k, Kind.Way w, int d, int lo, int hi) {
        int t = hi;
        while (t >= lo) {
            int conflict = firstConflict(k, w, d, t, lo);
            if (conflict == NO_CONFLICT) {
                return t;
            }
            t = conflict;
        }
        return NONE;
    }

    private static final int NO_CONFLICT = Integer.MAX_VALUE;

    /** {@link #NO_CONFLICT} if the task fits at {@code t}; else the next lower start that can fit at all. */
    private int firstConflict(Kind k, Kind.Way w, int d, int t, int lo) {
        if (k.partA != null) {
            int down = handsDown(k, k.partA, d, t, lo);
            if (down != NO_CONFLICT) {
                return down;
            }
            if (k.partB != null) {
                down = handsDown(k, k.partB, d, t, lo);
                if (down != NO_CONFLICT) {
                    return down;
                }
            }
        }
        int end = t + d;
        for (int i = 0; i < w.words.length; i++) {
            long[] word = free[w.words[i]];
            long request = w.requests[i];
            for (int u = t; u < end; u++) {
                if (((word[u] - request) & GUARD) != 0) {
                    return u - d;
                }
            }
        }
        if (w.noisy) {
            for (int u = t; u < end; u++) {
                if (!noise[u]) {
                    return u - d;
                }
            }
        }
        for (int apart : w.apart) {
            short[] other = apartUses[apart][1 - k.side];
            for (int u = t; u < end; u++) {
                if (other[u] != 0) {
                    return u - d;
                }
            }
        }
        return w.oven < 0 ? NO_CONFLICT : ovenDown(k, w.oven, d, t);
    }

    private int handsDown(Kind k, HandPart part, int d, int t, int lo) {
        int offset = part.offset(d);
        int at = lastFree(k.handMask & asked, k.handsNeeded, part.lengthIn(d), t + offset, lo + offset);
        return at == t + offset ? NO_CONFLICT : at - offset;
    }

    /**
     * The latest minute up to {@code hi} from which as many of these people as are needed are free for so long, 64 minutes at a
     * time; below {@code lo} if there is none from there on.
     */
    int lastFree(long mask, int needed, int length, int hi, int lo) {
        long upTo = -1L >>> 63 - (hi & 63);
        for (int w = hi >> 6; w >= lo >> 6 && w >= 0; w--) {
            long starts = freeStarts(mask, needed, length, w, upTo ^ upTo >>> 1) & upTo;
            if (starts != 0) {
                return (w << 6) + 63 - Long.numberOfLeadingZeros(starts);
            }
            upTo = -1L;
        }
        return lo - 1;
    }

    /**
     * Of 64 minutes those from which as many of these people as are needed are free for so long.
     *
     * @param best the minute that is wanted most: once one is found to be free from there, others aren't looked at
     */
    private long freeStarts(long mask, int needed, int length, int w, long best) {
        if (needed == 1) {
            long any = 0;
            for (long rest = mask; rest != 0 && (any & best) == 0; rest &= rest - 1) {
                any |= runs(w * headcount + Long.numberOfTrailingZeros(rest), length);
            }
            return any;
        }
        if (Long.bitCount(mask) < needed) {
            return 0;
        }
        Arrays.fill(levels, 0, needed, 0);
        for (long rest = mask; rest != 0 && (levels[needed - 1] & best) == 0; rest &= rest - 1) {
            long runs = runs(w * headcount + Long.numberOfTrailingZeros(rest), length);
            for (int n = needed - 1; n > 0; n--) {
                levels[n] |= levels[n - 1] & runs;
            }
            levels[0] |= runs;
        }
        return levels[needed - 1];
    }

    /** Of the minutes of a word those from which its person is free for so long. */
    private long runs(int i, int length) {
        return length <= Long.SIZE ? shortRuns(i, length) : longRuns(i, length);
    }

    /** The same for up to 64 minutes. */
    private long shortRuns(int i, int length) {
        long runs = freeMinutes[i];
        long after = freeMinutes[i + headcount];
        for (int n = 1; n < length && runs != 0; ) {
            int more = Math.min(n, length - n);
            runs &= runs >>> more | after << Long.SIZE - more;
            after &= after >>> more;
            n += more;
        }
        return runs;
    }

    /** The same for more than 64 minutes. */
    private long longRuns(int i, int length) {
        int first = Long.SIZE - Long.numberOfLeadingZeros(~freeMinutes[i]);
        int last = Long.SIZE - length;
        for (int ones = Long.SIZE; first < Long.SIZE && ones == Long.SIZE && last < Long.SIZE; last += ones) {
            i += headcount;
            ones = Long.numberOfTrailingZeros(~freeMinutes[i]);
        }
        last = Math.min(last, Long.SIZE - 1);
        return first > last ? 0 : -1L << first & -1L >>> Long.SIZE - 1 - last;
    }

    private int ovenDown(Kind k, int index, int d, int t) {
        TaskNet.Oven oven = net.ovens().get(index);
        short[] celsius = ovenCelsius[index];
        short[] uses = ovenUses[index];
        for (int u = t; u < t + d; u++) {
            if (uses[u] > 0 && celsius[u] != k.celsius) {
                return u - d - oven.minutesToChange(k.celsius, celsius[u]);
            }
        }
        int last = Math.min(horizon, t + d + oven.longestChange());
        for (int u = t + d; u < last; u++) {
            if (uses[u] > 0) {
                if (celsius[u] != k.celsius && u < t + d + oven.minutesToChange(k.celsius, celsius[u])) {
                    return u - d - oven.minutesToChange(k.celsius, celsius[u]);
                }
                break;
            }
        }
        int first = Math.max(-1, t - oven.longestChange() - 1);
        for (int u = t - 1; u >= first; u--) {
            if (u < 0 || !oven.open()[u]) {
                int cold = oven.minutesToChange(platecall.day.Station.COLD_OVEN_CELSIUS, k.celsius);
                return u + 1 + cold > t ? u - d : NO_CONFLICT;
            }
            if (uses[u] > 0) {
                if (celsius[u] != k.celsius && u + 1 + oven.minutesToChange(celsius[u], k.celsius) > t) {
                    return u - d - oven.minutesToChange(k.celsius, celsius[u]);
                }
                return NO_CONFLICT;
            }
        }
        return NO_CONFLICT;
    }

    private int earliest(Kind k, Kind.Way w, int d, int lo, int hi) {
        int t = lo;
        while (t <= hi) {
            int next = nextUp(k, w, d, t);
            if (next == t) {
                return t;
            }
            t = next;
        }
        return NONE;
    }

    /** {@code t} if the task fits there; else the next higher start that can fit at all. */
    private int nextUp(Kind k, Kind.Way w, int d, int t) {
        if (k.partA != null) {
            int up = handsUp(k, k.partA, d, t);
            if (up == t && k.partB != null) {
                up = handsUp(k, k.partB, d, t);
            }
            if (up != t) {
                return up;
            }
        }
        for (int i = 0; i < w.words.length; i++) {
            long[] word = free[w.words[i]];
            long request = w.requests[i];
            for (int u = t + d - 1; u >= t; u--) {
                if (((word[u] - request) & GUARD) != 0) {
                    return u + 1;
                }
            }
        }
        return firstConflict(k, w, d, t, t) == NO_CONFLICT ? t : t + 1;
    }

    private int handsUp(Kind k, HandPart part, int d, int t) {
        int offset = part.offset(d);
        return firstFree(k.handMask & asked, k.handsNeeded, part.lengthIn(d), t + offset) - offset;
    }

    /** The earliest minute from {@code lo} on from which as many of these people as are needed are free for so long, else past the end. */
    int firstFree(long mask, int needed, int length, int lo) {
        long from = -1L << lo;
        for (int w = lo >> 6; w <= horizon >> 6; w++) {
            long starts = freeStarts(mask, needed, length, w, from & -from) & from;
            if (starts != 0) {
                return (w << 6) + Long.numberOfTrailingZeros(starts);
            }
            from = -1L;
        }
        return padded;
    }

    /** The lanes of a word, all their bits, of which there is less than requested at some minute in {@code [from, to)}. */
    long lacking(int word, long request, int from, int to) {
        long lack = 0;
        for (int u = from; u < to; u++) {
            // with the guards up no lane borrows from the next one, which would seem to lack what it has
            lack |= ~((free[word][u] | GUARD) - request) & GUARD;
        }
        return (lack >>> (Kind.BITS - 1)) * ((1L << (Kind.BITS - 1)) - 1);
    }

    /** The earliest minute from {@code lo} on from which a copy can wait in its storage until {@code until}. */
    int storedFrom(Kind k, int until, int lo) {
        int e = Math.min(until, horizon);
        int from = Math.max(lo, k.placeFrom);
        long[] word = free[k.waitWord];
        short[] other = k.waitApart < 0 ? null : apartUses[k.waitApart][1 - k.side];
        while (e > from && ((word[e - 1] - k.waitRequest) & GUARD) == 0 && (other == null || other[e - 1] == 0)) {
            e--;
        }
        return e > from ? e : Math.min(e, lo);
    }

    // ---- placing and removing ---------------------------------------------------------------------------------

    /** A number for a batch that does not exist yet, with room for {@code room} copies. */
    int newBatch(int room) {
        int b = freeBatches[freeBatchCount - 1];
        batchRoom[b] = room;
        return b;
    }

    /** Places a task; the first of a batch books what the batch needs, the others ride along. */
    void place(int g, int at, int d, int wayIndex, long a, long b, int batchIndex) {
        int until = NONE;
        if (kind[g].waitWord >= 0) {
            int own = base[copyOf[g]];
            for (Arc arc : outOf[g]) {
                until = Math.max(until, start[own + arc.after()]);
            }
        }
        put(g, at, d, wayIndex, a, b, batchIndex, until);
        if (journalSize == journal.length) {
            journal = Arrays.copyOf(journal, 2 * journal.length);
        }
        journal[journalSize++] = g;
    }

    void remove(int g) {
        if (savedSize + 6 > saved.length) {
            saved = Arrays.copyOf(saved, 2 * saved.length);
        }
        if (savedHandsSize + 2 > savedHands.length) {
            savedHands = Arrays.copyOf(savedHands, 2 * savedHands.length);
        }
        if (journalSize == journal.length) {
            journal = Arrays.copyOf(journal, 2 * journal.length);
        }
        saved[savedSize++] = start[g];
        saved[savedSize++] = duration[g];
        saved[savedSize++] = way[g];
        saved[savedSize++] = batch[g];
        saved[savedSize++] = batch[g] < 0 ? 0 : batchRoom[batch[g]];
        saved[savedSize++] = heldTo[g];
        savedHands[savedHandsSize++] = handsA[g];
        savedHands[savedHandsSize++] = handsB[g];
        journal[journalSize++] = -1 - g;
        take(g);
    }

    /** Takes a copy out; what it had is remembered only to take that back. */
    void removeCopy(int c) {
        for (int g = base[c]; g < base[c + 1]; g++) {
            if (start[g] != NONE) {
                remove(g);
            }
        }
    }

    /** Where the journal stands now. */
    int mark() {
        return journalSize;
    }

    /** Takes back everything since {@code mark}. */
    void rollback(int mark) {
        while (journalSize > mark) {
            int entry = journal[--journalSize];
            if (entry >= 0) {
                take(entry);
            } else {
                int g = -1 - entry;
                savedHandsSize -= 2;
                savedSize -= 6;
                int b = saved[savedSize + 3];
                if (b >= 0) {
                    batchRoom[b] = saved[savedSize + 4];
                }
                put(
                        g,
                        saved[savedSize],
                        saved[savedSize + 1],
                        saved[savedSize + 2],
                        savedHands[savedHandsSize],
                        savedHands[savedHandsSize + 1],
                        b,
                        saved[savedSize + 5]);
            }
        }
    }

    /** Makes everything so far final. */
    void commit() {
        journalSize = 0;
        savedSize = 0;
        savedHandsSize = 0;
    }

    private void put(int g, int at, int d, int wayIndex, long a, long b, int batchIndex, int until) {
        Kind k = kind[g];
        start[g] = at;
        duration[g] = d;
        way[g] = wayIndex;
        handsA[g] = a;
        handsB[g] = b;
        batch[g] = batchIndex;
        if (batchIndex < 0) {
            book(k, k.ways[wayIndex], at, d, a, b, 1);
        } else if (batchCount[batchIndex]++ == 0) {
            openBatch(batchIndex, g);
            book(k, k.ways[wayIndex], at, d, a, b, 1);
        }
        int next = firstAt[at];
        nextAt[g] = next;
        previousAt[g] = NONE;
        firstAt[at] = g;
        if (next == NONE) {
            startBits[at >> 6] |= 1L << at;
        } else {
            previousAt[next] = g;
        }
        heldTo[g] = until;
        if (until > at + d) {
            hold(k, Math.max(k.placeFrom, at + d), until, 1);
        }
    }

    private void take(int g) {
        Kind k = kind[g];
        int at = start[g];
        int d = duration[g];
        if (heldTo[g] > at + d) {
            hold(k, Math.max(k.placeFrom, at + d), heldTo[g], -1);
        }
        heldTo[g] = NONE;
        int b = batch[g];
        if (b < 0) {
            book(k, k.ways[way[g]], at, d, handsA[g], handsB[g], -1);
        } else if (--batchCount[b] == 0) {
            closeBatch(b, k.group);
            book(k, k.ways[way[g]], at, d, handsA[g], handsB[g], -1);
        }
        int next = nextAt[g];
        int previous = previousAt[g];
        if (next != NONE) {
            previousAt[next] = previous;
        }
        if (previous != NONE) {
            nextAt[previous] = next;
        } else {
            firstAt[at] = next;
            if (next == NONE) {
                startBits[at >> 6] &= ~(1L << at);
            }
        }
        start[g] = NONE;
        batch[g] = NONE;
    }

    private void openBatch(int b, int g) {
        int i = freeBatchCount - 1;
        while (freeBatches[i] != b) {
            i--;
        }
        freeBatches[i] = freeBatches[--freeBatchCount];
        batchStart[b] = start[g];
        batchMinutes[b] = duration[g];
        batchWay[b] = way[g];
        batchHandsA[b] = handsA[g];
        batchHandsB[b] = handsB[g];
        int group = kind[g].group;
        batchRank[b] = batchesIn[group];
        batchesOf[group][batchesIn[group]++] = b;
    }

    private void closeBatch(int b, int group) {
        freeBatches[freeBatchCount++] = b;
        int moved = batchesOf[group][--batchesIn[group]];
        batchesOf[group][batchRank[b]] = moved;
        batchRank[moved] = batchRank[b];
    }

    private void hold(Kind k, int from, int to, int sign) {
        long request = sign * k.waitRequest;
        long[] word = free[k.waitWord];
        for (int u = from; u < to; u++) {
            word[u] -= request;
        }
        if (k.waitApart >= 0) {
            short[] uses = apartUses[k.waitApart][k.side];
            for (int u = from; u < to; u++) {
                uses[u] += sign;
            }
        }
    }

    private void book(Kind k, Kind.Way w, int at, int d, long a, long b, int sign) {
        for (int i = 0; i < w.words.length; i++) {
            long[] word = free[w.words[i]];
            long request = sign * w.requests[i];
            for (int u = at; u < at + d; u++) {
                word[u] -= request;
            }
        }
        if (k.partA != null) {
            flip(at + k.partA.offset(d), k.partA.lengthIn(d), a);
            if (k.partB != null) {
                flip(at + k.partB.offset(d), k.partB.lengthIn(d), b);
            }
        }
        for (int apart : w.apart) {
            short[] uses = apartUses[apart][k.side];
            for (int u = at; u < at + d; u++) {
                uses[u] += sign;
            }
        }
        if (w.oven >= 0) {
            short[] celsius = ovenCelsius[w.oven];
            short[] uses = ovenUses[w.oven];
            for (int u = at; u < at + d; u++) {
                uses[u] += sign;
                celsius[u] = (short) k.celsius;
            }
        }
    }

    /** The minutes from one on, before another, that are in its word. */
    private static long minutesOfWord(int from, int to) {
        return -1L >>> Long.SIZE - (Math.min(to, (from | 63) + 1) - from) << from;
    }

    private void flip(int from, int length, long who) {
        int to = from + length;
        for (int u = from; u < to; u = (u | 63) + 1) {
            long minutes = minutesOfWord(u, to);
            int row = (u >> 6) * headcount;
            for (long rest = who; rest != 0; rest &= rest - 1) {
                freeMinutes[row + Long.numberOfTrailingZeros(rest)] ^= minutes;
            }
        }
    }

    // ---- meal breaks ------------------------------------------------------------------------------------------

    void placeBreak(int index, int at) {
        breakStart[index] = at;
        flip(at, breaks[index].minutes(), 1L << personBit[breaks[index].person()]);
    }

    void removeBreak(int index) {
        flip(breakStart[index], breaks[index].minutes(), 1L << personBit[breaks[index].person()]);
        breakStart[index] = NONE;
    }

    /** The window in which a break may start, given the breaks around it. */
    Window breakWindow(int index) {
        BreakTask task = breaks[index];
        int lo = task.earliest();
        int hi = task.latest();
        if (task.after() >= 0 && breakStart[task.after()] != NONE) {
            lo = Math.max(lo, breakStart[task.after()] + task.minutes());
            hi = Math.min(hi, breakStart[task.after()] + task.minutes() + task.mostApart());
        }
        if (index + 1 < breaks.length && breaks[index + 1].after() == index && breakStart[index + 1] != NONE) {
            lo = Math.max(lo, breakStart[index + 1] - task.minutes() - task.mostApart());
            hi = Math.min(hi, breakStart[index + 1] - task.minutes());
        }
        return new Window(lo, hi);
    }

    /** The start in {@code [lo, hi]} nearest to {@code wanted} at which a break fits, or {@link #NONE}. */
    int findBreak(int index, int lo, int hi, int wanted) {
        int person = personBit[breaks[index].person()];
        int best = NONE;
        int run = 0;
        int length = breaks[index].minutes();
        for (int u = Math.max(0, lo); u < Math.min(horizon, hi + length); u++) {
            run = (freeMinutes[(u >> 6) * headcount + person] >>> u & 1) != 0 ? run + 1 : 0;
            int s = u - length + 1;
            if (run >= length && (best == NONE || Math.abs(s - wanted) < Math.abs(best - wanted))) {
                best = s;
            }
        }
        return best;
    }

    // ---- what it costs ----------------------------------------------------------------------------------------

    /** First minute in {@code [from, to)} at which a task starts, or {@link #NONE}. */
    int firstStart(int from, int to) {
        int word = from >> 6;
        long bits = startBits[word] & (-1L << from);
        while (bits == 0 && ++word << 6 < to) {
            bits = startBits[word];
        }
        int first = (word << 6) + Long.numberOfTrailingZeros(bits);
        return bits == 0 || first >= to ? NONE : first;
    }

    /** Minutes of open kitchen that are still open: from the first start in each span of kitchen hours to its end. */
    long kitchenMinutes() {
        long sum = 0;
        for (Window span : unopened) {
            int first = firstStart(span.start(), span.end());
            sum += first == NONE ? 0 : span.end() - first;
        }
        return sum;
    }

    /** Points for late and off-peak minutes of a copy whose last tasks are placed. */
    long lookCost(int c) {
        Recipe r = recipe[c];
        int ready = end(base[c + 1] - 1);
        int plated = end(base[c] + r.plated());
        return r.lateWeight() * r.lateMinutes(due[c], show[c], plated, ready)
                + r.offPeakWeight() * r.offPeakMinutes(due[c], show[c], plated, ready);
    }

    /** Pairs of hands on a copy beyond the first. */
    int handChanges(int c) {
        long all = 0;
        for (int g = base[c]; g < base[c + 1]; g++) {
            all |= handsA[g] | handsB[g];
        }
        return Math.max(0, Long.bitCount(all) - 1);
    }
}
