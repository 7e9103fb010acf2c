package platecall.looks;

import java.util.function.DoubleUnaryOperator;

/**
 * A warm thing in cooler surroundings (or the reverse) as one lump of one temperature. That is fair while the Biot
 * number stays below {@link #LUMPED_BELOW_BIOT}; above it the surface runs ahead of the core, see {@link Slab}.
 */
public final class Cooling {

    /** Stefan-Boltzmann constant, W/(m2 K4). Source: CODATA 2018. */
    public static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    /** Gas constant, J/(kmol K). Source: CODATA 2018. */
    public static final double GAS_CONSTANT = 8314.462618;

    /** One temperature for the whole body is good enough below this Biot number. Source: Incropera, ch. 5. */
    public static final double LUMPED_BELOW_BIOT = 0.1;

    private static final int QUADRATURE_STEPS = 400;

    private Cooling() {}

    /**
     * Biot number {@code h L / k}. Source: Incropera, ch. 5.
     *
     * @param coefficientWPerM2K h, more than 0
     * @param lengthMetres L, volume / area for a lump, more than 0
     * @param conductivityWPerMK k of the body, more than 0
     */
    public static double biot(double coefficientWPerM2K, double lengthMetres, double conductivityWPerMK) {
        Limits.positive(coefficientWPerM2K, "coefficient", "W/(m2 K)");
        Limits.positive(lengthMetres, "length", "m");
        return coefficientWPerM2K * lengthMetres / Limits.positive(conductivityWPerMK, "conductivity", "W/(m K)");
    }

    /** Whether a body of this Biot number may be taken as one lump. */
    public static boolean isLump(double biot) {
        return Limits.within(biot, 0, 1e9, "Biot number", "") < LUMPED_BELOW_BIOT;
    }

    /**
     * Time constant {@code rho c L / h}, seconds. Source: Incropera, eq. 5.7.
     *
     * @param densityKgPerM3 rho, more than 0
     * @param specificHeatJPerKgK c, more than 0
     * @param lengthMetres L, volume / area, more than 0
     * @param coefficientWPerM2K h, more than 0
     */
    public static double timeConstantSeconds(
            double densityKgPerM3, double specificHeatJPerKgK, double lengthMetres, double coefficientWPerM2K) {
        Limits.positive(densityKgPerM3, "density", "kg/m3");
        Limits.positive(specificHeatJPerKgK, "specific heat", "J/(kg K)");
        Limits.positive(lengthMetres, "length", "m");
        return densityKgPerM3
                * specificHeatJPerKgK
                * lengthMetres
                / Limits.positive(coefficientWPerM2K, "coefficient", "W/(m2 K)");
    }

    /**
     * Temperature after a time, {@code ambient + (start - ambient) exp(-t / tau)}, °C. Source: Newton's law of cooling.
     *
     * @param tau time constant, in the unit of {@code time}, more than 0
     * @param time 0 or more
     */
    public static double celsiusAfter(double startCelsius, double ambientCelsius, double tau, double time) {
        Limits.positive(tau, "time constant", "");
        Limits.within(time, 0, 1e12, "time", "");
        return ambientCelsius + (startCelsius - ambientCelsius) * Math.exp(-time / tau);
    }

    /**
     * Time to a temperature, {@code tau ln((start - ambient) / (target - ambient))}, in the unit of {@code tau}.
     * Source: Incropera, eq. 5.5.
     *
     * @throws IllegalArgumentException if the target is not between the start and the ambient
     */
    public static double timeTo(double startCelsius, double targetCelsius, double ambientCelsius, double tau) {
        Limits.positive(tau, "time constant", "");
        double ratio = (startCelsius - ambientCelsius) / (targetCelsius - ambientCelsius);
        if (!(ratio >= 1 && ratio < Double.POSITIVE_INFINITY)) {
            throw neverReached(startCelsius, targetCelsius, ambientCelsius);
        }
        return tau * Math.log(ratio);
    }

