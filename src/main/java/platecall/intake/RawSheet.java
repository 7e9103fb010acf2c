package platecall.intake;

import java.util.List;

/**
 * A sheet as it stands in a file, whatever the format: text in cells.
 *
 * @param name of the sheet
 * @param header names of the columns as written
 * @param rows the rows below it that have any text in them
 * @param decimalComma whether {@code 1,5} is a number in it
 */
record RawSheet(String name, List<String> header, List<RawRow> rows, boolean decimalComma) {

    /**
     * A row.
     *
     * @param number by which the file's user knows it
     * @param cells may be fewer than there are columns; null for one that can't be read, which has been told
     */
    record RawRow(int number, List<String> cells) {

        /** The cell's text; empty if the row is shorter, null if it can't be read and that has been told. */
        String cell(int column) {
            return column < cells.size() ? cells.get(column) : "";
        }
    }
}
