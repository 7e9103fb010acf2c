package platecall.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.day.Day;
import platecall.intake.DayFiles;

/** Says what is wrong with a day. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Read a day and say all that is wrong or can't work, without planning it.")
final class CheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "DAY", description = "folder of CSV sheets, .xlsx or .json")
    private Path path;

    @Override
    public Integer call() {
        Day day = DayFiles.read(path).day();
        spec.commandLine()
                .getOut()
                .println(day.facts().title() + ": nothing wrong found ("
                        + day.setups().size() + " setups, "
                        + day.needs().size() + " needs, " + day.dishes().size() + " dishes, "
                        + day.steps().size() + " steps).");
        return Main.FINE;
    }
}
