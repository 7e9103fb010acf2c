package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.tasks.TaskNet;

/** The engine against CP-SAT (Google OR-Tools 9.15), an independent solver that proves its optima. */
class CpSatComparisonTest {

    private static final int DAYS = 30;

    /** Many times what any of these proofs takes, so that on a slow machine each is there as well. */
    private static final double MOST_SECONDS = 300;

    @Test
    void comesNearProvedOptimaOnRandomSmallDays() {
        int reached = 0;
        double shortfall = 0;
        for (int n = 0; n < DAYS; n++) {
            Day day = DayGenerator.day(10 + n, n % 2 == 0 ? 0.7 : 1.1, 1000 + n, true);
            TaskNet net = DayGenerator.netOf(day);
            Planner.Found found = Planner.plan(
                    day,
                    net,
                    "",
                    "test",
                    new Planner.Limits(60, Optional.of(60_000L), 1, 1),
                    Optional.empty(),
                    Planner.Watcher.NONE);
            CpSatReference.Answer answer = CpSatReference.solve(net, MOST_SECONDS, 2, null);
            assertThat(found.brokenTotal()).as("day %d", n).isZero();
            assertThat(CpSatReference.pointsOf(net, found.plan()))
                    .as("day %d: the plan as CP-SAT's model counts it", n)
                    .isEqualTo(found.points());
            assertThat(answer.optimal()).as("day %d: proved", n).isTrue();
            assertThat(found.points()).as("day %d: engine against optimum", n).isGreaterThanOrEqualTo(answer.points());
            assertThat(found.plan().bound().orElseThrow())
                    .as("day %d: own bound", n)
                    .isLessThanOrEqualTo(answer.points());
            reached += found.points() == answer.points() ? 1 : 0;
            double over = (found.points() - answer.points()) / (double) answer.points();
            shortfall += over;
            if (over > 0) {
                System.out.printf(
                        Locale.ROOT,
                        "day %d, %d tasks: %d points, proved optimum %d%n",
                        n,
                        net.size(),
                        found.points(),
                        answer.points());
            }
        }
        System.out.printf(
                Locale.ROOT,
                "reached %d of %d optima, mean shortfall %.3f %%%n",
                reached,
                DAYS,
                100 * shortfall / DAYS);
        // by steps, from the same optima: the same on each machine. 0.063 % now; 0.28 % by a search that never weaves
        assertThat(shortfall / DAYS).isLessThanOrEqualTo(0.0015);
    }
}
