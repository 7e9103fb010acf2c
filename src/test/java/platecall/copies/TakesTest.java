package platecall.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.statistics.distribution.PascalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.copies.Takes.Spread;

class TakesTest {

    private static double variance(CountDistribution counts) {
        double mean = counts.mean();
        return IntStream.rangeClosed(counts.least(), counts.most())
                .mapToDouble(k -> counts.chanceOf(k) * (k - mean) * (k - mean))
                .sum();
    }

    private static void meetsBothNumbers(int likely, int worst) {
        CountDistribution counts = Takes.fit(likely, worst).counts();
        assertThat(counts.quantile(Takes.WORST_LEVEL))
                .as("%s / %s", likely, worst)
                .isEqualTo(worst);
        for (int k = counts.least(); k <= counts.most(); k++) {
            assertThat(counts.chanceOf(k))
                    .as("%s / %s at %s", likely, worst, k)
                    .isLessThanOrEqualTo(counts.chanceOf(likely));
        }
        assertThat(counts.least()).isBetween(1, likely);
        assertThat(counts.chanceUpTo(counts.most())).isCloseTo(1, within(1e-12));
    }

    @Test
    void meetsBothNumbersExactlyForEverySmallPair() {
        for (int worst = 1; worst <= 40; worst++) {
            for (int likely = 1; likely <= worst; likely++) {
                meetsBothNumbers(likely, worst);
            }
        }
    }

    @Property(tries = 60)
    void meetsBothNumbersExactlyFarOut(
            @ForAll @IntRange(min = 1, max = 500) int one, @ForAll @IntRange(min = 1, max = 500) int other) {
        meetsBothNumbers(Math.min(one, other), Math.max(one, other));
    }

    @Test
    void isCertainWhenBothAreEqual() {
        Takes takes = Takes.fit(4, 4);
        assertThat(takes.spread()).isEqualTo(Spread.CERTAIN);
        assertThat(takes.counts().chanceOf(4)).isEqualTo(1);
    }

    // 90 % points of the Poisson law (reference library): mean 2.5: 5, so likely 3 at worst 6 needs no other law.
    @Test
    void isOnePlusPoissonWhereThatFits() {
        Takes takes = Takes.fit(3, 6);
        assertThat(takes.spread()).isEqualTo(Spread.POISSON);
        PoissonDistribution law = PoissonDistribution.of(2.5);
        assertThat(law.inverseCumulativeProbability(.9)).isEqualTo(5);
        for (int k = 0; k < 15; k++) {
            assertThat(takes.counts().chanceOf(1 + k)).isCloseTo(law.probability(k), within(1e-11));
        }
    }

    @Test
    void makesMoreTakesCertainWhenTheNumbersStandClose() {
        CountDistribution counts = Takes.fit(10, 11).counts();
        assertThat(counts.least()).isEqualTo(10);
        assertThat(counts.mean()).isCloseTo(10.5, within(1e-9));
        CountDistribution wider = Takes.fit(10, 12).counts();
        assertThat(wider.least()).isEqualTo(9);
        assertThat(wider.mean()).isCloseTo(10.5, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"1, 1, CERTAIN", "1, 2, POISSON", "1, 3, NEGATIVE_BINOMIAL", "2, 4, POISSON", "2, 5, NEGATIVE_BINOMIAL"
    })
    void choosesTheLawByTheSpread(int likely, int worst, Spread spread) {
        assertThat(Takes.fit(likely, worst).spread()).isEqualTo(spread);
    }

    @Property(tries = 100)
    void variesMoreThanPoissonWhenFurtherApart(
            @ForAll @IntRange(min = 1, max = 12) int likely, @ForAll @IntRange(min = 1, max = 25) int apart) {
        Takes takes = Takes.fit(likely, likely + apart);
        double variance = variance(takes.counts());
        if (takes.spread() == Spread.NEGATIVE_BINOMIAL) {
            assertThat(takes.counts().least()).isEqualTo(1);
            assertThat(variance).isGreaterThan(takes.counts().mean() - 1);
        } else {
            assertThat(variance)
                    .isCloseTo(takes.counts().mean() - takes.counts().least(), within(1e-7));
        }
    }

    @Property(tries = 60)
    void halfTheChanceOfTheWorstLiesBelowNinetyPercent(
            @ForAll @IntRange(min = 1, max = 12) int likely, @ForAll @IntRange(min = 9, max = 60) int apart) {
        Takes takes = Takes.fit(likely, likely + apart);
        CountDistribution counts = takes.counts();
        int worst = likely + apart;
        assertThat(takes.spread()).isEqualTo(Spread.NEGATIVE_BINOMIAL);
        assertThat(counts.chanceUpTo(worst - 1) + counts.chanceOf(worst) / 2).isCloseTo(.9, within(1e-9));
    }

    // Reference library, whole r: mode 3 and r 8 mean x = 3.5 / 7 = 0.5, p = 2/3; mode 0 and r 2: x 0.5; r 3, mode 6:
    // 3.25.
    @ParameterizedTest
    @CsvSource({"3, 8, 0.5", "0, 2, 0.5", "6, 3, 3.25"})
    void agreesWithTheReferenceLibraryForWholeNumbers(int mode, int r, double excess) {
        CountDistribution counts = Takes.negativeBinomial(mode, excess);
        PascalDistribution law = PascalDistribution.of(r, 1 / (1 + excess));
        assertThat(counts.mean()).isCloseTo(law.getMean(), within(1e-8));
        for (int k = 0; k < 40; k++) {
            assertThat(counts.chanceOf(k)).isCloseTo(law.probability(k), within(1e-11));
        }
        assertThat(law.survivalProbability(counts.most())).isLessThan(2e-12);
    }

    @Test
    void comesCloseToPoissonWithLittleExcess() {
        CountDistribution counts = Takes.negativeBinomial(3, 1e-7);
        PoissonDistribution law = PoissonDistribution.of(3.5);
        for (int k = 0; k < 15; k++) {
            assertThat(counts.chanceOf(k)).isCloseTo(law.probability(k), within(1e-6));
        }
    }

    @Property(tries = 50)
    void aWorseWorstNeverMakesFewTakesLikelier(
            @ForAll @IntRange(min = 1, max = 12) int likely, @ForAll @IntRange(min = 0, max = 40) int apart) {
        CountDistribution better = Takes.fit(likely, likely + apart).counts();
        CountDistribution worse = Takes.fit(likely, likely + apart + 1).counts();
        assertThat(worse.mean()).isGreaterThanOrEqualTo(better.mean() - 1e-9);
    }

    @Test
    void refusesNumbersOutOfRange() {
        assertThatThrownBy(() -> Takes.fit(0, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("takes must be at least 1 and at worst at least the likely: [0], [3]");
        assertThatThrownBy(() -> Takes.fit(4, 3)).isInstanceOf(IllegalArgumentException.class);
    }
}
