package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.odds.Odds;
import platecall.plan.Plan;
import platecall.plan.PlanFile;

/** Tells how sure a plan is. */
@Command(
        name = "odds",
        mixinStandardHelpOptions = true,
        description = "Tell how likely each setup is to be ready at its call, by rehearsing the plan many times.",
        footer = {
            "",
            "Steps take minutes between their low and their high ones as they fall.",
            "Everybody keeps the plan's order; nothing begins before its planned minute.",
            "Calls stay where they are; food that waits always has room.",
            "Exit code: 0 every setup keeps the day's promise, 1 one doesn't, shows what is",
            "past its use, or the plan breaks a rule, 2 bad input or a plan of another day."
        })
final class OddsCommand implements Callable<Integer> {

    private static final int MOST_RUNS = 1_000_000;

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json of that day")
    private Path planPath;

    @Option(
            names = "--runs",
            paramLabel = "N",
            defaultValue = "" + Odds.RUNS,
            description = "rehearsals (${DEFAULT-VALUE})")
    private int runs;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "random seed (${DEFAULT-VALUE})")
    private long seed;

    @Override
    public Integer call() {
        if (runs < 1 || runs > MOST_RUNS) {
            throw new ParameterException(
                    spec.commandLine(), "--runs must be from 1 to " + MOST_RUNS + ". Maybe --runs " + Odds.RUNS + ".");
        }
        Day day = dayArgument.checkedFor(planPath).day();
        Plan plan = PlanFile.read(planPath, DayFiles.digest(day));
        Odds odds = Odds.of(day, plan, SurePeaks.of(day), runs, seed);
        PrintWriter out = spec.commandLine().getOut();
        OddsTable.print(out, day, plan, odds);
        Optional<String> pastUse = OddsTable.pastUse(day, plan);
        pastUse.ifPresent(out::println);
        int broken = Audit.of(day, plan).unsettling().size();
        if (broken > 0) {
            out.println("The plan breaks rules: " + broken + ". So these chances mean little. Maybe run audit on it.");
        }
        return broken == 0 && pastUse.isEmpty() && OddsTable.keepsPromise(day, odds) ? Main.FINE : Main.NOT_READY;
    }
}
