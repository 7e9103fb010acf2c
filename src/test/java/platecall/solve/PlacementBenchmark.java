package platecall.solve;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import platecall.day.Day;
import platecall.tasks.TaskNet;

/** Finding a minute in the kitchen's profile, and taking a copy out and placing it anew, on invented days of several sizes. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PlacementBenchmark {

    @Param({"60", "600", "6000"})
    int size;

    private Kitchen kitchen;
    private Placer placer;
    private Dice dice;

    @Setup
    public void place() {
        Day day = DayGenerator.day(size, 0.62, 104, true);
        TaskNet net = DayGenerator.netOf(day);
        kitchen = new Kitchen(net);
        dice = new Dice(1);
        placer = new Placer(kitchen, dice);
        for (int c = 0; c < kitchen.copies; c++) {
            placer.placeCopy(c, true, Long.MAX_VALUE / 4, false);
        }
        kitchen.commit();
    }

    /** The latest start of a task before the call of its copy. */
    @Benchmark
    public int findLatest() {
        int g = dice.below(kitchen.tasks);
        Kind kind = kitchen.kind[g];
        kitchen.asked = -1L;
        return kitchen.findLatest(kind, kind.minutesFor(kind.batchMost), 0, kitchen.due[kitchen.copyOf[g]]);
    }

    /** A copy taken out, placed anew and put back. */
    @Benchmark
    public boolean replaceCopy() {
        int c = dice.below(kitchen.copies);
        for (int g = kitchen.base[c]; g < kitchen.base[c + 1]; g++) {
            if (kitchen.start[g] != Kitchen.NONE) {
                kitchen.remove(g);
            }
        }
        boolean placed = placer.placeCopy(c, true, Long.MAX_VALUE / 4, true);
        kitchen.rollback(0);
        return placed;
    }
}
