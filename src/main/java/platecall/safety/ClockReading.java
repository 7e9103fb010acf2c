package platecall.safety;

import java.util.List;
import platecall.plan.Plan.PlannedCopy;
import platecall.units.Moment;

/**
 * What the safety clock of a copy shows when the last take has eaten of it.
 *
 * @param copy whose
 * @param path where it has been, to the end of the last take; of several branches the one longest between the limits
 * @param minutes between the limits since it was cooked through last, or since it was begun
 * @param mostMinutes allowed
 * @param warm whether it was hot when its temperature was last held, so that the limit for hot food counts
 * @param discardBy after this it must not be eaten
 * @param firstBite when the first take eats of it
 */
public record ClockReading(
        PlannedCopy copy,
        List<Stay> path,
        int minutes,
        int mostMinutes,
        boolean warm,
        Moment discardBy,
        Moment firstBite) {

    public ClockReading {
        path = List.copyOf(path);
    }

    /** Minutes beyond the most allowed, 0 or more. */
    public int minutesOver() {
        return Math.max(0, minutes - mostMinutes);
    }

    /** Whether it had to be thrown away before the first take eats of it. */
    public boolean discardedBeforeEaten() {
        return firstBite.isAfter(discardBy);
    }

    /** Whether it must not be eaten any more before its last take has been rolled. */
    public boolean over() {
        return minutesOver() > 0 || discardedBeforeEaten();
    }

    /** One line: how the minutes come about. */
    public String why() {
        return minutes + " min out since it was cooked through or begun, at most " + mostMinutes + " after "
                + (warm ? "hot" : "cold");
    }
}
