package platecall.check;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Place;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.Use;

/** What can be planned, but may not be meant. */
final class Remarks {

    private final Day day;
    private final Recipes recipes;
    private final Map<String, Integer> usable;
    private final Findings remarks;

    Remarks(Day day, Recipes recipes, Map<String, Integer> usable, Findings remarks) {
        this.day = day;
        this.recipes = recipes;
        this.usable = usable;
        this.remarks = remarks;
    }

    void check() {
        setups();
        needs();
        unused();
        for (int row = 0; row < day.people().size(); row++) {
            Person person = day.people().get(row);
            if (day.hoursOf(person).isEmpty()) {
                remarks.add(
                        Sheet.PEOPLE,
                        row,
                        "person",
                        person.id(),
                        "is never in the kitchen in kitchen hours",
                        "Maybe check the hours and absences.");
            }
        }
        walks();
        twice();
    }

    private void setups() {
        Set<String> served = new HashSet<>();
        day.needs().forEach(need -> served.add(need.setup()));
        for (int row = 0; row < day.setups().size(); row++) {
            Setup setup = day.setups().get(row);
            if (!served.contains(setup.id())) {
                remarks.add(Sheet.SETUPS, row, "setup", setup.id(), "wants no food", "Maybe add it to sheet needs.");
            }
            if (setup.release() instanceof Release.At at
                    && at.moment().isBefore(setup.shooting().end())
                    && !at.moment().isBefore(setup.call())) {
                remarks.add(
                        Sheet.SETUPS,
                        row,
                        "release",
                        Wording.clock(day, at.moment()),
                        "is before its last take at worst has ended, at "
                                + Wording.clock(day, setup.shooting().end()),
                        "Maybe at end.");
            }
            for (Setup other : day.setups()) {
                boolean next = other.call().isAfter(setup.call())
                        || other.call().equals(setup.call()) && day.setups().indexOf(other) > row;
                if (next
                        && other.place().equals(setup.place())
                        && setup.shooting().overlaps(other.shooting())) {
                    remarks.add(
                            Sheet.SETUPS,
                            row,
                            "call",
                            Wording.clock(day, setup.call()),
                            "lasts until " + Wording.clock(day, setup.shooting().end()) + " at worst, but setup "
                                    + other.id() + " is called to the same place at "
                                    + Wording.clock(day, other.call()),
                            "Maybe fine if the takes go well.");
                    break;
                }
            }
        }
    }

    private void needs() {
        for (int row = 0; row < day.needs().size(); row++) {
            Need need = day.needs().get(row);
            Setup setup = day.setup(need.setup()).orElse(null);
            if (setup == null) {
                continue;
            }
            int gap = setup.cycleMinutes() - setup.rollingMinutes();
            if (need.use() instanceof Use.ToppedUp toppedUp && toppedUp.minutes() > gap && setup.takesWorst() > 1) {
                remarks.add(
                        Sheet.NEEDS,
                        row,
                        "use",
                        "topped up in " + toppedUp.minutes() + " min",
                        "is longer than the " + Wording.minutes(gap) + " between two takes of setup " + setup.id(),
                        "Maybe a fresh plate each take, or a longer take cycle.");
            }
            Integer usableMinutes = usable.get(need.dish());
            if (need.use() instanceof Use.LastsTakes lasts && usableMinutes != null) {
                int shown = Math.min(lasts.takes(), setup.takesWorst());
                long seen = (shown - 1L) * setup.cycleMinutes() + setup.rollingMinutes();
                if (seen > usableMinutes) {
                    remarks.add(
                            Sheet.NEEDS,
                            row,
                            "use",
                            "lasts " + lasts.takes() + (lasts.takes() == 1 ? " take" : " takes"),
                            "keeps it before the camera for " + Wording.minutes(seen) + ", but it is usable for "
                                    + usableMinutes,
                            "Maybe fewer takes a copy.");
                }
            }
        }
    }

