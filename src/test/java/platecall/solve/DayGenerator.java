package platecall.solve;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import platecall.day.Absence;
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
import platecall.looks.LookLife;
import platecall.looks.Looks;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * Invented days for benchmarks and property tests: setups of two to five plates that are fried, roasted, simmered or served
 * cold, from a kitchen whose hands are busy for a given share of the time. Same arguments, same day.
 */
public final class DayGenerator {

    private static final ZoneId ZONE = ZoneId.of("UTC");
    private static final LocalDate DATE = LocalDate.of(2026, 3, 14);
    private static final Moment MIDNIGHT = Moment.of(DATE.atStartOfDay(ZONE));

    private final SplittableRandom random;
    private final boolean everyRule;
    private final List<Setup> setups = new ArrayList<>();
    private final List<Need> needs = new ArrayList<>();
    private final List<Dish> dishes = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<Ingredient> ingredients = new ArrayList<>();

    private DayGenerator(long seed, boolean everyRule) {
        random = new SplittableRandom(seed);
        this.everyRule = everyRule;
    }

    /**
     * @param size about how many tasks, at least 4
     * @param load share of the hands' time that hands-on work takes: 0.62 normal, 0.80 tight, 0.95 overfull
     * @param seed of all that is random
     * @param everyRule also oven temperatures, batches that grow, meal breaks, circuits, storage until release, supplies,
     *     absences; without them the day is the plain kind on which the engine was first measured
     */
    public static Day day(int size, double load, long seed, boolean everyRule) {
        return new DayGenerator(seed, everyRule).build(size, load);
    }

    /** The tasks of a generated day. */
    static TaskNet netOf(Day day) {
        return Breakdown.of(
                day, dish -> Looks.of(day, dish), need -> need.copies().orElseThrow());
    }

