package platecall.looks;

import java.util.List;
import org.apache.commons.csv.CSVRecord;

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

    private static final List<CSVRecord> ROWS = CommentedCsv.rows("air.csv");

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
     * @param celsius -20 to 100 °C
     * @throws IllegalArgumentException outside the table
     */
    public static Air at(double celsius) {
        int last = ROWS.size() - 1;
        Limits.within(celsius, number(0, "celsius"), number(last, "celsius"), "air temperature", "°C");
        int above = 1;
        while (number(above, "celsius") < celsius) {
            above++;
        }
        double low = number(above - 1, "celsius");
        double share = (celsius - low) / (number(above, "celsius") - low);
        return new Air(
                between(above, "density", share),
                between(above, "specific_heat", share),
                between(above, "conductivity", share),
                between(above, "viscosity", share),
                between(above, "prandtl", share));
    }

    /** Thermal diffusivity {@code nu / Pr}, m2/s. */
    public double diffusivityM2PerS() {
        return viscosityM2PerS / prandtl;
    }

    private static double between(int above, String column, double share) {
        return number(above - 1, column) * (1 - share) + number(above, column) * share;
    }

    private static double number(int row, String column) {
        return Double.parseDouble(ROWS.get(row).get(column));
    }
}
