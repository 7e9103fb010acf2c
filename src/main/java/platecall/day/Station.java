package platecall.day;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import platecall.units.Span;

/**
 * A place to work or to keep food.
 *
 * @param id short name, unique
 * @param kind what it is
 * @param capacity how much of it there is at a time, 1 to 10000, in {@code unit}
 * @param unit what is counted: burners, trays, shelves; may be empty
 * @param hours when it can be used; empty: storage always, the rest in kitchen hours
 * @param place where it stands
 * @param heatPerMinute degrees Celsius an oven gains a minute, above 0
 * @param coolPerMinute degrees Celsius an oven loses a minute, above 0
 * @param amps current drawn, 0 or more: storage and ovens whenever they are open, the rest for each unit in use
 * @param circuit circuit it is plugged into, if it matters
 */
public record Station(
        String id,
        Kind kind,
        int capacity,
        String unit,
        List<Span> hours,
        String place,
        double heatPerMinute,
        double coolPerMinute,
        double amps,
        Optional<String> circuit) {

    /** Temperature of an oven that has been off: it starts each opening from here. */
    public static final int COLD_OVEN_CELSIUS = 20;

    /** What a station is. */
    public enum Kind {
        BURNERS,
        OVEN,
        FRIDGE,
        FREEZER,
        HOT_HOLD,
        RACK,
        COUNTER,
        OTHER;

        /** The word in sheets. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }

        /** Whether food waits in it between steps. */
        public boolean storesFood() {
            return this == FRIDGE || this == FREEZER || this == HOT_HOLD || this == RACK;
        }

        /** Whether food warms or cools in it once it is off. */
        public boolean keepsColdOrHot() {
            return this == FRIDGE || this == FREEZER || this == HOT_HOLD;
        }

        /** Whether it draws its current as long as it is open, not only while a step uses it. */
        public boolean alwaysOn() {
            return this == OVEN || this == FRIDGE || this == FREEZER || this == HOT_HOLD;
        }
    }

    public Station {
        Demand.text(id, "station");
        Demand.that(capacity >= 1 && capacity <= 10_000, "capacity must be from 1 to 10000", capacity);
        hours = Span.union(hours);
        Demand.text(place, "place");
        Demand.that(heatPerMinute > 0 && heatPerMinute <= 1000, "heat-up must be above 0 °C a minute", heatPerMinute);
        Demand.that(coolPerMinute > 0 && coolPerMinute <= 1000, "cool-down must be above 0 °C a minute", coolPerMinute);
        Demand.that(amps >= 0 && amps <= 1000, "amps must be from 0 to 1000", amps);
    }

    /** The same with other hours. */
    public Station withHours(List<Span> others) {
        return new Station(id, kind, capacity, unit, others, place, heatPerMinute, coolPerMinute, amps, circuit);
    }

    /** Whole minutes that this oven needs to go from one temperature to another. */
    public int minutesToChange(int fromCelsius, int toCelsius) {
        double rate = toCelsius > fromCelsius ? heatPerMinute : coolPerMinute;
        return (int) Math.ceil(Math.abs(toCelsius - fromCelsius) / rate - 1e-9);
    }

    /** Current of a unit of it in tenths of an amp, in which plans count it, rounded up. */
    public int tenthsOfAmps() {
        return (int) Math.ceil(10 * amps - 1e-9);
    }
}
