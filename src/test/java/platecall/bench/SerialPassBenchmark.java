package platecall.bench;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Serial schedules a second on a generated project of 120 tasks and 4 resources, by list and by justification. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SerialPassBenchmark {

    private static final int LISTS = 64;

    private Project project;
    private SerialPass forward;
    private SerialPass backward;
    private int[][] lists;
    private int[] list;
    private int[] starts;
    private int[] mirrored;
    private int next;

    @Setup
    public void generate() {
        project = RandomProjects.of(1, 120, 4, 1.8, 20);
        forward = SerialPass.forward(project);
        backward = SerialPass.backward(project);
        starts = new int[project.tasks];
        mirrored = new int[project.tasks];
        list = new int[project.tasks];
        lists = new int[LISTS][project.tasks];
        SplittableRandom random = new SplittableRandom(1);
        for (int[] one : lists) {
            int[] times = project.heads.clone();
            for (int task : project.topological) {
                times[task] += random.nextInt(10);
                for (int before : project.predecessors[task]) {
                    times[task] = Math.max(times[task], times[before]);
                }
            }
            forward.sort(times, Arrays.stream(times).max().orElseThrow(), one);
        }
    }

    /** One schedule from a list. */
    @Benchmark
    public int forwardPass() {
        next = (next + 1) % LISTS;
        return forward.run(lists[next], starts);
    }

    /** Two schedules: from a list, then pushed to the end of the project. */
    @Benchmark
    public int forwardAndBackwardPass() {
        next = (next + 1) % LISTS;
        int makespan = forward.run(lists[next], starts);
        forward.mirror(starts, makespan, mirrored);
        backward.sort(mirrored, makespan, list);
        return backward.run(list, starts);
    }
}
