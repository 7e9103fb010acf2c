package platecall.looks;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Heat inside a slab whose surface runs ahead of its core. */
public final class Slab {

    /** The one-term series is within 2 % from this Fourier number on. Source: Incropera, sec. 5.5.2. */
    public static final double ONE_TERM_FROM_FOURIER = 0.2;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final int LEAST_LAYERS = 8;
    private static final int MOST_LAYERS = 128;
    private static final double WANTED_LAYER_METRES = 0.0005;

    private Slab() {}

    /**
     * First root of {@code z tan z = Bi}, 0 to pi/2. Source: Incropera, eq. 5.42c.
     *
     * @param biot h L / k with L half the thickness, more than 0, at most 1e6
     */
    public static double firstRoot(double biot) {
        Limits.positive(biot, "Biot number", "");
        Limits.within(biot, 0, 1e6, "Biot number", "");
        return Bisection.zero(z -> z * Math.sin(z) - biot * Math.cos(z), 0, Math.PI / 2);
    }

    /** First coefficient {@code 4 sin z / (2 z + sin 2z)}. Source: Incropera, eq. 5.42b. */
    public static double firstCoefficient(double root) {
        Limits.within(root, 1e-9, Math.PI / 2, "root", "");
        return 4 * Math.sin(root) / (2 * root + Math.sin(2 * root));
    }

    /**
     * Temperature in a slab that both sides cool alike, {@code ambient + (start - ambient) C exp(-z^2 Fo) cos(z x)}, °C.
     * Source: one-term solution, Incropera, eq. 5.43.
     *
     * @param biot h L / k, L half the thickness
     * @param fourier a t / L^2, at least {@link #ONE_TERM_FROM_FOURIER}
     * @param place x, 0 in the middle, 1 at the surface
     */
    public static double celsiusAt(
            double startCelsius, double ambientCelsius, double biot, double fourier, double place) {
        Limits.within(fourier, ONE_TERM_FROM_FOURIER, 1e6, "Fourier number", "");
        Limits.within(place, 0, 1, "place in the slab", "");
        double root = firstRoot(biot);
        return ambientCelsius
                + (startCelsius - ambientCelsius)
                        * firstCoefficient(root)
                        * Math.exp(-root * root * fourier)
                        * Math.cos(root * place);
    }

    /**
     * Fourier number at which a place in the slab reaches a temperature: {@link #celsiusAt} solved for {@code Fo}.
     *
     * @throws IllegalArgumentException if it is reached before the one-term series holds, or never
     */
    public static double fourierTo(
            double startCelsius, double targetCelsius, double ambientCelsius, double biot, double place) {
        Limits.within(place, 0, 1, "place in the slab", "");
        double root = firstRoot(biot);
        double share = (targetCelsius - ambientCelsius) / (startCelsius - ambientCelsius);
        Limits.positive(share, "share of the temperature difference left", "");
        double fourier = Math.log(firstCoefficient(root) * Math.cos(root * place) / share) / (root * root);
        return Limits.within(fourier, ONE_TERM_FROM_FOURIER, 1e6, "Fourier number", "");
    }

    /**
     * Temperature in a thick body whose surface is held at a temperature, {@code Ts + (Ti - Ts) erf(x / (2 sqrt(a t)))},
     * °C. Source: Incropera, eq. 5.60.
     *
     * @param depthMetres x, 0 or more
     * @param diffusivityM2PerS a, more than 0
     * @param seconds t, more than 0
     */
    public static double thickBodyHeldSurface(
            double startCelsius, double surfaceCelsius, double depthMetres, double diffusivityM2PerS, double seconds) {
        Limits.within(depthMetres, 0, 1000, "depth", "m");
        double eta = depthMetres / (2 * Math.sqrt(spread(diffusivityM2PerS, seconds)));
        return startCelsius + (surfaceCelsius - startCelsius) * erfc(eta);
    }