    /**
     * Rate {@code k = 1 / tau} from two readings, in one over the unit of {@code time}.
     *
     * @throws IllegalArgumentException if the later reading is not between the start and the ambient
     */
    public static double rateFromReadings(
            double startCelsius, double laterCelsius, double ambientCelsius, double time) {
        return timeTo(startCelsius, laterCelsius, ambientCelsius, 1) / Limits.positive(time, "time", "");
    }

    /**
     * Heat lost by radiation, {@code e s (Ts^4 - Tw^4)} in K, W/m2; negative if the walls are hotter.
     *
     * @param emissivity e, 0 to 1
     * @param surfaceCelsius Ts
     * @param wallsCelsius Tw of the surroundings
     */
    public static double radiativeFlux(double emissivity, double surfaceCelsius, double wallsCelsius) {
        Limits.within(emissivity, 0, 1, "emissivity", "");
        return emissivity
                * STEFAN_BOLTZMANN
                * (Math.pow(Limits.kelvin(surfaceCelsius), 4) - Math.pow(Limits.kelvin(wallsCelsius), 4));
    }

    /** Radiation as a coefficient, {@code e s (Ts + Tw)(Ts^2 + Tw^2)} in K, W/(m2 K). Source: Incropera, eq. 1.9. */
    public static double radiativeCoefficient(double emissivity, double surfaceCelsius, double wallsCelsius) {
        Limits.within(emissivity, 0, 1, "emissivity", "");
        double surface = Limits.kelvin(surfaceCelsius);
        double walls = Limits.kelvin(wallsCelsius);
        return emissivity * STEFAN_BOLTZMANN * (surface + walls) * (surface * surface + walls * walls);
    }

    /**
     * The temperature at which a surface neither gains nor loses, °C, by bisection.
     *
     * @param fluxOut heat lost at a surface temperature in °C, W/m2; rises with temperature
     * @param lowCelsius where it gains
     * @param highCelsius where it loses
     * @throws IllegalArgumentException if the flux does not change sign between the two
     */
    public static double steadyCelsius(DoubleUnaryOperator fluxOut, double lowCelsius, double highCelsius) {
        return Bisection.zero(fluxOut, lowCelsius, highCelsius);
    }

    /**
     * Seconds for a lump to go from one temperature to another under any loss, {@code integral of -C / q(T) dT}, by
     * Simpson's rule in the logarithm of the distance to the steady temperature, where the integrand is smooth.
     *
     * @param capacityJPerM2K heat capacity per area, {@code rho c V/A}, J/(m2 K), more than 0
     * @param fluxOut heat lost at a surface temperature in °C, W/m2
     * @param steadyCelsius where {@code fluxOut} is 0
     * @throws IllegalArgumentException if the target is not between the start and the steady temperature
     */
    public static double secondsTo(
            double startCelsius,
            double targetCelsius,
            double steadyCelsius,
            double capacityJPerM2K,
            DoubleUnaryOperator fluxOut) {
        Limits.positive(capacityJPerM2K, "heat capacity", "J/(m2 K)");
        double span = timeTo(startCelsius, targetCelsius, steadyCelsius, 1);
        double step = span / QUADRATURE_STEPS;
        double sum = 0;
        for (int i = 0; i <= QUADRATURE_STEPS; i++) {
            double distance = (startCelsius - steadyCelsius) * Math.exp(-i * step);
            double weight = i == 0 || i == QUADRATURE_STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * distance / fluxOut.applyAsDouble(steadyCelsius + distance);
        }
        return capacityJPerM2K * sum * step / 3;
    }

