package platecall.report;

import platecall.day.Day;
import platecall.plan.Plan;

/** The inn's plan, searched for once. */
final class InnPlans {

    private static final Day DAY = InnDay.day();
    private static final Plan PLAN = InnDay.plan(DAY);

    private InnPlans() {}

    static Day day() {
        return DAY;
    }

    static Plan plan() {
        return PLAN;
    }
}
