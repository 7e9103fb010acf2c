package platecall.check;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Step;
import platecall.units.Money;

/** The food budget against the least that can be bought with it. */
final class Costs {

    private Costs() {}

    static void check(Day day, Recipes recipes, Findings found) {
        Optional<Money> budget = day.facts().foodBudget();
        Money cheapest = oneHeroEach(day, recipes);
        if (budget.isPresent() && budget.get().compareTo(cheapest) < 0) {
            found.add(
                    Sheet.DAY,
                    -1,
                    "food budget",
                    budget.get().toString(),
                    "can't buy one hero each, which costs " + cheapest + " "
                            + day.facts().currency(),
                    "Maybe " + cheapest + " or more.");
        }
    }

    /** What one copy for each hero need costs. */
    private static Money oneHeroEach(Day day, Recipes recipes) {
        Money sum = Money.ZERO;
        Set<String> done = new HashSet<>();
        for (Need need : day.needs()) {
            Optional<Dish> dish = day.dish(need.dish());
            if (need.part() == Part.HERO && dish.isPresent() && done.add(need.key())) {
                sum = sum.plus(dish.get().cost()).plus(ingredients(day, recipes, need));
            }
        }
        return sum;
    }

    private static Money ingredients(Day day, Recipes recipes, Need need) {
        List<Step> steps = recipes.sound(need.dish()) ? day.stepsTo(need.dish(), need.stage()) : List.of();
        Money sum = Money.ZERO;
        for (Ingredient ingredient : day.ingredients()) {
            if (steps.stream().anyMatch(step -> Readiness.takes(step, ingredient))) {
                sum = sum.plus(ingredient.cost());
            }
        }
        return sum;
    }
}
