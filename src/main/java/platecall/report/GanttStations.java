package platecall.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import platecall.day.Day;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** The chart of what is on each station, when; and how full each storage is. */
final class GanttStations {

    static final String TITLE = "stations";

    /** No colour of a setup, since food of several stands there together. */
    static final Ink STORED = Ink.plain(Palette.GREY);

    private record Held(Span span, int units) {}

    private GanttStations() {}

    static TimeChart of(Day day, Plan plan) {
        Gantt gantt = new Gantt(day, plan, TITLE, 4);
        gantt.chart.inBands();
        plan.work().forEach(gantt::show);
        for (Station station : day.stations()) {
            if (station.kind().storesFood()) {
                storage(gantt, station);
            } else {
                bars(gantt, station);
            }
        }
        gantt.legendOfSetups();
        gantt.chart.legend("stored (dotted line: capacity)", STORED);
        gantt.chart.legend("over capacity", new Ink(Palette.VERMILLION, Ink.Pattern.RISING));
        return gantt.chart;
    }

    private static void bars(Gantt gantt, Station station) {
        List<Work> works = gantt.plan.work().stream()
                .filter(work ->
                        work.stations().stream().anyMatch(hold -> hold.station().equals(station.id())))
                .toList();
        List<Span> spans = works.stream().map(Work::span).toList();
        int[] lanes = TimeChart.lanes(spans);
        int row = gantt.chart.row(
                Wording.plain(station.id()) + " (" + size(station) + ")",
                Arrays.stream(lanes).max().orElse(0) + 1,
                24);
        gantt.shadeOutside(gantt.day.hoursOf(station), row);
        for (int i = 0; i < works.size(); i++) {
            Work work = works.get(i);
            List<String> words = new ArrayList<>(gantt.words(work, work.step()));
            OvenChange.celsius(station, work).ifPresent(celsius -> {
                words.add(0, words.get(0) + ", " + celsius + " °C");
                words.add(2, words.get(2) + ", " + celsius + " °C");
            });
            gantt.chart.mark(TimeChart.bar(spans.get(i), row, lanes[i], gantt.ink(work), words));
        }
    }

    private static String size(Station station) {
        return station.capacity() + (station.unit().isEmpty() ? "" : " " + Wording.plain(station.unit()));
    }

    private static void storage(Gantt gantt, Station station) {
        List<Held> held = held(gantt, station);
        Map<Moment, Integer> change = new HashMap<>();
        for (Held item : held) {
            change.merge(item.span().start(), item.units(), Integer::sum);
            change.merge(item.span().end(), -item.units(), Integer::sum);
        }
        TreeSet<Moment> changes = new TreeSet<>(change.keySet());
        Map<Moment, Integer> used = new HashMap<>();
        int now = 0;
        int most = 0;
        for (Moment at : changes) {
            now += change.get(at);
            used.put(at, now);
            most = Math.max(most, now);
        }
        int row = gantt.chart.row(Wording.plain(station.id()) + " (" + size(station) + ")", 1, 64);
        gantt.shadeOutside(gantt.day.hoursOf(station), row);
        gantt.chart.mark(TimeChart.level(
                changes, used, station.capacity(), row, STORED, "most at once: " + most + " of " + size(station)));
    }

    /** Everything in a storage: in the middle of a step, waiting for the next one, waiting for release. */
    private static List<Held> held(Gantt gantt, Station station) {
        List<Held> held = new ArrayList<>();
        for (Work work : gantt.plan.work()) {
            for (StationHold hold : work.stations()) {
                if (hold.station().equals(station.id())) {
                    held.add(new Held(work.span(), hold.units()));
                }
            }
            for (Storing storing : work.storage()) {
                if (storing.station().equals(station.id())) {
                    held.add(new Held(storing.span(), storing.units()));
                }
            }
        }
        for (KeptBack kept : KeptBack.of(gantt.day, gantt.plan)) {
            if (kept.station().equals(station.id())) {
                held.add(new Held(kept.span(), kept.units()));
            }
        }
        return held;
    }
}
