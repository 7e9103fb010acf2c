package platecall.audit;

import java.util.Optional;
import platecall.day.Circuit;
import platecall.day.Station;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;

/** A power circuit never carries more than it may for hours. */
final class CircuitRule {

    private CircuitRule() {}

    static void check(Ledger ledger, Breaches breaches) {
        for (Circuit circuit : ledger.day().circuits()) {
            for (Load.Overrun overrun : load(ledger, circuit).above(circuit.usableAmps())) {
                breaches.add(
                        Rule.CIRCUIT,
                        overrun.excess(),
                        () -> "circuit " + circuit.id() + " carries up to " + Words.number(overrun.most()) + " of "
                                + Words.number(circuit.usableAmps()) + " A from "
                                + ledger.words().clock(overrun.span()));
            }
        }
    }

    private static Load load(Ledger ledger, Circuit circuit) {
        Load load = new Load();
        for (Station station : ledger.day().stations()) {
            if (station.kind().alwaysOn() && plugged(station, circuit)) {
                ledger.day().hoursOf(station).forEach(span -> load.add(span, station.amps()));
            }
        }
        for (Work work : ledger.plan().work()) {
            for (StationHold hold : work.stations()) {
                ledger.station(hold.station())
                        .filter(station -> !station.kind().alwaysOn() && plugged(station, circuit))
                        .ifPresent(station -> ledger.stillToCome(work.span())
                                .ifPresent(span -> load.add(span, station.amps() * hold.units())));
            }
        }
        return load;
    }

    private static boolean plugged(Station station, Circuit circuit) {
        return station.circuit().equals(Optional.of(circuit.id()));
    }
}
