package platecall.safety;

/** Heating up again what was cooked and cooled, to hold it hot (FDA Food Code 3-403.11). */
public final class Reheating {

    private Reheating() {}

    /**
     * Whether it was heated up right.
     *
     * @param readyToEatPack whether it comes from a sealed pack of a food plant, ready to eat
     * @param coreCelsius coolest part
     * @param heldSeconds at that temperature
     * @param minutes from the cold limit to there
     */
    public static boolean right(
            Profile profile, boolean readyToEatPack, double coreCelsius, double heldSeconds, double minutes) {
        boolean soon = profile.limit("reheat minutes")
                .map(most -> most.allows(minutes))
                .orElse(true);
        boolean hot = readyToEatPack
                ? profile.limit("reheat ready").orElse(profile.hot()).allows(coreCelsius)
                : profile.reheats(coreCelsius, heldSeconds);
        return soon && hot;
    }
}
