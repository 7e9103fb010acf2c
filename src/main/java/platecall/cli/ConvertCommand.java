package platecall.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.day.Day;
import platecall.intake.DayFiles;

/** Writes a day in another format. */
@Command(
        name = "convert",
        mixinStandardHelpOptions = true,
        description = "Write a day in another format; nothing is lost.",
        footer = {"", "CSV sheets are written in UTF-8 with commas, lines ended by LF."})
final class ConvertCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(
            index = "1",
            paramLabel = "OUT",
            description = "name ending in .xlsx or .json, or a folder for CSV sheets")
    private Path to;

    @Option(names = "--replace", description = "take the place of a day of the same format that is there already")
    private boolean replace;

    @Override
    public Integer call() {
        Day day = dayArgument.read().day();
        if (replace) {
            DayFiles.replace(day, to);
        } else {
            DayFiles.writeUnless(day, to, "--replace");
        }
        spec.commandLine().getOut().println("Wrote " + to);
        return Main.FINE;
    }
}
