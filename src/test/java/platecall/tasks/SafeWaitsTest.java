package platecall.tasks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Prices;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.solve.Planner;

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

    @Test
    void aShorterWaitOfTheRecipeStays() {
        Day day = cookedEarly("fda-2022")
                .step("stew", "plate", 5, step -> step.after("cook").most(20).hands = 1)
                .build();

        assertThat(net(day).recipes().get(0).into().get(1)).containsExactly(new TaskNet.Arc(0, 1, 0, 20));
    }

    private static String cookOf(Day day) {
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
        return plan.work().get(0).hands().get(0).person();
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
