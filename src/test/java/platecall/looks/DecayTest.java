package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static platecall.looks.CoolingTest.refused;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Froth, bubbles and the heat of light. */
class DecayTest {

    /** Leike, 2002, Eur. J. Phys. 23, 21-26, first beer: time in s, height of the froth in cm and its error. */
    private static final double[] SECONDS = {0, 15, 30, 45, 60, 75, 90, 105, 120, 150, 180, 210, 240, 300, 360};

    private static final double[] WHEAT = {
        17.0, 16.1, 14.9, 14.0, 13.2, 12.5, 11.9, 11.2, 10.7, 9.7, 8.9, 8.3, 7.5, 6.3, 5.2
    };
    private static final double[] ERRORS = {0.2, 0.4, 0.5, 0.5, 0.5, 0.6, 0.5, 0.5, 0.5, 0.5, 0.3, 0.5, 0.5, 0.5, 0.5};

    @Test
    void wheatBeerFrothFallsAsLeikeFoundWithTheStartHeld() {
        Froth.Fit fit = Froth.weightedFit(17.0, SECONDS, WHEAT, ERRORS);

        assertThat(fit.tauSeconds()).isCloseTo(277.9, within(0.1));
        assertThat(fit.tauError()).isCloseTo(7.4, within(0.1));
        assertThat(fit.startHeight()).isEqualTo(17.0);
        // Leike prints 276 ± 14 s (value from memory)
        assertThat(fit.tauSeconds()).isCloseTo(276, within(14.0));
    }

    @Test
    void wheatBeerFrothFallsAsLeikeFoundWithTheStartFree() {
        Froth.Fit fit = Froth.weightedFit(SECONDS, WHEAT, ERRORS);

        assertThat(fit.tauSeconds()).isCloseTo(283.8, within(0.1));
        assertThat(fit.tauError()).isCloseTo(9.3, within(0.1));
        assertThat(fit.startHeight()).isCloseTo(16.81, within(0.01));
    }

    @Test
    void aLineThroughTheLogarithmsFindsAnotherTimeConstant() {
        Froth.Fit fit = Froth.logFit(SECONDS, WHEAT);

        assertThat(fit.tauSeconds()).isCloseTo(310.3, within(0.1));
        assertThat(fit.startHeight()).isCloseTo(16.21, within(0.01));
        assertThat(fit.rSquared()).isCloseTo(0.9946, within(1e-4));
        assertThat(fit.tauSeconds()
                                / Froth.weightedFit(17.0, SECONDS, WHEAT, ERRORS)
                                        .tauSeconds()
                        - 1)
                .as("the way of fitting alone")
                .isCloseTo(0.12, within(0.005));
    }

    @Test
    void hackbarthsBeerFallsFaster() {
        // Hackbarth, 2006, one beer at 20 °C
        double[] seconds = {0, 15, 30, 45, 60, 90, 120, 150, 180, 210, 240, 270, 300};
        double[] heights = {17.4, 15.1, 13.1, 11.6, 10.6, 8.7, 7.4, 6.35, 5.4, 4.5, 3.8, 3.3, 2.9};

        Froth.Fit fit = Froth.logFit(seconds, heights);

        assertThat(1 / fit.tauSeconds()).isCloseTo(0.005847, within(1e-6));
        assertThat(fit.tauSeconds()).isCloseTo(171.0, within(0.1));
        assertThat(fit.startHeight()).isCloseTo(15.64, within(0.01));
        assertThat(fit.rSquared()).isCloseTo(0.9932, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"276, 191.3", "168, 116.4", "124, 86.0"})
    void leikesTimeConstantsAsHalfLives(double tauSeconds, double halfLife) {
        // value from memory
        assertThat(Froth.halfLife(tauSeconds)).isCloseTo(halfLife, within(0.1));
    }

    /** Leike's second and third beer at the same times; heights: value from memory. */
    private static final double[] SECOND = {
        14.0, 12.1, 10.9, 10.0, 9.3, 8.6, 8.0, 7.5, 7.0, 6.2, 5.5, 4.5, 3.5, 2.0, 0.9
    };

    private static final double[] THIRD = {14.0, 11.8, 10.5, 9.3, 8.5, 7.7, 7.1, 6.5, 6.0, 5.3, 4.4, 3.5, 2.9, 1.3, 0.7
    };

