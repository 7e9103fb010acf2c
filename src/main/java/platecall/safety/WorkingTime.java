package platecall.safety;

import java.util.ArrayList;
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
 * How long a person works on one day of work, and what that owes him or her by some laws. Only steps, walks to set and hand
 * doubling count: ovens to set, food to bring back, setting up, clearing and the way home come on top.
 *
 * @param person whose
 * @param span from the first to the last thing that he or she does
 * @param breaks within it, in order of time: meal breaks, hours between two shifts, and absences that sheets give by the clock
 */
public record WorkingTime(String person, Span span, List<Span> breaks) {

    /** Minutes without work, not all on one shift, from which on another day of work begins; common practice, no source. */
    private static final int NEW_DAY = 360;

    public WorkingTime {
        breaks = List.copyOf(breaks);
    }

    /** Everybody who does something in a plan, be it as a hand double: those of the sheets in their order, then others. */
    public static List<WorkingTime> of(Day day, Plan plan) {
        return Stream.concat(
                        day.people().stream().map(Person::id),
                        plan.work().stream()
                                .flatMap(work -> work.hands().stream())
                                .map(Hands::person)
                                .sorted())
                .distinct()
                .flatMap(person -> of(person, day, plan))
                .toList();
    }

    private static Stream<WorkingTime> of(String id, Day day, Plan plan) {
        Optional<Person> person =
                day.people().stream().filter(one -> one.id().equals(id)).findFirst();
        List<Span> away = away(person, day, Absence.During.class);
        List<Span> busy = Span.union(Stream.concat(
                        plan.work().stream()
                                .flatMap(work -> work.hands().stream())
                                .filter(hands -> hands.person().equals(id))
                                .map(Hands::span),
                        away(person, day, Absence.HandDouble.class).stream())
                .toList());
        List<Span> kitchen = day.facts().kitchenHours();
        List<Span> own = person.map(Person::shifts).orElse(List.of());
        List<Span> shifts = own.isEmpty() ? kitchen : Span.intersection(own, kitchen);
        List<Span> days = new ArrayList<>();
        for (Span next : busy) {
            Span last = days.isEmpty() ? null : days.get(days.size() - 1);
            if (last != null && isOfOneDay(last.end(), next.start(), shifts)) {
                days.set(days.size() - 1, new Span(last.start(), next.end()));
            } else {
                days.add(next);
            }
        }
        return days.stream().map(span -> new WorkingTime(id, span, breaks(id, span, busy, shifts, away, plan)));
    }

    private static List<Span> away(Optional<Person> person, Day day, Class<? extends Absence> kind) {
        return person.map(Person::away).orElse(List.of()).stream()
                .filter(kind::isInstance)
                .flatMap(absence -> day.spanOf(absence).stream())
                .toList();
    }

    private static boolean isOfOneDay(Moment end, Moment start, List<Span> shifts) {
        return end.minutesUntil(start) < NEW_DAY
                || shifts.stream().anyMatch(shift -> shift.contains(new Span(end, start)));
    }

    private static List<Span> breaks(
            String id, Span span, List<Span> busy, List<Span> shifts, List<Span> away, Plan plan) {
        List<Span> off = new ArrayList<>(away);
        for (int i = 1; i < shifts.size(); i++) {
            off.add(new Span(shifts.get(i - 1).end(), shifts.get(i).start()));
        }
        off.removeIf(time -> busy.stream().anyMatch(time::overlaps));
        plan.breaks().stream()
                .filter(meal -> meal.person().equals(id))
                .map(Break::span)
                .forEach(off::add);
        return Span.union(off.stream().filter(span::contains).toList());
    }

    /** Minutes between the first and the last thing, without breaks. */
    public int minutes() {
        return span.minutes() - breaks.stream().mapToInt(Span::minutes).sum();
    }

    /** Meals that California's law owes and that aren't there, 0 or more ({@link Labour#californiaMeals}). */
    public int mealsMissingInCalifornia() {
        return Math.max(0, Labour.californiaMeals(minutes()) - breaks.size());
    }

    /** Whether both sides may agree to go without all of them. */
    public boolean missingMealsMayBeDropped() {
        return switch (mealsMissingInCalifornia()) {
            case 0 -> true;
            case 1 ->
                breaks.isEmpty()
                        ? Labour.californiaFirstMealWaivable(minutes())
                        : Labour.californiaSecondMealWaivable(minutes(), false);
            default -> false;
        };
    }

    /** When California's film crews must have had a meal but haven't ({@link Labour#motionPictureMealBy}), if ever; the first time. */
    public Optional<Moment> filmCrewMealMissedBy() {
        List<Moment> since = Stream.concat(
                        Stream.of(span.start()), breaks.stream().map(Span::end))
                .toList();
        List<Moment> until = Stream.concat(breaks.stream().map(Span::start), Stream.of(span.end()))
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
        int longest = breaks.stream().mapToInt(Span::minutes).max().orElse(0);
        return Math.max(0, Labour.britishBreakMinutes(minutes(), false) - longest);
    }
}
