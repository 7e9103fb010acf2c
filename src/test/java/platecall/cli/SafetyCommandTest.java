package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.intake.DayFiles;
import platecall.plan.PlanFile;

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
                        "Containers, each to be thrown away if it stands out from when it leaves its store",
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
        assertThat(out.toString())
                .contains(
                        "Leek and curd pasty for setup 3 contains eggs, milk, wheat; eaten by Mirre (allergic to peanuts)")
                .contains("Bitter leaf salad: wash, dress")
                .contains("None: no clock runs over")
                .contains("local code, a thermometer and licensed practice decide")
                .doesNotContain("MUST NOT", "BROKEN", "OVER BY", "TOO MUCH");
    }

    /** A roast of fowl to 60 °C instead of 74 °C (FDA Food Code 3-401.11(A)(3)), with a plan of that day. */
    @Test
    void aBrokenRuleIsToldWithItsSize() throws IOException {
        Path day = Files.createDirectory(folder.resolve("day"));
        try (Stream<Path> sheets = Files.list(DEMO)) {
            for (Path sheet :
                    sheets.filter(file -> file.toString().endsWith(".csv")).toList()) {
                Files.copy(sheet, day.resolve(sheet.getFileName()));
            }
        }
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

    @Test
    void aPlanOfAnotherDayIsRefused() {
        assertThat(safety(Path.of("problems/first-egg"), PLAN)).isEqualTo(2);
        assertThat(err.toString()).contains("is a plan of another day");
        assertThat(out.toString()).isEmpty();
    }
}
