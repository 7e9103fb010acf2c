package platecall.day;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import platecall.units.Money;
import platecall.units.Span;

/**
 * What holds for the whole day (sheet {@code day}).
 *
 * @param title the day's name on every page
 * @param date the shooting date; a time written without a date falls on it
 * @param zone time zone of the set
 * @param kitchenHours when the kitchen can work; several spans over several dates are fine, at least one
 * @param currency code or sign printed beside money
 * @param crewCostPerMinute what the waiting crew costs a minute, if known
 * @param foodBudget most that food may cost, if limited
 * @param promise wanted chance that a setup is ready at its call, 0 to 1
 * @param safetyProfile name of the food-safety profile
 * @param setCelsius air temperature on set, -30 to 60
 * @param setHumidityPercent relative humidity on set, 0 to 100
 * @param lightWattsPerSquareMetre light on the plate, 0 to 2000
 * @param silence when noise from the kitchen is forbidden
 * @param mealAfterMinutes longest work of one person without a meal break; empty: no meal rule
 * @param mealMinutes length of a meal break, 1 to 1440
 * @param prices points by which plans are compared
 */
public record DayFacts(
        String title,
        LocalDate date,
        ZoneId zone,
        List<Span> kitchenHours,
        String currency,
        Optional<Money> crewCostPerMinute,
        Optional<Money> foodBudget,
        double promise,
        String safetyProfile,
        double setCelsius,
        double setHumidityPercent,
        double lightWattsPerSquareMetre,
        Silence silence,
        Optional<Integer> mealAfterMinutes,
        int mealMinutes,
        Prices prices) {

    public DayFacts {
        Demand.text(title, "title");
        Demand.that(!kitchenHours.isEmpty(), "kitchen hours need at least one span", kitchenHours);
        kitchenHours = Span.union(kitchenHours);
        Demand.that(promise >= 0 && promise <= 1, "promise must be from 0 % to 100 %", promise);
        Demand.that(setCelsius >= -30 && setCelsius <= 60, "set temperature must be from -30 to 60 °C", setCelsius);
        Demand.that(
                setHumidityPercent >= 0 && setHumidityPercent <= 100,
                "humidity must be from 0 to 100 %",
                setHumidityPercent);
        Demand.that(
                lightWattsPerSquareMetre >= 0 && lightWattsPerSquareMetre <= 2000,
                "light must be from 0 to 2000 W/m2",
                lightWattsPerSquareMetre);
        mealAfterMinutes.ifPresent(
                after -> Demand.that(after >= 1 && after <= 1440, "meal after must be from 1 to 1440 minutes", after));
        Demand.that(mealMinutes >= 1 && mealMinutes <= 1440, "meal minutes must be from 1 to 1440", mealMinutes);
    }

    /** The same with other kitchen hours. */
    public DayFacts withKitchenHours(List<Span> hours) {
        return new DayFacts(
                title,
                date,
                zone,
                hours,
                currency,
                crewCostPerMinute,
                foodBudget,
                promise,
                safetyProfile,
                setCelsius,
                setHumidityPercent,
                lightWattsPerSquareMetre,
                silence,
                mealAfterMinutes,
                mealMinutes,
                prices);
    }

    /** Crew cost known and above zero. */
    public boolean knowsCrewCost() {
        return crewCostPerMinute.isPresent() && crewCostPerMinute.get().cents() > 0;
    }
}
