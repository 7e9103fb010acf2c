package platecall.looks;

import java.util.function.DoubleUnaryOperator;

/** Where a rising function crosses zero. */
final class Bisection {

    /** Enough to reach neighbouring doubles from any interval used here. */
    private static final int HALVINGS = 100;

    private Bisection() {}

    /**
     * @param rising continuous, at most 0 at {@code low}, at least 0 at {@code high}
     * @throws IllegalArgumentException if it is not
     */
    static double zero(DoubleUnaryOperator rising, double low, double high) {
        if (!(rising.applyAsDouble(low) <= 0 && rising.applyAsDouble(high) >= 0)) {
            throw new IllegalArgumentException("no balance between [" + low + "] and [" + high + "]");
        }
        double below = low;
        double above = high;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (below + above) / 2;
            if (rising.applyAsDouble(middle) < 0) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return (below + above) / 2;
    }
}
