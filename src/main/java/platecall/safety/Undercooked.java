package platecall.safety;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Step;
import platecall.day.StepOrder;

/**
 * Food that was raw, is eaten cooked, and is not stated to get hot enough inside. On each way from a step that leaves it raw
 * to the stage at camera one of the steps that follow must reach the core temperature that its kind asks for, and last as
 * long as that must be held. A way that states no core temperature can't be judged.
 *
 * @param need who eats it
 * @param kind what kind of food the words in it tell
 * @param coreCelsius the highest core temperature stated on the way; of several ways the one that stays coolest
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

    /**
     * What lies between a step's start and the stage, on all ways that are never raw and never hot enough.
     *
     * @param silent whether one of them states no core temperature
     * @param hottest of those that state one the highest on the way, the least of all ways; empty if there is none
     */
    private record Cool(boolean silent, OptionalDouble hottest) {

        private static final Cool NO_WAY = new Cool(false, OptionalDouble.empty());

        private Cool or(Cool other) {
            return new Cool(silent || other.silent, least(hottest, other.hottest));
        }

        private Cool after(double core) {
            OptionalDouble hotter =
                    hottest.isEmpty() ? hottest : OptionalDouble.of(Math.max(core, hottest.getAsDouble()));
            return new Cool(false, silent ? least(OptionalDouble.of(core), hotter) : hotter);
        }

        private static OptionalDouble least(OptionalDouble one, OptionalDouble other) {
            return DoubleStream.concat(one.stream(), other.stream()).min();
        }
    }

    /**
     * Whether a need of food that is eaten cooked can't be judged: it was raw and a way from there states no core
     * temperature, or it is of a kind that must get hotter than whole cuts, poultry or ground meat, and nothing says that it was raw.
     */
    public static boolean unstated(Day day, Need need) {
        Optional<Dish> dish = day.dish(need.dish());
        Optional<Profile> profile = SafetyClock.profile(day);
        if (dish.isEmpty()
                || profile.isEmpty()
                || need.eatenBy().isEmpty()
                || day.step(need.dish(), need.stage()).map(Step::raw).orElse(true)) {
            return false;
        }
        List<Step> steps = StepOrder.of(day, need).steps();
        boolean mustGetHot = Served.kind(day, dish.get(), steps) != FoodKind.INTACT
                && steps.stream()
                        .noneMatch(step -> step.raw() || step.coreCelsius().isPresent());
        return mustGetHot || wasRaw(day, need, dish.get(), profile.get()).silent();
    }

    private static Optional<Undercooked> of(Day day, Need need, Dish dish, Profile profile) {
        FoodKind kind = Served.kind(day, dish, StepOrder.of(day, need).steps());
        Cool wasRaw = wasRaw(day, need, dish, profile);
        return wasRaw.hottest().isEmpty()
                ? Optional.empty()
                : Optional.of(new Undercooked(
                        need,
                        kind,
                        wasRaw.hottest().getAsDouble(),
                        profile.cooking(kind).get(0).celsius()));
    }

    /** What lies between steps that leave it raw and the stage. */
    private static Cool wasRaw(Day day, Need need, Dish dish, Profile profile) {
        StepOrder order = StepOrder.of(day, need);
        FoodKind kind = Served.kind(day, dish, order.steps());
        Map<Step, Cool> cool = new HashMap<>();
        Cool wasRaw = Cool.NO_WAY;
        for (Step step : order.backward()) {
            Cool later = order.isStage(step) ? new Cool(true, OptionalDouble.empty()) : Cool.NO_WAY;
            for (Step after : order.after(step)) {
                later = later.or(cool.getOrDefault(after, Cool.NO_WAY));
            }
            if (step.raw()) {
                wasRaw = wasRaw.or(later);
                later = Cool.NO_WAY;
            } else if (step.coreCelsius().isPresent()) {
                double core = step.coreCelsius().get();
                boolean enough = profile.cooks(kind, core, 60.0 * step.minutesLikely());
                later = enough ? Cool.NO_WAY : later.after(core);
            }
            cool.put(step, later);
        }
        return wasRaw;
    }
}
