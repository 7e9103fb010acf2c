package platecall.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import platecall.units.Moment;
import platecall.units.Span;

/** What is drawn from something limited, minute by minute: units of a station, amps of a circuit. */
final class Load {

    /** Sums of decimal amps are off by far less. */
    private static final double ROUNDING = 1e-6;

    private final TreeMap<Moment, Double> changes = new TreeMap<>();

    /**
     * A stretch in which more is drawn than may be.
     *
     * @param span from its first to after its last minute
     * @param most highest load in it
     * @param excess what is drawn beyond the limit, summed over its minutes, rounded up
     */
    record Overrun(Span span, double most, long excess) {}

    void add(Span span, double amount) {
        changes.merge(span.start(), amount, Double::sum);
        changes.merge(span.end(), -amount, Double::sum);
    }

    /** Every stretch in which the load is above {@code limit}. */
    List<Overrun> above(double limit) {
        List<Overrun> overruns = new ArrayList<>();
        double load = 0;
        double most = 0;
        double excess = 0;
        Moment since = null;
        Moment before = null;
        for (Map.Entry<Moment, Double> change : changes.entrySet()) {
            Moment now = change.getKey();
            if (since != null) {
                excess += (load - limit) * before.minutesUntil(now);
            }
            load += change.getValue();
            boolean over = load > limit + ROUNDING;
            if (over && since == null) {
                since = now;
                most = 0;
                excess = 0;
            }
            if (!over && since != null) {
                overruns.add(new Overrun(new Span(since, now), most, (long) Math.ceil(excess - ROUNDING)));
                since = null;
            }
            most = Math.max(most, load);
            before = now;
        }
        return overruns;
    }
}
