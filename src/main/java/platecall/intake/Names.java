package platecall.intake;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names of sheets and columns as people write them: case, blanks and a unit in brackets do not matter. */
final class Names {

    private static final Pattern BRACKETS = Pattern.compile("\\(([^()]*)\\)\\s*$");

    private Names() {}

    /** Lower case, single blanks. */
    static String normal(String name) {
        return name.strip().replaceAll("[\\s_]+", " ").toLowerCase(Locale.ROOT);
    }

    /** What stands in brackets at the end of a header, as {@link #normal}; empty if nothing does. */
    static String unit(String header) {
        Matcher brackets = BRACKETS.matcher(header);
        return brackets.find() ? normal(brackets.group(1)) : "";
    }

    /** Whether {@code written} means the unit {@code unit}; anything does if that is empty. */
    static boolean isUnit(String written, String unit) {
        return written.isEmpty() || unit.isEmpty() || plain(written).equals(plain(unit));
    }

    private static String plain(String unit) {
        return normal(unit)
                .replaceAll("\\bmin(s|\\.|ute|utes)?(?![a-z])", "minutes")
                .replaceAll("°|\\bdeg(rees?|\\.)?(?![a-z])", " ")
                .replaceAll("\\b(celsius|centigrade)\\b", "c")
                .replaceAll("\\bper\\b|/", " a ")
                .replace("percent", "%")
                .replace("²", "2")
                .replaceAll("\\s+", "");
    }

    /** As {@link #normal}, without a unit in brackets at its end: {@code Take cycle (minutes)} is {@code take cycle}. */
    static String withoutUnit(String header) {
        return normal(BRACKETS.matcher(header).replaceAll(""));
    }
}
