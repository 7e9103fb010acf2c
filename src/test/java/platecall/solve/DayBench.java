package platecall.solve;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import platecall.copies.CopyCounts;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

/**
 * Plans invented days, beside CP-SAT in the same run, and appends a row for each to a CSV file:
 * {@code DayBench CSV SECONDS SEEDS REFERENCE_SECONDS (SIZE:LOAD:SEED[:plain] | FOLDER)...}, the folder of a day; 0 reference seconds leave CP-SAT out. One
 * search thread; seconds are wall-clock seconds. CP-SAT has two workers, starts once from nothing and once from our best plan.
 */
public final class DayBench {

    private static final String HEADER =
            "date,version,machine,cores,instance,tasks,seed,seconds,missing,late points,off-peak points,kitchen points,"
                    + "hand points,points,own bound,moves a processor second,first plan seconds,reference cold,reference from ours,"
                    + "reference bound,ratio to best reference\n";

    /** CP-SAT finds no plan of larger days from nothing within a minute. */
    private static final int MOST_TASKS_COMPARED = 400;

    private DayBench() {}

    public static void main(String[] args) throws IOException {
        Path csv = Path.of(args[0]);
        double seconds = Double.parseDouble(args[1]);
        int seeds = Integer.parseInt(args[2]);
        double referenceSeconds = Double.parseDouble(args[3]);
        if (Files.notExists(csv)) {
            Files.createDirectories(csv.toAbsolutePath().getParent());
            Files.writeString(csv, HEADER, StandardCharsets.UTF_8);
        }
        for (int i = 4; i < args.length; i++) {
            instance(csv, args[i], seconds, seeds, referenceSeconds);
        }
    }

    private static Day day(String name) {
        if (name.contains("/")) {
            return DayFiles.read(Path.of(name)).day();
        }
        String[] parts = name.split(":");
        return DayGenerator.day(
                Integer.parseInt(parts[0]), Double.parseDouble(parts[1]), Long.parseLong(parts[2]), parts.length < 4);
    }

    private static void instance(Path csv, String name, double seconds, int seeds, double referenceSeconds)
            throws IOException {
        Day day = day(name);
        TaskNet net = day.needs().stream().allMatch(need -> need.copies().isPresent())
                ? DayGenerator.netOf(day)
                : Breakdown.of(day, dish -> Looks.of(day, dish), CopyCounts.of(day)::copiesOf);
        List<Planner.Found> all = new ArrayList<>();
        Planner.Found best = null;
        for (int seed = 1; seed <= seeds; seed++) {
            Planner.Found found = plan(day, net, seconds, seed);
            all.add(found);
            if (best == null || worth(found) < worth(best)) {
                best = found;
            }
        }
        boolean compared = referenceSeconds > 0 && !name.contains("/") && net.size() <= MOST_TASKS_COMPARED;
        CpSatReference.Answer cold = compared ? CpSatReference.solve(net, referenceSeconds, 2, null) : null;
        CpSatReference.Answer warm = compared ? CpSatReference.solve(net, referenceSeconds, 2, best.plan()) : null;
        for (int seed = 1; seed <= seeds; seed++) {
            row(csv, name, net, seed, seconds, all.get(seed - 1), cold, warm);
        }
    }

    private static long worth(Planner.Found found) {
        return found.brokenTotal() * Score.MISSING + found.points();
    }

    private static Planner.Found plan(Day day, TaskNet net, double seconds, long seed) {
        return Planner.plan(
                day,
                net,
                "",
                "",
                new Planner.Limits(seconds, Optional.empty(), seed, 1),
                Optional.empty(),
                Planner.Watcher.NONE);
    }

    private static void row(
            Path csv,
            String name,
            TaskNet net,
            int seed,
            double seconds,
            Planner.Found found,
            CpSatReference.Answer cold,
            CpSatReference.Answer warm)
            throws IOException {
        Plan.Points points = found.plan().points();
        long reference = Long.MAX_VALUE;
        for (CpSatReference.Answer answer : new CpSatReference.Answer[] {cold, warm}) {
            reference = answer != null && answer.found() ? Math.min(reference, answer.points()) : reference;
        }
        String line = String.format(
                Locale.ROOT,
                "%s,%s,%s,%d,%s,%d,%d,%.0f,%d,%d,%d,%d,%d,%d,%d,%.0f,%.3f,%s,%s,%s,%s%n",
                LocalDate.now(),
                version(),
                System.getProperty("os.arch"),
                Runtime.getRuntime().availableProcessors(),
                name,
                net.size(),
                seed,
                seconds,
                found.brokenTotal(),
                points.late(),
                points.offPeak(),
                points.kitchen(),
                points.handChanges(),
                found.points(),
                found.plan().bound().orElse(0L),
                found.moves() / Math.max(0.001, found.processorSeconds()),
                found.firstPlanSeconds(),
                told(cold),
                told(warm),
                cold == null ? "" : String.valueOf(Math.max(cold.bound(), warm.bound())),
                reference == Long.MAX_VALUE
                        ? ""
                        : String.format(Locale.ROOT, "%.3f", found.points() / (double) Math.max(1, reference)));
        System.out.print(line);
        Files.writeString(csv, line, StandardCharsets.UTF_8, StandardOpenOption.APPEND);
    }

    private static String told(CpSatReference.Answer answer) {
        return answer == null
                ? ""
                : !answer.found() ? "no plan" : answer.points() + (answer.optimal() ? " proved" : "");
    }

    private static String version() throws IOException {
        try (InputStream stream = DayBench.class.getResourceAsStream("/platecall/cli/version.properties")) {
            Properties properties = new Properties();
            properties.load(stream);
            return properties.getProperty("version");
        }
    }
}
