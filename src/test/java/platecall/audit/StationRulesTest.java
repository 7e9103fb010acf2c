package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.oneDish;
import static platecall.audit.Audited.secondEgg;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Release;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

class StationRulesTest {

    /** Two eggs on the same burner, the second one {@code 09:53-09:57}. */
    private static TestPlans twoAtOnce(Day day) {
        return TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana"))
                .step("egg", "crack", 2, "09:51-09:53", work -> work.by("Ben"))
                .step("egg", "fry", 2, "09:53-09:57", work -> work.by("Ben").on("burners", 1))
                .step("egg", "plate", 2, "09:57-09:58", work -> work.by("Ben"));
    }

    /** The look of the second egg does not matter here. */
    private static TestDays steadyEggs() {
        return TestDays.firstEgg().dish("egg", dish -> {});
    }

    @Test
    void aStationServesUpToItsCapacity() {
        Day day = steadyEggs().build();

        assertThat(totals(day, twoAtOnce(day))).isEmpty();
    }

    @Test
    void unitsBeyondTheCapacityAreCountedMinuteByMinute() {
        Day day = steadyEggs()
                .station("burners", Station.Kind.BURNERS, 1, station -> {})
                .build();

        assertThat(totals(day, twoAtOnce(day))).isEqualTo(Map.of(Rule.CAPACITY, 3L));
        assertThat(sentences(day, twoAtOnce(day)))
                .containsExactly("burners serves up to 2 of 1 units from 09:53 to 09:56");
    }

