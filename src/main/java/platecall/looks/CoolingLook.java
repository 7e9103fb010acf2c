package platecall.looks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import platecall.looks.Property.Quantity;
import platecall.looks.Property.Word;

/**
 * Warmth and steam to be seen. A round portion on a plate loses heat upward by free convection, radiation and vapour
 * and gains from the lights; a liquid is one lump, a solid is one lump only while its Biot number allows it and is
 * worked out in layers otherwise.
 */
final class CoolingLook implements Reckoning {

    private static final double MOST_THICKNESS_MM = 500;

    private static final List<Property> PROPERTIES = List.of(
            Quantity.needed("start", "°C", 0, 100, "surface temperature at plate-up"),
            Word.assumed("body", List.of("solid", "liquid"), "solid", "a liquid mixes itself, a solid does not"),
            Quantity.assumed("mass", "g", 1, 20_000, 250, "of the portion"),
            Quantity.assumed("width", "mm", 10, 1000, 150, "across the portion"),
            Quantity.assumed("density", "kg/m3", 50, 2000, 1000, "of the food"),
            Quantity.assumed("water", "%", 0, 100, 75, "share of water by mass"),
            Quantity.assumed("wet", "%", 0, 100, 50, "share of the surface that gives off vapour"),
            Quantity.assumed("emissivity", "", 0.05, 1, 0.95, "of the surface"),
            Quantity.assumed("absorbs", "%", 0, 100, 60, "share of the light that it takes up"),
            Quantity.workedOut("convection", "W/(m2 K)", 0.5, 500, "where a fan blows; else from free convection"),
            Quantity.assumed("peak above", "°C", 0, 100, 60, "surface temperature at which the peak ends"),
            Quantity.workedOut(
                    "usable above",
                    "°C",
                    0,
                    100,
                    "surface temperature at which it is over; else when steam no longer shows"));

    @Override
    public List<Property> properties() {
        return PROPERTIES;
    }

    @Override
    public List<Conflict> conflicts(Given given) {
        List<Conflict> conflicts = new ArrayList<>();
        if (given.optional("usable above").isPresent()) {
            conflicts.addAll(Reckoning.outOfOrder(given, "usable above", "peak above"));
        }
        double thickness = 1000 * Portion.of(given).thicknessMetres();
        if (thickness > MOST_THICKNESS_MM) {
            conflicts.add(new Conflict(
                    "mass",
                    String.format(Locale.ROOT, "mass and width make a portion %.0f mm high", thickness),
                    "Maybe the mass is not in g or the width not in mm."));
        }
        return conflicts;
    }

    @Override
    public LookLife reckon(Given given, SetAir air) {
        Portion portion = Portion.of(given);
        double start = portion.startCelsius();
        double peakAbove = given.number("peak above");
        Optional<Double> givenEnd = given.optional("usable above");
        double usableAbove = givenEnd.orElseGet(
                () -> Math.min(peakAbove, MoistAir.steamShowsFrom(air.celsius(), air.humidityPercent())));
        double biot = portion.biotAtStart(air);
        boolean lump = given.word("body").equals("liquid") || Cooling.isLump(biot);

        double peakTo = portion.secondsTo(peakAbove, air, lump, 1);
        double usableTo = portion.secondsTo(usableAbove, air, lump, 1);
        double band = Reckoning.halfSpread(
                portion.secondsTo(peakAbove, air, lump, LESS_HEAT), portion.secondsTo(peakAbove, air, lump, MORE_HEAT));

        String falls = String.format(
                Locale.ROOT,
                peakTo >= DAY_SECONDS
                        ? "surface, at first %s °C, doesn't fall to %s °C within a day at %s °C"
                        : "surface falls from %s to %s °C at %s °C",
                Limits.plain(start),
                Limits.plain(Math.min(start, peakAbove)),
                Limits.plain(air.celsius()));
        String end = String.format(
                Locale.ROOT,
                usableTo >= DAY_SECONDS ? ", and not to %.0f °C within a day%s" : ", then to %.0f °C%s",
                Math.min(start, usableAbove),
                givenEnd.isPresent() ? "" : " where steam no longer shows");
        String why = falls + (peakTo >= DAY_SECONDS ? "" : end) + given.assumptions();
        return LookLife.ofSeconds(0, peakTo, usableTo, band, why, warning(start, peakAbove, biot, lump));
    }

    private static Optional<String> warning(double start, double peakAbove, double biot, boolean lump) {
        if (start <= peakAbove) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "starts at %s °C, not above the %s °C of its peak: it never looks its best",
                    Limits.plain(start),
                    Limits.plain(peakAbove)));
        }
        return lump
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "Biot number %.2f is not below %s: the surface runs ahead of the core, worked out in layers",
                        biot,
                        Limits.plain(Cooling.LUMPED_BELOW_BIOT)));
    }

    /** What loses heat: a round body on a base that lets none through. */
    private record Portion(
            double startCelsius,
            double widthMetres,
            double thicknessMetres,
            double conductivityWPerMK,
            double heatJPerM3K,
            double wetShare,
            double emissivity,
            double absorbedShare,
            Optional<Double> convectionWPerM2K) {

        static Portion of(Given given) {
            double water = given.share("water");
            double area = Math.PI * Math.pow(given.metres("width"), 2) / 4;
            return new Portion(
                    given.number("start"),
                    given.metres("width"),
                    given.number("mass") / 1000 / given.number("density") / area,
                    Composition.conductivityThawed(water),
                    given.number("density") * Composition.specificHeatThawed(water),
                    given.share("wet"),
                    given.number("emissivity"),
                    given.share("absorbs"),
                    given.optional("convection"));
        }

        /** Biot number h L / k at plate-up; above 0.1 one lump is a poor likeness (Incropera, ch. 5). */
        double biotAtStart(SetAir air) {
            double coefficient = lossAt(startCelsius, air) / Math.max(1, Math.abs(startCelsius - air.celsius()));
            return Cooling.biot(
                    Math.max(Convection.LEAST_COEFFICIENT, coefficient), thicknessMetres, conductivityWPerMK);
        }

        /** @param heat factor on all that leaves the surface */
        double secondsTo(double target, SetAir air, boolean lump, double heat) {
            if (startCelsius <= target) {
                return 0;
            }
            double lit = absorbedShare * air.lightWattsPerM2();
            DoubleUnaryOperator fluxOut = surface -> heat * lossAt(surface, air) - lit;
            if (fluxOut.applyAsDouble(target) <= 0) {
                return DAY_SECONDS;
            }
            if (lump) {
                double steady = Cooling.steadyCelsius(fluxOut, -40, target);
                return Cooling.secondsTo(startCelsius, target, steady, heatJPerM3K * thicknessMetres, fluxOut);
            }
            return Slab.secondsToSurface(
                            startCelsius,
                            target,
                            thicknessMetres,
                            conductivityWPerMK,
                            heatJPerM3K,
                            fluxOut,
                            DAY_SECONDS)
                    .orElse(DAY_SECONDS);
        }

        /** Heat that leaves the surface without the light, W/m2. */
        private double lossAt(double surface, SetAir air) {
            double coefficient =
                    convectionWPerM2K.orElseGet(() -> Convection.overPlate(surface, air.celsius(), widthMetres));
            return coefficient * (surface - air.celsius())
                    + Cooling.radiativeFlux(emissivity, surface, air.celsius())
                    + wetShare * air.vapourFlux(coefficient, surface) * MoistAir.vaporisationJPerKg(surface);
        }
    }
}
