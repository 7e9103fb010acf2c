package platecall.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import platecall.check.DayCheck;
import platecall.copies.CopyCounts;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.DayFile;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.plan.PlanFile;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

/** Plans a day and writes everything that stylist, kitchen and AD need. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Plan a day: how many, when, in what order, whose hands; audited, with all papers.",
        footer = {
            "",
            "Ctrl-C ends the search and writes the best plan so far.",
            "With --steps the same day, seed and threads give the same plan, byte for byte.",
            "Exit code: 0 all ready at call by the plan, 1 a rule is broken or something is late,",
            "2 bad input. How sure it is stands beside it; odds tells by its exit code."
        })
final class PlanCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Mixin
    private Planning planning;

    @Option(names = "--out", paramLabel = "DIR", description = "folder to write to (reports/<day> if not given)")
    private Path out;

    @Option(names = "--hold", paramLabel = "PLAN", description = "stay as close as can be to this plan of the same day")
    private Path hold;

    @Override
    public Integer call() throws UnwritableFolderException {
        planning.limits(spec);
        Path folder = out == null ? dayArgument.reports() : out;
        DayFile file = dayArgument.checked();
        Day day = file.day();
        Reports.mustBeWritable(folder);
        Optional<Plan> held =
                Optional.ofNullable(hold).map(plan -> PlanFile.readOfWholeDay(plan, DayFiles.digest(day)));
        Planning.Planned made;
        try (Planning.Ending ending = planning.watching(spec)) {
            made = planning.plan(spec, day, tasks(day), held, ending);
        }
        List<Trouble> remarks = DayCheck.remarksOnEaters(day);
        remarks.forEach(remark -> spec.commandLine().getOut().println("Remark: " + file.tell(remark)));
        ReadyTable.print(spec.commandLine().getOut(), day, made.plan());
        planning.tellUnplaced(spec, day, made);
        planning.tellHeldUp(spec, day, made);
        planning.tellOdds(spec, day, made);
        planning.write(
                spec,
                day,
                made,
                Optional.empty(),
                remarks,
                folder,
                day.facts().kitchenHours().get(0).start());
        return made.plan().verdict().sound() ? Main.FINE : Main.NOT_READY;
    }

    /** All tasks of a day, with as many copies as it asks for. */
    private static TaskNet tasks(Day day) {
        CopyCounts counts = CopyCounts.of(day);
        return Breakdown.of(day, dish -> Looks.of(day, dish), counts::copiesOf);
    }
}
