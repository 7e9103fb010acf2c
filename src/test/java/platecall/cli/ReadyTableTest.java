package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.plan.Plan;
import platecall.plan.TestPlans;

/** By hand: two takes at 10:00 and 10:10, an egg for each. */
class ReadyTableTest {

    private static String table(int takes, String crack, String fry, String plate) {
        Day day = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> setup.takes(takes))
                .build();
        Plan plan = TestPlans.of(day)
                .copies("S1/egg/plate/hero", takes)
                .step("egg", "crack", 1, crack, work -> work.by("Ana"))
                .step("egg", "fry", 1, fry, work -> work.on("burners", 1).by("Ana"))
                .step("egg", "plate", 1, plate, work -> work.by("Ana"))
                .build();
        StringWriter out = new StringWriter();
        ReadyTable.print(new PrintWriter(out, true), day, plan.withVerdict(Audit.of(day, plan)));
        return out.toString();
    }

    @Test
    void aFirstTakeThatIsLateAsksForAnotherCall() {
        assertThat(table(2, "09:58-10:00", "10:00-10:04", "10:04-10:05"))
                .contains(
                        "Setup S1 has its first take's food at 10:05. Later takes are planned by its call in the sheets: call"
                                + " it then and plan again, so that their food isn't made too early.");
        assertThat(table(2, "09:57-09:59", "09:59-10:03", "10:03-10:04")).doesNotContain("has its first");
        assertThat(table(1, "09:58-10:00", "10:00-10:04", "10:04-10:05"))
                .as("there is no later take")
                .doesNotContain("has its first");
    }
}
