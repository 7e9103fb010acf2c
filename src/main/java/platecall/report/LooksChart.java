package platecall.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.jfree.chart.ChartUtils;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYShapeAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import platecall.looks.LookLife;

/**
 * A picture of how dishes look from plate-up on: one strip a dish under one axis of minutes, so that no line crosses
 * another. Colours are Okabe and Ito's; dashes, markers and words say the same without colour.
 */
public final class LooksChart {

    private static final int WIDTH_PIXELS = 1200;
    private static final int STRIP_PIXELS = 104;
    private static final int FRAME_PIXELS = 150;

    /** The axis of minutes ends here at the latest; what lasts longer says so in words. */
    private static final int MOST_MINUTES = 120;

    private static final int LEAST_MINUTES = 5;
    private static final double WORDS_AT = 1.38;
    private static final double TOP = 1.7;

    private static final Color INK = Color.BLACK;
    private static final Color[] OKABE_ITO = {
        new Color(0x0072B2),
        new Color(0xD55E00),
        new Color(0x009E73),
        new Color(0xCC79A7),
        new Color(0xE69F00),
        new Color(0x56B4E9)
    };
    private static final float[][] DASHES = {null, {9, 4}, {3, 3}, {12, 4, 3, 4}};
    private static final Shape[] MARKERS = {
        new Ellipse2D.Double(-5, -5, 10, 10), new Rectangle2D.Double(-4.5, -4.5, 9, 9), triangle(), diamond()
    };

    private LooksChart() {}

    /**
     * One strip.
     *
     * @param dish name as printed
     * @param kind what changes the look, one word
     * @param life its look-life
     */
    public record Strip(String dish, String kind, LookLife life) {}

    /**
     * The picture as PNG, 1200 pixels wide.
     *
     * @param title over all strips
     * @param strips from top to bottom, at least one
     * @throws IllegalArgumentException if there is no strip
     */
    public static byte[] png(String title, List<Strip> strips) {
        if (strips.isEmpty()) {
            throw new IllegalArgumentException("a chart of looks needs at least one dish, but it is " + strips);
        }
        int end = axisEnd(strips);
        CombinedDomainXYPlot all = new CombinedDomainXYPlot(minutes(end));
        all.setGap(6);
        for (int i = 0; i < strips.size(); i++) {
            all.add(plot(strips.get(i), i, end));
        }
        JFreeChart chart = new JFreeChart(title, Fonts.bold(20), all, false);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(8, 8, 8, 16));
        chart.addSubtitle(legend());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ChartUtils.writeChartAsPNG(bytes, chart, WIDTH_PIXELS, FRAME_PIXELS + STRIP_PIXELS * strips.size());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The longest usability that still fits, a little further; what is longer runs out of the picture. */
    static int axisEnd(List<Strip> strips) {
        int longest = strips.stream()
                .mapToInt(strip -> strip.life().usableToMinutes() + strip.life().bandMinutes())
                .filter(minutes -> minutes <= MOST_MINUTES)
                .max()
                .orElse(MOST_MINUTES);
        int step = tick(longest);
        return Math.max(LEAST_MINUTES, (longest / step + 1) * step);
    }

    /** What is printed over a strip. */
    static String words(Strip strip) {
        LookLife life = strip.life();
        if (life.lasts()) {
            return strip.dish() + " (" + strip.kind() + "): does not change";
        }
        String peak = life.peakToMinutes() > life.peakFromMinutes()
                ? String.format(Locale.ROOT, "peak %d to %d min", life.peakFromMinutes(), life.peakToMinutes())
                : "no whole minute of peak";
        String band = life.bandMinutes() > 0 ? ", ± " + life.bandMinutes() + " min" : "";
        return strip.dish() + " (" + strip.kind() + "): " + peak + ", usable to " + life.usableToMinutes() + " min"
                + band;
    }

    private static XYPlot plot(Strip strip, int place, int end) {
        LookLife life = strip.life();
        Color colour = OKABE_ITO[place % OKABE_ITO.length];
        XYPlot plot = new XYPlot(new XYSeriesCollection(score(strip, end)), null, looks(), line(place, colour, end));
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(new Color(0xB0B0B0));
        plot.setRangeGridlinesVisible(false);
        plot.setOutlinePaint(INK);
        if (life.usableToMinutes() > 0) {
            plot.addDomainMarker(span(0, Math.min(end, life.usableToMinutes()), colour, 0.13f), Layer.BACKGROUND);
        }
        if (life.peakToMinutes() > life.peakFromMinutes()) {
            double to = Math.min(end, life.peakToMinutes());
            plot.addDomainMarker(span(life.peakFromMinutes(), to, colour, 0.33f), Layer.BACKGROUND);
        }
        if (life.bandMinutes() > 0 && life.peakToMinutes() <= end) {
            double low = Math.max(0, life.peakToMinutes() - life.bandMinutes());
            double high = Math.min(end, life.peakToMinutes() + life.bandMinutes());
            plot.addAnnotation(whisker(low, 1, high, 1));
            plot.addAnnotation(whisker(low, 0.88, low, 1.12));
            plot.addAnnotation(whisker(high, 0.88, high, 1.12));
        }
        if (life.peakToMinutes() > 0 && life.aimMinutes() <= end) {
            plot.addAnnotation(aim(life.aimMinutes(), end));
        }
        XYTextAnnotation words = new XYTextAnnotation(words(strip), end * 0.006, WORDS_AT);
        words.setFont(Fonts.regular(15));
        words.setTextAnchor(TextAnchor.CENTER_LEFT);
        words.setPaint(INK);
        plot.addAnnotation(words);
        return plot;
    }

