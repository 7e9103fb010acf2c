package platecall.report;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.DayFacts;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Look;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Person;
import platecall.day.Place;
import platecall.day.Prices;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.day.Silence;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.Use;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Points;
import platecall.plan.Plan.Readiness;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Verdict;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * Two baked eggs for one setup, planned by hand: one batch in the oven with hands at both ends, a fridge between, two
 * carries, a meal break.
 */
final class EggDay {

    final ZoneId zone;
    final LocalDate date;
    String setup = "S1";
    String dishName = "Baked egg";
    String person = "Ada";
    /** Minutes from the kitchen to set. */
    int walk;

    boolean edible = true;
    boolean raw = false;
    Part part = Part.HERO;
    List<String> helpers = List.of();
    Optional<String> heldIn = Optional.empty();
    Optional<Moment> asOf = Optional.empty();
    int takesLikely = 1;
    int usableMinutes = 16;
    int laterUsableMinutes = 16;

    EggDay() {
        this(ZoneId.of("UTC"), LocalDate.of(2026, 3, 14));
    }

    EggDay(ZoneId zone, LocalDate date) {
        this.zone = zone;
        this.date = date;
    }

    /** A moment {@code minutes} after midnight, by the stopwatch. */
    Moment at(int hours, int minutes) {
        return Moment.of(date.atStartOfDay(zone)).plus(hours * 60L + minutes);
    }

    Span span(int hours, int minutes, int length) {
        return Span.ofMinutes(at(hours, minutes), length);
    }

    Day day() {
        return new Day(
                new DayFacts(
                        "Two eggs",
                        date,
                        zone,
                        List.of(new Span(at(1, 0), at(12, 0))),
                        "EUR",
                        Optional.empty(),
                        Optional.empty(),
                        0.95,
                        "fda-2022",
                        22,
                        45,
                        40,
                        Silence.ROLLING,
                        Optional.empty(),
                        30,
                        Prices.USUAL),
                List.of(setup(setup, 4)),
                List.of(need(setup)),
                List.of(new Dish(
                        "egg",
                        dishName,
                        Look.table(0, 6, 12),
                        edible,
                        Money.ZERO,
                        false,
                        1,
                        Optional.empty(),
                        true,
                        1,
                        1,
                        0,
                        0)),
                List.of(),
                List.of(
                        step("bake", List.of(), 20, Optional.of(4), "oven", Optional.of(180), Optional.of("fridge")),
                        step(
                                "crack",
                                List.of("bake"),
                                4,
                                Optional.empty(),
                                "bench",
                                Optional.empty(),
                                Optional.empty())),
                List.of(new Ingredient(
                        "egg", "egg", Optional.empty(), 1, "", Money.ZERO, List.of("egg"), "", Optional.empty())),
                List.of(
                        station("oven", Station.Kind.OVEN, 4, "trays"),
                        station("fridge", Station.Kind.FRIDGE, 6, "shelves"),
                        station("bench", Station.Kind.COUNTER, 2, "")),
                List.of(),
                Stream.concat(Stream.of(person), helpers.stream())
                        .map(id -> new Person(id, List.of(), List.of(), List.of(), Money.ZERO))
                        .toList(),
                List.of(),
                List.of(
                        new Place("kitchen", walk == 0 ? Map.of() : Map.of("set", walk), List.of(), false),
                        new Place("set", Map.of(), List.of(), true)));
    }

    Setup setup(String id, int hour) {
        return new Setup(
                id,
                "scene 1",
                "egg",
                "set",
                at(hour, 0),
                Optional.empty(),
                takesLikely,
                2,
                10,
                3,
                true,
                new Release.AtEnd(),
                1,
                Optional.empty());
    }

    Need need(String id) {
        return new Need(id, "egg", "crack", 1, new Use.FreshEachTake(), part, List.of(), Optional.of(2), 1);
    }

    /** The day with other setups and needs. */
    Day with(Day day, List<Setup> setups, List<Need> needs) {
        return new Day(
                day.facts(),
                setups,
                needs,
                day.dishes(),
                day.looks(),
                day.steps(),
                day.ingredients(),
                day.stations(),
                day.circuits(),
                day.people(),
                day.cast(),
                day.places());
    }

    private Step step(
            String id,
            List<String> after,
            int minutes,
            Optional<Integer> batch,
            String station,
            Optional<Integer> celsius,
            Optional<String> waitsIn) {
        return new Step(
                "egg",
                id,
                after,
                0,
                Optional.empty(),
                minutes,
                minutes,
                minutes,
                0,
                batch,
                1,
                Optional.empty(),
                batch.map(it -> 2),
                batch.map(it -> 3),
                List.of(new StationUse(List.of(station), 1)),
                celsius,
                false,
                waitsIn,
                raw,
                celsius.map(it -> 68.0),
                List.of());
    }

