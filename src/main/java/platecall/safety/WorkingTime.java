package platecall.safety;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Person;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * How long a person works in a shift, and what that owes him or her by some laws. Setting up, clearing and the way home are no
 * part of a plan.
 *
 * @param person whose
 * @param span from the first to the last thing that he or she does
 * @param meals meal breaks within it, in order of time
 */
public record WorkingTime(String person, Span span, List<Span> meals) {

    /** Minutes between two shifts from which on they count as different days of work; common practice, no source. */
    private static final int NEW_DAY = 360;

    public WorkingTime {
        meals = List.copyOf(meals);
    }

    /** Everybody who does something in a plan, be it as a hand double, in the day's order, and in order of time. */
    public static List<WorkingTime> of(Day day, Plan plan) {
        return day.people().stream().flatMap(person -> of(person, day, plan)).toList();
    }

    private static Stream<WorkingTime> of(Person person, Day day, Plan plan) {
        List<Span> busy = Stream.concat(
                        plan.work().stream()
                                .flatMap(work -> work.hands().stream())
                                .filter(hands -> hands.person().equals(person.id()))
                                .map(Hands::span),
                        person.away().stream()
                                .filter(Absence.HandDouble.class::isInstance)
                                .flatMap(absence -> day.spanOf(absence).stream()))
                .toList();
        List<Span> kitchen = day.facts().kitchenHours();
        List<Span> shifts = person.shifts().isEmpty() ? kitchen : Span.intersection(person.shifts(), kitchen);
        List<Span> spans = new ArrayList<>();
        for (Span shift : shifts) {
            fromFirstToLast(busy.stream().filter(shift::overlaps).toList()).ifPresent(spans::add);
        }
        for (int i = spans.size() - 1; i > 0; i--) {
            if (spans.get(i - 1).end().minutesUntil(spans.get(i).start()) < NEW_DAY) {
                spans.set(
                        i - 1,
                        new Span(spans.get(i - 1).start(), spans.remove(i).end()));
            }
        }
        return spans.stream()
                .map(span -> new WorkingTime(
                        person.id(),
                        span,
                        plan.breaks().stream()
                                .filter(meal -> meal.person().equals(person.id()))
                                .map(Break::span)
                                .filter(span::contains)
                                .sorted()
                                .toList()));
    }

    private static Optional<Span> fromFirstToLast(List<Span> busy) {
        return busy.stream()
                .map(Span::start)
                .min(Comparator.naturalOrder())
                .map(first -> new Span(
                        first,
                        busy.stream()
                                .map(Span::end)
                                .max(Comparator.naturalOrder())
                                .orElseThrow()));
    }

    /** Minutes between the first and the last thing, without meals. */
    public int minutes() {
        return span.minutes() - meals.stream().mapToInt(Span::minutes).sum();
    }

    /** Meals that California's law owes and that aren't there, 0 or more ({@link Labour#californiaMeals}). */
    public int mealsMissingInCalifornia() {
        return Math.max(0, Labour.californiaMeals(minutes()) - meals.size());
    }

    /** Whether both sides may agree to go without all of them. */
    public boolean missingMealsMayBeDropped() {
        return switch (mealsMissingInCalifornia()) {
            case 0 -> true;
            case 1 ->
                meals.isEmpty()
                        ? Labour.californiaFirstMealWaivable(minutes())
                        : Labour.californiaSecondMealWaivable(minutes(), false);
            default -> false;
        };
    }

    /** When California's film crews must have had a meal but haven't ({@link Labour#motionPictureMealBy}), if ever; the first time. */
    public Optional<Moment> filmCrewMealMissedBy() {
        List<Moment> since = Stream.concat(
                        Stream.of(span.start()), meals.stream().map(Span::end))
                .toList();
        List<Moment> until = Stream.concat(meals.stream().map(Span::start), Stream.of(span.end()))
                .toList();
        for (int i = 0; i < since.size(); i++) {
            Moment by = Labour.motionPictureMealBy(since.get(i));
            if (until.get(i).isAfter(by)) {
                return Optional.of(by);
            }
        }
        return Optional.empty();
    }

    /** Minutes by which the longest meal break falls short of what the UK owes an adult, 0 or more ({@link Labour#britishBreakMinutes}). */
    public int breakMinutesMissingInBritain() {
        int longest = meals.stream().mapToInt(Span::minutes).max().orElse(0);
        return Math.max(0, Labour.britishBreakMinutes(minutes(), false) - longest);
    }
}
