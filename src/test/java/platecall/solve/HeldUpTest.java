package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.solve.HeldUp.Lack;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

/** An egg is cracked in 2 minutes, fried in 4 and plated in 1, so each of these days is worked out by hand. */
class HeldUpTest {

    private static List<HeldUp> heldUp(TestDays days) {
        Day day = days.build();
        TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1);
        Plan plan = Planner.plan(
                        day,
                        net,
                        "digest",
                        "test",
                        new Planner.Limits(60, Optional.of(2_000L), 1, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE)
                .plan();
        return HeldUp.of(day, net, plan);
    }

    /** Two setups at 10:00 want an egg each that must be eaten by 10:01: the second one has to be fried after the first. */
    private static TestDays twoAtOnce() {
        return TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 1, 1))
                .with(days -> days.kitchen = List.of(TestDays.span("09:53-18:00")))
                .setup("S1", "10:00", setup -> setup.rolling = 1)
                .setup("S2", "10:00", setup -> setup.rolling = 1)
                .need("S2", "egg", "plate", need -> {});
    }

    private static TestDays oneBurner(TestDays days) {
        return days.station("burners", Station.Kind.BURNERS, 1, burners -> {});
    }

    @Test
    void nothingIsToldOfWhatIsInTime() {
        assertThat(heldUp(twoAtOnce())).isEmpty();
    }

    @Test
    void aStationIsNamedWithTheStepThatWantsIt() {
        assertThat(heldUp(oneBurner(twoAtOnce()))).singleElement().satisfies(held -> {
            assertThat(held.late()).isEqualTo(4);
            assertThat(held.lacking()).containsExactly(new Lack("burners for fry", 0));
        });
    }

    /** The kitchen opens seven minutes before the call, and all seven are Ana's for the first egg. */
    @Test
    void handsAreNamed() {
        TestDays alone = twoAtOnce().person("Ben", ben -> ben.shifts = List.of(TestDays.span("17:00-17:01")));

        assertThat(heldUp(alone))
                .singleElement()
                .satisfies(held -> assertThat(held.lacking()).containsExactly(new Lack("hands", 0)));
    }

    @Test
    void twoThingsAreNamedWhereNoneByItselfWouldDo() {
        TestDays alone =
                oneBurner(twoAtOnce()).person("Ben", ben -> ben.shifts = List.of(TestDays.span("17:00-17:01")));

        assertThat(heldUp(alone))
                .singleElement()
                .satisfies(held -> assertThat(held.lacking())
                        .contains(new Lack("hands and burners", 0))
                        .noneMatch(lack -> lack.late() == 0 && !lack.what().equals("hands and burners")));
    }

    /** A silent set rolls until 10:10; then it is fried for 4 minutes and plated. */
    @Test
    void timesForNoiseAreNamed() {
        TestDays silent = TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 1, 1))
                .setup("S0", "06:00", rolling -> {
                    rolling.silent = true;
                    rolling.cycle = 250;
                    rolling.rolling = 250;
                })
                .setup("S1", "10:00", setup -> setup.rolling = 1)
                .step("egg", "fry", 4, fry -> {
                    fry.after("crack").uses("burners", 1).hands = 1;
                    fry.noisy = true;
                });

        assertThat(heldUp(silent))
                .containsExactly(new HeldUp(
                        "S1/egg/plate/hero#1",
                        15,
                        15,
                        List.of(new Lack("minutes at which noise is allowed for fry", 0))));
    }

    /** Seven minutes of work in a kitchen that opens four minutes before the call. */
    @Test
    void whatOnlyTimeWouldHelpLacksNothing() {
        TestDays late = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> {})
                .with(days -> days.kitchen = List.of(TestDays.span("09:56-18:00")))
                .step("egg", "crack", 2, crack -> {})
                .step("egg", "fry", 4, fry -> fry.after("crack"))
                .step("egg", "plate", 1, plate -> plate.after("fry").most(2));

        assertThat(heldUp(late)).containsExactly(new HeldUp("S1/egg/plate/hero#1", 3, 3, List.of()));
    }
}
