package platecall.intake;

import java.text.Normalizer;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.DayFacts;
import platecall.day.Spelling;
import platecall.day.Trouble;

/** From text in cells to the records of a day, going on after each trouble so that all are told at once. */
final class DayDecoder {

    private static final int LONGEST_CELL = 5000;

    /** Rows above a header, as people write titles there. */
    private static final int MOST_TITLES = 5;

    /** {@code #REF!}, {@code #NAME?}, {@code #N/A} and {@code Err:502}, in whatever language. */
    private static final Pattern FORMULA_ERROR =
            Pattern.compile("#[\\p{Lu}0-9/ ]{2,}[!?]|#N/?[AVD]|#SPILL|Err:[0-9]{3}");

    private static final int FIRST_COMBINING_MARK = 0x300;
    private static final Frame NO_FRAME = new Frame(LocalDate.of(2000, 1, 1), ZoneOffset.UTC, false, false);

    private final RawDay raw;
    private final Troubles troubles;
    private final List<Trouble> remarks = new ArrayList<>();
    private final Map<String, List<Integer>> rowNumbers = new HashMap<>();
    private final Map<String, Integer> keyNumbers = new HashMap<>();
    private Frame frame = NO_FRAME;

    private DayDecoder(RawDay raw, Troubles troubles) {
        this.raw = raw;
        this.troubles = troubles;
    }

    /**
     * @param troubles what is already known to be wrong
     * @throws BadDay if anything is wrong
     */
    static DayFile decode(String file, RawDay raw, Troubles troubles) {
        DayDecoder decoder = new DayDecoder(raw, troubles);
        decoder.lookForStrangers();
        List<DayFacts> facts = decoder.facts();
        Map<Sheet<?>, List<?>> records = new IdentityHashMap<>();
        for (Sheet<?> sheet : DaySheets.ALL) {
            if (sheet != DaySheets.Facts.SHEET) {
                records.put(sheet, decoder.records(sheet));
            }
        }
        Whereabouts whereabouts = new Whereabouts(file, raw.rowWord(), decoder.rowNumbers, decoder.keyNumbers);
        if (!troubles.none()) {
            throw new BadDay(whereabouts, troubles);
        }
        return new DayFile(
                new Day(
                        facts.get(0),
                        of(records, DaySheets.Setups.SHEET),
                        of(records, DaySheets.Needs.SHEET),
                        of(records, DaySheets.Dishes.SHEET),
                        of(records, DaySheets.Looks.SHEET),
                        of(records, DaySheets.Steps.SHEET),
                        of(records, DaySheets.Ingredients.SHEET),
                        of(records, DaySheets.Stations.SHEET),
                        of(records, DaySheets.Circuits.SHEET),
                        of(records, DaySheets.People.SHEET),
                        of(records, DaySheets.Cast.SHEET),
                        of(records, DaySheets.Places.SHEET)),
                whereabouts,
                decoder.remarks);
    }

    /**
     * What was noted on a day.
     *
     * @throws BadDay if anything is wrong
     */
    static <R> NotedFile<R> noted(String file, Sheet<R> sheet, RawSheet found, Day day, Troubles troubles) {
        RawDay raw = new RawDay("row", CsvFolder.STRAY_CELL, false);
        raw.add(found);
        DayDecoder decoder = new DayDecoder(raw, troubles);
        decoder.frame = new Frame(day.facts().date(), day.facts().zone(), true, found.decimalComma());
        List<R> rows = decoder.records(sheet);
        Whereabouts whereabouts = new Whereabouts(file, raw.rowWord(), decoder.rowNumbers, decoder.keyNumbers);
        if (!troubles.none()) {
            throw new BadDay(whereabouts, troubles);
        }
        return new NotedFile<>(rows, whereabouts);
    }

    @SuppressWarnings("unchecked")
    private static <R> List<R> of(Map<Sheet<?>, List<?>> records, Sheet<R> sheet) {
        return (List<R>) records.get(sheet);
    }

