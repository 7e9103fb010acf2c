package platecall.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.audit.Audit;
import platecall.audit.Flaw;
import platecall.day.Day;
import platecall.odds.Odds;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.units.Moment;

/** How sure a plan is, in one screen: each setup with its chances, then the promise, then what makes setups late. */
final class OddsTable {

    private OddsTable() {}

    static boolean keepsPromise(Day day, Odds odds) {
        return odds.lessSureThan(day.facts().promise()).isEmpty();
    }

    /** The odds in one line. */
    static String line(Day day, Odds odds) {
        int kept =
                odds.setups().size() - odds.lessSureThan(day.facts().promise()).size();
        return String.format(
                Locale.ROOT,
                "%d of %d setups keep the promise of %s. All are ready at their calls with %s. %,d rehearsals.",
                kept,
                odds.setups().size(),
                promise(day),
                Odds.percent(odds.all()),
                odds.runs());
    }

    /** What the chances of being ready don't tell: setups that show what can't be shown any more; empty if there are none. */
    static Optional<String> pastUse(Day day, Plan plan) {
        List<String> setups = Audit.flaws(day, plan).entrySet().stream()
                .filter(flaw -> flaw.getValue() == Flaw.PAST_USE)
                .map(Map.Entry::getKey)
                .toList();
        int last = setups.size() - 1;
        return setups.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        last == 0
                                ? "Setup " + setups.get(0) + " shows what is past its use."
                                : "Setups " + String.join(", ", setups.subList(0, last)) + " and " + setups.get(last)
                                        + " show what is past its use.");
    }

    static void print(PrintWriter out, Day day, Plan plan, Odds odds) {
        printSetups(out, day, odds.setups());
        out.println();
        out.println(line(day, odds));
        Map<String, Integer> late = plan.verdict().setups().stream()
                .filter(setup -> setup.ready().isPresent() && setup.marginMinutes() < 0)
                .collect(Collectors.toMap(Readiness::setup, setup -> -setup.marginMinutes()));
        for (OfSetup setup : odds.lessSureThan(day.facts().promise())) {
            if (late.containsKey(setup.setup())) {
                out.println("Setup " + setup.setup() + " is late by the plan itself, by " + late.get(setup.setup())
                        + " min, if all steps take their likely minutes.");
            } else if (!setup.causes().isEmpty()) {
                out.println("Setup " + setup.setup() + " is late most often because of " + causes(setup) + ".");
            }
        }
    }

    private static void printSetups(PrintWriter out, Day day, List<OfSetup> setups) {
        ZoneId zone = day.facts().zone();
        SetupColumns columns = new SetupColumns(
                zone,
                setups.stream()
                        .map(setup -> Map.entry(setup.setup(), setup.call()))
                        .toList());
        int half = width(10, setups.stream().map(OfSetup::halfBy), zone);
        int promised = width(12, setups.stream().map(OfSetup::promisedBy), zone);
        String row = "%s  %9s  %9s  %10s  %-" + half + "s  %-" + promised + "s  %s%n";
        String ready = promise(day) + " ready";
        out.printf(
                Locale.ROOT,
                row,
                columns.head(),
                "at call",
                "at peak",
                "every take",
                "half ready",
                ready,
                "crew waits");
        for (OfSetup setup : setups) {
            out.printf(
                    Locale.ROOT,
                    row,
                    columns.of(setup.setup(), setup.call()),
                    Odds.percent(setup.atCall()),
                    Odds.percent(setup.atPeak()),
                    Odds.percent(setup.everyTake()),
                    by(setup.halfBy(), zone),
                    by(setup.promisedBy(), zone),
                    setup.halfBy().isEmpty() ? "never ready" : String.format(Locale.ROOT, "%.1f min", setup.waits()));
        }
    }

    /** Of a column of times, which are longer where they need their offset. */
    private static int width(int least, Stream<Optional<Moment>> times, ZoneId zone) {
        return Math.max(
                least, times.mapToInt(time -> by(time, zone).length()).max().orElse(least));
    }

    private static String causes(OfSetup setup) {
        return setup.causes().stream()
                .map(cause -> cause.dish() + " " + cause.step() + " (" + Odds.percent(cause.share()) + ")")
                .collect(Collectors.joining(", "));
    }

    /** As the day sheet has it: {@code 95 %}, {@code 97.5 %}. */
    private static String promise(Day day) {
        return BigDecimal.valueOf(day.facts().promise())
                        .movePointRight(2)
                        .stripTrailingZeros()
                        .toPlainString()
                + " %";
    }

    private static String by(Optional<Moment> moment, ZoneId zone) {
        return moment.map(it -> it.clock(zone)).orElse("never");
    }
}
