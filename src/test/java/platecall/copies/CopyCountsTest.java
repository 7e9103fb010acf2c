package platecall.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static platecall.copies.PieDay.FRESH;
import static platecall.copies.PieDay.cakes;
import static platecall.copies.PieDay.dish;
import static platecall.copies.PieDay.fixed;
import static platecall.copies.PieDay.need;
import static platecall.copies.PieDay.pies;
import static platecall.copies.PieDay.setup;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.copies.CopyCount.Basis;
import platecall.copies.CopyCount.Row;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Trouble;
import platecall.day.Use;
import platecall.units.Money;

/** All expected values are own calculation unless another source is named. */
class CopyCountsTest {

    private final PieDay pieDay = new PieDay();

    private CopyCounts counts() {
        return CopyCounts.of(pieDay.day());
    }

    private CopyCount only() {
        return counts().counts().get(0);
    }

    private static Money cents(long cents) {
        return new Money(cents);
    }

    @Test
    void takesAtWorstDecideWithoutACrewCost() {
        pieDay.with(setup("1", 3, 6), pies(2));
        CopyCount count = only();
        assertThat(count.chosen()).isEqualTo(12);
        assertThat(count.basis()).isEqualTo(Basis.TAKES_AT_WORST);
        // takes are 1 + Poisson(2.5): more than 6 with the chance of more than 5
        double over = PoissonDistribution.of(2.5).survivalProbability(5);
        assertThat(count.chosenRow().chanceOfRunningOut()).isCloseTo(over, within(1e-9));
        assertThat(count.why())
                .isEqualTo(
                        "Enough for 6 takes at worst, fresh each take, 2 plates at a time; runs out in 4.2 % of cases.");
        assertThat(count.chosenRow().expectedCost()).isEmpty();
        assertThat(counts().expectedCost()).isEmpty();
        assertThat(counts().troubles()).isEmpty();
    }

    @Test
    void aCrewCostOfNothingIsNone() {
        pieDay.crewMinute = Optional.of(Money.ZERO);
        pieDay.with(setup("1", 3, 6), pies(1));
        assertThat(only().basis()).isEqualTo(Basis.TAKES_AT_WORST);
    }

    @Test
    void theUseDecidesHowManyTakesUseUp() {
        pieDay.with(
                setup("1", 3, 7),
                need("1", "pie", "dress", 1, FRESH, Part.HERO, 0),
                need("1", "pie", "dress", 2, new Use.LastsTakes(3), Part.INSERT, 0),
                need("1", "pie", "dress", 2, new Use.ToppedUp(4), Part.BACKGROUND, 0),
                need("1", "pie", "dress", 1, new Use.LastsTakes(3), Part.STAND_IN, 2));
        List<CopyCount> counts = counts().counts();
        assertThat(counts).extracting(CopyCount::chosen).containsExactly(7, 6, 2, 3);
        assertThat(counts.get(1).why()).contains("7 takes at worst, a plate lasts 3, 2 plates at a time; runs out");
        assertThat(counts.get(2).why()).contains("one set is enough, 2 plates at a time; runs out in 0.0 % of cases.");
        assertThat(counts.get(3).why()).contains("one set is enough, 2 for extra looks; runs out");
        // two sets more than last nine takes: more than 9 takes
        assertThat(counts.get(1).chosenRow().chanceOfRunningOut())
                .isCloseTo(Takes.fit(3, 7).counts().chanceAbove(9), within(1e-12));
    }

    @Test
    void extraLooksComeOnTopOfWhatTakesUseUp() {
        pieDay.with(setup("1", 4, 4), need("1", "pie", "dress", 2, FRESH, Part.HERO, 3));
        CopyCount count = only();
        assertThat(count.chosen()).isEqualTo(11);
        assertThat(count.chosenRow().chanceOfRunningOut()).isZero();
    }

