package platecall.solve;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import platecall.day.Prices;
import platecall.tasks.TaskNet;

/**
 * Ruin and recreate under a temperature that falls: each {@link Move} that makes the plan not much dearer is kept, less and
 * less so as time goes on. What must share ovens is arranged first, then what is late, then all else, in one start or several.
 */
final class Search {

    /** Temperature in points at which what shares ovens begins to settle, and what is late at least. */
    private static final double HOT = 200;
    /** Temperatures in points between which the coarse order of a day settles; hands and single minutes are left to the end. */
    private static final double WARM = 80;

    /** Where starts are compared. */
    private static final double LUKEWARM = 40;

    private static final double COOL = 2;
    private static final double COLD = 0.3;
    private static final double WARM_AGAIN = 60;
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
    /** Share up to which a late chain runs on days that are too full, and share for another one from the start where there is time for many. */
    private static final double TOO_FULL_LATE_SHARE = 0.3;

    private static final double SECOND_LATE_SHARE = 0.2;
    /** Share that a late chain may use on days too large for more than one start: a few late minutes are no reason to keep all else hot. */
    private static final double SHORT_LATE_SHARE = 0.5;
    /**
     * Share of the effort for a hot chain, for days on which much stays late; it begins at so many times the mean points of a
     * copy and ends at that share of them.
     */
    private static final double HOT_CHAIN_SHARE = 0.05;

    private static final double HOT_CHAIN_WARM = 4.5;
    private static final double HOT_CHAIN_COOL = 0.1;
    /** Share of copies aside, once the rest has settled around what shares ovens, above which the day is too full for all. */
    private static final double TOO_FULL = 1 / 15.0;
    /** Share of copies still aside above which that is plain early, and share of that phase after which it is asked. */
    private static final double FAR_TOO_FULL = 0.1;

    private static final double ASKED_EARLY = 0.5;
    /** Moves a copy before which it means nothing that chains agree. */
    private static final long LEAST_MOVES = 200_000;

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

    private final Prices prices;
    private final Kitchen kitchen;
    private final Ruin ruin;
    private final Score score;
    private final Move move;
    private final Builder builder;
    private final Published published;
    /** Whether it costs points to move what is published: then little is to change, and the effort goes into that. */
    private final boolean holding;

    private final Effort effort;
    private final long bound;
    /** Points that cannot be undercut by what is active: the bound for all copies, unknown for a part of them. */
    private long target;

    /** All copies by call, those of them that need ovens, and those that the search works on. */
    private final int[] all;

    private final int[] bakes;
    private int[] active;
    /** Copies whose tails must stay. */
    private final boolean[] frozen;

    private boolean tooFull;
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

