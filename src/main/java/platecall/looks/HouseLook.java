package platecall.looks;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import platecall.day.Look;
import platecall.looks.HouseTable.Driver;
import platecall.looks.HouseTable.Line;
import platecall.looks.Property.Word;

/** Wilting, browning, skin and soak-through by the house table, moved to the air and light of this set. */
final class HouseLook implements Reckoning {

    /** A lit surface is this much warmer than the air: half the light taken up at 17 W/(m2 K); own value. */
    private static final double LIFT_KELVIN_PER_W_PER_M2 = 0.03;

    /** The table is not stretched beyond this factor either way. */
    private static final double FARTHEST = 4;

    private static final double KELVIN_PER_DOUBLING = 10;

    private final List<Line> lines;
    private final List<Property> properties;

    HouseLook(Look.Kind kind) {
        lines = HouseTable.of(kind);
        properties = List.of(Word.needed("item", lines.stream().map(Line::item).toList(), "line of the house table"));
    }

    @Override
    public List<Property> properties() {
        return properties;
    }

    @Override
    public LookLife reckon(Given given, SetAir air) {
        Line line = lines.stream()
                .filter(candidate -> candidate.item().equals(given.word("item")))
                .findFirst()
                .orElseThrow();
        double reckoned = speed(line, air);
        double speed = Math.max(1 / FARTHEST, Math.min(FARTHEST, reckoned));
        double peakTo = 60 * line.peakTo() / speed;
        String here = line.driver() == Driver.ITSELF
                ? ""
                : String.format(
                        Locale.ROOT,
                        speed < 1 ? ", %s %s%.2f times as fast here%s" : ", %s %s%.1f times as fast here%s",
                        line.driver() == Driver.DRYING ? "dries" : "changes",
                        reckoned > speed ? "at least " : reckoned < speed ? "at most " : "",
                        speed,
                        reckoned == speed ? "" : ", as far as the table is stretched");
        String why = String.format(
                Locale.ROOT,
                "%s, house table %s and %s min at %s °C and %s %%%s (%s)",
                line.item(),
                Limits.plain(line.peakTo()),
                Limits.plain(line.usableTo()),
                Limits.plain(line.celsius()),
                Limits.plain(line.humidityPercent()),
                here,
                line.source());
        return LookLife.ofSeconds(
                0, peakTo, 60 * line.usableTo() / speed, line.bandPercent() / 100 * peakTo, why, Optional.empty());
    }

    /** How many times as fast as in the table. */
    private static double speed(Line line, SetAir air) {
        double surface = air.celsius() + LIFT_KELVIN_PER_W_PER_M2 * air.lightWattsPerM2();
        return switch (line.driver()) {
            case DRYING ->
                (MoistAir.saturationPa(surface) - MoistAir.vapourPa(air.celsius(), air.humidityPercent()))
                        / (MoistAir.saturationPa(line.celsius())
                                - MoistAir.vapourPa(line.celsius(), line.humidityPercent()));
            case WARMTH -> Math.pow(2, (surface - line.celsius()) / KELVIN_PER_DOUBLING);
            case ITSELF -> 1;
        };
    }
}
