package platecall.units;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes files so that nobody ever finds half of one. */
public final class WholeFiles {

    private WholeFiles() {}

    /**
     * Writes files, each under another name beside its own first; folders are made where there are none. What is there already is
     * replaced.
     *
     * @param files what is to be in each
     * @throws IOException if one can't be written; then none has been touched, or, if the disk fails while they are put in
     *     place, each is either the old one or the new one, whole
     */
    public static void write(Map<Path, byte[]> files) throws IOException {
        Map<Path, Path> parts = new LinkedHashMap<>();
        try {
            for (Map.Entry<Path, byte[]> file : files.entrySet()) {
                Path whole = file.getKey().toAbsolutePath();
                if (Files.isDirectory(whole)) {
                    throw new FileSystemException(whole.toString(), null, "a folder of that name is in the way");
                }
                Files.createDirectories(whole.getParent());
                Path part = whole.resolveSibling("." + whole.getFileName() + ".part");
                parts.put(part, whole);
                Files.write(part, file.getValue());
            }
            for (Map.Entry<Path, Path> part : parts.entrySet()) {
                Files.move(
                        part.getKey(),
                        part.getValue(),
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException unwritable) {
            for (Path part : parts.keySet()) {
                try {
                    Files.deleteIfExists(part);
                } catch (IOException left) {
                    unwritable.addSuppressed(left);
                }
            }
            throw unwritable;
        }
    }
}
