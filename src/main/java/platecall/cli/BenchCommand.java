package platecall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.bench.BadFileException;
import platecall.bench.BenchRow;
import platecall.bench.BenchTable;
import platecall.bench.Benchmark;
import platecall.units.WholeFiles;

/** Solves a folder of published scheduling files and prints the result beside the best known. */
@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        description =
                "Solve published scheduling files (.sm projects, .jss job shops) for makespan, beside the best known.",
        footer = {
            "",
            "Each file is searched by one thread; seconds are CPU time of that thread. Every schedule is checked.",
            "With --schedules alone, the same seed gives the same result.",
            "Best known makespans come from best-known.csv beside the files (columns file, best_known_makespan).",
            "Exit code: 0 done, 2 bad file or option, or a file that cannot be written."
        })
public final class BenchCommand implements Callable<Integer> {

    private static final double DEFAULT_SECONDS = 5;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "folder with .sm or .jss files, searched with all below it")
    private Path folder;

    @Option(names = "--seconds", paramLabel = "N", description = "CPU seconds a file (5 if no limit is given)")
    private Double seconds;

    @Option(names = "--schedules", paramLabel = "N", description = "most schedules built for a file")
    private Long schedules;

    @Option(
            names = "--threads",
            paramLabel = "N",
            defaultValue = "1",
            description = "files at a time (${DEFAULT-VALUE})")
    private int threads;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "random seed (${DEFAULT-VALUE})")
    private long seed;

    @Option(names = "--csv", paramLabel = "FILE", description = "also write a row a file as comma-separated values")
    private Path csv;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        try {
            Benchmark.Limits limits = limits();
            if (csv != null && !Files.isDirectory(csv.toAbsolutePath().getParent())) {
                throw new IllegalArgumentException(csv + ": there is no such folder. Maybe make it first.");
            }
            List<BenchRow> printed = new ArrayList<>();
            List<BenchRow> rows = Benchmark.run(folder, limits, row -> {
                if (printed.isEmpty()) {
                    out.println(BenchTable.head());
                }
                printed.add(row);
                out.println(BenchTable.line(row));
                out.flush();
            });
            out.println();
            BenchTable.averages(rows).forEach(out::println);
            out.println("One search thread a file; seconds are CPU time of that thread.");
            out.flush();
            if (csv != null) {
                WholeFiles.write(Map.of(csv, BenchTable.csv(rows, limits).getBytes(StandardCharsets.UTF_8)));
            }
            return 0;
        } catch (BadFileException | IllegalArgumentException e) {
            err.println(e.getMessage());
            return 2;
        } catch (IOException e) {
            err.println(csv + ": cannot be written (" + e.getMessage() + ")");
            return 2;
        }
    }

    private Benchmark.Limits limits() {
        double cpuSeconds = seconds != null ? seconds : schedules != null ? Double.POSITIVE_INFINITY : DEFAULT_SECONDS;
        return new Benchmark.Limits(cpuSeconds, schedules != null ? schedules : Long.MAX_VALUE, threads, seed);
    }
}