    /** What is no sheet: perhaps one that is missing, by another name, or none of ours. */
    private void lookForStrangers() {
        Set<String> missing = new LinkedHashSet<>();
        Set<String> without = new LinkedHashSet<>();
        for (Sheet<?> sheet : DaySheets.ALL) {
            if (!raw.found(sheet.name())) {
                missing.add(sheet.name());
            }
            RawSheet found = raw.sheet(sheet.name());
            if (missing.contains(sheet.name()) || found != null && found.rows().isEmpty()) {
                without.add(sheet.name());
            }
        }
        Set<String> takenFor = new LinkedHashSet<>();
        for (RawDay.Stranger stranger : raw.strangers()) {
            Optional<String> meant = Strangers.meant(stranger, without);
            Optional<String> other = meant.isPresent() ? Optional.empty() : Strangers.meant(stranger, raw.found());
            if (meant.isPresent() || raw.isClosed() || stranger.table() && other.isEmpty() && !missing.isEmpty()) {
                troubles.add(
                        aboutStranger(stranger.name(), "is not a sheet of a day", wayOut(stranger, meant, missing)));
                meant.ifPresent(takenFor::add);
            } else {
                remarks.add(aboutStranger(
                        stranger.name(),
                        "is not a sheet of a day, so it is not read"
                                + other.map(name -> "; " + name + " is").orElse(""),
                        "Maybe put it elsewhere."));
            }
        }
        for (Sheet<?> sheet : DaySheets.ALL) {
            if (sheet.required() && missing.contains(sheet.name()) && !takenFor.contains(sheet.name())) {
                troubles.aboutSheet(
                        sheet.name(), "this sheet is missing", "Each row of it is " + sheet.oneRowIs() + ".");
            }
        }
    }

    private static Trouble aboutStranger(String name, String what, String wayOut) {
        return new Trouble("", -1, "", name, what, wayOut);
    }

    private String wayOut(RawDay.Stranger stranger, Optional<String> meant, Set<String> missing) {
        if (meant.isPresent()) {
            return stranger.name().equals(stranger.title()) && !DaySheets.isSheet(stranger.name())
                    ? "Did you mean " + meant.get() + "?"
                    : "Maybe save it as " + meant.get() + ".csv.";
        }
        return raw.isClosed()
                ? "Maybe one of "
                        + names(DaySheets.ALL.stream().map(Sheet::name).toList()) + "."
                : "Maybe it is one of those that are missing (" + names(missing)
                        + ") and must have that name; if not, put it elsewhere.";
    }

    private static String names(Collection<String> sheets) {
        return String.join(", ", sheets);
    }

    private List<DayFacts> facts() {
        Sheet<DayFacts> sheet = DaySheets.Facts.SHEET;
        RawSheet found = raw.sheet(sheet.name());
        if (found == null) {
            return List.of();
        }
        if (toldNoHeader(sheet, found)) {
            return List.of();
        }
        List<String> header = found.header().stream().map(Names::normal).toList();
        if (!header.containsAll(List.of("key", "value"))) {
            troubles.aboutSheet(
                    "day", "must have the columns key and value", "Maybe write key, value in its first row.");
            return List.of();
        }
        Set<String> takenFor = new LinkedHashSet<>();
        Map<String, String> cells = cellsByKey(sheet, found, header, takenFor);
        int before = troubles.count();
        frame = frameOf(cells, found.decimalComma());
        Map<Column<?, ?>, Object> values = new IdentityHashMap<>();
        for (Column<DayFacts, ?> column : sheet.columns()) {
            if (column.required() && !cells.containsKey(column.name())) {
                if (!takenFor.contains(column.name())) {
                    tellMissing("key", sheet, column);
                }
                continue;
            }
            String cell = cells.getOrDefault(column.name(), "");
            read(sheet.name(), -1, column, cell, frame, () -> Column.Between.ANY, values);
        }
        return before == troubles.count() && values.size() == sheet.columns().size() && takenFor.isEmpty()
                ? build(sheet, -1, values, column -> clean(cells, column.name()))
                : List.of();
    }

