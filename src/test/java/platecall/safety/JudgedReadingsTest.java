package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static platecall.day.TestDays.at;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Part;
import platecall.day.ProbeReading;
import platecall.day.ProbeReading.What;
import platecall.day.TestDays;
import platecall.day.Trouble;
import platecall.plan.Plan;
import platecall.plan.Plan.Work.Kind;
import platecall.plan.TestPlans;
import platecall.safety.JudgedReadings.Grade;

/** Readings as they are written down, each against the published number that it is judged by. */
class JudgedReadingsTest {

    private String profile = "fda-2022";
    private String ingredient = "lentils";
    private List<String> eaters = List.of("Mina");
    private boolean controlled = true;
    private boolean cook = false;

    /** One copy for setup S1, at camera from 16:00 to 16:05; begun at 06:00, maybe cooked from 15:30. */
    private Day day() {
        TestDays sheets = new TestDays()
                .with(days -> days.profile = profile)
                .with(days -> days.kitchen = List.of(TestDays.span("06:00-23:00")))
                .place("kitchen", place -> {})
                .setup("S1", "16:00", setup -> {})
                .dish("stew", dish -> dish.controlled = controlled)
                .ingredient("stew", ingredient, part -> {})
                .diner("Mina")
                .need("S1", "stew", "serve", need -> need.eatenBy = eaters)
                .step("stew", "trim", 5, step -> step.raw = true);
        if (cook) {
            sheets = sheets.step("stew", "cook", 20, step -> {
                step.after("trim");
                step.core = Optional.of(75.0);
            });
        }
        return sheets.step("stew", "serve", 1, step -> step.after(cook ? "cook" : "trim"))
                .build();
    }

    private Plan plan(Day day) {
        TestPlans plan = TestPlans.of(day).step("stew", "trim", 1, "06:00-06:05", work -> {});
        if (cook) {
            plan = plan.step("stew", "cook", 1, "15:30-15:50", work -> {});
        }
        return plan.add(Kind.STEP, "stew", "serve", "S1/stew/serve/hero#1", TestDays.span("15:59-16:00"), work -> {})
                .build();
    }

    private static ProbeReading reading(What what, String time, double celsius, int held) {
        return new ProbeReading(
                what, Optional.empty(), "stew", Optional.empty(), Optional.empty(), at(time), celsius, held);
    }

    /** @param log {@code 10:00 63 15; 10:05 70}: time, degrees C, and maybe seconds held */
    private JudgedReadings judge(String what, String log) {
        List<ProbeReading> rows = Stream.of(log.split("; "))
                .map(row -> row.split(" "))
                .map(row -> reading(
                        What.valueOf(what),
                        row[0],
                        Double.parseDouble(row[1]),
                        row.length > 2 ? Integer.parseInt(row[2]) : 0))
                .toList();
        Day day = day();
        assertThat(JudgedReadings.troubles(day, plan(day), rows, "readings", time -> time.clock(TestDays.ZONE)))
                .isEmpty();
        List<JudgedReadings> judged = JudgedReadings.of(day, plan(day), rows, time -> time.clock(TestDays.ZONE));
        assertThat(judged).hasSize(1);
        return judged.get(0);
    }

