package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.intake.DayFile;
import platecall.looks.LookLife;
import platecall.looks.Looks;
import platecall.looks.SetLight;
import platecall.report.LooksChart;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;

/** Tells how long the dishes of a day look right, and draws it. */
@Command(
        name = "looks",
        mixinStandardHelpOptions = true,
        description = "Tell how long each dish looks right after plate-up and why, and draw it.",
        footer = {
            "",
            "Minutes count from plate-up. A computed minute is a start: test the dish under the lights of the day.",
            "Looks say nothing about safety: whether food may still be eaten is another clock."
        })
final class LooksCommand implements Callable<Integer> {

    private static final int LEAST_NAME_WIDTH = 4;

    private static final double TUNGSTEN_KELVIN = 3200;

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Option(names = "--out", paramLabel = "DIR", description = "folder to write to (reports/<day> if not given)")
    private Path out;

    @Override
    public Integer call() {
        DayFile file = dayArgument.read();
        Day day = file.day();
        DayArgument.refuse(file, Looks.problems(day));
        Map<String, LookLife> lives = Looks.of(day);
        PrintWriter terminal = spec.commandLine().getOut();
        table(day, lives).forEach(terminal::println);
        return lives.isEmpty() ? Main.FINE : draw(day, lives);
    }

    private int draw(Day day, Map<String, LookLife> lives) {
        List<LooksChart.Strip> strips = day.dishes().stream()
                .map(dish ->
                        new LooksChart.Strip(dish.name(), dish.look().kind().word(), lives.get(dish.id())))
                .toList();
        byte[] png = LooksChart.png("Looks: " + day.facts().title(), strips);
        Path folder = out == null ? dayArgument.reports() : out;
        try {
            Reports.write(Map.of("looks.png", png), folder)
                    .forEach(written -> spec.commandLine().getOut().println("Wrote " + written));
            return Main.FINE;
        } catch (UnwritableFolderException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return Main.BAD_INPUT;
        }
    }

    /** A line a dish, then why, then what to mind. */
    static List<String> table(Day day, Map<String, LookLife> lives) {
        int width = day.dishes().stream().mapToInt(dish -> dish.name().length()).reduce(LEAST_NAME_WIDTH, Math::max);
        List<String> lines = new ArrayList<>();
        lines.add(row(width, "dish", "look", "peak min", "usable min", "+/- min"));
        for (Dish dish : day.dishes()) {
            LookLife life = lives.get(dish.id());
            lines.add(row(
                    width,
                    dish.name(),
                    dish.look().kind().word(),
                    life.lasts() ? "always" : life.peakFromMinutes() + "-" + life.peakToMinutes(),
                    life.lasts() ? "always" : "to " + life.usableToMinutes(),
                    Integer.toString(life.bandMinutes())));
            lines.add("  " + life.reasoning());
            life.warning().ifPresent(warning -> lines.add("  Mind: " + warning));
        }
        lines.add(light(day.facts().lightWattsPerSquareMetre()));
        return lines;
    }

    /** So that a light meter can tell whether the day sheet is right. */
    private static String light(double wattsPerSquareMetre) {
        return String.format(
                Locale.ROOT,
                "Reckoned with light of %.0f W/m2 on the plate; of tungsten light (3200 K) that is about %,d lux.",
                wattsPerSquareMetre,
                100 * Math.round(SetLight.lux(wattsPerSquareMetre, TUNGSTEN_KELVIN) / 100));
    }

    private static String row(int width, String dish, String look, String peak, String usable, String band) {
        return String.format(Locale.ROOT, "%-" + width + "s  %-12s  %9s  %10s  %7s", dish, look, peak, usable, band);
    }
}
