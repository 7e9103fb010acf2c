package platecall.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Step;
import platecall.odds.Odds;
import platecall.odds.Odds.OfSetup;
import platecall.odds.Odds.SurePeak;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Points;
import platecall.solve.Planner;
import platecall.tasks.SpareTime;
import platecall.tasks.TaskNet;

/**
 * Plans a day so that its setups are ready at their calls as often as the day promises: first as it is, then with time to spare
 * after every step, and again with more of it before setups that fall short and less before those that needn't be so early. Of
 * these plans it takes the one that leaves out the fewest copies and, rehearsed, costs the fewest points.
 */
final class Promise {

    /** Parts into which the effort is divided, one for each plan. */
    private static final int PARTS = 5;
    /** Parts for a second plan of the day as it is, if the first one is late: that needs more effort than time to spare does. */
    private static final int PARTS_IF_LATE = 2;
    /** Rehearsals of each plan, enough to know a chance to within 3 points, 19 times in 20 (Massart 1990: 2050 are enough). */
    private static final int RUNS = 2_050;
    /** The same close to a plan in hand. */
    private static final int PARTS_IN_HAND = 3;
    /** What is aimed at beyond the promise: with other luck a chance may come out lower by about as much. */
    private static final double MARGIN = 0.01;
    /** A setup that is never ready at its call falls short of the promise by so many late minutes' points, others by their share of it. */
    private static final int SHORTFALL_MINUTES = 10;
    /** Of what may go wrong before a setup, the share that any step may have: there are several on its way. */
    private static final double STEP_SHARE = 0.25;

    private final Day day;
    private final List<Setup> setups;
    private final Map<String, SurePeak> surePeaks;
    private final long seed;
    private final double wanted;
    private final double wantedOfStep;
    private final int[] minutesBefore;
    private final List<Choice> choices = new ArrayList<>();
    /** Needs of which a copy was late or missing in a plan: the next ones have no time to spare for them. */
    private final Set<String> hurried = new HashSet<>();

    private boolean kept;

    /** A search for a plan of the day. */
    interface Search {
        /**
         * Searches.
         *
         * @param aim the day's tasks, maybe with time to spare
         * @param from a plan to begin with, if any
         */
        Plan plan(TaskNet aim, Planner.Limits limits, Optional<Plan> from);
    }

    /**
     * A plan that was made.
     *
     * @param missing copies that it doesn't make
     * @param points what it costs, late and off-peak minutes as rehearsed, and what the promise falls short
     */
    private record Choice(Plan plan, long missing, double points) {

        static final Comparator<Choice> BEST_FIRST =
                Comparator.comparingLong(Choice::missing).thenComparingDouble(Choice::points);
    }

    private Promise(Day day, long seed) {
        this.day = day;
        this.seed = seed;
        setups = day.setups();
        surePeaks = SurePeaks.of(day);
        minutesBefore = new int[setups.size()];
        wanted = Math.min(1, day.facts().promise() + MARGIN);
        wantedOfStep = 1 - STEP_SHARE * (1 - wanted);
    }

    /**
     * Plans a day.
     *
     * @param net its tasks
     * @param limits how long to search in all; on each thread another plan is made so, and the better one is taken
     * @param held a plan that the new one stays close to, with the time to spare that it has and no more
     * @param search makes each plan
     * @param told is told about the best plan of a thread so far
     * @param stopped whether the plan so far must do
     */
    static Plan plan(
            Day day,
            TaskNet net,
            Planner.Limits limits,
            Optional<Plan> held,
            Search search,
            Consumer<Plan> told,
            BooleanSupplier stopped) {
        List<Callable<Choice>> threads = new ArrayList<>();
        for (int thread = 0; thread < limits.threads(); thread++) {
            Planner.Limits one =
                    new Planner.Limits(limits.seconds(), limits.steps(), limits.seed() + Planner.SEED_STEP * thread, 1);
            threads.add(() -> new Promise(day, limits.seed()).plan(net, one, held, search, told, stopped));
        }
        return Planner.sideBySide(threads, limits.threads()).stream()
                .min(Choice.BEST_FIRST)
                .orElseThrow()
                .plan();
    }

    private Choice plan(
            TaskNet net,
            Planner.Limits limits,
            Optional<Plan> held,
            Search search,
            Consumer<Plan> told,
            BooleanSupplier stopped) {
        if (held.isPresent()) {
            keep(net, limits, held.get(), search);
            return best();
        }
        int used = 0;
        boolean asItIs = true;
        while (used < PARTS && !(kept && (!asItIs || isProvedBest())) && !(used > 0 && stopped.getAsBoolean())) {
            boolean late = used == 1 && isLate();
            // a day that needs no time to spare has the rest of the effort as it is
            int parts = kept ? PARTS - used : late ? PARTS_IF_LATE : 1;
            asItIs = used == 0 || late || kept;
            Optional<Plan> from = used == 0 || late ? Optional.empty() : Optional.of(best().plan());
            consider(search.plan(asItIs ? net : aim(net), part(limits, parts, PARTS), from), asItIs);
            told.accept(best().plan());
            used += parts;
        }
        return best();
    }

