package platecall.safety;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import platecall.day.ProbeReading;
import platecall.units.Moment;

/** Readings of one copy for one purpose, in order of time, and how long they show a temperature held. */
final class ProbeLog {

    private static final double ROUNDING = 1e-9;

    private final List<ProbeReading> rows;

    /** Minutes from the first row; one that was held is there twice, at its start and at its end. */
    private final List<Reading> readings = new ArrayList<>();

    /** @param rows at least one */
    ProbeLog(List<ProbeReading> rows) {
        this.rows =
                rows.stream().sorted(Comparator.comparing(ProbeReading::time)).toList();
        for (ProbeReading row : this.rows) {
            double minute = start().minutesUntil(row.time());
            readings.add(new Reading(minute, row.celsius()));
            if (row.heldSeconds() > 0) {
                readings.add(new Reading(minute + row.heldSeconds() / 60.0, row.celsius()));
            }
        }
        readings.sort(Comparator.comparingDouble(Reading::minute));
    }

    List<ProbeReading> rows() {
        return rows;
    }

    List<Reading> readings() {
        return readings;
    }

    Moment start() {
        return rows.get(0).time();
    }

    ProbeReading last() {
        return rows.get(rows.size() - 1);
    }

    double lowest() {
        return rows.stream().mapToDouble(ProbeReading::celsius).min().orElseThrow();
    }

    double highest() {
        return rows.stream().mapToDouble(ProbeReading::celsius).max().orElseThrow();
    }

    /** The last whole minute at which {@code minute} isn't over, counted from the start. */
    Moment at(double minute) {
        return start().plus((long) Math.floor(minute + ROUNDING));
    }

    /** The most seconds for which no reading is below {@code celsius}, 0 for a single one; empty if all are below. */
    OptionalLong heldSeconds(double celsius) {
        return LongStream.of(held(celsius)).filter(seconds -> seconds >= 0).max();
    }

    /** The same up to the last reading. */
    OptionalLong heldNow(double celsius) {
        long[] held = held(celsius);
        return LongStream.of(held[held.length - 1])
                .filter(seconds -> seconds >= 0)
                .max();
    }

    /** The minute at which {@code celsius} has been held for so many seconds; empty if it never has. */
    OptionalDouble reached(double celsius, double seconds) {
        long[] held = held(celsius);
        return IntStream.range(0, held.length)
                .filter(i -> held[i] >= seconds)
                .mapToDouble(i -> readings.get(i).minute() - (held[i] - seconds) / 60)
                .findFirst();
    }

    /** For each reading the seconds since the first of those up to it that aren't below; -1 if it is below itself. */
    private long[] held(double celsius) {
        long[] held = new long[readings.size()];
        double from = Double.NaN;
        for (int i = 0; i < held.length; i++) {
            double minute = readings.get(i).minute();
            boolean below = readings.get(i).celsius() < celsius - ROUNDING;
            from = below ? Double.NaN : Double.isNaN(from) ? minute : from;
            // whole seconds: parts of a minute are off by far less
            held[i] = below ? -1 : Math.round(60 * (minute - from));
        }
        return held;
    }

    /**
     * How long a limit isn't kept, by the readings: at most from the last one that keeps it.
     *
     * @param times how often
     * @param minutes in all, up to the last reading if it isn't kept then
     * @param earlier those of them that are over
     * @param since minute of the last reading that keeps it, if the last of all doesn't; of the first one if none does
     * @param unknown whether the first reading doesn't keep it, so that nobody knows since when
     */
    record Out(int times, double minutes, double earlier, OptionalDouble since, boolean unknown) {

        /** The minute at which so many are over, if it stays out. */
        double due(Limit most) {
            return since.orElseThrow() + most.mostWhole() - earlier;
        }
    }

    Out out(Limit limit) {
        return out(limit, 0);
    }

    /** The same from a minute on; what was out before it doesn't count. */
    Out out(Limit limit, double fromMinute) {
        int times = 0;
        double earlier = 0;
        double since = Double.NaN;
        double before = fromMinute;
        for (Reading reading : readings) {
            if (reading.minute() < fromMinute - ROUNDING) {
                continue;
            }
            boolean kept = limit.allows(reading.celsius());
            if (!kept && Double.isNaN(since)) {
                times++;
                since = before;
            } else if (kept && !Double.isNaN(since)) {
                earlier += reading.minute() - since;
                since = Double.NaN;
            }
            before = reading.minute();
        }
        boolean out = !Double.isNaN(since);
        return new Out(
                times,
                earlier + (out ? before - since : 0),
                earlier,
                out ? OptionalDouble.of(since) : OptionalDouble.empty(),
                fromMinute == 0 && !limit.allows(readings.get(0).celsius()));
    }
}
