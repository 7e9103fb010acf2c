package platecall.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/**
 * How a bar is filled. The pattern tells bars apart where colours can't; every bar has a black outline.
 *
 * @param fill ground colour
 * @param pattern lines over it
 */
record Ink(Color fill, Pattern pattern) {

    /** Lines over a fill. */
    enum Pattern {
        PLAIN,
        RISING,
        FALLING,
        LEVEL
    }

    private static final double LINE_GAP = 7;

    static Ink plain(Color fill) {
        return new Ink(fill, Pattern.PLAIN);
    }

    /** The {@code index}-th of many inks that differ from each other: first by colour, then by pattern. */
    static Ink number(int index) {
        int colours = Palette.FILLS.size();
        Pattern[] patterns = Pattern.values();
        return new Ink(Palette.FILLS.get(index % colours), patterns[index / colours % patterns.length]);
    }

    void paint(Graphics2D g, Rectangle2D bar) {
        g.setPaint(fill);
        g.fill(bar);
        g.setPaint(Palette.textOn(fill));
        g.setStroke(new BasicStroke(0.8f));
        double x = bar.getX();
        double y = bar.getY();
        double w = bar.getWidth();
        double h = bar.getHeight();
        if (pattern == Pattern.LEVEL) {
            for (double d = LINE_GAP / 2; d < h; d += LINE_GAP / 2) {
                g.draw(new Line2D.Double(x, y + d, x + w, y + d));
            }
        } else if (pattern != Pattern.PLAIN) {
            for (double d = LINE_GAP; d < w + h; d += LINE_GAP) {
                double fromX = Math.max(0, d - h);
                double toX = Math.min(w, d);
                double fromY = d - fromX;
                double toY = d - toX;
                boolean rising = pattern == Pattern.RISING;
                g.draw(new Line2D.Double(
                        x + fromX, y + (rising ? fromY : h - fromY), x + toX, y + (rising ? toY : h - toY)));
            }
        }
        g.setPaint(Palette.BLACK);
        g.setStroke(new BasicStroke(1f));
        g.draw(bar);
    }
}
