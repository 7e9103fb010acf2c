package platecall.plan;

/**
 * A rule that is broken.
 *
 * @param rule which
 * @param amount by how much, in {@link Rule#unit()}, above 0
 * @param what one sentence for a reader in the kitchen: what, where, when
 */
public record Breach(Rule rule, long amount, String what) {

    public Breach {
        if (amount <= 0) {
            throw new IllegalArgumentException("a breach must be above 0, but it is [" + amount + "]");
        }
    }
}
