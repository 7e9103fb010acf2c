package platecall.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * An oven that must be set to another temperature.
 *
 * @param oven the station's id
 * @param at the last minute to turn the knob, as far as the oven's rates are right
 * @param by when the temperature is needed
 * @param celsius the new temperature
 * @param who who sets it; empty if nobody is there
 */
record OvenChange(String oven, Moment at, Moment by, int celsius, Optional<String> who) {

    /** The changes of one oven in order of time; it is cold when it opens. None for a station that is no oven. */
    static List<OvenChange> of(Day day, Station oven, Plan plan) {
        Duty duty = new Duty(day, plan);
        List<Work> uses = plan.work().stream()
                .filter(work -> celsius(oven, work).isPresent()
                        && work.stations().stream()
                                .anyMatch(hold -> hold.station().equals(oven.id())))
                .sorted(Comparator.comparing(Work::span))
                .toList();
        List<Span> open = day.hoursOf(oven);
        List<OvenChange> changes = new ArrayList<>();
        Work before = null;
        for (Work use : uses) {
            Work last = before;
            boolean sameOpening = last != null
                    && open.stream()
                            .anyMatch(span -> span.contains(last.span().start())
                                    && span.contains(use.span().start()));
            int from = sameOpening ? last.ovenCelsius().get() : Station.COLD_OVEN_CELSIUS;
            int to = use.ovenCelsius().get();
            if (from != to) {
                Moment by = use.span().start();
                Moment at = by.plus(-oven.minutesToChange(from, to));
                changes.add(new OvenChange(oven.id(), at, by, to, duty.setter(use, at)));
            }
            before = use;
        }
        return changes;
    }

    /** The temperature at which work uses this station, if it is the oven: other stations may serve the same work. */
    static Optional<Integer> celsius(Station station, Work work) {
        return work.ovenCelsius().filter(degrees -> station.kind() == Station.Kind.OVEN);
    }
}
