package platecall.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.day.TestDays.at;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.plan.TestPlans;
import platecall.units.Moment;
import platecall.units.Span;

/** Rehearsals of paths of many steps, planned from the call on, against published schedule risk: the crew waits until the last is done. */
class ScheduleRiskTest {

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** Steps of a path, enough for their sum to be nearly normal, and by how many minutes each may run over. */
    private static final int STEPS = 16;

    private static final int RANGE = 12;
    private static final String PIE = "S1/pie/plate/hero#1";

    /** What 5,000 rehearsals leave open in a mean of minutes that vary by 7, and sums of steps aren't quite normal. */
    private static final double NEAR_MINUTES = 0.5;

    /** Minutes of a path and how they vary. */
    private record Path(double mean, double variance) {}

    /** The larger of two normal variables that have nothing to do with each other (Clark, Operations Research 9, 1961). */
    private static Path larger(Path one, Path other) {
        double spread = Math.sqrt(one.variance + other.variance);
        double apart = (one.mean - other.mean) / spread;
        double first = NORMAL.cumulativeProbability(apart);
        double density = spread * NORMAL.density(apart);
        double mean = one.mean * first + other.mean * (1 - first) + density;
        double square = (one.mean * one.mean + one.variance) * first
                + (other.mean * other.mean + other.variance) * (1 - first)
                + (one.mean + other.mean) * density;
        return new Path(mean, square - mean * mean);
    }

    /** Recomputed from Clark's formulas elsewhere, and by 4,000,000 drawings. */
    @ParameterizedTest
    @CsvSource({
        "0, 1, 0, 1, 0.5641896, 0.6816901",
        "20, 3, 22, 4, 23.152194, 9.956012",
        "10, 2, 10, 2, 11.128379, 2.726760",
        "30, 5, 25, 5, 30.998206, 19.012554"
    })
    void clarksFormulas(double mean1, double sd1, double mean2, double sd2, double mean, double variance) {
        Path larger = larger(new Path(mean1, sd1 * sd1), new Path(mean2, sd2 * sd2));
        assertThat(larger.mean).isEqualTo(mean, within(1e-6));
        assertThat(larger.variance).isEqualTo(variance, within(1e-6));
    }

    /**
     * The critical path of a network of seven activities (Taylor, Introduction to Management Science, as reproduced in lecture
     * notes): (5, 8, 17), (3, 5, 7), (4, 6, 8), (3, 4, 5); mean 24, and done by 28 in 96.33 % of cases by the table of the
     * normal distribution.
     */
    @Test
    void aPathOfFourActivities() {
        int[][] path = {{5, 8, 17}, {3, 5, 7}, {4, 6, 8}, {3, 4, 5}};
        double[] chances = {1};
        for (int[] step : path) {
            chances = oneMore(chances, StepMinutes.of(step[0], step[1], step[2]), step[2]);
        }
        double[] whole = chances;
        assertThat(IntStream.range(0, whole.length)
                        .mapToDouble(minutes -> minutes * whole[minutes])
                        .sum())
                .isEqualTo(24, within(0.02));
        // beta-PERT varies more (5.86 instead of 5), and 28 whole minutes reach up to 28.5
        assertThat(IntStream.rangeClosed(0, 28)
                        .mapToDouble(minutes -> whole[minutes])
                        .sum())
                .isEqualTo(0.9633, within(0.01));
    }

    private static double[] oneMore(double[] chances, StepMinutes minutes, int most) {
        double[] sum = new double[chances.length + most];
        int shares = 20_000;
        for (int share = 0; share < shares; share++) {
            int taken = minutes.at((share + 0.5) / shares);
            for (int before = 0; before < chances.length; before++) {
                sum[before + taken] += chances[before] / shares;
            }
        }
        return sum;
    }

    /** A dish whose parts are made side by side, each by somebody in steps that never take less than their likely minutes. */
    private static OfSetup sideBySide(int... likely) {
        TestDays days = new TestDays().place("kitchen", place -> {}).setup("S1", "10:00", setup -> {});
        days.dish("pie", dish -> {}).need("S1", "pie", "plate", need -> need.copies(1));
        List<String> last = new ArrayList<>();
        for (int path = 0; path < likely.length; path++) {
            int minutes = likely[path];
            days.person("P" + path, person -> {});
            for (int i = 0; i < STEPS; i++) {
                String[] before = i == 0 ? new String[0] : new String[] {path + "/" + (i - 1)};
                days.step(
                        "pie",
                        path + "/" + i,
                        minutes,
                        step -> step.after(before).from(minutes, minutes + RANGE).hands = 1);
            }
            last.add(path + "/" + (STEPS - 1));
        }
        days.step("pie", "plate", 1, step -> step.after(last.toArray(String[]::new)));
        Day day = days.build();
        TestPlans plan = TestPlans.of(day);
        Moment plated = at("10:00");
        for (int path = 0; path < likely.length; path++) {
            String person = "P" + path;
            Moment start = at("10:00");
            for (int i = 0; i < STEPS; i++) {
                Span span = new Span(start, start.plus(likely[path]));
                plan.add(Plan.Work.Kind.STEP, "pie", path + "/" + i, PIE, span, work -> work.by(person));
                start = span.end();
            }
            plated = start.isAfter(plated) ? start : plated;
        }
        plan.add(Plan.Work.Kind.STEP, "pie", "plate", PIE, new Span(plated, plated.plus(1)), work -> {});
        return TestOdds.of(day, plan.build(), Odds.RUNS, 1).of("S1").orElseThrow();
    }

    /** Beta-PERT (m, m, m + r) has mean m + r / 6 and variance (mean - m)(m + r - mean) / 7; whole minutes add a twelfth. */
    private static Path path(int likely) {
        double range = RANGE;
        return new Path(STEPS * (likely + range / 6), STEPS * (range / 6 * range * 5 / 6 / 7 + 1 / 12.0));
    }

    @Test
    void twoPathsSideBySideTakeAsLongAsClarkSays() {
        for (int other = 10; other <= 12; other++) {
            Path larger = larger(path(10), path(other));
            assertThat(sideBySide(10, other).waits())
                    .as("10, %d", other)
                    .isEqualTo(larger.mean + 1, within(NEAR_MINUTES));
        }
    }

    /** Mean of the largest of n normal variables (closed forms up to 3, recomputed elsewhere beyond): .5641896, .8462844, 1.0293754, 1.1629645. */
    @ParameterizedTest
    @CsvSource({"1, 0", "2, 0.5641896", "3, 0.8462844", "4, 1.0293754", "5, 1.1629645"})
    void manyPathsSideBySide(int paths, double deviations) {
        double mean = path(10).mean + deviations * Math.sqrt(path(10).variance);
        assertThat(sideBySide(IntStream.range(0, paths).map(i -> 10).toArray()).waits())
                .isEqualTo(mean + 1, within(NEAR_MINUTES));
    }

    /** A chance is off by more than e in at most 2 exp(-2 n e^2) of cases (Massart, Annals of Probability 18, 1990). */
    @Test
    void enoughRehearsalsToKnowAChanceWithinTwoPoints() {
        assertThat(Math.sqrt(Math.log(2 / 0.05) / (2 * Odds.RUNS))).isEqualTo(0.01921, within(1e-5));
        assertThat(Math.ceil(Math.log(2 / 0.05) / (2 * 0.02 * 0.02)))
                .isEqualTo(4612)
                .isLessThanOrEqualTo(Odds.RUNS);
    }
}
