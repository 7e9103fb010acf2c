package platecall.check;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Allergens;
import platecall.day.Day;
import platecall.day.Diner;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Spelling;
import platecall.day.Step;
import platecall.safety.SafetyClock;
import platecall.safety.SafetyLimits;
import platecall.safety.Undercooked;

/** Who eats what must not be eaten. A help beside the cook's own knowledge of what is in the food, never instead. */
final class Eaters {

    private static final String PEANUTS = "peanuts";
    private static final String ASK = "Maybe another dish or eater.";

    private static final Set<String> MEATS = Stream.of(
                    "beef",
                    "veal",
                    "pork",
                    "ham",
                    "bacon",
                    "lamb",
                    "mutton",
                    "chicken",
                    "turkey",
                    "duck",
                    "goose",
                    "meat",
                    "sausage",
                    "salami",
                    "chorizo",
                    "pepperoni",
                    "speck",
                    "pancetta",
                    "prosciutto",
                    "pastrami",
                    "lardon",
                    "venison",
                    "rabbit",
                    "hare",
                    "pheasant",
                    "quail",
                    "oxtail",
                    "brisket",
                    "steak",
                    "lard",
                    "suet",
                    "tallow",
                    "gelatine",
                    "gelatin")
            .flatMap(meat -> Allergens.words(meat).stream())
            .collect(Collectors.toSet());

    /** 90 °F: above it not an hour out of the cold (USDA FSIS, How Temperatures Affect Food; value from memory). */
    private static final double HOUR_CELSIUS = 32.2;

    private final Day day;
    private final Recipes recipes;

    Eaters(Day day, Recipes recipes) {
        this.day = day;
        this.recipes = recipes;
    }

