package platecall.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import platecall.intake.DaySchema;

/** Prints the JSON Schema of a day. */
@Command(
        name = "schema",
        mixinStandardHelpOptions = true,
        description = "Print the JSON Schema (draft 2020-12) of a day in JSON.")
final class SchemaCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        spec.commandLine().getOut().print(DaySchema.text());
        return Main.FINE;
    }
}
