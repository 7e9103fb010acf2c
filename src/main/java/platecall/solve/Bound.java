package platecall.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.BreakTask;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;
import platecall.tasks.TaskNet.Window;

/**
 * Points that no plan of a day can undercut: looks of all copies ({@link PricedBound}), pairs of hands that each copy needs
 * at least, and the kitchen open for as long as the longest copy needs, or as the work that is due by some minute needs.
 */
final class Bound {

    private final TaskNet net;
    private final long[] masks;

    private Bound(TaskNet net) {
        this.net = net;
        masks = net.copies().stream()
                .map(Copy::recipe)
                .distinct()
                .flatMap(recipe -> recipe.tasks().stream())
                .filter(task -> !task.handParts().isEmpty())
                .mapToLong(Task::handMask)
                .distinct()
                .toArray();
    }

    static long of(TaskNet net) {
        return new Bound(net).points();
    }

    /** Least points of one copy, the kitchen's left out. */
    static long ofCopy(TaskNet net, Copy copy) {
        return leastLooks(copy)
                + (long) leastHandChanges(net, copy.recipe()) * net.prices().handChange();
    }

    private long points() {
        if (net.copies().isEmpty()) {
            return 0;
        }
        long leastLooks = 0;
        long leastLate = 0;
        long hands = 0;
        long[] openings = new long[net.kitchenSpans().size()];
        long lateMinute = Long.MAX_VALUE;
        for (Copy copy : net.copies()) {
            leastLooks += leastLooks(copy);
            leastLate += leastLateMinutes(copy);
            hands += (long) leastHandChanges(net, copy.recipe()) * net.prices().handChange();
            leastKitchen(copy, openings);
            lateMinute = Math.min(lateMinute, copy.recipe().lateWeight());
        }
        if (net.past() != TaskNet.Past.NONE) {
            // what is kept in the middle of a day, by whom, and which kitchen is open already, is not reckoned with
            return leastLooks + hands;
        }
        long alone = leastLooks + hands + Arrays.stream(openings).sum();
        long kitchenMinute = net.prices().kitchenMinute();
        if (lateMinute < kitchenMinute) {
            return alone;
        }
        long work = 0;
        for (long mask : masks) {
            work = Math.max(work, kitchenForWork(mask));
        }
        // A part of each late minute's points is kept out of looks: it pays for what is claimed if nothing is later
        // than it
        // must be, and for the kitchen minute that it may save.
        long kept = Math.max(kitchenMinute, lateMinute / 2);
        long looks = new PricedBound(net, net.copies(), net.breaks(), kept).points() + kept * leastLate;
        // What opens a later span may be paid for off the peak, so that only the first span's share adds to looks.
        long first = openings[0];
        long inTime = Math.max(first, work) + (long) moreHands() * net.prices().handChange();
        return Math.max(alone, looks + hands + Math.min(inTime, first + kept - kitchenMinute));
    }

    /**
     * Copies that must pass through a second pair of hands since those who could do all of it have no time to, if nothing is
     * later than it must be.
     */
    private int moreHands() {
        int last = 0;
        Map<Long, List<Long>> minutesOf = new HashMap<>();
        int[] groupSize = new int[net.batchGroups()];
        for (Copy copy : net.copies()) {
            last = Math.max(last, copy.due() + leastLate(copy));
            copy.recipe().tasks().stream().filter(Task::perBatch).forEach(task -> groupSize[task.batchGroup()]++);
        }
        for (Copy copy : net.copies()) {
            long people = -1L;
            long thousandths = 0;
            for (Task task : copy.recipe().tasks()) {
                if (!task.handParts().isEmpty()) {
                    people &= task.handsNeeded() > 1 ? 0 : task.handMask();
                    // Riders of a batch each need an even part of it, of the largest that it can be.
                    int share = task.perBatch() ? Math.min(task.batchMost(), groupSize[task.batchGroup()]) : 1;
                    thousandths += 1000 * handMinutes(task, task.leastMinutes()) / share;
                }
            }
            if (people != 0 && people != -1L) {
                minutesOf.computeIfAbsent(people, key -> new ArrayList<>()).add(thousandths);
            }
        }
        int most = 0;
        for (long set : minutesOf.keySet()) {
            long left = 0;
            for (int t = 0; t < Math.min(last, net.minutes()); t++) {
                left += 1000L * Long.bitCount(net.handsFree()[t] & set);
            }
            for (BreakTask meal : net.breaks()) {
                left -= (set >>> meal.person() & 1) != 0 && meal.latest() + meal.minutes() <= last
                        ? 1000L * meal.minutes()
                        : 0;
            }
            List<Long> wanted = new ArrayList<>();
            minutesOf.forEach((people, minutes) -> {
                if ((people & ~set) == 0) {
                    wanted.addAll(minutes);
                }
            });
            wanted.sort(null);
            int fit = 0;
            while (fit < wanted.size() && left >= wanted.get(fit)) {
                left -= wanted.get(fit++);
            }
            most = Math.max(most, wanted.size() - fit);
        }
        return most;
    }

