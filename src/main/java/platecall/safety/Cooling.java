package platecall.safety;

import java.util.List;
import java.util.OptionalDouble;

/** Cooling through the temperatures at which bacteria grow (FDA Food Code 3-501.14 and others). */
public final class Cooling {

    private static final String FROM_AMBIENT = "from ambient";

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

        /** Whether a logged core temperature goes through this stage in time; never reaching its end is not in time. */
        public boolean kept(List<Reading> log) {
            OptionalDouble taken = minutesBetween(log, fromCelsius, toCelsius);
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

    /** Minutes in which a log falls from one temperature to another, on straight lines between readings; empty if never. */
    public static OptionalDouble minutesBetween(List<Reading> log, double fromCelsius, double toCelsius) {
        OptionalDouble from = minuteBelow(log, fromCelsius);
        OptionalDouble to = minuteBelow(log, toCelsius);
        return from.isEmpty() || to.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(to.getAsDouble() - from.getAsDouble());
    }

    /** The minute at which a log is no more above a temperature, on straight lines between readings; empty if never. */
    static OptionalDouble minuteBelow(List<Reading> log, double celsius) {
        for (int i = 0; i < log.size(); i++) {
            Reading now = log.get(i);
            if (now.celsius() <= celsius) {
                if (i == 0) {
                    return OptionalDouble.of(now.minute());
                }
                Reading before = log.get(i - 1);
                double share = (before.celsius() - celsius) / (before.celsius() - now.celsius());
                return OptionalDouble.of(before.minute() + share * (now.minute() - before.minute()));
            }
        }
        return OptionalDouble.empty();
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