    @Test
    void breakageAndSpoilageAskForMore() {
        pieDay.dishes.set(0, dish("pie", 250, 0.1, 0.2));
        pieDay.with(setup("1", 4, 4), pies(1));
        CopyCount count = only();
        // 4 / (0.9 x 0.8) = 5.6
        assertThat(count.chosen()).isEqualTo(6);
        assertThat(count.why())
                .startsWith("Enough for 4 takes at worst, fresh each take, 2 for what breaks or spoils; runs out in ");
        assertThat(count.chosenRow().chanceOfRunningOut())
                .isCloseTo(BinomialDistribution.of(6, 0.72).cumulativeProbability(3), within(1e-12));
    }

    @Test
    void aWholeNumberAfterBreakageIsNotRoundedUp() {
        pieDay.dishes.set(0, dish("pie", 250, 0.2, 0));
        pieDay.with(setup("1", 8, 8), pies(1));
        assertThat(only().chosen()).isEqualTo(10);
    }

    @Test
    void theCriticalRatioDecidesWithACrewCost() {
        pieDay.crewMinute = Optional.of(cents(100));
        pieDay.with(setup("1", 3, 6), pies(1));
        CopyCount count = only();
        // one too many: 4.00 food, 11.25 min at 40.00 and 6 min at 60.00 an hour; one missing: 62 min at 1.00
        assertThat(count.basis()).isEqualTo(Basis.CRITICAL_RATIO);
        // 62.00 / (62.00 + 17.50) = .780; 1 + Poisson(2.5) reaches .758 at 4 and .891 at 5
        assertThat(count.chosen()).isEqualTo(5);
        assertThat(count.why())
                .isEqualTo(
                        "One too many costs EUR 17.50, one missing EUR 62.00 (crew waits 62 min): worth 78.0 % certainty;"
                                + " runs out in 10.9 % of cases.");
    }

    @Test
    void ofPlatesWantedTwoAtATimeSetsAreWeighed() {
        pieDay.crewMinute = Optional.of(cents(100));
        pieDay.with(setup("1", 3, 6), pies(2));
        CopyCount count = only();
        // 64 / (64 + 2 x 17.5) = .646; 1 + Poisson(2.5) reaches .543 at 3 and .758 at 4 takes
        assertThat(count.chosen()).isEqualTo(8);
        assertThat(count.why())
                .isEqualTo(
                        "A set of 2 plates too many costs EUR 35.00, one missing EUR 64.00 (crew waits 64 min): worth"
                                + " 64.6 % certainty; runs out in 24.2 % of cases.");
    }

    /** By hand: 5 plates serve no more takes than 4, so as many takes wait for another set, whole reset and all. */
    @Test
    void halfASetIsNoRescue() {
        pieDay.crewMinute = Optional.of(cents(100));
        pieDay.with(setup("1", 3, 6), pies(2));
        List<Row> table = only().table();
        CountDistribution takes = Takes.fit(3, 6).counts();
        for (Row row : table) {
            double setsMissing = takes.expectedExcess(row.copies() / 2, 1);
            assertThat(row.waitingMinutes()).isCloseTo(64 * setsMissing, within(1e-6));
            assertThat(row.expectedCost())
                    .contains(cents(Math.round(1_750.0 * row.copies() + (6_400 + 2 * 1_750) * setsMissing)));
        }
    }

    /** Money for 5 of 8 plates at two a take: the fifth is of no use to anybody, but buys the last of another need's six. */
    @Test
    void aBudgetBuysWholeSets() {
        for (boolean crew : new boolean[] {false, true}) {
            PieDay tight = new PieDay().with(setup("1", 4, 4), pies(2));
            tight.crewMinute = crew ? Optional.of(cents(10_000)) : Optional.empty();
            tight.budget = Optional.of(cents(5 * 400));
            CopyCount only = CopyCounts.of(tight.day()).counts().get(0);
            assertThat(only.chosen()).isEqualTo(4);
            assertThat(only.why()).startsWith("The food budget allows 4 of 8; ");
            // a set missing keeps the crew waiting for 64 min, a single pie for 62 min
            tight.needs.add(need("1", "pie", "dress", 1, FRESH, Part.INSERT, 2));
            tight.budget = Optional.of(cents((5 + 5) * 400));
            assertThat(CopyCounts.of(tight.day()).counts())
                    .extracting(CopyCount::chosen)
                    .containsExactly(4, 6);
        }
    }

