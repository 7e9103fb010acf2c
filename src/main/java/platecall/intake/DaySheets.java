package platecall.intake;

import static platecall.intake.Column.optional;
import static platecall.intake.Column.required;
import static platecall.intake.Column.usual;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
import platecall.day.Setup.TakesShot;
import platecall.day.Silence;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.Use;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/** Every sheet of a day with every column: its name, meaning, grammar, and what a blank cell means. */
final class DaySheets {

    private static final String MINUTES = "minutes";
    private static final String CELSIUS = "degrees C";
    private static final String NOT_USED = " (kept, not used yet)";

    private DaySheets() {}

    /** The keys of the sheet {@code day}. */
    static final class Facts {
        static final Column<DayFacts, String> TITLE = required(
                "title", Grammars.TEXT, DayFacts::title, "name of the day, printed on every page", "Lantern supper");
        static final Column<DayFacts, LocalDate> DATE = required(
                "date",
                Clock.CALENDAR_DATE,
                DayFacts::date,
                "shooting date; a time written without a date falls on it",
                "2026-03-14");
        static final Column<DayFacts, ZoneId> ZONE =
                required("zone", Grammars.ZONE, DayFacts::zone, "time zone of the set", "Europe/Berlin");
        static final Column<DayFacts, List<Span>> KITCHEN_HOURS = required(
                "kitchen hours",
                Clock.SPANS,
                DayFacts::kitchenHours,
                "when the kitchen can work, prep days before and after midnight too",
                "2026-03-13 14:00 - 2026-03-13 20:00; 06:00-19:00");
        static final Column<DayFacts, String> CURRENCY =
                usual("currency", Grammars.TEXT, DayFacts::currency, "EUR", "printed beside money", "EUR");
        static final Column<DayFacts, Optional<Money>> CREW_COST = optional(
                "crew cost a minute",
                Grammars.MONEY,
                DayFacts::crewCostPerMinute,
                "not known",
                "what a minute of the waiting crew costs",
                "180");
        static final Column<DayFacts, Optional<Money>> FOOD_BUDGET = optional(
                "food budget", Grammars.MONEY, DayFacts::foodBudget, "no limit", "most that the food may cost", "900");
        static final Column<DayFacts, Double> PROMISE = usual(
                        "promise",
                        Grammars.SHARE,
                        DayFacts::promise,
                        "95 %",
                        "wanted chance that a setup is ready at its call",
                        "95 %")
                .from("0 %", "100 %");
        static final Column<DayFacts, String> SAFETY_PROFILE = usual(
                "safety profile",
                Grammars.TEXT,
                DayFacts::safetyProfile,
                "food code 2022",
                "name of the food-safety limits that hold; local codes decide",
                "food code 2022");
        static final Column<DayFacts, Double> SET_TEMPERATURE = usual(
                        "set temperature", Grammars.DECIMAL, DayFacts::setCelsius, "22", "air temperature on set", "24")
                .in(CELSIUS)
                .from("-30", "60");
        static final Column<DayFacts, Double> HUMIDITY = usual(
                        "humidity",
                        Grammars.PERCENT,
                        DayFacts::setHumidityPercent,
                        "50",
                        "relative humidity on set",
                        "45")
                .in("%")
                .from("0", "100");
        static final Column<DayFacts, Double> LIGHT = usual(
                        "light",
                        Grammars.DECIMAL,
                        DayFacts::lightWattsPerSquareMetre,
                        "100",
                        "light that falls on the plate, as heat",
                        "150")
                .in("W/m2")
                .from("0", "2000");
        static final Column<DayFacts, Silence> SILENCE = usual(
                "silence",
                Grammars.oneOf(
                        "a rule of silence",
                        List.of(Silence.values()),
                        silence -> silence.name().toLowerCase(Locale.ROOT)),
                DayFacts::silence,
                "rolling",
                "when silent setups forbid noise: while a take is rolling, for the whole setup, or none (never)",
                "rolling");
        static final Column<DayFacts, Optional<Integer>> MEAL_AFTER = optional(
                        "meal after",
                        Grammars.MINUTES,
                        DayFacts::mealAfterMinutes,
                        "no meal rule",
                        "longest time anybody is on shift without a meal break",
                        "360")
                .in(MINUTES)
                .from("1", "1440");
        static final Column<DayFacts, Integer> MEAL_MINUTES = usual(
                        "meal minutes", Grammars.MINUTES, DayFacts::mealMinutes, "30", "length of a meal break", "30")
                .from("1", "1440");
        static final Column<DayFacts, Integer> LATE_PRICE = usual(
                        "late minute price",
                        Grammars.WHOLE,
                        (DayFacts facts) -> facts.prices().lateMinute(),
                        String.valueOf(Prices.USUAL.lateMinute()),
                        "how bad a minute is that one copy comes late to camera",
                        "1000")
                .in("points")
                .from("0", "100000");
        static final Column<DayFacts, Integer> OFF_PEAK_PRICE = usual(
                        "off-peak minute price",
                        Grammars.WHOLE,
                        (DayFacts facts) -> facts.prices().offPeakMinute(),
                        String.valueOf(Prices.USUAL.offPeakMinute()),
                        "how bad a minute is by which one copy's peak begins after its take rolls, or is over before its last take is",
                        "10")
                .in("points")
                .from("0", "10000");
        static final Column<DayFacts, Integer> KITCHEN_PRICE = usual(
                        "kitchen minute price",
                        Grammars.WHOLE,
                        (DayFacts facts) -> facts.prices().kitchenMinute(),
                        String.valueOf(Prices.USUAL.kitchenMinute()),
                        "how bad a minute is that the kitchen starts earlier",
                        "1")
                .in("points")
                .from("0", "10000");
        static final Column<DayFacts, Integer> HAND_CHANGE_PRICE = usual(
                        "hand change price",
                        Grammars.WHOLE,
                        (DayFacts facts) -> facts.prices().handChange(),
                        String.valueOf(Prices.USUAL.handChange()),
                        "how bad each further pair of hands on one copy is",
                        "1")
                .in("points")
                .from("0", "10000");
        static final Column<DayFacts, Integer> MOVED_PRICE = usual(
                        "moved minute price",
                        Grammars.WHOLE,
                        (DayFacts facts) -> facts.prices().movedMinute(),
                        String.valueOf(Prices.USUAL.movedMinute()),
                        "how bad a minute is by which a step moves from a plan already handed out",
                        "1")
                .in("points")
                .from("0", "10000");

