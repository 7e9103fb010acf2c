package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.day.Day;

class JsonDayTest {

    @TempDir
    Path folder;

    private Day day;
    private String text;

    @BeforeEach
    void writeTheInn() {
        day = DayFiles.read(SheetFolder.INN).day();
        text = new String(JsonDay.pretty(day), StandardCharsets.UTF_8);
    }

    private Path file(String content) throws IOException {
        return Files.writeString(folder.resolve("day.json"), content);
    }

    @Test
    void listsMayBeTextAndNumbersMayBeText() throws IOException {
        String other = text.replace(
                        "\"eaten by\" : [\n        \"Mina\",\n        \"Theo\"\n      ]",
                        "\"eaten by\" : \"Mina; Theo\"")
                .replace("\"minutes likely\" : 10", "\"minutes likely\" : \"10\"")
                .replace("\"silent\" : true", "\"silent\" : \"yes\"");

        assertThat(other).contains("Mina; Theo").contains("\"10\"").contains("\"yes\"");
        assertThat(DayFiles.read(file(other)).day()).isEqualTo(day);
    }

    @Test
    void aFileMayNameItsSchema() throws IOException {
        assertThat(DayFiles.read(file(text.replaceFirst("\\{", "{ \"\\$schema\": \"day.schema.json\",")))
                        .day())
                .isEqualTo(day);
    }

    @Test
    void itemsAreToldByTheirNumber() throws IOException {
        String bad = text.replace("\"minutes likely\" : 4", "\"minutes likely\" : {}")
                .replace("\"core temperature\" : 74.5", "\"core temperature\" : 1e999999999")
                .replace("\"title\" : \"Inn at the ford, supper\"", "\"title\" : []")
                .replace("\"date\" : \"2026-10-24\"", "\"date\" : {}")
                .replace("\"Theo\"\n", "\"Theo; Mina\"\n");

        assertThat(SheetFolder.report(file(bad)))
                .containsExactly(
                        "day.json, sheet day, key \"date\": must not be an object. Maybe write it as text.",
                        "day.json, sheet needs, item 1, column \"eaten by\": must be a list of plain texts, without semicolons in them.",
                        "day.json, sheet steps, item 3, column \"minutes likely\": must not be an object. Maybe write it as text.",
                        "day.json, sheet day, key \"title\": must not be empty: name of the day, printed on every page. Maybe Lantern supper.",
                        "day.json, sheet steps, item 3, column \"core temperature\": [1E+999999999] is not a number. Maybe one number in digits: core temperature to reach, by the thermometer.");
    }

    @Test
    void membersThatAreNoSheetOrNoTableAreTold() throws IOException {
        String bad = text.replace("\"setups\" :", "\"setup\" :")
                .replaceFirst("\"looks\" : \\[", "\"looks\" : 3, \"menu\" : [");

        assertThat(SheetFolder.report(file(bad)))
                .containsExactly(
                        "day.json, sheet looks: is not an array of objects. Maybe [ { ... }, { ... } ].",
                        "day.json: [setup] is not a sheet of a day. Did you mean setups?",
                        "day.json: [menu] is not a sheet of a day. Maybe one of day, setups, needs, dishes, looks, steps, ingredients, stations, circuits, people, cast, places.");
    }

    @Test
    void whatIsNoJsonIsToldWithItsPlace() throws IOException {
        assertThat(SheetFolder.report(file("{ \"day\": { \"title\": \"soup\" \"date\" } }")))
                .containsExactly("day.json: is not JSON: line 1, column 28. "
                        + "Maybe a comma, a bracket or a quotation mark is missing there, or one too many.");
        assertThat(SheetFolder.report(file("[1, 2]")))
                .containsExactly(
                        "day.json: is not a day in JSON. Maybe begin it with { \"day\": { \"title\": ... } }.");
        assertThat(SheetFolder.report(file("{} {}"))).hasSize(1);
        assertThat(SheetFolder.report(file("{\"day\":{},\"day\":{}}")))
                .containsExactly(
                        "day.json: has [day] twice in one object: line 1, column 16. Maybe remove one of the two.");
        assertThat(SheetFolder.report(file("[".repeat(100_000))))
                .containsExactly("day.json: is no day in JSON: something in it is longer or deeper than in any day. "
                        + "Maybe it is another file.");
        assertThat(SheetFolder.report(file("// mine\n{}")))
                .containsExactly("day.json: is not JSON: line 1, column 1: a comment stands there. "
                        + "Maybe remove it: JSON has none.");
    }

    /** RFC 8259, section 6 (value from memory): no leading zero, no bare point, neither NaN nor Infinity. */
    @ParameterizedTest
    @ValueSource(strings = {"01", "NaN", "Infinity", ".5", "1.", "+1"})
    void numbersThatAreNoneInJsonAreRefused(String number) throws IOException {
        String bad = text.replaceFirst("\"minutes likely\" : 10", "\"minutes likely\" : " + number);

        assertThat(bad).isNotEqualTo(text);
        assertThat(SheetFolder.report(file(bad))).singleElement().asString().startsWith("day.json: is not JSON: line ");
    }

    /** RFC 8259, section 6 (value from memory). */
    @Test
    void numbersMayHaveAnExponentAndZeroASign() throws IOException {
        String other = text.replaceFirst("\"minutes likely\" : 10", "\"minutes likely\" : 1e1")
                .replaceFirst("\"least wait\" : 0", "\"least wait\" : -0");

        assertThat(other).contains("\"minutes likely\" : 1e1").contains("\"least wait\" : -0");
        assertThat(DayFiles.read(file(other)).day()).isEqualTo(day);
    }

    @Test
    void aPlanInTheDaysPlaceIsToldInOneLine() throws IOException {
        assertThat(SheetFolder.report(file("{ \"dayDigest\": \"0a\", \"copies\": [], \"work\": [] }")))
                .containsExactly("day.json: is a plan, not a day. Maybe name the day that it was made for.");
    }
}
