package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.odds.Odds;
import platecall.odds.TestOdds;
import platecall.plan.Plan;
import platecall.plan.TestPlans;
import platecall.units.Moment;

/** The lists for spreadsheets. */
class ListsTest {

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    @Test
    void cellsAreQuotedAndLinesEndAsTheStandardSays() {
        // RFC 4180, section 2, rules 1, 5, 6 and 7
        Rows rows = new Rows("a", "b");
        rows.add("a\"b,c", "two\r\nlines");
        rows.add("lone\rreturn", "plain");
        assertThat(text(rows.bytes())).isEqualTo("a,b\r\n\"a\"\"b,c\",\"two\r\nlines\"\r\n\"lone\rreturn\",plain\r\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"})
    void textThatASpreadsheetWouldReckonIsMadeHarmless(String cell) {
        // common practice of spreadsheet exports, no source
        assertThat(Rows.harmless(cell)).isEqualTo("'" + cell);
        assertThat(Rows.harmless("a" + cell)).isEqualTo("a" + cell);
    }

    @Test
    void numbersOfOursAreNotTakenForFormulas() {
        Rows rows = new Rows("margin");
        rows.add(-12);
        assertThat(text(rows.bytes())).isEqualTo("margin\r\n-12\r\n");
        assertThat(Rows.harmless("")).isEmpty();
    }

    @Test
    void sequenceHasEveryStretchOfWorkInOrderOfTime() {
        EggDay eggs = new EggDay();
        assertThat(text(SequenceCsv.of(eggs.day(), eggs.plan())).split("\r\n"))
                .containsExactly(
                        "start,end,what,dish,copy,setup,station,who,hands-on,note",
                        "2026-03-14 01:44,2026-03-14 02:00,set oven to 180 °C,,,,oven,Ada,no,must be there by 02:00",
                        "2026-03-14 02:00,2026-03-14 02:02,bake: put in,Baked egg,hero 1-2,S1,\"oven, 2 trays\",Ada,yes,"
                                + "180 °C; until 02:20; contains egg",
                        "2026-03-14 02:02,2026-03-14 02:17,bake: goes on by itself,Baked egg,hero 1-2,S1,\"oven, 2 trays\",,"
                                + "no,contains egg",
                        "2026-03-14 02:17,2026-03-14 02:20,bake: take out,Baked egg,hero 1-2,S1,\"oven, 2 trays\",Ada,yes,"
                                + "\"core 68 °C by probe; then to fridge, first out 03:50; contains egg\"",
                        "2026-03-14 03:00,2026-03-14 03:30,meal break,,,,,Ada,no,",
                        "2026-03-14 03:50,2026-03-14 03:54,crack,Baked egg,hero 1,S1,bench,Ada,yes,contains egg",
                        "2026-03-14 03:54,2026-03-14 04:00,carry,Baked egg,hero 1,S1,to set,Ada,yes,"
                                + "arrive by 04:00; contains egg",
                        "2026-03-14 04:00,2026-03-14 04:04,crack,Baked egg,hero 2,S1,bench,Ada,yes,contains egg",
                        "2026-03-14 04:04,2026-03-14 04:10,carry,Baked egg,hero 2,S1,to set,Ada,yes,"
                                + "arrive by 04:10; contains egg");
    }

    @Test
    void whatIsKeptUntilReleaseAndWhatStartsByItselfHasSomebody() {
        EggDay eggs = new EggDay();
        eggs.heldIn = Optional.of("fridge");
        Plan plan = eggs.with(eggs.extra("chill", eggs.span(4, 30, 20), "fridge", List.of()));
        assertThat(text(SequenceCsv.of(eggs.day(), plan)).split("\r\n"))
                .contains(
                        "2026-03-14 04:03,2026-03-14 04:20,bring back to fridge,Baked egg,hero 1,S1,fridge,Ada,no,"
                                + "from set; keep until released 04:20; throw nothing away before; contains egg",
                        "2026-03-14 04:30,2026-03-14 04:50,chill,Baked egg,hero 1,S1,fridge,Ada,no,contains egg");
    }

    /** The kitchen closes at 12:00. */
    @Test
    void whatBeginsWithoutHandsHasSomebodyWhoStartsItThoughNobodyMayBeThere() {
        EggDay eggs = new EggDay();
        eggs.helpers = List.of("Ben");
        Plan taken = eggs.with(eggs.extra(
                "chill", eggs.span(4, 30, 20), "fridge", List.of(new Plan.Hands("Ben", eggs.span(4, 47, 3)))));
        assertThat(text(SequenceCsv.of(eggs.day(), taken)).split("\r\n"))
                .contains(
                        "2026-03-14 04:30,2026-03-14 04:47,chill: goes on by itself,Baked egg,hero 1,S1,fridge,Ada,no,"
                                + "contains egg",
                        "2026-03-14 04:47,2026-03-14 04:50,chill: take out,Baked egg,hero 1,S1,fridge,Ben,yes,"
                                + "contains egg");
        Plan late = eggs.with(eggs.extra("chill", eggs.span(12, 5, 20), "fridge", List.of()));
        assertThat(text(SequenceCsv.of(eggs.day(), late)))
                .contains("2026-03-14 12:05,2026-03-14 12:25,chill,Baked egg,hero 1,S1,fridge,Ada,no,"
                        + "nobody is on then: find somebody; contains egg");
    }

