package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import platecall.tasks.TaskNet;

class MoveTest {

    private static final int MOVES = 400;

    /** A kitchen full of a first plan of an invented day, and what moves need. */
    private static final class Bench {
        final Kitchen kitchen;
        final Score score;
        final Move move;

        Bench(int tasks, long seed) {
            TaskNet net = DayGenerator.netOf(DayGenerator.day(tasks, 0.85, seed, true));
            kitchen = new Kitchen(net);
            int[] byDue = IntStream.range(0, kitchen.copies)
                    .boxed()
                    .sorted(Comparator.comparingInt(c -> kitchen.due[c]))
                    .mapToInt(Integer::intValue)
                    .toArray();
            Dice dice = new Dice(seed);
            Placer placer = new Placer(kitchen, dice);
            Rush rush = new Rush(kitchen);
            boolean[] frozen = new boolean[kitchen.copies];
            score = new Score(kitchen, null);
            Ruin ruin = new Ruin(kitchen, dice, score.cost, frozen);
            move = new Move(kitchen, dice, placer, ruin, rush, score, frozen, false);
            ruin.activate(byDue);
            score.activate(byDue);
            move.letBreaksMove(true);
            new Builder(kitchen, dice, placer, rush, score, null).build(byDue);
        }
    }

    /** Whatever moves take out, put back, keep or undo: what was added up is what is found when all is reckoned anew. */
    @Property(tries = 20)
    void whatWasAddedUpIsWhatIsReckonedAnew(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Bench bench = new Bench(60, seed);
        for (boolean aside : new boolean[] {true, false}) {
            bench.score.setAside(aside, true);
            bench.score.recount();
            for (double temperature : new double[] {1_000, 80, 10, 0.3}) {
                for (int i = 0; i < MOVES; i++) {
                    bench.move.make(temperature, i % 2 == 0);
                    long total = bench.score.total();
                    long[] cost = bench.score.cost.clone();
                    bench.score.recount();
                    assertThat(bench.score.total()).isEqualTo(total);
                    assertThat(bench.score.cost).isEqualTo(cost);
                }
            }
        }
    }

    /** With no luck at all a plan never gets dearer, so that a dearer one is taken back whole. */
    @Property(tries = 20)
    void withoutLuckNothingGetsDearer(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Bench bench = new Bench(60, seed);
        long before = bench.score.total();
        long first = before;
        for (int i = 0; i < 5 * MOVES; i++) {
            bench.move.make(0, false);
            bench.score.recount();
            assertThat(bench.score.total()).isLessThanOrEqualTo(before);
            before = bench.score.total();
        }
        assertThat(before).isLessThan(first);
    }

    /** Nothing in the points asks for it, but each batch that could have been one with another takes hands from what is called then. */
    @Test
    void warmMovesKeepBatchesTogether() {
        int batches = 0;
        int least = 0;
        for (long seed = 1; seed <= 8; seed++) {
            Kitchen kitchen = warm(seed);
            for (int group = 0; group < kitchen.groupMembers.length; group++) {
                int[] members = kitchen.groupMembers[group];
                int most = kitchen.kind[members[0]].batchMost;
                batches += kitchen.batchesIn[group];
                least += (members.length + most - 1) / most;
            }
        }
        assertThat(batches).isBetween(least, least * 5 / 4);
    }

    /** What ends sooner than planned may wait longer than it may, so each batch has the minutes of what is in it. */
    @Property(tries = 20)
    void tidyBatchesTakeAsLongAsWhatIsInThem(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Bench bench = new Bench(60, seed);
        for (int i = 0; i < MOVES; i++) {
            bench.move.make(1_000, true);
        }
        bench.move.tidyBatches();
        Kitchen kitchen = bench.kitchen;
        for (int[] members : kitchen.groupMembers) {
            for (int g : members) {
                if (kitchen.batch[g] >= 0) {
                    assertThat(kitchen.duration[g])
                            .isEqualTo(kitchen.kind[g].minutesFor(kitchen.batchCount[kitchen.batch[g]]));
                }
            }
        }
        long total = bench.score.total();
        bench.score.recount();
        assertThat(bench.score.total()).isEqualTo(total);
    }

    private static Kitchen warm(long seed) {
        Bench bench = new Bench(150, seed);
        for (int i = 0; i < 20 * MOVES; i++) {
            bench.move.make(80, false);
        }
        return bench.kitchen;
    }

    /** Breaks moved alone end at times at which less work is put forward, and all of them still have a place. */
    @Property(tries = 20)
    void breaksAloneComeToQuietHours(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Bench bench = new Bench(300, seed);
        for (int c = 0; c < bench.kitchen.copies; c++) {
            bench.kitchen.removeCopy(c);
        }
        bench.kitchen.commit();
        Rush rush = new Rush(bench.kitchen);
        rush.tell(bench.kitchen.breakStart);
        double before = rush.minutes();
        assertThat(before).isPositive();
        for (int i = 0; i < MOVES; i++) {
            bench.move.moveBreakAlone(i % bench.kitchen.breaks.length, 0);
        }
        assertThat(Arrays.stream(bench.kitchen.breakStart).noneMatch(start -> start == Kitchen.NONE))
                .isTrue();
        rush.tell(bench.kitchen.breakStart);
        assertThat(rush.minutes()).isLessThan(before);
    }
}
