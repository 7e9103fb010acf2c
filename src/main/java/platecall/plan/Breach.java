package platecall.plan;

import java.util.Optional;
import platecall.units.Moment;

/**
 * A rule that is broken.
 *
 * @param rule which
 * @param amount by how much, in {@link Rule#unit()}, above 0
 * @param what one sentence for a reader in the kitchen: what, where, when
 * @param over when it was over, if it was when the plan was made: it can't be helped any more, and holds up nothing to come
 */
public record Breach(Rule rule, long amount, String what, Optional<Moment> over) {

    public Breach {
        if (amount <= 0) {
            throw new IllegalArgumentException("a breach must be above 0, but it is [" + amount + "]");
        }
    }

    public Breach(Rule rule, long amount, String what) {
        this(rule, amount, what, Optional.empty());
    }
}
