package platecall.tasks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.stream.IntStream;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Step;
import platecall.plan.CopyStep;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.safety.SafetyLimits;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.Begun;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Lane;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Past;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;
import platecall.tasks.TaskNet.Window;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A day that is under way: what has begun stays as it is, all else is still to be planned, and nothing of it begins before now. A copy
 * of which something stood so long that its recipe can't go on any more is made anew, and so is one that was lost.
 *
 * @param net what is still to be planned
 * @param spoiled copies, by id, that are made anew since something of them has waited too long, or can't be shown any more by their call
 */
public record UnderWay(TaskNet net, List<String> spoiled) {

    private static final int FOREVER = Integer.MAX_VALUE;

    /**
     * What is left of a day.
     *
     * @param day a day without troubles
     * @param net all its tasks
     * @param now from when on is planned
     * @param begun every work that has begun, as it happens, with the copies that it still serves; in order of time
     * @param anew copies, by id, of which nothing that has begun can be used
     * @param keepsStale keys of needs of which what is plated is shown though it will be past its use, even if another could be
     *     made sooner
     * @param breaks every meal break that has begun
     * @param notBefore steps of copies that aren't begun before some time
     */
    public static UnderWay of(
            Day day,
            TaskNet net,
            Moment now,
            List<Work> begun,
            List<Break> breaks,
            Set<String> anew,
            Set<String> keepsStale,
            Map<CopyStep, Moment> notBefore) {
        return new Reckoning(day, net, now, begun, anew, keepsStale, notBefore).reckon(breaks);
    }

    private static final class Reckoning {

        private final Day day;
        private final TaskNet net;
        private final int now;
        private final List<Work> works;
        private final Map<CopyStep, Integer> workOf = new HashMap<>();
        private final Map<Recipe, Recipe> untouched = new IdentityHashMap<>();
        private final List<String> spoiled = new ArrayList<>();
        private final Map<CopyStep, Moment> notBefore;
        private final Set<String> keepsStale;
        /** For each need the earliest minutes at which its copies that are begun, but not plated, can be at camera. */
        private final Map<Need, PriorityQueue<Integer>> unplated = new HashMap<>();

        Reckoning(
                Day day,
                TaskNet net,
                Moment now,
                List<Work> works,
                Set<String> anew,
                Set<String> keepsStale,
                Map<CopyStep, Moment> notBefore) {
            this.day = day;
            this.net = net;
            this.now = net.origin().minutesUntil(now);
            this.works = works;
            this.keepsStale = keepsStale;
            this.notBefore = notBefore;
            for (int i = 0; i < works.size(); i++) {
                for (String copy : works.get(i).copies()) {
                    if (anew.contains(copy)) {
                        continue;
                    }
                    workOf.putIfAbsent(works.get(i).with(copy), i);
                }
            }
        }

        UnderWay reckon(List<Break> breaks) {
            for (Copy copy : net.copies()) {
                goingOn(copy, begun(copy))
                        .filter(left -> !left.tasks().get(left.plated()).hasBegun())
                        .ifPresent(left -> unplated.computeIfAbsent(left.need(), need -> new PriorityQueue<>())
                                .add(readyAt(left)));
            }
            Set<CopyStep> kept = new HashSet<>();
            List<Copy> open = new ArrayList<>();
            List<Copy> done = new ArrayList<>();
            List<Copy> missed = new ArrayList<>();
            for (Copy copy : net.copies()) {
                Copy left = left(copy);
                boolean begun = left.recipe().tasks().stream().allMatch(Task::hasBegun);
                if (!begun && shot(copy)) {
                    missed.add(copy);
                    spoiled.remove(copy.id());
                    continue;
                }
                (begun ? done : open).add(left);
                left.recipe().tasks().stream().filter(Task::hasBegun).forEach(task -> kept.add(copy.with(task)));
            }
            List<Begun> begun = new ArrayList<>();
            List<Lane> lanes = net.lanes().stream()
                    .map(lane ->
                            new Lane(lane.station(), lane.free().clone(), lane.keepsApart(), opens(lane.station())))
                    .toList();
            long[] handsFree = net.handsFree().clone();
            for (Work work : works) {
                Begun one = begun(serving(work, kept));
                begun.add(one);
                take(one, lanes, handsFree);
            }
            breaks.forEach(meal -> keepBusy(meal.person(), meal.span(), handsFree));
            return new UnderWay(
                    new TaskNet(
                            net.origin(),
                            net.minutes(),
                            lanes,
                            net.ovens(),
                            net.people(),
                            handsFree,
                            net.noiseAllowed(),
                            net.kitchenSpans(),
                            open.stream().map(Copy::recipe).distinct().toList(),
                            open,
                            Breakdown.breaks(day, net.origin(), now, breaks),
                            net.batchGroups(),
                            net.prices(),
                            new Past(now, begun, breaks, done, missed)),
                    spoiled);
        }

