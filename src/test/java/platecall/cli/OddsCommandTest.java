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

class OddsCommandTest {

    private static final Path DEMO = Path.of("problems/lantern-supper");
    private static final Path PLAN = Path.of("reports/lantern-supper/plan.json");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int odds(Object... args) {
        String[] words = Stream.concat(Stream.of("odds"), Stream.of(args))
                .map(Object::toString)
                .toArray(String[]::new);
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    @Test
    void tellsTheChancesOfEachSetupThePromiseAndWhatMakesItLate() {
        int code = odds(DEMO, PLAN, "--runs", 500);
        assertThat(err.toString()).isEmpty();
        assertThat(out.toString().lines())
                .anyMatch(line -> line.matches("setup +call +at call +at peak +every take +half ready +95 % ready +.*"))
                .anyMatch(line -> line.matches("1 +10:00 +.*[0-9]+ %.* min"))
                .anyMatch(line -> line.matches(
                        "[0-7] of 7 setups keep the promise of 95 %\\. All are ready .* 500 rehearsals\\."))
                .allMatch(line -> line.length() <= 120);
        boolean kept = out.toString().contains("7 of 7 setups keep");
        assertThat(code).isEqualTo(kept ? Main.FINE : Main.NOT_READY);
    }

    /** Whatever steps take, it is late as planned: none of them is to blame. */
    @Test
    void whatIsLateByThePlanItselfIsNotBlamedOnAStep() throws IOException {
        Path plan = folder.resolve("late");
        Main.run(
                new PrintWriter(out, true),
                new PrintWriter(err, true),
                "plan",
                "problems/overbooked",
                "--out",
                plan.toString(),
                "--steps",
                "20000",
                "--threads",
                "1");
        assertThat(odds("problems/overbooked", plan.resolve("plan.json"), "--runs", 50))
                .isEqualTo(Main.NOT_READY);
        assertThat(out.toString())
                .containsPattern(
                        "Setup \\d is late by the plan itself, by \\d+ min, if all steps take their likely minutes.")
                .doesNotContainPattern("Setup 4 is late most often because of");
    }

    /** A plan of another maker may have a plate before its egg is fried: it gets odds of a kind, and is told to be broken. */
    @Test
    void aPlanThatBreaksRulesIsToldToMeanLittle() throws IOException {
        String plan = Files.readString(PLAN).replace("\"start\" : \"2026-10-17T13:", "\"start\" : \"2026-10-17T09:");
        Path broken = Files.writeString(folder.resolve("plan.json"), plan);
        assertThat(odds(DEMO, broken, "--runs", 50)).isEqualTo(Main.NOT_READY);
        assertThat(out.toString()).contains("The plan breaks rules: ").contains("Maybe run audit on it.");
    }

    /** Eggs that are usable for as long as they are carried, so that they are past use when the camera cuts. */
    @Test
    void aSetupThatShowsWhatIsPastItsUseKeepsNoPromise() throws IOException {
        Path day = Files.createDirectory(folder.resolve("day"));
        try (Stream<Path> sheets = Files.list(Path.of("problems/first-egg"))) {
            for (Path sheet : sheets.toList()) {
                Files.copy(sheet, day.resolve(sheet.getFileName()));
            }
        }
        Path dishes = day.resolve("dishes.csv");
        Files.writeString(dishes, Files.readString(dishes).replace("table,0,4,8", "table,0,2,2"));
        Path facts = day.resolve("day.csv");
        Files.writeString(facts, Files.readString(facts).replace("promise,95 %", "promise,50 %"));
        StringWriter planned = new StringWriter();
        int code = Main.run(
                new PrintWriter(planned, true),
                new PrintWriter(err, true),
                "plan",
                day.toString(),
                "--no-promise",
                "--steps",
                "500",
                "--threads",
                "1",
                "--out",
                folder.resolve("out").toString());
        assertThat(err.toString()).isEmpty();
        assertThat(code).isEqualTo(Main.NOT_READY);
        assertThat(planned.toString()).contains("PAST USE on camera").contains("Setup 1 shows what is past its use.");
        assertThat(odds(day, folder.resolve("out/plan.json"), "--runs", 50)).isEqualTo(Main.NOT_READY);
        assertThat(out.toString())
                .contains("1 of 1 setups keep the promise of 50 %.")
                .contains("Setup 1 shows what is past its use.");
    }

    @Test
    void refusesNoRehearsalsAndThePlanOfAnotherDay() {
        assertThat(odds(DEMO, PLAN, "--runs", 0)).isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString()).startsWith("--runs must be from 1 to 1000000. Maybe --runs 5000.");
        assertThat(odds("problems/first-egg", PLAN)).isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString()).contains("another day");
    }
}
