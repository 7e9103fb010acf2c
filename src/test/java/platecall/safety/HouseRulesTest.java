package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.day.TestDays.at;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Circuit;
import platecall.units.Moment;

/** Sanitizing, allergen lists, electricity and labour: each against its published number. */
class HouseRulesTest {

    /** FDA Food Code 4-703.11. */
    @Test
    void sanitizingTakesItsTime() {
        assertThat(Sanitizing.hotWater(77, 30)).isTrue();
        assertThat(Sanitizing.hotWater(77, 29)).isFalse();
        assertThat(Sanitizing.hotWater(76.9, 30)).isFalse();
        assertThat(Sanitizing.machine(71)).isTrue();
        assertThat(Sanitizing.machine(70.9)).isFalse();
        assertThat(Sanitizing.otherChemical(30)).isTrue();
        assertThat(Sanitizing.otherChemical(29)).isFalse();
    }

    /** FDA Food Code 4-703.11(C)(1) and (2). */
    @ParameterizedTest
    @CsvSource({
        "50, 10, 38, 7, true",
        "50, 10, 38, 6, false",
        "50, 10, 37, 7, false",
        "50, 10.1, 38, 7, false",
        "49, 10, 38, 7, false",
        "50, 8, 24, 7, true",
        "50, 8, 23, 7, false",
        "50, 8.1, 24, 7, false",
        "25, 8, 24, 10, true",
        "25, 8, 24, 9, false"
    })
    void chlorineTakesLessTimeWhenItIsStrongAndWarm(
            double mg, double ph, double celsius, double seconds, boolean enough) {
        assertThat(Sanitizing.chlorine(mg, ph, celsius, seconds)).isEqualTo(enough);
    }

    /** 21 USC 321(qq) with the FASTER Act; Regulation (EU) No 1169/2011, Annex II. */
    @Test
    void theListsOfAllergensAreWhole() {
        assertThat(DeclaredAllergens.US.list()).hasSize(9).contains("sesame").doesNotHaveDuplicates();
        assertThat(DeclaredAllergens.EU.list())
                .hasSize(14)
                .contains("lupin", "celery")
                .doesNotHaveDuplicates();
        assertThat(DeclaredAllergens.US.among(List.of("Almonds", "butter", "lupin")))
                .containsExactly("milk", "tree nuts");
        assertThat(DeclaredAllergens.EU.among(List.of("almond", "rye", "lupin")))
                .containsExactly("gluten", "lupin", "nuts");
        assertThat(DeclaredAllergens.EU.among(List.of("water"))).isEmpty();
    }

    /** Regulation (EU) No 1169/2011, Annex II: more than 10 mg/kg. */
    @Test
    void sulphitesAreDeclaredAboveTenMilligrams() {
        assertThat(DeclaredAllergens.sulphites(10.0)).isFalse();
        assertThat(DeclaredAllergens.sulphites(10.1)).isTrue();
    }

    /** NEC 210.19(A)(1) and 210.20(A). */
    @Test
    void lastingLoadsCountMore() {
        assertThat(Electricity.carries(20, Electricity.CONTINUOUS_FACTOR, 0, 16))
                .isTrue();
        assertThat(Electricity.carries(20, Electricity.CONTINUOUS_FACTOR, 0, 16.1))
                .isFalse();
        assertThat(Electricity.carries(20, Electricity.CONTINUOUS_FACTOR, 10, 8))
                .isTrue();
        assertThat(Electricity.carries(20, Electricity.CONTINUOUS_FACTOR, 10.1, 8))
                .isFalse();
    }

    /** 120 V circuits, and NEC 210.23: a single load of a cord and plug at most 80 %. */
    @ParameterizedTest
    @CsvSource({"15, 1800, 12, 1440", "20, 2400, 16, 1920"})
    void americanCircuitsCarryTheirWatts(double amps, double watts, double lastingAmps, double lastingWatts) {
        assertThat(Electricity.watts(120, amps)).isEqualTo(watts);
        double usable = new Circuit("wall", 120, amps, Electricity.CONTINUOUS_FACTOR).usableAmps();
        assertThat(usable).isEqualTo(lastingAmps);
        assertThat(Electricity.watts(120, usable)).isEqualTo(lastingWatts);
    }

