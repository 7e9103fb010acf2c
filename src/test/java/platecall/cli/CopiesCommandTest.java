package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CopiesCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Path day;

    /** An inn's supper; its crew costs EUR 180.00 a waiting minute. */
    @BeforeEach
    void copyADay() throws IOException, URISyntaxException {
        day = Files.createDirectory(folder.resolve("inn"));
        Path from = Path.of(
                CopiesCommandTest.class.getResource("/platecall/intake/inn").toURI());
        try (Stream<Path> sheets = Files.list(from)) {
            for (Path sheet : sheets.toList()) {
                Files.copy(sheet, day.resolve(sheet.getFileName().toString()));
            }
        }
    }

    private int copies() {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), "copies", day.toString());
    }

    private void replace(String sheet, String old, String now) throws IOException {
        Path file = day.resolve(sheet);
        String text = Files.readString(file, StandardCharsets.UTF_8);
        assertThat(text).contains(old);
        Files.writeString(file, text.replace(old, now), StandardCharsets.UTF_8);
    }

    @Test
    void tellsTheChoicesOfEachNeedAndWhy() {
        assertThat(copies()).isZero();
        assertThat(out.toString().lines())
                .containsSequence(
                        "2/soup/chop/insert: make 7",
                        "  2 takes likely, 3 at worst. One too many costs EUR 6.58, one missing EUR 3060.00 (crew waits 17",
                        "  min): worth 99.8 % certainty; runs out in under 0.1 % of cases.",
                        "    copies     runs out   crew waits     food EUR   expected EUR",
                        "         3       16.2 %      3.7 min        16.80         692.61",
                        "         4        4.4 %      1.0 min        22.40         202.75",
                        "         5        1.0 %      0.2 min        28.00          73.58",
                        "         6        0.2 %      0.0 min        33.60          47.98",
                        " >       7  under 0.1 %      0.0 min        39.20          47.70",
                        "         8  under 0.1 %      0.0 min        44.80          52.92",
                        "")
                .contains(
                        "night/tart/finish/background: make 1",
                        "  4 takes likely, 7 at worst. Fixed by hand; runs out in 14.2 % of cases.");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void stepsByWholeSetsOfPlates() {
        assertThat(copies()).isZero();
        assertThat(out.toString()
                        .lines()
                        .skip(4)
                        .map(line -> line.replaceFirst("^ >?", "").strip().split(" ")[0])
                        .takeWhile(number -> !number.isEmpty()))
                .containsExactly("3", "5", "7", "9", "11", "13");
    }

    @Test
    void endsWithAllNeedsAndTheMoneyOfTheDay() {
        assertThat(copies()).isZero();
        assertThat(out.toString().lines())
                .endsWith(
                        "                                make     runs out   crew waits     food EUR   expected EUR",
                        "1/soup/plate/hero                 11        0.1 %      0.0 min        70.40         117.11",
                        "1/soup/plate/stand-in              2       14.2 %      3.4 min        12.80         643.28",
                        "2/soup/chop/insert                 7  under 0.1 %      0.0 min        39.20          47.70",
                        "night/tart/finish/background       1        0.0 %      0.0 min         0.00           0.01",
                        "",
                        "Food costs EUR 122.40 of a budget of EUR 900.50, 778.10 are left.",
                        "Expected cost of the day, with hands and waiting crew: EUR 808.10.");
    }

    @Test
    void fitsAHundredColumnsWithLongNamesToo() throws IOException {
        String id = "a-wide-shot-of-the-whole-table-from-the-gallery";
        replace("setups.csv", "\n2,12A", "\n" + id + ",12A");
        replace("setups.csv", "after setup 2", "after setup " + id);
        replace("needs.csv", "\n2,", "\n" + id + ",");
        replaceEverywhereElse(id);
        assertThat(copies()).as(err.toString()).isZero();
        assertThat(out.toString().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
        assertThat(out.toString().lines())
                .containsSequence(
                        id + "/soup/chop/insert",
                        "                                   7  under 0.1 %      0.0 min        39.20          47.70");
    }

    private void replaceEverywhereElse(String id) throws IOException {
        Path people = day.resolve("people.csv");
        Files.writeString(
                people,
                Files.readString(people, StandardCharsets.UTF_8).replace("setup 2", "setup " + id),
                StandardCharsets.UTF_8);
    }

    @Test
    void saysSoWhenTheDayGivesNoMoney() throws IOException {
        replace("day.csv", "crew cost a minute,180.00\n", "");
        replace("day.csv", "food budget,900.50\n", "");
        assertThat(copies()).isZero();
        assertThat(out.toString().lines())
                .contains(" >       4        4.4 %      1.0 min        22.40              -")
                .endsWith(
                        "Food costs EUR 86.40; the day has no food budget.",
                        "Without a crew cost in the day sheet, takes at worst decide.");
    }

    @Test
    void tellsABudgetThatCannotBuyOneHeroOfEach() throws IOException {
        replace("day.csv", "food budget,900.50", "food budget,30.00");
        assertThat(copies()).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString().lines())
                .containsExactly(
                        "inn, sheet day, row 8, key \"food budget\": [30.00] can't buy one hero of each need (numbers"
                                + " fixed by hand as fixed): the cheapest is EUR 31.20. Maybe raise the food budget by EUR 1.20,"
                                + " or let plates last more takes.");
    }
}
