package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.oneDish;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Prices;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Points;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.plan.TestPlans;
import platecall.units.Money;

class StatementsTest {

    /** A dish at its peak from minute 2 to 5 after plate-up and usable to minute 9; due at 10:00, seen for 6 minutes. */
    private static TestDays shortLived() {
        return oneDish(10, step -> {})
                .with(days -> days.prices = new Prices(1000, 10, 1, 7, 1))
                .dish("stew", dish -> dish.look = Look.table(2, 5, 9))
                .need("S1", "stew", "cook", need -> need.looksWeight = 2)
                .setup("S1", "10:00", setup -> {
                    setup.rolling = 6;
                    setup.weight = 3;
                });
    }

    /** The plan of a day, with the statements of its only copy and its points as given. */
    private static Plan saying(
            Day day, TestPlans plan, String plated, int lateMinutes, int offPeakMinutes, long points, Points total) {
        Plan built = plan.build();
        PlannedCopy copy = built.copies().get(0);
        PlannedCopy said = new PlannedCopy(
                copy.id(),
                copy.need(),
                copy.setup(),
                copy.dish(),
                copy.stage(),
                copy.part(),
                copy.number(),
                at("10:00"),
                6,
                true,
                Optional.of(at(plated)),
                Optional.of(at(plated)),
                Optional.of(at(plated).plus(2)),
                Optional.of(at(plated).plus(5)),
                Optional.of(at(plated).plus(9)),
                lateMinutes,
                offPeakMinutes,
                points,
                Money.ZERO,
                at("10:10"),
                Optional.empty());
        return TestPlans.with(built, List.of(said), built.kitchenCalls(), total);
    }

    private static TestPlans cooked(Day day, String fromTo) {
        return TestPlans.of(day).step("stew", "cook", 1, fromTo, work -> {});
    }

    @Test
    void aCopyReadyTooEarlyIsSeenPastItsPeakAndPastUse() {
        Day day = shortLived().build();
        // plated at 09:54; on camera in minutes 6 to 12: peak over for 7, past use for 3; kitchen 09:44 to 18:00
        Plan plan = saying(
                day,
                cooked(day, "09:44-09:54"),
                "09:54",
                3,
                7,
                3 * 3 * 1000 + 7 * 2 * 10,
                new Points(9000, 140, 496, 0, 0));

        assertThat(totals(day, plan)).isEmpty();
        assertThat(Audit.of(day, plan).lateMinutes()).isEqualTo(3);
        assertThat(Audit.of(day, plan).offPeakMinutes()).isEqualTo(7);
    }

    @Test
    void aCopyReadyJustInTimeIsSeenBeforeItsPeak() {
        Day day = shortLived().build();
        // plated at 10:00; on camera in minutes 0 to 6: peak not begun for 2, over for 1; kitchen 09:50 to 18:00
        Plan plan = saying(day, cooked(day, "09:50-10:00"), "10:00", 0, 3, 60, new Points(0, 60, 490, 0, 0));

        assertThat(totals(day, plan)).isEmpty();
    }

    @Test
    void aLateCopyRollsWhenItIsReady() {
        Day day = shortLived().build();
        // ready 4 minutes late, the camera waits and then sees minutes 0 to 6; kitchen 09:54 to 18:00
        Plan plan = saying(
                day, cooked(day, "09:54-10:04"), "10:04", 4, 3, 4 * 3 * 1000 + 60, new Points(12_000, 60, 486, 0, 0));

        assertThat(totals(day, plan)).isEmpty();
        assertThat(Audit.of(day, plan).sound()).isFalse();
    }

