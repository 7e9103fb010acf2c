package platecall.looks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import platecall.looks.Melting.Shape;
import platecall.looks.Property.Quantity;
import platecall.looks.Property.Word;
import platecall.units.FactFile;

/**
 * Frozen food under air and light: it warms to its freezing point and then loses layer after layer. Heat comes from the
 * air, the walls, the lights and the room's vapour that settles on it.
 */
final class MeltingLook implements Reckoning {

    private static final List<CSVRecord> FOODS = FactFile.rows(MeltingLook.class, "frozen.csv");

    private static final List<Property> PROPERTIES = List.of(
            Word.assumed(
                    "food",
                    FOODS.stream().map(food -> food.get("food")).toList(),
                    "vanilla ice cream",
                    "gives melts, water and protein where they are not given"),
            Word.assumed("shape", List.of("sphere", "cylinder", "slab"), "sphere", "a slab has air on both faces"),
            Quantity.assumed("size", "mm", 2, 500, 50, "diameter, or thickness of a slab"),
            Quantity.assumed("start", "°C", -40, 0, -12, "temperature at plate-up"),
            Quantity.assumed("density", "kg/m3", 100, 1200, 550, "with the air beaten in"),
            Quantity.workedOut("melts", "°C", -20, 0, "freezing point; else the food's"),
            Quantity.workedOut("water", "%", 1, 100, "share of water by mass; else the food's"),
            Quantity.workedOut("protein", "%", 0, 30, "share of protein by mass; else the food's"),
            Quantity.assumed("emissivity", "", 0.05, 1, 0.95, "of the surface"),
            Quantity.assumed("absorbs", "%", 0, 100, 30, "share of the light that it takes up"),
            Quantity.workedOut("convection", "W/(m2 K)", 0.5, 500, "where a fan blows; else from free convection"),
            Quantity.assumed("peak layer", "mm", 0.1, 50, 1, "what may melt before the peak ends"),
            Quantity.assumed("usable layer", "mm", 0.1, 50, 3, "what may melt before it is over"));

    @Override
    public List<Property> properties() {
        return PROPERTIES;
    }

    @Override
    public List<Conflict> conflicts(Given given) {
        List<Conflict> conflicts = new ArrayList<>(Reckoning.outOfOrder(given, "peak layer", "usable layer"));
        if (given.number("usable layer") > given.number("size") / 2) {
            conflicts.add(new Conflict(
                    "usable layer",
                    "usable layer must not be more than half the size",
                    "Maybe give a larger size or a thinner layer."));
        }
        if (given.number("start") > meltsAt(given)) {
            conflicts.add(new Conflict(
                    "start",
                    "start must not be above the freezing point of " + Limits.plain(meltsAt(given)) + " °C",
                    "Maybe give a colder start."));
        }
        return conflicts;
    }

    @Override
    public LookLife reckon(Given given, SetAir air) {
        double peakTo = secondsTo("peak layer", given, air, 1);
        double usableTo = secondsTo("usable layer", given, air, 1);
        double band = Reckoning.halfSpread(
                secondsTo("peak layer", given, air, LESS_HEAT), secondsTo("peak layer", given, air, MORE_HEAT));
        double flux = fluxIn(given, air);
        String why = flux <= 0
                ? String.format(Locale.ROOT, "does not melt at %s °C", Limits.plain(air.celsius()))
                : String.format(
                        Locale.ROOT,
                        "%s mm melt from %s °C under %.0f W/m2 at %s °C, then %s mm",
                        Limits.plain(given.number("peak layer")),
                        Limits.plain(given.number("start")),
                        flux,
                        Limits.plain(air.celsius()),
                        Limits.plain(given.number("usable layer")));
        return LookLife.ofSeconds(0, peakTo, usableTo, band, why + given.assumptions(), Optional.empty());
    }

    private static double secondsTo(String layer, Given given, SetAir air, double heat) {
        double flux = heat * fluxIn(given, air);
        if (flux <= 0) {
            return DAY_SECONDS;
        }
        double melts = meltsAt(given);
        double start = given.number("start");
        double water = fromFood("water", given) / 100;
        // what freezes at 0 °C is all ice up to there, where Chen's formula has none
        double ice = Composition.iceShare(water, fromFood("protein", given) / 100, melts, melts == 0 ? -1 : start);
        double latent = ice * Composition.ICE_LATENT_J_PER_KG + Composition.specificHeatFrozen(water) * (melts - start);
        if (latent <= 0) {
            return 0;
        }
        double coefficient =
                convection(given, air) + Cooling.radiativeCoefficient(given.number("emissivity"), melts, air.celsius());
        // lights and vapour count as if the air were that much warmer
        return Melting.layerSeconds(
                shape(given),
                given.number("density"),
                latent,
                flux / coefficient,
                given.metres("size"),
                given.metres(layer),
                coefficient,
                Composition.conductivityThawed(water));
    }

    /** Heat that reaches the melting surface, W/m2. */
    private static double fluxIn(Given given, SetAir air) {
        double melts = meltsAt(given);
        double coefficient = convection(given, air);
        double settling = Math.max(0, -air.vapourFlux(coefficient, melts));
        return coefficient * (air.celsius() - melts)
                - Cooling.radiativeFlux(given.number("emissivity"), melts, air.celsius())
                + settling * MoistAir.vaporisationJPerKg(melts)
                + given.share("absorbs") * air.lightWattsPerM2();
    }

    private static double convection(Given given, SetAir air) {
        double size = given.metres("size");
        return given.optional("convection")
                .orElseGet(() -> shape(given) == Shape.SLAB
                        ? Convection.alongWall(meltsAt(given), air.celsius(), size)
                        : Convection.aroundRound(meltsAt(given), air.celsius(), size));
    }

    private static Shape shape(Given given) {
        return Shape.valueOf(given.word("shape").toUpperCase(Locale.ROOT));
    }

    private static double meltsAt(Given given) {
        return fromFood("melts", given);
    }

    private static double fromFood(String property, Given given) {
        return given.optional(property)
                .orElseGet(() -> FOODS.stream()
                        .filter(food -> food.get("food").equals(given.word("food")))
                        .map(food -> Double.valueOf(food.get(property)))
                        .findFirst()
                        .orElseThrow());
    }
}
