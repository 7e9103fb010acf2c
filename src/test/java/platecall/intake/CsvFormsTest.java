package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.day.Day;

/** The forms in which spreadsheets write CSV. */
class CsvFormsTest {

    @TempDir
    Path parent;

    private SheetFolder inn;
    private Day day;

    @BeforeEach
    void copyTheInn() {
        inn = new SheetFolder(parent);
        day = DayFiles.read(inn.path).day();
    }

    private void rewriteAll(UnaryOperator<String> change) throws IOException {
        try (Stream<Path> sheets = Files.list(inn.path)) {
            for (Path sheet : sheets.toList()) {
                Files.writeString(sheet, change.apply(Files.readString(sheet)));
            }
        }
    }

    @Test
    void linesMayEndInCrLf() throws IOException {
        rewriteAll(text -> text.replace("\n", "\r\n"));

        assertThat(DayFiles.read(inn.path).day()).isEqualTo(day);
    }

    @Test
    void aByteOrderMarkMayStandInFront() throws IOException {
        rewriteAll(text -> "\uFEFF" + text);

        assertThat(DayFiles.read(inn.path).day()).isEqualTo(day);
    }

    @ParameterizedTest
    @ValueSource(strings = {";", "\t"})
    void semicolonsAndTabsMaySeparateTheCellsAndThenCommasTheDecimals(String separator) throws IOException {
        for (Sheet<?> sheet : DaySheets.ALL) {
            StringBuilder text = new StringBuilder();
            for (var row : DayEncoder.table(sheet, day)) {
                text.append(String.join(
                                separator,
                                row.stream()
                                        .map(cell -> cell.replaceAll("^([0-9]+)\\.([0-9]+)( %)?$", "$1,$2$3"))
                                        .map(cell -> "\"" + cell.replace("\"", "\"\"") + "\"")
                                        .toList()))
                        .append("\r\n");
            }
            inn.write(sheet.name(), text.toString());
        }

        assertThat(inn.text("ingredients")).contains("\"0,2\"");
        assertThat(DayFiles.read(inn.path).day()).isEqualTo(day);
    }

    @Test
    void columnsMayStandInAnyOrderAndInAnyCaseAndSpreadsheetsMayAddEmptyOnes() {
        inn.write("circuits", "AMPS,Continuous  Factor,Circuit (name),volts,,\n32,1.25,wall,230,,\n,,,,,\n");

        assertThat(DayFiles.read(inn.path).day()).isEqualTo(day);
    }

    @Test
    void accentsAreTheSameWhetherTheyAreOneSignOrTwo() throws IOException {
        rewriteAll(text -> text.replace("Mina", "Zoe\u0308"));

        assertThat(DayFiles.read(inn.path).day().diner("Zo\u00eb")).isPresent();
    }

    @Test
    void utf16IsNotRead() throws IOException {
        Files.write(inn.sheet("cast"), "\uFEFFwho\nMina\n".getBytes(StandardCharsets.UTF_16LE));

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet cast: is not UTF-8 text, from line 1 on. Maybe save it anew as \"CSV UTF-8\", or send the day as .xlsx.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"tr-TR", "de-DE", "ar-EG"})
    void theMachinesLanguageChangesNothing(String language) throws IOException {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag(language));
        try {
            rewriteAll(text -> text.replace("minutes likely", "MINUTES LIKELY").replace("silent", "SILENT"));
            DayFiles.write(DayFiles.read(inn.path).day(), parent.resolve("again"));
            DayFiles.write(day, parent.resolve("day.xlsx"));

            assertThat(parent.resolve("again/steps.csv")).hasSameTextualContentAs(SheetFolder.INN.resolve("steps.csv"));
            assertThat(parent.resolve("again/day.csv")).hasSameTextualContentAs(SheetFolder.INN.resolve("day.csv"));
            assertThat(DayFiles.read(parent.resolve("day.xlsx")).day()).isEqualTo(day);
        } finally {
            Locale.setDefault(before);
        }
    }
}
