package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.audit.Audit;
import platecall.check.DayCheck;
import platecall.copies.CopyCount;
import platecall.copies.CopyCounts;
import platecall.copies.Takes;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Use;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.plan.Plan.Verdict;
import platecall.plan.PlanFile;
import platecall.solve.Planner;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

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
        int code =
                run(out, "plan", "problems/first-egg", "--no-promise", "--steps", "2000", "--out", folder.toString());
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
    @CsvSource({
        "first-egg, 1, 2, 4, 2",
        "lantern-supper, 7, 65, 222, 43",
        "two-kitchens, 4, 28, 107, 23",
        "night-ferry, 3, 22, 54, 12",
        "banquet, 14, 350, 1458, 50",
        "overbooked, 4, 14, 52, 11"
    })
    void everyDemoDayHasThePromisedSizeAndNothingWrong(String name, int setups, int copies, int steps, int rows) {
        Day day = read(name);
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

    @Test
    void theLanternSupperUsesEveryPartOfTheTradesArithmetic() {
        Day day = read("lantern-supper");
        CopyCounts counts = CopyCounts.of(day);

        assertThat(day.dishes().stream().map(dish -> dish.look().kind()))
                .contains(
                        Look.Kind.TABLE,
                        Look.Kind.STEADY,
                        Look.Kind.COOLING,
                        Look.Kind.MELTING,
                        Look.Kind.FROTH,
                        Look.Kind.CONDENSATION,
                        Look.Kind.CARBONATION,
                        Look.Kind.WILTING,
                        Look.Kind.BROWNING,
                        Look.Kind.SOAK);
        assertThat(day.setups().stream()
                        .map(setup -> Takes.fit(setup.takesLikely(), setup.takesWorst())
                                .spread()))
                .contains(Takes.Spread.values());
        assertThat(day.needs().stream().map(need -> (Object) need.use().getClass()))
                .contains(Use.FreshEachTake.class, Use.LastsTakes.class, Use.ToppedUp.class);
        assertThat(day.needs()).anyMatch(need -> need.platesPerTake() > 1).anyMatch(need -> need.extraLooks() > 0);
        assertThat(day.dishes()).anyMatch(dish -> dish.breakage() > 0).anyMatch(dish -> dish.spoilage() > 0);
        assertThat(day.steps()).anyMatch(step -> step.coreCelsius().isPresent());
        assertThat(counts.counts())
                .filteredOn(count -> count.basis() == CopyCount.Basis.FOOD_BUDGET)
                .extracting(count -> count.need().dish() + " " + count.chosen())
                .contains("bird 2", "soup 6");
    }

    @Test
    void theReadmeShowsChoicesOfCopiesAsTheyArePrinted() throws IOException {
        String shown = Files.readString(Path.of("README.md"))
                .split("## How many, and for how long")[1]
                .split("```")[1]
                .strip();
        StringWriter out = new StringWriter();

        assertThat(run(out, "copies", "problems/lantern-supper")).isZero();
        assertThat(shown.split("\n\n"))
                .hasSize(2)
                .allSatisfy(choice -> assertThat(out.toString()).contains(choice));
    }

    @ParameterizedTest
    @ValueSource(strings = {"first-egg", "lantern-supper", "two-kitchens", "night-ferry", "banquet", "overbooked"})
    void theSheetsOfADemoDayAreAsTheProgramWritesThem(String name) throws IOException {
        theSheetsAre(name, read(name));
    }

    @Test
    void theBanquetIsAsItsGeneratorWritesIt() throws IOException {
        theSheetsAre("banquet", Banquet.day());
    }

    private void theSheetsAre(String name, Day day) throws IOException {
        DayFiles.write(day, folder.resolve("written"));
        try (Stream<Path> written = Files.list(folder.resolve("written"))) {
            for (Path sheet : written.toList()) {
                assertThat(Path.of("problems", name).resolve(sheet.getFileName()))
                        .hasSameTextualContentAs(sheet);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"two-kitchens, 3000", "night-ferry, 3000", "banquet, 40000"})
    void theOtherDaysHaveNothingLateAndNothingBroken(String name, long steps) {
        Verdict verdict = plan(read(name), steps);

        assertThat(verdict.breaches()).isEmpty();
        assertThat(verdict.lateMinutes()).isZero();
    }

    /** On the last Sunday of October 2026 clocks in Berlin are put back from 03:00 to 02:00 (Directive 2000/84/EC). */
    @Test
    void theNightFerryLastsAnHourLongerThanItsClocksSay() {
        Day day = read("night-ferry");

        assertThat(day.setup("2")
                        .orElseThrow()
                        .call()
                        .minutesUntil(day.setup("3").orElseThrow().call()))
                .isEqualTo(110);
        assertThat(day.facts().kitchenHours()).hasSize(1);
        assertThat(day.facts().kitchenHours().get(0).minutes()).isEqualTo(12 * 60);
    }

    /** How late is luck, 140 to 222 minutes with eight seeds; the best plan known has 43,409 points. */
    @Test
    void theOverbookedDayBreaksNothingButComesLate() {
        Verdict verdict = plan(read("overbooked"), 5000);

        assertThat(verdict.breaches()).isEmpty();
        assertThat(verdict.lateMinutes()).isBetween(100, 260);
        assertThat(verdict.setups())
                .anySatisfy(setup -> assertThat(setup.words()).contains("LATE by"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1", "2", "3", "4"})
    void eachSetupOfTheOverbookedDayCouldBeMetAlone(String setup) {
        Day all = read("overbooked");
        Day one = new Day(
                all.facts(),
                all.setups(),
                all.needs().stream().filter(need -> need.setup().equals(setup)).toList(),
                all.dishes(),
                all.looks(),
                all.steps(),
                all.ingredients(),
                all.stations(),
                all.circuits(),
                all.people(),
                all.cast(),
                all.places());

        Verdict verdict = plan(one, 3000);

        assertThat(verdict.breaches()).isEmpty();
        assertThat(verdict.lateMinutes()).isZero();
    }

    private static Day read(String name) {
        return DayFiles.read(Path.of("problems", name)).day();
    }

    private static Verdict plan(Day day, long steps) {
        CopyCounts counts = CopyCounts.of(day);
        TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), counts::copiesOf);
        Planner.Limits limits = new Planner.Limits(600, Optional.of(steps), 1, 1);
        Planner.Found found = Planner.plan(day, net, "", "", limits, Optional.empty(), Planner.Watcher.NONE);
        Plan plan = found.plan();
        assertThat(plan.bound().orElseThrow())
                .as("bound of " + day.facts().title())
                .isLessThanOrEqualTo(found.points());
        return Audit.of(day, plan);
    }
}
