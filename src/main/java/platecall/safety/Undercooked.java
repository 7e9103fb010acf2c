package platecall.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Step;

/**
 * Food that was raw, is eaten cooked, and is not stated to get hot enough inside. After its last raw step one of its steps
 * must reach the core temperature that its kind asks for, and last as long as that must be held; a recipe that states no
 * core temperature can't be judged.
 *
 * @param need who eats it
 * @param kind what kind of food the words in it tell
 * @param coreCelsius the highest core temperature stated
 * @param leastCelsius the one that the profile names first for its kind
 */
public record Undercooked(Need need, FoodKind kind, double coreCelsius, double leastCelsius) {

    /** Every need of a day that is eaten undercooked; none if the day's profile is unknown. */
    public static List<Undercooked> of(Day day) {
        List<Undercooked> found = new ArrayList<>();
        for (Need need : day.needs()) {
            Optional<Dish> dish = day.dish(need.dish());
            Optional<Profile> profile = SafetyClock.profile(day);
            if (dish.isPresent() && profile.isPresent() && !need.eatenBy().isEmpty()) {
                of(day, need, dish.get(), profile.get()).ifPresent(found::add);
            }
        }
        return found;
    }

    private static Optional<Undercooked> of(Day day, Need need, Dish dish, Profile profile) {
        List<Step> steps = day.stepsTo(need.dish(), need.stage());
        int lastRaw = -1;
        for (int i = 0; i < steps.size(); i++) {
            lastRaw = steps.get(i).raw() ? i : lastRaw;
        }
        boolean wasRaw = lastRaw >= 0 && lastRaw < steps.size() - 1;
        List<Step> after = steps.subList(lastRaw + 1, steps.size());
        Optional<Double> hottest =
                after.stream().flatMap(step -> step.coreCelsius().stream()).max(Double::compare);
        if (!wasRaw || hottest.isEmpty()) {
            return Optional.empty();
        }
        FoodKind kind = Served.kind(day, dish, steps);
        boolean enough = after.stream()
                .anyMatch(step -> step.coreCelsius()
                        .map(core -> profile.cooks(kind, core, 60.0 * step.minutesLikely()))
                        .orElse(false));
        return enough
                ? Optional.empty()
                : Optional.of(new Undercooked(
                        need, kind, hottest.get(), profile.cooking(kind).get(0).celsius()));
    }
}