    private static Station station(String id, Station.Kind kind, int capacity, String unit) {
        return new Station(id, kind, capacity, unit, List.of(), "kitchen", 10, 5, 0, Optional.empty());
    }

    private String copy(int number) {
        return setup + "/egg/crack/" + part.word() + "#" + number;
    }

    Plan plan() {
        return plan(List.of(), 0);
    }

    /** The plan with broken rules and with a first take that is late by some minutes. */
    Plan plan(List<Breach> breaches, int late) {
        List<Work> work = List.of(
                new Work(
                        "w1",
                        Work.Kind.STEP,
                        "egg",
                        "bake",
                        List.of(copy(1), copy(2)),
                        span(2, 0, 20),
                        List.of(new StationHold("oven", 2)),
                        Optional.of(180),
                        List.of(new Hands(person, span(2, 0, 2)), new Hands(person, span(2, 17, 3))),
                        List.of(
                                new Storing(copy(1), "fridge", 1, new Span(at(2, 20), at(3, 50))),
                                new Storing(copy(2), "fridge", 1, new Span(at(2, 20), at(4, 0))))),
                crack("w2", 1, 3, 50),
                carry("w3", 1, 3, 54),
                crack("w4", 2, 4, 0),
                carry("w5", 2, 4, 4));
        return new Plan(
                "Two eggs",
                "digest",
                "0.1.0",
                1,
                100,
                asOf,
                List.of(at(2, 0)),
                List.of(planned(1, late), planned(2, 0)),
                work,
                List.of(new Break(person, span(3, 0, 30))),
                new Points(0, 0, 0, 0, 0),
                Optional.empty(),
                new Verdict(
                        breaches,
                        late,
                        0,
                        List.of(new Readiness(
                                setup,
                                at(4, 0),
                                Optional.of(at(4, late)),
                                -late,
                                Optional.of(at(4, 4)),
                                1,
                                Optional.of(at(4, 10)),
                                late == 0 ? "Ready at call" : "LATE by " + late + " min: egg 1"))));
    }

    /** The plan with one more work. */
    Plan with(Work more) {
        return doing(Stream.concat(plan().work().stream(), Stream.of(more)).toList());
    }

    /** The plan with other work. */
    Plan doing(List<Work> work) {
        Plan plan = plan();
        return new Plan(
                plan.day(),
                plan.dayDigest(),
                plan.version(),
                plan.seed(),
                plan.moves(),
                plan.asOf(),
                plan.kitchenCalls(),
                plan.copies(),
                work,
                plan.breaks(),
                plan.points(),
                plan.bound(),
                plan.verdict());
    }

    /** Work on copy 1 that the recipe does not know. */
    Work extra(String step, Span span, String station, List<Hands> hands) {
        return new Work(
                "x",
                Work.Kind.STEP,
                "egg",
                step,
                List.of(copy(1)),
                span,
                List.of(new StationHold(station, 1)),
                Optional.empty(),
                hands,
                List.of());
    }

    private Work crack(String id, int number, int hour, int minute) {
        return new Work(
                id,
                Work.Kind.STEP,
                "egg",
                "crack",
                List.of(copy(number)),
                span(hour, minute, 4),
                List.of(new StationHold("bench", 1)),
                Optional.empty(),
                List.of(new Hands(person, span(hour, minute, 4))),
                List.of());
    }

    private Work carry(String id, int number, int hour, int minute) {
        return new Work(
                id,
                Work.Kind.CARRY,
                "egg",
                "carry",
                List.of(copy(number)),
                span(hour, minute, 6),
                List.of(),
                Optional.empty(),
                List.of(new Hands(person, span(hour, minute, 6))),
                List.of());
    }

    private PlannedCopy planned(int number, int late) {
        Moment due = at(4, 10 * (number - 1));
        Moment plated = due.plus(-6);
        int usable = number == 1 ? usableMinutes : laterUsableMinutes;
        int pastUse = Math.max(0, 6 + late + 3 - usable);
        return new PlannedCopy(
                copy(number),
                setup + "/egg/crack/" + part.word(),
                setup,
                "egg",
                "crack",
                part.word(),
                number,
                due,
                3,
                true,
                Optional.of(plated),
                Optional.of(due.plus(late)),
                Optional.of(plated),
                Optional.of(plated.plus(10)),
                Optional.of(plated.plus(usable)),
                late + pastUse,
                0,
                0,
                Money.ZERO,
                at(4, 20),
                heldIn);
    }
}
