package platecall.day;

import java.util.Locale;
import java.util.Optional;
import platecall.units.Moment;

/**
 * A temperature of food, as somebody in the kitchen read it from a thermometer and wrote it down.
 *
 * @param what what was going on with the food
 * @param setup whose food it is; empty: of whatever setup
 * @param dish the dish's id
 * @param part what part it plays; empty: any
 * @param number of the copy, counted from 1; empty: all that fit
 * @param time when it was read
 * @param celsius degrees C, -40 to 300: in the coolest part, or while it is kept cold, cools or thaws in the warmest one
 * @param heldSeconds seconds for which it was watched not to fall below that from then on, 0 to 86,400
 */
public record ProbeReading(
        What what,
        Optional<String> setup,
        String dish,
        Optional<Part> part,
        Optional<Integer> number,
        Moment time,
        double celsius,
        int heldSeconds) {

    /** What can be going on with food that somebody reads. */
    public enum What {
        /** Raw food is cooked. */
        COOKING,
        /** What was hot cools down to be kept cold. */
        COOLING,
        /** What was made at room temperature, and never hot, cools down to be kept cold. */
        CHILLING,
        /** It is kept hot. */
        HOT_HOLD,
        /** It is kept cold. */
        COLD_HOLD,
        /** What was cooked and cooled is heated up again to be kept hot. */
        REHEATING,
        /** It thaws. */
        THAWING,
        /** It was kept cold or hot, and is taken out for good: from now on only time counts. */
        TAKEN_OUT,
        /** The same of produce that was just cut, or a sealed pack just opened, ready to eat. */
        CUT_OR_OPENED;

        /** The word in the file: {@code hot hold}. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    public ProbeReading {
        Demand.text(dish, "dish");
        Demand.that(celsius >= -40 && celsius <= 300, "core must be -40 to 300", celsius);
        Demand.that(heldSeconds >= 0 && heldSeconds <= 86_400, "held must be 0 to 86400", heldSeconds);
    }
}
