package platecall.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import platecall.day.Day;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Mode;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;

/**
 * A thing of which there is always enough, to tell what a copy lacks.
 *
 * @param what it is, in words
 * @param freed a task as if it needed nothing of it
 */
record InPlenty(String what, UnaryOperator<Task> freed) {

    private static final Mode NOTHING = new Mode(new int[0], new int[0], -1, false, List.of());

    /** Stations, circuits, hands and times at which noise is allowed, all at once. */
    static final InPlenty EVERYTHING = new InPlenty("everything", task -> task(task, List.of(NOTHING), 0, -1));

    /** Each thing that a recipe needs: hands, times for noise, then stations and circuits. */
    static List<InPlenty> of(Day day, TaskNet net, Recipe recipe) {
        List<InPlenty> things = new ArrayList<>();
        things.add(new InPlenty("hands", InPlenty::withoutHands));
        things.add(new InPlenty("minutes at which noise is allowed", InPlenty::unheard));
        for (int lane : lanes(recipe)) {
            String station = net.lanes().get(lane).station();
            String name = station.isEmpty()
                    ? "power of circuit "
                            + day.circuits().get(lane - day.stations().size()).id()
                    : station;
            things.add(new InPlenty(name, task -> withoutLane(net, task, lane)));
        }
        return things;
    }

    /** Plenty of both. */
    InPlenty and(InPlenty other) {
        return new InPlenty(what + " and " + other.what, task -> other.freed.apply(freed.apply(task)));
    }

    /** A recipe with plenty of it. */
    Recipe of(Recipe recipe) {
        return with(recipe, freed);
    }

    /** The first step for which alone plenty of it is enough by a test, as {@code " for step"}; blank if there is none. */
    String onlyFor(Recipe recipe, Predicate<Recipe> enough) {
        return recipe.tasks().stream()
                .filter(one -> enough.test(with(recipe, task -> task == one ? freed.apply(task) : task)))
                .map(one -> " for " + one.name())
                .findFirst()
                .orElse("");
    }

    private static Recipe with(Recipe recipe, UnaryOperator<Task> freed) {
        return recipe.with(recipe.tasks().stream().map(freed).toList(), recipe.into(), recipe.outOf());
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
