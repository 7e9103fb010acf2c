package platecall.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.DayFacts;
import platecall.day.Diner;
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
import platecall.intake.DayFiles;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/** Writes the demo day {@code banquet}: one course after the other, long tables, two shifts. Nothing in it is random. */
final class Banquet {

    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    private static final LocalDate DATE = LocalDate.of(2026, 9, 5);
    private static final int SETUPS = 14;
    private static final int TAKES = 4;
    private static final int CYCLE = 9;
    private static final String HALL = "great hall";
    private static final String KITCHEN = "kitchen";
    private static final String RAW_SHELF = "raw shelf";
    private static final String FRIDGE = "fridge";
    private static final String HOT_HOLD = "hot hold";
    private static final String RACK = "rack";

    private final List<Dish> dishes = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<Ingredient> ingredients = new ArrayList<>();

    private Banquet() {}

    /** Writes the sheets to the folder named by the only argument, which must not be there yet. */
    public static void main(String[] args) {
        DayFiles.write(day(), Path.of(args[0]));
    }

    static Day day() {
        return new Banquet().build();
    }

    private Day build() {
        roast("hen", "Roast hen breast", 74, 3.80);
        roast("ham", "Glazed ham", 71, 3.20);
        fried("perch", "Perch in crumbs", "fish", 63, 3.60);
        fried("cutlet", "Mushroom cutlet", "wheat", 74, 1.90);
        soup("broth", "Clear broth with dumplings", "celery");
        soup("bisque", "Beet bisque", "milk");
        cold("salad", "Garden salad", "mustard");
        cold("herring", "Herring plate", "fish");
        baked("roll", "Seeded roll", 200);
        baked("tart", "Onion tart", 190);
        chilled("flummery", "Almond flummery", "nuts");
        chilled("junket", "Junket with berries", "milk");

        List<Setup> setups = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        for (int s = 0; s < SETUPS; s++) {
            Moment call = at(DATE, LocalTime.of(8, 0)).plus(50L * s);
            String id = Integer.toString(s + 1);
            setups.add(new Setup(
                    id,
                    "course " + id,
                    "both sides of the table",
                    HALL,
                    call,
                    Optional.of(call.plus(-25)),
                    TAKES - 1,
                    TAKES,
                    CYCLE,
                    2,
                    s % 2 == 1,
                    new Release.AtEnd(),
                    1 + s % 3,
                    Optional.empty()));
            for (int n = 0; n < 3; n++) {
                String dish =
                        dishes.get((5 * s + 4 * n + s / 12) % dishes.size()).id();
                needs.add(new Need(
                        id,
                        dish,
                        "plate",
                        2,
                        new Use.FreshEachTake(),
                        Part.HERO,
                        List.of(),
                        Optional.of(2 * TAKES),
                        1));
                if (n == 0) {
                    needs.add(new Need(
                            id,
                            dish,
                            "plate",
                            1,
                            new Use.FreshEachTake(),
                            Part.STAND_IN,
                            List.of(),
                            Optional.of(1),
                            0));
                }
            }
        }
        return new Day(
                facts(),
                setups,
                needs,
                dishes,
                List.of(),
                steps,
                ingredients,
                stations(),
                circuits(),
                people(),
                List.<Diner>of(),
                places());
    }

    private static Moment at(LocalDate date, LocalTime time) {
        return Moment.of(date.atTime(time).atZone(ZONE));
    }

    private static Span hours(LocalDate date, int from, int to) {
        return new Span(at(date, LocalTime.of(from, 0)), at(date, LocalTime.of(to, 0)));
    }

    private static DayFacts facts() {
        return new DayFacts(
                "Banquet of the salt guild",
                DATE,
                ZONE,
                List.of(hours(DATE.minusDays(1), 12, 19), hours(DATE, 5, 21)),
                "EUR",
                Optional.of(Money.of(new BigDecimal("210"))),
                Optional.empty(),
                0.95,
                "food code 2022",
                23,
                50,
                150,
                Silence.ROLLING,
                Optional.of(360),
                30,
                Prices.USUAL);
    }

    // ---- recipes ----------------------------------------------------------------------------------------------

    private void roast(String id, String name, double core, double cost) {
        dish(id, name, Look.table(0, 16, 30), cost, true, "mustard");
        add(step(id, "trim")
                .takes(9)
                .batch(8, 2)
                .waits(RAW_SHELF)
                .raw()
                .on("counter", 2)
                .skill("cooking"));
        add(step(id, "roast")
                .after("trim", 0)
                .takes(38)
                .batch(8, 0)
                .hands(2, 2)
                .oven(175, 2)
                .core(core));
        add(step(id, "slice").after("roast", 8, 35).takes(2).on("counter", 1));
        add(step(id, "plate").after("slice", 0, 6).takes(2).on("pass", 1).skill("plating"));
    }

