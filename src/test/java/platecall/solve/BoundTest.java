package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Plan;
import platecall.tasks.TaskNet;

/** The engine's own bound against plans of CP-SAT (Google OR-Tools 9.15), an independent solver that proves its optima. */
class BoundTest {

    private static final int DAYS = 40;

    /** From days with room to spare to days on which much is late: a bound above any sound plan would be a lie. */
    @Test
    void isNeverAboveWhatCpSatReachesAndNearProvedOptima() {
        SplittableRandom random = new SplittableRandom(20261125);
        int proved = 0;
        double share = 0;
        for (int n = 0; n < DAYS; n++) {
            int size = 8 + random.nextInt(28);
            double load = 0.5 + 2 * random.nextDouble();
            int seed = random.nextInt(1_000_000);
            Day day = DayGenerator.day(size, load, seed, n % 6 > 0);
            TaskNet net = DayGenerator.netOf(day);
            Planner.Found found = Planner.plan(
                    day,
                    net,
                    "",
                    "test",
                    new Planner.Limits(60, Optional.of(8_000L), 1, 1),
                    Optional.empty(),
                    Planner.Watcher.NONE);
            if (found.brokenTotal() > 0) {
                continue;
            }
            CpSatReference.Answer answer = CpSatReference.solve(net, 4, 2, found.plan());
            long bound = found.plan().bound().orElseThrow();
            assertThat(bound)
                    .as("bound of day %d:%s:%d", size, load, seed)
                    .isLessThanOrEqualTo(Math.min(found.points(), answer.points()));
            if (answer.optimal()) {
                proved++;
                share += bound / (double) Math.max(1, answer.points());
            }
        }
        assertThat(proved).isGreaterThanOrEqualTo(DAYS / 4);
        assertThat(share / proved).isGreaterThanOrEqualTo(0.9);
    }

    /**
     * An oven that is closed for ten minutes is cold after them: cooling from 250 to 100 degrees takes 75 minutes at 2 degrees a
     * minute, heating from 20 to 100 takes 2. So both come to camera in time, and a bound must not say otherwise.
     */
    @Test
    void knowsThatAnOvenIsColdAfterItWasClosed() {
        TestDays days = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .station("oven", Station.Kind.OVEN, 1, station -> {
                    station.hours = List.of(TestDays.span("08:00-09:00"), TestDays.span("09:10-11:00"));
                    station.heat = 60;
                    station.cool = 2;
                });
        Map<String, Integer> celsius = Map.of("hot", 250, "warm", 100);
        Map<String, String> calls = Map.of("hot", "09:00", "warm", "09:25");
        calls.forEach((dish, call) -> days.setup(dish, call, setup -> {})
                .dish(dish, part -> part.look = Look.table(0, 5, 10))
                .need(dish, dish, "bake", need -> need.copies(1))
                .step(dish, "bake", 10, step -> step.uses("oven", 1).oven = Optional.of(celsius.get(dish))));
        Day day = days.build();
        TaskNet net = DayGenerator.netOf(day);
        Planner.Found found = Planner.plan(
                day,
                net,
                "",
                "test",
                new Planner.Limits(60, Optional.of(2_000L), 1, 1),
                Optional.empty(),
                Planner.Watcher.NONE);
        Plan.Verdict verdict = Audit.of(day, found.plan());
        assertThat(verdict.lateMinutes()).isZero();
        assertThat(verdict.breaches()).isEmpty();
        assertThat(Bound.of(net)).isLessThanOrEqualTo(found.points());
    }
}
