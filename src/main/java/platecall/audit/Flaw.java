package platecall.audit;

/** What else may be the matter with a setup that is ready at its call; the worst first. */
public enum Flaw {
    /** The camera would see something that can't be shown any more. */
    PAST_USE,
    /** The first take has its plates, but something else is not made or late, or plates run out before the likely takes. */
    SHORT,
    /** A stand-in is there for the first take, but late for lighting. */
    STAND_IN_LATE,
    /** A hero's peak is over when its take rolls. */
    PAST_PEAK
}
