package platecall.intake;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * How a kind of value stands in a cell.
 *
 * @param noun what the text should be, as in "is not a time"
 * @param example text that works
 * @param json how it stands in JSON
 * @param words all words it may be, if they can be counted
 * @param pattern regular expression that the text in JSON matches; empty if any text may do
 * @param reader from text to value; throws {@link Unreadable}
 * @param writer from value to text; an empty text for no value
 */
record Grammar<V>(
        String noun,
        String example,
        Json json,
        List<String> words,
        String pattern,
        BiFunction<String, Frame, V> reader,
        BiFunction<V, Frame, String> writer) {

    /** How a value stands in JSON; text is always accepted, too. */
    enum Json {
        TEXT,
        WHOLE_NUMBER,
        NUMBER,
        YES_NO,
        LIST
    }

    static <V> Grammar<V> text(
            String noun, String example, BiFunction<String, Frame, V> reader, BiFunction<V, Frame, String> writer) {
        return new Grammar<>(noun, example, Json.TEXT, List.of(), "", reader, writer);
    }

    static <V> Grammar<V> number(
            String noun, String example, Json json, BiFunction<String, Frame, V> reader, Function<V, String> writer) {
        return new Grammar<>(
                noun,
                example,
                json,
                List.of(),
                json == Json.WHOLE_NUMBER ? "^-?[0-9]+$" : "^-?[0-9]+(\\.[0-9]+)?( ?%)?$",
                reader,
                (value, frame) -> writer.apply(value));
    }

    Grammar<V> matching(String regularExpression) {
        return new Grammar<>(noun, example, json, words, regularExpression, reader, writer);
    }

    /** The same where a blank cell means that there is no value. */
    Grammar<Optional<V>> optional() {
        return new Grammar<>(
                noun,
                example,
                json,
                words,
                pattern,
                (text, frame) -> Optional.of(reader.apply(text, frame)),
                (value, frame) -> value.map(v -> writer.apply(v, frame)).orElse(""));
    }

    /** The unit that its noun has already. */
    String unit() {
        return noun.equals(Grammars.MINUTES.noun())
                ? "minutes"
                : noun.equals(Grammars.CELSIUS.noun()) ? "degrees C" : "";
    }
}
