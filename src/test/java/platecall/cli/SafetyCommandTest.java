package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.odds.TestOdds;
import platecall.plan.PlanFile;
import platecall.report.Changes;
import platecall.report.Reports;

class SafetyCommandTest {

    private static final Path DEMO = Path.of("problems/lantern-supper");
    private static final Path PLAN = Path.of("reports/lantern-supper/plan.json");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int safety(Path day, Path plan) {
        return Main.run(
                new PrintWriter(out, true), new PrintWriter(err, true), "safety", day.toString(), plan.toString());
    }

    @Test
    void theDemoDayIsSafeAsFarAsAPlanCanTell() {
        assertThat(safety(DEMO, PLAN)).as(err.toString()).isZero();
        assertThat(out.toString().lines())
                .contains(
                        "  FDA Food Code (2022): cold at most 5 °C, hot at least 57 °C; between them 240 min after hot, 240",
                        "Eaten and at risk",
                        "Containers, each to be thrown away if it stands out that long after it has left its store",
                        "Who eats what",
                        "Gloves or tongs, no bare hands",
                        "Circuits",
                        "Cautions")
                .anyMatch(line -> line.matches(
                        "  Lantern bird, glazed #1 for setup 4: eaten from 13:50, discard by 1[78]:\\d\\d\\."))
                .anyMatch(line ->
                        line.matches("    \\d\\d min out since it was cooked through or begun, at most 240 after hot"))
                .anyMatch(line -> line.startsWith("    10-16 "))
                .anyMatch(line -> line.startsWith("  freezer, "))
                .anyMatch(line -> line.matches("  north wall: [0-9.]+ A at most, from .*"))
                .allMatch(line -> line.length() <= 98);
        assertThat(out.toString().replaceAll("\\s+", " "))
                .contains(
                        "Leek and curd pasty for setup 3 contains eggs, milk, wheat; eaten by Mirre (allergic to peanuts, eats vegetarian)")
                .contains(
                        "declared in the US (list of nine): eggs, milk, wheat; in the EU and UK (list of fourteen): eggs, gluten, milk")
                .contains("Bitter leaf salad: wash, dress")
                .contains("None: no clock runs over")
                .contains("core of food held hot: at least 57 °C (FDA Food Code 3-501.16(A)(1), 2013 and 2022)")
                .contains("running water to thaw in: at most 21 °C (FDA Food Code 3-501.13(B), 2013 and 2022)")
                .contains("poultry and what is stuffed: at least 74 °C (FDA Food Code 3-401.11(A)(3), 2017 and later)")
                .contains(
                        "ground meat: at least 68 °C, held for 17 s (FDA Food Code 3-401.11(A)(2), 2017 and later), or"
                                + " at least 63 °C, held for 3 min (FDA Food Code 3-401.11(A)(2), 2013 and 2022), or")
                .contains("cooled from 57 to 21 °C: at most 120 minutes (FDA Food Code 3-501.14(A)(1), 2013 and 2022)")
                .contains(
                        "what touched raw food, once it is washed: water of at least 77 °C (4-501.111; value from memory) or a"
                                + " chemical for 30 s, chlorine for 10 s, or a machine that heats its surface to 71 °C")
                .contains("The factor 1.25 is that of loads of three hours or more (NEC 210.19(A)(1), 210.20(A))")
                .contains("local code, a thermometer and licensed practice decide")
                .doesNotContain("MUST NOT", "BROKEN", "OVER BY", "TOO MUCH");
    }

    private Path copyOfTheDemo() throws IOException {
        Path day = Files.createDirectory(folder.resolve("day"));
        try (Stream<Path> sheets = Files.list(DEMO)) {
            for (Path sheet :
                    sheets.filter(file -> file.toString().endsWith(".csv")).toList()) {
                Files.copy(sheet, day.resolve(sheet.getFileName()));
            }
        }
        return day;
    }

    /** A roast of fowl to 60 °C instead of 74 °C (FDA Food Code 3-401.11(A)(3)), with a plan of that day. */
    @Test
    void aBrokenRuleIsToldWithItsSize() throws IOException {
        Path day = copyOfTheDemo();
        String steps = Files.readString(day.resolve("steps.csv"));
        String cooler = steps.replaceAll("(?m)^(bird,roast,.*),76,", "$1,60,");
        assertThat(cooler).isNotEqualTo(steps);
        Files.writeString(day.resolve("steps.csv"), cooler);
        String digest = DayFiles.digest(DayFiles.read(day).day());
        Path plan = folder.resolve("plan.json");
        Files.writeString(
                plan, Files.readString(PLAN).replace(PlanFile.read(PLAN).dayDigest(), digest));

        assertThat(safety(day, plan)).isEqualTo(1);
        assertThat(out.toString().replaceAll("\\s+", " "))
                .contains("BROKEN what was raw and is eaten cooked gets hot enough inside: 2 copies. "
                        + "Lantern bird, glazed for setup 4 reaches 60 °C inside, but needs 74 °C");
    }

