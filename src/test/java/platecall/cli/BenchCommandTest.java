package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class BenchCommandTest {

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int bench(Object... arguments) {
        String[] words = Stream.of(arguments).map(Object::toString).toArray(String[]::new);
        return new CommandLine(new BenchCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(words);
    }

    private static Path examples() throws URISyntaxException {
        return Path.of(BenchCommandTest.class.getResource("/bench").toURI());
    }

    @Test
    void printsARowAFileAndTheAveragesOfEachFolder() throws URISyntaxException {
        assertThat(bench(examples(), "--schedules", 30_000)).isZero();
        assertThat(out.toString().lines().map(line -> line.replaceAll(" +", " ")))
                .anyMatch(line -> line.startsWith("ft06.jss 36 55 55 0.00 17.02 "))
                .anyMatch(line -> line.startsWith("twelve.sm 12 21 21 0.00 50.00 "))
                .anyMatch(line -> line.startsWith(
                        "bench: 2 files, 0.000 % above best known (2 of 2 reach it), 33.51 % above critical path"));
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void writesARowAFileAsCommaSeparatedValues() throws Exception {
        Path csv = folder.resolve("rows.csv");
        assertThat(bench(examples(), "--schedules", 30_000, "--threads", 2, "--seed", 5, "--csv", csv))
                .isZero();
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(3);
        assertThat(lines.get(0)).startsWith("folder,file,tasks,seed,makespan,best_known,gap_percent,");
        assertThat(lines.get(1)).startsWith("bench,ft06.jss,36,5,55,55,0.00,47,17.021,");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(csv);
        }
    }

    @Test
    void saysBeforeItSearchesThatTheRowsCannotBeWritten() throws URISyntaxException {
        Path csv = folder.resolve("none/rows.csv");
        assertThat(bench(examples(), "--schedules", 30_000, "--csv", csv)).isEqualTo(2);
        assertThat(err.toString()).isEqualToIgnoringNewLines(csv + ": there is no such folder. Maybe make it first.");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void reportsEveryBadFileOnceAndSolvesNothing() throws IOException {
        Files.writeString(folder.resolve("a.jss"), "1 1\n0 x\n");
        Files.writeString(folder.resolve("b.sm"), "jobs : 2\n");
        assertThat(bench(folder, "--csv", folder.resolve("rows.csv"))).isEqualTo(2);
        assertThat(err.toString().lines())
                .hasSize(4)
                .first()
                .isEqualTo(folder.resolve("a.jss") + ":2: 'x' is not a whole number");
        assertThat(folder.resolve("rows.csv")).doesNotExist();
    }

    @Test
    void refusesAFolderWithoutFilesAndALimitOfNothing() throws URISyntaxException {
        assertThat(bench(folder)).isEqualTo(2);
        assertThat(bench(examples(), "--seconds", 0)).isEqualTo(2);
        assertThat(err.toString().lines())
                .containsExactly(
                        folder + ": has no .sm or .jss file", "seconds, schedules and threads must be above 0");
    }
}
