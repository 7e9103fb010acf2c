package platecall.looks;

/**
 * Free convection in air: how fast still air takes heat from a surface. Each formula gives a Nusselt number from a
 * Rayleigh number; {@link #coefficient} turns it into W/(m2 K).
 */
public final class Convection {

    /** Acceleration of gravity, m/s2. */
    public static final double GRAVITY = 9.80665;

    /** Air on a set is never quite still; own value, W/(m2 K), no published source. */
    public static final double LEAST_COEFFICIENT = 3;

    private static final double TURBULENT_FROM = 1e7;

    private Convection() {}

    /**
     * Rayleigh number {@code g b dT L^3 / (nu a)}. Source: Incropera, Fundamentals of Heat and Mass Transfer, ch. 9.
     *
     * @param expansionPerKelvin b, 1/K; for a gas 1 / film temperature in K
     * @param differenceKelvin dT between surface and air, K, 0 or more
     * @param lengthMetres L, more than 0
     * @param viscosityM2PerS nu, more than 0
     * @param diffusivityM2PerS a, more than 0
     */
    public static double rayleigh(
            double expansionPerKelvin,
            double differenceKelvin,
            double lengthMetres,
            double viscosityM2PerS,
            double diffusivityM2PerS) {
        Limits.positive(expansionPerKelvin, "expansion", "1/K");
        Limits.within(differenceKelvin, 0, 10_000, "temperature difference", "K");
        Limits.positive(lengthMetres, "length", "m");
        Limits.positive(viscosityM2PerS, "viscosity", "m2/s");
        Limits.positive(diffusivityM2PerS, "diffusivity", "m2/s");
        return GRAVITY
                * expansionPerKelvin
                * differenceKelvin
                * Math.pow(lengthMetres, 3)
                / (viscosityM2PerS * diffusivityM2PerS);
    }

    /**
     * Vertical plate, {@code (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2}; length is the height.
     * Source: Churchill and Chu, 1975.
     *
     * @param rayleigh 0 to 1e13
     */
    public static double verticalPlate(double rayleigh, double prandtl) {
        Limits.within(rayleigh, 0, 1e13, "Rayleigh number of a vertical plate", "");
        double root = 0.825 + 0.387 * Math.pow(rayleigh, 1.0 / 6) / Math.pow(damping(0.492, prandtl), 8.0 / 27);
        return root * root;
    }

    /**
     * Vertical plate in laminar flow, {@code 0.68 + 0.670 Ra^(1/4) / (1 + (0.492/Pr)^(9/16))^(4/9)}; length is the
     * height. Source: Churchill and Chu, 1975.
     *
     * @param rayleigh 0 to 1e9
     */
    public static double verticalPlateLaminar(double rayleigh, double prandtl) {
        Limits.within(rayleigh, 0, 1e9, "Rayleigh number of a laminar vertical plate", "");
        return 0.68 + 0.670 * Math.pow(rayleigh, 0.25) / Math.pow(damping(0.492, prandtl), 4.0 / 9);
    }

    /**
     * Horizontal plate, hot side up (or cold side down), {@code 0.54 Ra^(1/4)} up to 1e7 and {@code 0.15 Ra^(1/3)}
     * above; the jump at 1e7 is in the source. Length is area / perimeter. Source: McAdams, as in Incropera, ch. 9.
     *
     * @param rayleigh 1e4 to 1e11
     */
    public static double plateHotSideUp(double rayleigh) {
        Limits.within(rayleigh, 1e4, 1e11, "Rayleigh number of a plate, hot side up", "");
        return hotSideUp(rayleigh);
    }

    /**
     * Horizontal plate, hot side down (or cold side up), {@code 0.27 Ra^(1/4)}. Length is area / perimeter. Source:
     * McAdams, as in Çengel, Heat Transfer, ch. 9.
     *
     * @param rayleigh 1e5 to 1e11
     */
    public static double plateHotSideDown(double rayleigh) {
        Limits.within(rayleigh, 1e5, 1e11, "Rayleigh number of a plate, hot side down", "");
        return 0.27 * Math.pow(rayleigh, 0.25);
    }

