package platecall.safety;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads this package's data files: one fact a line with its edition and source; {@code #} begins a comment. */
final class SourcedCsv {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreSurroundingSpaces(true)
            .setIgnoreEmptyLines(true)
            .get();

    private SourcedCsv() {}

    static List<CSVRecord> rows(String file) {
        try (InputStream stream = SourcedCsv.class.getResourceAsStream(file)) {
            return FORMAT.parse(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rows that hold for a profile. */
    static List<CSVRecord> rows(String file, String profile) {
        return rows(file).stream()
                .filter(row -> list(row.get("profiles")).contains(profile))
                .toList();
    }

    static List<String> list(String cell) {
        return cell.isEmpty() ? List.of() : Arrays.asList(cell.split(";"));
    }

    static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }
}
