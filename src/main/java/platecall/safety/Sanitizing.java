package platecall.safety;

/** Sanitizing of what touches food (FDA Food Code 4-703.11). */
public final class Sanitizing {

    /** Water for sanitizing by hand, in degrees C (4-501.111; value from memory). */
    public static final double HAND_WATER_CELSIUS = 77;

    /** Surface of utensils in a machine, in degrees C. */
    public static final double MACHINE_CELSIUS = 71;

    /** Seconds in hot water or in a chemical other than chlorine. */
    public static final int SECONDS = 30;

    /** Seconds in chlorine, whatever its strength. */
    public static final int CHLORINE_SECONDS = 10;

    private Sanitizing() {}

    /** Whether things stay long enough in hot water. */
    public static boolean hotWater(double waterCelsius, double seconds) {
        return waterCelsius >= HAND_WATER_CELSIUS && seconds >= SECONDS;
    }

    /** Whether a machine makes the surface of utensils hot enough. */
    public static boolean machine(double surfaceCelsius) {
        return surfaceCelsius >= MACHINE_CELSIUS;
    }

    /**
     * Whether things stay long enough in chlorine: 10 seconds; 7 at 50 mg/l with pH at most 10 and at least 38 °C, or with pH
     * at most 8 and at least 24 °C.
     */
    public static boolean chlorine(double milligramsPerLitre, double ph, double celsius, double seconds) {
        boolean fast = milligramsPerLitre >= 50 && (ph <= 10 && celsius >= 38 || ph <= 8 && celsius >= 24);
        return seconds >= (fast ? 7 : CHLORINE_SECONDS);
    }

    /** Whether things stay long enough in another chemical. */
    public static boolean otherChemical(double seconds) {
        return seconds >= SECONDS;
    }
}
