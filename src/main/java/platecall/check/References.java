package platecall.check;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import platecall.day.Absence;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.Diner;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Place;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;

/** Names that nothing bears, and names that two things bear. */
final class References {

    /** Columns in which several names may stand. */
    private static final Set<String> LISTS = Set.of("eaten by", "after", "any time after", "station");

    private final Day day;
    private final Findings found;
    private final Map<Unknown, Places> unknown = new LinkedHashMap<>();
    private final Set<String> setups = new LinkedHashSet<>();
    private final Set<String> dishes = new LinkedHashSet<>();
    private final Set<String> stations = new LinkedHashSet<>();
    private final Set<String> storages = new LinkedHashSet<>();
    private final Set<String> circuits = new LinkedHashSet<>();
    private final Set<String> diners = new LinkedHashSet<>();
    private final Set<String> places = new LinkedHashSet<>();
    private final Map<String, Set<String>> stepsOf = new LinkedHashMap<>();

    /** A name that is looked for in vain; {@code home} ends the sentence {@code [x] is not ...}. */
    private record Unknown(String name, String home) {}

    /** Where it stands first, what was meant, and in which other rows it stands. */
    private record Places(Sheet sheet, int row, String column, String wayOut, Set<String> rows) {}

    private References(Day day, Findings found) {
        this.day = day;
        this.found = found;
    }

    static void check(Day day, Findings found) {
        References references = new References(day, found);
        references.collectNames();
        references.duplicates();
        references.references();
        references.unknown.forEach((name, places) -> {
            int more = places.rows().size() - 1;
            found.add(
                    places.sheet(),
                    places.row(),
                    places.column(),
                    name.name(),
                    "is not " + name.home()
                            + (more == 0 ? "" : ", here and in " + more + " more row" + (more == 1 ? "" : "s")),
                    places.wayOut());
        });
    }

    private void collectNames() {
        day.setups().forEach(setup -> setups.add(setup.id()));
        day.dishes().forEach(dish -> dishes.add(dish.id()));
        day.stations().forEach(station -> {
            stations.add(station.id());
            if (station.kind().storesFood()) {
                storages.add(station.id());
            }
        });
        day.circuits().forEach(circuit -> circuits.add(circuit.id()));
        day.cast().forEach(diner -> diners.add(diner.id()));
        day.places().forEach(place -> places.add(place.id()));
        day.steps()
                .forEach(step -> stepsOf.computeIfAbsent(step.dish(), dish -> new LinkedHashSet<>())
                        .add(step.id()));
    }

