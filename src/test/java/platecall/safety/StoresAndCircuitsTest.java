package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Plan;
import platecall.plan.Plan.Storing;
import platecall.plan.TestPlans;
import platecall.units.Moment;

class StoresAndCircuitsTest {

    private static TestDays cream() {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> setup.takes(2))
                .dish("cream", dish -> dish.controlled = true)
                .need("S1", "cream", "scoop", need -> need.eatenBy = List.of("Guest"))
                .step("cream", "cook", 20, step -> {
                    step.core = Optional.of(82.0);
                    step.batchMost = Optional.of(4);
                    step.waitsIn = Optional.of("fridge");
                })
                .step("cream", "scoop", 2, step -> step.after("cook"))
                .station("fridge", Station.Kind.FRIDGE, 9, station -> {
                    station.amps = 1.5;
                    station.circuit = Optional.of("wall");
                    station.hours = List.of(span("06:00-14:00"));
                })
                .station("hob", Station.Kind.BURNERS, 4, station -> {
                    station.amps = 6;
                    station.circuit = Optional.of("wall");
                })
                .station("lamp", Station.Kind.OTHER, 4, station -> station.amps = 3)
                .circuit("wall", 20, 1.25)
                .circuit("spare", 16, 1);
    }

    private static Plan plan(Day day) {
        return TestPlans.of(day)
                .add(
                        platecall.plan.Plan.Work.Kind.STEP,
                        "cream",
                        "cook",
                        "S1/cream/scoop/hero#1",
                        span("09:00-09:20"),
                        work -> work.and("S1/cream/scoop/hero#2")
                                .on("hob", 2)
                                .on("lamp", 1)
                                .then("fridge", 1, "09:30-11:50"))
                .step("cream", "scoop", 1, "11:50-11:52", work -> {})
                .build();
    }

    @Test
    void aContainerIsThrownAwayWithTheFirstOfItsCopies() {
        Day day = cream().build();
        Plan plan = plan(day);

        assertThat(SafetyClock.of(day, plan))
                .singleElement()
                .satisfies(clock -> assertThat(clock.minutes()).isEqualTo(10 + 15));
        assertThat(Container.of(day, plan)).singleElement().satisfies(container -> {
            assertThat(container.station()).isEqualTo("fridge");
            assertThat(container.copies()).containsExactly("S1/cream/scoop/hero#1");
            assertThat(container.span()).isEqualTo(span("09:30-11:50"));
            assertThat(container.work().step()).isEqualTo("cook");
            assertThat(container.discard()).contains(new Discard(at("15:40"), 230, true));
        });
    }

    /** FDA Food Code 3-501.19(B): four hours, of which ten minutes are gone before it is cold. */
    @Test
    void aContainerNobodyEatsOfIsMarkedTooUnlessNoClockRuns() {
        Day looksOnly = cream().need("S1", "cream", "scoop", need -> {}).build();
        Day steady = cream().dish("cream", dish -> {}).build();
        Day unknown = cream().with(days -> days.profile = "?").build();

        assertThat(Container.of(looksOnly, plan(looksOnly)).get(0).discard())
                .contains(new Discard(at("15:40"), 230, true));
        assertThat(Container.of(steady, plan(steady)).get(0).discard()).isEmpty();
        assertThat(Container.of(unknown, plan(unknown)).get(0).discard()).isEmpty();
    }

    @Test
    void copiesThatLeaveOneAfterAnotherHaveTheirMinutesEach() {
        Storing first = new Storing("a", "fridge", 1, span("09:30-11:50"));
        Storing second = new Storing("b", "fridge", 1, span("09:30-13:00"));
        Storing third = new Storing("c", "fridge", 1, span("09:30-11:50"));
        Map<Storing, Moment> discardBy = Map.of(first, at("15:40"), second, at("16:30"), third, at("11:40"));

        Discard both = Discard.of(List.of(second, first), discardBy).orElseThrow();
        assertThat(both).isEqualTo(new Discard(at("15:40"), 210, false));
        assertThat(both.words("15:40"))
                .isEqualTo("if it stays out discard each 210 min after it comes out, the first by 15:40");
        Discard late = Discard.of(List.of(first, third), discardBy).orElseThrow();
        assertThat(late).isEqualTo(new Discard(at("11:40"), 0, true));
        assertThat(late.words("11:40")).isEqualTo("DO NOT EAT after 11:40");
        Discard some = Discard.of(List.of(first, second, third), discardBy).orElseThrow();
        assertThat(some.words("11:40")).isEqualTo("some of it: DO NOT EAT after 11:40");
        assertThat(Discard.of(List.of(second), Map.of())).isEmpty();
    }

    @Test
    void aContainerLastsFromItsFirstCopyToItsLast() {
        Day day = cream().build();
        Plan plan = TestPlans.of(day)
                .step(
                        "cream",
                        "cook",
                        2,
                        "08:00-08:20",
                        work -> work.then("fridge", 1, "08:40-08:50")
                                .then("fridge", 1, "08:20-08:30")
                                .then("rack", 1, "08:20-08:25"))
                .step("cream", "cook", 1, "07:00-07:20", work -> work.then("fridge", 1, "07:20-07:30"))
                .build();

        assertThat(Container.of(day, plan))
                .extracting(container -> container.station() + " "
                        + container.copies().size() + " " + container.span().minutes())
                .containsExactly("fridge 1 10", "rack 1 5", "fridge 2 30");
    }

    /** A lasting load counts 1.25 times (NEC 210.20(A)): 16 A on a breaker of 20 A. */
    @Test
    void aCircuitsMostIsDrawnWhenEverythingRuns() {
        Day day = cream().build();
        CircuitLoad wall = CircuitLoad.of(day, plan(day)).get(0);

        assertThat(wall.circuit().id()).isEqualTo("wall");
        assertThat(wall.mostAmps()).isCloseTo(13.5, within(1e-9));
        assertThat(wall.from()).isEqualTo(at("09:00"));
        assertThat(wall.carried()).isTrue();
        CircuitLoad spare = CircuitLoad.of(day, plan(day)).get(1);
        assertThat(spare.mostAmps()).isZero();
        assertThat(spare.from()).isEqualTo(at("06:00"));
    }

    @Test
    void aCircuitIsOverloadedAboveItsUsableAmps() {
        Day just = cream().station("hob", Station.Kind.BURNERS, 4, station -> {
                    station.amps = 7.25;
                    station.circuit = Optional.of("wall");
                })
                .build();
        Day over = cream().station("hob", Station.Kind.BURNERS, 4, station -> {
                    station.amps = 7.3;
                    station.circuit = Optional.of("wall");
                })
                .build();

        assertThat(CircuitLoad.of(just, plan(just)).get(0).carried()).isTrue();
        assertThat(CircuitLoad.of(over, plan(over)).get(0).carried()).isFalse();
    }

    /** Watts of the Penn State course EGEE 102, after DOE: a toaster up to 1400, a microwave oven up to 1100, a coffee maker from 900. */
    @ParameterizedTest
    @CsvSource({"1400, 1100, false", "1400, 900, true", "1150, 1100, true"})
    void aToasterAndAMicrowaveOvenAreTooMuchForACircuitOfTwentyAmps(double first, double second, boolean carried) {
        TestDays days = cream().circuit("wall at 120 V", 20, 1);
        for (double watts : new double[] {first, second}) {
            days.station("appliance of " + watts + " W", Station.Kind.OTHER, 1, station -> {
                station.amps = watts / 120;
                station.circuit = Optional.of("wall at 120 V");
            });
        }
        Day day = days.build();
        Plan plan = TestPlans.of(day)
                .step(
                        "cream",
                        "cook",
                        1,
                        "09:00-09:20",
                        work -> work.on("appliance of " + first + " W", 1).on("appliance of " + second + " W", 1))
                .build();

        CircuitLoad load = CircuitLoad.of(day, plan).get(2);
        assertThat(load.mostAmps()).isCloseTo((first + second) / 120, within(1e-9));
        assertThat(load.carried()).isEqualTo(carried);
    }
}
