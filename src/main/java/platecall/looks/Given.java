package platecall.looks;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The properties of one dish, completed by the defaults of its kind. */
final class Given {

    private final List<Property> known;
    private final Map<String, String> rows;

    /** @param rows values as written, by property name; each without a fault */
    Given(List<Property> known, Map<String, String> rows) {
        this.known = known;
        this.rows = Map.copyOf(rows);
    }

    /** A number that is given or has a default. */
    double number(String name) {
        return optional(name).orElseThrow(() -> new IllegalArgumentException("no value for [" + name + "]"));
    }

    /** A number that may be given. */
    Optional<Double> optional(String name) {
        Property.Quantity quantity = (Property.Quantity) property(name);
        return text(quantity)
                .map(text -> quantity.read(text)
                        .orElseThrow(() -> new IllegalArgumentException("not a number: [" + text + "]")));
    }

    /** A percentage as a share from 0 to 1. */
    double share(String name) {
        return number(name) / 100;
    }

    /** Millimetres as metres. */
    double metres(String name) {
        return number(name) / 1000;
    }

    String word(String name) {
        return text(property(name)).orElseThrow(() -> new IllegalArgumentException("no value for [" + name + "]"));
    }

    /** "; by default mass 250 g, wet 50 %" or nothing. */
    String assumptions() {
        List<String> assumed = new ArrayList<>();
        for (Property property : known) {
            if (!rows.containsKey(property.name()) && property.byDefault().isPresent()) {
                String unit = property instanceof Property.Quantity quantity
                                && !quantity.unit().isEmpty()
                        ? " " + quantity.unit()
                        : "";
                assumed.add(property.name() + " " + property.byDefault().get() + unit);
            }
        }
        return assumed.isEmpty() ? "" : "; by default " + String.join(", ", assumed);
    }

    private Optional<String> text(Property property) {
        return Optional.ofNullable(rows.get(property.name())).map(String::strip).or(property::byDefault);
    }

    private Property property(String name) {
        return known.stream()
                .filter(property -> property.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unknown property [" + name + "]"));
    }
}