        /** Whether the last take of a copy's setup is over, or all takes are shot that it was to serve. */
        private boolean shot(Copy copy) {
            Setup setup = day.setups().get(copy.setup());
            return setup.isOver(net.origin().plus(now))
                    || CameraTime.isShot(setup, copy.recipe().need(), copy.number());
        }

        /** The work with those of its copies for which it counts: not those that are made anew. Where they wait is told with the plan. */
        private static Work serving(Work work, Set<CopyStep> kept) {
            List<String> copies = work.copies().stream()
                    .filter(copy -> kept.contains(work.with(copy)))
                    .toList();
            return work.serving(copies, List.of());
        }

        private Begun begun(Work work) {
            long people = 0;
            for (Hands hands : work.hands()) {
                int person = net.people().indexOf(hands.person());
                people |= person < 0 ? 0 : 1L << person;
            }
            // what serves no copy any more ends now
            int end = work.copies().isEmpty()
                    ? Math.min(now, minute(work.span().end()))
                    : minute(work.span().end());
            return new Begun(
                    work,
                    minute(work.span().start()),
                    end,
                    mode(work),
                    work.ovenCelsius().orElse(0),
                    day.step(work.dish(), work.step()).map(step -> step.raw()).orElse(false),
                    people);
        }

        /** How a work is done: as the day knows it, or if that has changed since, at the stations that it names. */
        private Mode mode(Work work) {
            return net.recipes().stream()
                    .filter(recipe -> recipe.need().dish().equals(work.dish()))
                    .flatMap(recipe -> recipe.tasks().stream())
                    .filter(task -> task.name().equals(work.step()))
                    .flatMap(task -> task.modes().stream())
                    .filter(mode -> mode.stations().equals(work.stations()))
                    .findFirst()
                    .orElseGet(() -> modeAsNamed(work));
        }

        private Mode modeAsNamed(Work work) {
            List<StationHold> known = work.stations().stream()
                    .filter(hold -> lane(hold.station()) >= 0)
                    .toList();
            int[] lanes = known.stream().mapToInt(hold -> lane(hold.station())).toArray();
            int oven = -1;
            for (int i = 0; work.ovenCelsius().isPresent() && i < net.ovens().size(); i++) {
                int lane = net.ovens().get(i).lane();
                oven = IntStream.of(lanes).anyMatch(used -> used == lane) ? i : oven;
            }
            int[] units = known.stream().mapToInt(StationHold::units).toArray();
            return new Mode(lanes, units, oven, false, known);
        }

        /** Minute at which a storage opens again that is closed now; 0 if it is open, or isn't one. */
        private int opens(String id) {
            Moment at = net.origin().plus(now);
            List<Span> hours = day.station(id)
                    .filter(station -> station.kind().storesFood())
                    .map(day::hoursOf)
                    .orElse(List.of(day.horizon()));
            if (hours.stream().anyMatch(open -> open.contains(at))) {
                return 0;
            }
            return hours.stream()
                    .mapToInt(open -> minute(open.start()))
                    .filter(start -> start > now && start < net.minutes())
                    .min()
                    .orElse(net.minutes());
        }

        private int lane(String station) {
            for (int lane = 0; lane < net.lanes().size(); lane++) {
                if (net.lanes().get(lane).station().equals(station)) {
                    return lane;
                }
            }
            return -1;
        }

        /** Takes what a work still has of stations and hands off what is free. */
        private void take(Begun one, List<Lane> lanes, long[] handsFree) {
            Window rest = within(one.start(), one.end());
            for (int i = 0; i < one.mode().lanes().length; i++) {
                int[] free = lanes.get(one.mode().lanes()[i]).free();
                for (int t = rest.start(); t < rest.end(); t++) {
                    free[t] = Math.max(0, free[t] - one.mode().units()[i]);
                }
            }
            if (!one.work().copies().isEmpty()) {
                one.work().hands().forEach(hands -> keepBusy(hands.person(), hands.span(), handsFree));
            }
        }

        /** A person has no hands free in what is left of a span. */
        private void keepBusy(String who, Span span, long[] handsFree) {
            int person = net.people().indexOf(who);
            Window busy = within(minute(span.start()), minute(span.end()));
            for (int t = busy.start(); t < busy.end() && person >= 0; t++) {
                handsFree[t] &= ~(1L << person);
            }
        }

        private Window within(int start, int end) {
            return new Window(Math.max(now, start), Math.min(net.minutes(), end));
        }

