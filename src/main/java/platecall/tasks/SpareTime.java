package platecall.tasks;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntBiFunction;
import java.util.function.ToIntFunction;
import platecall.day.Need;
import platecall.day.Step;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Recipe;

/**
 * Time to spare for steps that take longer than likely: a net with longer waits and earlier copies. A plan of it is a plan of
 * the day, since no wait is longer than it may be and everything is as early as the day wants it, or earlier.
 */
public final class SpareTime {

    private SpareTime() {}

    /**
     * The same tasks with time to spare.
     *
     * @param net the tasks of a day
     * @param afterStep minutes, 0 or more, by which what comes after a step of a need waits longer than it must, as far as it may wait;
     *     after the last one copies are due so much earlier, as long as they look their best until the cut
     * @param quickerBy minutes, 0 or more, by which the step may end sooner: as many are left of the longest wait
     * @param beforeCall minutes by which the copies of a need are due earlier still, past their best if it must be, as long as they
     *     can be shown
     */
    public static TaskNet in(
            TaskNet net,
            ToIntBiFunction<Need, Step> afterStep,
            ToIntFunction<Step> quickerBy,
            ToIntFunction<Need> beforeCall) {
        Map<Recipe, Recipe> spared = new IdentityHashMap<>();
        net.recipes().forEach(recipe -> spared.put(recipe, in(recipe, afterStep, quickerBy)));
        List<Copy> copies = new ArrayList<>();
        for (Copy copy : net.copies()) {
            Recipe recipe = spared.computeIfAbsent(copy.recipe(), it -> in(it, afterStep, quickerBy));
            Step last = recipe.tasks().get(recipe.plated()).step();
            int wait = minutesToCamera(recipe) + copy.show();
            int looking = recipe.offPeakWeight() > 0
                    ? recipe.peakTo() - copy.show() - Math.max(minutesToCamera(recipe), recipe.peakFrom())
                    : Integer.MAX_VALUE;
            int earlier = Math.max(0, Math.min(afterStep.applyAsInt(recipe.need(), last), looking));
            earlier = Math.max(
                    earlier, Math.min(earlier + beforeCall.applyAsInt(recipe.need()), recipe.usableTo() - wait));
            earlier = Math.min(earlier, copy.due());
            copies.add(new Copy(recipe, copy.setup(), copy.number(), copy.due() - earlier, copy.show() + earlier));
        }
        return net.with(net.recipes().stream().map(spared::get).toList(), copies, net.breaks());
    }

    private static Recipe in(Recipe recipe, ToIntBiFunction<Need, Step> afterStep, ToIntFunction<Step> quickerBy) {
        List<List<Arc>> outOf = new ArrayList<>();
        List<List<Arc>> into = new ArrayList<>();
        recipe.tasks().forEach(task -> into.add(new ArrayList<>()));
        for (List<Arc> arcs : recipe.outOf()) {
            List<Arc> longer = new ArrayList<>();
            for (Arc arc : arcs) {
                Step step = recipe.tasks().get(arc.before()).step();
                boolean toCamera = arc.before() == recipe.plated();
                boolean begun = recipe.tasks().get(arc.before()).hasBegun();
                int spare = 0;
                if (step != null && !toCamera && !begun) {
                    int room = arc.most() - arc.least() - quickerBy.applyAsInt(step);
                    spare = Math.max(0, Math.min(afterStep.applyAsInt(recipe.need(), step), room));
                }
                Arc other = new Arc(arc.before(), arc.after(), arc.least() + spare, arc.most());
                longer.add(other);
                into.get(arc.after()).add(other);
            }
            outOf.add(longer);
        }
        return recipe.with(recipe.tasks(), into, outOf);
    }

    private static int minutesToCamera(Recipe recipe) {
        return recipe.plated() == recipe.last()
                ? 0
                : recipe.tasks().get(recipe.last()).minutes();
    }
}
