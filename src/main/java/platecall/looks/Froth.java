package platecall.looks;

/**
 * Froth that falls. To a good first approximation its height halves in equal times; it is not purely exponential
 * (Sauerbrei, Haß and Plath, 2006, add a term in t^2.5), and the way of fitting alone moves the time constant by 12 %.
 */
public final class Froth {

    private Froth() {}

    /**
     * A fitted decay {@code h0 exp(-t / tau)}.
     *
     * @param tauSeconds time constant
     * @param startHeight h0, in the unit of the heights
     * @param tauError standard error of {@code tauSeconds}; 0 where none was worked out
     * @param rSquared share of the variance explained on the log scale; NaN where it has no meaning
     */
    public record Fit(double tauSeconds, double startHeight, double tauError, double rSquared) {}

    /** Half-life {@code tau ln 2}, in the unit of {@code tau}, which must be more than 0. */
    public static double halfLife(double tau) {
        return Limits.positive(tau, "time constant", "") * Math.log(2);
    }

    /** Share left after a time, {@code 2^(-t / half-life)}; half-life more than 0, time 0 or more, same unit. */
    public static double shareAfter(double halfLife, double time) {
        Limits.positive(halfLife, "half-life", "");
        return Math.pow(2, -Limits.within(time, 0, 1e12, "time", "") / halfLife);
    }

    /** Time until a share from more than 0 to 1 is left, in the unit of the half-life. */
    public static double timeToShare(double halfLife, double share) {
        Limits.positive(share, "share", "");
        Limits.within(share, 0, 1, "share", "");
        return -Limits.positive(halfLife, "half-life", "") * Math.log(share) / Math.log(2);
    }

    /**
     * Straight line through the logarithms of the heights, all weighing the same.
     *
     * @param seconds at least 2 times
     * @param heights as many, each more than 0, falling on the whole
     */
    public static Fit logFit(double[] seconds, double[] heights) {
        int n = sameLength(seconds, heights);
        double meanTime = 0;
        double meanLog = 0;
        for (int i = 0; i < n; i++) {
            meanTime += seconds[i] / n;
            meanLog += Math.log(Limits.positive(heights[i], "height", "")) / n;
        }
        double timeTime = 0;
        double timeLog = 0;
        double logLog = 0;
        for (int i = 0; i < n; i++) {
            double time = seconds[i] - meanTime;
            double log = Math.log(heights[i]) - meanLog;
            timeTime += time * time;
            timeLog += time * log;
            logLog += log * log;
        }
        double rate = Limits.positive(-timeLog / timeTime, "rate of fall", "1/s");
        return new Fit(1 / rate, Math.exp(meanLog + rate * meanTime), 0, timeLog * timeLog / (timeTime * logLog));
    }

    /**
     * Least squares of the heights weighted by their errors, with the first height held, by Gauss-Newton.
     *
     * @param startHeight h0, more than 0
     * @param errors standard error of each height, more than 0
     */
    public static Fit weightedFit(double startHeight, double[] seconds, double[] heights, double[] errors) {
        Limits.positive(startHeight, "start height", "");
        return gaussNewton(startHeight, true, seconds, heights, errors);
    }

    /** Least squares of the heights weighted by their errors, with the first height free, by Gauss-Newton. */
    public static Fit weightedFit(double[] seconds, double[] heights, double[] errors) {
        return gaussNewton(logFit(seconds, heights).startHeight(), false, seconds, heights, errors);
    }

    private static Fit gaussNewton(
            double startHeight, boolean held, double[] seconds, double[] heights, double[] errors) {
        int n = sameLength(seconds, heights);
        sameLength(seconds, errors);
        double h0 = startHeight;
        double tau = logFit(seconds, heights).tauSeconds();
        double error = 0;
        for (int round = 0; round < 50; round++) {
            double hh = 0;
            double ht = 0;
            double tt = 0;
            double hr = 0;
            double tr = 0;
            for (int i = 0; i < n; i++) {
                double weight = 1 / Math.pow(Limits.positive(errors[i], "error", ""), 2);
                double byHeight = held ? 0 : Math.exp(-seconds[i] / tau);
                double byTau = h0 * Math.exp(-seconds[i] / tau) * seconds[i] / (tau * tau);
                double rest = heights[i] - h0 * Math.exp(-seconds[i] / tau);
                hh += weight * byHeight * byHeight;
                ht += weight * byHeight * byTau;
                tt += weight * byTau * byTau;
                hr += weight * byHeight * rest;
                tr += weight * byTau * rest;
            }
            double determinant = held ? tt : hh * tt - ht * ht;
            tau += held ? tr / tt : (hh * tr - ht * hr) / determinant;
            h0 += held ? 0 : (tt * hr - ht * tr) / determinant;
            error = Math.sqrt(held ? 1 / tt : hh / determinant);
        }
        return new Fit(Limits.positive(tau, "time constant", "s"), h0, error, Double.NaN);
    }

    private static int sameLength(double[] seconds, double[] heights) {
        Limits.within(seconds.length, 2, 1_000_000, "number of readings", "");
        Limits.within(heights.length, seconds.length, seconds.length, "number of values", "");
        return seconds.length;
    }
}
