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

    /**
     * Something beside a day's sheets that is none of them.
     *
     * @param name as its user knows it
     * @param title the name without an ending that belongs to its format
     * @param header its first row, if it is a table
     * @param table whether it may be a sheet of a day by another name: a table with something in it
     */
    record Stranger(String name, String title, List<String> header, boolean table) {}

    private record Place(String sheet, int row, int column) {}

    private final String rowWord;
    private final String strayCell;
    private final boolean closed;
    private final Map<String, RawSheet> sheets = new LinkedHashMap<>();
    private final Set<String> found = new HashSet<>();
    private final List<Stranger> strangers = new ArrayList<>();
    private final Set<Place> times = new HashSet<>();

    /**
     * @param rowWord what a row is called in this format
     * @param strayCell what may help if a cell stands to the right of the last column
     * @param closed whether a sheet by an unknown name is wrong in any case, not only if it may be a slip
     */
    RawDay(String rowWord, String strayCell, boolean closed) {
        this.rowWord = rowWord;
        this.strayCell = strayCell;
        this.closed = closed;
    }

    /** The same sheets, to be changed without changing these. */
    RawDay copy() {
        RawDay copy = new RawDay(rowWord, strayCell, closed);
        copy.sheets.putAll(sheets);
        copy.found.addAll(found);
        copy.strangers.addAll(strangers);
        return copy;
    }

    String rowWord() {
        return rowWord;
    }

    String strayCell() {
        return strayCell;
    }

    boolean isClosed() {
        return closed;
    }

    /**
     * Notes that there is a sheet of this name, readable or not.
     *
     * @return whether it is the first of its name
     */
    boolean find(String name, Troubles troubles) {
        String normal = Names.normal(name);
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

    /** Names of all sheets there are, readable or not. */
    Set<String> found() {
        return found;
    }

    /** The sheet, or null if there is none, or none that could be read. */
    RawSheet sheet(String name) {
        return sheets.get(name);
    }

    /** Notes something that is none of a day's sheets. */
    void meet(Stranger stranger) {
        strangers.add(stranger);
    }

    /** What lies there and is none of a day's sheets. */
    List<Stranger> strangers() {
        return strangers;
    }

    /** Notes that a spreadsheet keeps a cell as a date or a time, whatever was typed there. */
    void noteTime(String sheet, int row, int column) {
        times.add(new Place(sheet, row, column));
    }

    boolean isTime(String sheet, int row, int column) {
        return times.contains(new Place(sheet, row, column));
    }
}
