package platecall.report;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.audit.Audit;
import platecall.day.Absence;
import platecall.day.CameraTime;
import platecall.day.Circuit;
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
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.solve.Planner;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * An invented supper at an inn, with a prep evening before: twelve setups, about sixty copies, six people. Big enough to
 * crowd a chart.
 */
final class InnDay {

    static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    private static final LocalDate SHOOT = LocalDate.of(2026, 3, 14);

    private final List<Setup> setups = new ArrayList<>();
    private final List<Need> needs = new ArrayList<>();
    private final List<Dish> dishes = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<Ingredient> ingredients = new ArrayList<>();

    private InnDay() {}

    static Moment at(int daysAfter, int hour, int minute) {
        return Moment.of(SHOOT.plusDays(daysAfter).atTime(hour, minute).atZone(ZONE));
    }

    static Day day() {
        return new InnDay().build();
    }

    private Day build() {
        dish("pie", "Root and barley pie", Look.table(0, 25, 60), true, "gluten", "egg");
        step("pie", "dough", "", 20, 1, "cooking", "counter", 12, 0, 0, "fridge 1");
        step("pie", "fill", "dough", 6, 1, "", "counter", 0, 0, 0, "fridge 1");
        step("pie", "bake", "fill", 40, 1, "", "oven 1", 4, 190, 2, "");
        step("pie", "dress", "bake", 5, 1, "styling", "counter", 0, 0, 0, "");
        dish("soup", "Smoked leek soup", Look.table(0, 6, 15), true, "milk", "celery");
        step("soup", "simmer", "", 45, 1, "", "hob", 8, 0, 4, "hot hold");
        step("soup", "ladle", "simmer", 3, 1, "styling", "counter", 0, 0, 0, "");
        dish("goose", "Lacquered goose", Look.of(Look.Kind.STEADY), false);
        step("goose", "roast", "", 70, 1, "cooking", "oven 2", 2, 160, 3, "");
        step("goose", "lacquer", "roast", 25, 1, "styling", "counter", 0, 0, 0, "rack");
        dish("fritters", "Crisp onion fritters", Look.table(0, 8, 14), true, "gluten");
        step("fritters", "batter", "", 8, 1, "", "counter", 10, 0, 0, "fridge 1");
        step("fritters", "fry", "batter", 7, 1, "cooking", "hob", 0, 0, 0, "");
        step("fritters", "plate", "fry", 4, 1, "styling", "counter", 0, 0, 0, "");
        dish("cream", "Frozen quince cream", Look.table(0, 4, 9), true, "milk", "egg");
        step("cream", "churn", "", 35, 1, "cooking", "churner", 8, 0, 3, "freezer");
        step("cream", "scoop", "churn", 3, 1, "styling", "counter", 0, 0, 0, "");
        dish("loaf", "Braided rye loaf", Look.table(0, 120, 400), true, "gluten", "sesame");
        step("loaf", "prove", "", 60, 1, "", "counter", 6, 0, 4, "rack");
        step("loaf", "bake", "prove", 35, 1, "", "oven 1", 6, 220, 2, "rack");
        step("loaf", "slice", "bake", 4, 2, "", "counter", 0, 0, 0, "");

        setup("1A", "the door opens on the laid table", "inn", at(0, 9, 0), 3);
        setup("1B", "host carries the pie", "inn", at(0, 9, 50), 4);
        setup("1C", "close on steam", "inn", at(0, 10, 40), 2);
        setup("2", "soup is served", "inn", at(0, 11, 15), 4);
        setup("3A", "the toast", "inn", at(0, 12, 10), 3);
        setup("3B", "reverse on the guest", "inn", at(0, 13, 30), 4);
        setup("4", "fritters on the stair", "yard", at(0, 14, 20), 4);
        setup("5", "bread is broken", "yard", at(0, 15, 10), 3);
        setup("6A", "dessert arrives", "inn", at(0, 16, 0), 4);
        setup("6B", "spoon cracks the cream", "inn", at(0, 16, 45), 2);
        setup("7", "leftovers by lantern light", "inn", at(0, 17, 30), 2);
        setup("8", "kitchen insert", "inn", at(0, 18, 10), 2);
        need("1A", "goose", "lacquer", 1, Part.HERO, new Use.LastsTakes(3));
        need("1A", "loaf", "slice", 2, Part.BACKGROUND, new Use.LastsTakes(3));
        need("1B", "pie", "dress", 1, Part.HERO, new Use.FreshEachTake());
        need("1B", "pie", "fill", 1, Part.STAND_IN, new Use.FreshEachTake());
        need("1C", "soup", "ladle", 2, Part.HERO, new Use.FreshEachTake());
        need("2", "soup", "ladle", 1, Part.HERO, new Use.FreshEachTake());
        need("2", "loaf", "slice", 1, Part.BACKGROUND, new Use.LastsTakes(2));
        need("3A", "pie", "dress", 1, Part.HERO, new Use.LastsTakes(2));
        need("3B", "soup", "ladle", 1, Part.HERO, new Use.FreshEachTake());
        need("3B", "pie", "dress", 1, Part.BACKGROUND, new Use.LastsTakes(2));
        need("4", "fritters", "plate", 2, Part.HERO, new Use.FreshEachTake());
        need("5", "loaf", "slice", 1, Part.HERO, new Use.FreshEachTake());
        need("6A", "cream", "scoop", 2, Part.HERO, new Use.FreshEachTake());
        need("6B", "cream", "scoop", 2, Part.INSERT, new Use.FreshEachTake());
        need("7", "pie", "dress", 1, Part.HERO, new Use.FreshEachTake());
        need("7", "fritters", "plate", 1, Part.BACKGROUND, new Use.FreshEachTake());
        need("8", "soup", "ladle", 1, Part.INSERT, new Use.FreshEachTake());
        List<Span> kitchen = List.of(new Span(at(-1, 16, 0), at(-1, 20, 0)), new Span(at(0, 5, 0), at(0, 20, 0)));
        return new Day(
                new DayFacts(
                        "The Inn at Low Ferry",
                        SHOOT,
                        ZONE,
                        kitchen,
                        "EUR",
                        Optional.empty(),
                        Optional.empty(),
                        0.95,
                        "fda-2022",
                        22,
                        45,
                        40,
                        Silence.ROLLING,
                        Optional.of(360),
                        30,
                        Prices.USUAL),
                setups,
                needs,
                dishes,
                List.of(),
                steps,
                ingredients,
                List.of(
                        station("hob", Station.Kind.BURNERS, 4, "burners"),
                        station("oven 1", Station.Kind.OVEN, 8, "trays"),
                        station("oven 2", Station.Kind.OVEN, 4, "trays"),
                        station("churner", Station.Kind.OTHER, 1, ""),
                        station("counter", Station.Kind.COUNTER, 6, "m"),
                        station("fridge 1", Station.Kind.FRIDGE, 30, "shelves"),
                        station("freezer", Station.Kind.FREEZER, 20, "boxes"),
                        station("hot hold", Station.Kind.HOT_HOLD, 12, "pots"),
                        station("rack", Station.Kind.RACK, 30, "trays")),
                List.of(new Circuit("c1", 230, 32, 1.25)),
                List.of(
                        person("Ada", List.of("cooking"), List.of()),
                        person("Bruno", List.of("cooking"), List.of()),
                        person("Cleo", List.of("styling"), List.of()),
                        person("Dmitri", List.of("styling"), List.of(new Absence.HandDouble("1C"))),
                        person("Élodie", List.of(), List.of()),
                        person(
                                "Farah",
                                List.of("cooking", "styling"),
                                List.of(new Absence.During(new Span(at(0, 11, 0), at(0, 12, 0)))))),
                List.of(),
                List.of(
                        new Place("kitchen", Map.of("inn", 2, "yard", 4), List.of(), false),
                        new Place("inn", Map.of(), List.of(), true),
                        new Place("yard", Map.of(), List.of(), true)));
    }

