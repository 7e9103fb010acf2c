package platecall.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * Dates, times and spans in cells. A time without a date falls on the day's date; in the hour that clocks repeat it is
 * the earlier one unless an offset from UTC says otherwise.
 */
final class Clock {

    /** Days from the day's date within which all its times must lie. */
    static final int FARTHEST_DAYS = 30;

    private static final Pattern DATE = Pattern.compile("([0-9]{4})-([0-9]{1,2})-([0-9]{1,2})");
    private static final String OFFSET = "Z|[+-][0-9]{2}:[0-9]{2}";
    private static final Pattern TIME = Pattern.compile(
            "(?:(?<date>[0-9]{4}-[0-9]{1,2}-[0-9]{1,2})(?:\\s+|T))?(?<hour>[0-9]{1,2}):(?<minute>[0-9]{2})(?::00)?\\s*(?<offset>"
                    + OFFSET + ")?");
    private static final Pattern SPACED_DASH = Pattern.compile("\\s+[-–]\\s*|\\s*[-–]\\s+|–");
    private static final Pattern TIGHT_SPAN = Pattern.compile("([^-]*[0-9]{1,2}:[0-9]{2})-([0-9]{1,2}:[0-9]{2})"
            + "|([0-9]{4}-[0-9]{1,2}-[0-9]{1,2}[\\sT]+[0-9]{1,2}:[0-9]{2})-([0-9]{1,2}:[0-9]{2}|[0-9]{4}-.*)");

    private static final Pattern BETWEEN_TIMES =
            Pattern.compile("\\s*(?:\\b(?:to|till|until|bis)\\b|[—−‒―])\\s*", Pattern.CASE_INSENSITIVE);

    /** Day, month and year in another order; dots put the day first, other signs leave that open. */
    private static final Pattern OTHER_DATE =
            Pattern.compile("(?<![0-9.:/-])(?<first>[0-9]{1,2})(?<sign>[./-])\\s*(?<second>[0-9]{1,2})\\k<sign>\\s*"
                    + "(?<year>[0-9]{2}|[0-9]{4})(?![0-9:])");

    private static final Pattern YEAR_FIRST = Pattern.compile("([0-9]{4})[./]([0-9]{1,2})[./]([0-9]{1,2})");

    /** A date as in sheets, and a time after it. */
    private static final Pattern DATED = Pattern.compile("(" + DATE.pattern() + ")[\\sT,]+(?<time>.+)");

    private static final Pattern LOOSE_TIME = Pattern.compile(
            "(?<hour>[0-9]{1,2})(\\s*[.:hH,]?\\s*(?<minute>[0-9]{2}))?(:[0-9]{2})?\\s*((?<half>[ap])\\.?\\s*m\\.?|h|uhr)?",
            Pattern.CASE_INSENSITIVE);

    /** A time, maybe after its date, with another sign than a colon between hours and minutes. */
    private static final Pattern WITHOUT_COLON = Pattern.compile(
            "(?<![0-9.:,])([0-9]{4}-[0-9]{1,2}-[0-9]{1,2}[\\sT]+)?([0-9]{1,2})[., hH]([0-9]{2})(?![0-9:])");

    /** A time as a spreadsheet keeps it, shown as a number. */
    private static final Pattern FRACTION = Pattern.compile("0\\.([0-9]|[0-9]{3,20})");

    /** A date from 2000 to 2173, maybe with a time, as a spreadsheet keeps it, shown as a number. */
    private static final Pattern SERIAL = Pattern.compile("(3[6-9]|[4-9][0-9])[0-9]{3}(\\.[0-9]{1,20})?");

    private static final LocalDate FIRST_SERIAL = LocalDate.of(1899, 12, 30);

    /** The beginnings of English and German names of months, in the order of the months. */
    private static final List<String> MONTHS = List.of(
            "jan|jän", "feb", "mar|mär|mrz", "apr", "may|mai", "jun", "jul", "aug", "sep", "oct|okt", "nov", "dec|dez");

