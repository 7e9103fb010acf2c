package platecall.report;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Person;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** Who does what the plan books nobody's hands for: setting an oven, starting a step, bringing food back. */
final class Duty {

    private final Day day;
    private final Plan plan;
    private final Map<String, Set<Work>> worksOf = new HashMap<>();

    Duty(Day day, Plan plan) {
        this.day = day;
        this.plan = plan;
        plan.work()
                .forEach(work -> work.copies()
                        .forEach(copy -> worksOf.computeIfAbsent(copy, key -> new LinkedHashSet<>())
                                .add(work)));
    }

    /** The minute that begins then. */
    static Span minute(Moment at) {
        return new Span(at, at.plus(1));
    }

    /** Whether a person is on duty all the time, neither away nor at a meal. */
    boolean isOn(String person, Span time) {
        return day.people().stream()
                        .filter(it -> it.id().equals(person))
                        .anyMatch(it -> day.hoursOf(it).stream()
                                .anyMatch(span -> !span.start().isAfter(time.start())
                                        && !span.end().isBefore(time.end())))
                && plan.breaks().stream()
                        .noneMatch(meal ->
                                meal.person().equals(person) && meal.span().overlaps(time));
    }

    /** Whether a person is on duty all the time and has no hands on any work. */
    boolean isFree(String person, Span time) {
        return isOn(person, time)
                && plan.work().stream()
                        .flatMap(work -> work.hands().stream())
                        .noneMatch(hands ->
                                hands.person().equals(person) && hands.span().overlaps(time));
    }

    /** Who sets an oven at {@code at} for {@code use}: who puts the food in if free then, else the first who is. */
    Optional<String> setter(Work use, Moment at) {
        List<String> putIn = use.hands().stream()
                .filter(hands -> hands.span().start().equals(use.span().start()))
                .map(Hands::person)
                .toList();
        return rather(putIn, minute(at));
    }

    /** One of these people if free, else the first of all who is; if nobody is, who is on duty at least. */
    private Optional<String> rather(List<String> people, Span time) {
        List<String> all = day.people().stream().map(Person::id).toList();
        return first(people, person -> isFree(person, time))
                .or(() -> first(all, person -> isFree(person, time)))
                .or(() -> first(people, person -> isOn(person, time)))
                .or(() -> first(all, person -> isOn(person, time)))
                .or(() -> people.stream().findFirst());
    }

    private static Optional<String> first(List<String> people, java.util.function.Predicate<String> which) {
        return people.stream().filter(which).findFirst();
    }

    /** Who starts a work that begins without hands: who had hands last on one of its copies before, if free then; somebody always. */
    Optional<String> starter(Work work) {
        if (work.hands().stream()
                .anyMatch(hands -> hands.span().start().equals(work.span().start()))) {
            return Optional.empty();
        }
        Set<Work> before = new HashSet<>();
        work.copies().forEach(copy -> before.addAll(worksOf.getOrDefault(copy, Set.of())));
        List<String> last = before.stream()
                .filter(it -> !it.span().end().isAfter(work.span().start()))
                .flatMap(it -> it.hands().stream())
                .max(LAST)
                .map(Hands::person)
                .stream()
                .toList();
        return rather(last, minute(work.span().start()))
                .or(() -> day.people().stream().map(Person::id).findFirst());
    }

    /** Who brings a copy back: who had hands on it last, of several the first by name, if free for the walk. */
    Optional<String> bringer(KeptBack kept) {
        return worksOf.getOrDefault(kept.copy().id(), Set.of()).stream()
                .flatMap(work -> work.hands().stream())
                .max(LAST)
                .flatMap(hands -> rather(List.of(hands.person()), kept.walk()));
    }

    private static final Comparator<Hands> LAST = Comparator.comparing(
                    (Hands hands) -> hands.span().end())
            .thenComparing(Hands::person, Comparator.reverseOrder());
}
