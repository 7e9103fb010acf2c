package platecall.safety;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A core temperature and how long it must be held.
 *
 * @param kinds kinds of food that it is for
 * @param celsius least core temperature
 * @param seconds least time at it; 0: to reach it is enough
 * @param edition of the source
 * @param source where it stands
 */
public record Cooking(Set<FoodKind> kinds, double celsius, int seconds, String edition, String source) {

    static List<Cooking> rowsOf(String profile) {
        return SourcedCsv.rows("cooking.csv", profile).stream()
                .map(row -> new Cooking(
                        SourcedCsv.list(row.get("food")).stream()
                                .map(food -> FoodKind.valueOf(food.toUpperCase(Locale.ROOT)))
                                .collect(Collectors.toUnmodifiableSet()),
                        SourcedCsv.number(row, "celsius"),
                        Integer.parseInt(row.get("seconds")),
                        row.get("edition"),
                        row.get("source")))
                .toList();
    }

    /** Whether a core of {@code coreCelsius}, held for {@code heldSeconds}, is enough. */
    public boolean reached(double coreCelsius, double heldSeconds) {
        return coreCelsius >= celsius && heldSeconds >= seconds;
    }
}
