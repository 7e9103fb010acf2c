package platecall.safety;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Span;

/**
 * A stretch in which raw food and food that is ready, or cooked, are in the same store (FDA Food Code 3-302.11). Food is on
 * the side that it is on after the step which is done there, or which it waits after.
 *
 * @param station the store
 * @param span when
 * @param raw dishes that are raw there
 * @param ready dishes that are not
 */
public record RawBesideReady(String station, Span span, Set<String> raw, Set<String> ready) {

    private record Stored(String dish, Span span) {}

    /** All such stretches, store by store in the day's order. */
    public static List<RawBesideReady> of(Day day, Plan plan) {
        Map<String, List<Stored>> raw = new LinkedHashMap<>();
        Map<String, List<Stored>> ready = new HashMap<>();
        for (Station station : day.stations()) {
            if (station.kind().storesFood()) {
                raw.put(station.id(), new ArrayList<>());
                ready.put(station.id(), new ArrayList<>());
            }
        }
        for (Work work : plan.work()) {
            Optional<Step> step = work.kind() == Work.Kind.STEP ? day.step(work.dish(), work.step()) : Optional.empty();
            if (step.isEmpty()) {
                continue;
            }
            Map<String, List<Stored>> side = step.get().raw() ? raw : ready;
            for (StationHold hold : work.stations()) {
                Optional.ofNullable(side.get(hold.station()))
                        .ifPresent(stored -> stored.add(new Stored(work.dish(), work.span())));
            }
            for (Storing storing : work.storage()) {
                Optional.ofNullable(side.get(storing.station()))
                        .ifPresent(stored -> stored.add(new Stored(work.dish(), storing.span())));
            }
        }
        List<RawBesideReady> found = new ArrayList<>();
        raw.forEach((station, stored) -> found.addAll(of(station, stored, ready.get(station))));
        return found;
    }

    private static List<RawBesideReady> of(String station, List<Stored> raw, List<Stored> ready) {
        List<RawBesideReady> found = new ArrayList<>();
        for (Span span : Span.intersection(spans(raw), spans(ready))) {
            found.add(new RawBesideReady(station, span, dishes(raw, span), dishes(ready, span)));
        }
        return found;
    }

    private static List<Span> spans(List<Stored> stored) {
        return Span.union(stored.stream().map(Stored::span).toList());
    }

    private static Set<String> dishes(List<Stored> stored, Span span) {
        Set<String> dishes = new HashSet<>();
        stored.stream().filter(one -> one.span().overlaps(span)).forEach(one -> dishes.add(one.dish()));
        return Set.copyOf(dishes);
    }
}
