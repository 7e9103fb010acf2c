package platecall.day;

import java.util.List;
import java.util.Optional;
import platecall.units.Moment;
import platecall.units.Money;

/**
 * An ingredient of a dish, for one copy.
 *
 * @param dish the dish's id
 * @param name what it is
 * @param step the step that first needs it; empty: the first steps of the dish
 * @param quantity for one copy, 0 or more, in {@code unit}
 * @param unit unit of the quantity; may be empty
 * @param cost for one copy, 0 or more
 * @param allergens names of the allergens in it
 * @param supplier who brings it; may be empty
 * @param arrives when it is there; empty: from the start
 */
public record Ingredient(
        String dish,
        String name,
        Optional<String> step,
        double quantity,
        String unit,
        Money cost,
        List<String> allergens,
        String supplier,
        Optional<Moment> arrives) {

    public Ingredient {
        Demand.text(dish, "dish");
        Demand.text(name, "ingredient");
        Demand.that(quantity >= 0 && quantity <= 999_999_999, "quantity must be from 0 to 999999999", quantity);
        Demand.that(cost.cents() >= 0, "cost must be 0 or more", cost);
        allergens = List.copyOf(allergens);
    }

    /**
     * What of it somebody with this allergy must not eat: those of its allergens that meet the allergy; without any its own
     * name, if that as a whole is the allergen; empty if none, as far as the sheets tell.
     */
    public List<String> harmfulTo(String allergy) {
        List<String> harmful = allergens.stream()
                .filter(contained -> Allergens.meet(allergy, contained))
                .toList();
        return harmful.isEmpty() && Allergens.meetAsAWhole(allergy, name) ? List.of(name) : harmful;
    }

    /** Whether it goes in at a step; without a step of its own it goes in at the first ones of its dish. */
    public boolean goesInto(Step into) {
        return dish.equals(into.dish())
                && step.map(into.id()::equals).orElse(into.predecessors().isEmpty());
    }
}
