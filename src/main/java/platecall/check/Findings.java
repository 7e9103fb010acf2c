package platecall.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import platecall.day.Trouble;

/** Collects what is found, each thing once, and tells it in sheet and row order. */
final class Findings {

    private static final List<String> SHEETS =
            java.util.Arrays.stream(Sheet.values()).map(Sheet::word).toList();

    private final Set<Trouble> found = new LinkedHashSet<>();

    /**
     * @param value what stands in the cell; empty if the sentence does not begin with it
     * @param what goes on after the value: {@code is not in sheet dishes}
     * @param wayOut begins with "Maybe" or "Did you mean"
     */
    void add(Sheet sheet, int row, String column, String value, String what, String wayOut) {
        found.add(new Trouble(sheet.word(), row, column, value, what, wayOut));
    }

    void addAll(List<Trouble> troubles) {
        found.addAll(troubles);
    }

    int count() {
        return found.size();
    }

    /** Within a row in the order in which they were found. */
    List<Trouble> inSheetOrder() {
        List<Trouble> sorted = new ArrayList<>(found);
        sorted.sort(Comparator.comparingInt((Trouble trouble) -> SHEETS.indexOf(trouble.sheet()))
                .thenComparingInt(Trouble::row));
        return List.copyOf(sorted);
    }
}
