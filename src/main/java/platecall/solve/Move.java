package platecall.solve;

import java.util.function.BooleanSupplier;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Window;

/**
 * One move of a search: takes a few copies, or only the movable heads of some, out of the kitchen and finds new places for
 * them; keeps the result if it is within a threshold that is drawn before and serves as the budget of what is placed, so that
 * hopeless moves end early. Some moves push single tasks instead, others move meal breaks.
 *
 * <p>A copy is split at its unlimited waits into a movable head (preparation) and a tail bound to camera. Tails are placed
 * first, then heads are fitted into what is left.
 *
 * @see Ruin
 * @see Nudge
 */
final class Move {

    /** Most copies that a small move takes out: of these moves three times as many are accepted, and they cost less time. */
    private static final int FEW_RUINED = 4;
    /** Share of small moves; the lower one holds on days that are too full, above so many points of temperature. */
    private static final double SMALL_SHARE = 0.8;

    private static final double SMALL_SHARE_TOO_FULL = 0.2;

    private static final double HOT = 200;
    /** Share of moves that move a meal break: of few copies other moves come by it, and many need the moves themselves. */
    private static final double BREAK_MOVES = 0.2;

    private static final double FEW_FOR_BREAKS = 40;
    private static final double MANY_FOR_BREAKS = 80;
    /** Share of moves that push tasks instead of placing copies anew. */
    private static final double NUDGES = 0.2;
    /** Share of moves that put copies back to where a plan has them that is held, if they fit there. */
    private static final double BACK = 0.3;
    /** Share of moves that put all back where it was, in others' hands. */
    private static final double HANDS = 0.1;
    /** Share of moves of copies, all in place, that weave their tasks instead of placing copy by copy: what makes room for noise never. */
    private static final double INTERLEAVED = 0.5;
    /** Points below which hands count: then of moves whose copy is in several hands this share gives it to one. */
    private static final double FINE = 20;

    private static final double ONE_HAND = 0.2;
    /** Points for a minute of work that breaks put too far forward; fades below the temperature at which hands count. */
    private static final double RUSH = 10;
    /** Share of moves of what is off its peak that make room for it nearer to its call, and of these that place it before all else. */
    private static final double ROOM = 0.3;

    private static final double ROOM_FIRST = 0.7;

    private static final int MOST_MERGES = 5;

    /** Share of those of them that come late, not at all or hours too early, which make room for what makes noise instead. */
    private static final double NOISE = 0.5;

    private final Kitchen kitchen;
    private final Dice dice;
    private final Placer placer;
    private final Ruin ruin;
    private final Nudge nudge;
    private final Rush rush;
    private final Score score;
    private final boolean[] frozen;
    /** Points that each copy costs at least. */
    private final long[] least;
    /** Whether a published plan is to be kept close to, breaks and all. */
    private final boolean holding;

    private final boolean handsCount;
    private final double breakShare;
    private boolean breaksMove;

    private final int[] items;
    private final long[] itemKeys;
    private final int[] touched;
    private final long[] oldCost;
    private int touchedCount;
    /** How many of the touched copies count again with what they cost now. */
    private int settledCount;

    private final int[] movedBreaks;
    private final int[] oldBreakStart;
    private int movedBreakCount;
    /** Moved breaks that are out of the kitchen. */
    private int breaksOut;

    private final int[] breakTimes;
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
    /** Whether the seed is then placed whole, preparation and all. */
    private boolean wholeFirst;

