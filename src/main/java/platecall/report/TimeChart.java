package platecall.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.TickType;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A picture of rows over local clock time. Long stretches in which nothing happens, such as the night between two kitchen
 * days, are left out: the picture is split there. It grows with its rows. A wide one may be laid out in bands, one below the
 * other, each with all rows.
 */
final class TimeChart {

    /** Draws something into a panel; called once for each panel. */
    interface Mark {
        void draw(Graphics2D g, Panel panel, Labels labels);
    }

    /** Where a mark is drawn: one stretch of time, all rows. */
    final class Panel {
        private final Rectangle2D area;
        private final Span span;

        private Panel(Rectangle2D area, Span span) {
            this.area = area;
            this.span = span;
        }

        boolean shows(Span other) {
            return span.overlaps(other);
        }

        boolean shows(Moment moment) {
            return !moment.isBefore(span.start()) && !moment.isAfter(span.end());
        }

        /** Pixels from the left; moments outside are drawn at the edge. */
        double x(Moment moment) {
            int minutes = Math.max(0, Math.min(span.minutes(), span.start().minutesUntil(moment)));
            return area.getX() + area.getWidth() * minutes / span.minutes();
        }

        /** The box of a span in lanes {@code lane} to {@code lane + lanes} of a row, narrowed by {@code inset} above and below. */
        Rectangle2D box(Span bar, int row, int lane, int lanes, double inset) {
            Row at = rows.get(row);
            double y = area.getY() + at.top() + lane * at.lanePixels() + inset;
            return new Rectangle2D.Double(
                    x(bar.start()), y, x(bar.end()) - x(bar.start()), lanes * at.lanePixels() - 2 * inset);
        }

        Rectangle2D box(Span bar, int row) {
            return box(bar, row, 0, rows.get(row).lanes(), 0);
        }

        double right() {
            return area.getMaxX();
        }
    }

    private record Row(String name, int lanes, double lanePixels, double top) {
        double height() {
            return lanes * lanePixels;
        }
    }

    private record Call(Moment at, String words) {}

    /** Minutes of nothing that are worth a split. */
    private static final int SPLIT_MINUTES = 150;

    private static final int PADDING_MINUTES = 15;
    private static final double PANEL_GAP = 16;
    private static final double ROW_GAP = 7;
    private static final double MOST_NAME_PIXELS = 210;
    private static final double NAME_GAP = 10;
    private static final double AXIS_PIXELS = 46;
    private static final double EDGE = 14;

    /** Pixels between two times on the axis, at least. */
    private static final double TIME_GAP = 4;

    private static final double TITLE_PIXELS = 40;
    private static final double CALL_LANE = 18;
    private static final double LEGEND_LINE = 26;
    private static final double MOST_PIXELS = 5200;
    private static final double LEAST_PANEL_PIXELS = 260;
    private static final Font TITLE = Fonts.bold(20);

    /** What a printer leaves of an A4 page on its side, in millimetres. */
    private static final double PAGE_WIDE = 277;

    private static final double PAGE_HIGH = 190;
    private static final int MOST_BANDS = 6;
    private static final double BAND_GAP = 12;
    private static final int CUT_MINUTES = 30;

    /** Pixels around the label of a call. */
    private static final double LABEL_ROOM = 10;

    private final String title;
    private final Clock clock;
    private final double pixelsPerMinute;
    private final List<Row> rows = new ArrayList<>();
    private final List<Span> busy = new ArrayList<>();
    private final List<Mark> behind = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();
    private final List<Call> calls = new ArrayList<>();
    private final Map<String, Ink> legend = new LinkedHashMap<>();
    private double bottom;
    private boolean inBands;

    TimeChart(String title, Clock clock, double pixelsPerMinute) {
        this.title = title;
        this.clock = clock;
        this.pixelsPerMinute = pixelsPerMinute;
    }

    /** Adds a row below the others; its index. */
    int row(String name, int lanes, double lanePixels) {
        Row row = new Row(Labels.cut(name, MOST_NAME_PIXELS), lanes, lanePixels, bottom);
        rows.add(row);
        bottom += row.height() + ROW_GAP;
        return rows.size() - 1;
    }

    /** Says that something happens in this span, so that it must be seen. */
    void show(Span span) {
        busy.add(span);
    }