    /** @param takenFor is given the keys for which others may be mistaken */
    private Map<String, String> cellsByKey(
            Sheet<DayFacts> sheet, RawSheet found, List<String> header, Set<String> takenFor) {
        int key = header.indexOf("key");
        int value = header.indexOf("value");
        Map<String, String> cells = new LinkedHashMap<>();
        for (RawSheet.RawRow row : found.rows()) {
            if (row.cell(key) == null) {
                continue;
            }
            String written = clean(row.cell(key));
            String name = Names.withoutUnit(written);
            if (sheet.column(name).isEmpty()) {
                keyNumbers.put(written, row.number());
                Optional<String> meant = Spelling.nearest(name, sheet.columnNames());
                meant.ifPresent(takenFor::add);
                troubles.add(new Trouble("day", -1, written, "", "there is no such key", didYouMean(meant)));
            } else if (!Names.isUnit(
                    Names.unit(written), sheet.column(name).get().measure())) {
                keyNumbers.put(written, row.number());
                takenFor.add(name);
                troubles.add(otherUnit(sheet, sheet.column(name).get(), written));
            } else if (cells.containsKey(name)) {
                troubles.add(new Trouble("day", -1, name, "", "is there twice", "Maybe remove one of the two."));
            } else {
                cells.put(name, row.cell(value));
                keyNumbers.put(name, row.number());
                lookBeyondHeader(sheet, -1, name, row, header.size());
            }
        }
        return cells;
    }

    private void tellMissing(String what, Sheet<?> sheet, Column<?, ?> column) {
        String missing = "this " + what + " is missing: " + column.meaning();
        troubles.add(new Trouble(sheet.name(), -1, column.name(), "", missing, "Maybe " + column.example() + "."));
    }

    private Frame frameOf(Map<String, String> cells, boolean decimalComma) {
        try {
            LocalDate date = DaySheets.Facts.DATE.grammar().reader().apply(clean(cells, "date"), NO_FRAME);
            ZoneId zone = DaySheets.Facts.ZONE.grammar().reader().apply(clean(cells, "zone"), NO_FRAME);
            return new Frame(date, zone, true, decimalComma);
        } catch (Unreadable toldWithItsCell) {
            return new Frame(NO_FRAME.date(), NO_FRAME.zone(), false, decimalComma);
        }
    }

    private static String clean(Map<String, String> cells, String key) {
        return orBlank(cells.get(key));
    }

    private static String orBlank(String cell) {
        return cell == null ? "" : clean(cell);
    }

    private <R> List<R> records(Sheet<R> sheet) {
        RawSheet found = raw.sheet(sheet.name());
        if (found == null) {
            return List.of();
        }
        rowNumbers.put(
                sheet.name(), found.rows().stream().map(RawSheet.RawRow::number).toList());
        if (found.header().isEmpty()) {
            if (sheet.required()) {
                troubles.aboutSheet(
                        sheet.name(),
                        "is empty, not even a header is in it",
                        "Maybe write a first row: " + String.join(", ", sheet.columnNames()) + ".");
            }
            return List.of();
        }
        if (toldNoHeader(sheet, found)) {
            return List.of();
        }
        Map<Column<R, ?>, Integer> places = new IdentityHashMap<>();
        Set<String> takenFor = new LinkedHashSet<>();
        lookAtHeader(sheet, found, places, takenFor);
        boolean complete = true;
        for (Column<R, ?> column : sheet.columns()) {
            if (column.required() && !places.containsKey(column)) {
                complete = false;
                if (!takenFor.contains(column.name())) {
                    tellMissing("column", sheet, column);
                }
            }
        }
        List<R> records = new ArrayList<>();
        for (int index = 0; index < found.rows().size(); index++) {
            int before = troubles.count();
            Map<Column<?, ?>, Object> values = values(sheet, found, index, places);
            if (complete
                    && before == troubles.count()
                    && values.size() == sheet.columns().size()) {
                RawSheet.RawRow row = found.rows().get(index);
                records.addAll(build(
                        sheet,
                        index,
                        values,
                        column -> places.containsKey(column) ? orBlank(row.cell(places.get(column))) : ""));
            }
        }
        if (sheet.required() && found.rows().isEmpty()) {
            troubles.aboutSheet(sheet.name(), "has no row", "Each row of it is " + sheet.oneRowIs() + ".");
        }
        return records;
    }

