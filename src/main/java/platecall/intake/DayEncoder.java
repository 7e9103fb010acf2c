package platecall.intake;

import java.util.ArrayList;
import java.util.List;
import platecall.day.Day;

/** From the records of a day to text in cells. */
final class DayEncoder {

    private DayEncoder() {}

    /** The rows of a sheet, each with a cell for each column; the sheet {@code day} has one row. */
    static <R> List<List<String>> cells(Sheet<R> sheet, Day day) {
        Frame frame = new Frame(day.facts().date(), day.facts().zone(), true, false);
        List<List<String>> rows = new ArrayList<>();
        for (R record : sheet.rows().apply(day)) {
            rows.add(sheet.columns().stream()
                    .map(column -> column.write(record, frame))
                    .toList());
        }
        return rows;
    }

    /** The sheet as a table with its header on top; the sheet {@code day} has its keys below each other. */
    static <R> List<List<String>> table(Sheet<R> sheet, Day day) {
        List<List<String>> table = new ArrayList<>();
        List<String> headers = sheet.columns().stream().map(Column::header).toList();
        if (sheet == (Object) DaySheets.Facts.SHEET) {
            List<String> values = cells(sheet, day).get(0);
            table.add(List.of("key", "value"));
            for (int i = 0; i < headers.size(); i++) {
                table.add(List.of(headers.get(i), values.get(i)));
            }
        } else {
            table.add(headers);
            table.addAll(cells(sheet, day));
        }
        return table;
    }
}
