package platecall.looks;

import java.util.Locale;
import java.util.Optional;

/**
 * How long a plated dish looks right, in whole minutes counted from plate-up. The peak is {@code [peakFrom, peakTo)}; it
 * can still be shown until {@code usableTo}. A peak of no length means the dish never looks its best.
 *
 * @param peakFromMinutes when the peak begins, 0 or more
 * @param peakToMinutes when it ends, at least {@code peakFromMinutes}
 * @param usableToMinutes when it can no longer be shown, at least {@code peakToMinutes}, at most {@link #MOST_MINUTES}
 * @param bandMinutes how far the end of the peak may be off, either way; 0 for minutes told by hand
 * @param reasoning one line: what was worked out from what, with every default that was assumed
 * @param warning what the stylist should know before trusting it
 */
public record LookLife(
        int peakFromMinutes,
        int peakToMinutes,
        int usableToMinutes,
        int bandMinutes,
        String reasoning,
        Optional<String> warning) {

    /** What is computed is followed for no longer: after a day the set is another one. */
    public static final int DAY_MINUTES = 24 * 60;

    /**
     * Longest look-life, by hand or of dressing: 60 days. Kitchen hours and calls lie at most 14 days apart, so food plated
     * whenever the kitchen is open lasts to the last take.
     */
    public static final int MOST_MINUTES = 60 * DAY_MINUTES;

    /** A whole minute that arithmetic has missed by less is still that minute. */
    private static final double ROUNDING = 1e-9;

    public LookLife {
        Limits.within(peakFromMinutes, 0, MOST_MINUTES, "peak from", "minutes");
        Limits.within(peakToMinutes, peakFromMinutes, MOST_MINUTES, "peak to", "minutes");
        Limits.within(usableToMinutes, peakToMinutes, MOST_MINUTES, "usable to", "minutes");
        Limits.within(bandMinutes, 0, MOST_MINUTES, "band", "minutes");
    }

    /**
     * From seconds as worked out, each cut to the cautious side: the peak begins at the next whole minute and ends, like
     * usability, at the last whole one.
     *
     * @param why what follows "peak 0-4 min: "
     */
    static LookLife ofSeconds(
            double peakFrom, double peakTo, double usableTo, double band, String why, Optional<String> warning) {
        int to = wholeMinutes(peakTo);
        int from = Math.min(to, nextWholeMinute(peakFrom));
        int usable = Math.max(to, wholeMinutes(usableTo));
        int off = nextWholeMinute(band);
        return new LookLife(from, to, usable, off, told(from, to, usable, why), warning);
    }

    /** Looks its best from plate-up on, as long as anybody looks. */
    static LookLife always() {
        return new LookLife(0, MOST_MINUTES, MOST_MINUTES, 0, "at its peak whenever it is plated", Optional.empty());
    }

    /** Whether it looks its best from plate-up on for all that is planned. */
    public boolean lasts() {
        return peakFromMinutes == 0 && peakToMinutes == MOST_MINUTES;
    }

    static String told(int from, int to, int usable, String why) {
        return String.format(Locale.ROOT, "peak %d-%d min, usable to %d min: %s", from, to, usable, why);
    }

    /**
     * From when it surely looks its best: the peak less the band at its beginning, at most {@link #aimMinutes()}. What is
     * minded is the sure peak, so the less is known, the nearer to its middle the plan aims.
     */
    public int surelyFromMinutes() {
        return peakFromMinutes == 0 ? 0 : Math.min(aimMinutes(), peakFromMinutes + bandMinutes);
    }

    /** Until when it surely looks its best: the peak less the band at its end, at least {@link #aimMinutes()}. */
    public int surelyToMinutes() {
        return Math.max(aimMinutes(), peakToMinutes - bandMinutes);
    }

    /** The minute after plate-up at which the camera should roll: the middle of the peak, rounded down. */
    public int aimMinutes() {
        return (peakFromMinutes + peakToMinutes) / 2;
    }

    /** Whether the dish looks its best at a minute after plate-up. */
    public boolean isAtPeak(int minute) {
        return minute >= peakFromMinutes && minute < peakToMinutes;
    }

    /** Whether it can be shown at a minute after plate-up, 0 or more. */
    public boolean isUsable(int minute) {
        return minute >= 0 && minute < usableToMinutes;
    }

    /**
     * Looks from 0 to 1 at a time after plate-up: rises evenly to 1 where the peak begins, stays, and falls evenly to 0
     * where usability ends.
     *
     * @param minutes 0 or more
     */
    public double scoreAt(double minutes) {
        Limits.within(minutes, 0, 1e6, "time after plate-up", "minutes");
        if (minutes < peakFromMinutes) {
            return minutes / peakFromMinutes;
        }
        if (minutes < peakToMinutes) {
            return 1;
        }
        return minutes < usableToMinutes ? (usableToMinutes - minutes) / (usableToMinutes - peakToMinutes) : 0;
    }

    private static int wholeMinutes(double seconds) {
        return (int) Math.min(DAY_MINUTES, Math.floor(seconds / 60 + ROUNDING));
    }

    private static int nextWholeMinute(double seconds) {
        return (int) Math.min(DAY_MINUTES, Math.ceil(seconds / 60 - ROUNDING));
    }
}
