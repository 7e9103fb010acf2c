package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.day.TestDays.at;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.day.Use;
import platecall.plan.Plan;
import platecall.plan.TestPlans;

/** Minutes between the limits of FDA Food Code 3-501.16 and 3-501.19 (B), unless a test says another profile. */
class SafetyClockTest {

    /** A stew for S1 at 12:00, seen for 5 minutes: cut raw, cooked to 74 °C on the hob, plated, eaten by Guest. */
    private static TestDays stew() {
        return new TestDays()
                .with(days -> days.kitchen = List.of(TestDays.span("06:00-22:00")))
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("stew", dish -> dish.controlled = true)
                .need("S1", "stew", "plate", need -> need.eatenBy = List.of("Guest"))
                .step("stew", "cut", 10, step -> {
                    step.raw = true;
                    step.waitsIn = Optional.of("fridge");
                })
                .step("stew", "cook", 30, step -> step.after("cut").uses("hob", 1).core = Optional.of(74.0))
                .step("stew", "plate", 5, step -> step.after("cook"))
                .station("hob", Station.Kind.BURNERS, 2, station -> {})
                .station("oven", Station.Kind.OVEN, 2, station -> {})
                .station("fridge", Station.Kind.FRIDGE, 9, station -> {})
                .station("freezer", Station.Kind.FREEZER, 9, station -> {})
                .station("rack", Station.Kind.RACK, 9, station -> {})
                .station("hot", Station.Kind.HOT_HOLD, 9, station -> {})
                .person("Ana", person -> {})
                .diner("Guest");
    }

    private static TestPlans plan(Day day, String cook, Consumer<TestPlans.WorkPart> cooked) {
        return TestPlans.of(day)
                .step("stew", "cut", 1, "08:00-08:10", work -> work.then("fridge", 1, "08:10-09:00"))
                .step("stew", "cook", 1, cook, work -> {
                    work.on("hob", 1);
                    cooked.accept(work);
                });
    }

    private static TestPlans plated(Day day, String cook, String plate) {
        return plan(day, cook, work -> {}).step("stew", "plate", 1, plate, work -> {});
    }

    private static ClockReading read(Day day, TestPlans plan) {
        return SafetyClock.of(day, plan.build()).get(0);
    }

    private static List<String> path(ClockReading reading) {
        return reading.path().stream()
                .map(stay -> stay.what() + " " + stay.where().word() + " "
                        + stay.span().minutes())
                .toList();
    }

    @Test
    void theClockStartsAnewWhenFoodIsCookedThrough() {
        Day day = stew().build();
        ClockReading reading = read(day, plated(day, "09:00-09:30", "09:40-09:45"));

        assertThat(path(reading))
                .containsExactly(
                        "cut out 10",
                        "fridge cold 50",
                        "cook heated 30",
                        "waits out 10",
                        "plate out 5",
                        "on set out 140");
        assertThat(reading.minutes()).isEqualTo(155);
        assertThat(reading.mostMinutes()).isEqualTo(240);
        assertThat(reading.minutesOver()).isZero();
        assertThat(reading.warm()).isTrue();
        assertThat(reading.discardBy()).isEqualTo(at("13:30"));
        assertThat(reading.firstBite()).isEqualTo(at("12:00"));
        assertThat(reading.discardedBeforeEaten()).isFalse();
        assertThat(reading.why()).isEqualTo("155 min out since it was cooked through or begun, at most 240 after hot");
    }

    @Test
    void aStepThatDoesNotGetHotEnoughLeavesTheClockAsItIs() {
        Day day = stew().step("stew", "cook", 30, step -> step.after("cut").uses("hob", 1).core = Optional.of(62.9))
                .build();

        assertThat(read(day, plated(day, "09:00-09:30", "09:40-09:45")).minutes())
                .isEqualTo(165);
    }

    @Test
    void aStepWithoutACoreTemperatureLeavesTheClockAsItIs() {
        Day day = stew().step("stew", "cook", 30, step -> step.after("cut").uses("hob", 1))
                .build();

        assertThat(read(day, plated(day, "09:00-09:30", "09:40-09:45")).minutes())
                .isEqualTo(165);
    }

