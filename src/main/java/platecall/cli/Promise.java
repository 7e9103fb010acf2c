package platecall.cli;

import java.util.Arrays;
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
 * Plans a day so that its setups are ready at their calls as often as the day promises: with time to spare after every step, and
 * again with more of it before setups that fall short and less before those that needn't be so early. Keeps the plan that falls short
 * the least and, of those, the one whose heroes are at their peak most often.
 */
final class Promise {

    /** Plans that are made at most, each in its part of the time. */
    private static final int ROUNDS = 4;
    /** Luck with which plans are compared: another than that with which the last one is told to be sure. */
    private static final long SEED = 20;

    private final Day day;
    private final List<Setup> setups;
    private final int[] minutesBefore;
    private Plan best;
    private double bestShortfall;
    private double bestFaded;

    private Promise(Day day) {
        this.day = day;
        setups = day.setups();
        minutesBefore = new int[setups.size()];
    }

    /**
     * Plans a day.
     *
     * @param net its tasks
     * @param limits how long to search in all
     * @param planned makes a plan of the day by aiming at a net with time to spare
     * @param stopped whether the plan so far must do
     */
    static Plan plan(
            Day day,
            TaskNet net,
            Planner.Limits limits,
            BiFunction<TaskNet, Planner.Limits, Plan> planned,
            BooleanSupplier stopped) {
        Promise promise = new Promise(day);
        Planner.Limits part = new Planner.Limits(
                limits.seconds() / ROUNDS,
                limits.steps().map(steps -> Math.max(1, steps / ROUNDS)),
                limits.seed(),
                limits.threads());
        for (int round = 0; round == 0 || round < ROUNDS && !promise.kept() && !stopped.getAsBoolean(); round++) {
            TaskNet aim = SpareTime.in(
                    net, step -> Odds.minutesOver(step, day.facts().promise()), setup -> promise.minutesBefore[setup]);
            promise.consider(planned.apply(aim, part));
        }
        return promise.best;
    }

    /** Whether nothing falls short, and no setup gave up looks for it. */
    private boolean kept() {
        return bestShortfall == 0 && Arrays.stream(minutesBefore).allMatch(minutes -> minutes == 0);
    }

    private void consider(Plan plan) {
        double shortfall = 0;
        double faded = 0;
        for (OfSetup setup : Odds.of(day, plan, Odds.RUNS, SEED).setups()) {
            double promised = day.facts().promise();
            shortfall += Math.max(0, promised - setup.atCall());
            faded += Math.max(0, promised - setup.atPeak());
            int index = setups.indexOf(day.setup(setup.setup()).orElseThrow());
            int late = setup.promisedBy().map(setup.call()::minutesUntil).orElse(0);
            // less is given back than was too much: each plan is another, and other copies may be in the way
            minutesBefore[index] = Math.max(0, minutesBefore[index] + (late > 0 ? late : late / 2));
        }
        if (best == null
                || Double.compare(shortfall, bestShortfall) < 0
                || shortfall == bestShortfall && faded < bestFaded) {
            bestShortfall = shortfall;
            bestFaded = faded;
            best = plan;
        }
    }
}
