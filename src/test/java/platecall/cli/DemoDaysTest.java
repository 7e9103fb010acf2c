package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.check.DayCheck;
import platecall.copies.CopyCounts;
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
        assertThat(times)
                .containsExactly("fry 09:52", "plate 09:57", "carry 09:58", "fry 10:02", "plate 10:07", "carry 10:08");
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
        int code = run(out, "plan", "problems/lantern-supper", "--steps", "20000", "--out", folder.toString());
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
    @CsvSource({"first-egg, 1, 2, 4, 2", "lantern-supper, 7, 58, 212, 39"})
    void everyDemoDayHasThePromisedSizeAndNothingWrong(String name, int setups, int copies, int steps, int rows) {
        Day day = DayFiles.read(Path.of("problems", name)).day();
        CopyCounts counts = CopyCounts.of(day);

        assertThat(DayCheck.troubles(day)).isEmpty();
        assertThat(DayCheck.remarks(day)).isEmpty();
        assertThat(day.setups()).hasSize(setups);
        assertThat(day.needs().stream().mapToInt(counts::copiesOf).sum()).isEqualTo(copies);
        assertThat(day.needs().stream()
                        .mapToInt(need -> counts.copiesOf(need)
                                * day.stepsTo(need.dish(), need.stage()).size())
                        .sum())
                .isEqualTo(steps);
        assertThat(day.steps()).hasSize(rows);
    }

    @ParameterizedTest
    @ValueSource(strings = {"first-egg", "lantern-supper"})
    void theSheetsOfADemoDayAreAsTheProgramWritesThem(String name) throws IOException {
        Path sheets = Path.of("problems", name);
        DayFiles.write(DayFiles.read(sheets).day(), folder.resolve("written"));

        try (Stream<Path> written = Files.list(folder.resolve("written"))) {
            for (Path sheet : written.toList()) {
                assertThat(sheets.resolve(sheet.getFileName())).hasSameTextualContentAs(sheet);
            }
        }
    }
}