    /** Draws after all marks added with {@link #behind}. */
    void mark(Mark mark) {
        marks.add(mark);
    }

    void behind(Mark mark) {
        behind.add(mark);
    }

    /** A vertical line through all rows with a label above them. */
    void call(Moment at, String words) {
        calls.add(new Call(at, words));
        busy.add(Span.ofMinutes(at, 1));
    }

    /** Lays the picture out in as many bands as make it largest on a printed page. */
    void inBands() {
        inBands = true;
    }

    void legend(String words, Ink ink) {
        legend.put(words, ink);
    }

    /** The picture with its measures, and with what was written where, once drawn. */
    final class Picture {
        final int width;
        final int height;
        private final double scale;
        private final double namePixels = NAME_GAP
                + rows.stream()
                        .mapToDouble(row -> Labels.width(row.name()))
                        .max()
                        .orElse(0);
        private final List<Band> bands;
        private final Labels labels = new Labels();

        private Picture() {
            List<Span> panels = panels();
            scale = Math.min(
                    pixelsPerMinute,
                    MOST_PIXELS / panels.stream().mapToInt(Span::minutes).sum());
            List<Band> best = bands(panels, 1);
            for (int count = 2; inBands && count <= MOST_BANDS; count++) {
                List<Band> more = bands(panels, count);
                best = millimetresPerPixel(more) > millimetresPerPixel(best) ? more : best;
            }
            bands = best;
            width = widthOf(bands);
            height = heightOf(bands);
        }

        /** The panels in so many bands of about the same length, or in fewer. */
        private List<Band> bands(List<Span> panels, int count) {
            int each = (panels.stream().mapToInt(Span::minutes).sum() + count - 1) / count;
            int least = (int) Math.ceil(LEAST_PANEL_PIXELS / scale);
            List<Band> bands = new ArrayList<>();
            List<Span> band = new ArrayList<>();
            int room = each;
            for (Span panel : panels) {
                Moment from = panel.start();
                while (from.isBefore(panel.end())) {
                    Moment cut = cutFrom(from.plus(Math.max(least, room)));
                    Moment to = cut.plus(least).isBefore(panel.end()) ? cut : panel.end();
                    Span part = new Span(from, to);
                    band.add(part);
                    room -= part.minutes();
                    if (room <= 0) {
                        bands.add(new Band(band));
                        band = new ArrayList<>();
                        room = each;
                    }
                    from = to;
                }
            }
            if (!band.isEmpty()) {
                bands.add(new Band(band));
            }
            return bands;
        }

        private List<Call> callsIn(Span panel) {
            return calls.stream()
                    .filter(call -> panel.contains(call.at()))
                    .sorted(Comparator.comparing(Call::at))
                    .toList();
        }

        /** The first full half hour from a moment on at which no call's label is cut. */
        private Moment cutFrom(Moment at) {
            Moment cut = at;
            while (cut.in(clock.zone()).getMinute() % CUT_MINUTES != 0 || cutsALabel(cut)) {
                cut = cut.plus(1);
            }
            return cut;
        }

        private boolean cutsALabel(Moment cut) {
            return calls.stream()
                    .filter(call -> call.at().isBefore(cut))
                    .anyMatch(call -> call.at().minutesUntil(cut) * scale < LABEL_ROOM + Labels.width(call.words()));
        }

        private double millimetresPerPixel(List<Band> bands) {
            return Math.min(PAGE_WIDE / widthOf(bands), PAGE_HIGH / heightOf(bands));
        }

        private int widthOf(List<Band> bands) {
            double plot = bands.stream().mapToDouble(Band::pixels).max().orElse(0);
            return (int) Math.ceil(2 * EDGE + namePixels + plot);
        }

        private int heightOf(List<Band> bands) {
            double all = bands.stream().mapToDouble(Band::height).sum() + (bands.size() - 1) * BAND_GAP;
            return (int) Math.ceil(TITLE_PIXELS + all + layLegend(null, 0, widthOf(bands)) + 8 + EDGE);
        }

        /** What has been written, and where; empty before the picture is drawn. */
        List<Labels.Placed> labels() {
            return labels.placed();
        }

