package platecall.solve;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Lane;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Oven;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;

/**
 * The same day written once more as a model for CP-SAT (Google OR-Tools), an independent solver that proves optima. For
 * days with one span of kitchen hours on which every copy can be made. A known plan is told to it with a value for every
 * variable, so that it starts from that plan.
 */
final class CpSatReference {

    /** @param optimal whether {@code points} is proved; {@code bound} is a proved lower bound either way */
    record Answer(boolean found, boolean optimal, long points, long bound) {}

    static {
        Loader.loadNativeLibraries();
    }

    /** Something done once: a task of one copy, or a batch. */
    private record Job(
            Task task,
            IntVar start,
            LinearExpr end,
            BoolVar present,
            List<BoolVar> modes,
            List<Map<Integer, BoolVar>> hands) {}

    /** A task in an oven: its start and end, and whether it is there. */
    private record InOven(int celsius, IntVar start, LinearExpr end, BoolVar there) {}

    private final TaskNet net;
    private final CpModel model = new CpModel();
    private final int horizon;
    private final Map<Integer, List<IntervalVar>> laneIntervals = new HashMap<>();
    private final Map<Integer, List<LinearExpr>> laneDemands = new HashMap<>();
    private final Map<Integer, List<IntervalVar>> personIntervals = new HashMap<>();
    private final List<List<InOven>> ovenUses = new ArrayList<>();
    private final LinearExprBuilder cost = LinearExpr.newBuilder();
    private final IntVar firstStart;
    private final Plan.Work[][] known;
    private final Plan hint;
    /** The value of each variable in the known plan; empty without one. */
    private final Map<Integer, Long> values = new HashMap<>();

    private CpSatReference(TaskNet net, Plan hint) {
        this.net = net;
        this.hint = hint;
        known = hint == null ? null : workOf(net, hint);
        horizon = net.minutes();
        firstStart = intVar(
                0,
                horizon,
                "first",
                hint == null || hint.kitchenCalls().isEmpty()
                        ? 0
                        : net.origin().minutesUntil(hint.kitchenCalls().get(0)));
        net.ovens().forEach(oven -> ovenUses.add(new ArrayList<>()));
    }

    /** @param hint a known plan to start from, or null; one in which every copy has its place */
    static Answer solve(TaskNet net, double seconds, int workers, Plan hint) {
        return new CpSatReference(net, hint).solve(seconds, workers, false);
    }

    /**
     * Points of a plan as this model counts them.
     *
     * @throws IllegalStateException if the plan breaks a rule of the model
     */
    static long pointsOf(TaskNet net, Plan plan) {
        return new CpSatReference(net, plan).solve(60, 1, true).points();
    }

    private Answer solve(double seconds, int workers, boolean asHinted) {
        build();
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setMaxTimeInSeconds(seconds)
                .setNumWorkers(workers)
                .setRandomSeed(1)
                .setFixVariablesToTheirHintedValue(asHinted);
        CpSolverStatus status = solver.solve(model);
        if (status == CpSolverStatus.MODEL_INVALID || status == CpSolverStatus.INFEASIBLE) {
            throw new IllegalStateException(status + " " + model.validate());
        }
        boolean optimal = status == CpSolverStatus.OPTIMAL;
        boolean found = optimal || status == CpSolverStatus.FEASIBLE;
        return new Answer(found, optimal, found ? Math.round(solver.objectiveValue()) : -1, (long)
                Math.ceil(solver.bestObjectiveBound() - 1e-6));
    }

    private static Plan.Work[][] workOf(TaskNet net, Plan plan) {
        Map<String, Plan.Work> byTask = new HashMap<>();
        for (Plan.Work work : plan.work()) {
            work.copies().forEach(copy -> byTask.put(copy + " " + work.step(), work));
        }
        return net.copies().stream()
                .map(copy -> copy.recipe().tasks().stream()
                        .map(task -> byTask.get(copy.id() + " " + task.name()))
                        .toArray(Plan.Work[]::new))
                .toArray(Plan.Work[][]::new);
    }

    private int startOf(Plan.Work work) {
        return net.origin().minutesUntil(work.span().start());
    }

    private int endOf(Plan.Work work) {
        return net.origin().minutesUntil(work.span().end());
    }

    private IntVar intVar(long low, long high, String name, long hinted) {
        IntVar variable = model.newIntVar(low, high, name);
        if (hint != null) {
            model.addHint(variable, hinted);
            values.put(variable.getIndex(), hinted);
        }
        return variable;
    }