        private int minute(Moment moment) {
            return net.origin().minutesUntil(moment);
        }

        /** The copy with what is left of its recipe; anew if it can't go on. */
        private Copy left(Copy copy) {
            int[] begun = begun(copy);
            Recipe fresh = untouched.computeIfAbsent(
                    waiting(copy), it -> left(it, filled(it.size())).orElseThrow());
            Optional<Recipe> goesOn = goingOn(copy, begun).filter(it -> isWorthIt(copy, it, fresh));
            if (goesOn.isEmpty() && isBegun(begun)) {
                spoiled.add(copy.id());
            }
            return new Copy(goesOn.orElse(fresh), copy.setup(), copy.number(), copy.due(), copy.show());
        }

        /** What is left of the recipe of a copy that is begun, if it can go on. */
        private Optional<Recipe> goingOn(Copy copy, int[] begun) {
            if (!isBegun(begun)) {
                return Optional.empty();
            }
            Recipe waiting = waiting(copy);
            return left(waiting, begun).or(() -> inTime(waiting, begun).flatMap(it -> left(it, begun)));
        }

        /** For each task of a copy the work that is its own and comes after what is its own; -1 if it isn't begun. */
        private int[] begun(Copy copy) {
            Recipe recipe = copy.recipe();
            int[] begun = new int[recipe.size()];
            for (int i = 0; i < begun.length; i++) {
                Integer work = workOf.get(copy.with(recipe.tasks().get(i)));
                boolean ready = recipe.into().get(i).stream().allMatch(arc -> begun[arc.before()] >= 0);
                begun[i] = work != null && ready ? work : -1;
            }
            return begun;
        }

        private static boolean isBegun(int[] begun) {
            return IntStream.of(begun).anyMatch(work -> work >= 0);
        }

        /** The copy's recipe in which no step is begun before the time until which it waits. */
        private Recipe waiting(Copy copy) {
            Recipe recipe = copy.recipe();
            if (recipe.tasks().stream().noneMatch(task -> notBefore.containsKey(copy.with(task)))) {
                return recipe;
            }
            return recipe.with(
                    recipe.tasks().stream()
                            .map(task -> Optional.ofNullable(notBefore.get(copy.with(task)))
                                    .map(time -> open(task, Math.max(task.earliest(), minute(time)), task.latest()))
                                    .orElse(task))
                            .toList(),
                    recipe.into(),
                    recipe.outOf());
        }

        /**
         * The recipe with the waits that the safety clocks have left after what has begun: as planned each wait has its share, but one
         * that lasted longer may take from those that are still to come.
         */
        private Optional<Recipe> inTime(Recipe recipe, int[] begun) {
            Map<String, Span> spans = new HashMap<>();
            for (int i = 0; i < begun.length; i++) {
                if (begun[i] >= 0) {
                    spans.put(end(recipe, i), works.get(begun[i]).span());
                }
            }
            return SafetyLimits.mostWaitsLeft(
                            day,
                            recipe.need(),
                            recipe.usableTo(),
                            spans,
                            net.origin().plus(now))
                    .map(limits -> {
                        List<List<Arc>> into = recipe.into().stream()
                                .map(arcs -> arcs.stream()
                                        .map(arc -> inTime(recipe, arc, limits))
                                        .toList())
                                .toList();
                        List<List<Arc>> outOf = IntStream.range(0, recipe.size())
                                .mapToObj(i -> into.stream()
                                        .flatMap(List::stream)
                                        .filter(arc -> arc.before() == i)
                                        .toList())
                                .toList();
                        return recipe.with(recipe.tasks(), into, outOf);
                    });
        }

        private static Arc inTime(Recipe recipe, Arc arc, Map<SafetyLimits.Wait, Integer> limits) {
            String before = recipe.tasks().get(arc.before()).name();
            Optional<Step> after =
                    Optional.ofNullable(recipe.tasks().get(arc.after()).step());
            int most = after.filter(step -> step.after().contains(before))
                    .flatMap(Step::mostWait)
                    .orElse(FOREVER);
            int inTime = limits.getOrDefault(new SafetyLimits.Wait(before, end(recipe, arc.after())), FOREVER);
            return new Arc(arc.before(), arc.after(), arc.least(), Math.min(most, inTime));
        }

        /** What a wait before a task ends with, in the words of {@link SafetyLimits}. */
        private static String end(Recipe recipe, int task) {
            Task after = recipe.tasks().get(task);
            return after.step() == null ? SafetyLimits.CARRY : after.name();
        }

