package platecall.cli;

import java.io.PrintWriter;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.odds.Odds;
import platecall.odds.Odds.OfSetup;
import platecall.units.Moment;

/** How sure a plan is, in one screen: each setup with its chances, then the promise, then what makes setups late. */
final class OddsTable {

    private OddsTable() {}

    static boolean keepsPromise(Day day, Odds odds) {
        return odds.setups().stream().allMatch(setup -> keeps(day, setup));
    }

    private static boolean keeps(Day day, OfSetup setup) {
        return setup.atCall() >= day.facts().promise();
    }

    static void print(PrintWriter out, Day day, Odds odds) {
        ZoneId zone = day.facts().zone();
        List<OfSetup> setups = odds.setups();
        int width = setups.stream().mapToInt(row -> row.setup().length()).max().orElse(0);
        width = Math.max("setup".length(), Math.min(24, width));
        String row = "%-" + width + "s  %-8s  %8s  %8s  %10s  %-11s  %-13s  %s%n";
        out.printf(
                Locale.ROOT,
                row,
                "setup",
                "call",
                "at call",
                "at peak",
                "every take",
                "half ready",
                "9 in 10 ready",
                "crew waits");
        for (OfSetup setup : setups) {
            out.printf(
                    Locale.ROOT,
                    row,
                    setup.setup().length() > width ? setup.setup().substring(0, width) : setup.setup(),
                    ReadyTable.clock(setup.call(), zone),
                    percent(setup.atCall()),
                    percent(setup.atPeak()),
                    percent(setup.everyTake()),
                    by(setup.halfBy(), zone),
                    by(setup.nineInTenBy(), zone),
                    setup.halfBy().isEmpty() ? "never ready" : String.format(Locale.ROOT, "%.1f min", setup.waits()));
        }
        out.println();
        long kept = setups.stream().filter(setup -> keeps(day, setup)).count();
        out.printf(
                Locale.ROOT,
                "%d of %d setups keep the promise of %s. All are ready at their calls with %s. %,d rehearsals.%n",
                kept,
                setups.size(),
                percent(day.facts().promise()),
                percent(odds.all()),
                odds.runs());
        for (OfSetup setup : setups) {
            if (!keeps(day, setup) && !setup.causes().isEmpty()) {
                out.printf(
                        Locale.ROOT,
                        "Setup %s is late most often because of %s.%n",
                        setup.setup(),
                        setup.causes().stream()
                                .map(cause -> cause.dish() + " " + cause.step() + " (" + percent(cause.share()) + ")")
                                .collect(Collectors.joining(", ")));
            }
        }
    }

    private static String by(Optional<Moment> moment, ZoneId zone) {
        return moment.map(it -> ReadyTable.clock(it, zone)).orElse("never");
    }

    /** Whole percent, but never 0 % or 100 % of what is possible or not certain. */
    private static String percent(double chance) {
        long whole = Math.round(100 * chance);
        if (whole == 0 && chance > 0) {
            return "under 1 %";
        }
        return whole == 100 && chance < 1 ? "over 99 %" : whole + " %";
    }
}
