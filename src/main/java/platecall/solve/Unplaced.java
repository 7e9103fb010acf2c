package platecall.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;
import platecall.units.Moment;

/**
 * Why copies have no place in a plan: each is tried as if nothing else were still to be made, beside what is under way and what is kept
 * for its release; if it finds no place even then, with one thing in plenty.
 *
 * @param copies their ids, of one need
 * @param alone when the last of them could be at camera if it were the only one still to be made; empty: never
 * @param wanting what it lacks even then, each of which would do, in words; empty if it could be made alone
 */
public record Unplaced(List<String> copies, Optional<Moment> alone, List<String> wanting) {

    /** So many tries, since whose hands are chosen first is drawn. */
    private static final int TRIES = 10;

    private static final Mode NOTHING = new Mode(new int[0], new int[0], -1, false, List.of());
    private static final long ENDLESS = Long.MAX_VALUE / 4;

    /**
     * Copies that the plan doesn't make, together where they are of one need and want the same.
     *
     * @param net what the plan was searched for
     */
    public static List<Unplaced> of(Day day, TaskNet net, Plan plan) {
        Set<String> missing = new LinkedHashSet<>();
        plan.copies().stream().filter(copy -> !copy.made()).map(PlannedCopy::id).forEach(missing::add);
        Map<List<Object>, List<String>> alike = new LinkedHashMap<>();
        Map<List<Object>, Unplaced> why = new HashMap<>();
        Map<Recipe, List<String>> wanting = new IdentityHashMap<>();
        for (Copy copy : net.copies()) {
            if (missing.contains(copy.id())) {
                Optional<Moment> alone = alone(net, copy, copy.recipe()).map(net::momentOf);
                Unplaced one = new Unplaced(
                        List.of(copy.id()),
                        alone,
                        alone.isPresent()
                                ? List.of()
                                : wanting.computeIfAbsent(copy.recipe(), recipe -> wanting(day, net, copy)));
                List<Object> key =
                        List.of(copy.recipe().need().key(), one.alone().isPresent(), one.wanting());
                alike.computeIfAbsent(key, it -> new ArrayList<>()).add(copy.id());
                why.merge(
                        key,
                        one,
                        (a, b) -> b.alone().isPresent()
                                        && b.alone().get().isAfter(a.alone().get())
                                ? b
                                : a);
            }
        }
        return alike.entrySet().stream()
                .map(same -> new Unplaced(
                        same.getValue(),
                        why.get(same.getKey()).alone(),
                        why.get(same.getKey()).wanting()))
                .toList();
    }

    /** Minute at which the copy is at camera in a kitchen in which nothing else goes on, by this recipe. */
    private static Optional<Integer> alone(TaskNet net, Copy copy, Recipe recipe) {
        TaskNet only = net.with(
                List.of(recipe),
                List.of(new Copy(recipe, copy.setup(), copy.number(), copy.due(), copy.show())),
                List.of());
        Kitchen kitchen = new Kitchen(only);
        Placer placer = new Placer(kitchen, new Dice(1));
        int mark = kitchen.mark();
        int ready = Integer.MAX_VALUE;
        for (int i = 0; i < TRIES; i++) {
            if (placer.placeCopy(0, true, ENDLESS, false)) {
                ready = Math.min(ready, kitchen.end(recipe.last()));
                kitchen.rollback(mark);
            }
        }
        return ready == Integer.MAX_VALUE ? Optional.empty() : Optional.of(ready);
    }

