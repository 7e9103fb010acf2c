package platecall.day;

import java.util.Locale;
import java.util.Optional;

/**
 * How a dish's look-life is told, in minutes after plate-up. The three times belong to {@link Kind#TABLE}; the other
 * kinds are computed from the day's look properties.
 *
 * @param kind which reckoning
 * @param peakFrom minute at which the peak begins, 0 to 100000 as all three
 * @param peakTo minute at which the peak ends, at least {@code peakFrom}
 * @param usableTo minute after which it can't be shown, at least {@code peakTo}
 */
public record Look(Kind kind, Optional<Integer> peakFrom, Optional<Integer> peakTo, Optional<Integer> usableTo) {

    /** What changes the look. */
    public enum Kind {
        /** Minutes by hand. */
        TABLE,
        /** Warmth and steam to be seen. */
        COOLING,
        /** Frozen things under air and light. */
        MELTING,
        /** Froth that falls. */
        FROTH,
        /** Beads on cold glass. */
        CONDENSATION,
        /** Bubbles in a drink. */
        CARBONATION,
        /** Leaves. */
        WILTING,
        /** Cut fruit and the like. */
        BROWNING,
        /** A skin on sauce or milk. */
        SKIN,
        /** A crisp thing on a wet one. */
        SOAK,
        /** Dressing: does not change, however long before its call it is made. */
        STEADY;

        /** The word in sheets. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Look {
        demandMinutes("peak from", peakFrom);
        demandMinutes("peak to", peakTo);
        demandMinutes("usable to", usableTo);
        int from = peakFrom.orElse(0);
        int end = peakTo.orElse(from);
        Demand.that(end >= from, "peak to must not come before peak from", end);
        usableTo.ifPresent(to -> Demand.that(to >= end, "usable to must not come before the peak is over", to));
    }

    private static void demandMinutes(String name, Optional<Integer> minutes) {
        minutes.ifPresent(m -> Demand.that(m >= 0 && m <= 100_000, name + " must be from 0 to 100000 minutes", m));
    }

    public static Look table(int peakFrom, int peakTo, int usableTo) {
        return new Look(Kind.TABLE, Optional.of(peakFrom), Optional.of(peakTo), Optional.of(usableTo));
    }

    public static Look of(Kind kind) {
        return new Look(kind, Optional.empty(), Optional.empty(), Optional.empty());
    }
}
