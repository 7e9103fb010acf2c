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
 * @param range what its numbers must lie within
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
        String blankMeans,
        Range range) {

    /**
     * What its values must lie within, told apart from what other cells of the row say.
     *
     * @param least the least one as written in a cell; empty if any will do
     * @param most the greatest one as written in a cell
     * @param above whether the least itself is too little
     */
    record Range(String least, String most, boolean above) {

        private static final Range ANY = new Range("", "", false);

        String words() {
            return above ? "above " + least + ", at most " + most : "from " + least + " to " + most;
        }
    }

    static <R, V> Column<R, V> required(
            String name, Grammar<V> grammar, Function<R, V> get, String meaning, String example) {
        return new Column<>(name, grammar, get, meaning, "", example, true, Optional.empty(), "", Range.ANY);
    }

    /** A column in which a blank cell stands for {@code blank}. */
    static <R, V> Column<R, V> usual(
            String name, Grammar<V> grammar, Function<R, V> get, String blank, String meaning, String example) {
        return new Column<>(name, grammar, get, meaning, "", example, false, Optional.of(blank), blank, Range.ANY);
    }

    /** A column in which a blank cell means that there is no value. */
    static <R, V> Column<R, Optional<V>> optional(
            String name,
            Grammar<V> grammar,
            Function<R, Optional<V>> get,
            String blankMeans,
            String meaning,
            String example) {
        return new Column<>(
                name, grammar.optional(), get, meaning, "", example, false, Optional.empty(), blankMeans, Range.ANY);
    }

    Column<R, V> in(String itsUnit) {
        return new Column<>(name, grammar, get, meaning, itsUnit, example, required, blank, blankMeans, range);
    }

    /** The same in which a blank cell means, in words, {@code what}. */
    Column<R, V> blankMeaning(String what) {
        return new Column<>(name, grammar, get, meaning, unit, example, required, blank, what, range);
    }

    /** The same with values from {@code least} to {@code most}, both as written in a cell. */
    Column<R, V> from(String least, String most) {
        Range both = new Range(least, most, false);
        return new Column<>(name, grammar, get, meaning, unit, example, required, blank, blankMeans, both);
    }

    /** The same with values above {@code least} and up to {@code most}. */
    Column<R, V> above(String least, String most) {
        Range both = new Range(least, most, true);
        return new Column<>(name, grammar, get, meaning, unit, example, required, blank, blankMeans, both);
    }

    /** The value that a text stands for; throws {@link Unreadable} if it is none or lies outside the range. */
    V read(String text, Frame frame) {
        V value = parsed(text, frame);
        if (!range.least().isEmpty()) {
            double number = number(value);
            double least = number(grammar.reader().apply(range.least(), frame));
            double most = number(grammar.reader().apply(range.most(), frame));
            if (number < least || number > most || range.above() && number == least) {
                String of = measure().isEmpty() ? "" : " " + measure();
                throw new Unreadable("must be " + range.words() + of, "Maybe " + example + ".");
            }
        }
        return value;
    }

    /** As its grammar reads it; where no number can be guessed it is told what goes there. */
    private V parsed(String text, Frame frame) {
        try {
            return grammar.reader().apply(text, frame);
        } catch (Unreadable unreadable) {
            boolean number = grammar.json() == Grammar.Json.WHOLE_NUMBER || grammar.json() == Grammar.Json.NUMBER;
            if (!number || !unreadable.wayOut().isEmpty()) {
                throw unreadable;
            }
            throw new Unreadable(unreadable.getMessage(), "Maybe one number in digits: " + meaning + ".");
        }
    }

    private static double number(Object value) {
        return ((Number) (value instanceof Optional<?> some ? some.orElseThrow() : value)).doubleValue();
    }

    /** The unit of its numbers, though no header need name it. */
    String measure() {
        return unit.isEmpty() ? grammar.unit() : unit;
    }

    /** The header as written in CSV sheets and workbooks. */
    String header() {
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }

    String write(R row, Frame frame) {
        return grammar.writer().apply(get.apply(row), frame);
    }
}
