package platecall.solve;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import platecall.plan.Plan;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.Task;

/** Where the tasks of a published plan start, so that a new plan can stay close to it. */
final class Published {

    private final int[][] starts;

    private Published(int[][] starts) {
        this.starts = starts;
    }

    static Published of(TaskNet net, Plan plan) {
        Map<String, Integer> startOf = new HashMap<>();
        for (Plan.Work work : plan.work()) {
            for (String copy : work.copies()) {
                startOf.put(
                        copy + " " + work.step(),
                        net.origin().minutesUntil(work.span().start()));
            }
        }
        List<Copy> copies = net.copies();
        int[][] starts = new int[copies.size()][];
        for (int c = 0; c < starts.length; c++) {
            Copy copy = copies.get(c);
            List<Task> tasks = copy.recipe().tasks();
            boolean known = tasks.stream().allMatch(task -> startOf.containsKey(copy.id() + " " + task.name()));
            starts[c] = known
                    ? tasks.stream()
                            .mapToInt(task -> startOf.get(copy.id() + " " + task.name()))
                            .toArray()
                    : null;
        }
        return new Published(starts);
    }

    /** Start of each task of a copy, or null if the plan does not have it. */
    int[] starts(int copy) {
        return starts[copy];
    }
}
