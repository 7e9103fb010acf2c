package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import platecall.day.Day;

/** Ranges stand in the columns, which can tell the cell, and in the records, which nobody gets past: they are the same. */
class RangesTest {

    private static final Day INN = DayFiles.read(SheetFolder.INN).day();
    private static final Frame FRAME = new Frame(INN.facts().date(), INN.facts().zone(), true, false);

    @Test
    void columnAndRecordTakeTheSameNumbers() {
        List<String> told = new ArrayList<>();
        DaySheets.ALL.forEach(sheet -> compare(sheet, told));
        assertThat(told).hasSizeGreaterThan(150).allMatch(each -> each.endsWith(": both"));
    }

    /** Tries the ends of each range, and the numbers just inside and just outside of them. */
    private static <R> void compare(Sheet<R> sheet, List<String> told) {
        for (Column<R, ?> column : sheet.columns()) {
            if (!hasRange(column)) {
                continue;
            }
            boolean whole = column.grammar().json() == Grammar.Json.WHOLE_NUMBER;
            BigDecimal step = whole ? BigDecimal.ONE : new BigDecimal("0.001");
            for (String end : List.of(column.range().least(), column.range().most())) {
                BigDecimal number = new BigDecimal(end.replace(" %", ""));
                for (BigDecimal each : List.of(number.subtract(step), number, number.add(step))) {
                    String text = end.endsWith("%") ? each.toPlainString() + " %" : each.toPlainString();
                    boolean cell = columnTakes(column, text);
                    boolean row = recordTakes(sheet, column, text, false) || recordTakes(sheet, column, text, true);
                    told.add(sheet.name() + ", " + column.name() + " " + text + ": "
                            + (cell == row ? "both" : cell ? "only the column takes it" : "only the record takes it"));
                }
            }
        }
    }

    @Test
    void everyColumnOfNumbersHasARange() {
        for (Sheet<?> sheet : DaySheets.ALL) {
            for (Column<?, ?> column : sheet.columns()) {
                Grammar.Json json = column.grammar().json();
                boolean number = json == Grammar.Json.WHOLE_NUMBER || json == Grammar.Json.NUMBER;
                boolean money = column.grammar().noun().equals(Grammars.MONEY.noun());
                assertThat(hasRange(column)).as(column.name()).isEqualTo(number && !money);
            }
        }
    }

    @Test
    void whatMustNotFallIsRefusedByTheRecordToo() {
        DaySheets.ALL.forEach(RangesTest::fall);
        assertThat(DaySheets.ALL.stream()
                        .mapToInt(sheet -> sheet.ascending().size())
                        .sum())
                .isEqualTo(6);
    }

    private static <R> void fall(Sheet<R> sheet) {
        for (List<Column<R, ?>> ascending : sheet.ascending()) {
            for (int i = 1; i < ascending.size(); i++) {
                Map<Column<R, ?>, String> level = Map.of(ascending.get(i - 1), "4", ascending.get(i), "4");
                Map<Column<R, ?>, String> falling = Map.of(ascending.get(i - 1), "5", ascending.get(i), "4");
                assertThat(recordTakes(sheet, falling)).as("%s", falling).isFalse();
                assertThat(ascending.size() > 2 || recordTakes(sheet, level))
                        .as("%s", level)
                        .isTrue();
            }
        }
    }

    private static boolean hasRange(Column<?, ?> column) {
        return !column.range().least().isEmpty();
    }

    private static boolean columnTakes(Column<?, ?> column, String text) {
        try {
            column.read(text, FRAME, () -> Column.Between.ANY);
            return true;
        } catch (Unreadable refused) {
            return false;
        }
    }

    /**
     * Whether some record of the inn can have that number.
     *
     * @param along whether all its other numbers that may be as large become so too, for those that must not fall
     */
    private static <R> boolean recordTakes(Sheet<R> sheet, Column<R, ?> column, String text, boolean along) {
        return recordTakes(
                sheet,
                sheet.columns().stream()
                        .filter(each -> each == column || along && hasRange(each) && columnTakes(each, text))
                        .collect(Collectors.toMap(each -> each, each -> text)));
    }

    /** Whether some record of the inn can have these cells instead of its own. */
    private static <R> boolean recordTakes(Sheet<R> sheet, Map<Column<R, ?>, String> cells) {
        return sheet.rows().apply(INN).stream().anyMatch(row -> {
            Map<Column<?, ?>, Object> values = new IdentityHashMap<>();
            for (Column<R, ?> each : sheet.columns()) {
                String text = cells.get(each);
                values.put(
                        each,
                        text == null
                                ? each.get().apply(row)
                                : each.grammar().reader().apply(text, FRAME));
            }
            try {
                sheet.build().apply(new Row(values));
                return true;
            } catch (IllegalArgumentException refused) {
                return false;
            }
        });
    }
}
