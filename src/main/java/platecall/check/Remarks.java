package platecall.check;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Place;
import platecall.day.Release;
import platecall.day.Setup;
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

    private void walks() {
        for (int row = 0; row < day.places().size(); row++) {
            Place place = day.places().get(row);
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