    /** Least points for late and off-peak minutes: not ready before its earliest minute, never longer at its peak. */
    private static long leastLooks(Copy copy) {
        Recipe recipe = copy.recipe();
        long late = leastLateMinutes(copy);
        long offPeak = Math.max(0, copy.show() - (recipe.peakTo() - recipe.peakFrom()));
        return recipe.lateWeight() * late + recipe.offPeakWeight() * offPeak;
    }

    private static int leastLateMinutes(Copy copy) {
        return leastLate(copy) + Math.max(0, copy.show() - copy.recipe().usableTo());
    }

    private static int leastLate(Copy copy) {
        Task last = copy.recipe().tasks().get(copy.recipe().last());
        return Math.max(0, last.earliest() + last.leastMinutes() - copy.due());
    }

    /** Fewest pairs of hands beyond the first that can do all of a recipe's hands-on tasks; not more than 2 is claimed. */
    private static int leastHandChanges(TaskNet net, Recipe recipe) {
        List<Task> tasks = recipe.tasks().stream()
                .filter(task -> !task.handParts().isEmpty())
                .toList();
        int people = net.people().size();
        for (int a = 0; a < people; a++) {
            if (canDo(tasks, 1L << a)) {
                return 0;
            }
        }
        for (int a = 0; a < people; a++) {
            for (int b = 0; b < a; b++) {
                if (canDo(tasks, 1L << a | 1L << b)) {
                    return 1;
                }
            }
        }
        return tasks.isEmpty() ? 0 : Math.min(2, people - 1);
    }

    private static boolean canDo(List<Task> tasks, long people) {
        return tasks.stream().allMatch(task -> Long.bitCount(task.handMask() & people) >= task.handsNeeded());
    }

    /** For each task the least minutes from its start to the end of the last one. */
    static int[] minutesToGo(Recipe recipe) {
        int[] left = new int[recipe.size()];
        for (int i = recipe.last(); i >= 0; i--) {
            int after = 0;
            for (Arc arc : recipe.outOf().get(i)) {
                after = Math.max(after, arc.least() + left[arc.after()]);
            }
            left[i] = after + recipe.tasks().get(i).leastMinutes();
        }
        return left;
    }

    /**
     * Raises, for each span of kitchen hours, the points that some copy causes there for the open kitchen. A task by hand
     * starts no later than the call less the longest path, and a minute won by being late costs no less than it saves. In
     * the first span there is no way out; a task bound to a later span could only go before it by being off its peak.
     */
    private void leastKitchen(Copy copy, long[] openings) {
        Recipe recipe = copy.recipe();
        if (recipe.lateWeight() < net.prices().kitchenMinute()) {
            return;
        }
        int[] toGo = minutesToGo(recipe);
        int[] slack = slackToGo(recipe);
        for (int i = 0; i < recipe.size(); i++) {
            Task task = recipe.tasks().get(i);
            boolean handsFromStart =
                    !task.handParts().isEmpty() && !task.handParts().get(0).fromEnd();
            if (net.kitchenSpans().size() > 1 && !handsFromStart) {
                continue;
            }
            int latest = copy.due() + leastLate(copy) - toGo[i];
            int span = net.kitchenSpans().size() - 1;
            while (span > 0 && net.kitchenSpans().get(span).start() > latest) {
                span--;
            }
            Window hours = net.kitchenSpans().get(span);
            if (latest < hours.start()) {
                continue;
            }
            long points = (long) (hours.end() - Math.min(latest, hours.end()))
                    * net.prices().kitchenMinute();
            if (span > 0) {
                long early = (long) latest - hours.start() - slack[i] - Math.max(0, recipe.peakTo() - copy.show());
                boolean bound = slack[i] >= 0 && leastLooks(copy) == 0;
                points = bound ? Math.min(points, Math.max(0, early) * recipe.offPeakWeight()) : 0;
            }
            openings[span] = Math.max(openings[span], points);
        }
    }

