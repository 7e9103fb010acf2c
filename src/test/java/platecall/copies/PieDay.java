package platecall.copies;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * A small day for these tests: a pie (mixed in 10 minutes by one cook, baked in batches of 4 in 30 + 2 a copy after a rest
 * of 5, hands on in the first 3 and last 2 of them, dressed in 6 by the stylist) and a bought cake of three minutes'
 * unpacking. The kitchen works from minute 0 to 600, 7 minutes' walk from the set; cooks cost 30.00, the stylist 60.00 an
 * hour.
 */
final class PieDay {

    static final Moment CALL = new Moment(200);
    static final Use FRESH = new Use.FreshEachTake();

    List<Span> kitchenHours = List.of(span(0, 600));
    Optional<Money> crewMinute = Optional.empty();
    Optional<Money> budget = Optional.empty();
    final List<Setup> setups = new ArrayList<>();
    final List<Need> needs = new ArrayList<>();
    final List<Dish> dishes = new ArrayList<>();
    final List<Step> steps = new ArrayList<>();
    final List<Ingredient> ingredients = new ArrayList<>();
    final List<Station> stations = new ArrayList<>();
    final List<Person> people = new ArrayList<>();

    PieDay() {
        dishes.add(dish("pie", 250, 0, 0));
        dishes.add(dish("cake", 4_000, 0, 0));
        steps.add(step("pie", "mix", List.of(), 0, 10, Optional.empty(), "", "counter"));
        steps.add(new Step(
                "pie",
                "bake",
                List.of("mix"),
                5,
                Optional.empty(),
                25,
                30,
                40,
                2,
                Optional.of(4),
                1,
                Optional.empty(),
                Optional.of(3),
                Optional.of(2),
                List.of(new StationUse(List.of("oven"), 1)),
                Optional.of(180),
                false,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of()));
        steps.add(step("pie", "dress", List.of("bake"), 0, 6, Optional.empty(), "styling", "counter"));
        steps.add(step("cake", "unpack", List.of(), 0, 3, Optional.empty(), "", "counter"));
        ingredients.add(ingredient("pie", Optional.empty(), 40));
        ingredients.add(ingredient("pie", Optional.of("dress"), 110));
        stations.add(station("counter", Station.Kind.COUNTER, List.of()));
        stations.add(station("oven", Station.Kind.OVEN, List.of()));
        people.add(person("Ada", List.of(), 3_000));
        people.add(person("Bo", List.of("styling"), 6_000));
        people.add(person("Cy", List.of(), 3_000));
    }

    static Span span(long start, long end) {
        return new Span(new Moment(start), new Moment(end));
    }

    static Dish dish(String id, long cents, double breakage, double spoilage) {
        return new Dish(
                id,
                id,
                Look.of(Look.Kind.STEADY),
                true,
                new Money(cents),
                false,
                1,
                Optional.empty(),
                false,
                2,
                1,
                breakage,
                spoilage);
    }

    static Step step(
            String dish,
            String id,
            List<String> after,
            int leastWait,
            int minutes,
            Optional<Integer> handsFirst,
            String skill,
            String... anyOf) {
        return new Step(
                dish,
                id,
                after,
                leastWait,
                Optional.empty(),
                minutes,
                minutes,
                minutes,
                0,
                Optional.empty(),
                1,
                skill.isEmpty() ? Optional.empty() : Optional.of(skill),
                handsFirst,
                Optional.empty(),
                anyOf.length == 0 ? List.of() : List.of(new StationUse(List.of(anyOf), 1)),
                Optional.empty(),
                false,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of());
    }

    static Ingredient ingredient(String dish, Optional<String> step, long cents) {
        return new Ingredient(dish, "part", step, 1, "", new Money(cents), List.of(), "", Optional.empty());
    }

    static Station station(String id, Station.Kind kind, List<Span> hours) {
        return new Station(id, kind, 4, "", hours, "kitchen", 10, 10, 0, Optional.empty());
    }

    static Person person(String id, List<String> skills, long centsAnHour, Span... shifts) {
        return new Person(id, skills, List.of(shifts), List.of(), new Money(centsAnHour));
    }

    static Setup setup(String id, int likely, int worst) {
        return new Setup(
                id,
                "",
                "",
                "set",
                CALL,
                Optional.of(CALL.plus(-30)),
                likely,
                worst,
                10,
                3,
                false,
                new Release.AtEnd(),
                1,
                Optional.empty());
    }

    static Need need(String setup, String dish, String stage, int plates, Use use, Part part, int extraLooks) {
        return new Need(setup, dish, stage, plates, use, part, List.of(), Optional.empty(), 1, extraLooks);
    }

    static Need fixed(Need need, int copies) {
        return new Need(
                need.setup(),
                need.dish(),
                need.stage(),
                need.platesPerTake(),
                need.use(),
                need.part(),
                need.eatenBy(),
                Optional.of(copies),
                need.looksWeight(),
                need.extraLooks());
    }

    static Need pies(int plates) {
        return need("1", "pie", "dress", plates, FRESH, Part.HERO, 0);
    }

    static Need cakes() {
        return need("1", "cake", "unpack", 1, FRESH, Part.HERO, 0);
    }

    PieDay with(Setup setup, Need... wanted) {
        setups.add(setup);
        needs.addAll(List.of(wanted));
        return this;
    }

    Day day() {
        return new Day(
                new DayFacts(
                        "pies",
                        LocalDate.of(1970, 1, 1),
                        ZoneId.of("UTC"),
                        kitchenHours,
                        "EUR",
                        crewMinute,
                        budget,
                        0.95,
                        "",
                        24,
                        50,
                        0,
                        Silence.NONE,
                        Optional.empty(),
                        30,
                        Prices.USUAL),
                setups,
                needs,
                dishes,
                List.of(),
                steps,
                ingredients,
                stations,
                List.of(),
                people,
                List.of(),
                List.of(
                        new Place("kitchen", Map.of("set", 7), List.of(), false),
                        new Place("set", Map.of(), List.of(), true)));
    }
}
