package platecall.looks;

/** Bubbles: a drink loses dissolved gas at a rate in proportion to what it still holds (first order). */
public final class Carbonation {

    private Carbonation() {}

    /**
     * Rate {@code -ln(1 - loss) / t}, one over the unit of {@code time}.
     *
     * @param lossShare share lost in {@code time}, more than 0, less than 1
     * @param time more than 0
     */
    public static double rate(double lossShare, double time) {
        Limits.positive(lossShare, "share lost", "");
        Limits.within(lossShare, 0, Math.nextDown(1.0), "share lost", "");
        return -Math.log1p(-lossShare) / Limits.positive(time, "time", "");
    }

    /** Gas left {@code start exp(-rate t)}, in the unit of {@code start}; all 0 or more. */
    public static double left(double start, double rate, double time) {
        Limits.within(start, 0, 1e6, "dissolved gas", "");
        return start * Math.exp(-Limits.within(rate, 0, 1e6, "rate", "") * Limits.within(time, 0, 1e12, "time", ""));
    }

    /** Time until a share (more than 0, at most 1) is left, {@code -ln(share) / rate}; rate more than 0. */
    public static double timeToShare(double rate, double share) {
        Limits.positive(share, "share", "");
        Limits.within(share, 0, 1, "share", "");
        return -Math.log(share) / Limits.positive(rate, "rate", "");
    }
}