    private BoolVar boolVar(String name, boolean hinted) {
        BoolVar variable = model.newBoolVar(name);
        if (hint != null) {
            model.addHint(variable, hinted ? 1 : 0);
            values.put(variable.getIndex(), hinted ? 1L : 0L);
        }
        return variable;
    }

    /** Value of an expression in the known plan. */
    private long value(LinearExpr expression) {
        long sum = expression.getOffset();
        for (int i = 0; hint != null && i < expression.numElements(); i++) {
            sum += expression.getCoefficient(i) * values.get(expression.getVariableIndex(i));
        }
        return sum;
    }

    private boolean truth(BoolVar variable) {
        return hint != null && values.get(variable.getIndex()) == 1;
    }

    private void build() {
        if (net.kitchenSpans().size() != 1 || net.lanes().stream().anyMatch(Lane::keepsApart)) {
            throw new IllegalArgumentException("the reference knows one span of kitchen hours and no raw food apart");
        }
        Map<Integer, List<int[]>> groups = new HashMap<>();
        List<Copy> copies = net.copies();
        IntVar[][] starts = new IntVar[copies.size()][];
        LinearExpr[][] ends = new LinearExpr[copies.size()][];
        Job[][] jobs = new Job[copies.size()][];
        for (int c = 0; c < copies.size(); c++) {
            Recipe recipe = copies.get(c).recipe();
            starts[c] = new IntVar[recipe.size()];
            ends[c] = new LinearExpr[recipe.size()];
            jobs[c] = new Job[recipe.size()];
            for (int i = 0; i < recipe.size(); i++) {
                Task task = recipe.tasks().get(i);
                Plan.Work work = hint == null ? null : known[c][i];
                starts[c][i] = intVar(task.earliest(), horizon, "s", work == null ? 0 : startOf(work));
                if (task.perBatch()) {
                    groups.computeIfAbsent(task.batchGroup(), key -> new ArrayList<>())
                            .add(new int[] {c, i});
                    ends[c][i] = LinearExpr.affine(intVar(0, horizon, "e", work == null ? 0 : endOf(work)), 1, 0);
                } else {
                    ends[c][i] = LinearExpr.affine(starts[c][i], 1, task.minutes());
                    jobs[c][i] = job(task, starts[c][i], task.minutes(), null, null, work);
                }
            }
        }
        BoolVar[][] used = new BoolVar[copies.size()][net.people().size()];
        for (int c = 0; c < copies.size(); c++) {
            for (int p = 0; p < net.people().size(); p++) {
                String person = net.people().get(p);
                used[c][p] = boolVar(
                        "used",
                        hint != null
                                && Arrays.stream(known[c])
                                        .flatMap(work -> work.hands().stream())
                                        .anyMatch(hands -> hands.person().equals(person)));
            }
        }
        for (List<int[]> members : groups.values()) {
            batches(members, copies, starts, ends, used);
        }
        for (int c = 0; c < copies.size(); c++) {
            copy(copies.get(c), starts[c], ends[c], jobs[c], used[c]);
        }
        breaks();
        lanes();
        people();
        ovens();
        long price = net.prices().kitchenMinute();
        cost.add(net.kitchenSpans().get(0).end() * price).addTerm(firstStart, -price);
        model.minimize(cost);
    }

