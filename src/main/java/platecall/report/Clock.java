package platecall.report;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.safety.SafetyClock;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * Writes moments as the clock on the wall shows them. In the hour that comes twice when clocks are put back, every time
 * carries its offset from UTC, so that no time is said twice; stamps carry it all day if the clocks change.
 */
final class Clock {

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter SHORT_DATE = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    private final ZoneId zone;
    private final boolean clocksChange;
    private final DateTimeFormatter stamp;

    private final Moment noon;

    private Clock(Day day, Moment first, Moment last) {
        zone = day.facts().zone();
        noon = Moment.of(day.facts().date().atTime(12, 0).atZone(zone));
        clocksChange = first.comesTwice(zone)
                || last.comesTwice(zone)
                || !first.in(zone).getOffset().equals(last.in(zone).getOffset());
        stamp = DateTimeFormatter.ofPattern(clocksChange ? "uuuu-MM-dd HH:mmxxx" : "uuuu-MM-dd HH:mm", Locale.ROOT);
    }

    static Clock of(Day day, Plan plan) {
        Span all = busy(day, plan);
        return new Clock(day, all.start(), all.end());
    }

    /** From the first minute of work, meal or call to the last release, or when food must be thrown away. */
    private static Span busy(Day day, Plan plan) {
        List<Span> spans = new ArrayList<>();
        plan.work().forEach(work -> spans.add(work.span()));
        plan.breaks().forEach(meal -> spans.add(meal.span()));
        SafetyClock.of(day, plan).forEach(clock -> spans.add(Span.ofMinutes(clock.discardBy(), 1)));
        SafetyClock.ofOnlySeenTooLong(day, plan).forEach(clock -> spans.add(Span.ofMinutes(clock.discardBy(), 1)));
        day.setups().forEach(setup -> spans.add(setup.shooting()));
        day.setups().forEach(setup -> spans.add(Span.ofMinutes(day.releaseOf(setup), 1)));
        if (spans.isEmpty()) {
            return day.horizon();
        }
        Moment start = spans.stream().map(Span::start).min(Moment::compareTo).orElseThrow();
        Moment end = spans.stream().map(Span::end).max(Moment::compareTo).orElseThrow();
        return new Span(start, end);
    }

    /** {@code 05:32}, or {@code 02:30 +01} if the clock shows that twice. */
    String time(Moment moment) {
        return moment.clock(zone);
    }

    /** {@code clocks go back at 03:00 to 02:00} for the first such change after one moment, up to another. */
    Optional<String> change(Moment after, Moment upTo) {
        return Optional.ofNullable(zone.getRules().nextTransition(after.in(zone).toInstant()))
                .filter(change -> !change.getInstant().isAfter(upTo.in(zone).toInstant()))
                .map(change -> "clocks go " + (change.isOverlap() ? "back" : "forward") + " at "
                        + change.getDateTimeBefore().format(TIME) + " to "
                        + change.getDateTimeAfter().format(TIME));
    }

    /** {@code 2026-03-14 05:32}, as spreadsheets read it. */
    String stamp(Moment moment) {
        return moment.in(zone).format(stamp);
    }

    /** {@code Saturday 14 March 2026}. */
    String date(Moment moment) {
        return moment.in(zone).format(DATE);
    }

    /** {@code Sat 14 Mar}. */
    String shortDate(Moment moment) {
        return moment.in(zone).format(SHORT_DATE);
    }

    /** {@code 05:32}, with the date before it if that is another than that of {@code reader}. */
    String time(Moment moment, Moment reader) {
        return sameDate(moment, reader) ? time(moment) : shortDate(moment) + " " + time(moment);
    }

    /** A moment of the shooting date, for readers who think of that date if none is printed. */
    Moment noon() {
        return noon;
    }

    boolean sameDate(Moment one, Moment other) {
        return one.in(zone).toLocalDate().equals(other.in(zone).toLocalDate());
    }

    ZoneId zone() {
        return zone;
    }
}