    private void unused() {
        Set<String> needed = new HashSet<>();
        day.needs().forEach(need -> needed.add(need.dish()));
        for (int row = 0; row < day.dishes().size(); row++) {
            String dish = day.dishes().get(row).id();
            if (!needed.contains(dish)) {
                remarks.add(Sheet.DISHES, row, "dish", dish, "is wanted by no setup", "Maybe add it to sheet needs.");
            }
        }
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            if (needed.contains(step.dish()) && !recipes.wanted(step)) {
                remarks.add(
                        Sheet.STEPS,
                        row,
                        "step",
                        step.id(),
                        "leads to no stage of " + step.dish() + " that is wanted, so it is left out",
                        "Maybe name it in column after of a later step.");
            }
            if (step.minutesPerCopy() > 0 && !step.perBatch()) {
                remarks.add(
                        Sheet.STEPS,
                        row,
                        "minutes per copy",
                        String.valueOf(step.minutesPerCopy()),
                        "counts only in a batch",
                        "Maybe fill in column batch, or add it to minutes likely.");
            }
        }
    }

    /** Things that stand twice, in a sheet or in a cell. */
    private void twice() {
        for (int row = 0; row < day.ingredients().size(); row++) {
            Ingredient ingredient = day.ingredients().get(row);
            boolean before = day.ingredients().subList(0, row).stream()
                    .anyMatch(other -> other.dish().equals(ingredient.dish())
                            && other.name().equals(ingredient.name())
                            && other.step().equals(ingredient.step()));
            if (before) {
                remarks.add(
                        Sheet.INGREDIENTS,
                        row,
                        "ingredient",
                        ingredient.name(),
                        "is there twice for dish " + ingredient.dish() + ", and both count",
                        "Maybe remove one of the two.");
            }
            twice(Sheet.INGREDIENTS, row, "allergens", ingredient.allergens());
        }
        for (int row = 0; row < day.needs().size(); row++) {
            twice(Sheet.NEEDS, row, "eaten by", day.needs().get(row).eatenBy());
        }
        for (int row = 0; row < day.steps().size(); row++) {
            Step step = day.steps().get(row);
            twice(Sheet.STEPS, row, "after", step.after());
            twice(Sheet.STEPS, row, "any time after", step.anyTimeAfter());
            for (StationUse use : step.stations()) {
                twice(Sheet.STEPS, row, "station", use.anyOf());
            }
        }
        for (int row = 0; row < day.people().size(); row++) {
            twice(Sheet.PEOPLE, row, "skills", day.people().get(row).skills());
        }
        for (int row = 0; row < day.cast().size(); row++) {
            twice(Sheet.CAST, row, "allergies", day.cast().get(row).allergies());
        }
    }

    private void twice(Sheet sheet, int row, String column, List<String> names) {
        Set<String> seen = new HashSet<>();
        names.stream().filter(name -> !seen.add(name)).findFirst().ifPresent(name -> {
            remarks.add(sheet, row, column, name, "is named twice, which means no more than once", "Maybe remove one.");
        });
    }

    /** Places between which food is carried though no walk is given. */
    private void missingWalks() {
        Set<Set<String>> told = new HashSet<>();
        for (Need need : day.needs()) {
            if (!recipes.sound(need.dish())) {
                continue;
            }
            String from =
                    day.step(need.dish(), need.stage()).map(day::placeAfter).orElse("");
            String to = day.setup(need.setup()).map(Setup::place).orElse("");
            Optional<Place> start = day.place(from);
            Optional<Place> end = day.place(to);
            if (start.isPresent()
                    && end.isPresent()
                    && !from.equals(to)
                    && !start.get().walkMinutes().containsKey(to)
                    && !end.get().walkMinutes().containsKey(from)
                    && told.add(Set.of(from, to))) {
                remarks.add(
                        Sheet.PLACES,
                        day.places().indexOf(start.get()),
                        "walk",
                        "",
                        "no walk is given between " + from + " and " + to + ", so it counts as 0 minutes",
                        "Maybe " + to + ":4.");
            }
        }
    }

    private void walks() {
        missingWalks();
        for (int row = 0; row < day.places().size(); row++) {
            Place place = day.places().get(row);
            Integer own = place.walkMinutes().get(place.id());
            if (own != null) {
                remarks.add(
                        Sheet.PLACES,
                        row,
                        "walk",
                        place.id() + ":" + own,
                        "leads to the place itself, so it plays no part",
                        "Maybe another place is meant.");
            }
            for (Place other : day.places().subList(0, row)) {
                Integer there = other.walkMinutes().get(place.id());
                Integer back = place.walkMinutes().get(other.id());
                if (there != null && back != null && !there.equals(back)) {
                    remarks.add(
                            Sheet.PLACES,
                            row,
                            "walk",
                            other.id() + ":" + back,
                            "is " + there + " in the row of " + other.id(),
                            "Maybe the same both ways.");
                }
            }
        }
    }
}
