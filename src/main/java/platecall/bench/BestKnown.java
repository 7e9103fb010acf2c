package platecall.bench;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Best makespans known for the files of a folder, from its {@code best-known.csv}; none if it has no such sheet. */
final class BestKnown {

    static final String SHEET = "best-known.csv";
    static final BestKnown NONE = new BestKnown(Path.of(SHEET), Map.of());

    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /** @param makespan empty if none is known */
    private record Entry(int row, OptionalInt makespan) {}

    private final Path sheet;
    private final Map<String, Entry> entries;

    private BestKnown(Path sheet, Map<String, Entry> entries) {
        this.sheet = sheet;
        this.entries = entries;
    }

    /**
     * Reads commas, semicolons or tabs between cells.
     *
     * @throws BadFileException if the sheet lacks the columns {@code file} or {@code best_known_makespan}, or a row makes no
     *     sense; it tells all such rows
     */
    static BestKnown of(Path folder) throws BadFileException {
        Path sheet = folder.resolve(SHEET);
        if (!Files.exists(sheet)) {
            return NONE;
        }
        List<String> problems = new ArrayList<>();
        BestKnown known = new BestKnown(sheet, entries(sheet, records(sheet), problems));
        known.lookForSlips(folder, problems);
        if (!problems.isEmpty()) {
            throw new BadFileException(problems);
        }
        return known;
    }

    private static List<CSVRecord> records(Path sheet) throws BadFileException {
        String text;
        try {
            text = Files.readString(sheet);
        } catch (IOException e) {
            throw new BadFileException(sheet, "cannot be read as UTF-8 text (" + e.getMessage() + ")");
        }
        String unmarked = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(
                        separator(unmarked.stripLeading().lines().findFirst().orElse("")))
                .setIgnoreSurroundingSpaces(true)
                .setTrim(true)
                .setIgnoreEmptyLines(false)
                .get();
        try (CSVParser parser = CSVParser.parse(new StringReader(unmarked), format)) {
            return parser.stream()
                    .filter(row -> row.stream().anyMatch(cell -> !cell.isBlank()))
                    .toList();
        } catch (IOException | UncheckedIOException | IllegalStateException malformed) {
            throw new BadFileException(
                    sheet, "is not CSV: a quotation mark is opened and not closed, or stands in a cell");
        }
    }

    private static char separator(String header) {
        return Stream.of(',', ';', '\t')
                .max(Comparator.comparingLong(separator ->
                        header.chars().filter(letter -> letter == separator).count()))
                .orElseThrow();
    }

    private static Map<String, Entry> entries(Path sheet, List<CSVRecord> rows, List<String> problems)
            throws BadFileException {
        List<String> header = rows.isEmpty()
                ? List.of()
                : rows.get(0).stream()
                        .map(name -> name.toLowerCase(Locale.ROOT))
                        .toList();
        int file = header.indexOf("file");
        int makespan = header.indexOf("best_known_makespan");
        if (file < 0 || makespan < 0) {
            throw new BadFileException(sheet, "the first line must name the columns file and best_known_makespan");
        }
        Map<String, Entry> entries = new TreeMap<>();
        for (CSVRecord row : rows.subList(1, rows.size())) {
            int number = (int) row.getRecordNumber();
            if (row.size() != header.size()) {
                problems.add(at(sheet, number) + row.size() + " cells where " + header.size() + " are due");
                continue;
            }
            String best = row.get(makespan);
            if (!best.isEmpty() && !best.matches("[0-9]{1,9}") || best.matches("0+")) {
                problems.add(at(sheet, number) + "'" + best + "' is not a whole number above 0");
                continue;
            }
            OptionalInt known = best.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(best));
            Entry before = entries.putIfAbsent(row.get(file), new Entry(number, known));
            if (before != null) {
                problems.add(at(sheet, number) + "'" + row.get(file) + "' has row " + before.row()
                        + " already. Maybe remove one of the two.");
            }
        }
        return entries;
    }

    /** A name of no file is told if a file without a row has nearly that name; sheets of larger sets may name more files. */
    private void lookForSlips(Path folder, List<String> problems) throws BadFileException {
        List<String> files;
        try (Stream<Path> found = Files.list(folder)) {
            files = found.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException e) {
            throw new BadFileException(folder, "cannot be searched (" + e.getMessage() + ")");
        }
        entries.forEach((name, entry) -> {
            Optional<String> meant = files.contains(name)
                    ? Optional.empty()
                    : files.stream()
                            .filter(file -> !entries.containsKey(file) && isNear(name, file))
                            .findFirst();
            meant.ifPresent(file -> problems.add(
                    at(sheet, entry.row()) + "'" + name + "' is not a file of this folder. Maybe " + file + "."));
        });
    }

    /** Whether two names differ in the case of letters, in one sign that is not a digit in both, or in the ending. */
    private static boolean isNear(String name, String file) {
        String a = name.toLowerCase(Locale.ROOT);
        String b = file.toLowerCase(Locale.ROOT);
        if (a.equals(b) || b.startsWith(a + ".")) {
            return true;
        }
        int[] other = a.length() != b.length()
                ? new int[0]
                : IntStream.range(0, a.length())
                        .filter(i -> a.charAt(i) != b.charAt(i))
                        .toArray();
        return other.length == 1 && !(Character.isDigit(a.charAt(other[0])) && Character.isDigit(b.charAt(other[0])));
    }

    private static String at(Path sheet, int row) {
        return sheet + ":" + row + ": ";
    }

    OptionalInt makespan(String file) {
        Entry entry = entries.get(file);
        return entry == null ? OptionalInt.empty() : entry.makespan();
    }

    /** What is wrong with the makespan known for a project if no schedule of it can be that short. */
    Optional<String> impossible(Project project) {
        OptionalInt makespan = makespan(project.name);
        return makespan.isEmpty() || !LowerBound.refutes(project, makespan.getAsInt())
                ? Optional.empty()
                : Optional.of(at(sheet, entries.get(project.name).row()) + "'" + makespan.getAsInt()
                        + "' is less than any schedule of " + project.name + " can take");
    }
}
