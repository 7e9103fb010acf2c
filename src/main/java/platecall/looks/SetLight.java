package platecall.looks;

/**
 * From a light meter's lux to heat on the plate. No published figure for the heat of set lights was found; the light of
 * a glowing filament is near that of a black body, so its efficacy can be worked out.
 */
public final class SetLight {

    private static final double LUMEN_PER_WATT = 683;
    private static final double FIRST_RADIATION = 3.741771852e8;
    private static final double SECOND_RADIATION = 1.438776877e4;
    private static final int STEPS = 1000;

    private SetLight() {}

    /**
     * Lumen a watt of a black body, {@code 683 integral V(l) M(l) dl / (s T^4)}: Planck's law with the eye's response
     * {@code V = 1.019 exp(-285.4 (l - 0.559)^2)}, l in micrometres (Gaussian form of the CIE 1924 curve, value from
     * memory), lm/W. Own calculation.
     *
     * @param kelvin colour temperature, 1000 to 20,000 K; 3200 is film tungsten
     */
    public static double efficacy(double kelvin) {
        Limits.within(kelvin, 1000, 20_000, "colour temperature", "K");
        double low = 0.36;
        double step = (0.83 - low) / STEPS;
        double visible = 0;
        for (int i = 0; i < STEPS; i++) {
            double micrometres = low + (i + 0.5) * step;
            double eye = 1.019 * Math.exp(-285.4 * Math.pow(micrometres - 0.559, 2));
            double emitted = FIRST_RADIATION
                    / (Math.pow(micrometres, 5) * Math.expm1(SECOND_RADIATION / (micrometres * kelvin)));
            visible += eye * emitted * step;
        }
        return LUMEN_PER_WATT * visible / (Cooling.STEFAN_BOLTZMANN * Math.pow(kelvin, 4));
    }

    /**
     * Heat {@code lux / efficacy}, W/m2.
     *
     * @param lux 0 or more
     * @param lumenPerWatt of the lamp's radiation, more than 0: about 27 for tungsten, 300 for LED (value from memory)
     */
    public static double wattsPerSquareMetre(double lux, double lumenPerWatt) {
        return Limits.within(lux, 0, 1e6, "illuminance", "lx") / Limits.positive(lumenPerWatt, "efficacy", "lm/W");
    }

    /**
     * What a light meter shows, {@code watts * efficacy} of a black body's light, lx.
     *
     * @param wattsPerSquareMetre heat on the plate, 0 to 2000 W/m2
     * @param kelvin colour temperature, 1000 to 20,000 K; 3200 is film tungsten
     */
    public static double lux(double wattsPerSquareMetre, double kelvin) {
        return Limits.within(wattsPerSquareMetre, 0, 2000, "light", "W/m2") * efficacy(kelvin);
    }
}
