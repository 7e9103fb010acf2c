package platecall.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StepMinutesTest {

    /** Shapes, mean and variance by hand from the formulas of beta-PERT: mean (a + 4 m + b) / 6, variance (mean - a)(b - mean) / 7. */
    @ParameterizedTest
    @CsvSource({"0, 5, 10, 3, 3, 5, 3.5714286", "5, 8, 17, 2, 4, 9, 4.5714286"})
    void hasTheShapesOfBetaPert(
            int low, int likely, int high, double alpha, double beta, double mean, double variance) {
        BetaDistribution share = StepMinutes.beta(low, likely, high);
        int range = high - low;
        assertThat(share.getAlpha()).isEqualTo(alpha);
        assertThat(share.getBeta()).isEqualTo(beta);
        assertThat(low + range * share.getMean()).isEqualTo(mean, within(1e-9));
        assertThat(range * range * share.getVariance()).isEqualTo(variance, within(1e-6));
        assertThat((mean - low) * (high - mean) / 7).isEqualTo(variance, within(1e-6));
    }

    /** Quantiles of the regularised incomplete beta function, computed apart from this program. */
    @ParameterizedTest
    @CsvSource({
        "0, 5, 10, 0.1, 2.46636", "0, 5, 10, 0.5, 5", "0, 5, 10, 0.8, 6.73402", "0, 5, 10, 0.9, 7.53364",
        "0, 5, 10, 0.95, 8.10745", "5, 8, 17, 0.1, 6.34682", "5, 8, 17, 0.5, 8.76572", "5, 8, 17, 0.8, 10.88231",
        "5, 8, 17, 0.9, 12.00668", "5, 8, 17, 0.95, 12.88890"
    })
    void hasTheQuantilesOfBetaPert(int low, int likely, int high, double share, double minutes) {
        double there = low + (high - low) * StepMinutes.beta(low, likely, high).inverseCumulativeProbability(share);
        assertThat(there).isEqualTo(minutes, within(1e-5));
        assertThat(StepMinutes.of(low, likely, high).at(share)).isEqualTo((int) Math.round(minutes));
    }

    /** I_0.25(3, 3) is 106/1024: a share of that takes less than 2.5 of 0 to 10 minutes, 2 whole ones at most. */
    @Test
    void roundsToTheNearestMinute() {
        StepMinutes minutes = StepMinutes.of(0, 5, 10);
        assertThat(minutes.at(106.0 / 1024 - 1e-9)).isEqualTo(2);
        assertThat(minutes.at(106.0 / 1024 + 1e-9)).isEqualTo(3);
    }

    @Test
    void isCertainWhereLowAndHighAreTheSame() {
        for (double share : new double[] {0, 0.3, 0.999999, 1}) {
            assertThat(StepMinutes.of(7, 7, 7).at(share)).isEqualTo(7);
        }
    }

    @Property
    void staysBetweenLowAndHighAndGrowsWithTheShare(
            @ForAll @IntRange(min = 1, max = 400) int low,
            @ForAll @IntRange(max = 200) int toLikely,
            @ForAll @IntRange(max = 200) int toHigh) {
        StepMinutes minutes = StepMinutes.of(low, low + toLikely, low + toLikely + toHigh);
        int before = minutes.at(0);
        assertThat(before).isGreaterThanOrEqualTo(low);
        for (int n = 1; n <= 100; n++) {
            int now = minutes.at(n / 100.0);
            assertThat(now).isBetween(before, low + toLikely + toHigh);
            before = now;
        }
    }

    /** Of a step of 5, 8, 17 minutes with shapes 2 and 4: at most x of the way in 1 - (1 - x)^4 (1 + 4 x) of all cases. */
    @Test
    void whatIsUnderWayTakesLongerThanItHasTaken() {
        StepMinutes minutes = StepMinutes.of(5, 8, 17);
        double gone = atMost(10);
        for (double share = 0.05; share < 1; share += 0.05) {
            int longer = minutes.longerThan(10, share);
            double wanted = gone + (1 - gone) * share;
            assertThat(longer).isGreaterThan(10);
            assertThat(atMost(longer)).isGreaterThanOrEqualTo(wanted - 1e-9);
            assertThat(longer == 11 ? gone : atMost(longer - 1)).isLessThan(wanted + 1e-9);
        }
        assertThat(minutes.longerThan(10, 0.5)).isGreaterThan(minutes.at(0.5));
        assertThat(minutes.longerThan(17, 0.5)).isEqualTo(18);
        assertThat(minutes.longerThan(3, 0.5)).isEqualTo(minutes.at(0.5));
    }

    private static double atMost(int minutes) {
        double x = Math.min(1, (minutes + 0.5 - 5) / 12);
        return 1 - Math.pow(1 - x, 4) * (1 + 4 * x);
    }
}
