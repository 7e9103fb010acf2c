package platecall.day;

import java.util.Optional;
import platecall.units.Money;

/**
 * A dish.
 *
 * @param id short name, unique
 * @param name as printed
 * @param look how long it looks right after plate-up
 * @param edible false for dressing that must never be eaten
 * @param cost of one copy, 0 or more, beside its ingredients
 * @param bought true if it is bought ready and only finished here
 * @param storageUnits storage that one copy takes, in units of the storage, 0 or more
 * @param heldIn storage in which its copies wait for release after their last take, if any
 * @param timeTemperatureControlled whether the safety clock runs for it
 * @param carryMinutes minutes to carry one copy to camera besides the walk, 0 or more
 * @param copiesPerWalk copies that one person carries to camera at a time, 1 to 100
 * @param breakage chance that a copy breaks before camera, 0 to 0.9
 * @param spoilage chance that a copy spoils before camera, 0 to 0.9
 */
public record Dish(
        String id,
        String name,
        Look look,
        boolean edible,
        Money cost,
        boolean bought,
        int storageUnits,
        Optional<String> heldIn,
        boolean timeTemperatureControlled,
        int carryMinutes,
        int copiesPerWalk,
        double breakage,
        double spoilage) {

    public Dish {
        Demand.text(id, "dish");
        Demand.text(name, "name");
        Demand.that(cost.cents() >= 0, "cost must be 0 or more", cost);
        Demand.that(storageUnits >= 0 && storageUnits <= 1000, "storage must be 0 to 1000 units", storageUnits);
        Demand.that(
                carryMinutes >= 0 && carryMinutes <= 240, "carry minutes must be from 0 to 240 minutes", carryMinutes);
        Demand.that(copiesPerWalk >= 1 && copiesPerWalk <= 100, "copies per walk must be from 1 to 100", copiesPerWalk);
        Demand.that(breakage >= 0 && breakage <= 0.9, "breakage must be from 0 % to 90 %", breakage);
        Demand.that(spoilage >= 0 && spoilage <= 0.9, "spoilage must be from 0 % to 90 %", spoilage);
    }
}
