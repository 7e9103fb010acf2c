package platecall.odds;

import java.util.Map;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.looks.Looks;
import platecall.plan.Plan;

/** Odds by the looks of the day itself. */
public final class TestOdds {

    private TestOdds() {}

    public static Odds of(Day day, Plan plan, int runs, long seed) {
        return Odds.of(
                day,
                plan,
                Looks.of(day).entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey,
                                dish -> new Odds.SurePeak(
                                        dish.getValue().surelyFromMinutes(),
                                        dish.getValue().surelyToMinutes()))),
                runs,
                seed);
    }
}
