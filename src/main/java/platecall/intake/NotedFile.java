package platecall.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import platecall.day.Day;
import platecall.day.Trouble;

/** What somebody in the kitchen noted down while a day was under way: a CSV file, and where its rows stand. */
public final class NotedFile<R> {

    private final List<R> rows;
    private final Whereabouts whereabouts;

    NotedFile(List<R> rows, Whereabouts whereabouts) {
        this.rows = List.copyOf(rows);
        this.whereabouts = whereabouts;
    }

    /**
     * Reads what was noted on a day.
     *
     * @throws BadDay if it can't be read, with all that is wrong
     */
    static <R> NotedFile<R> read(Path path, Day day, Sheet<R> sheet) {
        String file = DayFiles.nameOf(path);
        Troubles troubles = new Troubles();
        try {
            if (!Files.exists(path)) {
                throw BadDay.file(file, "there is no such file", "");
            }
            String text = CsvFolder.text(
                    sheet.name(),
                    DayFiles.bytes(path, DayFiles.MOST_BYTES),
                    "It must be a CSV file. Maybe save it anew as \"CSV UTF-8\".",
                    troubles);
            RawSheet raw = text == null ? null : CsvFolder.parse(sheet.name(), text, troubles);
            if (raw == null) {
                throw new BadDay(Whereabouts.of(file), troubles);
            }
            return DayDecoder.noted(file, sheet, raw, day, troubles);
        } catch (IOException unreadable) {
            throw BadDay.file(file, DayFiles.reason(unreadable), "");
        }
    }

    public List<R> rows() {
        return rows;
    }

    /** What is wrong about its rows, which can be read but don't fit the day or the plan. */
    public BadDay bad(List<Trouble> troubles) {
        Troubles all = new Troubles();
        troubles.forEach(all::add);
        return new BadDay(whereabouts, all);
    }
}
