package platecall.cli;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.day.Diner;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.ProbeReading;
import platecall.day.Step;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.safety.CircuitLoad;
import platecall.safety.ClockReading;
import platecall.safety.Container;
import platecall.safety.Cooking;
import platecall.safety.Cooling;
import platecall.safety.DeclaredAllergens;
import platecall.safety.Electricity;
import platecall.safety.FoodKind;
import platecall.safety.HandContact;
import platecall.safety.JudgedReadings;
import platecall.safety.Labour;
import platecall.safety.Limit;
import platecall.safety.Profile;
import platecall.safety.Roast;
import platecall.safety.SafetyClock;
import platecall.safety.Sanitizing;
import platecall.safety.Stay;
import platecall.safety.Undercooked;
import platecall.safety.WorkingTime;
import platecall.units.Moment;
import platecall.units.Span;

/** What the command safety prints, section by section. */
final class SafetyPage {

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("MM-dd ", Locale.ROOT);

    /** What the limits of a profile bound, by their names in limits.csv. */
    private static final Map<String, String> LIMITS = Map.ofEntries(
            Map.entry("hot", "core of food held hot"),
            Map.entry("roast hot", "core of a whole roast held hot"),
            Map.entry("cold", "food held cold"),
            Map.entry("shell egg air", "air around raw shell eggs"),
            Map.entry("out hot", "time between the hot and the cold limit, after hot"),
            Map.entry("out cold", "time between the hot and the cold limit, after cold"),
            Map.entry("occasions", "how often it may stand out"),
            Map.entry("six hours", "the same after cold, if it stays cool enough for six hours"),
            Map.entry("six hours warmest", "cool enough for six hours"),
            Map.entry("cut start", "cut produce or a pack just opened, when its time begins"),
            Map.entry("reheat", "core of what is heated up again to be held hot"),
            Map.entry("reheat seconds", "that core held"),
            Map.entry("reheat minutes", "time to heat it up again"),
            Map.entry("reheat ready", "core of ready-to-eat food from a sealed pack, heated up"),
            Map.entry("thaw water", "running water to thaw in"),
            Map.entry("thaw raw", "raw food above the cold limit while it thaws under water"));

    private final Day day;
    private final Plan plan;
    private final List<Breach> broken;
    private final List<String> remarks;
    private final Profile profile;
    private final List<ClockReading> clocks;
    private final List<JudgedReadings> readings;
    private final List<String> lines = new ArrayList<>();

    /**
     * @param day a checked day, whose safety profile is known
     * @param broken breaches of the rules of safety
     * @param remarks what may go wrong with what people eat although no rule is broken, one sentence each
     * @param rows thermometer readings that fit the plan; none if nobody has any
     */
    SafetyPage(Day day, Plan plan, List<Breach> broken, List<String> remarks, List<ProbeReading> rows) {
        this.day = day;
        this.plan = plan;
        this.broken = broken;
        this.remarks = remarks;
        profile = SafetyClock.profile(day).orElseThrow();
        clocks = SafetyClock.of(day, plan);
        readings = JudgedReadings.of(day, plan, rows, this::clock);
    }

    /** Whether readings say that something isn't safe that the plan has somebody eat. */
    boolean harmful() {
        return readings.stream().anyMatch(JudgedReadings::harmful);
    }

    List<String> lines() {
        line(String.format(
                Locale.ROOT,
                "%s: cold at most %s °C, hot at least %s °C; between them %s min after hot, %s min after cold at most.",
                profile.title(),
                number(profile.cold().value()),
                number(profile.hot().value()),
                profile.outHot().mostWhole(),
                profile.outCold().mostWhole()));
        breaches();
        readings();
        clocks();
        containers();
        eaters();
        contacts();
        circuits();
        hours();
        limits();
        title("Cautions");
        line(
                "Reckoned from the plan, not measured: local code, a thermometer and licensed practice decide. A core that the"
                        + " plan states must be read on a probe. What is for looks only must never reach an eater; what the"
                        + " sheets do not say about allergens nobody can check here.");
        return lines;
    }

    private void breaches() {
        title("Broken rules");
        if (broken.isEmpty()) {
            line(
                    remarks.isEmpty()
                            ? "None: no clock runs over, nothing raw beside what is ready, nobody eats what he or she must not."
                            : "None that these sheets tell, but look into this first:");
        }
        remarks.forEach(remark -> line("Remark: " + remark));
        broken.forEach(breach -> line(String.format(
                Locale.ROOT,
                "BROKEN  %s: %s. %s",
                breach.rule().sentence(),
                breach.rule().size(breach.amount()),
                breach.what())));
        if (profile.isFoodCode()) {
            Undercooked.of(day).stream()
                    .filter(food -> food.kind() == FoodKind.INTACT)
                    .flatMap(food ->
                            Roast.holdSeconds(food.coreCelsius()).stream().mapToObj(seconds -> roast(food, seconds)))
                    .distinct()
                    .forEach(this::line);
        }
    }

