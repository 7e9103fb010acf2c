package platecall.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.DayFacts;
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

    /**
     * All that a day could have more of: a unit of each station, another of each oven, since it may have another temperature, another
     * person with the skills of each, an earlier opening of the kitchen, a later call of each setup that wants food.
     */
    static List<OneMore> of(Day day) {
        List<OneMore> all = new ArrayList<>();
        day.stations()
                .forEach(station ->
                        all.add(station.kind() == Station.Kind.OVEN ? oven(day, station) : unit(day, station)));
        List<List<String>> skills = new ArrayList<>();
        for (Person person : day.people()) {
            if (day.people().size() < MOST_PEOPLE && !skills.contains(person.skills())) {
                skills.add(person.skills());
                all.add(person(day, person));
            }
        }
        all.add(opening(day));
        for (Setup setup : day.setups()) {
            if (day.needs().stream().map(Need::setup).anyMatch(setup.id()::equals)) {
                all.add(later(day, setup));
            }
        }
        return all;
    }

    private static OneMore unit(Day day, Station station) {
        Station larger = station(station, station.id(), Math.min(10_000, station.capacity() + 1), station.circuit());
        List<Station> stations = day.stations().stream()
                .map(it -> it.equals(station) ? larger : it)
                .toList();
        return new OneMore(
                "one more of " + station.id() + (station.unit().isEmpty() ? "" : " (" + station.unit() + ")"),
                day.with(day.facts(), stations, day.people()));
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

    private static OneMore oven(Day day, Station oven) {
        String id = "another " + oven.id();
        List<Station> stations = Stream.concat(
                        day.stations().stream(), Stream.of(station(oven, id, oven.capacity(), Optional.empty())))
                .toList();
        List<Step> steps = day.steps().stream()
                .map(step -> withStations(
                        step,
                        step.stations().stream()
                                .map(use -> use.anyOf().contains(oven.id())
                                        ? new StationUse(
                                                Stream.concat(use.anyOf().stream(), Stream.of(id))
                                                        .toList(),
                                                use.units())
                                        : use)
                                .toList()))
                .toList();
        return new OneMore(
                id + oven.circuit().map(circuit -> ", on power of its own").orElse(""),
                day(day, day.facts(), day.setups(), stations, steps, day.people()));
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

    private static OneMore person(Day day, Person person) {
        String skills = person.skills().isEmpty() ? "" : " (" + String.join(", ", person.skills()) + ")";
        Person another =
                new Person("another " + person.id(), person.skills(), person.shifts(), List.of(), person.costPerHour());
        return new OneMore(
                "another pair of hands like " + person.id() + skills,
                day(
                        day,
                        day.facts(),
                        day.setups(),
                        day.stations(),
                        day.steps(),
                        Stream.concat(day.people().stream(), Stream.of(another)).toList()));
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
        // who comes, and what opens, when the kitchen does, does so earlier, too: else nobody could begin anything
        // there
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
                day(day, day.facts(), setups, day.stations(), day.steps(), day.people()));
    }

    private static Day day(
            Day day,
            DayFacts facts,
            List<Setup> setups,
            List<Station> stations,
            List<Step> steps,
            List<Person> people) {
        return new Day(
                facts,
                setups,
                day.needs(),
                day.dishes(),
                day.looks(),
                steps,
                day.ingredients(),
                stations,
                day.circuits(),
                people,
                day.cast(),
                day.places());
    }
}
