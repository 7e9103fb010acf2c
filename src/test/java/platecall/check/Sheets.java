package platecall.check;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.DayFiles;

/** A good small day as sheets of text, of which a test changes a cell or adds a row. */
final class Sheets {

    private final Map<String, List<Map<String, String>>> sheets = new LinkedHashMap<>();

    private Sheets() {}

    /** Buttered toast: cut (10 min), baked (15 min at 200 °C), plated by Ada (3 min), carried to the set (5 min). */
    static Sheets toast() {
        return new Sheets()
                .add("day", "key=title", "value=Toast")
                .add("day", "key=date", "value=2026-03-14")
                .add("day", "key=zone", "value=Europe/Berlin")
                .add("day", "key=kitchen hours", "value=06:00-18:00")
                .add(
                        "setups",
                        "setup=1",
                        "place=set",
                        "call=10:00",
                        "takes likely=2",
                        "takes at worst=3",
                        "take cycle=10",
                        "rolling minutes=2")
                .add("needs", "setup=1", "dish=toast", "stage=plate", "eaten by=Mina")
                .add("dishes", "dish=toast", "look=table", "peak to=5", "usable to=20", "cost=1.50")
                .add("steps", "step=cut", "dish=toast", "minutes likely=10", "hands=1", "station=counter:1")
                .add(
                        "steps",
                        "step=bake",
                        "dish=toast",
                        "after=cut",
                        "minutes likely=15",
                        "station=oven:1",
                        "oven temperature=200")
                .add(
                        "steps",
                        "step=plate",
                        "dish=toast",
                        "after=bake",
                        "minutes likely=3",
                        "hands=1",
                        "skill=plating",
                        "station=counter:1")
                .add("ingredients", "ingredient=bread", "dish=toast", "cost=0.20", "allergens=wheat")
                .add("ingredients", "ingredient=butter", "dish=toast", "step=plate", "cost=0.10", "allergens=milk")
                .add("stations", "station=counter", "kind=counter", "capacity=2", "place=kitchen")
                .add("stations", "station=oven", "kind=oven", "capacity=1", "place=kitchen", "heat-up=10")
                .add("stations", "station=fridge", "kind=fridge", "capacity=4", "place=kitchen")
                .add("circuits", "circuit=wall", "volts=230", "amps=16")
                .add("people", "person=Ada", "skills=plating")
                .add("people", "person=Bo")
                .add("cast", "who=Mina")
                .add("cast", "who=Theo", "allergies=nuts")
                .add("places", "place=kitchen", "walk=set:5")
                .add("places", "place=set");
    }

    /** Adds a row; each cell as {@code column=text}. */
    Sheets add(String sheet, String... cells) {
        Map<String, String> row = new LinkedHashMap<>();
        for (String cell : cells) {
            int at = cell.indexOf('=');
            row.put(cell.substring(0, at), cell.substring(at + 1));
        }
        sheets.computeIfAbsent(sheet, name -> new ArrayList<>()).add(row);
        return this;
    }

    /** Changes cells of the row that begins with {@code key}. */
    Sheets change(String sheet, String key, String... cells) {
        Map<String, String> row = sheets.get(sheet).stream()
                .filter(r -> r.values().iterator().next().equals(key))
                .findFirst()
                .orElseThrow();
        for (String cell : cells) {
            int at = cell.indexOf('=');
            row.put(cell.substring(0, at), cell.substring(at + 1));
        }
        return this;
    }

    Sheets fact(String key, String value) {
        sheets.get("day").removeIf(row -> row.get("key").equals(key));
        return add("day", "key=" + key, "value=" + value);
    }

    Sheets empty(String sheet) {
        Set<String> columns = columns(sheets.get(sheet));
        sheets.get(sheet).clear();
        headers.put(sheet, columns);
        return this;
    }

    private final Map<String, Set<String>> headers = new LinkedHashMap<>();

    private static Set<String> columns(List<Map<String, String>> rows) {
        return rows.stream().flatMap(row -> row.keySet().stream()).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    Day day() {
        try {
            Path folder = Files.createTempDirectory("day");
            try {
                for (Map.Entry<String, List<Map<String, String>>> sheet : sheets.entrySet()) {
                    Set<String> columns = new LinkedHashSet<>(headers.getOrDefault(sheet.getKey(), Set.of()));
                    columns.addAll(columns(sheet.getValue()));
                    Stream<String> rows = sheet.getValue().stream()
                            .map(row -> columns.stream()
                                    .map(column -> '"' + row.getOrDefault(column, "") + '"')
                                    .collect(Collectors.joining(",")));
                    Files.write(
                            folder.resolve(sheet.getKey() + ".csv"),
                            Stream.concat(Stream.of(String.join(",", columns)), rows)
                                    .toList());
                }
                return DayFiles.read(folder).day();
            } finally {
                for (String sheet : sheets.keySet()) {
                    Files.deleteIfExists(folder.resolve(sheet + ".csv"));
                }
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What is wrong, each as {@code sheet row column: [value] what. way out}. */
    List<String> troubles() {
        return told(DayCheck.troubles(day()));
    }

    List<String> remarks() {
        return told(DayCheck.remarks(day()));
    }

    /** Those of the remarks that come with every plan. */
    List<String> remarksOnEaters() {
        return told(DayCheck.remarksOnEaters(day()));
    }

    private static List<String> told(List<Trouble> troubles) {
        return troubles.stream()
                .map(t -> t.sheet() + " " + t.row() + " " + t.column() + ": [" + t.value() + "] " + t.what() + ". "
                        + t.wayOut())
                .toList();
    }
}