        void draw(Graphics2D g) {
            g.setPaint(Palette.WHITE);
            g.fill(new Rectangle2D.Double(0, 0, width, height));
            g.setFont(TITLE);
            g.setPaint(Palette.BLACK);
            g.drawString(title, (float) EDGE, 27);
            double top = TITLE_PIXELS;
            for (Band band : bands) {
                band.draw(g, top);
                top += band.height() + BAND_GAP;
            }
            layLegend(g, top - BAND_GAP + 8, width);
        }

        /** Stretches of time beside each other, with all rows. */
        private final class Band {
            private final List<Span> panels;
            private final Map<Call, Integer> callLanes = new LinkedHashMap<>();
            private final double callPixels;

            private Band(List<Span> panels) {
                this.panels = panels;
                callPixels = stagger() * CALL_LANE;
            }

            private double pixels() {
                return panels.stream().mapToInt(Span::minutes).sum() * scale + PANEL_GAP * (panels.size() - 1);
            }

            private double height() {
                return 2 * AXIS_PIXELS + callPixels + bottom;
            }

            /** Gives each call the first lane in which its label touches no other; returns the number of lanes. */
            private int stagger() {
                List<Double> ends = new ArrayList<>();
                double left = 0;
                for (Span panel : panels) {
                    for (Call call : callsIn(panel)) {
                        double x = left + panel.start().minutesUntil(call.at()) * scale;
                        int lane = 0;
                        while (lane < ends.size() && ends.get(lane) > x) {
                            lane++;
                        }
                        double end = x + LABEL_ROOM + Labels.width(call.words());
                        if (lane == ends.size()) {
                            ends.add(end);
                        } else {
                            ends.set(lane, end);
                        }
                        callLanes.put(call, lane);
                    }
                    left += panel.minutes() * scale + PANEL_GAP;
                }
                return ends.size();
            }

            private void draw(Graphics2D g, double top) {
                JFreeChart chart = new JFreeChart(null, null, plot(), false);
                chart.setBackgroundPaint(Palette.WHITE);
                chart.setPadding(RectangleInsets.ZERO_INSETS);
                chart.draw(
                        g,
                        new Rectangle2D.Double(EDGE, top, namePixels + pixels(), height()),
                        new ChartRenderingInfo());
            }

            private CombinedRangeXYPlot plot() {
                NumberAxis names = new NumberAxis() {
                    private static final long serialVersionUID = 1L;

                    @Override
                    public List<?> refreshTicks(Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
                        List<NumberTick> ticks = new ArrayList<>();
                        for (Row row : rows) {
                            ticks.add(new NumberTick(
                                    TickType.MAJOR,
                                    callPixels + row.top() + row.height() / 2,
                                    row.name(),
                                    TextAnchor.CENTER_RIGHT,
                                    TextAnchor.CENTER_RIGHT,
                                    0));
                        }
                        return ticks;
                    }
                };
                names.setRange(0, callPixels + bottom);
                names.setInverted(true);
                plain(names);
                CombinedRangeXYPlot plot = new CombinedRangeXYPlot(names);
                plot.setGap(PANEL_GAP);
                plot.setInsets(RectangleInsets.ZERO_INSETS);
                AxisSpace left = new AxisSpace();
                left.setLeft(namePixels);
                plot.setFixedRangeAxisSpace(left);
                AxisSpace ends = new AxisSpace();
                ends.setTop(AXIS_PIXELS);
                ends.setBottom(AXIS_PIXELS);
                plot.setFixedDomainAxisSpace(ends);
                for (Span panel : panels) {
                    XYPlot sub = new XYPlot(null, clockAxis(panel), null, null);
                    sub.setDomainAxis(1, clockAxis(panel));
                    sub.setDomainAxisLocation(0, AxisLocation.TOP_OR_LEFT);
                    sub.setDomainAxisLocation(1, AxisLocation.BOTTOM_OR_LEFT);
                    sub.setBackgroundPaint(Palette.WHITE);
                    sub.setOutlinePaint(Palette.BLACK);
                    sub.setInsets(RectangleInsets.ZERO_INSETS);
                    sub.setRangeGridlinesVisible(false);
                    sub.setDomainGridlinePaint(Palette.GREY);
                    sub.setDomainGridlineStroke(new BasicStroke(0.5f));
                    sub.setNoDataMessage(null);
                    sub.addAnnotation(new Everything(panel));
                    plot.add(sub, panel.minutes());
                }
                return plot;
            }