    /** By hand: whoever carries egg 1 is on set at 04:26 and back at 04:29. */
    @Test
    void ofADayUnderWayTheListTellsTheRest() {
        EggDay eggs = new EggDay();
        Plan.Work carry = new Plan.Work(
                "w6",
                Plan.Work.Kind.CARRY,
                "egg",
                "carry",
                List.of("S1/egg/crack/hero#1"),
                eggs.span(4, 20, 6),
                List.of(),
                Optional.empty(),
                List.of(new Plan.Hands("Ada", eggs.span(4, 20, 9))),
                List.of());
        assertThat(startsAsOf(eggs, 4, 4, carry)).containsExactly("04:04", "04:20");
        assertThat(startsAsOf(eggs, 4, 3, carry)).containsExactly("04:00", "04:04", "04:20");
        assertThat(startsAsOf(eggs, 4, 28, carry)).containsExactly("04:20");
        assertThat(startsAsOf(eggs, 4, 29, carry)).isEmpty();
    }

    private static List<String> startsAsOf(EggDay eggs, int hour, int minute, Plan.Work more) {
        eggs.asOf = Optional.of(eggs.at(hour, minute));
        return text(SequenceCsv.of(eggs.day(), eggs.with(more)))
                .lines()
                .skip(1)
                .map(line -> line.substring("2026-03-14 ".length(), "2026-03-14 04:00".length()))
                .toList();
    }

    @Test
    void hostileNamesStayText() {
        EggDay eggs = new EggDay();
        eggs.dishName = "=HYPERLINK(\"x\")";
        eggs.person = "@Ada";
        eggs.setup = "-1";
        assertThat(text(SequenceCsv.of(eggs.day(), eggs.plan())))
                .contains("crack,\"'=HYPERLINK(\"\"x\"\")\",hero 1,'-1,bench,'@Ada,yes")
                .doesNotContain(",=", ",@", ",-");
    }

    @Test
    void dressingIsMarkedInTheNote() {
        EggDay eggs = new EggDay();
        eggs.edible = false;
        assertThat(text(SequenceCsv.of(eggs.day(), eggs.plan())).lines().filter(line -> line.contains(",crack,")))
                .hasSize(2)
                .allSatisfy(line -> assertThat(line).endsWith("DO NOT EAT; contains egg"));
    }

    private static Odds odds(EggDay eggs, Plan plan) {
        return TestOdds.of(eggs.day(), plan, 50, 1);
    }

    @Test
    void readinessTellsMarginPeakAndResets() {
        EggDay eggs = new EggDay();
        assertThat(text(ReadinessCsv.of(eggs.day(), eggs.plan(), odds(eggs, eggs.plan()))))
                .isEqualTo(
                        "setup,call,ready,margin in minutes,chance at call in percent,chance at peak in percent,hero at peak until,resets queued,next reset at,verdict,"
                                + "eaten food at risk discarded by\r\n"
                                + "S1,2026-03-14 04:00,2026-03-14 04:00,0,100.0,100.0,2026-03-14 04:04,1,2026-03-14 04:10,Ready at call,\r\n");
        assertThat(text(ReadinessCsv.of(eggs.day(), eggs.plan(List.of(), 7), odds(eggs, eggs.plan(List.of(), 7)))))
                .contains("04:07,-7,")
                .contains("LATE by 7 min: egg 1");
    }

    @Test
    void aChanceIsRoundedDownAndNeverToldAsCertain() {
        assertThat(List.of(0.9997, 0.57, 0.999, 1.0, 0.0, 0.0004, 1 / 3.0))
                .extracting(ReadinessCsv::percent)
                .containsExactly("99.9", "57.0", "99.9", "100.0", "0.0", "0.1", "33.3");
    }

    @Test
    void timesAreUniqueInTheNightInWhichClocksGoBack() {
        // Europe/Berlin, 25 October 2026: 03:00 CEST is 02:00 CET (IANA time zone database)
        EggDay eggs = new EggDay(ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 10, 25));
        Plan plan = eggs.plan();
        assertThat(text(SequenceCsv.of(eggs.day(), plan)))
                .contains("2026-10-25 02:00+02:00,2026-10-25 02:02+02:00,bake: put in")
                .contains("2026-10-25 02:00+01:00,2026-10-25 02:30+01:00,meal break");
        assertThat(Clock.of(eggs.day(), plan).time(eggs.at(3, 30))).isEqualTo("02:30 +01");
    }

    /** Work, call and release lie before the change, but one meal break is in the hour after it. */
    @Test
    void aMealAfterTheChangeIsToldAparttoo() {
        Day day = TestDays.firstEgg()
                .with(days -> {
                    days.date = LocalDate.of(2026, 10, 25);
                    days.kitchen = List.of(TestDays.span("2026-10-24T20:00", "2026-10-25T08:00"));
                })
                .setup("S1", "2026-10-24T23:30", setup -> {})
                .build();
        Moment before = day.setups().get(0).call();
        assertThat(Clock.of(day, TestPlans.of(day).build()).stamp(before)).isEqualTo("2026-10-24 23:30");
        Plan meal = TestPlans.of(day)
                .meal("Ana", TestDays.span("2026-10-25T04:00", "2026-10-25T04:30"))
                .build();
        assertThat(Clock.of(day, meal).stamp(before)).isEqualTo("2026-10-24 23:30+02:00");
    }

    /** All of it lies in the hour that clocks show twice, so each time needs its offset. */
    @Test
    void timesAreUniqueInTheHourThatClocksShowTwice() {
        Day day = TestDays.firstEgg()
                .with(days -> {
                    days.date = LocalDate.of(2026, 10, 25);
                    days.kitchen = List.of(TestDays.span("2026-10-25T00:00", "2026-10-25T08:00"));
                })
                .setup("S1", "2026-10-25T02:30", setup -> {})
                .build();
        assertThat(Clock.of(day, TestPlans.of(day).build())
                        .stamp(day.setups().get(0).call()))
                .isEqualTo("2026-10-25 02:30+02:00");
    }
}
