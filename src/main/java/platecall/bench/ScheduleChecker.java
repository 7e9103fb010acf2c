package platecall.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Checks a schedule against its project, unit of time by unit of time, knowing nothing of how it was made. */
final class ScheduleChecker {

    private ScheduleChecker() {}

    /**
     * @param starts start of each task
     * @param makespan the makespan that is claimed
     * @return every rule that is broken, numbering tasks and resources from 1; empty if the schedule is sound
     */
    static List<String> broken(Project project, int[] starts, int makespan) {
        if (starts.length != project.tasks) {
            return List.of(text("%d starts for %d tasks", starts.length, project.tasks));
        }
        List<String> broken = new ArrayList<>();
        int last = 0;
        for (int task = 0; task < project.tasks; task++) {
            int end = starts[task] + project.durations[task];
            last = Math.max(last, end);
            if (starts[task] < 0) {
                broken.add(text("task %d starts at %d, before 0", task + 1, starts[task]));
            }
            for (int after : project.successors[task]) {
                if (starts[after] < end) {
                    broken.add(text(
                            "task %d starts at %d, before task %d ends at %d",
                            after + 1, starts[after], task + 1, end));
                }
            }
        }
        if (last != makespan) {
            broken.add(text("the last task ends at %d, not at %d", last, makespan));
        }
        for (int time = 0; time < last; time++) {
            int[] need = new int[project.capacities.length];
            for (int task = 0; task < project.tasks; task++) {
                if (starts[task] <= time && time < starts[task] + project.durations[task]) {
                    for (int k = 0; k < need.length; k++) {
                        need[k] += project.requests[task][k];
                    }
                }
            }
            for (int k = 0; k < need.length; k++) {
                if (need[k] > project.capacities[k]) {
                    broken.add(text(
                            "at %d the tasks need %d of resource %d, which has %d",
                            time, need[k], k + 1, project.capacities[k]));
                }
            }
        }
        return broken;
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
