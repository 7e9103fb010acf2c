package platecall.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Spelling;
import platecall.day.Trouble;

/**
 * A day with something readable in place of what can't be read, so that one report can tell misspelt names as well. Only
 * what its names say may be believed, and nothing about the mended cells.
 */
final class MendedDay {

    /** The first may bring to light what could not be built before. */
    private static final int MOST_ROUNDS = 5;

    /** Columns that others refer to: without them nothing can be said of the others. */
    private static final Map<String, Set<String>> DEFINING = Map.of(
            "setups", Set.of("setup"),
            "dishes", Set.of("dish"),
            "steps", Set.of("dish", "step"),
            "stations", Set.of("station", "kind"),
            "circuits", Set.of("circuit"),
            "people", Set.of("person"),
            "cast", Set.of("who"),
            "places", Set.of("place"));

    /** Columns that name things; the others of a row may be blanked so that its numbers go together again. */
    private static final Set<String> NAMING = Set.of(
            "setup",
            "dish",
            "stage",
            "step",
            "after",
            "any time after",
            "station",
            "kind",
            "waits in",
            "held in",
            "place",
            "circuit",
            "person",
            "who",
            "eaten by",
            "ingredient",
            "property",
            "allergens",
            "allergies",
            "diet",
            "edible",
            "release",
            "away",
            "walk",
            "part",
            "skill",
            "skills");

    /** What a food budget is held against. */
    private static final Set<String> PRICING =
            Set.of("food budget", "cost", "copies", "plates per take", "use", "stage", "step", "after");

    private record Cell(String sheet, int row, String column) {}

    private final Day day;
    private final Set<Cell> mended;

    private MendedDay(Day day, Set<Cell> mended) {
        this.day = day;
        this.mended = mended;
    }

    Day day() {
        return day;
    }

    /** Whether a trouble found in the mended day is there in the file too. */
    boolean vouchesFor(Trouble trouble) {
        return !dependsOnMended(trouble)
                && mended.stream()
                        .noneMatch(cell -> cell.sheet().equals(trouble.sheet())
                                && (cell.row() == trouble.row() || cell.row() < 0)
                                && (cell.column().equals(trouble.column())
                                        || trouble.column().isEmpty()
                                        || NAMING.contains(cell.column())));
    }

    /** Whether what is mended elsewhere may have made the trouble. */
    private boolean dependsOnMended(Trouble trouble) {
        if (trouble.sheet().equals("looks") && trouble.row() >= 0) {
            return mendedLook(day.looks().get(trouble.row()).dish());
        }
        return switch (trouble.column()) {
            case "look" -> mended.stream().anyMatch(cell -> cell.sheet().equals("looks"));
            case "eaten by" ->
                mended.stream()
                        .anyMatch(cell -> cell.sheet().equals("ingredients")
                                && cell.column().equals("dish"));
            case "food budget" -> mended.stream().anyMatch(cell -> PRICING.contains(cell.column()));
            default -> false;
        };
    }

    /** Whether the look of a dish, or what it is worked out from, is mended. */
    private boolean mendedLook(String dish) {
        return mended.stream()
                .anyMatch(cell -> cell.sheet().equals("dishes")
                                && cell.column().equals("look")
                                && (cell.row() < 0
                                        || day.dishes().get(cell.row()).id().equals(dish))
                        || cell.sheet().equals("looks")
                                && (cell.row() < 0
                                        || day.looks().get(cell.row()).dish().equals(dish)));
    }

