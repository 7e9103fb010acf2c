package platecall.looks;

import platecall.day.DayFacts;

/**
 * What a plate meets on set.
 *
 * @param celsius air and walls, -30 to 60
 * @param humidityPercent relative humidity, 0 to 100
 * @param lightWattsPerM2 heat of the lights on the plate, 0 to 2000
 */
record SetAir(double celsius, double humidityPercent, double lightWattsPerM2) {

    /** Thermal over vapour diffusivity of water vapour in air. Source: Incropera, Tables A.4 and A.8, about 0.85. */
    private static final double LEWIS_WATER = 0.85;

    SetAir {
        Limits.within(celsius, -30, 60, "set temperature", "°C");
        Limits.within(humidityPercent, 0, 100, "relative humidity", "%");
        Limits.within(lightWattsPerM2, 0, 2000, "light", "W/m2");
    }

    static SetAir of(DayFacts facts) {
        return new SetAir(facts.setCelsius(), facts.setHumidityPercent(), facts.lightWattsPerSquareMetre());
    }

    /** Vapour that a wet surface gives to the air (less than 0: takes from it), kg/(m2 s), by the Lewis relation. */
    double vapourFlux(double coefficientWPerM2K, double surfaceCelsius) {
        Air film = Air.at((surfaceCelsius + celsius) / 2);
        double velocity = Cooling.vapourVelocity(
                coefficientWPerM2K, film.densityKgPerM3(), film.specificHeatJPerKgK(), LEWIS_WATER);
        double atSurface = MoistAir.vapourKgPerM3(MoistAir.saturationPa(surfaceCelsius), surfaceCelsius);
        double inAir = MoistAir.vapourKgPerM3(MoistAir.vapourPa(celsius, humidityPercent), celsius);
        return velocity * (atSurface - inAir);
    }
}
