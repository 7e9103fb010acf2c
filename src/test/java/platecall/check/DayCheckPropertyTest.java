package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import platecall.audit.Audit;
import platecall.day.Absence;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.DayFacts;
import platecall.day.Diner;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Look;
import platecall.day.LookProperty;
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
import platecall.day.Trouble;
import platecall.day.Use;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.solve.DayGenerator;
import platecall.solve.InventedDays;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

class DayCheckPropertyTest {

    @Property(tries = 150)
    void anyDayIsToldInOrderAndWithAWayOut(@ForAll long seed, @ForAll @DoubleRange(min = 0, max = 0.3) double wild) {
        Day day = new WildDays(seed, wild).day();
        Map<String, Integer> rows = rows(day);

        List<Trouble> all = new ArrayList<>(DayCheck.troubles(day));
        List<String> sheets = Arrays.stream(Sheet.values()).map(Sheet::word).toList();
        for (int i = 0; i < all.size(); i++) {
            Trouble trouble = all.get(i);
            assertThat(trouble.row()).isBetween(-1, rows.get(trouble.sheet()) - 1);
            assertThat(trouble.what()).isNotBlank();
            assertThat(trouble.wayOut()).matches("(Maybe|Did you mean) .+");
            if (i > 0) {
                Trouble before = all.get(i - 1);
                assertThat(sheets.indexOf(before.sheet())).isLessThanOrEqualTo(sheets.indexOf(trouble.sheet()));
                assertThat(all.subList(0, i)).doesNotContain(trouble);
            }
        }
        for (Trouble remark : DayCheck.remarks(day)) {
            assertThat(remark.wayOut()).matches("(Maybe|Did you mean) .+");
        }
    }

    @Property(tries = 150)
    void aDayWithoutTroublesCanBeBrokenIntoTasks(
            @ForAll long seed, @ForAll @DoubleRange(min = 0, max = 0.01) double wild) {
        Day day = new WildDays(seed, wild).day();
        Assume.that(DayCheck.troubles(day).isEmpty());

        TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1);

