package platecall.report;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The one typeface of all papers and pictures, carried along so that they look the same on every machine. */
final class Fonts {

    static final String FAMILY = "DejaVu Sans Condensed";
    static final String REGULAR = "fonts/DejaVuSansCondensed.ttf";
    static final String BOLD = "fonts/DejaVuSansCondensed-Bold.ttf";

    private static final Font REGULAR_FACE = load(REGULAR);
    private static final Font BOLD_FACE = load(BOLD);

    private Fonts() {}

    static InputStream open(String file) {
        InputStream stream = Fonts.class.getResourceAsStream(file);
        if (stream == null) {
            throw new IllegalStateException("the program's file is incomplete: " + file + " is missing");
        }
        return stream;
    }

    static Font regular(float pixels) {
        return REGULAR_FACE.deriveFont(pixels);
    }

    static Font bold(float pixels) {
        return BOLD_FACE.deriveFont(Font.BOLD, pixels);
    }

    /** Whether a character can be written, be it bold or not. */
    static boolean has(int codePoint) {
        return REGULAR_FACE.canDisplay(codePoint) && BOLD_FACE.canDisplay(codePoint);
    }

    private static Font load(String file) {
        try (InputStream stream = open(file)) {
            return Font.createFont(Font.TRUETYPE_FONT, stream);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("the program's file is incomplete: " + file + " can't be read", e);
        }
    }
}