    /** The earliest time in the safety list and the one on paper are the same, setup by setup. */
    @Test
    void whatIsAtRiskIsOnPaperToo() {
        safety(DEMO, PLAN);
        Map<String, String> earliest = new TreeMap<>();
        Matcher eaten = Pattern.compile("for setup (\\d): eaten from [\\d:]+, discard by ([\\d:]+)\\.")
                .matcher(out.toString());
        while (eaten.find()) {
            earliest.merge(eaten.group(1), eaten.group(2), (one, other) -> one.compareTo(other) < 0 ? one : other);
        }
        Day day = DayFiles.read(DEMO).day();
        Map<String, byte[]> papers = Reports.of(
                day,
                PlanFile.read(PLAN),
                TestOdds.of(day, PlanFile.read(PLAN), 50, 1),
                Changes.none(day, PlanFile.read(PLAN)),
                List.of(),
                day.horizon().start());

        assertThat(earliest).containsOnlyKeys("2", "3", "4", "5", "6");
        assertThat(text(papers, "readiness.csv").lines().skip(1).map(line -> line.replaceAll(".*,", "")))
                .extracting(stamp -> stamp.isEmpty() ? "" : stamp.substring(11, 16))
                .containsExactly(
                        "",
                        earliest.get("2"),
                        earliest.get("3"),
                        earliest.get("4"),
                        earliest.get("5"),
                        earliest.get("6"),
                        "");
        String sheet = text(papers, "run-sheet.html").replaceAll("<[^>]*>", "").replaceAll("\\s+", " ");
        assertThat(sheet)
                .contains("gloves or tongs")
                .containsPattern("eaten by [^·]+, DO NOT EAT after " + earliest.get("4"))
                .contains("core 82 °C by probe")
                .contains("still raw: keep apart")
                .containsPattern(
                        "after harden · .* if it stays out discard each \\d+ min after it comes out, the first by \\d\\d:\\d\\d");
        assertThat(text(papers, "sequence.csv")).contains("gloves or tongs").contains("DO NOT EAT after");
    }

    private static String text(Map<String, byte[]> papers, String name) {
        return new String(papers.get(name), StandardCharsets.UTF_8);
    }

    /** SI 2013/2996 Sch. 4: less than two hours after hot, less than four after cold, so 119 and 239 whole minutes. */
    @Test
    void aDayUnderBritishRulesIsPlannedAndCheckedByThem() throws IOException {
        Path day = copyOfTheDemo();
        Path sheet = day.resolve("day.csv");
        Files.writeString(sheet, Files.readString(sheet).replace("safety profile,food code 2022", "safety profile,uk"));
        Path papers = folder.resolve("papers");
        int planned = Main.run(
                new PrintWriter(out, true),
                new PrintWriter(err, true),
                "plan",
                day.toString(),
                "--steps",
                "6000",
                "--out",
                papers.toString());

        assertThat(planned).as(out.toString() + err).isZero();
        assertThat(safety(day, papers.resolve("plan.json"))).as(out.toString()).isZero();
        assertThat(out.toString())
                .contains("UK temperature rules (2013): cold at most 8 °C, hot at least 63 °C;")
                .contains("how often it may stand out: at most 1 time (SI 2013/2996 Sch. 4")
                .contains("at most 119 after hot")
                .contains("at most 239 after cold")
                .doesNotContain("at most 240");
    }

    private int judged(Path readings) {
        return Main.run(
                new PrintWriter(out, true),
                new PrintWriter(err, true),
                "safety",
                DEMO.toString(),
                PLAN.toString(),
                "--readings",
                readings.toString());
    }

    private Path readings(String... rows) throws IOException {
        return Files.writeString(
                folder.resolve("readings.csv"),
                "what,setup,dish,part,number,time,core (degrees C),held (seconds)\n" + String.join("\n", rows) + "\n");
    }

    /** FDA Food Code 2022: 3-401.11(A)(3) 74 °C, 3-501.14(A) 57 to 21 °C in 2 h, to 5 °C in 6 h, 3-501.19(B) 4 h. */
    @Test
    void theReadingsOfTheDemoDayAreJudged() {
        assertThat(judged(Path.of("problems/readings.csv"))).as(err.toString()).isEqualTo(Main.NOT_READY);
        assertThat(out.toString().lines()).contains("Readings").allMatch(line -> line.length() <= 98);
        assertThat(out.toString().replaceAll("\\s+", " "))
                .contains(
                        "NOT SAFE Lantern bird, glazed #2 for setup 4, cooking: 13:34 71.5 °C. Not done for poultry and what"
                                + " is stuffed: reach 74 °C and read again.")
                .contains(
                        "fine Lantern bird, glazed #1 for setup 4, cooking: 12:55 72 °C, 12:58 75 °C. Done: at least 74 °C at 12:58.")
                .contains("watch Leek and curd pasty #1, #2, #3, #4, #5 for setup 3, cooling: 10-16 19:16 71 °C,")
                .contains("Get it to 5 °C by 01:38.")
                .contains("NOT SAFE Molten cheese toast #5 for setup 6, taken out: 12:35 4.5 °C. Mark it 16:35")
                .containsPattern("Setup 6 eats of it from 1[67]:\\d\\d to 1[67]:\\d\\d: too late\\.")
                .contains("Molten cheese toast #1 (stand-in) for setup 6, cold hold: 14:00 4 °C. Cold enough")
                .contains("a calibrated thermometer and local codes decide");
    }

