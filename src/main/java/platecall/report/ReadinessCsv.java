package platecall.report;

import java.util.Map;
import java.util.Optional;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.units.Moment;

/** Which setups are ready at their calls, as comma-separated values. */
final class ReadinessCsv {

    private ReadinessCsv() {}

    static byte[] of(Day day, Plan plan) {
        Clock clock = Clock.of(day, plan);
        Rows rows = new Rows(
                "setup",
                "call",
                "ready",
                "margin in minutes",
                "hero at peak until",
                "resets queued",
                "next reset at",
                "verdict",
                "eaten food at risk discarded by");
        Map<String, Moment> discardBy = ReadinessPage.discardBy(day, plan);
        for (Readiness setup : ReadinessPage.inOrderOfCall(plan)) {
            rows.add(
                    setup.setup(),
                    clock.stamp(setup.call()),
                    setup.ready().map(clock::stamp).orElse(""),
                    setup.ready().isPresent() ? (Object) setup.marginMinutes() : "",
                    ReadinessPage.peakUntil(day, setup).map(clock::stamp).orElse(""),
                    setup.resetsQueued(),
                    setup.nextResetAt().map(clock::stamp).orElse(""),
                    setup.words(),
                    Optional.ofNullable(discardBy.get(setup.setup()))
                            .map(clock::stamp)
                            .orElse(""));
        }
        return rows.bytes();
    }
}
