package platecall.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import platecall.day.CameraTime;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.units.Moment;
import platecall.units.Span;

/** What stands still and yet takes up room or power: food held until release, ovens and storage that are always on. */
final class Loads {

    static final String SMALLER_COPIES = "Maybe a larger storage, or less room for a copy.";

    private final Day day;
    private final ToIntFunction<Need> copiesOf;
    private final Findings found;

    /** Copies of one dish that take up room for a time. */
    private record Held(String dish, int units, Span span) {}

    Loads(Day day, ToIntFunction<Need> copiesOf, Findings found) {
        this.day = day;
        this.copiesOf = copiesOf;
        this.found = found;
    }

    /** @return stations of which one unit alone is too much for their circuit */
    Set<String> circuits() {
        Set<String> overloaded = new HashSet<>();
        for (int row = 0; row < day.stations().size(); row++) {
            Station station = day.stations().get(row);
            Optional<Circuit> circuit = station.circuit().flatMap(day::circuit);
            if (circuit.isPresent()
                    && station.tenthsOfAmps() > circuit.get().usableTenths()
                    && overloaded.add(station.id())) {
                found.add(
                        Sheet.STATIONS,
                        row,
                        "amps",
                        Wording.number(station.amps()),
                        "is more than circuit " + circuit.get().id() + " allows for long: " + usable(circuit.get()),
                        "Maybe another circuit: ask the electrician.");
            }
        }
        return overloaded;
    }

    private static String usable(Circuit circuit) {
        return Wording.number(circuit.usableTenths() / 10.0) + " A of its " + Wording.number(circuit.amps()) + " A";
    }

    /**
     * Loads that are on at once; a circuit with an overloaded station is passed over.
     *
     * @return circuits of which that is too much
     */
    Set<String> alwaysOn(Set<String> overloaded) {
        Set<String> full = new HashSet<>();
        for (int row = 0; row < day.circuits().size(); row++) {
            Circuit circuit = day.circuits().get(row);
            List<Station> stations = day.stations().stream()
                    .filter(station -> station.circuit().equals(Optional.of(circuit.id())))
                    .filter(station -> station.kind().alwaysOn() && station.amps() > 0)
                    .toList();
            if (stations.stream().anyMatch(station -> overloaded.contains(station.id()))) {
                continue;
            }
            Set<Moment> switched = new TreeSet<>();
            stations.forEach(station -> day.hoursOf(station).forEach(span -> switched.add(span.start())));
            for (Moment moment : switched) {
                List<Station> on = stations.stream()
                        .filter(station -> day.hoursOf(station).stream().anyMatch(span -> span.contains(moment)))
                        .toList();
                int tenths =
                        on.stream().mapToInt(station -> station.tenthsOfAmps()).sum();
                if (tenths > circuit.usableTenths()) {
                    found.add(
                            Sheet.CIRCUITS,
                            row,
                            "amps",
                            Wording.number(circuit.amps()),
                            "allows " + Wording.number(circuit.usableTenths() / 10.0)
                                    + " A for long, but at " + Wording.clock(day, moment) + " "
                                    + Wording.list(on.stream()
                                            .map(station ->
                                                    station.id() + " (" + Wording.number(station.amps()) + " A)")
                                            .toList())
                                    + " are on together",
                            "Maybe another circuit for one of them: ask the electrician.");
                    full.add(circuit.id());
                    break;
                }
            }
        }
        return full;
    }

    /** Storages in which used copies alone need more room than there is. */
    void heldUntilRelease() {
        for (int row = 0; row < day.dishes().size(); row++) {
            Dish dish = day.dishes().get(row);
            Optional<Station> storage = dish.heldIn().flatMap(day::station);
            if (storage.isPresent()
                    && storage.get().kind().storesFood()
                    && dish.storageUnits() > storage.get().capacity()) {
                found.add(
                        Sheet.DISHES,
                        row,
                        "held in",
                        storage.get().id(),
                        Work.tooSmall(storage.get(), dish),
                        SMALLER_COPIES);
            }
        }
        Map<String, List<Held>> heldIn = held();
        for (int row = 0; row < day.stations().size(); row++) {
            Station station = day.stations().get(row);
            List<Held> all = heldIn.getOrDefault(station.id(), List.of());
            Optional<Moment> full = all.stream()
                    .map(held -> held.span().start())
                    .sorted()
                    .filter(moment -> units(at(all, moment)) > station.capacity())
                    .findFirst();
            if (full.isPresent() && day.stations().indexOf(station) == row) {
                List<Held> there = at(all, full.get());
                Map<String, Long> copies = there.stream()
                        .collect(Collectors.groupingBy(Held::dish, LinkedHashMap::new, Collectors.counting()));
                found.add(
                        Sheet.STATIONS,
                        row,
                        "capacity",
                        String.valueOf(station.capacity()),
                        "is too little: at " + Wording.clock(day, full.get()) + " " + units(there)
                                + " are taken by what waits for release: "
                                + Wording.list(copies.entrySet().stream()
                                        .map(entry -> Wording.copies(entry.getValue()) + " of " + entry.getKey())
                                        .toList()),
                        "Maybe an earlier release, or fewer copies.");
            }
        }
    }

    private static List<Held> at(List<Held> all, Moment moment) {
        return all.stream().filter(held -> held.span().contains(moment)).toList();
    }

    private static long units(List<Held> there) {
        return there.stream().mapToLong(Held::units).sum();
    }

    /** Every copy from its last look to its release, by storage; dishes whose single copy is too large left out. */
    private Map<String, List<Held>> held() {
        Map<String, List<Held>> heldIn = new LinkedHashMap<>();
        Set<String> done = new HashSet<>();
        for (Need need : day.needs()) {
            Optional<Dish> dish = day.dish(need.dish());
            Optional<Setup> setup = day.setup(need.setup());
            Optional<Station> storage = dish.flatMap(Dish::heldIn)
                    .flatMap(day::station)
                    .filter(station -> station.kind().storesFood());
            if (setup.isEmpty()
                    || storage.isEmpty()
                    || dish.get().storageUnits() > storage.get().capacity()
                    || !done.add(need.key())) {
                continue;
            }
            Moment release = day.releaseOf(setup.get());
            for (int number = 1; number <= copiesOf.applyAsInt(need); number++) {
                Moment used = CameraTime.leaves(setup.get(), need, number);
                if (used.isBefore(release)) {
                    heldIn.computeIfAbsent(storage.get().id(), id -> new ArrayList<>())
                            .add(new Held(dish.get().id(), dish.get().storageUnits(), new Span(used, release)));
                }
            }
        }
        return heldIn;
    }
}