        assertThat(net.copies()).hasSameSizeAs(day.needs());
        assertThat(net.minutes()).isLessThanOrEqualTo(14 * 24 * 60);
        for (TaskNet.Copy copy : net.copies()) {
            for (TaskNet.Task task : copy.recipe().tasks()) {
                assertThat(task.modes()).isNotEmpty();
                assertThat(Long.bitCount(task.handMask())).isGreaterThanOrEqualTo(task.handsNeeded());
            }
        }
    }

    @Property(tries = 40)
    void aDayMadeToBePlannedHasNoTroubles(@ForAll @IntRange(min = 4, max = 150) int size, @ForAll long seed) {
        assertThat(DayCheck.troubles(DayGenerator.day(size, 0.62, seed, true))).isEmpty();
    }

    /** People, burners and counters are there only while a plan needs them, so that the day can just be planned. */
    @Property(tries = 60)
    void aDayThatHasAPlanHasNoTroubles(@ForAll @IntRange(min = 8, max = 40) int size, @ForAll long seed) {
        Day day = new GrowingBatches(seed).in(DayGenerator.day(size, 0.3, seed, true));
        Plan plan = InventedDays.plan(day, seed);
        Day tight = justFor(plan, day);
        Assume.that(Audit.of(tight, plan).sound());
        Assume.that(plan.copies().stream()
                .allMatch(copy ->
                        copy.usableTo().filter(to -> !to.isBefore(copy.due())).isPresent()));

        assertThat(DayCheck.troubles(tight)).isEmpty();
    }

    private static Day justFor(Plan plan, Day day) {
        Span firstMinute = Span.ofMinutes(day.facts().kitchenHours().get(0).start(), 1);
        List<Station> stations = day.stations().stream()
                .map(station -> station.kind().alwaysOn() || station.kind().storesFood()
                        ? station
                        : station.withHours(orElse(
                                firstMinute,
                                plan.work().stream()
                                        .filter(work -> work.stations().stream()
                                                .anyMatch(hold -> hold.station().equals(station.id())))
                                        .map(Plan.Work::span)
                                        .toList())))
                .toList();
        List<Person> people = day.people().stream()
                .map(person -> person.withShifts(orElse(
                        firstMinute,
                        plan.work().stream()
                                .flatMap(work -> work.hands().stream())
                                .filter(hands -> hands.person().equals(person.id()))
                                .map(Plan.Hands::span)
                                .toList())))
                .toList();
        return day.with(day.facts(), stations, people);
    }

    private static List<Span> orElse(Span other, List<Span> spans) {
        return spans.isEmpty() ? List.of(other) : Span.union(spans);
    }

    /** Makes some steps of a day batches that take longer with more copies, and limits how long its dishes are usable. */
    private static final class GrowingBatches {

        private final SplittableRandom random;

        GrowingBatches(long seed) {
            random = new SplittableRandom(seed);
        }

        Day in(Day day) {
            DayFacts facts = day.facts();
            return new Day(
                    new DayFacts(
                            facts.title(),
                            facts.date(),
                            facts.zone(),
                            facts.kitchenHours(),
                            facts.currency(),
                            facts.crewCostPerMinute(),
                            facts.foodBudget(),
                            facts.promise(),
                            facts.safetyProfile(),
                            facts.setCelsius(),
                            facts.setHumidityPercent(),
                            facts.lightWattsPerSquareMetre(),
                            facts.silence(),
                            Optional.empty(),
                            facts.mealMinutes(),
                            facts.prices()),
                    day.setups(),
                    day.needs(),
                    day.dishes().stream().map(this::shortlyUsable).toList(),
                    day.looks(),
                    day.steps().stream().map(this::growing).toList(),
                    day.ingredients(),
                    day.stations(),
                    day.circuits(),
                    day.people(),
                    day.cast(),
                    day.places());
        }

        private Dish shortlyUsable(Dish dish) {
            int usable = 10 + random.nextInt(30);
            return new Dish(
                    dish.id(),
                    dish.name(),
                    Look.table(0, Math.min(8, usable), usable),
                    dish.edible(),
                    dish.cost(),
                    dish.bought(),
                    dish.storageUnits(),
                    dish.heldIn(),
                    dish.timeTemperatureControlled(),
                    dish.carryMinutes(),
                    dish.copiesPerWalk(),
                    0,
                    0);
        }

        private Step growing(Step step) {
            if (random.nextInt(3) == 0) {
                return step;
            }
            int minutes = Math.min(12, step.minutesLikely());
            int first = random.nextInt(minutes + 1);
            int last = random.nextInt(3) == 0 ? random.nextInt(minutes + 1) : 0;
            return new Step(
                    step.dish(),
                    step.id(),
                    step.after(),
                    step.leastWait(),
                    step.mostWait(),
                    minutes,
                    minutes,
                    minutes,
                    random.nextInt(13),
                    Optional.of(2 + random.nextInt(4)),
                    1,
                    step.skill(),
                    random.nextInt(4) == 0 ? Optional.empty() : Optional.of(first),
                    last == 0 ? Optional.empty() : Optional.of(last),
                    step.stations(),
                    step.ovenCelsius(),
                    step.noisy(),
                    step.waitsIn(),
                    step.raw(),
                    step.coreCelsius(),
                    step.anyTimeAfter());
        }
    }

    private static Map<String, Integer> rows(Day day) {
        return Map.ofEntries(
                Map.entry("day", 0),
                Map.entry("setups", day.setups().size()),
                Map.entry("needs", day.needs().size()),
                Map.entry("dishes", day.dishes().size()),
                Map.entry("looks", day.looks().size()),
                Map.entry("steps", day.steps().size()),
                Map.entry("ingredients", day.ingredients().size()),
                Map.entry("stations", day.stations().size()),
                Map.entry("circuits", day.circuits().size()),
                Map.entry("people", day.people().size()),
                Map.entry("cast", day.cast().size()),
                Map.entry("places", day.places().size()));
    }

    /** Days of a few rows; each value is with chance {@code wild} anything that its record allows. */
    private static final class WildDays {

        private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
        private static final LocalDate DATE = LocalDate.of(2026, 3, 29);
        private static final Moment SIX = Moment.of(DATE.atTime(6, 0).atZone(ZONE));

        private final SplittableRandom random;
        private final double wild;

        WildDays(long seed, double wild) {
            random = new SplittableRandom(seed);
            this.wild = wild;
        }

        private <V> V pick(V tame, Supplier<V> anything) {
            return random.nextDouble() < wild ? anything.get() : tame;
        }

        private int between(int low, int high) {
            return low + random.nextInt(high - low + 1);
        }

        private boolean chance(double share) {
            return random.nextDouble() < share;
        }

        private String name(String kind, int count) {
            return pick(kind + between(1, count), () -> kind + between(1, count + 2));
        }

        private String number(String kind, int row) {
            return pick(kind + row, () -> kind + between(1, 3));
        }

        private Moment moment(int low, int high) {
            return SIX.plus(pick(between(low, high), () -> between(-30_000, 30_000)));
        }

        private Span span(int low, int high) {
            Moment start = moment(low, high);
            return Span.ofMinutes(start, pick(between(300, 700), () -> between(1, 3000)));
        }

        private <R> List<R> rows(int low, int high, java.util.function.IntFunction<R> row) {
            int count = pick(between(low, high), () -> between(0, high));
            List<R> rows = new ArrayList<>();
            for (int n = 1; n <= count; n++) {
                rows.add(row.apply(n));
            }
            return rows;
        }

        private <V> Optional<V> sometimes(Supplier<V> value) {
            return pick(Optional.<V>empty(), () -> Optional.of(value.get()));
        }

        Day day() {
            return new Day(
                    facts(),
                    rows(1, 3, this::setup),
                    rows(1, 4, this::need),
                    rows(3, 3, this::dish),
                    rows(0, 1, n -> new LookProperty(name("dish", 3), "thickness", "3")),
                    steps(),
                    rows(0, 4, this::ingredient),
                    rows(4, 4, this::station),
                    rows(
                            2,
                            2,
                            n -> new Circuit(number("circuit", n), 230, pick(32.0, () -> 1.0 * between(1, 20)), 1.25)),
                    rows(2, 3, this::person),
                    rows(
                            2,
                            2,
                            n -> new Diner(
                                    number("diner", n),
                                    chance(wild) ? List.of("milk") : List.of(),
                                    pick("", () -> chance(0.5) ? "vegan" : "odd"),
                                    chance(0.5))),
                    rows(
                            2,
                            2,
                            n -> new Place(
                                    number("place", n),
                                    chance(0.5) ? Map.of(name("place", 2), between(0, 20)) : Map.of(),
                                    chance(wild) ? List.of(span(0, 300)) : List.of(),
                                    chance(0.7))));
        }

        private DayFacts facts() {
            return new DayFacts(
                    "Wild",
                    DATE,
                    ZONE,
                    chance(wild) ? List.of(span(0, 10), span(0, 900)) : List.of(Span.ofMinutes(SIX, 720)),
                    "EUR",
                    Optional.empty(),
                    sometimes(() -> new Money(between(0, 3000))),
                    0.95,
                    "food code 2022",
                    22,
                    50,
                    100,
                    Silence.values()[between(0, 2)],
                    Optional.empty(),
                    30,
                    Prices.USUAL);
        }

        private Setup setup(int n) {
            int takes = between(1, 3);
            int cycle = pick(between(5, 15), () -> between(1, 1440));
            return new Setup(
                    number("setup", n),
                    "",
                    "",
                    name("place", 2),
                    moment(240, 600),
                    sometimes(() -> moment(200, 300)),
                    takes,
                    pick(takes + 1, () -> between(takes, 500)),
                    cycle,
                    between(0, cycle),
                    chance(0.3),
                    pick(
                            new Release.AtEnd(),
                            () -> chance(0.5) ? new Release.At(moment(0, 900)) : new Release.After(name("setup", 3))),
                    1,
                    Optional.empty());
        }

        private Need need(int n) {
            Use use = chance(0.6)
                    ? new Use.FreshEachTake()
                    : chance(0.5) ? new Use.LastsTakes(between(1, 4)) : new Use.ToppedUp(between(1, 9));
            int dish = between(1, 3);
            return new Need(
                    name("setup", 1),
                    pick("dish" + dish, () -> name("dish", 3)),
                    name("step", 2),
                    1,
                    use,
                    Part.values()[(n - 1) % 4],
                    chance(0.3) ? List.of(name("diner", 2)) : List.of(),
                    sometimes(() -> between(1, 1000)),
                    1,
                    0);
        }

        private Dish dish(int n) {
            Look look = pick(
                    Look.table(0, 600, 600),
                    () -> chance(0.5) ? Look.table(0, 5, between(5, 60)) : Look.of(Look.Kind.values()[between(0, 10)]));
            return new Dish(
                    number("dish", n),
                    "Dish " + n,
                    look,
                    !chance(wild),
                    new Money(between(0, 500)),
                    false,
                    pick(between(0, 2), () -> between(0, 1000)),
                    chance(0.3) ? Optional.of(pick("station3", () -> name("station", 4))) : Optional.empty(),
                    true,
                    between(0, 3),
                    between(1, 3),
                    0,
                    0);
        }

        private List<Step> steps() {
            List<Step> steps = new ArrayList<>();
            for (int dish = 1; dish <= 3; dish++) {
                int d = dish;
                steps.addAll(rows(2, 4, n -> step("dish" + d, n)));
            }
            return steps;
        }

        private Step step(String dish, int n) {
            int minutes = pick(between(1, 20), () -> between(1, 5000));
            boolean oven = chance(0.2);
            int hands = between(0, 1);
            List<String> after = n == 1 ? List.of() : List.of(pick("step" + (n - 1), () -> name("step", 4)));
            return new Step(
                    pick(dish, () -> name("dish", 3)),
                    number("step", n),
                    after,
                    between(0, 5),
                    chance(0.3) ? Optional.of(between(5, 60)) : Optional.empty(),
                    minutes,
                    minutes,
                    minutes,
                    0,
                    chance(0.3) ? Optional.of(between(1, 6)) : Optional.empty(),
                    pick(hands, () -> between(0, 4)),
                    sometimes(() -> chance(0.5) ? "carving" : "pastry"),
                    sometimes(() -> between(0, 30)),
                    sometimes(() -> between(0, 30)),
                    oven
                            ? List.of(new StationUse(List.of("station2"), 1))
                            : chance(0.5)
                                    ? List.of(new StationUse(List.of("station1", name("station", 1)), 1))
                                    : pick(
                                            List.of(),
                                            () -> List.of(
                                                    new StationUse(List.of(name("station", 4), name("station", 4)), 1),
                                                    new StationUse(List.of(name("station", 4)), between(1, 10_000)))),
                    pick(oven ? Optional.of(180) : Optional.empty(), () -> Optional.of(between(30, 550))),
                    chance(0.1),
                    chance(0.2) ? Optional.of(pick("station3", () -> name("station", 4))) : Optional.empty(),
                    chance(0.1),
                    Optional.empty(),
                    chance(wild) ? List.of(name("step", 4)) : List.of());
        }

        private Ingredient ingredient(int n) {
            return new Ingredient(
                    name("dish", 3),
                    "thing " + n,
                    sometimes(() -> name("step", 4)),
                    1,
                    "",
                    new Money(between(0, 100)),
                    chance(0.3) ? List.of(chance(0.5) ? "butter" : "cod") : List.of(),
                    "",
                    sometimes(() -> moment(0, 400)));
        }

        private Station station(int n) {
            Station.Kind[] kinds = {Station.Kind.COUNTER, Station.Kind.OVEN, Station.Kind.FRIDGE, Station.Kind.BURNERS};
            return new Station(
                    number("station", n),
                    pick(kinds[n - 1], () -> Station.Kind.values()[between(0, 7)]),
                    pick(20, () -> between(1, 10_000)),
                    "",
                    chance(wild) ? List.of(span(0, 300)) : List.of(),
                    name("place", 2),
                    pick(10.0, () -> 0.01),
                    5,
                    pick(1.0, () -> 1.0 * between(0, 1000)),
                    chance(0.5) ? Optional.of(name("circuit", 2)) : Optional.empty());
        }

        private Person person(int n) {
            return new Person(
                    number("person", n),
                    chance(0.5) ? List.of("carving") : List.of(),
                    chance(wild) ? List.of(span(0, 300)) : List.of(),
                    chance(wild)
                            ? List.of(
                                    chance(0.5)
                                            ? new Absence.HandDouble(name("setup", 3))
                                            : new Absence.During(span(0, 600)))
                            : List.of(),
                    Money.ZERO);
        }
    }
}
