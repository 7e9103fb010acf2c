package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import platecall.day.Day;

/** Whatever stands in a cell, a day is read or refused with a report; and what was read is written without loss. */
class RandomCellsTest {

    private static final Day INN = DayFiles.read(SheetFolder.INN).day();

    /** Texts that come near to what cells hold, and texts of any signs. */
    @Provide
    Arbitrary<String> cells() {
        Arbitrary<String> pieces = Arbitraries.of(
                        "12",
                        "-",
                        ":",
                        ";",
                        "|",
                        " ",
                        "18:30",
                        "24:00",
                        "02:30",
                        "+01:00",
                        "2026-10-25",
                        "2026-03-29",
                        ",",
                        ".",
                        "%",
                        "yes",
                        "fresh",
                        "lasts ",
                        " takes",
                        "topped up in ",
                        "setup ",
                        "after ",
                        "at end",
                        "hob",
                        "99999999999",
                        "0",
                        "\n",
                        "\"",
                        "e9",
                        "\u0130",
                        "set:4",
                        "kitchen")
                .list()
                .ofMinSize(1)
                .ofMaxSize(5)
                .map(list -> String.join("", list));
        return Arbitraries.oneOf(
                pieces,
                Arbitraries.strings().ofMaxLength(20),
                Arbitraries.strings().ascii().ofMaxLength(12));
    }

    private static RawDay inn(int cell, String text) {
        RawDay raw = new RawDay("row", "", false);
        Troubles troubles = new Troubles();
        int count = 0;
        for (Sheet<?> sheet : DaySheets.ALL) {
            raw.find(sheet.name(), troubles);
            List<List<String>> table = new ArrayList<>();
            for (List<String> row : DayEncoder.table(sheet, INN)) {
                List<String> copy = new ArrayList<>(row);
                for (int i = 0; i < copy.size(); i++) {
                    if (count++ == cell) {
                        copy.set(i, text);
                    }
                }
                table.add(copy);
            }
            List<RawSheet.RawRow> rows = new ArrayList<>();
            for (int i = 1; i < table.size(); i++) {
                rows.add(new RawSheet.RawRow(i + 1, table.get(i)));
            }
            raw.add(new RawSheet(sheet.name(), table.get(0), rows, false));
        }
        return raw;
    }

    @Property(tries = 700)
    void randomTextInAnyCellIsReadOrReported(@ForAll @IntRange(max = 400) int cell, @ForAll("cells") String text)
            throws Exception {
        Day day;
        try {
            day = DayDecoder.decode("inn", inn(cell, text), new Troubles()).day();
        } catch (BadDay bad) {
            assertThat(bad.report())
                    .startsWith("inn")
                    .doesNotContain("Exception")
                    .doesNotContain("null");
            return;
        }
        Troubles troubles = new Troubles();
        assertThat(DayDecoder.decode("inn", JsonDay.read(JsonDay.pretty(day), troubles), troubles)
                        .day())
                .isEqualTo(day);
    }

    @Property(tries = 20)
    void randomTextThatWasReadSurvivesSheetsAndWorkbooks(
            @ForAll @IntRange(max = 400) int cell, @ForAll("cells") String text) throws Exception {
        Day day;
        try {
            day = DayDecoder.decode("inn", inn(cell, text), new Troubles()).day();
        } catch (BadDay refused) {
            assertThat(refused.troubles()).isNotEmpty();
            return;
        }
        java.nio.file.Path folder = java.nio.file.Files.createTempDirectory("sheets");
        java.nio.file.Path workbook = folder.resolve("day.xlsx");
        java.nio.file.Path sheets = folder.resolve("sheets");
        try {
            DayFiles.write(day, workbook);
            DayFiles.write(day, sheets);
            assertThat(DayFiles.read(workbook).day()).isEqualTo(day);
            assertThat(DayFiles.read(sheets).day()).isEqualTo(day);
        } finally {
            try (var files = java.nio.file.Files.walk(folder)) {
                files.sorted(java.util.Comparator.reverseOrder())
                        .forEach(file -> file.toFile().delete());
            }
        }
    }

    @Property(tries = 100)
    void randomBytesAreNeverAStackTrace(@ForAll byte[] bytes) throws Exception {
        java.nio.file.Path folder = java.nio.file.Files.createTempDirectory("bytes");
        try {
            for (String name : List.of("day.json", "day.xlsx")) {
                java.nio.file.Path file = java.nio.file.Files.write(folder.resolve(name), bytes);
                assertThat(SheetFolder.report(file)).isNotEmpty();
                java.nio.file.Files.delete(file);
            }
        } finally {
            java.nio.file.Files.delete(folder);
        }
    }
}
