package platecall.looks;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import platecall.looks.Property.Quantity;

/** Bubbles in a drink that goes flat. */
final class CarbonationLook implements Reckoning {

    private static final double MINUTES_OF_LOSS = 10;

    /** How far apart glasses of one kind were found; own value. */
    private static final double GLASS_ERROR = 0.2;

    private static final List<Property> PROPERTIES = List.of(
            Quantity.assumed(
                    "loss",
                    "%",
                    0.1,
                    99,
                    34,
                    "share of its gas that it loses in 10 minutes; tall tasting glass (Beaumont, 2019)"),
            Quantity.assumed("peak share", "%", 1, 100, 80, "share of its gas at which the peak ends"),
            Quantity.assumed("usable share", "%", 1, 100, 50, "share of its gas at which it looks flat"));

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
        double rate = Carbonation.rate(given.share("loss"), MINUTES_OF_LOSS * 60);
        double peakTo = Carbonation.timeToShare(rate, given.share("peak share"));
        double usableTo = Carbonation.timeToShare(rate, given.share("usable share"));
        String why = String.format(
                Locale.ROOT,
                "gas falls to %s %% at a loss of %s %% in 10 min, then to %s %%%s",
                Limits.plain(given.number("peak share")),
                Limits.plain(given.number("loss")),
                Limits.plain(given.number("usable share")),
                given.assumptions());
        return LookLife.ofSeconds(0, peakTo, usableTo, GLASS_ERROR * peakTo, why, Optional.empty());
    }
}