    /** A job with its modes and hands; {@code duration} is fixed unless {@code length} is given. */
    private Job job(Task task, IntVar start, int duration, LinearExpr length, BoolVar present, Plan.Work work) {
        LinearExpr size = length == null ? LinearExpr.constant(duration) : length;
        LinearExpr end = LinearExpr.affine(start, 1, duration);
        if (length != null) {
            LinearExpr sum = LinearExpr.newBuilder().add(start).add(length).build();
            IntVar ends = intVar(0, horizon, "ends", value(sum));
            model.addEquality(ends, sum);
            end = LinearExpr.affine(ends, 1, 0);
        }
        List<BoolVar> modes = new ArrayList<>();
        for (Mode mode : task.modes()) {
            BoolVar chosen = boolVar("mode", work != null && mode.stations().equals(work.stations()));
            modes.add(chosen);
            IntervalVar interval = model.newOptionalIntervalVar(start, size, end, chosen, "way");
            for (int i = 0; i < mode.lanes().length; i++) {
                use(mode.lanes()[i], interval, mode.units()[i]);
            }
            if (mode.noisy()) {
                List<IntervalVar> quiet = new ArrayList<>(fixed(net.noiseAllowed()));
                quiet.add(interval);
                model.addNoOverlap(quiet);
            }
            if (mode.oven() >= 0) {
                ovenUses.get(mode.oven()).add(new InOven(task.ovenCelsius(), start, end, chosen));
                Oven oven = net.ovens().get(mode.oven());
                int open = 0;
                while (!oven.open()[open]) {
                    open++;
                }
                model.addGreaterOrEqual(start, open + change(oven, Station.COLD_OVEN_CELSIUS, task.ovenCelsius()))
                        .onlyEnforceIf(chosen);
            }
        }
        if (present == null) {
            model.addExactlyOne(modes.toArray(Literal[]::new));
        } else {
            model.addEquality(LinearExpr.sum(modes.toArray(BoolVar[]::new)), present);
        }
        List<Map<Integer, BoolVar>> hands = new ArrayList<>();
        for (HandPart part : task.handParts()) {
            Map<Integer, BoolVar> chosen = new HashMap<>();
            int from = hands.size() * task.handsNeeded();
            List<Plan.Hands> knownHands =
                    work == null ? List.of() : work.hands().subList(from, from + task.handsNeeded());
            for (int p = 0; p < net.people().size(); p++) {
                if ((task.handMask() >>> p & 1) == 0) {
                    continue;
                }
                String person = net.people().get(p);
                BoolVar here = boolVar(
                        "hand",
                        knownHands.stream().anyMatch(known -> known.person().equals(person)));
                chosen.put(p, here);
                IntervalVar interval;
                if (part.length() == 0) {
                    interval = model.newOptionalIntervalVar(start, size, end, here, "hands");
                } else if (part.fromEnd()) {
                    LinearExpr begin =
                            LinearExpr.newBuilder().add(end).add(-part.length()).build();
                    interval =
                            model.newOptionalIntervalVar(begin, LinearExpr.constant(part.length()), end, here, "hands");
                } else {
                    interval = model.newOptionalFixedSizeIntervalVar(start, part.length(), here, "hands");
                }
                personIntervals.computeIfAbsent(p, key -> new ArrayList<>()).add(interval);
            }
            LinearExpr sum = LinearExpr.sum(chosen.values().toArray(BoolVar[]::new));
            if (present == null) {
                model.addEquality(sum, task.handsNeeded());
            } else {
                model.addEquality(sum, LinearExpr.term(present, task.handsNeeded()));
            }
            hands.add(chosen);
        }
        return new Job(task, start, end, present, modes, hands);
    }

    private void batches(
            List<int[]> members, List<Copy> copies, IntVar[][] starts, LinearExpr[][] ends, BoolVar[][] used) {
        Task task = copies.get(members.get(0)[0]).recipe().tasks().get(members.get(0)[1]);
        int count = members.size();
        BoolVar[][] rides = new BoolVar[count][count];
        Plan.Work[] works = new Plan.Work[count];
        for (int m = 0; m < count; m++) {
            works[m] = hint == null ? null : known[members.get(m)[0]][members.get(m)[1]];
            int first = hint == null ? 0 : Arrays.asList(works).indexOf(works[m]);
            for (int b = 0; b <= m; b++) {
                rides[m][b] = boolVar("rides", first == b);
            }
            model.addExactlyOne(Arrays.copyOf(rides[m], m + 1));
        }
        for (int b = 0; b < count; b++) {
            BoolVar present = rides[b][b];
            List<BoolVar> riders = new ArrayList<>();
            for (int m = b; m < count; m++) {
                riders.add(rides[m][b]);
                model.addImplication(rides[m][b], present);
            }
            LinearExpr number = LinearExpr.sum(riders.toArray(BoolVar[]::new));
            model.addLessOrEqual(number, task.batchMost());
            Plan.Work work = truth(present) ? works[b] : null;
            IntVar start = intVar(0, horizon, "batch", work == null ? 0 : startOf(work));
            LinearExpr length = LinearExpr.constant(task.minutes());
            if (task.minutesPerCopy() > 0) {
                IntVar room = intVar(
                        0,
                        task.batchMost(),
                        "room",
                        work == null ? 0 : (work.span().minutes() - task.minutes()) / task.minutesPerCopy());
                model.addEquality(number, room);
                length = LinearExpr.affine(room, task.minutesPerCopy(), task.minutes());
            }
            Job job = job(task, start, 0, length, present, work);
            for (int m = b; m < count; m++) {
                int c = members.get(m)[0];
                int i = members.get(m)[1];
                model.addEquality(starts[c][i], start).onlyEnforceIf(rides[m][b]);
                model.addEquality(ends[c][i], job.end()).onlyEnforceIf(rides[m][b]);
                for (Map<Integer, BoolVar> part : job.hands()) {
                    for (Map.Entry<Integer, BoolVar> hand : part.entrySet()) {
                        model.addBoolOr(new Literal[] {
                            used[c][hand.getKey()], hand.getValue().not(), rides[m][b].not()
                        });
                    }
                }
            }
        }
    }

