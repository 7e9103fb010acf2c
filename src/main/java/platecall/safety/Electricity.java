package platecall.safety;

/** What a power circuit may carry; an electrician decides. */
public final class Electricity {

    /** How often a load that lasts three hours or more counts (NEC 210.19(A)(1), 210.20(A)). */
    public static final double CONTINUOUS_FACTOR = 1.25;

    /** Decimal amps are off by far less. */
    private static final double ROUNDING = 1e-6;

    private Electricity() {}

    /** Watts of a load: {@code volts * amps}. */
    public static double watts(double volts, double amps) {
        return volts * amps;
    }

    /**
     * Whether {@code passing + factor * lasting <= rating}, all in amps.
     *
     * @param factor how often a lasting load counts, at least 1: in the US {@link #CONTINUOUS_FACTOR}
     */
    public static boolean carries(double ratingAmps, double factor, double passingAmps, double lastingAmps) {
        return passingAmps + factor * lastingAmps <= ratingAmps + ROUNDING;
    }

    /**
     * How a maker takes power off a generator in thin or hot air.
     *
     * @param altitudeShare share lost for each {@code altitudeStepMetres} above {@code fromMetres}
     * @param heatShare share lost for each {@code heatStepCelsius} above {@code fromCelsius}
     */
    public record Derating(
            double altitudeShare,
            double altitudeStepMetres,
            double fromMetres,
            double heatShare,
            double heatStepCelsius,
            double fromCelsius) {

        /** What is left of its power, 0 to 1: {@code (1 - share * steps up) * (1 - share * steps hotter)}. */
        public double left(double metres, double celsius) {
            double thin = altitudeShare * Math.max(0, metres - fromMetres) / altitudeStepMetres;
            double hot = heatShare * Math.max(0, celsius - fromCelsius) / heatStepCelsius;
            return Math.max(0, 1 - thin) * Math.max(0, 1 - hot);
        }
    }
}
