package platecall.report;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import platecall.day.Day;
import platecall.day.Setup;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.units.Moment;
import platecall.units.Span;

/** The chart of what the camera sees: for each setup its takes, and each copy's arrival, peak and usable span. */
final class GanttCamera {

    static final String TITLE = "camera";

    private static final double PIXELS_PER_MINUTE = 4.4;
    private static final Ink TAKE = Ink.plain(Palette.GREY);
    private static final Ink PERHAPS = Ink.plain(Palette.WHITE);
    private static final Ink CARRY = new Ink(Palette.BLACK, Ink.Pattern.PLAIN);
    private static final Ink EARLY = new Ink(Palette.SKY_BLUE, Ink.Pattern.FALLING);
    private static final Ink PEAK = Ink.plain(Palette.BLUISH_GREEN);
    private static final Ink USABLE = new Ink(Palette.YELLOW, Ink.Pattern.RISING);
    private static final Ink LATE = new Ink(Palette.VERMILLION, Ink.Pattern.LEVEL);

    private GanttCamera() {}

    static TimeChart of(Day day, Plan plan) {
        Gantt gantt = new Gantt(day, plan, TITLE, PIXELS_PER_MINUTE);
        List<Setup> setups =
                day.setups().stream().sorted(Comparator.comparing(Setup::call)).toList();
        for (Setup setup : setups) {
            takes(gantt, setup);
            plan.copies().stream()
                    .filter(copy -> copy.setup().equals(setup.id()))
                    .sorted(Comparator.comparing(PlannedCopy::due).thenComparing(PlannedCopy::need))
                    .forEach(copy -> copy(gantt, setup, copy));
        }
        gantt.chart.legend("take rolls", TAKE);
        gantt.chart.legend("take rolls if more are needed", PERHAPS);
        gantt.chart.legend("plated, on its way to camera", CARRY);
        gantt.chart.legend("there, before its peak", EARLY);
        gantt.chart.legend("at its peak", PEAK);
        gantt.chart.legend("usable, past its peak", USABLE);
        gantt.chart.legend("late", LATE);
        gantt.chart.legend("black triangle: arrival; thick line below: in the shot", Ink.plain(Palette.WHITE));
        return gantt.chart;
    }

    private static void takes(Gantt gantt, Setup setup) {
        String name = "Setup " + Wording.plain(setup.id()) + " · " + gantt.wording.clock.time(setup.call()) + " · "
                + Wording.plain(setup.place());
        int row = gantt.chart.row(name, 1, 26);
        gantt.chart.show(setup.shooting());
        setup.lighting().ifPresent(at -> gantt.chart.show(Span.ofMinutes(at, 1)));
        for (int take = 0; take < setup.takesWorst(); take++) {
            Span rolls = Span.ofMinutes(setup.rollOf(take), Math.max(1, setup.rollingMinutes()));
            boolean likely = take < setup.takesLikely();
            gantt.chart.mark(TimeChart.bar(
                    rolls, row, 0, likely ? TAKE : PERHAPS, List.of("take " + (take + 1), "" + (take + 1))));
        }
    }

    private static void copy(Gantt gantt, Setup setup, PlannedCopy copy) {
        int row = gantt.chart.row(
                Wording.plain(copy.dish()) + " " + Wording.plain(gantt.wording.copies.name(copy)), 1, 22);
        for (int take = 0; take < setup.takesLikely() && setup.rollingMinutes() > 0; take++) {
            gantt.chart.behind(
                    TimeChart.shade(Span.ofMinutes(setup.rollOf(take), setup.rollingMinutes()), row, Palette.SHADE));
        }
        if (!copy.made()) {
            gantt.chart.mark((g, panel, labels) -> {
                if (panel.shows(copy.due())) {
                    Rectangle2D box = panel.box(Span.ofMinutes(copy.due(), 1), row);
                    labels.beside(g, box.getX(), box.getCenterY(), panel.right(), "not made");
                }
            });
            return;
        }
        Clock clock = gantt.wording.clock;
        int minutesOfText = (int) Math.ceil((Labels.width(times(clock, copy)) + 12) / PIXELS_PER_MINUTE);
        // what is there long before its call stands through what is left out
        Moment last = lastUse(copy);
        gantt.chart.show(
                new Span(copy.plated().orElseThrow(), copy.ready().orElseThrow().plus(1)));
        gantt.chart.show(new Span(Moment.earlier(copy.due(), last), last.plus(minutesOfText)));
        gantt.chart.mark((g, panel, labels) -> draw(g, panel, labels, clock, copy, row));
    }

