package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every day under problems/broken is refused with the very report that lies beside it. */
class BrokenDaysTest {

    private static final Path BROKEN = Path.of("problems/broken");

    @TempDir
    Path folder;

    static List<String> days() throws IOException {
        try (Stream<Path> all = Files.list(BROKEN)) {
            return all.filter(Files::isDirectory)
                    .map(day -> day.getFileName().toString())
                    .sorted()
                    .toList();
        }
    }

    static List<String> daysInSheets() throws IOException {
        return days().stream()
                .filter(name -> day(BROKEN.resolve(name)).equals(BROKEN.resolve(name)))
                .toList();
    }

    private static Path day(Path folder) {
        return Stream.of("day.json", "day.xlsx")
                .map(folder::resolve)
                .filter(Files::exists)
                .findFirst()
                .orElse(folder);
    }

    private static String expected(String name) throws IOException {
        return Files.readString(BROKEN.resolve(name).resolve("expected.txt"));
    }

    /** What {@code check} prints about a day that it refuses. */
    private static String refusal(Path day) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();

        int code = Main.run(new PrintWriter(out), new PrintWriter(err), "check", day.toString());

        assertThat(code).isEqualTo(Main.BAD_INPUT);
        assertThat(out.toString()).isEmpty();
        return err.toString().replace(System.lineSeparator(), "\n");
    }

    @ParameterizedTest
    @MethodSource("days")
    void aBrokenDayIsRefusedWithTheReportBesideIt(String name) throws IOException {
        assertThat(refusal(day(BROKEN.resolve(name)))).isEqualTo(expected(name));
    }

    @ParameterizedTest
    @MethodSource("days")
    void theReportIsTheSameWhereLettersHaveOtherCases(String name) throws IOException {
        Locale usual = Locale.getDefault();
        Locale.setDefault(new Locale("tr", "TR"));
        try {
            assertThat(refusal(day(BROKEN.resolve(name)))).isEqualTo(expected(name));
        } finally {
            Locale.setDefault(usual);
        }
    }

    @ParameterizedTest
    @MethodSource("daysInSheets")
    void theReportIsTheSameForSheetsWithCarriageReturnsAndAByteOrderMark(String name) throws IOException {
        Path copy = Files.createDirectory(folder.resolve(name));
        try (Stream<Path> files = Files.list(BROKEN.resolve(name))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                String text = Files.readString(file);
                String marked = text.isEmpty() || text.startsWith("\uFEFF") ? text : "\uFEFF" + text;
                Files.writeString(
                        copy.resolve(file.getFileName()),
                        marked.replace("\r\n", "\n").replace("\n", "\r\n"));
            }
        }

        assertThat(refusal(copy)).isEqualTo(expected(name));
    }

    @ParameterizedTest
    @ValueSource(strings = {"copies", "plan"})
    void otherCommandsTellMisspeltNamesInTheSameWords(String command) throws IOException {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();

        int code = Main.run(
                new PrintWriter(out),
                new PrintWriter(err),
                command,
                BROKEN.resolve("misspelt-names").toString());

        assertThat(code).isEqualTo(Main.BAD_INPUT);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString().replace(System.lineSeparator(), "\n")).isEqualTo(expected("misspelt-names"));
    }

    @Test
    void everyBrokenDayIsInTheReadme() throws IOException {
        String readme = Files.readString(BROKEN.resolve("README.md"));

        assertThat(days()).isNotEmpty().allSatisfy(name -> assertThat(readme).contains("| `" + name + "` |"));
    }

    @Test
    void aFileOfFiftyMegabytesIsRefusedUnread() throws IOException {
        Path sheets = Files.createDirectory(folder.resolve("large"));
        Path json = folder.resolve("large.json");
        for (Path file : List.of(sheets.resolve("steps.csv"), json)) {
            try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
                large.setLength(50_000_000);
            }
        }

        assertThat(refusal(json)).isEqualTo("large.json: is too large: a day may have at most 20 MB.\n");
        assertThat(refusal(sheets)).contains("is too large: a day may have at most 20 MB.");
    }

    @Test
    void aDayThatIsNotThereIsToldByItsName() {
        assertThat(refusal(folder.resolve("nowhere"))).isEqualTo("nowhere: there is no such file or folder.\n");
    }

    @Test
    void theDayThatNewWritesHasNothingWrongWithIt() {
        Path day = folder.resolve("mine");
        StringWriter out = new StringWriter();
        Main.run(new PrintWriter(out), new PrintWriter(out), "new", day.toString());
        StringWriter printed = new StringWriter();

        int code = Main.run(new PrintWriter(printed), new PrintWriter(printed), "check", day.toString());

        assertThat(printed.toString()).contains("nothing wrong found").doesNotContain("Remark:");
        assertThat(code).isEqualTo(Main.FINE);
    }

    @Test
    void remarksArePrintedBesideTheVerdict() throws IOException {
        Path day = folder.resolve("day");
        StringWriter out = new StringWriter();
        Main.run(new PrintWriter(out), new PrintWriter(out), "new", day.toString());
        Files.writeString(
                day.resolve("people.csv"),
                Files.readString(day.resolve("people.csv"), StandardCharsets.UTF_8)
                        .replaceFirst("\\R?$", "\nNightwatch,,01:00-02:00,,\n"));
        StringWriter printed = new StringWriter();

        int code = Main.run(new PrintWriter(printed), new PrintWriter(printed), "check", day.toString());

        assertThat(printed.toString())
                .contains("Remark: day, sheet people")
                .contains("[Nightwatch] is never in the kitchen in kitchen hours.");
        assertThat(code).isEqualTo(Main.FINE);
    }
}
