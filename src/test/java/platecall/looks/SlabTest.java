package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.looks.CoolingTest.refused;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlabTest {

    @Test
    void pipeWallWarmsLikeIncroperaExample54() {
        double root = Slab.firstRoot(0.313);

        assertThat(root).isCloseTo(0.53189, within(1e-5));
        assertThat(Slab.firstCoefficient(root)).isCloseTo(1.04679, within(1e-5));
        // 42.9 with the rounded constants of the book's table
        assertThat(Slab.celsiusAt(-20, 60, 0.313, 5.64, 0)).isCloseTo(43.02, within(0.005));
        assertThat(Slab.celsiusAt(-20, 60, 0.313, 5.64, 0)).isCloseTo(42.9, within(0.2));
        assertThat(Slab.celsiusAt(-20, 60, 0.313, 5.64, 1)).isCloseTo(45.36, within(0.005));
    }

    @Test
    void steaksChillLikeCengelProblem1144() {
        double biot = Cooling.biot(9, 0.01, 0.45);
        double root = Slab.firstRoot(biot);

        double fourier = Slab.fourierTo(25, 2, -11, biot, 1);

        assertThat(root).isCloseTo(0.4328, within(1e-4));
        assertThat(Slab.firstCoefficient(root)).isCloseTo(1.0311, within(1e-4));
        assertThat(fourier).isCloseTo(5.085, within(5e-3));
        assertThat(fourier * 0.01 * 0.01 / 0.91e-7 / 60).isCloseTo(93.1, within(0.1));
        assertThat(Slab.celsiusAt(25, -11, biot, fourier, 1)).isCloseTo(2, within(1e-9));
    }

    @Test
    void waterMainFreezesLikeIncroperaExample56() {
        // value from memory: 0.68 m after 60 days
        double celsius = Slab.thickBodyHeldSurface(20, -15, 0.68, 0.138e-6, 60 * 24 * 3600.0);

        assertThat(celsius).isCloseTo(0, within(0.2));
    }

    @Test
    void aThickBodyInStrongDraughtIsAlmostHeldAtTheTemperatureOfTheAir() {
        double held = Slab.thickBodyHeldSurface(80, 20, 0.002, 1.4e-7, 60);
        double blown = Slab.thickBodyInAir(80, 20, 0.002, 3000, 0.5, 1.4e-7, 60);

        assertThat(blown).isCloseTo(held, within(2.0));
        assertThat(blown).isGreaterThan(held);
        assertThat(Slab.thickBodyHeldSurface(80, 20, 0, 1.4e-7, 60)).isCloseTo(20, within(1e-9));
    }

    @Test
    void surfaceOfAThickBodyFollowsTheClosedFormAtDepthZero() {
        // own calculation: at depth 0 the share is 1 - exp(b^2) erfc(b); b = 1 gives 0.572416
        double seconds = Math.pow(0.5 / 50, 2) / 1.4e-7;

        assertThat(Slab.thickBodyInAir(0, 1, 0, 50, 0.5, 1.4e-7, seconds)).isCloseTo(0.572416, within(1e-6));
        // deeper inside it lags: x = 2 sqrt(a t), b = 1: erfc(1) - exp(3) erfc(2) = 0.063344
        assertThat(Slab.thickBodyInAir(0, 1, 0.02, 50, 0.5, 1.4e-7, seconds)).isCloseTo(0.063344, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"10, 65", "25, 50", "60, 28"})
    void layersAgreeWithTheOneTermSolution(double coefficient, double target) {
        double thickness = 0.02;
        double conductivity = 0.5;
        double heat = 3.6e6;
        double biot = Cooling.biot(coefficient, thickness, conductivity);
        double expected = Slab.fourierTo(80, target, 20, biot, 1) * thickness * thickness * heat / conductivity;

        OptionalDouble seconds = Slab.secondsToSurface(
                80, target, thickness, conductivity, heat, surface -> coefficient * (surface - 20), 36_000);

        assertThat(seconds.orElseThrow()).isCloseTo(expected, within(0.01 * expected));
    }

    @Test
    void layersAgreeWithTheThickBodyWhileTheColdHasNotReachedTheBase() {
        double diffusivity = 0.5 / 3.6e6;
        double after = Slab.thickBodyInAir(80, 20, 0, 40, 0.5, diffusivity, 120);

        OptionalDouble seconds =
                Slab.secondsToSurface(80, after, 0.05, 0.5, 3.6e6, surface -> 40 * (surface - 20), 3600);

        assertThat(seconds.orElseThrow()).isCloseTo(120, within(6.0));
    }

    @Test
    void thinLayersAgreeWithTheLump() {
        double tau = Cooling.timeConstantSeconds(1000, 4000, 0.002, 10);

        OptionalDouble seconds =
                Slab.secondsToSurface(80, 50, 0.002, 0.55, 4e6, surface -> 10 * (surface - 20), 36_000);

        assertThat(seconds.orElseThrow()).isCloseTo(Cooling.timeTo(80, 50, 20, tau), within(8.0));
    }

    @Test
    void aSurfaceThatStartsColdEnoughIsThereAtOnceAndOneInTimeIsNotGivenUp() {
        assertThat(Slab.secondsToSurface(50, 60, 0.02, 0.5, 3.6e6, surface -> 100, 10))
                .hasValue(0);
        assertThat(Slab.secondsToSurface(60, 60, 0.02, 0.5, 3.6e6, surface -> 100, 10))
                .hasValue(0);
        assertThat(Slab.secondsToSurface(80, 60, 0.02, 0.5, 3.6e6, surface -> 0, 3600))
                .isEmpty();
        double exact = Slab.secondsToSurface(80, 60, 0.02, 0.5, 3.6e6, surface -> 500, 3600)
                .orElseThrow();
        assertThat(Slab.secondsToSurface(80, 60, 0.02, 0.5, 3.6e6, surface -> 500, exact))
                .hasValue(exact);
        assertThat(Slab.secondsToSurface(80, 60, 0.02, 0.5, 3.6e6, surface -> 500, exact - 0.01))
                .isEmpty();
    }

    @Test
    void valuesOutsideTheirRangeAreNamedWithTheirValue() {
        refused(() -> Slab.firstRoot(0), "Biot number must be more than 0, but it is [0]");
        refused(() -> Slab.firstRoot(2e6), "Biot number must be from 0");
        refused(() -> Slab.firstCoefficient(0), "root");
        refused(() -> Slab.celsiusAt(25, -11, 0.2, 0.19, 0), "Fourier number must be from 0.2");
        refused(() -> Slab.celsiusAt(25, -11, 0.2, 1, 1.1), "place in the slab must be from 0 to 1, but it is [1.1]");
        refused(() -> Slab.fourierTo(25, 2, -11, 0.2, -0.1), "place in the slab");
        refused(() -> Slab.fourierTo(25, -12, -11, 0.2, 1), "share of the temperature difference left");
        refused(() -> Slab.fourierTo(25, 24, -11, 0.2, 1), "Fourier number");
        refused(() -> Slab.thickBodyHeldSurface(20, 0, -1, 1e-7, 1), "depth");
        refused(() -> Slab.thickBodyHeldSurface(20, 0, 1, 0, 1), "diffusivity");
        refused(() -> Slab.thickBodyHeldSurface(20, 0, 1, 1e-7, 0), "time must be more than 0 s");
        refused(() -> Slab.thickBodyInAir(20, 0, -1, 10, 0.5, 1e-7, 1), "depth");
        refused(() -> Slab.thickBodyInAir(20, 0, 0, 1e6, 0.5, 1e-7, 3600), "h sqrt(a t) / k");
        refused(() -> Slab.secondsToSurface(80, 60, 0, 0.5, 3.6e6, s -> 1, 1), "thickness");
        refused(() -> Slab.secondsToSurface(80, 60, 1, 0, 3.6e6, s -> 1, 1), "conductivity");
        refused(() -> Slab.secondsToSurface(80, 60, 1, 0.5, 0, s -> 1, 1), "heat capacity");
        refused(() -> Slab.secondsToSurface(80, 60, 1, 0.5, 1, s -> 1, -1), "limit");
    }
}
