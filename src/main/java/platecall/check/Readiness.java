package platecall.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Setup;
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
                stale(row, need, setup.get(), steps.get(steps.size() - 1), found);
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
        if (late) {
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
                if (lateIngredients.add(row)) {
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

    private String readyAt(Late late) {
        boolean never = late.ready() == EmptyKitchen.NEVER;
        String when = never
                ? "can't be ready"
                : "can be ready at " + Wording.clock(day, kitchen.momentOf(late.ready())) + " at the earliest";
        return when
                + late.shortage()
                        .map(shortage -> ": " + hands(shortage))
                        .orElse(never ? " within the hours of the kitchen" : "");
    }

    private String hands(Shortage shortage) {
        return shortage.step()
                .map(step -> "step " + step.id() + " " + Wording.hands(day, step))
                .orElse("nobody is there to carry it");
    }

    private static String moreHands(Shortage shortage) {
        return shortage.step().map(Wording::longerHours).orElse("longer hours in sheet people");
    }

    /** The hands that keep a dish waiting, if it would be in time with everybody there in all kitchen hours. */
    private Optional<Shortage> shortage(Need need, List<Step> steps, int wanted, ToIntFunction<Step> supplied) {
        EmptyKitchen staffed = kitchen.staffed();
        if (earliest(staffed, need, steps, supplied) > wanted) {
            return Optional.empty();
        }
        Map<String, Integer> ends = new HashMap<>();
        Optional<Step> longest = Optional.empty();
        int most = 0;
        for (Step step : steps) {
            int from = from(step, ends, supplied);
            int start = kitchen.earliest(step, from);
            int wait = start - staffed.earliest(step, from);
            if (wait > most) {
                most = wait;
                longest = Optional.of(step);
            }
            if (start == EmptyKitchen.NEVER) {
                return Optional.of(new Shortage(Optional.of(step)));
            }
            ends.put(step.id(), start + step.minutesFor(1));
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
                                            .map(Readiness::moreHands)
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
            int start = in.earliest(step, from(step, ends, supplied));
            if (start == EmptyKitchen.NEVER) {
                return Optional.empty();
            }
            ends.put(step.id(), start + step.minutesFor(1));
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

    /** Least minutes between hot and cold of all plans of an empty kitchen that are in time. */
    private int leastBetween(Chill chill, Need need, List<Step> steps, int due) {
        int least = EmptyKitchen.NEVER;
        for (int start = due; start >= 0 && least > chill.most(); start--) {
            int from = start;
            Optional<Map<String, Integer>> ends =
                    ends(kitchen, steps, step -> Math.max(arrival(step), step.equals(chill.hot()) ? from : 0));
            if (ends.isPresent() && atCamera(kitchen, need, ends.get()) <= due) {
                int hot = ends.get().get(chill.hot().id())
                        - (chill.held() ? chill.hot().minutesFor(1) : 0);
                int cold = ends.get().get(chill.cold().id())
                        - (chill.inside() ? chill.cold().minutesFor(1) : 0);
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
    private void stale(int row, Need need, Setup setup, Step last, Findings found) {
        Integer usableMinutes = usable.get(need.dish());
        if (usableMinutes == null || need.part() == Part.STAND_IN) {
            return;
        }
        Set<Moment> dues = new java.util.LinkedHashSet<>();
        for (int number = 1; number <= copiesOf.applyAsInt(need); number++) {
            dues.add(CameraTime.of(setup, need, number).due());
        }
        for (Moment due : dues) {
            int wanted = kitchen.minuteOf(due);
            int leave = leave(kitchen, need, wanted);
            int start = kitchen.latest(last, leave);
            int age = wanted - start - last.minutesFor(1);
            if (leave >= 0 && start >= 0 && age > usableMinutes) {
                EmptyKitchen staffed = kitchen.staffed();
                int possible = staffed.latest(last, leave(staffed, need, wanted));
                Optional<Shortage> shortage = Optional.of(
                                new Shortage(Optional.of(last).filter(step -> staffed.latest(step, leave) > start)))
                        .filter(it -> wanted - possible - last.minutesFor(1) <= usableMinutes);
                found.add(
                        Sheet.NEEDS,
                        row,
                        "dish",
                        need.dish(),
                        "is past usable at " + Wording.clock(day, due) + ": it can't be plated after "
                                + Wording.clock(day, kitchen.momentOf(start + last.minutesFor(1)))
                                + ", and is usable for " + Wording.minutes(usableMinutes)
                                + shortage.map(it -> ": " + hands(it)).orElse(""),
                        "Maybe " + shortage.map(Readiness::moreHands).orElse("longer hours for the kitchen")
                                + ", or an earlier call.");
                return;
            }
        }
    }

    /** Last minute at which a copy must leave the kitchen to be at camera at {@code wanted}; -1 if nobody can carry it. */
    private int leave(EmptyKitchen in, Need need, int wanted) {
        int way = day.minutesToCamera(need);
        return way == 0 ? wanted : in.latestCarry(wanted - way, way + day.minutesBack(need));
    }
}
