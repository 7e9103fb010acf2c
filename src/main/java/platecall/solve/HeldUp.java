package platecall.solve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;

/**
 * What holds up a copy that comes late, or is shown past its use, in a plan: it alone is placed anew in the plan as it is, with
 * one thing after the other in plenty for it.
 *
 * @param copy its id, the latest of its need
 * @param late minutes late in the plan, as {@link Recipe#lateMinutes} counts them
 * @param atBest minutes late at least with all else as planned and nothing more: 0 if a longer search would find it
 * @param lacking what it lacks, each of which would help by itself, those that help most first; two things together where none
 *     by itself would be enough
 */
public record HeldUp(String copy, int late, int atBest, List<Lack> lacking) {

    /** Needs that are told of, the latest: of many late ones the others wait for much the same. */
    private static final int MOST_NEEDS = 5;
    /** So many tries, since whose hands are chosen first is drawn. */
    private static final int TRIES = 5;

    private static final long ENDLESS = Long.MAX_VALUE / 4;

    /**
     * A thing, or two, of which more would help.
     *
     * @param what in words, with the step that wants it if one alone does
     * @param late minutes late that are left with plenty of it, 0 or more
     */
    public record Lack(String what, int late) {}

    /**
     * The latest copies of a plan, one of a need, latest first.
     *
     * @param net what the plan was searched for
     */
    public static List<HeldUp> of(Day day, TaskNet net, Plan plan) {
        Map<String, PlannedCopy> latest = new LinkedHashMap<>();
        plan.copies().stream()
                .filter(copy -> copy.made() && copy.lateMinutes() > 0 && !plan.isShot(day, copy))
                .forEach(copy -> latest.merge(copy.need(), copy, (a, b) -> b.lateMinutes() > a.lateMinutes() ? b : a));
        List<HeldUp> held = new ArrayList<>();
        latest.values().stream()
                .sorted(Comparator.comparingInt(PlannedCopy::lateMinutes).reversed())
                .limit(MOST_NEEDS)
                .forEach(copy -> IntStream.range(0, net.copies().size())
                        .filter(c -> net.copies().get(c).id().equals(copy.id()))
                        .filter(c ->
                                !net.copies().get(c).recipe().tasks().stream().allMatch(Task::hasBegun))
                        .forEach(c -> held.add(of(day, net, plan, c, copy.lateMinutes()))));
        return held;
    }

    private static HeldUp of(Day day, TaskNet net, Plan plan, int c, int late) {
        Recipe recipe = net.copies().get(c).recipe();
        // what luck in the choice of hands can do is no lack
        int atBest = Math.min(late, lateWith(net, plan, c, recipe));
        List<Lack> lacking = new ArrayList<>();
        List<InPlenty> things = atBest == 0 ? List.of() : InPlenty.of(day, net, recipe);
        for (InPlenty thing : things) {
            int left = lateWith(net, plan, c, thing.of(recipe));
            if (left < atBest) {
                lacking.add(new Lack(
                        thing.what() + thing.onlyFor(recipe, with -> lateWith(net, plan, c, with) <= left), left));
            }
        }
        if (lacking.stream().allMatch(lack -> lack.late() > 0)) {
            for (int i = 0; i < things.size(); i++) {
                for (InPlenty other : things.subList(i + 1, things.size())) {
                    InPlenty both = things.get(i).and(other);
                    if (lateWith(net, plan, c, both.of(recipe)) == 0) {
                        lacking.add(new Lack(both.what(), 0));
                    }
                }
            }
        }
        lacking.sort(Comparator.comparingInt(Lack::late));
        return new HeldUp(net.copies().get(c).id(), late, atBest, List.copyOf(lacking));
    }

    /** Minutes late if one copy is made by another recipe and all others are where the plan has them; very many if there is no place. */
    private static int lateWith(TaskNet net, Plan plan, int c, Recipe recipe) {
        Copy was = net.copies().get(c);
        List<Recipe> recipes = new ArrayList<>(net.recipes());
        recipes.add(recipe);
        List<Copy> copies = new ArrayList<>(net.copies());
        copies.set(c, new Copy(recipe, was.setup(), was.number(), was.due(), was.show()));
        TaskNet other = net.with(recipes, copies, net.breaks());
        Kitchen kitchen = new Kitchen(other);
        Placer placer = new Placer(kitchen, new Dice(1));
        Published published = Published.of(other, plan);
        placer.hold(published);
        for (int i = 0; i < kitchen.breaks.length; i++) {
            if (published.breakStart(i) != Kitchen.NONE) {
                kitchen.placeBreak(i, published.breakStart(i));
            }
        }
        for (int i = 0; i < kitchen.copies; i++) {
            if (i != c) {
                placer.placeAsPublished(i);
            }
        }
        int mark = kitchen.mark();
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < TRIES && least > 0; i++) {
            if (placer.placeCopy(c, true, ENDLESS, false)) {
                int ready = kitchen.end(kitchen.base[c] + recipe.last());
                int plated = kitchen.end(kitchen.base[c] + recipe.plated());
                least = Math.min(least, recipe.lateMinutes(was.due(), was.show(), plated, ready));
                kitchen.rollback(mark);
            }
        }
        return least;
    }
}
