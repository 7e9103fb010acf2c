package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.copies.CopyCounts;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.odds.Odds;
import platecall.plan.Plan;
import platecall.plan.PlanFile;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;
import platecall.solve.Planner;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;
import platecall.units.Moment;
import sun.misc.Signal;
import sun.misc.SignalHandler;

/** Plans a day and writes everything that stylist, kitchen and AD need. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Plan a day: how many, when, in what order, whose hands; audited, with all papers.",
        footer = {
            "",
            "Ctrl-C ends the search and writes the best plan so far.",
            "With --steps the same day and seed give the same plan, byte for byte.",
            "Exit code: 0 all ready at call, 1 a rule is broken, something is late or, with",
            "--promise, it isn't kept, 2 bad input."
        })
final class PlanCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Option(names = "--out", paramLabel = "DIR", description = "folder to write to (reports/<day> if not given)")
    private Path out;

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

    @Option(names = "--hold", paramLabel = "PLAN", description = "stay as close as can be to this plan of the same day")
    private Path hold;

    @Option(
            names = "--promise",
            description = "leave time to spare until every setup is ready at its call as often as the day promises")
    private boolean promise;

    @Override
    public Integer call() throws UnwritableFolderException {
        Planner.Limits limits = limits();
        Path folder = out == null ? dayArgument.reports() : out;
        Day day = dayArgument.checked().day();
        Reports.mustBeWritable(folder);
        String digest = DayFiles.digest(day);
        ZoneId zone = day.facts().zone();
        Optional<Plan> held = Optional.ofNullable(hold).map(plan -> PlanFile.read(plan, digest));
        CopyCounts counts = CopyCounts.of(day);
        TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), need -> counts.copiesOf(need));

        try (Ending ending = new Ending(spec.commandLine().getErr())) {
            // what would be told on the way is reckoned by what is aimed at, and that isn't the day itself
            Planner.Watcher watcher = promise ? ending.silent() : ending;
            BiFunction<TaskNet, Planner.Limits, Plan> planned =
                    (aim, part) -> Planner.plan(day, net, aim, digest, Version.number(), part, held, watcher)
                            .plan();
            Plan found = promise ? Promise.plan(day, net, limits, planned, ending::stop) : planned.apply(net, limits);
            Plan plan = found.withVerdict(Audit.of(day, found));
            Odds odds = Odds.of(day, plan, Odds.RUNS, seed);
            Map<String, byte[]> files = new LinkedHashMap<>();
            files.put("plan.json", PlanFile.bytes(plan, zone));
            files.putAll(Reports.of(day, plan, odds, printedAt(day)));
            Reports.write(files, folder);
            PrintWriter print = spec.commandLine().getOut();
            ReadyTable.print(print, day, plan);
            print.println(OddsTable.line(day, odds)
                    + (promise || !plan.verdict().sound() || OddsTable.keepsPromise(day, odds)
                            ? ""
                            : " Maybe plan with --promise."));
            print.println();
            print.printf(Locale.ROOT, "Written to %s: %s.%n", folder, String.join(", ", files.keySet()));
            boolean kept = !promise || OddsTable.keepsPromise(day, odds);
            return plan.verdict().sound() && kept ? Main.FINE : Main.NOT_READY;
        }
    }

    private Planner.Limits limits() {
        double most = seconds != null ? seconds : steps != null ? 600 : 10;
        if (!(most > 0) || steps != null && steps < 1 || threads < 1 || threads > 2) {
            throw new ParameterException(
                    spec.commandLine(), "--seconds and --steps must be above 0, --threads 1 or 2. Maybe --seconds 10.");
        }
        return new Planner.Limits(most, Optional.ofNullable(steps), seed, threads);
    }

    /** The minute on the papers: that of the clock, or the kitchen's first if the plan is to be the same every time. */
    private Moment printedAt(Day day) {
        return steps != null
                ? day.facts().kitchenHours().get(0).start()
                : Moment.of(java.time.ZonedDateTime.now(day.facts().zone()));
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
