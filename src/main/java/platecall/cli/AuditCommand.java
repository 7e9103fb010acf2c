package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.BadDay;
import platecall.intake.DayFile;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.plan.Plan.Verdict;
import platecall.plan.PlanFile;
import platecall.units.Moment;

/** Checks a plan file against its day once more. */
@Command(
        name = "audit",
        mixinStandardHelpOptions = true,
        description = "Check a plan against its day, minute by minute, whoever made it.",
        footer = {
            "",
            "Each broken rule is told with its size; what the plan says of itself is checked too.",
            "Exit code: 0 no rule broken and nothing late, 1 something is, 2 bad input or a plan of another day."
        })
final class AuditCommand implements Callable<Integer> {

    private static final String ROW = "%-12s  %5s  %5s  %7s  %5s  %6s  %5s  %s";

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "DAY", description = "folder of CSV sheets, .xlsx or .json")
    private Path dayPath;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json of that day")
    private Path planPath;

    @Override
    public Integer call() {
        DayFile file = DayFiles.read(dayPath);
        Day day = file.day();
        List<Trouble> troubles = Looks.problems(day);
        if (!troubles.isEmpty()) {
            throw new BadDay(file, troubles);
        }
        Plan plan = PlanFile.read(planPath, DayFiles.digest(day));
        Verdict verdict = Audit.of(day, plan);
        print(spec.commandLine().getOut(), day, plan, verdict);
        return verdict.sound() ? Main.FINE : Main.NOT_READY;
    }

    private static void print(PrintWriter out, Day day, Plan plan, Verdict verdict) {
        out.println(day.facts().title() + ": "
                + (verdict.breaches().isEmpty()
                        ? "no rule is broken"
                        : verdict.breaches().size() + (verdict.breaches().size() == 1 ? " breach" : " breaches")
                                + " of rules")
                + ", " + verdict.lateMinutes() + " min late, " + verdict.offPeakMinutes() + " min off peak.");
        for (Breach breach : verdict.breaches()) {
            out.println("BROKEN " + breach.rule() + " by " + breach.amount() + " "
                    + breach.rule().unit() + ": " + breach.what());
        }
        out.println();
        out.println(row("setup", "call", "ready", "margin", "peak", "resets", "next", "verdict"));
        for (Readiness setup : verdict.setups()) {
            out.println(row(
                    setup.setup(),
                    clock(day, setup.call()),
                    setup.ready().map(ready -> clock(day, ready)).orElse("-"),
                    setup.ready().map(ready -> setup.marginMinutes() + " min").orElse("-"),
                    setup.heroPeakTo().map(peak -> clock(day, peak)).orElse("-"),
                    String.valueOf(setup.resetsQueued()),
                    setup.nextResetAt().map(next -> clock(day, next)).orElse("-"),
                    setup.words()));
        }
        if (!plan.verdict().equals(verdict)) {
            out.println();
            out.println("The verdict in the file is another one; this one counts.");
        }
    }

    private static String row(String... cells) {
        return String.format(Locale.ROOT, ROW, (Object[]) cells);
    }

    private static String clock(Day day, Moment moment) {
        return DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT)
                .format(moment.in(day.facts().zone()));
    }
}