    /**
     * Temperature in a thick body that air cools, °C:
     * {@code Ti + (Ta - Ti) (erfc(e) - exp(h x/k + h^2 a t/k^2) erfc(e + h sqrt(a t)/k))}, {@code e = x/(2 sqrt(a t))}.
     * Source: Incropera, eq. 5.63.
     *
     * @param depthMetres x, 0 or more
     * @param coefficientWPerM2K h, more than 0
     * @param conductivityWPerMK k, more than 0
     * @param diffusivityM2PerS a, more than 0
     * @param seconds t, more than 0; {@code h sqrt(a t) / k} at most 20
     */
    public static double thickBodyInAir(
            double startCelsius,
            double airCelsius,
            double depthMetres,
            double coefficientWPerM2K,
            double conductivityWPerMK,
            double diffusivityM2PerS,
            double seconds) {
        Limits.within(depthMetres, 0, 1000, "depth", "m");
        double reach = Math.sqrt(spread(diffusivityM2PerS, seconds));
        double eta = depthMetres / (2 * reach);
        double beta = Limits.within(
                Cooling.biot(coefficientWPerM2K, reach, conductivityWPerMK), 0, 20, "h sqrt(a t) / k", "");
        double share = erfc(eta) - Math.exp(2 * eta * beta + beta * beta) * erfc(eta + beta);
        return startCelsius + (airCelsius - startCelsius) * share;
    }

    /**
     * Seconds until the open surface of a slab on an insulated base falls to a temperature, by explicit finite
     * differences in at most 128 layers (energy balance of half a layer at the surface). Empty if it does not within
     * the limit. Own numerical method; the tests hold it against the one-term and the thick-body solution.
     *
     * @param startCelsius even temperature at the start
     * @param targetCelsius wanted at the surface
     * @param thicknessMetres more than 0
     * @param conductivityWPerMK of the slab, more than 0
     * @param heatJPerM3K density times specific heat, more than 0
     * @param fluxOut heat lost at a surface temperature in °C, W/m2
     * @param limitSeconds when to give up, 0 or more
     */
    public static OptionalDouble secondsToSurface(
            double startCelsius,
            double targetCelsius,
            double thicknessMetres,
            double conductivityWPerMK,
            double heatJPerM3K,
            DoubleUnaryOperator fluxOut,
            double limitSeconds) {
        Limits.positive(thicknessMetres, "thickness", "m");
        Limits.positive(conductivityWPerMK, "conductivity", "W/(m K)");
        Limits.positive(heatJPerM3K, "heat capacity", "J/(m3 K)");
        Limits.within(limitSeconds, 0, 1e9, "limit", "s");
        if (startCelsius <= targetCelsius) {
            return OptionalDouble.of(0);
        }
        int layers =
                (int) Math.max(LEAST_LAYERS, Math.min(MOST_LAYERS, Math.round(thicknessMetres / WANTED_LAYER_METRES)));
        double layer = thicknessMetres / layers;
        // half the limit of stability, which a strong loss at the surface lowers
        double lossPerKelvin =
                Math.max(0, fluxOut.applyAsDouble(startCelsius) - fluxOut.applyAsDouble(startCelsius - 1));
        double step = 0.25
                * layer
                * layer
                * heatJPerM3K
                / conductivityWPerMK
                / (1 + lossPerKelvin * layer / conductivityWPerMK);
        double exchange = conductivityWPerMK * step / (heatJPerM3K * layer * layer);
        double[] now = new double[layers + 1];
        Arrays.fill(now, startCelsius);
        for (double seconds = 0; seconds < limitSeconds; seconds += step) {
            double before = now[0];
            double[] next = now.clone();
            next[0] = before
                    + 2 * exchange * (now[1] - before)
                    - 2 * step / (heatJPerM3K * layer) * fluxOut.applyAsDouble(before);
            for (int i = 1; i < layers; i++) {
                next[i] = now[i] + exchange * (now[i - 1] - 2 * now[i] + now[i + 1]);
            }
            next[layers] = now[layers] + 2 * exchange * (now[layers - 1] - now[layers]);
            now = next;
            if (now[0] <= targetCelsius) {
                double reached = seconds + step * (before - targetCelsius) / (before - now[0]);
                return reached <= limitSeconds ? OptionalDouble.of(reached) : OptionalDouble.empty();
            }
        }
        return OptionalDouble.empty();
    }

    private static double spread(double diffusivityM2PerS, double seconds) {
        return Limits.positive(diffusivityM2PerS, "diffusivity", "m2/s") * Limits.positive(seconds, "time", "s");
    }

    /** Complementary error function by the normal distribution: {@code erfc(x) = 2 P(N > x sqrt 2)}. */
    private static double erfc(double x) {
        return 2 * NORMAL.survivalProbability(x * Math.sqrt(2));
    }
}