    /** FDA Food Code 2022, 3-401.11(A)(1) to (3); FSA table of equivalents; that a stricter kind's row is enough is own. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, lentils, 10:00 63.0 15, FINE",
        "fda-2022, lentils, 10:00 62.9 15, NOT_SAFE",
        "fda-2022, lentils, 10:00 63.0 14, NOT_SAFE",
        "fda-2022, lentils, 10:00 63.0, NOT_SAFE",
        "fda-2022, lentils, 10:00 63.0; 10:01 63.0, FINE",
        "fda-2022, lentils, 10:00 63.0; 10:01 62.9; 10:02 63.0, NOT_SAFE",
        "fda-2022, lentils, 10:00 70.0, FINE",
        "fda-2022, ground beef, 10:00 68 17, FINE",
        "fda-2022, ground beef, 10:00 68 16, NOT_SAFE",
        "fda-2013, ground beef, 10:00 68 15, FINE",
        "fda-2022, ground beef, 10:00 67.9 17, NOT_SAFE",
        "fda-2022, ground beef, 10:00 63; 10:03 64, FINE",
        "fda-2022, ground beef, 10:00 63; 10:02 64, NOT_SAFE",
        "fda-2022, ground beef, 10:00 66; 10:01 66, FINE",
        "fda-2022, chicken, 10:00 74, FINE",
        "fda-2022, chicken, 10:00 73.9 600, NOT_SAFE",
        "fda-2013, chicken, 10:00 74 14, NOT_SAFE",
        "fda-2013, chicken, 10:00 74 15, FINE",
        "uk, chicken, 10:00 70 120, FINE",
        "uk, chicken, 10:00 70 119, NOT_SAFE",
        "uk, chicken, 10:00 75 30, FINE",
        "uk, chicken, 10:00 60; 10:45 60, FINE",
        "uk, chicken, 10:00 60; 10:44 60, NOT_SAFE"
    })
    void foodIsDoneOnceItsCoreHasBeenHotForLongEnough(String profile, String ingredient, String log, Grade grade) {
        this.profile = profile;
        this.ingredient = ingredient;

        assertThat(judge("COOKING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 2022, 3-401.11(A)(2): 63 °C 3 min, 66 °C 1 min, 68 °C 17 s, 70 °C. */
    @Test
    void whatIsMissingIsToldInTheShortestWays() {
        ingredient = "ground beef";
        assertThat(judge("COOKING", "10:00 66; 10:01 64").words())
                .contains(
                        "Not done for ground meat: hold 63 °C for 2 min more, or reach 66 °C and hold it for 1 min, or"
                                + " reach 70 °C, and read again.");
        assertThat(judge("COOKING", "10:00 66").words())
                .contains(
                        "hold 66 °C for 1 min more, or reach 68 °C and hold it for 17 s, or reach 70 °C, and read again.");
        ingredient = "chicken";
        assertThat(judge("COOKING", "10:00 71.5").words())
                .isEqualTo("10:00 71.5 °C. Not done for poultry and what is stuffed: reach 74 °C and read again.");
    }

    /** FDA Food Code 2022, 3-401.11(A): words may miss that it is ground, poultry or stuffed. */
    @Test
    void howStrictAKindItIsDoneForIsTold() {
        assertThat(judge("COOKING", "10:00 63 15").words())
                .contains("Done unless it is ground, poultry or stuffed: at least 63");
        assertThat(judge("COOKING", "10:00 70").words())
                .endsWith("Done unless it is poultry or stuffed: at least 70 °C at 10:00.");
        assertThat(judge("COOKING", "10:00 74").words()).endsWith("Done: at least 74 °C at 10:00.");
        assertThat(judge("COOKING", "10:00 62.9").words())
                .contains("Not done: reach 63 °C and hold it for 15 s, or reach 70 °C, and read again.");
    }

    /** FDA Food Code 3-401.11(B)(2): 60.0 °C for 12 minutes. */
    @Test
    void aWholeRoastMayBeDoneEarlier() {
        assertThat(judge("COOKING", "10:00 60; 10:12 60").words())
                .contains("Done only if it is a whole roast of beef, pork, lamb or ham: 60 °C held long enough");
        assertThat(judge("COOKING", "10:00 60; 10:11 60").words()).doesNotContain("roast");
    }

    /** USDA FSIS Appendix A (FSIS-GD-2021-14): 60.0 °C (140 °F) for 12 min; 64 °C lies above 147 °F: 134 and 144 s. */
    @Test
    void whatGroundMeatIsWorthIsToldByAppendixA() {
        ingredient = "ground beef";
        assertThat(judge("COOKING", "10:00 60; 10:12 60").words()).contains("10^7 times fewer");
        assertThat(judge("COOKING", "10:00 64 134").words()).contains("10^6.5 times fewer");
        assertThat(judge("COOKING", "10:00 64 144").words()).contains("10^7 times fewer");
        assertThat(judge("COOKING", "10:00 64 133").words()).doesNotContain("fewer");
    }

    /** FSA: equivalents of 70 °C for 2 minutes, z 7.5; 62.5 °C for 10 minutes is a tenth of 10 (own calculation). */
    @Test
    void whatACoreIsWorthInBritainIsToldInMinutesAtSeventy() {
        profile = "uk";
        assertThat(judge("COOKING", "10:00 62.5; 10:10 90").words())
                .contains("Worth at least 1 min at 70 °C (z 7.5 °C), of 2.");
    }

