package platecall.looks;

/** Water in air: dew point, humidity, and whether steam can be seen. Relative humidity in percent, pressures in Pa. */
public final class MoistAir {

    /** Standard pressure at sea level, Pa. */
    public static final double STANDARD_PA = 101_325;

    private static final double MOLAR_RATIO = 0.621945;
    private static final double WATER_GAS_CONSTANT = 461.523;

    private MoistAir() {}

    /** Magnus's form {@code c exp(a t / (b + t))} of the saturation pressure over water, t in °C. */
    public enum Magnus {
        /** Source: Alduchov and Eskridge, 1996, J. Appl. Meteorol. 35, 601-609. */
        ALDUCHOV_ESKRIDGE(17.625, 243.04, 610.94),
        /** Source: WMO-No. 8, Annex 4.B (Sonntag, 1990). */
        WMO(17.62, 243.12, 611.2);

        private final double a;
        private final double b;
        private final double c;

        Magnus(double a, double b, double c) {
            this.a = a;
            this.b = b;
            this.c = c;
        }

        /**
         * Saturation pressure, Pa; within 0.31 % from 5 to 50 °C.
         *
         * @param celsius -40 to 60; at 100 °C it would be 2.6 % too high, so more than 60 is refused
         */
        public double saturationPa(double celsius) {
            Limits.within(celsius, -40, 60, "temperature for Magnus's form", "°C");
            return c * Math.exp(a * celsius / (b + celsius));
        }

        /**
         * Dew point {@code b g / (a - g)} with {@code g = ln(rh / 100) + a t / (b + t)}, °C.
         *
         * @param celsius -40 to 60
         * @param humidityPercent 1 to 100
         */
        public double dewPoint(double celsius, double humidityPercent) {
            Limits.within(celsius, -40, 60, "temperature for Magnus's form", "°C");
            Limits.within(humidityPercent, 1, 100, "relative humidity", "%");
            double g = Math.log(humidityPercent / 100) + a * celsius / (b + celsius);
            return b * g / (a - g);
        }
    }

    /**
     * Saturation pressure over water, Pa, within 0.03 %:
     * {@code exp(c1/T + c2 + c3 T + c4 T^2 + c5 T^3 + c6 ln T)}, T in K. Source: Hyland and Wexler, 1983, as in the
     * ASHRAE Handbook, Fundamentals, 2017, ch. 1, eq. 6.
     *
     * @param celsius -41 to 150; below 0 over supercooled water
     */
    public static double saturationPa(double celsius) {
        Limits.within(celsius, -41, 150, "temperature for the saturation pressure", "°C");
        double t = Limits.kelvin(celsius);
        return Math.exp(-5.8002206e3 / t
                + 1.3914993
                - 4.8640239e-2 * t
                + 4.1764768e-5 * t * t
                - 1.4452093e-8 * t * t * t
                + 6.5459673 * Math.log(t));
    }

    /** Pressure of the vapour in air of this temperature (-41 to 150 °C) and relative humidity (0 to 100 %), Pa. */
    public static double vapourPa(double celsius, double humidityPercent) {
        return saturationPa(celsius) * Limits.within(humidityPercent, 0, 100, "relative humidity", "%") / 100;
    }

    /** Density of vapour {@code p / (R T)}, kg/m3, R = 461.5 J/(kg K). */
    public static double vapourKgPerM3(double vapourPa, double celsius) {
        Limits.within(vapourPa, 0, 1e7, "vapour pressure", "Pa");
        return vapourPa / (WATER_GAS_CONSTANT * Limits.kelvin(celsius));
    }

    /**
     * Heat that a kilogram of water takes to turn to vapour, {@code 2501 - 2.326 t} kJ/kg, as J/kg. Source: ASHRAE
     * Handbook, Fundamentals, 2017, ch. 1, eq. 33.
     *
     * @param celsius t, -41 to 150
     */
    public static double vaporisationJPerKg(double celsius) {
        return 2_501_000 - 2326 * Limits.within(celsius, -41, 150, "temperature", "°C");
    }

