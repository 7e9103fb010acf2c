package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import platecall.day.Day;

class DaySchemaTest {

    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(DaySchema.text(), InputFormat.JSON);

    private static List<Error> errors(String json) {
        return SCHEMA.validate(json, InputFormat.JSON);
    }

    private static String json(Day day) {
        return new String(JsonDay.pretty(day), StandardCharsets.UTF_8);
    }

    /** The inn, the example, and every day under {@code problems} that is not there to be broken. */
    static Stream<Day> days() throws IOException {
        List<Day> days = new ArrayList<>(List.of(DayFiles.read(SheetFolder.INN).day(), ExampleDay.day()));
        Path problems = Path.of("problems");
        if (Files.isDirectory(problems)) {
            try (Stream<Path> folders = Files.list(problems)) {
                folders.filter(folder -> Files.exists(folder.resolve("day.csv")))
                        .sorted()
                        .forEach(folder -> days.add(DayFiles.read(folder).day()));
            }
        }
        return days.stream();
    }

    @ParameterizedTest
    @MethodSource("days")
    void everyDayWrittenAsJsonFitsTheSchema(Day day) {
        assertThat(errors(json(day))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"title\" :            | \"titel\" :",
                "\"silent\" : true      | \"silent\" : 3",
                "\"part\" : \"insert\"  | \"part\" : \"close\"",
                "\"minutes likely\" : 10| \"minutes likely\" : 1.5",
                "\"call\" : \"11:40\"   | \"call\" : \"noon\"",
                "\"use\" : \"lasts 3 takes\" | \"use\" : \"lasts long\"",
                "\"places\" :           | \"place\" :"
            })
    void whatTheReaderRefusesTheSchemaRefusesToo(String good, String bad) {
        String json = json(DayFiles.read(SheetFolder.INN).day());

        assertThat(json).contains(good);
        assertThat(errors(json.replace(good, bad))).isNotEmpty();
    }

    @Test
    void everyExampleInTheDescriptionsCanBeReadAndFitsTheSchema() {
        for (Sheet<?> sheet : DaySheets.ALL) {
            for (Column<?, ?> column : sheet.columns()) {
                Frame frame = new Frame(
                        java.time.LocalDate.of(2026, 3, 14), java.time.ZoneId.of("Europe/Berlin"), true, false);
                assertThat(column.grammar().reader().apply(column.example(), frame))
                        .as(sheet.name() + " " + column.name())
                        .isNotNull();
                if (!column.grammar().pattern().isEmpty() && column.grammar().json() != Grammar.Json.LIST) {
                    assertThat(column.example())
                            .containsPattern(column.grammar().pattern());
                }
            }
        }
    }

    @Test
    void theGuideNamesEverySheetAndEveryColumn() {
        String guide = ColumnGuide.html(
                List.of(new ColumnGuide.LookTerm("melting", "size", "of a scoop (mm)", "50")), List.of());
        assertThat(guide).contains("<td>size</td><td>melting</td><td>of a scoop (mm)</td><td>50</td>");
        Map<Sheet<?>, String> titles = new LinkedHashMap<>();
        DaySheets.ALL.forEach(sheet -> titles.put(sheet, sheet.name()));
        titles.put(HappeningsFile.SHEET, "A file of what happened");
        titles.put(ReadingsFile.SHEET, "A file of thermometer readings");
        for (Sheet<?> sheet : titles.keySet()) {
            assertThat(guide).contains("<h2>" + titles.get(sheet) + "</h2>");
            for (Column<?, ?> column : sheet.columns()) {
                assertThat(guide).contains("<td>" + column.name() + (column.required() ? " *" : "") + "</td>");
            }
        }
    }

    @Test
    void theGuideSaysThatAnotherUnitIsRefusedAndWhatIsNotUsedYet() {
        String guide = ColumnGuide.html(List.of(), List.of("fda-2022", "uk"));
        assertThat(guide).contains("one of fda-2022, uk").contains("<code>plan DAY</code>");

        assertThat(guide).contains("another unit than the one given here is refused");
        assertThat(guide)
                .contains(
                        "<td>source</td><td>bought ready and only finished here, or made (kept, not used yet)",
                        "<td>quantity</td><td>for one copy (kept, not used yet)",
                        "<td>unit</td><td>unit of the quantity (kept, not used yet)",
                        "<td>supplier</td><td>who brings it (kept, not used yet)",
                        "<td>swallows</td><td>no if everything is spat out after the take (kept, not used yet)");
    }
}
