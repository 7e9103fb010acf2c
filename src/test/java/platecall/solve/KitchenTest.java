package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import platecall.tasks.TaskNet.HandPart;

class KitchenTest {

    /** The search leaps over minutes; trying each minute by itself is what it is compared with. */
    @Property(tries = 40)
    void leapsOverNoMinuteAtWhichATaskFits(
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 10, max = 80) int size,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double load) {
        Kitchen kitchen = new Kitchen(DayGenerator.netOf(DayGenerator.day(size, load, seed, true)));
        Dice dice = new Dice(seed);
        crowd(kitchen, dice);
        for (int tries = 0; tries < 60; tries++) {
            Kind k = kitchen.kind[dice.below(kitchen.tasks)];
            int d = k.minutesFor(dice.below(k.batchMost + 1));
            int lo = dice.below(kitchen.horizon);
            int hi = lo + dice.below(kitchen.horizon - lo);
            kitchen.asked = dice.chance(0.5)
                    ? -1L
                    : 1L << dice.below(kitchen.net.people().size());
            int[] fitting = IntStream.rangeClosed(lo, hi)
                    .filter(t -> fits(kitchen, k, d, t))
                    .toArray();

            assertThat(kitchen.findLatest(k, d, lo, hi))
                    .isEqualTo(fitting.length == 0 ? Kitchen.NONE : fitting[fitting.length - 1]);
            assertThat(kitchen.findEarliest(k, d, lo, hi)).isEqualTo(fitting.length == 0 ? Kitchen.NONE : fitting[0]);
        }
    }

    /** Four lanes are asked in one subtraction; each by itself is what it is compared with. */
    @Property(tries = 40)
    void oneLaneThatLacksUnitsTakesNoneFromTheNext(
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed, @ForAll @IntRange(min = 10, max = 80) int size) {
        Kitchen kitchen = new Kitchen(DayGenerator.netOf(DayGenerator.day(size, 1, seed, true)));
        Dice dice = new Dice(seed);
        crowd(kitchen, dice);
        for (int tries = 0; tries < 200; tries++) {
            int word = dice.below(kitchen.free.length);
            int from = dice.below(kitchen.horizon - 1);
            int to = from + 1 + dice.below(Math.min(30, kitchen.horizon - from));
            long request = 0;
            long lacking = 0;
            for (int lane = 0; lane < Kind.LANES_A_WORD; lane++) {
                int shift = Kind.BITS * lane;
                long wanted = dice.below(4);
                request |= wanted << shift;
                boolean lacks =
                        IntStream.range(from, to).anyMatch(t -> (kitchen.free[word][t] >>> shift & 0x7FFF) < wanted);
                lacking |= lacks ? 0x7FFFL << shift : 0;
            }
            assertThat(kitchen.lacking(word, request, from, to)).isEqualTo(lacking);
        }
    }

    /** The same for hands alone, compared with who is there less whom each task and break keeps busy, minute by minute. */
    @Property(tries = 40)
    void handsAreFreeAtThoseMinutesAtWhichNothingKeepsThemBusy(
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 10, max = 150) int size,
            @ForAll @DoubleRange(min = 0.3, max = 1.2) double load) {
        Kitchen kitchen = new Kitchen(DayGenerator.netOf(DayGenerator.day(size, load, seed, true)));
        Dice dice = new Dice(seed);
        crowd(kitchen, dice);
        long[] free = kitchen.present.clone();
        for (int g = 0; g < kitchen.tasks; g++) {
            Kind k = kitchen.kind[g];
            if (kitchen.start[g] != Kitchen.NONE && k.partA != null) {
                busy(free, kitchen.start[g], kitchen.duration[g], k.partA, kitchen.handsA[g]);
                if (k.partB != null) {
                    busy(free, kitchen.start[g], kitchen.duration[g], k.partB, kitchen.handsB[g]);
                }
            }
        }
        for (int i = 0; i < kitchen.breaks.length; i++) {
            for (int t = kitchen.breakStart[i];
                    t != Kitchen.NONE && t < kitchen.breakStart[i] + kitchen.breaks[i].minutes();
                    t++) {
                free[t] &= ~kitchen.bits(1L << kitchen.breaks[i].person());
            }
        }
        int people = kitchen.net.people().size();
        for (int tries = 0; tries < 200; tries++) {
            long mask = dice.below(1 << people);
            int needed = 1 + dice.below(5);
            int length = 1 + dice.below(dice.chance(0.5) ? 20 : 200);
            int lo = dice.below(kitchen.horizon);
            int hi = lo + dice.below(kitchen.horizon - lo);
            int[] starts = IntStream.range(lo, kitchen.horizon - length + 1)
                    .filter(t -> Long.bitCount(IntStream.range(t, t + length)
                                    .mapToLong(u -> free[u])
                                    .reduce(mask, (a, b) -> a & b))
                            >= needed)
                    .toArray();
            int last = IntStream.of(starts).filter(t -> t <= hi).max().orElse(Kitchen.NONE);

            int found = kitchen.lastFree(mask, needed, length, hi, lo);
            assertThat(found < lo ? Kitchen.NONE : found).isEqualTo(last);
            int first = kitchen.firstFree(mask, needed, length, lo);
            assertThat(first >= kitchen.horizon ? Kitchen.NONE : first)
                    .isEqualTo(starts.length == 0 ? Kitchen.NONE : starts[0]);
        }
    }

    private static void busy(long[] free, int start, int minutes, HandPart part, long people) {
        int from = start + part.offset(minutes);
        for (int t = from; t < from + part.lengthIn(minutes); t++) {
            free[t] &= ~people;
        }
    }

    private static boolean fits(Kitchen kitchen, Kind k, int d, int t) {
        return IntStream.range(0, k.ways.length).anyMatch(way -> kitchen.fits(k, way, d, t));
    }

    /** Breaks and copies wherever they fit, some of them taken out again. */
    private static void crowd(Kitchen kitchen, Dice dice) {
        for (int i = 0; i < kitchen.breaks.length; i++) {
            int lo = kitchen.breakWindow(i).start();
            int hi = kitchen.breakWindow(i).end();
            int at = kitchen.findBreak(i, lo, hi, lo + dice.below(hi - lo + 1));
            if (at != Kitchen.NONE) {
                kitchen.placeBreak(i, at);
            }
        }
        Placer placer = new Placer(kitchen, dice);
        for (int c = 0; c < kitchen.copies; c++) {
            placer.placeCopy(c, true, Long.MAX_VALUE / 4, true);
            if (dice.chance(0.2)) {
                kitchen.rollback(0);
            } else {
                kitchen.commit();
            }
        }
    }
}
