package platecall.looks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Look;
import platecall.day.LookProperty;
import platecall.day.Spelling;
import platecall.day.Trouble;
import platecall.looks.Reckoning.Conflict;

/** Look-lives of a day's dishes: the minutes after plate-up between which they may be filmed. */
public final class Looks {

    private static final String SHEET = "looks";
    private static final String DISHES = "dishes";

    private Looks() {}

    /**
     * How long a dish looks right on this day's set.
     *
     * @param dish of {@code day}
     * @throws IllegalArgumentException if {@link #problems} finds something wrong with its look
     */
    public static LookLife of(Day day, Dish dish) {
        List<Trouble> troubles = problems(day, dish);
        if (!troubles.isEmpty()) {
            Trouble first = troubles.get(0);
            throw new IllegalArgumentException(
                    "look of dish [" + dish.id() + "]: " + first.what() + ", but it is [" + first.value() + "]");
        }
        Look look = dish.look();
        return switch (look.kind()) {
            case TABLE -> byHand(look);
            case STEADY -> LookLife.always();
            default -> {
                Reckoning reckoning = Reckoning.of(look.kind());
                yield reckoning.reckon(new Given(reckoning.properties(), values(day, dish)), SetAir.of(day.facts()));
            }
        };
    }

    /** The look-life of every dish, by its id, in sheet order; like {@link #of(Day, Dish)} for each. */
    public static Map<String, LookLife> of(Day day) {
        Map<String, LookLife> lives = new LinkedHashMap<>();
        day.dishes().forEach(dish -> lives.put(dish.id(), of(day, dish)));
        return lives;
    }

    /** What a kind of look is worked out from; empty for minutes by hand and for dressing. */
    public static List<Property> properties(Look.Kind kind) {
        return kind == Look.Kind.TABLE || kind == Look.Kind.STEADY
                ? List.of()
                : Reckoning.of(kind).properties();
    }

    /**
     * Everything that is wrong with the looks of a day: unknown and missing properties, unreadable numbers, values that
     * cannot be. Rows of unknown dishes are passed over here.
     */
    public static List<Trouble> problems(Day day) {
        return day.dishes().stream()
                .flatMap(dish -> problems(day, dish).stream())
                .toList();
    }

    private static LookLife byHand(Look look) {
        int from = Math.min(look.peakFrom().orElse(0), LookLife.MOST_MINUTES);
        int to = Math.min(look.peakTo().orElseThrow(), LookLife.MOST_MINUTES);
        int usable = Math.min(look.usableTo().orElseThrow(), LookLife.MOST_MINUTES);
        return new LookLife(from, to, usable, 0, LookLife.told(from, to, usable, "by hand"), Optional.empty());
    }

    private static List<Trouble> problems(Day day, Dish dish) {
        Look.Kind kind = dish.look().kind();
        List<Trouble> troubles =
                new ArrayList<>(kind == Look.Kind.TABLE ? missingMinutes(day, dish) : strayMinutes(day, dish));
        List<Property> known = properties(kind);
        Map<String, Integer> rowOf = new LinkedHashMap<>();
        for (int row = 0; row < day.looks().size(); row++) {
            LookProperty given = day.looks().get(row);
            if (given.dish().equals(dish.id())) {
                rowTrouble(row, given, kind, known, rowOf).ifPresent(troubles::add);
                rowOf.putIfAbsent(given.property(), row);
            }
        }
        for (Property property : known) {
            if (property.required() && !rowOf.containsKey(property.name())) {
                troubles.add(new Trouble(
                        DISHES,
                        day.dishes().indexOf(dish),
                        "look",
                        kind.word(),
                        "look " + kind.word() + " of dish [" + dish.id() + "] needs " + property.name() + ", "
                                + property.meaning(),
                        "Maybe add a row to sheet looks: " + dish.id() + ", " + property.name() + ", "
                                + example(property)));
            }
        }
        if (troubles.isEmpty() && !known.isEmpty()) {
            for (Conflict conflict : Reckoning.of(kind).conflicts(new Given(known, values(day, dish)))) {
                Integer row = rowOf.get(conflict.property());
                String what = conflict.what() + ", dish [" + dish.id() + "]";
                troubles.add(
                        row == null
                                ? new Trouble(
                                        DISHES,
                                        day.dishes().indexOf(dish),
                                        "look",
                                        kind.word(),
                                        what + " with defaults",
                                        conflict.wayOut())
                                : new Trouble(
                                        SHEET,
                                        row,
                                        "value",
                                        day.looks().get(row).value(),
                                        what,
                                        conflict.wayOut()));
            }
        }
        return troubles;
    }

    private static Optional<Trouble> rowTrouble(
            int row, LookProperty given, Look.Kind kind, List<Property> known, Map<String, Integer> rowOf) {
        Optional<Property> property = known.stream()
                .filter(candidate -> candidate.name().equals(given.property()))
                .findFirst();
        if (property.isEmpty()) {
            return Optional.of(new Trouble(
                    SHEET,
                    row,
                    "property",
                    given.property(),
                    "look " + kind.word() + " of dish [" + given.dish() + "] knows no such property",
                    Spelling.suggest(
                            given.property(), known.stream().map(Property::name).toList())));
        }
        if (rowOf.containsKey(given.property())) {
            return Optional.of(new Trouble(
                    SHEET,
                    row,
                    "property",
                    given.property(),
                    given.property() + " of dish [" + given.dish() + "] is given twice",
                    "Maybe delete one of the two rows."));
        }
        return property.get()
                .fault(given.value())
                .map(fault -> new Trouble(SHEET, row, "value", given.value(), fault.what(), fault.wayOut()));
    }

    private static List<Trouble> missingMinutes(Day day, Dish dish) {
        List<Trouble> troubles = new ArrayList<>();
        Map<String, Optional<Integer>> minutes = new LinkedHashMap<>();
        minutes.put("peak to", dish.look().peakTo());
        minutes.put("usable to", dish.look().usableTo());
        minutes.forEach((column, value) -> {
            if (value.isEmpty()) {
                troubles.add(new Trouble(
                        DISHES,
                        day.dishes().indexOf(dish),
                        column,
                        "",
                        "look table of dish [" + dish.id() + "] needs " + column,
                        "Maybe write the minutes after plate-up, or choose another look."));
            }
        });
        return troubles;
    }

    private static List<Trouble> strayMinutes(Day day, Dish dish) {
        Look look = dish.look();
        if (look.peakFrom().isEmpty()
                && look.peakTo().isEmpty()
                && look.usableTo().isEmpty()) {
            return List.of();
        }
        return List.of(new Trouble(
                DISHES,
                day.dishes().indexOf(dish),
                "look",
                look.kind().word(),
                "minutes by hand of dish [" + dish.id() + "] are read only for look table",
                "Maybe write look table, or clear the minutes."));
    }

    private static Map<String, String> values(Day day, Dish dish) {
        Map<String, String> values = new LinkedHashMap<>();
        day.looks().stream()
                .filter(given -> given.dish().equals(dish.id()))
                .forEach(given -> values.put(given.property(), given.value()));
        return values;
    }

    private static String example(Property property) {
        return property instanceof Property.Word word
                ? word.words().get(0)
                : Limits.plain(((Property.Quantity) property).high() * 0.75);
    }
}
