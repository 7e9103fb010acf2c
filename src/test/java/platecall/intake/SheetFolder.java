package platecall.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A copy of the inn's sheets in which a test spoils something. */
final class SheetFolder {

    static final Path INN = Path.of("src/test/resources/platecall/intake/inn");

    final Path path;

    SheetFolder(Path parent) {
        path = parent.resolve("inn");
        try (Stream<Path> sheets = Files.list(INN)) {
            Files.createDirectories(path);
            for (Path sheet : sheets.toList()) {
                Files.copy(sheet, path.resolve(sheet.getFileName()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Path sheet(String name) {
        return path.resolve(name + ".csv");
    }

    String text(String name) {
        try {
            return Files.readString(sheet(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    SheetFolder write(String name, String text) {
        try {
            Files.writeString(sheet(name), text);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Puts {@code to} in the place of {@code from}, which must stand in the sheet exactly once. */
    SheetFolder change(String name, String from, String to) {
        String text = text(name);
        if (text.indexOf(from) < 0 || text.indexOf(from) != text.lastIndexOf(from)) {
            throw new IllegalArgumentException("[" + from + "] must stand once in " + name);
        }
        return write(name, text.replace(from, to));
    }

    SheetFolder delete(String name) {
        try {
            Files.delete(sheet(name));
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The lines of the report that reading these sheets gives; empty if they can be read. */
    List<String> report() {
        return report(path);
    }

    static List<String> report(Path day) {
        try {
            DayFiles.read(day);
            return List.of();
        } catch (BadDay bad) {
            return bad.report().lines().toList();
        }
    }
}
