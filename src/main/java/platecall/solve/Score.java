package platecall.solve;

import java.util.Arrays;
import platecall.day.Prices;

/** What the copies in a {@link Kitchen} cost, in points, kept up to date while a move takes them out and puts them back. */
final class Score {

    /** Points for a copy that has no place: more than any lateness within a day. */
    static final long MISSING = 1_000_000_000L;
    /** More points than any plan has. */
    static final long ANYTHING = Long.MAX_VALUE / 4;

    /** Minutes late, in points, that it costs at first to set a copy aside: later than so it is better not placed yet. */
    private static final int ASIDE_MINUTES = 5;
    /** What the price of a copy is multiplied with every so often while it is aside. */
    private static final double ASIDE_GROWTH = 1.02;

    private final Kitchen kitchen;
    private final Prices prices;
    /** Each copy as the plan has it that is held, with people by the kitchen's bits; null if none is, or not the copy. */
    private final Published.Kept[] kept;

    private final Published published;
    /** Copies that the search works on. */
    private int[] active;

    /** Points of each copy, {@link #MISSING} if it has no place. */
    final long[] cost;

    private long looks;
    private long kitchenCost;
    private int missing;
    private long missingCost;
    /** Breaks without a place. */
    int missingBreaks;
    /** Whether copies may be set aside for a price of their own, so that those that fit are not held up by one that doesn't yet. */
    private boolean aside;
    /** Whether a copy may come no later than its first price: else it stays aside. */
    private boolean gentle;

    private final long[] asidePrice;

    /** @param published the plan to stay close to, or null */
    Score(Kitchen kitchen, Published published) {
        this.kitchen = kitchen;
        this.published = published;
        kept = published == null ? null : new Published.Kept[kitchen.copies];
        for (int c = 0; c < kitchen.copies && published != null; c++) {
            Published.Kept copy = published.kept(c);
            kept[c] = copy == null ? null : copy.with(kitchen::bits);
        }
        prices = kitchen.net.prices();
        cost = new long[kitchen.copies];
        asidePrice = new long[kitchen.copies];
    }

    /** From now on only these copies count, once {@link #recount} is called. */
    void activate(int[] copies) {
        active = copies;
    }

    /** Points of a copy that has a place. */
    long ofCopy(int c) {
        return kitchen.lookCost(c)
                + (long) kitchen.handChanges(c) * prices.handChange()
                + (kept == null ? 0 : movedMinutes(c) * prices.movedMinute());
    }

    private long movedMinutes(int c) {
        long moved = 0;
        for (int g = kitchen.base[c]; kept[c] != null && g < kitchen.base[c + 1]; g++) {
            moved += kept[c].moved(
                    g - kitchen.base[c], kitchen.start[g], kitchen.handsA[g], kitchen.handsB[g], kitchen.way[g]);
        }
        return moved;
    }

    long total() {
        return withoutKitchen() + kitchenCost;
    }

    /** All points but those for open kitchen and for meal breaks that move. */
    long withoutKitchen() {
        return looks + missingCost + MISSING * missingBreaks;
    }

    /** Points of what is in place, without those for open kitchen. */
    long looks() {
        return looks;
    }

    /** Copies without a place. */
    int missing() {
        return missing;
    }

    /** Whether a copy or a break has no place. */
    boolean incomplete() {
        return missing + missingBreaks > 0;
    }

    /** Points that a copy costs as long as it has no place. */
    long ofMissing(int c) {
        return aside ? asidePrice[c] : MISSING;
    }

    /** Points that a copy may cost where it is placed: beyond them it is left out. */
    long mostOf(int c) {
        return gentle ? firstPrice(c) : ofMissing(c);
    }

    private long firstPrice(int c) {
        return ASIDE_MINUTES * Math.max(prices.lateMinute(), kitchen.recipe[c].lateWeight());
    }

    /** Reckons everything anew from what is in the kitchen. */
    void recount() {
        looks = 0;
        missing = 0;
        missingCost = 0;
        for (int c : active) {
            reckon(c);
            add(c);
        }
        reckonKitchen();
        missingBreaks = 0;
        for (int start : kitchen.breakStart) {
            missingBreaks += start == Kitchen.NONE ? 1 : 0;
        }
    }

    /** Reckons what a copy costs now, without counting it. */
    void reckon(int c) {
        cost[c] = kitchen.placed(c) ? ofCopy(c) : MISSING;
    }

    /** Reckons the points for open kitchen and for meal breaks that move from where they are published. */
    void reckonKitchen() {
        kitchenCost = kitchen.kitchenMinutes() * prices.kitchenMinute();
        for (int i = 0; published != null && i < kitchen.breaks.length; i++) {
            int was = published.breakStart(i);
            int is = kitchen.breakStart[i];
            kitchenCost += was == Kitchen.NONE || is == Kitchen.NONE ? 0 : Math.abs(is - was) * prices.movedMinute();
        }
    }

    /** Counts a copy as it was last reckoned. */
    void add(int c) {
        if (cost[c] == MISSING) {
            missing++;
            missingCost += ofMissing(c);
        } else {
            looks += cost[c];
        }
    }

    /** Counts a copy no more, as it was last reckoned. */
    void subtract(int c) {
        if (cost[c] == MISSING) {
            missing--;
            missingCost -= ofMissing(c);
        } else {
            looks -= cost[c];
        }
    }

    boolean aside() {
        return aside;
    }

    /**
     * Whether copies may be set aside from now on, each for its first price; counts once {@link #recount} is called.
     *
     * @param soft whether none may come later than its first price
     */
    void setAside(boolean allowed, boolean soft) {
        aside = allowed;
        gentle = allowed && soft;
        if (allowed) {
            Arrays.setAll(asidePrice, this::firstPrice);
        }
    }

    /** Copies that are aside may come as late as their price by now allows. */
    void letCome() {
        gentle = false;
    }

    /** Makes copies that are aside dearer, so that next time rather others are. */
    void raisePrices() {
        for (int c : active) {
            if (cost[c] == MISSING) {
                asidePrice[c] = Math.min(MISSING, (long) (asidePrice[c] * ASIDE_GROWTH));
            }
        }
        recount();
    }
}