        static final Sheet<DayFacts> SHEET = new Sheet<>(
                "day",
                true,
                "a key and its value",
                day -> List.of(day.facts()),
                List.of(
                        TITLE,
                        DATE,
                        ZONE,
                        KITCHEN_HOURS,
                        CURRENCY,
                        CREW_COST,
                        FOOD_BUDGET,
                        PROMISE,
                        SAFETY_PROFILE,
                        SET_TEMPERATURE,
                        HUMIDITY,
                        LIGHT,
                        SILENCE,
                        MEAL_AFTER,
                        MEAL_MINUTES,
                        LATE_PRICE,
                        OFF_PEAK_PRICE,
                        KITCHEN_PRICE,
                        HAND_CHANGE_PRICE,
                        MOVED_PRICE),
                row -> new DayFacts(
                        row.get(TITLE),
                        row.get(DATE),
                        row.get(ZONE),
                        row.get(KITCHEN_HOURS),
                        row.get(CURRENCY),
                        row.get(CREW_COST),
                        row.get(FOOD_BUDGET),
                        row.get(PROMISE),
                        row.get(SAFETY_PROFILE),
                        row.get(SET_TEMPERATURE),
                        row.get(HUMIDITY),
                        row.get(LIGHT),
                        row.get(SILENCE),
                        row.get(MEAL_AFTER),
                        row.get(MEAL_MINUTES),
                        new Prices(
                                row.get(LATE_PRICE),
                                row.get(OFF_PEAK_PRICE),
                                row.get(KITCHEN_PRICE),
                                row.get(HAND_CHANGE_PRICE),
                                row.get(MOVED_PRICE))));

        private Facts() {}
    }

    static final class Setups {
        static final Column<Setup, String> SETUP =
                required("setup", Grammars.NAME, Setup::id, "its number or short name, like no other", "5");
        static final Column<Setup, String> SCENE =
                usual("scene", Grammars.TEXT, Setup::scene, "", "scene number or name", "12A");
        static final Column<Setup, String> SHOT =
                usual("shot", Grammars.TEXT, Setup::shot, "", "what the camera sees", "soup, close");
        static final Column<Setup, String> PLACE =
                required("place", Grammars.STATION_NAME, Setup::place, "where it is shot (sheet places)", "set");
        static final Column<Setup, Moment> CALL =
                required("call", Clock.MOMENT, Setup::call, "when its first take should roll", "10:30");
        static final Column<Setup, Optional<Moment>> LIGHTING = optional(
                "lighting", Clock.MOMENT, Setup::lighting, "at the call", "when stand-ins must be on set", "09:50");
        static final Column<Setup, Integer> TAKES_LIKELY = required(
                        "takes likely", Grammars.WHOLE, Setup::takesLikely, "takes that you expect", "4")
                .from("1", "500");
        static final Column<Setup, Integer> TAKES_WORST = required(
                        "takes at worst",
                        Grammars.WHOLE,
                        Setup::takesWorst,
                        "takes in a bad case, exceeded on one day in ten",
                        "7")
                .from("1", "500");
        static final Column<Setup, Integer> CYCLE = required(
                        "take cycle", Grammars.MINUTES, Setup::cycleMinutes, "from one roll to the next", "8")
                .in(MINUTES)
                .from("1", "1440");
        static final Column<Setup, Optional<Integer>> ROLLING = optional(
                        "rolling minutes",
                        Grammars.MINUTES,
                        (Setup setup) -> Optional.of(setup.rollingMinutes()),
                        "the whole take cycle",
                        "how long the camera rolls in a take",
                        "2")
                .from("0", "1440");
        static final Column<Setup, Boolean> SILENT = usual(
                "silent", Grammars.YES_NO, Setup::silent, "no", "whether the set needs silence while it rolls", "yes");
        static final Column<Setup, Release> RELEASE = usual(
                "release",
                Grammars.RELEASE,
                Setup::release,
                "at end",
                "when its food may be struck: at end, a time, or after another setup",
                "after setup 6");
        static final Column<Setup, Integer> WEIGHT = usual(
                        "weight",
                        Grammars.WHOLE,
                        Setup::weight,
                        "1",
                        "how much a late minute of it counts beside others",
                        "3")
                .from("1", "1000");
        static final Column<Setup, Optional<Integer>> TAKES_SHOT = optional(
                        "takes shot",
                        Grammars.WHOLE,
                        (Setup setup) -> setup.takesShot().map(TakesShot::takes),
                        "0",
                        "on a day under way, takes that are shot of it by now",
                        "2")
                .from("0", "500");
        static final Column<Setup, Optional<Moment>> NEXT_TAKE = optional(
                "next take",
                Clock.MOMENT,
                (Setup setup) -> setup.takesShot().flatMap(TakesShot::next),
                "as if none had slipped",
                "on a day under way, when the take rolls that comes after those",
                "11:05");

