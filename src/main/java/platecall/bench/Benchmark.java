package platecall.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** The road of the benchmark: find files, read them, solve each, check each schedule, stand it beside the best known. */
public final class Benchmark {

    /**
     * How far each file is searched.
     *
     * @param cpuSeconds CPU time of the one thread that searches a file; infinity for no limit
     * @param schedules most schedules built for a file; {@link Long#MAX_VALUE} for no limit
     * @param threads how many files are searched at the same time
     * @param seed start of the random numbers; each file starts from the same
     */
    public record Limits(double cpuSeconds, long schedules, int threads, long seed) {

        /** @throws IllegalArgumentException if a limit is not positive, or there is none */
        public Limits {
            if (!(cpuSeconds > 0) || schedules < 1 || threads < 1) {
                throw new IllegalArgumentException("seconds, schedules and threads must be above 0");
            }
            if (cpuSeconds == Double.POSITIVE_INFINITY && schedules == Long.MAX_VALUE) {
                throw new IllegalArgumentException("a limit of seconds or of schedules is needed");
            }
        }
    }

    /** A project and what is known of it. */
    private record Case(String folder, Project project, OptionalInt bestKnown) {}

    private Benchmark() {}

    /**
     * Solves every {@code .sm} and {@code .jss} file in the folder and below, in order of folder and name.
     *
     * @param each told of each file's row, in that order, as soon as it is there
     * @throws BadFileException if a file cannot be read, or there is none; it says everything that is wrong, and
     *     nothing has been solved
     * @throws IllegalStateException if a schedule breaks a rule of its project
     */
    public static List<BenchRow> run(Path folder, Limits limits, Consumer<BenchRow> each)
            throws BadFileException, InterruptedException {
        List<Case> cases = read(files(folder));
        ExecutorService searchers = Executors.newFixedThreadPool(limits.threads);
        try {
            List<Future<BenchRow>> pending = new ArrayList<>();
            for (Case one : cases) {
                Callable<BenchRow> task = () -> solve(one, limits);
                pending.add(searchers.submit(task));
            }
            List<BenchRow> rows = new ArrayList<>();
            for (Future<BenchRow> row : pending) {
                rows.add(row.get());
                each.accept(row.get());
            }
            return rows;
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause().getMessage(), e.getCause());
        } finally {
            searchers.shutdownNow();
        }
    }

    private static List<Path> files(Path folder) throws BadFileException {
        if (!Files.isDirectory(folder)) {
            throw new BadFileException(folder, "is not a folder");
        }
        try (Stream<Path> found = Files.walk(folder)) {
            List<Path> files = found.filter(file -> isProject(file) || isJobShop(file))
                    .filter(Files::isRegularFile)
                    .sorted()
                    .toList();
            if (files.isEmpty()) {
                throw new BadFileException(folder, "has no .sm or .jss file");
            }
            return files;
        } catch (IOException e) {
            throw new BadFileException(folder, "cannot be searched (" + e.getMessage() + ")");
        }
    }

    private static List<Case> read(List<Path> files) throws BadFileException {
        List<Case> cases = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        Map<Path, BestKnown> sheets = new HashMap<>();
        for (Path file : files) {
            Path folder = file.toAbsolutePath().normalize().getParent();
            try {
                if (!sheets.containsKey(folder)) {
                    sheets.put(folder, BestKnown.NONE);
                    sheets.put(folder, BestKnown.of(folder));
                }
            } catch (BadFileException e) {
                problems.add(e.getMessage());
            }
            try {
                Project project = isProject(file) ? ProjectFile.read(file) : JobShopFile.read(file);
                String name =
                        folder.getFileName() == null ? "" : folder.getFileName().toString();
                BestKnown known = sheets.get(folder);
                known.impossible(project).ifPresent(problems::add);
                cases.add(new Case(name, project, known.makespan(project.name)));
            } catch (BadFileException e) {
                problems.add(e.getMessage());
            }
        }
        if (!problems.isEmpty()) {
            throw new BadFileException(problems);
        }
        return cases;
    }

    private static boolean isProject(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".sm");
    }

    private static boolean isJobShop(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".jss");
    }

    private static BenchRow solve(Case one, Limits limits) {
        Budget budget = new Budget(limits.cpuSeconds, limits.schedules);
        ProjectSchedule schedule = MakespanSearch.solve(one.project, budget, limits.seed);
        List<String> broken = ScheduleChecker.broken(one.project, schedule.starts(), schedule.makespan());
        if (!broken.isEmpty()) {
            throw new IllegalStateException(
                    "the schedule found for " + one.project.name + " is not sound: " + String.join("; ", broken));
        }
        return new BenchRow(
                one.folder,
                one.project.name,
                one.project.tasks,
                schedule.makespan(),
                one.bestKnown,
                one.project.criticalPath,
                schedule.lowerBound(),
                schedule.schedules(),
                schedule.cpuSeconds());
    }
}
