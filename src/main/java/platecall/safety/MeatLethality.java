package platecall.safety;

import java.util.List;
import java.util.OptionalInt;

/**
 * Seconds that a core temperature is held to kill Salmonella in meat (USDA FSIS Appendix A, FSIS-GD-2021-14). Its z is
 * 10.0 °F (5.56 °C), another one than that of the UK equivalents: never mix them.
 */
public final class MeatLethality {

    private static final List<Row> ROWS = SourcedCsv.rows("appendix-a.csv").stream()
            .map(row -> new Row(
                    Integer.parseInt(row.get("fahrenheit")),
                    Integer.parseInt(row.get("log65_seconds")),
                    Integer.parseInt(row.get("log7_seconds"))))
            .toList();

    private MeatLethality() {}

    /** How far the bacteria are reduced. */
    public enum Reduction {
        /** 10^6.5 times fewer. */
        LOG_6_5,
        /** 10^7 times fewer. */
        LOG_7
    }

    private record Row(int fahrenheit, int log65Seconds, int log7Seconds) {}

    /** The published seconds of the highest row not above {@code fahrenheit}; empty below 130. */
    public static OptionalInt tableSeconds(double fahrenheit, Reduction reduction) {
        return ROWS.stream()
                .filter(row -> row.fahrenheit() <= fahrenheit)
                .mapToInt(row -> reduction == Reduction.LOG_7 ? row.log7Seconds() : row.log65Seconds())
                .min();
    }

    /**
     * Seconds for a 6.5-log reduction by the line through the table: {@code 112 * 60 * 10^(-(F - 130) / 10)}. For
     * understanding the table, which rounds up; the table decides.
     *
     * @param fahrenheit 130 to 158
     */
    public static double lineSeconds(double fahrenheit) {
        return 112 * 60 * Math.pow(10, -(fahrenheit - 130) / 10);
    }
}
