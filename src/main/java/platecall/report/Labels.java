package platecall.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Writes labels where they fit, and nowhere else: no label leaves its room or touches another. */
final class Labels {

    /** A label as drawn. */
    record Placed(String text, Rectangle2D area) {}

    static final float PIXELS = 14;
    static final Font FONT = Fonts.regular(PIXELS);

    private static final Font SMALL_FONT = Fonts.regular(11);

    private static final FontRenderContext MEASURE = new FontRenderContext(null, true, true);
    private static final double LINE = 15;
    private static final double ASCENT = 11.5;
    private static final double MARGIN = 2;

    private final List<Placed> placed = new ArrayList<>();

    static double width(String text) {
        return width(FONT, text);
    }

    static double width(Font font, String text) {
        return font.getStringBounds(text, MEASURE).getWidth();
    }

    List<Placed> placed() {
        return List.copyOf(placed);
    }

    /**
     * Writes the first of {@code wordings} that fits into {@code room}, longest first: on one line, on several, or, in a
     * high room, upwards.
     */
    void inside(Graphics2D g, Rectangle2D room, Ink ground, List<String> wordings) {
        for (String words : wordings) {
            if (acrossFits(g, room, ground, words) || upwardsFits(g, room, ground, words)) {
                return;
            }
        }
    }

    private boolean acrossFits(Graphics2D g, Rectangle2D room, Ink ground, String words) {
        double most = room.getWidth() - 2 * MARGIN;
        List<String> lines = wrap(words, most);
        double height = lines.size() * LINE;
        if (lines.isEmpty() || height > room.getHeight()) {
            return false;
        }
        double width = lines.stream().mapToDouble(Labels::width).max().orElseThrow();
        Rectangle2D area = new Rectangle2D.Double(room.getX() + MARGIN, room.getCenterY() - height / 2, width, height);
        if (taken(area)) {
            return false;
        }
        plate(g, area, ground);
        for (int i = 0; i < lines.size(); i++) {
            text(g, FONT, lines.get(i), area.getX(), area.getY() + i * LINE + ASCENT, Palette.textOn(ground.fill()));
        }
        placed.add(new Placed(words, area));
        return true;
    }

    private boolean upwardsFits(Graphics2D g, Rectangle2D room, Ink ground, String words) {
        Font font = room.getWidth() < LINE ? SMALL_FONT : FONT;
        double share = font.getSize2D() / FONT.getSize2D();
        double length = width(font, words);
        double line = LINE * share;
        if (room.getWidth() < line || length > room.getHeight() - 2 * MARGIN) {
            return false;
        }
        Rectangle2D area =
                new Rectangle2D.Double(room.getCenterX() - line / 2, room.getMaxY() - MARGIN - length, line, length);
        if (taken(area)) {
            return false;
        }
        plate(g, area, ground);
        double baseline = area.getX() + ASCENT * share;
        AffineTransform upright = g.getTransform();
        g.rotate(-Math.PI / 2, baseline, area.getMaxY());
        text(g, font, words, baseline, area.getMaxY(), Palette.textOn(ground.fill()));
        g.setTransform(upright);
        placed.add(new Placed(words, area));
        return true;
    }

    /** Writes {@code words} to the right of a point on white, if nothing is there yet and it ends before {@code limit}. */
    boolean beside(Graphics2D g, double x, double centreY, double limit, String words) {
        Rectangle2D area = new Rectangle2D.Double(x + 2 * MARGIN, centreY - LINE / 2, width(words), LINE);
        if (area.getMaxX() > limit || taken(area)) {
            return false;
        }
        plate(g, area, Ink.plain(Palette.WHITE));
        text(g, FONT, words, area.getX(), area.getY() + ASCENT, Palette.BLACK);
        placed.add(new Placed(words, area));
        return true;
    }

    private boolean taken(Rectangle2D area) {
        return placed.stream().anyMatch(label -> label.area().intersects(area));
    }

    /** Covers the pattern under a text, so that the text is read on one colour. */
    private static void plate(Graphics2D g, Rectangle2D area, Ink ground) {
        if (ground.pattern() != Ink.Pattern.PLAIN || ground.fill().equals(Palette.WHITE)) {
            g.setPaint(ground.fill());
            g.fill(area);
        }
    }

    private static void text(Graphics2D g, Font font, String words, double x, double baseline, Color color) {
        g.setFont(font);
        g.setPaint(color);
        g.drawString(words, (float) x, (float) baseline);
    }

    /** Lines of whole words, none wider than {@code most}; empty if a word is too wide. */
    private static List<String> wrap(String words, double most) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : words.split(" ")) {
            if (width(word) > most) {
                return List.of();
            }
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer) <= most) {
                line = longer;
            } else {
                lines.add(line);
                line = word;
            }
        }
        lines.add(line);
        return lines;
    }

    /** The words, cut with an ellipsis if they are wider than {@code most}. */
    static String cut(String words, double most) {
        if (width(words) <= most) {
            return words;
        }
        int end = words.length();
        while (end > 1 && width(words.substring(0, end) + "…") > most) {
            end = words.offsetByCodePoints(end, -1);
        }
        return words.substring(0, end).strip() + "…";
    }
}
