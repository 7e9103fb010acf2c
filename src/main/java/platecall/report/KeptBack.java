package platecall.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A copy that goes back into a storage after it was shown, until it is released.
 *
 * @param copy which
 * @param station the storage's id
 * @param units how much of it the copy takes
 * @param span from when it was shown to its release
 * @param walk when whoever brings it goes to the set and back, a minute at least
 */
record KeptBack(PlannedCopy copy, String station, int units, Span span, Span walk) {

    static List<KeptBack> of(Day day, Plan plan) {
        List<KeptBack> kept = new ArrayList<>();
        for (PlannedCopy copy : plan.copies()) {
            if (!copy.made() || copy.heldIn().isEmpty()) {
                continue;
            }
            Moment shown = Moment.later(copy.due(), copy.ready().orElseThrow()).plus(copy.showMinutes());
            if (shown.isBefore(copy.releasedAt())) {
                int units = day.dish(copy.dish()).map(Dish::storageUnits).orElse(0);
                String station = copy.heldIn().get();
                int minutes = day.walkMinutes(
                        day.station(station).map(Station::place).orElse(""),
                        day.setup(copy.setup()).map(Setup::place).orElse(""));
                kept.add(new KeptBack(
                        copy,
                        station,
                        units,
                        new Span(shown, copy.releasedAt()),
                        new Span(shown.plus(-minutes), shown.plus(Math.max(1, minutes)))));
            }
        }
        return kept;
    }

    /** What goes back together: same dish and stage, storage and times, brought by the same person. */
    static List<List<KeptBack>> together(List<KeptBack> all, Duty duty) {
        Map<List<Object>, List<KeptBack>> groups = new LinkedHashMap<>();
        all.forEach(kept -> groups.computeIfAbsent(
                        List.of(kept.copy.dish(), kept.copy.stage(), kept.station, kept.span, duty.bringer(kept)),
                        key -> new ArrayList<>())
                .add(kept));
        return List.copyOf(groups.values());
    }

    static List<String> ids(List<KeptBack> kept) {
        return kept.stream().map(it -> it.copy.id()).toList();
    }
}
