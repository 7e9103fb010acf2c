package platecall.day;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The steps that lead to a stage of a dish, and which of them come before and after which.
 *
 * @param steps each after those it needs; the stage is the last one, if it is known
 */
public record StepOrder(List<Step> steps) {

    public StepOrder {
        steps = List.copyOf(steps);
    }

    /** The steps that a need's copies go through. */
    public static StepOrder of(Day day, Need need) {
        return new StepOrder(day.stepsTo(need.dish(), need.stage()));
    }

    /** The same steps, each before those it needs. */
    public List<Step> backward() {
        List<Step> backward = new ArrayList<>(steps);
        Collections.reverse(backward);
        return backward;
    }

    /** The steps right before this one; other branches are none of them. */
    public List<Step> before(Step step) {
        return steps.stream()
                .filter(before -> step.predecessors().contains(before.id()))
                .toList();
    }

    /** The steps right after this one; none for the stage. */
    public List<Step> after(Step step) {
        return steps.stream()
                .filter(after -> after.predecessors().contains(step.id()))
                .toList();
    }

    /** Whether the food comes out of this step as it goes to camera. */
    public boolean isStage(Step step) {
        return !steps.isEmpty() && steps.get(steps.size() - 1).equals(step);
    }

    /** Whether raw food goes into a step: one begins with it, or a step right before leaves it raw. */
    public boolean rawBefore(Step step) {
        return step.predecessors().isEmpty() || before(step).stream().anyMatch(Step::raw);
    }
}