    private void duplicates() {
        twice(Sheet.SETUPS, "setup", day.setups(), Setup::id);
        twice(Sheet.DISHES, "dish", day.dishes(), Dish::id);
        twice(Sheet.STATIONS, "station", day.stations(), Station::id);
        twice(Sheet.CIRCUITS, "circuit", day.circuits(), Circuit::id);
        twice(Sheet.PEOPLE, "person", day.people(), Person::id);
        twice(Sheet.CAST, "who", day.cast(), Diner::id);
        twice(Sheet.PLACES, "place", day.places(), Place::id);
        Set<String> needs = new HashSet<>();
        for (int row = 0; row < day.needs().size(); row++) {
            String key = day.needs().get(row).key();
            if (!needs.add(key)) {
                found.add(
                        Sheet.NEEDS,
                        row,
                        "",
                        key,
                        "is wanted by an earlier row already",
                        "Maybe one row with more plates per take.");
            }
        }
        Set<List<String>> steps = new HashSet<>();
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            if (!steps.add(List.of(step.dish(), step.id()))) {
                found.add(
                        Sheet.STEPS,
                        row,
                        "step",
                        step.id(),
                        "is a step of dish " + step.dish() + " in an earlier row already",
                        "Maybe give it a name of its own, or delete a row.");
            }
        }
    }

    private <R> void twice(Sheet sheet, String column, List<R> rows, Function<R, String> id) {
        Set<String> names = new HashSet<>();
        for (int row = 0; row < rows.size(); row++) {
            String name = id.apply(rows.get(row));
            if (!names.add(name)) {
                found.add(
                        sheet,
                        row,
                        column,
                        name,
                        "stands in an earlier row already",
                        "Maybe give it a name of its own, or delete a row.");
            }
        }
    }

    private void references() {
        for (int row = 0; row < day.setups().size(); row++) {
            Setup setup = day.setups().get(row);
            known(Sheet.SETUPS, row, "place", setup.place(), "in sheet places", places);
            if (setup.release() instanceof Release.After after) {
                known(Sheet.SETUPS, row, "release", after.setup(), "in sheet setups", setups);
            }
        }
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            known(Sheet.NEEDS, row, "setup", need.setup(), "in sheet setups", setups);
            if (known(Sheet.NEEDS, row, "dish", need.dish(), "in sheet dishes", dishes)) {
                isStep(Sheet.NEEDS, row, "stage", need.dish(), need.stage());
            }
            for (String eater : need.eatenBy()) {
                known(Sheet.NEEDS, row, "eaten by", eater, "in sheet cast", diners);
            }
        }
        for (int row = 0; row < day.dishes().size(); row++) {
            Optional<String> heldIn = day.dishes().get(row).heldIn();
            if (heldIn.isPresent()) {
                isStorage(Sheet.DISHES, row, "held in", heldIn.get());
            }
        }
        for (int row = 0; row < day.looks().size(); row++) {
            known(Sheet.LOOKS, row, "dish", day.looks().get(row).dish(), "in sheet dishes", dishes);
        }
        for (int row = 0; row < day.steps().size(); row++) {
            step(row, day.steps().get(row));
        }
        for (int row = 0; row < day.ingredients().size(); row++) {
            Ingredient ingredient = day.ingredients().get(row);
            boolean dish = known(Sheet.INGREDIENTS, row, "dish", ingredient.dish(), "in sheet dishes", dishes);
            if (dish && ingredient.step().isPresent()) {
                isStep(
                        Sheet.INGREDIENTS,
                        row,
                        "step",
                        ingredient.dish(),
                        ingredient.step().get());
            }
        }
        for (int row = 0; row < day.stations().size(); row++) {
            Station station = day.stations().get(row);
            known(Sheet.STATIONS, row, "place", station.place(), "in sheet places", places);
            if (station.circuit().isPresent()) {
                known(Sheet.STATIONS, row, "circuit", station.circuit().get(), "in sheet circuits", circuits);
            }
        }
        for (int row = 0; row < day.people().size(); row++) {
            for (Absence absence : day.people().get(row).away()) {
                if (absence instanceof Absence.HandDouble handDouble) {
                    known(Sheet.PEOPLE, row, "away", handDouble.setup(), "in sheet setups", setups);
                }
            }
        }
        for (int row = 0; row < day.places().size(); row++) {
            for (String to : day.places().get(row).walkMinutes().keySet()) {
                known(Sheet.PLACES, row, "walk", to, "in sheet places", places);
            }
        }
    }

    private void step(int row, Step step) {
        if (known(Sheet.STEPS, row, "dish", step.dish(), "in sheet dishes", dishes)) {
            step.after().forEach(before -> isStep(Sheet.STEPS, row, "after", step.dish(), before));
            step.anyTimeAfter().forEach(before -> isStep(Sheet.STEPS, row, "any time after", step.dish(), before));
        }
        for (StationUse use : step.stations()) {
            for (String id : use.anyOf()) {
                known(Sheet.STEPS, row, "station", id, "in sheet stations", stations);
            }
        }
        if (step.waitsIn().isPresent()) {
            isStorage(Sheet.STEPS, row, "waits in", step.waitsIn().get());
        }
    }

    /** A dish without any step is told by {@link Recipes}. */
    private void isStep(Sheet sheet, int row, String column, String dish, String step) {
        Set<String> steps = stepsOf.getOrDefault(dish, Set.of());
        if (!steps.isEmpty()) {
            known(sheet, row, column, step, "a step of dish " + dish, steps);
        }
    }

    private void isStorage(Sheet sheet, int row, String column, String id) {
        if (!known(sheet, row, column, id, "in sheet stations", stations) || storages.contains(id)) {
            return;
        }
        String kind = day.station(id).orElseThrow().kind().word();
        found.add(
                sheet,
                row,
                column,
                id,
                "is of kind " + kind + ", where food can't be kept",
                storages.isEmpty()
                        ? "Maybe a station of kind fridge, freezer, hot hold or rack."
                        : Wording.maybeOneOf(storages));
    }

    /** What was meant by a name that isn't there: names with another sign between them, a dish by what it is called, or one misspelt. */
    private String meant(String column, String name, Set<String> names) {
        List<String> parts = Stream.of(name.split("\\s*[,/]\\s*| or | and ")).toList();
        if (LISTS.contains(column) && parts.size() > 1 && names.containsAll(parts)) {
            return "Maybe " + String.join(names == stations ? "|" : "; ", parts) + ".";
        }
        Optional<String> called = day.dishes().stream()
                .filter(dish -> names == dishes && dish.name().equalsIgnoreCase(name))
                .map(Dish::id)
                .findFirst();
        return called.map(id -> "Maybe " + id + ".").orElseGet(() -> Wording.maybe(name, names, "Maybe add it."));
    }

    private boolean known(Sheet sheet, int row, String column, String name, String home, Set<String> names) {
        if (names.contains(name)) {
            return true;
        }
        unknown.computeIfAbsent(
                        new Unknown(name, home),
                        key -> new Places(sheet, row, column, meant(column, name, names), new HashSet<>()))
                .rows()
                .add(sheet + " " + row);
        return false;
    }
}
