package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.firstEgg;
import static platecall.audit.Audited.secondEgg;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.plan.Plan.Work.Kind;
import platecall.plan.Rule;
import platecall.plan.TestPlans;
import platecall.units.Money;

class CopyRulesTest {

    private static final String SECOND = "S1/egg/plate/hero#2";

    @Test
    void aSoundPlanBreaksNoRule() {
        Day day = TestDays.firstEgg().build();

        assertThat(totals(day, eggs(day))).isEmpty();
    }

    @Test
    void eachCopyThatIsNotMadeIsMissing() {
        Day day = TestDays.firstEgg().build();

        assertThat(totals(day, TestPlans.of(day))).isEqualTo(Map.of(Rule.COPIES, 2L));
        assertThat(sentences(day, TestPlans.of(day)))
                .containsExactly("Egg (hero) for setup S1: 2 of 2 copies not made: #1, #2");
    }

    @Test
    void copiesFixedByHandMustAllStandInThePlan() {
        Day day = TestDays.firstEgg()
                .need("S1", "egg", "plate", need -> need.copies(5))
                .build();

        assertThat(totals(day, eggs(day).copies("S1/egg/plate/hero", 2))).isEqualTo(Map.of(Rule.COPIES, 3L));
    }

    @Test
    void copiesBeyondThoseFixedAreTooMany() {
        Day day = TestDays.firstEgg()
                .need("S1", "egg", "plate", need -> need.copies(1))
                .build();

        assertThat(totals(day, eggs(day).copies("S1/egg/plate/hero", 2))).isEqualTo(Map.of(Rule.COPIES, 1L));
    }

    @Test
    void withoutAFixedNumberThePlanMustHaveWhatTheDayReckons() {
        Day day = TestDays.firstEgg()
                .need("S1", "egg", "plate", need -> need.plates = 3)
                .build();

        // 3 plates for each of 2 takes at worst
        assertThat(totals(day, TestPlans.of(day).copies("S1/egg/plate/hero", 0)))
                .isEqualTo(Map.of(Rule.COPIES, 6L));
    }

    @Test
    void aResetThatDoesNotStandInThePlanIsMissing() {
        Day day = TestDays.firstEgg().build();
        TestPlans onlyFirst = firstEgg(day).copies("S1/egg/plate/hero", 1);

        assertThat(totals(day, onlyFirst)).isEqualTo(Map.of(Rule.COPIES, 1L));
        assertThat(sentences(day, onlyFirst)).containsExactly("Egg (hero) for setup S1: 1 of 2 copies not made: #2");
    }

    @Test
    void whatTheFoodBudgetDoesNotAllowIsNotMissing() {
        Day day = TestDays.firstEgg()
                .with(days -> days.foodBudget = Optional.of(new Money(150)))
                .dish("egg", dish -> dish.cost = new Money(100))
                .build();

        assertThat(totals(day, firstEgg(day).copies("S1/egg/plate/hero", 1))).isEmpty();
    }

    @Test
    void moreThanTheDayReckonsMayStandInThePlanButMustBeMadeThen() {
        Day day = TestDays.firstEgg().build();
        TestPlans third = eggs(day)
                .copies("S1/egg/plate/hero", 3)
                .step("egg", "crack", 3, "10:10-10:12", work -> work.by("Ana"))
                .step("egg", "fry", 3, "10:12-10:16", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 3, "10:16-10:17", work -> work.by("Ana"));

        assertThat(totals(day, third)).doesNotContainKey(Rule.COPIES);
        assertThat(totals(day, eggs(day).copies("S1/egg/plate/hero", 3))).isEqualTo(Map.of(Rule.COPIES, 1L));
    }

    @Test
    void numbersOfCopiesHaveNoGaps() {
        Day day = TestDays.firstEgg().build();
        TestPlans onlySecond = secondEgg(TestPlans.of(day));

        assertThat(totals(day, onlySecond)).isEqualTo(Map.of(Rule.COPIES, 1L));
        assertThat(sentences(day, onlySecond)).containsExactly("Egg (hero) for setup S1: 1 of 2 copies not made: #1");
    }

    @Test
    void aCopyWithoutAStepOfItsRecipeIsNotMade() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = secondEgg(TestPlans.of(day)
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana")));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.COPIES, 1L));
        assertThat(sentences(day, plan))
                .containsExactly(
                        "Egg #1 for setup S1 is not made as its recipe says:" + " crack is done 0 times instead of 1");
    }

