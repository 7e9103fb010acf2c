package platecall.intake;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;

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

    /** What other cells of a row leave for a whole number: it must be neither below {@code least} nor above {@code most}. */
    record Between(Optional<Integer> least, Optional<Integer> most) {

        static final Between ANY = new Between(Optional.empty(), Optional.empty());

        private boolean holds(double number) {
            return least.map(it -> number >= it).orElse(true)
                    && most.map(it -> number <= it).orElse(true);
        }
    }

    /**
     * The value that a text stands for; throws {@link Unreadable} if it is none or lies outside the range.
     *
     * @param others of what is offered then
     */
    V read(String text, Frame frame, Supplier<Between> others) {
        V value = parsed(text, frame);
        if (!inRange(value, frame)) {
            String of = measure().isEmpty() ? "" : " " + measure();
            throw new Unreadable(
                    "must be " + range.words() + of,
                    wayOut(numbersMeant(text, number(value), frame), frame, others.get()));
        }
        return value;
    }

    /** What is wrong with a blank cell if it must be filled in. */
    Unreadable missing(Frame frame, Supplier<Between> others) {
        return new Unreadable("must not be empty: " + meaning, wayOut(List.of(example), frame, others.get()));
    }

    private boolean inRange(V value, Frame frame) {
        if (range.least().isEmpty()) {
            return true;
        }
        double number = number(value);
        double least = numberIn(range.least(), frame);
        return (range.above() ? number > least : number >= least) && number <= numberIn(range.most(), frame);
    }

    private double numberIn(String text, Frame frame) {
        return number(grammar.reader().apply(text, frame));
    }

    /** What may be meant by a number out of range, the likeliest first. */
    private List<String> numbersMeant(String text, double number, Frame frame) {
        boolean tooMuch = number > numberIn(range.most(), frame);
        if (measure().equals("degrees C")) {
            return tooMuch ? List.of(String.valueOf(Math.round((number - 32) / 1.8))) : List.of();
        }
        return List.of(text.replaceFirst("^-", ""), tooMuch ? range.most() : range.least());
    }

    /** The first of {@code meant} that works in a cell, else one that other cells leave, else what goes there in words. */
    private String wayOut(List<String> meant, Frame frame, Between others) {
        return Stream.concat(
                        meant.stream(),
                        Stream.of(others.least(), others.most())
                                .flatMap(Optional::stream)
                                .map(String::valueOf))
                .filter(offered -> range.least().isEmpty() || works(offered, frame, others))
                .findFirst()
                .map(offered -> "Maybe " + offered + ".")
                .orElse("Maybe one number in digits: " + meaning + ".");
    }

    private boolean works(String offered, Frame frame, Between others) {
        V value = grammar.reader().apply(offered, frame);
        return inRange(value, frame) && others.holds(number(value));
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
            throw new Unreadable(unreadable.getMessage(), wayOut(List.of(), frame, Between.ANY));
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
