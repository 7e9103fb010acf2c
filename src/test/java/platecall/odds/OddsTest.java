package platecall.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.day.TestDays.at;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Station;
import platecall.day.Step;
import platecall.day.TestDays;
import platecall.intake.DayFiles;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.plan.TestPlans;
import platecall.solve.InventedDays;
import platecall.units.Moment;

/** Small plans whose chances can be worked out by hand from those of one step. */
class OddsTest {

    /** With 5000 rehearsals no chance is off by more than this, 19 times in 20 (Dvoretzky, Kiefer, Wolfowitz; Massart 1990). */
    private static final double NEAR = 0.01921;

    /** Chance that a step of 5, likely 8, at worst 17 minutes takes at most so many: I_x(2, 4) = 1 - (1 - x)^4 (1 + 4 x). */
    private static double atMost(int minutes) {
        double x = Math.max(0, Math.min(1, (minutes + 0.5 - 5) / 12));
        return 1 - Math.pow(1 - x, 4) * (1 + 4 * x);
    }

    private static double exactly(int minutes) {
        return minutes == 5 ? atMost(5) : atMost(minutes) - atMost(minutes - 1);
    }

    private static TestDays oneSetup(String... people) {
        TestDays day = new TestDays().place("kitchen", place -> {}).setup("S1", "10:00", setup -> {});
        Arrays.stream(people).forEach(name -> day.person(name, person -> {}));
        return day;
    }

    private static TestDays withBun(TestDays day, String bun) {
        return day.dish(bun, dish -> {})
                .need("S1", bun, "shape", need -> need.copies(1))
                .step(bun, "shape", 8, step -> step.from(5, 17).hands = 1);
    }

    private static OfSetup onlySetup(Day day) {
        Odds odds = TestOdds.of(day, InventedDays.plan(day, 1), Odds.RUNS, 1);
        OfSetup setup = odds.setups().get(0);
        assertThat(odds.setups()).hasSize(1);
        assertThat(odds.all()).isEqualTo(setup.atCall());
        return setup;
    }

    @Test
    void oneStepThatEndsAtTheCall() {
        OfSetup setup = onlySetup(withBun(oneSetup("Ana"), "bun").build());
        assertThat(setup.atCall()).isEqualTo(atMost(8), within(NEAR));
        assertThat(setup.atPeak()).isEqualTo(setup.atCall());
        assertThat(setup.everyTake()).isEqualTo(setup.atCall());
        // half take up to 8.77 minutes and 95 % up to 12.89: quantiles of beta-PERT (5, 8, 17), computed apart from
        // this program
        assertThat(setup.halfBy()).contains(at("10:01"));
        assertThat(setup.promisedBy()).contains(at("10:05"));
        double waits = IntStream.rangeClosed(9, 17)
                .mapToDouble(minutes -> (minutes - 8) * exactly(minutes))
                .sum();
        assertThat(setup.waits()).isEqualTo(waits, within(9 * NEAR));
        assertThat(setup.causes()).containsExactly(new Odds.Cause("bun", "shape", 1));
    }

    /** A bun is at its peak for 2 minutes and on camera for 5: being early fades it more, being late keeps the crew waiting as well. */
    @Test
    void lateAndOffPeakMinutesCostWhatTheyComeToOnAverage() {
        Day day = withBun(oneSetup("Ana"), "bun")
                .setup("S1", "10:00", setup -> setup.weight = 3)
                .dish("bun", dish -> dish.look = Look.table(0, 2, 60))
                .need("S1", "bun", "shape", need -> need.copies(1).looksWeight = 2)
                .build();
        double points = IntStream.rangeClosed(5, 17)
                .mapToDouble(minutes -> exactly(minutes)
                        * (3 * 1000 * Math.max(0, minutes - 8) + 2 * 10 * (5 - 2 + Math.max(0, 8 - minutes))))
                .sum();
        assertThat(TestOdds.of(day, InventedDays.plan(day, 1), Odds.RUNS, 1).points())
                .isEqualTo(points, within(3 * 1000 * 9 * NEAR));
    }

