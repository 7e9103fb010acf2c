package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Rule;
import platecall.tasks.TaskNet;

/** The audit knows nothing of the solver; on any day both must count the same breaches, rule by rule. */
class AuditAgreesTest {

    @Property(tries = 60)
    void theAuditCountsTheBreachesThatTheSolverCounts(
            @ForAll @IntRange(min = 8, max = 60) int size,
            @ForAll @DoubleRange(min = 0.5, max = 4) double load,
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Day day = DayGenerator.day(size, load, seed, true);
        TaskNet net = DayGenerator.netOf(day);
        Planner.Found found = Planner.plan(
                day,
                net,
                "digest",
                "test",
                new Planner.Limits(60, Optional.of(400L), seed, 1),
                Optional.empty(),
                Planner.Watcher.NONE);
        Plan.Verdict verdict = Audit.of(day, found.plan());
        Map<Rule, Long> broken = verdict.breaches().stream()
                .collect(Collectors.groupingBy(Breach::rule, Collectors.summingLong(Breach::amount)));
        long missing =
                found.plan().copies().stream().filter(copy -> !copy.made()).count();
        long breaksMissing = found.brokenTotal() - missing;
        assertThat(broken.getOrDefault(Rule.COPIES, 0L)).isEqualTo(missing);
        assertThat(broken.containsKey(Rule.MEAL)).isEqualTo(breaksMissing > 0);
        broken.remove(Rule.COPIES);
        broken.remove(Rule.MEAL);
        assertThat(broken).isEmpty();
        assertThat(found.plan().points().total()).isEqualTo(found.points());
        if (found.brokenTotal() == 0) {
            assertThat(found.plan().bound().orElseThrow()).isLessThanOrEqualTo(found.points());
        }
        assertThat(verdict.lateMinutes())
                .isEqualTo(found.plan().copies().stream()
                        .mapToInt(Plan.PlannedCopy::lateMinutes)
                        .sum());
    }
}
