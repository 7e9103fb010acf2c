package platecall.safety;

/** Thawing (FDA Food Code 3-501.13); where a profile has no number of its own, that of the Code holds. */
public final class Thawing {

    private static final Profile CODE = Profile.named("fda-2022").orElseThrow();

    private Thawing() {}

    private static Limit limit(Profile profile, String name) {
        return profile.limit(name).orElseGet(() -> CODE.limit(name).orElseThrow());
    }

    /** Whether food may thaw at this temperature in a fridge. */
    public static boolean fridge(Profile profile, double foodCelsius) {
        return profile.holdsCold(foodCelsius);
    }

    /** How warm running water may be, in degrees C. */
    public static Limit water(Profile profile) {
        return limit(profile, "thaw water");
    }

    /** Minutes for which raw food may be above the cold limit under running water, with preparation and cooling down. */
    public static Limit rawMinutes(Profile profile) {
        return limit(profile, "thaw raw");
    }

    /**
     * Whether food may get that warm under running water.
     *
     * @param raw raw animal food; food that is ready to eat must not get above the cold limit at all
     * @param warmestCelsius warmest thawed part
     * @param minutesAboveCold minutes above the cold limit, with preparation and cooling down
     */
    public static boolean aboveCold(Profile profile, boolean raw, double warmestCelsius, double minutesAboveCold) {
        return profile.holdsCold(warmestCelsius)
                || raw
                        && water(profile).allows(warmestCelsius)
                        && rawMinutes(profile).allows(minutesAboveCold);
    }
}