    /**
     * @param frozen copies whose tails must stay, kept up to date by the search
     * @param holding whether a published plan is to be kept close to
     */
    Move(
            Kitchen kitchen,
            Dice dice,
            Placer placer,
            Ruin ruin,
            Rush rush,
            Score score,
            boolean[] frozen,
            boolean holding) {
        this.kitchen = kitchen;
        this.dice = dice;
        this.placer = placer;
        this.ruin = ruin;
        this.rush = rush;
        this.score = score;
        this.frozen = frozen;
        this.holding = holding;
        nudge = new Nudge(kitchen, dice, frozen);
        int copies = kitchen.copies;
        least = kitchen.net.copies().stream()
                .mapToLong(copy -> Bound.ofCopy(kitchen.net, copy))
                .toArray();
        handsCount = kitchen.net.prices().handChange() > 0;
        breakShare = BREAK_MOVES * Math.min(1, Math.min(copies / FEW_FOR_BREAKS, MANY_FOR_BREAKS / copies));
        items = new int[copies];
        itemKeys = new long[copies];
        touched = new int[copies];
        oldCost = new long[copies];
        breakTimes = new int[kitchen.breaks.length];
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

    /** Whether moves may take breaks to other times: not while what shares ovens is arranged alone, or they come to lie in hours that are busy for all the rest. */
    void letBreaksMove(boolean allowed) {
        breaksMove = allowed && kitchen.breaks.length > 0;
    }

    /**
     * Makes one move and keeps it if the plan then costs no more than before and what luck grants.
     *
     * @param temperature points that luck grants on average
     * @param tooFull whether what is late stays late for long, so that it competes with what is called by then
     */
    void make(double temperature, boolean tooFull) {
        long threshold = score.total() + (long) Math.min(1e15, -Math.log(1 - dice.unit()) * temperature);
        boolean fine = temperature < FINE;
        guide = kitchen.breaks.length == 0 || holding || temperature < FINE / 4
                ? 0
                : RUSH * Math.min(1, temperature / FINE);
        placer.letHandsCount(fine);
        roomFirst = false;
        wholeFirst = false;
        touchedCount = 0;
        movedBreakCount = 0;
        int seed = ruin.seed(fine);
        boolean placed = score.cost[seed] != Score.MISSING;
        if (placed && dice.chance(NUDGES)) {
            if (push(seed)) {
                finish(threshold);
            }
            return;
        }
        int moved = breakToMove();
        if (moved != Kitchen.NONE) {
            moveBreak(moved, threshold);
        } else if (handsCount && placed && dice.chance(HANDS)) {
            changeHands(seed, threshold);
        } else if (handsCount
                && placed
                && fine
                && !frozen[seed]
                && kitchen.handChanges(seed) > 0
                && dice.chance(ONE_HAND)) {
            giveToOne(seed, threshold);
        } else {
            if (dice.chance(ROOM) && chooseForRoom(seed)) {
                roomFirst = wholeFirst || dice.chance(ROOM_FIRST);
            } else {
                boolean small = dice.chance(tooFull && temperature > HOT ? SMALL_SHARE_TOO_FULL : SMALL_SHARE);
                ruin.choose(seed, small ? 1 + dice.below(FEW_RUINED) : Ruin.MOST, tooFull);
            }
            boolean whole = takeOutChosen();
            takeBreaksOut(seed);
            interleaved = whole && !wholeFirst && dice.chance(INTERLEAVED);
            end(recreate(threshold, 0), threshold);
        }
    }

    /** Lets the ruin make room for a copy: for its noise at some time, or for all of it nearer to its call. */
    private boolean chooseForRoom(int seed) {
        wholeFirst = ruin.isLate(seed) && dice.chance(NOISE) && ruin.chooseForNoise(seed);
        return wholeFirst || ruin.chooseForRoom(seed);
    }

    /** A break for this move to take to another time, or {@link Kitchen#NONE}. */
    private int breakToMove() {
        int moved = breaksMove && dice.chance(breakShare) ? dice.below(kitchen.breaks.length) : Kitchen.NONE;
        return moved == Kitchen.NONE || kitchen.breakStart[moved] == Kitchen.NONE ? Kitchen.NONE : moved;
    }

    private void moveBreak(int index, long threshold) {
        long budget = chooseForBreak(index, threshold);
        if (budget == Long.MIN_VALUE) {
            ruin.clear();
            return;
        }
        takeOutChosen();
        interleaved = false;
        end(moveBreaks() && recreate(budget, 0), threshold);
    }

    private void changeHands(int seed, long threshold) {
        ruin.chooseForHands(seed);
        takeOutChosen();
        end(handOver(), threshold);
    }

    private void giveToOne(int seed, long threshold) {
        long person = ruin.chooseForOne(seed);
        if (person == 0) {
            return;
        }
        takeOutChosen();
        takeBreaksOut(seed);
        interleaved = false;
        end(recreate(threshold, person), threshold);
    }

    /** Takes out what the ruin chose; returns whether all of the copies had a place. */
    private boolean takeOutChosen() {
        boolean whole = true;
        for (int i = 0; i < ruin.fullCount; i++) {
            int c = ruin.full[i];
            whole &= kitchen.placed(c);
            touch(c);
            takeOut(c);
        }
        for (int i = 0; i < ruin.headCount; i++) {
            touch(ruin.heads[i]);
            takeOutHead(ruin.heads[i]);
        }
        return whole;
    }

    private void end(boolean done, long threshold) {
        ruin.clear();
        if (done) {
            finish(threshold);
        } else {
            undo();
        }
    }

    /** Moves a break, and others of its person with it, if that puts no more work forward than luck grants; for an empty kitchen. */
    void moveBreakAlone(int index, double temperature) {
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
        long points = score.withoutKitchen();
        for (int i = 0; i < ruin.fullCount + ruin.headCount; i++) {
            int c = i < ruin.fullCount ? ruin.full[i] : ruin.heads[i - ruin.fullCount];
            points += least[c] - (score.cost[c] == Score.MISSING ? score.ofMissing(c) : score.cost[c]);
        }
        return points;
    }

    /** Keeps what the move has made if it is within the threshold; returns whether. */
    private boolean finish(long threshold) {
        score.reckonKitchen();
        if (guide > 0 && movedBreakCount > 0 && score.total() <= threshold) {
            threshold -= (long) (guide * rush.growth(kitchen.breakStart));
        }
        if (score.total() <= threshold) {
            if (movedBreakCount > 0) {
                rush.tell(kitchen.breakStart);
            }
            kitchen.commit();
            return true;
        }
        undo();
        return false;
    }

    /** Moves one task of a copy by some minutes, with all that is in its way; a late copy rather ahead. */
    private boolean push(int c) {
        int last = kitchen.base[c + 1] - 1;
        int g = dice.chance(0.5) ? last : kitchen.base[c] + dice.below(last + 1 - kitchen.base[c]);
        int minutes = 1 + dice.below(dice.chance(0.5) ? 3 : 15);
        boolean ahead = dice.chance(ruin.isLate(c) ? 0.8 : 0.5);
        return nudge.move(g, kitchen.start[g] + (ahead ? -minutes : minutes)) && settleNudged();
    }

    private boolean settleNudged() {
        for (int i = 0; i < nudge.copyCount; i++) {
            touch(nudge.copies[i]);
        }
        movedBreakCount = nudge.breakCount;
        System.arraycopy(nudge.breaks, 0, movedBreaks, 0, movedBreakCount);
        System.arraycopy(nudge.breakWas, 0, oldBreakStart, 0, movedBreakCount);
        return settle();
    }

    /**
     * Lets batches go into others that have room where the plan costs no more then, and gives those that aren't full no more minutes than
     * what is in them takes, whatever that costs: what ends sooner than planned may wait too long.
     */
    void tidyBatches() {
        guide = 0;
        boolean merged = true;
        // what one step no longer keeps apart another may put together
        for (int round = 0; merged && round < MOST_MERGES; round++) {
            merged = false;
            for (int[] members : kitchen.groupMembers) {
                for (int g : members) {
                    // but not walks: what is called first would have to wait for what is called later
                    merged |= kitchen.kind[g].task.step() != null && mergeBatch(g);
                }
            }
        }
        for (int[] members : kitchen.groupMembers) {
            for (int g : members) {
                shrinkBatch(g, true, score.total());
                shrinkBatch(g, false, score.total());
            }
        }
        // where copies are placed anew others' batches may have lost one
        for (int round = 0; round < MOST_MERGES; round++) {
            for (int[] members : kitchen.groupMembers) {
                for (int g : members) {
                    shrinkBatch(g, true, Score.ANYTHING);
                    shrinkBatch(g, false, Score.ANYTHING);
                    if (hasTooManyMinutes(g)) {
                        placeAlone(g);
                    }
                }
            }
        }
    }

    private boolean mergeBatch(int g) {
        int most = kitchen.kind[g].batchMost;
        for (int h : kitchen.groupMembers[kitchen.kind[g].group]) {
            for (boolean toEarlier : new boolean[] {true, false}) {
                int b = kitchen.batch[g];
                int other = kitchen.batch[h];
                boolean room =
                        b >= 0 && other >= 0 && b != other && kitchen.batchCount[b] + kitchen.batchCount[other] <= most;
                if (room && tidied(() -> nudge.merge(g, h, toEarlier), score.total())) {
                    return true;
                }
            }
        }
        return false;
    }

    private void shrinkBatch(int g, boolean beginLater, long threshold) {
        if (hasTooManyMinutes(g)) {
            tidied(() -> nudge.shrink(g, beginLater), threshold);
        }
    }

    private boolean hasTooManyMinutes(int g) {
        int b = kitchen.batch[g];
        return b >= 0 && kitchen.duration[g] > kitchen.kind[g].minutesFor(kitchen.batchCount[b]);
    }

    /** Whether something could be moved and the plan costs no more than it may. */
    private boolean tidied(BooleanSupplier nudged, long threshold) {
        touchedCount = 0;
        movedBreakCount = 0;
        return nudged.getAsBoolean() && settleNudged() && finish(threshold);
    }

    /** Places what is in a batch anew, in batches that have no more minutes than it takes, if all of it has a place so. */
    private void placeAlone(int g) {
        touchedCount = 0;
        settledCount = 0;
        movedBreakCount = 0;
        int b = kitchen.batch[g];
        for (int member : kitchen.groupMembers[kitchen.kind[g].group]) {
            if (kitchen.batch[member] == b) {
                touch(kitchen.copyOf[member]);
            }
        }
        for (int i = 0; i < touchedCount; i++) {
            takeOut(touched[i]);
        }
        placer.letBatchesHaveRoom(false);
        boolean all = true;
        for (int i = 0; i < touchedCount && all; i++) {
            all = placer.placeCopy(touched[i], true, Score.MISSING - 1, false);
        }
        placer.letBatchesHaveRoom(true);
        if (all && settle()) {
            finish(Score.ANYTHING);
        } else {
            undo();
        }
    }

    private void takeOut(int c) {
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

    private void takeOutHead(int c) {
        for (int i = kitchen.head[c].length - 1; i >= 0; i--) {
            int g = kitchen.head[c][i];
            if (kitchen.start[g] != Kitchen.NONE) {
                oldEnd[g] = kitchen.end(g);
                kitchen.remove(g);
            }
        }
    }

    private void touch(int c) {
        touched[touchedCount] = c;
        oldCost[touchedCount++] = score.cost[c];
        score.subtract(c);
    }

    private void undo() {
        for (int i = 0; i < movedBreakCount; i++) {
            if (kitchen.breakStart[movedBreaks[i]] != Kitchen.NONE) {
                kitchen.removeBreak(movedBreaks[i]);
            } else {
                score.missingBreaks--;
            }
        }
        kitchen.rollback(0);
        for (int i = 0; i < movedBreakCount; i++) {
            if (oldBreakStart[i] != Kitchen.NONE) {
                kitchen.placeBreak(movedBreaks[i], oldBreakStart[i]);
            } else {
                score.missingBreaks++;
            }
        }
        for (int i = 0; i < touchedCount; i++) {
            int c = touched[i];
            if (i < settledCount) {
                score.subtract(c);
            }
            score.cost[c] = oldCost[i];
            score.add(c);
        }
        settledCount = 0;
        score.reckonKitchen();
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
            score.missingBreaks++;
        }
        for (int i = 0; i < ruin.breakCount; i++) {
            int at = ruin.breakTimes[i];
            if (kitchen.findBreak(ruin.breaks[i], at, at, at) == Kitchen.NONE) {
                return failed();
            }
            kitchen.placeBreak(ruin.breaks[i], at);
            score.missingBreaks--;
        }
        return true;
    }

    /** Takes out missing breaks always, those near the seed's call now and then. */
    private void takeBreaksOut(int seed) {
        for (int i = 0; i < kitchen.breaks.length; i++) {
            int at = kitchen.breakStart[i];
            boolean near = Math.abs(at - kitchen.due[seed]) < 90 && breaksMove;
            boolean take = at == Kitchen.NONE || near && dice.chance(0.1);
            if (take) {
                movedBreaks[movedBreakCount] = i;
                oldBreakStart[movedBreakCount++] = at;
                if (at == Kitchen.NONE) {
                    score.missingBreaks--;
                } else {
                    kitchen.removeBreak(i);
                }
            }
        }
        breaksOut = movedBreakCount;
    }

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
                score.missingBreaks++;
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
        boolean back = holding && dice.chance(BACK);
        if (person == 0 && !roomFirst) {
            sortFull();
        }
        long spent = score.withoutKitchen();
        for (int i = 0; i < touchedCount; i++) {
            spent += least[touched[i]];
        }
        int count = 0;
        for (int i = 0; i < ruin.fullCount; i++) {
            int c = ruin.full[i];
            long budget = Math.min(score.mostOf(c), threshold - spent + least[c]);
            placer.insistOn(i < ruin.forOne ? person : 0);
            boolean there = back && placer.placeAsPublished(c);
            boolean whole = there || joint || wholeFirst && i == 0;
            if (!there && !placer.placeCopy(c, whole, budget, true)) {
                spent += score.ofMissing(c) - least[c];
            } else if (whole || !ruin.hasHead(c)) {
                spent += score.ofCopy(c) - least[c];
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
                spent += score.ofCopy(c);
            } else if (frozen[c] || ++ejections > 6) {
                return failed();
            } else {
                takeOut(c);
                spent += placer.placeCopy(c, true, Math.min(score.mostOf(c), threshold - spent), true)
                        ? score.ofCopy(c)
                        : score.ofMissing(c);
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
        long spent = score.withoutKitchen();
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
            score.reckon(c);
            score.add(c);
        }
        settledCount = touchedCount;
        return true;
    }

    /** Counts breaks that are still out as missing, so that undoing finds what it expects. */
    private boolean failed() {
        score.missingBreaks += breaksOut;
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
            itemKeys[i] = sign * ((long) kitchen.tailStart(items[i]) + dice.below(jitter));
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
