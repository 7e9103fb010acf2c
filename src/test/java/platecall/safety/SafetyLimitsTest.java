package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.day.Use;
import platecall.safety.SafetyLimits.Wait;

/** FDA Food Code 2022 3-501.19(B) allows 240 minutes; recipes are invented. */
class SafetyLimitsTest {

    private static final int ALL_DAY = 1440;

    /** Cut raw, cooked to 74 °C, portioned in 10 minutes, plated in 5, seen for 5, eaten. */
    private static TestDays stew() {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("stew", dish -> dish.controlled = true)
                .need("S1", "stew", "plate", need -> need.eatenBy = List.of("Guest"))
                .step("stew", "cut", 10, step -> step.raw = true)
                .step("stew", "cook", 30, step -> step.after("cut").uses("hob", 1).core = Optional.of(74.0))
                .step("stew", "portion", 10, step -> step.after("cook"))
                .step("stew", "plate", 5, step -> step.after("portion"))
                .station("hob", Station.Kind.BURNERS, 2, station -> {})
                .station("fridge", Station.Kind.FRIDGE, 9, station -> {})
                .station("rack", Station.Kind.RACK, 9, station -> {})
                .diner("Guest");
    }

    /** Those after it was cooked; that what is raw is cooked in time is a test of its own. */
    private static Map<Wait, Integer> waits(TestDays days, int usable) {
        Map<Wait, Integer> waits = new HashMap<>(allWaits(days, usable));
        waits.remove(new Wait("cut", "cook"));
        return waits;
    }

    private static Map<Wait, Integer> allWaits(TestDays days, int usable) {
        Day day = days.build();
        return SafetyLimits.mostWaits(day, day.needs().get(0), usable);
    }

    @Test
    void whatIsLeftIsSharedAmongTheWaitsSinceItWasCooked() {
        assertThat(waits(stew(), ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 110, new Wait("portion", "plate"), 110));
    }

    @Test
    void aLookThatEndsSoonCountsInsteadOfTheTimeOnSet() {
        assertThat(waits(stew(), 65)).containsEntry(new Wait("cook", "portion"), 80);
        assertThat(waits(stew(), 3)).containsEntry(new Wait("cook", "portion"), 110);
        assertThat(waits(stew(), 120)).containsEntry(new Wait("cook", "portion"), 52);
        assertThat(waits(stew(), 121)).containsEntry(new Wait("cook", "portion"), 110);
    }

    @Test
    void waitsThatAreLimitedAlreadyAreTakenOff() {
        assertThat(waits(
                        stew().step(
                                        "stew",
                                        "plate",
                                        5,
                                        step -> step.after("portion").most(20)),
                        ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 200));
    }

    @Test
    void coldStoresNeedNoLimitAndRacksDo() {
        assertThat(waits(
                        stew().step("stew", "portion", 10, step -> step.after("cook").waitsIn = Optional.of("fridge")),
                        ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 110));
        assertThat(waits(
                        stew().step("stew", "portion", 10, step -> step.after("cook").waitsIn = Optional.of("rack")),
                        ALL_DAY))
                .hasSize(2);
        assertThat(waits(
                        stew().step("stew", "portion", 10, step -> step.after("cook").waitsIn = Optional.of("fridge"))
                                .dish("stew", dish -> {
                                    dish.controlled = true;
                                    dish.storage = 0;
                                }),
                        ALL_DAY))
                .hasSize(2);
    }

    @Test
    void stepsInWhichTheFoodIsHeldAreNotCounted() {
        assertThat(waits(
                        stew().step(
                                        "stew",
                                        "portion",
                                        10,
                                        step -> step.after("cook").uses("hob", 1)),
                        ALL_DAY))
                .containsEntry(new Wait("portion", "plate"), 115);
        assertThat(waits(
                        stew().step(
                                        "stew",
                                        "portion",
                                        10,
                                        step -> step.after("cook").uses("fridge", 1)),
                        ALL_DAY))
                .containsEntry(new Wait("portion", "plate"), 115);
        assertThat(waits(
                        stew().step(
                                        "stew",
                                        "portion",
                                        10,
                                        step -> step.after("cook").uses("fridge|rack", 1)),
                        ALL_DAY))
                .containsEntry(new Wait("portion", "plate"), 110);
        assertThat(waits(
                        stew().step("stew", "portion", 10, step -> {
                            step.after("cook").uses("hob", 1);
                            step.oven = Optional.of(40);
                        }),
                        ALL_DAY))
                .containsEntry(new Wait("portion", "plate"), 110);
    }

    @Test
    void aBatchIsReckonedAtItsFullest() {
        assertThat(waits(
                        stew().step("stew", "portion", 10, step -> {
                            step.after("cook").batchMost = Optional.of(5);
                            step.perCopy = 2;
                        }),
                        ALL_DAY))
                .containsEntry(new Wait("portion", "plate"), 105);
    }

