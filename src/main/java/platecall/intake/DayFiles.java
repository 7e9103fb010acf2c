package platecall.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import platecall.day.Day;
import platecall.units.WholeFiles;

/**
 * Days in files: a folder of CSV sheets, a workbook ({@code .xlsx}) or JSON ({@code .json}). All three hold the same, so
 * that a day written in one and read again equals the day.
 */
public final class DayFiles {

    /** Largest file that is read, in bytes; for a folder the sum of its sheets. */
    public static final int MOST_BYTES = 20_000_000;

    private static final String WORKBOOK = ".xlsx";
    private static final String JSON = ".json";

    private DayFiles() {}

    /**
     * Reads a day.
     *
     * @throws BadDay if there is none, or anything is wrong with it; it tells all that is wrong
     */
    public static DayFile read(Path path) {
        String file = nameOf(path);
        Troubles troubles = new Troubles();
        try {
            RawDay raw;
            if (Files.isDirectory(path)) {
                raw = CsvFolder.read(path, troubles);
            } else if (!Files.exists(path)) {
                throw BadDay.file(file, "there is no such file or folder", "");
            } else if (ends(path, WORKBOOK)) {
                raw = DayWorkbook.read(path, filled(file, bytes(path, MOST_BYTES)), troubles);
            } else if (ends(path, JSON)) {
                raw = JsonDay.read(filled(file, bytes(path, MOST_BYTES)), troubles);
            } else {
                throw BadDay.file(
                        file, "is neither a folder of CSV sheets, nor a workbook (.xlsx), nor JSON (.json)", "");
            }
            if (raw == null) {
                throw new BadDay(Whereabouts.of(file), troubles);
            }
            try {
                return DayDecoder.decode(file, raw, troubles);
            } catch (BadDay bad) {
                throw bad.mended(MendedDay.of(file, raw, bad.troubles()));
            }
        } catch (IOException unreadable) {
            throw BadDay.file(file, reason(unreadable), "");
        }
    }

    private static byte[] filled(String file, byte[] bytes) {
        if (bytes.length == 0) {
            throw BadDay.file(file, "is empty (0 bytes)", "");
        }
        return bytes;
    }

    /** All bytes of a plain file of at most {@code most} bytes. */
    static byte[] bytes(Path file, long most) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IOException("is not a plain file");
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes((int) most + 1);
            if (bytes.length > most) {
                throw new IOException("is too large: a day may have at most " + MOST_BYTES / 1_000_000 + " MB");
            }
            return bytes;
        }
    }

    /**
     * Writes a day; the ending of {@code path} says in which format, no ending means a folder. Nothing is
     * half-written, see {@link WholeFiles}.
     *
     * @throws BadDay if something is there already, or it can't be written
     */
    public static void write(Day day, Path path) {
        write(day, path, false, "");
    }

    /** As {@link #write}, but takes the place of a day of the same format that is there already. */
    public static void replace(Day day, Path path) {
        write(day, path, true, "");
    }

    /**
     * As {@link #write}.
     *
     * @param instead what the user may do to take the place of a day that is there, as in "--replace"
     */
    public static void writeUnless(Day day, Path path, String instead) {
        write(day, path, false, instead);
    }

    private static void write(Day day, Path path, boolean replace, String instead) {
        String file = nameOf(path);
        boolean folder = isFolderName(path);
        if (folder && file.matches(".+\\.[A-Za-z]{1,5}") && !Files.isDirectory(path)) {
            throw BadDay.file(
                    file,
                    "does not say in which format to write",
                    "Maybe give it the ending .xlsx or .json, or none for a folder.");
        }
        if (Files.exists(path) && folder != Files.isDirectory(path)) {
            throw BadDay.file(
                    file, folder ? "is a file, not a folder" : "is a folder, not a file", "Maybe give another name.");
        }
        try {
            Path where = path.toAbsolutePath().normalize();
            Map<Path, byte[]> files = new LinkedHashMap<>();
            if (folder) {
                CsvFolder.files(day).forEach((name, bytes) -> files.put(where.resolve(name), bytes));
            } else {
                files.put(where, ends(path, JSON) ? JsonDay.pretty(day) : DayWorkbook.bytes(day));
            }
            write(files, replace);
        } catch (IOException unwritable) {
            String wayOut = unwritable instanceof FileAlreadyExistsException && !instead.isEmpty()
                    ? "Maybe give another name, or " + instead + "."
                    : wayOut(unwritable);
            throw BadDay.file(file, "can't be written: " + reason(unwritable), wayOut);
        }
    }

    private static void demandFolders(Path folder) throws IOException {
        for (Path each = folder; each != null; each = each.getParent()) {
            if (Files.exists(each) && !Files.isDirectory(each)) {
                throw new NotDirectoryException(each.toString());
            }
        }
    }

    /** Writes all files or none. */
    static void write(Map<Path, byte[]> files, boolean replace) throws IOException {
        for (Path file : files.keySet()) {
            demandFolders(file.getParent());
        }
        if (!replace) {
            for (Path file : files.keySet()) {
                if (Files.exists(file)) {
                    throw new FileAlreadyExistsException(file.toString());
                }
            }
        }
        WholeFiles.write(files);
    }

    /** SHA-256 of the day's canonical JSON in hexadecimal: the same for the same day, whatever file it came from. */
    public static String digest(Day day) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(JsonDay.canonical(day)));
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }

    static boolean isFolderName(Path path) {
        return !ends(path, WORKBOOK) && !ends(path, JSON);
    }

    private static boolean ends(Path path, String ending) {
        return nameOf(path).toLowerCase(Locale.ROOT).endsWith(ending);
    }

    static String nameOf(Path path) {
        Path name = path.toAbsolutePath().normalize().getFileName();
        return name == null ? path.toString() : name.toString();
    }

    /** What may help if a file can't be written. */
    static String wayOut(IOException failure) {
        return failure instanceof FileAlreadyExistsException
                ? "Maybe give another name."
                : "Maybe choose another folder.";
    }

    /** Why a file can't be read or written, in words. */
    static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException) {
            return "permission is denied";
        }
        if (failure instanceof FileAlreadyExistsException exists) {
            return Path.of(exists.getFile()).getFileName() + " is there already";
        }
        if (failure instanceof NoSuchFileException) {
            return "there is no such file or folder";
        }
        if (failure instanceof NotDirectoryException file) {
            return Path.of(file.getFile()).getFileName() + " is a file, not a folder";
        }
        return failure.getMessage() == null ? "the disk says no" : failure.getMessage();
    }
}
