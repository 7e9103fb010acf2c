package platecall.report;

import java.awt.Color;
import java.util.List;

/**
 * Colours that people with any colour vision can tell apart (Okabe and Ito, Color Universal Design, 2008), and how well
 * one is read on another (WCAG 2.2, success criteria 1.4.3 and 1.4.11).
 */
final class Palette {

    static final Color BLACK = new Color(0x000000);
    static final Color ORANGE = new Color(0xE69F00);
    static final Color SKY_BLUE = new Color(0x56B4E9);
    static final Color BLUISH_GREEN = new Color(0x009E73);
    static final Color YELLOW = new Color(0xF0E442);
    static final Color BLUE = new Color(0x0072B2);
    static final Color VERMILLION = new Color(0xD55E00);
    static final Color REDDISH_PURPLE = new Color(0xCC79A7);
    static final Color GREY = new Color(0x999999);
    static final Color WHITE = new Color(0xFFFFFF);

    /** Shade behind a row while nobody works there; only ever behind black. */
    static final Color SHADE = new Color(0xE5E5E5);

    /** Fills that tell things apart, neighbours as different as can be. */
    static final List<Color> FILLS = List.of(SKY_BLUE, ORANGE, BLUISH_GREEN, YELLOW, BLUE, VERMILLION, REDDISH_PURPLE);

    /** Least contrast of text on its ground. */
    static final double TEXT_CONTRAST = 4.5;

    private Palette() {}

    /** Colour of text on {@code fill}: black, or white where black is too hard to read. */
    static Color textOn(Color fill) {
        return contrast(BLACK, fill) >= TEXT_CONTRAST ? BLACK : WHITE;
    }

    /** Contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it. */
    static double contrast(Color one, Color other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(Color color) {
        return 0.2126 * linear(color.getRed()) + 0.7152 * linear(color.getGreen()) + 0.0722 * linear(color.getBlue());
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
