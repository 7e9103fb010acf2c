package platecall.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import platecall.day.Absence;
import platecall.day.Part;
import platecall.day.Release;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Use;
import platecall.units.Money;

class GrammarsTest {

    private static final Frame COMMAS = new Frame(LocalDate.of(2026, 3, 14), ZoneId.of("Europe/Berlin"), true, false);
    private static final Frame SEMICOLONS = new Frame(COMMAS.date(), COMMAS.zone(), true, true);
    private static final Grammar<Part> PARTS = Grammars.oneOf("a part", List.of(Part.values()), Part::word);
    private static final Grammar<Station.Kind> KINDS =
            Grammars.oneOf("a kind of station", List.of(Station.Kind.values()), Station.Kind::word);

    private static <V> V read(Grammar<V> grammar, String text) {
        return grammar.reader().apply(text, COMMAS);
    }

    private static void refuses(Grammar<?> grammar, String text, String what, String wayOut) {
        assertThatThrownBy(() -> read(grammar, text))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut()).isEqualTo(wayOut))
                .hasMessage(what);
    }

    @Test
    void wholeNumbersAreWhole() {
        assertThat(read(Grammars.MINUTES, "12")).isEqualTo(12);
        assertThat(read(Grammars.MINUTES, "12.0")).isEqualTo(12);
        assertThat(read(Grammars.MINUTES, "-3")).isEqualTo(-3);
        refuses(Grammars.MINUTES, "1.5", "is not a whole number of minutes", "Maybe 2.");
        refuses(Grammars.MINUTES, "1,5", "is not a whole number of minutes", "Maybe 2.");
        refuses(Grammars.WHOLE, "1,5", "is not a whole number", "Maybe 2.");
        refuses(
                Grammars.MINUTES,
                "3000000000",
                "is not a whole number of minutes below 2 billion",
                "Maybe a smaller one.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"abc", "Pia", "1e3", "\u0661\u0662", "12 x 3"})
    void noNumberIsOfferedThatNobodyMeant(String text) {
        refuses(Grammars.MINUTES, text, "is not a whole number of minutes", "");
        refuses(Grammars.WHOLE, text, "is not a whole number", "");
        refuses(Grammars.COPY_NUMBER, text, "is not a copy's number", "");
        refuses(Grammars.CELSIUS, text, "is not a whole number of degrees Celsius", "");
        refuses(Grammars.DECIMAL, text, "is not a number", "");
        refuses(Grammars.MONEY, text, "is not an amount of money", "");
        refuses(Grammars.SHARE, text, "is not a share", "");
    }

    @Test
    void aColumnOfNumbersSaysWhatGoesThereIfNoneCanBeGuessed() {
        assertThatThrownBy(() -> DaySheets.Steps.HANDS.read("Pia", COMMAS, () -> Column.Between.ANY))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(unreadable.wayOut())
                                .isEqualTo("Maybe one number in digits: pairs of hands it takes."))
                .hasMessage("is not a whole number");
    }

    @Test
    void aDecimalCommaIsReadOnlyWhereTheSeparatorIsAnother() {
        assertThat(Grammars.DECIMAL.reader().apply("1,5", SEMICOLONS)).isEqualTo(1.5);
        assertThat(Grammars.MONEY.reader().apply("12,50", SEMICOLONS)).isEqualTo(new Money(1250));
        refuses(Grammars.DECIMAL, "1,5", "is not a number", "Maybe 1.5.");
    }

    @Test
    void moneyHasAtMostTwoDecimalsSoThatAPointForThousandsIsSeen() {
        assertThat(read(Grammars.MONEY, "12.5")).isEqualTo(new Money(1250));
        assertThat(read(Grammars.MONEY, "12.500")).isEqualTo(new Money(1250));
        refuses(
                Grammars.MONEY,
                "1.234",
                "is not an amount of money: it has more than two decimals",
                "Maybe 1.23, or 1234.");
        refuses(Grammars.MONEY, "1.200,00", "is not an amount of money", "Maybe 1200.00.");
        refuses(Grammars.MONEY, "1,200.00", "is not an amount of money", "Maybe 1200.");
        refuses(Grammars.MONEY, "0.7999", "is not an amount of money: it has more than two decimals", "Maybe 0.80.");
        refuses(Grammars.MONEY, "-1", "is not an amount of money from 0 to 1000000000", "Maybe 1.");
        refuses(Grammars.MONEY, "1000000001", "is not an amount of money from 0 to 1000000000", "Maybe a smaller one.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12 min | 12",
                "0.7 h | 42",
                "0,5 hours | 30",
                "1:30 | 90",
                "1h05 | 65",
                "2 h 5 min | 125",
                "90 sec | 2",
                "ca 12 | 12",
                "1.3 min | 2",
                "50 F | 50",
                "10-12 | 12"
            })
    void minutesWithAUnitAreOfferedWithoutIt(String text, String offered) {
        refuses(Grammars.MINUTES, text, "is not a whole number of minutes", "Maybe " + offered + ".");
    }

    // 356 degrees Fahrenheit are 180 degrees Celsius by definition, NIST SP 811, B.8
    @ParameterizedTest
    @CsvSource({"356 °F,180", "350F,177", "350 degrees F,177", "165 Fahrenheit,74", "200 C,200", "200°,200"})
    void degreesWithAUnitAreOfferedInCelsius(String text, String offered) {
        refuses(Grammars.CELSIUS, text, "is not a whole number of degrees Celsius", "Maybe " + offered + ".");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"260 € | 260", "EUR 12.50 | 12.5", "$1,250.00 | 1250", "1,250 | 1250", "12,50 | 12.50", "50 F | 50"
            })
    void moneyWithACurrencyIsOfferedWithoutIt(String text, String offered) {
        refuses(Grammars.MONEY, text, "is not an amount of money", "Maybe " + offered + ".");
    }

    @ParameterizedTest
    @CsvSource({"95 %,0.95", "95%,0.95", "0.95,0.95", "2.5 %,0.025", "100 %,1", "0,0", "1,1"})
    void sharesStandInPercentOrAsFractions(String text, double share) {
        assertThat(read(Grammars.SHARE, text)).isEqualTo(share);
    }

    @Test
    void aShareAboveOneIsTakenForAForgottenPercentSign() {
        refuses(Grammars.SHARE, "95", "is a share above 1", "Maybe 95 %.");
        refuses(Grammars.SHARE, "2,5 %", "is not a share", "Maybe 2.5 %.");
        refuses(Grammars.SHARE, ".05", "is not a share", "Maybe 0.05.");
        refuses(Grammars.DECIMAL, "165 F", "is not a number", "Maybe 74.");
        refuses(Grammars.SHARE, "80 percent", "is not a share", "Maybe 80 %.");
    }

    @Test
    void wordsAreReadInAnyCaseAndTheNearestIsOfferedForAnUnknownOne() {
        assertThat(read(PARTS, "Stand in")).isEqualTo(Part.STAND_IN);
        assertThat(read(KINDS, "HOT-HOLD")).isEqualTo(Station.Kind.HOT_HOLD);
        refuses(PARTS, "herro", "is not a part", "Maybe hero.");
        refuses(PARTS, "table", "is not a part", "Maybe one of hero, stand-in, insert, background.");
        assertThat(read(Grammars.YES_NO, "Y")).isTrue();
        refuses(Grammars.YES_NO, "maybe", "is neither yes nor no", "Maybe yes, or no.");
    }

    @Test
    void usesAreReadAndWritten() {
        assertThat(read(Grammars.USE, "Fresh")).isEqualTo(new Use.FreshEachTake());
        assertThat(read(Grammars.USE, "lasts 1 take")).isEqualTo(new Use.LastsTakes(1));
        assertThat(read(Grammars.USE, "topped up in 4 minutes")).isEqualTo(new Use.ToppedUp(4));
        assertThat(Grammars.USE.writer().apply(new Use.LastsTakes(1), COMMAS)).isEqualTo("lasts 1 take");
        refuses(
                Grammars.USE,
                "lasts long",
                "does not say how takes use up a plate",
                "Maybe fresh, lasts 3 takes, or topped up in 4 min.");
    }

    @Test
    void releasesAreAtTheEndAtATimeOrAfterASetup() {
        assertThat(read(Grammars.RELEASE, "At end")).isEqualTo(new Release.AtEnd());
        assertThat(read(Grammars.RELEASE, "after setup 12 B")).isEqualTo(new Release.After("12 B"));
        assertThat(read(Grammars.RELEASE, "18:30")).isEqualTo(new Release.At(read(Clock.MOMENT, "18:30")));
        refuses(Grammars.RELEASE, "later", "is not a release", "Maybe at end, 18:30, or after setup 5.");
        refuses(Grammars.RELEASE, "18.30", "is not a time", "Maybe 18:30.");
    }

    @Test
    void absencesAreSetupsOrSpans() {
        assertThat(read(Grammars.ABSENCES, "Setup 3; 13:00-14:00"))
                .containsExactly(new Absence.HandDouble("3"), new Absence.During(read(Clock.SPAN, "13:00-14:00")));
        refuses(
                Grammars.ABSENCES,
                "on holiday",
                "is neither a setup nor a span of time",
                "Maybe setup 3, or 13:00-14:00.");
    }

    @Test
    void stationsAreNamedWithUnitsAndAlternatives() {
        assertThat(read(Grammars.STATION_USES, "hob:2; oven a | oven b:1; counter"))
                .containsExactly(
                        new StationUse(List.of("hob"), 2),
                        new StationUse(List.of("oven a", "oven b"), 1),
                        new StationUse(List.of("counter"), 1));
        refuses(
                Grammars.STATION_USES,
                "hob:two",
                "is not a station and how much of it",
                "Maybe digits after the colon.");
        refuses(Grammars.STATION_USES, "gas|hob:1.5", "is not a station and how much of it", "Maybe gas|hob:2.");
        refuses(Grammars.STATION_USES, "hob:1, oven:1", "has a comma between stations", "Maybe hob:1; oven:1.");
        refuses(Grammars.STATION_USES, "oven a|:1", "does not name a station", "Maybe hob:1, or oven a|oven b:1.");
    }

    @Test
    void walksNameEachPlaceOnce() {
        assertThat(read(Grammars.WALK, "set:4; barn:12")).isEqualTo(Map.of("set", 4, "barn", 12));
        refuses(Grammars.WALK, "set:4; set:5", "names set twice", "");
        refuses(
                Grammars.WALK,
                "set",
                "is not a place and the minutes to walk there",
                "Maybe a place, a colon and whole minutes, as in set:4; barn:12.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "set:4, stage 2:12",
                "set:4,stage 2:12",
                "set 4 min; stage 2: 12",
                "set=4 / stage 2=12",
                "set - 4 | stage 2: 12 minutes",
                "set:3.5; stage 2:12",
                "set:3,5, stage 2:12"
            })
    void theWayOutOfAWalkCanBePastedBack(String text) {
        assertThatThrownBy(() -> read(Grammars.WALK, text))
                .isInstanceOfSatisfying(
                        Unreadable.class,
                        unreadable -> assertThat(
                                        read(Grammars.WALK, unreadable.wayOut().replaceAll("^Maybe |\\.$", "")))
                                .isEqualTo(Map.of("set", 4, "stage 2", 12)));
    }

    @Test
    void anAbbreviatedZoneIsOfferedByItsName() {
        refuses(Grammars.ZONE, "PST", "is not a time zone", "Maybe America/Los_Angeles.");
        refuses(Grammars.ZONE, "Europe/Berlim", "is not a time zone", "Maybe Europe/Berlin.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "New York|America/New_York",
                "new_york|America/New_York",
                "New York, NY|America/New_York",
                "New York City, NY|America/New_York",
                "Los Angeles|America/Los_Angeles",
                "London|Europe/London",
                "Mexico City, Mexico|America/Mexico_City",
                "Eastern|America/New_York",
                "US Eastern|America/New_York",
                "Eastern Standard Time|America/New_York",
                "ET|America/New_York",
                "Central Time|America/Chicago",
                "Mountain|America/Denver",
                "pacific|America/Los_Angeles"
            })
    void aCityOrAUsualWordIsOfferedAsItsZone(String text, String zone) {
        refuses(Grammars.ZONE, text, "is not a time zone", "Maybe " + zone + ".");
        assertThat(read(Grammars.ZONE, zone).getId()).isEqualTo(zone);
    }

    @Test
    void listsSkipWhatIsEmpty() {
        assertThat(read(Grammars.NAMES, " milk ;; nuts;")).containsExactly("milk", "nuts");
        assertThat(read(Grammars.NAMES, "")).isEmpty();
    }

    @Test
    void valuesOfLooksHaveADecimalCommaWhereOtherNumbersHave() {
        assertThat(Grammars.MEASURE.reader().apply("2,6", SEMICOLONS)).isEqualTo("2.6");
        assertThat(Grammars.MEASURE.reader().apply("-0,5 mm", SEMICOLONS)).isEqualTo("-0.5 mm");
        assertThat(Grammars.MEASURE.reader().apply("1,5,2", SEMICOLONS)).isEqualTo("1,5,2");
        assertThat(Grammars.MEASURE.reader().apply("thin, white", SEMICOLONS)).isEqualTo("thin, white");
        assertThat(read(Grammars.MEASURE, "2,6")).isEqualTo("2,6");
    }

    @Test
    void namesKeepClearOfTheSignsThatListsNeed() {
        refuses(Grammars.WALK, "set: 1 min", "is not a place and the minutes to walk there", "Maybe set:1.");
        refuses(
                Grammars.WALK,
                "van 2, quay 1, alley=5 minutes",
                "is not a place and the minutes to walk there",
                "Maybe van:2; quay:1; alley:5.");
        refuses(Grammars.WHOLE, "5 or 6", "is not a whole number", "Maybe 6.");
        refuses(Grammars.WHOLE, "2-3", "is not a whole number", "Maybe 3.");
        refuses(Grammars.STATION_USES, "12:00 AM", "is a time, not a station", "Maybe hob:1, or oven a|oven b:1.");
        refuses(
                Grammars.ZONE,
                "-1",
                "is not a time zone",
                "Maybe a continent and a city, as in Europe/Berlin or America/New_York.");
        refuses(Grammars.RELEASE, "after 6", "is not a release", "Maybe after setup 6.");
        refuses(Grammars.RELEASE, "after scene 6", "is not a release", "Maybe after setup 6.");
        refuses(Grammars.RELEASE, "7", "is not a release", "Maybe after setup 7, or 07:00.");
        refuses(Grammars.RELEASE, "12A", "is not a release", "Maybe after setup 12A, or 18:30.");
        refuses(
                Grammars.ABSENCES,
                "13:00-14:00; 4",
                "is neither a setup nor a span of time",
                "Maybe setup 4, or 13:00-14:00.");
        refuses(
                Grammars.STEP_NAME,
                " Carry",
                "can't be a step, because that is what the way to camera is called",
                "Maybe bring out; or leave it out, that way is planned by the walk in sheet places.");
        assertThat(read(Grammars.STEP_NAME, "carry out")).isEqualTo("carry out");
        refuses(Grammars.NAME, "a;b", "can't be a name, because ; has a meaning of its own", "Maybe leave out the ;.");
        refuses(
                Grammars.STATION_NAME,
                "hob:1",
                "can't be a name, because : has a meaning of its own",
                "Maybe leave out the :.");
        refuses(Grammars.NAME, "a\nb", "has a line break in it", "Maybe write it in one line.");
        refuses(Grammars.NAME, "x".repeat(101), "is longer than 100 letters", "");
    }

    @Test
    void timeZonesAreKnownOnesWithWholeMinutes() {
        assertThat(read(Grammars.ZONE, "Europe/Berlin")).isEqualTo(ZoneId.of("Europe/Berlin"));
        refuses(Grammars.ZONE, "Europe/Berln", "is not a time zone", "Maybe Europe/Berlin.");
        refuses(
                Grammars.ZONE,
                "+01:02:03",
                "is not a time zone",
                "Maybe a continent and a city, as in Europe/Berlin or America/New_York.");
    }

    @Test
    void anOptionalCellIsWrittenEmptyWithoutAValue() {
        Grammar<Optional<Integer>> optional = Grammars.MINUTES.optional();

        assertThat(optional.writer().apply(Optional.empty(), COMMAS)).isEmpty();
        assertThat(optional.writer().apply(Optional.of(7), COMMAS)).isEqualTo("7");
    }
}