    /** Of worked-out looks the peak is sure for less than it is long: of lantern-supper, say, off its ends for 2 minutes and more. */
    @ParameterizedTest
    @ValueSource(strings = {"lantern-supper", "night-ferry", "two-kitchens"})
    void withCertainMinutesRehearsalsCostWhatThePlanSays(String demo) {
        Day day = withCertainMinutes(
                DayFiles.read(Path.of("problems").resolve(demo)).day());
        for (long seed = 1; seed <= 4; seed++) {
            Plan plan = InventedDays.plan(day, seed);
            assertThat(TestOdds.of(day, plan, 2, seed).points())
                    .isEqualTo(plan.points().late() + plan.points().offPeak());
        }
    }

    private static Day withCertainMinutes(Day day) {
        return new Day(
                day.facts(),
                day.setups(),
                day.needs(),
                day.dishes(),
                day.looks(),
                day.steps().stream()
                        .map(it -> new Step(
                                it.dish(),
                                it.id(),
                                it.after(),
                                it.leastWait(),
                                it.mostWait(),
                                it.minutesLikely(),
                                it.minutesLikely(),
                                it.minutesLikely(),
                                it.minutesPerCopy(),
                                it.batchMost(),
                                it.hands(),
                                it.skill(),
                                it.handsFirst(),
                                it.handsLast(),
                                it.stations(),
                                it.ovenCelsius(),
                                it.noisy(),
                                it.waitsIn(),
                                it.raw(),
                                it.coreCelsius(),
                                it.anyTimeAfter()))
                        .toList(),
                day.ingredients(),
                day.stations(),
                day.circuits(),
                day.people(),
                day.cast(),
                day.places());
    }

    /** By hand: surely at its peak from 1 to 3 minutes after plate-up, a bun plated at the call is early for 1 and off for 2 of 5. */
    @Test
    void pointsAreByTheSurePeakAndTheChanceByAllOfIt() {
        Day day = oneSetup("Ana")
                .dish("bun", dish -> dish.look = Look.table(0, 20, 60))
                .need("S1", "bun", "shape", need -> need.copies(1))
                .step("bun", "shape", 8, step -> step.hands = 1)
                .build();
        Odds odds = Odds.of(
                day,
                TestPlans.of(day)
                        .step("bun", "shape", 1, "09:52-10:00", work -> work.by("Ana"))
                        .build(),
                Map.of("bun", new Odds.SurePeak(1, 3)),
                5,
                1);
        assertThat(odds.points()).isEqualTo((1 + 2) * 10);
        assertThat(odds.setups().get(0).atPeak()).isEqualTo(1);
    }

    @Test
    void twoAtATimeByTwoPeople() {
        OfSetup setup = onlySetup(
                withBun(withBun(oneSetup("Ana", "Ben"), "bun"), "roll").build());
        assertThat(setup.atCall()).isEqualTo(atMost(8) * atMost(8), within(NEAR));
        // which of two alike is the later one, or the first where both are as late
        assertThat(setup.causes()).hasSize(2).allMatch(cause -> cause.share() > 0.3 && cause.share() < 0.7);
    }

    @Test
    void twoInARowByOnePerson() {
        OfSetup setup =
                onlySetup(withBun(withBun(oneSetup("Ana"), "bun"), "roll").build());
        double both = IntStream.rangeClosed(5, 17)
                .mapToDouble(first -> exactly(first) * atMost(8 - Math.max(0, first - 8)))
                .sum();
        assertThat(setup.atCall()).isEqualTo(both, within(NEAR));
    }