            private ValueAxis clockAxis(Span panel) {
                int step = tickMinutes();
                NumberAxis axis = new NumberAxis() {
                    private static final long serialVersionUID = 1L;

                    @Override
                    public List<?> refreshTicks(Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
                        List<NumberTick> ticks = new ArrayList<>();
                        // into the gap on the left at most; on the right all ends with the panel
                        double free = TIME_GAP - PANEL_GAP;
                        for (Moment at = panel.start(); !at.isAfter(panel.end()); at = at.plus(1)) {
                            var time = at.in(clock.zone());
                            if ((time.getHour() * 60 + time.getMinute()) % step == 0) {
                                double x = panel.start().minutesUntil(at) * scale;
                                double half = Labels.width(clock.time(at)) / 2;
                                boolean fits = x - half >= free && x + half <= panel.minutes() * scale;
                                free = fits ? x + half + TIME_GAP : free;
                                ticks.add(new NumberTick(
                                        TickType.MAJOR,
                                        at.epochMinute(),
                                        fits ? clock.time(at) : "",
                                        edge == RectangleEdge.TOP ? TextAnchor.BOTTOM_CENTER : TextAnchor.TOP_CENTER,
                                        TextAnchor.CENTER,
                                        0));
                            }
                        }
                        return ticks;
                    }
                };
                axis.setRange(panel.start().epochMinute(), panel.end().epochMinute());
                axis.setLabel(
                        clock.sameDate(panel.start(), panel.end())
                                ? clock.date(panel.start())
                                : clock.shortDate(panel.start()) + " to " + clock.shortDate(panel.end()));
                plain(axis);
                return axis;
            }

            private int tickMinutes() {
                double room = Labels.width(clock.time(panels.get(0).start())) + 14;
                for (int step : new int[] {15, 30, 60, 120}) {
                    if (step * scale >= room) {
                        return step;
                    }
                }
                return 240;
            }

            private void plain(NumberAxis axis) {
                axis.setTickLabelFont(Labels.FONT);
                axis.setLabelFont(Labels.FONT);
                axis.setTickLabelPaint(Palette.BLACK);
                axis.setLabelPaint(Palette.BLACK);
                axis.setAutoTickUnitSelection(false);
                axis.setMinorTickMarksVisible(false);
            }

            /** All marks of the chart in one panel. */
            private final class Everything extends AbstractXYAnnotation {
                private static final long serialVersionUID = 1L;
                private final transient Span span;

                private Everything(Span span) {
                    this.span = span;
                }

                @Override
                public void draw(
                        Graphics2D g,
                        XYPlot plot,
                        Rectangle2D area,
                        ValueAxis domain,
                        ValueAxis range,
                        int index,
                        PlotRenderingInfo info) {
                    Panel panel = new Panel(
                            new Rectangle2D.Double(
                                    area.getX(),
                                    area.getY() + callPixels,
                                    area.getWidth(),
                                    area.getHeight() - callPixels),
                            span);
                    behind.forEach(mark -> mark.draw(g, panel, labels));
                    ruleRows(g, panel);
                    List<Call> here = callsIn(span);
                    here.forEach(call -> rule(g, panel, area, call));
                    here.forEach(call -> labels.beside(
                            g,
                            panel.x(call.at()),
                            area.getY() + (callLanes.get(call) + 0.5) * CALL_LANE,
                            width,
                            call.words()));
                    marks.forEach(mark -> mark.draw(g, panel, labels));
                }

                private void ruleRows(Graphics2D g, Panel panel) {
                    g.setPaint(Palette.GREY);
                    g.setStroke(new BasicStroke(0.6f));
                    for (Row row : rows) {
                        double y = panel.area.getY() + row.top() - ROW_GAP / 2;
                        g.draw(new Line2D.Double(panel.area.getX(), y, panel.right(), y));
                    }
                }

                private void rule(Graphics2D g, Panel panel, Rectangle2D area, Call call) {
                    double x = panel.x(call.at());
                    double y = area.getY() + callLanes.get(call) * CALL_LANE;
                    g.setPaint(Palette.BLACK);
                    g.setStroke(new BasicStroke(
                            1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 3}, 0));
                    g.draw(new Line2D.Double(x, y + 2, x, area.getMaxY()));
                }
            }
        }

