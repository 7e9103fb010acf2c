package platecall.odds;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.BetaDistribution;
import platecall.day.Step;

/**
 * Whole minutes that a step takes, as they fall: a beta distribution from its low to its high minutes with its peak at the likely
 * ones (beta-PERT: shapes 1 + 4 (likely - low) / (high - low) and 1 + 4 (high - likely) / (high - low); Vose, Risk Analysis,
 * 2008, reference from memory), rounded to the nearest minute.
 */
final class StepMinutes {

    /** Weight of the likely minutes against the low and the high ones: the mean is (low + 4 likely + high) / 6. */
    private static final int LIKELY_WEIGHT = 4;

    private final int low;
    /** Chance of at most so many minutes beyond the low ones. */
    private final double[] atMost;

    private StepMinutes(int low, double[] atMost) {
        this.low = low;
        this.atMost = atMost;
    }

    /** The minutes of a step; for certain the likely ones if low and high are the same. */
    static StepMinutes of(Step step) {
        return of(step.minutesLow(), step.minutesLikely(), step.minutesHigh());
    }

    /**
     * Between two minutes.
     *
     * @param low the least, minutes
     * @param likely the most common, from {@code low} to {@code high}
     * @param high the most
     */
    static StepMinutes of(int low, int likely, int high) {
        double[] atMost = new double[high - low + 1];
        if (high > low) {
            BetaDistribution beta = beta(low, likely, high);
            Arrays.setAll(atMost, i -> beta.cumulativeProbability((i + 0.5) / (high - low)));
        }
        atMost[high - low] = 1;
        return new StepMinutes(low, atMost);
    }

    /** The share of the way from the low to the high minutes, before it is rounded. */
    static BetaDistribution beta(int low, int likely, int high) {
        double range = high - low;
        return BetaDistribution.of(
                1 + LIKELY_WEIGHT * (likely - low) / range, 1 + LIKELY_WEIGHT * (high - likely) / range);
    }

    /** The minutes that a share of all cases in which it takes longer than so many, 0 to 1, doesn't exceed; if there is none, one more. */
    int longerThan(int minutes, double share) {
        double gone = minutes < low ? 0 : atMost[Math.min(atMost.length - 1, minutes - low)];
        return Math.max(minutes + 1, at(gone + (1 - gone) * share));
    }

    /** The minutes that a share of all cases, 0 to 1, doesn't exceed. */
    int at(double share) {
        int i = Arrays.binarySearch(atMost, share);
        return low + Math.min(atMost.length - 1, i < 0 ? -1 - i : i);
    }
}
