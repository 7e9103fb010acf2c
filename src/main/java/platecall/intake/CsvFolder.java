package platecall.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import platecall.day.Day;

/**
 * A day as a folder with a CSV file for each sheet. Reads UTF-8 with or without a byte-order mark, any line end, and
 * commas, semicolons or tabs as separators; writes RFC 4180 with commas and LF.
 */
final class CsvFolder {

    private static final String ENDING = ".csv";
    private static final char[] SEPARATORS = {',', ';', '\t'};

    /** What may help if a cell stands to the right of the last column. */
    static final String STRAY_CELL = "Maybe a cell with the separator in it is not in quotation marks.";

    private static final int LONGEST_HEADER = 4000;

    /** Endings of files that nobody takes for a sheet. */
    private static final Set<String> NO_TABLES = Set.of(
            "md", "html", "htm", "pdf", "png", "jpg", "jpeg", "gif", "svg", "webp", "heic", "tif", "tiff", "bmp");

    /** What Platecall itself writes beside sheets if it is told to. */
    private static final Set<String> PAPERS = Set.of("plan.json", "sequence.csv", "readiness.csv", "changes.csv");

    private static final Pattern README = Pattern.compile("readme(\\.[a-z]*)?", Pattern.CASE_INSENSITIVE);

    private CsvFolder() {}

    static RawDay read(Path folder, Troubles troubles) throws IOException {
        RawDay day = new RawDay("row", STRAY_CELL, false);
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.sorted().toList();
        }
        long left = DayFiles.MOST_BYTES;
        for (Path file : files) {
            String fileName = file.getFileName().toString();
            boolean csv = fileName.toLowerCase(Locale.ROOT).endsWith(ENDING);
            String name = csv ? fileName.substring(0, fileName.length() - ENDING.length()) : fileName;
            if (!csv || !DaySheets.isSheet(name)) {
                stranger(file, fileName, csv).ifPresent(day::meet);
                continue;
            }
            if (!day.find(name, troubles)) {
                continue;
            }
            String sheet = Names.normal(name);
            byte[] bytes;
            try {
                bytes = DayFiles.bytes(file, left);
            } catch (IOException unreadable) {
                troubles.aboutSheet(sheet, DayFiles.reason(unreadable), "");
                continue;
            }
            left -= bytes.length;
            String text =
                    text(sheet, bytes, "Maybe save it anew as \"CSV UTF-8\", or send the day as .xlsx.", troubles);
            if (text != null) {
                RawSheet parsed = parse(sheet, text, troubles);
                if (parsed != null) {
                    day.add(parsed);
                }
            }
        }
        return day;
    }

    /** A file that is no sheet of a day; empty if nobody can take it for one. */
    private static Optional<RawDay.Stranger> stranger(Path file, String fileName, boolean csv) {
        int dot = fileName.lastIndexOf('.');
        String ending = dot < 0 ? "" : fileName.substring(dot + 1).toLowerCase(Locale.ROOT);
        boolean hidden = dot == 0 || fileName.startsWith(".") || fileName.startsWith("~");
        if (hidden
                || NO_TABLES.contains(ending)
                || PAPERS.contains(fileName)
                || README.matcher(fileName).matches()
                || !Files.isRegularFile(file)) {
            return Optional.empty();
        }
        String title = dot < 0 ? fileName : fileName.substring(0, dot);
        List<String> header = header(file);
        return Optional.of(new RawDay.Stranger(csv ? title : fileName, title, header, csv && !header.isEmpty()));
    }

    /** The cells of the first line with any text; none if there is none. */
    private static List<String> header(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            String text = new String(in.readNBytes(LONGEST_HEADER), StandardCharsets.UTF_8)
                    .replace("\uFEFF", "")
                    .strip();
            String line = text.lines().findFirst().orElse("");
            return line.isEmpty()
                    ? List.of()
                    : Stream.of(line.split(Pattern.quote(String.valueOf(separator(line)))))
                            .map(cell -> cell.replace("\"", ""))
                            .toList();
        } catch (IOException unreadable) {
            return List.of();
        }
    }

    /** The text of a sheet; null if it is none, which is told with a way out. */
    static String text(String sheet, byte[] bytes, String wayOut, Troubles troubles) {
        int from =
                bytes.length >= 3 && (bytes[0] & 0xFF) == 0xEF && (bytes[1] & 0xFF) == 0xBB && (bytes[2] & 0xFF) == 0xBF
                        ? 3
                        : 0;
        ByteBuffer buffer = ByteBuffer.wrap(bytes, from, bytes.length - from);
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(buffer)
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            int line = 1;
            for (int i = from; i < buffer.position(); i++) {
                line += bytes[i] == '\n' ? 1 : 0;
            }
            troubles.aboutSheet(sheet, "is not UTF-8 text, from line " + line + " on", wayOut);
            return null;
        }
    }

    static RawSheet parse(String sheet, String text, Troubles troubles) {
        char separator = separator(text);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(false)
                .get();
        List<String> header = List.of();
        List<RawSheet.RawRow> rows = new ArrayList<>();
        int number = 0;
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            for (CSVRecord line : parser) {
                number++;
                List<String> cells = line.toList();
                if (cells.stream().allMatch(String::isBlank)) {
                    continue;
                }
                if (header.isEmpty()) {
                    header = cells;
                } else if (rows.size() < RawDay.MOST_ROWS) {
                    rows.add(new RawSheet.RawRow(number, cells));
                } else {
                    troubles.aboutSheet(sheet, "has more than " + RawDay.MOST_ROWS + " rows", "");
                    return null;
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException malformed) {
            troubles.aboutSheet(
                    sheet,
                    "row " + (number + 1)
                            + " is not CSV: a quotation mark is opened and not closed, or stands inside a cell",
                    "Maybe double each quotation mark that belongs to the text.");
            return null;
        }
        return new RawSheet(sheet, header, rows, separator != ',');
    }

    /** The separator that stands most often in the first line that has any text, outside quotation marks. */
    private static char separator(String text) {
        int[] counts = new int[SEPARATORS.length];
        boolean quoted = false;
        boolean any = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (!quoted && any && (c == '\n' || c == '\r')) {
                break;
            }
            quoted ^= c == '"';
            any |= !Character.isWhitespace(c);
            for (int s = 0; s < SEPARATORS.length && !quoted; s++) {
                counts[s] += c == SEPARATORS[s] ? 1 : 0;
            }
        }
        int most = 0;
        for (int s = 1; s < SEPARATORS.length; s++) {
            most = counts[s] > counts[most] ? s : most;
        }
        return SEPARATORS[most];
    }

    /** The files of a day by name. */
    static Map<String, byte[]> files(Day day) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        CSVFormat format = CSVFormat.RFC4180.builder().setRecordSeparator("\n").get();
        for (Sheet<?> sheet : DaySheets.ALL) {
            StringBuilder text = new StringBuilder();
            try (CSVPrinter printer = new CSVPrinter(text, format)) {
                for (List<String> row : DayEncoder.table(sheet, day)) {
                    printer.printRecord(row);
                }
            } catch (IOException neverFromMemory) {
                throw new UncheckedIOException(neverFromMemory);
            }
            files.put(sheet.name() + ENDING, text.toString().getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }
}