    /** The table of whole roasts, which the rule leaves out because no sheet tells a roast from a cut. */
    private String roast(Undercooked food, int seconds) {
        return dishName(food.need().dish()) + ": a whole roast of beef, pork, lamb or ham is done at "
                + number(food.coreCelsius()) + " °C" + held(seconds) + " (" + Roast.source()
                + "). Whether it is one, nobody can tell from the sheets.";
    }

    private void readings() {
        if (readings.isEmpty()) {
            return;
        }
        title("Readings");
        Map<String, List<JudgedReadings>> alike = readings.stream()
                .sorted(Comparator.comparing(JudgedReadings::grade).reversed())
                .collect(Collectors.groupingBy(
                        judged -> judged.copy().need() + judged.what() + judged.words(),
                        LinkedHashMap::new,
                        Collectors.toList()));
        alike.values().forEach(same -> {
            JudgedReadings first = same.get(0);
            line(String.format(
                    Locale.ROOT,
                    "%-8s  %s, %s: %s",
                    first.grade().word(),
                    name(
                            first.copy(),
                            same.stream().map(judged -> judged.copy().number()).toList()),
                    first.what().word(),
                    first.words()));
        });
        line("They count as they are written, on straight lines between them: a calibrated thermometer and local codes"
                + " decide.");
    }

    private void clocks() {
        title("Eaten and at risk");
        if (clocks.isEmpty()) {
            line("Nobody eats anything that is time-and-temperature controlled.");
        }
        for (ClockReading reading : clocks) {
            line(name(reading.copy()) + ": eaten from " + clock(reading.firstBite()) + ", discard by "
                    + clock(reading.discardBy()) + "."
                    + (reading.discardedBeforeEaten() ? " MUST NOT BE EATEN." : ""));
            wrap("    ", reading.why() + (reading.minutesOver() > 0 ? ", OVER BY " + reading.minutesOver() : ""));
            wrap("    ", reading.path().stream().map(this::stay).collect(Collectors.joining(", ")));
        }
    }

    private String stay(Stay stay) {
        return clock(stay.span().start()) + " " + stay.what() + " ("
                + stay.where().word() + " " + stay.span().minutes() + " min)";
    }

    private void containers() {
        title("Containers, each to be thrown away if it stands out that long after it has left its store");
        for (Container container : Container.of(day, plan)) {
            line(container.station() + ", " + clock(container.span()) + ": "
                    + dishName(container.work().dish())
                    + (day.dish(container.work().dish())
                                    .map(dish -> dish.edible())
                                    .orElse(true)
                            ? ""
                            : ", DO NOT EAT,")
                    + " after "
                    + container.work().step() + ", " + container.copies().size()
                    + (container.copies().size() == 1 ? " copy" : " copies") + ", "
                    + container
                            .discard()
                            .map(discard -> discard.words(clock(discard.by())))
                            .orElse("no clock runs"));
        }
    }

    /** Allergens of each dish against who eats it. */
    private void eaters() {
        title("Who eats what");
        for (Need need : day.needs()) {
            if (need.eatenBy().isEmpty()) {
                continue;
            }
            List<Ingredient> ingredients = day.ingredientsIn(need);
            List<String> allergens = ingredients.stream()
                    .flatMap(ingredient -> ingredient.allergens().stream())
                    .distinct()
                    .sorted()
                    .toList();
            line(dishName(need.dish()) + " for setup " + need.setup() + " contains "
                    + (allergens.isEmpty() ? "no allergen that the sheets name" : String.join(", ", allergens))
                    + "; eaten by "
                    + need.eatenBy().stream()
                            .map(eater -> eater(eater, ingredients))
                            .collect(Collectors.joining(", ")));
            declared(allergens);
        }
    }

    /** Which of them the law has declared. */
    private void declared(List<String> allergens) {
        Set<String> american = DeclaredAllergens.US.among(allergens);
        Set<String> european = DeclaredAllergens.EU.among(allergens);
        if (!american.isEmpty() || !european.isEmpty()) {
            wrap(
                    "    ",
                    "declared in the US (list of nine): " + names(american) + "; in the EU and UK (list of fourteen): "
                            + names(european));
        }
    }

