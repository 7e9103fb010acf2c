package platecall.audit;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Rule;
import platecall.safety.ClockReading;
import platecall.safety.RawBesideReady;
import platecall.safety.SafetyClock;
import platecall.safety.Undercooked;
import platecall.units.Moment;

/** What someone eats was cooked through, did not stand too long, and was not stored with raw food. */
final class SafetyRules {

    private SafetyRules() {}

    static void check(Ledger ledger, Breaches breaches) {
        for (ClockReading clock : SafetyClock.of(ledger.day(), ledger.plan())) {
            String name = ledger.name(clock.copy());
            Optional<Moment> over = ledger.shotBy(List.of(clock.copy()));
            breaches.add(Rule.CLOCK, clock.minutesOver(), over, () -> name + ": " + clock.why());
            breaches.add(
                    Rule.DISCARDED,
                    clock.discardedBeforeEaten() ? 1 : 0,
                    over,
                    () -> name + " is eaten from " + ledger.words().clock(clock.firstBite())
                            + ", but had to be thrown away by " + ledger.words().clock(clock.discardBy()));
        }
        for (Undercooked food : Undercooked.of(ledger.day())) {
            List<PlannedCopy> made = ledger.madeFor(food.need());
            breaches.add(
                    Rule.COOKING,
                    made.size(),
                    ledger.shotBy(made),
                    () -> ledger.name(food.need().dish()) + " for setup "
                            + food.need().setup() + " reaches " + Words.number(food.coreCelsius())
                            + " °C inside, but needs " + Words.number(food.leastCelsius()) + " °C");
        }
        for (RawBesideReady both : RawBesideReady.of(ledger.day(), ledger.plan())) {
            breaches.add(
                    Rule.RAW_APART,
                    both.span().minutes(),
                    ledger.plan().asOf().filter(now -> !both.span().end().isAfter(now)),
                    () -> both.station() + " holds " + names(ledger, both.raw()) + " raw beside "
                            + names(ledger, both.ready()) + " from "
                            + ledger.words().clock(both.span()));
        }
    }

    private static String names(Ledger ledger, Set<String> dishes) {
        List<String> names = dishes.stream().map(ledger::name).sorted().toList();
        return Words.list(names);
    }
}
