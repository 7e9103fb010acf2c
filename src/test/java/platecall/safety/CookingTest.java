package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CookingTest {

    private static Profile profile(String name) {
        return Profile.named(name).orElseThrow();
    }

    /** FDA Food Code 3-401.11(A)(1) to (3); seconds of ground meat and poultry changed in 2017. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, INTACT, 63.0, 15, true",
        "fda-2022, INTACT, 62.9, 15, false",
        "fda-2022, INTACT, 63.0, 14, false",
        "fda-2022, GROUND, 68, 17, true",
        "fda-2022, GROUND, 68, 16, false",
        "fda-2013, GROUND, 68, 16, true",
        "fda-2013, GROUND, 68, 14, false",
        "fda-2022, GROUND, 67.9, 17, false",
        "fda-2022, GROUND, 63, 180, true",
        "fda-2022, GROUND, 63, 179, false",
        "fda-2022, GROUND, 66, 60, true",
        "fda-2022, GROUND, 66, 59, false",
        "fda-2022, GROUND, 70, 0, true",
        "fda-2022, POULTRY, 74, 0, true",
        "fda-2022, POULTRY, 73.9, 600, false",
        "fda-2013, POULTRY, 74, 0, false",
        "fda-2013, POULTRY, 74, 15, true"
    })
    void theFoodCodeAsksForACoreTemperatureAndATime(
            String profile, FoodKind kind, double celsius, double seconds, boolean enough) {
        assertThat(profile(profile).cooks(kind, celsius, seconds)).isEqualTo(enough);
    }

    /** FSA table of equivalents to 70 °C for 2 minutes: 60 °C 45 min, 65 °C 10 min, 75 °C 30 s, 80 °C 6 s. */
    @ParameterizedTest
    @CsvSource({
        "60, 2700, true",
        "60, 2699, false",
        "59.9, 9000, false",
        "65, 600, true",
        "65, 599, false",
        "69.9, 599, false",
        "70, 120, true",
        "70, 119, false",
        "75, 30, true",
        "75, 29, false",
        "80, 6, true",
        "80, 5, false"
    })
    void theBritishTableIsTakenRowByRow(double celsius, double seconds, boolean enough) {
        for (FoodKind kind : FoodKind.values()) {
            assertThat(profile("uk").cooks(kind, celsius, seconds))
                    .as(kind.name())
                    .isEqualTo(enough);
        }
    }

    /** The printed table rounds up what the formula gives (own calculation, z 7.5). */
    @ParameterizedTest
    @CsvSource({"60, 43.09, 0.01", "65, 9.283, 0.001", "70, 2, 0", "75, 0.43083, 0.00017", "80, 0.09283, 0.00017"})
    void theBritishTableIsNeverBelowItsFormula(double celsius, double minutes, double tolerance) {
        double formula = Lethality.ukMinutes(celsius);

        assertThat(formula).isBetween(minutes - tolerance - 1e-9, minutes + tolerance + 1e-9);
        Cooking row = profile("uk").cooking(FoodKind.INTACT).stream()
                .filter(one -> one.celsius() == celsius)
                .findFirst()
                .orElseThrow();
        assertThat(row.seconds() / 60.0).isGreaterThanOrEqualTo(formula);
    }

    /** FDA Food Code 3-401.11(B)(2), every row; the current table begins with 112 minutes, not with 121. */
    @ParameterizedTest
    @CsvSource({
        "130, 6720", "131, 5340", "133, 3360", "135, 2160", "136, 1680", "138, 1080", "140, 720", "142, 480",
                "144, 300",
        "145, 240", "147, 134", "149, 85", "151, 54", "153, 34", "155, 22", "157, 14", "158, 0", "165, 0"
    })
    void aWholeRoastIsHeldAsLongAsItsTableSays(double fahrenheit, int seconds) {
        assertThat(Roast.holdSecondsAtFahrenheit(fahrenheit)).hasValue(seconds);
    }

    /** Between two rows the lower one holds. */
    @Test
    void theRoastTableIsNotInterpolated() {
        assertThat(Roast.holdSecondsAtFahrenheit(141)).hasValue(12 * 60);
        assertThat(Roast.holdSecondsAtFahrenheit(157.9)).hasValue(14);
        assertThat(Roast.holdSecondsAtFahrenheit(129.9)).isEmpty();
        assertThat(Roast.holdSeconds(54.4)).hasValue(112 * 60);
        assertThat(Roast.holdSeconds(54.3)).isEmpty();
        assertThat(Roast.holdSeconds(60.5)).hasValue(12 * 60);
        assertThat(Roast.holdSeconds(69.9)).hasValue(14);
        assertThat(Roast.holdSeconds(70.0)).hasValue(0);
    }

    /** FDA Food Code 3-401.11(B)(1). */
    @ParameterizedTest
    @CsvSource({
        "STILL, 4.4, 170, false",
        "STILL, 4.4, 177, true",
        "STILL, 4.6, 121, true",
        "STILL, 4.6, 120, false",
        "STILL, 4.5, 121, true",
        "CONVECTION, 4.4, 163, true",
        "CONVECTION, 4.4, 162, false",
        "CONVECTION, 4.6, 121, true",
        "CONVECTION, 4.6, 120, false",
        "HUMID, 2, 121, true",
        "HUMID, 9, 122, false"
    })
    void aRoastsOvenIsSetHotEnough(Roast.Oven oven, double kilograms, double celsius, boolean right) {
        assertThat(Roast.ovenSetRight(oven, kilograms, celsius)).isEqualTo(right);
    }

    /** USDA FSIS Appendix A (FSIS-GD-2021-14), every row, and between two rows the lower one. */
    @ParameterizedTest
    @CsvSource({
        "130, 6720, 7260",
        "131, 5340, 5820",
        "132, 4260, 4620",
        "133, 3360, 3720",
        "134, 2700, 2820",
        "135, 2160, 2220",
        "136, 1680, 1920",
        "137, 1380, 1440",
        "138, 1080, 1140",
        "139, 900, 900",
        "140, 720, 720",
        "141, 540, 600",
        "142, 480, 480",
        "143, 360, 360",
        "144, 300, 300",
        "145, 240, 240",
        "145.9, 240, 240",
        "146, 169, 182",
        "147, 134, 144",
        "148, 107, 115",
        "149, 85, 91",
        "150, 67, 72",
        "151, 54, 58",
        "152, 43, 46",
        "153, 34, 37",
        "154, 27, 29",
        "155, 22, 23",
        "156, 17, 19",
        "157, 14, 15",
        "158, 0, 0",
        "159, 0, 0",
        "160, 0, 0"
    })
    void meatIsHeldAsLongAsFsisSays(double fahrenheit, int log65Seconds, int log7Seconds) {
        assertThat(MeatLethality.tableSeconds(fahrenheit, MeatLethality.Reduction.LOG_6_5))
                .hasValue(log65Seconds);
        assertThat(MeatLethality.tableSeconds(fahrenheit, MeatLethality.Reduction.LOG_7))
                .hasValue(log7Seconds);
    }

    @Test
    void meatBelowTheTableHasNoTime() {
        assertThat(MeatLethality.tableSeconds(129.9, MeatLethality.Reduction.LOG_7))
                .isEmpty();
    }

    /** USDA FSIS Appendix A; the line is an own calculation: z 10.0 °F, the table rounds its minutes up. */
    @Test
    void theLineThroughTheFsisTableStaysBesideIt() {
        for (int fahrenheit = 146; fahrenheit <= 157; fahrenheit++) {
            double seconds = MeatLethality.lineSeconds(fahrenheit);
            int table = MeatLethality.tableSeconds(fahrenheit, MeatLethality.Reduction.LOG_6_5)
                    .orElseThrow();
            assertThat((double) Math.round(seconds)).isBetween(table - 1.0, table + 1.0);
        }
        for (int fahrenheit = 130; fahrenheit <= 145; fahrenheit++) {
            int table = MeatLethality.tableSeconds(fahrenheit, MeatLethality.Reduction.LOG_6_5)
                    .orElseThrow();
            assertThat(MeatLethality.lineSeconds(fahrenheit)).isBetween(table * 0.87, table * 1.01);
        }
    }

    /** Least squares of log10 seconds on °F over the printed rows (own calculation): z 10.01 °F, 5.56 °C, r -0.99979. */
    @Test
    void theFsisTableHasAzOfTenFahrenheit() {
        double n = 0;
        double x = 0;
        double y = 0;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int f = 130; f <= 157; f++) {
            double log = Math.log10(MeatLethality.tableSeconds(f, MeatLethality.Reduction.LOG_6_5)
                    .orElseThrow());
            n++;
            x += f;
            y += log;
            xx += f * f;
            xy += f * log;
            yy += log * log;
        }
        double z = (n * xx - x * x) / (x * y - n * xy);
        assertThat(z).isCloseTo(10.01, within(0.005));
        assertThat(z / 1.8).isCloseTo(5.56, within(0.005));
        assertThat((n * xy - x * y) / Math.sqrt((n * xx - x * x) * (n * yy - y * y)))
                .isCloseTo(-0.99979, within(5e-6));
    }

    /** FDA Food Code 3-401.11(A)(2) and (3) name these foods; the words are a guess. */
    @Test
    void wordsTellTheKindOfFood() {
        assertThat(FoodKind.of(List.of("Trout skewer", "herb oil"))).isEqualTo(FoodKind.INTACT);
        assertThat(FoodKind.of(List.of("Pie", "guinea fowl, whole"))).isEqualTo(FoodKind.POULTRY);
        assertThat(FoodKind.of(List.of("Chickens"))).isEqualTo(FoodKind.POULTRY);
        assertThat(FoodKind.of(List.of("Soup", "chicken stock", "goose fat"))).isEqualTo(FoodKind.INTACT);
        assertThat(FoodKind.of(List.of("Soup", "chicken stock and chicken"))).isEqualTo(FoodKind.POULTRY);
        assertThat(FoodKind.of(List.of("ground beef"))).isEqualTo(FoodKind.GROUND);
        assertThat(FoodKind.of(List.of("ground pepper", "beef"))).isEqualTo(FoodKind.INTACT);
        assertThat(FoodKind.of(List.of("Sausages", "stuffed quail"))).isEqualTo(FoodKind.POULTRY);
        assertThat(FoodKind.of(List.of("stuffed quail", "Sausages"))).isEqualTo(FoodKind.POULTRY);
        assertThat(FoodKind.of(List.of())).isEqualTo(FoodKind.INTACT);
    }
}
