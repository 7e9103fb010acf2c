package platecall.looks;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads this package's data files: one fact a line with its source, lines that begin with {@code #} are comments. */
final class CommentedCsv {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreSurroundingSpaces(true)
            .setIgnoreEmptyLines(true)
            .get();

    private CommentedCsv() {}

    static List<CSVRecord> rows(String file) {
        try (InputStream stream = CommentedCsv.class.getResourceAsStream(file)) {
            return FORMAT.parse(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
