package platecall.plan;

/**
 * A rule that a sound plan never breaks. README, solver, audit and tests use these names; the inequality is what the
 * audit checks, the unit is what a breach is counted in.
 */
public enum Rule {
    COPIES("every copy that is wanted is made", "made = wanted", "copies"),
    CAPACITY("a station never serves more than it can hold", "used(t) <= capacity", "unit-minutes"),
    OVEN("an oven has one temperature at a time, and time to change it", "end_1 + change <= start_2", "minutes"),
    HANDS("a pair of hands does one hands-on thing at a time", "end_1 <= start_2", "minutes"),
    SKILL("whoever does a step has the skill for it, and as many do it as it takes", "hands >= needed", "minutes"),
    SHIFT("hands work only on shift, in kitchen hours, and not while away", "work within hours", "minutes"),
    MEAL("everybody has a meal break in time", "start - start of shift or end of last break <= meal after", "minutes"),
    ORDER(
            "a step starts after those before it have ended and the least wait is over",
            "end_1 + least <= start_2",
            "minutes"),
    MOST_WAIT("a step starts before the most wait is over", "start_2 <= end_1 + most", "minutes"),
    DURATION("a step takes the minutes that it takes", "end - start = minutes", "minutes"),
    BATCH("a batch or a walk holds no more copies than it may, all of one dish", "copies <= most", "copies"),
    SILENCE("no noisy step is heard while a silent set rolls", "noise and rolling do not overlap", "minutes"),
    OPEN("a station is used only while it is open", "use within hours", "minutes"),
    STORAGE("food that waits has a place to wait, until it is released", "stored(t) <= capacity", "unit-minutes"),
    CIRCUIT("a power circuit never carries more than it may", "amps(t) <= rating / continuous factor", "amp-minutes"),
    SUPPLY("a step starts after its ingredients have arrived", "arrival <= start", "minutes"),
    ALLERGEN("nobody eats what he or she must not", "allergens and allergies are disjoint", "copies"),
    INEDIBLE("what is only for looks is never eaten", "eaten implies edible", "copies"),
    CLOCK(
            "food at risk stands between hot and cold no longer than it may until it is eaten",
            "minutes out <= most allowed",
            "minutes"),
    COOKING("what was raw and is eaten cooked gets hot enough inside", "core >= least for its kind", "copies"),
    RAW_APART("raw food is never in a store together with food that is ready", "raw(t) = 0 or ready(t) = 0", "minutes"),
    DISCARDED("what had to be thrown away is not eaten", "first bite <= discard by", "copies"),
    STATEMENT("what the plan says of its copies, times and points is true", "said = found", "statements");

    private final String sentence;
    private final String inequality;
    private final String unit;

    Rule(String sentence, String inequality, String unit) {
        this.sentence = sentence;
        this.inequality = inequality;
        this.unit = unit;
    }

    public String sentence() {
        return sentence;
    }

    public String inequality() {
        return inequality;
    }

    /** What a breach is counted in. */
    public String unit() {
        return unit;
    }

    /** {@code 1 copy}, {@code 2 copies}. */
    public String size(long amount) {
        return amount + " " + (amount == 1 ? unit.replaceFirst("ies$", "y").replaceFirst("s$", "") : unit);
    }
}
