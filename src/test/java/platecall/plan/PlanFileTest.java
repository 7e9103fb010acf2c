package platecall.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static platecall.day.TestDays.ZONE;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Points;
import platecall.plan.Plan.Readiness;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Verdict;
import platecall.plan.Plan.Work;
import platecall.units.Money;

class PlanFileTest {

    @TempDir
    private Path folder;

    /** Something of everything that a plan can hold. */
    private static Plan plan() {
        PlannedCopy made = new PlannedCopy(
                "S1/éclair/fill/hero#1",
                "S1/éclair/fill/hero",
                "S1",
                "éclair",
                "fill",
                "hero",
                1,
                at("10:00"),
                5,
                true,
                Optional.of(at("09:55")),
                Optional.of(at("09:57")),
                Optional.of(at("09:55")),
                Optional.of(at("10:05")),
                Optional.of(at("2026-03-15T00:30")),
                0,
                2,
                21,
                new Money(1250),
                at("10:10"),
                Optional.of("fridge"));
        PlannedCopy notMade = new PlannedCopy(
                "S1/éclair/fill/hero#2",
                "S1/éclair/fill/hero",
                "S1",
                "éclair",
                "fill",
                "hero",
                2,
                at("10:10"),
                5,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0,
                0,
                0,
                new Money(-5),
                at("10:10"),
                Optional.empty());
        Work work = new Work(
                "w1",
                Work.Kind.STEP,
                "éclair",
                "bake \"hot\"",
                List.of(made.id()),
                span("09:30-09:50"),
                List.of(new StationHold("oven", 2)),
                Optional.of(180),
                List.of(new Hands("Ana", span("09:30-09:33"))),
                List.of(new Storing(made.id(), "rack", 1, span("09:50-09:55"))));
        return new Plan(
                "Test day",
                "abc123",
                "0.1.0",
                42,
                9_876_543_210L,
                Optional.of(at("09:10")),
                List.of(at("09:30")),
                List.of(made, notMade),
                List.of(work),
                List.of(new Break("Ana", span("12:00-12:30"))),
                new Points(1, 2, 3, 4, 5),
                Optional.of(7L),
                new Verdict(
                        List.of(new Breach(Rule.MOST_WAIT, 3, "too long a wait")),
                        0,
                        2,
                        List.of(new Readiness(
                                "S1",
                                at("10:00"),
                                Optional.of(at("09:57")),
                                3,
                                Optional.of(at("10:05")),
                                0,
                                Optional.empty(),
                                "Ready 3 min before call"))));
    }

    private Path written(String text) throws IOException {
        return Files.writeString(folder.resolve("plan.json"), text);
    }

    private static String text(Plan plan) {
        return new String(PlanFile.bytes(plan, ZONE), StandardCharsets.UTF_8);
    }

    @Test
    void whatIsWrittenIsReadBack() throws IOException {
        Path file = written(text(plan()));

        assertThat(PlanFile.read(file)).isEqualTo(plan());
        assertThat(PlanFile.read(file, "abc123")).isEqualTo(plan());
    }

    @Test
    void theSamePlanGivesTheSameBytes() throws IOException {
        Path file = written(text(plan()));

        assertThat(PlanFile.bytes(PlanFile.read(file), ZONE)).isEqualTo(PlanFile.bytes(plan(), ZONE));
    }

    @Test
    void anyLocaleGivesTheSameBytes() {
        byte[] bytes = PlanFile.bytes(plan(), ZONE);
        Locale usual = Locale.getDefault();
        try {
            for (String tag : List.of("tr-TR", "de-AT", "ar-EG-u-nu-arab", "th-TH-u-ca-buddhist")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertThat(PlanFile.bytes(plan(), ZONE)).as(tag).isEqualTo(bytes);
            }
        } finally {
            Locale.setDefault(usual);
        }
    }

    @Test
    void timesHaveTheZonesOffsetAndMoneyItsCents() {
        assertThat(text(plan()))
                .startsWith("{\n  \"day\" : \"Test day\",\n  \"dayDigest\" : \"abc123\",")
                .contains("\"start\" : \"2026-03-14T09:30+01:00\"")
                .contains("\"usableTo\" : \"2026-03-15T00:30+01:00\"")
                .contains("\"money\" : 12.50")
                .contains("\"rule\" : \"MOST_WAIT\"")
                .endsWith("}\n")
                .doesNotContain("\r");
    }

