package platecall.solve;

import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;
import platecall.tasks.TaskNet.Window;

/**
 * Points that no plan of a day can undercut: each copy on its own, in an otherwise empty kitchen, and the kitchen open for
 * at least as long as the longest of them needs before its call.
 */
final class Bound {

    private Bound() {}

    static long of(TaskNet net) {
        long looks = 0;
        long kitchen = 0;
        for (Copy copy : net.copies()) {
            looks += ofCopy(net, copy);
            kitchen = Math.max(kitchen, leastKitchen(net, copy));
        }
        return looks + kitchen;
    }

    /** Least points of one copy, the kitchen's left out. */
    static long ofCopy(TaskNet net, Copy copy) {
        return leastLooks(copy) + (long) leastHandChanges(copy) * net.prices().handChange();
    }

    /** Least points for late and off-peak minutes: not ready before its earliest minute, never longer at its peak. */
    private static long leastLooks(Copy copy) {
        Recipe recipe = copy.recipe();
        Task last = recipe.tasks().get(recipe.last());
        int ready = last.earliest() + last.leastMinutes();
        long late = Math.max(0, ready - copy.due()) + Math.max(0, copy.show() - recipe.usableTo());
        long offPeak = Math.max(0, copy.show() - (recipe.peakTo() - recipe.peakFrom()));
        return recipe.lateWeight() * late + recipe.offPeakWeight() * offPeak;
    }

    /** 1 if no single pair of hands can do all of a copy's hands-on tasks. */
    private static int leastHandChanges(Copy copy) {
        long all = -1L;
        for (Task task : copy.recipe().tasks()) {
            if (!task.handParts().isEmpty()) {
                all &= task.handsNeeded() > 1 ? 0 : task.handMask();
            }
        }
        return all == 0 ? 1 : 0;
    }

    /**
     * Least points for the open kitchen that this copy causes, if there is one span of kitchen hours: its first task
     * starts no later than the call less the longest path, and a minute won by being late costs no less.
     */
    private static long leastKitchen(TaskNet net, Copy copy) {
        Recipe recipe = copy.recipe();
        if (net.kitchenSpans().size() != 1 || recipe.lateWeight() < net.prices().kitchenMinute()) {
            return 0;
        }
        Window span = net.kitchenSpans().get(0);
        int[] tail = new int[recipe.size()];
        int longest = 0;
        for (int i = recipe.last(); i >= 0; i--) {
            int after = 0;
            for (Arc arc : recipe.outOf().get(i)) {
                after = Math.max(after, arc.least() + tail[arc.after()]);
            }
            tail[i] = after + recipe.tasks().get(i).leastMinutes();
            longest = Math.max(longest, tail[i]);
        }
        int start = copy.due() - longest;
        boolean inside = start >= span.start() && start < span.end();
        return inside ? (long) (span.end() - start) * net.prices().kitchenMinute() : 0;
    }
}
