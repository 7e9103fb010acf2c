package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
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
}
