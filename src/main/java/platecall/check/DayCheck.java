package platecall.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import platecall.copies.CopyCounts;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Look;
import platecall.day.Need;
import platecall.day.Trouble;
import platecall.looks.LookLife;
import platecall.looks.Looks;
import platecall.safety.Profile;
import platecall.units.Moment;

/** What is wrong with a day as a whole, before anything is planned; each record is valid by itself already. */
public final class DayCheck {

    /** As many people as the search can tell apart. */
    private static final int MOST_PEOPLE = 60;

    /** Letters of a country's code, ISO 3166-1. */
    private static final int LONGEST_CODE = 3;

    private DayCheck() {}

    /**
     * All that is wrong or cannot work, each thing once, in sheet and row order; empty for a day that can be planned.
     * Something may still come late when everything is wanted at once: only a plan can tell.
     */
    public static List<Trouble> troubles(Day day) {
        Findings found = found(day, true);
        MissedDates missed = new MissedDates(day);
        if (found.count() > 0 && missed.any()) {
            // so that hours on a wrong date are told once, and not with all that follows from them
            Findings others = found(missed.mended(), missed.kitchenIsKnown());
            if (missed.ofKitchen() || others.count() < found.count()) {
                missed.tell(others);
                return others.inSheetOrder();
            }
        }
        return found.inSheetOrder();
    }

    /** @param hoursHold whether anything can be told of what is done when */
    private static Findings found(Day day, boolean hoursHold) {
        Findings found = new Findings();
        References.check(day, found);
        size(day, found);
        safetyProfile(day, found);
        Recipes recipes = new Recipes(day);
        recipes.check(found);
        Calls calls = new Calls(day);
        calls.check(found);
        Optional<CopyCounts> counts = counts(day, recipes, calls);
        counts.ifPresent(count -> found.addAll(count.troubles()));
        ToIntFunction<Need> copiesOf =
                counts.<ToIntFunction<Need>>map(count -> count::copiesOf).orElse(need -> atWorst(day, need));
        Loads loads = new Loads(day, copiesOf, found);
        Set<String> overloaded = loads.circuits();
        Optional<EmptyKitchen> kitchen =
                hoursHold && calls.withinTwoWeeks() ? Optional.of(new EmptyKitchen(day, copiesOf)) : Optional.empty();
        Set<String> full = kitchen.isPresent() ? loads.alwaysOn(overloaded) : Set.of();
        Set<List<String>> workable = new Work(day, recipes, kitchen, overloaded, full, found).check();
        if (kitchen.isPresent()) {
            loads.heldUntilRelease();
            new Readiness(day, recipes, kitchen.get(), workable, usableMinutes(day), copiesOf).check(found);
        }
        found.addAll(Looks.problems(day));
        new Eaters(day, recipes).check(need -> true, found);
        new Meals(day, recipes, found).check();
        return found;
    }

    /**
     * Of {@link #troubles} only what is wrong with the day's words and with who eats what, not what can't be done in time: on a day
     * that is under way much has been done already, and what can't be done any more is for the plan to tell. What was eaten in a
     * setup that is shot can't be refused any more either: see {@link #served}.
     *
     * @param now up to when the day has gone
     */
    public static List<Trouble> ofDayUnderWay(Day day, Moment now) {
        Findings found = new Findings();
        References.check(day, found);
        size(day, found);
        safetyProfile(day, found);
        Recipes recipes = new Recipes(day);
        recipes.check(found);
        Calls calls = new Calls(day);
        calls.check(found);
        counts(day, recipes, calls).ifPresent(count -> found.addAll(count.troubles()));
        new Work(day, recipes, Optional.empty(), Set.of(), Set.of(), found).check();
        found.addAll(Looks.problems(day));
        new Eaters(day, recipes)
                .check(
                        need -> day.setup(need.setup())
                                .filter(setup -> setup.isOver(now))
                                .isEmpty(),
                        found);
        return found.inSheetOrder();
    }

    /**
     * Who was served by now what he or she must not eat: not to be mended in the sheets, but to be told at once. The value is the
     * eater, the row that of the need.
     */
    public static List<Trouble> served(Day day, Moment now) {
        Findings found = new Findings();
        new Eaters(day, new Recipes(day))
                .check(
                        need -> day.setup(need.setup())
                                .filter(setup -> !setup.call().isAfter(now))
                                .isPresent(),
                        found);
        return found.inSheetOrder();
    }

    /** Of {@link #troubles} only names that lead nowhere or are there twice, and steps without an order. */
    public static List<Trouble> namesAndOrder(Day day) {
        Findings found = new Findings();
        References.check(day, found);
        new Recipes(day).check(found);
        return found.inSheetOrder();
    }

