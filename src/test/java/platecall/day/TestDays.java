package platecall.day;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * Builds small days for tests: what a test does not say has a plain default. The day is 14 March 2026 in Vienna (UTC+1);
 * its kitchen is open from 06:00 to 18:00; dishes look the same all day; steps are done copy by copy by anyone.
 */
public final class TestDays {

    public static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
    public static final LocalDate DATE = LocalDate.of(2026, 3, 14);

    public LocalDate date = DATE;
    public List<Span> kitchen = List.of(span("06:00-18:00"));
    public Silence silence = Silence.ROLLING;
    public Optional<Integer> mealAfter = Optional.empty();
    public int meal = 30;
    public String profile = "food code 2022";
    public Prices prices = Prices.USUAL;
    public Optional<Money> foodBudget = Optional.empty();
    private final List<Setup> setups = new ArrayList<>();
    private final List<Need> needs = new ArrayList<>();
    private final List<Dish> dishes = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<Ingredient> ingredients = new ArrayList<>();
    private final List<Station> stations = new ArrayList<>();
    private final List<Circuit> circuits = new ArrayList<>();
    private final List<Person> people = new ArrayList<>();
    private final List<Diner> cast = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();

    /** {@code 09:05} on the usual date, or {@code 2026-03-15T01:30}. */
    public static Moment at(String time) {
        LocalDateTime local =
                time.contains("T") ? LocalDateTime.parse(time) : LocalDateTime.of(DATE, LocalTime.parse(time));
        return Moment.of(local.atZone(ZONE));
    }

    /** {@code 09:05-09:20} on the usual date; for others see {@link #span(String, String)}. */
    public static Span span(String fromTo) {
        String[] ends = fromTo.split("-");
        return span(ends[0], ends[1]);
    }

    public static Span span(String from, String to) {
        return new Span(at(from), at(to));
    }

