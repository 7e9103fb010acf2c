package platecall.intake;

import static platecall.intake.Column.optional;
import static platecall.intake.Column.required;
import static platecall.intake.Column.usual;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Part;
import platecall.day.ProbeReading;
import platecall.units.Moment;

/** Thermometer readings of food: a CSV file with one row for each. */
public final class ReadingsFile {

    /** Name of the sheet in what is told of it. */
    public static final String SHEET_NAME = "readings";

    private static final Column<ProbeReading, ProbeReading.What> WHAT = required(
            "what",
            Grammars.oneOf("a kind of reading", List.of(ProbeReading.What.values()), ProbeReading.What::word),
            ProbeReading::what,
            "what goes on with the food: raw food is cooked; what was hot is cooled, what was never hot is chilled; it is held"
                    + " hot or cold; it is reheated to be held hot; it thaws; it is taken out for good, or just cut or opened"
                    + " to stay out",
            "cooking");
    private static final Column<ProbeReading, Optional<String>> SETUP =
            optional("setup", Grammars.NAME, ProbeReading::setup, "any", "whose food it is", "4");
    private static final Column<ProbeReading, String> DISH =
            required("dish", Grammars.NAME, ProbeReading::dish, "the dish, as in the sheet dishes", "bird");
    private static final Column<ProbeReading, Optional<Part>> PART = optional(
            "part",
            Grammars.oneOf("a part", List.of(Part.values()), Part::word),
            ProbeReading::part,
            "any",
            "what part it plays",
            "hero");
    private static final Column<ProbeReading, Optional<Integer>> NUMBER =
            optional("number", Grammars.COPY_NUMBER, ProbeReading::number, "all that fit", "number of the copy", "1");
    private static final Column<ProbeReading, Moment> TIME =
            required("time", Clock.MOMENT, ProbeReading::time, "when it was read", "12:55");
    private static final Column<ProbeReading, Double> CORE = required(
                    "core",
                    Grammars.DECIMAL,
                    ProbeReading::celsius,
                    "in the coolest part; while it is kept cold, cools or thaws in the warmest",
                    "74.5")
            .in("degrees C")
            .from("-40", "300");
    private static final Column<ProbeReading, Integer> HELD = usual(
                    "held",
                    Grammars.SECONDS,
                    ProbeReading::heldSeconds,
                    "0",
                    "how long it was watched not to fall below that",
                    "15")
            .in("seconds")
            .from("0", "86400");

    static final Sheet<ProbeReading> SHEET = new Sheet<>(
            SHEET_NAME,
            true,
            "a temperature of food, read from a thermometer",
            day -> List.of(),
            List.of(WHAT, SETUP, DISH, PART, NUMBER, TIME, CORE, HELD),
            row -> new ProbeReading(
                    row.get(WHAT),
                    row.get(SETUP),
                    row.get(DISH),
                    row.get(PART),
                    row.get(NUMBER),
                    row.get(TIME),
                    row.get(CORE),
                    row.get(HELD)));

    private ReadingsFile() {}

    /**
     * Reads the readings of a day.
     *
     * @throws BadDay if the file can't be read, with all that is wrong
     */
    public static NotedFile<ProbeReading> read(Path path, Day day) {
        return NotedFile.read(path, day, SHEET);
    }
}