    private static String names(Set<String> allergens) {
        return allergens.isEmpty() ? "none" : String.join(", ", allergens);
    }

    private String eater(String id, List<Ingredient> ingredients) {
        Optional<Diner> diner = day.diner(id);
        List<String> allergies = diner.map(Diner::allergies).orElse(List.of());
        String diet = diner.map(it -> it.diet().strip())
                .filter(word -> !word.isEmpty())
                .map(word -> ", eats " + word)
                .orElse("");
        boolean harmful = diner.map(it -> !it.harmedBy(ingredients).isEmpty()).orElse(false);
        return id
                + " (" + (allergies.isEmpty() ? "no allergy named" : "allergic to " + String.join(", ", allergies))
                + diet + ")"
                + (harmful ? " MUST NOT EAT IT" : "");
    }

    private void contacts() {
        Map<String, List<String>> steps = new LinkedHashMap<>();
        HandContact.of(day)
                .forEach(contact -> steps.computeIfAbsent(contact.step().dish(), dish -> new ArrayList<>())
                        .add(contact.step().id()));
        title("Gloves or tongs, no bare hands");
        if (steps.isEmpty()) {
            line("No step is done by hand on food that is eaten without being heated again.");
        }
        steps.forEach((dish, names) -> line(dishName(dish) + ": " + String.join(", ", names)));
    }

    private void circuits() {
        title("Circuits");
        if (day.circuits().isEmpty()) {
            line("The day names none; ask an electrician what the sockets carry.");
        }
        for (CircuitLoad load : CircuitLoad.of(day, plan)) {
            line(String.format(
                    Locale.ROOT,
                    "%s: %s A at most, from %s; carries %s A, %d W, for hours (%s A breaker over %s)%s",
                    load.circuit().id(),
                    number(load.mostAmps()),
                    clock(load.from()),
                    number(load.circuit().usableAmps()),
                    (int) (Electricity.watts(
                                    load.circuit().volts(), load.circuit().usableAmps())
                            + 1e-6),
                    number(load.circuit().amps()),
                    number(load.circuit().continuousFactor()),
                    load.carried() ? "" : " TOO MUCH"));
        }
        if (day.circuits().stream().anyMatch(circuit -> circuit.continuousFactor() == Electricity.CONTINUOUS_FACTOR)) {
            line("The factor " + number(Electricity.CONTINUOUS_FACTOR)
                    + " is that of loads of three hours or more (NEC 210.19(A)(1), 210.20(A));"
                    + " an electrician decides.");
        }
    }

    /** How long people work, and what is owed to them by some laws. */
    private void hours() {
        title("Hours of work");
        List<WorkingTime> times = WorkingTime.of(day, plan);
        if (times.isEmpty()) {
            line("Nobody does anything in this plan.");
            return;
        }
        for (int i = 0; i < times.size(); i++) {
            WorkingTime time = times.get(i);
            int rest = Labour.motionPictureRestMinutes(time.minutes());
            Moment next = Labour.europeanCallFrom(time.span().end());
            boolean tooSoon = i + 1 < times.size()
                    && times.get(i + 1).person().equals(time.person())
                    && times.get(i + 1).span().start().isBefore(next);
            line(time.person() + ": " + clock(time.span()) + ", " + hoursAndMinutes(time.minutes())
                    + breaks(time.breaks())
                    + (rest == 0 ? "" : "; pauses " + rest + " min") + "; next call from " + clock(next)
                    + (tooSoon ? ", but he or she is busy again before that" : ""));
            owed(time).forEach(text -> wrap("    ", text));
        }
        line(
                "From the first to the last step or walk to set of each in this plan; ovens to set, food to bring back, setting up, clearing"
                        + " and the way home come on top. Breaks are meal breaks, hours between shifts and absences by the clock."
                        + " Next calls leave eleven hours of rest (Directive 2003/88/EC, Art. 3); pauses besides are those of"
                        + " film crews in California (IWC Wage Order 12-2001). The day's own rule of meals is what is planned by;"
                        + " which law holds, others decide.");
    }

    private String breaks(List<Span> breaks) {
        return breaks.isEmpty()
                ? " without a break"
                : " besides breaks at " + breaks.stream().map(this::clock).collect(Collectors.joining(" and "));
    }

