package platecall.bench;

import java.net.URISyntaxException;
import java.nio.file.Path;

/** The files of the benchmark's tests. */
final class BenchFiles {

    private BenchFiles() {}

    static Path folder() {
        try {
            return Path.of(BenchFiles.class.getResource("/bench").toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    static Project ft06() {
        return read("ft06.jss");
    }

    static Project twelve() {
        return read("twelve.sm");
    }

    private static Project read(String name) {
        try {
            Path file = folder().resolve(name);
            return name.endsWith(".sm") ? ProjectFile.read(file) : JobShopFile.read(file);
        } catch (BadFileException e) {
            throw new IllegalStateException(e);
        }
    }
}
