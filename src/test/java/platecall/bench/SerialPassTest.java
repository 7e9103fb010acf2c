package platecall.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class SerialPassTest {

    /** Checked minute by minute by {@link ScheduleChecker}, which knows nothing of lanes and passes. */
    @Property(tries = 100)
    void buildsSoundSchedulesInBothDirectionsAndGivesUpOnlyAboveTheLimit(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 1, max = 40) int tasks,
            @ForAll @IntRange(min = 1, max = 3) int stretch) {
        Project plain = RandomProjects.of(seed, tasks, 3, 1.5, 6);
        int[] durations = Arrays.stream(plain.durations).map(d -> d * stretch).toArray();
        Project project = new Project(plain.name, durations, plain.successors, plain.requests, plain.capacities);
        SerialPass forward = SerialPass.forward(project);
        SerialPass backward = SerialPass.backward(project);
        int[] starts = new int[tasks];
        int makespan = forward.run(project.topological, starts);
        assertThat(ScheduleChecker.broken(project, starts, makespan)).isEmpty();

        int[] again = new int[tasks];
        assertThat(forward.run(project.topological, again, makespan - 1)).isGreaterThan(makespan - 1);
        assertThat(forward.run(project.topological, again, makespan)).isEqualTo(makespan);
        assertThat(again).isEqualTo(starts);

        int[] mirrored = new int[tasks];
        int[] list = new int[tasks];
        forward.mirror(starts, makespan, mirrored);
        backward.sort(mirrored, makespan, list);
        int justified = backward.run(list, starts);
        assertThat(justified).isLessThanOrEqualTo(makespan);
        backward.mirror(starts, justified, mirrored);
        assertThat(ScheduleChecker.broken(project, mirrored, justified)).isEmpty();
    }
}