    @Test
    void aStepDoneTwiceForOneCopyIsABreach() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = eggs(day).step("egg", "crack", 2, "09:40-09:42", work -> work.by("Ana"));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.COPIES, 1L));
    }

    @Test
    void aStepBeyondTheWantedStageIsABreach() {
        Day day = TestDays.firstEgg()
                .step("egg", "garnish", 1, step -> step.after("plate"))
                .build();
        TestPlans plan = eggs(day).step("egg", "garnish", 2, "10:07-10:08", work -> {});

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.COPIES, 1L));
    }

    /** Both eggs go on one walk, if a tray holds two, but not to two setups. */
    @Test
    void aWalkTakesWhatOnePersonCarriesToOneSetup() {
        TestDays eggs = TestDays.firstEgg();
        Day one = eggs.dish("egg", dish -> dish.carry = 2).build();
        assertThat(totals(one, bothCarried(one, "S1/egg/plate/hero#2"))).containsEntry(Rule.BATCH, 1L);
        Day two = eggs.dish("egg", dish -> {
                    dish.carry = 2;
                    dish.perWalk = 2;
                })
                .setup("S2", "10:30", setup -> {})
                .need("S2", "egg", "plate", need -> need.copies(1))
                .build();
        assertThat(totals(two, bothCarried(two, "S1/egg/plate/hero#2"))).doesNotContainKey(Rule.BATCH);
        assertThat(totals(two, bothCarried(two, "S2/egg/plate/hero#1"))).containsEntry(Rule.BATCH, 1L);
        assertThat(sentences(two, bothCarried(two, "S2/egg/plate/hero#1")))
                .anyMatch(sentence -> sentence.contains("serves another dish, stage or setup: Egg #1 for setup S2"));
    }

    private static TestPlans bothCarried(Day day, String other) {
        return eggs(day).carry("egg", 1, "10:07-10:09", work -> work.by("Ana").and(other));
    }

    @Test
    void aCopyThatMustBeCarriedNeedsItsCarry() {
        Day day = TestDays.firstEgg().dish("egg", dish -> dish.carry = 2).build();
        TestPlans plan = eggs(day)
                .carry("egg", 1, "09:57-09:59", work -> work.by("Ana"))
                .carry("egg", 2, "10:07-10:09", work -> work.by("Ana"))
                .carry("egg", 2, "10:10-10:12", work -> work.by("Ana"));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.COPIES, 1L));
        assertThat(sentences(day, plan).get(0)).endsWith("carry is done 2 times instead of 1");
    }

    @Test
    void aBatchMayHoldNoMoreThanItsMost() {
        TestDays days = TestDays.firstEgg()
                .step("egg", "crack", 2, step -> step.batchMost = Optional.of(2))
                .need("S1", "egg", "plate", need -> need.copies(2));
        TestPlans both = batch(days.build());
        assertThat(totals(days.build(), both)).isEmpty();

        Day narrow = days.step("egg", "crack", 2, step -> step.batchMost = Optional.of(1))
                .build();
        assertThat(totals(narrow, both)).isEqualTo(Map.of(Rule.BATCH, 1L));
        assertThat(sentences(narrow, both))
                .containsExactly(
                        "crack of Egg #1 for setup S1 and 1 copy more at 09:50 serves 2 copies, but may serve 1");
    }

    private static TestPlans batch(Day day) {
        return TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.and(SECOND))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:02-10:06", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:06-10:07", work -> work.by("Ana"));
    }

    @Test
    void aStepCopyByCopyServesOnlyOne() {
        Day day = TestDays.firstEgg().step("egg", "crack", 2, step -> {}).build();

        assertThat(totals(day, batch(day))).isEqualTo(Map.of(Rule.BATCH, 1L));
    }

    @Test
    void aBatchHoldsOneDishOnly() {
        Day day = TestDays.firstEgg()
                .step("egg", "crack", 2, step -> step.batchMost = Optional.of(3))
                .dish("toast", dish -> {})
                .need("S1", "toast", "cut", need -> need.copies(1))
                .step("toast", "cut", 2, step -> {})
                .build();
        String toast = "S1/toast/cut/hero#1";
        TestPlans plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.and(SECOND).and(toast))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:02-10:06", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:06-10:07", work -> work.by("Ana"))
                .add(Kind.STEP, "toast", "cut", toast, TestDays.span("09:40-09:42"), work -> {});

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.BATCH, 1L, Rule.COPIES, 1L));
    }
}
