package platecall.day;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Someone who eats on camera.
 *
 * @param id name, unique
 * @param allergies names of allergens; may be empty
 * @param diet such as vegetarian; may be empty
 * @param swallows false if everything is spat out after the take
 */
public record Diner(String id, List<String> allergies, String diet, boolean swallows) {

    public Diner {
        Demand.text(id, "who");
        allergies = List.copyOf(allergies);
    }

    /** What in these ingredients he or she must not eat, in order of the alphabet; empty if nothing, as far as the sheets tell. */
    public Set<String> harmedBy(Collection<Ingredient> ingredients) {
        Set<String> harmful = new TreeSet<>();
        for (Ingredient ingredient : ingredients) {
            allergies.forEach(allergy -> harmful.addAll(ingredient.harmfulTo(allergy)));
        }
        return harmful;
    }
}
