package platecall.intake;

import java.util.Optional;
import java.util.function.Function;

/**
 * A column of a sheet, or a key of the sheet {@code day}.
 *
 * @param name as it stands in the sheet
 * @param grammar how its cells are written
 * @param get the value of a record
 * @param meaning in a stylist's words
 * @param unit of its numbers; may be empty
 * @param example a cell that works
 * @param required whether each row must have it
 * @param blank text that a blank cell stands for; empty if a blank cell has no value, or one worked out from others
 * @param blankMeans what a blank cell means, in words
 */
record Column<R, V>(
        String name,
        Grammar<V> grammar,
        Function<R, V> get,
        String meaning,
        String unit,
        String example,
        boolean required,
        Optional<String> blank,
        String blankMeans) {

    static <R, V> Column<R, V> required(
            String name, Grammar<V> grammar, Function<R, V> get, String meaning, String example) {
        return new Column<>(name, grammar, get, meaning, "", example, true, Optional.empty(), "");
    }

    /** A column in which a blank cell stands for {@code blank}. */
    static <R, V> Column<R, V> usual(
            String name, Grammar<V> grammar, Function<R, V> get, String blank, String meaning, String example) {
        return new Column<>(name, grammar, get, meaning, "", example, false, Optional.of(blank), blank);
    }

    /** A column in which a blank cell means that there is no value. */
    static <R, V> Column<R, Optional<V>> optional(
            String name,
            Grammar<V> grammar,
            Function<R, Optional<V>> get,
            String blankMeans,
            String meaning,
            String example) {
        return new Column<>(name, grammar.optional(), get, meaning, "", example, false, Optional.empty(), blankMeans);
    }

    Column<R, V> in(String itsUnit) {
        return new Column<>(name, grammar, get, meaning, itsUnit, example, required, blank, blankMeans);
    }

    /** The header as written in CSV sheets and workbooks. */
    String header() {
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }

    String write(R row, Frame frame) {
        return grammar.writer().apply(get.apply(row), frame);
    }
}
