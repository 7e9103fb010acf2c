package platecall.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import platecall.day.Day;
import platecall.day.Person;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.units.Span;

/** The chart of whose hands are on what, when. */
final class GanttHands {

    static final String TITLE = "hands";

    /** Two minutes are as wide as a small line is high. */
    private static final double PIXELS_PER_MINUTE = 5.9;

    private record Bar(Span span, Ink ink, List<String> words) {}

    private GanttHands() {}

    static TimeChart of(Day day, Plan plan) {
        Gantt gantt = new Gantt(day, plan, TITLE, PIXELS_PER_MINUTE);
        gantt.chart.inBands();
        // food that is by itself is in the chart of stations
        plan.work().forEach(work -> work.hands().forEach(hands -> gantt.chart.show(hands.span())));
        for (Person person : day.people()) {
            List<Bar> bars = bars(gantt, person.id());
            List<Span> spans = bars.stream().map(Bar::span).toList();
            int[] lanes = TimeChart.lanes(spans);
            int most = Arrays.stream(lanes).max().orElse(0) + 1;
            int row = gantt.chart.row(Wording.plain(person.id()), most, 118);
            gantt.shadeOutside(day.hoursOf(person), row);
            for (int i = 0; i < bars.size(); i++) {
                gantt.chart.mark(TimeChart.bar(
                        spans.get(i),
                        row,
                        lanes[i],
                        bars.get(i).ink(),
                        bars.get(i).words()));
            }
        }
        gantt.legendOfSetups();
        gantt.chart.legend("meal break", new Ink(Palette.WHITE, Ink.Pattern.RISING));
        return gantt.chart;
    }

    private static List<Bar> bars(Gantt gantt, String person) {
        List<Bar> bars = new ArrayList<>();
        for (Work work : gantt.plan.work()) {
            for (Stretch stretch : Stretch.of(work)) {
                if (stretch.who().contains(person)) {
                    bars.add(new Bar(stretch.span(), gantt.ink(work), gantt.words(work, gantt.wording.what(stretch))));
                }
            }
        }
        for (Plan.Break meal : gantt.plan.breaks()) {
            if (meal.person().equals(person)) {
                bars.add(new Bar(
                        meal.span(), new Ink(Palette.WHITE, Ink.Pattern.RISING), List.of("meal break", "meal")));
                gantt.chart.show(meal.span());
            }
        }
        return bars;
    }
}