    @Test
    void theWayToCameraIsAWaitToo() {
        TestDays carried = stew().dish("stew", dish -> {
            dish.controlled = true;
            dish.carry = 10;
        });

        assertThat(waits(carried, ALL_DAY))
                .isEqualTo(Map.of(
                        new Wait("cook", "portion"), 70,
                        new Wait("portion", "plate"), 70,
                        new Wait("plate", SafetyLimits.CARRY), 70));
        assertThat(waits(carried, 30)).containsOnlyKeys(new Wait("cook", "portion"), new Wait("portion", "plate"));
    }

    @Test
    void platesThatStayForAllTakesStandLonger() {
        TestDays days = stew().setup("S1", "12:00", setup -> setup.takes(4)).need("S1", "stew", "plate", need -> {
            need.eatenBy = List.of("Guest");
            need.use = new Use.ToppedUp(3);
        });

        assertThat(waits(days, ALL_DAY)).containsEntry(new Wait("cook", "portion"), 95);
    }

    @Test
    void aWaitThatMustBeLongerLeavesLessToTheOthers() {
        assertThat(waits(stew().step("stew", "plate", 5, step -> step.after("portion").least = 110), ALL_DAY))
                .hasSize(2);
        assertThat(waits(stew().step("stew", "plate", 5, step -> step.after("portion").least = 111), ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 109, new Wait("portion", "plate"), 111));
        assertThat(waits(stew().step("stew", "portion", 300, step -> step.after("cook")), ALL_DAY))
                .isEmpty();
    }

    /** FDA Food Code 3-501.19(A) and (B)(3): a working supply before cooking has four hours as well, of which ten minutes are for cutting. */
    @Test
    void whatWasBegunIsLimitedUntilItIsCookedRawOrNot() {
        assertThat(allWaits(stew(), ALL_DAY)).containsEntry(new Wait("cut", "cook"), 230);
        assertThat(allWaits(stew().step("stew", "cut", 10, step -> {}), ALL_DAY))
                .containsEntry(new Wait("cut", "cook"), 230);
        assertThat(allWaits(
                        stew().step("stew", "cut", 10, step -> {
                            step.raw = true;
                            step.waitsIn = Optional.of("fridge");
                        }),
                        ALL_DAY))
                .doesNotContainKey(new Wait("cut", "cook"));
    }

    /** What stood out for more than 240 minutes is not saved by heating it up to 74 °C (3-403.11(A)) again. */
    @Test
    void whatIsHeatedUpAgainIsLimitedUntilThen() {
        assertThat(waits(
                        stew().step("stew", "plate", 5, step -> step.after("portion").core = Optional.of(75.0)),
                        ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 115, new Wait("portion", "plate"), 115));
        assertThat(waits(
                        stew().step("stew", "plate", 5, step -> step.after("portion").core = Optional.of(73.0)),
                        ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 112, new Wait("portion", "plate"), 112));
    }

    /** Cooked, packed in a minute, chilled in the fridge, plated. */
    private static TestDays chilled() {
        return stew().step("stew", "portion", 1, step -> step.after("cook").waitsIn = Optional.of("fridge"))
                .station("oven", Station.Kind.OVEN, 2, station -> {})
                .station("hot", Station.Kind.HOT_HOLD, 9, station -> {});
    }

    /** FDA Food Code 2022 3-501.14(A)(1): from 57 to 21 °C within 120 minutes; the UK has no such number. */
    @Test
    void hotFoodComesIntoTheColdBeforeTheFirstCoolingStageIsOver() {
        assertThat(waits(chilled(), ALL_DAY)).isEqualTo(Map.of(new Wait("cook", "portion"), 119));
        assertThat(waits(
                        chilled()
                                .step(
                                        "stew",
                                        "portion",
                                        1,
                                        step -> step.after("cook").uses("fridge", 1)),
                        ALL_DAY))
                .containsEntry(new Wait("cook", "portion"), 120 - 5);
        assertThat(waits(chilled().with(days -> days.profile = "uk"), ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 119 - 1 - 5 - 5));
    }

    /**
     * FDA Food Code 2022 3-501.14(A)(1): 120 minutes. What may go on from the first fridge, or a hot hold, at once may never have been in there: cooled,
     * churned in 35 minutes, frozen.
     */
    @Test
    void whatMayLeaveTheColdAtOnceIsNotColdYet() {
        TestDays frozen = chilled()
                .step("stew", "churn", 35, step -> step.after("portion"))
                .step("stew", "freeze", 60, step -> step.after("churn").uses("freezer", 1))
                .step("stew", "plate", 5, step -> step.after("freeze"))
                .station("freezer", Station.Kind.FREEZER, 9, station -> {});
        assertThat(waits(frozen, ALL_DAY))
                .containsEntry(new Wait("cook", "portion"), (120 - 36) / 2)
                .containsEntry(new Wait("churn", "freeze"), (120 - 36) / 2);
        // surely in the fridge for a minute it has its share of the four hours
        assertThat(waits(frozen.step("stew", "churn", 35, step -> step.after("portion").least = 1), ALL_DAY))
                .containsEntry(new Wait("churn", "freeze"), (240 - 36 - 5 - 5) / 3);
    }