        static final Sheet<Setup> SHEET = new Sheet<>(
                        "setups",
                        true,
                        "one camera position with its takes",
                        Day::setups,
                        List.of(
                                SETUP,
                                SCENE,
                                SHOT,
                                PLACE,
                                CALL,
                                LIGHTING,
                                TAKES_LIKELY,
                                TAKES_WORST,
                                CYCLE,
                                ROLLING,
                                SILENT,
                                RELEASE,
                                WEIGHT,
                                TAKES_SHOT,
                                NEXT_TAKE),
                        row -> new Setup(
                                row.get(SETUP),
                                row.get(SCENE),
                                row.get(SHOT),
                                row.get(PLACE),
                                row.get(CALL),
                                row.get(LIGHTING),
                                row.get(TAKES_LIKELY),
                                row.get(TAKES_WORST),
                                row.get(CYCLE),
                                row.get(ROLLING).orElse(row.get(CYCLE)),
                                row.get(SILENT),
                                row.get(RELEASE),
                                row.get(WEIGHT),
                                takesShot(row.get(TAKES_SHOT), row.get(NEXT_TAKE))))
                .ascending(List.of(TAKES_LIKELY, TAKES_WORST))
                .ascending(List.of(TAKES_SHOT, TAKES_WORST))
                .ascending(List.of(ROLLING, CYCLE));

        private static Optional<TakesShot> takesShot(Optional<Integer> takes, Optional<Moment> next) {
            return takes.isEmpty() && next.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new TakesShot(takes.orElse(0), next));
        }

