package platecall.check;

import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Station;
import platecall.day.Step;
import platecall.safety.FoodKind;
import platecall.safety.Profile;

/**
 * Food that people eat and that may be raw though the sheets don't say so: fish and shellfish, by their allergens. And raw
 * food that waits hot.
 */
final class RawFood {

    private static final List<String> SEAFOOD = List.of("crustaceans", "molluscs", "fish");

    private final Day day;
    private final Findings remarks;
    private final Set<String> told = new HashSet<>();

    RawFood(Day day, Findings remarks) {
        this.day = day;
        this.remarks = remarks;
    }

    void remark() {
        for (Need need : day.needs()) {
            Optional<Dish> dish = day.dish(need.dish());
            if (need.eatenBy().isEmpty() || dish.isEmpty()) {
                continue;
            }
            List<Step> steps = day.stepsTo(need.dish(), need.stage());
            waitsHot(steps);
            for (Ingredient ingredient : day.ingredientsIn(need.dish(), steps)) {
                Set<Step> with = stepsWith(ingredient, steps);
                if (isSeafood(ingredient) && with.stream().noneMatch(Step::raw)) {
                    notSaidToBeRaw(need, ingredient, with);
                }
            }
            clock(dish.get(), steps);
        }
    }

    private static boolean isSeafood(Ingredient ingredient) {
        return SEAFOOD.stream().anyMatch(food -> !ingredient.harmfulTo(food).isEmpty());
    }

    /** Raw food keeps in the cold only. */
    private void waitsHot(List<Step> steps) {
        for (Step step : steps) {
            Optional<Station> store =
                    step.waitsIn().flatMap(day::station).filter(station -> station.kind() == Station.Kind.HOT_HOLD);
            if (step.raw() && store.isPresent() && told.add("hot " + step.dish())) {
                remarks.add(
                        Sheet.STEPS,
                        day.steps().indexOf(step),
                        "waits in",
                        store.get().id(),
                        "is a hot hold, but " + step.dish() + " is raw after " + step.id(),
                        "Maybe a fridge.");
            }
        }
    }

    private void notSaidToBeRaw(Need need, Ingredient ingredient, Set<Step> with) {
        Optional<Step> hottest = with.stream()
                .filter(step -> step.coreCelsius().isPresent())
                .max(Comparator.comparing(step -> step.coreCelsius().get()));
        if (hottest.isPresent()) {
            tooCool(ingredient, with, hottest.get());
        } else if (!with.isEmpty() && told.add("raw " + need.dish())) {
            List<String> eaters = need.eatenBy().stream().distinct().toList();
            remarks.add(
                    Sheet.STEPS,
                    day.steps().indexOf(with.iterator().next()),
                    "raw",
                    "no",
                    "but " + ingredient.name() + " goes in, and no step cooks it before " + Wording.list(eaters)
                            + (eaters.size() == 1 ? " eats it" : " eat it"),
                    "Maybe yes, unless it has been cooked or cured before.");
        }
    }

    private void tooCool(Ingredient ingredient, Set<Step> with, Step hottest) {
        Optional<Profile> profile = Profile.named(day.facts().safetyProfile());
        boolean cooked = with.stream()
                .filter(step -> step.coreCelsius().isPresent())
                .anyMatch(step -> profile.isPresent()
                        && profile.get()
                                .cooks(FoodKind.INTACT, step.coreCelsius().get(), 60.0 * step.minutesLikely()));
        if (profile.isPresent() && !cooked && told.add("cool " + hottest.dish())) {
            String least =
                    Wording.number(profile.get().cooking(FoodKind.INTACT).get(0).celsius());
            remarks.add(
                    Sheet.STEPS,
                    day.steps().indexOf(hottest),
                    "core temperature",
                    Wording.number(hottest.coreCelsius().get()),
                    "is less than " + ingredient.name() + " needs if it was raw: fish and shellfish " + least
                            + " °C, by " + profile.get().title(),
                    "Maybe " + least + ", or yes in column raw of a step before.");
        }
    }

    /** Steps that an ingredient goes in at or has gone in before, each after those it needs. */
    private static Set<Step> stepsWith(Ingredient ingredient, List<Step> steps) {
        Set<Step> with = new LinkedHashSet<>();
        Set<String> names = new HashSet<>();
        for (Step step : steps) {
            if (ingredient.goesInto(step) || step.predecessors().stream().anyMatch(names::contains)) {
                with.add(step);
                names.add(step.id());
            }
        }
        return with;
    }

    /** Without a core temperature of a step nothing else tells that fish and shellfish are food at risk. */
    private void clock(Dish dish, List<Step> steps) {
        Optional<Ingredient> seafood = day.ingredientsIn(dish.id(), steps).stream()
                .filter(RawFood::isSeafood)
                .findFirst();
        boolean cooked = steps.stream().anyMatch(step -> step.coreCelsius().isPresent());
        if (!dish.timeTemperatureControlled() && !cooked && seafood.isPresent() && told.add("clock " + dish.id())) {
            remarks.add(
                    Sheet.DISHES,
                    day.dishes().indexOf(dish),
                    "time-temperature controlled",
                    "no",
                    "but " + seafood.get().name()
                            + " is in it, and without yes no clock runs for how long it may stand",
                    "Maybe yes.");
        }
    }
}
