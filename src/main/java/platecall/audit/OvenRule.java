package platecall.audit;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.units.Span;

/** An oven has one temperature at a time, and time to change it; it is cold at the start of each opening. */
final class OvenRule {

    private OvenRule() {}

    static void check(Ledger ledger, Breaches breaches) {
        for (Station station : ledger.day().stations()) {
            if (station.kind() == Station.Kind.OVEN) {
                check(ledger, station, breaches);
            }
        }
    }

    private static void check(Ledger ledger, Station oven, Breaches breaches) {
        List<Span> openings = ledger.day().hoursOf(oven);
        Work last = null;
        for (Work work : baked(ledger, oven)) {
            Optional<Span> opening = opening(openings, work);
            if (ledger.hasBegun(work)) {
                // the oven had what it had
            } else if (last == null || !opening.equals(opening(openings, last))) {
                Work first = work;
                opening.ifPresent(span -> fromCold(ledger, oven, span, first, breaches));
            } else {
                change(ledger, oven, last, work, breaches);
            }
            if (last == null || work.span().end().isAfter(last.span().end())) {
                last = work;
            }
        }
    }

    private static List<Work> baked(Ledger ledger, Station oven) {
        return ledger.plan().work().stream()
                .filter(work -> ledger.step(work).flatMap(Step::ovenCelsius).isPresent())
                .filter(work ->
                        work.stations().stream().anyMatch(hold -> hold.station().equals(oven.id())))
                .sorted(Comparator.comparing(Work::span))
                .toList();
    }

    private static Optional<Span> opening(List<Span> openings, Work work) {
        return openings.stream()
                .filter(span -> span.contains(work.span().start()))
                .findFirst();
    }

    private static int celsius(Ledger ledger, Work work) {
        return ledger.step(work).flatMap(Step::ovenCelsius).orElseThrow();
    }

    private static void fromCold(Ledger ledger, Station oven, Span opening, Work work, Breaches breaches) {
        int celsius = celsius(ledger, work);
        int needed = oven.minutesToChange(Station.COLD_OVEN_CELSIUS, celsius);
        int missing = needed - opening.start().minutesUntil(work.span().start());
        breaches.add(
                Rule.OVEN,
                missing,
                () -> oven.id() + " opens cold at " + ledger.words().clock(opening.start()) + " and needs "
                        + Words.minutes(needed) + " to " + celsius + " °C, but " + ledger.name(work) + " starts at "
                        + ledger.words().clock(work.span().start()) + ", " + Words.minutes(missing) + " too early");
    }

    private static void change(Ledger ledger, Station oven, Work last, Work next, Breaches breaches) {
        int from = celsius(ledger, last);
        int to = celsius(ledger, next);
        if (from == to) {
            return;
        }
        int needed = oven.minutesToChange(from, to);
        int missing = needed - last.span().end().minutesUntil(next.span().start());
        breaches.add(
                Rule.OVEN,
                missing,
                () -> oven.id() + " needs " + Words.minutes(needed) + " from " + from + " to " + to + " °C after "
                        + ledger.name(last) + " until "
                        + ledger.words().clock(last.span().end()) + ", but "
                        + ledger.name(next) + " starts at "
                        + ledger.words().clock(next.span().start()) + ", " + Words.minutes(missing) + " too early");
    }
}
