package platecall.safety;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import platecall.units.FactFile;

/** Reads this package's data files: one fact a line with its edition and source; {@code #} begins a comment. */
final class SourcedCsv {

    private SourcedCsv() {}

    static List<CSVRecord> rows(String file) {
        return FactFile.rows(SourcedCsv.class, file);
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
