package platecall.solve;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Window;

/**
 * Ruin and recreate on segments: takes a few copies, or only the movable heads of some, out of the kitchen and finds new
 * places for them; keeps the result if it is not much worse than before, less and less as time goes on.
 *
 * <p>A copy is split at its unlimited waits into a movable head (preparation) and a tail bound to camera. Tails are
 * placed first, then heads are fitted into what is left. The threshold of acceptance is drawn before the move and serves
 * as its budget, so that hopeless moves end early. Some moves push single tasks instead.
 *
 * @see Ruin
 * @see Nudge
 */
final class Search {

    /** Points for a copy that has no place: more than any lateness within a day. */
    static final long MISSING = 1_000_000_000L;

    /** Most copies that a small move takes out: of these moves three times as many are accepted, and they cost less time. */
    private static final int FEW_RUINED = 4;
    /** Share of small moves, and the temperature in points above which it is that of hot plans. */
    private static final double SMALL_SHARE = 0.8;

    private static final double SMALL_SHARE_HOT = 0.2;

    private static final double HOT = 200;
    /** Temperatures in points between which the coarse order of a day settles; hands and single minutes are left to the end. */
    private static final double WARM = 80;

    /** Where starts are compared. */
    private static final double LUKEWARM = 40;

    private static final double COOL = 2;
    private static final double COLD = 0.3;
    private static final double WARM_AGAIN = 60;
    /** Minutes late, in points, that it costs at first to set a copy aside: later than so it is better not placed yet. */
    private static final int ASIDE_MINUTES = 5;
    /** What the price of a copy is multiplied with every so often while it is aside. */
    private static final double ASIDE_GROWTH = 1.02;
    /** A chain that begins late begins at the points of a late minute; copies go aside down to this share of them. */
    private static final double LATE_CALM = 0.1;
    /** A day in which nothing is late any more above this share of them is easy: it needs no slow cooling from there. */
    private static final double EASY = 0.5;
    /** Share of them where such a chain ends: below it only single minutes are gained. */
    private static final double LATE_COOL = 0.02;
    /** Share of the effort that such a chain may use: while anything is late, one long chain is worth more than several short ones. */
    private static final double LATE_SHARE = 0.85;
    /** Share after which it begins anew if there is time for so many rounds: on small days a late minute can stick to one arrangement. */
    private static final double FIRST_LATE_SHARE = 0.4;

    private static final int MANY_ROUNDS = 3;
    /** Share that it may use on days too large for more than one start: a few late minutes are no reason to keep all else hot. */
    private static final double SHORT_LATE_SHARE = 0.5;
    /** Share of copies aside, once the rest has settled around what shares ovens, above which the day is too full for all. */
    private static final double TOO_FULL = 1 / 15.0;
    /** Share of copies still aside above which that is plain early, and share of that phase after which it is asked. */
    private static final double FAR_TOO_FULL = 0.1;

    private static final double ASKED_EARLY = 0.5;
    /** Share of moves that move a meal break: of few copies other moves come by it, and many need the moves themselves. */
    private static final double BREAK_MOVES = 0.2;

    private static final double FEW_FOR_BREAKS = 40;
    private static final double MANY_FOR_BREAKS = 80;
    /** Share of moves that push tasks instead of placing copies anew. */
    private static final double NUDGES = 0.2;
    /** Moves a copy before which it means nothing that chains agree. */
    private static final long LEAST_MOVES = 200_000;

    /** Points below which hands count: then of moves whose copy is in several hands this share gives it to one. */
    private static final double FINE = 20;

    private static final double ONE_HAND = 0.2;
    /** Points for a minute of work that breaks put too far forward; fades below the temperature at which hands count. */
    private static final double RUSH = 10;
    /** Tries for each break to find quiet times for all, and the minutes that such a try may put forward. */
    private static final int QUIET_TRIES = 300;

    private static final double QUIET_WARM = 100;
    private static final double QUIET_COOL = 0.5;
    /** Share of moves of what is off its peak that make room for it nearer to its call, and of these that place it before all else. */
    private static final double ROOM = 0.3;

    private static final double ROOM_FIRST = 0.7;

    private static final int CLOCK_EVERY = 64;
    private static final double RACE_SHARE = 0.8;
    private static final int MOST_ROUNDS = 4;
    /** Share of the effort that may go into settling what is late before starts are compared. */
    private static final double BEGINNINGS_SHARE = 0.4;
    /** Share of the effort for what shares ovens alone where there is time for one start; twice that for several. */
    private static final double OVENS_SHARE = 0.06;
    /** Starts among which the one that leads while it is still warm goes on, what they share of it, and how warm, in points. */
    private static final int OVENS_STARTS = 6;

    private static final double OVENS_BEGINNINGS = 0.7;
    private static final double OVENS_WARM = 120;
    /** Share of a chain's effort for the rest around what shares ovens. */
    private static final double FROZEN_SHARE = 0.4;
    /** The same on days too large for more than one start. */
    private static final double SHORT_FROZEN_SHARE = 0.3;
    /** Copies of a day below which a chain finds its way in ovens without a phase of its own. */
    private static final int LEAST_FOR_OVENS = 30;

    private final TaskNet net;
    private final Kitchen kitchen;
    private final Dice dice;
    private final Placer placer;
    private final Ruin ruin;
    private final Nudge nudge;
    private final Rush rush;
    private final Effort effort;
    private final long bound;
    /** Points that cannot be undercut by what is active: the bound for all copies, unknown for a part of them. */
    private long target;

    private final int[] bakes;
    private final boolean[] frozen;
    /** Share of moves that move a meal break. */
    private final double breakShare;

    /** Copies that the search works on, by call. */
    private int[] byDue;