    /** Two plates a take for 4 takes, and one extra look: 9 are wanted, and an odd number leaves no half set. */
    @Test
    void anExtraLookMakesOddNumbersOfPairs() {
        pieDay.with(setup("1", 4, 4), need("1", "pie", "dress", 2, FRESH, Part.HERO, 1));
        pieDay.budget = Optional.of(cents(8 * 400));
        assertThat(only().chosen()).isEqualTo(7);
        pieDay.budget = Optional.of(cents(9 * 400));
        assertThat(only().chosen()).isEqualTo(9);
    }

    /** Of plates of which one in ten breaks each further one is of some use. */
    @Test
    void whereSomeBreakAnOddNumberOfPairsIsOfUse() {
        pieDay.dishes.set(0, dish("pie", 250, 0.1, 0));
        pieDay.with(setup("1", 2, 2), pies(2));
        pieDay.budget = Optional.of(cents(5 * 400));
        CopyCount count = only();
        assertThat(count.chosen()).isEqualTo(5);
        // 4 whole ones of 5: 1 - .9^5 - 5 x .1 x .9^4 = .0815
        assertThat(count.chosenRow().chanceOfRunningOut()).isCloseTo(.08146, within(1e-9));
    }

    @Test
    void saysWhenNoneCanBeMadeAgain() {
        pieDay.crewMinute = Optional.of(cents(100));
        pieDay.kitchenHours = List.of(PieDay.span(0, 230));
        pieDay.with(setup("1", 3, 6), pies(1));
        assertThat(only().why()).contains("(crew waits 62 min, none can be made again that day)");
    }

    @Test
    void tellsEveryChoiceWithItsChanceAndCost() {
        pieDay.crewMinute = Optional.of(cents(100));
        pieDay.with(setup("1", 3, 6), pies(1));
        CopyCount count = only();
        CountDistribution takes = Takes.fit(3, 6).counts();
        assertThat(count.table()).extracting(Row::copies).startsWith(1, 2, 3);
        for (Row row : count.table()) {
            int n = row.copies();
            double short1 = takes.expectedExcess(n, 1);
            assertThat(row.chanceOfRunningOut()).isCloseTo(takes.chanceAbove(n), within(1e-9));
            assertThat(row.waitingMinutes()).isCloseTo(62 * short1, within(1e-6));
            assertThat(row.food()).isEqualTo(cents(400L * n));
            assertThat(row.expectedCost()).contains(cents(Math.round(1_750.0 * n + (6_200 + 1_750) * short1)));
            assertThat(row.expectedCost().get())
                    .isGreaterThanOrEqualTo(count.chosenRow().expectedCost().get());
        }
        assertThat(count.table().get(count.table().size() - 1).chanceOfRunningOut())
                .isLessThanOrEqualTo(0.001);
        assertThat(count.table().get(count.table().size() - 2).chanceOfRunningOut())
                .isGreaterThan(0.001);
        assertThat(counts().food()).isEqualTo(cents(2_000));
        assertThat(count.food()).isEqualTo(cents(2_000));
        assertThat(counts().expectedCost()).isEqualTo(count.chosenRow().expectedCost());
    }

    @Test
    void theTableBeginsWithTheFirstSet() {
        pieDay.with(setup("1", 3, 6), pies(3));
        assertThat(only().table().get(0).copies()).isEqualTo(3);
        pieDay.needs.set(0, fixed(pies(3), 2));
        assertThat(only().table().get(0).copies()).isEqualTo(2);
    }

    @Test
    void aNumberFixedByHandStands() {
        pieDay.crewMinute = Optional.of(cents(100));
        pieDay.budget = Optional.of(cents(800));
        pieDay.with(setup("1", 3, 6), fixed(pies(1), 2));
        CopyCount count = only();
        assertThat(count.chosen()).isEqualTo(2);
        assertThat(count.basis()).isEqualTo(Basis.FIXED_BY_HAND);
        assertThat(count.why()).isEqualTo("Fixed by hand; runs out in 71.3 % of cases.");
        assertThat(count.chosenRow().chanceOfRunningOut())
                .isCloseTo(PoissonDistribution.of(2.5).survivalProbability(1), within(1e-9));
        assertThat(counts().troubles()).isEmpty();
    }

