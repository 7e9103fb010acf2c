package platecall.solve;

import ai.timefold.solver.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import ai.timefold.solver.core.api.score.stream.Constraint;
import ai.timefold.solver.core.api.score.stream.ConstraintCollectors;
import ai.timefold.solver.core.api.score.stream.ConstraintFactory;
import ai.timefold.solver.core.api.score.stream.ConstraintProvider;
import platecall.day.Prices;
import platecall.tasks.TaskNet.Window;

/**
 * What a plan costs. Hard: copies and meal breaks that have no place; all other rules hold in every kitchen that the
 * search builds. Soft: points by the day's prices, in one sum, so that the stylist's prices decide what outweighs what.
 */
public final class PlanConstraints implements ConstraintProvider {

    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        return new Constraint[] {
            factory.forEach(Block.class)
                    .filter(block -> block.placement().nowhere())
                    .penalizeLong(HardSoftLongScore.ONE_HARD, block -> 1L)
                    .asConstraint("has no place"),
            factory.forEach(Block.class)
                    .filter(Block::isPlacedCopy)
                    .penalizeLong(HardSoftLongScore.ONE_SOFT, Block::latePoints)
                    .asConstraint("late at camera"),
            factory.forEach(Block.class)
                    .filter(Block::isPlacedCopy)
                    .penalizeLong(HardSoftLongScore.ONE_SOFT, Block::offPeakPoints)
                    .asConstraint("outside its peak"),
            factory.forEach(Block.class)
                    .filter(block -> block.isPlacedCopy() && block.placement().handChanges() > 0)
                    .join(Prices.class)
                    .penalizeLong(
                            HardSoftLongScore.ONE_SOFT,
                            (block, prices) -> (long) block.placement().handChanges() * prices.handChange())
                    .asConstraint("change of hands"),
            factory.forEach(Block.class)
                    .filter(block -> block.isPlaced() && block.movedMinutes() > 0)
                    .join(Prices.class)
                    .penalizeLong(
                            HardSoftLongScore.ONE_SOFT, (block, prices) -> block.movedMinutes() * prices.movedMinute())
                    .asConstraint("moved from the published plan"),
            factory.forEach(Window.class)
                    .join(Block.class)
                    .filter((span, block) ->
                            block.isPlacedCopy() && block.placement().firstIn(span) != Integer.MAX_VALUE)
                    .groupBy(
                            (span, block) -> span,
                            ConstraintCollectors.min((Window span, Block block) ->
                                    block.placement().firstIn(span)))
                    .join(Prices.class)
                    .penalizeLong(
                            HardSoftLongScore.ONE_SOFT,
                            (span, first, prices) -> (long) (span.end() - first) * prices.kitchenMinute())
                    .asConstraint("kitchen open")
        };
    }
}
