package platecall.cli;

import java.io.PrintWriter;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.units.Moment;

/** What a plan comes to, in one screen: each setup with its call, then what is broken, then the plan in numbers. */
final class ReadyTable {

    /** A first take that is so many minutes late puts off the others noticeably. */
    private static final int LATE = 5;

    private ReadyTable() {}

    static void print(PrintWriter out, Day day, Plan plan) {
        ZoneId zone = day.facts().zone();
        List<Readiness> setups = plan.verdict().setups();
        SetupColumns columns = columns(zone, setups);
        String row = "%s  %-" + columns.clock() + "s  %6s  %s%n";
        out.printf(Locale.ROOT, row, columns.head(), "ready", "margin", "verdict");
        for (Readiness setup : setups) {
            out.printf(
                    Locale.ROOT,
                    row,
                    columns.of(setup.setup(), setup.call()),
                    setup.ready().map(ready -> ready.clock(zone)).orElse(day.wantsFood(setup.setup()) ? "never" : "-"),
                    setup.ready().map(ready -> setup.marginMinutes() + " min").orElse("-"),
                    setup.words());
        }
        out.println();
        for (Breach breach : plan.verdict().breaches()) {
            out.printf(
                    Locale.ROOT,
                    "BROKEN  %s: %s. %s%s%n",
                    breach.rule().sentence(),
                    breach.rule().size(breach.amount()),
                    breach.what(),
                    breach.over().isPresent() ? " That was before now." : "");
        }
        setups.stream()
                .filter(setup -> setup.marginMinutes() <= -LATE && setup.ready().isPresent())
                .filter(setup -> day.setup(setup.setup())
                        .filter(it -> it.takesWorst() > 1)
                        .isPresent())
                .forEach(setup -> out.printf(
                        Locale.ROOT,
                        day.setup(setup.setup()).orElseThrow().countShot() == 0
                                ? "Setup %s has its first take's food at %s. Later takes are planned by its call in the sheets: call"
                                        + " it then and plan again, so that their food isn't made too early.%n"
                                : "Setup %s has its next take's food at %s. Later takes are planned by column next take of sheet"
                                        + " setups: put that time there and plan again, so that their food isn't made too early.%n",
                        setup.setup(),
                        dated(setup.ready().orElseThrow(), day)));
        List<Plan.PlannedCopy> toShoot =
                plan.copies().stream().filter(copy -> !plan.isShot(day, copy)).toList();
        out.printf(
                Locale.ROOT,
                "%s%d of %d copies made, %d min late, %d min off peak%s%n",
                plan.asOf().isPresent() ? "Still to be shot: " : "",
                toShoot.stream().filter(Plan.PlannedCopy::made).count(),
                toShoot.size(),
                plan.verdict().lateMinutes(),
                plan.verdict().offPeakMinutes(),
                // calls and points are of the whole day, the bound isn't
                plan.asOf().isPresent() ? "." : ofTheWholeDay(day, plan));
    }

    private static String ofTheWholeDay(Day day, Plan plan) {
        return plan.kitchenCalls().stream()
                .map(call -> dated(call, day))
                .collect(Collectors.joining(" and ", ", kitchen call ", "." + points(plan)));
    }

    /** What the plan costs beside what any plan does at least; nothing if it breaks rules, since the best must break none. */
    private static String points(Plan plan) {
        Optional<Long> bound = plan.bound();
        long points = plan.points().total();
        if (bound.isEmpty()
                || !plan.verdict().breaches().isEmpty()
                || plan.copies().stream().anyMatch(copy -> !copy.made())) {
            return "";
        }
        return points <= bound.get()
                ? " Proved best (" + points + " points)."
                : String.format(Locale.ROOT, " %d points; no plan of this day has fewer than %d.", points, bound.get());
    }

    static SetupColumns columns(ZoneId zone, List<Readiness> setups) {
        return new SetupColumns(
                zone,
                setups.stream()
                        .map(setup -> Map.entry(setup.setup(), setup.call()))
                        .toList());
    }

    /** With the date before it if it isn't the day's. */
    static String dated(Moment moment, Day day) {
        boolean onTheDay =
                moment.in(day.facts().zone()).toLocalDate().equals(day.facts().date());
        String date = DateTimeFormatter.ofPattern("yyyy-MM-dd ", Locale.ROOT)
                .format(moment.in(day.facts().zone()));
        return (onTheDay ? "" : date) + moment.clock(day.facts().zone());
    }
}
