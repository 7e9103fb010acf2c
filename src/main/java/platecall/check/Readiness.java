package platecall.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Ingredient;
import platecall.day.Look;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.Step;
import platecall.safety.SafetyLimits;
import platecall.safety.SafetyLimits.Chill;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * The earliest minute at which a dish can be at camera: the longest chain of steps and least waits, each step at its
 * first chance in an empty kitchen. Calls before that, ingredients that come too late for a call, and hot food that can't be
 * chilled in time.
 */
final class Readiness {

    private final Day day;
    private final Recipes recipes;
    private final EmptyKitchen kitchen;
    private final Set<List<String>> workable;
    private final Map<String, Integer> usable;
    private final ToIntFunction<Need> copiesOf;
    private final Map<LateCall, Late> lateCalls = new LinkedHashMap<>();
    private final Set<Integer> lateIngredients = new HashSet<>();
    private final Set<Chill> slowChills = new HashSet<>();
    private final Set<String> toldStations = new HashSet<>();

    /** What is wanted too early at a setup: its heroes at the call, its stand-ins at the lighting call. */
    private record LateCall(Setup setup, Moment due, String column, String dish) {}

    /**
     * How late a dish is.
     *
     * @param ready first minute at which it can be at camera
     * @param shortage hands that are the cause, if they are
     */
    private record Late(int ready, Optional<Shortage> shortage) {}

    /** What waits for hands that are not there: {@code step} of the dish; empty if nobody can carry it. */
    private record Shortage(Optional<Step> step) {}

    /**
     * @param workable steps that can work, as {@link Work#key}
     * @param usable minutes after plate-up for which a dish is usable, if they are limited
     */
    Readiness(
            Day day,
            Recipes recipes,
            EmptyKitchen kitchen,
            Set<List<String>> workable,
            Map<String, Integer> usable,
            ToIntFunction<Need> copiesOf) {
        this.day = day;
        this.recipes = recipes;
        this.kitchen = kitchen;
        this.workable = workable;
        this.usable = usable;
        this.copiesOf = copiesOf;
    }

