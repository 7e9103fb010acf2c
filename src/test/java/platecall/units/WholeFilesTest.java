package platecall.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFilesTest {

    private static final byte[] NEW = {'n', 'e', 'w'};

    @TempDir
    private Path folder;

    @Test
    void foldersAreMadeAndOlderFilesReplaced() throws IOException {
        Path old = Files.writeString(folder.resolve("old.txt"), "old and longer");
        Path deep = folder.resolve("deep/er/new.txt");
        WholeFiles.write(Map.of(old, NEW, deep, NEW));

        assertThat(old).hasBinaryContent(NEW);
        assertThat(deep).hasBinaryContent(NEW);
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("old.txt", "deep");
        assertThat(deep.getParent().toFile().list()).containsExactly("new.txt");
    }

    @Test
    void aFolderInTheWayLeavesAllAsItWas() throws IOException {
        Path old = Files.writeString(folder.resolve("old.txt"), "old");
        Path inTheWay = Files.createDirectory(folder.resolve("way.txt"));
        Map<Path, byte[]> files = new LinkedHashMap<>();
        files.put(old, NEW);
        files.put(inTheWay, NEW);

        assertThatThrownBy(() -> WholeFiles.write(files))
                .isInstanceOf(IOException.class)
                .hasMessage(inTheWay + ": a folder of that name is in the way");
        assertThat(old).hasContent("old");
        assertThat(inTheWay).isEmptyDirectory();
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("old.txt", "way.txt");
    }

    /** Told by two names a file has one part only, so that the second one can't be moved any more. */
    @Test
    void whatWasReplacedIsPutBackIfAnotherCannotBe() throws IOException {
        Path old = Files.writeString(folder.resolve("old.txt"), "old");
        Map<Path, byte[]> files = new LinkedHashMap<>();
        files.put(old, NEW);
        files.put(folder.resolve("twice.txt"), NEW);
        files.put(folder.resolve("./twice.txt"), NEW);

        assertThatThrownBy(() -> WholeFiles.write(files))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("twice.txt can't be replaced (NoSuchFileException), so all is as it was");
        assertThat(old).hasContent("old");
        assertThat(folder.toFile().list()).containsExactly("old.txt");
    }
}
