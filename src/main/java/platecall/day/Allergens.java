package platecall.day;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which words for allergens mean the same, or a kind of another: almonds are nuts. A help in reading what people write,
 * not a list of everything that anybody can be allergic to.
 */
public final class Allergens {

    private static final Map<String, String> NAMES = new LinkedHashMap<>();
    private static final Map<String, Set<String>> GROUPS = new HashMap<>();

    static {
        for (String[] fact : facts()) {
            Set<String> groups = GROUPS.computeIfAbsent(whole(fact[0]), word -> new HashSet<>());
            if (!fact[1].isEmpty()) {
                NAMES.putIfAbsent(whole(fact[0]), fact[0]);
                groups.add(whole(fact[1]));
                GROUPS.computeIfAbsent(whole(fact[1]), word -> new HashSet<>());
            }
        }
    }

    private Allergens() {}

    /** All words for allergens that are known, as written in the list. */
    public static List<String> names() {
        return List.copyOf(NAMES.values());
    }

    /** Whether the list knows it or a word of it: almond flour by almonds. */
    public static boolean knows(String text) {
        return runs(text).stream().anyMatch(Allergens::listed);
    }

    /**
     * Whether food said to contain {@code contained} must be kept from somebody allergic to {@code allergy}: one, or a word
     * of it, is the other or a kind of it. Case and plural do not matter.
     */
    public static boolean meet(String allergy, String contained) {
        return meanings(allergy).anyMatch(meant -> isKindOf(contained, meant))
                || meanings(contained).anyMatch(meant -> isKindOf(allergy, meant));
    }

    /** The same, but not for single words of either: almond flour does not meet nuts. */
    public static boolean meetAsAWhole(String allergy, String contained) {
        return upwards(whole(allergy)).contains(whole(contained))
                || upwards(whole(contained)).contains(whole(allergy));
    }

    /** Whether {@code text}, or a word of it, is {@code group} or a kind of it. */
    public static boolean isA(String text, String group) {
        return isKindOf(text, whole(group));
    }

    /** Its words in lower case, in one form for singular and plural, which need not be a word of English. */
    public static List<String> words(String text) {
        return phrases(text).stream().flatMap(List::stream).toList();
    }

    private static boolean isKindOf(String text, String group) {
        return runs(text).stream().anyMatch(run -> upwards(run).contains(group));
    }

    /** The text itself, and what of the list is in it. */
    private static Stream<String> meanings(String text) {
        return Stream.concat(Stream.of(whole(text)), runs(text).stream().filter(Allergens::listed));
    }

    /** Words in a row, however many; what is listed stands for all that is listed within it. */
    private static Set<String> runs(String text) {
        Set<String> runs = new LinkedHashSet<>(Set.of(whole(text)));
        for (List<String> words : phrases(text)) {
            boolean[][] covered = new boolean[words.size()][words.size() + 1];
            for (int length = words.size(); length > 0; length--) {
                for (int from = 0; from + length <= words.size(); from++) {
                    int to = from + length;
                    String run = joined(words.subList(from, to));
                    boolean listed = listed(run);
                    if (!listed || !covered[from][to]) {
                        runs.add(run);
                    }
                    if (length > 1) {
                        covered[from + 1][to] |= listed || covered[from][to];
                        covered[from][to - 1] |= listed || covered[from][to];
                    }
                }
            }
        }
        return runs;
    }

    private static boolean listed(String run) {
        return GROUPS.containsKey(run);
    }

    private static Set<String> upwards(String word) {
        Set<String> all = new HashSet<>();
        Deque<String> open = new ArrayDeque<>(List.of(word));
        while (!open.isEmpty()) {
            String next = open.poll();
            if (all.add(next)) {
                open.addAll(GROUPS.getOrDefault(next, Set.of()));
            }
        }
        return all;
    }

    private static String whole(String text) {
        return joined(words(text));
    }

    /** Some words as one: shell fish and pea-nuts as shellfish and peanuts, if only those are in the list. */
    private static String joined(List<String> words) {
        String apart = String.join(" ", words);
        String together = String.join("", words);
        return !listed(apart) && listed(together) ? together : apart;
    }

    /** Words between commas and the like, phrase by phrase. */
    private static List<List<String>> phrases(String text) {
        return Stream.of(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{M}\\p{N}\\s'’-]+"))
                .map(phrase -> Stream.of(phrase.split("[\\s'’-]+"))
                        .filter(word -> !word.isEmpty())
                        .map(Allergens::singular)
                        .toList())
                .toList();
    }

    /** One form for nuts and nut, peaches and peach, cookies and cookie, as far as the ending tells. */
    private static String singular(String word) {
        String stem = withoutPlural(word);
        if (stem.length() > 3 && stem.endsWith("ie")) {
            return stem.substring(0, stem.length() - 2) + "y";
        }
        // -es or -e: cheese and cheeses, octopus and octopuses
        return stem.length() > 3 && stem.matches(".*(ch|sh|[sxzo])e")
                ? withoutPlural(stem.substring(0, stem.length() - 1))
                : stem;
    }

    private static String withoutPlural(String word) {
        return word.length() > 3 && word.endsWith("s") && !word.endsWith("ss")
                ? word.substring(0, word.length() - 1)
                : word;
    }

    private static List<String[]> facts() {
        try (InputStream stream = Allergens.class.getResourceAsStream("allergens.csv");
                BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(","))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