        /** Lays the legend out in as many lines as it needs, drawing it if there is something to draw on; its height. */
        private double layLegend(Graphics2D g, double top, double pictureWidth) {
            double legendWidth = pictureWidth - 2 * EDGE;
            double x = EDGE;
            double y = top;
            for (Map.Entry<String, Ink> entry : legend.entrySet()) {
                String words = Labels.cut(entry.getKey(), legendWidth - 60);
                double needed = 34 + Labels.width(words) + 24;
                if (x > EDGE && x + needed > EDGE + legendWidth) {
                    x = EDGE;
                    y += LEGEND_LINE;
                }
                if (g != null) {
                    entry.getValue().paint(g, new Rectangle2D.Double(x, y, 28, 16));
                    labels.beside(g, x + 31, y + 8, pictureWidth, words);
                }
                x += needed;
            }
            return y - top + LEGEND_LINE;
        }
    }

    Picture picture() {
        return new Picture();
    }

    /** The stretches of time that are shown: what is busy, padded, without long nothings. */
    private List<Span> panels() {
        List<Span> padded = new ArrayList<>();
        for (Span span : busy) {
            padded.add(
                    new Span(span.start().plus(-SPLIT_MINUTES / 2), span.end().plus(SPLIT_MINUTES / 2)));
        }
        List<Span> panels = new ArrayList<>();
        for (Span joined : Span.union(padded)) {
            Moment start = joined.start().plus(SPLIT_MINUTES / 2 - PADDING_MINUTES);
            Moment end = joined.end().plus(PADDING_MINUTES - SPLIT_MINUTES / 2);
            int least = (int) Math.ceil(LEAST_PANEL_PIXELS / pixelsPerMinute);
            panels.add(new Span(start, Moment.later(end, start.plus(least))));
        }
        return Span.union(panels);
    }

    /** Lanes for spans so that no two in one lane overlap; the lane of each, in the order given. */
    static int[] lanes(List<Span> spans) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparing(spans::get));
        int[] lane = new int[spans.size()];
        List<Moment> free = new ArrayList<>();
        for (int i : order) {
            int to = 0;
            while (to < free.size() && free.get(to).isAfter(spans.get(i).start())) {
                to++;
            }
            if (to == free.size()) {
                free.add(spans.get(i).end());
            } else {
                free.set(to, spans.get(i).end());
            }
            lane[i] = to;
        }
        return lane;
    }

    /** A bar with a label in it. */
    static Mark bar(Span span, int row, int lane, Ink ink, List<String> wordings) {
        return (g, panel, labels) -> {
            if (panel.shows(span)) {
                Rectangle2D box = panel.box(span, row, lane, 1, 1);
                ink.paint(g, box);
                labels.inside(g, box, ink, wordings);
            }
        };
    }

    /** A shade over a whole row, for time in which nobody works there. */
    static Mark shade(Span span, int row, Color color) {
        return (g, panel, labels) -> {
            if (panel.shows(span)) {
                g.setPaint(color);
                g.fill(panel.box(span, row));
            }
        };
    }

    /** How full a storage is: steps that rise to the row's height at {@code capacity} or, if that is more, at the most held. */
    static Mark level(
            TreeSet<Moment> changes, Map<Moment, Integer> used, int capacity, int row, Ink ink, String words) {
        int most = Math.max(
                capacity, used.values().stream().max(Integer::compareTo).orElse(0));
        return (g, panel, labels) -> {
            for (Moment from : changes) {
                Moment to = changes.higher(from);
                int units = used.getOrDefault(from, 0);
                if (to != null && units > 0 && panel.shows(new Span(from, to))) {
                    Rectangle2D full = panel.box(new Span(from, to), row);
                    double height = full.getHeight() * units / most;
                    Rectangle2D step =
                            new Rectangle2D.Double(full.getX(), full.getMaxY() - height, full.getWidth(), height);
                    (units > capacity ? new Ink(Palette.VERMILLION, Ink.Pattern.RISING) : ink).paint(g, step);
                }
            }
            Rectangle2D all = panel.box(panel.span, row);
            double top = all.getMaxY() - all.getHeight() * capacity / most;
            g.setPaint(Palette.BLACK);
            g.setStroke(new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 3}, 0));
            g.draw(new Line2D.Double(all.getX(), top, all.getMaxX(), top));
            labels.beside(g, all.getX() + 2, all.getY() + 10, panel.right(), words);
        };
    }
}
