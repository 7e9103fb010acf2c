package platecall.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A day with one thing more than there is.
 *
 * @param what it has more, in words
 * @param day the day with it
 */
record OneMore(String what, Day day) {

    /** Minutes by which a call is later, and the kitchen opens earlier. */
    private static final int MINUTES_LATER = 10;

    private static final int MINUTES_EARLIER = 30;
    /** As many people as the search can tell apart. */
    private static final int MOST_PEOPLE = 60;
    /** Rows for another pair of hands: each has a search of its own to wait for. */
    private static final int MOST_HANDS = 12;

    private static final String OWN_POWER = ", on power of its own";

    /**
     * All that a day could have more of: a unit of each station, another of each oven, since it may have another temperature, another
     * person with the skills and hours of each, an earlier opening of the kitchen, a later call of each setup that wants food.
     */
    static List<OneMore> of(Day day) {
        List<OneMore> all = new ArrayList<>();
        day.stations()
                .forEach(station ->
                        all.add(station.kind() == Station.Kind.OVEN ? oven(day, station) : unit(day, station)));
        all.addAll(hands(day));
        all.add(opening(day));
        for (Setup setup : day.setups()) {
            if (day.needs().stream().map(Need::setup).anyMatch(setup.id()::equals)) {
                all.add(later(day, setup));
            }
        }
        return all;
    }

    private static OneMore unit(Day day, Station station) {
        String what = "one more of " + station.id() + (station.unit().isEmpty() ? "" : " (" + station.unit() + ")");
        // storage draws the same however large it is
        Optional<String> circuit =
                station.kind().storesFood() || station.amps() == 0 ? Optional.empty() : station.circuit();
        if (circuit.isPresent() && usesOneUnit(day, station)) {
            // its circuit may be full, and then the unit could never be used
            return new OneMore(what + OWN_POWER, beside(day, station, 1));
        }
        Station larger = station(station, station.id(), Math.min(10_000, station.capacity() + 1), station.circuit());
        List<Station> stations = day.stations().stream()
                .map(it -> it.equals(station) ? larger : it)
                .toList();
        return new OneMore(
                what + circuit.map(id -> ", on circuit " + id).orElse(""),
                day.with(day.facts(), stations, day.people()));
    }

    private static boolean usesOneUnit(Day day, Station station) {
        return day.steps().stream()
                .flatMap(step -> step.stations().stream())
                .anyMatch(use -> use.units() == 1 && use.anyOf().contains(station.id()));
    }

    private static OneMore oven(Day day, Station oven) {
        return new OneMore(
                another(oven) + oven.circuit().map(circuit -> OWN_POWER).orElse(""),
                beside(day, oven, oven.capacity()));
    }

    private static String another(Station station) {
        return "another " + station.id();
    }

    /** The day with another station that does for each step what this one does, on no circuit. */
    private static Day beside(Day day, Station station, int capacity) {
        String id = another(station);
        List<Station> stations = Stream.concat(
                        day.stations().stream(), Stream.of(station(station, id, capacity, Optional.empty())))
                .toList();
        List<Step> steps = day.steps().stream()
                .map(step -> withStations(
                        step,
                        step.stations().stream()
                                .map(use -> use.anyOf().contains(station.id()) && use.units() <= capacity
                                        ? new StationUse(
                                                Stream.concat(use.anyOf().stream(), Stream.of(id))
                                                        .toList(),
                                                use.units())
                                        : use)
                                .toList()))
                .toList();
        return day(day, day.setups(), stations, steps);
    }

    private static Station station(Station like, String id, int capacity, Optional<String> circuit) {
        return new Station(
                id,
                like.kind(),
                capacity,
                like.unit(),
                like.hours(),
                like.place(),
                like.heatPerMinute(),
                like.coolPerMinute(),
                like.amps(),
                circuit);
    }

    private static Step withStations(Step step, List<StationUse> stations) {
        return new Step(
                step.dish(),
                step.id(),
                step.after(),
                step.leastWait(),
                step.mostWait(),
                step.minutesLow(),
                step.minutesLikely(),
                step.minutesHigh(),
                step.minutesPerCopy(),
                step.batchMost(),
                step.hands(),
                step.skill(),
                step.handsFirst(),
                step.handsLast(),
                stations,
                step.ovenCelsius(),
                step.noisy(),
                step.waitsIn(),
                step.raw(),
                step.coreCelsius(),
                step.anyTimeAfter());
    }

