package platecall.bench;

import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Prints benchmark rows: a line a file, averages a folder, and the same rows as comma-separated values. */
public final class BenchTable {

    private BenchTable() {}

    /** Heads of the columns of {@link #line}. */
    public static String head() {
        return String.format(
                Locale.ROOT,
                "%-16s %6s %9s %11s %7s %13s %12s %8s %s",
                "file",
                "tasks",
                "makespan",
                "best known",
                "gap %",
                "above path %",
                "schedules/s",
                "CPU s",
                "bound");
    }

    public static String line(BenchRow row) {
        return String.format(
                Locale.ROOT,
                "%-16s %6d %9d %11s %7s %13.2f %12.0f %8.2f %s",
                row.file(),
                row.tasks(),
                row.makespan(),
                row.bestKnown().isPresent() ? String.valueOf(row.bestKnown().getAsInt()) : "-",
                gap(row, "-"),
                row.aboveCriticalPathPercent(),
                row.schedulesPerSecond(),
                row.cpuSeconds(),
                row.proved() ? "proved" : "at least " + row.lowerBound());
    }

    /** A line a folder: how many files, and averages over them; the gap counts only files with a best known makespan. */
    public static List<String> averages(List<BenchRow> rows) {
        return rows.stream()
                .collect(Collectors.groupingBy(BenchRow::folder, TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(entry -> average(entry.getKey(), entry.getValue()))
                .toList();
    }

    private static String average(String folder, List<BenchRow> rows) {
        List<BenchRow> known =
                rows.stream().filter(row -> row.bestKnown().isPresent()).toList();
        return String.format(
                Locale.ROOT,
                "%s: %d files, %s, %.2f %% above critical path, %d proved, %.0f schedules/s, %.1f CPU s",
                folder,
                rows.size(),
                known.isEmpty() ? "no best known" : aboveBestKnown(known),
                rows.stream()
                        .mapToDouble(BenchRow::aboveCriticalPathPercent)
                        .average()
                        .orElseThrow(),
                rows.stream().filter(BenchRow::proved).count(),
                rows.stream().mapToLong(BenchRow::schedules).sum()
                        / rows.stream().mapToDouble(BenchRow::cpuSeconds).sum(),
                rows.stream().mapToDouble(BenchRow::cpuSeconds).sum());
    }

    private static String aboveBestKnown(List<BenchRow> known) {
        return String.format(
                Locale.ROOT,
                "%.3f %% above best known (%d of %d reach it)",
                known.stream()
                        .mapToDouble(row -> row.gapPercent().orElseThrow())
                        .average()
                        .orElseThrow(),
                known.stream()
                        .filter(row -> row.makespan() <= row.bestKnown().getAsInt())
                        .count(),
                known.size());
    }

    /** A header and a line a row; an unknown best makespan and its gap stay empty. */
    public static String csv(List<BenchRow> rows, Benchmark.Limits limits) {
        StringBuilder csv = new StringBuilder("folder,file,tasks,seed,makespan,best_known,gap_percent,critical_path,"
                + "above_critical_path_percent,lower_bound,proved,schedules,schedules_per_second,cpu_seconds\n");
        for (BenchRow row : rows) {
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%s,%d,%d,%d,%s,%s,%d,%.3f,%d,%b,%d,%.0f,%.3f\n",
                    quoted(row.folder()),
                    quoted(row.file()),
                    row.tasks(),
                    limits.seed(),
                    row.makespan(),
                    row.bestKnown().isPresent() ? row.bestKnown().getAsInt() : "",
                    gap(row, ""),
                    row.criticalPath(),
                    row.aboveCriticalPathPercent(),
                    row.lowerBound(),
                    row.proved(),
                    row.schedules(),
                    row.schedulesPerSecond(),
                    row.cpuSeconds()));
        }
        return csv.toString();
    }

    private static String gap(BenchRow row, String unknown) {
        return row.gapPercent().isPresent()
                ? String.format(Locale.ROOT, "%.2f", row.gapPercent().getAsDouble())
                : unknown;
    }

    private static String quoted(String text) {
        return text.matches("[\\w.-]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