    /** UK at 230 V: 13 A plug, 16 A, 20 A, 32 A ring. */
    @ParameterizedTest
    @CsvSource({"13, 2990", "16, 3680", "20, 4600", "32, 7360"})
    void britishCircuitsCarryTheirWatts(double amps, double watts) {
        assertThat(Electricity.watts(230, amps)).isEqualTo(watts);
    }

    /** A generator maker's manual: 3 % for each 500 m above 1000 m, 3 % for each 5 °C above 40 °C. */
    @ParameterizedTest
    @CsvSource({
        "1000, 40, 1",
        "500, 20, 1",
        "1500, 20, 0.97",
        "2000, 20, 0.94",
        "2500, 20, 0.91",
        "3000, 20, 0.88",
        "0, 45, 0.97",
        "0, 50, 0.94",
        "2000, 45, 0.9118",
        "60000, 20, 0",
        "0, 4000, 0"
    })
    void generatorsLosePowerInThinAndHotAir(double metres, double celsius, double left) {
        assertThat(new Electricity.Derating(0.03, 500, 1000, 0.03, 5, 40).left(metres, celsius))
                .isCloseTo(left, within(1e-4));
    }

    /** California Labor Code 512(a): "more than five hours". */
    @ParameterizedTest
    @CsvSource({"300, 0", "301, 1", "600, 1", "601, 2"})
    void californiaOwesMealsAfterFiveAndTenHours(int minutes, int meals) {
        assertThat(Labour.californiaMeals(minutes)).isEqualTo(meals);
    }

    /** California Labor Code 512(a). */
    @Test
    void mealsOfShorterDaysMayBeWaived() {
        assertThat(Labour.californiaFirstMealWaivable(360)).isTrue();
        assertThat(Labour.californiaFirstMealWaivable(361)).isFalse();
        assertThat(Labour.californiaSecondMealWaivable(720, false)).isTrue();
        assertThat(Labour.californiaSecondMealWaivable(720, true)).isFalse();
        assertThat(Labour.californiaSecondMealWaivable(721, false)).isFalse();
    }

    /** IWC Wage Order 12-2001 (8 CCR 11120). */
    @Test
    void aMotionPictureCrewEatsAndRestsInTime() {
        assertThat(Labour.motionPictureMealBy(at("06:00"))).isEqualTo(at("12:00"));
        assertThat(Labour.motionPictureMealBy(at("12:30"))).isEqualTo(at("18:30"));
        assertThat(Labour.motionPictureRestMinutes(209)).isZero();
        assertThat(Labour.motionPictureRestMinutes(210)).isEqualTo(10);
        assertThat(Labour.motionPictureRestMinutes(360)).isEqualTo(10);
        assertThat(Labour.motionPictureRestMinutes(361)).isEqualTo(20);
        assertThat(Labour.motionPictureRestMinutes(600)).isEqualTo(20);
        assertThat(Labour.motionPictureRestMinutes(601)).isEqualTo(30);
    }

    /** Directive 2003/88/EC, Art. 3; Working Time Regulations 1998 (SI 1998/1833), reg. 12. */
    @Test
    void europeansRestElevenHoursAndBritonsTakeABreak() {
        Moment wrap = at("2026-03-14T22:00");

        assertThat(Labour.europeanCallFrom(wrap)).isEqualTo(at("2026-03-15T09:00"));
        assertThat(Labour.britishBreakMinutes(360, false)).isZero();
        assertThat(Labour.britishBreakMinutes(361, false)).isEqualTo(20);
        assertThat(Labour.britishBreakMinutes(270, true)).isZero();
        assertThat(Labour.britishBreakMinutes(271, true)).isEqualTo(30);
    }
}
