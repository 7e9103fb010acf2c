package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LethalityTest {

    /** A core that rises by 1 °C a minute from 55 to 75 °C, read every {@code step} minutes. */
    private static List<Reading> ramp(double step) {
        List<Reading> log = new ArrayList<>();
        for (int i = 0; i * step <= 20; i++) {
            log.add(new Reading(i * step, 55 + i * step));
        }
        return log;
    }

    /**
     * Own calculation: the integral is z / ln 10 * (10^(5/7.5) - 10^(-15/7.5)) = 15.0861 min; with a step h what is counted
     * lies below the trapezoids by h / 2 * (10^(5/7.5) - 10^(-15/7.5)) = h * 2.3158.
     */
    @Test
    void aLoggedCoreTemperatureIsWorthAtLeastItsCoolerEnds() {
        assertThat(7.5 / Math.log(10) * (Math.pow(10, 5 / 7.5) - Math.pow(10, -2)))
                .isCloseTo(15.0861, within(1e-3));
        assertThat(Lethality.leastMinutes(ramp(0.5), 70, 7.5)).isCloseTo(15.1157 - 0.5 * 2.3158, within(1e-3));
        assertThat(Lethality.leastMinutes(ramp(1), 70, 7.5)).isCloseTo(15.2044 - 2.3158, within(1e-3));
        assertThat(Lethality.leastMinutes(ramp(0.01), 70, 7.5)).isCloseTo(15.0861 - 0.0232, within(1e-3));
    }

    /** FSA: 70 °C for 2 minutes; the same seen from both sides of a reading that is hotter. */
    @Test
    void whatIsHotterInBetweenCountsAsTheCoolerEnd() {
        assertThat(Lethality.leastMinutes(List.of(new Reading(0, 70), new Reading(1, 90), new Reading(2, 70)), 70, 7.5))
                .isCloseTo(2, within(1e-12));
    }

    @Test
    void aLogThatIsTooShortIsWorthNothing() {
        assertThat(Lethality.leastMinutes(List.of(), 70, 7.5)).isZero();
        assertThat(Lethality.leastMinutes(List.of(new Reading(0, 90)), 70, 7.5)).isZero();
        assertThat(Lethality.leastMinutes(List.of(new Reading(3, 70), new Reading(3, 70)), 70, 7.5))
                .isZero();
    }

    @Test
    void readingsOutOfOrderAreRefused() {
        assertThatThrownBy(() -> Lethality.leastMinutes(List.of(new Reading(3, 70), new Reading(2, 71)), 70, 7.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("readings must be in order of time, but minute [2.0] comes after [3.0]");
    }

    /** dairyscience.info: 15 min at 85 °C, z 8.7, are 0.167 min at 102 °C. */
    @Test
    void minutesAtOneTemperatureAreWorthFewerAtAHotterOne() {
        assertThat(Lethality.equivalentMinutes(15, 85, 102, 8.7)).isCloseTo(0.167, within(5e-4));
    }

    /** A course's worked example: from 10^6 to 10^2 in 12 min is D = 3 min, five powers of ten take 15 min. */
    @Test
    void aTenthIsLeftAfterEachD() {
        assertThat(Lethality.dMinutes(12, 1e6, 1e2)).isCloseTo(3, within(1e-12));
        assertThat(Lethality.logReduction(15, 3)).isEqualTo(5);
    }

    /** Mackey and Bratchell, 1989: 70 °C for 2 min is six powers of ten of Listeria, so D70 is a third of a minute. */
    @Test
    void twoMinutesAtSeventyAreSixPowersOfTenOfListeria() {
        assertThat(Lethality.logReduction(2, 1 / 3.0)).isCloseTo(6, within(1e-12));
    }

    /** ACMSF 2007, burgers, z 6: 60 °C 93 min, 65 °C 13.6 min, 75 °C 18 s; 80 °C 2.585 s is an own calculation. */
    @ParameterizedTest
    @CsvSource({"60, 93, 0.2", "65, 13.6, 0.2", "70, 2, 0", "75, 0.3, 0.0084", "80, 0.04308, 0.0084"})
    void burgersHaveASmallerZ(double celsius, double minutes, double tolerance) {
        assertThat(2 / Lethality.rate(celsius, 70, 6)).isCloseTo(minutes, within(tolerance + 1e-12));
    }

    /** Dairy Food Safety Victoria, 2013. */
    @ParameterizedTest
    @CsvSource({"1, 81.6", "2, 79.0", "3, 77.57", "5, 75.75", "10, 73.3", "14, 72.1"})
    void milkIsPasteurisedHotterWhenItIsHeldShorter(double seconds, double celsius) {
        assertThat(Lethality.milkCelsius(seconds)).isCloseTo(celsius, within(0.06));
    }
}
