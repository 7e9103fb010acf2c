package platecall.safety;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import org.apache.commons.csv.CSVRecord;

/**
 * Whole roasts of beef, pork, lamb and ham: low core temperatures held for long (FDA Food Code 3-401.11(B)), in an oven that
 * is set hot enough. The heat that rises after the oven counts as holding time.
 */
public final class Roast {

    /** Published degrees are rounded to tenths. */
    private static final double ROUNDING = 1e-9;

    private static final List<Row> ROWS = SourcedCsv.rows("roast.csv").stream()
            .map(row -> new Row(
                    SourcedCsv.number(row, "fahrenheit"),
                    SourcedCsv.number(row, "celsius"),
                    Integer.parseInt(row.get("seconds"))))
            .toList();

    private static final List<CSVRecord> OVENS = SourcedCsv.rows("oven.csv");

    private Roast() {}

    /** How the oven heats. */
    public enum Oven {
        /** Still and dry. */
        STILL,
        /** With a fan. */
        CONVECTION,
        /** Above 90 % relative humidity for at least an hour, or in a bag. */
        HUMID
    }

    private record Row(double fahrenheit, double celsius, int seconds) {}

    /** Where the table stands, with its edition. */
    public static String source() {
        CSVRecord first = SourcedCsv.rows("roast.csv").get(0);
        return first.get("source") + ", " + first.get("edition");
    }

    /**
     * Seconds that a core of {@code celsius} is held: those of the highest row not above it, never a value in between; empty
     * below the first row, 54.4.
     */
    public static OptionalInt holdSeconds(double celsius) {
        return hold(celsius, Row::celsius);
    }

    /** The same from degrees Fahrenheit, from 130. */
    public static OptionalInt holdSecondsAtFahrenheit(double fahrenheit) {
        return hold(fahrenheit, Row::fahrenheit);
    }

    private static OptionalInt hold(double core, ToDoubleFunction<Row> scale) {
        return ROWS.stream()
                .filter(row -> scale.applyAsDouble(row) <= core + ROUNDING)
                .mapToInt(Row::seconds)
                .min();
    }

    /**
     * Whether an oven is set as the Code asks for a whole roast (3-401.11(B)(1)).
     *
     * @param kilograms weight of the roast, above 0
     * @param setCelsius the oven's setting
     */
    public static boolean ovenSetRight(Oven oven, double kilograms, double setCelsius) {
        return OVENS.stream()
                .filter(row -> row.get("oven").equals(oven.name().toLowerCase(Locale.ROOT)))
                .filter(row -> kilograms >= SourcedCsv.number(row, "from_kg")
                        && kilograms < SourcedCsv.number(row, "below_kg"))
                .allMatch(row -> (row.get("least_celsius").isEmpty()
                                || setCelsius >= SourcedCsv.number(row, "least_celsius"))
                        && (row.get("most_celsius").isEmpty() || setCelsius <= SourcedCsv.number(row, "most_celsius")));
    }
}
