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
import platecall.day.Look;
import platecall.intake.DayFiles;
import platecall.looks.Looks;

class MainTest {

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(Object... args) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return Main.run(
                new PrintWriter(out),
                new PrintWriter(err),
                Stream.of(args).map(Object::toString).toArray(String[]::new));
    }

    @Test
    void aNewDayIsFilledInExplainedAndWithoutFault() {
        assertThat(run("new", folder.resolve("mine"))).isZero();

        assertThat(folder.resolve("mine/guide.html")).isNotEmptyFile();
        assertThat(folder.resolve("mine/setups.csv")).content().startsWith("setup,scene,shot,place,call,lighting,");
        assertThat(run("check", folder.resolve("mine"))).isZero();
        assertThat(out.toString()).startsWith("My first day: nothing wrong found (2 setups, 4 needs, ");
    }

    @Test
    void aNewDayIsPlannedAtOnceWithNothingLate() {
        run("new", folder.resolve("mine"));

        assertThat(run(
                        "plan",
                        "--steps",
                        5000,
                        "--threads",
                        1,
                        "--out",
                        folder.resolve("papers"),
                        folder.resolve("mine")))
                .isZero();
        assertThat(folder.resolve("papers/plan.json")).isNotEmptyFile();
    }

    /** Two pairs of hands and an oven of one temperature: what is late for want of these is told, whatever the plan. */
    @Test
    void whatIsLateIsToldWithWhatItLacks() {
        assertThat(run(
                        "plan",
                        "problems/overbooked",
                        "--steps",
                        "2000",
                        "--threads",
                        "1",
                        "--no-promise",
                        "--out",
                        folder.resolve("late")))
                .isEqualTo(1);
        assertThat(out.toString())
                .containsPattern("Held up: [1-4]/\\S+.*#\\d, \\d+ min (late|past its use)\\. All else as planned, it"
                        + " (would be|could be|would gain by) ")
                .containsPattern("Held up: .* with more (hands|oven)");
    }

    @Test
    void newNeverOverwrites() throws IOException {
        Path notes = Files.writeString(folder.resolve("notes.txt"), "mine");

        assertThat(run("new", folder)).isEqualTo(2);

        assertThat(err.toString().strip()).endsWith(": is not empty. Maybe give the name of a new folder.");
        assertThat(Files.list(folder)).containsExactly(notes);
        assertThat(run("new", folder.resolve("day.xlsx"))).isZero();
        assertThat(folder.resolve("day-guide.html")).isNotEmptyFile();
        assertThat(run("new", folder.resolve("day.xlsx"))).isEqualTo(2);
    }

    @Test
    void newTakesTheGuideThatItWroteBesideAnotherFormat() throws IOException {
        Path guide = folder.resolve("a-guide.html");
        assertThat(run("new", folder.resolve("a.xlsx"))).isZero();
        byte[] page = Files.readAllBytes(guide);

        assertThat(run("new", folder.resolve("a.json"))).isZero();
        assertThat(folder.resolve("a.json")).isNotEmptyFile();
        assertThat(guide).hasBinaryContent(page);

        Files.writeString(folder.resolve("b-guide.html"), "mine");
        assertThat(run("new", folder.resolve("b.json"))).isEqualTo(2);
        assertThat(err.toString()).contains("b-guide.html: is there already. Maybe give another name.");
        assertThat(folder.resolve("b-guide.html")).hasContent("mine");
        assertThat(folder.resolve("b.json")).doesNotExist();
    }

    @Test
    void theGuideOfANewDayNamesEveryPropertyOfEveryLook() throws IOException {
        run("new", folder.resolve("mine"));

        String guide = Files.readString(folder.resolve("mine/guide.html"));
        assertThat(guide).contains("<td>dish</td>", "<td>time</td>");
        for (Look.Kind kind : Look.Kind.values()) {
            Looks.properties(kind)
                    .forEach(property -> assertThat(guide)
                            .contains("<td>" + property.name() + (property.required() ? " *" : "") + "</td><td>"
                                    + kind.word() + "</td>"));
        }
    }

    @Test
    void convertWritesTheSameDayInAnotherFormat() {
        run("new", folder.resolve("mine"));

        assertThat(run("convert", folder.resolve("mine"), folder.resolve("mine.xlsx")))
                .isZero();
        assertThat(run("convert", folder.resolve("mine.xlsx"), folder.resolve("mine.json")))
                .isZero();
        assertThat(DayFiles.read(folder.resolve("mine.json")).day())
                .isEqualTo(DayFiles.read(folder.resolve("mine")).day());
        assertThat(run("convert", folder.resolve("mine"), folder.resolve("mine.json")))
                .isEqualTo(2);
        assertThat(err.toString())
                .isEqualToIgnoringNewLines(
                        "mine.json: can't be written: mine.json is there already. Maybe give another name, or --replace.");
        assertThat(run("convert", "--replace", folder.resolve("mine"), folder.resolve("mine.json")))
                .isZero();
    }

    @Test
    void badInputIsExitCodeTwoWithOneLineForEachTroubleAndNoStackTrace() throws IOException {
        run("new", folder.resolve("mine"));
        Path steps = folder.resolve("mine/steps.csv");
        Files.writeString(steps, Files.readString(steps).replace("soup,simmer,chop", "soup,simmer,,x"));

        assertThat(run("check", folder.resolve("mine"))).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString())
                .contains("mine, sheet steps, row 3, column ")
                .doesNotContain("\tat ")
                .endsWith(
                        System.lineSeparator() + "More will be checked once these are right." + System.lineSeparator());
        assertThat(run("check", "--debug", folder.resolve("mine"))).isEqualTo(2);
        assertThat(err.toString()).contains("\tat platecall.");
        assertThat(run("--debug", "check", folder.resolve("gone"))).isEqualTo(2);
        assertThat(err.toString())
                .startsWith("gone: there is no such file or folder.")
                .doesNotContain("More will be checked")
                .contains("\tat platecall.");
    }

    @Test
    void wrongUsageIsExitCodeTwo() {
        assertThat(run("check")).isEqualTo(2);
        assertThat(err.toString())
                .isEqualToNormalizingNewlines(
                        "Missing required parameter: 'DAY'\nUsage: platecall check [-hV] [--debug] DAY\n"
                                + "Maybe look at platecall check --help.\n");
        assertThat(run("frobnicate")).isEqualTo(2);
        assertThat(run("plan", "--seconds", "ten", "day")).isEqualTo(2);
        assertThat(err.toString()).contains("'--seconds': [ten] is not a number\n");
        assertThat(run("--help")).isZero();
        assertThat(out.toString()).contains("new ", "check ", "convert ", "schema ");
    }

    @Test
    void aFolderThatCannotBeWrittenIsToldBeforeTheSearch() throws IOException {
        Path inTheWay = Files.writeString(folder.resolve("papers"), "a file");

        // a search of an hour would outlast the test
        assertThat(run("plan", "problems/first-egg", "--seconds", "3600", "--out", inTheWay.resolve("deep")))
                .isEqualTo(2);
        assertThat(err.toString())
                .isEqualToNormalizingNewlines("cannot write to the folder [" + inTheWay.resolve("deep")
                        + "]: a file of that name is in the way. Maybe choose another folder with --out.\n");
        assertThat(inTheWay).hasContent("a file");
    }

    @Test
    void aFolderWithoutANameOrWithOneThatIsTooLongIsToldBeforeTheSearch() {
        String long300 = "x".repeat(300);
        assertThat(run("plan", "problems/first-egg", "--seconds", "3600", "--out", folder.resolve("deep/" + long300)))
                .isEqualTo(2);
        assertThat(err.toString())
                .startsWith("cannot write to the folder [" + folder.resolve("deep/" + long300) + "]: ")
                .containsIgnoringCase("name too long");
        assertThat(folder).isEmptyDirectory();
        assertThat(run("plan", "problems/first-egg", "--seconds", "3600", "--out", ""))
                .isEqualTo(2);
        assertThat(err.toString())
                .isEqualToNormalizingNewlines(
                        "cannot write to the folder []: it has no name. Maybe choose another folder with --out.\n");
    }

    @Test
    void theSchemaIsPrinted() {
        assertThat(run("schema")).isZero();
        assertThat(out.toString())
                .startsWith("{\n  \"$schema\" : \"https://json-schema.org/draft/2020-12/schema\"")
                .endsWith("}\n");
    }
}
