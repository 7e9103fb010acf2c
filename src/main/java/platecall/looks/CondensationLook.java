package platecall.looks;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import platecall.looks.Property.Quantity;

/**
 * Beads on a cold glass. The drink and its glass are one lump that the room warms through the side; while the glass is
 * below the dew point water gathers on it. The peak runs from the first beads to the first runs or until the glass has
 * warmed through the dew point; it is usable until the beads have dried.
 */
final class CondensationLook implements Reckoning {

    private static final double WATER_J_PER_KG_K = 4186;
    private static final double GLASS_J_PER_KG_K = 840;
    private static final double GLASS_EMISSIVITY = 0.9;
    /** At most so long, and no longer than it takes the glass to warm or cool by a kelvin. */
    private static final double STEP_SECONDS = 10;

    private static final List<Property> PROPERTIES = List.of(
            Quantity.assumed("start", "°C", -10, 60, 4, "temperature of the drink and its glass at plate-up"),
            Quantity.assumed("mass", "g", 1, 5000, 330, "of the drink"),
            Quantity.assumed("glass", "g", 1, 5000, 250, "mass of the glass"),
            Quantity.assumed("height", "mm", 10, 500, 120, "of the glass"),
            Quantity.assumed("width", "mm", 10, 300, 65, "across the glass"),
            Quantity.assumed("absorbs", "%", 0, 100, 20, "share of the light that it takes up"),
            Quantity.assumed("beads", "g/m2", 0.1, 500, 3, "water on the glass when beads can be seen"),
            Quantity.assumed("runs", "g/m2", 0.1, 2000, 60, "water on the glass when beads begin to run"));

    @Override
    public List<Property> properties() {
        return PROPERTIES;
    }

    @Override
    public List<Conflict> conflicts(Given given) {
        return Reckoning.outOfOrder(given, "beads", "runs");
    }

    @Override
    public LookLife reckon(Given given, SetAir air) {
        Course likely = course(given, air, 1);
        double band = Reckoning.halfSpread(
                course(given, air, LESS_HEAT).peakTo(),
                course(given, air, MORE_HEAT).peakTo());
        double start = given.number("start");
        Optional<Double> dewPoint = air.humidityPercent() < 1
                ? Optional.empty()
                : Optional.of(MoistAir.Magnus.WMO.dewPoint(air.celsius(), air.humidityPercent()));
        String dew = dewPoint.map(point -> String.format(Locale.ROOT, "dew point %.1f °C", point))
                .orElse("no dew point in dry air");
        String why = String.format(
                Locale.ROOT,
                "glass at %s °C in %s °C and %s %%, %s; beads at %s g/m2, runs at %s g/m2%s",
                Limits.plain(start),
                Limits.plain(air.celsius()),
                Limits.plain(air.humidityPercent()),
                dew,
                Limits.plain(given.number("beads")),
                Limits.plain(given.number("runs")),
                given.assumptions());
        if (!likely.beaded()) {
            return LookLife.ofSeconds(
                    0, 0, 0, 0, why, Optional.of("beads never gather: the glass is not cold enough for " + dew));
        }
        return LookLife.ofSeconds(likely.peakFrom(), likely.peakTo(), likely.usableTo(), band, why, Optional.empty());
    }

    /** How one glass fares, in seconds; the times mean nothing if beads never gathered. */
    private record Course(double peakFrom, double peakTo, double usableTo, boolean beaded) {}

    /**
     * What reaches the side of the glass from the room.
     *
     * @param height metres
     * @param heat factor on what air and walls bring
     * @param lit light that it takes up, W/m2
     */
    private record Wall(SetAir air, double height, double heat, double lit) {

        private double coefficient(double celsius) {
            return heat * Convection.alongWall(celsius, air.celsius(), height);
        }

        /** Water that gathers, kg/(m2 s). */
        double settling(double celsius) {
            return -air.vapourFlux(coefficient(celsius), celsius);
        }

        /** Heat, W/m2. */
        double fluxIn(double celsius) {
            return coefficient(celsius) * (air.celsius() - celsius)
                    - heat * Cooling.radiativeFlux(GLASS_EMISSIVITY, celsius, air.celsius())
                    + settling(celsius) * MoistAir.vaporisationJPerKg(celsius)
                    + lit;
        }
    }

    /** @param heat factor on what air and walls bring */
    private static Course course(Given given, SetAir air, double heat) {
        double height = given.metres("height");
        double beads = given.number("beads");
        double runs = given.number("runs");
        double side = Math.PI * given.metres("width") * height;
        double capacity =
                (given.number("mass") * WATER_J_PER_KG_K + given.number("glass") * GLASS_J_PER_KG_K) / 1000 / side;
        Wall wall = new Wall(air, height, heat, given.share("absorbs") * air.lightWattsPerM2());
        double celsius = given.number("start");
        double grams = 0;
        double beadsAt = DAY_SECONDS;
        double peakTo = DAY_SECONDS;
        double step;
        for (double seconds = 0; seconds < DAY_SECONDS; seconds += step) {
            double settling = wall.settling(celsius);
            if (grams >= beads) {
                beadsAt = Math.min(beadsAt, seconds);
            }
            if (grams >= runs || settling <= 0) {
                peakTo = Math.min(peakTo, seconds);
            }
            if (settling <= 0 && grams < beads) {
                return new Course(beadsAt, peakTo, seconds, beadsAt < DAY_SECONDS);
            }
            double fluxIn = wall.fluxIn(celsius);
            double lessPerKelvin = fluxIn - wall.fluxIn(celsius + 1);
            step = Math.min(STEP_SECONDS, capacity / Math.abs(fluxIn));
            grams += 1000 * settling * step;
            // a light glass goes as far as to where no heat flows any more, not beyond
            celsius += fluxIn * step / Math.max(capacity, lessPerKelvin * step);
        }
        return new Course(beadsAt, peakTo, DAY_SECONDS, beadsAt < DAY_SECONDS);
    }
}
