package platecall.looks;

/**
 * A front of freezing or melting that moves in from the surface. Source: Plank, 1913, as in Earle, Unit Operations in
 * Food Processing, ch. 6. For melting the temperature difference changes sign, and heat now passes through what has
 * thawed, so the thawed conductivity counts.
 */
public final class Melting {

    private Melting() {}

    /** The bodies for which Plank's form is known. */
    public enum Shape {
        /** Flat, both faces in the air. */
        SLAB(1 / 2.0, 1 / 8.0),
        /** Long and round. */
        CYLINDER(1 / 4.0, 1 / 16.0),
        /** A scoop. */
        SPHERE(1 / 6.0, 1 / 24.0);

        private final double surfaceFactor;
        private final double insideFactor;

        Shape(double surfaceFactor, double insideFactor) {
            this.surfaceFactor = surfaceFactor;
            this.insideFactor = insideFactor;
        }

        /** Plank's P, for the film at the surface. */
        public double surfaceFactor() {
            return surfaceFactor;
        }

        /** Plank's R, for what has changed already. */
        public double insideFactor() {
            return insideFactor;
        }
    }

    /**
     * Plank's time for the whole body, {@code rho L / dT (P a / h + R a^2 / k)}, seconds.
     *
     * @param densityKgPerM3 rho, more than 0
     * @param latentJPerKg L, more than 0
     * @param differenceKelvin dT between freezing point and surroundings without its sign, more than 0
     * @param sizeMetres a, thickness or diameter, more than 0
     * @param coefficientWPerM2K h, more than 0
     * @param conductivityWPerMK k of the part that has changed, frozen when freezing, thawed when melting, more than 0
     */
    public static double plankSeconds(
            Shape shape,
            double densityKgPerM3,
            double latentJPerKg,
            double differenceKelvin,
            double sizeMetres,
            double coefficientWPerM2K,
            double conductivityWPerMK) {
        Limits.positive(coefficientWPerM2K, "coefficient", "W/(m2 K)");
        Limits.positive(conductivityWPerMK, "conductivity", "W/(m K)");
        Limits.positive(sizeMetres, "size", "m");
        return drive(densityKgPerM3, latentJPerKg, differenceKelvin)
                * (shape.surfaceFactor * sizeMetres / coefficientWPerM2K
                        + shape.insideFactor * sizeMetres * sizeMetres / conductivityWPerMK);
    }

    /**
     * Time until the front has moved in by a layer, seconds: Plank's balance integrated to that depth only. With
     * radius {@code R} and front at {@code r}: slab {@code d/h + d^2/2k}; cylinder
     * {@code (R^2-r^2)/(2Rh) + ((R^2-r^2)/4 - r^2/2 ln(R/r))/k}; sphere
     * {@code (R^3-r^3)/(3R^2h) + ((R^2-r^2)/2 - (R^3-r^3)/(3R))/k}; each times {@code rho L / dT}. With the layer half
     * the size it is {@link #plankSeconds}. Own integration.
     *
     * @param layerMetres d, 0 to half the size
     */
    public static double layerSeconds(
            Shape shape,
            double densityKgPerM3,
            double latentJPerKg,
            double differenceKelvin,
            double sizeMetres,
            double layerMetres,
            double coefficientWPerM2K,
            double conductivityWPerMK) {
        Limits.positive(coefficientWPerM2K, "coefficient", "W/(m2 K)");
        Limits.positive(conductivityWPerMK, "conductivity", "W/(m K)");
        double outer = Limits.positive(sizeMetres, "size", "m") / 2;
        Limits.within(layerMetres, 0, outer, "layer", "m");
        double inner = outer - layerMetres;
        double square = outer * outer - inner * inner;
        double cube = outer * outer * outer - inner * inner * inner;
        double film = switch (shape) {
            case SLAB -> layerMetres;
            case CYLINDER -> square / (2 * outer);
            case SPHERE -> cube / (3 * outer * outer);
        };
        double inside = switch (shape) {
            case SLAB -> layerMetres * layerMetres / 2;
            case CYLINDER -> square / 4 - (inner == 0 ? 0 : inner * inner / 2 * Math.log(outer / inner));
            case SPHERE -> square / 2 - cube / (3 * outer);
        };
        return drive(densityKgPerM3, latentJPerKg, differenceKelvin)
                * (film / coefficientWPerM2K + inside / conductivityWPerMK);
    }

    private static double drive(double densityKgPerM3, double latentJPerKg, double differenceKelvin) {
        Limits.positive(densityKgPerM3, "density", "kg/m3");
        Limits.positive(latentJPerKg, "latent heat", "J/kg");
        return densityKgPerM3 * latentJPerKg / Limits.positive(differenceKelvin, "temperature difference", "K");
    }
}