    /** FDA Food Code 3-501.14(A): 57 to 21 °C in 2 h, to 5 °C in 6 h; Standard 3.2.2; arrete of 2009: less than 2 h. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, 10:00 57; 12:00 21; 16:00 5, FINE",
        "fda-2022, 10:00 57; 12:01 21; 16:00 5, NOT_SAFE",
        "fda-2022, 10:00 57; 12:00 21; 16:01 5, NOT_SAFE",
        "fda-2022, 10:00 57; 12:00 22, WATCH",
        "fda-2022, 10:00 57; 12:01 22, NOT_SAFE",
        "fda-2022, 10:00 57; 12:00 21, WATCH",
        "fda-2022, 10:00 80, WATCH",
        "fda-2022, 10:00 40; 12:00 21; 12:30 5, WATCH",
        "fda-2022, 10:00 40; 12:01 21, NOT_SAFE",
        "australia, 10:00 60; 12:00 21; 16:00 5, FINE",
        "australia, 10:00 60; 12:00 21; 16:01 5, NOT_SAFE",
        "france, 10:00 63; 11:59 10, WATCH",
        "france, 10:00 63; 11:59 10; 13:58 4, FINE",
        "france, 10:00 63; 11:59 10; 13:59 4, NOT_SAFE",
        "france, 10:00 63; 12:00 10, NOT_SAFE"
    })
    void foodCoolsInTime(String profile, String log, Grade grade) {
        this.profile = profile;

        assertThat(judge("COOLING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-501.14(A)(1), 3-501.16(A)(2), 3-501.19(B): 21 °C in 2 h, 5 °C is cold, four hours out of it. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, 06:00 60; 07:00 20; 07:40 4; 19:00 30, NOT_SAFE",
        "fda-2022, 06:00 60; 07:00 20; 07:40 4; 08:00 30; 11:41 4, NOT_SAFE",
        "fda-2022, 06:00 60; 07:00 20; 07:40 4; 08:00 30; 11:40 4, WATCH",
        "fda-2022, 07:00 60; 08:00 20; 12:40 4; 13:00 9, WATCH",
        "fda-2022, 06:00 60; 07:00 20; 07:40 4; 19:00 5, FINE",
        "fda-2022, 10:00 57; 11:00 20; 12:01 22, NOT_SAFE",
        "fda-2022, 10:00 20; 12:01 30, NOT_SAFE",
        "fda-2022, 10:00 57; 11:00 20; 11:30 30; 13:00 20; 13:30 5, NOT_SAFE",
        "fda-2022, 10:00 57; 11:00 20; 11:30 30; 11:50 20; 13:30 5, FINE"
    })
    void whatWarmsUpAgainIsNotCooled(String profile, String log, Grade grade) {
        this.profile = profile;

        assertThat(judge("COOLING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-501.14(B): 5 °C within four hours of ambient; without a stage out of the cold: SI 2013/2996 Sch. 4. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, 08:00 25; 21:00 25; 22:00 4, NOT_SAFE",
        "fda-2022, 08:00 25; 12:01 25, NOT_SAFE",
        "fda-2022, 08:00 25; 12:00 25, WATCH",
        "fda-2022, 08:00 25; 12:00 5, FINE",
        "fda-2022, 08:00 25; 12:01 5, NOT_SAFE",
        "fda-2022, 08:00 20; 10:00 5, WATCH",
        "uk, 08:00 30; 21:00 30, NOT_SAFE",
        "uk, 08:00 30; 11:59 30, WATCH",
        "uk, 08:00 30; 11:59 8, FINE",
        "uk, 08:00 30; 12:00 8, NOT_SAFE",
        "australia, 08:00 30; 12:00 5, FINE",
        "australia, 08:00 30; 12:01 5, NOT_SAFE",
        "france, 08:00 30; 09:59 4, FINE",
        "france, 08:00 30; 10:00 4, NOT_SAFE"
    })
    void theClockOfWhatWasNeverHotStartsAtItsFirstReading(String profile, String log, Grade grade) {
        this.profile = profile;

        assertThat(judge("CHILLING", log).grade()).isEqualTo(grade);
    }

    /** SI 2013/2996 Sch. 4: hot 63 °C, less than two hours out of it, cold 8 °C; that cooling is such a time is own. */
    @ParameterizedTest
    @CsvSource({
        "10:00 63; 11:59 8, FINE",
        "10:00 63; 12:00 8, NOT_SAFE",
        "10:00 63; 11:59 30, WATCH",
        "10:00 63; 12:00 30, NOT_SAFE",
        "10:00 80, WATCH",
        "10:00 7, WATCH"
    })
    void withoutCoolingMinutesThoseBetweenHotAndColdCount(String log, Grade grade) {
        profile = "uk";

        assertThat(judge("COOLING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-501.14(A)(1): 21 °C in two hours, (A)(2): 5 °C in six. */
    @ParameterizedTest
    @CsvSource({"08:30 50 7200, WATCH", "08:30 50 7260, NOT_SAFE", "08:30 50 36000, NOT_SAFE"})
    void foodThatIsWatchedDoesNotCoolMeanwhile(String log, Grade grade) {
        assertThat(judge("COOLING", log).grade()).isEqualTo(grade);
    }

    /** Australia, Standard 3.2.2: 60 to 21 °C in 2 h, then to 5 °C in 4 h. */
    @Test
    void aFirstStageThatNobodyReadIsOnlyInTimeIf() {
        profile = "australia";
        assertThat(judge("COOLING", "10:00 21; 12:00 5").words())
                .endsWith("21 °C at 10:00: in time only if it fell below 60 °C at 08:00 or later. From 21 °C to 5 °C in"
                        + " 120 min (at most 240 min allowed).");
        assertThat(judge("COOLING", "10:00 21; 12:00 5").grade()).isEqualTo(Grade.WATCH);
    }

    /** FDA Food Code 3-501.14, 3-501.19(B); SI 2013/2996 Sch. 4. */
    @Test
    void whyItIsNotCooledIsTold() {
        assertThat(judge("COOLING", "06:00 60; 07:00 20; 07:40 4; 19:00 30").words())
                .endsWith("19:00 30 °C. Above 5 °C for up to 680 min (at most 240 min allowed): discard it.");
        assertThat(judge("CHILLING", "08:00 25; 12:01 25").words())
                .endsWith("Not at 5 °C by 12:00, 240 min after its first reading: discard it.");
        assertThat(judge("CHILLING", "08:00 25; 13:00 5").words())
                .endsWith("From its first reading to 5 °C took 300 min (at most 240 min allowed): discard it.");
        profile = "uk";
        assertThat(judge("COOLING", "10:00 63; 11:00 30").words())
                .endsWith("Get it to 8 °C by 11:59. This profile has no minutes down to 8 °C: those that food may stand"
                        + " out count.");
        assertThat(judge("COOLING", "10:00 63; 12:00 8").words())
                .endsWith("From 63 °C to 8 °C took 120 min (less than 120 min allowed): discard it. This profile has no"
                        + " minutes down to 8 °C: those that food may stand out count.");
    }

    /** FDA Food Code 3-501.14(A) and (B). */
    @Test
    void theTimeOfTheNextStageIsTold() {
        assertThat(judge("COOLING", "10:00 57; 11:00 30").words())
                .contains("Get it to 21 °C by 12:00. Get it to 5 °C by 16:00.");
        assertThat(judge("COOLING", "10:00 57; 12:00 21").words())
                .contains("From 57 °C to 21 °C in 120 min (at most 120 min allowed). Get it to 5 °C by 16:00.");
        assertThat(judge("COOLING", "10:30 40; 12:00 21").words())
                .contains("21 °C at 12:00: in time only if it fell below 57 °C at 10:00 or later.");
        assertThat(judge("COOLING", "10:00 57; 12:10 30").words())
                .endsWith("Not at 21 °C by 12:00, 120 min after 57 °C: discard it.");
        assertThat(judge("CHILLING", "10:00 21; 11:00 15").words()).endsWith("Get it to 5 °C by 14:00.");
        assertThat(judge("CHILLING", "10:00 21; 14:00 5").grade()).isEqualTo(Grade.FINE);
        assertThat(judge("CHILLING", "10:00 21; 14:01 5").grade()).isEqualTo(Grade.NOT_SAFE);
    }

    /**
     * FDA Food Code 3-501.16 and 3-501.19(B); SI 2013/2996 Sch. 4: hot 63 °C, out for less than two hours, cold 8 °C, less than
     * four, and not kept out on an earlier occasion.
     */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, HOT_HOLD, 10:00 57, FINE",
        "fda-2022, HOT_HOLD, 12:30 57; 12:40 56.9, WATCH",
        "fda-2022, HOT_HOLD, 10:00 57; 10:30 56.9; 14:00 57, WATCH",
        "fda-2022, HOT_HOLD, 10:00 57; 10:30 56.9; 14:01 57, NOT_SAFE",
        "fda-2022, HOT_HOLD, 12:05 57; 13:00 50, WATCH",
        "fda-2022, HOT_HOLD, 12:04 57; 13:00 50, NOT_SAFE",
        "fda-2022, COLD_HOLD, 10:00 5, FINE",
        "fda-2022, COLD_HOLD, 10:00 5; 10:30 5.1; 14:01 5, NOT_SAFE",
        "uk, HOT_HOLD, 10:00 63; 10:30 62.9; 11:59 63, WATCH",
        "uk, HOT_HOLD, 10:00 63; 10:30 62.9; 12:00 63, NOT_SAFE",
        "uk, HOT_HOLD, 10:00 63; 10:10 62; 10:20 63; 10:30 62; 10:40 63, NOT_SAFE",
        "fda-2022, HOT_HOLD, 10:00 63; 10:10 52; 10:20 63; 10:30 52; 10:40 63, WATCH",
        "uk, COLD_HOLD, 10:00 8; 10:30 9; 13:59 8, WATCH",
        "uk, COLD_HOLD, 10:00 8; 10:30 9; 14:00 8, NOT_SAFE"
    })
    void whatIsHeldIsOutSinceItsLastGoodReading(String profile, String what, String log, Grade grade) {
        this.profile = profile;

        assertThat(judge(what, log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-403.11 and 3-501.19(B). */
    @Test
    void whatIsTooColdInTheHotHoldIsHeatedUpOrUsed() {
        assertThat(judge("HOT_HOLD", "12:30 60; 13:00 54").words())
                .endsWith("Below 57 °C, at most since 12:30. Heat it up to 74 °C for 15 s, or use it by 16:30.");
        assertThat(judge("HOT_HOLD", "10:00 60; 11:00 54; 11:10 60; 13:30 50").words())
                .endsWith("or use it by 14:00. Setup S1 eats of it from 16:00 to 16:05: too late.");
        assertThat(judge("COLD_HOLD", "13:00 9").words())
                .contains("nobody knows since when, counted from 13:00. Get it to 5 °C, or use it by 17:00.");
    }

    /** SI 2013/2996 Sch. 4: less than two hours, on one occasion only. */
    @Test
    void howLongAndHowOftenItWasOutIsTold() {
        profile = "uk";
        assertThat(judge("HOT_HOLD", "10:00 63; 10:10 62; 10:20 63; 10:30 62; 10:40 63")
                        .words())
                .endsWith("Below 63 °C for up to 40 min (less than 120 min allowed), and more than once: discard it.");
        assertThat(judge("HOT_HOLD", "10:00 63; 10:10 62; 12:00 62").words())
                .endsWith("Below 63 °C for up to 120 min (less than 120 min allowed): discard it.");
        assertThat(judge("HOT_HOLD", "10:10 62; 10:50 63").words())
                .endsWith("Below 63 °C since before its first reading, for at least 40 min (less than 120 min allowed);"
                        + " in range again, but these minutes count on unless it was heated up to 70 °C for 2 min.");
    }

    /** FDA Food Code 3-403.11: 74 °C for 15 s within two hours, 57 °C from a sealed pack; UK guidance: 70 °C for 2 min. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, 10:00 5; 12:00 74; 12:01 74, NOT_SAFE",
        "fda-2022, 10:00 5; 11:59 74 15, FINE",
        "fda-2022, 10:00 5; 11:59 74 14, NOT_SAFE",
        "fda-2022, 10:00 5; 11:59 73.9 60, NOT_SAFE",
        "fda-2022, 10:00 5; 12:00 74 15, NOT_SAFE",
        "fda-2022, 10:00 5; 10:30 4; 12:29 75 15, FINE",
        "fda-2022, 11:59 76 15, WATCH",
        "uk, 10:00 5; 15:00 70 120, FINE",
        "uk, 10:00 5; 15:00 70 119, NOT_SAFE",
        "uk, 10:00 5; 15:00 80 60, FINE",
        "uk, 10:00 5; 15:00 80 6, FINE",
        "uk, 10:00 5; 15:00 80 5, NOT_SAFE",
        "uk, 10:00 5; 15:00 75 30, FINE",
        "uk, 10:00 5; 15:00 65 600, FINE",
        "fda-2013, 10:00 5; 11:00 63 15, NOT_SAFE",
        "france, 10:00 5; 11:00 62.9 3600, NOT_SAFE"
    })
    void foodIsHeatedUpAgainHotEnoughAndSoon(String profile, String log, Grade grade) {
        this.profile = profile;

        assertThat(judge("REHEATING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-403.11, 3-501.16(A)(1), 3-501.19(B): 74 °C for 15 s, 57 °C is hot, four hours out of it. */
    @ParameterizedTest
    @CsvSource({
        "08:00 5; 09:00 75 15; 10:40 57, FINE",
        "11:30 5; 12:30 75 15; 13:40 40, WATCH",
        "08:00 5; 09:00 75 15; 10:40 40, NOT_SAFE",
        "08:00 5; 09:00 75 15; 09:10 40; 13:01 60, NOT_SAFE",
        "08:00 5; 09:00 75 15; 09:10 40; 13:00 60, WATCH"
    })
    void whatWasHeatedUpAgainStaysHot(String log, Grade grade) {
        assertThat(judge("REHEATING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-403.11(A), 3-501.19(B): 74 °C for 15 s; four hours. */
    @Test
    void whatIsColdAgainIsHeatedUpOrUsed() {
        assertThat(judge("REHEATING", "11:30 5; 12:30 75 15; 13:40 40").words())
                .endsWith("At least 74 °C for 15 s at 12:30, 60.3 min from 5 °C (at most 120 min allowed). Below 57 °C,"
                        + " at most since 12:30. Heat it up to 74 °C for 15 s, or use it by 16:30.");
        assertThat(judge("REHEATING", "08:00 5; 09:00 75 15; 14:00 40").words())
                .contains("15 s, 14:00 40 °C. Below 57 °C for up to 299.8 min (at most 240 min allowed): discard it.");
    }

    /** The plan has it eaten until 16:05. FDA Food Code 3-501.16, 3-501.19(B): 57 °C, four hours; 3-401.11: 63 °C for 15 s. */
    @Test
    void readingsOfWhatIsLeftOverDoNotCount() {
        JudgedReadings hold = judge("HOT_HOLD", "11:00 60; 16:05 60; 22:00 20");
        assertThat(hold.grade()).isEqualTo(Grade.FINE);
        assertThat(hold.words())
                .isEqualTo(
                        "11:00 60 °C, 16:05 60 °C, 22:00 20 °C after it was eaten by the plan. Hot enough: never below 60"
                                + " °C, and 57 °C is hot.");
        assertThat(judge("REHEATING", "14:00 5; 15:00 75 15; 22:00 20").grade()).isEqualTo(Grade.FINE);
        assertThat(judge("HOT_HOLD", "16:06 20").grade()).isEqualTo(Grade.WATCH);
        assertThat(judge("HOT_HOLD", "16:06 20").words())
                .endsWith("after it was eaten by the plan. Nobody read it before: tell replan if it is eaten later.");
        assertThat(judge("COOKING", "16:06 50").grade()).isEqualTo(Grade.NOT_SAFE);
        assertThat(judge("COLD_HOLD", "10:00 4; 22:00 20").grade()).isEqualTo(Grade.NOT_SAFE);
        eaters = List.of();
        assertThat(judge("HOT_HOLD", "11:00 60; 22:00 20").grade()).isEqualTo(Grade.NOT_SAFE);
    }

    /** FDA Food Code 3-501.16(A)(2): 5 °C. */
    @Test
    void numbersHaveAllDigitsThatWereGiven() {
        assertThat(judge("COLD_HOLD", "12:30 5.004").words()).startsWith("12:30 5.004 °C. Above 5 °C");
        assertThat(judge("COLD_HOLD", "12:30 -0.50").words()).contains("-0.5 °C");
        assertThat(judge("COLD_HOLD", "12:30 -20").words()).contains("never above -20 °C");
    }

    /** FDA Food Code 2022, 3-401.11(A)(1); rows may stand in any order, and a time held may reach beyond the next row. */
    @Test
    void readingsCountInTheOrderOfTheirTimes() {
        assertThat(judge("COOKING", "10:02 60; 10:00 63; 10:01 63").words())
                .isEqualTo(
                        "10:00 63 °C, 10:01 63 °C, 10:02 60 °C. Done unless it is ground, poultry or stuffed: at least 63 °C for"
                                + " 15 s at 10:00.");
        assertThat(judge("COOKING", "10:00 62 90; 10:01 64 14").grade()).isEqualTo(Grade.NOT_SAFE);
        assertThat(judge("COOKING", "10:00 64 14; 10:01 62; 10:02 64 14").words())
                .contains("hold 63 °C for 1 s more, or reach 66 °C and hold it for 1 min, or reach 70 °C");
    }

    /** FDA Food Code 3-501.16. */
    @Test
    void whatIsInRangeIsToldWithItsWorstReading() {
        assertThat(judge("HOT_HOLD", "10:00 61; 10:30 58; 11:00 60").words())
                .endsWith("Hot enough: never below 58 °C, and 57 °C is hot.");
        assertThat(judge("COLD_HOLD", "10:00 3; 10:30 4.5; 11:00 4").words())
                .endsWith("Cold enough: never above 4.5 °C, and 5 °C is cold.");
    }

    /** FDA Food Code 3-501.14(A): what is at 21 °C when it is first read shows nothing of the first stage. */
    @Test
    void aStageThatWasOverBeforeTheFirstReadingIsLeftOut() {
        assertThat(judge("COOLING", "10:00 21; 11:00 15").words())
                .isEqualTo(
                        "10:00 21 °C, 11:00 15 °C. Get it to 5 °C by 16:00, sooner if it fell below 57 °C before its first"
                                + " reading.");
        assertThat(judge("COOLING", "10:00 4").words())
                .endsWith("5 °C at 10:00: in time only if it fell below 57 °C at 04:00 or later.");
        assertThat(judge("COOLING", "10:00 57; 12:01 21; 15:00 5").words())
                .endsWith("15:00 5 °C. From 57 °C to 21 °C took 121 min (at most 120 min allowed): discard it.");
        assertThat(judge("COOLING", "10:00 80").words())
                .endsWith(
                        "Not below 57 °C yet; then 21 °C within 120 min. Not below 57 °C yet; then 5 °C within 360 min.");
    }

    /** FDA Food Code 3-403.11. */
    @Test
    void howLongItTookToHeatItUpAgainIsTold() {
        assertThat(judge("REHEATING", "10:00 5; 11:00 74 15").words())
                .endsWith("At least 74 °C for 15 s at 11:00, 60.3 min from 5 °C (at most 120 min allowed).");
        assertThat(judge("REHEATING", "10:00 5; 12:30 74 15").words())
                .endsWith("From 5 °C to 74 °C for 15 s took 150.3 min (at most 120 min allowed): discard it.");
        assertThat(judge("REHEATING", "12:30 74; 12:31 74").words())
                .endsWith("At least 74 °C for 15 s at 12:30: in time only if it was at 5 °C at 10:30 or later.");
        assertThat(judge("REHEATING", "10:00 20; 12:30 74 15").words()).contains("took more than 150.3 min");
    }

    @Test
    void untilWhenItIsToBeHeatedUpAgainIsTold() {
        assertThat(judge("REHEATING", "10:00 5; 10:40 60").words())
                .endsWith(
                        "Not hot yet: reach 74 °C for 15 s, by 12:00, and read again. Enough only for what came in a sealed"
                                + " pack, ready to eat.");
        assertThat(judge("REHEATING", "10:00 5; 12:10 60").words())
                .endsWith("Not at 74 °C for 15 s in time: discard it.");
    }

    /** FDA Food Code 3-501.13: raw food above 5 °C for at most four hours, with its preparation. */
    @ParameterizedTest
    @CsvSource({
        "10:00 5, FINE",
        "10:00 5; 14:00 10, WATCH",
        "10:00 5; 14:01 10, NOT_SAFE",
        "10:00 5; 11:00 10; 12:00 5, WATCH",
        "10:00 5; 11:00 21, WATCH",
        "10:00 5; 11:00 21.1, NOT_SAFE",
        "10:00 40; 13:59 40, NOT_SAFE"
    })
    void rawFoodMayThawForFourHoursInAll(String log, Grade grade) {
        assertThat(judge("THAWING", log).grade()).isEqualTo(grade);
    }

    /** FDA Food Code 3-501.13: water of at most 21 °C. */
    @Test
    void untilWhenRawFoodMayThawIsTold() {
        assertThat(judge("THAWING", "10:00 5; 11:00 10").words())
                .endsWith(
                        "Raw, above 5 °C at most since 10:00: cook it or get it below by 14:00. Running water: at most 21 °C.");
        assertThat(judge("THAWING", "10:00 5; 11:00 10; 12:00 5; 13:00 9").words())
                .contains("get it below by 14:00.");
        assertThat(judge("THAWING", "10:00 5; 11:00 10; 12:00 5").words())
                .contains(
                        "Raw, above 5 °C for up to 120 min (at most 240 min allowed) with its preparation; cold again.");
        assertThat(judge("THAWING", "10:00 -18; 11:00 4").words()).contains("never above 4 °C");
    }

    /** FDA Food Code 3-501.13: 21 °C, four hours with its preparation. */
    @Test
    void whatThawsTooWarmOrIsCookedTooLateIsToldWithThePlan() {
        cook = true;
        assertThat(judge("THAWING", "10:00 5; 11:00 40").words())
                .endsWith("At 40 °C warmer than running water may be, at most 21 °C: discard it.");
        assertThat(judge("THAWING", "11:29 5; 12:00 10").words())
                .endsWith("by 15:29. Running water: at most 21 °C. The plan cooks it from 15:30: too late.");
        assertThat(judge("THAWING", "11:29 5; 12:00 10").grade()).isEqualTo(Grade.NOT_SAFE);
        assertThat(judge("THAWING", "11:30 5; 12:00 10").grade()).isEqualTo(Grade.WATCH);
        eaters = List.of();
        assertThat(judge("THAWING", "11:29 5; 12:00 10").grade()).isEqualTo(Grade.WATCH);
    }

    /** FDA Food Code 3-501.19(B): four hours, from 5 or 57 °C, what is cut or opened from 21 °C; (C): six, never above 21 °C. */
    @Test
    void whatIsTakenOutIsMarkedWithTheTimeAtWhichItGoes() {
        assertThat(judge("TAKEN_OUT", "10:00 5").words())
                .startsWith("10:00 5 °C. Mark it 14:00 and throw it away then, or at once if it isn't marked.")
                .contains("Until 16:00 if it is read till then and never above 21 °C.")
                .endsWith("Setup S1 eats of it from 16:00 to 16:05: too late.");
        assertThat(judge("TAKEN_OUT", "10:00 57").words())
                .contains("Mark it 14:00")
                .doesNotContain("Until");
        assertThat(judge("TAKEN_OUT", "12:05 5").grade()).isEqualTo(Grade.WATCH);
        assertThat(judge("TAKEN_OUT", "12:04 5").grade()).isEqualTo(Grade.NOT_SAFE);
        assertThat(judge("TAKEN_OUT", "10:05 5; 12:00 21").grade()).isEqualTo(Grade.WATCH);
        assertThat(judge("TAKEN_OUT", "10:05 5; 12:00 21.1").grade()).isEqualTo(Grade.NOT_SAFE);
        assertThat(judge("TAKEN_OUT", "13:00 20").words())
                .contains("Neither hot nor cold enough at 13:00 for time alone to keep it safe: discard it.");
        assertThat(judge("CUT_OR_OPENED", "13:00 21").words()).contains("Mark it 17:00");
        assertThat(judge("CUT_OR_OPENED", "13:00 21.1").grade()).isEqualTo(Grade.NOT_SAFE);
    }

    /** SI 2013/2996 Sch. 4: less than two hours after hot, less than four after cold. */
    @Test
    void theBritishMarkIsAMinuteEarlier() {
        profile = "uk";
        assertThat(judge("TAKEN_OUT", "14:30 63").words()).contains("Mark it 16:29");
        assertThat(judge("TAKEN_OUT", "12:30 8").words()).contains("Mark it 16:29");
    }

    @Test
    void onlyWhatSomebodyEatsAndThatIsAtRiskDoesHarm() {
        assertThat(judge("COOKING", "10:00 50").harmful()).isTrue();
        assertThat(judge("TAKEN_OUT", "10:00 20").harmful()).isTrue();
        controlled = false;
        assertThat(judge("COOKING", "10:00 50").harmful()).isTrue();
        assertThat(judge("TAKEN_OUT", "10:00 20").harmful()).isFalse();
        assertThat(judge("TAKEN_OUT", "10:00 20").words()).endsWith("it needs no control of time and temperature.");
        eaters = List.of();
        assertThat(judge("COOKING", "10:00 50").harmful()).isFalse();
        assertThat(judge("COOKING", "10:00 50").words()).endsWith("Nobody eats it by the plan.");
    }

    @Test
    void allThatDoesNotFitThePlanIsTold() {
        Day day = day();
        ProbeReading fits = reading(What.COOKING, "10:00", 70, 0);
        Optional<String> none = Optional.empty();
        List<ProbeReading> rows = List.of(
                fits,
                new ProbeReading(
                        What.COOKING,
                        Optional.of("S2"),
                        "stow",
                        Optional.empty(),
                        Optional.empty(),
                        at("10:00"),
                        70,
                        0),
                new ProbeReading(
                        What.COOKING, none, "stew", Optional.of(Part.INSERT), Optional.empty(), at("10:00"), 70, 0),
                new ProbeReading(What.COOKING, none, "stew", Optional.empty(), Optional.of(2), at("10:00"), 70, 0),
                reading(What.COOKING, "05:59", 70, 0),
                reading(What.COOKING, "23:00", 70, 0),
                fits);

        assertThat(JudgedReadings.troubles(day, plan(day), rows, "readings", time -> time.clock(TestDays.ZONE)))
                .extracting(Trouble::row, Trouble::column, Trouble::value, Trouble::what)
                .containsExactly(
                        tuple(1, "setup", "S2", "is not known"),
                        tuple(1, "dish", "stow", "is not known"),
                        tuple(2, "", "stew, insert", "is no copy that the plan makes"),
                        tuple(3, "", "stew, 2", "is no copy that the plan makes"),
                        tuple(4, "time", "05:59", "lies before the plan's first work"),
                        tuple(5, "time", "23:00", "lies after the day"),
                        tuple(6, "time", "10:00", "has another reading of S1/stew/serve/hero#1 for cooking"));
    }
}
