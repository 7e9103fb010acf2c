package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.DayFiles;
import platecall.odds.Odds;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.PlanFile;
import platecall.report.Changes;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;
import platecall.solve.HeldUp;
import platecall.solve.Planner;
import platecall.solve.Unplaced;
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
            negatable = true,
            defaultValue = "true",
            fallbackValue = "true",
            description =
                    "with time to spare until every setup is ready at its call as often as the day promises (so unless negated)")
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

    /** A plan of some tasks and how sure it is. */
    record Planned(Plan plan, Odds odds, TaskNet net) {}

    /** Plans the tasks of a day, audits the plan and rehearses it. */
    Planned plan(CommandSpec spec, Day day, TaskNet net, Optional<Plan> held, Ending ending) {
        String digest = DayFiles.digest(day);
        Planner.Limits limits = limits(spec);
        Promise.Search search = (aim, part, from) -> {
            // a plan to begin with is nothing to stay close to
            boolean free = held.isEmpty() && from.isPresent();
            return Planner.plan(
                            day,
                            free ? net.withMovesFree() : net,
                            free ? aim.withMovesFree() : aim,
                            digest,
                            Version.number(),
                            part,
                            held.or(() -> from),
                            ending)
                    .plan();
        };
        Plan found = promise
                ? Promise.plan(day, net, limits, held, search, ending::tell, ending::stop)
                : search.plan(net, limits, Optional.empty());
        Plan plan = found.withSeed(seed).withVerdict(Audit.of(day, found));
        return new Planned(plan, Odds.of(day, plan, SurePeaks.of(day), Odds.RUNS, seed), net);
    }

    /** Shows how searches go until it is closed. */
    Ending watching(CommandSpec spec) {
        return new Ending(spec.commandLine().getErr());
    }

    /**
     * Writes a plan with all its papers.
     *
     * @param changes what changes for those who have another plan in their hands; empty if nobody has
     * @param remarks on what people eat
     * @param at the minute on the papers with {@code --steps}, so that they are the same every time; without, they carry the present one
     */
    void write(
            CommandSpec spec,
            Day day,
            Planned made,
            Optional<Changes> changes,
            List<Trouble> remarks,
            Path folder,
            Moment at)
            throws UnwritableFolderException {
        Changes none = Changes.none(day, made.plan());
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("plan.json", PlanFile.bytes(made.plan(), day.facts().zone()));
        changes.ifPresent(it -> files.put(Reports.CHANGES, it.csv()));
        files.putAll(Reports.of(
                day,
                made.plan(),
                made.odds(),
                changes.orElse(none),
                remarks.stream()
                        .map(remark -> (remark.sheet().equals("needs")
                                        ? "setup "
                                                + day.needs().get(remark.row()).setup() + ": "
                                        : "")
                                + remark.value() + " " + remark.what())
                        .toList(),
                steps != null ? at : Moment.of(ZonedDateTime.now(day.facts().zone()))));
        Reports.write(files, folder);
        PrintWriter print = spec.commandLine().getOut();
        print.println();
        print.printf(Locale.ROOT, "Written to %s: %s.%n", folder, String.join(", ", files.keySet()));
        if (changes.isEmpty() && Reports.removeChanges(folder, none.csv())) {
            print.println("Removed " + Reports.CHANGES + ", which was of another plan.");
        }
    }

    /** Tells why copies that aren't made have no place. */
    void tellUnplaced(CommandSpec spec, Day day, Planned made) {
        for (Unplaced none : Unplaced.of(day, made.net(), made.plan())) {
            String who = none.copies().size() > 1 ? "each" : "it";
            String why = none.alone()
                    .map(at -> who + " could be at camera by " + ReadyTable.dated(at, day) + ".")
                    .orElse(who + " would lack " + String.join(", or ", none.wanting()) + ".");
            spec.commandLine()
                    .getOut()
                    .println("Not made: " + String.join(", ", none.copies())
                            + ". If nothing else were still to be made, " + why);
        }
    }

    /** Tells what holds up copies that come late or are past their use. */
    void tellHeldUp(CommandSpec spec, Day day, Planned made) {
        for (HeldUp held : HeldUp.of(day, made.net(), made.plan())) {
            boolean late = made.plan().copies().stream()
                    .filter(copy -> copy.id().equals(held.copy()))
                    .anyMatch(copy -> copy.ready().orElseThrow().isAfter(copy.due()));
            String fine = late ? "in time" : "fresh enough";
            String by = late ? " min late" : " min past its use";
            Map<String, List<String>> given = new LinkedHashMap<>();
            held.lacking()
                    .forEach(lack -> given.computeIfAbsent(
                                    lack.late() > 0 ? lack.late() + by : fine, it -> new ArrayList<>())
                            .add(lack.what()));
            spec.commandLine()
                    .getOut()
                    .println("Held up: " + held.copy() + ", " + held.late() + by + ". All else as planned, it "
                            + (held.atBest() == 0
                                    ? "could be " + fine + ": a longer search may find that."
                                    : given.isEmpty()
                                            ? "would gain by no one thing more, nor by two."
                                            : given.entrySet().stream()
                                                    .map(with -> with.getKey() + " with more "
                                                            + String.join(", or more ", with.getValue()))
                                                    .collect(Collectors.joining("; ", "would be ", "."))));
        }
    }

    /** Tells how sure a plan is. */
    void tellOdds(CommandSpec spec, Day day, Planned made) {
        PrintWriter print = spec.commandLine().getOut();
        print.println(OddsTable.line(day, made.odds()));
        OddsTable.pastUse(day, made.plan()).ifPresent(print::println);
        if (!made.plan().verdict().unsettling().isEmpty()) {
            print.println("The plan breaks rules, so these chances mean little.");
        }
    }

    /** Shows how searches go on a terminal, and turns the first Ctrl-C into an early end of all; a second one ends the program. */
    static final class Ending implements Planner.Watcher, AutoCloseable {

        private final PrintWriter err;
        private final boolean terminal = System.console() != null;
        private final Signal interrupt = new Signal("INT");
        private final SignalHandler before;
        private final long started = System.nanoTime();
        private volatile boolean interrupted;
        /** What the best plan of the searches that have ended comes to; blank before. */
        private volatile String best = "";

        Ending(PrintWriter err) {
            this.err = err;
            // not a shutdown hook: fonts and pictures can't be loaded any more while the machine shuts down
            before = Signal.handle(interrupt, signal -> end());
        }

        private void end() {
            interrupted = true;
            Signal.handle(interrupt, SignalHandler.SIG_DFL);
        }

        /** From now on tells what this plan comes to: a search for time to spare reckons by what it aims at, not by the day. */
        void tell(Plan plan) {
            best = ofBest(
                    plan.copies().stream().filter(copy -> !copy.made()).count(),
                    plan.copies().stream().mapToInt(PlannedCopy::lateMinutes).sum(),
                    plan.copies().stream().mapToInt(PlannedCopy::offPeakMinutes).sum(),
                    ", adding time to spare");
        }

        private static String ofBest(long missing, int late, int offPeak, String more) {
            return (missing > 0 ? missing + " without a place, " : "") + late + " late min, " + offPeak
                    + " off-peak min" + more;
        }

        @Override
        public void progress(Planner.Progress progress) {
            if (terminal) {
                String soFar = best.isEmpty()
                        ? ofBest(
                                progress.missing(),
                                progress.lateMinutes(),
                                progress.offPeakMinutes(),
                                ", kitchen call " + progress.kitchenCall())
                        : best;
                err.printf(Locale.ROOT, "\r%5.1f s   best so far: %s   ", (System.nanoTime() - started) / 1e9, soFar);
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
