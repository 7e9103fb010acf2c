package platecall.solve;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import platecall.tasks.TaskNet.Copy;

/** What is placed as one: a copy with all its tasks, or a meal break. */
@PlanningEntity
public class Block {

    @PlanningId
    private String id;

    private Copy copy;
    private int[] publishedStart;

    @PlanningVariable(valueRangeProviderRefs = "placements")
    private Placement placement;

    /** For Timefold. */
    Block() {}

    private Block(String id, Copy copy, int[] publishedStart) {
        this.id = id;
        this.copy = copy;
        this.publishedStart = publishedStart;
        placement = Placement.NOWHERE;
    }

    /** @param publishedStart minute at which each task starts in the plan that is held, or null */
    static Block ofCopy(Copy copy, int[] publishedStart) {
        return new Block(copy.id(), copy, publishedStart);
    }

    static Block ofBreak(int index) {
        return new Block("break " + index, null, null);
    }

    int[] publishedStart() {
        return publishedStart;
    }

    Placement placement() {
        return placement;
    }

    void placement(Placement chosen) {
        placement = chosen;
    }

    boolean isPlacedCopy() {
        return copy != null && !placement.nowhere();
    }

    private int ready() {
        return placement.end(copy.recipe().last());
    }

    private int plated() {
        return placement.end(copy.recipe().plated());
    }

    long latePoints() {
        return copy.recipe().lateWeight() * copy.recipe().lateMinutes(copy.due(), copy.show(), plated(), ready());
    }

    long offPeakPoints() {
        return copy.recipe().offPeakWeight() * copy.recipe().offPeakMinutes(copy.due(), copy.show(), plated(), ready());
    }

    /** Minutes by which its tasks start earlier or later than published. */
    long movedMinutes() {
        long moved = 0;
        for (int i = 0; publishedStart != null && i < publishedStart.length; i++) {
            moved += Math.abs(placement.start()[i] - publishedStart[i]);
        }
        return moved;
    }
}
