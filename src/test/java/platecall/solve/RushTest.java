package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;

class RushTest {

    /** One cook with one break; a plate is cut for 10 minutes and plated for 4, at most 5 minutes later, until its call. */
    private static Kitchen onePlateOfOneCook() {
        TestDays days = new TestDays().place("kitchen", place -> {}).with(facts -> facts.mealAfter = Optional.of(360));
        days.station("counter", Station.Kind.COUNTER, 9, station -> {});
        days.person("Ada", hands -> hands.shifts = List.of(TestDays.span("06:00-18:00")));
        days.dish("plate", part -> {}).step("plate", "cut", 10, step -> step.hands = 1);
        days.step("plate", "plate", 4, step -> step.after("cut").most(5).hands = 1);
        days.setup("first", "10:00", part -> {});
        days.need("first", "plate", "plate", need -> need.copies(1));
        Day day = days.build();
        return new Kitchen(Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1));
    }

    /** Reckoned by hand. */
    @Test
    void countsTheMinutesOfWorkThatABreakPutsForward() {
        Kitchen kitchen = onePlateOfOneCook();
        int call = kitchen.due[0];
        Rush rush = new Rush(kitchen);
        int[] starts = new int[kitchen.breaks.length];
        Arrays.fill(starts, Kitchen.NONE);
        assertThat(starts).isNotEmpty();
        assertThat(rush.minutes()).isZero();

        // The last 10 of 14 minutes of work go before the break: 1 to 10 of them wait, 10 while the other 4 are done,
        // then 9 to 1; 2 of them are free in each minute: 1 + ... + 8, 4 times 8, 7 + ... + 1.
        starts[0] = call - 10;
        assertThat(rush.growth(starts)).isCloseTo(36 + 32 + 28, within(1e-9));
        assertThat(rush.minutes()).isZero();
        rush.tell(starts);
        assertThat(rush.minutes()).isCloseTo(96, within(1e-9));

        // Two minutes are free, and a break after the call or well before it is in nothing's way.
        starts[0] = call - 2;
        assertThat(rush.growth(starts)).isCloseTo(-96, within(1e-9));
        starts[0] = call;
        assertThat(rush.growth(starts)).isCloseTo(-96, within(1e-9));
        starts[0] = call - 44;
        assertThat(rush.growth(starts)).isCloseTo(-96, within(1e-9));
    }

    /** What is counted anew where breaks have moved is what counting everything gives. */
    @Property(tries = 40)
    void countsTheSameAfterManyChangesAsAtOnce(@ForAll @LongRange(min = 1, max = 1000) long seed) {
        Kitchen kitchen = new Kitchen(DayGenerator.netOf(DayGenerator.day(150, 0.8, 1 + seed % 7, true)));
        SplittableRandom random = new SplittableRandom(seed);
        Rush rush = new Rush(kitchen);
        int[] starts = new int[kitchen.breaks.length];
        Arrays.fill(starts, Kitchen.NONE);
        for (int n = 0; n < 20; n++) {
            int i = random.nextInt(starts.length);
            int most = kitchen.horizon - kitchen.breaks[i].minutes();
            starts[i] = random.nextInt(5) == 0 ? Kitchen.NONE : random.nextInt(most + 1);
            double expected = rush.minutes() + rush.growth(starts);
            if (random.nextBoolean()) {
                rush.tell(starts);
                assertThat(rush.minutes()).isCloseTo(expected, within(1e-9));
            }
        }
        rush.tell(starts);
        Rush atOnce = new Rush(kitchen);
        atOnce.tell(starts);
        assertThat(rush.minutes()).isCloseTo(atOnce.minutes(), within(1e-9));
    }

    /**
     * No outside source: these plans put 448, 803 and 1,030 minutes forward; without the guide 3,122, 2,156 and 3,040, without
     * quiet hours to begin with 3,494, 7,728 and 7,425.
     */
    @Test
    void keepsBreaksOfALongDayOutOfItsBusyHours() {
        Day day = DayGenerator.day(1500, 0.8, 105, true);
        TaskNet net = DayGenerator.netOf(day);
        long[] minutes = new long[3];
        for (int i = 0; i < minutes.length; i++) {
            Planner.Limits limits = new Planner.Limits(600, Optional.of(150_000L), i + 1, 1);
            Published plan = Published.of(
                    net,
                    Planner.plan(day, net, "digest", "test", limits, Optional.empty(), Planner.Watcher.NONE)
                            .plan());
            Rush rush = new Rush(new Kitchen(net));
            rush.tell(IntStream.range(0, net.breaks().size())
                    .map(plan::breakStart)
                    .toArray());
            minutes[i] = Math.round(rush.minutes());
        }
        Arrays.sort(minutes);
        assertThat(minutes[1]).isLessThan(1_500);
    }
}
