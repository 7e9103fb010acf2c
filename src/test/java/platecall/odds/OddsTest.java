package platecall.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.day.TestDays.at;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.TestDays;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.solve.InventedDays;

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
        Odds odds = Odds.of(day, InventedDays.plan(day, 1), Odds.RUNS, 1);
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
    void aHeroThatWaitsForTheOtherMayFadeAndOneThatWaitsTooLongIsSpoilt() {
        TestDays day = withBun(oneSetup("Ana", "Ben"), "bun")
                .dish("egg", dish -> dish.look = Look.table(0, 30, 60))
                .need("S1", "egg", "plate", need -> need.copies(1))
                .step("egg", "fry", 4, step -> step.hands = 1)
                .step("egg", "rest", 8, step -> step.after("fry").from(5, 17).most(0))
                .step("egg", "plate", 1, step -> step.after("rest").most(2).hands = 1);
        OfSetup setup = onlySetup(day.build());
        // who plates is free at once, so only an egg that rests for 5 minutes, 3 before its planned minute, waits too
        // long
        assertThat(setup.atCall()).isEqualTo(atMost(8) * atMost(8), within(NEAR));
        assertThat(setup.atPeak()).isEqualTo(atMost(8) * (atMost(8) - atMost(5)), within(NEAR));
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
        Odds odds = Odds.of(day, without, 10, 1);
        assertThat(odds.all()).isZero();
        assertThat(odds.setups().get(0).atCall()).isZero();
        assertThat(odds.setups().get(0).halfBy()).isEmpty();
    }

    @Test
    void theSameSeedGivesTheSameOdds() {
        Day day = withBun(withBun(oneSetup("Ana"), "bun"), "roll").build();
        Plan plan = InventedDays.plan(day, 1);
        assertThat(Odds.of(day, plan, 500, 7)).isEqualTo(Odds.of(day, plan, 500, 7));
        assertThat(Odds.of(day, plan, 500, 8)).isNotEqualTo(Odds.of(day, plan, 500, 7));
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
        Odds odds = Odds.of(day, InventedDays.plan(day, 1), 3, 1);
        assertThat(odds.all()).isEqualTo(1);
        assertThat(odds.setups().get(0))
                .matches(setup -> setup.atPeak() == 1 && setup.everyTake() == 1 && setup.waits() == 0)
                .matches(setup -> setup.causes().isEmpty());
    }
}
