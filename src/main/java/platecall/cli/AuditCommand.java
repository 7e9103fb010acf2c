package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.check.DayCheck;
import platecall.day.Day;
import platecall.intake.DayFile;
import platecall.intake.DayFiles;
import platecall.plan.Plan;
import platecall.plan.Plan.Verdict;
import platecall.plan.PlanFile;

/** Checks a plan file against its day once more. */
@Command(
        name = "audit",
        mixinStandardHelpOptions = true,
        description = "Check a plan against its day, minute by minute, whoever made it.",
        footer = {
            "",
            "Each broken rule is told with its size; what the plan says of its times, copies and points is",
            "checked too, but not its bound. A day that breaks a rule itself is refused; safety tells more of it.",
            "Exit code: 0 no rule broken and nothing late, 1 something is, 2 bad input or a plan of another day."
        })
final class AuditCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json of that day")
    private Path planPath;

    @Override
    public Integer call() {
        DayFile file = dayArgument.checkedFor(planPath);
        Day day = file.day();
        Plan plan = PlanFile.read(planPath, DayFiles.digest(day));
        Verdict verdict = Audit.of(day, plan);
        PrintWriter out = spec.commandLine().getOut();
        DayCheck.remarksOnEaters(day).forEach(remark -> out.println("Remark: " + file.tell(remark)));
        ReadyTable.print(out, day, plan.withVerdict(verdict));
        out.println(
                verdict.breaches().isEmpty()
                        ? "No rule is broken."
                        : "Breaches of rules: " + verdict.breaches().size() + ".");
        if (!plan.verdict().equals(verdict)) {
            out.println("The verdict in the file is another one; this one counts.");
        }
        return verdict.sound() ? Main.FINE : Main.NOT_READY;
    }
}
