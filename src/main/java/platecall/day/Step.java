package platecall.day;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A step of a dish.
 *
 * @param dish the dish's id
 * @param id the step's name, unique within the dish
 * @param after steps of the same dish that must have ended; the waits count from each of them
 * @param leastWait minutes to wait at least after those, 0 or more
 * @param mostWait minutes to wait at most after those; empty: no limit
 * @param minutesLow optimistic minutes, at least 1
 * @param minutesLikely minutes the plan reckons with
 * @param minutesHigh pessimistic minutes
 * @param minutesPerCopy further minutes for each copy of a batch, 0 or more; plays no part in a step per copy
 * @param batchMost most copies of a batch; empty: the step is done copy by copy
 * @param hands pairs of hands, 0 to 4
 * @param skill skill that each of those hands must have; empty: any
 * @param handsFirst hands are on only in the first minutes (and the last, if given)
 * @param handsLast hands are on only in the last minutes (and the first, if given)
 * @param stations stations used during the whole step
 * @param ovenCelsius temperature of the oven used, if one is
 * @param noisy whether it can be heard
 * @param waitsIn storage in which the copy waits from the end of this step to the start of the next, if any
 * @param raw whether the food is still raw when this step has ended
 * @param coreCelsius core temperature to reach, if any
 * @param anyTimeAfter further steps of the same dish that must have ended, however long ago
 */
public record Step(
        String dish,
        String id,
        List<String> after,
        int leastWait,
        Optional<Integer> mostWait,
        int minutesLow,
        int minutesLikely,
        int minutesHigh,
        int minutesPerCopy,
        Optional<Integer> batchMost,
        int hands,
        Optional<String> skill,
        Optional<Integer> handsFirst,
        Optional<Integer> handsLast,
        List<StationUse> stations,
        Optional<Integer> ovenCelsius,
        boolean noisy,
        Optional<String> waitsIn,
        boolean raw,
        Optional<Double> coreCelsius,
        List<String> anyTimeAfter) {

    public Step {
        Demand.text(dish, "dish");
        Demand.text(id, "step");
        after = List.copyOf(after);
        anyTimeAfter = List.copyOf(anyTimeAfter);
        Demand.that(leastWait >= 0 && leastWait <= 20_000, "least wait must be from 0 to 20000 minutes", leastWait);
        int least = leastWait;
        mostWait.ifPresent(most -> {
            Demand.that(most >= least, "most wait must be at least the least wait", most);
            Demand.that(most <= 100_000, "most wait must be at most 100000 minutes", most);
        });
        Demand.that(minutesLow >= 1, "minutes low must be at least 1", minutesLow);
        Demand.that(minutesLikely >= minutesLow, "minutes likely must be at least minutes low", minutesLikely);
        Demand.that(minutesHigh >= minutesLikely, "minutes high must be at least minutes likely", minutesHigh);
        Demand.that(minutesHigh <= 10_000, "minutes high must be at most 10000", minutesHigh);
        Demand.that(minutesPerCopy >= 0 && minutesPerCopy <= 240, "minutes per copy must be 0 to 240", minutesPerCopy);
        batchMost.ifPresent(most -> Demand.that(most >= 1 && most <= 500, "batch must be 1 to 500 copies", most));
        Demand.that(hands >= 0 && hands <= 4, "hands must be from 0 to 4", hands);
        handsFirst.ifPresent(minutes ->
                Demand.that(minutes >= 0 && minutes <= 10_000, "hands first must be from 0 to 10000 minutes", minutes));
        handsLast.ifPresent(minutes ->
                Demand.that(minutes >= 0 && minutes <= 10_000, "hands last must be from 0 to 10000 minutes", minutes));
        stations = List.copyOf(stations);
        ovenCelsius.ifPresent(celsius ->
                Demand.that(celsius >= 30 && celsius <= 550, "oven temperature must be from 30 to 550 °C", celsius));
        coreCelsius.ifPresent(celsius ->
                Demand.that(celsius >= -40 && celsius <= 150, "core temperature must be from -40 to 150 °C", celsius));
    }

    /** Every step that must have ended before this one: those that its waits count from, then the others. */
    public List<String> predecessors() {
        return Stream.concat(after.stream(), anyTimeAfter.stream()).toList();
    }

    public boolean perBatch() {
        return batchMost.isPresent();
    }

    /** Minutes the plan reckons with for a batch of {@code copies}; a step per copy takes its likely minutes. */
    public int minutesFor(int copies) {
        return minutesLikely + (perBatch() ? minutesPerCopy * copies : 0);
    }

    /** Whether hands are on from the first to the last minute. */
    public boolean handsThroughout() {
        return handsFirst.isEmpty() && handsLast.isEmpty();
    }
}
