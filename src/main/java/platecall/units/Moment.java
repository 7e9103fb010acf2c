package platecall.units;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * A minute on the world's clock, free of time zones: two moments are as far apart as a stopwatch says, also on a day on
 * which the clocks change.
 *
 * @param epochMinute minutes since 1970-01-01T00:00Z
 */
public record Moment(long epochMinute) implements Comparable<Moment> {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter TIME_OF_TWO = DateTimeFormatter.ofPattern("HH:mm x", Locale.ROOT);

    /** The minute that contains {@code time}; seconds are dropped. */
    public static Moment of(ZonedDateTime time) {
        return new Moment(Math.floorDiv(time.toEpochSecond(), 60L));
    }

    /** This moment {@code minutes} later (earlier if negative). */
    public Moment plus(long minutes) {
        return new Moment(epochMinute + minutes);
    }

    /** Minutes from this moment to {@code other}; negative if {@code other} is earlier. */
    public int minutesUntil(Moment other) {
        return Math.toIntExact(other.epochMinute - epochMinute);
    }

    /** What a clock on the wall of {@code zone} shows. */
    public ZonedDateTime in(ZoneId zone) {
        return Instant.ofEpochSecond(epochMinute * 60L).atZone(zone);
    }

    /** Whether clocks in {@code zone} show its time twice, because they are put back. */
    public boolean comesTwice(ZoneId zone) {
        return zone.getRules().getValidOffsets(in(zone).toLocalDateTime()).size() > 1;
    }

    /**
     * What a clock on the wall of {@code zone} shows, for people: {@code 02:30}, or with the offset from UTC
     * {@code 02:30 +01} if that time comes twice.
     */
    public String clock(ZoneId zone) {
        return in(zone).format(comesTwice(zone) ? TIME_OF_TWO : TIME);
    }

    public boolean isBefore(Moment other) {
        return epochMinute < other.epochMinute;
    }

    public boolean isAfter(Moment other) {
        return epochMinute > other.epochMinute;
    }

    public static Moment earlier(Moment a, Moment b) {
        return a.isBefore(b) ? a : b;
    }

    public static Moment later(Moment a, Moment b) {
        return a.isBefore(b) ? b : a;
    }

    @Override
    public int compareTo(Moment other) {
        return Long.compare(epochMinute, other.epochMinute);
    }
}
