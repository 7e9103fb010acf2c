package platecall.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * The most that a plan draws from a circuit: ovens and storage whenever they are open, the rest for each unit in use.
 *
 * @param circuit which
 * @param mostAmps highest load, 0 or more
 * @param from when it is first drawn; the start of the day if nothing ever is
 */
public record CircuitLoad(Circuit circuit, double mostAmps, Moment from) {

    /** Sums of decimal amps are off by far less. */
    private static final double ROUNDING = 1e-6;

    /** The load of each circuit, in the day's order. */
    public static List<CircuitLoad> of(Day day, Plan plan) {
        List<CircuitLoad> loads = new ArrayList<>();
        for (Circuit circuit : day.circuits()) {
            TreeMap<Moment, Double> changes = new TreeMap<>();
            for (Station station : day.stations()) {
                if (plugged(station, circuit) && station.kind().alwaysOn()) {
                    day.hoursOf(station).forEach(span -> draw(changes, span, station.amps()));
                }
            }
            for (Work work : plan.work()) {
                for (StationHold hold : work.stations()) {
                    day.station(hold.station())
                            .filter(station ->
                                    plugged(station, circuit) && !station.kind().alwaysOn())
                            .ifPresent(station -> draw(changes, work.span(), station.amps() * hold.units()));
                }
            }
            loads.add(most(circuit, changes, day.horizon().start()));
        }
        return loads;
    }

    private static boolean plugged(Station station, Circuit circuit) {
        return station.circuit().map(circuit.id()::equals).orElse(false);
    }

    private static void draw(TreeMap<Moment, Double> changes, Span span, double amps) {
        changes.merge(span.start(), amps, Double::sum);
        changes.merge(span.end(), -amps, Double::sum);
    }

    private static CircuitLoad most(Circuit circuit, TreeMap<Moment, Double> changes, Moment start) {
        double load = 0;
        double most = 0;
        Moment when = start;
        for (Map.Entry<Moment, Double> change : changes.entrySet()) {
            load += change.getValue();
            if (load > most + ROUNDING) {
                most = load;
                when = change.getKey();
            }
        }
        return new CircuitLoad(circuit, most, when);
    }

    /** Whether it stays within the breaker's rating with the circuit's factor for lasting loads. */
    public boolean carried() {
        // a kitchen cooks for hours: whatever draws counts as lasting
        return Electricity.carries(circuit.amps(), circuit.continuousFactor(), 0, mostAmps);
    }
}
