package platecall.safety;

import java.util.List;

/**
 * How much a time at a temperature kills, as minutes at a reference temperature: {@code L = 10^((T - Tref) / z)},
 * {@code F = integral of L dt}, log reduction {@code = F / D}. z is the rise in degrees C that makes it ten times faster, D
 * the minutes at the reference temperature for a tenfold reduction (Bigelow's model).
 */
public final class Lethality {

    /** The reference of the UK cooking equivalents, in degrees C. */
    public static final double UK_REFERENCE_CELSIUS = 70;

    /** z of the UK cooking equivalents (Listeria monocytogenes, FSAI 2018), in degrees C. */
    public static final double UK_Z_CELSIUS = 7.5;

    /** Minutes at 70 degrees C that the UK equivalents stand for. */
    public static final double UK_MINUTES = 2;

    private Lethality() {}

    /** How many times faster than at the reference, above 0. */
    public static double rate(double celsius, double referenceCelsius, double zCelsius) {
        return Math.pow(10, (celsius - referenceCelsius) / zCelsius);
    }

    /** Minutes at the reference that kill as much as {@code minutes} at {@code celsius}. */
    public static double equivalentMinutes(double minutes, double celsius, double referenceCelsius, double zCelsius) {
        return minutes * rate(celsius, referenceCelsius, zCelsius);
    }

    /**
     * Minutes at {@code celsius} that are worth 2 minutes at 70 degrees C, z 7.5. The table that the FSA prints rounds these
     * up: use the table ({@link Profile#cooks}) or this formula, never a mixture.
     */
    public static double ukMinutes(double celsius) {
        return UK_MINUTES / rate(celsius, UK_REFERENCE_CELSIUS, UK_Z_CELSIUS);
    }

    /**
     * Minutes at the reference that a logged core temperature is worth at least: each stretch counts as its cooler end, so that
     * few readings never flatter it.
     *
     * @param log readings in order of time; fewer than two are worth 0
     * @throws IllegalArgumentException if a reading is earlier than the one before
     */
    public static double leastMinutes(List<Reading> log, double referenceCelsius, double zCelsius) {
        double sum = 0;
        for (int i = 1; i < log.size(); i++) {
            Reading a = log.get(i - 1);
            Reading b = log.get(i);
            if (b.minute() < a.minute()) {
                throw new IllegalArgumentException("readings must be in order of time, but minute [" + b.minute()
                        + "] comes after [" + a.minute() + "]");
            }
            double cooler = Math.min(a.celsius(), b.celsius());
            sum += equivalentMinutes(b.minute() - a.minute(), cooler, referenceCelsius, zCelsius);
        }
        return sum;
    }

    /** Powers of ten by which bacteria are reduced in {@code minutes}, for a D of {@code dMinutes}, above 0. */
    public static double logReduction(double minutes, double dMinutes) {
        return minutes / dMinutes;
    }

    /** D in minutes, from the {@code minutes} that a reduction from {@code before} to {@code after} took. */
    public static double dMinutes(double minutes, double before, double after) {
        return minutes / Math.log10(before / after);
    }

    /**
     * Degrees C at which milk is pasteurised when it is held for {@code seconds}, above 0 and at most 60:
     * {@code 14885 / (log10(t) + 41.97) - 273.1} (Dairy Food Safety Victoria, 2013).
     */
    public static double milkCelsius(double seconds) {
        return 14885 / (Math.log10(seconds) + 41.97) - 273.1;
    }
}