    @Test
    void aLargeNumberFixedByHandIsInItsTable() {
        pieDay.with(setup("1", 3, 6), fixed(pies(1), 1_000));
        assertThat(only().chosenRow().copies()).isEqualTo(1_000);
        assertThat(only().chosenRow().chanceOfRunningOut()).isZero();
    }

    @Test
    void cheapDishesComeOutManyAndDearOnesFew() {
        pieDay.crewMinute = Optional.of(cents(2_500));
        pieDay.dishes.set(1, dish("cake", 40_000, 0, 0));
        pieDay.dishes.add(dish("bun", 20, 0, 0));
        pieDay.steps.add(PieDay.step("bun", "unpack", List.of(), 0, 3, Optional.empty(), "", "counter"));
        pieDay.with(setup("1", 4, 9), need("1", "bun", "unpack", 1, FRESH, Part.HERO, 0), cakes());
        // 12 min of crew: 300.00 for one missing of either
        assertThat(counts().counts())
                .extracting(CopyCount::why)
                .allSatisfy(why -> assertThat(why).contains("one missing EUR 300.00 "));
        int buns = counts().counts().get(0).chosen();
        int dearCakes = counts().counts().get(1).chosen();
        CountDistribution takes = Takes.fit(4, 9).counts();
        assertThat(buns).isEqualTo(takes.quantile(300 / (300 + 2.2)));
        assertThat(dearCakes).isEqualTo(takes.quantile(300 / (300 + 402.0)));
        assertThat(buns).isGreaterThan(3 * dearCakes);
    }

    @Test
    void aBudgetBuysTheCopiesThatSaveMost() {
        pieDay.crewMinute = Optional.of(cents(10_000));
        pieDay.with(setup("1", 3, 6), pies(1), cakes());
        int[] free = counts().counts().stream().mapToInt(CopyCount::chosen).toArray();
        assertThat(free[0]).isGreaterThan(6);
        pieDay.budget = Optional.of(cents(18_000));
        CopyCounts tight = counts();
        double best = Double.POSITIVE_INFINITY;
        int[] bestCopies = {};
        for (int pies = 1; pies <= free[0]; pies++) {
            for (int cakes = 1; cakes <= free[1]; cakes++) {
                if (400L * pies + 4_000L * cakes <= 18_000) {
                    CountDistribution takes = Takes.fit(3, 6).counts();
                    double cost = 1_750.0 * pies
                            + (62 * 10_000 + 1_750.0) * takes.expectedExcess(pies, 1)
                            + 4_200.0 * cakes
                            + (12 * 10_000 + 4_200.0) * takes.expectedExcess(cakes, 1);
                    if (cost < best) {
                        best = cost;
                        bestCopies = new int[] {pies, cakes};
                    }
                }
            }
        }
        assertThat(tight.counts().stream().mapToInt(CopyCount::chosen)).containsExactly(bestCopies[0], bestCopies[1]);
        assertThat(tight.food()).isLessThanOrEqualTo(cents(18_000));
        assertThat(tight.budget()).contains(cents(18_000));
        CopyCount cakes = tight.counts().get(1);
        assertThat(cakes.basis()).isEqualTo(Basis.FOOD_BUDGET);
        assertThat(cakes.why())
                .startsWith("The food budget allows " + bestCopies[1] + " of " + free[1] + "; runs out in ");
        assertThat(tight.expectedCost().get().cents()).isCloseTo(Math.round(best), within(1L));
    }