    /** What stands in a row, as far as it can be read. */
    private <R> Map<Column<?, ?>, Object> values(
            Sheet<R> sheet, RawSheet found, int index, Map<Column<R, ?>, Integer> places) {
        Frame here = new Frame(frame.date(), frame.zone(), frame.known(), found.decimalComma());
        RawSheet.RawRow row = found.rows().get(index);
        lookBeyondHeader(sheet, index, "", row, found.header().size());
        Map<Column<?, ?>, Object> values = new IdentityHashMap<>();
        for (Column<R, ?> column : sheet.columns()) {
            Integer place = places.get(column);
            if (place != null || !column.required()) {
                String cell = place == null ? "" : row.cell(place);
                read(sheet.name(), index, column, cell, here, () -> between(sheet, column, places, row, here), values);
                if (place != null && cell != null) {
                    lookAtTypedDate(sheet, index, column, place, cell);
                }
            }
        }
        lookAtOrder(sheet, index, values);
        return values;
    }

    /** Spreadsheets make dates of scenes such as 2/1, and keep nothing of what was typed. */
    private void lookAtTypedDate(Sheet<?> sheet, int index, Column<?, ?> column, int place, String cell) {
        String noun = column.grammar().noun();
        boolean words = noun.equals(Grammars.TEXT.noun()) || noun.equals(Grammars.NAME.noun());
        if (words && raw.isTime(sheet.name(), index, place)) {
            remarks.add(new Trouble(
                    sheet.name(),
                    index,
                    column.name(),
                    clean(cell),
                    "is a date or a time in the spreadsheet, maybe not what was typed",
                    "Maybe format the cell as text and type it anew."));
        }
    }

    /** Whether the first row doesn't name columns, but a lower one or none does, which is then told. */
    private boolean toldNoHeader(Sheet<?> sheet, RawSheet found) {
        boolean isDay = sheet == (Object) DaySheets.Facts.SHEET;
        List<String> names = isDay ? List.of("key", "value") : sheet.columnNames();
        long inHeader = known(names, found.header());
        if (raw.isClosed()
                || inHeader > 0 && inHeader * 2 >= filled(found.header()).count()) {
            return false;
        }
        // below titles, or wherever sorting has put it
        Optional<RawSheet.RawRow> low = IntStream.range(0, found.rows().size())
                .filter(index -> {
                    List<String> cells = found.rows().get(index).cells();
                    long known = known(names, cells);
                    return known >= 2
                            && known > 3 * inHeader
                            && (index < MOST_TITLES
                                    || known * 2 >= filled(cells).count());
                })
                .mapToObj(found.rows()::get)
                .findFirst();
        if (low.isPresent()) {
            boolean title = filled(found.header()).count() < 2;
            troubles.aboutSheet(
                    sheet.name(),
                    "has no names of columns in its first row; row " + low.get().number() + " looks like them",
                    title ? "Maybe delete what stands above." : "Maybe make it the first row.");
        } else if (!isDay && looksLikeValues(found.header(), names)) {
            troubles.aboutSheet(
                    sheet.name(),
                    "has no names of columns in its first row",
                    "Maybe the first row was deleted: " + String.join(", ", names) + ".");
            return true;
        }
        return low.isPresent();
    }

    /** Whether hardly a cell of a first row is near to the name of a column, and one is a number or a time, or none is near. */
    private static boolean looksLikeValues(List<String> header, List<String> names) {
        List<String> cells = filled(header).map(Names::withoutUnit).toList();
        long near =
                cells.stream().filter(cell -> meant(cell, names).isPresent()).count();
        boolean numbers = cells.stream().anyMatch(cell -> cell.matches("[0-9]+([.:,-][0-9]+)*"));
        return cells.size() > 1 && (near == 0 || numbers && near * 3 < cells.size());
    }

    private static Stream<String> filled(List<String> cells) {
        return cells.stream().filter(cell -> cell != null && !cell.isBlank());
    }

    private static long known(List<String> names, List<String> cells) {
        return cells.stream()
                .filter(cell -> cell != null && names.contains(Names.withoutUnit(cell)))
                .count();
    }