    /** Each thing that would do by itself if there were always enough of it, with the step that wants it if one alone does. */
    private static List<String> wanting(Day day, TaskNet net, Copy copy) {
        List<String> wanting = new ArrayList<>();
        Recipe recipe = copy.recipe();
        wantingOf(net, copy, "hands", Unplaced::withoutHands).ifPresent(wanting::add);
        wantingOf(net, copy, "a time at which noise is allowed", Unplaced::unheard)
                .ifPresent(wanting::add);
        for (int lane : lanes(recipe)) {
            String station = net.lanes().get(lane).station();
            String name = station.isEmpty()
                    ? "circuit "
                            + day.circuits().get(lane - day.stations().size()).id()
                    : station;
            wantingOf(net, copy, name, task -> withoutLane(net, task, lane)).ifPresent(wanting::add);
        }
        if (wanting.isEmpty()) {
            UnaryOperator<Task> needless = task -> task(task, List.of(NOTHING), 0, -1);
            boolean inTime = alone(net, copy, with(recipe, needless)).isPresent();
            wanting.add(inTime ? "several things at once" : "time for its steps and waits");
        }
        return wanting;
    }

    private static Optional<String> wantingOf(TaskNet net, Copy copy, String what, UnaryOperator<Task> freed) {
        Recipe recipe = copy.recipe();
        if (alone(net, copy, with(recipe, freed)).isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(what
                + IntStream.range(0, recipe.size())
                        .filter(i -> alone(
                                        net,
                                        copy,
                                        with(recipe, only(recipe.tasks().get(i), freed)))
                                .isPresent())
                        .mapToObj(i -> " for " + recipe.tasks().get(i).name())
                        .findFirst()
                        .orElse(""));
    }

    private static UnaryOperator<Task> only(Task one, UnaryOperator<Task> freed) {
        return task -> task == one ? freed.apply(task) : task;
    }

    private static int[] lanes(Recipe recipe) {
        return recipe.tasks().stream()
                .flatMapToInt(task -> IntStream.concat(
                        task.modes().stream().flatMapToInt(mode -> Arrays.stream(mode.lanes())),
                        IntStream.of(task.waitLane())))
                .filter(lane -> lane >= 0)
                .distinct()
                .sorted()
                .toArray();
    }

    private static Recipe with(Recipe recipe, UnaryOperator<Task> freed) {
        return recipe.with(recipe.tasks().stream().map(freed).toList(), recipe.into(), recipe.outOf());
    }

    private static Task withoutHands(Task task) {
        return task(task, task.modes(), 0, task.waitLane());
    }

    private static Task unheard(Task task) {
        return task(
                task,
                task.modes().stream()
                        .map(mode -> new Mode(mode.lanes(), mode.units(), mode.oven(), false, mode.stations()))
                        .toList(),
                task.handsNeeded(),
                task.waitLane());
    }

    /** The task as if it needed nothing of a station or circuit. */
    private static Task withoutLane(TaskNet net, Task task, int lane) {
        List<Mode> modes =
                task.modes().stream().map(mode -> without(net, mode, lane)).toList();
        return task(task, modes, task.handsNeeded(), task.waitLane() == lane ? -1 : task.waitLane());
    }

    private static Mode without(TaskNet net, Mode mode, int lane) {
        int[] kept = IntStream.range(0, mode.lanes().length)
                .filter(i -> mode.lanes()[i] != lane)
                .toArray();
        if (kept.length == mode.lanes().length) {
            return mode;
        }
        boolean itsOven = mode.oven() >= 0 && net.ovens().get(mode.oven()).lane() == lane;
        return new Mode(
                Arrays.stream(kept).map(i -> mode.lanes()[i]).toArray(),
                Arrays.stream(kept).map(i -> mode.units()[i]).toArray(),
                itsOven ? -1 : mode.oven(),
                mode.noisy(),
                mode.stations());
    }

    private static Task task(Task task, List<Mode> modes, int handsNeeded, int waitLane) {
        return new Task(
                task.step(),
                task.name(),
                task.minutes(),
                task.minutesPerCopy(),
                task.batchMost(),
                task.batchGroup(),
                modes,
                task.ovenCelsius(),
                handsNeeded,
                handsNeeded == 0 ? 0 : task.handMask(),
                handsNeeded == 0 ? List.of() : task.handParts(),
                task.earliest(),
                waitLane,
                task.waitUnits(),
                task.raw(),
                task.latest(),
                task.begun());
    }
}
