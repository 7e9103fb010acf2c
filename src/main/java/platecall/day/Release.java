package platecall.day;

import platecall.units.Moment;

/** When the food of a setup may be struck. */
public sealed interface Release {

    /** When its last take at worst has ended. */
    record AtEnd() implements Release {}

    /** At a fixed time. */
    record At(Moment moment) implements Release {}

    /** When the last take at worst of another setup has ended. */
    record After(String setup) implements Release {
        public After {
            Demand.text(setup, "setup after which food is released");
        }
    }
}
