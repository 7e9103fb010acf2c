package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.copies.CopyCounts;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.PlanFile;
import platecall.solve.Planner;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

/** Tells what one more of each thing would buy, by trying it. */
@Command(
        name = "whatif",
        mixinStandardHelpOptions = true,
        description =
                "Tell what one more burner, oven, pair of hands, or ten minutes on a call would buy, by trying each.",
        footer = {
            "",
            "The day is searched as it is, from PLAN on, then with each in turn as long again, from there on;",
            "so is the day as it is, with four seeds, to tell what may be luck. The best of its plans counts",
            "for each of the others too where it holds there.",
            "Exit code: 0 done, 2 bad input or a plan of another day."
        })
final class WhatIfCommand implements Callable<Integer> {

    private static final String AS_IT_IS = "the day as it is";
    private static final int LEAST_WIDTH = 58;
    /** Searches of one day with other seeds differ by about one part in so many even where all is in time. */
    private static final int LUCK = 50;

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json of that day")
    private Path planPath;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            description = "search at most so many seconds for each (5, or 600 with --steps)")
    private Double seconds;

    @Option(names = "--steps", paramLabel = "N", description = "search at most so many moves for each")
    private Long steps;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "random seed (${DEFAULT-VALUE})")
    private long seed;

    /** Searches of the day as it is, each with its own seed: how far they lie apart tells what luck does. */
    private static final int AS_IT_IS_TRIES = 4;

    /** What a plan with one thing more comes to. */
    private record Tried(String what, long missing, long late, long offPeak, long points) {}

    private static final Comparator<Tried> BEST_FIRST =
            Comparator.comparingLong(Tried::missing).thenComparingLong(Tried::points);

    @Override
    public Integer call() {
        double most = seconds != null ? seconds : steps != null ? 600 : 5;
        if (!(most > 0) || steps != null && steps < 1) {
            throw new ParameterException(
                    spec.commandLine(), "--seconds and --steps must be above 0. Maybe --seconds 5.");
        }
        Day day = dayArgument.checked().day();
        Plan plan = PlanFile.readOfWholeDay(planPath, DayFiles.digest(day));
        Planner.Limits limits = new Planner.Limits(most, Optional.ofNullable(steps), seed, 1);
        Map<String, Integer> counts = new HashMap<>();
        CopyCounts.of(day).counts().forEach(count -> counts.put(count.need().key(), count.chosen()));

        // what can still be made better as it is must not be taken for what one more of something buys
        Plan better = searched(day, counts, plan, limits);
        List<Callable<Plan>> ofTheDay = new ArrayList<>();
        for (int other = 0; other < AS_IT_IS_TRIES; other++) {
            Planner.Limits again = new Planner.Limits(most, Optional.ofNullable(steps), seed + other, 1);
            ofTheDay.add(() -> searched(day, counts, better, again));
        }
        List<Plan> asItIs = Planner.sideBySide(ofTheDay, 2).stream()
                .sorted(Comparator.comparing(found -> tried(AS_IT_IS, found), BEST_FIRST))
                .toList();
        List<Callable<Tried>> withMore = new ArrayList<>();
        for (OneMore more : OneMore.of(day)) {
            withMore.add(() -> Stream.of(
                            searched(more.day(), counts, better, limits),
                            carriedOver(more.day(), counts, asItIs.get(0), limits))
                    .map(found -> tried(more.what(), found))
                    .min(BEST_FIRST)
                    .orElseThrow());
        }
        print(
                spec.commandLine().getOut(),
                tried(AS_IT_IS, better),
                asItIs.stream().map(found -> tried(AS_IT_IS, found)).toList(),
                Planner.sideBySide(withMore, 2));
        return Main.FINE;
    }

    private static Plan searched(Day day, Map<String, Integer> counts, Plan from, Planner.Limits limits) {
        return planned(day, counts, from, limits, Planner.Watcher.NONE);
    }

    /** A plan as it is, as far as it holds on another day: a search that ends where it begins. */
    private static Plan carriedOver(Day day, Map<String, Integer> counts, Plan plan, Planner.Limits limits) {
        return planned(day, counts, plan, limits, new Planner.Watcher() {
            @Override
            public void progress(Planner.Progress progress) {}

            @Override
            public boolean stop() {
                return true;
            }
        });
    }

    private static Plan planned(
            Day day, Map<String, Integer> counts, Plan from, Planner.Limits limits, Planner.Watcher watcher) {
        // the plan is where to begin, not what to stay close to
        TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), need -> counts.get(need.key()))
                .withMovesFree();
        return Planner.plan(day, net, "", "", limits, Optional.of(from), watcher)
                .plan();
    }

    private static Tried tried(String what, Plan plan) {
        return new Tried(
                what,
                plan.copies().stream().filter(copy -> !copy.made()).count(),
                plan.copies().stream().mapToLong(PlannedCopy::lateMinutes).sum(),
                plan.copies().stream().mapToLong(PlannedCopy::offPeakMinutes).sum(),
                plan.points().total());
    }

    /**
     * Prints the table, best first.
     *
     * @param before the plan from which each search began
     * @param ofTheDay searches of the day as it is, best first
     */
    private static void print(PrintWriter out, Tried before, List<Tried> ofTheDay, List<Tried> withMore) {
        Tried asItIs = ofTheDay.get(0);
        List<Tried> all = Stream.concat(Stream.of(asItIs), withMore.stream())
                .sorted(BEST_FIRST)
                .toList();
        int width = all.stream().mapToInt(one -> one.what().length()).reduce(LEAST_WIDTH, Math::max);
        String row = "%-" + width + "s  %8s  %12s  %13s  %9s  %9s%n";
        out.printf(Locale.ROOT, row, "with", "not made", "late", "off peak", "points", "fewer");
        all.forEach(one -> out.printf(
                Locale.ROOT,
                row,
                one.what(),
                one.missing(),
                one.late() + " min",
                one.offPeak() + " min",
                // what isn't made has no points
                one.missing() > 0 ? "" : one.points(),
                one == asItIs || one.missing() != asItIs.missing() ? "" : asItIs.points() - one.points()));
        out.println();
        out.printf(
                Locale.ROOT,
                "Each searched for as long, without time to spare, from the same plan with %s. As it is, the day came to %s so, with"
                        + " %d seeds; the best of these plans counts for the others too where it holds. What differs by less than %s or so"
                        + " may be luck.%n",
                before.missing() > 0 ? before.missing() + " not made" : before.points() + " points",
                range(ofTheDay),
                AS_IT_IS_TRIES,
                luck(ofTheDay));
    }

    private static String range(List<Tried> bestFirst) {
        Tried best = bestFirst.get(0);
        Tried worst = bestFirst.get(bestFirst.size() - 1);
        return worst.missing() > 0
                ? best.missing() + " to " + worst.missing() + " not made"
                : best.points() + " to " + worst.points() + " points";
    }

    /** How far apart searches of the same day may lie. */
    private static String luck(List<Tried> bestFirst) {
        Tried best = bestFirst.get(0);
        long copies = bestFirst.get(bestFirst.size() - 1).missing() - best.missing();
        long points = bestFirst.stream()
                .filter(one -> one.missing() == best.missing())
                .mapToLong(one -> one.points() - best.points())
                .reduce(best.points() / LUCK, Math::max);
        return (copies > 0 ? copies + 1 + " copies or " : "") + points + " points";
    }
}
