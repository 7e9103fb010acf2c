package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.intake.DayFiles;
import platecall.plan.Plan;
import platecall.plan.PlanFile;
import platecall.plan.TestPlans;

class AuditCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Path dayFile;
    private Path planFile;
    private Day day;
    private Optional<Long> bound = Optional.empty();

    @BeforeEach
    void writeADay() {
        dayFile = folder.resolve("first-egg.json");
        planFile = folder.resolve("plan.json");
        DayFiles.write(TestDays.firstEgg().build(), dayFile);
        day = DayFiles.read(dayFile).day();
    }

    private int audit(Path... files) {
        String[] args = new String[files.length + 1];
        args[0] = "audit";
        for (int i = 0; i < files.length; i++) {
            args[i + 1] = files[i].toString();
        }
        return Main.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    /** The first egg with the given times and the second egg ten minutes after a sound first one. */
    private TestPlans eggs(String crack, String fry, String plate) {
        return TestPlans.of(day)
                .step("egg", "crack", 1, crack, work -> work.by("Ana"))
                .step("egg", "fry", 1, fry, work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, plate, work -> work.by("Ana"))
                .step("egg", "crack", 2, "10:01-10:03", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:03-10:07", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:07-10:08", work -> work.by("Ana"));
    }

    private void write(TestPlans plan, String digest) throws IOException {
        Plan built = plan.build();
        Plan audited = built.withVerdict(Audit.of(day, built));
        Plan named = new Plan(
                audited.day(),
                digest,
                audited.version(),
                audited.seed(),
                audited.moves(),
                audited.asOf(),
                audited.kitchenCalls(),
                audited.copies(),
                audited.work(),
                audited.breaks(),
                audited.points(),
                bound,
                audited.verdict());
        Files.write(planFile, PlanFile.bytes(named, TestDays.ZONE));
    }

    @Test
    void aSoundPlanIsFine() throws IOException {
        write(eggs("09:50-09:52", "09:52-09:56", "09:56-09:57"), DayFiles.digest(day));

        assertThat(audit(dayFile, planFile)).isZero();
        assertThat(out.toString().lines())
                .containsExactly(
                        "setup  call   ready  margin  verdict",
                        "S1     10:00  09:57   3 min  Ready 3 min before call",
                        "",
                        "2 of 2 copies made, 0 min late, 0 min off peak, kitchen call 09:50.",
                        "No rule is broken.");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void aBrokenRuleIsToldWithItsSize() throws IOException {
        write(eggs("09:46-09:48", "09:48-09:52", "09:57-09:58"), DayFiles.digest(day));

        assertThat(audit(dayFile, planFile)).isEqualTo(1);
        assertThat(out.toString().lines())
                .contains("BROKEN  a step starts before the most wait is over: 3 minutes. plate of Egg #1 for setup S1"
                        + " starts at 09:57, but fry of Egg #1 for setup S1 ends at 09:52, and it may wait at most 2"
                        + " minutes")
                .endsWith("Breaches of rules: 1.");
    }

    @Test
    void onlyAPlanThatBreaksNoRuleCanBeTheBest() throws IOException {
        // kitchen open from 09:46 to 18:00, nothing late or off peak
        bound = Optional.of(494L);
        write(eggs("09:46-09:48", "09:48-09:52", "09:52-09:53"), DayFiles.digest(day));
        assertThat(audit(dayFile, planFile)).isZero();
        assertThat(out.toString()).contains("kitchen call 09:46. Proved best (494 points).");

        out.getBuffer().setLength(0);
        write(eggs("09:46-09:48", "09:48-09:52", "09:57-09:58"), DayFiles.digest(day));
        assertThat(audit(dayFile, planFile)).isEqualTo(1);
        assertThat(out.toString().lines())
                .contains("2 of 2 copies made, 0 min late, 0 min off peak, kitchen call 09:46.");
    }

    @Test
    void aLateCopyIsNotFineThoughNoRuleIsBroken() throws IOException {
        write(eggs("10:08-10:10", "10:10-10:14", "10:14-10:15"), DayFiles.digest(day));

        assertThat(audit(dayFile, planFile)).isEqualTo(1);
        assertThat(out.toString())
                .contains("15 min late", "No rule is broken.")
                .contains("  -15 min  ")
                .contains("LATE by 15 min: Egg #1");
    }

    @Test
    void aVerdictThatIsNotTheAuditsIsSaid() throws IOException {
        write(eggs("10:08-10:10", "10:10-10:14", "10:14-10:15"), DayFiles.digest(day));
        Files.writeString(
                planFile, Files.readString(planFile).replace("LATE by 15 min: Egg #1", "Ready 15 min before call"));

        assertThat(audit(dayFile, planFile)).isEqualTo(1);
        assertThat(out.toString())
                .endsWith(String.format("The verdict in the file is another one; this one counts.%n"));
    }

    @Test
    void aPlanOfAnotherDayIsRefused() throws IOException {
        write(eggs("09:50-09:52", "09:52-09:56", "09:56-09:57"), "another digest");

        assertThat(audit(dayFile, planFile)).isEqualTo(2);
        assertThat(err.toString())
                .startsWith(planFile + ": is a plan of another day: it was made for [Test day]")
                .endsWith(String.format(
                        "  Maybe the day has changed since; plan it again, or replan the rest if it is under way.%n"));
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aFileThatIsNotAPlanIsRefused() {
        assertThat(audit(dayFile, dayFile)).isEqualTo(2);
        assertThat(err.toString()).startsWith(dayFile + ": is not a plan");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aMissingDayOrPlanIsRefused() {
        assertThat(audit(folder.resolve("none"), planFile)).isEqualTo(2);
        assertThat(audit(dayFile, folder.resolve("none.json"))).isEqualTo(2);
        assertThat(audit(dayFile)).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString()).contains("there is no such file").doesNotContain("Exception");
    }
}
