package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BadSheetsTest {

    @TempDir
    Path parent;

    private SheetFolder inn;

    @BeforeEach
    void copyTheInn() {
        inn = new SheetFolder(parent);
    }

    @Test
    void theCopyCanBeReadUntilSomethingIsSpoilt() {
        assertThat(inn.report()).isEmpty();
    }

    @Test
    void aCellThatCannotBeReadIsToldWithItsPlaceItsTextAndAnExample() {
        inn.change("steps", "soup,chop,,0,,8,10,15", "soup,chop,,0,,8,abc,15");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet steps, row 2, column \"minutes likely\": [abc] is not a whole number of minutes. Maybe one number in digits: how long it takes; the plan reckons with it.");
    }

    @Test
    void everythingIsToldAtOnceEachThingOnce() {
        inn.change("day", "promise,95 %", "promise,much")
                .change("setups", ",10:30,09:50,", ",half past ten,09:50,")
                .change("setups", "soup insert,set,11:40,,2,3,6,1,no", "soup insert,set,,,2,3,6,1,perhaps")
                .change("needs", "lasts 3 takes", "lasts long")
                .change("people", "setup 1; 09:00-09:15", "holiday");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet day, row 9, key \"promise\": [much] is not a share. Maybe one number in digits: wanted chance that a setup is ready at its call.",
                        "inn, sheet setups, row 2, column \"call\": [half past ten] is not a time. Maybe 18:30, or 2026-03-14 18:30.",
                        "inn, sheet setups, row 3, column \"call\": must not be empty: when its first take should roll. Maybe 10:30.",
                        "inn, sheet setups, row 3, column \"silent\": [perhaps] is neither yes nor no. Maybe yes, or no.",
                        "inn, sheet needs, row 2, column \"use\": [lasts long] does not say how takes use up a plate. Maybe fresh, lasts 3 takes, or topped up in 4 min.",
                        "inn, sheet people, row 2, column \"away\": [holiday] is neither a setup nor a span of time. Maybe setup 3, or 13:00-14:00.");
    }

    @Test
    void valuesThatDoNotGoTogetherAreToldInTheWordsOfTheSheet() {
        inn.change("steps", "8,10,15", "12,10,15")
                .change("dishes", "table,0,6,15", "table,0,,15")
                .change("stations", "hob,burners,4", "hob,burners,0");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet dishes, row 2, column \"peak to\": peak to is missing: if look is table, peak to and usable to must be given. Maybe 6.",
                        "inn, sheet steps, row 2, column \"minutes likely\": [10] must not be below minutes low, which is 12. Maybe 12.",
                        "inn, sheet stations, row 2, column \"capacity\": [0] must be from 1 to 10000. Maybe 1.");
    }

    /** Each number is held against the highest before it, also where another cell of the row can't be read. */
    @Test
    void allNumbersOfARowThatMustNotFallAreToldAtOnce() {
        inn.change("steps", "8,10,15", "20,10,15")
                .change("setups", ",2,3,6,1,no", ",4,3,6,7,perhaps")
                .change("dishes", "table,0,6,15", "table,9,6,5");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet setups, row 3, column \"silent\": [perhaps] is neither yes nor no. Maybe yes, or no.",
                        "inn, sheet setups, row 3, column \"takes at worst\": [3] must not be below takes likely, which is 4. Maybe 4.",
                        "inn, sheet setups, row 3, column \"take cycle\": [6] must not be below rolling minutes, which is 7. Maybe 7.",
                        "inn, sheet dishes, row 2, column \"peak to\": [6] must not be below peak from, which is 9. Maybe 9.",
                        "inn, sheet dishes, row 2, column \"usable to\": [5] must not be below peak from, which is 9. Maybe 9.",
                        "inn, sheet steps, row 2, column \"minutes likely\": [10] must not be below minutes low, which is 20. Maybe 20.",
                        "inn, sheet steps, row 2, column \"minutes high\": [15] must not be below minutes low, which is 20. Maybe 20.");
    }

    @Test
    void aMisspeltColumnIsToldOnceWithTheColumnThatWasMeant() {
        inn.change("steps", "minutes likely", "minuts likely").change("places", "heard on set", "colour");
        inn.change("needs", "plates per take", "plates");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet needs, column \"plates\": there is no such column. Did you mean plates per take?",
                        "inn, sheet steps, column \"minuts likely\": there is no such column. Did you mean minutes likely?",
                        "inn, sheet places, column \"colour\": there is no such column.");
    }

    @Test
    void aMissingColumnIsToldOnceWhateverTheNumberOfRows() {
        inn.write("places", "walk,hours\nset:4,\n,\nbarn:3,\n");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet places, column \"place\": this column is missing: its short name, like no other. Maybe kitchen.");
    }

    @Test
    void aColumnOrAKeyThatIsThereTwiceIsTold() {
        inn.write("circuits", "circuit,volts,amps,volts\nwall,230,32,230\n")
                .change("day", "currency,EUR", "currency,EUR\ncurrency,GBP");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet day, row 6, key \"currency\": is there twice. Maybe remove one of the two.",
                        "inn, sheet circuits, column \"volts\": is there twice. Maybe remove one of the two.");
    }

    @Test
    void keysOfTheDayMayBeMisspeltOrMissing() {
        inn.change("day", "zone,Europe/Berlin", "zon,Europe/Berlin").change("day", "date,2026-10-24\n", "");

        assertThat(inn.report())
                .startsWith(
                        "inn, sheet day, row 3, key \"zon\": there is no such key. Did you mean zone?",
                        "inn, sheet day, key \"date\": this key is missing: shooting date; a time written without a date falls on it. Maybe 2026-03-14.");
    }

    @Test
    void aSheetMayBeMissingMisspeltOrEmpty() throws IOException {
        inn.delete("needs").write("people", "").write("places", "place,walk\n");
        Files.move(inn.sheet("steps"), inn.sheet("setps"));

        assertThat(inn.report())
                .containsExactly(
                        "inn: [setps] is not a sheet of a day. Did you mean steps?",
                        "inn, sheet needs: this sheet is missing. Each row of it is a dish wanted by a setup.",
                        "inn, sheet people: is empty, not even a header is in it. Maybe write a first row: person, skills, hours, away, cost an hour.",
                        "inn, sheet places: has no row. Each row of it is a kitchen, a set, or both.");
    }

    @Test
    void sheetsThatNoDayNeedsMayBeMissingOrEmptyAndPapersAndPicturesMayLieThere() throws IOException {
        inn.delete("looks").delete("circuits").delete("cast").write("ingredients", "");
        Files.writeString(inn.path.resolve("README.md"), "notes");
        Files.writeString(inn.path.resolve("guide.html"), "<html>");
        Files.writeString(inn.path.resolve(".cast.csv.swp"), "who");
        Files.writeString(inn.path.resolve("sequence.csv"), "time,what");
        Files.writeString(inn.path.resolve("changes.csv"), "was,is,change,what,dish,copy");

        assertThat(inn.report()).isEmpty();
        assertThat(DayFiles.read(inn.path).remarks()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '!', textBlock = """
            ingredients (1).csv ! [ingredients (1)] is not a sheet of a day. Did you mean ingredients?
            Zutaten.csv         ! [Zutaten] is not a sheet of a day. Did you mean ingredients?
            my_ingredient.csv   ! [my_ingredient] is not a sheet of a day. Did you mean ingredients?
            ingredients.txt     ! [ingredients.txt] is not a sheet of a day. Maybe save it as ingredients.csv.
            ingredients         ! [ingredients] is not a sheet of a day. Maybe save it as ingredients.csv.
            """)
    void aSheetByAnotherNameIsTold(String name, String told) throws IOException {
        Files.move(inn.sheet("ingredients"), inn.path.resolve(name));

        assertThat(inn.report()).containsExactly("inn: " + told);
    }

    @Test
    void aTableThatMayBeASheetThatIsMissingIsToldUnlessItsNameSaysWhichOtherOneItIs() throws IOException {
        Files.writeString(inn.path.resolve("shopping.csv"), "what\neggs\n");
        Files.writeString(inn.path.resolve("cast (1).csv"), "who\nTheo\n");
        Files.writeString(inn.path.resolve("notes.txt"), "eggs");

        assertThat(remarks())
                .containsExactly(
                        "inn: [cast (1)] is not a sheet of a day, so it is not read; cast is. Maybe put it elsewhere.",
                        "inn: [notes.txt] is not a sheet of a day, so it is not read. Maybe put it elsewhere.",
                        "inn: [shopping] is not a sheet of a day, so it is not read. Maybe put it elsewhere.");
        inn.delete("circuits").delete("looks");
        assertThat(inn.report())
                .containsExactly(
                        "inn: [shopping] is not a sheet of a day. Maybe it is one of those that are missing (looks, circuits) and must have that name; if not, put it elsewhere.");
    }

    @Test
    void aSheetWithoutARowDoesNotHideTheOneThatWasMeant() throws IOException {
        Files.move(inn.sheet("ingredients"), inn.path.resolve("ingredients (1).csv"));
        inn.write("ingredients", "dish,ingredient\n");

        assertThat(inn.report())
                .containsExactly("inn: [ingredients (1)] is not a sheet of a day. Did you mean ingredients?");
    }

    @Test
    void everyCellOutOfItsRangeIsToldAtOnce() {
        inn.change("circuits", "wall,230,32,1.25", "wall,-230,0,1.25")
                .change("setups", "4,7,8,2,yes", "0,501,8,-2,yes");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet setups, row 2, column \"takes likely\": [0] must be from 1 to 500. Maybe 1.",
                        "inn, sheet setups, row 2, column \"takes at worst\": [501] must be from 1 to 500. Maybe 500.",
                        "inn, sheet setups, row 2, column \"rolling minutes\": [-2] must be from 0 to 1440 minutes. Maybe 2.",
                        "inn, sheet circuits, row 2, column \"volts\": [-230] must be above 0, at most 1000. Maybe 230.",
                        "inn, sheet circuits, row 2, column \"amps\": [0] must be above 0, at most 1000. Maybe one number in digits: rating of its breaker.");
    }

    /** 185 and 165 degrees Fahrenheit are 85 and 74 degrees Celsius by definition, NIST SP 811, B.8. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "185|85.",
                "165|74.",
                "450|one number in digits: core temperature to reach, by the thermometer.",
                "-60|one number in digits: core temperature to reach, by the thermometer."
            })
    void degreesOutOfRangeAreOfferedFromFahrenheitOrNotAtAll(String written, String offered) {
        inn.write(
                "steps",
                "dish,step,minutes likely,station,core temperature\nsoup,plate,10,hob:1," + written
                        + "\nroast,plate,10,hob:1,\n");

        assertThat(inn.report())
                .contains("inn, sheet steps, row 2, column \"core temperature\": [" + written
                        + "] must be from -40 to 150 degrees C. Maybe " + offered);
    }

    @ParameterizedTest
    @CsvSource({
        "'9,,8,2', takes at worst, 9",
        "'4,,8,2', takes at worst, 7",
        "',3,8,2', takes likely, 3",
        "',7,8,2', takes likely, 4",
        "'4,7,,12', take cycle, 12",
        "'4,7,,2', take cycle, 8"
    })
    void aBlankCellIsAnsweredWithANumberThatGoesWithThoseBesideIt(String cells, String column, int offered) {
        inn.change("setups", "4,7,8,2,yes", cells + ",yes");

        assertThat(inn.report())
                .singleElement()
                .asString()
                .startsWith("inn, sheet setups, row 2, column \"" + column + "\": must not be empty")
                .endsWith("Maybe " + offered + ".");
    }

    @ParameterizedTest
    @CsvSource({"'9,-1,8,2', takes at worst, 9", "'9,-12,8,2', takes at worst, 12", "'4,7,8,-9', rolling minutes, 0"})
    void aNumberOutOfRangeIsAnsweredWithOneThatGoesWithThoseBesideIt(String cells, String column, int offered) {
        inn.change("setups", "4,7,8,2,yes", cells + ",yes");

        assertThat(inn.report())
                .singleElement()
                .asString()
                .startsWith("inn, sheet setups, row 2, column \"" + column + "\": [-")
                .endsWith("Maybe " + offered + ".");
    }

    @Test
    void aUnitInAHeaderThatIsNotTheColumnsIsTold() {
        inn.change("setups", "take cycle (minutes)", "take cycle (hours)")
                .change("day", "set temperature (degrees C)", "set temperature (degrees F)");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet day, row 11, key \"set temperature (degrees F)\": has another unit than degrees C, in which it is read. Maybe set temperature (degrees C), with its numbers in that unit.",
                        "inn, sheet setups, column \"take cycle (hours)\": has another unit than minutes, in which it is read. Maybe take cycle (minutes), with its numbers in that unit.");
    }

    @Test
    void aUnitMayBeWrittenInOtherWays() {
        inn.change("setups", "take cycle (minutes)", "Take cycle (min.)")
                .change("setups", "rolling minutes", "rolling minutes (mins)")
                .change("day", "set temperature (degrees C)", "set temperature (°C)")
                .change("stations", "heat-up (degrees C a minute)", "heat-up (°C/min)");

        assertThat(inn.report()).isEmpty();
    }

    @Test
    void aTitleAboveTheHeaderIsToldInOneLine() {
        inn.write("circuits", "Our circuits\n" + inn.text("circuits")).write("day", "Inn\n\n" + inn.text("day"));

        assertThat(inn.report())
                .contains(
                        "inn, sheet day: has no names of columns in its first row; row 3 looks like them. Maybe delete what stands above.",
                        "inn, sheet circuits: has no names of columns in its first row; row 2 looks like them. Maybe delete what stands above.");
    }

    @ParameterizedTest
    @CsvSource({"11.00, 11:00", "1100, 11:00", "11:00 am, 11:00", "2 pm, 14:00", "12:30 a.m., 00:30", "0.4583, 11:00"})
    void aTimeWrittenInAnotherWayIsSuggestedAsItMustBe(String written, String time) {
        inn.change("setups", ",10:30,09:50,", "," + written + ",09:50,");

        assertThat(inn.report())
                .containsExactly("inn, sheet setups, row 2, column \"call\": [" + written + "] is not a time. Maybe "
                        + time + ".");
    }

    @Test
    void aHeaderThatWasSortedIntoTheSheetIsToldInOneLine() {
        List<String> lines = inn.text("steps").lines().toList();
        List<String> sorted = new ArrayList<>(lines.subList(1, lines.size()));
        sorted.add(3, lines.get(0));
        inn.write("steps", String.join("\n", sorted) + "\n");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet steps: has no names of columns in its first row; row 4 looks like them. Maybe make it the first row.");
    }

    @Test
    void aHeaderThatWasDeletedIsToldInOneLine() {
        inn.write("stations", inn.text("stations").replaceFirst("[^\n]*\n", ""));

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet stations: has no names of columns in its first row. Maybe the first row was deleted: station, kind, capacity, unit, hours, place, heat-up, cool-down, amps, circuit.");
    }

    @Test
    void aDateAndMoneyWrittenInAnotherWayAreSuggestedAsTheyMustBe() {
        inn.change("day", "2026-10-24\n", "24.10.2026\n").change("ingredients", ",0.80,", ",0.799,");

        assertThat(inn.report())
                .contains(
                        "inn, sheet day, row 3, key \"date\": [24.10.2026] is not a date. Maybe 2026-10-24.",
                        "inn, sheet ingredients, row 2, column \"cost\": [0.799] is not an amount of money: it has more than two decimals. Maybe 0.80, or 799.");
    }

    private List<String> remarks() {
        DayFile file = DayFiles.read(inn.path);
        return file.remarks().stream().map(file::tell).toList();
    }

    /** Else a comma of thousands makes 250 cents of it, and nobody knows. */
    @Test
    void whatStandsBesideTheValueOfAKeyIsTold() {
        inn.change("day", "crew cost a minute,180.00", "crew cost a minute,1,250");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet day, row 7, key \"crew cost a minute\": [250] stands to the right of the last"
                                + " column. Maybe a cell with the separator in it is not in quotation marks.");
    }

    @Test
    void cellsBesideTheColumnsAreTold() {
        inn.change("cast", "Theo,,,yes", "Theo,,,yes,soup").write("circuits", "circuit,volts,,amps\nwall,230,x,32\n");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet circuits, row 2: [x] stands in a column without a name. Maybe name it in the first row, or empty it.",
                        "inn, sheet cast, row 3: [soup] stands to the right of the last column. Maybe a cell with the separator in it is not in quotation marks.");
    }

    @Test
    void rowsAreCountedAsASpreadsheetShowsThemWithBlankOnesAndCellsOfSeveralLines() {
        inn.write("places", "\nplace,walk,hours\n,,\nkitchen,\"set:4;\nbarn:12\",\n\nset,,never\nbarn,,\n");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet places, row 6, column \"hours\": [never] is not a span of time. Maybe 06:00-18:00, or 2026-03-13 14:00 - 2026-03-14 02:00.");
    }

    @Test
    void aQuotationMarkThatIsNeverClosedIsTold() {
        inn.change("cast", "Theo,,,yes", "\"Theo,,,yes");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet cast: row 3 is not CSV: a quotation mark is opened and not closed, or stands inside a cell. Maybe double each quotation mark that belongs to the text.");
    }

    @Test
    void textThatIsNotUtf8IsToldWithTheLineFromWhichOnItIsNot() throws IOException {
        byte[] latin = "who,diet\nMina,vegan\nZo\u00eb,\n".getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
        Files.write(inn.sheet("cast"), latin);

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet cast: is not UTF-8 text, from line 3 on. Maybe save it anew as \"CSV UTF-8\", or send the day as .xlsx.");
    }

    @Test
    void aNulOrAnotherControlSignInACellIsTold() {
        inn.change("cast", "Theo,,,yes", "The\0o,,,yes");

        assertThat(inn.report())
                .containsExactly(
                        "inn, sheet cast, row 3, column \"who\": [The o] has a sign in it that is no letter. Maybe type it anew.");
    }

    @Test
    void aFileThatIsTooLargeIsRefusedUnread() throws IOException {
        byte[] large = new byte[50_000_000];
        Arrays.fill(large, (byte) ',');
        Files.write(inn.sheet("cast"), large);
        Path json = parent.resolve("large.json");
        Files.write(json, large);

        assertThat(inn.report()).containsExactly("inn, sheet cast: is too large: a day may have at most 20 MB.");
        assertThat(SheetFolder.report(json)).containsExactly("large.json: is too large: a day may have at most 20 MB.");
    }

    @Test
    void aSheetWithMoreRowsThanAnyDayHasIsRefused() {
        inn.write("cast", "who\n" + "x\n".repeat(20_001));

        assertThat(inn.report()).containsExactly("inn, sheet cast: has more than 20000 rows.");
    }

    @Test
    void aReportIsCutWhereNobodyReadsOn() {
        inn.write("cast", "who,swallows\n" + "x,perhaps\n".repeat(150));

        assertThat(inn.report()).hasSize(101).last().isEqualTo("and 50 more.");
    }

    @Test
    void whatIsNoDayAtAllIsTold() throws IOException {
        Files.writeString(parent.resolve("notes.txt"), "soup");
        Files.writeString(parent.resolve("empty.json"), "");
        Files.writeString(parent.resolve("empty.xlsx"), "");
        Files.createDirectory(parent.resolve("nothing"));

        assertThat(SheetFolder.report(parent.resolve("gone")))
                .containsExactly("gone: there is no such file or folder.");
        assertThat(SheetFolder.report(parent.resolve("notes.txt")))
                .containsExactly(
                        "notes.txt: is neither a folder of CSV sheets, nor a workbook (.xlsx), nor JSON (.json).");
        assertThat(SheetFolder.report(parent.resolve("empty.json"))).containsExactly("empty.json: is empty (0 bytes).");
        assertThat(SheetFolder.report(parent.resolve("empty.xlsx"))).containsExactly("empty.xlsx: is empty (0 bytes).");
        assertThat(SheetFolder.report(parent.resolve("nothing")))
                .hasSize(8)
                .first()
                .isEqualTo("nothing, sheet day: this sheet is missing. Each row of it is a key and its value.");
    }
}
