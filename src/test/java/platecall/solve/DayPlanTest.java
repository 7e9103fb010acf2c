package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

/** Three eggs for three takes at 10:00, 10:10 and 10:20, each at its peak for five minutes. */
class DayPlanTest {

    private final Day day = new TestDays()
            .place("kitchen", place -> {})
            .person("Ana", person -> {})
            .setup("S1", "10:00", setup -> setup.takes(3))
            .dish("egg", dish -> dish.look = Look.table(0, 5, 60))
            .need("S1", "egg", "fry", need -> {})
            .step("egg", "fry", 4, step -> step.hands = 1)
            .build();
    private final TaskNet net = Breakdown.of(day, dish -> Looks.of(day, dish), need -> 3);

    private Placement readyAt(String time) {
        return Placement.ofBreak(net.origin().minutesUntil(TestDays.at(time)) - 4, 4);
    }

    private List<Placement> inOrder(Placement... placements) {
        List<Block> blocks =
                net.copies().stream().map(copy -> Block.ofCopy(copy, null)).toList();
        return DayPlan.inOrder(blocks, List.of(placements), net.prices());
    }

    @Test
    void whatHasNoPlaceIsTheLast() {
        Placement early = readyAt("10:30");
        Placement late = readyAt("10:50");
        assertThat(inOrder(Placement.NOWHERE, late, early)).containsExactly(early, late, Placement.NOWHERE);
        assertThat(inOrder(late, Placement.NOWHERE, Placement.NOWHERE))
                .containsExactly(late, Placement.NOWHERE, Placement.NOWHERE);
    }

    @Test
    void whatIsReadyFirstIsForTheFirstTakeIfThatCostsNothing() {
        Placement first = readyAt("10:30");
        Placement second = readyAt("10:40");
        Placement third = readyAt("10:50");
        assertThat(inOrder(third, first, second)).containsExactly(first, second, third);
        // ten minutes old at the first two takes cost as much as fresh at the first and twenty minutes old at the
        // second
        Placement fresh = readyAt("10:00");
        Placement old = readyAt("09:50");
        assertThat(inOrder(fresh, old, third)).containsExactly(old, fresh, third);
    }
}
