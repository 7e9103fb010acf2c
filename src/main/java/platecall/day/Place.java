package platecall.day;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import platecall.units.Span;

/**
 * A kitchen, a set, or both.
 *
 * @param id short name, unique
 * @param walkMinutes minutes to walk from here to other places, each 0 to 240; the way back takes as long
 * @param hours when work is possible here (a company move closes one place and opens another); empty: always
 * @param heardOnSet whether noise made here disturbs a silent set
 */
public record Place(String id, Map<String, Integer> walkMinutes, List<Span> hours, boolean heardOnSet) {

    public Place {
        Demand.text(id, "place");
        walkMinutes = java.util.Collections.unmodifiableMap(new TreeMap<>(walkMinutes));
        walkMinutes.forEach((to, minutes) ->
                Demand.that(minutes >= 0 && minutes <= 240, "walk to " + to + " must be 0 to 240 minutes", minutes));
        hours = Span.union(hours);
    }

    /** The same with other hours. */
    public Place withHours(List<Span> others) {
        return new Place(id, walkMinutes, others, heardOnSet);
    }
}