    /** Who must not eat what is planned for them, of these needs. */
    void check(Predicate<Need> which, Findings found) {
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            Optional<Dish> dish = day.dish(need.dish());
            if (need.eatenBy().isEmpty() || dish.isEmpty() || !which.test(need)) {
                continue;
            }
            if (!dish.get().edible()) {
                String what = "must not eat " + need.dish() + ": it is not edible";
                ofAllEaters(found, row, need, what, "Maybe an edible dish for those who eat, or clear the cell.");
                continue;
            }
            for (String name : new LinkedHashSet<>(need.eatenBy())) {
                Optional<Diner> diner = day.diner(name);
                if (diner.isPresent()) {
                    allergies(row, need, diner.get(), found);
                    diet(row, need, diner.get(), found);
                }
            }
        }
    }

    private void allergies(int row, Need need, Diner diner, Findings found) {
        for (Ingredient ingredient : eaten(need)) {
            for (String allergy : diner.allergies()) {
                Optional<String> harmful =
                        ingredient.harmfulTo(allergy).stream().findFirst();
                if (harmful.isPresent()) {
                    found.add(
                            Sheet.NEEDS,
                            row,
                            "eaten by",
                            diner.id(),
                            "is allergic to " + allergy + ", and " + need.dish() + " has " + ingredient.name()
                                    + " in it"
                                    + harmful.filter(what -> !what.equals(ingredient.name()))
                                            .map(what -> " (" + what + ")")
                                            .orElse(""),
                            ASK);
                    break;
                }
            }
        }
    }

    private void diet(int row, Need need, Diner diner, Findings found) {
        List<Diet> diets = Diet.of(diner);
        for (Ingredient ingredient : diets.isEmpty() ? List.<Ingredient>of() : eaten(need)) {
            for (Diet diet : diets) {
                Optional<String> against =
                        ingredient.allergens().stream().filter(diet::leavesOut).findFirst();
                if (against.isPresent()) {
                    found.add(
                            Sheet.NEEDS,
                            row,
                            "eaten by",
                            diner.id(),
                            "eats " + diet.name() + ", and " + need.dish() + " has " + ingredient.name() + " in it ("
                                    + against.get() + ")",
                            ASK);
                    break;
                }
            }
        }
    }

    /** What is in the plate at its stage; all ingredients of the dish if the steps don't tell. */
    private List<Ingredient> eaten(Need need) {
        List<Step> steps = recipes.sound(need.dish()) ? day.stepsTo(need.dish(), need.stage()) : List.of();
        return steps.isEmpty()
                ? day.ingredients().stream()
                        .filter(ingredient -> ingredient.dish().equals(need.dish()))
                        .toList()
                : day.ingredientsIn(need.dish(), steps);
    }

    /** What may go wrong although no rule is broken as far as the sheets tell. */
    void remark(Findings remarks) {
        cast(remarks);
        unknownAllergens(remarks);
        new RawFood(day, remarks).remark();
        hotIntoCold(remarks);
        heat(remarks);
        List<Undercooked> undercooked = Undercooked.of(day);
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            int at = row;
            cookedEnough(remarks, row, need, undercooked);
            for (String name : new LinkedHashSet<>(need.eatenBy())) {
                day.diner(name).ifPresent(diner -> {
                    words(remarks, need, diner);
                    nuts(remarks, need, diner);
                    if (eaten(need).isEmpty()) {
                        nothingTold(remarks, at, need, diner);
                    }
                });
            }
        }
    }

    private void cast(Findings remarks) {
        Set<String> known = new LinkedHashSet<>(Allergens.names());
        day.ingredients().forEach(ingredient -> known.addAll(ingredient.allergens()));
        for (int row = 0; row < day.cast().size(); row++) {
            Diner diner = day.cast().get(row);
            for (String allergy : diner.allergies()) {
                if (known.stream().noneMatch(allergen -> Allergens.meet(allergy, allergen))) {
                    remarks.add(
                            Sheet.CAST,
                            row,
                            "allergies",
                            allergy,
                            "is an allergen of no ingredient and not a common one",
                            Spelling.nearest(allergy, known)
                                    .map(near -> "Did you mean " + near + "?")
                                    .orElse("Maybe check how it is written in sheet ingredients."));
                }
            }
            diets(row, diner, remarks);
        }
    }

    private void cookedEnough(Findings remarks, int row, Need need, List<Undercooked> undercooked) {
        String eats = "eats " + need.dish();
        boolean raw = day.step(need.dish(), need.stage()).map(Step::raw).orElse(false);
        if (raw && !need.eatenBy().isEmpty()) {
            String what = eats + " at stage " + need.stage() + ", which is raw";
            ofAllEaters(remarks, row, need, what, "Maybe a later stage.");
        }
        undercooked.stream().filter(it -> it.need().equals(need)).forEach(it -> {
            String what = eats + ", which gets to " + Wording.number(it.coreCelsius())
                    + " °C inside by its steps, but needs " + Wording.number(it.leastCelsius()) + " °C";
            String wayOut = "Maybe another core temperature in sheet steps, or nobody who eats it.";
            ofAllEaters(remarks, row, need, what, wayOut);
        });
        if (Undercooked.unstated(day, need)) {
            String what = eats + ", and no step says how hot it gets inside";
            ofAllEaters(remarks, row, need, what, "Maybe fill in raw and core temperature in sheet steps.");
        }
    }

    private static void ofAllEaters(Findings found, int row, Need need, String what, String wayOut) {
        found.add(Sheet.NEEDS, row, "eaten by", String.join("; ", need.eatenBy()), what, wayOut);
    }

    /** What of a diet can't be read, and what of it is no diet. */
    private static void diets(int row, Diner diner, Findings remarks) {
        for (Diet.Phrase unread : Diet.unread(diner)) {
            String wayOut = Allergens.knows(unread.food())
                    ? "Maybe " + unread.food() + " in column allergies, if that is what to avoid."
                    : Wording.maybe(unread.text(), Diet.names(), "Maybe mind it by hand.");
            remarks.add(Sheet.CAST, row, "diet", unread.text(), "is not a diet that can be checked", wayOut);
        }
        for (String allergy : Diet.allergies(diner)) {
            remarks.add(
                    Sheet.CAST,
                    row,
                    "diet",
                    diner.diet(),
                    "is an allergy, and run sheets and the audit name only those in column allergies",
                    "Maybe " + allergy + " in column allergies.");
        }
    }

    /** Hot food in the cold: the safety clock, which knows no thermometer, lets it be cold at once. */
    private void hotIntoCold(Findings remarks) {
        Set<Step> steps = new LinkedHashSet<>();
        for (Need need : day.needs()) {
            if (recipes.sound(need.dish())) {
                steps.addAll(SafetyLimits.hotIntoCold(day, need));
            }
        }
        String inTime = SafetyClock.profile(day).stream()
                .flatMap(profile -> profile.cooling().stream())
                .filter(stage -> !stage.fromAmbient())
                .map(stage -> "from " + Wording.number(stage.fromCelsius()) + " to "
                        + Wording.number(stage.toCelsius()) + " °C within "
                        + stage.minutes().mostWhole() + " minutes ("
                        + stage.minutes().source() + ")")
                .collect(Collectors.joining(", "));
        steps.forEach(step -> remarks.add(
                Sheet.STEPS,
                day.steps().indexOf(step),
                "waits in",
                step.waitsIn().orElseThrow(),
                "is cold and gets hot food from " + step.id()
                        + ", which counts as cold at once though it is not"
                        + (inTime.isEmpty() ? "" : "; it must cool ")
                        + inTime,
                "Maybe a step between in which it cools, in an ice bath or shallow pans."));
    }

    /** Heat in which food may stand out for less long than the clocks allow. */
    private void heat(Findings remarks) {
        boolean atRisk = day.needs().stream()
                .filter(need -> !need.eatenBy().isEmpty())
                .flatMap(need -> day.dish(need.dish()).stream())
                .anyMatch(Dish::timeTemperatureControlled);
        if (atRisk && day.facts().setCelsius() > HOUR_CELSIUS) {
            remarks.add(
                    Sheet.DAY,
                    -1,
                    "set temperature",
                    Wording.number(day.facts().setCelsius()),
                    "is a heat in which the USDA advises to leave food at risk out for an hour at most (above 32.2 °C), and "
                            + "the safety profile's clock allows longer",
                    "Maybe keep it cold or hot until it rolls, and swap what stands out within the hour.");
        }
    }

    /** An allergen that is neither common nor anybody's may be meant for one that is. */
    private void unknownAllergens(Findings remarks) {
        Set<String> known = new LinkedHashSet<>(Allergens.names());
        day.cast().forEach(diner -> known.addAll(diner.allergies()));
        for (int row = 0; row < day.ingredients().size(); row++) {
            for (String allergen : day.ingredients().get(row).allergens()) {
                if (!Allergens.knows(allergen) && known.stream().noneMatch(name -> Allergens.meet(name, allergen))) {
                    remarks.add(
                            Sheet.INGREDIENTS,
                            row,
                            "allergens",
                            allergen,
                            "is nobody's allergy and not a common allergen",
                            Spelling.nearest(allergen, known)
                                    .map(near -> "Did you mean " + near + "?")
                                    .orElse("Maybe name the common one that it has in it, if any."));
                }
            }
        }
    }

    /** An ingredient's name may tell what its row does not. */
    private void words(Findings remarks, Need need, Diner diner) {
        for (Ingredient ingredient : eaten(need)) {
            Diet.of(diner).stream()
                    .filter(diet -> diet.meatless()
                                    && Allergens.words(ingredient.name()).stream()
                                            .anyMatch(MEATS::contains)
                            || diet.without().stream()
                                    .anyMatch(food -> Allergens.meet(food, ingredient.name())
                                            && ingredient.allergens().stream()
                                                    .noneMatch(named -> Allergens.meet(food, named))))
                    .findFirst()
                    .ifPresent(diet -> tells(remarks, ingredient, diner, "eats " + diet.name(), ASK));
            diner.allergies().stream()
                    .filter(avoided -> Allergens.meet(avoided, ingredient.name()))
                    .filter(avoided -> ingredient.harmfulTo(avoided).isEmpty())
                    .forEach(avoided -> tells(
                            remarks, ingredient, diner, "is allergic to " + avoided, "Maybe fill in its allergens."));
        }
    }

    /** Where no ingredient is told, none can be found to harm anybody. */
    private static void nothingTold(Findings remarks, int row, Need need, Diner diner) {
        String avoids = diner.allergies().isEmpty()
                ? diner.diet().isBlank() ? "" : "eats " + diner.diet().strip()
                : "is allergic to " + String.join(", ", diner.allergies());
        if (!avoids.isEmpty()) {
            remarks.add(
                    Sheet.NEEDS,
                    row,
                    "eaten by",
                    diner.id(),
                    avoids + ", and sheet ingredients has nothing for " + need.dish() + " at stage " + need.stage(),
                    "Maybe a row for each thing that is in it, with its allergens.");
        }
    }

    /** To many people nuts are peanuts, too; by law they are not. */
    private void nuts(Findings remarks, Need need, Diner diner) {
        Optional<String> nuts = diner.allergies().stream()
                .filter(allergy -> Allergens.words(allergy).equals(Allergens.words("nuts")))
                .findFirst();
        if (nuts.isEmpty() || diner.allergies().stream().anyMatch(allergy -> Allergens.meet(allergy, PEANUTS))) {
            return;
        }
        for (Ingredient ingredient : eaten(need)) {
            if (!ingredient.harmfulTo(PEANUTS).isEmpty()) {
                remarks.add(
                        Sheet.CAST,
                        day.cast().indexOf(diner),
                        "allergies",
                        nuts.get(),
                        "is read as tree nuts, and " + diner.id() + " eats " + need.dish() + ", which has "
                                + ingredient.name() + " in it (" + PEANUTS + ")",
                        "Maybe " + nuts.get() + "; " + PEANUTS + ".");
            }
        }
    }

    private void tells(Findings remarks, Ingredient ingredient, Diner diner, String what, String wayOut) {
        remarks.add(
                Sheet.INGREDIENTS,
                day.ingredients().indexOf(ingredient),
                "ingredient",
                ingredient.name(),
                "is eaten by " + diner.id() + ", who " + what,
                wayOut);
    }
}
