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
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Which words for allergens mean the same, or a kind of another: almonds are nuts. A help in reading what people write,
 * not a list of everything that anybody can be allergic to.
 */
public final class Allergens {

    private static final Map<String, String> NAMES = new LinkedHashMap<>();
    private static final Map<String, Set<String>> GROUPS = new HashMap<>();

    static {
        for (String[] fact : facts()) {
            NAMES.putIfAbsent(normal(fact[0]), fact[0]);
            GROUPS.computeIfAbsent(normal(fact[0]), word -> new HashSet<>()).add(normal(fact[1]));
        }
    }

    private Allergens() {}

    /** All words that are known, as written in the list. */
    public static List<String> names() {
        return List.copyOf(NAMES.values());
    }

    /**
     * Whether food said to contain {@code contained} must be kept from somebody allergic to {@code allergy}: one is the
     * other or a kind of it. Case and plural do not matter.
     */
    public static boolean meet(String allergy, String contained) {
        return isA(allergy, contained) || isA(contained, allergy);
    }

    /** Whether {@code word} is {@code group} or a kind of it. */
    public static boolean isA(String word, String group) {
        return upwards(normal(word)).contains(normal(group));
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

    /** Lower case, singular as far as the ending tells. */
    private static String normal(String word) {
        String plain = word.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", " ");
        if (plain.length() <= 3 || plain.endsWith("ss") || !plain.endsWith("s")) {
            return plain;
        }
        return plain.endsWith("ies")
                ? plain.substring(0, plain.length() - 3) + "y"
                : plain.substring(0, plain.length() - (plain.endsWith("oes") ? 2 : 1));
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
