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

    /** A share of rehearsals that is a whole number of tenths may fall short of it by so little. */
    private static final double ROUNDING = 1e-9;

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

    /** Rounded down: never 0 of what is possible or 100 of what isn't certain. */
    static String percent(double chance) {
        double tenths = Math.floor(1000 * chance + ROUNDING);
        double told = chance > 0 && chance < 1 ? Math.max(1, Math.min(999, tenths)) : tenths;
        return String.format(Locale.ROOT, "%.1f", told / 10);
    }
}
