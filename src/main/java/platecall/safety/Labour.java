package platecall.safety;

import platecall.units.Moment;

/** Meals and rest as some laws have them, to choose the day's own rule from. Not legal advice. */
public final class Labour {

    private Labour() {}

    /**
     * Meals owed under California Labor Code 512(a): one for "more than five hours", a second for more than ten.
     *
     * @param minutes worked in the day, 0 or more
     */
    public static int californiaMeals(int minutes) {
        return minutes > 600 ? 2 : minutes > 300 ? 1 : 0;
    }

    /** Whether both sides may agree to drop the first meal: the day is at most six hours. */
    public static boolean californiaFirstMealWaivable(int minutes) {
        return minutes <= 360;
    }

    /** Whether the second meal may be dropped: the day is at most twelve hours, and the first one was taken. */
    public static boolean californiaSecondMealWaivable(int minutes, boolean firstWaived) {
        return minutes <= 720 && !firstWaived;
    }

    /** Latest start of a meal under IWC Wage Order 12-2001 (8 CCR 11120), from the call or the end of the last meal. */
    public static Moment motionPictureMealBy(Moment callOrEndOfMeal) {
        return callOrEndOfMeal.plus(360);
    }

    /** Minutes of rest under the same order: 10 for each four hours or major part of them; none below 3.5 hours. */
    public static int motionPictureRestMinutes(int minutes) {
        return minutes < 210 ? 0 : 10 * ((minutes + 119) / 240);
    }

    /** Earliest next call under Directive 2003/88/EC, Art. 3: eleven hours after wrap. */
    public static Moment europeanCallFrom(Moment wrap) {
        return wrap.plus(660);
    }

    /**
     * Minutes of break owed under the UK Working Time Regulations 1998, reg. 12: 20 for more than six hours; young workers 30
     * for more than four and a half.
     */
    public static int britishBreakMinutes(int minutes, boolean young) {
        if (young) {
            return minutes > 270 ? 30 : 0;
        }
        return minutes > 360 ? 20 : 0;
    }
}
