package platecall.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Parameters;
import platecall.check.DayCheck;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.BadDay;
import platecall.intake.DayFile;
import platecall.intake.DayFiles;
import platecall.plan.BadPlan;
import platecall.plan.PlanFile;
import platecall.units.Moment;

/** The day that a command is about: its first word. */
final class DayArgument {

    @Parameters(index = "0", paramLabel = "DAY", description = "folder of CSV sheets, .xlsx or .json")
    private Path path;

    /** Name of the day's folder or file without its extension; {@code day} for the root folder, which has none. */
    String name() {
        Path name = path.toAbsolutePath().normalize().getFileName();
        return name == null ? "day" : name.toString().replaceFirst("(?i)\\.(xlsx|json)$", "");
    }

    /** Where a command writes to if it is not told where. */
    Path reports() {
        return Path.of("reports", name());
    }

    /** The day, if all of it can be read; if not, what else is wrong is told beside what can't be read. */
    DayFile read() {
        try {
            return DayFiles.read(path);
        } catch (BadDay bad) {
            throw bad.with(DayCheck::besideUnreadable);
        }
    }

    /** The day, if nothing is wrong with it. */
    DayFile checked() {
        return checked(DayCheck::troubles);
    }

    /** The day, if nothing is wrong with it that would matter to a plan of it: on a day under way not all could be planned anew. */
    DayFile checkedFor(Path plan) {
        Optional<Moment> now = asOf(plan);
        return checked(day -> now.map(at -> DayCheck.ofDayUnderWay(day, at)).orElseGet(() -> DayCheck.troubles(day)));
    }

    private static Optional<Moment> asOf(Path plan) {
        try {
            return PlanFile.read(plan).asOf();
        } catch (BadPlan toldLater) {
            return Optional.empty();
        }
    }

    /** The day, if nothing is wrong with it by these checks. */
    DayFile checked(Function<Day, List<Trouble>> checks) {
        DayFile file = read();
        refuse(file, checks.apply(file.day()));
        return file;
    }

    /** Tells all that is wrong with a day, if anything is. */
    static void refuse(DayFile file, List<Trouble> troubles) {
        if (!troubles.isEmpty()) {
            throw new BadDay(file, troubles);
        }
    }
}