    @Test
    void theOtherBeersOfLeikeFallWithinHisErrorsButTheWayOfFittingDecides() {
        // published 168 ± 10 and 124 ± 9 s (value from memory); their errors of reading are not known, so all count
        // alike
        double[] alike = new double[SECONDS.length];
        Arrays.fill(alike, 0.5);

        assertThat(Froth.weightedFit(14.0, SECONDS, SECOND, alike).tauSeconds()).isCloseTo(168, within(10.0));
        assertThat(Froth.logFit(SECONDS, THIRD).tauSeconds()).isCloseTo(124, within(9.0));
        // own calculation
        assertThat(Froth.weightedFit(14.0, SECONDS, SECOND, alike).tauSeconds()).isCloseTo(166.1, within(0.1));
        assertThat(Froth.logFit(SECONDS, THIRD).tauSeconds()).isCloseTo(131.8, within(0.1));
    }

    /** Sauerbrei, Haß and Plath, 2006: ln V = a - b t - c t^2.5. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theLawOfSauerbreiHassAndPlathLeavesLessThanAThirdOfTheError(boolean third) {
        double[] heights = third ? THIRD : SECOND;
        Froth.Fit plain = Froth.logFit(SECONDS, heights);
        double plainError = 0;
        for (int i = 0; i < SECONDS.length; i++) {
            double fitted = plain.startHeight() * Froth.shareAfter(Froth.halfLife(plain.tauSeconds()), SECONDS[i]);
            plainError += Math.pow(Math.log(heights[i] / fitted), 2);
        }
        // c is what the residual of ln V on (1, t) and that of t^2.5 on (1, t) have in common
        double[] bend =
                residuals(Arrays.stream(SECONDS).map(t -> -Math.pow(t, 2.5)).toArray());
        double[] left = residuals(Arrays.stream(heights).map(Math::log).toArray());
        double c = dot(left, bend) / dot(bend, bend);

        assertThat(c).isPositive();
        assertThat(plainError).isCloseTo(dot(left, left), within(1e-9));
        assertThat(plainError - c * dot(left, bend)).isLessThan(plainError / 3);
    }

    /** What a straight line over {@link #SECONDS} leaves. */
    private static double[] residuals(double[] values) {
        double meanTime = Arrays.stream(SECONDS).average().orElseThrow();
        double mean = Arrays.stream(values).average().orElseThrow();
        double[] times = Arrays.stream(SECONDS).map(t -> t - meanTime).toArray();
        double[] centred = Arrays.stream(values).map(value -> value - mean).toArray();
        double slope = dot(times, centred) / dot(times, times);
        double[] left = new double[values.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = centred[i] - slope * times[i];
        }
        return left;
    }

    private static double dot(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }

    @Test
    void frothIsNotPurelyExponential() {
        // Sauerbrei, Haß and Plath, 2006: the residuals of a pure exponential are not noise. At both ends of Leike's
        // record the froth stands on the same side of the line, in the middle on the other.
        Froth.Fit fit = Froth.logFit(SECONDS, WHEAT);
        double halfLife = Froth.halfLife(fit.tauSeconds());

        assertThat(WHEAT[0]).isGreaterThan(fit.startHeight());
        assertThat(WHEAT[6]).isLessThan(fit.startHeight() * Froth.shareAfter(halfLife, SECONDS[6]));
    }

    @Test
    void shareAndTimeAreInverse() {
        assertThat(Froth.shareAfter(100, 0)).isEqualTo(1);
        assertThat(Froth.shareAfter(100, 200)).isCloseTo(0.25, within(1e-12));
        assertThat(Froth.timeToShare(100, 0.25)).isCloseTo(200, within(1e-9));
        assertThat(Froth.timeToShare(100, 1)).isZero();
    }