    void check(Findings found) {
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            Optional<Setup> setup = day.setup(need.setup());
            if (setup.isEmpty() || day.dish(need.dish()).isEmpty() || !recipes.sound(need.dish())) {
                continue;
            }
            List<Step> steps = day.stepsTo(need.dish(), need.stage());
            boolean carried = day.minutesToCamera(need) > 0;
            if (steps.isEmpty()
                    || !steps.stream().allMatch(step -> workable.contains(Work.key(step)))
                    || carried && day.people().isEmpty()) {
                continue;
            }
            boolean inTime = ready(need, setup.get(), steps, found);
            if (inTime) {
                stale(row, need, setup.get(), steps, found);
                cooledTooSlowly(need, setup.get(), steps, found);
            }
        }
        lateCalls(found);
    }

    private boolean ready(Need need, Setup setup, List<Step> steps, Findings found) {
        Moment due = CameraTime.of(setup, need, 1).due();
        int wanted = kitchen.minuteOf(due);
        int ready = earliest(need, steps, step -> 0);
        boolean late = ready > wanted;
        Set<String> closed = late ? closed(need, steps, wanted, step -> 0) : Set.of();
        if (!closed.isEmpty()) {
            closedTooLong(closed, setup, due, need.dish() + " " + readyAt(ready), ready == EmptyKitchen.NEVER, found);
        } else if (late) {
            boolean atLighting =
                    need.part() == Part.STAND_IN && setup.lighting().isPresent();
            lateCalls.merge(
                    new LateCall(setup, due, atLighting ? "lighting" : "call", need.dish()),
                    new Late(ready, shortage(need, steps, wanted, step -> 0)),
                    (one, other) -> other.ready() > one.ready() ? other : one);
        }
        for (int row = 0; row < day.ingredients().size(); row++) {
            Ingredient ingredient = day.ingredients().get(row);
            if (!ingredient.dish().equals(need.dish()) || ingredient.arrives().isEmpty()) {
                continue;
            }
            int arrival = kitchen.minuteOf(ingredient.arrives().get());
            ToIntFunction<Step> supplied = step -> ingredient.goesInto(step) ? arrival : 0;
            int with = earliest(need, steps, supplied);
            if (with > Math.max(wanted, ready)) {
                late = true;
                Set<String> shut = closed(need, steps, wanted, supplied);
                if (!shut.isEmpty()) {
                    String later = "with " + ingredient.name() + " from "
                            + Wording.clock(day, ingredient.arrives().get()) + " on, " + need.dish() + " ";
                    closedTooLong(shut, setup, due, later + readyAt(with), with == EmptyKitchen.NEVER, found);
                } else if (lateIngredients.add(row)) {
                    tooLate(
                            row,
                            ingredient,
                            setup,
                            due,
                            new Late(with, shortage(need, steps, wanted, supplied)),
                            found);
                }
            }
        }
        return !late;
    }

    private void tooLate(int row, Ingredient ingredient, Setup setup, Moment due, Late with, Findings found) {
        found.add(
                Sheet.INGREDIENTS,
                row,
                "arrives",
                Wording.clock(day, ingredient.arrives().orElseThrow()),
                "is too late for setup " + setup.id() + " at " + Wording.clock(day, due) + ": with " + ingredient.name()
                        + " from then on, " + ingredient.dish() + " " + readyAt(with),
                "Maybe an earlier delivery, "
                        + with.shortage()
                                .map(shortage -> moreHands(shortage) + ", ")
                                .orElse("") + "or a later call.");
    }

    /** Tells stations whose own hours alone make a dish late or stale, each once for all dishes. */
    private void closedTooLong(
            Set<String> closed, Setup setup, Moment due, String what, boolean whateverTheCall, Findings found) {
        for (int row = 0; row < day.stations().size(); row++) {
            Station station = day.stations().get(row);
            if (closed.contains(station.id()) && toldStations.add(station.id())) {
                found.add(
                        Sheet.STATIONS,
                        row,
                        "hours",
                        Wording.clock(day, station.hours()),
                        "are not enough for setup " + setup.id() + " at " + Wording.clock(day, due) + ": " + what,
                        "Maybe " + Wording.cell(day, day.hoursOf(station.withHours(List.of())))
                                + (whateverTheCall ? "." : ", or another call."));
            }
        }
    }

    /**
     * Stations without whose own hours a dish would be in time, none of which can be left out; empty if longer hours of hands help,
     * or these don't.
     */
    private Set<String> closed(Need need, List<Step> steps, int wanted, ToIntFunction<Step> supplied) {
        return closed(steps, in -> earliest(in, need, steps, supplied) <= wanted);
    }

    private Set<String> closed(List<Step> steps, Predicate<EmptyKitchen> fine) {
        Set<String> closed = new LinkedHashSet<>();
        steps.stream()
                .flatMap(step -> step.stations().stream())
                .flatMap(use -> use.anyOf().stream())
                .filter(id ->
                        day.station(id).filter(it -> !it.hours().isEmpty()).isPresent())
                .forEach(closed::add);
        if (closed.isEmpty() || fine.test(kitchen.staffed()) || !fine.test(kitchen.open(closed))) {
            return Set.of();
        }
        for (String id : List.copyOf(closed)) {
            closed.remove(id);
            if (!fine.test(kitchen.open(closed))) {
                closed.add(id);
            }
        }
        return closed;
    }

    private String readyAt(Late late) {
        boolean never = late.ready() == EmptyKitchen.NEVER;
        return readyAt(late.ready())
                + late.shortage()
                        .map(shortage -> ": " + hands(shortage))
                        .orElse(never ? " within the hours of the kitchen" : "");
    }

    private String readyAt(int ready) {
        return ready == EmptyKitchen.NEVER
                ? "can't be ready"
                : "can be ready at " + Wording.clock(day, kitchen.momentOf(ready)) + " at the earliest";
    }

    private String hands(Shortage shortage) {
        return shortage.step()
                .map(step -> "step " + step.id() + " " + Wording.hands(day, step))
                .orElse("nobody is there to carry it");
    }

    private String moreHands(Shortage shortage) {
        return shortage.step().map(step -> Wording.longerHours(day, step)).orElse("longer hours in sheet people");
    }

    /** The hands that keep a dish waiting, if it would be in time with everybody there in all kitchen hours. */
    private Optional<Shortage> shortage(Need need, List<Step> steps, int wanted, ToIntFunction<Step> supplied) {
        EmptyKitchen staffed = kitchen.staffed();
        if (earliest(staffed, need, steps, supplied) > wanted) {
            return Optional.empty();
        }
        Map<String, Integer> ends = new HashMap<>();
        Map<String, Integer> staffedEnds = ends(staffed, steps, supplied).orElseThrow();
        Optional<Step> longest = Optional.empty();
        int most = 0;
        for (Step step : steps) {
            int from = from(step, ends, supplied);
            int end = kitchen.earliestEnd(step, from);
            int wait = end - staffed.earliestEnd(step, from);
            if (end != EmptyKitchen.NEVER && wait > most) {
                most = wait;
                longest = Optional.of(step);
            }
            if (end == EmptyKitchen.NEVER) {
                // a step that only comes too late is not the cause, but the one that waited before it
                boolean itself = kitchen.earliestEnd(step, from(step, staffedEnds, supplied)) == EmptyKitchen.NEVER;
                return Optional.of(new Shortage(Optional.of(itself ? step : longest.orElse(step))));
            }
            ends.put(step.id(), end);
        }
        return Optional.of(new Shortage(longest));
    }

    /** For each setup its latest dish only: a call that suits this suits all. */
    private void lateCalls(Findings found) {
        Map<List<Object>, LateCall> worst = new LinkedHashMap<>();
        lateCalls.forEach((late, ready) -> worst.merge(
                List.of(late.setup().id(), late.column()),
                late,
                (one, other) ->
                        lateCalls.get(other).ready() > lateCalls.get(one).ready() ? other : one));
        for (LateCall late : worst.values()) {
            Late ready = lateCalls.get(late);
            found.add(
                    Sheet.SETUPS,
                    day.setups().indexOf(late.setup()),
                    late.column(),
                    Wording.clock(day, late.due()),
                    "is too early: " + late.dish() + " " + readyAt(ready),
                    nextDate(late.due())
                            .map(next -> "Maybe " + next + ".")
                            .orElseGet(() -> "Maybe "
                                    + (ready.ready() == EmptyKitchen.NEVER
                                            ? ""
                                            : Wording.clock(day, kitchen.momentOf(ready.ready())) + ", or ")
                                    + ready.shortage()
                                            .map(this::moreHands)
                                            .orElse(
                                                    ready.ready() == EmptyKitchen.NEVER
                                                            ? "longer kitchen hours"
                                                            : "an earlier start of the kitchen")
                                    + "."));
        }
    }

    /** The same clock time a day later, if the kitchen is open then and wasn't: on a night shoot a date is missed easily. */
    private Optional<String> nextDate(Moment due) {
        Moment next = Moment.of(due.in(day.facts().zone()).plusDays(1));
        List<Span> hours = day.facts().kitchenHours();
        return hours.stream().noneMatch(span -> span.contains(due))
                        && hours.stream().anyMatch(span -> span.contains(next))
                ? Optional.of(Wording.clock(day, next))
                : Optional.empty();
    }

    /** @param supplied first minute at which the ingredients of a step are there */
    private int earliest(Need need, List<Step> steps, ToIntFunction<Step> supplied) {
        return earliest(kitchen, need, steps, supplied);
    }

    private int earliest(EmptyKitchen in, Need need, List<Step> steps, ToIntFunction<Step> supplied) {
        return ends(in, steps, supplied).map(ends -> atCamera(in, need, ends)).orElse(EmptyKitchen.NEVER);
    }

    /** First minute at which a step may start by what comes before it and its ingredients. */
    private static int from(Step step, Map<String, Integer> ends, ToIntFunction<Step> supplied) {
        int from = supplied.applyAsInt(step);
        for (String before : step.predecessors()) {
            from = Math.max(from, ends.get(before) + (step.after().contains(before) ? step.leastWait() : 0));
        }
        return from;
    }

    /** When each step ends at the earliest; empty if one of them can't be done any more. */
    private static Optional<Map<String, Integer>> ends(
            EmptyKitchen in, List<Step> steps, ToIntFunction<Step> supplied) {
        Map<String, Integer> ends = new HashMap<>();
        for (Step step : steps) {
            int end = in.earliestEnd(step, from(step, ends, supplied));
            if (end == EmptyKitchen.NEVER) {
                return Optional.empty();
            }
            ends.put(step.id(), end);
        }
        return Optional.of(ends);
    }

    private int atCamera(EmptyKitchen in, Need need, Map<String, Integer> ends) {
        int plated = ends.get(need.stage());
        int way = day.minutesToCamera(need);
        if (way == 0) {
            return plated;
        }
        int start = in.earliestCarry(plated, way + day.minutesBack(need));
        return start == EmptyKitchen.NEVER ? start : start + way;
    }

    /** Hot food that can't come into the cold before the first cooling stage has to be over. */
    private void cooledTooSlowly(Need need, Setup setup, List<Step> steps, Findings found) {
        Moment due = CameraTime.of(setup, need, 1).due();
        for (Chill chill : SafetyLimits.chills(day, need)) {
            int least = leastBetween(chill, need, steps, kitchen.minuteOf(due));
            if (least <= chill.most() || least == EmptyKitchen.NEVER || !slowChills.add(chill)) {
                continue;
            }
            found.add(
                    Sheet.STEPS,
                    day.steps().indexOf(chill.cold()),
                    chill.inside() ? "station" : "waits in",
                    chill.inside()
                            ? Wording.uses(chill.cold().stations())
                            : chill.cold().waitsIn().orElseThrow(),
                    "can't be reached in time for setup " + setup.id() + " at " + Wording.clock(day, due)
                            + ": at least "
                            + Wording.minutes(least) + " after " + (chill.held() ? "the hot hold before " : "")
                            + chill.hot().id() + ", but food that was hot must be in the cold within " + chill.most()
                            + " by the safety profile",
                    "Maybe longer hours for the stations and hands of the steps between, or a hot hold until then.");
        }
    }

    /** Least minutes between hot and cold of all plans of an empty kitchen that are in time, or fewer if batches grow. */
    private int leastBetween(Chill chill, Need need, List<Step> steps, int due) {
        int least = EmptyKitchen.NEVER;
        for (int start = due; start >= 0 && least > chill.most(); start--) {
            int from = start;
            Optional<Map<String, Integer>> ends =
                    ends(kitchen, steps, step -> Math.max(arrival(step), step.equals(chill.hot()) ? from : 0));
            if (ends.isPresent() && atCamera(kitchen, need, ends.get()) <= due) {
                // a larger batch that starts at the same time ends later, and one that ends then has started earlier
                int hot = ends.get().get(chill.hot().id())
                        + (chill.held() ? -chill.hot().minutesFor(1) : kitchen.mostLonger(chill.hot()));
                int cold = ends.get().get(chill.cold().id())
                        - (chill.inside() ? chill.cold().minutesFor(1) + kitchen.mostLonger(chill.cold()) : 0);
                least = Math.min(least, cold - hot);
            }
        }
        return least;
    }

    /** First minute at which the ingredients of a step are all there. */
    private int arrival(Step step) {
        return day.ingredients().stream()
                .filter(ingredient -> ingredient.goesInto(step))
                .flatMap(ingredient -> ingredient.arrives().stream())
                .mapToInt(kitchen::minuteOf)
                .max()
                .orElse(0);
    }

    /** Copies that even the last possible plate-up leaves too old for their take. */
    private void stale(int row, Need need, Setup setup, List<Step> steps, Findings found) {
        Integer usableMinutes = usable.get(need.dish());
        if (usableMinutes == null || need.part() == Part.STAND_IN) {
            return;
        }
        if (usableMinutes < day.minutesToCamera(need)) {
            staleOnTheWay(row, need, usableMinutes, found);
            return;
        }
        Step last = steps.get(steps.size() - 1);
        Set<Moment> dues = new LinkedHashSet<>();
        for (int number = 1; number <= copiesOf.applyAsInt(need); number++) {
            dues.add(CameraTime.of(setup, need, number).due());
        }
        for (Moment due : dues) {
            int wanted = kitchen.minuteOf(due);
            int plated = latestPlated(kitchen, need, last, wanted);
            if (plated < 0 || wanted - plated <= usableMinutes) {
                continue;
            }
            Predicate<EmptyKitchen> fine = in -> wanted - latestPlated(in, need, last, wanted) <= usableMinutes;
            String what = "it can't be plated after " + Wording.clock(day, kitchen.momentOf(plated))
                    + ", and is usable for " + Wording.minutes(usableMinutes);
            Set<String> closed = closed(steps, fine);
            if (!closed.isEmpty()) {
                closedTooLong(closed, setup, due, need.dish() + " is past usable by then: " + what, false, found);
                return;
            }
            Optional<Shortage> shortage = fine.test(kitchen.staffed())
                    ? Optional.of(new Shortage(gone(last, leave(kitchen, need, wanted))))
                    : Optional.empty();
            found.add(
                    Sheet.NEEDS,
                    row,
                    "dish",
                    need.dish(),
                    "is past usable at " + Wording.clock(day, due) + ": " + what
                            + shortage.map(it -> ": " + hands(it)).orElse(""),
                    "Maybe " + shortage.map(this::moreHands).orElse("longer hours for the kitchen")
                            + ", or an earlier call.");
            return;
        }
    }

    private void staleOnTheWay(int row, Need need, int usableMinutes, Findings found) {
        boolean table = day.dish(need.dish()).orElseThrow().look().kind() == Look.Kind.TABLE;
        found.add(
                Sheet.NEEDS,
                row,
                "dish",
                need.dish(),
                "is past usable before it is at camera: it is carried for "
                        + Wording.minutes(day.minutesToCamera(need)) + ", and is usable for "
                        + Wording.minutes(usableMinutes),
                "Maybe "
                        + (table
                                ? "a longer usable to in sheet dishes"
                                : "other rows in sheet looks, or other air on set")
                        + ", or a shorter walk.");
    }

    /** Last minute at which a copy can be plated that is at camera at {@code wanted}; -1 if there is none. */
    private int latestPlated(EmptyKitchen in, Need need, Step last, int wanted) {
        int leave = leave(in, need, wanted);
        return leave < 0 ? leave : in.latestEnd(last, leave);
    }

    /** The step whose hands are gone too soon for a copy that leaves at {@code leave}; empty if it is those that carry it. */
    private Optional<Step> gone(Step last, int leave) {
        if (kitchen.staffed().latestEnd(last, leave) <= kitchen.latestEnd(last, leave)) {
            return Optional.empty();
        }
        Step step = last;
        int by = leave;
        for (Optional<Step> before = Optional.of(last); before.isPresent(); ) {
            step = before.get();
            int start = kitchen.latest(step, by) - step.leastWait();
            before = tooEarly(step, start);
            by = start;
        }
        return Optional.of(step);
    }

    /** A step that ends too long before {@code by} for one that comes after it. */
    private Optional<Step> tooEarly(Step step, int by) {
        return step.after().stream()
                .map(id -> day.step(step.dish(), id).orElseThrow())
                .filter(before -> step.mostWait().isPresent()
                        && kitchen.latestEnd(before, by) + step.mostWait().get() < by + step.leastWait())
                .findFirst();
    }

    /** Last minute at which a copy must leave the kitchen to be at camera at {@code wanted}; -1 if nobody can carry it. */
    private int leave(EmptyKitchen in, Need need, int wanted) {
        int way = day.minutesToCamera(need);
        return way == 0 ? wanted : in.latestCarry(wanted - way, way + day.minutesBack(need));
    }
}
