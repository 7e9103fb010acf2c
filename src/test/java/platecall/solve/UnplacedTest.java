package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

/** An egg is cracked in 2 minutes, fried in 4 and plated in 1, so each of these days is worked out by hand. */
class UnplacedTest {

    private static final List<String> BOTH = List.of("S1/egg/plate/hero#1", "S1/egg/plate/hero#2");

    private static List<Unplaced> unplaced(TestDays days) {
        Day day = days.build();
        TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), need -> 2);
        Plan plan = Planner.plan(
                        day,
                        net,
                        "digest",
                        "test",
                        new Planner.Limits(60, Optional.of(500L), 1, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE)
                .plan();
        return Unplaced.of(day, net, plan);
    }

    @Test
    void nothingIsToldOfWhatIsMade() {
        assertThat(unplaced(TestDays.firstEgg())).isEmpty();
    }

    @Test
    void aStationThatIsOpenTooShortIsNamedWithTheStepThatWantsIt() {
        TestDays days = TestDays.firstEgg()
                .station(
                        "burners",
                        Station.Kind.BURNERS,
                        2,
                        burners -> burners.hours = List.of(TestDays.span("09:00-09:03")));
        assertThat(unplaced(days)).containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("burners for fry")));
    }

    @Test
    void eachOfTwoStationsThatWouldDoIsNamed() {
        TestDays days = TestDays.firstEgg()
                .station(
                        "burners",
                        Station.Kind.BURNERS,
                        2,
                        burners -> burners.hours = List.of(TestDays.span("09:00-09:03")))
                .station(
                        "hot plate",
                        Station.Kind.OTHER,
                        1,
                        plate -> plate.hours = List.of(TestDays.span("09:01-09:04")))
                .step("egg", "fry", 4, fry -> fry.after("crack").uses("burners|hot plate", 1).hands = 1);
        assertThat(unplaced(days))
                .containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("burners for fry", "hot plate for fry")));
    }

    @Test
    void aSkillThatNobodyHasIsTold() {
        TestDays days = TestDays.firstEgg().step("egg", "plate", 1, plate -> {
            plate.after("fry").most(2).hands = 1;
            plate.skill = Optional.of("plating");
        });
        assertThat(unplaced(days)).containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("hands for plate")));
    }

    /** Whoever comes is there for 3 minutes of the 7 that an egg takes. */
    @Test
    void handsThatMoreThanOneStepWantsAreToldWithoutAStep() {
        TestDays days = TestDays.firstEgg()
                .person("Ana", ana -> ana.shifts = List.of(TestDays.span("09:00-09:03")))
                .person("Ben", ben -> ben.shifts = List.of(TestDays.span("09:00-09:03")));
        assertThat(unplaced(days)).containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("hands")));
    }

    /** A silent set rolls for 12 hours of kitchen hours. */
    @Test
    void silenceIsTold() {
        TestDays days = TestDays.firstEgg()
                .setup("S0", "06:00", silent -> {
                    silent.silent = true;
                    silent.cycle = 720;
                    silent.rolling = 720;
                })
                .step("egg", "fry", 4, fry -> {
                    fry.after("crack").uses("burners", 1).hands = 1;
                    fry.noisy = true;
                });
        assertThat(unplaced(days))
                .containsExactly(
                        new Unplaced(BOTH, Optional.empty(), List.of("minutes at which noise is allowed for fry")));
    }

    /** A burner draws 10 A where 8 A may be drawn. */
    @Test
    void aCircuitIsNamed() {
        TestDays days = TestDays.firstEgg()
                .circuit("wall", 8, 1)
                .station("burners", Station.Kind.BURNERS, 2, burners -> {
                    burners.amps = 10;
                    burners.circuit = Optional.of("wall");
                });
        assertThat(unplaced(days))
                .containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("power of circuit wall for fry")));
    }

    /** Two days by itself, and nothing that it lacks. */
    @Test
    void timeThatIsTooShortIsTold() {
        TestDays days = TestDays.firstEgg().step("egg", "crack", 2_880, crack -> {});
        assertThat(unplaced(days))
                .containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("time for its steps and waits")));
    }

    /** Kitchen and burners are open for three minutes of the seven. */
    @Test
    void severalThingsThatLackAtOnceAreNotNamed() {
        TestDays days = TestDays.firstEgg()
                .with(early -> early.kitchen = List.of(TestDays.span("09:50-09:53")))
                .station(
                        "burners",
                        Station.Kind.BURNERS,
                        2,
                        burners -> burners.hours = List.of(TestDays.span("09:50-09:53")));
        assertThat(unplaced(days))
                .containsExactly(new Unplaced(BOTH, Optional.empty(), List.of("several things at once")));
    }

    /** The only burner is free, and the kitchen open, for one egg just in time. */
    @Test
    void whatOnlyOthersLeaveNoRoomForIsTold() {
        TestDays days = TestDays.firstEgg()
                .with(tight -> tight.kitchen = List.of(TestDays.span("09:53-10:00")))
                .need("S1", "egg", "plate", need -> need.plates = 2)
                .station("burners", Station.Kind.BURNERS, 1, burners -> {});
        assertThat(unplaced(days))
                .containsExactly(
                        new Unplaced(List.of("S1/egg/plate/hero#2"), Optional.of(TestDays.at("10:00")), List.of()));
    }
}
