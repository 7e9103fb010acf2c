package platecall.safety;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Step;
import platecall.day.StepOrder;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.units.Moment;

/**
 * A made copy with all that is done for it.
 *
 * @param order its steps
 * @param work everything in the plan that serves it
 * @param lateMinutes minutes by which the next take of its setup is late, for whatever plate, and so all that follow are
 */
record Served(PlannedCopy copy, Need need, Dish dish, Setup setup, StepOrder order, List<Work> work, int lateMinutes) {

    /** Every copy that is made; whatever the plan says that the day does not know is left out. */
    static List<Served> of(Day day, Plan plan) {
        Map<String, Need> needs = new HashMap<>();
        day.needs().forEach(need -> needs.put(need.key(), need));
        Map<String, List<Work>> workOf = new HashMap<>();
        for (Work work : plan.work()) {
            work.copies().stream()
                    .distinct()
                    .forEach(copy -> workOf.computeIfAbsent(copy, id -> new ArrayList<>())
                            .add(work));
        }
        Map<String, Integer> late = new HashMap<>();
        for (PlannedCopy copy : plan.copies()) {
            Need need = needs.get(copy.need());
            Optional<Setup> setup = Optional.ofNullable(need).flatMap(it -> day.setup(it.setup()));
            if (copy.made()
                    && setup.filter(it -> CameraTime.isOfNextSet(it, need, copy.number()))
                            .isPresent()) {
                int minutes = setup.get()
                        .nextRoll()
                        .minutesUntil(copy.ready().orElse(setup.get().nextRoll()));
                late.merge(need.setup(), Math.max(0, minutes), Math::max);
            }
        }
        List<Served> served = new ArrayList<>();
        for (PlannedCopy copy : plan.copies()) {
            Need need = needs.get(copy.need());
            if (need == null || !copy.made()) {
                continue;
            }
            Optional<Dish> dish = day.dish(need.dish());
            Optional<Setup> setup = day.setup(need.setup());
            if (dish.isPresent() && setup.isPresent()) {
                served.add(new Served(
                        copy,
                        need,
                        dish.get(),
                        setup.get(),
                        StepOrder.of(day, need),
                        workOf.getOrDefault(copy.id(), List.of()),
                        CameraTime.isShot(setup.get(), need, copy.number()) ? 0 : late.getOrDefault(need.setup(), 0)));
            }
        }
        return served;
    }

    boolean eaten() {
        return !need.eatenBy().isEmpty();
    }

    /** Whenever a step is done for it; once in a sound plan. */
    List<Work> work(Step step) {
        return work.stream()
                .filter(one -> one.kind() == Work.Kind.STEP && one.step().equals(step.id()))
                .toList();
    }

    List<Work> carries() {
        return work.stream().filter(one -> one.kind() == Work.Kind.CARRY).toList();
    }

    /** When the camera first sees it: as late as its setup is, or once it is ready if that is later. */
    Moment firstBite() {
        Moment due =
                CameraTime.of(setup, need, Math.max(1, copy.number())).due().plus(lateMinutes);
        return copy.ready().map(ready -> Moment.later(due, ready)).orElse(due);
    }

    /** When the last take that uses it has been rolled. */
    Moment lastBite() {
        CameraTime camera = CameraTime.of(setup, need, Math.max(1, copy.number()));
        return firstBite().plus(camera.showMinutes());
    }

    FoodKind kind(Day day) {
        return kind(day, dish, order.steps());
    }

    /** What kind of food a dish is, by the words of its name and of the ingredients that go in by these steps. */
    static FoodKind kind(Day day, Dish dish, List<Step> steps) {
        Stream<String> ingredients =
                day.ingredientsIn(dish.id(), steps).stream().map(Ingredient::name);
        return FoodKind.of(Stream.concat(Stream.of(dish.name()), ingredients).toList());
    }
}