    /**
     * Of {@link #troubles} only what can be told beside cells that can't be read: names that lead nowhere or are there
     * twice, circles, eaters, the safety profile, looks, and a food budget that is too small.
     */
    public static List<Trouble> besideUnreadable(Day day) {
        Findings found = new Findings();
        References.check(day, found);
        safetyProfile(day, found);
        Recipes recipes = new Recipes(day);
        recipes.checkOrder(found);
        counts(day, recipes, new Calls(day)).stream()
                .flatMap(counts -> counts.troubles().stream())
                .filter(trouble -> trouble.column().equals("food budget"))
                .forEach(trouble -> found.addAll(List.of(trouble)));
        found.addAll(Looks.problems(day));
        new Eaters(day, recipes).check(need -> true, found);
        return found.inSheetOrder();
    }

    /** What can be planned but may not be meant, in sheet and row order; only for a day without troubles. */
    public static List<Trouble> remarks(Day day) {
        Findings remarks = new Findings();
        Recipes recipes = new Recipes(day);
        new Remarks(day, recipes, usableMinutes(day), remarks).check();
        new Eaters(day, recipes).remark(remarks);
        return remarks.inSheetOrder();
    }

    /** Of {@link #remarks} only those on what people eat: no plan may be called safe without them. */
    public static List<Trouble> remarksOnEaters(Day day) {
        Findings remarks = new Findings();
        new Eaters(day, new Recipes(day)).remark(remarks);
        return remarks.inSheetOrder();
    }

    /** How many copies; empty if a need leads nowhere, for then they can't be counted. */
    private static Optional<CopyCounts> counts(Day day, Recipes recipes, Calls calls) {
        boolean countable = calls.withinTwoWeeks()
                && day.needs().stream()
                        .allMatch(need -> day.setup(need.setup()).isPresent()
                                && day.dish(need.dish()).isPresent()
                                && day.step(need.dish(), need.stage()).isPresent()
                                && recipes.sound(need.dish()));
        return countable ? Optional.of(CopyCounts.of(day)) : Optional.empty();
    }

    private static int atWorst(Day day, Need need) {
        return need.copies()
                .orElseGet(() -> CameraTime.copiesFor(
                        need, day.setup(need.setup()).orElseThrow().takesWorst()));
    }

    /**
     * Minutes after plate-up for which each dish is usable; none for what keeps all day, and none at all as long as
     * anything is wrong with the looks.
     */
    private static Map<String, Integer> usableMinutes(Day day) {
        Map<String, Integer> usable = new HashMap<>();
        if (Looks.problems(day).isEmpty()) {
            for (Dish dish : day.dishes()) {
                int minutes = dish.look().kind() == Look.Kind.TABLE
                        ? dish.look().usableTo().orElseThrow()
                        : Looks.of(day, dish).usableToMinutes();
                if (minutes < LookLife.DAY_MINUTES) {
                    usable.put(dish.id(), minutes);
                }
            }
        }
        return usable;
    }

    private static void safetyProfile(Day day, Findings found) {
        String name = day.facts().safetyProfile();
        if (Profile.named(name).isEmpty()) {
            // a country's code is no slip of the pen for another one's
            List<String> words = Profile.names().stream()
                    .filter(known -> known.length() > LONGEST_CODE)
                    .toList();
            found.add(
                    Sheet.DAY,
                    -1,
                    "safety profile",
                    name,
                    "is no food-safety profile that is known",
                    Wording.maybe(name, words, "Maybe one of " + String.join(", ", Profile.mainNames()) + "."));
        }
    }

    private static void size(Day day, Findings found) {
        nothing(Sheet.SETUPS, day.setups(), "no setup is wanted", found);
        nothing(Sheet.NEEDS, day.needs(), "no setup wants any food", found);
        nothing(Sheet.PEOPLE, day.people(), "nobody is there to cook and carry", found);
        if (day.people().size() > MOST_PEOPLE) {
            found.add(
                    Sheet.PEOPLE,
                    MOST_PEOPLE,
                    "person",
                    day.people().get(MOST_PEOPLE).id(),
                    "is one too many: at most " + MOST_PEOPLE + " people can be planned",
                    "Maybe leave out those who don't touch food.");
        }
    }

    private static void nothing(Sheet sheet, List<?> rows, String what, Findings found) {
        if (rows.isEmpty()) {
            found.add(sheet, -1, "", "", what, "Maybe add a row.");
        }
    }
}