    /** What a person would be owed beyond what is planned, by law. */
    private List<String> owed(WorkingTime time) {
        List<String> texts = new ArrayList<>();
        int missing = time.mealsMissingInCalifornia();
        if (missing > 0) {
            texts.add("California Labor Code 512(a): " + (missing == 1 ? "one meal" : missing + " meals") + " more"
                    + (time.missingMealsMayBeDropped() ? ", unless both sides agree to go without" : ""));
        }
        time.filmCrewMealMissedBy()
                .ifPresent(by -> texts.add("film crews in California, IWC Wage Order 12-2001: a meal by " + clock(by)));
        if (time.breakMinutesMissingInBritain() > 0) {
            texts.add("UK Working Time Regulations 1998, reg. 12: a break of "
                    + Labour.britishBreakMinutes(time.minutes(), false) + " min");
        }
        return texts;
    }

    private static String hoursAndMinutes(int minutes) {
        return minutes < 60
                ? minutes + " min"
                : minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }

    private void limits() {
        title("Limits of this profile, each with its source");
        profile.limits()
                .forEach((name, limit) -> line(LIMITS.getOrDefault(name, name) + ": " + amount(limit) + " ("
                        + source(limit.source(), limit.edition()) + ")"));
        Map<String, List<Cooking>> cores = profile.cooking().stream()
                .collect(Collectors.groupingBy(SafetyPage::kinds, LinkedHashMap::new, Collectors.toList()));
        cores.forEach((kinds, either) -> line("core of raw food that is cooked, " + kinds + ": "
                + either.stream().map(SafetyPage::core).collect(Collectors.joining(", or "))));
        for (Cooling.Stage stage : profile.cooling()) {
            line("cooled from " + number(stage.fromCelsius()) + " to " + number(stage.toCelsius()) + " °C: "
                    + amount(stage.minutes()) + " ("
                    + source(stage.minutes().source(), stage.minutes().edition())
                    + ")");
        }
        if (profile.isFoodCode() && day.steps().stream().anyMatch(Step::raw)) {
            line("what touched raw food, once it is washed: water of at least " + number(Sanitizing.HAND_WATER_CELSIUS)
                    + " °C (4-501.111; value from memory) or a chemical for " + Sanitizing.SECONDS + " s, chlorine for "
                    + Sanitizing.CHLORINE_SECONDS + " s, or a machine that heats its surface to "
                    + number(Sanitizing.MACHINE_CELSIUS) + " °C (FDA Food Code 4-703.11)");
        }
    }

    private static String kinds(Cooking core) {
        return core.kinds().stream().sorted().map(FoodKind::words).collect(Collectors.joining(", "));
    }

    private static String core(Cooking core) {
        return "at least " + number(core.celsius()) + " °C" + held(core.seconds()) + " ("
                + source(core.source(), core.edition()) + ")";
    }

    private static String amount(Limit limit) {
        String bound = switch (limit.bound()) {
            case LEAST -> "at least ";
            case MOST -> "at most ";
            case UNDER -> "less than ";
        };
        String unit = limit.unit().replace("celsius", "°C");
        return bound + number(limit.value()) + " " + (limit.value() == 1 ? unit.replaceAll("s$", "") : unit);
    }

    private static String held(int seconds) {
        return seconds == 0 ? "" : ", held for " + (seconds % 60 == 0 ? seconds / 60 + " min" : seconds + " s");
    }

    private static String source(String source, String edition) {
        return source.contains(edition) ? source : source + ", " + edition;
    }

    private void title(String title) {
        lines.add("");
        lines.add(title);
    }

    private void line(String text) {
        wrap("  ", text);
    }

    /** Words on lines that are not too long; those after the first are set in by two more. */
    private void wrap(String indent, String text) {
        lines.addAll(Wrapped.lines(indent, indent + "  ", text));
    }

    private String dishName(String id) {
        return day.dish(id).map(Dish::name).orElse(id);
    }

    private String name(PlannedCopy copy) {
        return name(copy, List.of(copy.number()));
    }

    /** The same of several copies of a need. */
    private String name(PlannedCopy copy, List<Integer> numbers) {
        return dishName(copy.dish())
                + numbers.stream().map(number -> " #" + number).collect(Collectors.joining(","))
                + (copy.part().equals("hero") ? "" : " (" + copy.part() + ")") + " for setup " + copy.setup();
    }

    private String clock(Span span) {
        return clock(span.start()) + " to " + clock(span.end());
    }

    private String clock(Moment moment) {
        var local = moment.in(day.facts().zone());
        return (local.toLocalDate().equals(day.facts().date()) ? "" : local.format(DATE))
                + moment.clock(day.facts().zone());
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value).replaceAll("\\.?0+$", "");
    }
}
