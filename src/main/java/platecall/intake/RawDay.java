package platecall.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** All sheets of a day as they stand in a file, whatever the format. */
final class RawDay {

    /** Most rows that a sheet may have. */
    static final int MOST_ROWS = 20_000;

    private final String rowWord;
    private final boolean closed;
    private final Map<String, RawSheet> sheets = new LinkedHashMap<>();
    private final Set<String> found = new HashSet<>();
    private final List<String> strangers = new ArrayList<>();

    /**
     * @param rowWord what a row is called in this format
     * @param closed whether a sheet by an unknown name is wrong in any case, not only if it may be a slip
     */
    RawDay(String rowWord, boolean closed) {
        this.rowWord = rowWord;
        this.closed = closed;
    }

    /** The same sheets, to be changed without changing these. */
    RawDay copy() {
        RawDay copy = new RawDay(rowWord, closed);
        copy.sheets.putAll(sheets);
        copy.found.addAll(found);
        copy.strangers.addAll(strangers);
        return copy;
    }

    String rowWord() {
        return rowWord;
    }

    boolean isClosed() {
        return closed;
    }

    /**
     * Notes that there is a sheet of this name, readable or not.
     *
     * @return whether it is one of a day's sheets, and the first of its name
     */
    boolean find(String name, Troubles troubles) {
        String normal = Names.normal(name);
        if (DaySheets.ALL.stream().noneMatch(sheet -> sheet.name().equals(normal))) {
            strangers.add(name);
            return false;
        }
        if (!found.add(normal)) {
            troubles.aboutSheet(normal, "is there twice", "Maybe remove one of the two.");
            return false;
        }
        return true;
    }

    void add(RawSheet sheet) {
        sheets.put(sheet.name(), sheet);
    }

    boolean found(String name) {
        return found.contains(name);
    }

    /** The sheet, or null if there is none, or none that could be read. */
    RawSheet sheet(String name) {
        return sheets.get(name);
    }

    /** Names that belong to none of a day's sheets. */
    List<String> strangers() {
        return strangers;
    }
}
