package platecall.tasks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.solve.InventedDays;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.Copy;

class SpareTimeTest {

    private static TaskNet netOf(Day day) {
        return Breakdown.of(
                day, dish -> Looks.of(day, dish), need -> need.copies().orElse(2));
    }

    @Test
    void whatComesAfterAStepWaitsAsLongAsItMay() {
        TaskNet net = netOf(TestDays.firstEgg()
                .step("egg", "fry", 4, step -> step.after("crack").uses("burners", 1).hands = 1)
                .build());
        TaskNet spared = SpareTime.in(net, (need, step) -> 5, step -> 0, need -> 0);
        List<Arc> arcs =
                spared.recipes().get(0).outOf().stream().flatMap(List::stream).toList();
        // from crack to fry there is no limit; a plate waits 2 minutes for its egg at most
        assertThat(arcs).extracting(Arc::least).containsExactly(5, 2);
        // an egg that is done a minute sooner must not wait for 3
        assertThat(SpareTime.in(net, (need, step) -> 5, step -> 1, need -> 0)
                        .recipes()
                        .get(0)
                        .outOf()
                        .get(1))
                .extracting(Arc::least)
                .containsExactly(1);
        assertThat(arcs)
                .extracting(Arc::most)
                .containsExactlyElementsOf(net.recipes().get(0).outOf().stream()
                        .flatMap(List::stream)
                        .map(Arc::most)
                        .toList());
    }

    /** An egg is at its peak for 15 minutes and can be shown for 20; the camera looks at it for 5. */
    @Test
    void aCopyIsEarlyWithinItsPeakForItsLastStepAndBeyondItForItsCall() {
        TaskNet net = netOf(TestDays.firstEgg().build());
        assertThat(early(net, 7, 0)).isEqualTo(7);
        assertThat(early(net, 12, 0)).isEqualTo(10);
        assertThat(early(net, 7, 6)).isEqualTo(13);
        assertThat(early(net, 7, 30)).isEqualTo(15);
        TaskNet resting = netOf(TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(6, 15, 20))
                .build());
        assertThat(early(resting, 12, 0)).isEqualTo(4);
        TaskNet steady = netOf(TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.of(Look.Kind.STEADY))
                .build());
        assertThat(early(steady, 12, 30)).isEqualTo(42);
    }

    @Test
    void aNeedMayHaveNoMinuteToSpareBesideOneThatHas() {
        TaskNet net = netOf(TestDays.firstEgg()
                .need("S2", "egg", "plate", need -> {})
                .setup("S2", "11:00", setup -> {})
                .build());
        TaskNet spared = SpareTime.in(
                net,
                (need, step) -> need.setup().equals("S2") ? 0 : 7,
                step -> 0,
                need -> need.setup().equals("S2") ? 0 : 3);
        for (int c = 0; c < net.copies().size(); c++) {
            Copy was = net.copies().get(c);
            Copy now = spared.copies().get(c);
            if (was.recipe().need().setup().equals("S2")) {
                assertThat(now).isEqualTo(was);
                assertThat(spared.recipes()).contains(was.recipe());
            } else {
                assertThat(was.due() - now.due()).isEqualTo(10);
            }
        }
        assertThat(net.copies()).hasSize(4);
    }

    private static int early(TaskNet net, int afterStep, int beforeCall) {
        Copy was = net.copies().get(0);
        Copy now = SpareTime.in(net, (need, step) -> afterStep, step -> 1, need -> beforeCall)
                .copies()
                .get(0);
        assertThat(now.due() + now.show()).isEqualTo(was.due() + was.show());
        return was.due() - now.due();
    }

    @Property(tries = 50)
    void noWaitIsLongerThanItMayBeAndNothingIsDueLater(
            @ForAll @IntRange(min = 8, max = 120) int size,
            @ForAll @IntRange(max = 60) int afterStep,
            @ForAll @IntRange(max = 60) int beforeCall,
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        TaskNet net = netOf(InventedDays.day(size, 0.8, seed));
        TaskNet spared = SpareTime.in(net, (need, step) -> afterStep, step -> 1, need -> beforeCall);
        assertThat(spared.copies()).hasSameSizeAs(net.copies());
        for (int c = 0; c < net.copies().size(); c++) {
            Copy was = net.copies().get(c);
            Copy now = spared.copies().get(c);
            assertThat(now.due()).isBetween(0, was.due());
            for (int i = 0; i < was.recipe().size(); i++) {
                List<Arc> before = was.recipe().outOf().get(i);
                List<Arc> after = now.recipe().outOf().get(i);
                for (int n = 0; n < before.size(); n++) {
                    assertThat(after.get(n).least())
                            .isBetween(before.get(n).least(), before.get(n).most());
                    assertThat(now.recipe().into().get(after.get(n).after())).contains(after.get(n));
                }
            }
        }
        assertThat(Arrays.equals(net.handsFree(), spared.handsFree())).isTrue();
    }
}
