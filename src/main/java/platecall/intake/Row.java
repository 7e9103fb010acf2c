package platecall.intake;

import java.util.Map;

/** The values of one row, each by its column. */
final class Row {

    private final Map<Column<?, ?>, Object> values;

    Row(Map<Column<?, ?>, Object> values) {
        this.values = values;
    }

    @SuppressWarnings("unchecked")
    <V> V get(Column<?, V> column) {
        return (V) values.get(column);
    }
}
