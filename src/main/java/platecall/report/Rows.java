package platecall.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Rows of comma-separated values as RFC 4180 has them: UTF-8, CRLF, quotes where needed. */
final class Rows {

    private final StringBuilder text = new StringBuilder();
    private final CSVPrinter printer;

    Rows(String... header) {
        try {
            printer = new CSVPrinter(text, CSVFormat.RFC4180);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        add((Object[]) header);
    }

    /** Adds a row; text is guarded, whole numbers are written as they are. */
    void add(Object... cells) {
        List<Object> guarded = new ArrayList<>();
        for (Object cell : cells) {
            guarded.add(cell instanceof Integer ? cell : harmless(cell.toString()));
        }
        try {
            printer.printRecord(guarded);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The cell, with an apostrophe before it if a spreadsheet would take it for a formula. */
    static String harmless(String cell) {
        return !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }

    byte[] bytes() {
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