    @Test
    void eachFalseStatementOfACopyCounts() {
        Day day = shortLived().build();
        Plan plan = saying(day, cooked(day, "09:50-10:00"), "10:00", 1, 2, 61, new Points(0, 60, 490, 0, 0));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 3L));
        assertThat(Audit.of(day, plan).breaches())
                .extracting(Breach::what)
                .containsExactly("Stew #1 for setup S1: the plan says late minutes 1, but it is 0,"
                        + " the plan says off-peak minutes 2, but it is 3, the plan says points 61, but it is 60");
    }

    @Test
    void falseTimesOfACopyCount() {
        Day day = shortLived().build();
        // plated, ready, peak from, peak to and usable to are all a minute off
        Plan plan = saying(day, cooked(day, "09:50-10:00"), "09:59", 0, 3, 60, new Points(0, 60, 490, 0, 0));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 5L));
    }

    @Test
    void falsePointsOfThePlanCount() {
        Day day = shortLived().build();
        Plan plan = saying(day, cooked(day, "09:50-10:00"), "10:00", 0, 3, 60, new Points(1, 61, 489, 7, 0));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 4L));
    }

    @Test
    void aCopyCostsItsDishAndTheIngredientsUpToItsStage() {
        Day day = oneDish(10, step -> {})
                .dish("stew", dish -> dish.cost = new Money(150))
                .step("stew", "garnish", 1, step -> step.after("cook"))
                .ingredient("stew", "roots", ingredient -> ingredient.cost = new Money(80))
                .ingredient("stew", "stock", ingredient -> ingredient.cost = new Money(25))
                .ingredient("stew", "truffle", ingredient -> {
                    ingredient.cost = new Money(990);
                    ingredient.step = Optional.of("garnish");
                })
                .build();
        Plan plan = cooked(day, "09:50-10:00").build();

        assertThat(plan.copies().get(0).money()).isEqualTo(new Money(255));
        assertThat(totals(day, plan)).isEmpty();
        // the same plan for a day on which stock is dearer
        Day dearer = oneDish(10, step -> {})
                .dish("stew", dish -> dish.cost = new Money(150))
                .ingredient("stew", "roots", ingredient -> ingredient.cost = new Money(80))
                .ingredient("stew", "stock", ingredient -> ingredient.cost = new Money(26))
                .build();
        assertThat(Audit.of(dearer, plan).breaches())
                .extracting(Breach::what)
                .containsExactly("Stew #1 for setup S1: the plan says money 2.55, but it is 2.56");
    }

    @ParameterizedTest
    @CsvSource({"3, 0, 0", "3, 6, 0", "3, 7, 1", "3, -3, 1", "0, 0, 0", "0, 3, 1"})
    void pointsForMovedMinutesAreWholeMinutesAtTheirPrice(int price, long moved, int wrong) {
        Day day = oneDish(10, step -> {})
                .with(days -> days.prices = new Prices(1000, 10, 1, 7, price))
                .build();
        Plan plan = cooked(day, "09:50-10:00").build();
        Points said = plan.points();
        Plan moving = TestPlans.with(
                plan,
                plan.copies(),
                plan.kitchenCalls(),
                new Points(said.late(), said.offPeak(), said.kitchen(), said.handChanges(), moved));

        assertThat(Audit.of(day, moving).breaches())
                .extracting(Breach::rule)
                .isEqualTo(Collections.nCopies(wrong, Rule.STATEMENT));
    }

    @Test
    void everyFurtherPairOfHandsOnACopyIsAChange() {
        Day day = oneDish(10, step -> step.hands = 2)
                .with(days -> days.prices = new Prices(1000, 10, 1, 7, 1))
                .setup("S1", "10:00", setup -> setup.rolling = 6)
                .dish("stew", dish -> dish.look = Look.table(2, 5, 9))
                .build();
        TestPlans cooked = TestPlans.of(day).step("stew", "cook", 1, "09:50-10:00", work -> work.by("Ana", "Ben"));
        // seen for 3 minutes outside the peak, looks weight 1
        Plan plan = saying(day, cooked, "10:00", 0, 3, 30 + 7, new Points(0, 30, 490, 7, 0));

        assertThat(totals(day, plan)).isEmpty();
    }

    @Test
    void everySpanOfKitchenHoursHasItsCall() {
        Day day = TestDays.firstEgg()
                .with(days -> days.kitchen = List.of(span("06:00-09:52"), span("09:53-18:00")))
                .person("Ana", person -> person.shifts = List.of(span("06:00-18:00")))
                .need("S1", "egg", "plate", need -> need.copies(1))
                .build();
        Plan plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:53-09:57", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:57-09:58", work -> work.by("Ana"))
                .build();
        // 2 minutes of the first span, 8 hours and 7 minutes of the second
        Points points = new Points(0, 0, 2 + 487, 0, 0);

        assertThat(totals(day, TestPlans.with(plan, plan.copies(), List.of(at("09:50"), at("09:53")), points)))
                .isEmpty();
        assertThat(totals(day, TestPlans.with(plan, plan.copies(), List.of(at("09:50")), points)))
                .isEqualTo(Map.of(Rule.STATEMENT, 1L));
    }

    @Test
    void namesThatTheDayDoesNotHaveCount() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = eggs(day)
                .add(
                        Work.Kind.STEP,
                        "eg",
                        "crak",
                        "S1/egg/plate/hero#3",
                        span("09:00-09:01"),
                        work -> work.on("stove", 1));

        // dish, step, copy and station
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 4L));
    }

    @Test
    void aStrangerInTheKitchenIsOffShiftAndUnknown() {
        Day day = oneDish(10, step -> {}).build();
        TestPlans plan = TestPlans.of(day).step("stew", "cook", 1, "09:00-09:10", work -> work.by("Cleo"));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 1L, Rule.SHIFT, 10L));
    }

    @Test
    void anOvenTemperatureOtherThanTheRecipesIsFalse() {
        Day day = oneDish(10, step -> step.uses("oven", 1).oven = Optional.of(180))
                .station("oven", Station.Kind.OVEN, 1, station -> {})
                .build();
        TestPlans plan = TestPlans.of(day)
                .step(
                        "stew",
                        "cook",
                        1,
                        "09:00-09:10",
                        work -> work.on("oven", 1).at(160));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 1L));
    }

    @Test
    void waitingWhereNothingNeedWaitIsFalse() {
        Day day = oneDish(10, step -> {})
                .station("rack", Station.Kind.RACK, 1, station -> {})
                .build();
        TestPlans plan =
                TestPlans.of(day).step("stew", "cook", 1, "09:00-09:10", work -> work.then("rack", 1, "09:10-09:20"));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STATEMENT, 1L));
    }

    @Test
    void aBoundAboveTheCostOfASoundPlanIsFalse() {
        Day day = TestDays.firstEgg().build();
        Plan plan = eggs(day).build();
        // nothing late or off peak; kitchen open from 09:50 to 18:00
        assertThat(plan.points().total()).isEqualTo(490);

        assertThat(totals(day, bounded(plan, 490))).isEmpty();
        assertThat(totals(day, bounded(plan, 491))).isEqualTo(Map.of(Rule.STATEMENT, 1L));
    }

    private static Plan bounded(Plan plan, long bound) {
        return new Plan(
                plan.day(),
                plan.dayDigest(),
                plan.version(),
                plan.seed(),
                plan.moves(),
                plan.asOf(),
                plan.kitchenCalls(),
                plan.copies(),
                plan.work(),
                plan.breaks(),
                plan.points(),
                Optional.of(bound),
                plan.verdict());
    }
}