    @Test
    void bothHoursOfAnAutumnNightComeBack() throws IOException {
        Plan plan = plan();
        Plan night = TestPlans.with(
                plan,
                plan.copies(),
                List.of(at("2026-10-25T01:30").plus(60), at("2026-10-25T01:30").plus(120)),
                plan.points());
        Path file = written(text(night));

        assertThat(text(night)).contains("2026-10-25T02:30+02:00").contains("2026-10-25T02:30+01:00");
        assertThat(PlanFile.read(file)).isEqualTo(night);
    }

    @Test
    void aPlanOfAnotherDayIsRefused() throws IOException {
        Path file = written(text(plan()));

        assertThatThrownBy(() -> PlanFile.read(file, "0123456789abcdef"))
                .isInstanceOf(BadPlan.class)
                .hasMessage(file + ": is a plan of another day: it was made for [Test day] with digest [abc123],"
                        + " but this day's digest is [0123456789ab...]\n"
                        + "  Maybe the day has changed since; plan it again, or replan the rest if it is under way.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|is not a plan",
                "[]|is not a plan",
                "null|is not a plan",
                "{\"title\":\"a day\"}|is not a plan",
                "date,2026-03-14|is not a plan: it is not JSON (line 1, column 1)",
                "{} {}|is not a plan: it is not JSON (line 1, column 4)",
                "{\"day\":1,\"day\":2}|is not a plan: it is not JSON (line 1, column 15)",
            })
    void aFileThatIsNotAPlanIsRefused(String content, String message) throws IOException {
        Path file = written(content);

        assertThatThrownBy(() -> PlanFile.read(file))
                .isInstanceOf(BadPlan.class)
                .hasMessage(file + ": " + message
                        + "\n  Maybe it is another file: a plan is the plan.json that the command plan writes.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"seed\" : 42,|''|the plan, seed is missing",
                "\"seed\" : 42|\"seed\" : 4.5|the plan, seed must be a whole number, but it is [4.5]",
                "\"seed\" : 42|\"sed\" : 1, \"seed\" : 42|the plan, sed is not known",
                "\"number\" : 1|\"number\" : 3000000000|the plan, copies[0], number must be a whole number, but it is"
                        + " [3000000000]",
                "\"made\" : true|\"made\" : \"yes\"|the plan, copies[0], made must be true or false, but it is [yes]",
                "2026-03-14T10:05+01:00|10:05|the plan, copies[0], peakTo must be a time like 2026-03-14T09:05+01:00,"
                        + " from 1999 to 2200, but it is [10:05]",
                "2026-03-14T10:05+01:00|9026-03-14T10:05+01:00|the plan, copies[0], peakTo must be a time like"
                        + " 2026-03-14T09:05+01:00, from 1999 to 2200, but it is [9026-03-14T10:05+01:00]",
                "\"number\" : 1|\"number\" : 100001|the plan, copies[0] can't be: number must not be above 100000:"
                        + " [100001]",
                "\"money\" : 12.50|\"money\" : 12.505|the plan, copies[0], money must be an amount with two decimals,"
                        + " but it is [12.505]",
                "\"kind\" : \"STEP\"|\"kind\" : \"STROLL\"|the plan, work[0], kind must be one of [STEP, CARRY], but it"
                        + " is [STROLL]",
                "2026-03-14T09:50+01:00|2026-03-14T09:30+01:00|the plan, work[0], span can't be: a span must end after"
                        + " it starts",
                "\"amount\" : 3|\"amount\" : 0|the plan, verdict, breaches[0] can't be: a breach must be above 0, but"
                        + " it is [0]",
            })
    void aPlanThatWasSpoiltSaysWhere(String right, String wrong, String message) throws IOException {
        String spoilt = text(plan()).replaceFirst(Pattern.quote(right), wrong);
        Path file = written(spoilt);

        assertThatThrownBy(() -> PlanFile.read(file))
                .isInstanceOf(BadPlan.class)
                .hasMessageStartingWith(file + ": is not a plan: " + message);
    }

    @Test
    void aMissingFileAndAFolderAreRefused() {
        Path missing = folder.resolve("none.json");

        assertThatThrownBy(() -> PlanFile.read(missing)).hasMessage(missing + ": there is no such file");
        assertThatThrownBy(() -> PlanFile.read(folder)).hasMessageStartingWith(folder + ": is a folder, not a plan");
    }

    @Test
    void aFileThatIsNoTextIsRefused() throws IOException {
        Path file = Files.write(folder.resolve("plan.json"), new byte[] {'P', 'K', 3, 4, (byte) 0xff, (byte) 0xfe, 0});

        assertThatThrownBy(() -> PlanFile.read(file))
                .isInstanceOf(BadPlan.class)
                .hasMessageStartingWith(file + ": is not a plan: it is not JSON");
    }
}
