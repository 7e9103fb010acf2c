package platecall.cli;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Step;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.units.Span;

/** The minutes to spare that a plan has, of the copies of a need always the fewest. */
final class TimeInHand {

    private final Map<List<String>, Integer> afterStep = new HashMap<>();
    private final Map<String, Integer> beforeCall = new HashMap<>();

    TimeInHand(Day day, Plan plan) {
        Map<CopyStep, Span> spans = new HashMap<>();
        for (Work work : plan.work()) {
            work.copies().forEach(copy -> spans.put(work.with(copy), work.span()));
        }
        for (PlannedCopy copy : plan.copies()) {
            copy.ready()
                    .ifPresent(ready ->
                            beforeCall.merge(copy.need(), Math.max(0, ready.minutesUntil(copy.due())), Math::min));
            for (Step step : day.stepsOf(copy.dish())) {
                Span later = spans.get(CopyStep.of(copy.id(), step.id()));
                for (String before : step.predecessors()) {
                    Span earlier = spans.get(CopyStep.of(copy.id(), before));
                    if (later != null && earlier != null) {
                        int least = step.after().contains(before) ? step.leastWait() : 0;
                        int wait = earlier.end().minutesUntil(later.start());
                        afterStep.merge(List.of(copy.need(), before), Math.max(0, wait - least), Math::min);
                    }
                }
            }
        }
    }

    /** Minutes by which what comes after a step waits longer than it must. */
    int after(Need need, Step step) {
        return afterStep.getOrDefault(List.of(need.key(), step.id()), 0);
    }

    /** Minutes by which copies are at camera, and at their peak, before they are due. */
    int before(Need need) {
        return beforeCall.getOrDefault(need.key(), 0);
    }
}
