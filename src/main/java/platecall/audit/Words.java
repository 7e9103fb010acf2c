package platecall.audit;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import platecall.units.Moment;
import platecall.units.Span;

/** Times, counts and lists as a reader in the kitchen says them. */
final class Words {

    private static final int NAMES_SHOWN = 4;

    private final ZoneId zone;
    private final LocalDate date;

    /** Words for a day on {@code date}, by the clocks of {@code zone}. */
    Words(ZoneId zone, LocalDate date) {
        this.zone = zone;
        this.date = date;
    }

    /**
     * {@code 09:05}; on another date than the day's with that date; in an hour that the clocks show twice, with the offset
     * from UTC.
     */
    String clock(Moment moment) {
        LocalDate on = moment.in(zone).toLocalDate();
        return moment.clock(zone) + (on.equals(date) ? "" : " on " + on);
    }

    /** {@code 09:05 to 09:20} */
    String clock(Span span) {
        return clock(span.start()) + " to " + clock(span.end());
    }

    /** {@code 1 minute}, {@code 2 minutes} */
    static String minutes(long count) {
        return count(count, "minute");
    }

    /** {@code 1 copy}, {@code 2 copies} */
    static String copies(long count) {
        return count == 1 ? "1 copy" : count + " copies";
    }

    static String count(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** A whole number without decimals, any other with one. */
    static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.1f", value);
    }

    /** The names with commas; of many only the first and how many more. */
    static String list(List<String> names) {
        if (names.size() <= NAMES_SHOWN + 1) {
            return String.join(", ", names);
        }
        return String.join(", ", names.subList(0, NAMES_SHOWN)) + " and " + (names.size() - NAMES_SHOWN) + " more";
    }
}
