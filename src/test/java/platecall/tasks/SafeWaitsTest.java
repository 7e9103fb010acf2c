package platecall.tasks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.audit.Audit;
import platecall.check.DayCheck;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Prices;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.solve.Planner;
import platecall.units.Span;

/** Open waits of food at risk are limited for the search, so that no plan of it runs over the clock. */
class SafeWaitsTest {

    /** Ana can cook from 06:00 to 07:00, five hours before supper, Cleo from 10:00; a change of hands costs most. */
    private static TestDays cookedEarly(String profile) {
        return new TestDays()
                .with(days -> {
                    days.profile = profile;
                    days.prices = new Prices(1000, 10, 0, 5, 0);
                })
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("stew", dish -> {
                    dish.controlled = true;
                    dish.look = Look.table(0, 30, 60);
                })
                .need("S1", "stew", "plate", need -> need.eatenBy = List.of("Guest"))
                .step("stew", "cook", 30, step -> {
                    step.core = Optional.of(75.0);
                    step.hands = 1;
                    step.skill = Optional.of("cooking");
                })
                .step("stew", "plate", 5, step -> step.after("cook").hands = 1)
                .person("Ana", person -> {
                    person.skills = List.of("cooking");
                    person.shifts = List.of(TestDays.span("06:00-07:00"), TestDays.span("11:30-12:00"));
                })
                .person("Cleo", person -> {
                    person.skills = List.of("cooking");
                    person.shifts = List.of(TestDays.span("10:00-11:00"));
                })
                .diner("Guest");
    }

