package platecall.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import platecall.plan.Breach;
import platecall.plan.Rule;
import platecall.units.Moment;

/** Breaches as they are found. */
final class Breaches {

    private final List<Breach> found = new ArrayList<>();

    /** Notes a breach if there is one: {@code amount} is above 0. */
    void add(Rule rule, long amount, Supplier<String> what) {
        add(rule, amount, Optional.empty(), what);
    }

    /** The same of what may have been over when the plan was made. */
    void add(Rule rule, long amount, Optional<Moment> over, Supplier<String> what) {
        if (amount > 0) {
            found.add(new Breach(rule, amount, what.get(), over));
        }
    }

    boolean none() {
        return found.isEmpty();
    }

    /** All of them, rule by rule. */
    List<Breach> byRule() {
        return found.stream().sorted(Comparator.comparing(Breach::rule)).toList();
    }
}
