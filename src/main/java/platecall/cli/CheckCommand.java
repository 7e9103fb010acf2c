package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.check.DayCheck;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.BadDay;
import platecall.intake.DayFile;
import platecall.intake.DayFiles;

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

    @Parameters(paramLabel = "DAY", description = "folder of CSV sheets, .xlsx or .json")
    private Path path;

    @Override
    public Integer call() {
        DayFile file = checked(path);
        Day day = file.day();
        PrintWriter out = spec.commandLine().getOut();
        DayCheck.remarks(day).forEach(remark -> out.println("Remark: " + file.tell(remark)));
        out.println(day.facts().title() + ": nothing wrong found ("
                + count(day.setups(), "setup", "setups") + ", " + count(day.needs(), "need", "needs") + ", "
                + count(day.dishes(), "dish", "dishes") + ", " + count(day.steps(), "step", "steps") + ").");
        return Main.FINE;
    }

    /** A day with which nothing is wrong. */
    static DayFile checked(Path path) {
        DayFile file = read(path);
        List<Trouble> troubles = DayCheck.troubles(file.day());
        if (!troubles.isEmpty()) {
            throw new BadDay(file, troubles);
        }
        return file;
    }

    /** A day of which all could be read; if not, misspelt names are told beside what can't be read. */
    static DayFile read(Path path) {
        try {
            return DayFiles.read(path);
        } catch (BadDay bad) {
            throw bad.with(DayCheck::names);
        }
    }

    private static String count(List<?> rows, String one, String many) {
        return rows.size() + " " + (rows.size() == 1 ? one : many);
    }
}
