package platecall.safety;

import java.util.Locale;
import org.apache.commons.csv.CSVRecord;

/**
 * A published limit.
 *
 * @param value the number, in {@code unit}
 * @param unit celsius, minutes, seconds or times
 * @param bound on which side of it is right
 * @param edition of the source
 * @param source where it stands
 */
public record Limit(double value, String unit, Bound bound, String edition, String source) {

    /** Sums of decimal degrees and minutes are off by far less. */
    private static final double ROUNDING = 1e-9;

    /** Which numbers a limit allows. */
    public enum Bound {
        /** The limit and above. */
        LEAST,
        /** The limit and below. */
        MOST,
        /** Only below the limit. */
        UNDER
    }

    static Limit of(CSVRecord row, String column, String unit) {
        return new Limit(
                SourcedCsv.number(row, column),
                unit,
                Bound.valueOf(row.get("bound").toUpperCase(Locale.ROOT)),
                row.get("edition"),
                row.get("source"));
    }

    /** Whether {@code number}, in this limit's unit, is within it. */
    public boolean allows(double number) {
        return switch (bound) {
            case LEAST -> number >= value - ROUNDING;
            case MOST -> number <= value + ROUNDING;
            case UNDER -> number < value - ROUNDING;
        };
    }

    /** The most whole units allowed, for an upper limit: 240 for at most 240, 119 for less than 120. */
    public int mostWhole() {
        return bound == Bound.UNDER ? (int) Math.ceil(value) - 1 : (int) Math.floor(value);
    }
}
