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
import platecall.odds.Odds;
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
                Odds.of(day, PlanFile.read(PLAN), 50, 1),
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

    @Test
    void aPlanOfAnotherDayIsRefused() {
        assertThat(safety(Path.of("problems/first-egg"), PLAN)).isEqualTo(2);
        assertThat(err.toString()).contains("is a plan of another day");
        assertThat(out.toString()).isEmpty();
    }
}