    /** For each task the most minutes that it may start before its latest start while plate-up keeps its time; -1: any. */
    private static int[] slackToGo(Recipe recipe) {
        int[] slack = new int[recipe.size()];
        for (int i = recipe.last() - 1; i >= 0; i--) {
            long most = Long.MAX_VALUE;
            for (Arc arc : recipe.outOf().get(i)) {
                if (arc.most() != Integer.MAX_VALUE && slack[arc.after()] >= 0) {
                    Task task = recipe.tasks().get(i);
                    int longest = task.minutesFor(task.batchMost()) - task.leastMinutes();
                    most = Math.min(most, (long) arc.most() - arc.least() + slack[arc.after()] + longest);
                }
            }
            slack[i] = most > Integer.MAX_VALUE ? -1 : (int) most;
        }
        return slack;
    }

    private long kitchenPoints(int start) {
        Window span = net.kitchenSpans().get(0);
        boolean inside = start >= span.start() && start < span.end();
        return inside ? (long) (span.end() - start) * net.prices().kitchenMinute() : 0;
    }

    /**
     * Least points for the open kitchen if nothing is later than it must be: all hand-minutes of people in {@code mask} that
     * have to be done by some minute fit between the opening and that minute; meal breaks may lie before it.
     */
    private long kitchenForWork(long mask) {
        if (net.kitchenSpans().size() != 1) {
            return 0;
        }
        long[] dueBy = new long[net.minutes() + 1];
        Map<Integer, List<Integer>> batched = new HashMap<>();
        Map<Integer, Task> batchTask = new HashMap<>();
        Map<Recipe, int[]> toGo = new IdentityHashMap<>();
        for (Copy copy : net.copies()) {
            Recipe recipe = copy.recipe();
            int[] left = toGo.computeIfAbsent(recipe, Bound::minutesToGo);
            for (int i = 0; i < recipe.size(); i++) {
                Task task = recipe.tasks().get(i);
                if (task.handParts().isEmpty() || (task.handMask() & ~mask) != 0) {
                    continue;
                }
                int end = copy.due() + leastLate(copy) - left[i] + task.leastMinutes();
                if (end < 0 || end > net.minutes()) {
                    continue;
                }
                if (task.perBatch()) {
                    batched.computeIfAbsent(task.batchGroup(), group -> new ArrayList<>())
                            .add(end);
                    batchTask.put(task.batchGroup(), task);
                } else {
                    dueBy[end] += handMinutes(task, task.minutes());
                }
            }
        }
        batched.forEach((group, ends) -> {
            Task task = batchTask.get(group);
            ends.sort(null);
            for (int n = 0; n < ends.size(); n += task.batchMost()) {
                dueBy[ends.get(n)] += handMinutes(task, task.leastMinutes());
            }
        });
        long work = 0;
        int opening = net.minutes();
        for (int t = 0; t <= net.minutes(); t++) {
            work += dueBy[t];
            if (dueBy[t] > 0) {
                long left = work;
                int u = t;
                while (u > 0 && left > 0) {
                    left -= Long.bitCount(net.handsFree()[--u] & mask);
                }
                opening = Math.min(opening, left > 0 ? 0 : u);
            }
        }
        return work == 0 ? 0 : kitchenPoints(opening);
    }

    /** Hand-minutes of a task that takes {@code minutes}; parts may overlap, so only the longest counts. */
    private static long handMinutes(Task task, int minutes) {
        int longest = task.handParts().stream()
                .mapToInt(part -> Math.min(minutes, part.lengthIn(minutes)))
                .max()
                .orElse(0);
        return (long) longest * task.handsNeeded();
    }
}