    /** FDA Food Code 2022, 3-401.11(A)(3): 74 °C; the stand-in is eaten by nobody. */
    @Test
    void onlyWhatSomebodyEatsCountsForTheExitCode() throws IOException {
        assertThat(judged(readings("cooking,4,bird,hero,1,12:58,73.9,"))).isEqualTo(Main.NOT_READY);
        assertThat(judged(readings("cooking,4,bird,hero,1,12:58,74,"))).isZero();
        assertThat(judged(readings("cooking,4,bird,stand-in,,12:58,50,"))).isZero();
        assertThat(out.toString().replaceAll("\\s+", " "))
                .contains("NOT SAFE Lantern bird, glazed #1 (stand-in) for setup 4")
                .contains("Nobody eats it by the plan.");
    }

    @Test
    void allThatIsWrongWithReadingsIsToldAtOnce() throws IOException {
        assertThat(judged(readings(
                        "melting,2,soup,,,10:00,60,",
                        "cooking,2,soup,,,10.00,hot,",
                        "cooking,2,soup,,,10:00,350,2 min",
                        "cooking,2,,,1-3,10:00,165 F,-3")))
                .isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString().lines())
                .containsExactly(
                        "readings.csv, sheet readings, row 2, column \"what\": [melting] is not a kind of reading. Maybe one of"
                                + " cooking, cooling, chilling, hot hold, cold hold, reheating, thawing, taken out, cut or"
                                + " opened.",
                        "readings.csv, sheet readings, row 3, column \"time\": [10.00] is not a time. Maybe 10:00.",
                        "readings.csv, sheet readings, row 3, column \"core\": [hot] is not a number. Maybe one number in"
                                + " digits: in the coolest part; while it is kept cold, cools or thaws in the warmest.",
                        "readings.csv, sheet readings, row 4, column \"core\": [350] must be from -40 to 300 degrees C. Maybe"
                                + " 177.",
                        "readings.csv, sheet readings, row 4, column \"held\": [2 min] is not a whole number of seconds. Maybe"
                                + " 120.",
                        "readings.csv, sheet readings, row 5, column \"dish\": must not be empty: the dish, as in the sheet"
                                + " dishes. Maybe bird.",
                        "readings.csv, sheet readings, row 5, column \"number\": [1-3] is more than one copy. Maybe a row for"
                                + " each of them, with its number alone.",
                        "readings.csv, sheet readings, row 5, column \"core\": [165 F] is not a number. Maybe 74.",
                        "readings.csv, sheet readings, row 5, column \"held\": [-3] must be from 0 to 86400 seconds. Maybe"
                                + " 3.");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void readingsThatDoNotFitThePlanAreToldAtOnce() throws IOException {
        assertThat(judged(readings(
                        "cooking,2,sop,,,10:00,65,",
                        "cooking,9,soup,,,10:00,65,",
                        "cooking,3,soup,,,10:00,65,",
                        "cooking,2,soup,,,2026-10-16 14:00,65,",
                        "hot hold,2,soup,hero,1,11:00,65,",
                        "hot hold,2,soup,,,11:00,65,")))
                .isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString().lines())
                .containsExactly(
                        "readings.csv, sheet readings, row 2, column \"dish\": [sop] is not known. Did you mean soup?",
                        "readings.csv, sheet readings, row 3, column \"setup\": [9] is not known. Maybe one of: 1, 2, 3, 4, 5,"
                                + " 6, 7.",
                        "readings.csv, sheet readings, row 4: [3, soup] is no copy that the plan makes. Maybe one of 2/soup/plate/hero#1,"
                                + " 2/soup/plate/hero#2, 2/soup/plate/hero#3, ....",
                        "readings.csv, sheet readings, row 5, column \"time\": [2026-10-16 14:00] lies before the plan's first work. Maybe the date"
                                + " is wrong, or missing.",
                        "readings.csv, sheet readings, row 7, column \"time\": [11:00] has another reading of"
                                + " 2/soup/plate/hero#1 for hot hold. Maybe only the one that counts: of the coolest part, in the cold of the"
                                + " warmest.");
        assertThat(judged(folder.resolve("none.csv"))).isEqualTo(Main.BAD_INPUT);
        assertThat(judged(readings())).isEqualTo(Main.BAD_INPUT);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aPlanOfAnotherDayIsRefused() {
        assertThat(safety(Path.of("problems/first-egg"), PLAN)).isEqualTo(2);
        assertThat(err.toString()).contains("is a plan of another day");
        assertThat(out.toString()).isEmpty();
    }
}
