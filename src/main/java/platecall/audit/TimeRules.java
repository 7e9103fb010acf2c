package platecall.audit;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.day.Step;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.units.Moment;
import platecall.units.Span;

/** Steps follow each other, take their time, wait for supplies, and keep quiet while the set does. */
final class TimeRules {

    private final Ledger ledger;
    private final Breaches breaches;

    /** Pairs of works that were compared: those of two batches are shared by many copies and break a rule only once. */
    private final Set<List<String>> compared = new HashSet<>();

    private TimeRules(Ledger ledger, Breaches breaches) {
        this.ledger = ledger;
        this.breaches = breaches;
    }

    static void check(Ledger ledger, Breaches breaches) {
        TimeRules rules = new TimeRules(ledger, breaches);
        ledger.madeCopies().forEach(rules::order);
        List<Span> quiet = ledger.day().quietSpans();
        for (Work work : ledger.plan().work()) {
            if (!ledger.hasBegun(work)) {
                rules.duration(work);
                rules.supply(work);
            }
            ledger.stillToCome(work.span()).ifPresent(span -> rules.silence(work, span, quiet));
        }
    }

    private void order(PlannedCopy copy) {
        Need need = ledger.need(copy).orElseThrow();
        for (Step step : ledger.recipe(need)) {
            for (Work work : ledger.work(copy, step.id())) {
                for (String before : step.predecessors()) {
                    boolean timed = step.after().contains(before);
                    for (Work earlier : ledger.work(copy, before)) {
                        wait(earlier, work, timed ? step.leastWait() : 0, timed ? step.mostWait() : Optional.empty());
                    }
                }
            }
        }
        for (Work carry : ledger.carries(copy)) {
            for (Work stage : ledger.work(copy, need.stage())) {
                wait(stage, carry, 0, Optional.empty());
            }
        }
    }

    private void wait(Work earlier, Work later, int least, Optional<Integer> most) {
        if (ledger.hasBegun(later) || !compared.add(List.of(earlier.id(), later.id()))) {
            return;
        }
        int waited = earlier.span().end().minutesUntil(later.span().start());
        String starts = ledger.name(later) + " starts at "
                + ledger.words().clock(later.span().start());
        String ended = ledger.name(earlier) + " ends at "
                + ledger.words().clock(earlier.span().end());
        breaches.add(
                Rule.ORDER,
                least - waited,
                () -> starts + ", but " + ended
                        + (least == 0 ? "" : ", and it must wait at least " + Words.minutes(least)));
        breaches.add(
                Rule.MOST_WAIT,
                most.map(minutes -> waited - minutes).orElse(0),
                () -> starts + ", but " + ended + ", and it may wait at most " + Words.minutes(most.orElseThrow()));
    }

    private void duration(Work work) {
        int takes;
        if (work.kind() == Work.Kind.CARRY) {
            takes = ledger.need(work).map(ledger.day()::minutesToCamera).orElse(0);
        } else {
            Optional<Step> step = ledger.step(work);
            if (step.isEmpty()) {
                return;
            }
            takes = step.get().minutesFor(work.copies().size());
        }
        int minutes = work.span().minutes();
        breaches.add(
                Rule.DURATION,
                Math.abs(minutes - takes),
                () -> ledger.name(work) + " at "
                        + ledger.words().clock(work.span().start()) + " is given "
                        + Words.minutes(minutes) + ", but takes " + Words.minutes(takes));
    }

    private void supply(Work work) {
        Optional<Step> step = ledger.step(work);
        if (step.isEmpty()) {
            return;
        }
        Moment start = work.span().start();
        int missing = 0;
        Ingredient last = null;
        for (Ingredient ingredient : ledger.day().ingredients()) {
            if (ingredient.goesInto(step.get()) && ingredient.arrives().isPresent()) {
                int early = start.minutesUntil(ingredient.arrives().get());
                if (early > missing) {
                    missing = early;
                    last = ingredient;
                }
            }
        }
        Ingredient late = last;
        breaches.add(
                Rule.SUPPLY,
                missing,
                () -> ledger.name(work) + " starts at " + ledger.words().clock(start) + ", but " + late.name()
                        + " arrives at " + ledger.words().clock(late.arrives().orElseThrow()));
    }

    private void silence(Work work, Span span, List<Span> quiet) {
        if (!ledger.disturbsSet(work)) {
            return;
        }
        int heard = quiet.stream().mapToInt(span::sharedMinutes).sum();
        breaches.add(
                Rule.SILENCE,
                heard,
                () -> ledger.name(work) + " from " + ledger.words().clock(span) + " is heard for "
                        + Words.minutes(heard) + " while a silent set rolls");
    }
}
