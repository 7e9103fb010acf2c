package platecall.safety;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Step;
import platecall.day.StepOrder;

/**
 * A step in which hands are on food that is eaten without being heated again: gloves or tongs, no bare hands (FDA Food Code
 * 3-301.11). Heat counts if it comes with the step or after it on each way to camera, and if it would cook the food
 * (3-301.11(D): 3-401.11's temperatures, 63 °C where nothing in it is raw animal food).
 *
 * @param need who eats it
 * @param step what is done
 */
public record HandContact(Need need, Step step) {

    /** Every such step of a day, each once. */
    public static List<HandContact> of(Day day) {
        Optional<Profile> profile = SafetyClock.profile(day);
        Set<Step> known = new HashSet<>();
        List<HandContact> found = new ArrayList<>();
        for (Need need : day.needs()) {
            if (need.eatenBy().isEmpty()) {
                continue;
            }
            StepOrder order = StepOrder.of(day, need);
            Set<Step> unheated = unheated(day, need, order, profile);
            for (Step step : order.steps()) {
                if (step.hands() > 0 && !step.raw() && unheated.contains(step) && known.add(step)) {
                    found.add(new HandContact(need, step));
                }
            }
        }
        return List.copyOf(found);
    }

    /** Steps from which food can come to camera without being heated. */
    private static Set<Step> unheated(Day day, Need need, StepOrder order, Optional<Profile> profile) {
        Optional<FoodKind> kind = day.dish(need.dish()).map(dish -> Served.kind(day, dish, order.steps()));
        Set<Step> unheated = new HashSet<>();
        for (Step step : order.backward()) {
            boolean heats = profile.isPresent()
                    && kind.isPresent()
                    && step.coreCelsius().isPresent()
                    && profile.get().cooks(kind.get(), step.coreCelsius().get(), 60.0 * step.minutesLikely());
            boolean goesOn = order.isStage(step) || order.after(step).stream().anyMatch(unheated::contains);
            if (!heats && goesOn) {
                unheated.add(step);
            }
        }
        return unheated;
    }
}