        /**
         * Whether a copy that is plated can be shown when its take rolls, or is at least no later so than another one would be, one made
         * anew or the next one that isn't plated yet: that has its place then.
         */
        private boolean isWorthIt(Copy copy, Recipe left, Recipe fresh) {
            Task plating = left.tasks().get(left.plated());
            boolean kept = keepsStale.contains(left.need().key());
            if (kept || !plating.hasBegun() || copy.due() + copy.show() <= now) {
                return true;
            }
            int plated = plating.earliest() + plating.minutes();
            int roll = Math.max(copy.due(), readyAt(left));
            if (roll <= plated + left.usableTo()) {
                return true;
            }
            PriorityQueue<Integer> others = unplated.getOrDefault(left.need(), new PriorityQueue<>());
            int other = Math.min(readyAt(fresh), others.isEmpty() ? FOREVER : others.element());
            boolean worth =
                    left.lateMinutes(copy.due(), copy.show(), plated, readyAt(left)) <= Math.max(0, other - copy.due());
            if (!worth && other < readyAt(fresh)) {
                others.remove();
            }
            return worth;
        }

        /** The earliest minute at which a copy can be at camera. */
        private static int readyAt(Recipe recipe) {
            Task last = recipe.tasks().get(recipe.last());
            return last.earliest() + last.leastMinutes();
        }

        private static int[] filled(int size) {
            int[] none = new int[size];
            java.util.Arrays.fill(none, -1);
            return none;
        }

        /** What is left of a recipe of which some tasks have begun; empty if a wait is over that may not be. */
        private Optional<Recipe> left(Recipe recipe, int[] begun) {
            List<Task> tasks = new ArrayList<>();
            List<List<Arc>> into = new ArrayList<>();
            List<List<Arc>> outOf = new ArrayList<>();
            recipe.tasks().forEach(task -> outOf.add(new ArrayList<>()));
            for (int i = 0; i < begun.length; i++) {
                Task task = recipe.tasks().get(i);
                List<Arc> arcs = new ArrayList<>();
                if (begun[i] >= 0) {
                    Work work = works.get(begun[i]);
                    tasks.add(
                            begun(task, minute(work.span().start()), work.span().minutes(), begun[i]));
                    for (Arc arc : recipe.into().get(i)) {
                        arcs.add(asItWas(arc, tasks));
                    }
                } else {
                    Window window = window(recipe, i, tasks);
                    if (window.end() < window.start()) {
                        return Optional.empty();
                    }
                    tasks.add(open(task, window.start(), window.end()));
                    arcs.addAll(recipe.into().get(i));
                }
                into.add(arcs);
                arcs.forEach(arc -> outOf.get(arc.before()).add(arc));
            }
            return Optional.of(recipe.with(tasks, into, outOf));
        }

        /** The first and the last minute at which a task can start. */
        private Window window(Recipe recipe, int i, List<Task> before) {
            int earliest = Math.max(now, recipe.tasks().get(i).earliest());
            int latest = FOREVER;
            for (Arc arc : recipe.into().get(i)) {
                Task task = before.get(arc.before());
                earliest = Math.max(earliest, task.earliest() + task.leastMinutes() + arc.least());
                if (arc.most() != FOREVER && task.latest() != FOREVER) {
                    latest = Math.min(latest, task.latest() + task.minutesFor(task.batchMost()) + arc.most());
                }
            }
            return new Window(earliest, latest);
        }

        /** A wait between two tasks that have both begun is as it is. */
        private static Arc asItWas(Arc arc, List<Task> tasks) {
            Task before = tasks.get(arc.before());
            int waited = tasks.get(arc.after()).earliest() - before.earliest() - before.minutes();
            return new Arc(arc.before(), arc.after(), Math.min(arc.least(), waited), Math.max(arc.most(), waited));
        }

        private static Task begun(Task task, int start, int minutes, int work) {
            return new Task(
                    task.step(),
                    task.name(),
                    minutes,
                    0,
                    0,
                    -1,
                    List.of(new Mode(new int[0], new int[0], -1, false, List.of())),
                    0,
                    0,
                    0,
                    List.of(),
                    start,
                    task.waitLane(),
                    task.waitUnits(),
                    task.raw(),
                    start,
                    work);
        }

        private static Task open(Task task, int earliest, int latest) {
            return new Task(
                    task.step(),
                    task.name(),
                    task.minutes(),
                    task.minutesPerCopy(),
                    task.batchMost(),
                    task.batchGroup(),
                    task.modes(),
                    task.ovenCelsius(),
                    task.handsNeeded(),
                    task.handMask(),
                    task.handParts(),
                    earliest,
                    task.waitLane(),
                    task.waitUnits(),
                    task.raw(),
                    latest,
                    -1);
        }
    }
}
