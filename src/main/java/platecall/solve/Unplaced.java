package platecall.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Recipe;
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
        Recipe recipe = copy.recipe();
        List<String> wanting = new ArrayList<>();
        for (InPlenty thing : InPlenty.of(day, net, recipe)) {
            if (alone(net, copy, thing.of(recipe)).isPresent()) {
                wanting.add(thing.what()
                        + thing.onlyFor(recipe, with -> alone(net, copy, with).isPresent()));
            }
        }
        if (wanting.isEmpty()) {
            boolean inTime = alone(net, copy, InPlenty.EVERYTHING.of(recipe)).isPresent();
            wanting.add(inTime ? "several things at once" : "time for its steps and waits");
        }
        return wanting;
    }
}
