package platecall.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.PascalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountDistributionTest {

    private static final int ROOMY = 2000;

    /** Demand of 100, 150 or 200 with chances .2, .5, .3: a newsvendor exercise of a university course page. */
    private static CountDistribution courseDemand() {
        double[] weights = new double[101];
        weights[0] = 0.2;
        weights[50] = 0.5;
        weights[100] = 0.3;
        return CountDistribution.of(100, weights);
    }

    @Test
    void knowsItsChances() {
        CountDistribution some = CountDistribution.of(3, 1, 0, 3);
        assertThat(some.least()).isEqualTo(3);
        assertThat(some.most()).isEqualTo(5);
        assertThat(IntStream.rangeClosed(2, 6).mapToDouble(some::chanceOf)).containsExactly(0.0, 0.25, 0.0, 0.75, 0.0);
        assertThat(IntStream.rangeClosed(2, 6).mapToDouble(some::chanceAbove))
                .containsExactly(1.0, 0.75, 0.75, 0.0, 0.0);
        assertThat(IntStream.rangeClosed(2, 6).mapToDouble(some::chanceUpTo))
                .containsExactly(0.0, 0.25, 0.25, 1.0, 1.0);
        assertThat(some.mean()).isEqualTo(4.5);
        assertThat(IntStream.rangeClosed(1, 6).mapToDouble(count -> some.expectedExcess(count, 1)))
                .containsExactly(3.5, 2.5, 1.5, 0.75, 0.0, 0.0);
    }

    @Test
    void takesTheLeastNumberThatReachesALevel() {
        CountDistribution some = CountDistribution.of(3, 1, 0, 3);
        assertThat(some.quantile(0)).isEqualTo(3);
        assertThat(some.quantile(0.25)).isEqualTo(3);
        assertThat(some.quantile(0.2501)).isEqualTo(5);
        assertThat(some.quantile(1)).isEqualTo(5);
        assertThat(CountDistribution.certain(7).quantile(0.5)).isEqualTo(7);
    }

    @Test
    void refusesWeightsThatAreNoChances() {
        assertThatThrownBy(() -> CountDistribution.of(0, 0.5, -0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("weights must be 0 or more and not all 0: [0.5, -0.1]");
        assertThatThrownBy(() -> CountDistribution.of(0, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CountDistribution.of(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CountDistribution.of(0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void doesNotChangeWithTheWeightsItWasMadeFrom() {
        double[] weights = {1, 1};
        CountDistribution some = CountDistribution.of(0, weights);
        weights[0] = 0;
        assertThat(some.chanceOf(0)).isEqualTo(0.5);
    }

    @Test
    void mapsCountsAndAddsUpThoseThatMeet() {
        CountDistribution halves = CountDistribution.of(1, 0.1, 0.2, 0.3, 0.4).map(takes -> 10 * ((takes + 1) / 2));
        assertThat(halves.least()).isEqualTo(10);
        assertThat(halves.most()).isEqualTo(20);
        assertThat(halves.chanceOf(10)).isCloseTo(0.3, within(1e-15));
        assertThat(halves.chanceOf(15)).isZero();
        assertThat(halves.chanceOf(20)).isCloseTo(0.7, within(1e-15));
    }

    // Published table of the binomial distribution, n 5, p .2: at most 0 to 4 successes .3277 .7373 .9421 .9933 .9997,
    // at least one .6723. P(at most k of n) = 1 - P(the (k+1)-th success comes within n).
    @ParameterizedTest
    @CsvSource({"0, .3277", "1, .7373", "2, .9421", "3, .9933", "4, .9997"})
    void agreesWithThePublishedBinomialTable(int atMost, double published) {
        CountDistribution made = CountDistribution.certain(atMost + 1).madeToKeep(0.2, ROOMY);
        assertThat(1 - made.chanceUpTo(5)).isCloseTo(published, within(5e-5));
        assertThat(made.chanceAbove(5)).isCloseTo(published, within(5e-5));
    }

    // Own calculation: least n with P(at least one of n) of 80, 90, 95, 99 %; the ties at p .8 and .9 must not step up.
    @ParameterizedTest
    @CsvSource({".5, 3, 4, 5, 7", ".6, 2, 3, 4, 6", ".7, 2, 2, 3, 4", ".8, 1, 2, 2, 3", ".9, 1, 1, 2, 2"})
    void findsHowManyToMakeForOneGoodOne(double good, int n80, int n90, int n95, int n99) {
        CountDistribution made = CountDistribution.certain(1).madeToKeep(good, ROOMY);
        assertThat(new int[] {made.quantile(.8), made.quantile(.9), made.quantile(.95), made.quantile(.99)})
                .containsExactly(n80, n90, n95, n99);
    }

    // Own calculation: trials until r good ones.
    @ParameterizedTest
    @CsvSource({
        ".8, 3, 3.75, 4, 5, 6, 7",
        ".7, 3, 4.2857, 5, 6, 7, 9",
        ".5, 2, 4, 5, 7, 8, 11",
        ".6, 4, 6.6667, 8, 9, 11, 13",
        ".9, 10, 11.1111, 12, 13, 13, 14"
    })
    void findsHowManyTrialsSeveralGoodOnesTake(double good, int r, double mean, int n80, int n90, int n95, int n99) {
        CountDistribution made = CountDistribution.certain(r).madeToKeep(good, ROOMY);
        assertThat(made.mean()).isCloseTo(mean, within(5e-5));
        assertThat(new int[] {made.quantile(.8), made.quantile(.9), made.quantile(.95), made.quantile(.99)})
                .containsExactly(n80, n90, n95, n99);
    }

    // Own calculation, p .8, r 3.
    @Test
    void givesTheChancesOfTrialsForThreeGoodOnes() {
        CountDistribution made = CountDistribution.certain(3).madeToKeep(0.8, ROOMY);
        assertThat(made.chanceUpTo(2)).isZero();
        assertThat(made.chanceUpTo(3)).isCloseTo(.512, within(1e-12));
        assertThat(made.chanceUpTo(4)).isCloseTo(.8192, within(1e-12));
        assertThat(made.chanceUpTo(5)).isCloseTo(.94208, within(1e-12));
        assertThat(made.chanceUpTo(6)).isCloseTo(.98304, within(1e-12));
    }

    // The reference library counts failures before the r-th success; trials are failures + r.
    @Test
    void countsTrialsNotFailures() {
        PascalDistribution failures = PascalDistribution.of(1, 0.8);
        CountDistribution made = CountDistribution.certain(1).madeToKeep(0.8, ROOMY);
        assertThat(failures.getMean()).isCloseTo(.25, within(1e-12));
        assertThat(made.mean()).isCloseTo(1.25, within(1e-9));
        PascalDistribution seven = PascalDistribution.of(7, 0.65);
        CountDistribution sevenMade = CountDistribution.certain(7).madeToKeep(0.65, ROOMY);
        for (int failed = 0; failed < 30; failed++) {
            assertThat(sevenMade.chanceOf(7 + failed)).isCloseTo(seven.probability(failed), within(1e-12));
        }
    }

    // Quantiles own calculation with the reference library; cdf for mean 2 from published Poisson tables.
    @ParameterizedTest
    @CsvSource({"1, 2, 2, 3, 4", "2, 3, 4, 5, 6", "3, 4, 5, 6, 8", "5, 7, 8, 9, 11"})
    void agreesWithPoissonTables(double mean, int n80, int n90, int n95, int n99) {
        CountDistribution poisson = CountDistribution.of(PoissonDistribution.of(mean));
        assertThat(poisson.mean()).isCloseTo(mean, within(1e-9));
        assertThat(new int[] {poisson.quantile(.8), poisson.quantile(.9), poisson.quantile(.95), poisson.quantile(.99)})
                .containsExactly(n80, n90, n95, n99);
    }

    @Test
    void agreesWithThePoissonTableOfMeanTwo() {
        CountDistribution poisson = CountDistribution.of(PoissonDistribution.of(2));
        double[] published = {.1353, .4060, .6767, .8571, .9473};
        for (int k = 0; k < published.length; k++) {
            assertThat(poisson.chanceUpTo(k)).isCloseTo(published[k], within(5e-5));
        }
        assertThat(PoissonDistribution.of(2).survivalProbability(poisson.most()))
                .isLessThan(1e-12);
        assertThat(PoissonDistribution.of(2).survivalProbability(poisson.most() - 1))
                .isGreaterThanOrEqualTo(1e-12);
    }

    @Test
    void ordersTheCourseDemandAtItsCriticalRatio() {
        assertThat(CopyCounts.criticalRatio(1.5, .4)).isCloseTo(.789, within(5e-4));
        assertThat(courseDemand().quantile(CopyCounts.criticalRatio(1.5, .4))).isEqualTo(200);
        assertThat(courseDemand().quantile(.7)).isEqualTo(150);
    }

    /** A normal demand counted in whole units: the number {@code k} has the chance between k-1 and k. */
    private static CountDistribution normal(double mean, double deviation) {
        NormalDistribution source = NormalDistribution.of(mean, deviation);
        int from = (int) (mean - 6 * deviation);
        double[] weights = IntStream.rangeClosed(from, (int) (mean + 6 * deviation))
                .mapToDouble(k -> source.probability(k - 1, k))
                .toArray();
        return CountDistribution.of(from, weights);
    }

    // Newsvendor exercises of course pages; where their tables or z values were off, the exact values (own
    // calculation):
    // N(200,30) at .8: 225.25; N(80,30) Cu 60 Co 110: 68.68; N(115,15) at .4: 111.20; N(115,5): 113.73;
    // N(1000,200) Cu 40 Co 10: 1168.32, order 1169; Cu 30 Co 20: 1050.67; N(3192,1181) Cu 80 Co 20: 4185.95.
    @ParameterizedTest
    @CsvSource({
        "200, 30, 4, 1, 225.25, 226",
        "80, 30, 60, 110, 68.68, 69",
        "115, 15, 6, 9, 111.20, 112",
        "115, 5, 6, 9, 113.73, 114",
        "1000, 200, 40, 10, 1168.32, 1169",
        "1000, 200, 30, 20, 1050.67, 1051",
        "3192, 1181, 80, 20, 4185.95, 4186"
    })
    void ordersNormalDemandAtItsCriticalRatio(
            double mean, double deviation, double missing, double tooMany, double exact, int order) {
        double ratio = CopyCounts.criticalRatio(missing, tooMany);
        assertThat(NormalDistribution.of(mean, deviation).inverseCumulativeProbability(ratio))
                .isCloseTo(exact, within(.01));
        assertThat(normal(mean, deviation).quantile(ratio)).isEqualTo(order);
    }

    // U(100,300) at 2/3: 233.3 (course page); U(80,150), price 20, cost 14, salvage 5: ratio .4, 108.0 (statement of a
    // course page). In whole units, as likely as one another: the least that reaches the ratio.
    @Test
    void ordersUniformDemandAtItsCriticalRatio() {
        double[] twoHundred = IntStream.range(0, 200).mapToDouble(k -> 1).toArray();
        assertThat(CountDistribution.of(101, twoHundred).quantile(CopyCounts.criticalRatio(2, 1)))
                .isEqualTo(234);
        double[] seventy = IntStream.range(0, 70).mapToDouble(k -> 1).toArray();
        double ratio = CopyCounts.criticalRatio(20 - 14, 14 - 5);
        assertThat(ratio).isCloseTo(.4, within(1e-12));
        assertThat(CountDistribution.of(81, seventy).quantile(ratio)).isEqualTo(108);
    }

    // Own calculation: expected shortfall of N(3192,1181) at 4185.95 is 1181 x .111638; whole units add up to one half.
    @Test
    void missesAsManyAsTheNormalLossFunctionSays() {
        assertThat(normal(3192, 1181).expectedExcess(4186, 1) - 1181 * .111638).isBetween(-.1, .2);
    }

    @Test
    void countsEverythingBeyondTheMostAsTheMost() {
        CountDistribution cut = CountDistribution.of(8, 1, 1, 1, 1).madeToKeep(1, 10);
        assertThat(cut.most()).isEqualTo(10);
        assertThat(cut.chanceOf(10)).isEqualTo(.5);
        CountDistribution thin = CountDistribution.of(8, 1, 1, 1, 1).madeToKeep(0.5, 10);
        assertThat(thin.most()).isEqualTo(10);
        assertThat(thin.least()).isEqualTo(8);
        // all 8 of 8 with 1/4 x 1/256; 9 made: one of 8 needed fails, or 9 needed and none fails
        assertThat(thin.chanceOf(8)).isCloseTo(1 / 1024.0, within(1e-15));
        assertThat(thin.chanceOf(9)).isCloseTo(.25 * (8 / 512.0 + 1 / 512.0), within(1e-15));
        assertThat(thin.chanceUpTo(10)).isEqualTo(1);
    }

    @Test
    void refusesASurvivalThatIsNone() {
        CountDistribution one = CountDistribution.certain(1);
        assertThatThrownBy(() -> one.madeToKeep(0, 10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("survival must be above 0, at most 1, but it is [0.0]");
        assertThatThrownBy(() -> one.madeToKeep(1.01, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> one.madeToKeep(Double.NaN, 10)).isInstanceOf(IllegalArgumentException.class);
    }

    @Property(tries = 100)
    void survivorsOfTheMadeAreBinomial(
            @ForAll @Size(min = 1, max = 6) List<@DoubleRange(min = 0.01, max = 1) Double> weights,
            @ForAll @IntRange(min = 0, max = 4) int least,
            @ForAll @DoubleRange(min = 0.05, max = 0.99) double survival) {
        CountDistribution needed = CountDistribution.of(
                least, weights.stream().mapToDouble(weight -> weight).toArray());
        CountDistribution made = needed.madeToKeep(survival, ROOMY);
        for (int n = 0; n <= 20; n++) {
            BinomialDistribution whole = BinomialDistribution.of(n, survival);
            double runsOut = 0;
            for (int k = needed.least(); k <= needed.most(); k++) {
                runsOut += needed.chanceOf(k) * (k == 0 ? 0 : whole.cumulativeProbability(k - 1));
            }
            assertThat(made.chanceAbove(n)).isCloseTo(runsOut, within(1e-9));
        }
        assertThat(made.mean()).isCloseTo(needed.mean() / survival, within(1e-6));
    }

    /** Needed are 2, 4 or 6, each as likely: two plates a take. */
    @Test
    void ofPlatesWantedTwoAtATimeHalfASetMissingIsAWholeOne() {
        CountDistribution two = CountDistribution.of(2, 1, 0, 1, 0, 1);
        // with 0: 1, 2 or 3 sets missing; with 1 or 2: 0 (with 1: 1), 1 or 2
        assertThat(IntStream.rangeClosed(0, 7)
                        .mapToDouble(count -> two.expectedExcess(count, 2))
                        .toArray())
                .containsExactly(new double[] {2, 2, 1, 1, 1 / 3.0, 1 / 3.0, 0, 0}, within(1e-12));
        // with 3: 1 or 3 missing, of sets of three one each
        assertThat(two.expectedExcess(3, 3)).isCloseTo(2 / 3.0, within(1e-12));
    }

    @Property(tries = 200)
    void excessFallsConvexlyAsCountsRise(
            @ForAll @Size(min = 1, max = 12) List<@DoubleRange(min = 0.01, max = 1) Double> weights,
            @ForAll @IntRange(min = 0, max = 9) int least) {
        CountDistribution some = CountDistribution.of(
                least, weights.stream().mapToDouble(weight -> weight).toArray());
        for (int n = -1; n <= 22; n++) {
            double step = some.expectedExcess(n, 1) - some.expectedExcess(n + 1, 1);
            assertThat(step).isCloseTo(some.chanceAbove(n), within(1e-12));
            assertThat(some.chanceAbove(n + 1)).isLessThanOrEqualTo(some.chanceAbove(n));
        }
    }
}