    private void copy(Copy copy, IntVar[] starts, LinearExpr[] ends, Job[] jobs, BoolVar[] used) {
        Recipe recipe = copy.recipe();
        for (int i = 0; i < recipe.size(); i++) {
            model.addLessOrEqual(firstStart, starts[i]);
            model.addLessOrEqual(ends[i], horizon);
            for (Arc arc : recipe.outOf().get(i)) {
                model.addGreaterOrEqual(
                        starts[arc.after()],
                        LinearExpr.newBuilder().add(ends[i]).add(arc.least()).build());
                if (arc.most() != Integer.MAX_VALUE) {
                    model.addLessOrEqual(
                            starts[arc.after()],
                            LinearExpr.newBuilder().add(ends[i]).add(arc.most()).build());
                }
            }
            if (jobs[i] != null) {
                for (Map<Integer, BoolVar> part : jobs[i].hands()) {
                    part.forEach((p, here) -> model.addImplication(here, used[p]));
                }
            }
            Task task = recipe.tasks().get(i);
            if (task.waitLane() >= 0 && !recipe.outOf().get(i).isEmpty()) {
                LinearExpr[] next = recipe.outOf().get(i).stream()
                        .map(arc -> LinearExpr.affine(starts[arc.after()], 1, 0))
                        .toArray(LinearExpr[]::new);
                IntVar until = intVar(
                        0,
                        horizon,
                        "until",
                        Arrays.stream(next).mapToLong(this::value).max().orElseThrow());
                model.addMaxEquality(until, next);
                IntVar wait = intVar(0, horizon, "wait", value(LinearExpr.affine(until, 1, 0)) - value(ends[i]));
                use(task.waitLane(), model.newIntervalVar(ends[i], wait, until, "stored"), task.waitUnits());
            }
        }
        LinearExpr ready = ends[recipe.last()];
        LinearExpr plated = ends[recipe.plated()];
        IntVar roll = intVar(copy.due(), Math.max(horizon, copy.due()), "roll", Math.max(copy.due(), value(ready)));
        model.addMaxEquality(roll, new LinearExpr[] {ready, LinearExpr.constant(copy.due())});
        cost.addTerm(excess(1, ready, null, -copy.due()), recipe.lateWeight());
        cost.addTerm(
                excess(1, LinearExpr.affine(roll, 1, 0), plated, copy.show() - recipe.usableTo()), recipe.lateWeight());
        cost.addTerm(excess(1, plated, LinearExpr.affine(roll, 1, 0), recipe.peakFrom()), recipe.offPeakWeight());
        cost.addTerm(
                excess(1, LinearExpr.affine(roll, 1, 0), plated, copy.show() - recipe.peakTo()),
                recipe.offPeakWeight());
        if (net.prices().handChange() > 0) {
            LinearExpr more = LinearExpr.newBuilder().addSum(used).add(-1).build();
            IntVar changes = intVar(0, net.people().size(), "changes", Math.max(0, value(more)));
            model.addGreaterOrEqual(changes, more);
            cost.addTerm(changes, net.prices().handChange());
        }
    }

    /** A variable that is at least {@code a - b + constant} and at least 0. */
    private IntVar excess(int sign, LinearExpr a, LinearExpr b, int constant) {
        LinearExprBuilder sum = LinearExpr.newBuilder().addTerm(a, sign).add(constant);
        if (b != null) {
            sum.addTerm(b, -sign);
        }
        LinearExpr least = sum.build();
        IntVar over = intVar(0, 4L * horizon, "over", Math.max(0, value(least)));
        model.addGreaterOrEqual(over, least);
        return over;
    }