    private final int[] all;
    private final long[] cost;
    private final long[] least;
    private final Published published;
    private long looks;
    private long kitchenCost;
    private int missing;
    private long missingCost;
    private int missingBreaks;
    /** Whether copies may be set aside for a price of their own, so that those that fit are not held up by one that doesn't yet. */
    private boolean aside;
    /** Whether a copy may come no later than its first price: else it stays aside. */
    private boolean gentle;

    private boolean tooFull;
    private final long[] asidePrice;

    private final int[] items;
    private final long[] itemKeys;
    private final int[] touched;
    private final long[] oldCost;
    private int touchedCount;
    private final int[] movedBreaks;
    private final int[] oldBreakStart;
    private int movedBreakCount;
    private final int[] breakTimes;
    /** When breaks start in plans to start from; {@link Kitchen#NONE}: in the middle of their time. */
    private final int[] quiet;
    /** Points for a minute of work that breaks put too far forward, at the temperature of the move. */
    private double guide;

    private final int[] oldEnd;
    private final int[] oldDuration;
    private final int[] oldWay;
    private final int[] oldBatch;
    private final int[] oldRoom;
    private final long[] taskKey;
    private final int[] order;
    private boolean interleaved;
    /** Whether the seed of the move is placed before all else. */
    private boolean roomFirst;

    private Arrangement best;
    /** The best plan of what shares ovens alone, once it is known. */
    private Arrangement ovens;
    /** The best plan of all copies while only a part of them is searched. */
    private Arrangement whole;

    /** Share of the effort used before the search began: a cold start takes half a second. */
    private double begun;

    private long bestCost;
    private long chainBestCost;
    private Arrangement chainBest;
    /** Chains in a row that ended with the same points, from the same start but by other ways: enough of them end a search. */
    private int agreed;

    /** How much work a search may do and what stops it; a search asks it for its progress. */
    interface Effort {
        /** Share of the effort used, from 0 to 1; at 1 or more the search ends. */
        double used(long moves);

        /** Seconds that the whole search may take; sizes the first phase. */
        double seconds();

        /** Whether the search is to stop at once. */
        BooleanSupplier stopped();

        /** Told now and then about the best cost so far. */
        void progress(Search search, long moves);
    }

    long moves;

    Search(TaskNet net, long seed, Effort effort, long bound, Published published) {
        this.net = net;
        this.effort = effort;
        this.bound = bound;
        target = bound;
        kitchen = new Kitchen(net);
        dice = new Dice(seed);
        placer = new Placer(kitchen, dice);
        int copies = kitchen.copies;
        all = IntStream.range(0, copies)
                .boxed()
                .sorted(Comparator.comparingInt((Integer c) -> kitchen.due[c]).thenComparing(c -> c))
                .mapToInt(Integer::intValue)
                .toArray();
        bakes = Arrays.stream(all).filter(this::bakes).toArray();
        frozen = new boolean[copies];
        nudge = new Nudge(kitchen, dice, frozen);
        rush = new Rush(kitchen);
        breakTimes = new int[kitchen.breaks.length];
        quiet = new int[kitchen.breaks.length];
        Arrays.fill(quiet, Kitchen.NONE);
        breakShare = BREAK_MOVES * Math.min(1, Math.min(copies / FEW_FOR_BREAKS, MANY_FOR_BREAKS / copies));
        cost = new long[copies];
        ruin = new Ruin(kitchen, dice, cost, frozen);
        activate(all);
        asidePrice = new long[copies];
        least = net.copies().stream().mapToLong(copy -> Bound.ofCopy(net, copy)).toArray();
        this.published = published;
        items = new int[copies];
        itemKeys = new long[copies];
        touched = new int[copies];
        oldCost = new long[copies];
        movedBreaks = new int[kitchen.breaks.length];
        oldBreakStart = new int[kitchen.breaks.length];
        oldEnd = new int[kitchen.tasks];
        oldDuration = new int[kitchen.tasks];
        oldWay = new int[kitchen.tasks];
        oldBatch = new int[kitchen.tasks];
        oldRoom = new int[kitchen.tasks];
        taskKey = new long[kitchen.tasks];
        order = new int[kitchen.tasks];
    }

    /** Whether a copy needs an oven of some temperature. */
    private boolean bakes(int c) {
        for (int g = kitchen.base[c]; g < kitchen.base[c + 1]; g++) {
            for (Kind.Way w : kitchen.kind[g].ways) {
                if (w.oven >= 0) {
                    return true;
                }
            }
        }
        return false;
    }

    /** From now on only these copies are searched, in the order of their calls. */
    private void activate(int[] copies) {
        byDue = copies;
        ruin.activate(copies);
    }

    Kitchen kitchen() {
        return kitchen;
    }

    long bestCost() {
        return bestCost;
    }

    /** The best plan of all copies so far. */
    Arrangement best() {
        return whole == null ? best : whole;
    }

    // ---- cost -------------------------------------------------------------------------------------------------

    private long copyCost(int c) {
        return kitchen.lookCost(c)
                + (long) kitchen.handChanges(c) * net.prices().handChange()
                + (published == null ? 0 : movedMinutes(c) * net.prices().movedMinute());
    }

    private long movedMinutes(int c) {
        int[] before = published.starts(c);
        long moved = 0;
        for (int i = 0; before != null && i < before.length; i++) {
            moved += Math.abs(kitchen.start[kitchen.base[c] + i] - before[i]);
        }
        return moved;
    }

    private long total() {
        return looks + kitchenCost + missingCost + MISSING * missingBreaks;
    }

    /** Points that a copy costs as long as it has no place. */
    private long missingCost(int c) {
        return aside ? asidePrice[c] : MISSING;
    }

