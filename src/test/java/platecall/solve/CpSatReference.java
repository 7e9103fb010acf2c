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
 * days with one span of kitchen hours on which every copy can be made.
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

    private final TaskNet net;
    private final CpModel model = new CpModel();
    private final int horizon;
    private final Map<Integer, List<IntervalVar>> laneIntervals = new HashMap<>();
    private final Map<Integer, List<LinearExpr>> laneDemands = new HashMap<>();
    private final Map<Integer, List<IntervalVar>> personIntervals = new HashMap<>();
    private final List<List<Object[]>> ovenUses = new ArrayList<>();
    private final LinearExprBuilder cost = LinearExpr.newBuilder();
    private final IntVar firstStart;

    private CpSatReference(TaskNet net) {
        this.net = net;
        horizon = net.minutes();
        firstStart = model.newIntVar(0, horizon, "first");
        net.ovens().forEach(oven -> ovenUses.add(new ArrayList<>()));
    }

    /** @param hint a known plan to start from, or null */
    static Answer solve(TaskNet net, double seconds, int workers, Published hint) {
        CpSatReference reference = new CpSatReference(net);
        reference.build(hint);
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setMaxTimeInSeconds(seconds)
                .setNumWorkers(workers)
                .setRandomSeed(1);
        CpSolverStatus status = solver.solve(reference.model);
        if (status == CpSolverStatus.MODEL_INVALID || status == CpSolverStatus.INFEASIBLE) {
            throw new IllegalStateException(status + " " + reference.model.validate());
        }
        boolean optimal = status == CpSolverStatus.OPTIMAL;
        boolean found = optimal || status == CpSolverStatus.FEASIBLE;
        return new Answer(found, optimal, found ? Math.round(solver.objectiveValue()) : -1, (long)
                Math.ceil(solver.bestObjectiveBound() - 1e-6));
    }

    private void build(Published hint) {
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
                starts[c][i] = model.newIntVar(task.earliest(), horizon, "s");
                if (task.perBatch()) {
                    groups.computeIfAbsent(task.batchGroup(), key -> new ArrayList<>())
                            .add(new int[] {c, i});
                    ends[c][i] = LinearExpr.affine(model.newIntVar(0, horizon, "e"), 1, 0);
                } else {
                    ends[c][i] = LinearExpr.affine(starts[c][i], 1, task.minutes());
                    jobs[c][i] = job(task, starts[c][i], task.minutes(), null, null);
                }
                if (hint != null && hint.starts(c) != null) {
                    model.addHint(starts[c][i], hint.starts(c)[i]);
                }
            }
        }
        BoolVar[][] used = new BoolVar[copies.size()][net.people().size()];
        for (int c = 0; c < copies.size(); c++) {
            for (int p = 0; p < net.people().size(); p++) {
                used[c][p] = model.newBoolVar("used");
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
    private Job job(Task task, IntVar start, int duration, IntVar length, BoolVar present) {
        LinearExpr size = length == null ? LinearExpr.constant(duration) : LinearExpr.affine(length, 1, 0);
        LinearExpr end = LinearExpr.affine(start, 1, duration);
        if (length != null) {
            IntVar ends = model.newIntVar(0, horizon, "ends");
            model.addEquality(
                    ends, LinearExpr.newBuilder().add(start).add(length).build());
            end = LinearExpr.affine(ends, 1, 0);
        }
        List<BoolVar> modes = new ArrayList<>();
        for (Mode mode : task.modes()) {
            BoolVar chosen = model.newBoolVar("mode");
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
                ovenUses.get(mode.oven()).add(new Object[] {task.ovenCelsius(), start, end, chosen});
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
            for (int p = 0; p < net.people().size(); p++) {
                if ((task.handMask() >>> p & 1) == 0) {
                    continue;
                }
                BoolVar here = model.newBoolVar("hand");
                chosen.put(p, here);
                IntervalVar interval;
                if (part.length() == 0) {
                    interval = model.newOptionalIntervalVar(start, size, end, here, "hands");
                } else if (part.fromEnd()) {
                    LinearExpr from =
                            LinearExpr.newBuilder().add(end).add(-part.length()).build();
                    interval =
                            model.newOptionalIntervalVar(from, LinearExpr.constant(part.length()), end, here, "hands");
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
        for (int m = 0; m < count; m++) {
            for (int b = 0; b <= m; b++) {
                rides[m][b] = model.newBoolVar("rides");
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
            IntVar start = model.newIntVar(0, horizon, "batch");
            IntVar length = model.newIntVar(task.minutesFor(0), task.minutesFor(task.batchMost()), "length");
            model.addEquality(
                    length,
                    LinearExpr.newBuilder()
                            .add(task.minutes())
                            .addTerm(number, task.minutesPerCopy())
                            .build());
            Job job = job(task, start, 0, length, present);
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
                IntVar until = model.newIntVar(0, horizon, "until");
                LinearExpr[] next = recipe.outOf().get(i).stream()
                        .map(arc -> LinearExpr.affine(starts[arc.after()], 1, 0))
                        .toArray(LinearExpr[]::new);
                model.addMaxEquality(until, next);
                IntVar wait = model.newIntVar(0, horizon, "wait");
                use(task.waitLane(), model.newIntervalVar(ends[i], wait, until, "stored"), task.waitUnits());
            }
        }
        LinearExpr ready = ends[recipe.last()];
        LinearExpr plated = ends[recipe.plated()];
        IntVar roll = model.newIntVar(copy.due(), Math.max(horizon, copy.due()), "roll");
        model.addMaxEquality(roll, new LinearExpr[] {ready, LinearExpr.constant(copy.due())});
        cost.addTerm(excess(1, ready, null, -copy.due()), recipe.lateWeight());
        cost.addTerm(
                excess(1, LinearExpr.affine(roll, 1, 0), plated, copy.show() - recipe.usableTo()), recipe.lateWeight());
        cost.addTerm(excess(1, plated, LinearExpr.affine(roll, 1, 0), recipe.peakFrom()), recipe.offPeakWeight());
        cost.addTerm(
                excess(1, LinearExpr.affine(roll, 1, 0), plated, copy.show() - recipe.peakTo()),
                recipe.offPeakWeight());
        if (net.prices().handChange() > 0) {
            IntVar changes = model.newIntVar(0, net.people().size(), "changes");
            model.addGreaterOrEqual(
                    changes, LinearExpr.newBuilder().addSum(used).add(-1).build());
            cost.addTerm(changes, net.prices().handChange());
        }
    }

    /** A variable that is at least {@code a - b + constant} and at least 0. */
    private IntVar excess(int sign, LinearExpr a, LinearExpr b, int constant) {
        IntVar over = model.newIntVar(0, 4L * horizon, "over");
        LinearExprBuilder sum = LinearExpr.newBuilder().addTerm(a, sign).add(constant);
        if (b != null) {
            sum.addTerm(b, -sign);
        }
        model.addGreaterOrEqual(over, sum.build());
        return over;
    }

    private void breaks() {
        List<IntVar> starts = new ArrayList<>();
        for (BreakTask task : net.breaks()) {
            IntVar start = model.newIntVar(task.earliest(), task.latest(), "break");
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
            List<Object[]> uses = ovenUses.get(o);
            for (int a = 0; a < uses.size(); a++) {
                for (int b = a + 1; b < uses.size(); b++) {
                    int celsiusA = (int) uses.get(a)[0];
                    int celsiusB = (int) uses.get(b)[0];
                    if (celsiusA == celsiusB) {
                        continue;
                    }
                    BoolVar first = model.newBoolVar("first");
                    Literal[] both = {first, (BoolVar) uses.get(a)[3], (BoolVar) uses.get(b)[3]};
                    Literal[] reverse = {first.not(), (BoolVar) uses.get(a)[3], (BoolVar) uses.get(b)[3]};
                    apart(uses.get(a), uses.get(b), change(oven, celsiusA, celsiusB), both);
                    apart(uses.get(b), uses.get(a), change(oven, celsiusB, celsiusA), reverse);
                }
            }
        }
    }

    private void apart(Object[] before, Object[] after, int gap, Literal[] when) {
        model.addGreaterOrEqual(
                        (IntVar) after[1],
                        LinearExpr.newBuilder()
                                .add((LinearExpr) before[2])
                                .add(gap)
                                .build())
                .onlyEnforceIf(when);
    }
}
