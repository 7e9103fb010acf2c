package platecall.looks;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds what somebody may have meant. */
final class Spelling {

    private Spelling() {}

    /** "Maybe you mean [x]?" if a known word is near, else the known words. */
    static String suggest(String word, List<String> known) {
        if (known.isEmpty()) {
            return "Maybe leave it out.";
        }
        String nearest = known.stream()
                .min(Comparator.comparingInt(candidate -> distance(word, candidate)))
                .orElseThrow();
        return distance(word, nearest) <= Math.max(2, word.length() / 3)
                ? "Maybe you mean [" + nearest + "]?"
                : "Maybe one of: " + String.join(", ", known) + ".";
    }

    /** Letters to add, drop or change to make one of the other, without regard to case. */
    static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
