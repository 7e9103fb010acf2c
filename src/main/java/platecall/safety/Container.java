package platecall.safety;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * What one step puts into one store: a batch, or a single copy.
 *
 * @param station the store
 * @param work the step that has ended
 * @param copies ids of the copies in it
 * @param span from the first copy going in to the last one coming out
 * @param discard until when it may be used once it has left the store; empty if no clock runs for it
 */
public record Container(String station, Work work, List<String> copies, Span span, Optional<Discard> discard) {

    public Container {
        copies = List.copyOf(copies);
    }

    /** Every container of a plan, in order of time. */
    public static List<Container> of(Day day, Plan plan) {
        Map<Storing, Moment> discardBy = SafetyClock.discardByOfStores(day, plan);
        List<Container> containers = new ArrayList<>();
        for (Work work : plan.work()) {
            Map<String, List<Storing>> stores = new LinkedHashMap<>();
            work.storage()
                    .forEach(storing -> stores.computeIfAbsent(storing.station(), id -> new ArrayList<>())
                            .add(storing));
            stores.forEach((station, stored) -> containers.add(of(station, work, stored, discardBy)));
        }
        containers.sort(Comparator.comparing(Container::span).thenComparing(Container::station));
        return containers;
    }

    private static Container of(String station, Work work, List<Storing> stored, Map<Storing, Moment> discardBy) {
        Moment from = stored.get(0).span().start();
        Moment to = stored.get(0).span().end();
        for (Storing storing : stored) {
            from = Moment.earlier(from, storing.span().start());
            to = Moment.later(to, storing.span().end());
        }
        return new Container(
                station,
                work,
                stored.stream().map(Storing::copy).toList(),
                new Span(from, to),
                Discard.of(stored, discardBy));
    }
}
