package platecall.audit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import platecall.day.Station;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.units.Moment;
import platecall.units.Span;

/** Stations serve no more than they hold, while they are open; food that waits has its place. */
final class StationRules {

    private final Ledger ledger;
    private final Breaches breaches;
    private final Map<String, Load> loads = new HashMap<>();
    private final Map<String, List<Span>> hours = new HashMap<>();

    private StationRules(Ledger ledger, Breaches breaches) {
        this.ledger = ledger;
        this.breaches = breaches;
    }

    static void check(Ledger ledger, Breaches breaches) {
        new StationRules(ledger, breaches).check();
    }

    private void check() {
        for (Station station : ledger.day().stations()) {
            loads.put(station.id(), new Load());
            hours.put(station.id(), ledger.day().hoursOf(station));
        }
        for (Work work : ledger.plan().work()) {
            for (StationHold hold : work.stations()) {
                use(hold.station(), hold.units(), work.span(), ledger.name(work) + " uses");
            }
            for (Storing storing : work.storage()) {
                String what = ledger.copy(storing.copy()).map(ledger::name).orElse(storing.copy());
                store(storing.station(), storing.units(), storing.span(), what + " waits in");
            }
            notHeld(work);
            notStored(work);
        }
        for (PlannedCopy copy : ledger.madeCopies()) {
            ledger.held(copy)
                    .ifPresent(held -> store(
                            held.station().id(),
                            held.units(),
                            held.span(),
                            ledger.name(copy) + " waits for its release in"));
        }
        ledger.day().stations().forEach(this::overfull);
    }

    /** What stood in a storage that was closed when the plan was made keeps its place there until that opens. */
    private void store(String station, int units, Span all, String what) {
        Moment from = ledger.plan()
                .asOf()
                .filter(now -> !all.start().isAfter(now))
                .map(now -> opens(station, now))
                .orElse(all.start());
        if (from.isBefore(all.end())) {
            use(station, units, new Span(Moment.later(all.start(), from), all.end()), what);
        }
    }

    private Moment opens(String station, Moment now) {
        List<Span> open = hours.getOrDefault(station, List.of());
        boolean closed =
                ledger.station(station).filter(it -> it.kind().storesFood()).isPresent()
                        && open.stream().noneMatch(span -> span.contains(now));
        return closed
                ? open.stream()
                        .map(Span::start)
                        .filter(now::isBefore)
                        .min(Moment::compareTo)
                        .orElse(ledger.day().horizon().end())
                : now;
    }

    private void use(String station, int units, Span all, String what) {
        if (loads.containsKey(station)) {
            ledger.stillToCome(all).ifPresent(span -> useStillToCome(station, units, span, what));
        }
    }

    private void useStillToCome(String station, int units, Span span, String what) {
        loads.get(station).add(span, units);
        int open = hours.get(station).stream().mapToInt(span::sharedMinutes).sum();
        breaches.add(
                Rule.OPEN,
                span.minutes() - open,
                () -> what + " " + station + " from " + ledger.words().clock(span) + ", "
                        + Words.minutes(span.minutes() - open) + " of it while that is closed");
    }

    private void overfull(Station station) {
        boolean store = station.kind().storesFood();
        for (Load.Overrun overrun : loads.get(station.id()).above(station.capacity())) {
            breaches.add(
                    store ? Rule.STORAGE : Rule.CAPACITY,
                    overrun.excess(),
                    () -> station.id() + (store ? " stores up to " : " serves up to ") + Words.number(overrun.most())
                            + " of " + station.capacity() + unit(station) + " from "
                            + ledger.words().clock(overrun.span()));
        }
    }

    private static String unit(Station station) {
        return station.unit().isEmpty() ? " units" : " " + station.unit();
    }

    /** What a step needs and its work does not hold. */
    private void notHeld(Work work) {
        int missing = ledger.hasBegun(work) ? 0 : ledger.missingUnits(work);
        breaches.add(
                Rule.CAPACITY,
                (long) missing * work.span().minutes(),
                () -> ledger.name(work) + " at "
                        + ledger.words().clock(work.span().start()) + " lacks " + Words.count(missing, "unit")
                        + " of the stations that it needs");
    }

    /** What must wait in a storage and does not. */
    private void notStored(Work work) {
        for (String id : work.copies()) {
            ledger.copy(id)
                    .filter(PlannedCopy::made)
                    .ifPresent(copy -> ledger.waiting(work, copy)
                            .flatMap(ledger::stillToCome)
                            .ifPresent(span -> notStored(work, copy, span)));
        }
    }

    private void notStored(Work work, PlannedCopy copy, Span span) {
        String station = ledger.step(work).orElseThrow().waitsIn().orElseThrow();
        int units = ledger.dish(ledger.need(copy).orElseThrow()).storageUnits();
        long stored = work.storage().stream()
                .filter(storing ->
                        storing.copy().equals(copy.id()) && storing.station().equals(station))
                .mapToLong(storing -> (long) Math.min(units, storing.units()) * span.sharedMinutes(storing.span()))
                .sum();
        long missing = (long) units * span.minutes() - stored;
        breaches.add(
                Rule.STORAGE,
                missing,
                () -> ledger.name(copy) + " must wait in " + station + " from "
                        + ledger.words().clock(span) + " after " + work.step() + ", but has no place there for "
                        + Words.count(missing, "unit-minute"));
    }
}
