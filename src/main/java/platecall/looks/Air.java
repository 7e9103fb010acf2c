package platecall.looks;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.apache.commons.csv.CSVRecord;
import platecall.units.FactFile;

/**
 * Dry air at 1 atm.
 *
 * @param densityKgPerM3 density, kg/m3
 * @param specificHeatJPerKgK specific heat at constant pressure, J/(kg K)
 * @param conductivityWPerMK thermal conductivity, W/(m K)
 * @param viscosityM2PerS kinematic viscosity, m2/s
 * @param prandtl Prandtl number
 */
public record Air(
        double densityKgPerM3,
        double specificHeatJPerKgK,
        double conductivityWPerMK,
        double viscosityM2PerS,
        double prandtl) {

    private static final NavigableMap<Double, Air> ROWS = new TreeMap<>();

    static {
        for (CSVRecord row : FactFile.rows(Air.class, "air.csv")) {
            ROWS.put(
                    Double.valueOf(row.get("celsius")),
                    new Air(
                            Double.parseDouble(row.get("density")),
                            Double.parseDouble(row.get("specific_heat")),
                            Double.parseDouble(row.get("conductivity")),
                            Double.parseDouble(row.get("viscosity")),
                            Double.parseDouble(row.get("prandtl"))));
        }
    }

    public Air {
        Limits.positive(densityKgPerM3, "density", "kg/m3");
        Limits.positive(specificHeatJPerKgK, "specific heat", "J/(kg K)");
        Limits.positive(conductivityWPerMK, "conductivity", "W/(m K)");
        Limits.positive(viscosityM2PerS, "viscosity", "m2/s");
        Limits.positive(prandtl, "Prandtl number", "");
    }

    /**
     * Air at a temperature, linear between the rows of Çengel, Heat Transfer, Table A-15.
     *
     * @param celsius -40 to 100 °C
     * @throws IllegalArgumentException outside the table
     */
    public static Air at(double celsius) {
        Limits.within(celsius, ROWS.firstKey(), ROWS.lastKey(), "air temperature", "°C");
        Map.Entry<Double, Air> below = ROWS.floorEntry(celsius);
        Map.Entry<Double, Air> above = ROWS.ceilingEntry(celsius);
        if (below.getKey().equals(above.getKey())) {
            return below.getValue();
        }
        double share = (celsius - below.getKey()) / (above.getKey() - below.getKey());
        Air low = below.getValue();
        Air high = above.getValue();
        return new Air(
                between(low.densityKgPerM3, high.densityKgPerM3, share),
                between(low.specificHeatJPerKgK, high.specificHeatJPerKgK, share),
                between(low.conductivityWPerMK, high.conductivityWPerMK, share),
                between(low.viscosityM2PerS, high.viscosityM2PerS, share),
                between(low.prandtl, high.prandtl, share));
    }

    /** Thermal diffusivity {@code nu / Pr}, m2/s. */
    public double diffusivityM2PerS() {
        return viscosityM2PerS / prandtl;
    }

    private static double between(double low, double high, double share) {
        return low * (1 - share) + high * share;
    }
}
