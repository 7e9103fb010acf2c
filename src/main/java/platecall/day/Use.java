package platecall.day;

/** How takes use up a plate. */
public sealed interface Use {

    /** Every take needs a new copy. */
    record FreshEachTake() implements Use {}

    /** One copy lasts {@code takes} takes, at least 1. */
    record LastsTakes(int takes) implements Use {
        public LastsTakes {
            Demand.that(takes >= 1, "takes that a copy lasts must be at least 1", takes);
        }
    }

    /** One copy lasts all takes because it is topped up between them in {@code minutes}, at least 1. */
    record ToppedUp(int minutes) implements Use {
        public ToppedUp {
            Demand.that(minutes >= 1, "minutes to top up must be at least 1", minutes);
        }
    }
}
