package platecall.looks;

import java.util.Locale;

/** Guards for physical quantities: outside their range a formula means nothing. */
final class Limits {

    /** Celsius of 0 K. */
    static final double ABSOLUTE_ZERO = -273.15;

    private Limits() {}

    /** Returns {@code value} if it lies in {@code [low, high]}; refuses everything else, also NaN. */
    static double within(double value, double low, double high, String name, String unit) {
        if (value >= low && value <= high) {
            return value;
        }
        throw new IllegalArgumentException(String.format(
                Locale.ROOT,
                "%s must be from %s to %s%s, but it is [%s]",
                name,
                plain(low),
                plain(high),
                unit.isEmpty() ? "" : " " + unit,
                plain(value)));
    }

    /** Returns {@code value} if it is a finite number above 0. */
    static double positive(double value, String name, String unit) {
        if (value > 0 && value < Double.POSITIVE_INFINITY) {
            return value;
        }
        throw new IllegalArgumentException(String.format(
                Locale.ROOT,
                "%s must be more than 0%s, but it is [%s]",
                name,
                unit.isEmpty() ? "" : " " + unit,
                plain(value)));
    }

    /** Kelvin of a temperature in °C from absolute zero to 10 000 °C. */
    static double kelvin(double celsius) {
        return within(celsius, ABSOLUTE_ZERO, 10_000, "temperature", "°C") - ABSOLUTE_ZERO;
    }

    /** The number as people write it: no ".0" behind whole numbers. */
    static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? Long.toString(Math.round(value))
                : Double.toString(value);
    }
}