    /**
     * How fast vapour leaves a wet surface, {@code h / (rho c Le^(2/3))}, m/s: heat and mass transfer go alike. Source:
     * Lewis relation, Incropera, eq. 6.60.
     *
     * @param coefficientWPerM2K h of the air, more than 0
     * @param densityKgPerM3 rho of the air, more than 0
     * @param specificHeatJPerKgK c of the air, more than 0
     * @param lewis thermal / vapour diffusivity, more than 0; 0.85 for water in air
     */
    public static double vapourVelocity(
            double coefficientWPerM2K, double densityKgPerM3, double specificHeatJPerKgK, double lewis) {
        Limits.positive(coefficientWPerM2K, "coefficient", "W/(m2 K)");
        Limits.positive(densityKgPerM3, "density", "kg/m3");
        Limits.positive(specificHeatJPerKgK, "specific heat", "J/(kg K)");
        Limits.positive(lewis, "Lewis number", "");
        return coefficientWPerM2K / (densityKgPerM3 * specificHeatJPerKgK * Math.cbrt(lewis * lewis));
    }

    /**
     * Steady temperature of a wet surface in dry air, °C: heat from the air pays for the vapour,
     * {@code Ts^2 - Ta Ts + B = 0} with {@code B = M L p / (R rho c Le^(2/3))} in K. Source: Incropera, Example 6.7.
     *
     * @param airCelsius Ta
     * @param latentJPerKg L, more than 0
     * @param molarMassKgPerKmol M, more than 0
     * @param vapourPa p, saturation pressure at the surface, more than 0
     * @param densityKgPerM3 rho of the air
     * @param specificHeatJPerKgK c of the air
     * @param lewis thermal / vapour diffusivity
     * @throws IllegalArgumentException if no such temperature exists
     */
    public static double evaporativeCelsius(
            double airCelsius,
            double latentJPerKg,
            double molarMassKgPerKmol,
            double vapourPa,
            double densityKgPerM3,
            double specificHeatJPerKgK,
            double lewis) {
        Limits.positive(latentJPerKg, "latent heat", "J/kg");
        Limits.positive(molarMassKgPerKmol, "molar mass", "kg/kmol");
        Limits.positive(vapourPa, "vapour pressure", "Pa");
        double air = Limits.kelvin(airCelsius);
        double b = molarMassKgPerKmol
                * latentJPerKg
                * vapourPa
                / GAS_CONSTANT
                * vapourVelocity(1, densityKgPerM3, specificHeatJPerKgK, lewis);
        double discriminant = air * air - 4 * b;
        Limits.within(discriminant, 0, Double.MAX_VALUE, "discriminant of the evaporation balance", "K2");
        return (air + Math.sqrt(discriminant)) / 2 + Limits.ABSOLUTE_ZERO;
    }

    /**
     * Water given off by open water, {@code (25 + 19 v) A (xs - x) / 3600}, kg/s: a rough rule for pools, good for an
     * order of magnitude only. Source: The Engineering ToolBox, Evaporation from a Water Surface.
     *
     * @param airSpeedMPerS v, 0 or more
     * @param areaM2 A, more than 0
     * @param saturatedRatio xs, humidity ratio at the water's temperature, kg/kg
     * @param airRatio x, humidity ratio of the air, kg/kg, 0 to {@code saturatedRatio}
     */
    public static double openWaterKgPerSecond(
            double airSpeedMPerS, double areaM2, double saturatedRatio, double airRatio) {
        Limits.within(airSpeedMPerS, 0, 100, "air speed", "m/s");
        Limits.positive(areaM2, "area", "m2");
        Limits.within(saturatedRatio, 0, 10, "saturated humidity ratio", "kg/kg");
        Limits.within(airRatio, 0, saturatedRatio, "humidity ratio", "kg/kg");
        return (25 + 19 * airSpeedMPerS) * areaM2 * (saturatedRatio - airRatio) / 3600;
    }

    private static IllegalArgumentException neverReached(double start, double target, double end) {
        return new IllegalArgumentException(
                "[" + target + "] °C is never reached from [" + start + "] °C on the way to [" + end + "] °C");
    }
}
