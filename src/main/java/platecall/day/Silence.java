package platecall.day;

/** When a noisy step that can be heard on set is forbidden, for setups marked silent. */
public enum Silence {
    /** Only in the minutes in which a take rolls. */
    ROLLING,
    /** From the first roll to the end of the last take at worst. */
    SETUP,
    /** Never forbidden. */
    NONE
}
