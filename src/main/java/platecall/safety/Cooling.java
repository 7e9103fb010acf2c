package platecall.safety;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Cooling through the temperatures at which bacteria grow (FDA Food Code 3-501.14 and others). */
public final class Cooling {

    static final String FROM_AMBIENT = "from ambient";

    private Cooling() {}

    /**
     * From one core temperature to another within so many minutes.
     *
     * @param name of the stage in cooling.csv
     * @param fromCelsius the clock starts when the core falls below this
     * @param toCelsius the clock stops here
     * @param minutes limit of the minutes between
     */
    public record Stage(String name, double fromCelsius, double toCelsius, Limit minutes) {

        /** Whether it is for food made of what was at room temperature, not for food that was hot. */
        public boolean fromAmbient() {
            return name.equals(FROM_AMBIENT);
        }

        /** The minute at which the clock of a log starts; empty if it has not. */
        OptionalDouble began(List<Reading> log) {
            // what was never hot stands out from when it was made, however warm the room is
            return fromAmbient() ? OptionalDouble.of(log.get(0).minute()) : minuteBelow(log, fromCelsius);
        }

        /** Minutes until a log is at the end of this stage and stays there; empty if it isn't there in the end. */
        OptionalDouble taken(List<Reading> log) {
            OptionalDouble from = began(log);
            OptionalDouble to = minuteBelowForGood(log, toCelsius);
            return from.isEmpty() || to.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(to.getAsDouble() - from.getAsDouble());
        }

        /** Whether a logged core temperature goes through this stage in time; never reaching its end is not in time. */
        public boolean kept(List<Reading> log) {
            OptionalDouble taken = taken(log);
            return taken.isPresent() && minutes.allows(taken.getAsDouble());
        }
    }

    /** The stages of a profile, or of an option of USDA FSIS Appendix B: {@code fsis-1}, {@code fsis-2}, {@code fsis-3}. */
    public static List<Stage> stagesOf(String profile) {
        return SourcedCsv.rows("cooling.csv", profile).stream()
                .map(row -> new Stage(
                        row.get("stage"),
                        SourcedCsv.number(row, "from_celsius"),
                        SourcedCsv.number(row, "to_celsius"),
                        Limit.of(row, "minutes", "minutes")))
                .toList();
    }

    /** What counts as room temperature, in degrees C: that of the Food Code, since no other profile has a number for it. */
    static double ambientCelsius() {
        return stagesOf("fda-2022").stream()
                .filter(Stage::fromAmbient)
                .findFirst()
                .orElseThrow()
                .fromCelsius();
    }

    /** The minute at which a log is first no more above a temperature, on straight lines between readings; empty if never. */
    private static OptionalDouble minuteBelow(List<Reading> log, double celsius) {
        return IntStream.range(0, log.size())
                .filter(i -> log.get(i).celsius() <= celsius)
                .mapToDouble(i -> crossing(log, i, celsius))
                .findFirst();
    }

    /** The same from when on it stays there; empty if the last reading is above. */
    private static OptionalDouble minuteBelowForGood(List<Reading> log, double celsius) {
        int i = log.size();
        while (i > 0 && log.get(i - 1).celsius() <= celsius) {
            i--;
        }
        return i == log.size() ? OptionalDouble.empty() : OptionalDouble.of(crossing(log, i, celsius));
    }

    /** When a log fell to a temperature that reading {@code i} isn't above and the one before it, if any, is. */
    private static double crossing(List<Reading> log, int i, double celsius) {
        Reading now = log.get(i);
        if (i == 0) {
            return now.minute();
        }
        Reading before = log.get(i - 1);
        double share = (before.celsius() - celsius) / (before.celsius() - now.celsius());
        return before.minute() + share * (now.minute() - before.minute());
    }

    /**
     * Core temperature by Newton's law, {@code T = Tair + (T0 - Tair) e^(-k t)}: for something thin or stirred.
     *
     * @param airCelsius what surrounds it
     * @param startCelsius at hour 0
     * @param perHour k, above 0
     * @param hours 0 or more
     */
    public static double newtonCelsius(double airCelsius, double startCelsius, double perHour, double hours) {
        return airCelsius + (startCelsius - airCelsius) * Math.exp(-perHour * hours);
    }

    /**
     * Minutes until {@code targetCelsius} by Newton's law, {@code t = ln((T0 - Tair) / (T - Tair)) / k}; empty if it never
     * gets there because the surroundings are not colder.
     */
    public static OptionalDouble newtonMinutes(
            double airCelsius, double startCelsius, double targetCelsius, double perHour) {
        if (targetCelsius >= startCelsius) {
            return OptionalDouble.of(0);
        }
        return targetCelsius <= airCelsius
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        60 * Math.log((startCelsius - airCelsius) / (targetCelsius - airCelsius)) / perHour);
    }
}
