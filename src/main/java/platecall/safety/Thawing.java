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

    /**
     * Whether food may thaw under running water.
     *
     * @param raw raw animal food; food that is ready to eat must not get above the cold limit at all
     * @param warmestCelsius warmest thawed part
     * @param minutesAboveCold minutes above the cold limit, with preparation and cooling down
     */
    public static boolean runningWater(
            Profile profile, double waterCelsius, boolean raw, double warmestCelsius, double minutesAboveCold) {
        boolean water = limit(profile, "thaw water").allows(waterCelsius);
        boolean food = profile.holdsCold(warmestCelsius)
                || raw && limit(profile, "thaw raw").allows(minutesAboveCold);
        return water && food;
    }
}