    private Choice best() {
        return choices.stream().min(Choice.BEST_FIRST).orElseThrow();
    }

    /** Whether no plan of the day as it is costs less than the best one so far. */
    private boolean isProvedBest() {
        Plan plan = best().plan();
        return plan.bound().filter(bound -> plan.points().total() <= bound).isPresent();
    }

    private boolean isLate() {
        return lateOrMissing(best().plan()).findAny().isPresent();
    }

    /** Copies of takes that are still to be shot. */
    private Stream<PlannedCopy> lateOrMissing(Plan plan) {
        return plan.copies().stream()
                .filter(copy -> !copy.made() || copy.lateMinutes() > 0)
                .filter(copy -> !plan.isShot(day, copy));
    }

    private static Planner.Limits part(Planner.Limits limits, int parts, int of) {
        return new Planner.Limits(
                limits.seconds() * parts / of,
                limits.steps().map(steps -> Math.max(1, steps * parts / of)),
                limits.seed(),
                limits.threads());
    }

    private TaskNet aim(TaskNet net) {
        return SpareTime.in(
                net,
                (need, step) -> isHurried(need) ? 0 : spareAfter(step),
                this::quickerBy,
                need -> isHurried(need)
                        ? 0
                        : minutesBefore[setups.indexOf(day.setup(need.setup()).orElseThrow())]);
    }

    private int spareAfter(Step step) {
        return Math.max(0, Odds.minutesOver(step, wantedOfStep));
    }

    private int quickerBy(Step step) {
        return Math.max(0, -Odds.minutesOver(step, 1 - wantedOfStep));
    }

    /**
     * Plans close to a plan that people have in their hands. If all of it can go on as planned, as surely as it could, it stays.
     * Else the day is planned once as it is, then with the time to spare that the plan in hand has, so that what goes on as planned
     * stays as it is, and if that makes something late, again without for what is. More than it has isn't looked for: that would change everybody's work for a few chances in a hundred.
     */
    private void keep(TaskNet net, Planner.Limits limits, Plan held, Search search) {
        Odds before = Odds.of(day, held, surePeaks, RUNS, -1 - seed);
        Planner.Limits none = new Planner.Limits(limits.seconds(), Optional.of(1L), limits.seed(), limits.threads());
        Odds goingOn = consider(search.plan(net, none, Optional.empty()), true);
        if (!isLate() && goingOn.setups().stream().allMatch(setup -> isAsSure(setup, before))) {
            return;
        }
        // what is late if nobody does anything about it needn't be
        hurried.clear();
        TimeInHand spare = new TimeInHand(day, held);
        consider(search.plan(net, part(limits, 1, PARTS_IN_HAND), Optional.empty()), true);
        int known = -1;
        for (int part = 1; part < PARTS_IN_HAND && hurried.size() > known; part++) {
            known = hurried.size();
            TaskNet aim = SpareTime.in(
                    net,
                    (need, step) -> isHurried(need) ? 0 : Math.min(spare.after(need, step), spareAfter(step)),
                    this::quickerBy,
                    need -> isHurried(need) ? 0 : spare.before(need));
            consider(search.plan(aim, part(limits, 1, PARTS_IN_HAND), Optional.empty()), true);
        }
    }

    private boolean isAsSure(OfSetup setup, Odds before) {
        double was = before.of(setup.setup()).map(OfSetup::atCall).orElse(wanted);
        return setup.atCall() >= Math.min(day.facts().promise(), was) - MARGIN;
    }

    private boolean isHurried(Need need) {
        return hurried.contains(need.key());
    }

    /**
     * Rehearses a plan and sets what the next one aims at.
     *
     * @param asItIs whether it had no time to spare: that tells nothing about how much is too much
     * @return how sure it is
     */
    private Odds consider(Plan plan, boolean asItIs) {
        // other luck than that with which the plan is told to be sure in the end
        Odds odds = Odds.of(day, plan, surePeaks, RUNS, -1 - seed);
        lateOrMissing(plan).forEach(copy -> hurried.add(copy.need()));
        kept = true;
        double shortfall = 0;
        for (OfSetup setup : odds.setups()) {
            kept &= setup.atCall() >= wanted && setup.atPeak() >= wanted;
            shortfall += Math.max(0, wanted - setup.atCall());
            int index = setups.indexOf(day.setup(setup.setup()).orElseThrow());
            int late = setup.promisedBy().map(setup.call()::minutesUntil).orElse(0);
            if (!asItIs) {
                // each plan is another, so only half of what was too much is given back
                minutesBefore[index] = Math.max(0, minutesBefore[index] + (late > 0 ? late : late / 2));
            }
        }
        Points points = plan.points();
        choices.add(new Choice(
                plan,
                missing(plan),
                points.total()
                        - points.late()
                        - points.offPeak()
                        + odds.points()
                        + shortfall * SHORTFALL_MINUTES * day.facts().prices().lateMinute()));
        kept &= !isLate();
        return odds;
    }

    private long missing(Plan plan) {
        return lateOrMissing(plan).filter(copy -> !copy.made()).count();
    }
}
