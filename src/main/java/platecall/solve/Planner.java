package platecall.solve;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.api.solver.SolverFactory;
import ai.timefold.solver.core.api.solver.phase.PhaseCommand;
import ai.timefold.solver.core.config.phase.custom.CustomPhaseConfig;
import ai.timefold.solver.core.config.solver.EnvironmentMode;
import ai.timefold.solver.core.config.solver.SolverConfig;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.BreakTask;

/** Plans a day: searches on one or two threads, each a Timefold solver with its own seed, and keeps the better plan. */
public final class Planner {

    /**
     * How long to search.
     *
     * @param seconds wall-clock seconds at most; above 0
     * @param steps moves at most on each thread; with them the same input and seed give the same plan if the seconds suffice
     * @param seed random seed
     * @param threads searches side by side, 1 or 2
     */
    public record Limits(double seconds, Optional<Long> steps, long seed, int threads) {

        public Limits {
            if (!(seconds > 0) || threads < 1 || threads > 2 || steps.orElse(1L) < 1) {
                throw new IllegalArgumentException("limits must be above 0, threads 1 or 2: [" + seconds + " s, "
                        + steps + " steps, " + threads + " threads]");
            }
        }
    }

    /**
     * Where a search stands.
     *
     * @param seconds since its start
     * @param missing copies and breaks that have no place in the best plan so far
     * @param lateMinutes of its copies
     * @param offPeakMinutes of its copies
     * @param kitchenCall first minute of work on the last kitchen day, as a clock in the day's zone shows it
     * @param moves tried
     */
    public record Progress(
            double seconds, long missing, int lateMinutes, int offPeakMinutes, String kitchenCall, long moves) {}

    /** Watches a search and may end it. */
    public interface Watcher {
        /** Told a few times a second; from several threads, one at a time. */
        void progress(Progress progress);

        /** Whether to stop with the best plan so far. */
        boolean stop();

        /** Watches nothing, never stops. */
        Watcher NONE = new Watcher() {
            @Override
            public void progress(Progress progress) {}

            @Override
            public boolean stop() {
                return false;
            }
        };
    }

    /**
     * What a search found.
     *
     * @param plan the plan, not yet audited
     * @param brokenTotal copies and breaks without a place, as scored
     * @param points soft points, as scored
     * @param moves moves tried by all threads
     * @param firstPlanSeconds from the start of the search, Timefold's own start included, to its first complete plan
     * @param seconds from the start of the search to its end
     * @param processorSeconds of all threads, for moves only
     */
    public record Found(
            Plan plan,
            long brokenTotal,
            long points,
            long moves,
            double firstPlanSeconds,
            double seconds,
            double processorSeconds) {}

    /** From the seed of one thread to that of the next. */
    public static final long SEED_STEP = 7919;

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private Planner() {}

    /**
     * Plans a day.
     *
     * @param day a day without troubles
     * @param net its tasks
     * @param digest digest of the day, kept in the plan
     * @param version version of Platecall, kept in the plan
     * @param limits when to stop
     * @param held a plan of the same day to stay close to, if any
     * @param watcher is told how it goes
     */
    public static Found plan(
            Day day, TaskNet net, String digest, String version, Limits limits, Optional<Plan> held, Watcher watcher) {
        return plan(day, net, net, digest, version, limits, held, watcher);
    }

    /**
     * Plans a day by aiming at other times than those of its tasks.
     *
     * @param net its tasks, by which the plan is reckoned
     * @param aim the same tasks with other waits and other times at which copies are due, by which it is searched
     */
    public static Found plan(
            Day day,
            TaskNet net,
            TaskNet aim,
            String digest,
            String version,
            Limits limits,
            Optional<Plan> held,
            Watcher watcher) {
        return plan(day, net, aim, digest, version, limits, held, watcher, EnvironmentMode.NO_ASSERT);
    }

    static Found plan(
            Day day,
            TaskNet net,
            TaskNet aim,
            String digest,
            String version,
            Limits limits,
            Optional<Plan> held,
            Watcher watcher,
            EnvironmentMode mode) {
        long bound = Bound.of(aim);
        Published published = held.map(plan -> Published.of(net, plan)).orElse(null);
        List<Callable<Searched>> searches = new ArrayList<>();
        for (int thread = 0; thread < limits.threads(); thread++) {
            long seed = limits.seed() + SEED_STEP * thread;
            searches.add(() -> new Searched(
                    aim, seed, limits, bound, published, watcher, day.facts().zone(), mode));
        }
        List<Searched> done = sideBySide(searches, limits.threads());
        Searched best = done.get(0);
        for (Searched other : done) {
            if (other.solved.score().compareTo(best.solved.score()) > 0) {
                best = other;
            }
        }
        long moves = done.stream().mapToLong(search -> search.moves).sum();
        Plan plan = PlanWriter.write(
                day,
                net,
                aim == net ? best.solved : best.solved.of(net),
                digest,
                version,
                limits.seed(),
                moves,
                aim == net ? bound : Bound.of(net));
        return new Found(
                plan,
                -best.solved.score().hardScore(),
                -best.solved.score().softScore(),
                moves,
                best.firstPlanSeconds,
                best.seconds,
                done.stream().mapToDouble(search -> search.processorSeconds).sum());
    }