    private static void draw(
            Graphics2D g, TimeChart.Panel panel, Labels labels, Clock clock, PlannedCopy copy, int row) {
        Moment plated = copy.plated().orElseThrow();
        Moment ready = copy.ready().orElseThrow();
        Moment peakFrom = Moment.later(copy.peakFrom().orElseThrow(), ready);
        Moment peakTo = Moment.later(copy.peakTo().orElseThrow(), ready);
        Moment seenTo = Moment.later(copy.due(), ready).plus(copy.showMinutes());
        Moment end = end(copy);
        span(g, panel, labels, plated, ready, row, CARRY, 8, List.of());
        span(g, panel, labels, copy.due(), ready, row, LATE, 3, List.of("late"));
        span(g, panel, labels, ready, Moment.earlier(peakFrom, end), row, EARLY, 3, List.of("early"));
        span(g, panel, labels, peakFrom, Moment.earlier(peakTo, end), row, PEAK, 3, List.of("at its peak", "peak"));
        span(
                g,
                panel,
                labels,
                Moment.later(peakTo, peakFrom),
                Moment.earlier(copy.usableTo().orElseThrow(), end),
                row,
                USABLE,
                3,
                List.of("usable"));
        if (panel.shows(new Span(ready.plus(-1), ready.plus(1)))) {
            arrival(g, panel.x(ready), panel.box(Span.ofMinutes(ready, 1), row));
        }
        Moment last = lastUse(copy);
        if (panel.shows(last)) {
            Rectangle2D box = panel.box(new Span(plated, last.plus(1)), row);
            labels.beside(g, panel.x(last) + 2, box.getCenterY(), panel.right(), times(clock, copy));
        }
        if (copy.showMinutes() > 0) {
            Span shot = new Span(Moment.later(copy.due(), ready), seenTo);
            if (panel.shows(shot)) {
                Rectangle2D box = panel.box(shot, row);
                g.setPaint(Palette.BLACK);
                g.setStroke(new BasicStroke(3.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
                g.draw(new Line2D.Double(box.getX(), box.getMaxY(), box.getMaxX(), box.getMaxY()));
            }
        }
    }

    /** When it is struck, or has been seen if that is later. */
    private static Moment end(PlannedCopy copy) {
        Moment seenTo = Moment.later(copy.due(), copy.ready().orElseThrow()).plus(copy.showMinutes());
        return Moment.later(copy.releasedAt(), seenTo);
    }

    private static Moment lastUse(PlannedCopy copy) {
        return Moment.later(
                copy.ready().orElseThrow(), Moment.earlier(copy.usableTo().orElseThrow(), end(copy)));
    }

    private static String times(Clock clock, PlannedCopy copy) {
        Moment ready = copy.ready().orElseThrow();
        Moment peakTo = copy.peakTo().orElseThrow();
        Moment end = end(copy);
        int behind = Math.max(0, copy.due().minutesUntil(ready));
        int pastUse = copy.lateMinutes() - behind;
        return "there " + clock.time(ready)
                + (behind > 0 ? ", late " + behind + " min" : "")
                + (peakTo.isAfter(ready)
                        ? ", peak to " + (peakTo.isAfter(end) ? "release" : clock.time(peakTo))
                        : ", past its peak")
                + (pastUse > 0 ? ", past use on camera by " + pastUse + " min" : "");
    }

    private static void span(
            Graphics2D g,
            TimeChart.Panel panel,
            Labels labels,
            Moment from,
            Moment to,
            int row,
            Ink ink,
            double inset,
            List<String> words) {
        if (to.isAfter(from) && panel.shows(new Span(from, to))) {
            Rectangle2D box = panel.box(new Span(from, to), row, 0, 1, inset);
            ink.paint(g, box);
            labels.inside(g, box, ink, words);
        }
    }

    private static void arrival(Graphics2D g, double x, Rectangle2D box) {
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(x - 5, box.getY());
        triangle.lineTo(x + 5, box.getY());
        triangle.lineTo(x, box.getY() + 8);
        triangle.closePath();
        g.setPaint(Palette.BLACK);
        g.fill(triangle);
    }
}
