package platecall.looks;

import java.util.ArrayList;
import java.util.List;
import platecall.day.Look;

/** One way a look-life is worked out: the properties it knows, and the minutes that follow from them. */
interface Reckoning {

    List<Property> properties();

    LookLife reckon(Given given, SetAir air);

    /** What is wrong between properties, each of which is fine alone. */
    default List<Conflict> conflicts(Given given) {
        return List.of();
    }

    /** Two properties that cannot both be right; the report points at {@code property}. */
    record Conflict(String property, String what, String wayOut) {}

    static Reckoning of(Look.Kind kind) {
        return switch (kind) {
            case COOLING -> new CoolingLook();
            case MELTING -> new MeltingLook();
            case FROTH -> new FrothLook();
            case CARBONATION -> new CarbonationLook();
            case CONDENSATION -> new CondensationLook();
            case WILTING, BROWNING, SKIN, SOAK -> new HouseLook(kind);
            case TABLE, STEADY -> throw new IllegalArgumentException("nothing to reckon for [" + kind.word() + "]");
        };
    }

    /** One conflict for each pair {@code small, large} of which the first is the larger. */
    static List<Conflict> outOfOrder(Given given, String... pairs) {
        List<Conflict> conflicts = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            double small = given.number(pairs[i]);
            double large = given.number(pairs[i + 1]);
            if (small > large) {
                conflicts.add(new Conflict(
                        pairs[i],
                        pairs[i] + " " + Limits.plain(small) + " must not be more than " + pairs[i + 1] + " "
                                + Limits.plain(large),
                        "Maybe the two are swapped."));
            }
        }
        return conflicts;
    }

    /** Half of what is between the answers for the heat that is least well known taken 30 % too low and too high. */
    static double halfSpread(double fromLess, double fromMore) {
        return Math.abs(fromLess - fromMore) / 2;
    }

    /** Coefficients of free convection, evaporation and drip are no better known; own value. */
    double LESS_HEAT = 0.7;

    double MORE_HEAT = 1.3;

    double DAY_SECONDS = 60.0 * LookLife.DAY_MINUTES;
}
