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
 * @param step the step's id, or {@link #CARRY}
 * @param person whose meal break it is, if it is one
 * @param time when it began or ended, or will end
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
        /** It was to begin, and has not. */
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
        Demand.that(
                timed == time.isPresent(),
                timed
                        ? "what " + what.word() + " has a time"
                        : "what " + (what == What.WAITS ? "waits" : "is lost") + " has no time",
                time.isPresent() ? "there" : "not there");
        if (person.isPresent()) {
            Demand.that(
                    what != What.LOST
                            && setup.isEmpty()
                            && dish.isEmpty()
                            && part.isEmpty()
                            && number.isEmpty()
                            && step.isEmpty(),
                    "a row with a person is a meal break, so it has no dish, setup, part, number and step",
                    person.get());
        } else {
            Demand.that(dish.isPresent(), "a row names a dish, or the person who has a meal break", "neither");
            Demand.that(what == What.LOST || step.isPresent(), "what " + what.word() + " names a step", "none");
        }
    }
}
