package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LooksCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Path day;

    @BeforeEach
    void writeADay() {
        day = folder.resolve("supper");
        assertThat(run("new", day.toString())).isZero();
        out.getBuffer().setLength(0);
    }

    @Test
    void printsATableAndDrawsAPicture() throws IOException {
        assertThat(run("looks", day.toString(), "--out", folder.resolve("paper").toString()))
                .isZero();

        assertThat(out.toString().lines())
                .startsWith(
                        "dish           look           peak min  usable min  +/- min",
                        "Tomato soup    table               0-8       to 15        0",
                        "  peak 0-8 min, usable to 15 min: by hand")
                .endsWith(
                        "Reckoned with light of 150 W/m2 on the plate; of tungsten light (3200 K) that is about 4,000 lux.",
                        "Wrote " + folder.resolve("paper").resolve("looks.png"));
        assertThat(ImageIO.read(folder.resolve("paper").resolve("looks.png").toFile())
                        .getWidth())
                .isEqualTo(1200);
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void worksOutWhatTheSheetAsksFor() throws IOException {
        replace("dishes.csv", "Tomato soup,table,0,8,15", "Tomato soup,cooling,,,");
        Files.writeString(day.resolve("looks.csv"), "dish,property,value\nsoup,start,80\n", StandardCharsets.UTF_8);

        assertThat(run("looks", day.toString(), "--out", folder.toString())).isZero();

        assertThat(out.toString())
                .contains("surface falls from 80 to 60 °C", "by default body solid", "  Mind: Biot number");
    }

    @Test
    void tellsAllThatIsWrongAtItsCellAndWritesNothing() throws IOException {
        replace("dishes.csv", "Tomato soup,table,0,8,15", "Tomato soup,cooling,,,");
        Files.writeString(
                day.resolve("looks.csv"),
                "dish,property,value\nsoup,start,180\nsoup,mas,200\n",
                StandardCharsets.UTF_8);

        assertThat(run("looks", day.toString(), "--out", folder.resolve("paper").toString()))
                .isEqualTo(2);

        assertThat(err.toString().lines())
                .containsExactly(
                        "supper, sheet looks, row 2, column \"value\": [180] start must be from 0 to 100 °C."
                                + " Maybe it is in another unit; here it is read in °C.",
                        "supper, sheet looks, row 3, column \"property\": [mas] look cooling of dish [soup] knows no"
                                + " such property. Did you mean mass?");
        assertThat(folder.resolve("paper")).doesNotExist();
    }

    @Test
    void aFolderThatCannotBeWrittenIsTold() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));

        assertThat(run("looks", day.toString(), "--out", file.toString())).isEqualTo(2);

        assertThat(err.toString()).contains("cannot write to the folder [" + file + "]");
    }

    private void replace(String sheet, String old, String by) throws IOException {
        String text = Files.readString(day.resolve(sheet), StandardCharsets.UTF_8);
        assertThat(text).contains(old);
        Files.writeString(
                day.resolve(sheet),
                text.replace(old, by),
                StandardCharsets.UTF_8,
                StandardOpenOption.TRUNCATE_EXISTING);
    }

    private int run(String... args) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }
}
