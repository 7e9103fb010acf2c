package platecall.safety;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.plan.Plan.Storing;
import platecall.units.Moment;

/**
 * Until when food that comes out of a store may be used, if it stands out from then on.
 *
 * @param by the earliest such time of all that is in it
 * @param minutesOut how many minutes each may at least stand out from when it leaves the store, 0 or more
 * @param together whether all leave the store in the same minute
 */
public record Discard(Moment by, int minutesOut, boolean together) {

    /** What holds for several stays together; empty if no clock runs for any of them. */
    public static Optional<Discard> of(List<Storing> stored, Map<Storing, Moment> discardBy) {
        List<Storing> clocked = stored.stream().filter(discardBy::containsKey).toList();
        return clocked.stream()
                .map(discardBy::get)
                .min(Comparator.naturalOrder())
                .map(by -> new Discard(
                        by,
                        clocked.stream()
                                .mapToInt(storing ->
                                        Math.max(0, storing.span().end().minutesUntil(discardBy.get(storing))))
                                .min()
                                .orElseThrow(),
                        stored.stream()
                                        .map(storing -> storing.span().end())
                                        .distinct()
                                        .count()
                                == 1));
    }

    /**
     * {@code if it stays out discard by 14:05}, or what holds for each if they leave one after another, or that its time is up by
     * then.
     *
     * @param clock the time {@link #by}, as it is printed
     */
    public String words(String clock) {
        if (minutesOut == 0) {
            return (together ? "" : "some of it: ") + "DO NOT EAT after " + clock;
        }
        return together
                ? "if it stays out discard by " + clock
                : "if it stays out discard each " + minutesOut + " min after it comes out, the first by " + clock;
    }
}
