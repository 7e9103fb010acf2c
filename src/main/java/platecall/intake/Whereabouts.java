package platecall.intake;

import java.util.List;
import java.util.Map;
import platecall.day.Trouble;

/**
 * Where the records of a day stand in its file, so that a trouble can be told with its true row.
 *
 * @param file name of the file or folder
 * @param rowWord what a row is called: a row, or an item of an array in JSON
 * @param rows for each sheet the row numbers of its records in the order of the sheet
 * @param keys row number of each key of the sheet {@code day}
 */
record Whereabouts(String file, String rowWord, Map<String, List<Integer>> rows, Map<String, Integer> keys) {

    private static final int LONGEST_VALUE = 60;

    /** For a file of which nothing could be read. */
    static Whereabouts of(String file) {
        return new Whereabouts(file, "row", Map.of(), Map.of());
    }

    /** Row number in the file of record {@code index} of a sheet, counted from 0; 0 if it has none. */
    int fileRow(String sheet, int index) {
        List<Integer> numbers = rows.getOrDefault(sheet, List.of());
        return index >= 0 && index < numbers.size() ? numbers.get(index) : 0;
    }

    /** The trouble in one line: file, sheet, row, column, value, what is wrong, and what may help. */
    String tell(Trouble trouble) {
        boolean isDay = trouble.sheet().equals("day");
        int row = isDay ? keys.getOrDefault(trouble.column(), 0) : fileRow(trouble.sheet(), trouble.row());
        StringBuilder line = new StringBuilder(file);
        if (!trouble.sheet().isEmpty()) {
            line.append(", sheet ").append(trouble.sheet());
        }
        if (row > 0) {
            line.append(", ").append(rowWord).append(' ').append(row);
        }
        if (!trouble.column().isEmpty()) {
            line.append(isDay ? ", key \"" : ", column \"")
                    .append(printable(trouble.column()))
                    .append('"');
        }
        line.append(": ");
        if (!trouble.value().isEmpty()) {
            line.append('[').append(printable(trouble.value())).append("] ");
        }
        line.append(sentence(trouble.what()));
        if (!trouble.wayOut().isEmpty()) {
            line.append(' ').append(sentence(trouble.wayOut()));
        }
        return line.toString();
    }

    private static String sentence(String text) {
        String line = text.replaceAll("\\p{Cntrl}", " ");
        return line.endsWith(".") || line.endsWith("!") || line.endsWith("?") ? line : line + ".";
    }

    /** Short, and free of anything that a terminal would obey. */
    private static String printable(String text) {
        String line = text.replaceAll("[\\p{Cntrl}\\p{Cf}]", " ");
        return line.length() <= LONGEST_VALUE ? line : line.substring(0, LONGEST_VALUE) + "...";
    }
}