    @Test
    void aStepWithoutItsStationLacksItsUnitsThroughout() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = secondEgg(TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana"))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana")));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.CAPACITY, 4L));
    }

    @Test
    void anyOfTheStationsThatServeAsWellWillDo() {
        TestDays days = oneDish(5, step -> step.uses("grill|pan", 2).uses("grill|oven top", 1))
                .station("grill", Station.Kind.OTHER, 3, station -> {})
                .station("pan", Station.Kind.OTHER, 3, station -> {})
                .station("oven top", Station.Kind.OTHER, 3, station -> {});
        Day day = days.build();
        TestPlans crossed = TestPlans.of(day)
                .step(
                        "stew",
                        "cook",
                        1,
                        "09:50-09:55",
                        work -> work.on("grill", 1).on("pan", 2));
        TestPlans tooFew = TestPlans.of(day)
                .step(
                        "stew",
                        "cook",
                        1,
                        "09:50-09:55",
                        work -> work.on("grill", 1).on("pan", 1));

        assertThat(totals(day, crossed)).isEmpty();
        assertThat(totals(day, tooFew)).isEqualTo(Map.of(Rule.CAPACITY, 10L));
    }

    @Test
    void aStationIsUsedOnlyWhileItIsOpen() {
        Day day = TestDays.firstEgg()
                .station("burners", Station.Kind.BURNERS, 2, station -> station.hours = List.of(span("09:55-12:00")))
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.OPEN, 3L));
        assertThat(sentences(day, eggs(day)))
                .containsExactly("fry of Egg #1 for setup S1 uses burners from 09:52 to 09:56,"
                        + " 3 minutes of it while that is closed");
    }

    @Test
    void aCompanyMoveClosesTheStationsOfAPlace() {
        Day day = TestDays.firstEgg()
                .place("kitchen", place -> place.hours = List.of(span("06:00-10:05")))
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.OPEN, 1L));
    }

    /** Dough that is mixed, waits in the fridge if there is time, and is baked. */
    private static TestDays dough() {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("dough", dish -> dish.storage = 2)
                .need("S1", "dough", "bake", need -> {})
                .step("dough", "mix", 5, step -> step.waitsIn = Optional.of("fridge"))
                .step("dough", "bake", 10, step -> step.after("mix"))
                .station("fridge", Station.Kind.FRIDGE, 2, station -> {});
    }

    private static TestPlans mixedAndBaked(Day day, TestPlans.WorkChange afterMix) {
        return TestPlans.of(day)
                .step("dough", "mix", 1, "09:00-09:05", afterMix)
                .step("dough", "bake", 1, "09:30-09:40", work -> {});
    }

    @Test
    void whatWaitsHasItsPlaceFromEndToStart() {
        Day day = dough().build();

        assertThat(totals(day, mixedAndBaked(day, work -> work.then("fridge", 2, "09:05-09:30"))))
                .isEmpty();
    }

    @Test
    void whatWaitsWithoutAPlaceLacksUnitsTimesMinutes() {
        Day day = dough().build();

        assertThat(totals(day, mixedAndBaked(day, work -> {}))).isEqualTo(Map.of(Rule.STORAGE, 50L));
        assertThat(sentences(day, mixedAndBaked(day, work -> {})))
                .containsExactly("Dough #1 for setup S1 must wait in fridge from 09:05 to 09:30 after mix,"
                        + " but has no place there for 50 unit-minutes");
    }

    @Test
    void whatWaitsInPartLacksTheRest() {
        Day day = dough().build();

        assertThat(totals(day, mixedAndBaked(day, work -> work.then("fridge", 2, "09:05-09:20"))))
                .isEqualTo(Map.of(Rule.STORAGE, 20L));
        assertThat(totals(day, mixedAndBaked(day, work -> work.then("fridge", 1, "09:05-09:30"))))
                .isEqualTo(Map.of(Rule.STORAGE, 25L));
        // more than it needs for some of the time makes up for nothing
        assertThat(totals(day, mixedAndBaked(day, work -> work.then("fridge", 3, "09:05-09:20"))))
                .containsEntry(Rule.STORAGE, 20L + 15L);
    }

    @Test
    void whatIsBakedAtOnceNeedsNoPlace() {
        Day day = dough().build();
        TestPlans plan = TestPlans.of(day)
                .step("dough", "mix", 1, "09:25-09:30", work -> {})
                .step("dough", "bake", 1, "09:30-09:40", work -> {});

        assertThat(totals(day, plan)).isEmpty();
    }

    @Test
    void whatFollowsLastEndsTheWait() {
        Day day = dough().step("dough", "cut", 1, step -> step.after("mix"))
                .step("dough", "bake", 10, step -> {
                    step.after("cut");
                    step.anyTimeAfter = List.of("mix");
                })
                .build();
        TestPlans plan = mixedAndBaked(day, work -> work.then("fridge", 2, "09:05-09:10"))
                .step("dough", "cut", 1, "09:10-09:11", work -> {});

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.STORAGE, 40L));
    }

    @Test
    void aPlatedCopyWaitsUntilItIsCarried() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("cake", dish -> dish.carry = 3)
                .need("S1", "cake", "ice", need -> {})
                .step("cake", "ice", 5, step -> step.waitsIn = Optional.of("fridge"))
                .station("fridge", Station.Kind.FRIDGE, 1, station -> {})
                .person("Ana", person -> {})
                .build();
        TestPlans bare = TestPlans.of(day)
                .step("cake", "ice", 1, "09:00-09:05", work -> {})
                .carry("cake", 1, "09:25-09:28", work -> work.by("Ana"));
        TestPlans stored = TestPlans.of(day)
                .step("cake", "ice", 1, "09:00-09:05", work -> work.then("fridge", 1, "09:05-09:25"))
                .carry("cake", 1, "09:25-09:28", work -> work.by("Ana"));

        assertThat(totals(day, bare)).isEqualTo(Map.of(Rule.STORAGE, 20L));
        assertThat(totals(day, stored)).isEmpty();
    }

    @Test
    void aFullStorageIsCountedInUnitMinutes() {
        Day day =
                dough().station("fridge", Station.Kind.FRIDGE, 1, station -> {}).build();

        assertThat(totals(day, mixedAndBaked(day, work -> work.then("fridge", 2, "09:05-09:30"))))
                .isEqualTo(Map.of(Rule.STORAGE, 25L));
        assertThat(sentences(day, mixedAndBaked(day, work -> work.then("fridge", 2, "09:05-09:30"))))
                .containsExactly("fridge stores up to 2 of 1 units from 09:05 to 09:30");
    }

    @Test
    void storageIsUsedOnlyWhileItIsOpen() {
        Day day = dough().station(
                        "fridge", Station.Kind.FRIDGE, 2, station -> station.hours = List.of(span("09:00-09:20")))
                .build();

        assertThat(totals(day, mixedAndBaked(day, work -> work.then("fridge", 2, "09:05-09:30"))))
                .isEqualTo(Map.of(Rule.OPEN, 10L));
    }

    @Test
    void usedCopiesOccupyStorageFromTheirLastLookToTheirRelease() {
        TestDays days = oneDish(5, step -> {})
                .dish("stew", dish -> {
                    dish.storage = 3;
                    dish.heldIn = Optional.of("rack");
                })
                .setup("S1", "10:00", setup -> {
                    setup.rolling = 5;
                    setup.release = new Release.At(at("10:25"));
                });
        Day roomy = days.station("rack", Station.Kind.RACK, 3, station -> {}).build();
        Day tight = days.station("rack", Station.Kind.RACK, 1, station -> {}).build();
        TestPlans plan = TestPlans.of(tight).step("stew", "cook", 1, "09:50-09:55", work -> {});

        assertThat(totals(roomy, plan)).isEmpty();
        assertThat(totals(tight, plan)).isEqualTo(Map.of(Rule.STORAGE, 40L));
        assertThat(sentences(tight, plan)).containsExactly("rack stores up to 3 of 1 units from 10:05 to 10:25");
    }

    @Test
    void heldCopiesOccupyStorageOnlyWhileItIsOpen() {
        Day day = oneDish(5, step -> {})
                .dish("stew", dish -> dish.heldIn = Optional.of("rack"))
                .setup("S1", "10:00", setup -> setup.release = new Release.At(at("10:25")))
                .station("rack", Station.Kind.RACK, 3, station -> station.hours = List.of(span("09:00-10:18")))
                .build();
        TestPlans plan = TestPlans.of(day).step("stew", "cook", 1, "09:50-09:55", work -> {});

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.OPEN, 7L));
    }
}
