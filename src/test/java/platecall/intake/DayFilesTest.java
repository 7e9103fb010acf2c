package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Release;
import platecall.day.StationUse;
import platecall.day.Use;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

class DayFilesTest {

    static final Path INN = Path.of("src/test/resources/platecall/intake/inn");

    @TempDir
    Path folder;

    private static Moment at(String time) {
        return Moment.of(ZonedDateTime.parse(time));
    }

    @Test
    void everyKindOfCellIsReadAsItsRecord() {
        Day day = DayFiles.read(INN).day();

        assertThat(day.facts().title()).isEqualTo("Inn at the ford, supper");
        assertThat(day.facts().promise()).isEqualTo(0.95);
        assertThat(day.facts().foodBudget()).contains(new Money(90_050));
        assertThat(day.facts().kitchenHours())
                .containsExactly(
                        new Span(at("2026-10-23T14:00+02:00"), at("2026-10-23T20:00+02:00")),
                        new Span(at("2026-10-24T06:00+02:00"), at("2026-10-24T12:30+02:00")),
                        new Span(at("2026-10-24T22:00+02:00"), at("2026-10-25T03:30+01:00")));
        assertThat(day.setups().get(0).release()).isEqualTo(new Release.After("2"));
        assertThat(day.setups().get(1).lighting()).isEmpty();
        assertThat(day.setups().get(2).call()).isEqualTo(at("2026-10-25T02:30+01:00"));
        assertThat(day.setups().get(2).lighting()).contains(at("2026-10-25T02:10+02:00"));
        assertThat(day.needs().get(0).use()).isEqualTo(new Use.LastsTakes(3));
        assertThat(day.needs().get(0).eatenBy()).containsExactly("Mina", "Theo");
        assertThat(day.needs().get(3).use()).isEqualTo(new Use.ToppedUp(4));
        assertThat(day.dishes().get(0).spoilage()).isEqualTo(0.025);
        assertThat(day.dishes().get(1).name()).isEqualTo("Tart \"Gretel\"");
        assertThat(day.dishes().get(1).edible()).isFalse();
        assertThat(day.steps().get(2).stations()).containsExactly(new StationUse(List.of("oven a", "oven b"), 1));
        assertThat(day.steps().get(2).coreCelsius()).contains(74.5);
        assertThat(day.people().get(0).away())
                .containsExactly(
                        new Absence.HandDouble("1"),
                        new Absence.During(new Span(at("2026-10-24T09:00+02:00"), at("2026-10-24T09:15+02:00"))));
        assertThat(day.ingredients().get(2).arrives()).isEqualTo(Optional.empty());
        assertThat(day.walkMinutes("set", "kitchen")).isEqualTo(4);
    }

    @ParameterizedTest
    @MethodSource("platecall.intake.DaySchemaTest#days")
    void everyDayReadsBackEqualFromEveryFormat(Day day) {
        for (String name : List.of("csv", "day.xlsx", "day.json")) {
            DayFiles.write(day, folder.resolve(name));

            assertThat(DayFiles.read(folder.resolve(name)).day()).isEqualTo(day);
        }
    }

    @Test
    void formatsFollowEachOtherWithoutLossAndTheSheetsComeBackLetterByLetter() throws IOException {
        DayFiles.write(DayFiles.read(INN).day(), folder.resolve("a.xlsx"));
        DayFiles.write(DayFiles.read(folder.resolve("a.xlsx")).day(), folder.resolve("b.json"));
        DayFiles.write(DayFiles.read(folder.resolve("b.json")).day(), folder.resolve("c"));

        try (Stream<Path> sheets = Files.list(INN)) {
            for (Path sheet : sheets.toList()) {
                assertThat(folder.resolve("c").resolve(sheet.getFileName())).hasSameTextualContentAs(sheet);
            }
        }
    }

    @Test
    void aDayHasTheSameDigestWhateverFileItCameFrom() {
        Day day = DayFiles.read(INN).day();
        DayFiles.write(day, folder.resolve("a.xlsx"));

        assertThat(DayFiles.digest(DayFiles.read(folder.resolve("a.xlsx")).day()))
                .isEqualTo(DayFiles.digest(day))
                .matches("[0-9a-f]{64}");
    }

    @Test
    void nothingThatIsThereIsOverwrittenUnlessAsked() throws IOException {
        Day day = DayFiles.read(INN).day();
        Path file = folder.resolve("a.json");
        Files.writeString(file, "mine");

        assertThatThrownBy(() -> DayFiles.write(day, file))
                .isInstanceOfSatisfying(
                        BadDay.class,
                        bad -> assertThat(bad.report())
                                .isEqualTo(
                                        "a.json: can't be written: a.json is there already. Maybe give another name."));
        assertThat(file).hasContent("mine");
        assertThatThrownBy(() -> DayFiles.write(day, file.resolve("b.json")))
                .isInstanceOfSatisfying(
                        BadDay.class,
                        bad -> assertThat(bad.report())
                                .isEqualTo("b.json: can't be written: a.json is a file, not a folder. "
                                        + "Maybe choose another folder."));
        DayFiles.replace(day, file);
        assertThat(DayFiles.read(file).day()).isEqualTo(day);
    }
}
