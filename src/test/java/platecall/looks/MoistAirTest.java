package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static platecall.looks.CoolingTest.refused;
import static platecall.looks.MoistAir.Magnus.ALDUCHOV_ESKRIDGE;
import static platecall.looks.MoistAir.Magnus.WMO;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Look;

class MoistAirTest {

    @Test
    void magnusFormsHaveTheirPublishedConstants() {
        // Alduchov and Eskridge 1996: 610.94, 17.625, 243.04; WMO-No. 8 Annex 4.B: 6.112 hPa, 17.62, 243.12
        assertThat(ALDUCHOV_ESKRIDGE.saturationPa(0)).isEqualTo(610.94);
        assertThat(WMO.saturationPa(0)).isEqualTo(611.2);
        assertThat(ALDUCHOV_ESKRIDGE.saturationPa(25)).isEqualTo(610.94 * Math.exp(17.625 * 25 / (243.04 + 25)));
        assertThat(WMO.saturationPa(25)).isEqualTo(611.2 * Math.exp(17.62 * 25 / (243.12 + 25)));
    }

    @ParameterizedTest
    @CsvSource({"5, 872.6, 871.56", "25, 3169.7, 3161.74", "50, 12351.3, 12360.6"})
    void magnusIsWithin3PerMilleOfAshraeFrom5To50(double celsius, double ashrae2017Table3, double byMagnus) {
        assertThat(ALDUCHOV_ESKRIDGE.saturationPa(celsius)).isCloseTo(ashrae2017Table3, withinPercentage(0.3));
        assertThat(WMO.saturationPa(celsius)).isCloseTo(ashrae2017Table3, withinPercentage(0.31));
        assertThat(ALDUCHOV_ESKRIDGE.saturationPa(celsius)).isCloseTo(byMagnus, within(0.06));
    }

    @ParameterizedTest
    @CsvSource({"5, 872.6", "25, 3169.7", "50, 12351.3", "100, 101418"})
    void hylandAndWexlerAreWithin300PartsPerMillionOfAshrae2017Chapter1Table3(double celsius, double pascal) {
        assertThat(MoistAir.saturationPa(celsius)).isCloseTo(pascal, withinPercentage(0.03));
    }

    @Test
    void magnusIsRefusedAbove60WhereItRunsAway() {
        assertThat(ALDUCHOV_ESKRIDGE.saturationPa(60)).isCloseTo(MoistAir.saturationPa(60), withinPercentage(0.5));
        refused(
                () -> ALDUCHOV_ESKRIDGE.saturationPa(60.1),
                "temperature for Magnus's form must be from -40 to 60 °C, but it is [60.1]");
        refused(() -> WMO.dewPoint(61, 50), "[61]");
        refused(() -> WMO.saturationPa(-41), "[-41]");
    }

