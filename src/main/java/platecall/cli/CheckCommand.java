package platecall.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import platecall.check.DayCheck;
import platecall.day.Day;
import platecall.intake.DayFile;

/** Says what is wrong with a day. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Read a day and say all that is wrong or can't work, without planning it.",
        footer = {
            "",
            "Remarks tell what can be planned but may not be meant. What the sheets don't say about allergens and diets",
            "can't be checked: who cooks must know what is in the food.",
            "Exit code: 0 nothing wrong, 2 something is."
        })
final class CheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Override
    public Integer call() {
        DayFile file = dayArgument.checked();
        Day day = file.day();
        PrintWriter out = spec.commandLine().getOut();
        Stream.concat(file.remarks().stream(), DayCheck.remarks(day).stream())
                .forEach(remark -> out.println("Remark: " + file.tell(remark)));
        out.println(day.facts().title() + ": nothing wrong found ("
                + count(day.setups(), "setup", "setups") + ", " + count(day.needs(), "need", "needs") + ", "
                + count(day.dishes(), "dish", "dishes") + ", " + count(day.steps(), "step", "steps") + ", "
                + count(day.ingredients(), "ingredient", "ingredients") + ", cast of "
                + day.cast().size() + ").");
        return Main.FINE;
    }

    private static String count(List<?> rows, String one, String many) {
        return rows.size() + " " + (rows.size() == 1 ? one : many);
    }
}
