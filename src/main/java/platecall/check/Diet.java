package platecall.check;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import platecall.day.Allergens;
import platecall.day.Diner;

/**
 * What a diet leaves out, as far as allergens tell; everything else stays the cook's to know.
 *
 * @param name as in {@code eats vegan}, {@code eats no milk}
 * @param without the allergens
 * @param meatless whether it leaves out meat as well
 */
record Diet(String name, List<String> without, boolean meatless) {

    private static final List<Diet> NAMED = List.of(
            new Diet("vegetarian", List.of("fish", "crustaceans", "molluscs"), true),
            new Diet("vegan", List.of("fish", "crustaceans", "molluscs", "milk", "eggs"), true),
            new Diet("pescatarian", List.of(), true));

    private static final Pattern BETWEEN =
            Pattern.compile("\\s*[,;&/+().]\\s*|\\s+(?:and|or|nor|but)\\s+", Pattern.CASE_INSENSITIVE);
    private static final String ALLERGY = "allerg(?:y|ies|ic)|intoleran(?:t|ce)";
    private static final Pattern COELIAC = Pattern.compile("co?eliac( disease)?", Pattern.CASE_INSENSITIVE);
    private static final Pattern FREE = Pattern.compile(
            "(?!(?:no|not)\\b)(.+?)[ -]+(?:free|(?<allergy>" + ALLERGY + "))", Pattern.CASE_INSENSITIVE);
    private static final Pattern NO = Pattern.compile(
            "(?:no|non|not|without|avoids?|free (?:of|from)|(?<allergy>" + ALLERGY + ")(?: to| of)?:?)[ -]+(.+)",
            Pattern.CASE_INSENSITIVE);

    /**
     * A part of the cell.
     *
     * @param food what it is about, without the words that say that it is to be avoided
     * @param avoided whether there are such words
     * @param allergy whether they speak of an allergy
     */
    record Phrase(String text, String food, boolean avoided, boolean allergy) {

        static Phrase of(String text) {
            Matcher free = FREE.matcher(text);
            if (free.matches()) {
                return new Phrase(text, free.group(1), true, free.group("allergy") != null);
            }
            Matcher no = NO.matcher(text);
            return no.matches()
                    ? new Phrase(text, no.group(2), true, no.group("allergy") != null)
                    : new Phrase(text, text, COELIAC.matcher(text).matches(), false);
        }

        /** What it leaves out; empty if that can't be read. */
        Optional<Diet> diet(boolean avoiding) {
            return NAMED.stream()
                    .filter(diet -> diet.name().equalsIgnoreCase(text))
                    .findFirst()
                    .or(() -> Optional.of(food)
                            .filter(named -> avoiding
                                    && Allergens.names().stream().anyMatch(name -> Allergens.meetAsAWhole(named, name)))
                            .map(named -> new Diet(allergy || !avoided ? "no " + named : text, List.of(named), false)));
        }
    }

    /** The names that need no other words. */
    static List<String> names() {
        return NAMED.stream().map(Diet::name).toList();
    }

    private static List<Phrase> phrases(Diner diner) {
        return Stream.of(BETWEEN.split(diner.diet().strip()))
                .filter(text -> !text.isEmpty())
                .map(Phrase::of)
                .toList();
    }

    /** Whether any phrase says that something is to be avoided: in {@code no milk or eggs} that goes for both. */
    private static boolean avoiding(List<Phrase> phrases) {
        return phrases.stream().anyMatch(Phrase::avoided);
    }

    /** All that can be read of what somebody eats. */
    static List<Diet> of(Diner diner) {
        List<Phrase> phrases = phrases(diner);
        return phrases.stream()
                .flatMap(phrase -> phrase.diet(avoiding(phrases)).stream())
                .toList();
    }

    /** What is written of it that can't be read. */
    static List<Phrase> unread(Diner diner) {
        List<Phrase> phrases = phrases(diner);
        return phrases.stream()
                .filter(phrase ->
                        !phrase.allergy() && phrase.diet(avoiding(phrases)).isEmpty())
                .toList();
    }

    /** What it calls an allergy, which belongs into another column. */
    static List<String> allergies(Diner diner) {
        return phrases(diner).stream().filter(Phrase::allergy).map(Phrase::food).toList();
    }

    /** Whether it leaves out food that has {@code allergen} in it. */
    boolean leavesOut(String allergen) {
        return without.stream().anyMatch(food -> Allergens.meet(food, allergen));
    }
}
