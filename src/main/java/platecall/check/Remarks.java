package platecall.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import platecall.day.Absence;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Place;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.day.Spelling;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.Use;

/** What can be planned, but may not be meant. */
final class Remarks {

    private static final double BOILING_CELSIUS = 100;
    /** A roast that is held longest, 54.4 °C (FDA Food Code 3-401.11(B)). */
    private static final double LEAST_CORE_CELSIUS = 54.4;

    /** Poultry well done; bread is done above. Common practice, no source. */
    private static final int MOST_CORE_CELSIUS = 85;
    /** Common practice, no source: what an oven of a kitchen reaches. */
    private static final int HOT_OVEN_CELSIUS = 300;
    /** Common practice, no source. */
    private static final Pattern NOT_FOOD = Pattern.compile("\\b(not food|inedible|not edible|varnish(ed)?|lacquer(ed)?"
            + "|resin|glue(d)?|plaster|plastic|silicone|prop|fake|dummy|paint(ed)?|hairspray)\\b");

    /** Own choice, no source: below, a setup is late more often than not. */
    private static final double LEAST_PROMISE = 0.5;

    private static final double A_PERCENT = 0.01;

    /** Own choice, no source: nobody keeps more spares than plates that are used. */
    private static final int FAR_TOO_MANY = 2;

    private final Day day;
    private final Recipes recipes;
    private final Map<String, Integer> usable;
    private final Findings remarks;

    Remarks(Day day, Recipes recipes, Map<String, Integer> usable, Findings remarks) {
        this.day = day;
        this.recipes = recipes;
        this.usable = usable;
        this.remarks = remarks;
    }

    void check() {
        shares();
        setups();
        twoPlaces();
        needs();
        unused();
        nobody();
        MissedDates missed = new MissedDates(day);
        missed.tell(remarks);
        for (int row = 0; row < day.people().size(); row++) {
            Person person = day.people().get(row);
            if (day.hoursOf(person).isEmpty() && !missed.tells(Sheet.PEOPLE, row)) {
                remarks.add(
                        Sheet.PEOPLE,
                        row,
                        "person",
                        person.id(),
                        "is never in the kitchen in kitchen hours",
                        "Maybe check the hours and absences.");
            }
        }
        walks();
        twice();
        rawKeptBesideReady();
        temperatures();
        uncontrolled();
        dressing();
        skills();
    }

    /** A share of one where percent are asked for, or the other way round. */
    private void shares() {
        double promise = day.facts().promise();
        if (promise < LEAST_PROMISE) {
            remarks.add(
                    Sheet.DAY,
                    -1,
                    "promise",
                    percent(promise) + " %",
                    "promises that a setup is late more often than not",
                    promise > 0 && promise <= A_PERCENT ? "Maybe " + percent(100 * promise) + " %." : "Maybe 95 %.");
        }
        double humidity = day.facts().setHumidityPercent();
        if (humidity > 0 && humidity < 1) {
            remarks.add(
                    Sheet.DAY,
                    -1,
                    "humidity",
                    Wording.number(humidity),
                    "is less than 1 %, drier than any air",
                    "Maybe " + percent(humidity) + ".");
        }
    }

    private static String percent(double share) {
        return Wording.number(100 * share);
    }

    /** Dishes that nobody makes, and those that nobody finishes: food rests by itself, but doesn't get on a plate so. */
    private void nobody() {
        Set<List<String>> told = new HashSet<>();
        for (Need need : day.needs()) {
            if (!recipes.sound(need.dish())) {
                continue;
            }
            List<Step> steps = day.stepsTo(need.dish(), need.stage());
            Optional<Step> last =
                    day.step(need.dish(), need.stage()).filter(step -> step.hands() == 0 && told.add(Work.key(step)));
            if (last.isEmpty()) {
                continue;
            }
            boolean byNobody = steps.stream().allMatch(step -> step.hands() == 0);
            if (byNobody || last.get().stations().isEmpty()) {
                remarks.add(
                        Sheet.STEPS,
                        day.steps().indexOf(last.get()),
                        "step",
                        need.stage(),
                        byNobody
                                ? "is the last of " + need.dish()
                                        + ", of which no step takes any hands: nobody makes it"
                                : "is the last of " + need.dish()
                                        + ", but takes no hands and no station: nobody is planned to do it",
                        "Maybe 1 in column hands.");
            }
        }
    }

