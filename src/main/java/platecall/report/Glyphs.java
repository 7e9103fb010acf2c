package platecall.report;

import java.text.Normalizer;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Makes a page out of characters that the typeface has; what it lacks becomes a plainer one or a box. */
final class Glyphs {

    private static final String BOX = "\u25A1";

    private Glyphs() {}

    /** The page as it can be printed. */
    static String printable(String html) {
        return printable(html, new TreeSet<>());
    }

    /** The same, and its last line says what the boxes stand for, if there are any. */
    static String explained(String html) {
        Set<Integer> missing = new TreeSet<>();
        String page = printable(html, missing);
        String codes =
                missing.stream().map(code -> String.format("U+%04X", code)).collect(Collectors.joining(", "));
        return missing.isEmpty()
                ? page
                : page.replace(
                        "</body>",
                        "<div class=\"glyphs\">" + BOX + " stands for what this typeface has no character for: " + codes
                                + "</div></body>");
    }

    private static String printable(String html, Set<Integer> missing) {
        StringBuilder page = new StringBuilder(html.length());
        // composed, since an accent that stands alone is set beside its letter; none may become a part of a tag's end
        String composed = Normalizer.normalize(html.replaceAll("(?<=>)\\p{M}+", ""), Normalizer.Form.NFC);
        composed.codePoints().forEach(code -> {
            if (code < 0x80 || Fonts.has(code)) {
                page.appendCodePoint(code);
            } else {
                page.append(instead(code, missing));
            }
        });
        return page.toString();
    }

    /** Letters without their accents, and of plain width; nothing for what only changes the look of others; else a box. */
    private static String instead(int code, Set<Integer> missing) {
        String plain = Normalizer.normalize(Character.toString(code), Normalizer.Form.NFKD)
                .replaceAll("[\\p{M}\\p{Cf}]", "");
        if (!plain.codePoints().allMatch(Fonts::has)) {
            missing.add(code);
            return BOX;
        }
        // as numbers, since a wide bracket becomes one that would be markup
        return plain.codePoints().mapToObj(it -> "&#" + it + ";").collect(Collectors.joining());
    }
}