        private Setups() {}
    }

    static final class Needs {
        static final Column<Need, String> SETUP =
                required("setup", Grammars.NAME, Need::setup, "the setup that wants it", "5");
        static final Column<Need, String> DISH = required("dish", Grammars.NAME, Need::dish, "the dish", "soup");
        static final Column<Need, String> STAGE = required(
                "stage",
                Grammars.NAME,
                Need::stage,
                "the step after which it is wanted: raw, half done or finished",
                "plate");
        static final Column<Need, Integer> PLATES = usual(
                        "plates per take",
                        Grammars.WHOLE,
                        Need::platesPerTake,
                        "1",
                        "plates before the camera at a time",
                        "2")
                .from("1", "100");
        static final Column<Need, Use> USE = usual(
                "use",
                Grammars.USE,
                Need::use,
                "fresh",
                "how takes use a plate up: fresh each take, lasts some takes, or topped up between takes",
                "lasts 3 takes");
        static final Column<Need, Part> PART = usual(
                "part",
                Grammars.oneOf("a part", List.of(Part.values()), Part::word),
                Need::part,
                "hero",
                "what the plate is for",
                "hero");
        static final Column<Need, List<String>> EATEN_BY =
                usual("eaten by", Grammars.NAMES, Need::eatenBy, "", "who of the cast eats of it", "Mina; Theo");
        static final Column<Need, Optional<Integer>> COPIES = optional(
                        "copies",
                        Grammars.WHOLE,
                        Need::copies,
                        "worked out from the takes",
                        "how many to make, if you fix the number",
                        "6")
                .from("1", "1000");
        static final Column<Need, Integer> LOOKS_WEIGHT = usual(
                        "looks weight",
                        Grammars.WHOLE,
                        Need::looksWeight,
                        "1",
                        "how much a minute outside its peak counts beside others",
                        "2")
                .from("0", "1000");
        static final Column<Need, Integer> EXTRA_LOOKS = usual(
                        "extra looks",
                        Grammars.WHOLE,
                        Need::extraLooks,
                        "0",
                        "copies wanted whole beside those that takes use up: for stills, or held back until release",
                        "1")
                .from("0", "100");

        static final Sheet<Need> SHEET = new Sheet<>(
                "needs",
                true,
                "a dish wanted by a setup",
                Day::needs,
                List.of(SETUP, DISH, STAGE, PLATES, USE, PART, EATEN_BY, COPIES, LOOKS_WEIGHT, EXTRA_LOOKS),
                row -> new Need(
                        row.get(SETUP),
                        row.get(DISH),
                        row.get(STAGE),
                        row.get(PLATES),
                        row.get(USE),
                        row.get(PART),
                        row.get(EATEN_BY),
                        row.get(COPIES),
                        row.get(LOOKS_WEIGHT),
                        row.get(EXTRA_LOOKS)));

        private Needs() {}
    }

    static final class Dishes {
        static final Column<Dish, String> DISH =
                required("dish", Grammars.NAME, Dish::id, "its short name, like no other", "soup");
        static final Column<Dish, Optional<String>> NAME = optional(
                "name",
                Grammars.TEXT,
                (Dish dish) -> Optional.of(dish.name()),
                "as its short name",
                "its name as printed",
                "Pumpkin soup");
        static final Column<Dish, Look.Kind> LOOK = required(
                "look",
                Grammars.oneOf("a kind of look", List.of(Look.Kind.values()), Look.Kind::word),
                (Dish dish) -> dish.look().kind(),
                "what ends its looks: table (you give the minutes), steady (dressing that keeps), or what changes it",
                "table");
        static final Column<Dish, Optional<Integer>> PEAK_FROM = optional(
                        "peak from",
                        Grammars.MINUTES,
                        (Dish dish) -> dish.look().peakFrom(),
                        "0 if look is table",
                        "from plate-up to the beginning of its peak",
                        "0")
                .in(MINUTES)
                .from("0", "100000");
        static final Column<Dish, Optional<Integer>> PEAK_TO = optional(
                        "peak to",
                        Grammars.MINUTES,
                        (Dish dish) -> dish.look().peakTo(),
                        "worked out; must be given if look is table",
                        "from plate-up to the end of its peak",
                        "6")
                .in(MINUTES)
                .from("0", "100000");
        static final Column<Dish, Optional<Integer>> USABLE_TO = optional(
                        "usable to",
                        Grammars.MINUTES,
                        (Dish dish) -> dish.look().usableTo(),
                        "worked out; must be given if look is table",
                        "from plate-up to the minute after which it can't be shown",
                        "15")
                .in(MINUTES)
                .from("0", "100000");
        static final Column<Dish, Boolean> EDIBLE = usual(
                "edible", Grammars.YES_NO, Dish::edible, "yes", "no for dressing that nobody may ever eat", "yes");
        static final Column<Dish, Money> COST =
                usual("cost", Grammars.MONEY, Dish::cost, "0", "cost of one copy beside its ingredients", "4.50");
        static final Column<Dish, Boolean> SOURCE = usual(
                "source",
                Grammars.oneOf("a source", List.of(true, false), bought -> bought ? "buy" : "make"),
                Dish::bought,
                "make",
                "bought ready and only finished here, or made" + NOT_USED,
                "make");
        static final Column<Dish, Integer> STORAGE = usual(
                        "storage",
                        Grammars.WHOLE,
                        Dish::storageUnits,
                        "1",
                        "room one copy takes, in units of the storage",
                        "1")
                .from("0", "1000");
        static final Column<Dish, Optional<String>> HELD_IN = optional(
                "held in",
                Grammars.STATION_NAME,
                Dish::heldIn,
                "nowhere",
                "storage in which copies wait for release after their last take",
                "fridge");
        static final Column<Dish, Boolean> CONTROLLED = usual(
                "time-temperature controlled",
                Grammars.YES_NO,
                Dish::timeTemperatureControlled,
                "yes",
                "whether it spoils when neither hot nor cold; no for bread, sugar, dressing",
                "yes");
        static final Column<Dish, Integer> CARRY = usual(
                        "carry minutes",
                        Grammars.MINUTES,
                        Dish::carryMinutes,
                        "0",
                        "to set it down at camera, beside the walk",
                        "1")
                .from("0", "240");
        static final Column<Dish, Integer> PER_WALK = usual(
                        "copies per walk",
                        Grammars.WHOLE,
                        Dish::copiesPerWalk,
                        "1",
                        "how many copies one person carries to set at a time, on a tray for example",
                        "4")
                .from("1", "100");
        static final Column<Dish, Double> BREAKAGE = usual(
                        "breakage", Grammars.SHARE, Dish::breakage, "0 %", "copies that break before camera", "5 %")
                .from("0 %", "90 %");
        static final Column<Dish, Double> SPOILAGE = usual(
                        "spoilage", Grammars.SHARE, Dish::spoilage, "0 %", "copies that spoil before camera", "2 %")
                .from("0 %", "90 %");

        static final Sheet<Dish> SHEET = new Sheet<>(
                        "dishes",
                        true,
                        "a dish",
                        Day::dishes,
                        List.of(
                                DISH,
                                NAME,
                                LOOK,
                                PEAK_FROM,
                                PEAK_TO,
                                USABLE_TO,
                                EDIBLE,
                                COST,
                                SOURCE,
                                STORAGE,
                                HELD_IN,
                                CONTROLLED,
                                CARRY,
                                PER_WALK,
                                BREAKAGE,
                                SPOILAGE),
                        row -> new Dish(
                                row.get(DISH),
                                row.get(NAME).orElse(row.get(DISH)),
                                look(row),
                                row.get(EDIBLE),
                                row.get(COST),
                                row.get(SOURCE),
                                row.get(STORAGE),
                                row.get(HELD_IN),
                                row.get(CONTROLLED),
                                row.get(CARRY),
                                row.get(PER_WALK),
                                row.get(BREAKAGE),
                                row.get(SPOILAGE)))
                .ascending(List.of(PEAK_FROM, PEAK_TO, USABLE_TO));

        private static Look look(Row row) {
            Look.Kind kind = row.get(LOOK);
            Optional<Integer> peakFrom = row.get(PEAK_FROM);
            if (kind == Look.Kind.TABLE) {
                if (row.get(PEAK_TO).isEmpty() || row.get(USABLE_TO).isEmpty()) {
                    throw new IllegalArgumentException((row.get(PEAK_TO).isEmpty() ? PEAK_TO : USABLE_TO).name()
                            + " is missing: if look is table, peak to and usable to must be given");
                }
                peakFrom = Optional.of(peakFrom.orElse(0));
            }
            return new Look(kind, peakFrom, row.get(PEAK_TO), row.get(USABLE_TO));
        }

        private Dishes() {}
    }

    static final class Looks {
        static final Column<LookProperty, String> DISH =
                required("dish", Grammars.NAME, LookProperty::dish, "the dish", "soup");
        static final Column<LookProperty, String> PROPERTY = required(
                "property",
                Grammars.TEXT,
                LookProperty::property,
                "a property that its looks are worked out from",
                "start");
        static final Column<LookProperty, String> VALUE = required(
                "value", Grammars.MEASURE, LookProperty::value, "a number in the property's unit, or a word", "75");

        static final Sheet<LookProperty> SHEET = new Sheet<>(
                "looks",
                false,
                "a property of a dish whose looks are worked out",
                Day::looks,
                List.of(DISH, PROPERTY, VALUE),
                row -> new LookProperty(row.get(DISH), row.get(PROPERTY), row.get(VALUE)));

        private Looks() {}
    }

    static final class Steps {
        static final Column<Step, String> DISH =
                required("dish", Grammars.NAME, Step::dish, "the dish it belongs to", "soup");
        static final Column<Step, String> STEP =
                required("step", Grammars.STEP_NAME, Step::id, "its name, like no other in the dish", "simmer");
        static final Column<Step, List<String>> AFTER = usual(
                "after",
                Grammars.NAMES,
                Step::after,
                "",
                "steps of the dish that must have ended before",
                "chop; sweat");
        static final Column<Step, Integer> LEAST_WAIT = usual(
                        "least wait", Grammars.MINUTES, Step::leastWait, "0", "to wait at least after those", "10")
                .in(MINUTES)
                .from("0", "20000");
        static final Column<Step, Optional<Integer>> MOST_WAIT = optional(
                        "most wait", Grammars.MINUTES, Step::mostWait, "no limit", "to wait at most after those", "120")
                .in(MINUTES)
                .from("0", "100000");
        static final Column<Step, Optional<Integer>> LOW = optional(
                        "minutes low",
                        Grammars.MINUTES,
                        (Step step) -> Optional.of(step.minutesLow()),
                        "as minutes likely",
                        "how long it takes if all goes well",
                        "8")
                .from("1", "10000");
        static final Column<Step, Integer> LIKELY = required(
                        "minutes likely",
                        Grammars.MINUTES,
                        Step::minutesLikely,
                        "how long it takes; the plan reckons with it",
                        "10")
                .from("1", "10000");
        static final Column<Step, Optional<Integer>> HIGH = optional(
                        "minutes high",
                        Grammars.MINUTES,
                        (Step step) -> Optional.of(step.minutesHigh()),
                        "as minutes likely",
                        "how long it takes if it goes badly",
                        "15")
                .from("1", "10000");
        static final Column<Step, Integer> PER_COPY = usual(
                        "minutes per copy",
                        Grammars.MINUTES,
                        Step::minutesPerCopy,
                        "0",
                        "further minutes for each copy of a batch",
                        "2")
                .from("0", "240");
        static final Column<Step, Optional<Integer>> BATCH = optional(
                        "batch", Grammars.WHOLE, Step::batchMost, "copy by copy", "most copies done together", "6")
                .in("copies")
                .from("1", "500");
        static final Column<Step, Integer> HANDS = usual(
                        "hands", Grammars.WHOLE, Step::hands, "0", "pairs of hands it takes", "1")
                .from("0", "4");
        static final Column<Step, Optional<String>> SKILL = optional(
                "skill", Grammars.NAME, Step::skill, "anybody can do it", "skill that those hands must have", "pastry");
        static final Column<Step, Optional<Integer>> HANDS_FIRST = optional(
                        "hands first",
                        Grammars.MINUTES,
                        Step::handsFirst,
                        "hands are on all the time, unless hands last is given",
                        "hands are on only for the first so many",
                        "2")
                .in(MINUTES)
                .from("0", "10000");
        static final Column<Step, Optional<Integer>> HANDS_LAST = optional(
                        "hands last",
                        Grammars.MINUTES,
                        Step::handsLast,
                        "hands are on all the time, unless hands first is given",
                        "hands are on only for the last so many",
                        "1")
                .in(MINUTES)
                .from("0", "10000");
        static final Column<Step, List<StationUse>> STATIONS = usual(
                "station",
                Grammars.STATION_USES,
                Step::stations,
                "",
                "stations it uses and how much of each; a bar between stations of which either will do",
                "hob:1; counter:2");
        static final Column<Step, Optional<Integer>> OVEN = optional(
                        "oven temperature",
                        Grammars.CELSIUS,
                        Step::ovenCelsius,
                        "no oven",
                        "temperature of the oven it uses",
                        "180")
                .in(CELSIUS)
                .from("30", "550");
        static final Column<Step, Boolean> NOISY =
                usual("noisy", Grammars.YES_NO, Step::noisy, "no", "whether it can be heard", "yes");
        static final Column<Step, Optional<String>> WAITS_IN = optional(
                "waits in",
                Grammars.STATION_NAME,
                Step::waitsIn,
                "nowhere in particular",
                "storage in which the copy waits for its next step",
                "fridge");
        static final Column<Step, Boolean> RAW = usual(
                "raw", Grammars.YES_NO, Step::raw, "no", "whether the food is still raw when it has ended", "yes");
        static final Column<Step, Optional<Double>> CORE = optional(
                        "core temperature",
                        Grammars.DECIMAL,
                        Step::coreCelsius,
                        "none to reach",
                        "core temperature to reach, by the thermometer",
                        "74")
                .in(CELSIUS)
                .from("-40", "150");
        static final Column<Step, List<String>> ANY_TIME_AFTER = usual(
                "any time after",
                Grammars.NAMES,
                Step::anyTimeAfter,
                "",
                "further steps of the dish that must have ended before, however long ago; no wait counts from them",
                "bake base");

        static final Sheet<Step> SHEET = new Sheet<>(
                        "steps",
                        true,
                        "a step of a dish",
                        Day::steps,
                        List.of(
                                DISH,
                                STEP,
                                AFTER,
                                LEAST_WAIT,
                                MOST_WAIT,
                                LOW,
                                LIKELY,
                                HIGH,
                                PER_COPY,
                                BATCH,
                                HANDS,
                                SKILL,
                                HANDS_FIRST,
                                HANDS_LAST,
                                STATIONS,
                                OVEN,
                                NOISY,
                                WAITS_IN,
                                RAW,
                                CORE,
                                ANY_TIME_AFTER),
                        row -> new Step(
                                row.get(DISH),
                                row.get(STEP),
                                row.get(AFTER),
                                row.get(LEAST_WAIT),
                                row.get(MOST_WAIT),
                                row.get(LOW).orElse(row.get(LIKELY)),
                                row.get(LIKELY),
                                row.get(HIGH).orElse(row.get(LIKELY)),
                                row.get(PER_COPY),
                                row.get(BATCH),
                                row.get(HANDS),
                                row.get(SKILL),
                                row.get(HANDS_FIRST),
                                row.get(HANDS_LAST),
                                row.get(STATIONS),
                                row.get(OVEN),
                                row.get(NOISY),
                                row.get(WAITS_IN),
                                row.get(RAW),
                                row.get(CORE),
                                row.get(ANY_TIME_AFTER)))
                .ascending(List.of(LEAST_WAIT, MOST_WAIT))
                .ascending(List.of(LOW, LIKELY, HIGH));

        private Steps() {}
    }

    static final class Ingredients {
        static final Column<Ingredient, String> DISH =
                required("dish", Grammars.NAME, Ingredient::dish, "the dish", "soup");
        static final Column<Ingredient, String> INGREDIENT =
                required("ingredient", Grammars.TEXT, Ingredient::name, "what it is", "cream");
        static final Column<Ingredient, Optional<String>> STEP = optional(
                "step",
                Grammars.NAME,
                Ingredient::step,
                "the first steps of the dish",
                "step that first needs it",
                "finish");
        static final Column<Ingredient, Double> QUANTITY = usual(
                        "quantity", Grammars.DECIMAL, Ingredient::quantity, "0", "for one copy" + NOT_USED, "0.2")
                .from("0", "999999999");
        static final Column<Ingredient, String> UNIT =
                usual("unit", Grammars.TEXT, Ingredient::unit, "", "unit of the quantity" + NOT_USED, "l");
        static final Column<Ingredient, Money> COST =
                usual("cost", Grammars.MONEY, Ingredient::cost, "0", "for one copy", "0.80");
        static final Column<Ingredient, List<String>> ALLERGENS =
                usual("allergens", Grammars.NAMES, Ingredient::allergens, "", "allergens in it", "milk");
        static final Column<Ingredient, String> SUPPLIER =
                usual("supplier", Grammars.TEXT, Ingredient::supplier, "", "who brings it" + NOT_USED, "market");
        static final Column<Ingredient, Optional<Moment>> ARRIVES = optional(
                "arrives", Clock.MOMENT, Ingredient::arrives, "there from the start", "when it is there", "07:30");

        static final Sheet<Ingredient> SHEET = new Sheet<>(
                "ingredients",
                false,
                "an ingredient of a dish",
                Day::ingredients,
                List.of(DISH, INGREDIENT, STEP, QUANTITY, UNIT, COST, ALLERGENS, SUPPLIER, ARRIVES),
                row -> new Ingredient(
                        row.get(DISH),
                        row.get(INGREDIENT),
                        row.get(STEP),
                        row.get(QUANTITY),
                        row.get(UNIT),
                        row.get(COST),
                        row.get(ALLERGENS),
                        row.get(SUPPLIER),
                        row.get(ARRIVES)));

        private Ingredients() {}
    }

    static final class Stations {
        static final Column<Station, String> STATION =
                required("station", Grammars.STATION_NAME, Station::id, "its short name, like no other", "hob");
        static final Column<Station, Station.Kind> KIND = required(
                "kind",
                Grammars.oneOf("a kind of station", List.of(Station.Kind.values()), Station.Kind::word),
                Station::kind,
                "what it is",
                "burners");
        static final Column<Station, Integer> CAPACITY = usual(
                        "capacity", Grammars.WHOLE, Station::capacity, "1", "how much of it there is at a time", "4")
                .from("1", "10000");
        static final Column<Station, String> UNIT =
                usual("unit", Grammars.TEXT, Station::unit, "", "what is counted", "burners");
        static final Column<Station, List<Span>> HOURS = usual(
                        "hours", Clock.SPANS, Station::hours, "", "when it can be used", "06:00-18:00")
                .blankMeaning("storage always, the rest in kitchen hours");
        static final Column<Station, String> PLACE =
                required("place", Grammars.STATION_NAME, Station::place, "where it stands (sheet places)", "kitchen");
        static final Column<Station, Double> HEAT_UP = usual(
                        "heat-up", Grammars.DECIMAL, Station::heatPerMinute, "10", "how fast an oven gets hotter", "12")
                .in("degrees C a minute")
                .above("0", "1000");
        static final Column<Station, Double> COOL_DOWN = usual(
                        "cool-down", Grammars.DECIMAL, Station::coolPerMinute, "5", "how fast an oven gets cooler", "4")
                .in("degrees C a minute")
                .above("0", "1000");
        static final Column<Station, Double> AMPS = usual(
                        "amps",
                        Grammars.DECIMAL,
                        Station::amps,
                        "0",
                        "current it draws: ovens and storage whenever they are open, the rest for each unit in use",
                        "13")
                .from("0", "1000");
        static final Column<Station, Optional<String>> CIRCUIT = optional(
                "circuit",
                Grammars.NAME,
                Station::circuit,
                "no limit",
                "circuit it is plugged into (sheet circuits)",
                "wall");

        static final Sheet<Station> SHEET = new Sheet<>(
                "stations",
                true,
                "a place to work or to keep food",
                Day::stations,
                List.of(STATION, KIND, CAPACITY, UNIT, HOURS, PLACE, HEAT_UP, COOL_DOWN, AMPS, CIRCUIT),
                row -> new Station(
                        row.get(STATION),
                        row.get(KIND),
                        row.get(CAPACITY),
                        row.get(UNIT),
                        row.get(HOURS),
                        row.get(PLACE),
                        row.get(HEAT_UP),
                        row.get(COOL_DOWN),
                        row.get(AMPS),
                        row.get(CIRCUIT)));

        private Stations() {}
    }

    static final class Circuits {
        static final Column<Circuit, String> CIRCUIT =
                required("circuit", Grammars.NAME, Circuit::id, "its short name, like no other", "wall");
        static final Column<Circuit, Double> VOLTS = required(
                        "volts", Grammars.DECIMAL, Circuit::volts, "its voltage", "230")
                .above("0", "1000");
        static final Column<Circuit, Double> AMPS = required(
                        "amps", Grammars.DECIMAL, Circuit::amps, "rating of its breaker", "16")
                .above("0", "1000");
        static final Column<Circuit, Double> FACTOR = usual(
                        "continuous factor",
                        Grammars.DECIMAL,
                        Circuit::continuousFactor,
                        "1.25",
                        "by how much a lasting load is counted higher; ask the electrician",
                        "1.25")
                .from("1", "3");

        static final Sheet<Circuit> SHEET = new Sheet<>(
                "circuits",
                false,
                "a power circuit",
                Day::circuits,
                List.of(CIRCUIT, VOLTS, AMPS, FACTOR),
                row -> new Circuit(row.get(CIRCUIT), row.get(VOLTS), row.get(AMPS), row.get(FACTOR)));

        private Circuits() {}
    }

    static final class People {
        static final Column<Person, String> PERSON =
                required("person", Grammars.NAME, Person::id, "name, like no other", "Ada");
        static final Column<Person, List<String>> SKILLS = usual(
                "skills",
                Grammars.NAMES,
                Person::skills,
                "",
                "what this person can do beyond what anybody can",
                "pastry; carving");
        static final Column<Person, List<Span>> HOURS = usual(
                        "hours", Clock.SPANS, Person::shifts, "", "when this person works", "06:00-16:00")
                .blankMeaning("in kitchen hours");
        static final Column<Person, List<Absence>> AWAY = usual(
                "away",
                Grammars.ABSENCES,
                Person::away,
                "",
                "when not in the kitchen though on shift: a span, or a setup as hand double",
                "setup 3; 13:00-14:00");
        static final Column<Person, Money> COST = usual(
                "cost an hour", Grammars.MONEY, Person::costPerHour, "0", "what an hour of this person costs", "32");

        static final Sheet<Person> SHEET = new Sheet<>(
                "people",
                true,
                "a pair of hands",
                Day::people,
                List.of(PERSON, SKILLS, HOURS, AWAY, COST),
                row -> new Person(row.get(PERSON), row.get(SKILLS), row.get(HOURS), row.get(AWAY), row.get(COST)));

        private People() {}
    }

    static final class Cast {
        static final Column<Diner, String> WHO =
                required("who", Grammars.NAME, Diner::id, "who eats on camera, like no other", "Mina");
        static final Column<Diner, List<String>> ALLERGIES =
                usual("allergies", Grammars.NAMES, Diner::allergies, "", "allergens to be kept away", "nuts; milk");
        static final Column<Diner, String> DIET = usual(
                "diet",
                Grammars.TEXT,
                Diner::diet,
                "",
                "what else to mind; what leaves out an allergen as in no milk",
                "vegetarian");
        static final Column<Diner, Boolean> SWALLOWS = usual(
                "swallows",
                Grammars.YES_NO,
                Diner::swallows,
                "yes",
                "no if everything is spat out after the take" + NOT_USED,
                "no");

        static final Sheet<Diner> SHEET = new Sheet<>(
                "cast",
                false,
                "someone who eats on camera",
                Day::cast,
                List.of(WHO, ALLERGIES, DIET, SWALLOWS),
                row -> new Diner(row.get(WHO), row.get(ALLERGIES), row.get(DIET), row.get(SWALLOWS)));

        private Cast() {}
    }

    static final class Places {
        static final Column<Place, String> PLACE =
                required("place", Grammars.STATION_NAME, Place::id, "its short name, like no other", "kitchen");
        static final Column<Place, Map<String, Integer>> WALK = usual(
                        "walk",
                        Grammars.WALK,
                        Place::walkMinutes,
                        "",
                        "other places and the minutes to walk there; the way back takes as long",
                        "set:4; barn:12")
                .in(MINUTES);
        static final Column<Place, List<Span>> HOURS = usual(
                        "hours", Clock.SPANS, Place::hours, "", "when work is possible here", "06:00-12:30")
                .blankMeaning("always");
        static final Column<Place, Boolean> HEARD = usual(
                "heard on set",
                Grammars.YES_NO,
                Place::heardOnSet,
                "yes",
                "whether noise made here disturbs a silent set",
                "no");

        static final Sheet<Place> SHEET = new Sheet<>(
                "places",
                true,
                "a kitchen, a set, or both",
                Day::places,
                List.of(PLACE, WALK, HOURS, HEARD),
                row -> new Place(row.get(PLACE), row.get(WALK), row.get(HOURS), row.get(HEARD)));

        private Places() {}
    }

    /** All sheets, {@code day} first. */
    static final List<Sheet<?>> ALL = List.of(
            Facts.SHEET,
            Setups.SHEET,
            Needs.SHEET,
            Dishes.SHEET,
            Looks.SHEET,
            Steps.SHEET,
            Ingredients.SHEET,
            Stations.SHEET,
            Circuits.SHEET,
            People.SHEET,
            Cast.SHEET,
            Places.SHEET);

    /** Whether {@code name}, however people write it, is that of a sheet. */
    static boolean isSheet(String name) {
        String normal = Names.normal(name);
        return ALL.stream().anyMatch(sheet -> sheet.name().equals(normal));
    }
}