    private <R> void lookAtHeader(
            Sheet<R> sheet, RawSheet found, Map<Column<R, ?>, Integer> places, Set<String> takenFor) {
        for (int place = 0; place < found.header().size(); place++) {
            String written = clean(found.header().get(place));
            Optional<Column<R, ?>> column = sheet.column(Names.withoutUnit(written));
            if (written.isEmpty()) {
                int nameless = place;
                found.rows().stream()
                        .filter(row -> row.cell(nameless) != null
                                && !row.cell(nameless).isBlank())
                        .findFirst()
                        .ifPresent(row -> troubles.add(new Trouble(
                                sheet.name(),
                                found.rows().indexOf(row),
                                "",
                                clean(row.cell(nameless)),
                                "stands in a column without a name",
                                "Maybe name it in the first row, or empty it.")));
            } else if (column.isEmpty()) {
                Optional<String> meant = meant(Names.withoutUnit(written), sheet.columnNames());
                meant.ifPresent(takenFor::add);
                troubles.add(new Trouble(sheet.name(), -1, written, "", "there is no such column", didYouMean(meant)));
            } else if (!Names.isUnit(Names.unit(written), column.get().measure())) {
                takenFor.add(column.get().name());
                troubles.add(otherUnit(sheet, column.get(), written));
            } else if (places.putIfAbsent(column.get(), place) != null) {
                troubles.add(new Trouble(
                        sheet.name(), -1, column.get().name(), "", "is there twice", "Maybe remove one of the two."));
            }
        }
    }

    /** The column of a name that is nearly it, or that no other column begins with. */
    private static Optional<String> meant(String written, List<String> columns) {
        List<String> longer = columns.stream()
                .filter(column -> column.startsWith(written + " "))
                .toList();
        return Spelling.nearest(written, columns)
                .or(() -> longer.stream().filter(only -> longer.size() == 1).findFirst());
    }

    private static Trouble otherUnit(Sheet<?> sheet, Column<?, ?> column, String written) {
        return new Trouble(
                sheet.name(),
                -1,
                written,
                "",
                "has another unit than " + column.measure() + ", in which it is read",
                "Maybe " + column.name() + " (" + column.measure() + "), with its numbers in that unit.");
    }

    private void lookBeyondHeader(Sheet<?> sheet, int index, String column, RawSheet.RawRow row, int columns) {
        for (int place = columns; place < row.cells().size(); place++) {
            if (row.cell(place) != null && !row.cell(place).isBlank()) {
                troubles.add(new Trouble(
                        sheet.name(),
                        index,
                        column,
                        clean(row.cell(place)),
                        "stands to the right of the last column",
                        raw.strayCell()));
                return;
            }
        }
    }

    /** Tells each number of a row that is below one that it must not be below, whatever else is wrong with the row. */
    private <R> void lookAtOrder(Sheet<R> sheet, int index, Map<Column<?, ?>, Object> values) {
        for (List<Column<R, ?>> ascending : sheet.ascending()) {
            Column<R, ?> highest = null;
            int most = 0;
            for (Column<R, ?> column : ascending) {
                Object value = values.get(column) instanceof Optional<?> some ? some.orElse(null) : values.get(column);
                if (value instanceof Integer number && highest != null && number < most) {
                    troubles.add(new Trouble(
                            sheet.name(),
                            index,
                            column.name(),
                            number.toString(),
                            "must not be below " + highest.name() + ", which is " + most,
                            "Maybe " + most + "."));
                } else if (value instanceof Integer number) {
                    highest = column;
                    most = number;
                }
            }
        }
    }

    /** What the other numbers of a row leave for one that must not be below or above them. */
    private static <R> Column.Between between(
            Sheet<R> sheet, Column<R, ?> column, Map<Column<R, ?>, Integer> places, RawSheet.RawRow row, Frame here) {
        List<Integer> before = new ArrayList<>();
        List<Integer> after = new ArrayList<>();
        for (List<Column<R, ?>> ascending : sheet.ascending()) {
            int at = ascending.indexOf(column);
            for (Column<R, ?> other : at < 0 ? List.<Column<R, ?>>of() : ascending) {
                if (other != column && places.containsKey(other)) {
                    wholeNumber(other, row.cell(places.get(other)), here)
                            .ifPresent(ascending.indexOf(other) < at ? before::add : after::add);
                }
            }
        }
        return new Column.Between(
                before.stream().max(Comparator.naturalOrder()), after.stream().min(Comparator.naturalOrder()));
    }