    @Test
    void champagneLosesItsGasAsBeaumontMeasured() {
        // Beaumont, 2019: 34 % in 10 min from an INAO glass, 58 % from another; 11.4 g/L at first (Liger-Belair, 2010)
        double inao = Carbonation.rate(0.34, 10);
        double other = Carbonation.rate(0.58, 10);

        assertThat(inao).isCloseTo(0.04155, within(1e-5));
        assertThat(1 / inao).isCloseTo(24.07, within(0.01));
        assertThat(other).isCloseTo(0.08675, within(1e-5));
        assertThat(1 / other).isCloseTo(11.53, within(0.01));
        assertThat(Carbonation.left(11.4, inao, 10)).isCloseTo(11.4 * 0.66, within(1e-9));
        assertThat(Carbonation.timeToShare(other, 0.42)).isCloseTo(10, within(1e-9));
        assertThat(Carbonation.left(11.4, inao, 0)).isEqualTo(11.4);
    }

    @ParameterizedTest
    @CsvSource({"2856, 16.3", "3200, 26.9", "5800, 92.4"})
    void efficacyOfABlackBody(double kelvin, double lumenPerWatt) {
        // own calculation
        assertThat(SetLight.efficacy(kelvin)).isCloseTo(lumenPerWatt, within(0.05));
    }

    @ParameterizedTest
    @CsvSource({"1000, 37", "2000, 74", "10000, 371"})
    void tungstenWarmsThePlate(double lux, double watts) {
        // own calculation; no published figure for set lights was found
        assertThat(SetLight.wattsPerSquareMetre(lux, SetLight.efficacy(3200))).isCloseTo(watts, within(0.5));
        assertThat(SetLight.lux(watts, 3200)).isCloseTo(lux, withinPercentage(1));
    }

    @ParameterizedTest
    @CsvSource({"1000, 3.3", "2000, 6.7", "10000, 33.3"})
    void ledWarmsThePlateLess(double lux, double watts) {
        // 300 lm/W: value from memory
        assertThat(SetLight.wattsPerSquareMetre(lux, 300)).isCloseTo(watts, withinPercentage(2));
    }

    @Test
    void valuesOutsideTheirRangeAreNamedWithTheirValue() {
        double[] two = {0, 1};
        double[] falling = {2, 1};
        refused(() -> Froth.halfLife(0), "time constant must be more than 0, but it is [0]");
        refused(() -> Froth.shareAfter(0, 1), "half-life");
        refused(() -> Froth.shareAfter(1, -1), "time must be from 0");
        refused(() -> Froth.timeToShare(1, 0), "share must be more than 0, but it is [0]");
        refused(() -> Froth.timeToShare(1, 1.1), "share must be from 0 to 1, but it is [1.1]");
        refused(() -> Froth.timeToShare(-1, 0.5), "half-life");
        refused(() -> Froth.logFit(new double[] {0}, new double[] {1}), "number of readings must be from 2");
        refused(() -> Froth.logFit(two, new double[] {1}), "number of values must be from 2 to 2, but it is [1]");
        refused(() -> Froth.logFit(two, new double[] {1, -1}), "height must be more than 0, but it is [-1]");
        refused(() -> Froth.logFit(two, new double[] {1, 2}), "rate of fall");
        refused(() -> Froth.weightedFit(0, two, falling, two), "start height");
        refused(() -> Froth.weightedFit(2, two, falling, two), "error must be more than 0, but it is [0]");
        refused(() -> Froth.weightedFit(two, falling, new double[] {1}), "number of values");
        refused(() -> Carbonation.rate(0, 1), "share lost must be more than 0");
        refused(() -> Carbonation.rate(1, 1), "share lost must be from 0");
        refused(() -> Carbonation.rate(0.5, 0), "time must be more than 0");
        refused(() -> Carbonation.left(-1, 1, 1), "dissolved gas");
        refused(() -> Carbonation.left(1, -1, 1), "rate");
        refused(() -> Carbonation.left(1, 1, -1), "time");
        refused(() -> Carbonation.timeToShare(1, 0), "share must be more than 0");
        refused(() -> Carbonation.timeToShare(1, 2), "share must be from 0 to 1");
        refused(() -> Carbonation.timeToShare(0, 0.5), "rate");
        refused(() -> SetLight.efficacy(999), "colour temperature must be from 1000 to 20000 K, but it is [999]");
        refused(() -> SetLight.wattsPerSquareMetre(-1, 27), "illuminance must be from 0 to 1000000 lx, but it is [-1]");
        refused(() -> SetLight.wattsPerSquareMetre(1, 0), "efficacy");
        refused(() -> SetLight.lux(-1, 3200), "light must be from 0 to 2000 W/m2, but it is [-1]");
    }
}
