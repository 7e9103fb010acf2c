package platecall.day;

import java.util.List;

/**
 * A use of one station, or of one of several that serve as well.
 *
 * @param anyOf ids of the stations of which one is used, at least one
 * @param units how much of it, at least 1
 */
public record StationUse(List<String> anyOf, int units) {

    public StationUse {
        Demand.that(!anyOf.isEmpty(), "a station use must name a station", anyOf);
        anyOf = List.copyOf(anyOf);
        Demand.that(units >= 1 && units <= 10_000, "units of a station must be from 1 to 10000", units);
    }
}
