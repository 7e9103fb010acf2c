package platecall.copies;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;
import org.apache.commons.statistics.distribution.DiscreteDistribution;

/**
 * A chance for each of finitely many whole numbers, such as takes or copies. Immutable. Sums are exact but for rounding;
 * only a tail of less than 1e-12 is cut off where a distribution has no end.
 */
public final class CountDistribution {

    /** Tail that may be cut off where a distribution has no end. */
    static final double TAIL = 1e-12;

    /** Keeps a quantile from stepping up on a rounding error in the last digits. */
    private static final double TIE = 1e-12;

    private final int least;
    private final double[] chance;
    private final double[] above;

    private CountDistribution(int least, double[] weights) {
        double sum = Arrays.stream(weights).sum();
        this.least = least;
        this.chance = Arrays.stream(weights).map(weight -> weight / sum).toArray();
        this.above = new double[chance.length];
        // summed from the far end, so that small chances of running out keep their digits
        for (int i = chance.length - 2; i >= 0; i--) {
            above[i] = above[i + 1] + chance[i + 1];
        }
    }

    /** The number {@code count} for certain. */
    public static CountDistribution certain(int count) {
        return new CountDistribution(count, new double[] {1});
    }

    /**
     * The numbers from {@code least} on with the given weights, which are scaled to sum 1.
     *
     * @throws IllegalArgumentException if there are none, one is negative or none is above 0
     */
    public static CountDistribution of(int least, double... weights) {
        if (Arrays.stream(weights).anyMatch(weight -> !(weight >= 0))
                || !(Arrays.stream(weights).sum() > 0)) {
            throw new IllegalArgumentException("weights must be 0 or more and not all 0: " + Arrays.toString(weights));
        }
        return new CountDistribution(least, weights.clone());
    }

    /** A distribution of the reference library on 0, 1, 2, ..., cut off where less than {@link #TAIL} is left. */
    static CountDistribution of(DiscreteDistribution source) {
        int most = 0;
        while (source.survivalProbability(most) >= TAIL) {
            most++;
        }
        double[] weights = new double[most + 1];
        Arrays.setAll(weights, source::probability);
        return new CountDistribution(0, weights);
    }

    /** The least number that has a place in it. */
    public int least() {
        return least;
    }

    /** The greatest number that has a place in it. */
    public int most() {
        return least + chance.length - 1;
    }

    /** P(X = count), 0 to 1. */
    public double chanceOf(int count) {
        return count < least || count > most() ? 0 : chance[count - least];
    }

    /** P(X &gt; count), 0 to 1. */
    public double chanceAbove(int count) {
        return count < least ? 1 : count > most() ? 0 : above[count - least];
    }

    /** P(X &le; count), 0 to 1. */
    public double chanceUpTo(int count) {
        return 1 - chanceAbove(count);
    }

    /** The least number {@code k} with P(X &le; k) &ge; {@code level}; level 0 to 1. */
    public int quantile(double level) {
        int count = least;
        while (count < most() && chanceUpTo(count) < level - TIE) {
            count++;
        }
        return count;
    }

    /** E[X]. */
    public double mean() {
        return least + expectedExcess(least, 1);
    }

    /**
     * E[ceil(max(0, X - count) / size)], the sum of P(X &gt; count + j size) over j &ge; 0: how many sets are missing on average
     * if there are {@code count} copies.
     *
     * @param size copies of a set, at least 1
     */
    public double expectedExcess(int count, int size) {
        double sum = 0;
        // from the far end, so that small chances of running out keep their digits
        for (int sets = Math.max(0, most() - count) / size; sets >= 0; sets--) {
            sum += chanceAbove(count + sets * size);
        }
        return sum;
    }

    /** The distribution of {@code f(X)}; {@code f} must not fall anywhere. */
    public CountDistribution map(IntUnaryOperator f) {
        int from = f.applyAsInt(least);
        double[] weights = new double[f.applyAsInt(most()) - from + 1];
        for (int i = 0; i < chance.length; i++) {
            weights[f.applyAsInt(least + i) - from] += chance[i];
        }
        return new CountDistribution(from, weights);
    }

    /**
     * How many must be made until X of them have survived, each surviving on its own with the given chance: X plus a
     * negative binomial number of failures, so that P(N &le; n) = P(Binomial(n, survival) &ge; X). Each further
     * survivor convolves in a geometric number of trials: g(d, n) = s g(d-1, n-1) + (1-s) g(d, n-1).
     *
     * @param survival chance that one survives, above 0, at most 1
     * @param most numbers above this are counted as this, at least 0
     */
    public CountDistribution madeToKeep(double survival, int most) {
        if (!(survival > 0 && survival <= 1)) {
            throw new IllegalArgumentException("survival must be above 0, at most 1, but it is [" + survival + "]");
        }
        if (survival == 1) {
            return map(count -> Math.min(count, most));
        }
        double[] weights = new double[most + 1];
        double[] trials = new double[most + 1];
        trials[0] = 1;
        for (int kept = 0; kept <= Math.min(most(), most); kept++) {
            if (kept > 0) {
                double before = 0;
                for (int made = 0; made <= most; made++) {
                    double now = survival * before + (made == 0 ? 0 : (1 - survival) * trials[made - 1]);
                    before = trials[made];
                    trials[made] = now;
                }
            }
            double share = chanceOf(kept);
            double within = 0;
            for (int made = kept; made < most && share > 0; made++) {
                weights[made] += share * trials[made];
                within += trials[made];
            }
            weights[most] += share * Math.max(0, 1 - within);
        }
        weights[most] += chanceAbove(most);
        return new CountDistribution(0, weights).trimmed();
    }

    private CountDistribution trimmed() {
        int from = 0;
        while (chance[from] == 0) {
            from++;
        }
        int to = chance.length - 1;
        while (to > from && above[to - 1] < TAIL) {
            to--;
        }
        return new CountDistribution(least + from, Arrays.copyOfRange(chance, from, to + 1));
    }
}
