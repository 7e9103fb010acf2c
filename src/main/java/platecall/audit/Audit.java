package platecall.audit;

import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import platecall.day.Day;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.plan.Plan.Verdict;

/**
 * The second opinion on a plan. Every rule is worked out again from the day and the plan alone; how the plan was made is
 * not known here, so that a mistake there can't hide here.
 */
public final class Audit {

    /** The checks, each with the rules that it answers for; a new rule's check is one more line. */
    private static final List<BiConsumer<Ledger, Breaches>> CHECKS = List.of(
            CopyRules::check,
            StationRules::check,
            OvenRule::check,
            HandRules::check,
            TimeRules::check,
            CircuitRule::check,
            EaterRules::check,
            SafetyRules::check);

    private Audit() {}

    /**
     * What is to be said of a plan: every broken rule with the size of the breach, minutes late and off peak, and the
     * readiness of each setup. The verdict that the plan carries plays no part in it.
     *
     * @param day a day without troubles: every name in it is known in it
     * @param plan any plan; what it says that the day does not know is a breach, not an error
     */
    public static Verdict of(Day day, Plan plan) {
        Ledger ledger = new Ledger(day, plan);
        Breaches breaches = new Breaches();
        CHECKS.forEach(check -> check.accept(ledger, breaches));
        Map<String, AtCamera> seen = AtCamera.of(ledger, Looks.of(day));
        Statements.check(ledger, seen, breaches);
        List<AtCamera> toCome = seen.values().stream()
                .filter(copy -> !plan.isShot(day, copy.copy()))
                .toList();
        return new Verdict(
                breaches.byRule(),
                toCome.stream().mapToInt(AtCamera::lateMinutes).sum(),
                toCome.stream().mapToInt(AtCamera::offPeakMinutes).sum(),
                ReadinessTable.of(ledger, seen));
    }

    /**
     * For each setup that is ready at its call, though something else is the matter with it, the worst of that; by its id.
     * Setups without a flaw, those that aren't ready at their call, and those that are shot aren't in it.
     *
     * @param day a day without troubles
     * @param plan any plan
     */
    public static Map<String, Flaw> flaws(Day day, Plan plan) {
        Ledger ledger = new Ledger(day, plan);
        return ReadinessTable.flaws(ledger, AtCamera.of(ledger, Looks.of(day)));
    }
}