    /**
     * Humidity ratio {@code 0.621945 e / (p - e)}, kg water a kg of dry air. Source: ASHRAE Handbook, Fundamentals,
     * 2017, ch. 1, eq. 20.
     *
     * @param vapourPa e, 0 or more, less than {@code pressurePa}
     * @param pressurePa p, more than 0
     */
    public static double humidityRatio(double vapourPa, double pressurePa) {
        Limits.positive(pressurePa, "pressure", "Pa");
        Limits.within(vapourPa, 0, Math.nextDown(pressurePa), "vapour pressure", "Pa");
        return MOLAR_RATIO * vapourPa / (pressurePa - vapourPa);
    }

    /**
     * How much more vapour real air holds than an ideal gas, {@code 1.0016 + 3.15e-6 p - 0.074 / p}, p in hPa. Source:
     * WMO-No. 8, Annex 4.B.
     *
     * @param pressurePa 50,000 to 110,000
     */
    public static double enhancement(double pressurePa) {
        double hectopascal = Limits.within(pressurePa, 50_000, 110_000, "pressure", "Pa") / 100;
        return 1.0016 + 3.15e-6 * hectopascal - 0.074 / hectopascal;
    }

    /**
     * Wet-bulb temperature, °C, where
     * {@code W = ((2501 - 2.326 t*) Ws(t*) - 1.006 (t - t*)) / (2501 + 1.86 t - 4.186 t*)}. Source: ASHRAE Handbook,
     * Fundamentals, 2017, ch. 1, eq. 33.
     *
     * @param celsius t, 0 to 60
     * @param humidityPercent 0 to 100
     * @param pressurePa 50,000 to 110,000
     */
    public static double wetBulb(double celsius, double humidityPercent, double pressurePa) {
        Limits.within(celsius, 0, 60, "temperature", "°C");
        Limits.within(pressurePa, 50_000, 110_000, "pressure", "Pa");
        double ratio = humidityRatio(vapourPa(celsius, humidityPercent), pressurePa);
        return Bisection.zero(
                wet -> ((2501 - 2.326 * wet) * humidityRatio(saturationPa(wet), pressurePa) - 1.006 * (celsius - wet))
                                / (2501 + 1.86 * celsius - 4.186 * wet)
                        - ratio,
                -20,
                celsius);
    }

    /**
     * Whether steam over a wet surface can be seen. Air leaving the surface is saturated; while it mixes with the
     * room's air its state runs along a straight line from (t, e) of the surface to that of the room. It turns to fog
     * where the line lies above the saturation curve; the curve is convex, so that is so exactly if the curve is
     * steeper than the line at the surface: {@code es'(t) (t - room) > es(t) - e}. Source: mixing-line argument; no
     * published threshold for the eye.
     *
     * @param surfaceCelsius -40 to 149
     * @param roomCelsius -41 to 150
     * @param humidityPercent of the room, 0 to 100
     */
    public static boolean steamShows(double surfaceCelsius, double roomCelsius, double humidityPercent) {
        return steamExcess(surfaceCelsius, roomCelsius, humidityPercent) > 0;
    }

    /**
     * The coolest wet surface over which steam still shows in this room, °C; the room's own temperature if its air is
     * saturated.
     *
     * @param roomCelsius -40 to 60
     * @param humidityPercent 0 to 100
     */
    public static double steamShowsFrom(double roomCelsius, double humidityPercent) {
        Limits.within(roomCelsius, -40, 60, "room temperature", "°C");
        if (steamExcess(roomCelsius, roomCelsius, humidityPercent) >= 0) {
            return roomCelsius;
        }
        return Bisection.zero(surface -> steamExcess(surface, roomCelsius, humidityPercent), roomCelsius, 149);
    }

    private static double steamExcess(double surfaceCelsius, double roomCelsius, double humidityPercent) {
        // the slope over one kelvin, Pa/K
        double slope = saturationPa(surfaceCelsius + 0.5) - saturationPa(surfaceCelsius - 0.5);
        return slope * (surfaceCelsius - roomCelsius)
                - (saturationPa(surfaceCelsius) - vapourPa(roomCelsius, humidityPercent));
    }
}