    private void fried(String id, String name, String allergen, double core, double cost) {
        dish(id, name, Look.table(0, 9, 16), cost, true, allergen);
        add(step(id, "crumb").takes(8).batch(8, 1).waits(RAW_SHELF).raw().on("counter", 2));
        add(step(id, "fry").after("crumb", 0).takes(6).hands(1, 1).on("hob", 1).core(core));
        add(step(id, "drain").after("fry", 0, 2).takes(2).hands(1, 0).on("counter", 1));
        add(step(id, "plate").after("drain", 0, 4).takes(1).on("pass", 1).skill("plating"));
    }

    private void soup(String id, String name, String allergen) {
        dish(id, name, Look.table(0, 8, 15), 0.90, true, allergen);
        add(step(id, "chop").takes(10).batch(10, 1).waits(FRIDGE).on("counter", 2));
        add(step(id, "simmer")
                .after("chop", 0)
                .takes(32)
                .batch(10, 0)
                .hands(4, 2)
                .waits(HOT_HOLD)
                .on("hob", 1)
                .skill("cooking")
                .core(80));
        add(step(id, "ladle").after("simmer", 0, 120).takes(1).on("pass", 1));
        add(step(id, "plate").after("ladle", 0, 2).takes(1).on("pass", 1).skill("plating"));
    }

    private void cold(String id, String name, String allergen) {
        dish(id, name, Look.table(0, 14, 35), 1.40, true, allergen);
        add(step(id, "wash").takes(6).batch(9, 0).waits(FRIDGE).on("counter", 1));
        add(step(id, "cut").after("wash", 0).takes(8).batch(9, 1).waits(FRIDGE).on("counter", 2));
        add(step(id, "dress").after("cut", 0).takes(1).on("counter", 1));
        add(step(id, "plate").after("dress", 0, 5).takes(2).on("pass", 1).skill("plating"));
    }

    private void baked(String id, String name, int celsius) {
        dish(id, name, Look.table(0, 60, 150), 0.50, false, "wheat");
        add(step(id, "knead")
                .takes(12)
                .batch(9, 0)
                .hands(4, 1)
                .waits(RAW_SHELF)
                .raw()
                .on("mixer", 1)
                .noisy());
        add(step(id, "shape")
                .after("knead", 45)
                .takes(6)
                .batch(9, 1)
                .waits(RAW_SHELF)
                .raw()
                .on("counter", 2)
                .skill("pastry"));
        add(step(id, "bake")
                .after("shape", 20)
                .takes(24)
                .batch(9, 0)
                .hands(1, 2)
                .waits(RACK)
                .oven(celsius, 2)
                .core(94));
        add(step(id, "plate").after("bake", 10).takes(1).on("pass", 1));
    }

    private void chilled(String id, String name, String allergen) {
        dish(id, name, Look.table(0, 20, 40), 1.10, true, allergen);
        add(step(id, "cook").takes(14).batch(9, 0).on("hob", 1).skill("pastry").core(82));
        add(step(id, "cool")
                .after("cook", 0, 5)
                .takes(45)
                .batch(9, 0)
                .hands(2, 1)
                .on("counter", 1));
        add(step(id, "set")
                .after("cool", 0, 10)
                .takes(360)
                .batch(9, 0)
                .hands(1, 0)
                .waits(FRIDGE)
                .on(FRIDGE, 2));
        add(step(id, "turn out").after("set", 0).takes(2).on("counter", 1));
        add(step(id, "plate").after("turn out", 0, 5).takes(2).on("pass", 1).skill("plating"));
    }

    private void dish(String id, String name, Look look, double cost, boolean controlled, String allergen) {
        dishes.add(new Dish(
                id,
                name,
                look,
                true,
                Money.of(new BigDecimal(String.format(Locale.ROOT, "%.2f", cost))),
                false,
                1,
                Optional.empty(),
                controlled,
                0,
                1,
                0,
                0));
        ingredients.add(new Ingredient(
                id,
                "what goes into " + name.toLowerCase(Locale.ROOT),
                Optional.empty(),
                0.3,
                "kg",
                Money.ZERO,
                List.of(allergen),
                "market",
                Optional.of(at(DATE.minusDays(1), LocalTime.of(12, 30)))));
    }

    private void add(Draft draft) {
        steps.add(draft.step());
    }

    private static Draft step(String dish, String id) {
        return new Draft(dish, id);
    }

    /** A step on its way; what is not said is as in an empty cell, with one pair of hands throughout. */
    private static final class Draft {
        private final String dish;
        private final String id;
        private List<String> after = List.of();
        private int least;
        private Optional<Integer> most = Optional.empty();
        private int likely;
        private int perCopy;
        private Optional<Integer> batch = Optional.empty();
        private Optional<String> skill = Optional.empty();
        private Optional<Integer> first = Optional.empty();
        private Optional<Integer> last = Optional.empty();
        private List<StationUse> stations = List.of();
        private Optional<Integer> celsius = Optional.empty();
        private boolean noisy;
        private Optional<String> waitsIn = Optional.empty();
        private boolean raw;
        private Optional<Double> core = Optional.empty();

