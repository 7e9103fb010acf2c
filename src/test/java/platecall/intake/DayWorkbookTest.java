package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Collections;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.BinaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.day.Day;
import platecall.day.Release;
import platecall.units.Moment;

class DayWorkbookTest {

    @TempDir
    Path folder;

    private final Day day = DayFiles.read(SheetFolder.INN).day();

    private Path innWith(BinaryOperator<String> changeOfPart) throws IOException {
        Path source = folder.resolve("source.xlsx");
        DayFiles.replace(day, source);
        Path changed = folder.resolve("day.xlsx");
        try (ZipFile zip = new ZipFile(source.toFile());
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(changed))) {
            for (ZipEntry entry : Collections.list(zip.entries())) {
                String text = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(changeOfPart.apply(entry.getName(), text).getBytes(StandardCharsets.UTF_8));
            }
        }
        return changed;
    }

    @Test
    void cellsThatASpreadsheetTookForTimesSharesAndTruthsAreReadAsTheyLook() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "test", null)) {
            for (Sheet<?> sheet : DaySheets.ALL) {
                Worksheet worksheet = workbook.newWorksheet(sheet.name().toUpperCase(java.util.Locale.ROOT));
                List<List<String>> table = DayEncoder.table(sheet, day);
                for (int row = 0; row < table.size(); row++) {
                    for (int column = 0; column < table.get(row).size(); column++) {
                        worksheet.value(row, column, table.get(row).get(column));
                    }
                }
                if (sheet == (Object) DaySheets.Facts.SHEET) {
                    worksheet.value(2, 1, LocalDate.of(2026, 10, 24));
                    worksheet.style(2, 1).format("dd/mm/yyyy").set();
                    worksheet.value(8, 1, 0.07);
                    worksheet.style(8, 1).format("0.0%").set();
                }
                if (sheet == (Object) DaySheets.Setups.SHEET) {
                    worksheet.value(1, 4, 10.5 / 24);
                    worksheet.style(1, 4).format("h:mm AM/PM").set();
                    worksheet.value(2, 4, LocalDateTime.of(2026, 10, 24, 11, 40));
                    worksheet.style(2, 4).format("yyyy\\-mm\\-dd hh:mm").set();
                    worksheet.value(1, 10, true);
                    worksheet.value(1, 6, 4.0);
                    worksheet.style(1, 6).format("0 \"takes\"").set();
                }
                if (sheet == (Object) DaySheets.Ingredients.SHEET) {
                    worksheet.value(1, 3, 0.1 + 0.2);
                }
            }
        }
        Path file = Files.write(folder.resolve("typed.xlsx"), bytes.toByteArray());

        Day read = DayFiles.read(file).day();

        assertThat(read.facts().promise()).isEqualTo(0.07);
        assertThat(read.ingredients().get(0).quantity()).isEqualTo(0.3);
        assertThat(read.facts().date()).isEqualTo(LocalDate.of(2026, 10, 24));
        assertThat(read.setups()).isEqualTo(day.setups());
        assertThat(read.setups().get(0).call()).isEqualTo(Moment.of(ZonedDateTime.parse("2026-10-24T10:30+02:00")));
    }

    private Path innTyped(BiConsumer<String, Worksheet> change) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "test", null)) {
            for (Sheet<?> sheet : DaySheets.ALL) {
                Worksheet worksheet = workbook.newWorksheet(sheet.name());
                List<List<String>> table = DayEncoder.table(sheet, day);
                for (int row = 0; row < table.size(); row++) {
                    for (int column = 0; column < table.get(row).size(); column++) {
                        worksheet.value(row, column, table.get(row).get(column));
                    }
                }
                change.accept(sheet.name(), worksheet);
            }
        }
        return Files.write(folder.resolve("typed.xlsx"), bytes.toByteArray());
    }

    private static void put(Worksheet worksheet, int row, int column, Number value, String format) {
        worksheet.value(row, column, value);
        worksheet.style(row, column).format(format).set();
    }

    @Test
    void hoursMayBeCountedOnPastMidnight() throws IOException {
        // columns 4 and 11 are call and release
        Path file = innTyped((name, worksheet) -> {
            if (name.equals("setups")) {
                put(worksheet, 1, 11, 1.0, "[h]:mm:ss");
            }
        });
        assertThat(DayFiles.read(file).day().setups().get(0).release())
                .isEqualTo(new Release.At(Moment.of(ZonedDateTime.parse("2026-10-25T00:00+02:00"))));

        Path late = innTyped((name, worksheet) -> {
            if (name.equals("setups")) {
                put(worksheet, 1, 4, 25.5 / 24, "[h]:mm");
                put(worksheet, 2, 4, 26.25 / 24, "[hh]");
            }
        });
        assertThat(SheetFolder.report(late))
                .containsExactly(
                        "typed.xlsx, sheet setups, row 2, column \"call\": [25:30] is not a time: hours go from 00:00 to 24:00. Maybe 2026-10-25 01:30.",
                        "typed.xlsx, sheet setups, row 3, column \"call\": [26:15] is not a time: hours go from 00:00 to 24:00. Maybe 2026-10-25 02:15.");
    }

    @Test
    void hoursThatAreCountedOnAreHoursHoweverMany() throws IOException {
        Path file = innTyped((name, worksheet) -> {
            if (name.equals("setups")) {
                put(worksheet, 1, 4, 35.0 / 24, "[h]:mm");
                put(worksheet, 2, 4, 36.5 / 24, "[h]:mm");
            }
        });
        assertThat(SheetFolder.report(file))
                .containsExactly(
                        "typed.xlsx, sheet setups, row 2, column \"call\": [35:00] is not a time: hours go from 00:00 to 24:00. Maybe 2026-10-25 11:00.",
                        "typed.xlsx, sheet setups, row 3, column \"call\": [36:30] is not a time: hours go from 00:00 to 24:00. Maybe 2026-10-25 12:30.");
    }

    @Test
    void aDateOrATimeThatIsShownAsANumberIsOfferedAsOne() throws IOException {
        Path file = innTyped((name, worksheet) -> {
            if (name.equals("setups")) {
                put(worksheet, 1, 4, 46319.5, "General");
            }
        });
        assertThat(SheetFolder.report(file))
                .containsExactly(
                        "typed.xlsx, sheet setups, row 2, column \"call\": [46319.5] is not a time. Maybe 2026-10-24 12:00.");
    }

    @Test
    void aSceneThatTheSpreadsheetTookForADateIsRemarked() throws IOException {
        Path file = innTyped((name, worksheet) -> {
            if (name.equals("setups")) {
                put(worksheet, 1, 1, 46054, "d/m");
                put(worksheet, 2, 1, 46054, "0");
            }
        });
        DayFile read = DayFiles.read(file);
        assertThat(read.day().setups().get(0).scene()).isEqualTo("2026-02-01");
        assertThat(read.remarks())
                .extracting(read::tell)
                .containsExactly(
                        "typed.xlsx, sheet setups, row 2, column \"scene\": [2026-02-01] is a date or a time in the spreadsheet, maybe not what was typed. Maybe format the cell as text and type it anew.");
    }

    @Test
    void troublesAreToldWithTheRowOfTheWorksheet() throws IOException {
        Path file = innWith((part, text) ->
                part.equals("xl/sharedStrings.xml") ? text.replace("lasts 3 takes", "lasts long") : text);

        assertThat(SheetFolder.report(file))
                .containsExactly(
                        "day.xlsx, sheet needs, row 2, column \"use\": [lasts long] does not say how takes use up a plate. Maybe fresh, lasts 3 takes, or topped up in 4 min.");
    }

    @Test
    void aWorksheetByAnotherNameIsToldAndAnEmptyOneIsNot() throws IOException {
        Path renamed = innWith((part, text) ->
                part.equals("xl/workbook.xml") ? text.replace("name=\"cast\"", "name=\"Who is there\"") : text);

        assertThat(SheetFolder.report(renamed))
                .containsExactly("day.xlsx: [Who is there] is not a sheet of a day. Did you mean cast?");
        Path two = folder.resolve("two.xlsx");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "test", null)) {
            for (Sheet<?> sheet : DaySheets.ALL) {
                Worksheet worksheet = workbook.newWorksheet(sheet.name());
                List<List<String>> table = DayEncoder.table(sheet, day);
                for (int row = 0; row < table.size(); row++) {
                    for (int column = 0; column < table.get(row).size(); column++) {
                        worksheet.value(row, column, table.get(row).get(column));
                    }
                }
            }
            workbook.newWorksheet("Sheet1").value(0, 0, "junk");
            workbook.newWorksheet("Sheet2");
        }
        DayFile file = DayFiles.read(Files.write(two, bytes.toByteArray()));
        assertThat(file.remarks())
                .extracting(file::tell)
                .containsExactly(
                        "two.xlsx: [Sheet1] is not a sheet of a day, so it is not read. Maybe put it elsewhere.");
    }

    @Test
    void aFormulaWithoutAValueIsToldAndOneWhoseValueIsAnEmptyTextIsBlank() throws IOException {
        String cell = "<c r=\"G2\"[^>]*>.*?</c>";
        Path file = innWith((part, xml) -> part.endsWith("sheet7.xml")
                ? xml.replaceFirst(cell, "<c r=\"G2\"><f>\"mi\"&amp;\"lk\"</f><v></v></c>")
                : xml);
        assertThat(SheetFolder.report(file))
                .containsExactly(
                        "day.xlsx, sheet ingredients, row 2, column \"allergens\": holds a formula whose value is not in the file. Maybe open it in the spreadsheet program and save it again.");

        Path blank = innWith((part, xml) -> part.endsWith("sheet7.xml")
                ? xml.replaceFirst(cell, "<c r=\"G2\" t=\"str\"><f>\"\"</f><v></v></c>")
                : xml);
        assertThat(DayFiles.read(blank).day().ingredients().get(0).allergens()).isEmpty();

        Path error = innWith((part, xml) ->
                part.endsWith("sheet7.xml") ? xml.replaceFirst(cell, "<c r=\"G2\" t=\"e\"><v>#N/A</v></c>") : xml);
        assertThat(SheetFolder.report(error))
                .containsExactly(
                        "day.xlsx, sheet ingredients, row 2, column \"allergens\": [#N/A] is an error of a spreadsheet's formula. Maybe mend the formula, or type its value.");
    }

    @Test
    void daysMayBeCountedFromTheBeginningOf1904() throws IOException {
        // 2026-10-24 is 46,319 days after 1899-12-30, and 44,857 after 1904-01-01
        Path file = innWith((part, xml) -> switch (part) {
            case "xl/workbook.xml" -> xml.replaceFirst("<workbookPr[^>]*/>", "<workbookPr date1904=\"1\"/>");
            case "xl/worksheets/sheet1.xml" ->
                xml.replaceFirst("<c r=\"B3\"[^>]*>.*?</c>", "<c r=\"B3\" s=\"2\"><v>44857</v></c>");
            case "xl/styles.xml" ->
                xml.replaceFirst(
                        "<cellXfs[^>]*>(.*?)</cellXfs>",
                        "<cellXfs count=\"3\"><xf/><xf/><xf numFmtId=\"14\" applyNumberFormat=\"1\"/></cellXfs>");
            default -> xml;
        });

        assertThat(DayFiles.read(file).day().facts().date()).isEqualTo(LocalDate.of(2026, 10, 24));
    }

    @Test
    void whatIsNoWorkbookIsTold() throws IOException {
        String told = "is not a workbook that can be read. Maybe save it anew as .xlsx.";
        Path text = Files.writeString(folder.resolve("text.xlsx"), "soup");
        Path cut = innWith((part, xml) -> part.contains("sheet3") ? xml.substring(0, xml.length() / 2) : xml);

        assertThat(SheetFolder.report(text)).containsExactly("text.xlsx: " + told);
        assertThat(SheetFolder.report(cut)).containsExactly("day.xlsx: " + told);
    }

    @Test
    void entitiesAreNotUnfolded() throws IOException {
        Path file = innWith((part, xml) -> part.equals("xl/sharedStrings.xml")
                ? xml.replaceFirst("\\?>", "?><!DOCTYPE s [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>")
                        .replace(">Theo<", ">&x;<")
                : xml);

        assertThat(SheetFolder.report(file))
                .containsExactly("day.xlsx: is not a workbook that can be read. Maybe save it anew as .xlsx.");
    }

    @Test
    void aSmallFileThatUnpacksToAHugeOneIsRefused() throws IOException {
        Path file = folder.resolve("bomb.xlsx");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry("xl/sharedStrings.xml"));
            byte[] zeros = new byte[1_000_000];
            for (int i = 0; i < 110; i++) {
                zip.write(zeros);
            }
        }

        assertThat(Files.size(file)).isLessThan(1_000_000);
        assertThat(SheetFolder.report(file)).containsExactly("bomb.xlsx: unpacks to more than 100 MB.");
    }

    @Test
    void aWorksheetWithTooManyColumnsIsRefused() throws IOException {
        Path file = innWith((part, xml) -> part.contains("sheet2.xml") ? xml.replace("r=\"A2\"", "r=\"ZZ2\"") : xml);

        assertThat(SheetFolder.report(file)).containsExactly("day.xlsx, sheet setups: has more than 200 columns.");
    }
}
