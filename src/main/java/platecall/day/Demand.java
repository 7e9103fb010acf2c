package platecall.day;

/** Guards for the compact constructors of this package: a record that exists is valid. */
final class Demand {

    private Demand() {}

    static void that(boolean holds, String message, Object value) {
        if (!holds) {
            throw new IllegalArgumentException(message + ", but it is [" + value + "]");
        }
    }

    static String text(String value, String name) {
        that(value != null && !value.isBlank(), name + " must not be empty", value);
        return value;
    }
}
