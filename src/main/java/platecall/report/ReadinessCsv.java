package platecall.report;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import platecall.day.Day;
import platecall.odds.Odds;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.units.Moment;

/** Which setups are ready at their calls, as comma-separated values. */
final class ReadinessCsv {

    private ReadinessCsv() {}

    static byte[] of(Day day, Plan plan, Odds odds) {
        Clock clock = Clock.of(day, plan);
        Rows rows = new Rows(
                "setup",
                "call",
                "ready",
                "margin in minutes",
                "chance at call in percent",
                "chance at peak in percent",
                "hero at peak until",
                "resets queued",
                "next reset at",
                "verdict",
                "eaten food at risk discarded by");
        Map<String, Moment> discardBy = ReadinessPage.discardBy(day, plan);
        for (Readiness setup : ReadinessPage.inOrderOfCall(plan)) {
            Optional<OfSetup> sure = ReadinessPage.sure(day, plan, odds, setup);
            rows.add(
                    setup.setup(),
                    clock.stamp(setup.call()),
                    setup.ready().map(clock::stamp).orElse(""),
                    setup.ready().isPresent() ? (Object) setup.marginMinutes() : "",
                    sure.map(it -> percent(it.atCall())).orElse(""),
                    sure.map(it -> percent(it.atPeak())).orElse(""),
                    ReadinessPage.peakUntil(day, plan, setup).map(clock::stamp).orElse(""),
                    setup.resetsQueued(),
                    setup.nextResetAt().map(clock::stamp).orElse(""),
                    setup.words(),
                    Optional.ofNullable(discardBy.get(setup.setup()))
                            .map(clock::stamp)
                            .orElse(""));
        }
        return rows.bytes();
    }

    private static String percent(double chance) {
        return String.format(Locale.ROOT, "%.1f", 100 * chance);
    }
}
