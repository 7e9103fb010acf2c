package platecall.day;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the name that somebody probably meant. */
public final class Spelling {

    private Spelling() {}

    /**
     * The known name closest to {@code word}, ignoring case; empty if none is close: at most one slip, and one more for
     * each three letters beyond the first three. A slip is a letter too many, too few, wrong, or swapped with its
     * neighbour. Another number is another thing, and so is another letter if there is only one, or only two signs: setup 9
     * is not near setup 1, 12A not near 12B, and US not near UK.
     */
    public static Optional<String> nearest(String word, Collection<String> known) {
        String wanted = word.strip().toLowerCase(Locale.ROOT);
        String best = null;
        int fewest = Integer.MAX_VALUE;
        for (String name : known) {
            int allowed = slipsAllowed(wanted, name);
            if (Math.abs(wanted.length() - name.length()) > allowed || otherNumber(wanted, name)) {
                continue;
            }
            int slips = slips(wanted, name.toLowerCase(Locale.ROOT));
            if (slips <= allowed && slips < fewest) {
                fewest = slips;
                best = name;
            }
        }
        return Optional.ofNullable(best);
    }

    private static int slipsAllowed(String a, String b) {
        boolean tooShort = Math.min(letters(a), letters(b)) < 2 || Math.max(a.length(), b.length()) <= 2;
        return tooShort ? 0 : Math.max(1, Math.min(a.length(), b.length()) / 3);
    }

    private static long letters(String word) {
        return word.chars().filter(Character::isLetter).count();
    }

    /** Whether both have digits, but not the same. */
    private static boolean otherNumber(String a, String b) {
        String one = a.replaceAll("\\D", "");
        String other = b.replaceAll("\\D", "");
        return !one.isEmpty() && !other.isEmpty() && !one.equals(other);
    }

    /** "Did you mean x?" if a known name is close; else all there are. */
    public static String suggest(String word, Collection<String> known) {
        return nearest(word, known)
                .map(near -> "Did you mean " + near + "?")
                .orElse(known.isEmpty() ? "Maybe leave it out." : "Maybe one of: " + String.join(", ", known) + ".");
    }

    /** Damerau's distance in its restricted form: no letter takes part in two slips. */
    static int slips(String a, String b) {
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] now = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            now[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                boolean same = a.charAt(i - 1) == b.charAt(j - 1);
                now[j] = Math.min(Math.min(now[j - 1], last[j]) + 1, last[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    now[j] = Math.min(now[j], beforeLast[j - 2] + 1);
                }
            }
            int[] spare = beforeLast;
            beforeLast = last;
            last = now;
            now = spare;
        }
        return last[b.length()];
    }
}