    /** Corners of the score, plus where it leaves the picture. */
    private static XYSeries score(Strip strip, int end) {
        LookLife life = strip.life();
        TreeSet<Double> corners = new TreeSet<>(List.of(
                0.0,
                (double) life.peakFromMinutes(),
                (double) life.peakToMinutes(),
                (double) life.usableToMinutes(),
                (double) end));
        XYSeries series = new XYSeries(strip.dish());
        for (double corner : corners.headSet((double) end, true)) {
            if (corner == life.usableToMinutes() && life.usableToMinutes() == life.peakToMinutes() && corner > 0) {
                // no decline: the line drops straight down
                series.add(corner, 1);
            }
            series.add(corner, life.scoreAt(corner));
        }
        return series;
    }

    private static XYLineAndShapeRenderer line(int place, Color colour, int end) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, true) {
            /** Where the line only leaves the picture nothing happens, so there is no marker. */
            @Override
            public boolean getItemShapeVisible(int series, int item) {
                return getPlot().getDataset().getXValue(series, item) < end;
            }
        };
        renderer.setSeriesPaint(0, colour.darker());
        renderer.setSeriesStroke(0, stroke(DASHES[place % DASHES.length]));
        renderer.setSeriesShape(0, MARKERS[place % MARKERS.length]);
        return renderer;
    }

    private static Stroke stroke(float[] dash) {
        return new BasicStroke(2.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0);
    }

    private static IntervalMarker span(double from, double to, Color colour, float strength) {
        IntervalMarker marker = new IntervalMarker(from, to, colour);
        marker.setAlpha(strength);
        marker.setOutlinePaint(INK);
        marker.setOutlineStroke(new BasicStroke(1));
        return marker;
    }

    private static XYLineAnnotation whisker(double fromMinute, double fromScore, double toMinute, double toScore) {
        return new XYLineAnnotation(fromMinute, fromScore, toMinute, toScore, new BasicStroke(1.6f), INK);
    }

    /** A black wedge on the axis under the minute that the plan aims at. */
    private static XYShapeAnnotation aim(int minute, int end) {
        double half = end * 0.006;
        Path2D wedge = new Path2D.Double();
        wedge.moveTo(minute - half, 0);
        wedge.lineTo(minute + half, 0);
        wedge.lineTo(minute, 0.28);
        wedge.closePath();
        return new XYShapeAnnotation(wedge, new BasicStroke(1), INK, INK);
    }

    private static NumberAxis minutes(int end) {
        NumberAxis axis = new NumberAxis("minutes since plate-up");
        axis.setRange(0, end);
        axis.setTickUnit(
                new NumberTickUnit(tick(end), new DecimalFormat("0", DecimalFormatSymbols.getInstance(Locale.ROOT))));
        axis.setTickLabelFont(Fonts.regular(14));
        axis.setLabelFont(Fonts.regular(15));
        axis.setAxisLinePaint(INK);
        axis.setTickLabelPaint(INK);
        return axis;
    }

    /** From 0 (over) to 1 (peak); the room above holds the words and has no numbers. */
    private static NumberAxis looks() {
        NumberAxis axis = new NumberAxis("looks");
        axis.setRange(0, TOP);
        axis.setTickUnit(new NumberTickUnit(1, new DecimalFormat("0", DecimalFormatSymbols.getInstance(Locale.ROOT))));
        axis.setTickLabelFont(Fonts.regular(13));
        axis.setLabelFont(Fonts.regular(13));
        axis.setTickLabelPaint(INK);
        return axis;
    }

    private static TextTitle legend() {
        TextTitle legend = new TextTitle(
                "Line: looks from 1 (peak) to 0 (over). Dark: peak. Light: usable. Bar with ends: how far the end of the"
                        + " peak may be off. Wedge: the minute that a plan aims at.",
                Fonts.regular(14));
        legend.setPaint(INK);
        legend.setPosition(RectangleEdge.BOTTOM);
        legend.setHorizontalAlignment(HorizontalAlignment.CENTER);
        return legend;
    }

    private static int tick(int minutes) {
        return minutes <= 12 ? 1 : minutes <= 30 ? 2 : minutes <= 60 ? 5 : 10;
    }

    private static Shape triangle() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, -6);
        path.lineTo(6, 5);
        path.lineTo(-6, 5);
        path.closePath();
        return path;
    }

    private static Shape diamond() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, -6);
        path.lineTo(6, 0);
        path.lineTo(0, 6);
        path.lineTo(-6, 0);
        path.closePath();
        return path;
    }
}
