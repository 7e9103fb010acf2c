package platecall.tasks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import platecall.day.CameraTime;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.looks.LookLife;
import platecall.plan.Plan;
import platecall.plan.Plan.StationHold;
import platecall.safety.SafetyLimits;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Lane;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Oven;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;
import platecall.tasks.TaskNet.Window;
import platecall.units.Moment;
import platecall.units.Span;

/** Breaks a checked day into its {@link TaskNet}. */
public final class Breakdown {

    private static final int FOREVER = Integer.MAX_VALUE;

    /** Within how many minutes a meal break is to begin that should have begun before now, or before its person is back. */
    private static final int OVERDUE = 30;

    private final Day day;
    private final Function<Dish, LookLife> looks;
    private final ToIntFunction<Need> copiesOf;
    private final Moment origin;
    private final int minutes;
    private final Map<String, Integer> laneOf = new HashMap<>();
    private final Map<String, Integer> ovenOf = new HashMap<>();
    /** Steps per batch, and what is carried to camera together. */
    private final Map<Object, Integer> groupOf = new HashMap<>();

    private final List<Lane> lanes = new ArrayList<>();
    private final List<Oven> ovens = new ArrayList<>();

    private Breakdown(Day day, Function<Dish, LookLife> looks, ToIntFunction<Need> copiesOf) {
        this.day = day;
        this.looks = looks;
        this.copiesOf = copiesOf;
        Span horizon = day.horizon();
        this.origin = horizon.start();
        this.minutes = horizon.minutes();
    }

    /**
     * The tasks of a day.
     *
     * @param day a day without troubles
     * @param looks look-life of each dish
     * @param copiesOf how many copies each need gets, at least 1
     */
    public static TaskNet of(Day day, Function<Dish, LookLife> looks, ToIntFunction<Need> copiesOf) {
        return new Breakdown(day, looks, copiesOf).build();
    }

    private TaskNet build() {
        buildLanes();
        buildOvens();
        List<Recipe> recipes = day.needs().stream().map(this::recipe).toList();
        List<Copy> copies = copies(recipes);
        return new TaskNet(
                origin,
                minutes,
                List.copyOf(lanes),
                List.copyOf(ovens),
                day.people().stream().map(Person::id).toList(),
                handsFree(),
                noiseAllowed(),
                day.facts().kitchenHours().stream().map(this::window).toList(),
                recipes,
                copies,
                breaks(day, origin, 0, List.of()),
                groupOf.size(),
                day.facts().prices(),
                TaskNet.Past.NONE);
    }

    private int minuteOf(Moment moment) {
        return origin.minutesUntil(moment);
    }

    /** The part of a span within the horizon. */
    private Window window(Span span) {
        int start = Math.max(0, Math.min(minutes, minuteOf(span.start())));
        return new Window(start, Math.max(start, Math.min(minutes, minuteOf(span.end()))));
    }

    private boolean[] openMinutes(List<Span> spans) {
        boolean[] open = new boolean[minutes];
        for (Span span : spans) {
            Window window = window(span);
            Arrays.fill(open, window.start(), window.end(), true);
        }
        return open;
    }

    private void buildLanes() {
        Map<String, int[]> held = heldUntilRelease();
        Set<String> mixed = storesForBothRawAndReady();
        for (Station station : day.stations()) {
            boolean[] open = openMinutes(day.hoursOf(station));
            int[] taken = held.get(station.id());
            int[] free = new int[minutes];
            for (int t = 0; t < minutes; t++) {
                free[t] = open[t] ? Math.max(0, station.capacity() - (taken == null ? 0 : taken[t])) : 0;
            }
            laneOf.put(station.id(), lanes.size());
            lanes.add(new Lane(station.id(), free, mixed.contains(station.id()), 0));
        }
        for (Circuit circuit : day.circuits()) {
            int[] free = new int[minutes];
            Arrays.fill(free, circuit.usableTenths());
            for (Station station : day.stations()) {
                if (station.kind().alwaysOn() && station.circuit().equals(Optional.of(circuit.id()))) {
                    boolean[] open = openMinutes(day.hoursOf(station));
                    for (int t = 0; t < minutes; t++) {
                        free[t] = Math.max(0, free[t] - (open[t] ? station.tenthsOfAmps() : 0));
                    }
                }
            }
            laneOf.put("circuit " + circuit.id(), lanes.size());
            lanes.add(new Lane("", free, false, 0));
        }
    }

