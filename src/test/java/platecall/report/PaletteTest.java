package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PaletteTest {

    /** Least contrast of large text and of things that are not text: WCAG 2.2, 1.4.3 and 1.4.11. */
    private static final double LARGE = 3;

    @ParameterizedTest
    @CsvSource({
        // WCAG 2.2, definition of contrast ratio; ratios are own calculations, the first is the published maximum
        "000000, FFFFFF, 21",
        "767676, FFFFFF, 4.5422",
        "777777, FFFFFF, 4.4781",
        "949494, FFFFFF, 3.0335",
        "959595, FFFFFF, 2.9953",
        "595959, FFFFFF, 7.0047",
        "0000FF, FFFFFF, 8.5925",
        "FFFF00, FFFFFF, 1.0738",
        "0000FF, FF0000, 2.1489",
        "FF8100, 64003A, 5.2354",
        "E5E5E5, AABB00, 1.6981"
    })
    void contrastIsAsTheGuidelineDefinesIt(String one, String other, double ratio) {
        assertThat(Palette.contrast(color(one), color(other))).isCloseTo(ratio, within(1e-4));
        assertThat(Palette.contrast(color(other), color(one))).isCloseTo(ratio, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({
        // Okabe and Ito, Color Universal Design (2008); contrast on white and on black by own calculation
        "E69F00, 2.25, 9.32",
        "56B4E9, 2.31, 9.10",
        "009E73, 3.42, 6.14",
        "F0E442, 1.32, 15.88",
        "0072B2, 5.19, 4.05",
        "D55E00, 3.87, 5.43",
        "CC79A7, 3.06, 6.86",
        "999999, 2.85, 7.37"
    })
    void onlyBlueAndBlackCarryWhiteText(String fill, double onWhite, double onBlack) {
        Color color = color(fill);
        assertThat(Palette.contrast(color, Palette.WHITE)).isCloseTo(onWhite, within(0.01));
        assertThat(Palette.contrast(color, Palette.BLACK)).isCloseTo(onBlack, within(0.01));
        assertThat(Palette.textOn(color)).isEqualTo(color.equals(Palette.BLUE) ? Palette.WHITE : Palette.BLACK);
        assertThat(Palette.textOn(Palette.BLACK)).isEqualTo(Palette.WHITE);
    }

    @Test
    void everyFillHasTextAndOutlineThatAreSeen() {
        Set<Color> fills = new java.util.HashSet<>(Palette.FILLS);
        fills.addAll(Set.of(Palette.GREY, Palette.WHITE, Palette.SHADE));
        assertThat(fills).hasSize(10).allSatisfy(fill -> {
            assertThat(Palette.contrast(Palette.textOn(fill), fill)).isGreaterThanOrEqualTo(Palette.TEXT_CONTRAST);
            assertThat(Palette.contrast(Palette.BLACK, fill)).isGreaterThanOrEqualTo(LARGE);
        });
    }

    @Test
    void twentyEightSetupsHaveInksOfTheirOwn() {
        Set<Ink> inks = new java.util.HashSet<>();
        for (int i = 0; i < 28; i++) {
            inks.add(Ink.number(i));
        }
        assertThat(inks).hasSize(28);
        assertThat(Ink.number(28)).isEqualTo(Ink.number(0));
    }

    @ParameterizedTest
    @ValueSource(strings = {"readiness.jte", "runsheet.jte"})
    void pagesUseOnlyColoursThatAreReadOnEachOther(String page) throws IOException {
        String css = Files.readString(Path.of("src/main/jte", page));
        Set<String> grounds = found(css, "background: #(\\w{6})");
        Set<String> texts = found(css, "(?<![-\\w])color: #(\\w{6})");
        Set<String> lines = found(css, "(?:border|border-bottom): [^;]*#(\\w{6})");
        assertThat(grounds).contains("FFFFFF");
        assertThat(texts).containsExactly("000000", "FFFFFF");
        Matcher rule = Pattern.compile("\\{[^{}]*\\}").matcher(css);
        while (rule.find()) {
            Set<String> ground = found(rule.group(), "background: #(\\w{6})");
            Set<String> text = found(rule.group(), "(?<![-\\w])color: #(\\w{6})");
            if (!ground.isEmpty()) {
                Color on = color(ground.iterator().next());
                Color is =
                        text.isEmpty() ? Palette.BLACK : color(text.iterator().next());
                assertThat(Palette.contrast(is, on)).isGreaterThanOrEqualTo(Palette.TEXT_CONTRAST);
            }
        }
        assertThat(lines)
                .isNotEmpty()
                .allSatisfy(line ->
                        assertThat(Palette.contrast(color(line), Palette.WHITE)).isGreaterThanOrEqualTo(LARGE));
    }

    private static Set<String> found(String text, String pattern) {
        Set<String> found = new TreeSet<>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    private static Color color(String hex) {
        return new Color(Integer.parseInt(hex, 16));
    }
}
