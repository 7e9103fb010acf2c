package platecall.bench;

import java.nio.file.Path;
import java.util.List;

/** A file that cannot be read as what it should be; the message has one line a problem, each with file and line. */
public final class BadFileException extends Exception {

    private static final long serialVersionUID = 1;

    BadFileException(List<String> problems) {
        super(String.join(System.lineSeparator(), problems));
    }

    BadFileException(Path file, String problem) {
        this(List.of(file + ": " + problem));
    }
}
