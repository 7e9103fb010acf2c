package platecall.solve;

import ai.timefold.solver.core.api.domain.solution.PlanningEntityCollectionProperty;
import ai.timefold.solver.core.api.domain.solution.PlanningScore;
import ai.timefold.solver.core.api.domain.solution.PlanningSolution;
import ai.timefold.solver.core.api.domain.solution.ProblemFactCollectionProperty;
import ai.timefold.solver.core.api.domain.solution.ProblemFactProperty;
import ai.timefold.solver.core.api.domain.valuerange.CountableValueRange;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import platecall.day.Prices;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Window;

/** The plan as Timefold sees it: blocks with placements, scored by {@link PlanConstraints}. */
@PlanningSolution
public class DayPlan {

    @PlanningEntityCollectionProperty
    private List<Block> blocks;

    @ProblemFactCollectionProperty
    private List<Window> kitchenSpans;

    @ProblemFactProperty
    private Prices prices;

    @PlanningScore
    private HardSoftLongScore score;

    /** For Timefold. */
    DayPlan() {}

    DayPlan(List<Block> blocks, List<Window> kitchenSpans, Prices prices) {
        this.blocks = blocks;
        this.kitchenSpans = kitchenSpans;
        this.prices = prices;
    }

    /** The same placements for the same copies and breaks of another net. */
    DayPlan of(TaskNet net) {
        List<Block> others = new ArrayList<>();
        for (int i = 0; i < blocks.size(); i++) {
            Block other = i < net.copies().size()
                    ? Block.ofCopy(net.copies().get(i), blocks.get(i).published())
                    : Block.ofBreak(i - net.copies().size(), blocks.get(i).publishedBreak());
            other.placement(blocks.get(i).placement());
            others.add(other);
        }
        return new DayPlan(others, net.unopenedSpans(), net.prices());
    }

    /**
     * Placements of the copies and breaks, those of copies that are alike in the order of their numbers: what has no place is the
     * last of them, so that the first take has a plate if any has. Where all have one they only change if that costs nothing.
     */
    static List<Placement> inOrder(List<Block> blocks, List<Placement> placements, Prices prices) {
        Map<Recipe, List<Integer>> alike = new IdentityHashMap<>();
        for (int i = 0; i < blocks.size(); i++) {
            if (blocks.get(i).copy() != null) {
                alike.computeIfAbsent(blocks.get(i).copy().recipe(), recipe -> new ArrayList<>())
                        .add(i);
            }
        }
        List<Placement> inOrder = new ArrayList<>(placements);
        alike.forEach((recipe, copies) -> {
            List<Placement> sorted = copies.stream()
                    .map(placements::get)
                    .sorted(Comparator.comparing(Placement::nowhere)
                            .thenComparing(place -> place.nowhere() ? 0 : place.end(recipe.last())))
                    .toList();
            boolean gap = false;
            for (int i = 1; i < copies.size(); i++) {
                gap |= placements.get(copies.get(i - 1)).nowhere()
                        && !placements.get(copies.get(i)).nowhere();
            }
            List<Placement> asFound = copies.stream().map(placements::get).toList();
            if (gap || cost(blocks, copies, sorted, prices) <= cost(blocks, copies, asFound, prices)) {
                for (int i = 0; i < copies.size(); i++) {
                    inOrder.set(copies.get(i), sorted.get(i));
                }
            }
        });
        return inOrder;
    }

    private static long cost(List<Block> blocks, List<Integer> copies, List<Placement> placements, Prices prices) {
        long points = 0;
        for (int i = 0; i < copies.size(); i++) {
            points +=
                    placements.get(i).nowhere() ? 0 : blocks.get(copies.get(i)).pointsAt(placements.get(i), prices);
        }
        return points;
    }

    List<Block> blocks() {
        return blocks;
    }

    HardSoftLongScore score() {
        return score;
    }

    /** Any placement may be chosen: those that the search makes cannot be listed beforehand. */
    @ValueRangeProvider(id = "placements")
    CountableValueRange<Placement> placements() {
        return new AnyPlacement();
    }

    private static final class AnyPlacement implements CountableValueRange<Placement> {

        @Override
        public long getSize() {
            return 1;
        }

        @Override
        public Placement get(long index) {
            return Placement.NOWHERE;
        }

        @Override
        public Iterator<Placement> createOriginalIterator() {
            return Collections.singleton(Placement.NOWHERE).iterator();
        }

        @Override
        public boolean isEmpty() {
            return false;
        }

        @Override
        public boolean contains(Placement placement) {
            return placement != null;
        }

        @Override
        public Iterator<Placement> createRandomIterator(Random random) {
            return createOriginalIterator();
        }
    }
}
