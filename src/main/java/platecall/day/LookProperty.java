package platecall.day;

/**
 * A property that a dish's look-life is computed from (sheet {@code looks}).
 *
 * @param dish the dish's id
 * @param property name of the property; each kind of look knows its own
 * @param value as written; a number in the property's unit, or a word
 */
public record LookProperty(String dish, String property, String value) {

    public LookProperty {
        Demand.text(dish, "dish");
        Demand.text(property, "property");
        Demand.text(value, "value");
    }
}