    private void breaks() {
        List<IntVar> starts = new ArrayList<>();
        Map<String, Integer> taken = new HashMap<>();
        for (BreakTask task : net.breaks()) {
            String person = net.people().get(task.person());
            int number = taken.merge(person, 1, Integer::sum) - 1;
            IntVar start = intVar(task.earliest(), task.latest(), "break", knownBreak(person, number));
            personIntervals
                    .computeIfAbsent(task.person(), key -> new ArrayList<>())
                    .add(model.newFixedSizeIntervalVar(start, task.minutes(), "break"));
            if (task.after() >= 0) {
                LinearExpr end = LinearExpr.affine(starts.get(task.after()), 1, task.minutes());
                model.addGreaterOrEqual(start, end);
                model.addLessOrEqual(
                        start,
                        LinearExpr.newBuilder().add(end).add(task.mostApart()).build());
            }
            starts.add(start);
        }
    }

    /** A person's break by its number, from 0; the plan has them in order of time. */
    private long knownBreak(String person, int number) {
        return hint == null
                ? 0
                : hint.breaks().stream()
                        .filter(known -> known.person().equals(person))
                        .skip(number)
                        .mapToLong(
                                known -> net.origin().minutesUntil(known.span().start()))
                        .findFirst()
                        .orElseThrow();
    }

    private void use(int lane, IntervalVar interval, long units) {
        laneIntervals.computeIfAbsent(lane, key -> new ArrayList<>()).add(interval);
        laneDemands.computeIfAbsent(lane, key -> new ArrayList<>()).add(LinearExpr.constant(units));
    }

    private void lanes() {
        for (int lane : new ArrayList<>(laneIntervals.keySet())) {
            int[] free = net.lanes().get(lane).free();
            int most = Arrays.stream(free).max().orElse(0);
            for (int t = 0; t < horizon; ) {
                int from = t;
                while (t < horizon && free[t] == free[from]) {
                    t++;
                }
                if (free[from] < most) {
                    use(lane, model.newFixedInterval(from, t - from, "closed"), most - free[from]);
                }
            }
            CumulativeConstraint cumulative = model.addCumulative(most);
            for (int i = 0; i < laneIntervals.get(lane).size(); i++) {
                cumulative.addDemand(
                        laneIntervals.get(lane).get(i), laneDemands.get(lane).get(i));
            }
        }
    }

    private List<IntervalVar> fixed(boolean[] allowed) {
        List<IntervalVar> blocked = new ArrayList<>();
        for (int t = 0; t < horizon; t++) {
            int from = t;
            while (t < horizon && !allowed[t]) {
                t++;
            }
            if (t > from) {
                blocked.add(model.newFixedInterval(from, t - from, "blocked"));
            }
        }
        return blocked;
    }

    private void people() {
        personIntervals.forEach((p, intervals) -> {
            boolean[] works = new boolean[horizon];
            for (int t = 0; t < horizon; t++) {
                works[t] = (net.handsFree()[t] >>> p & 1) != 0;
            }
            List<IntervalVar> all = new ArrayList<>(intervals);
            all.addAll(fixed(works));
            all.add(model.newFixedInterval(horizon, 1000, "after the day"));
            model.addNoOverlap(all);
        });
    }

    private static int change(Oven oven, int from, int to) {
        if (from == to) {
            return 0;
        }
        double rate = to > from ? oven.heatPerMinute() : oven.coolPerMinute();
        return (int) Math.ceil(Math.abs(to - from) / rate - 1e-9);
    }

    private void ovens() {
        for (int o = 0; o < ovenUses.size(); o++) {
            Oven oven = net.ovens().get(o);
            List<InOven> uses = ovenUses.get(o);
            for (int a = 0; a < uses.size(); a++) {
                for (int b = a + 1; b < uses.size(); b++) {
                    InOven one = uses.get(a);
                    InOven other = uses.get(b);
                    if (one.celsius() == other.celsius()) {
                        continue;
                    }
                    BoolVar first = boolVar("first", value(one.end()) <= value(other.end()));
                    apart(one, other, change(oven, one.celsius(), other.celsius()), first);
                    apart(other, one, change(oven, other.celsius(), one.celsius()), first.not());
                }
            }
        }
    }

    private void apart(InOven before, InOven after, int gap, Literal when) {
        model.addGreaterOrEqual(
                        after.start(),
                        LinearExpr.newBuilder().add(before.end()).add(gap).build())
                .onlyEnforceIf(new Literal[] {when, before.there(), after.there()});
    }
}
