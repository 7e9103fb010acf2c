package platecall.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.units.WholeFiles;

/** A small, filled-in day to start from. */
public final class ExampleDay {

    private static final String RESOURCE = "new/day.json";

    private ExampleDay() {}

    /** The day. */
    public static Day day() {
        Troubles troubles = new Troubles();
        try (InputStream json = ExampleDay.class.getResourceAsStream(RESOURCE)) {
            return DayDecoder.decode(RESOURCE, JsonDay.read(json.readAllBytes(), troubles), troubles)
                    .day();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /**
     * Writes the day, and beside its sheets the page that explains them.
     *
     * @param path a folder that does not exist or is empty, or a file ending in .xlsx or .json that does not exist
     * @param looks every property of sheet {@code looks}, for that page
     * @param profiles every safety profile, for that page
     * @return where the page is
     * @throws BadDay if something is there already, or it can't be written
     */
    public static Path write(Path path, List<ColumnGuide.LookTerm> looks, List<String> profiles) {
        String name = DayFiles.nameOf(path);
        boolean folder = DayFiles.isFolderName(path);
        Path guide = folder
                ? path.resolve("guide.html")
                : path.resolveSibling(name.substring(0, name.lastIndexOf('.')) + "-guide.html");
        try {
            if (folder && Files.isDirectory(path)) {
                try (Stream<Path> inside = Files.list(path)) {
                    if (inside.findAny().isPresent()) {
                        throw BadDay.file(name, "is not empty", "Maybe give the name of a new folder.");
                    }
                }
            }
            byte[] page = ColumnGuide.html(looks, profiles).getBytes(StandardCharsets.UTF_8);
            // the same page may be there from a day of that name in another format
            if (Files.exists(guide)
                    && !(Files.isRegularFile(guide) && Arrays.equals(Files.readAllBytes(guide), page))) {
                throw BadDay.file(guide.getFileName().toString(), "is there already", "Maybe give another name.");
            }
            DayFiles.write(day(), path);
            WholeFiles.write(Map.of(guide, page));
            return guide;
        } catch (IOException unwritable) {
            throw BadDay.file(name, "can't be written: " + DayFiles.reason(unwritable), DayFiles.wayOut(unwritable));
        }
    }
}
