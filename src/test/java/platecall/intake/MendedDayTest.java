package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.check.DayCheck;

/** Beside what can't be read only that is told which is wrong in the file, too. */
class MendedDayTest {

    private static final String MORE = "More will be checked once these are right.";

    @TempDir
    Path parent;

    private Path supper;

    @BeforeEach
    void copyTheSupper() throws IOException {
        supper = Files.createDirectory(parent.resolve("supper"));
        try (Stream<Path> sheets = Files.list(Path.of("problems/lantern-supper"))) {
            for (Path sheet : sheets.toList()) {
                Files.copy(sheet, supper.resolve(sheet.getFileName()));
            }
        }
    }

    private MendedDayTest change(String sheet, String from, String to) throws IOException {
        Path file = supper.resolve(sheet + ".csv");
        String text = Files.readString(file);
        assertThat(text).containsOnlyOnce(from);
        Files.writeString(file, text.replace(from, to));
        return this;
    }

    private List<String> report() {
        return catchThrowableOfType(BadDay.class, () -> DayFiles.read(supper))
                .with(DayCheck::besideUnreadable)
                .report()
                .lines()
                .toList();
    }

    @Test
    void aDishThatStandsInForOneIsNotHeldAgainstTheRestOfItsRow() throws IOException {
        change("needs", "3,pasty,set,", "3,#N/A,set,");
        change("ingredients", "porridge,oats and milk,stir,", ",oats and milk,stir,");

        assertThat(report())
                .containsExactly(
                        "supper, sheet needs, row 8, column \"dish\": [#N/A] is an error of a spreadsheet's formula. Maybe mend the formula, or type its value.",
                        "supper, sheet ingredients, row 27, column \"dish\": must not be empty: the dish. Maybe soup.",
                        MORE);
    }

    @Test
    void anIngredientOfADishThatCantBeReadHarmsNobody() throws IOException {
        change(
                "ingredients",
                "porridge,oats and milk,stir,0.3,kg,0.30,oats; milk",
                ",oats and milk,stir,0.3,kg,0.30,nuts");

        assertThat(report()).hasSize(2).first().asString().contains("sheet ingredients, row 27, column \"dish\"");
    }

    @Test
    void otherRowsAreStillChecked() throws IOException {
        change("needs", "3,pasty,set,", "3,#N/A,set,");
        change("needs", "3,pasty,fill,", "3,pasty,fll,");
        change("setups", ",after setup ", ",after setup 7");

        assertThat(report()).hasSize(4).anyMatch(line -> line.contains("[fll] is not a step"));
    }

    @Test
    void aLookIsNotJudgedWithoutARowThatCantBeRead() throws IOException {
        change("looks", "soup,start,74", "#N/A,start,74");

        assertThat(report()).hasSize(2).first().asString().contains("sheet looks, row 2, column \"dish\"");
    }
}
