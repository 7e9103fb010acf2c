package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.day.Use;
import platecall.safety.SafetyLimits.Wait;

/** FDA Food Code 3-501.19(B) allows 240 minutes. */
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

    private static Map<Wait, Integer> waits(TestDays days, int usable) {
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
                .isEqualTo(Map.of(new Wait("cook", "portion"), 220));
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

        assertThat(waits(days, ALL_DAY)).containsEntry(new Wait("cook", "portion"), 92);
    }

    @Test
    void aWaitThatMustBeLongerIsLeftAlone() {
        assertThat(waits(stew().step("stew", "plate", 5, step -> step.after("portion").least = 110), ALL_DAY))
                .hasSize(2);
        assertThat(waits(stew().step("stew", "plate", 5, step -> step.after("portion").least = 111), ALL_DAY))
                .isEqualTo(Map.of(new Wait("cook", "portion"), 110));
        assertThat(waits(stew().step("stew", "portion", 300, step -> step.after("cook")), ALL_DAY))
                .isEmpty();
    }

    @Test
    void beforeItIsCookedNothingIsLimited() {
        assertThat(waits(
                        stew().step("stew", "plate", 5, step -> step.after("portion").core = Optional.of(75.0)),
                        ALL_DAY))
                .isEmpty();
        assertThat(waits(
                        stew().step("stew", "plate", 5, step -> step.after("portion").core = Optional.of(73.0)),
                        ALL_DAY))
                .hasSize(2);
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