    @Test
    void aBudgetWithoutACrewCostSavesWaitingMinutes() {
        pieDay.with(setup("1", 3, 6), pies(1), cakes());
        pieDay.budget = Optional.of(cents(6 * 400 + 6 * 4_000));
        assertThat(counts().counts()).extracting(CopyCount::chosen).containsExactly(6, 6);
        assertThat(counts().counts()).extracting(CopyCount::basis).containsOnly(Basis.TAKES_AT_WORST);
        pieDay.budget = Optional.of(cents(6 * 400 + 6 * 4_000 - 1));
        // a pie saves 62 min x .109 at the sixth for 4.00, a cake 12 min for 40.00: all pies stay
        assertThat(counts().counts()).extracting(CopyCount::chosen).containsExactly(6, 5);
        assertThat(counts().counts())
                .extracting(CopyCount::basis)
                .containsExactly(Basis.TAKES_AT_WORST, Basis.FOOD_BUDGET);
    }

    @Test
    void aBudgetThatCannotBuyOneHeroEachIsToldWithTheCheapestSum() {
        pieDay.budget = Optional.of(cents(5_199));
        pieDay.with(setup("1", 3, 6), fixed(pies(1), 3), cakes());
        CopyCounts counts = counts();
        assertThat(counts.food()).isEqualTo(cents(5_200));
        assertThat(counts.counts()).extracting(CopyCount::chosen).containsExactly(3, 1);
        assertThat(counts.troubles())
                .containsExactly(new Trouble(
                        "day",
                        -1,
                        "food budget",
                        "51.99",
                        "can't buy one hero of each need (numbers fixed by hand as fixed): the cheapest is EUR 52.00",
                        "Maybe raise the food budget by EUR 0.01, or let plates last more takes."));
        pieDay.budget = Optional.of(cents(5_200));
        assertThat(counts().troubles()).isEmpty();
        assertThat(counts().food()).isEqualTo(cents(5_200));
    }

    @Test
    void moreThanAThousandCopiesAreToldNotMade() {
        pieDay.with(setup("1", 11, 11), pies(1), need("1", "cake", "unpack", 100, FRESH, Part.HERO, 0));
        CopyCounts counts = counts();
        assertThat(counts.counts()).extracting(CopyCount::chosen).containsExactly(11, 1_000);
        assertThat(counts.counts().get(1).chosenRow().chanceOfRunningOut()).isEqualTo(1);
        assertThat(counts.troubles())
                .containsExactly(new Trouble(
                        "needs",
                        1,
                        "dish",
                        "cake",
                        "would want 1100 copies, but at most 1000 of a need can be planned",
                        "Maybe the takes at worst or the plates per take are meant lower."));
        pieDay.setups.set(0, setup("1", 10, 10));
        assertThat(counts().troubles()).isEmpty();
    }