    private static TaskNet net(Day day) {
        return Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1);
    }

    /** FDA Food Code 3-501.19(B): 240 minutes, of which 5 are for plating and at most 60 to the end of the look. */
    @Test
    void anOpenWaitOfFoodAtRiskIsLimited() {
        Day day = cookedEarly("fda-2022").build();
        Day careless =
                cookedEarly("fda-2022").need("S1", "stew", "plate", need -> {}).build();

        assertThat(net(day).recipes().get(0).into().get(1)).containsExactly(new TaskNet.Arc(0, 1, 0, 175));
        assertThat(net(careless).recipes().get(0).into().get(1))
                .containsExactly(new TaskNet.Arc(0, 1, 0, Integer.MAX_VALUE));
    }

    /** FDA Food Code 3-501.19(B): 240 minutes, of which ten are for cutting. */
    @Test
    void rawFoodHasToBeCookedInTime() {
        assertThat(net(packedLater("07:00-12:00").build())
                        .recipes()
                        .get(0)
                        .into()
                        .get(1))
                .containsExactly(new TaskNet.Arc(0, 1, 0, 230));
    }

    /** A store's hours on the evening after the day lie outside of it: nothing is free there, and the day is planned all the same. */
    @Test
    void aStoreThatOpensOnlyAfterTheDayHoldsNothing() {
        Day day = packedLater("07:00-12:00")
                .station(
                        "fridge",
                        Station.Kind.FRIDGE,
                        9,
                        fridge -> fridge.hours = List.of(new Span(
                                TestDays.at("22:00"), TestDays.at("22:00").plus(780))))
                .build();

        assertThat(net(day).lanes().stream()
                        .filter(lane -> lane.station().equals("fridge"))
                        .flatMapToInt(lane -> Arrays.stream(lane.free())))
                .containsOnly(0);
    }

    @Test
    void aShorterWaitOfTheRecipeStays() {
        Day day = cookedEarly("fda-2022")
                .step("stew", "plate", 5, step -> step.after("cook").most(20).hands = 1)
                .build();

        assertThat(net(day).recipes().get(0).into().get(1)).containsExactly(new TaskNet.Arc(0, 1, 0, 20));
    }

    /** An invented curry that must be chilled: the hob is there until 08:40, the bench to pack it at from some time on. */
    private static TestDays packedLater(String bench) {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "13:00", setup -> {})
                .dish("curry", dish -> dish.controlled = true)
                .need("S1", "curry", "plate", need -> need.eatenBy = List.of("Guest"))
                .step("curry", "cut", 10, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("curry", "cook", 30, step -> {
                    step.after("cut").uses("hob", 1).core = Optional.of(80.0);
                    step.hands = 1;
                })
                .step("curry", "pack", 1, step -> {
                    step.after("cook").uses("bench", 1).hands = 1;
                    step.waitsIn = Optional.of("fridge");
                })
                .step("curry", "plate", 5, step -> step.after("pack").hands = 1)
                .station(
                        "hob",
                        Station.Kind.BURNERS,
                        2,
                        station -> station.hours = List.of(TestDays.span("07:00-08:40")))
                .station("bench", Station.Kind.COUNTER, 2, station -> station.hours = List.of(TestDays.span(bench)))
                .station("fridge", Station.Kind.FRIDGE, 9, station -> {})
                .person("Ana", person -> {})
                .diner("Guest");
    }

    /** FDA Food Code 2022 3-501.14(A)(1): from the hob into the fridge within 120 minutes, or the day has troubles. */
    @ParameterizedTest
    @CsvSource({"10:39-13:00, 120", "10:00-13:00, 120", "08:40-13:00, 120"})
    void aDayWithoutTroublesThrowsNothingAway(String bench, int most) {
        Day day = packedLater(bench).build();

        assertThat(DayCheck.troubles(day)).isEmpty();
        Plan plan = planned(day);
        Map<String, Plan.Work> works = new HashMap<>();
        plan.work().forEach(work -> works.put(work.step(), work));
        assertThat(works.get("cook")
                        .span()
                        .end()
                        .minutesUntil(works.get("pack").span().end()))
                .isLessThanOrEqualTo(most);
    }

    @Test
    void whatCannotBeChilledInTimeIsTroubleBeforeAnythingIsPlanned() {
        Day late = packedLater("10:40-13:00").build();
        Day never = packedLater("11:00-13:00").build();
        Day careless = packedLater("11:00-13:00")
                .need("S1", "curry", "plate", need -> {})
                .build();

        assertThat(DayCheck.troubles(late)).singleElement().satisfies(trouble -> {
            assertThat(trouble.sheet()).isEqualTo("steps");
            assertThat(trouble.row()).isEqualTo(2);
            assertThat(trouble.column()).isEqualTo("waits in");
            assertThat(trouble.value()).isEqualTo("fridge");
            assertThat(trouble.what())
                    .isEqualTo(
                            "can't be reached in time for setup S1 at 13:00: at least 121 minutes after cook, but food"
                                    + " that was hot must be in the cold within 120 by the safety profile");
        });
        assertThat(DayCheck.troubles(never))
                .singleElement()
                .satisfies(trouble -> assertThat(trouble.what()).contains("at least 141 minutes after cook"));
        assertThat(DayCheck.troubles(careless)).isEmpty();
    }

    /** Only evening hours would do, which is too late for the call. */
    @Test
    void whatCouldBeChilledInTimeOnlyAfterTheCallIsTrouble() {
        Day day = packedLater("11:00-13:00")
                .station(
                        "hob",
                        Station.Kind.BURNERS,
                        2,
                        station -> station.hours = List.of(TestDays.span("07:00-08:40"), TestDays.span("14:00-15:00")))
                .station(
                        "bench",
                        Station.Kind.COUNTER,
                        2,
                        station -> station.hours = List.of(TestDays.span("11:00-13:00"), TestDays.span("14:00-16:00")))
                .build();

        assertThat(DayCheck.troubles(day)).hasSize(1);
    }

    private static Plan planned(Day day) {
        Plan plan = Planner.plan(
                        day,
                        net(day),
                        "",
                        "",
                        new Planner.Limits(60, Optional.of(300L), 1, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE)
                .plan();
        assertThat(Audit.of(day, plan).breaches()).isEmpty();
        return plan;
    }

    private static String cookOf(Day day) {
        return planned(day).work().get(0).hands().get(0).person();
    }

    @Test
    void thePlannerChangesHandsRatherThanLetFoodAtRiskStand() {
        Day eaten = cookedEarly("fda-2022").build();
        Day looksOnly =
                cookedEarly("fda-2022").need("S1", "stew", "plate", need -> {}).build();

        assertThat(cookOf(eaten)).isEqualTo("Cleo");
        assertThat(cookOf(looksOnly)).isEqualTo("Ana");
    }
}