    private void setup(String id, String shot, String place, Moment call, int takes) {
        setups.add(new Setup(
                id,
                "scene " + id.charAt(0),
                shot,
                place,
                call,
                Optional.of(call.plus(-15)),
                Math.max(1, takes - 1),
                takes,
                9,
                3,
                true,
                new Release.AtEnd(),
                1,
                Optional.empty()));
    }

    private void need(String setup, String dish, String stage, int plates, Part part, Use use) {
        needs.add(new Need(setup, dish, stage, plates, use, part, List.of(), Optional.empty(), 1));
    }

    private void dish(String id, String name, Look look, boolean edible, String... allergens) {
        dishes.add(new Dish(id, name, look, edible, Money.ZERO, false, 1, Optional.of("rack"), false, 1, 1, 0, 0));
        ingredients.add(new Ingredient(
                id, "what goes in", Optional.empty(), 1, "", Money.ZERO, List.of(allergens), "", Optional.empty()));
    }

    private void step(
            String dish,
            String id,
            String after,
            int minutes,
            int hands,
            String skill,
            String station,
            int batch,
            int celsius,
            int handsEnds,
            String waitsIn) {
        boolean hot = id.equals("fry") || id.equals("ladle");
        steps.add(new Step(
                dish,
                id,
                after.isEmpty() ? List.of() : List.of(after),
                id.equals("scoop") ? 720 : 0,
                id.equals("plate") ? Optional.of(2) : Optional.empty(),
                minutes,
                minutes,
                minutes + 2,
                0,
                batch > 0 ? Optional.of(batch) : Optional.empty(),
                hands,
                skill.isEmpty() ? Optional.empty() : Optional.of(skill),
                handsEnds > 0 ? Optional.of(handsEnds) : Optional.empty(),
                handsEnds > 0 ? Optional.of(handsEnds) : Optional.empty(),
                List.of(new StationUse(List.of(station), 1)),
                celsius > 0 ? Optional.of(celsius) : Optional.empty(),
                id.equals("churn"),
                waitsIn.isEmpty() ? Optional.empty() : Optional.of(waitsIn),
                id.equals("fill"),
                hot ? Optional.of(75.0) : Optional.empty(),
                List.of()));
    }

    private static Station station(String id, Station.Kind kind, int capacity, String unit) {
        return new Station(id, kind, capacity, unit, List.of(), "kitchen", 12, 6, 0, Optional.empty());
    }

    private static Person person(String id, List<String> skills, List<Absence> away) {
        return new Person(id, skills, List.of(), away, Money.ZERO);
    }

    /** An audited plan, searched for a moment. */
    static Plan plan(Day day) {
        TaskNet net = Breakdown.of(
                day,
                dish -> Looks.of(day, dish),
                need -> CameraTime.copiesAtWorst(day.setup(need.setup()).orElseThrow(), need));
        Plan plan = Planner.plan(
                        day,
                        net,
                        "digest",
                        "0.1.0",
                        new Planner.Limits(60, Optional.of(10_000L), 1, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE)
                .plan();
        return plan.withVerdict(Audit.of(day, plan));
    }
}
