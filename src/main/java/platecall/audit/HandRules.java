package platecall.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Step;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.units.Moment;
import platecall.units.Span;

/** Hands do one thing at a time, with the skill for it, on shift, and have their meal breaks. */
final class HandRules {

    private final Ledger ledger;
    private final Breaches breaches;

    private HandRules(Ledger ledger, Breaches breaches) {
        this.ledger = ledger;
        this.breaches = breaches;
    }

    static void check(Ledger ledger, Breaches breaches) {
        HandRules rules = new HandRules(ledger, breaches);
        rules.oneThingAtATime();
        ledger.plan().work().stream().filter(work -> !ledger.hasBegun(work)).forEach(rules::enoughHands);
        ledger.day().people().forEach(rules::meals);
    }

    /** What a person is at, and when: what was still to come when the plan was made; and whether that has to be on shift. */
    private record Doing(String what, Span span, boolean onShift) {}

    private void oneThingAtATime() {
        Map<String, List<Doing>> doings = new LinkedHashMap<>();
        for (Work work : ledger.plan().work()) {
            for (Hands hands : work.hands()) {
                ledger.stillToCome(hands.span())
                        .ifPresent(span -> doings.computeIfAbsent(hands.person(), id -> new ArrayList<>())
                                .add(new Doing(ledger.name(work), span, true)));
            }
        }
        for (Break meal : ledger.plan().breaks()) {
            ledger.stillToCome(meal.span())
                    .ifPresent(span -> doings.computeIfAbsent(meal.person(), id -> new ArrayList<>())
                            // a break that has begun can't be had at another time, and isn't work
                            .add(new Doing(
                                    "a meal break",
                                    span,
                                    !ledger.plan().hasBegun(meal.span().start()))));
        }
        doings.forEach((person, all) -> {
            onShift(person, all);
            oneThingAtATime(person, all);
        });
    }

    private void oneThingAtATime(String person, List<Doing> all) {
        Doing last = null;
        for (Doing doing :
                all.stream().sorted(Comparator.comparing(Doing::span)).toList()) {
            if (last != null) {
                Doing before = last;
                int shared = doing.span().sharedMinutes(before.span());
                breaches.add(
                        Rule.HANDS,
                        shared,
                        () -> person + " is still at " + before.what() + " when " + doing.what() + " starts at "
                                + ledger.words().clock(doing.span().start()) + ", for " + Words.minutes(shared));
            }
            if (last == null || doing.span().end().isAfter(last.span().end())) {
                last = doing;
            }
        }
    }

    private void onShift(String person, List<Doing> all) {
        List<Span> hours = ledger.person(person).map(ledger.day()::hoursOf).orElse(List.of());
        for (Doing doing : all) {
            int off = doing.onShift()
                    ? doing.span().minutes()
                            - hours.stream()
                                    .mapToInt(doing.span()::sharedMinutes)
                                    .sum()
                    : 0;
            breaches.add(
                    Rule.SHIFT,
                    off,
                    () -> person + " is at " + doing.what() + " from "
                            + ledger.words().clock(doing.span()) + ", " + Words.minutes(off)
                            + " of it off shift or away");
        }
    }

    /** A stretch of a work in which hands must be on, the same from its start to its end. */
    private record Part(Span span, int hands, Optional<String> skill) {}

    private void enoughHands(Work work) {
        for (Part part : parts(work)) {
            long there = work.hands().stream()
                    .filter(hands -> hasSkill(hands.person(), part.skill()))
                    .collect(Collectors.groupingBy(Hands::person, Collectors.mapping(Hands::span, Collectors.toList())))
                    .values()
                    .stream()
                    .map(spans -> Span.union(spans).stream()
                            .mapToInt(part.span()::sharedMinutes)
                            .sum())
                    .sorted(Comparator.reverseOrder())
                    .limit(part.hands())
                    .mapToLong(Integer::longValue)
                    .sum();
            long missing = (long) part.hands() * part.span().minutes() - there;
            breaches.add(
                    Rule.SKILL,
                    missing,
                    () -> ledger.name(work) + " needs "
                            + (part.hands() == 1 ? "1 pair" : part.hands() + " pairs") + " of hands"
                            + part.skill().map(skill -> " that can " + skill).orElse("") + " from "
                            + ledger.words().clock(part.span()) + " and lacks " + Words.minutes(missing) + " of them");
        }
    }

    private boolean hasSkill(String person, Optional<String> skill) {
        return ledger.person(person)
                .map(one -> skill.isEmpty() || one.skills().contains(skill.get()))
                .orElse(false);
    }

    private List<Part> parts(Work work) {
        Moment start = work.span().start();
        if (work.kind() == Work.Kind.CARRY) {
            Optional<Need> need = ledger.need(work);
            int minutes = need.map(ledger.day()::minutesToCamera).orElse(0)
                    + need.map(ledger.day()::minutesBack).orElse(0);
            return minutes == 0 ? List.of() : List.of(new Part(Span.ofMinutes(start, minutes), 1, Optional.empty()));
        }
        Optional<Step> known = ledger.step(work);
        if (known.isEmpty() || known.get().hands() == 0) {
            return List.of();
        }
        Step step = known.get();
        int minutes = work.span().minutes();
        int first = step.handsThroughout() ? minutes : step.handsFirst().orElse(0);
        int last = step.handsLast().orElse(0);
        if (first + last >= minutes) {
            return List.of(new Part(work.span(), step.hands(), step.skill()));
        }
        List<Part> parts = new ArrayList<>();
        if (first > 0) {
            parts.add(new Part(Span.ofMinutes(start, first), step.hands(), step.skill()));
        }
        if (last > 0) {
            Moment end = work.span().end();
            parts.add(new Part(new Span(end.plus(-last), end), step.hands(), step.skill()));
        }
        return parts;
    }

    private void meals(Person person) {
        if (ledger.day().facts().mealAfterMinutes().isEmpty()) {
            return;
        }
        int most = ledger.day().facts().mealAfterMinutes().get();
        List<Span> meals = ledger.plan().breaks().stream()
                .filter(meal -> meal.person().equals(person.id()))
                .map(Break::span)
                .sorted()
                .toList();
        for (Span meal : meals) {
            int missing = ledger.day().facts().mealMinutes() - meal.minutes();
            breaches.add(
                    Rule.MEAL,
                    missing,
                    () -> person.id() + " has a meal break from "
                            + ledger.words().clock(meal) + ", " + Words.minutes(missing) + " too short");
        }
        for (Span shift : shifts(person)) {
            Moment since = shift.start();
            for (Span meal : meals) {
                if (shift.contains(meal.start())) {
                    stretch(person, since, meal.start(), most);
                    since = meal.end();
                }
            }
            stretch(person, since, shift.end(), most);
        }
    }

    /** A person's shifts in kitchen hours; being away does not end a shift. */
    private List<Span> shifts(Person person) {
        List<Span> kitchen = ledger.day().facts().kitchenHours();
        return person.shifts().isEmpty() ? kitchen : Span.intersection(person.shifts(), kitchen);
    }

    private void stretch(Person person, Moment from, Moment to, int most) {
        if (ledger.plan().asOf().map(now -> !to.isAfter(now)).orElse(false)) {
            return;
        }
        int minutes = from.minutesUntil(to);
        breaches.add(
                Rule.MEAL,
                minutes - most,
                () -> person.id() + " is on from " + ledger.words().clock(new Span(from, to))
                        + " without a meal break, " + Words.minutes(minutes - most) + " too long");
    }
}
