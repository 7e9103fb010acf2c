package platecall.check;

import java.util.Locale;

/** The sheets in the order in which a report tells of them. */
enum Sheet {
    DAY,
    SETUPS,
    NEEDS,
    DISHES,
    LOOKS,
    STEPS,
    INGREDIENTS,
    STATIONS,
    CIRCUITS,
    PEOPLE,
    CAST,
    PLACES;

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