    /** Units of each storage that used copies take up from when they leave the set to their release. */
    private Map<String, int[]> heldUntilRelease() {
        Map<String, int[]> held = new HashMap<>();
        for (Need need : day.needs()) {
            Dish dish = day.dish(need.dish()).orElseThrow();
            Setup setup = day.setup(need.setup()).orElseThrow();
            if (dish.heldIn().isEmpty()) {
                continue;
            }
            int[] units = held.computeIfAbsent(dish.heldIn().get(), id -> new int[minutes]);
            int until = Math.min(minutes, minuteOf(day.releaseOf(setup)));
            for (int number = 1; number <= copiesOf.applyAsInt(need); number++) {
                for (int t = Math.max(0, minuteOf(CameraTime.leaves(setup, need, number))); t < until; t++) {
                    units[t] += dish.storageUnits();
                }
            }
        }
        return held;
    }

    private Set<String> storesForBothRawAndReady() {
        Set<String> raw = new HashSet<>();
        Set<String> ready = new HashSet<>();
        for (Step step : day.steps()) {
            Set<String> side = step.raw() ? raw : ready;
            step.waitsIn().ifPresent(side::add);
            for (StationUse use : step.stations()) {
                for (String id : use.anyOf()) {
                    if (day.station(id).orElseThrow().kind().storesFood()) {
                        side.add(id);
                    }
                }
            }
        }
        raw.retainAll(ready);
        return raw;
    }

    private void buildOvens() {
        for (Station station : day.stations()) {
            if (station.kind() != Station.Kind.OVEN) {
                continue;
            }
            int hottest = day.steps().stream()
                    .filter(step ->
                            step.stations().stream().anyMatch(use -> use.anyOf().contains(station.id())))
                    .mapToInt(step -> step.ovenCelsius().orElse(0))
                    .max()
                    .orElse(0);
            int longest = Math.max(
                    station.minutesToChange(Station.COLD_OVEN_CELSIUS, hottest),
                    station.minutesToChange(hottest, Station.COLD_OVEN_CELSIUS));
            ovenOf.put(station.id(), ovens.size());
            ovens.add(new Oven(
                    laneOf.get(station.id()),
                    station.heatPerMinute(),
                    station.coolPerMinute(),
                    longest,
                    openMinutes(day.hoursOf(station))));
        }
    }

    private long[] handsFree() {
        long[] free = new long[minutes];
        for (int p = 0; p < day.people().size(); p++) {
            for (Span span : day.hoursOf(day.people().get(p))) {
                Window window = window(span);
                for (int t = window.start(); t < window.end(); t++) {
                    free[t] |= 1L << p;
                }
            }
        }
        return free;
    }

    private boolean[] noiseAllowed() {
        boolean[] allowed = new boolean[minutes];
        Arrays.fill(allowed, true);
        for (Span quiet : day.quietSpans()) {
            Window window = window(quiet);
            Arrays.fill(allowed, window.start(), window.end(), false);
        }
        return allowed;
    }

    private Recipe recipe(Need need) {
        Dish dish = day.dish(need.dish()).orElseThrow();
        Setup setup = day.setup(need.setup()).orElseThrow();
        List<Step> steps = day.stepsTo(need.dish(), need.stage());
        Map<String, Integer> indexOf = new HashMap<>();
        List<Task> tasks = new ArrayList<>();
        List<Arc> arcs = new ArrayList<>();
        List<Integer> ends = new ArrayList<>();
        LookLife look = looks.apply(dish);
        Map<SafetyLimits.Wait, Integer> safe = SafetyLimits.mostWaits(day, need, look.usableToMinutes());
        for (Step step : steps) {
            int index = tasks.size();
            List<Arc> waits = waits(step, index, indexOf, safe);
            int earliest = supplies(step);
            for (Arc wait : waits) {
                earliest = Math.max(earliest, ends.get(wait.before()) + wait.least());
            }
            arcs.addAll(waits);
            indexOf.put(step.id(), index);
            Task task = task(step, dish, earliest);
            tasks.add(task);
            ends.add(earliest + task.leastMinutes());
        }
        int plated = tasks.size() - 1;
        if (day.minutesToCamera(need) > 0) {
            int inTime = safe.getOrDefault(new SafetyLimits.Wait(need.stage(), SafetyLimits.CARRY), FOREVER);
            arcs.add(new Arc(plated, plated + 1, 0, inTime));
            tasks.add(carry(need, dish, ends.get(plated)));
        }
        List<List<Arc>> into = byTask(tasks.size(), arcs, Arc::after);
        List<List<Arc>> outOf = byTask(tasks.size(), arcs, Arc::before);
        return new Recipe(
                need,
                List.copyOf(tasks),
                into,
                outOf,
                plated,
                tail(tasks.size(), plated, outOf),
                look,
                look.surelyFromMinutes(),
                look.surelyToMinutes(),
                look.usableToMinutes(),
                (long) setup.weight() * day.facts().prices().lateMinute(),
                (long) need.looksWeight() * day.facts().prices().offPeakMinute());
    }