    /**
     * Searches side by side; what each comes to, in order.
     *
     * @param threads so many at a time
     */
    public static <T> List<T> sideBySide(List<Callable<T>> searches, int threads) {
        ExecutorService all = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "search");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<T> done = new ArrayList<>();
            for (Future<T> future : all.invokeAll(searches)) {
                done.add(future.get());
            }
            return done;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the search was interrupted", interrupted);
        } catch (ExecutionException failed) {
            throw new IllegalStateException("the search failed", failed.getCause());
        } finally {
            all.shutdownNow();
        }
    }

    /** One search on one thread. */
    private static final class Searched implements PhaseCommand<DayPlan>, Search.Effort {

        private final TaskNet net;
        private final long seed;
        private final Limits limits;
        private final long bound;
        private final Published published;
        private final Watcher watcher;
        private final ZoneId zone;
        private final long started = System.nanoTime();
        private BooleanSupplier terminated;
        private double lastTold = -1;
        private boolean stop;
        double firstPlanSeconds = -1;
        double seconds;
        double processorSeconds;
        long moves;
        DayPlan solved;

        Searched(
                TaskNet net,
                long seed,
                Limits limits,
                long bound,
                Published published,
                Watcher watcher,
                ZoneId zone,
                EnvironmentMode mode) {
            this.zone = zone;
            this.net = net;
            this.seed = seed;
            this.limits = limits;
            this.bound = bound;
            this.published = published;
            this.watcher = watcher;
            SolverConfig config = new SolverConfig()
                    .withSolutionClass(DayPlan.class)
                    .withEntityClasses(Block.class)
                    .withConstraintProviderClass(PlanConstraints.class)
                    .withEnvironmentMode(mode)
                    .withPhases(new CustomPhaseConfig().withCustomPhaseCommands(this));
            solved = SolverFactory.<DayPlan>create(config).buildSolver().solve(unplaced());
            seconds = elapsed();
        }

        private DayPlan unplaced() {
            List<Block> blocks = new ArrayList<>();
            for (int c = 0; c < net.copies().size(); c++) {
                blocks.add(Block.ofCopy(net.copies().get(c), published == null ? null : published.kept(c)));
            }
            List<BreakTask> breaks = net.breaks();
            for (int i = 0; i < breaks.size(); i++) {
                blocks.add(Block.ofBreak(i, published == null ? Kitchen.NONE : published.breakStart(i)));
            }
            return new DayPlan(blocks, net.unopenedSpans(), net.prices());
        }

        @Override
        public void changeWorkingSolution(ScoreDirector<DayPlan> director, BooleanSupplier isPhaseTerminated) {
            terminated = isPhaseTerminated;
            Search search = new Search(net, seed, this, bound, published);
            long before = THREADS.getCurrentThreadCpuTime();
            search.run();
            processorSeconds = (THREADS.getCurrentThreadCpuTime() - before) / 1e9;
            moves = search.moves;
            List<Block> blocks = director.getWorkingSolution().blocks();
            List<Placement> placements = DayPlan.inOrder(
                    blocks,
                    IntStream.range(0, blocks.size())
                            .mapToObj(i -> search.best().placementOf(search.kitchen(), i))
                            .toList(),
                    net.prices());
            for (int i = 0; i < blocks.size(); i++) {
                Block block = blocks.get(i);
                director.beforeVariableChanged(block, "placement");
                block.placement(placements.get(i));
                director.afterVariableChanged(block, "placement");
            }
            director.triggerVariableListeners();
        }

        private double elapsed() {
            return (System.nanoTime() - started) / 1e9;
        }

        @Override
        public double used(long moves) {
            return limits.steps().isPresent() ? (double) moves / limits.steps().get() : elapsed() / limits.seconds();
        }

        @Override
        public double seconds() {
            return limits.steps().isPresent() ? limits.steps().get() / 50_000.0 : limits.seconds();
        }

        @Override
        public BooleanSupplier stopped() {
            return () -> stop || outOfTime() || terminated.getAsBoolean();
        }

        /** With a number of moves time doesn't tell how hot the search is, only when it ends at the latest. */
        private boolean outOfTime() {
            return limits.steps().isPresent() && elapsed() >= limits.seconds();
        }

        @Override
        public void progress(Search search, long moves) {
            double now = elapsed();
            if (firstPlanSeconds < 0) {
                firstPlanSeconds = now;
            }
            if (now - lastTold > 0.2) {
                lastTold = now;
                synchronized (watcher) {
                    watcher.progress(search.best().progress(search.kitchen(), now, moves, zone));
                    stop = watcher.stop();
                }
            }
        }
    }
}
