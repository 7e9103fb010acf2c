package platecall.report;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reports can't be written where they should go; the message is for the user. */
public final class UnwritableFolderException extends Exception {

    private static final long serialVersionUID = 1L;

    UnwritableFolderException(Path folder, Exception cause) {
        super(
                "cannot write to the folder [" + folder + "]: " + reason(cause)
                        + ". Maybe choose another folder with --out.",
                cause);
    }

    UnwritableFolderException(Path folder, Path inTheWay) {
        this(
                folder,
                Files.isDirectory(inTheWay)
                        ? new AccessDeniedException(inTheWay.toString())
                        : new FileAlreadyExistsException(inTheWay.toString()));
    }

    private static String reason(Exception cause) {
        if (cause instanceof AccessDeniedException) {
            return "no permission";
        }
        if (cause instanceof FileAlreadyExistsException) {
            return "a file of that name is in the way";
        }
        if (cause instanceof NoSuchFileException) {
            return "it can't be made there";
        }
        if (cause instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage();
    }
}
