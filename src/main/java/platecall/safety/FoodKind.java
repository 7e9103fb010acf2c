package platecall.safety;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;

/** Kinds of food that are cooked to different temperatures, the strictest last (FDA Food Code 3-401.11(A)). */
public enum FoodKind {
    /** Fish, whole cuts of meat, eggs for immediate service, and whatever no word tells. */
    INTACT("whole cuts and fish"),
    /** Ground or injected meat, ratites. */
    GROUND("ground meat"),
    /** Poultry and stuffed food. */
    POULTRY("poultry and what is stuffed");

    private static final Map<List<String>, FoodKind> WORDS = new LinkedHashMap<>();
    private static final Set<String> ONLY_ITS_NAME = Set.of("stock", "broth", "fat", "egg", "eggs");

    static {
        for (CSVRecord row : SourcedCsv.rows("foods.csv")) {
            WORDS.put(words(row.get("word")), valueOf(row.get("food").toUpperCase(Locale.ROOT)));
        }
    }

    private final String words;

    FoodKind(String words) {
        this.words = words;
    }

    /** For people: {@code poultry and what is stuffed}. */
    public String words() {
        return words;
    }

    /**
     * The strictest kind that a word in one of the names tells (foods.csv), else {@link #INTACT}. A guess from words: the
     * cook knows what is in the food.
     */
    public static FoodKind of(List<String> names) {
        FoodKind strictest = INTACT;
        for (String name : names) {
            List<String> words = words(name);
            for (Map.Entry<List<String>, FoodKind> entry : WORDS.entrySet()) {
                if (entry.getValue().compareTo(strictest) > 0 && tells(words, entry.getKey())) {
                    strictest = entry.getValue();
                }
            }
        }
        return strictest;
    }

    private static boolean tells(List<String> words, List<String> phrase) {
        for (int at = 0; at + phrase.size() <= words.size(); at++) {
            int next = at + phrase.size();
            boolean only = next < words.size() && ONLY_ITS_NAME.contains(words.get(next));
            if (!only && words.subList(at, next).equals(phrase)) {
                return true;
            }
        }
        return false;
    }

    /** Lower case, without a plural s. */
    private static List<String> words(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"))
                .filter(word -> !word.isEmpty())
                .map(word -> word.length() > 3 && word.endsWith("s") && !word.endsWith("ss")
                        ? word.substring(0, word.length() - 1)
                        : word)
                .toList();
    }
}