    private void countMissing(int c, int sign) {
        missing += sign;
        missingCost += sign * missingCost(c);
    }

    private long firstPrice(int c) {
        return ASIDE_MINUTES * Math.max(net.prices().lateMinute(), kitchen.recipe[c].lateWeight());
    }

    /** Points that a copy may cost where it is placed: beyond them it is left out. */
    private long mostOf(int c) {
        return gentle ? firstPrice(c) : missingCost(c);
    }

    private long kitchenCost() {
        return kitchen.kitchenMinutes() * net.prices().kitchenMinute();
    }

    private void recount() {
        looks = 0;
        missing = 0;
        missingCost = 0;
        for (int c : byDue) {
            cost[c] = kitchen.placed(c) ? copyCost(c) : MISSING;
            if (kitchen.placed(c)) {
                looks += cost[c];
            } else {
                countMissing(c, 1);
            }
        }
        kitchenCost = kitchenCost();
        rush.tell(kitchen.breakStart);
        missingBreaks = 0;
        for (int start : kitchen.breakStart) {
            missingBreaks += start == Kitchen.NONE ? 1 : 0;
        }
    }

    // ---- starting plan ----------------------------------------------------------------------------------------

    /** The best of a few plans built copy by copy; whatever has no place stays out and counts as missing. */
    private void construct() {
        if (published != null) {
            buildPublished();
            keepBest();
        }
        build(byDue);
        keepBest();
        if (bestCost > bound) {
            quietBreaks();
            int[] latestFirst = new int[byDue.length];
            for (int i = 0; i < byDue.length; i++) {
                latestFirst[i] = byDue[byDue.length - 1 - i];
            }
            build(latestFirst);
            keepBest();
        }
        restore(best);
    }

    /** Every task where the published plan has it, as far as it fits; copies that don't fit are placed anew. */
    private void buildPublished() {
        clear();
        placeAllBreaks();
        for (int c : byDue) {
            int mark = kitchen.mark();
            for (int i = kitchen.recipe[c].last(); published.starts(c) != null && i >= 0; i--) {
                if (!placer.placeAsPublished(c, i, published)) {
                    kitchen.rollback(mark);
                    break;
                }
            }
        }
        placeMissing(byDue);
    }

    /** Finds times for breaks at which they put little work forward, by a short search with nothing else in the kitchen. */
    private void quietBreaks() {
        if (published != null) {
            return;
        }
        clear();
        placeAllBreaks();
        recount();
        int tries = QUIET_TRIES * kitchen.breaks.length;
        for (int i = 0; i < tries; i++) {
            int index = dice.below(kitchen.breaks.length);
            double temperature = between(QUIET_WARM, QUIET_COOL, (double) i / tries);
            touchedCount = 0;
            movedBreakCount = 0;
            boolean moved = kitchen.breakStart[index] != Kitchen.NONE
                    && ruin.chooseForBreak(index)
                    && growthByRuin() <= -Math.log(1 - dice.unit()) * temperature
                    && moveBreaks();
            ruin.clear();
            if (moved) {
                rush.tell(kitchen.breakStart);
            } else {
                undo();
            }
        }
        System.arraycopy(kitchen.breakStart, 0, quiet, 0, quiet.length);
    }

    private void placeAllBreaks() {
        for (int i = 0; i < kitchen.breaks.length; i++) {
            Window window = kitchen.breakWindow(i);
            int wanted = published == null ? quiet[i] : published.breakStart(i);
            int middle = (window.start() + window.end()) / 2;
            int at = kitchen.findBreak(i, window.start(), window.end(), wanted == Kitchen.NONE ? middle : wanted);
            if (at != Kitchen.NONE) {
                kitchen.placeBreak(i, at);
            }
        }
    }

