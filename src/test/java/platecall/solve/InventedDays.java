package platecall.solve;

import java.util.Optional;
import platecall.day.Day;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.tasks.Breakdown;

/** Invented days and quick plans of them, for tests elsewhere. */
public final class InventedDays {

    private InventedDays() {}

    /** A day with every rule: so many tasks, the share of the hands' time that is work, a seed. */
    public static Day day(int size, double load, long seed) {
        return DayGenerator.day(size, load, seed, true);
    }

    /** A plan after a few hundred moves, of two copies where the day doesn't say; a late or missing copy is no matter. */
    public static Plan plan(Day day, long seed) {
        return Planner.plan(
                        day,
                        Breakdown.of(
                                day,
                                dish -> Looks.of(day, dish),
                                need -> need.copies().orElse(2)),
                        "digest",
                        "test",
                        new Planner.Limits(60, Optional.of(400L), seed, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE)
                .plan();
    }
}
