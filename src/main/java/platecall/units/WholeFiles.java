package platecall.units;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes files so that nobody ever finds half of one. */
public final class WholeFiles {

    private WholeFiles() {}

    /**
     * Writes files, each under another name beside its own first; folders are made where there are none. What is there already is
     * replaced.
     *
     * @param files what is to be in each
     * @throws IOException if one can't be written or replaced; then all are as they were, or, if the disk fails while they are put back,
     *     the message names those that are new
     */
    public static void write(Map<Path, byte[]> files) throws IOException {
        Map<Path, Path> parts = new LinkedHashMap<>();
        Map<Path, Path> olds = new LinkedHashMap<>();
        try {
            for (Map.Entry<Path, byte[]> file : files.entrySet()) {
                Path whole = file.getKey().toAbsolutePath();
                if (Files.isDirectory(whole)) {
                    throw new FileSystemException(whole.toString(), null, "a folder of that name is in the way");
                }
                Files.createDirectories(whole.getParent());
                Path part = beside(whole, ".part");
                parts.put(part, whole);
                Files.write(part, file.getValue());
            }
            for (Path whole : parts.values()) {
                if (Files.exists(whole, LinkOption.NOFOLLOW_LINKS)) {
                    Path old = beside(whole, ".old");
                    olds.put(whole, old);
                    Files.copy(
                            whole,
                            old,
                            LinkOption.NOFOLLOW_LINKS,
                            StandardCopyOption.COPY_ATTRIBUTES,
                            StandardCopyOption.REPLACE_EXISTING);
                }
            }
            moveAll(parts, olds);
        } catch (IOException unwritable) {
            delete(parts.keySet(), unwritable);
            delete(olds.values(), unwritable);
            throw unwritable;
        }
        // what can't be deleted is hidden, and replaced the next time
        delete(olds.values(), new IOException());
    }

    private static Path beside(Path whole, String ending) {
        return whole.resolveSibling("." + whole.getFileName() + ending);
    }

    /** Puts all in place, or none: whether a file can be replaced only shows when it is. */
    private static void moveAll(Map<Path, Path> parts, Map<Path, Path> olds) throws IOException {
        List<Path> replaced = new ArrayList<>();
        for (Map.Entry<Path, Path> part : parts.entrySet()) {
            try {
                move(part.getKey(), part.getValue());
                replaced.add(part.getValue());
            } catch (IOException stuck) {
                List<Path> left = putBack(replaced, olds, stuck);
                String names =
                        left.stream().map(path -> path.getFileName().toString()).collect(Collectors.joining(", "));
                FileSystemException told = new FileSystemException(
                        part.getValue().toString(),
                        null,
                        part.getValue().getFileName() + " can't be replaced (" + reason(stuck) + "), "
                                + (left.isEmpty() ? "so all is as it was" : "but these are new already: " + names));
                told.initCause(stuck);
                throw told;
            }
        }
    }

    /** Puts back what was replaced; those that couldn't be. */
    private static List<Path> putBack(List<Path> replaced, Map<Path, Path> olds, IOException why) {
        List<Path> left = new ArrayList<>();
        for (Path whole : replaced) {
            try {
                if (olds.containsKey(whole)) {
                    move(olds.get(whole), whole);
                } else {
                    Files.delete(whole);
                }
            } catch (IOException stuck) {
                why.addSuppressed(stuck);
                left.add(whole);
            }
        }
        return left;
    }

    private static void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static void delete(Collection<Path> files, IOException why) {
        for (Path file : files) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException left) {
                why.addSuppressed(left);
            }
        }
    }

    private static String reason(IOException stuck) {
        return stuck instanceof FileSystemException system && system.getReason() != null
                ? system.getReason()
                : stuck instanceof AccessDeniedException
                        ? "no permission"
                        : stuck.getClass().getSimpleName();
    }
}
