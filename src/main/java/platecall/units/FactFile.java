package platecall.units;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads the data files that come with Platecall: one fact a line with its source; {@code #} begins a comment. */
public final class FactFile {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreSurroundingSpaces(true)
            .setIgnoreEmptyLines(true)
            .get();

    private FactFile() {}

    /**
     * The facts of a file.
     *
     * @param beside a class of the package in which the file lies
     */
    public static List<CSVRecord> rows(Class<?> beside, String file) {
        try (InputStream stream = beside.getResourceAsStream(file)) {
            return FORMAT.parse(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