    @Test
    void whatWaitsTooLongOnItsWayIsNotAtItsPeak() {
        TestDays day = withBun(oneSetup("Ana", "Ben"), "bun")
                .dish("egg", dish -> dish.look = Look.table(0, 30, 60))
                .need("S1", "egg", "plate", need -> need.copies(1))
                .step("egg", "fry", 4, step -> step.hands = 1)
                .step("egg", "rest", 8, step -> step.after("fry").from(5, 17).most(0))
                .step("egg", "plate", 1, step -> step.after("rest").most(1).hands = 1);
        OfSetup setup = onlySetup(day.build());
        // who plates is free at once, so an egg waits too long if it has rested for 6 minutes, 2 before its planned
        // minute
        assertThat(setup.atCall()).isEqualTo(atMost(8) * atMost(8), within(NEAR));
        assertThat(setup.atPeak()).isEqualTo(atMost(8) * (atMost(8) - atMost(6)), within(NEAR));
        assertThat(atMost(6)).isGreaterThan(0.1);
    }

    /** Ana puts a joint in, shapes a bun, and takes the joint out: not before the bun is done. */
    @Test
    void whatPeopleComeBackToWaitsForThem() {
        Day day = withBun(oneSetup("Ana"), "bun")
                .station("oven", Station.Kind.OVEN, 1, station -> {})
                .dish("joint", dish -> {})
                .need("S1", "joint", "roast", need -> need.copies(1))
                .step("joint", "roast", 14, step -> {
                    step.uses("oven", 1).oven = Optional.of(180);
                    step.hands = 1;
                    step.handsFirst = Optional.of(2);
                    step.handsLast = Optional.of(2);
                })
                .build();
        Plan plan = InventedDays.plan(day, 1);
        Moment bunDone = endOf(plan, "bun");
        Moment jointOut = endOf(plan, "joint").plus(-2);
        int slack = bunDone.minutesUntil(jointOut);
        // 14 minutes with 10 between for 8 of work: else this tests nothing
        assertThat(slack).isBetween(0, 2);
        assertThat(TestOdds.of(day, plan, Odds.RUNS, 1).all()).isEqualTo(atMost(8 + slack), within(NEAR));
    }

    private static Moment endOf(Plan plan, String dish) {
        return plan.work().stream()
                .filter(work -> work.dish().equals(dish))
                .findFirst()
                .orElseThrow()
                .span()
                .end();
    }

    /** Cooling from 250 to 100 degrees would take 75 minutes; closed for ten, the oven is cold and heats up in 2. */
    @Test
    void anOvenIsColdAfterItWasClosed() {
        TestDays days = oneSetup("Ana").station("oven", Station.Kind.OVEN, 1, station -> {
            station.hours = List.of(TestDays.span("08:00-09:00"), TestDays.span("09:10-11:00"));
            station.heat = 60;
            station.cool = 2;
        });
        withBake(days, "hot", "09:00", 250);
        withBake(days, "warm", "09:25", 100);
        Day day = days.build();
        Odds odds = TestOdds.of(day, InventedDays.plan(day, 1), 3, 1);
        assertThat(odds.of("hot").orElseThrow().atCall()).isEqualTo(1);
        assertThat(odds.of("warm").orElseThrow().atCall()).isEqualTo(1);
    }

    private static void withBake(TestDays days, String dish, String call, int celsius) {
        days.setup(dish, call, setup -> {})
                .dish(dish, part -> part.look = Look.table(0, 5, 10))
                .need(dish, dish, "bake", need -> need.copies(1))
                .step(dish, "bake", 10, step -> step.uses("oven", 1).oven = Optional.of(celsius));
    }

