package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;

class NudgeTest {

    /** Two dishes that one cook prepares and plates, each plated 0 to 5 minutes after its preparation; reckoned by hand. */
    private static Kitchen twoDishesOfOneCook() {
        TestDays days = new TestDays().place("kitchen", place -> {});
        days.station("counter", Station.Kind.COUNTER, 9, station -> {});
        days.person("Ada", hands -> hands.shifts = List.of(TestDays.span("06:00-18:00")));
        for (String dish : List.of("first", "second")) {
            days.dish(dish, part -> {}).step(dish, "cut", 10, step -> step.hands = 1);
            days.step(dish, "plate", 4, step -> step.after("cut").most(5).hands = 1);
            days.setup(dish, dish.equals("first") ? "10:00" : "10:20", part -> {});
            days.need(dish, dish, "plate", need -> need.copies(1));
        }
        Day day = days.build();
        return new Kitchen(Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1));
    }

    private static void place(Kitchen kitchen, int... starts) {
        for (int g = starts.length - 1; g >= 0; g--) {
            kitchen.asked = -1L;
            assertThat(kitchen.fits(kitchen.kind[g], 0, kitchen.kind[g].minutes, starts[g]))
                    .isTrue();
            kitchen.place(g, starts[g], kitchen.kind[g].minutes, 0, kitchen.foundA, kitchen.foundB, -1);
        }
        kitchen.commit();
    }

    private static int[] starts(Kitchen kitchen) {
        return kitchen.start.clone();
    }

    @Test
    void pushesWhatIsInTheWayNoFartherThanItMustGo() {
        Kitchen kitchen = twoDishesOfOneCook();
        int call = kitchen.due[0];
        place(kitchen, call - 14, call - 4, call + 2, call + 13);
        Nudge nudge = new Nudge(kitchen, new Dice(1), new boolean[2]);

        // plating 13 -> 9: cutting must end at 9 and begins at -1, so the first plate and its cutting move by 1
        assertThat(nudge.move(3, call + 9)).isTrue();
        assertThat(starts(kitchen)).containsExactly(call - 15, call - 5, call - 1, call + 9);
        assertThat(Arrays.copyOf(nudge.copies, nudge.copyCount)).containsExactlyInAnyOrder(0, 1);

        // the other way: plating the first at -2 pushes the second cutting to 2 and its plating to 12
        kitchen.commit();
        assertThat(nudge.move(1, call - 2)).isTrue();
        assertThat(starts(kitchen)).containsExactly(call - 15, call - 2, call + 2, call + 12);
    }

    @Test
    void drawsAlongWhatMayNotWaitLonger() {
        Kitchen kitchen = twoDishesOfOneCook();
        int call = kitchen.due[0];
        place(kitchen, call - 14, call - 4, call + 2, call + 13);
        // cutting 8 minutes earlier ends at -12; its plate may wait for 5 minutes, so it moves from -4 to -7
        Nudge nudge = new Nudge(kitchen, new Dice(1), new boolean[2]);
        assertThat(nudge.move(0, call - 22)).isTrue();
        assertThat(starts(kitchen)).containsExactly(call - 22, call - 7, call + 2, call + 13);
    }

    @Test
    void leavesEverythingWhereItWasIfATailMustStay() {
        Kitchen kitchen = twoDishesOfOneCook();
        int call = kitchen.due[0];
        place(kitchen, call - 14, call - 4, call + 2, call + 13);
        int[] before = starts(kitchen);
        Nudge nudge = new Nudge(kitchen, new Dice(1), new boolean[] {true, false});
        assertThat(nudge.move(3, call + 9)).isFalse();
        assertThat(starts(kitchen)).containsExactly(before);
        assertSound(kitchen);
    }

    @Property(tries = 40)
    void leavesASoundKitchenWhateverIsPushed(
            @ForAll @IntRange(min = 12, max = 120) int size,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double load,
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Kitchen kitchen = new Kitchen(DayGenerator.netOf(DayGenerator.day(size, load, seed, true)));
        Dice dice = new Dice(seed);
        Placer placer = new Placer(kitchen, dice);
        for (int i = 0; i < kitchen.breaks.length; i++) {
            TaskNet.Window window = kitchen.breakWindow(i);
            int at = kitchen.findBreak(i, window.start(), window.end(), window.start());
            if (at != Kitchen.NONE) {
                kitchen.placeBreak(i, at);
            }
        }
        for (int c = 0; c < kitchen.copies; c++) {
            placer.placeCopy(c, true, Long.MAX_VALUE / 4, false);
        }
        kitchen.commit();
        Nudge nudge = new Nudge(kitchen, dice, new boolean[kitchen.copies]);
        int done = 0;
        for (int i = 0; i < 400; i++) {
            int g = dice.below(kitchen.tasks);
            if (kitchen.start[g] == Kitchen.NONE) {
                continue;
            }
            int[] before = starts(kitchen);
            int[] breaksBefore = kitchen.breakStart.clone();
            if (nudge.move(g, kitchen.start[g] + dice.below(41) - 20)) {
                kitchen.commit();
                done++;
            } else {
                assertThat(starts(kitchen)).containsExactly(before);
                assertThat(kitchen.breakStart).containsExactly(breaksBefore);
            }
            if (i % 20 == 0) {
                assertSound(kitchen);
            }
        }
        assertSound(kitchen);
        assertThat(done).isPositive();
    }

    /** Everything fits, one by one, into an empty kitchen, with its waits and the room in which it waits. */
    private static void assertSound(Kitchen kitchen) {
        Kitchen other = new Kitchen(kitchen.net);
        for (int i = 0; i < kitchen.breaks.length; i++) {
            int at = kitchen.breakStart[i];
            if (at != Kitchen.NONE) {
                TaskNet.Window window = kitchen.breakWindow(i);
                assertThat(at).isBetween(window.start(), window.end());
                assertThat(other.findBreak(i, at, at, at)).isEqualTo(at);
                other.placeBreak(i, at);
            }
        }
        for (int g = kitchen.tasks - 1; g >= 0; g--) {
            if (kitchen.start[g] == Kitchen.NONE) {
                continue;
            }
            Kind k = kitchen.kind[g];
            int b = kitchen.batch[g];
            if (b >= 0) {
                other.batchRoom[b] = kitchen.batchRoom[b];
            }
            if (b < 0 || other.batchCount[b] == 0) {
                other.asked = k.partA == null ? -1L : kitchen.handsA[g] | kitchen.handsB[g];
                assertThat(other.fits(k, kitchen.way[g], kitchen.duration[g], kitchen.start[g]))
                        .isTrue();
            } else {
                assertThat(other.batchCount[b]).isLessThan(other.batchRoom[b]);
            }
            int base = kitchen.base[kitchen.copyOf[g]];
            int until = kitchen.end(g);
            for (Arc arc : kitchen.outOf[g]) {
                int wait = kitchen.start[base + arc.after()] - kitchen.end(g);
                assertThat(wait).isBetween(arc.least(), arc.most());
                until = Math.max(until, kitchen.start[base + arc.after()]);
            }
            if (k.waitWord >= 0) {
                assertThat(other.storedFrom(k, until, kitchen.end(g))).isEqualTo(kitchen.end(g));
            }
            other.place(
                    g, kitchen.start[g], kitchen.duration[g], kitchen.way[g], kitchen.handsA[g], kitchen.handsB[g], b);
        }
    }
}