    /** The waits between a step and those before it, whose tasks are {@code indexOf}. */
    private static List<Arc> waits(
            Step step, int index, Map<String, Integer> indexOf, Map<SafetyLimits.Wait, Integer> safe) {
        List<Arc> waits = new ArrayList<>();
        for (String before : step.predecessors()) {
            boolean timed = step.after().contains(before);
            int least = timed ? step.leastWait() : 0;
            int most = timed ? step.mostWait().orElse(FOREVER) : FOREVER;
            int inTime = safe.getOrDefault(new SafetyLimits.Wait(before, step.id()), FOREVER);
            waits.add(new Arc(indexOf.get(before), index, least, Math.min(most, inTime)));
        }
        return waits;
    }

    /** The way to camera, and back for whoever carries. */
    private Task carry(Need need, Dish dish, int earliest) {
        int way = day.minutesToCamera(need);
        boolean together = dish.copiesPerWalk() > 1;
        return new Task(
                null,
                "carry",
                way,
                0,
                together ? dish.copiesPerWalk() : 0,
                together
                        ? groupOf.computeIfAbsent(List.of(need.setup(), dish.id(), need.stage()), key -> groupOf.size())
                        : -1,
                List.of(new Mode(new int[0], new int[0], -1, false, List.of())),
                0,
                1,
                allPeople(),
                List.of(new HandPart(false, way + day.minutesBack(need))),
                earliest,
                -1,
                0,
                false,
                FOREVER,
                -1);
    }

    private static List<List<Arc>> byTask(int size, List<Arc> arcs, ToIntFunction<Arc> task) {
        return IntStream.range(0, size)
                .mapToObj(i ->
                        arcs.stream().filter(arc -> task.applyAsInt(arc) == i).toList())
                .toList();
    }

    /** Plate-up and carry belong together; beyond them whatever is bound by a limited wait, and all that follows it. */
    private static boolean[] tail(int size, int plated, List<List<Arc>> outOf) {
        boolean[] tail = new boolean[size];
        for (int i = size - 1; i >= 0; i--) {
            tail[i] = i >= plated;
            for (Arc arc : outOf.get(i)) {
                tail[i] |= arc.most() != FOREVER && tail[arc.after()];
            }
            if (tail[i]) {
                follow(i, outOf, tail);
            }
        }
        return tail;
    }

    private static void follow(int i, List<List<Arc>> outOf, boolean[] tail) {
        tail[i] = true;
        for (Arc arc : outOf.get(i)) {
            if (!tail[arc.after()]) {
                follow(arc.after(), outOf, tail);
            }
        }
    }

    private long allPeople() {
        return (1L << day.people().size()) - 1;
    }

    /** First minute at which the ingredients of a step are all there. */
    private int supplies(Step step) {
        int earliest = 0;
        for (Ingredient ingredient : day.ingredients()) {
            boolean here = ingredient.dish().equals(step.dish())
                    && ingredient
                            .step()
                            .map(step.id()::equals)
                            .orElse(step.predecessors().isEmpty());
            if (here && ingredient.arrives().isPresent()) {
                earliest = Math.max(earliest, minuteOf(ingredient.arrives().get()));
            }
        }
        return earliest;
    }

    private Task task(Step step, Dish dish, int earliest) {
        int group = step.perBatch() ? groupOf.computeIfAbsent(step, key -> groupOf.size()) : -1;
        int waitLane = step.waitsIn().map(laneOf::get).orElse(-1);
        return new Task(
                step,
                step.id(),
                step.minutesLikely(),
                step.perBatch() ? step.minutesPerCopy() : 0,
                step.batchMost().orElse(0),
                group,
                modes(step),
                step.ovenCelsius().orElse(0),
                step.hands(),
                handMask(step),
                handParts(step),
                earliest,
                dish.storageUnits() == 0 ? -1 : waitLane,
                dish.storageUnits(),
                step.raw(),
                FOREVER,
                -1);
    }

    private long handMask(Step step) {
        long mask = 0;
        for (int p = 0; p < day.people().size(); p++) {
            Person person = day.people().get(p);
            if (step.skill().map(person.skills()::contains).orElse(true)) {
                mask |= 1L << p;
            }
        }
        return mask;
    }

    private static List<HandPart> handParts(Step step) {
        if (step.hands() == 0) {
            return List.of();
        }
        int first = step.handsFirst().orElse(0);
        int last = step.handsLast().orElse(0);
        // of a batch with more copies they may not meet, but its parts are the same for any number of copies
        boolean meet = first + last >= step.minutesFor(1);
        if (step.handsThroughout() || meet) {
            return List.of(new HandPart(false, 0));
        }
        List<HandPart> parts = new ArrayList<>();
        if (first > 0) {
            parts.add(new HandPart(false, first));
        }
        if (last > 0) {
            parts.add(new HandPart(true, last));
        }
        return List.copyOf(parts);
    }

