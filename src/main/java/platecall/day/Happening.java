package platecall.day;

import java.util.Locale;
import java.util.Optional;
import platecall.units.Moment;

/**
 * Something that went otherwise than planned on a day that is under way, as somebody in the kitchen notes it down.
 *
 * @param what what happened
 * @param setup whose food it is; empty: of whatever setup
 * @param dish the dish's id
 * @param part what part it plays; empty: any
 * @param number of the copy; empty: all that fit
 * @param step the step's id, or {@link #CARRY}; of a copy that is lost the stage in which it is wanted, empty: any
 * @param person whose meal break it is, if it is one
 * @param time when it began or ended, or will end; if a step waits, before when it isn't begun
 */
public record Happening(
        What what,
        Optional<String> setup,
        Optional<String> dish,
        Optional<Part> part,
        Optional<Integer> number,
        Optional<String> step,
        Optional<String> person,
        Optional<Moment> time) {

    /** The word for the way to camera where a step is named. */
    public static final String CARRY = "carry";

    /** What can happen. */
    public enum What {
        /** A step or a meal break began at a time, which may be another than planned. */
        BEGAN,
        /** It ended at a time, or will end at it. */
        ENDED,
        /** It was to begin, and has not; maybe it can't before some time. */
        WAITS,
        /** A copy can't be used any more: burnt, dropped, eaten. It is made anew. */
        LOST;

        /** The word in the sheet. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Happening {
        boolean timed = what == What.BEGAN || what == What.ENDED;
        boolean untimed = what == What.LOST || what == What.WAITS && person.isPresent();
        if (time.isPresent() ? untimed : timed) {
            throw new IllegalArgumentException(
                    timed
                            ? "time must say when it " + what.word()
                            : "time must be blank if a meal break waits or a copy is lost");
        }
        boolean food =
                setup.isPresent() || dish.isPresent() || part.isPresent() || number.isPresent() || step.isPresent();
        if (person.isPresent() && (food || what == What.LOST)) {
            throw new IllegalArgumentException(
                    "person must be blank unless the row is about a meal break, and then nothing else is told");
        }
        if (person.isEmpty() && dish.isEmpty()) {
            throw new IllegalArgumentException("dish must be there, or the person whose meal break it is");
        }
        if (person.isEmpty() && step.isEmpty() && what != What.LOST) {
            throw new IllegalArgumentException("step must say what " + what.word());
        }
    }
}
