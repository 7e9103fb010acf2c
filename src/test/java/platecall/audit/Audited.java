package platecall.audit;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

/** What the audit finds, as the tests ask for it. */
final class Audited {

    private Audited() {}

    /** For each broken rule the sum of its breaches; empty for a sound plan. */
    static Map<Rule, Long> totals(Day day, Plan plan) {
        return Audit.of(day, plan).breaches().stream()
                .collect(Collectors.groupingBy(Breach::rule, Collectors.summingLong(Breach::amount)));
    }

    static Map<Rule, Long> totals(Day day, TestPlans plan) {
        return totals(day, plan.build());
    }

    /** What it says of each breach. */
    static List<String> sentences(Day day, TestPlans plan) {
        return Audit.of(day, plan.build()).breaches().stream().map(Breach::what).toList();
    }

    /** The two eggs of {@link TestDays#firstEgg()}, each by Ana, three minutes before it is due. */
    static TestPlans eggs(Day day) {
        return secondEgg(firstEgg(day));
    }

    static TestPlans firstEgg(Day day) {
        return TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana"));
    }

    static TestPlans secondEgg(TestPlans plan) {
        return plan.step("egg", "crack", 2, "10:00-10:02", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:02-10:06", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:06-10:07", work -> work.by("Ana"));
    }

    /** A day with one copy of one dish, made in one step that ends at 10:00 at the latest; tests say how. */
    static TestDays oneDish(int minutes, Consumer<TestDays.StepPart> cook) {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("stew", dish -> {})
                .need("S1", "stew", "cook", need -> {})
                .step("stew", "cook", minutes, cook)
                .person("Ana", person -> {})
                .person("Ben", person -> {});
    }
}
