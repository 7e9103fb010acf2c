package platecall.check;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.units.Span;

/** Each wanted step against the stations, hands and hours there are. */
final class Work {

    private static final int MOST_WAYS = 1000;

    /** Beyond this many units, or tenths of amps, at a time the search can't count. */
    private static final int MOST_UNITS = 30_000;

    private final Day day;
    private final Recipes recipes;
    private final Optional<EmptyKitchen> kitchen;
    private final Set<String> overloaded;
    private final Set<String> full;
    private final Findings found;
    private final Set<List<String>> steps = new HashSet<>();
    private final Set<List<String>> toldStorages = new HashSet<>();

    /**
     * @param kitchen empty if times can't be reckoned
     * @param overloaded stations that are told already as too much for their circuit
     * @param full circuits that are told already as too weak for what is always on
     */
    Work(
            Day day,
            Recipes recipes,
            Optional<EmptyKitchen> kitchen,
            Set<String> overloaded,
            Set<String> full,
            Findings found) {
        this.day = day;
        this.recipes = recipes;
        this.kitchen = kitchen;
        this.overloaded = overloaded;
        this.full = full;
        this.found = found;
    }

    /** What tells a step from all others. */
    static List<String> key(Step step) {
        return List.of(step.dish(), step.id());
    }

    /** Stores in which food is to wait though they are never open while the kitchen is. */
    private void closedStores() {
        Set<String> named = new HashSet<>();
        day.steps().stream()
                .filter(recipes::wanted)
                .forEach(step -> step.waitsIn().ifPresent(named::add));
        day.needs().forEach(need -> day.dish(need.dish()).flatMap(Dish::heldIn).ifPresent(named::add));
        for (int row = 0; row < day.stations().size(); row++) {
            Station store = day.stations().get(row);
            if (!store.kind().storesFood() || !named.contains(store.id()) || inKitchenHours(day.hoursOf(store))) {
                continue;
            }
            boolean own = !store.hours().isEmpty() && !inKitchenHours(store.hours());
            found.add(
                    Sheet.STATIONS,
                    row,
                    own ? "hours" : "station",
                    own ? Wording.clock(day, store.hours()) : store.id(),
                    own
                            ? "lie outside kitchen hours, so nothing can wait there"
                            : "is never open in kitchen hours, so nothing can wait there",
                    own
                            ? "Maybe " + Wording.cell(day, day.facts().kitchenHours()) + "."
                            : "Maybe longer hours for its place.");
        }
    }

    private boolean inKitchenHours(List<Span> hours) {
        return !Span.intersection(hours, day.facts().kitchenHours()).isEmpty();
    }