    private int between(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    private Day build(int size, double load) {
        int hands = size <= 60 ? 2 : size <= 150 ? 3 : size <= 300 ? 4 : 4;
        int burners = size <= 60 ? 4 : size <= 150 ? 5 : size <= 300 ? 5 : 6;
        int shelves = size <= 60 ? 6 : size <= 150 ? 8 : size <= 300 ? 10 : 12;
        List<int[]> plans = new ArrayList<>();
        int tasks = 0;
        long handMinutes = 0;
        while (tasks < size) {
            int type = random.nextInt(4);
            int plates = Math.min(between(2, 5), Math.max(1, (size - tasks) / 3));
            boolean shared = random.nextInt(3) < 2;
            String dish = "d" + plans.size();
            long perPlate = dish(dish, type, shared);
            tasks += plates * (type == 3 ? 3 : 4) + (shared ? 1 : 0);
            handMinutes += perPlate * plates + (shared ? 11 : 0);
            plans.add(new int[] {plates, type});
        }
        int span = (int) (handMinutes / (hands * load)) + 110;
        for (int s = 0; s < plans.size(); s++) {
            int call = 110 + (int) ((span - 110) * (s + 0.3 + 0.6 * random.nextDouble()) / plans.size());
            setup("s" + s, "d" + s, plans.get(s)[0], call);
        }
        int closing = span + 400;
        List<Station> stations = new ArrayList<>();
        stations.add(station("hob", Station.Kind.BURNERS, burners, "burners", everyRule ? 2 : 0));
        stations.add(station("oven a", Station.Kind.OVEN, 4, "trays", 0));
        stations.add(station("oven b", Station.Kind.OVEN, 4, "trays", 0));
        stations.add(station("fridge", Station.Kind.FRIDGE, shelves, "shelves", 0));
        if (everyRule) {
            stations.add(station("rack", Station.Kind.RACK, 200, "plates", 0));
        }
        return new Day(
                new DayFacts(
                        "invented day " + size,
                        DATE,
                        ZONE,
                        List.of(Span.ofMinutes(MIDNIGHT, closing)),
                        "EUR",
                        Optional.empty(),
                        Optional.empty(),
                        0.95,
                        "fda-2022",
                        22,
                        45,
                        40,
                        Silence.ROLLING,
                        everyRule ? Optional.of(360) : Optional.empty(),
                        30,
                        everyRule ? Prices.USUAL : new Prices(1000, 10, 1, 0, 0)),
                setups,
                needs,
                dishes,
                List.of(),
                steps,
                ingredients,
                stations,
                everyRule ? List.of(new platecall.day.Circuit("c1", 230, 16, 1.25)) : List.of(),
                people(hands, closing),
                List.of(),
                List.of(new Place("kitchen", Map.of(), List.of(), true)));
    }

    private Station station(String id, Station.Kind kind, int capacity, String unit, double amps) {
        return new Station(
                id,
                kind,
                capacity,
                unit,
                List.of(),
                "kitchen",
                12,
                6,
                amps,
                amps > 0 ? Optional.of("c1") : Optional.empty());
    }

    private List<Person> people(int hands, int closing) {
        List<Person> people = new ArrayList<>();
        for (int p = 0; p < hands; p++) {
            List<String> skills = new ArrayList<>();
            boolean stylist = hands == 2 ? p == 0 : p < 2;
            boolean cook = hands == 2 || p != 1;
            if (stylist) {
                skills.add("styling");
            }
            if (cook) {
                skills.add("cooking");
            }
            List<Absence> away = everyRule && p == hands - 1 && setups.size() > 2
                    ? List.of(
                            new Absence.HandDouble(setups.get(setups.size() / 2).id()))
                    : List.of();
            people.add(new Person("p" + p, skills, List.of(), away, Money.ZERO));
        }
        return people;
    }

    private void setup(String id, String dish, int plates, int call) {
        int weight = 1;
        setups.add(new Setup(
                id,
                "",
                "",
                "kitchen",
                MIDNIGHT.plus(call),
                Optional.empty(),
                plates,
                plates,
                between(8, 12),
                everyRule ? between(2, 4) : 0,
                true,
                new Release.AtEnd(),
                weight,
                Optional.empty()));
        needs.add(
                new Need(id, dish, "plate", 1, new Use.FreshEachTake(), Part.HERO, List.of(), Optional.of(plates), 1));
    }

    /** Adds a dish; returns its hands-on minutes a plate. */
    private long dish(String id, int type, boolean shared) {
        int[][] life = {{4, 8}, {8, 17}, {6, 13}, {10, 24}};
        int peak = between(life[type][0], life[type][1]);
        dishes.add(new Dish(
                id,
                id,
                Look.table(0, peak, LookLife.DAY_MINUTES),
                true,
                Money.ZERO,
                false,
                1,
                everyRule && random.nextInt(3) == 0 ? Optional.of("rack") : Optional.empty(),
                false,
                0,
                1,
                0,
                0));
        int oven = random.nextInt(2);
        int celsius = everyRule ? 160 + 20 * random.nextInt(3) : 0;
        boolean either = everyRule && random.nextInt(2) == 0;
        long hands;
        switch (type) {
            case 0 -> {
                hands = step(id, "prep", "", 0, -1, between(5, 14), "", "", 0, false, "fridge")
                        + step(id, "batter", "prep", 0, -1, between(3, 6), "", "", 0, random.nextInt(3) == 0, "")
                        + step(id, "fry", "batter", 0, 20, between(5, 11), "cooking", "hob:1", 0, false, "")
                        + plate(id, "fry", 3, between(3, 7), shared);
            }
            case 1 -> {
                String use = (either ? "oven a|oven b" : oven == 0 ? "oven a" : "oven b") + ":" + between(1, 2);
                hands = step(id, "prep", "", 0, -1, between(6, 17), "", "", 0, false, "fridge");
                step(id, "roast", "prep", 0, -1, between(25, 60), null, use, celsius, false, "");
                hands += step(id, "finish", "roast", 5, 20, between(2, 5), "cooking", "", 0, false, "")
                        + plate(id, "finish", 8, between(4, 9), shared);
            }
            case 2 -> {
                hands = step(id, "prep", "", 0, -1, between(6, 15), "", "", 0, random.nextInt(4) == 0, "fridge");
                step(id, "simmer", "prep", 0, -1, between(20, 45), null, "hob:1", 0, false, "");
                hands += step(id, "finish", "simmer", 0, 6, between(2, 4), "cooking", "hob:1", 0, false, "")
                        + plate(id, "finish", 6, between(4, 8), shared);
            }
            default -> {
                hands = step(id, "prep", "", 0, -1, between(8, 17), "", "", 0, false, "");
                step(id, "chill", "prep", 0, 5, between(30, 69), null, "fridge:1", 0, false, "fridge");
                hands += plate(id, "chill", -1, between(5, 10), shared);
            }
        }
        if (everyRule && random.nextInt(4) == 0) {
            ingredients.add(new Ingredient(
                    id,
                    "greens",
                    Optional.empty(),
                    1,
                    "bunch",
                    Money.ZERO,
                    List.of(),
                    "",
                    Optional.of(MIDNIGHT.plus(between(0, 20)))));
        }
        return hands;
    }

    /** Plating, after the last cooking step and, if it is shared, after a preparation for all plates of the setup. */
    private long plate(String dish, String before, int most, int minutes, boolean shared) {
        if (!shared) {
            return step(dish, "plate", before, 0, most, minutes, "styling", "", 0, false, "");
        }
        int fixed = between(6, 17);
        boolean noisy = random.nextInt(2) == 0;
        int perCopy = everyRule && random.nextInt(3) == 0 ? 1 : 0;
        steps.add(new Step(
                dish,
                "lay out",
                List.of(),
                0,
                Optional.empty(),
                fixed,
                fixed,
                fixed,
                perCopy,
                Optional.of(5),
                1,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                noisy,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of()));
        return step(dish, "plate", before, 0, most, minutes, "styling", "", 0, false, "", "lay out");
    }

    private long step(
            String dish,
            String id,
            String after,
            int least,
            int most,
            int minutes,
            String skill,
            String use,
            int celsius,
            boolean noisy,
            String waitsIn,
            String... also) {
        List<String> before = new ArrayList<>();
        if (!after.isEmpty()) {
            before.add(after);
        }
        List<StationUse> uses = new ArrayList<>();
        if (!use.isEmpty()) {
            String[] parts = use.split(":");
            uses.add(new StationUse(List.of(parts[0].split("\\|")), Integer.parseInt(parts[1])));
        }
        steps.add(new Step(
                dish,
                id,
                before,
                least,
                most < 0 ? Optional.empty() : Optional.of(most),
                minutes,
                minutes,
                minutes,
                0,
                Optional.empty(),
                skill == null ? 0 : 1,
                skill == null || skill.isEmpty() ? Optional.empty() : Optional.of(skill),
                Optional.empty(),
                Optional.empty(),
                uses,
                celsius > 0 && use.startsWith("oven") ? Optional.of(celsius) : Optional.empty(),
                noisy,
                waitsIn.isEmpty() ? Optional.empty() : Optional.of(waitsIn),
                false,
                Optional.empty(),
                List.of(also)));
        return skill == null ? 0 : minutes;
    }
}
