package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.odds.TestOdds;

class ReportsTest {

    @TempDir
    Path folder;

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void everyReportIsWrittenAndNothingElse() throws Exception {
        EggDay eggs = new EggDay();
        Path deep = folder.resolve("reports/eggs");
        List<Path> written = Reports.write(
                Reports.of(
                        eggs.day(),
                        eggs.plan(),
                        TestOdds.of(eggs.day(), eggs.plan(), 50, 1),
                        Changes.none(eggs.day(), eggs.plan()),
                        List.of(),
                        eggs.at(0, 30)),
                deep);
        assertThat(names(deep))
                .containsExactly(
                        "gantt-camera.png",
                        "gantt-camera.svg",
                        "gantt-hands.png",
                        "gantt-hands.svg",
                        "gantt-stations.png",
                        "gantt-stations.svg",
                        "readiness-letter.pdf",
                        "readiness.csv",
                        "readiness.pdf",
                        "run-sheet-letter.pdf",
                        "run-sheet.html",
                        "run-sheet.pdf",
                        "sequence.csv");
        assertThat(written).hasSize(13).allSatisfy(file -> assertThat(file).isNotEmptyFile());
    }

    @Test
    void olderReportsAreReplaced() throws Exception {
        Files.writeString(folder.resolve("a.csv"), "old and longer");
        Reports.write(Map.of("a.csv", bytes("new")), folder);
        assertThat(folder.resolve("a.csv")).hasContent("new");
        assertThat(names(folder)).containsExactly("a.csv");
    }

    @Test
    void aFileInTheWayOfTheFolderIsToldInOneLine() throws Exception {
        Path file = Files.writeString(folder.resolve("reports"), "a file");
        assertThatThrownBy(() -> Reports.write(Map.of("a.csv", bytes("a")), file))
                .isInstanceOf(UnwritableFolderException.class)
                .hasMessage("cannot write to the folder [" + file
                        + "]: a file of that name is in the way. Maybe choose another folder with --out.");
        assertThat(file).hasContent("a file");
    }

    @Test
    void nothingIsTouchedIfOneReportCannotBeWritten() throws Exception {
        Files.writeString(folder.resolve("a.csv"), "old");
        Files.createDirectory(folder.resolve(".b.csv.part"));
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("a.csv", bytes("new"));
        files.put("b.csv", bytes("new"));
        assertThatThrownBy(() -> Reports.write(files, folder)).isInstanceOf(UnwritableFolderException.class);
        assertThat(folder.resolve("a.csv")).hasContent("old");
        assertThat(folder.resolve(".a.csv.part")).doesNotExist();
        assertThat(folder.resolve("b.csv")).doesNotExist();
    }
}
