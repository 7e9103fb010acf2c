package platecall.safety;

import java.util.Optional;
import platecall.units.Moment;

/**
 * Time instead of temperature as the control: food that leaves its fridge or hot hold is marked with the time at which it is
 * thrown away (FDA Food Code 3-501.19).
 */
public final class TimeMark {

    private TimeMark() {}

    /** What the food was before it was taken out. */
    public enum Food {
        /** Anything held cold or hot. */
        HELD,
        /** Produce that needs control from the moment it is cut, or a sealed pack that is opened, ready to eat. */
        CUT_OR_OPENED
    }

    /**
     * The time to mark under the four-hour rule (B): removal and the minutes that the profile allows; empty if the food may
     * not start, because it is neither cold nor hot enough (cut or opened food may start at up to 21 °C where the profile
     * has the newer clause).
     */
    public static Optional<Moment> discardBy(Profile profile, Food food, double startCelsius, Moment removed) {
        boolean hot = profile.hot().allows(startCelsius);
        boolean fresh = food == Food.CUT_OR_OPENED
                && profile.limit("cut start")
                        .map(limit -> limit.allows(startCelsius))
                        .orElse(false);
        if (!hot && !fresh && !profile.cold().allows(startCelsius)) {
            return Optional.empty();
        }
        Limit most = hot ? profile.outHot() : profile.outCold();
        return Optional.of(removed.plus(most.mostWhole()));
    }

    /** The time to mark under the six-hour rule (C); empty if the profile has none or the food does not start cold. */
    public static Optional<Moment> discardBySixHours(Profile profile, double startCelsius, Moment removed) {
        return profile.limit("six hours")
                .filter(limit -> profile.cold().allows(startCelsius))
                .map(limit -> removed.plus(limit.mostWhole()));
    }

    /** Whether food under the six-hour rule has become too warm, so that it must go at once. */
    public static boolean tooWarmForSixHours(Profile profile, double warmestCelsius) {
        return profile.limit("six hours warmest")
                .map(limit -> !limit.allows(warmestCelsius))
                .orElse(true);
    }

    /**
     * Whether food must be thrown away.
     *
     * @param right the time that {@link #discardBy} tells
     * @param marked the time that stands on it; empty if it is not marked
     */
    public static boolean mustDiscard(Optional<Moment> right, Optional<Moment> marked, Moment now) {
        return right.isEmpty() || marked.isEmpty() || marked.get().isAfter(right.get()) || now.isAfter(marked.get());
    }
}