    /** FDA Food Code 3-401.11(A)(3): poultry to 74 °C, where fish and whole cuts need 63 °C (A)(1). */
    @ParameterizedTest
    @CsvSource({"trout, 63, 155", "trout, 62, 165", "chicken, 73, 165", "chicken, 74, 155"})
    void whatCooksThroughDependsOnTheFood(String ingredient, double core, int minutes) {
        Day day = stew().ingredient("stew", ingredient, part -> {})
                .step("stew", "cook", 30, step -> step.after("cut").uses("hob", 1).core = Optional.of(core))
                .build();

        assertThat(read(day, plated(day, "09:00-09:30", "09:40-09:45")).minutes())
                .isEqualTo(minutes);
    }

    /** FDA Food Code 3-403.11(A): what was cooked is heated up to 74 °C again. */
    @ParameterizedTest
    @CsvSource({"73, 175", "74, 145"})
    void whatWasCookedIsHeatedUpHotter(double core, int minutes) {
        Day day = stew().step("stew", "plate", 5, step -> step.after("cook").core = Optional.of(core))
                .build();
        ClockReading reading = read(day, plated(day, "08:30-09:00", "09:30-09:40"));

        assertThat(reading.minutes()).isEqualTo(minutes);
        assertThat(path(reading)).contains("plate heated 10");
    }

    /** SI 2013/2996 as read by the FSA: 60 °C is enough if it is held for 45 minutes; the step is no longer. */
    @ParameterizedTest
    @CsvSource({"09:00-09:45, 140", "09:00-09:44, 151"})
    void aStepMustLastAsLongAsItsTemperatureIsHeld(String cook, int minutes) {
        Day day = stew().with(days -> days.profile = "uk")
                .step("stew", "cook", 30, step -> step.after("cut").uses("hob", 1).core = Optional.of(60.0))
                .build();

        assertThat(read(day, plated(day, cook, "09:45-09:50")).minutes()).isEqualTo(minutes);
    }

