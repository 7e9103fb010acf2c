package platecall.intake;

import static platecall.intake.Column.optional;
import static platecall.intake.Column.required;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Happening;
import platecall.day.Part;
import platecall.day.Trouble;
import platecall.units.Moment;

/** What happened otherwise than planned: a CSV file with one row for each such thing. */
public final class HappeningsFile {

    /** Name of the sheet in what is told of it. */
    public static final String SHEET_NAME = "happenings";

    private static final Column<Happening, Happening.What> WHAT = required(
            "what",
            Grammars.oneOf("what happened", List.of(Happening.What.values()), Happening.What::word),
            Happening::what,
            "began, ended, waits or lost",
            "began");
    private static final Column<Happening, Optional<String>> SETUP =
            optional("setup", Grammars.NAME, Happening::setup, "any", "whose food it is", "4");
    private static final Column<Happening, Optional<String>> DISH = optional(
            "dish", Grammars.NAME, Happening::dish, "a meal break", "the dish, as in the sheet dishes", "bird");
    private static final Column<Happening, Optional<Part>> PART = optional(
            "part",
            Grammars.oneOf("a part", List.of(Part.values()), Part::word),
            Happening::part,
            "any",
            "what part it plays",
            "hero");
    private static final Column<Happening, Optional<Integer>> NUMBER =
            optional("number", Grammars.COPY_NUMBER, Happening::number, "all that fit", "number of the copy", "1");
    private static final Column<Happening, Optional<String>> STEP = optional(
            "step", Grammars.NAME, Happening::step, "a meal break, or a lost copy", "the step, or carry", "roast");
    private static final Column<Happening, Optional<String>> PERSON =
            optional("person", Grammars.NAME, Happening::person, "a step", "who began or ended a meal break", "Runa");
    private static final Column<Happening, Optional<Moment>> TIME = optional(
            "time",
            Clock.MOMENT,
            Happening::time,
            "lost, or waits for no one knows how long",
            "when it began or ended, or will end; if a step waits, before when it isn't begun",
            "11:05");

    static final Sheet<Happening> SHEET = new Sheet<>(
            SHEET_NAME,
            false,
            "something that went otherwise than planned",
            day -> List.of(),
            List.of(WHAT, SETUP, DISH, PART, NUMBER, STEP, PERSON, TIME),
            row -> new Happening(
                    row.get(WHAT),
                    row.get(SETUP),
                    row.get(DISH),
                    row.get(PART),
                    row.get(NUMBER),
                    row.get(STEP),
                    row.get(PERSON),
                    row.get(TIME)));

    private HappeningsFile() {}

    /**
     * Reads what happened on a day.
     *
     * @throws BadDay if it can't be read, with all that is wrong
     */
    public static NotedFile<Happening> read(Path path, Day day) {
        NotedFile<Happening> file = NotedFile.read(path, day, SHEET);
        if (file.rows().isEmpty()) {
            // a file that lost its rows must not read as a day that went as planned
            throw file.bad(List.of(
                    new Trouble(SHEET_NAME, -1, "", "", "has no row", "Maybe no --happened, if all went as planned.")));
        }
        return file;
    }

    /**
     * A time on a day, as its cells have it.
     *
     * @throws IllegalArgumentException if it is none; its message is a sentence that begins with the text
     */
    public static Moment time(String text, Day day) {
        ZoneId zone = day.facts().zone();
        try {
            return Clock.MOMENT.reader().apply(text, new Frame(day.facts().date(), zone, true, false));
        } catch (Unreadable unreadable) {
            throw new IllegalArgumentException(
                    "[" + text + "] " + unreadable.getMessage() + ". " + unreadable.wayOut());
        }
    }
}
