package platecall.cli;

import java.util.HashMap;
import java.util.Map;
import platecall.day.Day;
import platecall.looks.Looks;
import platecall.odds.Odds.SurePeak;

/** When each dish of a day surely looks its best, for those who rehearse plans. */
final class SurePeaks {

    private SurePeaks() {}

    /** By the dish's id. */
    static Map<String, SurePeak> of(Day day) {
        Map<String, SurePeak> peaks = new HashMap<>();
        Looks.of(day)
                .forEach((dish, look) ->
                        peaks.put(dish, new SurePeak(look.surelyFromMinutes(), look.surelyToMinutes())));
        return peaks;
    }
}
