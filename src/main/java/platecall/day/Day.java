package platecall.day;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * One shooting day, with its prep days if they have kitchen hours: everything the stylist writes down before planning.
 * Each component is one sheet; each element of a list is one row.
 */
public record Day(
        DayFacts facts,
        List<Setup> setups,
        List<Need> needs,
        List<Dish> dishes,
        List<LookProperty> looks,
        List<Step> steps,
        List<Ingredient> ingredients,
        List<Station> stations,
        List<Circuit> circuits,
        List<Person> people,
        List<Diner> cast,
        List<Place> places) {

    public Day {
        setups = List.copyOf(setups);
        needs = List.copyOf(needs);
        dishes = List.copyOf(dishes);
        looks = List.copyOf(looks);
        steps = List.copyOf(steps);
        ingredients = List.copyOf(ingredients);
        stations = List.copyOf(stations);
        circuits = List.copyOf(circuits);
        people = List.copyOf(people);
        cast = List.copyOf(cast);
        places = List.copyOf(places);
    }

    /** The same with other hours and hands. */
    public Day with(DayFacts otherFacts, List<Station> otherStations, List<Person> otherPeople) {
        return new Day(
                otherFacts,
                setups,
                needs,
                dishes,
                looks,
                steps,
                ingredients,
                otherStations,
                circuits,
                otherPeople,
                cast,
                places);
    }

    /** The same with other places. */
    public Day withPlaces(List<Place> others) {
        return new Day(
                facts, setups, needs, dishes, looks, steps, ingredients, stations, circuits, people, cast, others);
    }

    public Optional<Setup> setup(String id) {
        return setups.stream().filter(setup -> setup.id().equals(id)).findFirst();
    }

    /** Whether any food is wanted for a setup. */
    public boolean wantsFood(String setup) {
        return needs.stream().anyMatch(need -> need.setup().equals(setup));
    }

    public Optional<Dish> dish(String id) {
        return dishes.stream().filter(dish -> dish.id().equals(id)).findFirst();
    }

    public Optional<Station> station(String id) {
        return stations.stream().filter(station -> station.id().equals(id)).findFirst();
    }

    public Optional<Circuit> circuit(String id) {
        return circuits.stream().filter(circuit -> circuit.id().equals(id)).findFirst();
    }

    public Optional<Place> place(String id) {
        return places.stream().filter(place -> place.id().equals(id)).findFirst();
    }

    public Optional<Diner> diner(String id) {
        return cast.stream().filter(diner -> diner.id().equals(id)).findFirst();
    }

    /** The steps of a dish in sheet order; empty if the dish has none. */
    public List<Step> stepsOf(String dish) {
        return steps.stream().filter(step -> step.dish().equals(dish)).toList();
    }

    public Optional<Step> step(String dish, String id) {
        return steps.stream()
                .filter(step -> step.dish().equals(dish) && step.id().equals(id))
                .findFirst();
    }

    /** When a place can be worked in; kitchen hours do not narrow it. Empty list: always. */
    private List<Span> hoursOfPlace(String place) {
        return place(place).map(Place::hours).orElse(List.of());
    }

    /**
     * When a station can be used: its own hours or, without any, kitchen hours; storage without hours is open from the
     * start of {@link #horizon()} to its end. The hours of its place narrow both.
     */
    public List<Span> hoursOf(Station station) {
        List<Span> own = !station.hours().isEmpty()
                ? station.hours()
                : station.kind().storesFood() ? List.of(horizon()) : facts.kitchenHours();
        List<Span> place = hoursOfPlace(station.place());
        return place.isEmpty() ? own : Span.intersection(own, place);
    }

    /** When a person's hands can be used in the kitchen: shifts within kitchen hours, without absences. */
    public List<Span> hoursOf(Person person) {
        List<Span> on = person.shifts().isEmpty()
                ? facts.kitchenHours()
                : Span.intersection(person.shifts(), facts.kitchenHours());
        for (Absence absence : person.away()) {
            Optional<Span> gone = spanOf(absence);
            if (gone.isPresent()) {
                on = without(on, gone.get());
            }
        }
        return on;
    }

    /**
     * When somebody who is away is gone from the kitchen: a hand double with the walk to set and back, from the farthest
     * place with stations that is open then, for he or she may work there. Empty if there is no such setup.
     */
    public Optional<Span> spanOf(Absence absence) {
        if (absence instanceof Absence.During during) {
            return Optional.of(during.span());
        }
        return setup(((Absence.HandDouble) absence).setup()).map(setup -> {
            Span shooting = setup.shooting();
            return new Span(
                    shooting.start().plus(-minutesFromKitchen(setup, shooting.start())),
                    shooting.end().plus(minutesFromKitchen(setup, shooting.end())));
        });
    }

    private int minutesFromKitchen(Setup setup, Moment at) {
        return stations.stream()
                .map(Station::place)
                .distinct()
                .filter(place -> {
                    List<Span> hours = hoursOfPlace(place);
                    return hours.isEmpty() || hours.stream().anyMatch(span -> span.contains(at));
                })
                .mapToInt(place -> walkMinutes(place, setup.place()))
                .max()
                .orElse(0);
    }

    private static List<Span> without(List<Span> spans, Span gone) {
        List<Span> left = new ArrayList<>();
        for (Span span : spans) {
            if (!span.overlaps(gone)) {
                left.add(span);
                continue;
            }
            if (span.start().isBefore(gone.start())) {
                left.add(new Span(span.start(), gone.start()));
            }
            if (gone.end().isBefore(span.end())) {
                left.add(new Span(gone.end(), span.end()));
            }
        }
        return left;
    }

    /**
     * Everything that can matter: from the first kitchen minute to the later of the last kitchen minute and the last
     * release.
     */
    public Span horizon() {
        Moment start = facts.kitchenHours().get(0).start();
        Moment end = facts.kitchenHours().get(facts.kitchenHours().size() - 1).end();
        for (Setup setup : setups) {
            end = Moment.later(
                    end, Moment.later(releaseOf(setup), setup.shooting().end()));
            start = Moment.earlier(start, setup.call());
        }
        return new Span(start, end);
    }

    /** When the food of a setup may be struck; a release after an unknown setup falls back to the setup's own end. */
    public Moment releaseOf(Setup setup) {
        if (setup.release() instanceof Release.At at) {
            return at.moment();
        }
        if (setup.release() instanceof Release.After after) {
            return setup(after.setup()).orElse(setup).shooting().end();
        }
        return setup.shooting().end();
    }

    /** Spans in which no noisy step that is heard on set may run, by the day's silence policy. */
    public List<Span> quietSpans() {
        List<Span> quiet = new ArrayList<>();
        for (Setup setup : setups) {
            if (!setup.silent() || facts.silence() == Silence.NONE) {
                continue;
            }
            if (facts.silence() == Silence.SETUP) {
                quiet.add(setup.shooting());
            } else if (setup.rollingMinutes() > 0) {
                for (int take = 0; take < setup.takesWorst(); take++) {
                    quiet.add(Span.ofMinutes(setup.rollOf(take), setup.rollingMinutes()));
                }
            }
        }
        return Span.union(quiet);
    }

    /** Whether noise of this step can be heard on set wherever it is done: it is noisy, and no station of it stands out of earshot. */
    public boolean disturbsSet(Step step) {
        return disturbsSet(
                step,
                step.stations().stream().flatMap(use -> use.anyOf().stream()).toList());
    }

    /** Whether noise of this step can be heard on set if it is done at certain stations, given by their ids. */
    public boolean disturbsSet(Step step, List<String> at) {
        return step.noisy()
                && at.stream()
                        .flatMap(id -> station(id).stream())
                        .allMatch(station ->
                                place(station.place()).map(Place::heardOnSet).orElse(true));
    }

    /** Minutes to walk between two places, one way; 0 within a place or where no walk is given. */
    public int walkMinutes(String from, String to) {
        if (from.equals(to)) {
            return 0;
        }
        Integer there = place(from).map(place -> place.walkMinutes().get(to)).orElse(null);
        Integer back = place(to).map(place -> place.walkMinutes().get(from)).orElse(null);
        return there != null ? there : back != null ? back : 0;
    }

    /** Where a copy stands when {@code step} has ended: the place of the step's first station, else the first kitchen. */
    public String placeAfter(Step step) {
        return step.stations().stream()
                .flatMap(use -> use.anyOf().stream())
                .flatMap(id -> station(id).stream())
                .map(Station::place)
                .findFirst()
                .orElseGet(() -> kitchenPlaceOf(step));
    }

    private String kitchenPlaceOf(Step step) {
        for (String before : step.predecessors()) {
            Optional<Step> earlier = step(step.dish(), before);
            if (earlier.isPresent()) {
                return placeAfter(earlier.get());
            }
        }
        return stations.isEmpty() ? "" : stations.get(0).place();
    }

    /** Minutes from the end of its last step to camera: carry and walk. */
    public int minutesToCamera(Need need) {
        Dish dish = dish(need.dish()).orElseThrow();
        String from = step(need.dish(), need.stage()).map(this::placeAfter).orElse("");
        String to = setup(need.setup()).map(Setup::place).orElse("");
        return dish.carryMinutes() + (from.isEmpty() ? 0 : walkMinutes(from, to));
    }

    /** Minutes that the bearer needs to come back to the kitchen. */
    public int minutesBack(Need need) {
        String from = step(need.dish(), need.stage()).map(this::placeAfter).orElse("");
        return from.isEmpty()
                ? 0
                : walkMinutes(from, setup(need.setup()).map(Setup::place).orElse(""));
    }

    /** The steps that lead to {@code stage} and itself, each after those it needs; unknown names are left out. */
    public List<Step> stepsTo(String dish, String stage) {
        List<Step> ordered = new ArrayList<>();
        collect(dish, stage, ordered, new HashSet<>());
        return ordered;
    }

    /** The ingredients of a dish that go in at one of these steps of it, or that name no step. */
    public List<Ingredient> ingredientsIn(String dish, Collection<Step> steps) {
        return ingredients.stream()
                .filter(ingredient -> ingredient.dish().equals(dish))
                .filter(ingredient -> ingredient
                        .step()
                        .map(id -> steps.stream().anyMatch(step -> step.id().equals(id)))
                        .orElse(true))
                .toList();
    }

    /** The ingredients that are in a copy at the wanted stage. */
    public List<Ingredient> ingredientsIn(Need need) {
        return ingredientsIn(need.dish(), stepsTo(need.dish(), need.stage()));
    }

    /** Food money of one copy: its dish, and the ingredients that are in it at the wanted stage. */
    public Money foodCost(Need need) {
        return ingredientsIn(need).stream()
                .map(Ingredient::cost)
                .reduce(dish(need.dish()).orElseThrow().cost(), Money::plus);
    }

    private void collect(String dish, String id, List<Step> ordered, Set<String> seen) {
        if (!seen.add(id)) {
            return;
        }
        step(dish, id).ifPresent(step -> {
            step.predecessors().forEach(before -> collect(dish, before, ordered, seen));
            ordered.add(step);
        });
    }
}