    /** Stores in which food at risk that is raw at camera is kept for its release, and food that is ready waits or is kept. */
    private void rawKeptBesideReady() {
        Set<String> ready = new HashSet<>();
        day.steps().stream()
                .filter(step -> !step.raw())
                .forEach(step -> step.waitsIn().ifPresent(ready::add));
        for (Need need : day.needs()) {
            if (!isRaw(need)) {
                day.dish(need.dish()).flatMap(Dish::heldIn).ifPresent(ready::add);
            }
        }
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            Optional<String> store = day.dish(need.dish()).flatMap(Dish::heldIn).filter(ready::contains);
            boolean atRisk =
                    day.dish(need.dish()).map(Dish::timeTemperatureControlled).orElse(false);
            if (atRisk && isRaw(need) && store.isPresent()) {
                remarks.add(
                        Sheet.NEEDS,
                        row,
                        "stage",
                        need.stage(),
                        "is raw, and " + need.dish() + " is kept for release in " + store.get()
                                + ", where food that is ready is as well",
                        "Maybe cover it and keep it lowest, or a dish of its own that is held elsewhere.");
            }
        }
    }

    private boolean isRaw(Need need) {
        return day.step(need.dish(), need.stage()).map(Step::raw).orElse(false);
    }

    /** Degrees that are likelier in Fahrenheit. */
    private void temperatures() {
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            if (step.coreCelsius().orElse(0.0) > BOILING_CELSIUS) {
                hotterThan(row, "core temperature", step.coreCelsius().get(), "food with water in it gets inside");
            }
            if (step.ovenCelsius().orElse(0) > HOT_OVEN_CELSIUS) {
                hotterThan(row, "oven temperature", step.ovenCelsius().get(), "most ovens get");
            }
        }
    }

    private void hotterThan(int row, String column, double celsius, String what) {
        long meant = Math.round((celsius - 32) / 1.8);
        remarks.add(
                Sheet.STEPS,
                row,
                column,
                Wording.number(celsius),
                "is hotter than " + what + "; in degrees Fahrenheit it would be " + meant + " °C",
                "Maybe " + meant + ".");
    }

    /** Eaten food that is cooked through as meat, fish and eggs are, but for which no clock runs. */
    private void uncontrolled() {
        Set<String> eaten = new HashSet<>();
        day.needs().stream().filter(need -> !need.eatenBy().isEmpty()).forEach(need -> eaten.add(need.dish()));
        for (int row = 0; row < day.dishes().size(); row++) {
            int index = row;
            Dish dish = day.dishes().get(row);
            if (dish.timeTemperatureControlled() || !eaten.contains(dish.id())) {
                continue;
            }
            Optional<Step> cooked = day.stepsOf(dish.id()).stream()
                    .filter(step -> step.coreCelsius()
                            .filter(celsius -> celsius >= LEAST_CORE_CELSIUS && celsius <= MOST_CORE_CELSIUS)
                            .isPresent())
                    .findFirst();
            cooked.ifPresent(step -> remarks.add(
                    Sheet.DISHES,
                    index,
                    "time-temperature controlled",
                    "no",
                    "but its step " + step.id() + " has a core temperature as meat, fish and eggs have it, and without "
                            + "yes no clock runs for how long it may stand",
                    "Maybe yes."));
        }
    }

    /** Food by its cell, but not by what it is called or made of. */
    private void dressing() {
        for (int row = 0; row < day.dishes().size(); row++) {
            Dish dish = day.dishes().get(row);
            Stream<String> names = Stream.concat(
                    Stream.of(dish.id(), dish.name()),
                    day.ingredients().stream()
                            .filter(ingredient -> ingredient.dish().equals(dish.id()))
                            .map(Ingredient::name));
            Optional<String> tells = names.filter(name ->
                            NOT_FOOD.matcher(name.toLowerCase(Locale.ROOT)).find())
                    .findFirst();
            if (dish.edible() && tells.isPresent()) {
                remarks.add(
                        Sheet.DISHES,
                        row,
                        "edible",
                        "yes",
                        "but [" + tells.get()
                                + "] sounds like nothing to eat, and only what is not edible is marked so",
                        "Maybe no.");
            }
        }
    }

    /** Skills that nothing asks for, but nearly: a slip of the pen leaves the work to others. */
    private void skills() {
        Set<String> wanted = new LinkedHashSet<>();
        day.steps().forEach(step -> step.skill().ifPresent(wanted::add));
        for (int row = 0; row < day.people().size(); row++) {
            for (String skill : day.people().get(row).skills()) {
                Optional<String> meant = skill.indexOf(',') >= 0
                        ? Optional.of("Maybe " + Wording.withSemicolons(skill) + ".")
                        : Spelling.nearest(skill, wanted).map(near -> "Did you mean " + near + "?");
                if (!wanted.contains(skill) && meant.isPresent()) {
                    remarks.add(Sheet.PEOPLE, row, "skills", skill, "is a skill that no step asks for", meant.get());
                }
            }
        }
    }

    private void setups() {
        Set<String> served = new HashSet<>();
        day.needs().forEach(need -> served.add(need.setup()));
        for (int row = 0; row < day.setups().size(); row++) {
            int index = row;
            Setup setup = day.setups().get(row);
            if (!served.contains(setup.id())) {
                remarks.add(Sheet.SETUPS, row, "setup", setup.id(), "wants no food", "Maybe add it to sheet needs.");
            }
            if (setup.countShot() > 0) {
                remarks.add(
                        Sheet.SETUPS,
                        row,
                        "takes shot",
                        String.valueOf(setup.countShot()),
                        "is what replan goes by; plan makes food for these takes all the same",
                        "Maybe replan with the plan in hand.");
            }
            if (setup.release() instanceof Release.At at
                    && at.moment().isBefore(setup.shooting().end())
                    && !at.moment().isBefore(setup.call())) {
                remarks.add(
                        Sheet.SETUPS,
                        row,
                        "release",
                        Wording.clock(day, at.moment()),
                        "is before its last take at worst has ended, at "
                                + Wording.clock(day, setup.shooting().end()),
                        "Maybe at end.");
            }
            if (setup.release() instanceof Release.After after) {
                day.setup(after.setup())
                        .filter(other ->
                                other.shooting().end().isBefore(setup.shooting().end()))
                        .ifPresent(other -> remarks.add(
                                Sheet.SETUPS,
                                index,
                                "release",
                                "after setup " + other.id(),
                                "is over before this setup is, at "
                                        + Wording.clock(day, other.shooting().end()),
                                "Maybe a later setup, or at end."));
            }
            for (Setup other : day.setups()) {
                boolean next = other.call().isAfter(setup.call())
                        || other.call().equals(setup.call()) && day.setups().indexOf(other) > row;
                if (next
                        && other.place().equals(setup.place())
                        && setup.shooting().overlaps(other.shooting())) {
                    remarks.add(
                            Sheet.SETUPS,
                            row,
                            "call",
                            Wording.clock(day, setup.call()),
                            "lasts until " + Wording.clock(day, setup.shooting().end()) + " at worst, but setup "
                                    + other.id() + " is called to the same place at "
                                    + Wording.clock(day, other.call()),
                            "Maybe fine if the takes go well.");
                    break;
                }
            }
        }
    }

    /**
     * Somebody who is wanted in a setup.
     *
     * @param as what for: {@code eats in}
     */
    private record Wanted(String who, String as, Setup setup, Sheet sheet, int row, String column) {

        private String words(Day day) {
            return as + " setup " + setup.id() + " (" + setup.place() + ", " + Wording.clock(day, setup.shooting())
                    + ")";
        }
    }

    /** Hand doubles and eaters who are wanted at two places at a time. */
    private void twoPlaces() {
        List<Wanted> all = new ArrayList<>();
        for (int row = 0; row < day.people().size(); row++) {
            Person person = day.people().get(row);
            for (Absence absence : person.away()) {
                if (absence instanceof Absence.HandDouble handDouble) {
                    wanted(all, person.id(), "is hand double in", handDouble.setup(), Sheet.PEOPLE, row, "away");
                }
            }
        }
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            for (String eater : need.eatenBy()) {
                wanted(all, eater, "eats in", need.setup(), Sheet.NEEDS, row, "eaten by");
            }
        }
        for (int i = 0; i < all.size(); i++) {
            for (Wanted other : all.subList(i + 1, all.size())) {
                atOnce(all.get(i), other);
            }
        }
    }

    private void wanted(List<Wanted> all, String who, String as, String setup, Sheet sheet, int row, String column) {
        boolean known = all.stream()
                .anyMatch(one -> one.who().equals(who) && one.setup().id().equals(setup));
        if (!known) {
            day.setup(setup).ifPresent(there -> all.add(new Wanted(who, as, there, sheet, row, column)));
        }
    }

    private void atOnce(Wanted one, Wanted other) {
        if (one.who().equals(other.who())
                && !one.setup().place().equals(other.setup().place())
                && one.setup().shooting().overlaps(other.setup().shooting())) {
            boolean early = !other.setup().call().isBefore(one.setup().call());
            Wanted first = early ? one : other;
            Wanted then = early ? other : one;
            boolean inTime = !first.setup()
                    .rollOf(first.setup().takesLikely())
                    .isAfter(then.setup().call());
            remarks.add(
                    other.sheet(),
                    other.row(),
                    other.column(),
                    other.who(),
                    first.words(day) + " and " + then.words(day) + ", which overlap at worst",
                    (inTime ? "Maybe fine if the takes go well, or" : "Maybe") + " somebody else in one of them.");
        }
    }

    private void needs() {
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            Setup setup = day.setup(need.setup()).orElse(null);
            if (setup == null) {
                continue;
            }
            int likely = CameraTime.copiesFor(need, setup.takesLikely());
            String extra = need.extraLooks() > 0 ? " and extra looks" : "";
            if (need.copies().orElse(likely) < likely) {
                remarks.add(
                        Sheet.NEEDS,
                        row,
                        "copies",
                        need.copies().get().toString(),
                        "is fewer than the " + likely + " that the " + setup.takesLikely() + " likely takes of setup "
                                + setup.id() + extra + " use up",
                        "Maybe " + likely + ", or blank.");
            }
            int worst = CameraTime.copiesFor(need, setup.takesWorst());
            if (need.copies().orElse(worst) > FAR_TOO_MANY * worst) {
                remarks.add(
                        Sheet.NEEDS,
                        row,
                        "copies",
                        need.copies().get().toString(),
                        "is far more than the " + worst + " that the takes at worst of setup " + setup.id() + extra
                                + " use up",
                        "Maybe " + worst + ", or blank.");
            }
            int gap = setup.cycleMinutes() - setup.rollingMinutes();
            if (need.use() instanceof Use.ToppedUp toppedUp && toppedUp.minutes() > gap && setup.takesWorst() > 1) {
                remarks.add(
                        Sheet.NEEDS,
                        row,
                        "use",
                        "topped up in " + toppedUp.minutes() + " min",
                        "is longer than the " + Wording.minutes(gap) + " between two takes of setup " + setup.id(),
                        "Maybe a fresh plate each take, or a longer take cycle.");
            }
            Integer usableMinutes = usable.get(need.dish());
            int seen = CameraTime.of(setup, need, 1).showMinutes();
            if (!(need.use() instanceof Use.FreshEachTake) && usableMinutes != null && seen > usableMinutes) {
                remarks.add(
                        Sheet.NEEDS,
                        row,
                        "use",
                        need.use() instanceof Use.LastsTakes lasts
                                ? "lasts " + lasts.takes() + (lasts.takes() == 1 ? " take" : " takes")
                                : "topped up",
                        "keeps it before the camera for " + Wording.minutes(seen) + ", but it is usable for "
                                + usableMinutes,
                        goesOn(need)
                                ? "Maybe a dish of its own for stage " + need.stage()
                                        + ", with its own look: the look of " + need.dish() + " counts for every stage."
                                : need.use() instanceof Use.LastsTakes
                                        ? "Maybe fewer takes a copy."
                                        : "Maybe lasts some takes: topping up gives back what was eaten, not the look.");
            }
        }
    }

    /** Whether a need wants a dish that isn't finished. */
    private boolean goesOn(Need need) {
        return day.stepsOf(need.dish()).stream()
                .anyMatch(step -> step.predecessors().contains(need.stage()));
    }

    private void unused() {
        Set<String> needed = new HashSet<>();
        day.needs().forEach(need -> needed.add(need.dish()));
        for (int row = 0; row < day.dishes().size(); row++) {
            String dish = day.dishes().get(row).id();
            if (!needed.contains(dish)) {
                remarks.add(Sheet.DISHES, row, "dish", dish, "is wanted by no setup", "Maybe add it to sheet needs.");
            }
        }
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            if (needed.contains(step.dish()) && !recipes.wanted(step)) {
                remarks.add(
                        Sheet.STEPS,
                        row,
                        "step",
                        step.id(),
                        "leads to no stage of " + step.dish() + " that is wanted, so it is left out",
                        "Maybe name it in column after of a later step.");
            }
            if (step.minutesPerCopy() > 0 && !step.perBatch()) {
                remarks.add(
                        Sheet.STEPS,
                        row,
                        "minutes per copy",
                        String.valueOf(step.minutesPerCopy()),
                        "counts only in a batch",
                        "Maybe fill in column batch, or add it to minutes likely.");
            }
        }
    }

    /** Things that stand twice, in a sheet or in a cell. */
    private void twice() {
        for (int row = 0; row < day.ingredients().size(); row++) {
            Ingredient ingredient = day.ingredients().get(row);
            boolean before = day.ingredients().subList(0, row).stream()
                    .anyMatch(other -> other.dish().equals(ingredient.dish())
                            && other.name().equals(ingredient.name())
                            && other.step().equals(ingredient.step()));
            if (before) {
                remarks.add(
                        Sheet.INGREDIENTS,
                        row,
                        "ingredient",
                        ingredient.name(),
                        "is there twice for dish " + ingredient.dish() + ", and both count",
                        "Maybe remove one of the two.");
            }
            twice(Sheet.INGREDIENTS, row, "allergens", ingredient.allergens());
        }
        for (int row = 0; row < day.needs().size(); row++) {
            twice(Sheet.NEEDS, row, "eaten by", day.needs().get(row).eatenBy());
        }
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            twice(Sheet.STEPS, row, "after", step.after());
            twice(Sheet.STEPS, row, "any time after", step.anyTimeAfter());
            for (StationUse use : step.stations()) {
                twice(Sheet.STEPS, row, "station", use.anyOf());
            }
        }
        for (int row = 0; row < day.people().size(); row++) {
            twice(Sheet.PEOPLE, row, "skills", day.people().get(row).skills());
        }
        for (int row = 0; row < day.cast().size(); row++) {
            twice(Sheet.CAST, row, "allergies", day.cast().get(row).allergies());
        }
    }

    private void twice(Sheet sheet, int row, String column, List<String> names) {
        Set<String> seen = new HashSet<>();
        names.stream().filter(name -> !seen.add(name)).findFirst().ifPresent(name -> {
            remarks.add(sheet, row, column, name, "is named twice, which means no more than once", "Maybe remove one.");
        });
    }

    /** Places between which food is carried though no walk is given. */
    private void missingWalks() {
        Set<Set<String>> told = new HashSet<>();
        for (Need need : day.needs()) {
            if (!recipes.sound(need.dish())) {
                continue;
            }
            String from =
                    day.step(need.dish(), need.stage()).map(day::placeAfter).orElse("");
            String to = day.setup(need.setup()).map(Setup::place).orElse("");
            Optional<Place> start = day.place(from);
            Optional<Place> end = day.place(to);
            if (start.isPresent()
                    && end.isPresent()
                    && !from.equals(to)
                    && !start.get().walkMinutes().containsKey(to)
                    && !end.get().walkMinutes().containsKey(from)
                    && told.add(Set.of(from, to))) {
                remarks.add(
                        Sheet.PLACES,
                        day.places().indexOf(start.get()),
                        "walk",
                        "",
                        "no walk is given between " + from + " and " + to + ", so it counts as 0 minutes",
                        "Maybe " + to + ":4.");
            }
        }
    }

    private void walks() {
        missingWalks();
        for (int row = 0; row < day.places().size(); row++) {
            Place place = day.places().get(row);
            Integer own = place.walkMinutes().get(place.id());
            if (own != null) {
                remarks.add(
                        Sheet.PLACES,
                        row,
                        "walk",
                        place.id() + ":" + own,
                        "leads to the place itself, so it plays no part",
                        "Maybe another place is meant.");
            }
            for (Place other : day.places().subList(0, row)) {
                Integer there = other.walkMinutes().get(place.id());
                Integer back = place.walkMinutes().get(other.id());
                if (there != null && back != null && !there.equals(back)) {
                    remarks.add(
                            Sheet.PLACES,
                            row,
                            "walk",
                            other.id() + ":" + back,
                            "is " + there + " in the row of " + other.id(),
                            "Maybe the same both ways.");
                }
            }
        }
    }
}