    @Test
    void aCopyThatIsNotMadeIsNeverReady() {
        Day day = withBun(oneSetup("Ana"), "bun").build();
        Plan plan = InventedDays.plan(day, 1);
        Plan.PlannedCopy copy = plan.copies().get(0);
        Plan without = new Plan(
                plan.day(),
                plan.dayDigest(),
                plan.version(),
                1,
                1,
                Optional.empty(),
                plan.kitchenCalls(),
                List.of(new Plan.PlannedCopy(
                        copy.id(),
                        copy.need(),
                        copy.setup(),
                        copy.dish(),
                        copy.stage(),
                        copy.part(),
                        copy.number(),
                        copy.due(),
                        copy.showMinutes(),
                        false,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        0,
                        0,
                        0,
                        copy.money(),
                        copy.releasedAt(),
                        copy.heldIn())),
                List.of(),
                List.of(),
                plan.points(),
                plan.bound(),
                plan.verdict());
        Odds odds = TestOdds.of(day, without, 10, 1);
        assertThat(odds.all()).isZero();
        assertThat(odds.setups().get(0).atCall()).isZero();
        assertThat(odds.setups().get(0).halfBy()).isEmpty();
    }

    /** At 9:57 the bun, begun at 9:52, has been under way for five minutes and may take three more; at 10:00 it is done for certain. */
    @Test
    void whatHasBegunTakesLongerThanItHasTakenAndWhatIsDoneIsCertain() {
        Day day = withBun(oneSetup("Ana"), "bun").build();
        TestPlans plan = TestPlans.of(day).step("bun", "shape", 1, "09:52-10:00", work -> work.by("Ana"));
        assertThat(TestOdds.of(day, plan.build(), Odds.RUNS, 1).all()).isEqualTo(atMost(8), within(NEAR));
        assertThat(TestOdds.of(day, plan.asOf("09:57").build(), Odds.RUNS, 1).all())
                .isEqualTo((atMost(8) - atMost(5)) / (1 - atMost(5)), within(NEAR));
        Odds done = TestOdds.of(day, plan.asOf("10:00").build(), Odds.RUNS, 1);
        assertThat(done.all()).isEqualTo(1);
        assertThat(done.setups()).hasSize(1);
        assertThat(TestOdds.of(day, plan.asOf("10:10").build(), Odds.RUNS, 1).setups())
                .isEmpty();
    }

    @Test
    void theSameSeedGivesTheSameOdds() {
        Day day = withBun(withBun(oneSetup("Ana"), "bun"), "roll").build();
        Plan plan = InventedDays.plan(day, 1);
        assertThat(TestOdds.of(day, plan, 500, 7)).isEqualTo(TestOdds.of(day, plan, 500, 7));
        assertThat(TestOdds.of(day, plan, 500, 8)).isNotEqualTo(TestOdds.of(day, plan, 500, 7));
    }

    /** Neighbouring seeds of a generator may give the same numbers, only begun later. */
    @Test
    void anotherSeedIsOtherLuckNotTheSameALittleLater() {
        Day day = withBun(oneSetup("Ana"), "bun").build();
        Plan plan = InventedDays.plan(day, 1);
        String one = ends(day, plan, 1);
        String other = ends(day, plan, 2);
        assertThat(one).isEqualTo(ends(day, plan, 1));
        for (int later = 0; later < 20; later++) {
            assertThat(other).doesNotContain(one.substring(later, later + 150));
            assertThat(one).doesNotContain(other.substring(later, later + 150));
        }
    }

    private static String ends(Day day, Plan plan, long seed) {
        Rehearsal rehearsal = new Rehearsal(day, plan, seed);
        StringBuilder ends = new StringBuilder();
        for (int run = 0; run < 200; run++) {
            rehearsal.next();
            ends.append((char) ('a' + rehearsal.end[0] - rehearsal.start[0]));
        }
        return ends.toString();
    }

    @Test
    void withoutLuckAllThatThePlanHasInTimeIsCertain() {
        Day day = TestDays.firstEgg().build();
        Odds odds = TestOdds.of(day, InventedDays.plan(day, 1), 3, 1);
        assertThat(odds.all()).isEqualTo(1);
        assertThat(odds.setups().get(0))
                .matches(setup -> setup.atPeak() == 1 && setup.everyTake() == 1 && setup.waits() == 0)
                .matches(setup -> setup.causes().isEmpty());
    }
}