    @Test
    void knowsTheCopiesOfANeed() {
        pieDay.with(setup("1", 3, 6), fixed(pies(1), 4), cakes());
        assertThat(counts().copiesOf(cakes())).isEqualTo(6);
        assertThat(counts().copiesOf(fixed(pies(1), 4))).isEqualTo(4);
        assertThatThrownBy(() -> counts().copiesOf(pies(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("no need [1/pie/dress/hero]");
    }

    @Test
    void refusesADayWhoseNeedsNameNothing() {
        pieDay.needs.add(pies(1));
        assertThatThrownBy(this::counts)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("no setup [1]");
        pieDay.setups.add(setup("1", 1, 1));
        pieDay.needs.set(0, need("1", "tart", "dress", 1, FRESH, Part.HERO, 0));
        assertThatThrownBy(this::counts)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("no dish [tart]");
    }

    @Test
    void aDayWithoutNeedsCostsNothing() {
        pieDay.budget = Optional.of(Money.ZERO);
        CopyCounts counts = counts();
        assertThat(counts.counts()).isEmpty();
        assertThat(counts.food()).isEqualTo(Money.ZERO);
        assertThat(counts.troubles()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0.0 %",
        "0.0001, under 0.1 %",
        "0.00049, under 0.1 %",
        "0.0005, 0.1 %",
        "0.1234, 12.3 %",
        "0.9994, 99.9 %",
        "0.9995, over 99.9 %",
        "0.9999999, over 99.9 %",
        "1, 100.0 %"
    })
    void neverRoundsAChanceToNothingOrAll(double chance, String words) {
        assertThat(CopyCounts.percent(chance)).isEqualTo(words);
    }

    @Property(tries = 60)
    void runningOutNeverRisesAndCostIsConvexFromSetToSet(
            @ForAll @IntRange(min = 1, max = 6) int likely,
            @ForAll @IntRange(min = 0, max = 8) int apart,
            @ForAll @IntRange(min = 1, max = 3) int plates,
            @ForAll @IntRange(min = 1, max = 4) int lasts,
            @ForAll @DoubleRange(min = 0, max = 0.4) double breakage,
            @ForAll @IntRange(min = 1, max = 20_000) int crewCents) {
        PieDay one = new PieDay();
        one.crewMinute = Optional.of(cents(crewCents));
        one.dishes.set(0, dish("pie", 250, breakage, 0.05));
        one.with(
                setup("1", likely, likely + apart),
                need("1", "pie", "dress", plates, new Use.LastsTakes(lasts), Part.HERO, 1));
        CopyCount count = CopyCounts.of(one.day()).counts().get(0);
        List<Row> table = count.table();
        for (int i = 1; i < table.size(); i++) {
            assertThat(table.get(i).chanceOfRunningOut())
                    .isLessThanOrEqualTo(table.get(i - 1).chanceOfRunningOut());
            assertThat(table.get(i).waitingMinutes())
                    .isLessThanOrEqualTo(table.get(i - 1).waitingMinutes());
        }
        long[] cost = table.stream()
                .mapToLong(row -> row.expectedCost().orElseThrow().cents())
                .toArray();
        for (int i = 2 * plates; i < cost.length; i++) {
            // each amount is rounded to a cent
            assertThat(cost[i] - 2 * cost[i - plates] + cost[i - 2 * plates]).isGreaterThanOrEqualTo(-2);
        }
        long least =
                IntStream.range(0, cost.length).mapToLong(i -> cost[i]).min().orElseThrow();
        assertThat(count.chosenRow().expectedCost().orElseThrow().cents()).isLessThanOrEqualTo(least + 1);
    }

    @Property(tries = 60)
    void aDearerCrewNeverMeansFewerCopies(
            @ForAll @IntRange(min = 1, max = 6) int likely,
            @ForAll @IntRange(min = 0, max = 8) int apart,
            @ForAll @IntRange(min = 1, max = 3) int plates,
            @ForAll @DoubleRange(min = 0, max = 0.4) double breakage,
            @ForAll @IntRange(min = 1, max = 5_000) int crewCents,
            @ForAll @IntRange(min = 1, max = 5_000) int more) {
        PieDay one = new PieDay();
        one.dishes.set(0, dish("pie", 250, breakage, 0));
        one.with(setup("1", likely, likely + apart), pies(plates));
        one.crewMinute = Optional.of(cents(crewCents));
        int cheap = CopyCounts.of(one.day()).counts().get(0).chosen();
        one.crewMinute = Optional.of(cents(crewCents + more));
        int dear = CopyCounts.of(one.day()).counts().get(0).chosen();
        assertThat(dear).isGreaterThanOrEqualTo(cheap);
        assertThat(cheap).isGreaterThanOrEqualTo(plates);
    }

    @Property(tries = 60)
    void theBudgetIsNeverExceeded(
            @ForAll @IntRange(min = 4_000, max = 60_000) int budget,
            @ForAll @IntRange(min = 0, max = 5_000) int crewCents,
            @ForAll @IntRange(min = 1, max = 5) int fixed) {
        PieDay two = new PieDay();
        two.crewMinute = Optional.of(cents(crewCents));
        two.budget = Optional.of(cents(budget));
        Need held = fixed(need("1", "pie", "bake", 1, FRESH, Part.BACKGROUND, 0), fixed);
        two.with(setup("1", 4, 9), pies(1), cakes(), held);
        CopyCounts counts = CopyCounts.of(two.day());
        assertThat(counts.counts().get(2).chosen()).isEqualTo(fixed);
        if (counts.troubles().isEmpty()) {
            assertThat(counts.food()).isLessThanOrEqualTo(cents(budget));
        } else {
            assertThat(counts.food()).isGreaterThan(cents(budget));
            assertThat(counts.troubles().get(0).what()).endsWith("the cheapest is EUR " + counts.food());
        }
    }
}
