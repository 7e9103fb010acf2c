package platecall.looks;

/** Thermal properties of food by its share of water. Source: Earle, Unit Operations in Food Processing, ch. 5 and 6. */
public final class Composition {

    /** Latent heat of ice, J/kg, as Earle takes it. */
    public static final double ICE_LATENT_J_PER_KG = 335_000;

    private Composition() {}

    /** Specific heat above freezing, {@code 4.19 p + 0.84 (1 - p)} kJ/(kg K), as J/(kg K); p from 0 to 1. */
    public static double specificHeatThawed(double waterShare) {
        return 4190 * share(waterShare) + 840 * (1 - waterShare);
    }

    /** Specific heat below freezing, {@code 2.1 p + 0.84 (1 - p)} kJ/(kg K), as J/(kg K); p from 0 to 1. */
    public static double specificHeatFrozen(double waterShare) {
        return 2100 * share(waterShare) + 840 * (1 - waterShare);
    }

    /** Latent heat {@code 335 p} kJ/kg, as J/kg; p from 0 to 1. */
    public static double latentHeat(double waterShare) {
        return ICE_LATENT_J_PER_KG * share(waterShare);
    }

    /** Conductivity above freezing, {@code 0.55 p + 0.26 (1 - p)} W/(m K); p from 0 to 1. */
    public static double conductivityThawed(double waterShare) {
        return 0.55 * share(waterShare) + 0.26 * (1 - waterShare);
    }

    /** Conductivity below freezing, {@code 2.4 p + 0.26 (1 - p)} W/(m K); p from 0 to 1. */
    public static double conductivityFrozen(double waterShare) {
        return 2.4 * share(waterShare) + 0.26 * (1 - waterShare);
    }

    /**
     * Share of the mass that is ice, {@code (xw - 0.4 xp)(1 - tf / t)}; 0 at and above the freezing point. Source:
     * Chen, 1985, value from memory.
     *
     * @param waterShare xw, 0 to 1
     * @param proteinShare xp, 0 to 1
     * @param freezesCelsius tf, -40 to 0
     * @param celsius t, -60 to 100
     */
    public static double iceShare(double waterShare, double proteinShare, double freezesCelsius, double celsius) {
        share(waterShare);
        Limits.within(proteinShare, 0, 1, "share of protein", "");
        Limits.within(freezesCelsius, -40, 0, "freezing point", "°C");
        Limits.within(celsius, -60, 100, "temperature", "°C");
        if (celsius >= freezesCelsius) {
            return 0;
        }
        return Math.max(0, waterShare - 0.4 * proteinShare) * (1 - freezesCelsius / celsius);
    }

    private static double share(double waterShare) {
        return Limits.within(waterShare, 0, 1, "share of water", "");
    }
}
