package platecall.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import platecall.day.Day;
import platecall.day.Setup;
import platecall.odds.Odds;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.solve.Planner;
import platecall.tasks.SpareTime;
import platecall.tasks.TaskNet;

/**
 * Plans a day so that its setups are ready at their calls as often as the day promises: first as it is, then with time to spare after
 * every step, and again with more of it before setups that fall short and less before those that needn't be so early.
 */
final class Promise {

    /** Plans that are made at most, each in its part of the time. */
    private static final int ROUNDS = 5;
    /** What is aimed at beyond the promise: with other luck a chance may come out lower by about as much. */
    private static final double MARGIN = 0.01;

    private final Day day;
    private final List<Setup> setups;
    private final long seed;
    private final double wanted;
    private final int[] minutesBefore;
    private final List<Choice> choices = new ArrayList<>();

    /**
     * A plan that was made.
     *
     * @param missing copies that it doesn't make
     * @param late points for minutes late
     * @param shortfall chances to be ready at call, added up as far as they are below what is wanted
     * @param faded chances to be ready with each hero at its peak, in the same way
     */
    private record Choice(Plan plan, long missing, long late, double shortfall, double faded) {

        /** What matters most comes first: what the day promises for certain, then what it promises, then looks. */
        static final Comparator<Choice> BEST_FIRST = Comparator.comparingLong(Choice::missing)
                .thenComparingLong(Choice::late)
                .thenComparingDouble(Choice::shortfall)
                .thenComparingDouble(Choice::faded)
                .thenComparingLong(choice -> choice.plan().points().total());
    }

    private Promise(Day day, long seed) {
        this.day = day;
        this.seed = seed;
        setups = day.setups();
        minutesBefore = new int[setups.size()];
        wanted = Math.min(1, day.facts().promise() + MARGIN);
    }

    /**
     * Plans a day.
     *
     * @param net its tasks
     * @param limits how long to search in all
     * @param planned makes a plan of the day by aiming at a net, which may have time to spare
     * @param stopped whether the plan so far must do
     */
    static Plan plan(
            Day day,
            TaskNet net,
            Planner.Limits limits,
            BiFunction<TaskNet, Planner.Limits, Plan> planned,
            BooleanSupplier stopped) {
        Promise promise = new Promise(day, limits.seed());
        Planner.Limits part = new Planner.Limits(
                limits.seconds() / ROUNDS,
                limits.steps().map(steps -> Math.max(1, steps / ROUNDS)),
                limits.seed(),
                limits.threads());
        boolean kept = promise.consider(planned.apply(net, part));
        for (int round = 1; round < ROUNDS && !kept && !stopped.getAsBoolean(); round++) {
            kept = promise.consider(planned.apply(promise.aim(net), part));
        }
        return promise.choices.stream().min(Choice.BEST_FIRST).map(Choice::plan).orElseThrow();
    }

    private TaskNet aim(TaskNet net) {
        return SpareTime.in(
                net,
                step -> Math.max(0, Odds.minutesOver(step, wanted)),
                step -> Math.max(0, -Odds.minutesOver(step, 1 - wanted)),
                setup -> minutesBefore[setup]);
    }

    /** Rehearses a plan; returns whether nothing is left to be wished for. */
    private boolean consider(Plan plan) {
        double shortfall = 0;
        double faded = 0;
        // other luck than that with which the plan is told to be sure in the end
        for (OfSetup setup : Odds.of(day, plan, Odds.RUNS, -1 - seed).setups()) {
            shortfall += Math.max(0, wanted - setup.atCall());
            faded += Math.max(0, wanted - setup.atPeak());
            int index = setups.indexOf(day.setup(setup.setup()).orElseThrow());
            int late = setup.promisedBy().map(setup.call()::minutesUntil).orElse(0);
            // the first plan had nothing to spare; later ones give back less than was too much, since each is another
            if (!choices.isEmpty()) {
                minutesBefore[index] = Math.max(0, minutesBefore[index] + (late > 0 ? late : late / 2));
            }
        }
        long missing = plan.copies().stream()
                .filter(copy ->
                        !copy.made() && !plan.isShot(day.setup(copy.setup()).orElseThrow()))
                .count();
        choices.add(new Choice(plan, missing, plan.points().late(), shortfall, faded));
        return missing == 0 && plan.points().late() == 0 && shortfall + faded == 0;
    }
}
