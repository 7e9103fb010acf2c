package platecall.safety;

import java.util.ArrayList;
import java.util.List;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Step;

/**
 * A step in which hands are on food that is eaten without being heated again: gloves or tongs, no bare hands (FDA Food Code
 * 3-301.11).
 *
 * @param need who eats it
 * @param step what is done
 */
public record HandContact(Need need, Step step) {

    /** Every such step of a day, each once. */
    public static List<HandContact> of(Day day) {
        List<HandContact> found = new ArrayList<>();
        for (Need need : day.needs()) {
            if (need.eatenBy().isEmpty()) {
                continue;
            }
            List<Step> steps = day.stepsTo(need.dish(), need.stage());
            for (int i = 0; i < steps.size(); i++) {
                Step step = steps.get(i);
                boolean heatedLater = steps.subList(i, steps.size()).stream()
                        .anyMatch(later -> later.coreCelsius().isPresent());
                boolean known = found.stream().anyMatch(other -> other.step().equals(step));
                if (step.hands() > 0 && !step.raw() && !heatedLater && !known) {
                    found.add(new HandContact(need, step));
                }
            }
        }
        return List.copyOf(found);
    }
}
