package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.odds.Odds;
import platecall.plan.Plan;
import platecall.plan.PlanFile;
import platecall.report.Changes;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;
import platecall.solve.Planner;
import platecall.tasks.TaskNet;
import platecall.units.Moment;
import sun.misc.Signal;
import sun.misc.SignalHandler;

/** How long and how to search, and the way from a day's tasks to its papers. */
final class Planning {

    @Option(
            names = "--seconds",
            paramLabel = "N",
            description = "search at most so many seconds (10, or 600 with --steps)")
    private Double seconds;

    @Option(names = "--steps", paramLabel = "N", description = "search at most so many moves on each thread")
    private Long steps;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "random seed (${DEFAULT-VALUE})")
    private long seed;

    @Option(
            names = "--threads",
            paramLabel = "1|2",
            defaultValue = "2",
            description = "searches side by side (${DEFAULT-VALUE})")
    private int threads;

    @Option(
            names = "--promise",
            description = "leave time to spare until every setup is ready at its call as often as the day promises")
    private boolean promise;

    /** Throws if what is asked for can't be. */
    Planner.Limits limits(CommandSpec spec) {
        double most = seconds != null ? seconds : steps != null ? 600 : 10;
        if (!(most > 0) || steps != null && steps < 1 || threads < 1 || threads > 2) {
            throw new ParameterException(
                    spec.commandLine(), "--seconds and --steps must be above 0, --threads 1 or 2. Maybe --seconds 10.");
        }
        return new Planner.Limits(most, Optional.ofNullable(steps), seed, threads);
    }

    /** A plan and how sure it is. */
    record Planned(Plan plan, Odds odds) {}

    /** Plans the tasks of a day, audits the plan and rehearses it. */
    Planned plan(CommandSpec spec, Day day, TaskNet net, Optional<Plan> held) {
        String digest = DayFiles.digest(day);
        Planner.Limits limits = limits(spec);
        try (Ending ending = new Ending(spec.commandLine().getErr())) {
            // what would be told on the way is reckoned by what is aimed at, and that isn't the day itself
            Planner.Watcher watcher = promise ? ending.silent() : ending;
            BiFunction<TaskNet, Planner.Limits, Plan> planned =
                    (aim, part) -> Planner.plan(day, net, aim, digest, Version.number(), part, held, watcher)
                            .plan();
            Plan found = promise ? Promise.plan(day, net, limits, planned, ending::stop) : planned.apply(net, limits);
            Plan plan = found.withVerdict(Audit.of(day, found));
            return new Planned(plan, Odds.of(day, plan, Odds.RUNS, seed));
        }
    }

    /**
     * Writes a plan with all its papers.
     *
     * @param changes what changes for those who have another plan in their hands; empty if nobody has
     * @param at the minute on the papers; with {@code --steps}, so that they are the same every time, another
     */
    void write(CommandSpec spec, Day day, Planned made, Optional<Changes> changes, Path folder, Moment at)
            throws UnwritableFolderException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("plan.json", PlanFile.bytes(made.plan(), day.facts().zone()));
        changes.ifPresent(it -> files.put("changes.csv", it.csv()));
        files.putAll(Reports.of(
                day,
                made.plan(),
                made.odds(),
                changes.orElseGet(() -> Changes.none(day, made.plan())),
                steps != null ? at : Moment.of(ZonedDateTime.now(day.facts().zone()))));
        Reports.write(files, folder);
        PrintWriter print = spec.commandLine().getOut();
        print.println();
        print.printf(Locale.ROOT, "Written to %s: %s.%n", folder, String.join(", ", files.keySet()));
    }

    /** Tells how sure a plan is; returns whether it is sure enough, or needn't be. */
    boolean tellOdds(CommandSpec spec, Day day, Planned made) {
        boolean kept = OddsTable.keepsPromise(day, made.odds());
        boolean maybe = !promise && !kept && made.plan().verdict().sound();
        spec.commandLine()
                .getOut()
                .println(OddsTable.line(day, made.odds()) + (maybe ? " Maybe plan with --promise." : ""));
        return kept || !promise;
    }

    /** Shows how the search goes on a terminal, and turns the first Ctrl-C into an early end; a second one ends all. */
    private static final class Ending implements Planner.Watcher, AutoCloseable {

        private final PrintWriter err;
        private final boolean terminal = System.console() != null;
        private final Signal interrupt = new Signal("INT");
        private final SignalHandler before;
        private volatile boolean interrupted;

        Ending(PrintWriter err) {
            this.err = err;
            // not a shutdown hook: fonts and pictures can't be loaded any more while the machine shuts down
            before = Signal.handle(interrupt, signal -> end());
        }

        /** Ends as this does, without a word before. */
        Planner.Watcher silent() {
            return new Planner.Watcher() {
                @Override
                public void progress(Planner.Progress progress) {}

                @Override
                public boolean stop() {
                    return interrupted;
                }
            };
        }

        private void end() {
            interrupted = true;
            Signal.handle(interrupt, SignalHandler.SIG_DFL);
        }

        @Override
        public void progress(Planner.Progress progress) {
            if (terminal) {
                err.printf(
                        Locale.ROOT,
                        "\r%5.1f s   best so far: %s%d late min, %d off-peak min, kitchen call %s   ",
                        progress.seconds(),
                        progress.missing() > 0 ? progress.missing() + " without a place, " : "",
                        progress.lateMinutes(),
                        progress.offPeakMinutes(),
                        progress.kitchenCall());
                err.flush();
            }
        }

        @Override
        public boolean stop() {
            return interrupted;
        }

        @Override
        public void close() {
            if (terminal) {
                err.print("\r\033[K");
                err.flush();
            }
            if (!interrupted) {
                Signal.handle(interrupt, before);
            }
        }
    }
}
