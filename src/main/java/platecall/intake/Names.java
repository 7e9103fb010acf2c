package platecall.intake;

import java.util.Locale;

/** Names of sheets and columns as people write them: case, blanks and a unit in brackets do not matter. */
final class Names {

    private Names() {}

    /** Lower case, single blanks. */
    static String normal(String name) {
        return name.strip().replaceAll("[\\s_]+", " ").toLowerCase(Locale.ROOT);
    }

    /** As {@link #normal}, without a unit in brackets at its end: {@code Take cycle (minutes)} is {@code take cycle}. */
    static String withoutUnit(String header) {
        return normal(header.replaceAll("\\([^()]*\\)\\s*$", ""));
    }
}
