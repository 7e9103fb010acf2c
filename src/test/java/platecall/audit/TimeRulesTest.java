package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.oneDish;
import static platecall.audit.Audited.secondEgg;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.at;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Silence;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

class TimeRulesTest {

    /** The first egg with the given times; whoever does a step has both hands free. */
    private static TestPlans firstEgg(Day day, String crack, String fry, String plate) {
        return secondEgg(TestPlans.of(day)
                .step("egg", "crack", 1, crack, work -> work.by("Ana"))
                .step("egg", "fry", 1, fry, work -> work.by("Ben").on("burners", 1))
                .step("egg", "plate", 1, plate, work -> work.by("Ana")));
    }

    @Test
    void aStepStartsAfterThoseBeforeItHaveEnded() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = firstEgg(day, "09:50-09:52", "09:51-09:55", "09:55-09:56");

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.ORDER, 1L));
        assertThat(sentences(day, plan))
                .containsExactly("fry of Egg #1 for setup S1 starts at 09:51, but crack of Egg #1 for setup S1 ends at"
                        + " 09:52");
    }

    @Test
    void theLeastWaitCounts() {
        Day day = TestDays.firstEgg()
                .step("egg", "fry", 4, step -> {
                    step.after("crack").uses("burners", 1).hands = 1;
                    step.least = 3;
                })
                .build();

        // each egg waits for no minute but needs three
        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.ORDER, 6L));
    }

    @Test
    void theMostWaitCounts() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = firstEgg(day, "09:45-09:47", "09:47-09:51", "09:56-09:57");

        // 5 minutes after the pan, 2 allowed
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.MOST_WAIT, 3L));
        assertThat(sentences(day, plan))
                .containsExactly("plate of Egg #1 for setup S1 starts at 09:56, but fry of Egg #1 for setup S1 ends at"
                        + " 09:51, and it may wait at most 2 minutes");
    }

    @Test
    void waitsDoNotCountFromStepsThatMayHaveEndedAnyTimeBefore() {
        TestDays days = TestDays.firstEgg().step("egg", "plate", 1, step -> {
            step.after("fry").most(2).hands = 1;
            step.anyTimeAfter = List.of("crack");
        });
        Day day = days.build();

        assertThat(totals(day, eggs(day))).isEmpty();
        assertThat(totals(day, firstEgg(day, "09:57-09:59", "09:52-09:56", "09:56-09:57")))
                .isEqualTo(Map.of(Rule.ORDER, 3L + 7L));
    }

    @Test
    void theOrderOfTwoBatchesIsBrokenOnceForAllTheirCopies() {
        Day day = TestDays.firstEgg()
                .step("egg", "crack", 2, step -> step.batchMost = Optional.of(2))
                .step("egg", "fry", 4, step -> step.after("crack").batchMost = Optional.of(2))
                .step("egg", "plate", 1, step -> step.after("fry"))
                .build();
        String second = "S1/egg/plate/hero#2";
        TestPlans plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.and(second))
                .step("egg", "fry", 1, "09:51-09:55", work -> work.and(second))
                .step("egg", "plate", 1, "09:56-09:57", work -> {})
                .step("egg", "plate", 2, "10:06-10:07", work -> {});

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.ORDER, 1L));
    }

    @Test
    void aCopyIsCarriedAfterItIsPlated() {
        Day day = oneDish(10, step -> {}).dish("stew", dish -> dish.carry = 3).build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cook", 1, "09:30-09:40", work -> {})
                .carry("stew", 1, "09:36-09:39", work -> work.by("Ana"));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.ORDER, 4L));
    }

    @Test
    void aStepTakesTheMinutesThatItTakes() {
        Day day = oneDish(10, step -> {}).build();

        assertThat(totals(day, TestPlans.of(day).step("stew", "cook", 1, "09:00-09:08", work -> {})))
                .isEqualTo(Map.of(Rule.DURATION, 2L));
        assertThat(totals(day, TestPlans.of(day).step("stew", "cook", 1, "09:00-09:13", work -> {})))
                .isEqualTo(Map.of(Rule.DURATION, 3L));
        assertThat(sentences(day, TestPlans.of(day).step("stew", "cook", 1, "09:00-09:08", work -> {})))
                .containsExactly("cook of Stew #1 for setup S1 at 09:00 is given 8 minutes, but takes 10 minutes");
    }

    @Test
    void aBatchTakesLongerWithEachCopyThatIsInIt() {
        Day day = oneDish(10, step -> {
                    step.batchMost = Optional.of(4);
                    step.perCopy = 2;
                })
                .setup("S1", "10:00", setup -> setup.takes(2))
                .build();
        String second = "S1/stew/cook/hero#2";

        // 10 + 2 x 2 minutes for two copies, however many it has room for
        assertThat(totals(day, TestPlans.of(day).step("stew", "cook", 1, "09:00-09:14", work -> work.and(second))))
                .isEmpty();
        assertThat(totals(day, TestPlans.of(day).step("stew", "cook", 1, "09:00-09:13", work -> work.and(second))))
                .isEqualTo(Map.of(Rule.DURATION, 1L));
        assertThat(totals(day, TestPlans.of(day).step("stew", "cook", 1, "09:00-09:16", work -> work.and(second))))
                .isEqualTo(Map.of(Rule.DURATION, 2L));
    }

    @Test
    void theWayToCameraTakesCarryAndWalk() {
        Day day = oneDish(10, step -> {}).dish("stew", dish -> dish.carry = 3).build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cook", 1, "09:30-09:40", work -> {})
                .carry("stew", 1, "09:40-09:41", work -> work.hands("Ana", "09:40-09:43"));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.DURATION, 2L));
    }

    @Test
    void aStepStartsAfterItsIngredientsHaveArrived() {
        Day day = TestDays.firstEgg()
                .ingredient("egg", "butter", ingredient -> {
                    ingredient.step = Optional.of("fry");
                    ingredient.arrives = Optional.of(at("09:57"));
                })
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.SUPPLY, 5L));
        assertThat(sentences(day, eggs(day)))
                .containsExactly("fry of Egg #1 for setup S1 starts at 09:52, but butter arrives at 09:57");
    }

    @Test
    void anIngredientWithoutAStepIsNeededFromTheFirstStepsOn() {
        Day day = TestDays.firstEgg()
                .ingredient("egg", "egg", ingredient -> ingredient.arrives = Optional.of(at("09:51")))
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.SUPPLY, 1L));
    }

    // ---- silence ----------------------------------------------------------------------------------------------

    /** Rolls at 10:00 and 10:10 for 5 minutes each while a blender runs from 10:02 to 10:12. */
    private static TestDays blender() {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> setup.takes(2).silent = true)
                .setup("S2", "11:00", setup -> {})
                .dish("soup", dish -> {})
                .need("S2", "soup", "blend", need -> {})
                .step("soup", "blend", 10, step -> step.uses("blender", 1).noisy = true)
                .station("blender", Station.Kind.OTHER, 1, station -> {});
    }

    private static TestPlans blended(Day day) {
        return TestPlans.of(day).step("soup", "blend", 1, "10:02-10:12", work -> work.on("blender", 1));
    }

    @Test
    void noiseIsHeardWhileATakeRolls() {
        Day day = blender().build();

        assertThat(totals(day, blended(day))).isEqualTo(Map.of(Rule.SILENCE, 5L));
        assertThat(sentences(day, blended(day)))
                .containsExactly("blend of Soup #1 for setup S2 from 10:02 to 10:12 is heard for 5 minutes while a"
                        + " silent set rolls");
    }

    @Test
    void aStrictPolicyKeepsQuietBetweenTakesToo() {
        Day day = blender().with(days -> days.silence = Silence.SETUP).build();

        assertThat(totals(day, blended(day))).isEqualTo(Map.of(Rule.SILENCE, 10L));
    }

    @Test
    void noiseDoesNotMatterToASetThatIsNotSilent() {
        Day day = blender().setup("S1", "10:00", setup -> setup.takes(2)).build();

        assertThat(totals(day, blended(day))).isEmpty();
    }

    @Test
    void noiseOutOfEarshotIsNotHeard() {
        Day day = blender().place("kitchen", place -> place.heard = false).build();

        assertThat(totals(day, blended(day))).isEmpty();
    }

    @Test
    void theStationThatIsUsedDecidesWhetherNoiseIsHeard() {
        Day day = blender()
                .place("van", place -> place.heard = false)
                .step("soup", "blend", 10, step -> step.uses("blender|van blender", 1).noisy = true)
                .station("van blender", Station.Kind.OTHER, 1, station -> station.place = "van")
                .build();
        TestPlans inVan = TestPlans.of(day).step("soup", "blend", 1, "10:02-10:12", work -> work.on("van blender", 1));

        assertThat(totals(day, inVan)).isEmpty();
        assertThat(totals(day, blended(day))).isEqualTo(Map.of(Rule.SILENCE, 5L));
    }
}