    @Test
    void aHotHoldOnTheWayStartsTheCoolingAnew() {
        TestDays days = chilled()
                .step("stew", "cook", 30, step -> {
                    step.after("cut").uses("hob", 1).core = Optional.of(74.0);
                    step.waitsIn = Optional.of("hot");
                })
                .step("stew", "box", 10, step -> step.after("portion").waitsIn = Optional.of("fridge"))
                .step("stew", "portion", 20, step -> step.after("cook"))
                .step("stew", "plate", 5, step -> step.after("box"));

        assertThat(waits(days, ALL_DAY)).isEqualTo(Map.of(new Wait("portion", "box"), 120 - 30));
    }

    @Test
    void aStepThatMayBeHotOrNotIsReckonedAsBoth() {
        TestDays days = chilled()
                .step("stew", "warm", 20, step -> step.after("cook").uses("oven|rack", 1))
                .step("stew", "portion", 1, step -> step.after("warm").waitsIn = Optional.of("fridge"));

        assertThat(waits(days, ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "warm"), 49, new Wait("warm", "portion"), 49));
    }

    @Test
    void aLongerWaitOfTheRecipeIsCutShort() {
        assertThat(waits(
                        chilled()
                                .step(
                                        "stew",
                                        "portion",
                                        1,
                                        step -> step.after("cook").most(150).waitsIn = Optional.of("fridge")),
                        ALL_DAY))
                .containsEntry(new Wait("cook", "portion"), 119);
    }

    @Test
    void branchesDoNotTakeEachOthersTime() {
        TestDays days = chilled()
                .step("stew", "sauce", 20, step -> step.uses("hob", 1).core = Optional.of(80.0))
                .step("stew", "salad", 30, step -> {})
                .step(
                        "stew",
                        "portion",
                        10,
                        step -> step.after("cook", "sauce", "salad").waitsIn = Optional.of("fridge"));

        assertThat(waits(days, ALL_DAY))
                .isEqualTo(Map.of(
                        new Wait("cook", "portion"), 110,
                        new Wait("sauce", "portion"), 110,
                        new Wait("salad", "portion"), 240 - 30 - 10 - 5 - 5));
    }

    @Test
    void whatSurelyIsHotAndThenColdIsTold() {
        Day day = chilled().build();
        Day held = chilled()
                .step("stew", "cook", 30, step -> {
                    step.after("cut").uses("hob", 1).core = Optional.of(74.0);
                    step.waitsIn = Optional.of("hot");
                })
                .build();
        Day inside = chilled()
                .step("stew", "portion", 1, step -> step.after("cook").uses("fridge", 1))
                .build();
        Day either = chilled()
                .step("stew", "warm", 20, step -> step.after("cook").uses("oven|rack", 1))
                .step("stew", "portion", 1, step -> step.after("warm").waitsIn = Optional.of("fridge"))
                .build();
        Day british = chilled().with(days -> days.profile = "uk").build();

        assertThat(SafetyLimits.chills(day, day.needs().get(0)))
                .containsExactly(new SafetyLimits.Chill(
                        day.step("stew", "cook").orElseThrow(),
                        false,
                        day.step("stew", "portion").orElseThrow(),
                        false,
                        120));
        assertThat(SafetyLimits.chills(held, held.needs().get(0)))
                .extracting(chill -> chill.hot().id() + " " + chill.held())
                .containsExactly("portion true");
        assertThat(SafetyLimits.chills(inside, inside.needs().get(0)))
                .extracting(chill -> chill.cold().id() + " " + chill.inside())
                .containsExactly("portion true");
        assertThat(SafetyLimits.chills(either, either.needs().get(0))).isEmpty();
        assertThat(SafetyLimits.chills(british, british.needs().get(0))).isEmpty();
    }

    /** SI 2013/2996 Sch. 4: less than two hours. */
    @Test
    void theStricterOfHotAndColdCounts() {
        assertThat(waits(stew().with(days -> days.profile = "uk"), ALL_DAY))
                .containsEntry(new Wait("cook", "portion"), (119 - 20) / 2);
    }

    @Test
    void onlyFoodAtRiskThatIsEatenIsLimited() {
        assertThat(waits(stew().dish("stew", dish -> {}), ALL_DAY)).isEmpty();
        assertThat(waits(stew().need("S1", "stew", "plate", need -> {}), ALL_DAY))
                .isEmpty();
        assertThat(waits(stew().with(days -> days.profile = ""), ALL_DAY)).isEmpty();
    }
}