    private static Optional<Integer> wholeNumber(Column<?, ?> column, String cell, Frame here) {
        try {
            Object value = cell == null || cell.isBlank()
                    ? Optional.empty()
                    : column.read(clean(cell), here, () -> Column.Between.ANY);
            return Optional.ofNullable((Integer) (value instanceof Optional<?> some ? some.orElse(null) : value));
        } catch (Unreadable toldWithItsCell) {
            return Optional.empty();
        }
    }

    private static String didYouMean(Optional<String> meant) {
        return meant.map(name -> "Did you mean " + name + "?").orElse("");
    }

    private <R, V> void read(
            String sheet,
            int index,
            Column<R, V> column,
            String cell,
            Frame here,
            Supplier<Column.Between> others,
            Map<Column<?, ?>, Object> values) {
        if (cell == null) {
            return;
        }
        String text = clean(cell);
        try {
            if (text.isEmpty()) {
                values.put(column, valueOfBlank(column, here, others));
                return;
            }
            lookAtLetters(text);
            values.put(column, column.read(text, here, others));
        } catch (Unreadable unreadable) {
            troubles.add(new Trouble(sheet, index, column.name(), text, unreadable.getMessage(), unreadable.wayOut()));
        } catch (IllegalArgumentException broken) {
            troubles.add(new Trouble(
                    sheet, index, column.name(), "", broken.getMessage(), "Maybe " + column.example() + "."));
        }
    }

    /** What a blank cell stands for; an optional column without a usual value has no value. */
    private static Object valueOfBlank(Column<?, ?> column, Frame here, Supplier<Column.Between> others) {
        if (column.required()) {
            throw column.missing(here, others);
        }
        return column.blank().isPresent()
                ? column.grammar().reader().apply(column.blank().get(), here)
                : Optional.empty();
    }

    private static void lookAtLetters(String text) {
        if (text.length() > LONGEST_CELL) {
            throw new Unreadable("is longer than " + LONGEST_CELL + " letters", "");
        }
        boolean strange = text.codePoints()
                .anyMatch(letter -> letter != '\n' && letter != '\t' && Character.isISOControl(letter)
                        || letter == 0xFFFD
                        || letter == 0xFFFE
                        || letter == 0xFFFF
                        || letter >= Character.MIN_SURROGATE && letter <= Character.MAX_SURROGATE);
        if (strange) {
            throw new Unreadable("has a sign in it that is no letter", "Maybe type it anew.");
        }
        if (FORMULA_ERROR.matcher(text).matches()) {
            throw new Unreadable(
                    "is an error of a spreadsheet's formula", "Maybe mend the formula, or type its value.");
        }
    }

    private <R> List<R> build(
            Sheet<R> sheet, int index, Map<Column<?, ?>, Object> values, Function<Column<R, ?>, String> cells) {
        try {
            return List.of(sheet.build().apply(new Row(values)));
        } catch (IllegalArgumentException broken) {
            String what = broken.getMessage();
            String name = sheet.columnNames().stream()
                    .filter(column -> what.startsWith(column + " "))
                    .max(Comparator.comparingInt(String::length))
                    .orElse("");
            String cell = sheet.column(name).map(cells).orElse("");
            boolean blank = cell.isEmpty();
            // some guards end with the value themselves
            boolean toQuote = !blank && !what.endsWith("]");
            String wayOut = name.isEmpty() || !blank
                    ? ""
                    : "Maybe " + sheet.column(name).orElseThrow().example() + ".";
            troubles.add(new Trouble(
                    sheet.name(),
                    index,
                    name,
                    toQuote ? cell : "",
                    toQuote ? what.substring(name.length() + 1) : what,
                    wayOut));
            return List.of();
        }
    }

    /** Letters in one form, line breaks as LF, without blanks around. */
    private static String clean(String cell) {
        // letters below the combining marks are in that form already, and the tables for the others load slowly
        String oneForm = cell.chars().allMatch(letter -> letter < FIRST_COMBINING_MARK)
                ? cell
                : Normalizer.normalize(cell, Normalizer.Form.NFC);
        return oneForm.replace("\r\n", "\n")
                .replace('\u00A0', ' ')
                .replace('\u202F', ' ')
                .strip();
    }
}