    /** @return the wanted steps that can work, each as {@link #key} */
    Set<List<String>> check() {
        Set<List<String>> workable = new HashSet<>();
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            if (!recipes.wanted(step) || !steps.add(key(step))) {
                continue;
            }
            int before = found.count();
            boolean known = step.stations().stream()
                    .flatMap(use -> use.anyOf().stream())
                    .allMatch(id -> day.station(id).isPresent());
            handParts(row, step);
            waitsIn(row, step);
            if (known) {
                oven(row, step);
            }
            boolean enough = known && amounts(row, step);
            boolean hands = hands(row, step);
            boolean fits = enough && hands && (kitchen.isEmpty() || hours(row, step, kitchen.get()));
            if (fits && found.count() == before) {
                workable.add(key(step));
            }
        }
        if (kitchen.isPresent()) {
            closedStores();
        }
        return workable;
    }

    private void tell(int row, String column, String value, String what, String wayOut) {
        found.add(Sheet.STEPS, row, column, value, what, wayOut);
    }

    private void handParts(int row, Step step) {
        handPart(row, step, "hands first", step.handsFirst());
        handPart(row, step, "hands last", step.handsLast());
        if (step.hands() == 0 && step.skill().isPresent()) {
            tell(
                    row,
                    "skill",
                    step.skill().get(),
                    "is asked for, but the step takes no hands",
                    "Maybe 1 in column hands.");
        }
    }

    private void handPart(int row, Step step, String column, Optional<Integer> minutes) {
        if (minutes.isPresent() && step.hands() == 0 && minutes.get() > 0) {
            tell(
                    row,
                    column,
                    minutes.get().toString(),
                    "is given, but the step takes no hands",
                    "Maybe 1 in column hands.");
        } else if (minutes.isPresent() && minutes.get() > step.minutesFor(1)) {
            tell(
                    row,
                    column,
                    minutes.get().toString(),
                    "is longer than the step, which takes " + Wording.minutes(step.minutesFor(1)),
                    "Maybe " + step.minutesFor(1) + ", or clear it: then hands are on all the time.");
        }
    }

    private void waitsIn(int row, Step step) {
        Optional<Station> storage =
                step.waitsIn().flatMap(day::station).filter(s -> s.kind().storesFood());
        Optional<Dish> dish = day.dish(step.dish());
        if (storage.isPresent()
                && dish.isPresent()
                && dish.get().storageUnits() > storage.get().capacity()
                && !dish.get().heldIn().equals(step.waitsIn())
                && toldStorages.add(List.of(step.dish(), storage.get().id()))) {
            tell(row, "waits in", storage.get().id(), tooSmall(storage.get(), dish.get()), Loads.SMALLER_COPIES);
        }
    }

    static String tooSmall(Station storage, Dish dish) {
        return "has room for " + storage.capacity() + ", but a copy of " + dish.id() + " takes " + dish.storageUnits();
    }

    private void oven(int row, Step step) {
        List<StationUse> ovens = step.stations().stream()
                .filter(use -> use.anyOf().stream().anyMatch(this::isOven))
                .toList();
        if (ovens.isEmpty() && step.ovenCelsius().isPresent()) {
            String wayOut = day.stations().stream()
                    .filter(station -> station.kind() == Station.Kind.OVEN)
                    .findFirst()
                    .map(oven -> "Maybe " + oven.id() + ":1 in column station.")
                    .orElse("Maybe add an oven to sheet stations.");
            tell(
                    row,
                    "oven temperature",
                    step.ovenCelsius().get().toString(),
                    "is given, but the step uses no oven",
                    wayOut);
        }
        if (!ovens.isEmpty() && step.ovenCelsius().isEmpty()) {
            tell(
                    row,
                    "oven temperature",
                    "",
                    "step " + step.id() + " uses " + Wording.use(ovens.get(0)) + " without a temperature",
                    "Maybe 180.");
        }
        if (ovens.size() > 1) {
            tell(
                    row,
                    "station",
                    Wording.uses(step.stations()),
                    "uses two ovens at a time",
                    "Maybe a bar between them if either will do, or a step for each.");
        }
    }

    private boolean isOven(String id) {
        return day.station(id)
                .map(station -> station.kind() == Station.Kind.OVEN)
                .orElse(false);
    }

    /** Whether there is enough of its stations and power, whenever that may be. */
    private boolean amounts(int row, Step step) {
        boolean enough = true;
        for (StationUse use : step.stations()) {
            if (use.anyOf().stream().allMatch(id -> station(id).capacity() < use.units())) {
                enough = false;
                String there = use.anyOf().stream()
                        .map(id -> id + " has " + station(id).capacity())
                        .collect(Collectors.joining(", "));
                Station largest = use.anyOf().stream()
                        .map(this::station)
                        .max(java.util.Comparator.comparingInt(Station::capacity))
                        .orElseThrow();
                tell(
                        row,
                        "station",
                        Wording.use(use),
                        "is more than there is: " + there,
                        "Maybe " + largest.id() + ":" + largest.capacity() + ".");
            }
        }
        long choices = step.stations().stream()
                .mapToLong(use -> use.anyOf().size())
                .reduce(1, (all, count) -> Math.min(MOST_WAYS + 1L, all * count));
        if (choices > MOST_WAYS) {
            tell(
                    row,
                    "station",
                    Wording.uses(step.stations()),
                    "leaves more than " + MOST_WAYS + " choices of stations",
                    "Maybe one station with a larger capacity for several that are alike.");
            return false;
        }
        return enough && together(row, step);
    }

    private Station station(String id) {
        return day.station(id).orElseThrow();
    }

    private boolean together(int row, Step step) {
        List<EmptyKitchen.Way> ways = EmptyKitchen.ways(day, step);
        if (!ways.stream().allMatch(Work::countable)) {
            tell(
                    row,
                    "station",
                    Wording.uses(step.stations()),
                    "is more than any kitchen has",
                    "Maybe less of it, or fewer amps in sheet stations.");
            return false;
        }
        Optional<String> tooMuch = Optional.empty();
        Optional<String> tooStrong = Optional.empty();
        boolean toldAlready = false;
        for (EmptyKitchen.Way way : ways) {
            Optional<String> much = way.stations().entrySet().stream()
                    .filter(use -> use.getValue() > station(use.getKey()).capacity())
                    .map(use -> use.getValue() + " of " + use.getKey() + ", which has "
                            + station(use.getKey()).capacity())
                    .findFirst();
            Optional<String> strong = way.tenths().entrySet().stream()
                    .filter(draw -> draw.getValue() > usableTenths(draw.getKey()))
                    .map(draw -> Wording.number(draw.getValue() / 10.0) + " A from circuit " + draw.getKey()
                            + ", which allows " + Wording.number(usableTenths(draw.getKey()) / 10.0) + " A for long")
                    .findFirst();
            if (much.isEmpty() && strong.isEmpty()) {
                return true;
            }
            tooMuch = tooMuch.or(() -> much);
            tooStrong = tooStrong.or(() -> strong);
            toldAlready |= way.stations().keySet().stream().anyMatch(overloaded::contains);
        }
        if (tooMuch.isPresent()) {
            tell(
                    row,
                    "station",
                    Wording.uses(step.stations()),
                    "is more than there is: together " + tooMuch.get(),
                    "Maybe less of it, or another station.");
        } else if (!toldAlready) {
            tell(
                    row,
                    "station",
                    Wording.uses(step.stations()),
                    "draws " + tooStrong.orElseThrow(),
                    "Maybe fewer at a time, or another circuit: ask the electrician.");
        }
        return false;
    }

    private int usableTenths(String circuit) {
        return day.circuit(circuit).orElseThrow().usableTenths();
    }

    private static boolean countable(EmptyKitchen.Way way) {
        return Stream.concat(way.stations().values().stream(), way.tenths().values().stream())
                .allMatch(units -> units <= MOST_UNITS);
    }

    /** Whether enough people have the skill, whenever they may be there. */
    private boolean hands(int row, Step step) {
        if (step.hands() == 0 || day.people().isEmpty()) {
            return step.hands() == 0;
        }
        List<String> able = able(step);
        if (able.isEmpty()) {
            Set<String> skills = new LinkedHashSet<>();
            day.people().forEach(person -> skills.addAll(person.skills()));
            tell(
                    row,
                    "skill",
                    step.skill().orElseThrow(),
                    "is nobody's skill",
                    Wording.semicolonsFor(day, step.skill().get())
                            .map(mended -> "Maybe " + mended + ".")
                            .orElseGet(() -> Wording.maybe(
                                    step.skill().get(), skills, "Maybe add it to somebody in sheet people.")));
            return false;
        }
        if (able.size() < step.hands()) {
            tell(
                    row,
                    "hands",
                    String.valueOf(step.hands()),
                    "pairs of hands are needed, but only " + Wording.list(able)
                            + (able.size() == 1 ? " is" : " are") + " there"
                            + step.skill().map(skill -> " with skill " + skill).orElse(""),
                    "Maybe " + able.size() + ", or another pair of hands.");
            return false;
        }
        return true;
    }

    private List<String> able(Step step) {
        return day.people().stream()
                .filter(person -> step.skill().map(person.skills()::contains).orElse(true))
                .map(person -> person.id())
                .toList();
    }

    /** Whether there is a time at which the step can be done in an empty kitchen. */
    private boolean hours(int row, Step step, EmptyKitchen empty) {
        int minutes = step.minutesFor(1);
        boolean told = false;
        for (StationUse use : step.stations()) {
            int open = empty.longestOpening(use, step);
            if (open < minutes) {
                told = true;
                tell(
                        row,
                        "station",
                        Wording.use(use),
                        "is " + (open <= 0 ? "never open" : "open for " + Wording.minutes(open) + " at most")
                                + (use.anyOf().stream().anyMatch(this::isOven) ? " once it is hot" : "")
                                + ", but the step takes " + minutes,
                        "Maybe longer hours for it, or a shorter step.");
            }
        }
        if (step.hands() > 0) {
            told |= handHours(row, step, empty);
        }
        // what needs no hands may go on outside kitchen hours
        if (day.disturbsSet(step)
                && empty.longestNoise() < minutes
                && empty.earliestEnd(step, 0) == EmptyKitchen.NEVER) {
            told = true;
            tell(
                    row,
                    "noisy",
                    "yes",
                    "can't be: the step takes " + Wording.minutes(minutes) + ", but noise is allowed for "
                            + empty.longestNoise() + " at most",
                    "Maybe a station out of earshot, or a shorter step.");
        }
        boolean fits = !told && empty.earliestEnd(step, 0) != EmptyKitchen.NEVER;
        if (!told && !fits) {
            neverTogether(row, step, empty);
        }
        return fits;
    }

    /** A step of which each thing that it needs is there for long enough, but not all at a time. */
    private void neverTogether(int row, Step step, EmptyKitchen empty) {
        Optional<String> circuit = empty.tooWeak(step);
        String minutes = Wording.minutes(step.minutesFor(1));
        if (circuit.isPresent()) {
            if (!full.contains(circuit.get())) {
                tell(
                        row,
                        "station",
                        Wording.uses(step.stations()),
                        "never has power for " + minutes + " from circuit " + circuit.get() + ", which allows "
                                + Wording.number(usableTenths(circuit.get()) / 10.0)
                                + " A for long, beside what is always on there",
                        "Maybe another circuit: ask the electrician.");
            }
        } else if (empty.staffed().earliestEnd(step, 0) != EmptyKitchen.NEVER) {
            tell(
                    row,
                    "step",
                    step.id(),
                    "never finds its hands for " + minutes + " while all else that it needs is there: it "
                            + Wording.hands(day, step),
                    "Maybe " + Wording.longerHours(day, step) + ", or longer hours for its stations.");
        } else {
            tell(
                    row,
                    "step",
                    step.id(),
                    "never fits: what it needs is never there together for " + minutes,
                    "Maybe longer hours for its stations, or less noise.");
        }
    }

    private boolean handHours(int row, Step step, EmptyKitchen empty) {
        int on = EmptyKitchen.longestHandsOn(step);
        int there = empty.longestTogether(step);
        if (there >= on) {
            return false;
        }
        List<String> able = able(step);
        tell(
                row,
                "hands",
                String.valueOf(step.hands()),
                (step.hands() == 1 ? "pair of hands is" : "pairs of hands are") + " needed for " + Wording.minutes(on)
                        + " without a break, but "
                        + (able.size() > 4 ? able.size() + " people" : Wording.list(able))
                        + step.skill().map(skill -> " (skill " + skill + ")").orElse("")
                        + (able.size() == 1 ? " is" : " are")
                        + (step.hands() > 1 ? " never there together" : " never there")
                        + (there == 0 ? "" : " for more than " + there),
                "Maybe " + Wording.longerHours(day, step) + ", or a shorter step.");
        return true;
    }
}