    /** People who differ in skills or hours, each once; if they are too many, of those with the same skills who is there longest. */
    private static List<OneMore> hands(Day day) {
        if (day.people().size() >= MOST_PEOPLE) {
            return List.of();
        }
        Map<Set<String>, Map<List<Span>, Person>> kinds = new LinkedHashMap<>();
        for (Person person : day.people()) {
            kinds.computeIfAbsent(Set.copyOf(person.skills()), skills -> new LinkedHashMap<>())
                    .putIfAbsent(hours(day, person), person);
        }
        boolean tooMany = kinds.values().stream().mapToInt(Map::size).sum() > MOST_HANDS;
        List<OneMore> all = new ArrayList<>();
        for (Map<List<Span>, Person> alike : kinds.values()) {
            Comparator<Person> byHours = Comparator.comparingInt(person ->
                    hours(day, person).stream().mapToInt(Span::minutes).sum());
            Stream<Person> people = tooMany ? alike.values().stream().max(byHours).stream() : alike.values().stream();
            people.forEach(person -> all.add(person(day, person, alike.size() > 1)));
        }
        return all;
    }

    /** When this person is in the kitchen, absences aside: another isn't away. */
    private static List<Span> hours(Day day, Person person) {
        return day.hoursOf(another(person));
    }

    private static Person another(Person person) {
        return new Person("another " + person.id(), person.skills(), person.shifts(), List.of(), person.costPerHour());
    }

    private static OneMore person(Day day, Person person, boolean tellHours) {
        String skills = person.skills().isEmpty() ? "" : " (" + String.join(", ", person.skills()) + ")";
        String hours = hours(day, person).stream()
                .map(span -> ReadyTable.dated(span.start(), day) + "-"
                        + span.end().clock(day.facts().zone()))
                .collect(Collectors.joining("; ", ", ", ""));
        return new OneMore(
                "another pair of hands like " + person.id() + skills + (tellHours ? hours : ""),
                day.with(
                        day.facts(),
                        day.stations(),
                        Stream.concat(day.people().stream(), Stream.of(another(person)))
                                .toList()));
    }

    private static OneMore opening(Day day) {
        List<Span> hours = day.facts().kitchenHours();
        // an afternoon of preparation before is long over then, what opens after a pause opens anyway
        Moment opening = hours.stream()
                .filter(span -> span.start()
                        .in(day.facts().zone())
                        .toLocalDate()
                        .equals(day.facts().date()))
                .findFirst()
                .orElse(hours.get(hours.size() - 1))
                .start();
        // who comes and what opens when the kitchen does is earlier, too: else nobody could begin anything there
        Day earlier = day.with(
                day.facts().withKitchenHours(earlier(hours, opening)),
                day.stations().stream()
                        .map(station -> station.withHours(earlier(station.hours(), opening)))
                        .toList(),
                day.people().stream()
                        .map(person -> person.withShifts(earlier(person.shifts(), opening)))
                        .toList());
        return new OneMore(
                "the kitchen opens " + MINUTES_EARLIER + " min earlier",
                earlier.withPlaces(day.places().stream()
                        .map(place -> place.withHours(earlier(place.hours(), opening)))
                        .toList()));
    }

    /** The same spans; one that starts at a certain moment starts before. */
    private static List<Span> earlier(List<Span> spans, Moment start) {
        return spans.stream()
                .map(span -> span.start().equals(start) ? new Span(start.plus(-MINUTES_EARLIER), span.end()) : span)
                .toList();
    }

    private static OneMore later(Day day, Setup setup) {
        Setup slipped = new Setup(
                setup.id(),
                setup.scene(),
                setup.shot(),
                setup.place(),
                setup.call().plus(MINUTES_LATER),
                setup.lighting().map(lighting -> lighting.plus(MINUTES_LATER)),
                setup.takesLikely(),
                setup.takesWorst(),
                setup.cycleMinutes(),
                setup.rollingMinutes(),
                setup.silent(),
                setup.release(),
                setup.weight(),
                setup.takesShot()
                        .map(shot ->
                                new Setup.TakesShot(shot.takes(), shot.next().map(next -> next.plus(MINUTES_LATER)))));
        List<Setup> setups =
                day.setups().stream().map(it -> it.equals(setup) ? slipped : it).toList();
        return new OneMore(
                "setup " + setup.id() + " is called " + MINUTES_LATER + " min later",
                day(day, setups, day.stations(), day.steps()));
    }

    private static Day day(Day day, List<Setup> setups, List<Station> stations, List<Step> steps) {
        return new Day(
                day.facts(),
                setups,
                day.needs(),
                day.dishes(),
                day.looks(),
                steps,
                day.ingredients(),
                stations,
                day.circuits(),
                day.people(),
                day.cast(),
                day.places());
    }
}
