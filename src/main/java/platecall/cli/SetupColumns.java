package platecall.cli;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import platecall.units.Moment;

/** The first columns of a table of setups: the id, cut where it is long, and the call. */
final class SetupColumns {

    private static final int MOST_LETTERS = 40;

    private final ZoneId zone;
    private final int letters;
    private final int clock;

    /** @param calls each setup's id with its call */
    SetupColumns(ZoneId zone, List<Map.Entry<String, Moment>> calls) {
        this.zone = zone;
        letters = Math.min(
                MOST_LETTERS,
                calls.stream().mapToInt(call -> call.getKey().length()).reduce("setup".length(), Math::max));
        clock = calls.stream()
                .mapToInt(call -> call.getValue().clock(zone).length())
                .reduce("00:00".length(), Math::max);
    }

    /** Letters that a clock in this table takes. */
    int clock() {
        return clock;
    }

    String head() {
        return row("setup", "call");
    }

    String of(String id, Moment call) {
        return row(id, call.clock(zone));
    }

    private String row(String id, String call) {
        return String.format(
                Locale.ROOT,
                "%-" + letters + "s  %-" + clock + "s",
                id.length() > letters ? id.substring(0, letters - 1) + "…" : id,
                call);
    }
}