    /**
     * One setup at 10:00 with two takes ten minutes apart, an egg fresh for each: cracked in 2 minutes, fried in 4 on one
     * of two burners, plated in 1 at most 2 minutes later, at its peak for 15 minutes, by Ana or Ben.
     */
    public static TestDays firstEgg() {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> setup.takes(2))
                .dish("egg", dish -> dish.look = Look.table(0, 15, 20))
                .need("S1", "egg", "plate", need -> {})
                .step("egg", "crack", 2, step -> step.hands = 1)
                .step("egg", "fry", 4, step -> step.after("crack").uses("burners", 1).hands = 1)
                .step("egg", "plate", 1, step -> step.after("fry").most(2).hands = 1)
                .station("burners", Station.Kind.BURNERS, 2, station -> {})
                .person("Ana", person -> {})
                .person("Ben", person -> {});
    }

    public TestDays with(Consumer<TestDays> change) {
        change.accept(this);
        return this;
    }

    /** Parts of a setup that tests change. */
    public static final class SetupPart {
        public String place = "kitchen";
        public Optional<Moment> lighting = Optional.empty();
        public int takesLikely = 1;
        public int takesWorst = 1;
        public int cycle = 10;
        public int rolling = 5;
        public boolean silent;
        public Release release = new Release.AtEnd();
        public int weight = 1;
        public Optional<Setup.TakesShot> takesShot = Optional.empty();

        public SetupPart shot(int takes, String next) {
            takesShot = Optional.of(new Setup.TakesShot(takes, Optional.of(at(next))));
            return this;
        }

        public SetupPart takes(int takes) {
            takesLikely = takes;
            takesWorst = takes;
            return this;
        }
    }

    public TestDays setup(String id, String call, Consumer<SetupPart> change) {
        SetupPart part = new SetupPart();
        change.accept(part);
        setups.removeIf(setup -> setup.id().equals(id));
        setups.add(new Setup(
                id,
                "",
                "",
                part.place,
                at(call),
                part.lighting,
                part.takesLikely,
                part.takesWorst,
                part.cycle,
                part.rolling,
                part.silent,
                part.release,
                part.weight,
                part.takesShot));
        return this;
    }

    /** Parts of a need that tests change. */
    public static final class NeedPart {
        public int plates = 1;
        public Use use = new Use.FreshEachTake();
        public Part part = Part.HERO;
        public List<String> eatenBy = List.of();
        public Optional<Integer> copies = Optional.empty();
        public int looksWeight = 1;
        public int extraLooks;

        public NeedPart copies(int count) {
            copies = Optional.of(count);
            return this;
        }
    }

    public TestDays need(String setup, String dish, String stage, Consumer<NeedPart> change) {
        NeedPart part = new NeedPart();
        change.accept(part);
        Need need = new Need(
                setup,
                dish,
                stage,
                part.plates,
                part.use,
                part.part,
                part.eatenBy,
                part.copies,
                part.looksWeight,
                part.extraLooks);
        needs.removeIf(other -> other.key().equals(need.key()));
        needs.add(need);
        return this;
    }

    /** Parts of a dish that tests change. */
    public static final class DishPart {
        public Look look = Look.of(Look.Kind.STEADY);
        public boolean edible = true;
        public Money cost = Money.ZERO;
        public int storage = 1;
        public Optional<String> heldIn = Optional.empty();
        public boolean controlled;
        public int carry;
        public int perWalk = 1;
    }

    public TestDays dish(String id, Consumer<DishPart> change) {
        DishPart part = new DishPart();
        change.accept(part);
        dishes.removeIf(dish -> dish.id().equals(id));
        dishes.add(new Dish(
                id,
                id.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + id.substring(1),
                part.look,
                part.edible,
                part.cost,
                false,
                part.storage,
                part.heldIn,
                part.controlled,
                part.carry,
                part.perWalk,
                0,
                0));
        return this;
    }

    /** Parts of a step that tests change. */
    public static final class StepPart {
        public Optional<Integer> low = Optional.empty();
        public Optional<Integer> high = Optional.empty();
        public List<String> after = List.of();
        public List<String> anyTimeAfter = List.of();
        public int least;
        public Optional<Integer> most = Optional.empty();
        public int perCopy;
        public Optional<Integer> batchMost = Optional.empty();
        public int hands;
        public Optional<String> skill = Optional.empty();
        public Optional<Integer> handsFirst = Optional.empty();
        public Optional<Integer> handsLast = Optional.empty();
        public List<StationUse> stations = List.of();
        public Optional<Integer> oven = Optional.empty();
        public boolean noisy;
        public Optional<String> waitsIn = Optional.empty();
        public boolean raw;
        public Optional<Double> core = Optional.empty();

        /** Takes from {@code low} to {@code high} minutes. */
        public StepPart from(int low, int high) {
            this.low = Optional.of(low);
            this.high = Optional.of(high);
            return this;
        }

        public StepPart after(String... steps) {
            after = List.of(steps);
            return this;
        }

        public StepPart most(int minutes) {
            most = Optional.of(minutes);
            return this;
        }

        /** One more station, or one of several that serve as well, named with {@code |} between them. */
        public StepPart uses(String anyOf, int units) {
            stations = new ArrayList<>(stations);
            stations.add(new StationUse(Arrays.asList(anyOf.split("\\|")), units));
            return this;
        }
    }

    public TestDays step(String dish, String id, int minutes, Consumer<StepPart> change) {
        StepPart part = new StepPart();
        change.accept(part);
        Step step = new Step(
                dish,
                id,
                part.after,
                part.least,
                part.most,
                part.low.orElse(minutes),
                minutes,
                part.high.orElse(minutes),
                part.perCopy,
                part.batchMost,
                part.hands,
                part.skill,
                part.handsFirst,
                part.handsLast,
                part.stations,
                part.oven,
                part.noisy,
                part.waitsIn,
                part.raw,
                part.core,
                part.anyTimeAfter);
        steps.removeIf(other -> other.dish().equals(dish) && other.id().equals(id));
        steps.add(step);
        return this;
    }

    /** Parts of an ingredient that tests change. */
    public static final class IngredientPart {
        public Optional<String> step = Optional.empty();
        public Money cost = Money.ZERO;
        public List<String> allergens = List.of();
        public Optional<Moment> arrives = Optional.empty();
    }

    public TestDays ingredient(String dish, String name, Consumer<IngredientPart> change) {
        IngredientPart part = new IngredientPart();
        change.accept(part);
        ingredients.add(new Ingredient(dish, name, part.step, 1, "", part.cost, part.allergens, "", part.arrives));
        return this;
    }

    /** Parts of a station that tests change. */
    public static final class StationPart {
        public List<Span> hours = List.of();
        public String place = "kitchen";
        public double heat = 10;
        public double cool = 5;
        public double amps;
        public Optional<String> circuit = Optional.empty();
    }

    public TestDays station(String id, Station.Kind kind, int capacity, Consumer<StationPart> change) {
        StationPart part = new StationPart();
        change.accept(part);
        stations.removeIf(station -> station.id().equals(id));
        stations.add(new Station(
                id, kind, capacity, "", part.hours, part.place, part.heat, part.cool, part.amps, part.circuit));
        return this;
    }

    public void remove(String station) {
        stations.removeIf(one -> one.id().equals(station));
    }

    public TestDays circuit(String id, double amps, double continuousFactor) {
        circuits.add(new Circuit(id, 230, amps, continuousFactor));
        return this;
    }

    /** Parts of a person that tests change. */
    public static final class PersonPart {
        public List<String> skills = List.of();
        public List<Span> shifts = List.of();
        public List<Absence> away = List.of();
    }

    public TestDays person(String id, Consumer<PersonPart> change) {
        PersonPart part = new PersonPart();
        change.accept(part);
        people.removeIf(person -> person.id().equals(id));
        people.add(new Person(id, part.skills, part.shifts, part.away, Money.ZERO));
        return this;
    }

    public TestDays vegan(String id) {
        cast.add(new Diner(id, List.of(), "vegan", true));
        return this;
    }

    public TestDays diner(String id, String... allergies) {
        cast.add(new Diner(id, List.of(allergies), "", true));
        return this;
    }

    /** Parts of a place that tests change. */
    public static final class PlacePart {
        public TreeMap<String, Integer> walk = new TreeMap<>();
        public List<Span> hours = List.of();
        public boolean heard = true;
    }

    public TestDays place(String id, Consumer<PlacePart> change) {
        PlacePart part = new PlacePart();
        change.accept(part);
        places.removeIf(place -> place.id().equals(id));
        places.add(new Place(id, part.walk, part.hours, part.heard));
        return this;
    }

    public Day build() {
        return new Day(
                new DayFacts(
                        "Test day",
                        date,
                        ZONE,
                        kitchen,
                        "EUR",
                        Optional.empty(),
                        foodBudget,
                        0.95,
                        profile,
                        22,
                        50,
                        0,
                        silence,
                        mealAfter,
                        meal,
                        prices),
                setups,
                needs,
                dishes,
                List.of(),
                steps,
                ingredients,
                stations,
                circuits,
                people,
                cast,
                places);
    }
}
