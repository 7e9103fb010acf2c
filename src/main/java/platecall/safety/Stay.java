package platecall.safety;

import platecall.units.Span;

/**
 * A stretch of a copy's way.
 *
 * @param where what holds its temperature, if anything
 * @param what the step, the store, or {@code waits}
 * @param span when
 */
public record Stay(Where where, String what, Span span) {

    /** What holds its temperature. */
    public enum Where {
        /** In a fridge or freezer. */
        COLD("cold"),
        /** Held hot. */
        HOT("hot"),
        /** Heated in an oven, on a burner, or to a core temperature. */
        HEATED("heated"),
        /** Nothing: between the limits, as far as anyone knows. */
        OUT("out");

        private final String word;

        Where(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
