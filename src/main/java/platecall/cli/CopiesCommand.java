package platecall.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import platecall.check.DayCheck;
import platecall.copies.CopyCount;
import platecall.copies.CopyCounts;
import platecall.day.Day;
import platecall.day.Setup;
import platecall.intake.DayFile;
import platecall.units.Money;

/** Tells how many copies of each need to make, and why. */
@Command(
        name = "copies",
        mixinStandardHelpOptions = true,
        description = "Tell how many copies of each need to make, with the chance of running out and the cost.",
        footer = {
            "",
            "Takes likely are the most common number, takes at worst are enough nine times out of ten.",
            "Expected cost: the copies made, and for those missing on average their crew, food and hands."
        })
final class CopiesCommand implements Callable<Integer> {

    private static final int MOST_NAME_WIDTH = 44;

    /** Choices printed on either side of the chosen one. */
    private static final int CHOICES_ASIDE = 4;

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Override
    public Integer call() {
        DayFile file = dayArgument.read();
        DayArgument.refuse(file, DayCheck.namesAndOrder(file.day()));
        CopyCounts counts = CopyCounts.of(file.day());
        DayArgument.refuse(file, counts.troubles());
        PrintWriter terminal = spec.commandLine().getOut();
        lines(file.day(), counts).forEach(terminal::println);
        return Main.FINE;
    }

    /** The choices of each need, then all needs in one table, then the day's money. */
    static List<String> lines(Day day, CopyCounts counts) {
        List<String> lines = new ArrayList<>();
        String currency = day.facts().currency();
        for (CopyCount count : counts.counts()) {
            lines.add(count.need().key() + ": make " + count.chosen());
            lines.addAll(Wrapped.lines("  ", "  ", takes(count.setup()) + " " + count.why()));
            lines.add(row("  ", "copies", "runs out", "crew waits", "food " + currency, "expected " + currency));
            choices(count)
                    .forEach(choice -> lines.add(row(
                            choice.copies() == count.chosen() ? " >" : "  ",
                            Integer.toString(choice.copies()),
                            choice)));
            lines.add("");
        }
        int width = counts.counts().stream()
                .mapToInt(count -> count.need().key().length())
                .filter(length -> length <= MOST_NAME_WIDTH)
                .max()
                .orElse(0);
        lines.add(row(padded("", width), "make", "runs out", "crew waits", "food " + currency, "expected " + currency));
        for (CopyCount count : counts.counts()) {
            String name = count.need().key();
            if (name.length() > width) {
                lines.add(name);
                name = "";
            }
            lines.add(row(padded(name, width), Integer.toString(count.chosen()), count.chosenRow()));
        }
        lines.add("");
        lines.add("Food costs " + currency + " " + counts.food()
                + counts.budget()
                        .map(budget -> " of a budget of " + currency + " " + budget + ", " + budget.minus(counts.food())
                                + " are left.")
                        .orElse("; the day has no food budget."));
        lines.add(counts.expectedCost()
                .map(cost -> "Expected cost of the day, with hands and waiting crew: " + currency + " " + cost + ".")
                .orElse("Without a crew cost in the day sheet, takes at worst decide."));
        return lines;
    }

    private static String takes(Setup setup) {
        return setup.takesLikely() == setup.takesWorst()
                ? setup.takesLikely() + (setup.takesLikely() == 1 ? " take" : " takes") + " for certain."
                : setup.takesLikely() + " takes likely, " + setup.takesWorst() + " at worst.";
    }

    /** Some choices on either side of the chosen one, a set of plates apart. */
    private static List<CopyCount.Row> choices(CopyCount count) {
        int apart = count.need().platesPerTake();
        return count.table().stream()
                .filter(row -> (row.copies() - count.chosen()) % apart == 0)
                .filter(row -> Math.abs(row.copies() - count.chosen()) <= CHOICES_ASIDE * apart)
                .toList();
    }

    private static String row(String name, String copies, CopyCount.Row row) {
        return row(
                name,
                copies,
                CopyCounts.percent(row.chanceOfRunningOut()),
                String.format(Locale.ROOT, "%.1f min", row.waitingMinutes()),
                row.food().toString(),
                row.expectedCost().map(Money::toString).orElse("-"));
    }

    private static String row(String name, String copies, String runsOut, String waits, String food, String cost) {
        return String.format(Locale.ROOT, "%s  %6s  %11s  %11s  %11s  %13s", name, copies, runsOut, waits, food, cost);
    }

    private static String padded(String name, int width) {
        return name + " ".repeat(width - name.length());
    }
}