    /**
     * Horizontal cylinder, {@code (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2}; length is the diameter.
     * Source: Churchill and Chu, 1975.
     *
     * @param rayleigh 0 to 1e12
     */
    public static double horizontalCylinder(double rayleigh, double prandtl) {
        Limits.within(rayleigh, 0, 1e12, "Rayleigh number of a cylinder", "");
        double root = 0.60 + 0.387 * Math.pow(rayleigh, 1.0 / 6) / Math.pow(damping(0.559, prandtl), 8.0 / 27);
        return root * root;
    }

    /** Coefficient {@code h = Nu k / L}, W/(m2 K). */
    public static double coefficient(double nusselt, double conductivityWPerMK, double lengthMetres) {
        Limits.positive(nusselt, "Nusselt number", "");
        Limits.positive(conductivityWPerMK, "conductivity", "W/(m K)");
        return nusselt * conductivityWPerMK / Limits.positive(lengthMetres, "length", "m");
    }

    /**
     * Air over a hot round plate of food, W/(m2 K), at least {@link #LEAST_COEFFICIENT}: {@link #plateHotSideUp}, for
     * small portions carried on below its range. A surface colder than the air gets the least.
     *
     * @param surfaceCelsius -40 to 100
     * @param airCelsius -40 to 100
     * @param diameterMetres more than 0
     */
    public static double overPlate(double surfaceCelsius, double airCelsius, double diameterMetres) {
        double length = Limits.positive(diameterMetres, "diameter", "m") / 4;
        double rayleigh = rayleighInAir(surfaceCelsius, airCelsius, length);
        if (surfaceCelsius <= airCelsius) {
            return LEAST_COEFFICIENT;
        }
        Air film = Air.at((surfaceCelsius + airCelsius) / 2);
        double free = coefficient(hotSideUp(rayleigh), film.conductivityWPerMK(), length);
        return Math.max(LEAST_COEFFICIENT, free);
    }

    /** Air along a glass or a frozen slab of this height, W/(m2 K), at least {@link #LEAST_COEFFICIENT}. */
    public static double alongWall(double surfaceCelsius, double airCelsius, double heightMetres) {
        Air film = Air.at((surfaceCelsius + airCelsius) / 2);
        double nusselt = verticalPlate(rayleighInAir(surfaceCelsius, airCelsius, heightMetres), film.prandtl());
        return Math.max(LEAST_COEFFICIENT, coefficient(nusselt, film.conductivityWPerMK(), heightMetres));
    }

    /** Air around something round of this diameter, W/(m2 K), at least {@link #LEAST_COEFFICIENT}. */
    public static double aroundRound(double surfaceCelsius, double airCelsius, double diameterMetres) {
        Air film = Air.at((surfaceCelsius + airCelsius) / 2);
        double nusselt = horizontalCylinder(rayleighInAir(surfaceCelsius, airCelsius, diameterMetres), film.prandtl());
        return Math.max(LEAST_COEFFICIENT, coefficient(nusselt, film.conductivityWPerMK(), diameterMetres));
    }

    private static double hotSideUp(double rayleigh) {
        return rayleigh <= TURBULENT_FROM ? 0.54 * Math.pow(rayleigh, 0.25) : 0.15 * Math.cbrt(rayleigh);
    }

    private static double rayleighInAir(double surfaceCelsius, double airCelsius, double lengthMetres) {
        double filmCelsius = (surfaceCelsius + airCelsius) / 2;
        Air film = Air.at(filmCelsius);
        return rayleigh(
                1 / Limits.kelvin(filmCelsius),
                Math.abs(surfaceCelsius - airCelsius),
                lengthMetres,
                film.viscosityM2PerS(),
                film.diffusivityM2PerS());
    }

    private static double damping(double constant, double prandtl) {
        return 1 + Math.pow(constant / Limits.positive(prandtl, "Prandtl number", ""), 9.0 / 16);
    }
}
