package platecall.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Step;
import platecall.units.Moment;
import platecall.units.Span;

/** Whether work and shifts leave room for the meal breaks that the day asks for. */
final class Meals {

    private static final int MOST_NAMES = 4;

    private final Day day;
    private final Recipes recipes;
    private final Findings found;

    Meals(Day day, Recipes recipes, Findings found) {
        this.day = day;
        this.recipes = recipes;
        this.found = found;
    }

    void check() {
        Optional<Integer> after = day.facts().mealAfterMinutes();
        if (after.isPresent()) {
            longestWork(after.get());
            shifts(after.get());
        }
    }

    /** Work without a pause in which hands would have to be on for longer than anybody may be. */
    private void longestWork(int most) {
        Optional<Step> longest = day.steps().stream()
                .filter(step -> step.hands() > 0 && recipes.wanted(step))
                .max(Comparator.comparingInt(EmptyKitchen::longestHandsOn));
        if (longest.isPresent() && EmptyKitchen.longestHandsOn(longest.get()) > most) {
            tooShort(
                    most,
                    "step " + longest.get().id() + " of " + longest.get().dish(),
                    EmptyKitchen.longestHandsOn(longest.get()));
            return;
        }
        Optional<Need> farthest = day.needs().stream()
                .filter(need -> day.dish(need.dish()).isPresent() && recipes.sound(need.dish()))
                .max(Comparator.comparingInt(this::thereAndBack));
        if (farthest.isPresent() && thereAndBack(farthest.get()) > most) {
            tooShort(
                    most,
                    "carrying " + farthest.get().dish() + " to setup "
                            + farthest.get().setup(),
                    thereAndBack(farthest.get()));
        }
    }

    private int thereAndBack(Need need) {
        return day.minutesToCamera(need) + day.minutesBack(need);
    }

    private void tooShort(int most, String work, int minutes) {
        found.add(
                Sheet.DAY,
                -1,
                "meal after",
                String.valueOf(most),
                "leaves no time for " + work + ", which keeps hands on for " + Wording.minutes(minutes)
                        + " without a pause",
                "Maybe 360, or a shorter step.");
    }

    private void shifts(int most) {
        int meal = day.facts().mealMinutes();
        List<String> without = day.people().stream()
                .filter(person -> !hasRoom(person, most, meal))
                .map(Person::id)
                .toList();
        if (!without.isEmpty()) {
            found.add(
                    Sheet.DAY,
                    -1,
                    "meal minutes",
                    String.valueOf(meal),
                    "do not fit into the shifts of "
                            + (without.size() > MOST_NAMES ? without.size() + " people" : Wording.list(without))
                            + " so that nobody works longer than " + Wording.minutes(most) + " without a break",
                    "Maybe a shorter break, or other shifts and absences.");
        }
    }

    /** Whether breaks fit into each shift, each as late as it may be; being away does not end a shift. */
    private boolean hasRoom(Person person, int most, int meal) {
        List<Span> kitchen = day.facts().kitchenHours();
        List<Span> shifts = person.shifts().isEmpty() ? kitchen : Span.intersection(person.shifts(), kitchen);
        List<Span> there = day.hoursOf(person);
        for (Span shift : shifts) {
            Moment since = shift.start();
            while (since.minutesUntil(shift.end()) > most) {
                Moment from = since;
                Optional<Moment> start = there.stream()
                        .map(span -> Moment.earlier(from.plus(most), span.end().plus(-meal)))
                        .filter(last -> !last.isBefore(from)
                                && there.stream()
                                        .anyMatch(span -> !span.start().isAfter(last)
                                                && !last.plus(meal).isAfter(span.end())))
                        .max(Comparator.naturalOrder());
                if (start.isEmpty()) {
                    return false;
                }
                since = start.get().plus(meal);
            }
        }
        return true;
    }
}