    @Test
    void hotHoldAndFreezerStopTheClockAndARackDoesNot() {
        Day day = stew().build();
        TestPlans held = plan(day, "09:00-09:30", work -> work.then("hot", 1, "09:40-11:00"))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});
        TestPlans frozen = plan(day, "09:00-09:30", work -> work.then("freezer", 1, "09:40-11:00"))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});
        TestPlans racked = plan(day, "09:00-09:30", work -> work.then("rack", 1, "09:40-11:00"))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});

        assertThat(read(day, held).minutes()).isEqualTo(10 + 30 + 35);
        assertThat(read(day, held).warm()).isTrue();
        assertThat(path(read(day, held))).containsSubsequence("waits out 10", "hot hot 80", "waits out 30");
        assertThat(read(day, frozen).minutes()).isEqualTo(75);
        assertThat(read(day, frozen).warm()).isFalse();
        assertThat(read(day, frozen).why())
                .isEqualTo("75 min out since it was cooked through or begun, at most 240 after cold");
        assertThat(read(day, racked).minutes()).isEqualTo(155);
    }

    /** By hand: the freezer is off for half an hour of the 80 minutes in it, and the hot hold for the last 20. */
    @Test
    void aStoreThatIsClosedHoldsNothing() {
        Day day = stew().station(
                        "freezer",
                        Station.Kind.FREEZER,
                        9,
                        freezer -> freezer.hours = List.of(TestDays.span("10:30-20:00"), TestDays.span("06:00-10:00")))
                .station("hot", Station.Kind.HOT_HOLD, 9, hot -> hot.hours = List.of(TestDays.span("06:00-10:40")))
                .build();
        TestPlans frozen = plan(day, "09:00-09:30", work -> work.then("freezer", 1, "09:40-11:00"))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});
        TestPlans held = plan(day, "09:00-09:30", work -> work.then("hot", 1, "09:40-11:00"))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});
        TestPlans plated = plan(day, "09:00-09:30", work -> {})
                .step("stew", "plate", 1, "10:15-10:45", work -> work.on("freezer", 1));

        assertThat(read(day, frozen).minutes()).isEqualTo(75 + 30);
        assertThat(path(read(day, frozen)))
                .containsSubsequence("freezer cold 20", "freezer closed out 30", "freezer cold 30", "waits out 30");
        assertThat(path(read(day, held))).containsSubsequence("hot hot 60", "hot closed out 20", "waits out 30");
        assertThat(path(read(day, plated)))
                .containsSubsequence("plate, freezer closed out 15", "plate cold 15", "on set out 80");
    }

    @Test
    void aWorkAtAStoreIsHeldByIt() {
        Day day = stew().build();
        TestPlans plan = plan(day, "09:00-09:30", work -> {})
                .step("stew", "plate", 1, "09:30-10:00", work -> work.on("fridge", 1));

        assertThat(path(read(day, plan))).containsSubsequence("plate cold 30", "on set out 125");
        assertThat(read(day, plan).minutes()).isEqualTo(125);
    }

    @Test
    void anOvenThatIsOnlyWarmDoesNotStopTheClock() {
        Day day = stew().step("stew", "plate", 5, step -> step.after("cook").uses("oven", 1).oven = Optional.of(40))
                .build();
        Day hot = stew().step("stew", "plate", 5, step -> step.after("cook").uses("oven", 1).oven = Optional.of(90))
                .build();
        TestPlans plan = plan(day, "09:00-09:30", work -> {})
                .step("stew", "plate", 1, "09:30-10:00", work -> work.on("oven", 1));

        assertThat(read(day, plan).minutes()).isEqualTo(155);
        assertThat(read(hot, plan).minutes()).isEqualTo(125);
    }

    @Test
    void theLongestBranchCounts() {
        Day day = stew().step("stew", "sauce", 10, step -> {})
                .step("stew", "plate", 5, step -> step.after("cook", "sauce"))
                .build();
        TestPlans plan = plated(day, "09:00-09:30", "09:40-09:45");
        plan.step("stew", "sauce", 1, "08:40-08:50", work -> {});

        assertThat(read(day, plan).minutes()).isEqualTo(60 + 145);
        assertThat(path(read(day, plan)))
                .containsExactly("sauce out 10", "waits out 50", "plate out 5", "on set out 140");
    }

    @Test
    void carryingAndEveryTakeCount() {
        Day day = stew().dish("stew", dish -> {
                    dish.controlled = true;
                    dish.carry = 5;
                })
                .setup("S1", "12:00", setup -> setup.takes(4))
                .need("S1", "stew", "plate", need -> {
                    need.eatenBy = List.of("Guest");
                    need.use = new Use.LastsTakes(4);
                })
                .build();
        TestPlans plan = plan(day, "11:00-11:30", work -> {})
                .step("stew", "plate", 1, "11:40-11:45", work -> {})
                .carry("stew", 1, "11:50-11:55", work -> {});

        assertThat(path(read(day, plan)))
                .endsWith("waits out 10", "plate out 5", "waits out 5", "carry out 5", "on set out 40");
        assertThat(read(day, plan).minutes()).isEqualTo(65);
    }

    @Test
    void aPlateThatIsToppedUpStaysForAllTakes() {
        Day day = stew().setup("S1", "12:00", setup -> setup.takes(4))
                .need("S1", "stew", "plate", need -> {
                    need.eatenBy = List.of("Guest");
                    need.use = new Use.ToppedUp(3);
                })
                .build();

        assertThat(read(day, plated(day, "11:00-11:30", "11:30-12:00")).minutes())
                .isEqualTo(30 + 35);
    }

    @Test
    void aCopyThatComesLateIsEatenLater() {
        Day day = stew().build();
        ClockReading reading = read(day, plated(day, "11:30-12:00", "12:05-12:20"));

        assertThat(reading.firstBite()).isEqualTo(at("12:20"));
        assertThat(reading.minutes()).isEqualTo(5 + 15 + 5);
    }

    /** A pie that comes two hours after the call puts all takes off; a second one is for the second take, which its lateness doesn't put off further. */
    @Test
    void whatWaitsOnSetForADishThatIsLateIsEatenLaterToo() {
        TestDays days = stew().setup("S1", "12:00", setup -> setup.takes(2))
                .dish("pie", dish -> {})
                .need("S1", "pie", "bake", need -> {})
                .step("pie", "bake", 20, step -> {});
        Day day = days.build();
        TestPlans late = plated(day, "11:00-11:30", "11:40-11:45")
                .step("pie", "bake", 1, "13:40-14:00", work -> {})
                .step("pie", "bake", 2, "15:40-16:00", work -> {});

        ClockReading reading = read(day, late);

        assertThat(reading.firstBite()).isEqualTo(at("14:00"));
        assertThat(reading.minutes()).isEqualTo(10 + 5 + 135 + 5);
    }

    @Test
    void fourHoursAreAllowedAndNotAMinuteMore() {
        Day day = stew().setup("S1", "14:00", setup -> {}).build();

        ClockReading just = read(day, plated(day, "09:35-10:05", "10:05-10:10"));
        assertThat(just.minutes()).isEqualTo(240);
        assertThat(just.minutesOver()).isZero();
        assertThat(just.discardBy()).isEqualTo(at("14:05"));
        ClockReading over = read(day, plated(day, "09:34-10:04", "10:05-10:10"));
        assertThat(over.minutesOver()).isEqualTo(1);
        assertThat(over.discardBy()).isEqualTo(at("14:04"));
        assertThat(over.discardedBeforeEaten()).isFalse();
        ClockReading gone = read(day, plated(day, "09:29-09:59", "10:05-10:10"));
        assertThat(gone.discardBy()).isEqualTo(at("13:59"));
        assertThat(gone.discardedBeforeEaten()).isTrue();
    }

    /** SI 2013/2996 Sch. 4: less than two hours when hot, less than four when cold. */
    @Test
    void theBritishClockKnowsHotAndCold() {
        Day day = stew().with(days -> days.profile = "uk").build();

        ClockReading hot = read(day, plated(day, "09:30-10:05", "10:05-10:10"));
        assertThat(hot.minutes()).isEqualTo(120);
        assertThat(hot.minutesOver()).isEqualTo(1);
        assertThat(hot.discardBy()).isEqualTo(at("12:04"));
        TestPlans chilled = plan(day, "08:30-09:00", work -> work.then("fridge", 1, "09:00-09:10"))
                .step("stew", "plate", 1, "09:10-09:20", work -> {});
        ClockReading cold = read(day, chilled);
        assertThat(cold.minutes()).isEqualTo(175);
        assertThat(cold.mostMinutes()).isEqualTo(239);
        assertThat(cold.minutesOver()).isZero();
    }

    /** FDA Food Code 3-501.14(A)(1): from 57 to 21 °C within two hours; nothing can be known of a core on a counter. */
    @ParameterizedTest
    @CsvSource({"11:00-11:30, false, 120", "11:01-11:30, true, 121"})
    void whatCoolsOnTheCounterForMoreThanTwoHoursIsThrownAway(String fridge, boolean gone, int minutesOut) {
        Day day = stew().build();
        TestPlans plan = plan(day, "08:30-09:00", work -> work.then("fridge", 1, fridge))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});
        ClockReading reading = read(day, plan);

        assertThat(reading.minutes()).isEqualTo(minutesOut + 35);
        assertThat(reading.minutesOver()).isZero();
        assertThat(reading.discardedBeforeEaten()).isEqualTo(gone);
        assertThat(reading.discardBy()).isEqualTo(gone ? at("11:00") : at("13:30"));
    }

    /** The stew of the case before, a minute too long on the counter, beside one that was cold in time: nobody is to eat either. */
    @ParameterizedTest
    @CsvSource({"11:00-11:30, 0", "11:01-11:30, 1"})
    void whatIsOnlySeenIsToldOnceItMustNotBeEaten(String fridge, int told) {
        Day day = stew().need("S1", "stew", "plate", need -> need.eatenBy = List.of())
                .build();
        TestPlans plan = plan(day, "08:30-09:00", work -> work.then("fridge", 1, fridge))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});
        assertThat(SafetyClock.of(day, plan.build())).isEmpty();
        assertThat(SafetyClock.ofOnlySeenTooLong(day, plan.build())).hasSize(told);
    }

    @Test
    void coolingTwiceIsNotAddedUp() {
        Day day = stew().step("stew", "heat", 10, step -> step.after("cook").uses("hob", 1))
                .step("stew", "plate", 5, step -> step.after("heat"))
                .build();
        TestPlans plan = plan(day, "08:00-08:30", work -> work.then("fridge", 1, "09:40-10:00"))
                .step(
                        "stew",
                        "heat",
                        1,
                        "10:00-10:10",
                        work -> work.on("hob", 1).then("fridge", 1, "11:20-11:30"))
                .step("stew", "plate", 1, "11:30-11:35", work -> {});

        assertThat(read(day, plan).minutes()).isEqualTo(70 + 70 + 35);
        assertThat(read(day, plan).discardedBeforeEaten()).isFalse();
    }

    @Test
    void whatStoodTooLongAfterItWasCookedIsNotSavedByHeat() {
        Day day = stew().with(days -> days.kitchen = List.of(TestDays.span("00:00-22:00")))
                .step("stew", "plate", 5, step -> step.after("cook").uses("hob", 1).core = Optional.of(80.0))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cut", 1, "06:00-06:10", work -> {})
                .step("stew", "cook", 1, "06:10-06:30", work -> work.on("hob", 1))
                .step("stew", "plate", 1, "11:40-11:50", work -> work.on("hob", 1));
        ClockReading reading = read(day, plan);

        assertThat(reading.minutes()).isEqualTo(15);
        assertThat(reading.discardBy()).isEqualTo(at("10:30"));
        assertThat(reading.discardedBeforeEaten()).isTrue();
    }

    /** FDA Food Code 3-501.19(A) and (B)(3): a working supply before cooking, too, is cooked and served or discarded within four hours. */
    @Test
    void whatStoodRawTooLongIsNotSavedByCooking() {
        Day day = stew().build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cut", 1, "06:00-06:10", work -> {})
                .step("stew", "cook", 1, "11:00-11:30", work -> work.on("hob", 1))
                .step("stew", "plate", 1, "11:40-11:50", work -> {});

        assertThat(read(day, plan).minutes()).isEqualTo(35);
        assertThat(read(day, plan).discardBy()).isEqualTo(at("10:00"));
        assertThat(read(day, plan).discardedBeforeEaten()).isTrue();
    }

    @Test
    void aSpoiltBranchSpoilsTheDish() {
        Day day = stew().step("stew", "sauce", 10, step -> step.uses("hob", 1).core = Optional.of(80.0))
                .step("stew", "chill", 10, step -> step.after("sauce").uses("fridge", 1))
                .step("stew", "plate", 5, step -> step.after("cook", "chill"))
                .build();
        TestPlans plan = plated(day, "08:30-08:31", "11:40-11:45");
        plan.step("stew", "sauce", 1, "08:00-08:30", work -> work.on("hob", 1));
        plan.step("stew", "chill", 1, "11:00-11:10", work -> work.on("fridge", 1));
        ClockReading reading = read(day, plan);

        assertThat(path(reading)).contains("cook heated 1");
        assertThat(reading.discardBy()).isEqualTo(at("10:30"));
    }

    /** An invented dish: cooked from 08:00 to 08:30, packed and chilled, plated with a side dish. */
    private static ClockReading packed(String profile, String pack, String side) {
        Day day = stew().with(days -> days.profile = profile)
                .setup("S1", "12:10", setup -> {})
                .step("stew", "pack", 1, step -> step.after("cook").waitsIn = Optional.of("fridge"))
                .step("stew", "side", 10, step -> {})
                .step("stew", "plate", 5, step -> step.after("pack", "side"))
                .build();
        TestPlans plan = plated(day, "08:00-08:30", "12:00-12:05")
                .step("stew", "side", 1, side, work -> {})
                .step(
                        "stew",
                        "pack",
                        1,
                        pack,
                        work -> work.then("fridge", 1, pack.substring(pack.indexOf('-') + 1) + "-12:00"));
        return read(day, plan);
    }

    /** SI 2013/2996 Sch. 4: less than two hours after it was hot, whatever it is served with. */
    @ParameterizedTest
    @CsvSource({"11:00-11:10", "09:30-09:40", "08:10-08:20"})
    void whatABranchHasLostIsLostBesideALongerBranch(String side) {
        ClockReading lost = packed("uk", "10:40-10:41", side);

        assertThat(lost.discardBy()).isEqualTo(at("10:29"));
        assertThat(lost.discardedBeforeEaten()).isTrue();
        assertThat(packed("uk", "09:40-09:41", "11:00-11:10").discardedBeforeEaten())
                .isFalse();
    }

    /** FDA Food Code 2022 3-501.14(A)(1): the hot part of a mixture has two hours to cool, however cold the rest is. */
    @ParameterizedTest
    @CsvSource({
        "10:30-10:40, 11:00-11:01, 10:30",
        "08:00-08:10, 11:00-11:01, 10:30",
        "08:00-08:10, 10:29-10:30, 14:20",
        "10:00-10:10, 10:29-10:30, 14:50"
    })
    void theHotPartOfAMixtureHasToCoolInTime(String side, String mix, String discardBy) {
        Day day = stew().setup("S1", "13:00", setup -> {})
                .step("stew", "side", 10, step -> {})
                .step("stew", "mix", 1, step -> step.after("cook", "side").waitsIn = Optional.of("fridge"))
                .step("stew", "plate", 5, step -> step.after("mix"))
                .build();
        TestPlans plan = plated(day, "08:00-08:30", "12:50-12:55")
                .step("stew", "side", 1, side, work -> {})
                .step(
                        "stew",
                        "mix",
                        1,
                        mix,
                        work -> work.then("fridge", 1, mix.substring(mix.indexOf('-') + 1) + "-12:50"));

        assertThat(read(day, plan).discardBy()).isEqualTo(at(discardBy));
    }

    @Test
    void rawFoodThatIsAddedDoesNotSaveWhatStoodTooLong() {
        Day day = stew().with(days -> days.kitchen = List.of(TestDays.span("00:00-22:00")))
                .step("stew", "sauce", 10, step -> step.uses("hob", 1).core = Optional.of(80.0))
                .step("stew", "cut", 10, step -> step.after("sauce").raw = true)
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "sauce", 1, "05:00-05:10", work -> work.on("hob", 1))
                .step("stew", "cut", 1, "09:30-09:40", work -> {})
                .step("stew", "cook", 1, "10:00-10:30", work -> work.on("hob", 1))
                .step("stew", "plate", 1, "11:40-11:50", work -> {});

        assertThat(read(day, plan).discardBy()).isEqualTo(at("09:10"));
    }

    @Test
    void onlyControlledFoodThatIsMadeAndEatenHasAClock() {
        Day eaten = stew().build();
        Day notControlled = stew().dish("stew", dish -> {}).build();
        Day looksOnly = stew().need("S1", "stew", "plate", need -> {}).build();
        Day unknown = stew().with(days -> days.profile = "nobody's").build();

        assertThat(SafetyClock.of(
                        eaten, plated(eaten, "09:00-09:30", "09:40-09:45").build()))
                .hasSize(1);
        assertThat(SafetyClock.of(eaten, TestPlans.of(eaten).build())).isEmpty();
        for (Day day : List.of(notControlled, looksOnly, unknown)) {
            assertThat(SafetyClock.of(
                            day, plated(day, "09:00-09:30", "09:40-09:45").build()))
                    .isEmpty();
        }
    }

    @Test
    void aPlanThatTheDayDoesNotKnowIsNoError() {
        Day day = stew().build();
        Plan plan = plated(day, "09:00-09:30", "09:40-09:45").build();
        Day other = TestDays.firstEgg().build();

        assertThat(SafetyClock.of(other, plan)).isEmpty();
        assertThat(RawBesideReady.of(other, plan)).isEmpty();
    }
}
