package platecall.day;

/**
 * A power circuit.
 *
 * @param id short name, unique
 * @param volts nominal voltage, above 0
 * @param amps rating of its breaker, above 0
 * @param continuousFactor how often a lasting load counts, at least 1: 1.25 lets 16 A run on a 20 A breaker
 */
public record Circuit(String id, double volts, double amps, double continuousFactor) {

    public Circuit {
        Demand.text(id, "circuit");
        Demand.that(volts > 0 && volts <= 1000, "volts must be above 0, at most 1000", volts);
        Demand.that(amps > 0 && amps <= 1000, "amps must be above 0, at most 1000", amps);
        Demand.that(
                continuousFactor >= 1 && continuousFactor <= 3, "continuous factor must be 1 to 3", continuousFactor);
    }

    /** Amps that may be drawn for hours. */
    public double usableAmps() {
        return amps / continuousFactor;
    }

    /** The same in tenths of an amp, in which plans count them, rounded down. */
    public int usableTenths() {
        return (int) Math.floor(10 * usableAmps() + 1e-9);
    }
}
