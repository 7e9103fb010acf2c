package platecall.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.intake.ExampleDay;

/** Writes a day to start from. */
@Command(
        name = "new",
        mixinStandardHelpOptions = true,
        description = "Write a small, filled-in day to start from, and a page that explains its columns.",
        footer = {"", "Nothing that is there already is overwritten."})
final class NewCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "DIR", description = "new folder for the sheets (or a new file ending in .xlsx or .json)")
    private Path where;

    @Override
    public Integer call() {
        Path guide = ExampleDay.write(where);
        spec.commandLine().getOut().println("Wrote a day to start from: " + where);
        spec.commandLine().getOut().println("What its columns mean: " + guide);
        return Main.FINE;
    }
}
