package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.units.Moment;
import platecall.units.Span;

/** In Berlin clocks go from 02:00 to 03:00 on 2026-03-29, and from 03:00 back to 02:00 on 2026-10-25 (IANA time zones). */
class ClockTest {

    private static Frame berlin(String date) {
        return new Frame(LocalDate.parse(date), ZoneId.of("Europe/Berlin"), true, false);
    }

    private static Moment at(String time) {
        return Moment.of(ZonedDateTime.parse(time));
    }

    private static Moment moment(String text, String date) {
        return Clock.MOMENT.reader().apply(text, berlin(date));
    }

    private static Span span(String text, String date) {
        return Clock.SPAN.reader().apply(text, berlin(date));
    }

    private static void refuses(Runnable reading, String what) {
        assertThatThrownBy(reading::run).isInstanceOf(Unreadable.class).hasMessage(what);
    }

    @ParameterizedTest
    @CsvSource({
        "18:30,2026-03-14T18:30+01:00",
        "6:05,2026-03-14T06:05+01:00",
        "18:30:00,2026-03-14T18:30+01:00",
        "24:00,2026-03-15T00:00+01:00",
        "2026-03-13 18:30,2026-03-13T18:30+01:00",
        "2026-03-13T18:30,2026-03-13T18:30+01:00",
        "2026-3-3 18:30+01:00,2026-03-03T18:30+01:00",
        "18:30 +01:00,2026-03-14T18:30+01:00"
    })
    void aTimeWithoutADateFallsOnTheDay(String text, String time) {
        assertThat(moment(text, "2026-03-14")).isEqualTo(at(time));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            7-18            | Maybe 07:00-18:00.
            7:30-18         | Maybe 07:30-18:00.
            7am - 6.30pm    | Maybe 07:00-18:30.
            0700–1800       | Maybe 07:00-18:00.
            14.00-02:00     | Maybe 14:00-02:00.
            14 00 - 02 00   | Maybe 14:00 - 02:00.
            2026-03-13 14.00 - 2026-03-14 02.00 | Maybe 2026-03-13 14:00 - 2026-03-14 02:00.
            8:00 to 11:00   | Maybe 8:00 - 11:00.
            08:00 — 11:00   | Maybe 08:00 - 11:00.
            8:00 bis 11:00  | Maybe 8:00 - 11:00.
            06:00-10:00, 12:00-18:00 | Maybe 06:00-10:00; 12:00-18:00.
            9-5             | Maybe 06:00-18:00, or 2026-03-13 14:00 - 2026-03-14 02:00.
            morning-noon    | Maybe 06:00-18:00, or 2026-03-13 14:00 - 2026-03-14 02:00.
            """)
    void aSpanIsGuessedFromItsHours(String text, String wayOut) {
        assertThatThrownBy(() -> span(text, "2026-03-14"))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo(wayOut));
    }

    @ParameterizedTest
    @ValueSource(strings = {"18.30", "6pm", "1830", "18:3", "", "18:30 Uhr", "14.03.2026 18:30"})
    void anythingElseIsNoTime(String text) {
        refuses(() -> moment(text, "2026-03-14"), "is not a time");
    }

    @ParameterizedTest
    @CsvSource({"2026-03-13 18.30,2026-03-13 18:30", "2026-03-13 18 30,2026-03-13 18:30", "18h30,18:30"})
    void aTimeWithAnotherSignIsOfferedWithAColon(String text, String offered) {
        assertThatThrownBy(() -> moment(text, "2026-03-14"))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo("Maybe " + offered + "."));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "14.3.2026|Maybe 2026-03-14.",
                "14/3/2026|Maybe 2026-03-14.",
                "3/14/2026|Maybe 2026-03-14.",
                "4/3/2026|Maybe 2026-04-03, or 2026-03-04.",
                "11-06-2026|Maybe 2026-11-06, or 2026-06-11.",
                "13-06-2026|Maybe 2026-06-13.",
                "4.3.2026|Maybe 2026-03-04.",
                "3/3/2026|Maybe 2026-03-03.",
                "11/26/26|Maybe 2026-11-26.",
                "2026/11/06|Maybe 2026-11-06.",
                "31/6/2026|Maybe 2026-03-14.",
                "2026-02-30|Maybe the day or the month is wrong.",
                "1926-11-06|Maybe the year is wrong.",
                "soon|Maybe 2026-03-14.",
                "46151|Maybe 2026-05-09.",
                "46151.5|Maybe 2026-05-09.",
                "2026-05-09 12:00|Maybe 2026-05-09.",
                "2026-05-09T12:00:00Z|Maybe 2026-05-09.",
                "Sat 2026-05-09|Maybe 2026-05-09.",
                "Samstag, 9.5.2026|Maybe 2026-05-09.",
                "9 May 2026|Maybe 2026-05-09.",
                "9-May-2026|Maybe 2026-05-09.",
                "Saturday, May 9th, 2026|Maybe 2026-05-09.",
                "9. März 2026|Maybe 2026-03-09.",
                "1. Dezember 2026|Maybe 2026-12-01.",
                "31 June 2026|Maybe 2026-03-14.",
            })
    void aDateInAnotherFormIsOfferedInThisOne(String text, String wayOut) {
        assertThatThrownBy(() -> Clock.CALENDAR_DATE.reader().apply(text, null))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo(wayOut));
    }

    /** Of two dates only the one that the day can have is offered. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "11/6/2026 00:40|2026-11-06|2026-11-06 00:40",
                "11/6/2026 0:40|2026-06-10|2026-06-11 00:40",
                "2026-11-06 12:40 AM|2026-11-06|2026-11-06 00:40",
                "11/6/2026 12:40 AM|2026-11-06|2026-11-06 00:40",
                "11-06-2026 6pm|2026-11-06|2026-11-06 18:00",
                "4/3/2026 10:00|2026-03-20|2026-04-03 10:00, or 2026-03-04 10:00",
                "14.03.2026 18:30|2026-03-14|2026-03-14 18:30",
                "46151.4167|2026-05-09|2026-05-09 10:00",
                "46152|2026-05-09|2026-05-10 00:00",
                "2026-05-10|2026-05-09|2026-05-10 00:00",
                "9 May 2026 10am|2026-05-09|2026-05-09 10:00",
                "Sat 2026-05-09 10:00|2026-05-09|2026-05-09 10:00"
            })
    void aTimeAfterADateInAnotherFormIsOfferedWithItInThisOne(String text, String day, String offered) {
        assertThatThrownBy(() -> moment(text, day))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo("Maybe " + offered + "."));
    }

    @Test
    void aSpanWithDatesInAnotherFormIsOfferedWithThemInThisOne() {
        assertThatThrownBy(() -> span("11/5/2026 22:00 - 11/6/2026 11:00", "2026-11-06"))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut())
                                .isEqualTo("Maybe 2026-11-05 22:00 - 2026-11-06 11:00."));
    }

    @ParameterizedTest
    @CsvSource({"10:00-10:20,10:00", "2026-03-13 9:30+02:00,2026-03-13 09:30", "10:00+99:00,10:00"})
    void aTimeWithAnOffsetThatCannotBeIsOfferedWithoutIt(String text, String offered) {
        assertThatThrownBy(() -> moment(text, "2026-03-14"))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo("Maybe " + offered + "."));
    }

    @Test
    void timesMustBeOnAClockAndNearTheDay() {
        refuses(() -> moment("25:00", "2026-03-14"), "is not a time: hours go from 00:00 to 24:00");
        assertThatThrownBy(() -> moment("24:40", "2026-03-14"))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo("Maybe 2026-03-15 00:40."));
        refuses(() -> moment("2026-02-30 10:00", "2026-03-14"), "is not a date in the calendar");
        refuses(
                () -> moment("2027-03-14 10:00", "2026-03-14"),
                "lies more than 30 days from the day's date 2026-03-14");
        refuses(
                () -> moment("10:00+02:00", "2026-03-14"),
                "has an offset from UTC that Europe/Berlin does not have then");
        refuses(() -> moment("10:00+99:00", "2026-03-14"), "has an offset from UTC that no clock has");
    }

    @Test
    void inTheRepeatedHourTheEarlierTimeIsMeantUnlessAnOffsetSaysOtherwise() {
        assertThat(moment("02:30", "2026-10-25")).isEqualTo(at("2026-10-25T02:30+02:00"));
        assertThat(moment("02:30+02:00", "2026-10-25")).isEqualTo(at("2026-10-25T02:30+02:00"));
        assertThat(moment("02:30+01:00", "2026-10-25")).isEqualTo(at("2026-10-25T03:30+02:00"));
    }

    @Test
    void inTheSkippedHourThereIsNoTime() {
        assertThatThrownBy(() -> moment("02:30", "2026-03-29"))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo("Maybe 03:30."))
                .hasMessage("never shows on a clock in Europe/Berlin: clocks are put forward over it on 2026-03-29");
    }

    @ParameterizedTest
    @CsvSource({
        "06:00-18:00,2026-03-14T06:00+01:00,2026-03-14T18:00+01:00",
        "06:00 – 18:00,2026-03-14T06:00+01:00,2026-03-14T18:00+01:00",
        "22:00-02:00,2026-03-14T22:00+01:00,2026-03-15T02:00+01:00",
        "18:00-24:00,2026-03-14T18:00+01:00,2026-03-15T00:00+01:00",
        "2026-03-13 14:00 - 2026-03-14 02:00,2026-03-13T14:00+01:00,2026-03-14T02:00+01:00",
        "2026-03-13 14:00 - 02:00,2026-03-13T14:00+01:00,2026-03-14T02:00+01:00",
        "2026-03-13 14:00-18:00,2026-03-13T14:00+01:00,2026-03-13T18:00+01:00",
        "2026-03-13 14:00-2026-03-14 02:00,2026-03-13T14:00+01:00,2026-03-14T02:00+01:00"
    })
    void spansMayRunPastMidnight(String text, String start, String end) {
        assertThat(span(text, "2026-03-14")).isEqualTo(new Span(at(start), at(end)));
    }

    @Test
    void spansThatAreNoneAreRefused() {
        refuses(() -> span("06:00-06:00", "2026-03-14"), "ends before it has begun");
        refuses(() -> span("2026-03-14 10:00 - 2026-03-13 12:00", "2026-03-14"), "ends before it has begun");
        refuses(() -> span("06:00", "2026-03-14"), "is not a span of time");
        refuses(() -> span("06:00-noon", "2026-03-14"), "is not a span of time");
        refuses(() -> span("06:00-08:00-10:00", "2026-03-14"), "is not a span of time");
    }

    @Test
    void aSpanOverTheChangeOfClocksHasItsTrueLength() {
        assertThat(span("01:00-04:00", "2026-03-29").minutes()).isEqualTo(120);
        assertThat(span("01:00-04:00", "2026-10-25").minutes()).isEqualTo(240);
        assertThat(span("02:30+02:00 - 02:15+01:00", "2026-10-25").minutes()).isEqualTo(45);
        assertThat(span("22:00 - 02:30+01:00", "2026-10-24").minutes()).isEqualTo(330);
        assertThat(span("22:00-02:30", "2026-10-24").minutes()).isEqualTo(270);
    }

    @Test
    void aTimeIsWrittenWithItsDateOnlyOnOtherDaysAndWithItsOffsetOnlyInTheRepeatedHour() {
        Frame frame = berlin("2026-10-25");

        assertThat(Clock.MOMENT.writer().apply(at("2026-10-25T09:05+01:00"), frame))
                .isEqualTo("09:05");
        assertThat(Clock.MOMENT.writer().apply(at("2026-10-24T09:05+02:00"), frame))
                .isEqualTo("2026-10-24 09:05");
        assertThat(Clock.MOMENT.writer().apply(at("2026-10-25T02:30+01:00"), frame))
                .isEqualTo("02:30+01:00");
        assertThat(Clock.MOMENT.writer().apply(at("2026-10-25T02:30+02:00"), frame))
                .isEqualTo("02:30+02:00");
    }

    @Property(tries = 500)
    void momentsAndSpansReadBackAsWrittenAroundBothChangesOfClocks(
            @ForAll @IntRange(min = -2000, max = 2000) int fromMinute,
            @ForAll @IntRange(min = 1, max = 3000) int minutes,
            @ForAll boolean autumn) {
        String date = autumn ? "2026-10-25" : "2026-03-29";
        Moment start =
                at(autumn ? "2026-10-25T03:00+01:00" : "2026-03-29T03:00+02:00").plus(fromMinute);
        Span span = Span.ofMinutes(start, minutes);

        assertThat(moment(Clock.MOMENT.writer().apply(start, berlin(date)), date))
                .isEqualTo(start);
        assertThat(span(Clock.SPAN.writer().apply(span, berlin(date)), date)).isEqualTo(span);
    }
}