    /** One mode for each choice of stations. */
    private List<Mode> modes(Step step) {
        List<List<StationHold>> choices = new ArrayList<>();
        choices.add(List.of());
        for (StationUse use : step.stations()) {
            List<List<StationHold>> longer = new ArrayList<>();
            for (List<StationHold> choice : choices) {
                for (String id : use.anyOf()) {
                    List<StationHold> more = new ArrayList<>(choice);
                    more.add(new StationHold(id, use.units()));
                    longer.add(more);
                }
            }
            choices = longer;
        }
        return choices.stream().map(choice -> mode(step, choice)).toList();
    }

    private Mode mode(Step step, List<StationHold> holds) {
        Map<Integer, Integer> units = new LinkedHashMap<>();
        int oven = -1;
        for (StationHold hold : holds) {
            Station station = day.station(hold.station()).orElseThrow();
            units.merge(laneOf.get(station.id()), hold.units(), Integer::sum);
            if (step.ovenCelsius().isPresent() && ovenOf.containsKey(station.id())) {
                oven = ovenOf.get(station.id());
            }
            if (!station.kind().alwaysOn() && station.circuit().isPresent() && station.amps() > 0) {
                Integer lane = laneOf.get("circuit " + station.circuit().get());
                units.merge(lane, station.tenthsOfAmps() * hold.units(), Integer::sum);
            }
        }
        return new Mode(
                units.keySet().stream().mapToInt(Integer::intValue).toArray(),
                units.values().stream().mapToInt(Integer::intValue).toArray(),
                oven,
                day.disturbsSet(step, holds.stream().map(StationHold::station).toList()),
                List.copyOf(holds));
    }

    private List<Copy> copies(List<Recipe> recipes) {
        Map<String, Integer> setupIndex = new HashMap<>();
        day.setups().forEach(setup -> setupIndex.put(setup.id(), setupIndex.size()));
        List<Copy> copies = new ArrayList<>();
        for (Recipe recipe : recipes) {
            Setup setup = day.setup(recipe.need().setup()).orElseThrow();
            for (int number = 1; number <= copiesOf.applyAsInt(recipe.need()); number++) {
                CameraTime camera = CameraTime.of(setup, recipe.need(), number);
                copies.add(new Copy(
                        recipe, setupIndex.get(setup.id()), number, minuteOf(camera.due()), camera.showMinutes()));
            }
        }
        return List.copyOf(copies);
    }

    /**
     * The breaks that are still due of everybody whose shift is longer than the meal rule allows without one.
     *
     * @param now nothing begins before this minute
     * @param begun breaks that have begun; those still due follow the last of them in each shift
     */
    static List<BreakTask> breaks(Day day, Moment origin, int now, List<Plan.Break> begun) {
        List<BreakTask> breaks = new ArrayList<>();
        if (day.facts().mealAfterMinutes().isEmpty()) {
            return breaks;
        }
        int most = day.facts().mealAfterMinutes().get();
        int meal = day.facts().mealMinutes();
        for (int p = 0; p < day.people().size(); p++) {
            Person person = day.people().get(p);
            List<Span> shifts = person.shifts().isEmpty()
                    ? day.facts().kitchenHours()
                    : Span.intersection(person.shifts(), day.facts().kitchenHours());
            for (Span shift : shifts) {
                Moment since = begun.stream()
                        .filter(one -> one.person().equals(person.id())
                                && shift.contains(one.span().start()))
                        .map(one -> one.span().end())
                        .reduce(shift.start(), Moment::later);
                int start = origin.minutesUntil(since);
                int end = origin.minutesUntil(shift.end());
                int count = end <= now ? 0 : Math.max(0, (end - start - most + most + meal - 1) / (most + meal));
                for (int n = 1; n <= count; n++) {
                    int latest = Math.min(start + n * most + (n - 1) * meal, end - meal);
                    int earliest = Math.max(now, Math.max(start, end - (count - n + 1) * (most + meal)));
                    int after = n == 1 ? -1 : breaks.size() - 1;
                    int first = firstThere(day, origin, person, earliest, meal);
                    breaks.add(
                            new BreakTask(p, meal, earliest, latest < first ? first + OVERDUE : latest, after, most));
                }
            }
        }
        return List.copyOf(breaks);
    }

    /** First minute from {@code from} on at which somebody is there for so many minutes; that one if there is none. */
    private static int firstThere(Day day, Moment origin, Person person, int from, int minutes) {
        return day.hoursOf(person).stream()
                .filter(there -> Math.max(from, origin.minutesUntil(there.start())) + minutes
                        <= origin.minutesUntil(there.end()))
                .mapToInt(there -> Math.max(from, origin.minutesUntil(there.start())))
                .min()
                .orElse(from);
    }
}
