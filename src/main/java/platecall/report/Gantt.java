package platecall.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Setup;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** What the charts of one plan share: inks of setups, calls, words in bars. */
final class Gantt {

    static final Ink SEVERAL = new Ink(Palette.WHITE, Ink.Pattern.PLAIN);

    final Day day;
    final Plan plan;
    final Wording wording;
    final TimeChart chart;
    private final Map<String, Ink> inks = new HashMap<>();

    Gantt(Day day, Plan plan, String what, double pixelsPerMinute) {
        this.day = day;
        this.plan = plan;
        wording = new Wording(day, plan);
        chart = new TimeChart(title(day, what), wording.clock, pixelsPerMinute);
        for (Setup setup : day.setups()) {
            inks.put(setup.id(), Ink.number(inks.size()));
            chart.call(setup.call(), "call " + Wording.plain(setup.id()) + " " + wording.clock.time(setup.call()));
        }
    }

    static String title(Day day, String what) {
        return Wording.plain(day.facts().title()) + ": " + what;
    }

    void legendOfSetups() {
        for (Setup setup : day.setups()) {
            chart.legend("for " + Wording.plain(setup.id()), inks.get(setup.id()));
        }
        chart.legend("for several setups", SEVERAL);
        chart.legend("closed or away", Ink.plain(Palette.SHADE));
    }

    Ink ink(Work work) {
        List<String> setups = wording.copies.setups(work.copies());
        return setups.size() == 1 ? inks.getOrDefault(setups.get(0), SEVERAL) : SEVERAL;
    }

    /** What a bar may say, longest first. */
    List<String> words(Work work, String deed) {
        String dish = Wording.plain(work.dish());
        String copies = Wording.plain(wording.copies.names(work.copies()));
        String setups = Wording.plain(wording.setups(work));
        boolean one = wording.copies.setups(work.copies()).size() == 1;
        return Stream.of(
                        deed + " " + dish + " " + (one ? setups + " " : "") + copies,
                        deed + " " + dish + " " + setups,
                        deed + " " + dish,
                        deed.substring(deed.indexOf(':') + 1) + " " + dish,
                        deed,
                        dish)
                .map(Wording::plain)
                .toList();
    }

    /** Shades a row outside {@code open}. */
    void shadeOutside(List<Span> open, int row) {
        Moment from = day.horizon().start().plus(-DAY_MINUTES);
        for (Span span : open) {
            if (from.isBefore(span.start())) {
                chart.behind(TimeChart.shade(new Span(from, span.start()), row, Palette.SHADE));
            }
            from = span.end();
        }
        chart.behind(TimeChart.shade(
                new Span(from, Moment.later(from, day.horizon().end()).plus(DAY_MINUTES)), row, Palette.SHADE));
    }

    private static final int DAY_MINUTES = 24 * 60;

    /** Shows the ends of a work and every minute in which hands are on; a long wait between may fall into a split. */
    void show(Work work) {
        List<Span> spans = new ArrayList<>();
        spans.add(Span.ofMinutes(work.span().start(), 1));
        spans.add(Span.ofMinutes(work.span().end().plus(-1), 1));
        work.hands().forEach(hands -> spans.add(hands.span()));
        spans.forEach(chart::show);
    }
}