    @Test
    void dewPointOf25DegreesAnd80PercentIsThatOfThePsychrolibManual() {
        assertThat(ALDUCHOV_ESKRIDGE.dewPoint(25, 80)).isCloseTo(21.3094, within(0.003));
        assertThat(WMO.dewPoint(25, 80)).isCloseTo(21.3094, within(0.003));
        assertThat(ALDUCHOV_ESKRIDGE.dewPoint(25, 80)).isCloseTo(21.3089, within(1e-4));
        assertThat(WMO.dewPoint(25, 80)).isCloseTo(21.3069, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({
        "20, 50, 9.2611, 9.2552",
        "25, 60, 16.6977, 16.6931",
        "30, 70, 23.9305, 23.9272",
        "22, 45, 9.5218, 9.5150"
    })
    void dewPointsByBothForms(double celsius, double humidity, double alduchovEskridge, double wmo) {
        // own calculation
        assertThat(ALDUCHOV_ESKRIDGE.dewPoint(celsius, humidity)).isCloseTo(alduchovEskridge, within(1e-4));
        assertThat(WMO.dewPoint(celsius, humidity)).isCloseTo(wmo, within(1e-4));
    }

    @Test
    void aColdGlassIsWetBelowTheDewPointOfTheRoom() {
        // own calculation: 22 °C and 45 % have their dew point at 9.5 °C
        LookLife cold = new LooksDay()
                .air(22, 45)
                .dish("cider", Look.Kind.CONDENSATION, "start", "5")
                .life();
        LookLife cool = new LooksDay()
                .air(22, 45)
                .dish("cider", Look.Kind.CONDENSATION, "start", "12")
                .life();

        assertThat(cold.peakToMinutes()).isPositive();
        assertThat(cool.peakToMinutes()).isZero();
    }

    @Test
    void dewPointOfSaturatedAirIsItsTemperature() {
        assertThat(WMO.dewPoint(20, 100)).isCloseTo(20, within(1e-9));
        refused(() -> WMO.dewPoint(20, 101), "relative humidity must be from 1 to 100 %, but it is [101]");
        refused(() -> WMO.dewPoint(20, 0.5), "relative humidity");
    }

    @Test
    void saturatedAirHoldsTheWaterOfAshrae2017Chapter1Table2() {
        // the table is for real air, so the vapour pressure carries WMO's enhancement factor
        double vapour = MoistAir.saturationPa(25) * MoistAir.enhancement(MoistAir.STANDARD_PA);

        assertThat(MoistAir.humidityRatio(vapour, MoistAir.STANDARD_PA)).isCloseTo(0.020173, within(1e-5));
    }

    @Test
    void humidityRatioAt500MetresIsThatOfThePsychrolibTests() {
        assertThat(MoistAir.humidityRatio(3169.7, 95461)).isCloseTo(0.0213603998, within(1e-10));
    }

    @Test
    void wetBulbIsThatOfThePsychrolibTests() {
        assertThat(MoistAir.wetBulb(7, 61, 100_000)).isCloseTo(3.9267, within(1e-3));
        assertThat(MoistAir.wetBulb(20, 100, MoistAir.STANDARD_PA)).isCloseTo(20, within(1e-6));
    }

    @Test
    void boilingWaterTakesTheHeatOfTheSteamTables() {
        assertThat(MoistAir.vaporisationJPerKg(100)).isCloseTo(2_256_000, withinPercentage(1));
        assertThat(MoistAir.vaporisationJPerKg(0)).isEqualTo(2_501_000);
        refused(() -> MoistAir.vaporisationJPerKg(151), "temperature must be from -41 to 150 °C, but it is [151]");
    }

    @Test
    void enhancementIsThatOfWmoAnnex4B() {
        assertThat(MoistAir.enhancement(100_000)).isCloseTo(1.004676, within(1e-9));
    }

    @Test
    void vapourHasTheDensityOfAnIdealGas() {
        // own calculation: 1000 / (461.523 * 293.15)
        assertThat(MoistAir.vapourKgPerM3(1000, 20)).isCloseTo(0.00739128, within(1e-7));
        assertThat(MoistAir.vapourPa(25, 50)).isCloseTo(MoistAir.saturationPa(25) / 2, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"35, 22, 45, false", "40, 22, 45, true", "60, 22, 45, true", "35, 22, 70, true", "22, 22, 45, false"})
    void steamShowsWhereTheMixingLineCrossesSaturation(double surface, double room, double humidity, boolean shows) {
        // own calculation; no published threshold was found
        assertThat(MoistAir.steamShows(surface, room, humidity)).isEqualTo(shows);
    }

    @Test
    void steamShowsFromIsTheEdgeOfTheMixingLineTest() {
        double edge = MoistAir.steamShowsFrom(22, 45);

        assertThat(edge).isBetween(35.0, 40.0);
        assertThat(MoistAir.steamShows(edge - 0.01, 22, 45)).isFalse();
        assertThat(MoistAir.steamShows(edge + 0.01, 22, 45)).isTrue();
        assertThat(MoistAir.steamShowsFrom(22, 100)).isCloseTo(22, within(0.01));
        assertThat(MoistAir.steamShowsFrom(1.73, 100))
                .as("saturated but for rounding")
                .isCloseTo(1.73, within(0.01));
        assertThat(MoistAir.steamShowsFrom(35, 0)).isGreaterThan(MoistAir.steamShowsFrom(35, 60));
    }

    @Test
    void valuesOutsideTheirRangeAreNamedWithTheirValue() {
        refused(() -> MoistAir.saturationPa(151), "saturation pressure must be from -41 to 150 °C, but it is [151]");
        refused(() -> MoistAir.vapourPa(20, 101), "relative humidity must be from 0 to 100 %, but it is [101]");
        refused(() -> MoistAir.vapourKgPerM3(-1, 20), "vapour pressure");
        refused(() -> MoistAir.humidityRatio(1, 0), "pressure must be more than 0 Pa");
        refused(() -> MoistAir.humidityRatio(1000, 1000), "vapour pressure");
        refused(() -> MoistAir.enhancement(1), "pressure must be from 50000 to 110000 Pa");
        refused(() -> MoistAir.wetBulb(61, 50, 100_000), "temperature must be from 0 to 60 °C");
        refused(() -> MoistAir.wetBulb(20, 50, 1), "pressure");
        refused(() -> MoistAir.steamShowsFrom(61, 50), "room temperature");
    }
}
