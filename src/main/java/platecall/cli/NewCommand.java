package platecall.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.day.Look;
import platecall.intake.ColumnGuide;
import platecall.intake.ExampleDay;
import platecall.looks.Looks;
import platecall.looks.Property;
import platecall.safety.Profile;

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
        Path guide = ExampleDay.write(where, looks(), Profile.mainNames());
        spec.commandLine().getOut().println("Wrote a day to start from: " + where);
        spec.commandLine().getOut().println("What its columns mean: " + guide);
        spec.commandLine().getOut().println("Once it is yours: check " + where + ", then plan " + where + ".");
        return Main.FINE;
    }

    /** Every property of every kind of look. */
    static List<ColumnGuide.LookTerm> looks() {
        return Stream.of(Look.Kind.values())
                .flatMap(kind -> Looks.properties(kind).stream().map(property -> term(kind, property)))
                .toList();
    }

    private static ColumnGuide.LookTerm term(Look.Kind kind, Property property) {
        String in = property instanceof Property.Quantity quantity
                ? quantity.unit().isEmpty() ? "" : " (" + quantity.unit() + ")"
                : ": " + String.join(", ", ((Property.Word) property).words());
        return new ColumnGuide.LookTerm(
                kind.word(),
                property.name(),
                property.meaning() + in,
                property.required() ? "" : property.byDefault().orElse("worked out"));
    }
}
