package platecall.solve;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import platecall.day.Prices;
import platecall.tasks.TaskNet.Copy;

/** What is placed as one: a copy with all its tasks, or a meal break. */
@PlanningEntity
public class Block {

    @PlanningId
    private String id;

    private Copy copy;
    private Published.Kept published;
    private int publishedBreak = Kitchen.NONE;

    @PlanningVariable(valueRangeProviderRefs = "placements")
    private Placement placement;

    /** For Timefold. */
    Block() {}

    private Block(String id, Copy copy, Published.Kept published) {
        this.id = id;
        this.copy = copy;
        this.published = published;
        placement = Placement.NOWHERE;
    }

    /** @param published the copy in the plan that is held, or null */
    static Block ofCopy(Copy copy, Published.Kept published) {
        return new Block(copy.id(), copy, published);
    }

    /** @param published when it starts in the plan that is held, or {@link Kitchen#NONE} */
    static Block ofBreak(int index, int published) {
        Block block = new Block("break " + index, null, null);
        block.publishedBreak = published;
        return block;
    }

    /** The copy, or null for a meal break. */
    Copy copy() {
        return copy;
    }

    Published.Kept published() {
        return published;
    }

    int publishedBreak() {
        return publishedBreak;
    }

    Placement placement() {
        return placement;
    }

    void placement(Placement chosen) {
        placement = chosen;
    }

    boolean isPlaced() {
        return !placement.nowhere();
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

    /** Points for looks and for what moves that a copy would cost at a placement. */
    long pointsAt(Placement there, Prices prices) {
        Block block = ofCopy(copy, published);
        block.placement(there);
        return block.latePoints() + block.offPeakPoints() + block.movedMinutes() * prices.movedMinute();
    }

    /** Minutes by which its tasks, or the break, start earlier or later than published, and what other hands and stations count. */
    long movedMinutes() {
        if (copy == null) {
            return publishedBreak == Kitchen.NONE ? 0 : Math.abs(placement.start()[0] - publishedBreak);
        }
        long moved = 0;
        for (int i = 0; published != null && i < copy.recipe().size(); i++) {
            moved += published.moved(
                    i,
                    placement.start()[i],
                    placement.handsA()[i],
                    placement.handsB()[i],
                    placement.way()[i]);
        }
        return moved;
    }
}