    private static final String MONTH = "(" + String.join("|", MONTHS) + ")\\p{L}*\\.?";
    private static final Pattern DAY_MONTH = Pattern.compile(
            "\\b([0-9]{1,2})(?:st|nd|rd|th|\\.)?[\\s-]*(?:of\\s)?" + MONTH + ",?[\\s-]*([0-9]{4})\\b",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final Pattern MONTH_DAY = Pattern.compile(
            "\\b" + MONTH + "\\s*([0-9]{1,2})(?:st|nd|rd|th)?,?\\s+([0-9]{4})\\b",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    /** The name of a day of the week before a date, English or German. */
    private static final Pattern WEEKDAY = Pattern.compile(
            "\\b(mo|tu|we|th|fr|sa|su|di|mi|do|so)\\p{L}*[.,]*\\s+(?=[0-9\\p{L}])",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    private static final Pattern DATE_INSIDE = Pattern.compile("(?<![0-9.-])" + DATE.pattern() + "(?![0-9.-])");

    private static final String TIME_EXAMPLE = "Maybe 18:30, or 2026-03-14 18:30.";
    private static final String SPAN_EXAMPLE = "Maybe 06:00-18:00, or 2026-03-13 14:00 - 2026-03-14 02:00.";

    static final Grammar<LocalDate> CALENDAR_DATE = Grammar.text(
                    "a date", "2026-03-14", (text, frame) -> date(text), (value, frame) -> value.toString())
            .matching("^[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}$");

    static final Grammar<Moment> MOMENT = Grammar.text(
                    "a time", "18:30", (text, frame) -> moment(text, frame), Clock::write)
            .matching("^([0-9]{4}-[0-9]{1,2}-[0-9]{1,2}[ T]+)?[0-9]{1,2}:[0-9]{2}(:00)?\\s*(" + OFFSET + ")?$");

    static final Grammar<Span> SPAN = Grammar.text("a span of time", "06:00-18:00", Clock::span, Clock::write);

    static final Grammar<List<Span>> SPANS = Grammars.list(SPAN);

    private Clock() {}

    /** Whether {@code text} is meant as a time or a span, even if it can't be read as one. */
    static boolean looksLikeTime(String text) {
        return !text.isEmpty() && Character.isDigit(text.charAt(0));
    }

    private static String twoDigits(String digits) {
        return digits.length() == 1 ? "0" + digits : digits;
    }

    /** The time that somebody may have meant who wrote it in another way: 11.00, 1100, 11:00 am, or a day's fraction. */
    static Optional<String> meant(String text) {
        if (FRACTION.matcher(text).matches()) {
            long minutes = Math.round(Double.parseDouble(text) * 24 * 60);
            return Optional.of(clock(LocalTime.MIN.plusMinutes(minutes)));
        }
        Matcher loose = LOOSE_TIME.matcher(text.strip());
        if (!loose.matches()) {
            return Optional.empty();
        }
        int hour = Integer.parseInt(loose.group("hour"));
        int minute = loose.group("minute") == null ? 0 : Integer.parseInt(loose.group("minute"));
        String half = loose.group("half");
        if (half != null && hour <= 12) {
            hour = hour % 12 + (half.equalsIgnoreCase("p") ? 12 : 0);
        }
        return hour > 23 || minute > 59 ? Optional.empty() : Optional.of(clock(LocalTime.of(hour, minute)));
    }

    /** A spreadsheet's number of days as the date, and the time if there is any. */
    private static String withoutSerial(String text) {
        if (!SERIAL.matcher(text).matches()) {
            return text;
        }
        LocalDateTime time = FIRST_SERIAL.atStartOfDay().plusMinutes(Math.round(Double.parseDouble(text) * 24 * 60));
        return time.toLocalDate() + (text.contains(".") ? " " + clock(time) : "");
    }

    /** A text with the months in it as numbers. */
    private static String withoutMonthNames(String text) {
        String named = WEEKDAY.matcher(text).replaceAll("");
        String dayFirst = DAY_MONTH
                .matcher(named)
                .replaceAll(date -> date.group(3) + "-" + month(date.group(2)) + "-" + twoDigits(date.group(1)));
        return MONTH_DAY
                .matcher(dayFirst)
                .replaceAll(date -> date.group(3) + "-" + month(date.group(1)) + "-" + twoDigits(date.group(2)));
    }

    private static String month(String beginning) {
        String small = beginning.toLowerCase(Locale.ROOT);
        int number = 1;
        while (!small.matches(MONTHS.get(number - 1))) {
            number++;
        }
        return twoDigits(Integer.toString(number));
    }

    /** The date in a text, without what stands around it. */
    private static String dateInside(String text) {
        Matcher inside = DATE_INSIDE.matcher(text);
        return inside.find() ? inside.group() : text;
    }

    /**
     * A text with its dates in the order of sheets, as can be read: twice if either number may be the month. Empty if
     * nothing in it had to be changed.
     *
     * @param mend what else to change
     */
    private static List<String> withDates(String text, UnaryOperator<String> mend, Consumer<String> reader) {
        String numbers = withoutMonthNames(withoutSerial(text));
        String yearFirst = YEAR_FIRST.matcher(numbers).replaceAll("$1-$2-$3");
        return Stream.of(false, true)
                .map(dayFirst -> OTHER_DATE.matcher(yearFirst).replaceAll(date -> yearFirst(date, dayFirst)))
                .map(mend)
                .distinct()
                .filter(dated -> !dated.equals(text))
                .filter(dated -> canBeRead(dated, reader))
                .toList();
    }

    private static String yearFirst(MatchResult date, boolean dayFirst) {
        String first = twoDigits(date.group(1));
        String second = twoDigits(date.group(3));
        boolean day =
                date.group(2).equals(".") || Integer.parseInt(first) > 12 || dayFirst && Integer.parseInt(second) <= 12;
        return (date.group(4).length() == 2 ? "20" : "") + date.group(4) + "-"
                + (day ? second + "-" + first : first + "-" + second);
    }

    private static boolean canBeRead(String text, Consumer<String> reader) {
        try {
            reader.accept(text);
            return true;
        } catch (Unreadable noTime) {
            return false;
        }
    }

    private static Optional<String> either(List<String> texts) {
        return texts.isEmpty() ? Optional.empty() : Optional.of(String.join(", or ", texts));
    }

    /** A time after its date, written in another way as in {@link #meant}; a date alone is taken for its first minute. */
    private static String withTime(String text) {
        if (DATE.matcher(text).matches()) {
            return text + " 00:00";
        }
        Matcher dated = DATED.matcher(text);
        return dated.matches()
                ? meant(dated.group("time"))
                        .map(time -> dated.group(1) + " " + time)
                        .orElse(text)
                : text;
    }

    private static LocalDate date(String text) {
        Matcher matcher = DATE.matcher(text);
        if (!matcher.matches()) {
            throw new Unreadable(
                    "is not a date",
                    either(withDates(text, Clock::dateInside, Clock::date))
                            .map(date -> "Maybe " + date + ".")
                            .orElse("Maybe 2026-03-14."));
        }
        try {
            LocalDate date = LocalDate.of(
                    Integer.parseInt(matcher.group(1)),
                    Integer.parseInt(matcher.group(2)),
                    Integer.parseInt(matcher.group(3)));
            if (date.getYear() < 2000 || date.getYear() > 2199) {
                throw new Unreadable("is not a date from 2000 to 2199", "Maybe the year is wrong.");
            }
            return date;
        } catch (DateTimeException noSuchDay) {
            throw new Unreadable("is not a date in the calendar", "Maybe the day or the month is wrong.");
        }
    }

    /** A time as written: the date may be missing, and the hour may be 24. */
    private record Written(
            Optional<LocalDate> date, int minuteOfDay, Optional<ZoneOffset> offset, String withoutOffset) {

        static Written of(String text, String wayOut) {
            Matcher matcher = TIME.matcher(text.strip());
            if (!matcher.matches()) {
                throw new Unreadable("is not a time", wayOut);
            }
            int hour = Integer.parseInt(matcher.group("hour"));
            int minute = Integer.parseInt(matcher.group("minute"));
            if (minute > 59 || hour > 24 || hour == 24 && minute > 0) {
                throw new Unreadable("is not a time: hours go from 00:00 to 24:00", wayOut);
            }
            Optional<ZoneOffset> offset;
            try {
                offset = Optional.ofNullable(matcher.group("offset")).map(ZoneOffset::of);
            } catch (DateTimeException tooFar) {
                throw new Unreadable("has an offset from UTC that no clock has", withoutOffset(matcher));
            }
            return new Written(
                    Optional.ofNullable(matcher.group("date")).map(Clock::date),
                    hour * 60 + minute,
                    offset,
                    withoutOffset(matcher));
        }

        /** What may be meant by 10:00-10:20, or by the offset of another zone. */
        private static String withoutOffset(Matcher time) {
            String date = time.group("date") == null ? "" : time.group("date") + " ";
            return "Maybe " + date + twoDigits(time.group("hour")) + ":" + time.group("minute") + ".";
        }

        /** Whether clocks show this time twice on {@code day}. */
        boolean isRepeatedOn(LocalDate day, Frame frame) {
            LocalDateTime local = day.atStartOfDay().plusMinutes(minuteOfDay);
            return frame.zone().getRules().getValidOffsets(local).size() > 1;
        }

        Moment on(LocalDate dateIfNone, Frame frame) {
            LocalDate day = date.orElse(dateIfNone);
            if (frame.known() && Math.abs(ChronoUnit.DAYS.between(frame.date(), day)) > FARTHEST_DAYS) {
                throw new Unreadable(
                        "lies more than " + FARTHEST_DAYS + " days from the day's date " + frame.date(),
                        "Maybe the year or the month is wrong.");
            }
            LocalDateTime local = day.atStartOfDay().plusMinutes(minuteOfDay);
            List<ZoneOffset> offsets = frame.zone().getRules().getValidOffsets(local);
            if (offsets.isEmpty()) {
                throw new Unreadable(
                        "never shows on a clock in " + frame.zone() + ": clocks are put forward over it on "
                                + local.toLocalDate(),
                        "Maybe " + clock(ZonedDateTime.of(local, frame.zone()).toLocalDateTime()) + ".");
            }
            if (frame.known() && offset.isPresent() && !offsets.contains(offset.get())) {
                throw new Unreadable(
                        "has an offset from UTC that " + frame.zone() + " does not have then", withoutOffset);
            }
            return Moment.of(local.atOffset(offset.orElse(offsets.get(0))).toZonedDateTime());
        }
    }

    /** A time counted on past midnight, such as 25:30, on the date after. */
    private static Optional<String> nextDay(String text, Frame frame) {
        Matcher matcher = TIME.matcher(text.strip());
        if (!matcher.matches() || matcher.group("date") != null || !frame.known()) {
            return Optional.empty();
        }
        int hour = Integer.parseInt(matcher.group("hour"));
        int minute = Integer.parseInt(matcher.group("minute"));
        return hour < 24 || hour > 47 || minute > 59
                ? Optional.empty()
                : Optional.of(frame.date().plusDays(1) + " " + clock(LocalTime.of(hour - 24, minute)));
    }

    private static Moment moment(String text, Frame frame) {
        String wayOut = withColons(text, colons -> moment(colons, frame))
                .or(() -> either(withDates(text, Clock::withTime, dated -> moment(dated, frame))))
                .or(() -> nextDay(text, frame))
                .or(() -> meant(text))
                .map(time -> "Maybe " + time + ".")
                .orElse(TIME_EXAMPLE);
        return Written.of(text, wayOut).on(frame.date(), frame);
    }

    /** The span that somebody may have meant who wrote 7-18 or 7am - 6pm. */
    private static Optional<String> meantSpan(String text) {
        String[] sides = text.split("[-–]", -1);
        if (sides.length != 2) {
            return Optional.empty();
        }
        Optional<String> from = meant(sides[0]);
        Optional<String> to = meant(sides[1]);
        return from.isPresent() && to.isPresent() && from.get().compareTo(to.get()) < 0
                ? Optional.of(from.get() + "-" + to.get())
                : Optional.empty();
    }

    /** Spans with commas between them, with semicolons instead. */
    private static Optional<String> severalSpans(String text, Frame frame) {
        List<String> spans =
                Stream.of(text.split("[,&+]|\\band\\b")).map(String::strip).toList();
        return spans.size() > 1 && spans.stream().allMatch(each -> canBeRead(each, span -> span(span, frame)))
                ? Optional.of(String.join("; ", spans))
                : Optional.empty();
    }

    /** A span with a word or a long dash in the middle, with a plain one instead. */
    private static Optional<String> withDash(String text, Frame frame) {
        String dash = BETWEEN_TIMES.matcher(text).replaceFirst(" - ");
        return dash.equals(text) || !canBeRead(dash, span -> span(span, frame)) ? Optional.empty() : Optional.of(dash);
    }

    /** The same with colons between hours and minutes, if that can be read and this can't. */
    private static Optional<String> withColons(String text, Consumer<String> reader) {
        String colons = WITHOUT_COLON
                .matcher(text)
                .replaceAll(time -> (time.group(1) == null ? "" : time.group(1)) + time.group(2) + ":" + time.group(3));
        return colons.equals(text) || !canBeRead(colons, reader) ? Optional.empty() : Optional.of(colons);
    }

    private static Span span(String text, Frame frame) {
        String wayOut = withColons(text, colons -> span(colons, frame))
                .or(() -> either(withDates(text, dated -> dated, dated -> span(dated, frame))))
                .or(() -> severalSpans(text, frame))
                .or(() -> withDash(text, frame))
                .or(() -> meantSpan(text))
                .map(span -> "Maybe " + span + ".")
                .orElse(SPAN_EXAMPLE);
        String[] sides = SPACED_DASH.split(text, -1);
        if (sides.length != 2) {
            Matcher tight = TIGHT_SPAN.matcher(text);
            if (!tight.matches()) {
                throw new Unreadable("is not a span of time", wayOut);
            }
            sides = tight.group(1) != null
                    ? new String[] {tight.group(1), tight.group(2)}
                    : new String[] {tight.group(3), tight.group(4)};
        }
        Written from = Written.of(sides[0], wayOut);
        Written to = Written.of(sides[1], wayOut);
        LocalDate startDate = from.date().orElse(frame.date());
        Moment start = from.on(startDate, frame);
        boolean nextDay = to.date().isEmpty()
                && to.minuteOfDay() < from.minuteOfDay()
                && !(to.offset().isPresent() && to.isRepeatedOn(startDate, frame));
        Moment end = to.on(nextDay ? startDate.plusDays(1) : startDate, frame);
        if (!end.isAfter(start)) {
            throw new Unreadable("ends before it has begun", SPAN_EXAMPLE);
        }
        return new Span(start, end);
    }

    private static String write(Moment moment, Frame frame) {
        ZonedDateTime time = moment.in(frame.zone());
        String date = time.toLocalDate().equals(frame.date()) ? "" : time.toLocalDate() + " ";
        return date + clockWithOffset(time);
    }

    private static String write(Span span, Frame frame) {
        ZonedDateTime start = span.start().in(frame.zone());
        ZonedDateTime end = span.end().in(frame.zone());
        boolean plain = start.toLocalDate().equals(frame.date())
                && !ambiguous(start)
                && !ambiguous(end)
                && (end.toLocalDate().equals(start.toLocalDate())
                                && end.toLocalTime().isAfter(start.toLocalTime())
                        || end.toLocalDate().equals(start.toLocalDate().plusDays(1))
                                && end.toLocalTime().isBefore(start.toLocalTime()));
        if (plain) {
            return clock(start.toLocalDateTime()) + "-" + clock(end.toLocalDateTime());
        }
        return start.toLocalDate() + " " + clockWithOffset(start) + " - " + end.toLocalDate() + " "
                + clockWithOffset(end);
    }

    private static boolean ambiguous(ZonedDateTime time) {
        return Moment.of(time).comesTwice(time.getZone());
    }

    private static String clockWithOffset(ZonedDateTime time) {
        return clock(time.toLocalDateTime())
                + (ambiguous(time) ? time.getOffset().getId() : "");
    }

    private static String clock(LocalDateTime time) {
        return clock(time.toLocalTime());
    }

    private static String clock(LocalTime clock) {
        return (clock.getHour() < 10 ? "0" : "") + clock.getHour() + ":" + (clock.getMinute() < 10 ? "0" : "")
                + clock.getMinute();
    }
}
