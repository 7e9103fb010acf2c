package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.day.Day;
import platecall.intake.DayFiles;
import platecall.plan.Plan;
import platecall.plan.PlanFile;

/** The demo days, planned by the very command that the README shows. */
class DemoDaysTest {

    @TempDir
    Path folder;

    private int run(StringWriter out, String... args) {
        return Main.run(new PrintWriter(out), new PrintWriter(out), args);
    }

    @Test
    void theFirstEggIsCookedAsByHand() {
        StringWriter out = new StringWriter();
        int code = run(out, "plan", "problems/first-egg", "--steps", "2000", "--out", folder.toString());
        assertThat(out.toString()).contains("kitchen call 09:52").contains("Proved best");
        assertThat(code).isZero();
        Day day = DayFiles.read(Path.of("problems/first-egg")).day();
        Plan plan = PlanFile.read(folder.resolve("plan.json"), DayFiles.digest(day));
        List<String> times = plan.work().stream()
                .map(work -> work.step() + " "
                        + work.span().start().in(day.facts().zone()).toLocalTime())
                .toList();
        assertThat(times).containsExactly(
                        "fry 09:52", "plate 09:57", "carry 09:58", "fry 10:02", "plate 10:07", "carry 10:08");
    }

    @Test
    void theSameStepsGiveTheSameFilesByteForByte() throws Exception {
        for (String name : List.of("one", "other")) {
            run(
                    new StringWriter(),
                    "plan",
                    "problems/lantern-supper",
                    "--steps",
                    "1500",
                    "--out",
                    folder.resolve(name).toString());
        }
        for (String file : List.of("plan.json", "sequence.csv", "readiness.csv", "run-sheet.html")) {
            assertThat(Files.mismatch(
                            folder.resolve("one").resolve(file),
                            folder.resolve("other").resolve(file)))
                    .as(file)
                    .isEqualTo(-1);
        }
    }

    @Test
    void theLanternSupperHasNothingLateAndNothingBroken() {
        StringWriter out = new StringWriter();
        int code = run(out, "plan", "problems/lantern-supper", "--steps", "60000", "--out", folder.toString());
        assertThat(code).as(out.toString()).isZero();
        StringWriter audited = new StringWriter();
        assertThat(run(
                        audited,
                        "audit",
                        "problems/lantern-supper",
                        folder.resolve("plan.json").toString()))
                .as(audited.toString())
                .isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"first-egg", "lantern-supper"})
    void everyDemoDaySurvivesTheThreeFormats(String name) {
        Day day = DayFiles.read(Path.of("problems", name)).day();
        Path workbook = folder.resolve("day.xlsx");
        Path json = folder.resolve("day.json");
        Path sheets = folder.resolve("sheets");
        DayFiles.write(day, workbook);
        DayFiles.write(DayFiles.read(workbook).day(), json);
        DayFiles.write(DayFiles.read(json).day(), sheets);
        assertThat(DayFiles.read(sheets).day()).isEqualTo(day);
    }
}