    /** The day, unless names that others refer to are among what can't be read. */
    static Optional<MendedDay> of(String file, RawDay raw, List<Trouble> troubles) {
        Set<Cell> mended = new HashSet<>();
        RawDay copy = raw.copy();
        List<Trouble> left = troubles;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            for (Trouble trouble : left) {
                if (!mend(copy, trouble, mended)) {
                    return Optional.empty();
                }
            }
            try {
                return Optional.of(new MendedDay(
                        DayDecoder.decode(file, copy, new Troubles()).day(), mended));
            } catch (BadDay still) {
                left = still.troubles();
            }
        }
        return Optional.empty();
    }

    private static boolean mend(RawDay raw, Trouble trouble, Set<Cell> mended) {
        RawSheet found = raw.sheet(trouble.sheet());
        Optional<Sheet<?>> sheet = DaySheets.ALL.stream()
                .filter(each -> each.name().equals(trouble.sheet()))
                .findFirst();
        if (found == null || sheet.isEmpty() || trouble.column().isEmpty()) {
            return false;
        }
        if (sheet.get() == DaySheets.Facts.SHEET) {
            return mendKey(raw, found, trouble.column(), mended);
        }
        Optional<? extends Column<?, ?>> column = sheet.get().column(trouble.column());
        if (trouble.row() >= 0) {
            return column.isPresent() && mendCell(raw, found, trouble.row(), sheet.get(), column.get(), mended);
        }
        return column.isPresent()
                ? addColumn(raw, found, column.get(), mended)
                : renameColumn(raw, found, trouble.column(), sheet.get());
    }

    private static boolean mendKey(RawDay raw, RawSheet found, String key, Set<Cell> mended) {
        mended.add(new Cell(found.name(), -1, key));
        Optional<Column<platecall.day.DayFacts, ?>> column = DaySheets.Facts.SHEET.column(key);
        List<String> header = found.header().stream().map(Names::normal).toList();
        int keys = header.indexOf("key");
        int values = header.indexOf("value");
        if (keys < 0 || values < 0) {
            return false;
        }
        List<RawSheet.RawRow> rows = new ArrayList<>(found.rows());
        rows.removeIf(row -> row.cell(keys) != null
                && (Names.withoutUnit(row.cell(keys)).equals(key)
                        || row.cell(keys).strip().equals(key)));
        if (column.isPresent() && column.get().required()) {
            List<String> cells = new ArrayList<>(header.stream().map(name -> "").toList());
            cells.set(keys, key);
            cells.set(values, column.get().example());
            rows.add(new RawSheet.RawRow(0, cells));
        }
        raw.add(new RawSheet(found.name(), found.header(), rows, found.decimalComma()));
        return true;
    }

    /** Blanks a cell, or gives it its column's example if it must be filled; the second time, all cells of the row that name nothing. */
    private static boolean mendCell(
            RawDay raw, RawSheet found, int row, Sheet<?> sheet, Column<?, ?> mending, Set<Cell> mended) {
        if (DEFINING.getOrDefault(found.name(), Set.of()).contains(mending.name())) {
            return false;
        }
        boolean again = !mended.add(new Cell(found.name(), row, mending.name()));
        List<String> header = found.header().stream().map(Names::withoutUnit).toList();
        RawSheet.RawRow better = found.rows().get(row);
        for (Column<?, ?> column : sheet.columns()) {
            int place = header.indexOf(column.name());
            boolean along = again && !NAMING.contains(column.name());
            if (place >= 0 && (column == mending || along && mended.add(new Cell(found.name(), row, column.name())))) {
                boolean missing = column == mending && "".equals(better.cell(place));
                better = with(better, place, column.required() || missing ? column.example() : "");
            }
        }
        List<RawSheet.RawRow> rows = new ArrayList<>(found.rows());
        rows.set(row, better);
        raw.add(new RawSheet(found.name(), found.header(), rows, found.decimalComma()));
        return true;
    }

    private static boolean addColumn(RawDay raw, RawSheet found, Column<?, ?> column, Set<Cell> mended) {
        boolean twice = found.header().stream().map(Names::withoutUnit).anyMatch(column.name()::equals);
        if (twice || DEFINING.getOrDefault(found.name(), Set.of()).contains(column.name())) {
            return false;
        }
        mended.add(new Cell(found.name(), -1, column.name()));
        List<String> header = new ArrayList<>(found.header());
        header.add(column.name());
        List<RawSheet.RawRow> rows = found.rows().stream()
                .map(row -> with(row, found.header().size(), column.example()))
                .toList();
        raw.add(new RawSheet(found.name(), header, rows, found.decimalComma()));
        return true;
    }

    /** A column by the name that was meant, or by none and empty. */
    private static boolean renameColumn(RawDay raw, RawSheet found, String written, Sheet<?> sheet) {
        int place = found.header().stream().map(String::strip).toList().indexOf(written);
        if (place < 0) {
            return false;
        }
        Optional<String> meant = Spelling.nearest(Names.withoutUnit(written), sheet.columnNames());
        List<String> header = new ArrayList<>(found.header());
        header.set(place, meant.orElse(""));
        List<RawSheet.RawRow> rows = meant.isPresent()
                ? found.rows()
                : found.rows().stream().map(row -> with(row, place, "")).toList();
        raw.add(new RawSheet(found.name(), header, rows, found.decimalComma()));
        return true;
    }

    private static RawSheet.RawRow with(RawSheet.RawRow row, int place, String text) {
        List<String> cells = new ArrayList<>(row.cells());
        while (cells.size() <= place) {
            cells.add("");
        }
        cells.set(place, text);
        return new RawSheet.RawRow(row.number(), cells);
    }
}