        Draft(String dish, String id) {
            this.dish = dish;
            this.id = id;
        }

        Draft after(String step, int leastWait) {
            after = List.of(step);
            least = leastWait;
            return this;
        }

        Draft after(String step, int leastWait, int mostWait) {
            most = Optional.of(mostWait);
            return after(step, leastWait);
        }

        Draft takes(int minutes) {
            likely = minutes;
            return this;
        }

        Draft batch(int copies, int minutesPerCopy) {
            batch = Optional.of(copies);
            perCopy = minutesPerCopy;
            return this;
        }

        Draft hands(int firstMinutes, int lastMinutes) {
            first = Optional.of(firstMinutes);
            last = Optional.of(lastMinutes);
            return this;
        }

        Draft skill(String name) {
            skill = Optional.of(name);
            return this;
        }

        Draft on(String station, int units) {
            stations = List.of(new StationUse(List.of(station), units));
            return this;
        }

        Draft oven(int degrees, int trays) {
            stations = List.of(new StationUse(List.of("oven a", "oven b", "oven c"), trays));
            celsius = Optional.of(degrees);
            return this;
        }

        Draft noisy() {
            noisy = true;
            return this;
        }

        Draft waits(String storage) {
            waitsIn = Optional.of(storage);
            return this;
        }

        Draft raw() {
            raw = true;
            return this;
        }

        Draft core(double degrees) {
            core = Optional.of(degrees);
            return this;
        }

        Step step() {
            return new Step(
                    dish,
                    id,
                    after,
                    least,
                    most,
                    Math.max(1, likely * 4 / 5),
                    likely,
                    likely + likely / 4 + 1,
                    perCopy,
                    batch,
                    1,
                    skill,
                    first,
                    last,
                    stations,
                    celsius,
                    noisy,
                    waitsIn,
                    raw,
                    core,
                    List.of());
        }
    }

    // ---- kitchen and crew -------------------------------------------------------------------------------------

    private static List<Station> stations() {
        return List.of(
                station("hob", Station.Kind.BURNERS, 8, "burners", 0, ""),
                station("oven a", Station.Kind.OVEN, 4, "trays", 12, "wall a"),
                station("oven b", Station.Kind.OVEN, 4, "trays", 12, "wall a"),
                station("oven c", Station.Kind.OVEN, 4, "trays", 12, "wall b"),
                station("counter", Station.Kind.COUNTER, 12, "places", 0, ""),
                station("pass", Station.Kind.COUNTER, 6, "places", 0, ""),
                station("mixer", Station.Kind.OTHER, 1, "bowl", 4, "wall b"),
                station(RAW_SHELF, Station.Kind.FRIDGE, 120, "plates", 2, "wall b"),
                station(FRIDGE, Station.Kind.FRIDGE, 160, "plates", 2, "wall b"),
                station(HOT_HOLD, Station.Kind.HOT_HOLD, 40, "plates", 4, "wall b"),
                station(RACK, Station.Kind.RACK, 80, "plates", 0, ""));
    }

    private static Station station(
            String id, Station.Kind kind, int capacity, String unit, double amps, String circuit) {
        return new Station(
                id,
                kind,
                capacity,
                unit,
                List.of(),
                KITCHEN,
                12,
                4,
                amps,
                circuit.isEmpty() ? Optional.empty() : Optional.of(circuit));
    }

    private static List<Circuit> circuits() {
        return List.of(new Circuit("wall a", 230, 32, 1.25), new Circuit("wall b", 230, 32, 1.25));
    }

    /** Seven in the morning, seven in the afternoon; four of the morning's have prepared the day before. */
    private static List<Person> people() {
        List<Person> people = new ArrayList<>();
        List<String> names = List.of(
                "Alrun", "Bero", "Cilli", "Dietwin", "Effi", "Falko", "Gesine", "Hilmar", "Imke", "Jorin", "Kuno",
                "Lioba", "Merle", "Norwin");
        for (int p = 0; p < names.size(); p++) {
            boolean morning = p < 7;
            Span shift = morning ? hours(DATE, 5, 14) : hours(DATE, 12, 21);
            List<String> skills = switch (p % 3) {
                case 0 -> List.of("cooking", "plating");
                case 1 -> List.of("pastry", "plating");
                default -> List.of("plating");
            };
            people.add(new Person(
                    names.get(p),
                    skills,
                    p < 4 ? List.of(hours(DATE.minusDays(1), 13, 19), shift) : List.of(shift),
                    List.of(),
                    new Money(2_600)));
        }
        return people;
    }

    private static List<Place> places() {
        return List.of(
                new Place(KITCHEN, Map.of(HALL, 1), List.of(), true), new Place(HALL, Map.of(), List.of(), true));
    }
}
