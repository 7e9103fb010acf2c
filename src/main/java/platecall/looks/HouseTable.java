package platecall.looks;

import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVRecord;
import platecall.day.Look;
import platecall.units.FactFile;

/** What kitchens know without a formula: leaves, cut fruit, skins and soaked crusts, in minutes, with the source. */
final class HouseTable {

    private static final List<Line> LINES =
            FactFile.rows(HouseTable.class, "house.csv").stream().map(Line::of).toList();

    private HouseTable() {}

    /** What makes it go faster on another set. */
    enum Driver {
        /** How much water the air can still take up. */
        DRYING,
        /** Warmth, twice as fast every 10 K. */
        WARMTH,
        /** Nothing on the set. */
        ITSELF
    }

    /**
     * @param peakTo minutes at which the peak ends at the reference air
     * @param usableTo minutes at which it is over at the reference air
     * @param bandPercent how far the minutes may be off
     * @param celsius reference air
     * @param humidityPercent reference air
     * @param source where it is from
     */
    record Line(
            Look.Kind kind,
            String item,
            double peakTo,
            double usableTo,
            double bandPercent,
            Driver driver,
            double celsius,
            double humidityPercent,
            String source) {

        private static Line of(CSVRecord row) {
            return new Line(
                    Look.Kind.valueOf(row.get("kind").toUpperCase(Locale.ROOT)),
                    row.get("item"),
                    Double.parseDouble(row.get("peak_to")),
                    Double.parseDouble(row.get("usable_to")),
                    Double.parseDouble(row.get("band_percent")),
                    Driver.valueOf(row.get("driver").toUpperCase(Locale.ROOT)),
                    Double.parseDouble(row.get("celsius")),
                    Double.parseDouble(row.get("humidity")),
                    row.get("source"));
        }
    }

    static List<Line> of(Look.Kind kind) {
        return LINES.stream().filter(line -> line.kind() == kind).toList();
    }
}
