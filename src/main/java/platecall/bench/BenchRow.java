package platecall.bench;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What came of one file. Makespans are in the file's own unit of time.
 *
 * @param folder name of the folder the file stands in
 * @param file name of the file
 * @param makespan of the checked schedule
 * @param bestKnown best makespan on record for this file, if any
 * @param criticalPath longest path when resources are no limit
 * @param lowerBound no schedule is shorter
 * @param schedules schedules built
 * @param cpuSeconds CPU time of the searching thread
 */
public record BenchRow(
        String folder,
        String file,
        int tasks,
        int makespan,
        OptionalInt bestKnown,
        int criticalPath,
        int lowerBound,
        long schedules,
        double cpuSeconds) {

    public boolean proved() {
        return makespan == lowerBound;
    }

    /** Percent above the best known makespan; negative if it is beaten. */
    public OptionalDouble gapPercent() {
        return bestKnown.isPresent() ? OptionalDouble.of(percentAbove(bestKnown.getAsInt())) : OptionalDouble.empty();
    }

    public double aboveCriticalPathPercent() {
        return percentAbove(criticalPath);
    }

    public double schedulesPerSecond() {
        return cpuSeconds > 0 ? schedules / cpuSeconds : 0;
    }

    private double percentAbove(int reference) {
        return reference > 0 ? 100.0 * (makespan - reference) / reference : 0;
    }
}
