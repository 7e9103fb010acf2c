package platecall.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * An amount of the day's currency, in hundredths, so that sums are exact.
 *
 * @param cents hundredths of the currency unit; may be negative in differences
 */
public record Money(long cents) implements Comparable<Money> {

    public static final Money ZERO = new Money(0);

    /** The amount, rounded half up to hundredths. */
    public static Money of(BigDecimal amount) {
        return new Money(
                amount.movePointRight(2).setScale(0, RoundingMode.HALF_UP).longValueExact());
    }

    public Money plus(Money other) {
        return new Money(Math.addExact(cents, other.cents));
    }

    public Money minus(Money other) {
        return new Money(Math.subtractExact(cents, other.cents));
    }

    public Money times(long count) {
        return new Money(Math.multiplyExact(cents, count));
    }

    /** This amount in currency units, with two decimals. */
    public BigDecimal amount() {
        return BigDecimal.valueOf(cents, 2);
    }

    @Override
    public int compareTo(Money other) {
        return Long.compare(cents, other.cents);
    }

    /** {@code 12.50}: always two decimals and a point, whatever the machine's locale. */
    @Override
    public String toString() {
        return amount().toPlainString();
    }
}
