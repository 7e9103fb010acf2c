package platecall.day;

import java.util.List;

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
}
