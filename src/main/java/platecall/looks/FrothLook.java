package platecall.looks;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import platecall.looks.Property.Quantity;

/** Froth that falls by halves. */
final class FrothLook implements Reckoning {

    /** Wheat beer: 277.9 s time constant fitted to Leike, 2002. */
    private static final double WHEAT_BEER_HALF_LIFE_SECONDS = 193;

    /** The way of fitting alone moves the time constant by this much. */
    private static final double FIT_ERROR = 0.12;

    private static final List<Property> PROPERTIES = List.of(
            Quantity.assumed(
                    "half-life", "s", 1, 86_400, WHEAT_BEER_HALF_LIFE_SECONDS, "time in which it falls to half"),
            Quantity.assumed("peak share", "%", 1, 100, 80, "share of its height at which the peak ends"),
            Quantity.assumed("usable share", "%", 1, 100, 50, "share of its height at which it is over"));

    @Override
    public List<Property> properties() {
        return PROPERTIES;
    }

    @Override
    public List<Conflict> conflicts(Given given) {
        return Reckoning.outOfOrder(given, "usable share", "peak share");
    }

    @Override
    public LookLife reckon(Given given, SetAir air) {
        double halfLife = given.number("half-life");
        double peakTo = Froth.timeToShare(halfLife, given.share("peak share"));
        double usableTo = Froth.timeToShare(halfLife, given.share("usable share"));
        String why = String.format(
                Locale.ROOT,
                "froth falls to %s %% with a half-life of %s s, then to %s %%%s",
                Limits.plain(given.number("peak share")),
                Limits.plain(halfLife),
                Limits.plain(given.number("usable share")),
                given.assumptions());
        return LookLife.ofSeconds(0, peakTo, usableTo, FIT_ERROR * peakTo, why, Optional.empty());
    }
}
