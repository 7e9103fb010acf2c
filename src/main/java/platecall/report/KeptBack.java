package platecall.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A copy that goes back into a storage once the camera has done with it, until it is released.
 *
 * @param copy which
 * @param from where it was shown
 * @param station the storage's id
 * @param units how much of it the copy takes
 * @param span from when it leaves the set to its release; later than by the sheets where its setup is late
 * @param walk when whoever brings it goes to the set and back, a minute at least
 */
record KeptBack(PlannedCopy copy, String from, String station, int units, Span span, Span walk) {

    static List<KeptBack> of(Day day, Plan plan) {
        List<KeptBack> kept = new ArrayList<>();
        for (PlannedCopy copy : plan.copies()) {
            if (!copy.made() || copy.heldIn().isEmpty()) {
                continue;
            }
            Moment shown = leaves(day, plan, copy);
            Moment released = released(day, plan, copy);
            if (shown.isBefore(released)) {
                int units = day.dish(copy.dish()).map(Dish::storageUnits).orElse(0);
                String station = copy.heldIn().get();
                String from = day.setup(copy.setup()).map(Setup::place).orElse("");
                int minutes =
                        day.walkMinutes(day.station(station).map(Station::place).orElse(""), from);
                kept.add(new KeptBack(
                        copy,
                        from,
                        station,
                        units,
                        new Span(shown, released),
                        new Span(shown.plus(-minutes), shown.plus(Math.max(1, minutes)))));
            }
        }
        return kept;
    }

    /** When the camera has done with a copy: what is late puts off all takes of its setup. */
    private static Moment leaves(Day day, Plan plan, PlannedCopy copy) {
        Moment seen = Moment.later(copy.due(), copy.ready().orElseThrow()).plus(copy.showMinutes());
        Optional<Moment> left = day.needs().stream()
                .filter(need -> need.key().equals(copy.need()))
                .findFirst()
                .flatMap(need -> day.setup(need.setup()).map(setup -> CameraTime.leaves(setup, need, copy.number())));
        int late = plan.isShot(day, copy) ? 0 : late(plan, copy.setup());
        return left.map(at -> Moment.later(seen, at.plus(late))).orElse(seen);
    }

    /** When a copy may be struck. */
    private static Moment released(Day day, Plan plan, PlannedCopy copy) {
        return day.setup(copy.setup()).map(setup -> releaseOf(day, plan, setup)).orElse(copy.releasedAt());
    }

    /** When the food of a setup may be struck: later than by the sheets where the setup whose end that is is late. */
    static Moment releaseOf(Day day, Plan plan, Setup setup) {
        int late = setup.release() instanceof Release.AtEnd
                ? late(plan, setup.id())
                : setup.release() instanceof Release.After after ? late(plan, after.setup()) : 0;
        return day.releaseOf(setup).plus(late);
    }

    /** Minutes by which the next take of a setup is late. */
    static int late(Plan plan, String id) {
        return plan.verdict().setups().stream()
                .filter(setup -> setup.setup().equals(id) && setup.ready().isPresent())
                .mapToInt(setup -> Math.max(0, -setup.marginMinutes()))
                .findFirst()
                .orElse(0);
    }

    /** Whether whoever brings it has a way to go. */
    boolean isFar() {
        return walk.start().isBefore(span.start());
    }

    /** What goes back together: same dish and stage, places and times, brought by the same person. */
    static List<List<KeptBack>> together(List<KeptBack> all, Duty duty) {
        Map<List<Object>, List<KeptBack>> groups = new LinkedHashMap<>();
        all.forEach(kept -> groups.computeIfAbsent(
                        List.of(
                                kept.copy.dish(),
                                kept.copy.stage(),
                                kept.from,
                                kept.station,
                                kept.span,
                                duty.bringer(kept)),
                        key -> new ArrayList<>())
                .add(kept));
        return List.copyOf(groups.values());
    }

    static List<String> ids(List<KeptBack> kept) {
        return kept.stream().map(it -> it.copy.id()).toList();
    }
}
