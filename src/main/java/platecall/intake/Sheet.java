package platecall.intake;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import platecall.day.Day;

/**
 * The one description of a sheet, from which all formats are read and written, and the schema and the guide are made.
 *
 * @param name as in the file
 * @param required whether a day must have it
 * @param oneRowIs what a row is, in a stylist's words
 * @param rows the records of a day, one a row
 * @param columns in the order in which they are written
 * @param ascending columns of numbers that must not fall from one to the next, blank cells left out
 * @param build from the values of a row to its record; may throw {@link IllegalArgumentException} with a sentence
 */
record Sheet<R>(
        String name,
        boolean required,
        String oneRowIs,
        Function<Day, List<R>> rows,
        List<Column<R, ?>> columns,
        List<List<Column<R, ?>>> ascending,
        Function<Row, R> build) {

    /** A sheet of which no column depends on another. */
    Sheet(
            String name,
            boolean required,
            String oneRowIs,
            Function<Day, List<R>> rows,
            List<Column<R, ?>> columns,
            Function<Row, R> build) {
        this(name, required, oneRowIs, rows, columns, List.of(), build);
    }

    /** The same with columns of whole numbers that must not fall from one to the next. */
    Sheet<R> ascending(List<Column<R, ?>> more) {
        List<List<Column<R, ?>>> all =
                Stream.concat(ascending.stream(), Stream.of(more)).toList();
        return new Sheet<>(name, required, oneRowIs, rows, columns, all, build);
    }

    Optional<Column<R, ?>> column(String columnName) {
        return columns.stream()
                .filter(column -> column.name().equals(columnName))
                .findFirst();
    }

    List<String> columnNames() {
        return columns.stream().map(column -> column.name()).toList();
    }
}