    private void build(int[] sequence) {
        clear();
        placeAllBreaks();
        for (int c : sequence) {
            placer.placeCopy(c, false, Long.MAX_VALUE / 4, false);
        }
        int[] deadlines = Arrays.stream(sequence)
                .filter(kitchen::placed)
                .boxed()
                .sorted(Comparator.comparingInt((Integer c) -> -tailStart(c)))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int c : deadlines) {
            if (!placer.placeHead(c)) {
                removeCopy(c);
                placer.placeCopy(c, true, Long.MAX_VALUE / 4, false);
            }
        }
        placeMissing(sequence);
    }

    private void placeMissing(int[] sequence) {
        for (int c : sequence) {
            if (!kitchen.placed(c)) {
                placer.placeCopy(c, true, aside ? mostOf(c) : Long.MAX_VALUE / 4, false);
            }
        }
        kitchen.commit();
        recount();
    }

    private void clear() {
        for (int c = 0; c < kitchen.copies; c++) {
            removeCopy(c);
        }
        for (int i = 0; i < kitchen.breaks.length; i++) {
            if (kitchen.breakStart[i] != Kitchen.NONE) {
                kitchen.removeBreak(i);
            }
        }
        kitchen.commit();
    }

    private void removeCopy(int c) {
        for (int g = kitchen.base[c]; g < kitchen.base[c + 1]; g++) {
            if (kitchen.start[g] != Kitchen.NONE) {
                oldEnd[g] = kitchen.end(g);
                oldDuration[g] = kitchen.duration[g];
                oldWay[g] = kitchen.way[g];
                oldBatch[g] = kitchen.batch[g];
                oldRoom[g] = kitchen.batch[g] < 0 ? 0 : kitchen.batchRoom[kitchen.batch[g]];
                kitchen.remove(g);
            }
        }
    }

    private void removeHead(int c) {
        for (int i = kitchen.head[c].length - 1; i >= 0; i--) {
            int g = kitchen.head[c][i];
            if (kitchen.start[g] != Kitchen.NONE) {
                oldEnd[g] = kitchen.end(g);
                kitchen.remove(g);
            }
        }
    }

    private int tailStart(int c) {
        int first = Integer.MAX_VALUE;
        for (int g : kitchen.tail[c]) {
            first = Math.min(first, kitchen.start[g]);
        }
        return first;
    }

    // ---- the search -------------------------------------------------------------------------------------------

    /** Builds plans to start from and searches until the effort is used. */
    void run() {
        construct();
        begun = effort.used(moves);
        effort.progress(this, moves);
        double copies = Math.max(1, kitchen.copies);
        int rounds = (int) Math.max(1, Math.min(MOST_ROUNDS, 4_500 * effort.seconds() / (copies * copies)));
        double at = copies < LEAST_FOR_OVENS ? wholeChains(rounds) : leadingStart(rounds);
        if (!finished()) {
            restore(best);
            chain(at, 1, 5, COLD);
        }
        restore(best);
        effort.progress(this, moves);
    }

    /**
     * Chains from the same start by other ways, each to its end, and one more from the best of them.
     *
     * @return the share of the effort used
     */
    private double wholeChains(int rounds) {
        Arrangement origin = best;
        double at = 0;
        for (int i = 1; i <= rounds && !finished(); i++) {
            long before = bestCost;
            restore(origin);
            double until = RACE_SHARE * i / rounds;
            at = lateChain(at, until, until);
            until = Math.max(until, Math.min(RACE_SHARE, at + RACE_SHARE / rounds / 2));
            chain(at, until, WARM, COOL);
            at = until;
            agreed = chainBestCost > bestCost ? 0 : bestCost < before ? 1 : agreed + 1;
        }
        return again(at, at + (1 - at) / 2, COLD);
    }

    /**
     * Several starts, of which the one that leads while it is still lukewarm goes on: how a day's coarse order settles by
     * then decides most of what it costs in the end. Then chains from the best plan that leave most of that order alone.
     *
     * @param rounds starts, if there is time for as many
     * @return the share of the effort used
     */
    private double leadingStart(int rounds) {
        Arrangement origin = best;
        Arrangement leader = best;
        long leaderCost = Long.MAX_VALUE;
        double patience = rounds == 1 ? SHORT_LATE_SHARE : rounds < MANY_ROUNDS ? LATE_SHARE : FIRST_LATE_SHARE;
        double at = ovensFirst(0, rounds);
        if (rounds > 1 || !tooFull) {
            at = lateChain(at, patience, patience);
        }
        if (rounds == 1) {
            // Much may be later than before once nothing is aside any more.
            setAside(false);
            if (trouble()) {
                restore(best);
            }
        } else if (trouble() && at < LATE_SHARE) {
            restore(origin);
            at = lateChain(ovensFirst(at, rounds), LATE_SHARE, LATE_SHARE);
        }
        double beginning = at;
        int starts = (int) Math.max(1, Math.min(rounds * (1 - at), BEGINNINGS_SHARE / Math.max(1e-9, at)));
        if (starts == 1) {
            double until = Math.max(at, RACE_SHARE);
            chain(at, until, WARM, COOL);
            return again(until, until + (1 - until) / 2, COLD);
        }
        // A start takes one part, the leader's end two, each chain from the best plan two, the cold one at the end one
        // and a half.
        double part = (1 - starts * beginning) / (starts + 2 + 2 * (starts + 1) + 1.5);
        for (int i = 0; i < starts && !finished(); i++) {
            if (i > 0) {
                restore(origin);
                double giveUp = at + 2 * beginning;
                at = lateChain(i % 2 == 0 ? ovensFirst(at, rounds) : at, LATE_SHARE, giveUp);
                if (trouble()) {
                    break;
                }
            }
            chain(at, at + part, WARM, LUKEWARM);
            at += part;
            if (chainBestCost < leaderCost) {
                leaderCost = chainBestCost;
                leader = chainBest;
            }
        }
        restore(leader);
        chain(at, at + 2 * part, LUKEWARM, COOL);
        at += 2 * part;
        for (int i = starts; i >= 0 && !finished(); i--) {
            at = again(at, at + (1 - at) * 2 / (2 * i + 3.5), COOL);
        }
        return at;
    }

    /** A chain from the best plan, not so warm that all of its order is lost. */
    private double again(double from, double to, double cold) {
        if (!finished()) {
            restore(best);
            chain(from, to, WARM_AGAIN, cold);
        }
        return to;
    }

    /**
     * Arranges what must share ovens of a temperature by itself, then the rest around it while the tails of the first stay:
     * what shares an oven can hardly change places any more once everything else has settled around it.
     *
     * @param rounds starts, if there is time for as many
     * @return the share of the effort used
     */
    private double ovensFirst(double from, int rounds) {
        if (published != null || bakes.length == 0 || bakes.length == all.length) {
            return from;
        }
        if (ovens == null) {
            ovens = ovensAlone(from, OVENS_SHARE * Math.min(2, rounds));
        }
        restore(ovens);
        setAside(true);
        placeMissing(byDue);
        for (int c : bakes) {
            frozen[c] = true;
        }
        beginChain();
        double settling = used();
        double free = settling + (rounds == 1 ? SHORT_FROZEN_SHARE : FROZEN_SHARE) * RACE_SHARE / rounds;
        double first = settling + ASKED_EARLY * (free - settling);
        coolWhileLate(settling, free, first, HOT, 0);
        tooFull |= missing > FAR_TOO_FULL * byDue.length;
        if (!tooFull && used() >= first) {
            coolWhileLate(settling, free, free, HOT, 0);
        }
        restore(chainBest);
        double at = used();
        Arrays.fill(frozen, false);
        tooFull |= missing > TOO_FULL * byDue.length;
        gentle &= !tooFull;
        return at;
    }

    /** The best plan of some chains for what shares ovens, without all else. */
    private Arrangement ovensAlone(double from, double share) {
        whole = best;
        long wholeCost = bestCost;
        activate(bakes);
        target = Long.MIN_VALUE;
        best = null;
        Arrangement leader = null;
        long leaderCost = Long.MAX_VALUE;
        for (int i = 1; i <= OVENS_STARTS; i++) {
            build(byDue);
            keepBest();
            double until = from + OVENS_BEGINNINGS * share * i / OVENS_STARTS;
            chain(lateChain(used(), until, until), until, HOT, OVENS_WARM);
            if (chainBestCost < leaderCost) {
                leaderCost = chainBestCost;
                leader = chainBest;
            }
        }
        restore(leader);
        chain(used(), from + share, OVENS_WARM, 0.5);
        Arrangement alone = best;
        activate(all);
        target = bound;
        best = whole;
        bestCost = wholeCost;
        whole = null;
        return alone;
    }

    /** Share of the effort used since the plans to start from stood. */
    private double used() {
        return (effort.used(moves) - begun) / Math.max(1e-9, 1 - begun);
    }

    private boolean finished() {
        return bestCost <= target
                || effort.stopped().getAsBoolean()
                || agreed >= 3 && moves >= LEAST_MOVES * kitchen.copies;
    }

    private boolean trouble() {
        return missing + missingBreaks > 0 || looks >= net.prices().lateMinute() && anyLate();
    }

    private boolean anyLate() {
        for (int c : byDue) {
            if (ruin.isLate(c)) {
                return true;
            }
        }
        return false;
    }

    /** One run of cooling between two shares of the effort. */
    private void chain(double from, double to, double warm, double cold) {
        setAside(false);
        beginChain();
        while (!finished()) {
            double used = used();
            if (used >= to) {
                break;
            }
            cool(between(warm, cold, (used - from) / (to - from)), CLOCK_EVERY);
        }
    }

    /**
     * One run of cooling of a plan in which something is late. Copies may be set aside for a price that grows as long as
     * they are: the rest settles as if they weren't there, until there is room for them in time. Once it has cooled, or if
     * the day is too full, they may come as late as their price allows.
     *
     * @param to share of the effort at which it would be cold
     * @param giveUp share of the effort at which it ends, cold or not
     * @return the share of the effort used, less than {@code to} if the day is easy or nothing is late
     */
    private double lateChain(double from, double to, double giveUp) {
        if (!trouble()) {
            return from;
        }
        setAside(true);
        beginChain();
        double cold = Math.max(COOL, LATE_COOL * net.prices().lateMinute());
        double used = coolWhileLate(from, to, giveUp, cold, EASY * lateTemperature());
        setAside(false);
        return used;
    }

    /**
     * Cools until nothing is late any more, {@code giveUp} at the latest.
     *
     * @param to share of the effort at which it would be cold
     * @param easy points below which it cools to the end all the same
     * @return the share of the effort used
     */
    private double coolWhileLate(double from, double to, double giveUp, double cold, double easy) {
        double least = LATE_CALM * lateTemperature();
        int calm = 0;
        double used = used();
        while (!finished() && calm < 2 && used < giveUp) {
            double temperature = between(lateTemperature(), cold, (used - from) / (to - from));
            gentle &= temperature > least;
            if (missing == 0 && temperature <= least) {
                setAside(false);
            }
            cool(temperature, 4 * CLOCK_EVERY);
            raisePrices();
            calm = trouble() || temperature < easy ? 0 : calm + 1;
            used = used();
        }
        return used;
    }

    private double lateTemperature() {
        return Math.max(HOT, net.prices().lateMinute());
    }

    private static double between(double warm, double cold, double share) {
        return warm * Math.pow(cold / warm, Math.max(0, Math.min(1, share)));
    }

    /** Whether copies may be set aside from now on; if not, those that are come in as late as they must. */
    private void setAside(boolean allowed) {
        boolean now = allowed && net.prices().lateMinute() > 0;
        if (now == aside) {
            return;
        }
        aside = now;
        gentle = now && !tooFull;
        if (aside) {
            Arrays.setAll(asidePrice, this::firstPrice);
        } else {
            placeMissing(byDue);
        }
        recount();
        beginChain();
    }

    /** Makes copies that are aside dearer, so that next time rather others are. */
    private void raisePrices() {
        if (aside && missing > 0) {
            for (int c : byDue) {
                if (cost[c] == MISSING) {
                    asidePrice[c] = Math.min(MISSING, (long) (asidePrice[c] * ASIDE_GROWTH));
                }
            }
            recount();
            beginChain();
        }
    }

    private void cool(double temperature, int count) {
        ruin.findLate();
        for (int i = 0; i < count; i++) {
            move(temperature);
            moves++;
            long now = total();
            if (now < chainBestCost || now < bestCost && missing == 0) {
                rememberChain();
                if (bestCost <= target) {
                    return;
                }
            }
        }
        effort.progress(this, moves);
    }

    private void beginChain() {
        chainBestCost = Long.MAX_VALUE;
        rememberChain();
    }

    private void rememberChain() {
        long now = total();
        boolean bestOfChain = now < chainBestCost;
        chainBestCost = Math.min(now, chainBestCost);
        if ((!aside || missing == 0) && (best == null || now < bestCost)) {
            keepBest();
            chainBest = bestOfChain ? best : chainBest;
        } else if (bestOfChain) {
            chainBest = Arrangement.of(kitchen);
        }
    }

    private void keepBest() {
        long now = total();
        if (best == null || now < bestCost) {
            best = Arrangement.of(kitchen);
            bestCost = now;
        }
    }

    private void restore(Arrangement arrangement) {
        clear();
        arrangement.into(kitchen);
        kitchen.commit();
        recount();
    }

    // ---- one move ---------------------------------------------------------------------------------------------

    private void move(double temperature) {
        long now = total();
        long threshold = now + (long) Math.min(1e15, -Math.log(1 - dice.unit()) * temperature);
        boolean fine = temperature < FINE;
        guide = kitchen.breaks.length == 0 || published != null || temperature < FINE / 4
                ? 0
                : RUSH * Math.min(1, temperature / FINE);
        long budget = threshold;
        roomFirst = false;
        int seed = ruin.seed(fine);
        touchedCount = 0;
        movedBreakCount = 0;
        if (cost[seed] != MISSING && dice.chance(NUDGES)) {
            if (nudge(seed)) {
                finish(threshold);
            }
            return;
        }
        int moved = breaksMayMove() && dice.chance(breakShare) ? dice.below(kitchen.breaks.length) : Kitchen.NONE;
        if (moved != Kitchen.NONE && kitchen.breakStart[moved] == Kitchen.NONE) {
            moved = Kitchen.NONE;
        }
        boolean handsOnly =
                moved == Kitchen.NONE && net.prices().handChange() > 0 && cost[seed] != MISSING && dice.chance(0.1);
        boolean oneHand = moved == Kitchen.NONE
                && !handsOnly
                && fine
                && cost[seed] != MISSING
                && !frozen[seed]
                && net.prices().handChange() > 0
                && kitchen.handChanges(seed) > 0
                && dice.chance(ONE_HAND);
        long person = 0;
        if (handsOnly) {
            ruin.chooseForHands(seed);
        } else if (oneHand) {
            person = ruin.chooseForOne(seed);
            if (person == 0) {
                return;
            }
        } else if (moved != Kitchen.NONE) {
            budget = chooseForBreak(moved, threshold);
            if (budget == Long.MIN_VALUE) {
                ruin.clear();
                return;
            }
        } else if (dice.chance(ROOM) && ruin.chooseForRoom(seed)) {
            roomFirst = dice.chance(ROOM_FIRST);
        } else {
            boolean small = dice.chance(temperature > HOT ? SMALL_SHARE_HOT : SMALL_SHARE);
            ruin.choose(seed, small ? 1 + dice.below(FEW_RUINED) : Ruin.MOST, tooFull);
        }

        boolean whole = true;
        for (int i = 0; i < ruin.fullCount; i++) {
            int c = ruin.full[i];
            whole &= kitchen.placed(c);
            touch(c);
            removeCopy(c);
        }
        for (int i = 0; i < ruin.headCount; i++) {
            touch(ruin.heads[i]);
            removeHead(ruin.heads[i]);
        }
        boolean done;
        if (handsOnly) {
            done = handOver();
        } else if (moved != Kitchen.NONE) {
            interleaved = false;
            done = moveBreaks() && recreate(budget, 0);
        } else {
            chooseBreaks(seed);
            interleaved = whole && !oneHand && dice.chance(0.1);
            done = recreate(threshold, person);
        }
        ruin.clear();
        if (done) {
            finish(threshold);
        } else {
            undo();
        }
    }

    /**
     * Lets the ruin choose other times for a break.
     *
     * @return the threshold for what it takes out, less what the guide has against these times; {@link Long#MIN_VALUE} if
     *     there are no such times or they are hopeless
     */
    private long chooseForBreak(int index, long threshold) {
        if (!ruin.chooseForBreak(index)) {
            return Long.MIN_VALUE;
        }
        if (guide == 0) {
            return threshold;
        }
        long guided = threshold - (long) (guide * growthByRuin());
        return leastAfter() <= guided ? guided : Long.MIN_VALUE;
    }

    /** How much more work the break times that the ruin chose would put forward, in minutes. */
    private double growthByRuin() {
        System.arraycopy(kitchen.breakStart, 0, breakTimes, 0, breakTimes.length);
        for (int i = 0; i < ruin.breakCount; i++) {
            breakTimes[ruin.breaks[i]] = ruin.breakTimes[i];
        }
        return rush.growth(breakTimes);
    }

    /** Points if what the ruin takes out came back at no more than it must cost. */
    private long leastAfter() {
        long points = looks + missingCost + MISSING * missingBreaks;
        for (int i = 0; i < ruin.fullCount + ruin.headCount; i++) {
            int c = i < ruin.fullCount ? ruin.full[i] : ruin.heads[i - ruin.fullCount];
            points += least[c] - (cost[c] == MISSING ? missingCost(c) : cost[c]);
        }
        return points;
    }

    /** Keeps what the move has made if it is within the threshold. */
    private void finish(long threshold) {
        kitchenCost = kitchenCost();
        if (guide > 0 && movedBreakCount > 0 && total() <= threshold) {
            threshold -= (long) (guide * rush.growth(kitchen.breakStart));
        }
        if (total() <= threshold) {
            if (movedBreakCount > 0) {
                rush.tell(kitchen.breakStart);
            }
            kitchen.commit();
        } else {
            undo();
        }
    }

    /** Moves one task of a copy by some minutes, with all that is in its way; a late copy rather ahead. */
    private boolean nudge(int c) {
        int last = kitchen.base[c + 1] - 1;
        int g = dice.chance(0.5) ? last : kitchen.base[c] + dice.below(last + 1 - kitchen.base[c]);
        int minutes = 1 + dice.below(dice.chance(0.5) ? 3 : 15);
        boolean ahead = dice.chance(ruin.isLate(c) ? 0.8 : 0.5);
        if (!nudge.move(g, kitchen.start[g] + (ahead ? -minutes : minutes))) {
            return false;
        }
        for (int i = 0; i < nudge.copyCount; i++) {
            touch(nudge.copies[i]);
        }
        movedBreakCount = nudge.breakCount;
        System.arraycopy(nudge.breaks, 0, movedBreaks, 0, movedBreakCount);
        System.arraycopy(nudge.breakWas, 0, oldBreakStart, 0, movedBreakCount);
        return settle();
    }

    private void touch(int c) {
        touched[touchedCount] = c;
        oldCost[touchedCount++] = cost[c];
        if (cost[c] == MISSING) {
            countMissing(c, -1);
        } else {
            looks -= cost[c];
        }
    }

    private void undo() {
        for (int i = 0; i < movedBreakCount; i++) {
            if (kitchen.breakStart[movedBreaks[i]] != Kitchen.NONE) {
                kitchen.removeBreak(movedBreaks[i]);
            } else {
                missingBreaks--;
            }
        }
        kitchen.rollback(0);
        for (int i = 0; i < movedBreakCount; i++) {
            if (oldBreakStart[i] != Kitchen.NONE) {
                kitchen.placeBreak(movedBreaks[i], oldBreakStart[i]);
            } else {
                missingBreaks++;
            }
        }
        for (int i = 0; i < touchedCount; i++) {
            int c = touched[i];
            if (settled(i)) {
                if (cost[c] == MISSING) {
                    countMissing(c, -1);
                } else {
                    looks -= cost[c];
                }
            }
            cost[c] = oldCost[i];
            if (cost[c] == MISSING) {
                countMissing(c, 1);
            } else {
                looks += cost[c];
            }
        }
        settledCount = 0;
        kitchenCost = kitchenCost();
    }

    private int settledCount;

    private boolean settled(int i) {
        return i < settledCount;
    }

    /** Puts every task back where it was, one by one in random order of copies, and chooses only whose hands do it anew. */
    private boolean handOver() {
        settledCount = 0;
        dice.shuffle(ruin.full, ruin.fullCount);
        for (int i = 0; i < ruin.fullCount; i++) {
            int c = ruin.full[i];
            placer.chooseHands();
            for (int g = kitchen.base[c + 1] - 1; g >= kitchen.base[c]; g--) {
                int start = oldEnd[g] - oldDuration[g];
                if (!placer.placeAgain(c, g, start, oldDuration[g], oldWay[g], oldBatch[g], oldRoom[g])) {
                    return failed();
                }
            }
        }
        return settle();
    }

    /** Has breaks at the times that the ruin chose, if their person is free then. */
    private boolean moveBreaks() {
        settledCount = 0;
        breaksOut = 0;
        for (int i = 0; i < ruin.breakCount; i++) {
            int index = ruin.breaks[i];
            movedBreaks[movedBreakCount] = index;
            oldBreakStart[movedBreakCount++] = kitchen.breakStart[index];
            kitchen.removeBreak(index);
            missingBreaks++;
        }
        for (int i = 0; i < ruin.breakCount; i++) {
            int at = ruin.breakTimes[i];
            if (kitchen.findBreak(ruin.breaks[i], at, at, at) == Kitchen.NONE) {
                return failed();
            }
            kitchen.placeBreak(ruin.breaks[i], at);
            missingBreaks--;
        }
        return true;
    }

    /** What shares ovens alone must not move breaks into hours that are busy for all the rest. */
    private boolean breaksMayMove() {
        return kitchen.breaks.length > 0 && byDue == all;
    }

    /** Takes out missing breaks always, those near the seed's call now and then. */
    private void chooseBreaks(int seed) {
        for (int i = 0; i < kitchen.breaks.length; i++) {
            int at = kitchen.breakStart[i];
            boolean near = Math.abs(at - kitchen.due[seed]) < 90 && breaksMayMove();
            boolean take = at == Kitchen.NONE || near && dice.chance(0.1);
            if (take) {
                movedBreaks[movedBreakCount] = i;
                oldBreakStart[movedBreakCount++] = at;
                if (at == Kitchen.NONE) {
                    missingBreaks--;
                } else {
                    kitchen.removeBreak(i);
                }
            }
        }
        breaksOut = movedBreakCount;
    }

    private int breaksOut;

    private boolean placeBreaks() {
        boolean all = true;
        for (int n = 0; n < movedBreakCount; n++) {
            int i = movedBreaks[n];
            Window window = kitchen.breakWindow(i);
            int wanted = window.start() + dice.below(window.end() - window.start() + 1);
            int at = kitchen.findBreak(i, window.start(), window.end(), wanted);
            if (at != Kitchen.NONE) {
                kitchen.placeBreak(i, at);
            } else {
                missingBreaks++;
                all &= oldBreakStart[n] == Kitchen.NONE;
            }
        }
        breaksOut = 0;
        return all;
    }

    /** @param person who is to do the first copies of the ruin, those {@link Ruin#forOne}, or 0 */
    private boolean recreate(long threshold, long person) {
        settledCount = 0;
        boolean breaksFirst = breaksOut == 0 || dice.chance(0.5);
        if (breaksFirst && breaksOut > 0 && !placeBreaks()) {
            return false;
        }
        if (interleaved) {
            return interleave(threshold) && (breaksFirst || placeBreaks()) && settle();
        }
        boolean joint = person != 0 || dice.chance(0.4);
        if (person == 0 && !roomFirst) {
            sortFull();
        }
        long spent = looks + missingCost + MISSING * missingBreaks;
        for (int i = 0; i < touchedCount; i++) {
            spent += least[touched[i]];
        }
        int count = 0;
        for (int i = 0; i < ruin.fullCount; i++) {
            int c = ruin.full[i];
            long budget = Math.min(mostOf(c), threshold - spent + least[c]);
            placer.insistOn(i < ruin.forOne ? person : 0);
            if (!placer.placeCopy(c, joint, budget, true)) {
                spent += missingCost(c) - least[c];
            } else if (joint || !ruin.hasHead(c)) {
                spent += copyCost(c) - least[c];
            } else {
                spent += Math.max(0, kitchen.lookCost(c) - least[c]);
                items[count++] = c;
            }
            if (spent > threshold) {
                placer.insistOn(0);
                return failed();
            }
        }
        placer.insistOn(0);
        for (int i = 0; i < ruin.headCount; i++) {
            spent += Math.max(0, kitchen.lookCost(ruin.heads[i]) - least[ruin.heads[i]]);
            items[count++] = ruin.heads[i];
        }
        sortItems(count);
        int ejections = 0;
        for (int i = 0; i < count; i++) {
            int c = items[i];
            spent -= Math.max(least[c], kitchen.lookCost(c));
            if (placer.placeHead(c)) {
                spent += copyCost(c);
            } else if (frozen[c] || ++ejections > 6) {
                return failed();
            } else {
                removeCopy(c);
                spent += placer.placeCopy(c, true, Math.min(mostOf(c), threshold - spent), true)
                        ? copyCost(c)
                        : missingCost(c);
            }
            if (spent > threshold) {
                return failed();
            }
        }
        if (!breaksFirst && !placeBreaks()) {
            return false;
        }
        return settle();
    }

    /**
     * Places all tasks that are out one by one, roughly in the order in which they ended before, latest first: unlike copy
     * by copy, this reaches every way in which copies can be woven into each other.
     */
    private boolean interleave(long threshold) {
        int jitter = 1 + dice.below(dice.chance(0.5) ? 12 : 60);
        int count = 0;
        for (int i = 0; i < touchedCount; i++) {
            int c = touched[i];
            for (int g = kitchen.base[c + 1] - 1; g >= kitchen.base[c]; g--) {
                if (kitchen.start[g] != Kitchen.NONE) {
                    continue;
                }
                long key = 64L * oldEnd[g] + 64L * dice.below(jitter);
                for (TaskNet.Arc arc : kitchen.outOf[g]) {
                    int next = kitchen.base[c] + arc.after();
                    if (kitchen.start[next] == Kitchen.NONE) {
                        key = Math.min(key, taskKey[next] - 1);
                    }
                }
                taskKey[g] = key;
                int j = count++ - 1;
                while (j >= 0 && taskKey[order[j]] < key) {
                    order[j + 1] = order[j];
                    j--;
                }
                order[j + 1] = g;
            }
        }
        long spent = looks + missingCost + MISSING * missingBreaks;
        for (int i = 0; i < count; i++) {
            int c = kitchen.copyOf[order[i]];
            if (!placer.placeTask(c, order[i], true, Math.max(0, threshold - spent))) {
                return failed();
            }
            if (order[i] == kitchen.base[c] + kitchen.recipe[c].plated()) {
                spent += kitchen.lookCost(c);
                if (spent > threshold) {
                    return failed();
                }
            }
        }
        return true;
    }

    private boolean settle() {
        for (int i = 0; i < touchedCount; i++) {
            int c = touched[i];
            if (kitchen.placed(c)) {
                cost[c] = copyCost(c);
                looks += cost[c];
            } else {
                cost[c] = MISSING;
                countMissing(c, 1);
            }
        }
        settledCount = touchedCount;
        return true;
    }

    /** Counts breaks that are still out as missing, so that undoing finds what it expects. */
    private boolean failed() {
        missingBreaks += breaksOut;
        breaksOut = 0;
        return false;
    }

    private void sortFull() {
        dice.shuffle(ruin.full, ruin.fullCount);
        int mode = dice.below(4);
        if (mode == 0 || ruin.fullCount < 2) {
            return;
        }
        for (int i = 1; i < ruin.fullCount; i++) {
            int c = ruin.full[i];
            int j = i - 1;
            while (j >= 0 && before(c, ruin.full[j], mode)) {
                ruin.full[j + 1] = ruin.full[j];
                j--;
            }
            ruin.full[j + 1] = c;
        }
        if (dice.chance(0.5)) {
            int a = dice.below(ruin.fullCount);
            int b = dice.below(ruin.fullCount);
            int swap = ruin.full[a];
            ruin.full[a] = ruin.full[b];
            ruin.full[b] = swap;
        }
    }

    private boolean before(int a, int b, int mode) {
        if (mode == 1) {
            return kitchen.due[a] < kitchen.due[b];
        }
        if (mode == 2) {
            return kitchen.due[a] > kitchen.due[b];
        }
        long weightA = kitchen.recipe[a].lateWeight();
        long weightB = kitchen.recipe[b].lateWeight();
        return weightA != weightB ? weightA > weightB : kitchen.recipe[a].size() > kitchen.recipe[b].size();
    }

    /** Heads by deadline, latest first; now and then earliest first, so that a batch opens early enough for all. */
    private void sortItems(int count) {
        int jitter = dice.chance(0.67) ? 1 + dice.below(40) : 1;
        int sign = kitchen.groupMembers.length > 0 && dice.chance(0.4) ? 1 : -1;
        for (int i = 0; i < count; i++) {
            itemKeys[i] = sign * ((long) tailStart(items[i]) + dice.below(jitter));
        }
        for (int i = 1; i < count; i++) {
            int c = items[i];
            long key = itemKeys[i];
            int j = i - 1;
            while (j >= 0 && itemKeys[j] > key) {
                items[j + 1] = items[j];
                itemKeys[j + 1] = itemKeys[j];
                j--;
            }
            items[j + 1] = c;
            itemKeys[j + 1] = key;
        }
    }
}
