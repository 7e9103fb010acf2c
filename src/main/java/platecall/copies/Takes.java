package platecall.copies;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * How many takes a setup may need, from the two numbers a stylist can give: takes <em>likely</em>, which is read as the
 * single most common number (the mode, as in three-point estimates), and takes <em>at worst</em>, the number that nine
 * setups out of ten stay within (the 90th percentile). Both are met exactly by whichever of these fits:
 *
 * <ul>
 *   <li>{@link Spread#CERTAIN}: both are equal.
 *   <li>{@link Spread#POISSON}: takes = least + Poisson(m + 1/2), whose mode is m = likely - least. At least 1 take is
 *       certain; if the two numbers stand closer together than such a Poisson law allows, more takes are.
 *   <li>{@link Spread#NEGATIVE_BINOMIAL}: takes = 1 + negative binomial, if the two stand further apart than the Poisson
 *       law allows. With x = (1-p)/p the variance over mean is 1 + x and r = 1 + (m + 1/2)/x keeps the mode at m; x is
 *       found by bisection so that half of the chance of the number at worst lies below 90 %:
 *       F(worst - 1) + P(worst)/2 = 0.9. The Poisson law is its limit for x to 0.
 * </ul>
 *
 * <p>Source of the laws: any textbook of probability; the choice of them is own reasoning. The negative binomial is
 * written out because the reference library's takes whole r only.
 *
 * @param spread which law was fitted
 * @param counts chance of each number of takes, 1 or more
 */
public record Takes(Spread spread, CountDistribution counts) {

    /** Which law was fitted. */
    public enum Spread {
        CERTAIN,
        POISSON,
        NEGATIVE_BINOMIAL
    }

    /** Share of setups that stay within the takes at worst. */
    public static final double WORST_LEVEL = 0.9;

    private static final int BISECTIONS = 100;

    /**
     * The law fitted to both numbers.
     *
     * @param likely most common number of takes, at least 1
     * @param worst 90th percentile of takes, at least {@code likely}
     * @throws IllegalArgumentException if a number is out of range
     */
    public static Takes fit(int likely, int worst) {
        if (likely < 1 || worst < likely) {
            throw new IllegalArgumentException(
                    "takes must be at least 1 and at worst at least the likely: [" + likely + "], [" + worst + "]");
        }
        if (likely == worst) {
            return new Takes(Spread.CERTAIN, CountDistribution.certain(likely));
        }
        int mode = likely - 1;
        int apart = worst - likely;
        if (poissonReach(mode) < apart) {
            return new Takes(
                    Spread.NEGATIVE_BINOMIAL,
                    negativeBinomial(mode, excessFor(mode, worst - 1)).map(failures -> failures + 1));
        }
        while (poissonReach(mode) > apart) {
            mode--;
        }
        int least = likely - mode;
        return new Takes(
                Spread.POISSON,
                CountDistribution.of(PoissonDistribution.of(mode + 0.5)).map(count -> count + least));
    }

    /** How far the 90th percentile of a Poisson law lies above its mode. */
    private static int poissonReach(int mode) {
        return PoissonDistribution.of(mode + 0.5).inverseCumulativeProbability(WORST_LEVEL) - mode;
    }

    /** The x of the class comment for which {@code worst} is the 90th percentile; the chance falls as x rises. */
    private static double excessFor(int mode, int worst) {
        double low = 0;
        double high = worst;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            double[] chance = negativeBinomialUpTo(worst, mode, middle);
            double reached = Arrays.stream(chance).sum() - chance[worst] / 2;
            if (reached > WORST_LEVEL) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** The negative binomial law with this mode and x, cut off where less than the usual tail is left. */
    static CountDistribution negativeBinomial(int mode, double excess) {
        int most = 16;
        double[] chance = negativeBinomialUpTo(most, mode, excess);
        while (1 - Arrays.stream(chance).sum() > CountDistribution.TAIL) {
            most *= 2;
            chance = negativeBinomialUpTo(most, mode, excess);
        }
        return CountDistribution.of(0, chance);
    }

    /** P(0) = p^r and P(k) = P(k-1) (1-p) (k-1+r) / k, for k up to {@code most}. */
    private static double[] negativeBinomialUpTo(int most, int mode, double excess) {
        double r = 1 + (mode + 0.5) / excess;
        double q = excess / (1 + excess);
        double[] chance = new double[most + 1];
        chance[0] = Math.exp(-r * Math.log1p(excess));
        for (int k = 1; k <= most; k++) {
            chance[k] = chance[k - 1] * q * (k - 1 + r) / k;
        }
        return chance;
    }
}
