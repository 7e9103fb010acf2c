package platecall.intake;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import platecall.day.Day;
import platecall.day.Trouble;

/** A day as one workbook (Office Open XML, {@code .xlsx}) with a worksheet for each sheet. */
final class DayWorkbook {

    /** What a workbook may unpack to; more is taken for an attack. */
    private static final long MOST_UNPACKED_BYTES = 100_000_000;

    private static final int MOST_COLUMNS = 200;

    /** Times of a night are counted on from its evening up to here: 24:00, 25:30. */
    private static final int MOST_HOURS = 36;

    private static final double WIDEST = 40;

    private DayWorkbook() {}

    /** @return null if it is no workbook at all */
    static RawDay read(Path file, byte[] bytes, Troubles troubles) {
        try {
            if (unpacksToTooMuch(file)) {
                troubles.aboutFile("unpacks to more than " + MOST_UNPACKED_BYTES / 1_000_000 + " MB", "");
                return null;
            }
            RawDay day = new RawDay("row", "Maybe empty it, or name its column in the first row.", false);
            Map<String, Set<String>> unreckoned = UnreckonedFormulas.of(file);
            try (ReadableWorkbook workbook =
                    new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, false))) {
                for (org.dhatim.fastexcel.reader.Sheet sheet :
                        workbook.getSheets().toList()) {
                    if (!DaySheets.isSheet(sheet.getName())) {
                        stranger(sheet).ifPresent(day::meet);
                    } else if (day.find(sheet.getName(), troubles)) {
                        read(
                                Names.normal(sheet.getName()),
                                sheet,
                                workbook.isDate1904(),
                                unreckoned.getOrDefault(sheet.getName(), Set.of()),
                                day,
                                troubles);
                    }
                }
            }
            return day;
        } catch (IOException | RuntimeException | OutOfMemoryError notOne) {
            // a cell that claims a column far beyond any sheet makes the reader ask for more memory than there is
            troubles.causedBy(notOne);
            troubles.aboutFile("is not a workbook that can be read", "Maybe save it anew as .xlsx.");
            return null;
        }
    }

    private static boolean unpacksToTooMuch(Path file) throws IOException {
        long left = MOST_UNPACKED_BYTES;
        byte[] buffer = new byte[1 << 16];
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry entry : Collections.list(zip.entries())) {
                try (InputStream in = zip.getInputStream(entry)) {
                    for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                        left -= read;
                        if (left < 0) {
                            return true;
                        }
                    }
                }
            }
        }
        return false;
    }

    /** A worksheet that is no sheet of a day; empty if nothing is in it. */
    private static Optional<RawDay.Stranger> stranger(org.dhatim.fastexcel.reader.Sheet sheet) throws IOException {
        try (Stream<Row> stream = sheet.openStream()) {
            return stream.filter(line -> line.getCellCount() <= MOST_COLUMNS)
                    .map(line -> texts(line, false, Set.of()))
                    .filter(cells -> cells.stream().anyMatch(text -> !text.isBlank()))
                    .findFirst()
                    .map(first -> new RawDay.Stranger(sheet.getName(), sheet.getName(), first, true));
        }
    }

    /** The cells of a row; null for each at one of {@code unreckoned}. */
    private static List<String> texts(Row line, boolean date1904, Set<String> unreckoned) {
        List<String> cells = new ArrayList<>();
        for (Cell cell : line) {
            boolean told = cell != null && unreckoned.contains(cell.getAddress().toString());
            cells.add(cell == null ? "" : told ? null : text(cell, date1904));
        }
        return cells;
    }

    /** @return the cells, with nothing in place of those told */
    private static List<String> tellUnreckoned(
            String sheet, int row, List<String> header, List<String> cells, Troubles troubles) {
        boolean isDay = sheet.equals(DaySheets.Facts.SHEET.name());
        for (int place = 0; place < cells.size(); place++) {
            if (cells.get(place) == null) {
                String above = place < header.size() && header.get(place) != null ? header.get(place) : "";
                String key = cells.get(0) == null ? "" : cells.get(0);
                troubles.add(new Trouble(
                        sheet,
                        isDay ? -1 : row,
                        Names.withoutUnit(isDay ? key : above),
                        "",
                        "holds a formula whose value is not in the file",
                        "Maybe open it in the spreadsheet program and save it again."));
            }
        }
        return cells.stream().map(text -> text == null ? "" : text).toList();
    }

    private static void read(
            String name,
            org.dhatim.fastexcel.reader.Sheet sheet,
            boolean date1904,
            Set<String> unreckoned,
            RawDay day,
            Troubles troubles)
            throws IOException {
        List<String> header = List.of();
        List<RawSheet.RawRow> rows = new ArrayList<>();
        try (Stream<Row> stream = sheet.openStream()) {
            for (Iterator<Row> lines = stream.iterator(); lines.hasNext(); ) {
                Row line = lines.next();
                if (line.getCellCount() > MOST_COLUMNS) {
                    troubles.aboutSheet(name, "has more than " + MOST_COLUMNS + " columns", "");
                    return;
                }
                List<String> cells = texts(line, date1904, unreckoned);
                if (cells.stream().allMatch(text -> text != null && text.isBlank())) {
                    continue;
                }
                if (header.isEmpty()) {
                    header = tellUnreckoned(name, -1, cells, cells, troubles);
                } else if (rows.size() < RawDay.MOST_ROWS) {
                    tellUnreckoned(name, rows.size(), header, cells, troubles);
                    noteTimes(name, rows.size(), line, day);
                    rows.add(new RawSheet.RawRow(line.getRowNum(), cells));
                } else {
                    troubles.aboutSheet(name, "has more than " + RawDay.MOST_ROWS + " rows", "");
                    return;
                }
            }
        }
        day.add(new RawSheet(name, header, rows, false));
    }

    /** Notes which cells of a row the spreadsheet keeps as dates or times. */
    private static void noteTimes(String sheet, int row, Row line, RawDay day) {
        int place = 0;
        for (Cell cell : line) {
            if (cell != null && cell.getType() == CellType.NUMBER && isTime(format(cell))) {
                day.noteTime(sheet, row, place);
            }
            place++;
        }
    }

    private static boolean isTime(String format) {
        return !format.contains("%") && format.matches(".*[ymdhs].*");
    }

    /** Whether hours go on past 24, as in {@code [h]:mm}: no other brackets are left. */
    private static boolean countsHoursOn(String format) {
        return format.contains("[");
    }

    /** A cell as its user sees it, as far as a day's grammar goes: times as clock times, shares in percent. */
    private static String text(Cell cell, boolean date1904) {
        String raw = cell.getRawValue() == null ? "" : cell.getRawValue();
        if (cell.getType() == CellType.BOOLEAN) {
            return cell.asBoolean() ? "yes" : "no";
        }
        if (cell.getType() == CellType.STRING) {
            return cell.asString();
        }
        if (cell.getType() != CellType.NUMBER && cell.getType() != CellType.FORMULA) {
            return raw;
        }
        BigDecimal number;
        try {
            number = new BigDecimal(raw.strip());
        } catch (NumberFormatException textOfFormula) {
            return raw;
        }
        if (Math.abs((long) number.scale()) > 400) {
            return raw;
        }
        String format = format(cell);
        if (format.contains("%")) {
            return Grammars.plain(tidy(number.movePointRight(2))) + " %";
        }
        if (isTime(format)) {
            return time(number, date1904, countsHoursOn(format));
        }
        return Grammars.plain(tidy(number));
    }

    /** Without quoted text, colours in brackets and escaped letters, which may hold any letter; hours in brackets are kept. */
    private static String format(Cell cell) {
        String format = cell.getDataFormatString();
        return format == null
                ? ""
                : format.toLowerCase(Locale.ROOT)
                        .replaceAll("\"[^\"]*\"|\\[(?![hms]+\\])[^\\]]*\\]|\\\\.|_.", "")
                        .replace("general", "");
    }

    /** Spreadsheets keep numbers in binary and write 17 digits: 0.1 + 0.2 stands there as 0.30000000000000004. */
    private static BigDecimal tidy(BigDecimal number) {
        return number.precision() > 15 ? number.round(new MathContext(15, RoundingMode.HALF_EVEN)) : number;
    }

    /**
     * Days since the end of 1899, or since the beginning of 1904, as spreadsheets count them; below one and a half only hours,
     * which may be 24 and more.
     *
     * @param hoursOnly whether the cell shows hours, however many
     */
    private static String time(BigDecimal days, boolean date1904, boolean hoursOnly) {
        double value = days.doubleValue();
        if (value < 0 || value > 100_000) {
            return Grammars.plain(days);
        }
        long minutes = Math.round(value * 24 * 60);
        if (hoursOnly || minutes < MOST_HOURS * 60) {
            return String.format(Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60);
        }
        LocalDateTime first = date1904 ? LocalDateTime.of(1904, 1, 1, 0, 0) : LocalDateTime.of(1899, 12, 30, 0, 0);
        LocalDateTime time = first.plus(minutes, ChronoUnit.MINUTES);
        String clock = String.format(Locale.ROOT, " %02d:%02d", time.getHour(), time.getMinute());
        return time.toLocalDate() + (minutes % (24 * 60) == 0 ? "" : clock);
    }

    static byte[] bytes(Day day) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "Platecall", null)) {
            for (Sheet<?> sheet : DaySheets.ALL) {
                write(sheet, DayEncoder.table(sheet, day), workbook.newWorksheet(sheet.name()));
            }
        } catch (IOException neverInMemory) {
            throw new UncheckedIOException(neverInMemory);
        }
        return bytes.toByteArray();
    }

    private static void write(Sheet<?> sheet, List<List<String>> table, Worksheet worksheet) {
        boolean isDay = sheet == (Object) DaySheets.Facts.SHEET;
        double[] widths = new double[table.get(0).size()];
        for (int row = 0; row < table.size(); row++) {
            for (int column = 0; column < table.get(row).size(); column++) {
                String text = table.get(row).get(column);
                widths[column] = Math.max(widths[column], Math.min(WIDEST, text.length() + 2));
                Grammar.Json form = isDay
                        ? sheet.columns().get(Math.max(0, row - 1)).grammar().json()
                        : sheet.columns().get(column).grammar().json();
                boolean number = row > 0
                        && !(isDay && column == 0)
                        && (form == Grammar.Json.WHOLE_NUMBER || form == Grammar.Json.NUMBER)
                        && isExactNumber(text);
                if (number) {
                    worksheet.value(row, column, new BigDecimal(text));
                } else if (!text.isEmpty()) {
                    worksheet.value(row, column, text);
                }
            }
        }
        worksheet.range(0, 0, 0, widths.length - 1).style().bold().set();
        worksheet.freezePane(0, 1);
        for (int column = 0; column < widths.length; column++) {
            worksheet.width(column, widths[column]);
        }
    }

    /** Whether a spreadsheet, which keeps 15 digits, shows the same number again. */
    private static boolean isExactNumber(String text) {
        return text.matches("-?[0-9.]{1,15}");
    }
}