    /**
     * @param bound points that no plan of the day can undercut
     * @param published the plan to stay close to, or null
     */
    Search(TaskNet net, long seed, Effort effort, long bound, Published published) {
        this.effort = effort;
        this.bound = bound;
        this.published = published;
        prices = net.prices();
        holding = published != null && prices.movedMinute() > 0;
        target = bound;
        kitchen = new Kitchen(net);
        frozen = new boolean[kitchen.copies];
        all = IntStream.range(0, kitchen.copies)
                .boxed()
                .sorted(Comparator.comparingInt((Integer c) -> kitchen.due[c]).thenComparing(c -> c))
                .mapToInt(Integer::intValue)
                .toArray();
        bakes = Arrays.stream(all).filter(this::bakes).toArray();
        Dice dice = new Dice(seed);
        Placer placer = new Placer(kitchen, dice);
        if (published != null) {
            placer.hold(published);
        }
        Rush rush = new Rush(kitchen);
        score = new Score(kitchen, published);
        ruin = new Ruin(kitchen, dice, score.cost, frozen);
        move = new Move(kitchen, dice, placer, ruin, rush, score, frozen, published != null);
        builder = new Builder(kitchen, dice, placer, rush, score, published);
        activate(all);
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
        active = copies;
        ruin.activate(copies);
        score.activate(copies);
        move.letBreaksMove(copies == all);
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

    /** Builds plans to start from and searches until the effort is used. */
    void run() {
        construct();
        begun = effort.used(moves);
        effort.progress(this, moves);
        // where only meal breaks are left, each has its place, or has none
        if (kitchen.copies > 0) {
            search();
        }
    }

    private void search() {
        double copies = kitchen.copies;
        int rounds = (int) Math.max(1, Math.min(MOST_ROUNDS, 4_500 * effort.seconds() / (copies * copies)));
        double at = copies < LEAST_FOR_OVENS ? wholeChains(rounds) : leadingStart(rounds);
        if (!finished()) {
            builder.restore(best);
            chain(at, 1, 5, COLD);
        }
        builder.restore(best);
        move.tidyBatches();
        best = Arrangement.of(kitchen);
        bestCost = score.total();
        effort.progress(this, moves);
    }

    /** The best of a few plans built copy by copy, or of the one that is published. */
    private void construct() {
        if (published != null) {
            builder.buildPublished(active);
            keepBest();
        }
        builder.build(active);
        keepBest();
        if (bestCost > bound) {
            if (published == null) {
                builder.quietBreaks(move);
            }
            int[] latestFirst = new int[active.length];
            for (int i = 0; i < active.length; i++) {
                latestFirst[i] = active[active.length - 1 - i];
            }
            builder.build(latestFirst);
            keepBest();
        }
        builder.restore(best);
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
            if (i > 1 && !holding && staysLate()) {
                return hotChains();
            }
            long before = bestCost;
            builder.restore(origin);
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
        double at = ovensFirst(0, rounds);
        boolean crowded = tooFull && rounds >= MANY_ROUNDS;
        double patience = crowded
                ? TOO_FULL_LATE_SHARE
                : rounds == 1 ? SHORT_LATE_SHARE : rounds < MANY_ROUNDS ? LATE_SHARE : FIRST_LATE_SHARE;
        if (rounds > 1 || !tooFull) {
            at = lateChain(at, patience, patience);
        }
        if (rounds == 1) {
            // Much may be later than before once nothing is aside any more.
            setAside(false);
            if (trouble()) {
                builder.restore(best);
            }
        } else if (trouble() && crowded) {
            builder.restore(origin);
            double until = at + SECOND_LATE_SHARE;
            at = lateChain(ovensFirst(at, rounds), until, until);
            if (staysLate()) {
                return hotChains();
            }
        } else if (trouble() && at < LATE_SHARE) {
            builder.restore(origin);
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
                builder.restore(origin);
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
        builder.restore(leader);
        chain(at, at + 2 * part, LUKEWARM, COOL);
        at += 2 * part;
        for (int i = starts; i >= 0 && !finished(); i--) {
            at = again(at, at + (1 - at) * 2 / (2 * i + 3.5), COOL);
        }
        return at;
    }

    /** Whether anything is late in the best plan, which is put back. */
    private boolean staysLate() {
        builder.restore(best);
        return trouble();
    }

    /**
     * Short chains from the best plan, so hot that little of it is left: where much stays late, what a chain comes to is decided
     * while copies change places at many late minutes' points, and differs much from chain to chain.
     *
     * @return the share of the effort used
     */
    private double hotChains() {
        double at = used();
        while (at < RACE_SHARE && !finished()) {
            builder.restore(best);
            double warm = Math.max(lateTemperature(), HOT_CHAIN_WARM * bestCost / active.length);
            chain(at, at + HOT_CHAIN_SHARE, warm, HOT_CHAIN_COOL * warm);
            // a chain ends hot: its last plan must be tidied to be compared
            cool(COOL, 4 * CLOCK_EVERY);
            at = used();
        }
        return again(at, at + (1 - at) / 2, COLD);
    }

    /** A chain from the best plan, not so warm that all of its order is lost. */
    private double again(double from, double to, double cold) {
        if (!finished()) {
            builder.restore(best);
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
        builder.restore(ovens);
        setAside(true);
        builder.placeMissing(active);
        for (int c : bakes) {
            frozen[c] = true;
        }
        beginChain();
        double settling = used();
        double free = settling + (rounds == 1 ? SHORT_FROZEN_SHARE : FROZEN_SHARE) * RACE_SHARE / rounds;
        double first = settling + ASKED_EARLY * (free - settling);
        coolWhileLate(settling, free, first, HOT, 0);
        tooFull |= score.missing() > FAR_TOO_FULL * active.length;
        if (!tooFull && used() >= first) {
            coolWhileLate(settling, free, free, HOT, 0);
        }
        builder.restore(chainBest);
        double at = used();
        Arrays.fill(frozen, false);
        tooFull |= score.missing() > TOO_FULL * active.length;
        if (tooFull) {
            score.letCome();
        }
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
            builder.build(active);
            keepBest();
            double until = from + OVENS_BEGINNINGS * share * i / OVENS_STARTS;
            chain(lateChain(used(), until, until), until, HOT, OVENS_WARM);
            if (chainBestCost < leaderCost) {
                leaderCost = chainBestCost;
                leader = chainBest;
            }
        }
        builder.restore(leader);
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
        return score.incomplete() || score.looks() >= prices.lateMinute() && anyLate();
    }

    private boolean anyLate() {
        for (int c : active) {
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
        double cold = Math.max(COOL, LATE_COOL * prices.lateMinute());
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
            if (temperature <= least) {
                score.letCome();
                if (score.missing() == 0) {
                    setAside(false);
                }
            }
            cool(temperature, 4 * CLOCK_EVERY);
            raisePrices();
            calm = trouble() || temperature < easy ? 0 : calm + 1;
            used = used();
        }
        return used;
    }

    private double lateTemperature() {
        return Math.max(HOT, prices.lateMinute());
    }

    static double between(double warm, double cold, double share) {
        return warm * Math.pow(cold / warm, Math.max(0, Math.min(1, share)));
    }

    /** Whether copies may be set aside from now on; if not, those that are come in as late as they must. */
    private void setAside(boolean allowed) {
        boolean now = allowed && prices.lateMinute() > 0;
        if (now == score.aside()) {
            return;
        }
        score.setAside(now, !tooFull);
        if (now) {
            score.recount();
        } else {
            builder.placeMissing(active);
        }
        beginChain();
    }

    private void raisePrices() {
        if (score.aside() && score.missing() > 0) {
            score.raisePrices();
            beginChain();
        }
    }

    private void cool(double temperature, int count) {
        ruin.findLate();
        for (int i = 0; i < count; i++) {
            move.make(temperature, tooFull);
            moves++;
            long now = score.total();
            if (now < chainBestCost || now < bestCost && score.missing() == 0) {
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
        long now = score.total();
        boolean bestOfChain = now < chainBestCost;
        chainBestCost = Math.min(now, chainBestCost);
        if ((!score.aside() || score.missing() == 0) && (best == null || now < bestCost)) {
            keepBest();
            chainBest = bestOfChain ? best : chainBest;
        } else if (bestOfChain) {
            chainBest = Arrangement.of(kitchen);
        }
    }

    private void keepBest() {
        long now = score.total();
        if (best == null || now < bestCost) {
            best = Arrangement.of(kitchen);
            bestCost = now;
        }
    }
}
