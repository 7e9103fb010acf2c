package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.check.DayCheck;
import platecall.day.Day;
import platecall.day.ProbeReading;
import platecall.day.Trouble;
import platecall.intake.DayFile;
import platecall.intake.DayFiles;
import platecall.intake.NotedFile;
import platecall.intake.ReadingsFile;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.PlanFile;
import platecall.plan.Rule;
import platecall.safety.JudgedReadings;

/** Tells how safe the food of a plan is, as far as a plan can tell. */
@Command(
        name = "safety",
        mixinStandardHelpOptions = true,
        description =
                "Tell how long each eaten copy stands between hot and cold, when it is thrown away, and who eats what.",
        footer = {
            "",
            "The limits are those of the safety profile in the day sheet. Local code, a thermometer and licensed practice",
            "decide, not this program.",
            "A plan that was made before the sheets changed is read with the sheets of now.",
            "Exit code: 0 fine, 1 a safety rule is broken or food isn't safe by its readings,",
            "2 bad input or a plan of another day."
        })
final class SafetyCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json of that day")
    private Path planPath;

    @Option(
            names = "--readings",
            paramLabel = "FILE",
            description = "CSV of thermometer readings of its food, to be judged by the safety profile")
    private Path readings;

    @Override
    public Integer call() {
        // who must not eat what is told below; if it was eaten already, refusing the sheets would hide it
        DayFile file = dayArgument.checked(
                it -> DayCheck.ofDayUnderWay(it, it.horizon().end()));
        Day day = file.day();
        Plan plan = PlanFile.readWith(planPath, day, DayFiles.digest(day));
        List<Breach> broken = Audit.of(day, plan).breaches().stream()
                .filter(breach -> isOfSafety(breach.rule()))
                .toList();
        List<ProbeReading> rows = rows(day, plan);
        PrintWriter out = spec.commandLine().getOut();
        if (!plan.dayDigest().equals(DayFiles.digest(day))) {
            out.println("The sheets have changed since this plan was made: it is read with the sheets of now.");
            out.println();
        }
        List<String> remarks =
                DayCheck.remarksOnEaters(day).stream().map(file::tell).toList();
        SafetyPage page = new SafetyPage(day, plan, broken, remarks, rows);
        page.lines().forEach(out::println);
        return broken.isEmpty() && !page.harmful() ? Main.FINE : Main.NOT_READY;
    }

    /** The readings of a file, if all of them fit the plan. */
    private List<ProbeReading> rows(Day day, Plan plan) {
        if (readings == null) {
            return List.of();
        }
        NotedFile<ProbeReading> file = ReadingsFile.read(readings, day);
        List<Trouble> troubles = JudgedReadings.troubles(
                day, plan, file.rows(), ReadingsFile.SHEET_NAME, time -> ReadyTable.dated(time, day));
        if (!troubles.isEmpty()) {
            throw file.bad(troubles);
        }
        return file.rows();
    }

    private static boolean isOfSafety(Rule rule) {
        return switch (rule) {
            case CLOCK, COOKING, RAW_APART, DISCARDED, ALLERGEN, INEDIBLE, CIRCUIT -> true;
            default -> false;
        };
    }
}
