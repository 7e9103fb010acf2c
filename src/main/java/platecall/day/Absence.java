package platecall.day;

import platecall.units.Span;

/** Time in which a person on shift is not in the kitchen. */
public sealed interface Absence {

    /** On set as hand double from the call of {@code setup} to the end of its last take at worst. */
    record HandDouble(String setup) implements Absence {
        public HandDouble {
            Demand.text(setup, "setup");
        }
    }

    /** Away for a fixed time. */
    record During(Span span) implements Absence {}
}
