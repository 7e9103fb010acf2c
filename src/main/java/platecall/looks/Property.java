package platecall.looks;

import java.util.List;
import java.util.Optional;
import platecall.day.Spelling;

/** Something a kind of look-life is worked out from; a row of sheet {@code looks} gives its value. */
public sealed interface Property {

    /** As written in the sheet. */
    String name();

    /** One line for the reader of a manual. */
    String meaning();

    /** Whether there is no look-life without it. */
    boolean required();

    /** What stands in its place if no row gives it, as it would be written; empty if required or worked out. */
    Optional<String> byDefault();

    /** What is wrong with a value, empty if nothing. */
    Optional<Fault> fault(String value);

    /**
     * A wrong value.
     *
     * @param what one sentence
     * @param wayOut begins with "Maybe"
     */
    record Fault(String what, String wayOut) {}

    /**
     * A number in a unit.
     *
     * @param unit printed behind it; empty for none
     * @param low smallest that means anything
     * @param high largest that means anything
     */
    record Quantity(
            String name,
            String unit,
            double low,
            double high,
            boolean required,
            Optional<String> byDefault,
            String meaning)
            implements Property {

        static Quantity needed(String name, String unit, double low, double high, String meaning) {
            return new Quantity(name, unit, low, high, true, Optional.empty(), meaning);
        }

        static Quantity assumed(String name, String unit, double low, double high, double byDefault, String meaning) {
            Limits.within(byDefault, low, high, name, unit);
            return new Quantity(name, unit, low, high, false, Optional.of(Limits.plain(byDefault)), meaning);
        }

        static Quantity workedOut(String name, String unit, double low, double high, String meaning) {
            return new Quantity(name, unit, low, high, false, Optional.empty(), meaning);
        }

        @Override
        public Optional<Fault> fault(String value) {
            Optional<Double> number = read(value);
            String range = Limits.plain(low) + " to " + Limits.plain(high) + (unit.isEmpty() ? "" : " " + unit);
            if (number.isEmpty()) {
                String pointed = value.strip().replace(',', '.');
                return Optional.of(
                        read(pointed).isPresent()
                                ? new Fault(name + " must be a number, with a point", "Maybe " + pointed + ".")
                                : new Fault(name + " must be a number", "Maybe write a number from " + range + "."));
            }
            if (number.get() < low || number.get() > high) {
                return Optional.of(new Fault(
                        name + " must be from " + range,
                        "Maybe it is in another unit; here it is read in " + (unit.isEmpty() ? "no unit" : unit)
                                + "."));
            }
            return Optional.empty();
        }

        /** The number, with or without its unit behind it; empty if it is none. */
        Optional<Double> read(String value) {
            String bare = value.strip();
            if (!unit.isEmpty() && bare.endsWith(unit)) {
                bare = bare.substring(0, bare.length() - unit.length()).strip();
            }
            return bare.matches("[-+]?\\d{1,9}(\\.\\d{1,9})?") ? Optional.of(Double.valueOf(bare)) : Optional.empty();
        }
    }

    /**
     * One of a few words.
     *
     * @param words those that are known
     */
    record Word(String name, List<String> words, boolean required, Optional<String> byDefault, String meaning)
            implements Property {

        static Word needed(String name, List<String> words, String meaning) {
            return new Word(name, List.copyOf(words), true, Optional.empty(), meaning);
        }

        static Word assumed(String name, List<String> words, String byDefault, String meaning) {
            return new Word(name, List.copyOf(words), false, Optional.of(byDefault), meaning);
        }

        @Override
        public Optional<Fault> fault(String value) {
            if (words.contains(value.strip())) {
                return Optional.empty();
            }
            return Optional.of(new Fault("unknown " + name, Spelling.suggest(value.strip(), words)));
        }
    }
}
