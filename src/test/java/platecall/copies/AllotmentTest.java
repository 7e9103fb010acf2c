package platecall.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import platecall.copies.Allotment.Choice;

class AllotmentTest {

    /** A falling cost: gains of the steps. */
    private static Choice choice(int least, long cents, double... gains) {
        double[] cost = new double[gains.length + 1];
        for (int i = gains.length - 1; i >= 0; i--) {
            cost[i] = cost[i + 1] + gains[i];
        }
        return new Choice(least, cents, cost);
    }

    private static List<Choice> random(Random random, int needs, int steps, int dearest) {
        List<Choice> choices = new ArrayList<>();
        for (int need = 0; need < needs; need++) {
            double[] gains = random.doubles(random.nextInt(steps + 1), 0, 100)
                    .boxed()
                    .sorted((a, b) -> Double.compare(b, a))
                    .mapToDouble(gain -> gain)
                    .toArray();
            // of what is wanted two at a time every other one saves nothing
            gains = random.nextBoolean()
                    ? gains
                    : Arrays.stream(gains)
                            .flatMap(gain -> DoubleStream.of(0, gain))
                            .toArray();
            choices.add(choice(1 + random.nextInt(3), random.nextInt(dearest + 1), gains));
        }
        return choices;
    }

    private static long cents(List<Choice> choices, int[] copies) {
        return IntStream.range(0, copies.length)
                .mapToLong(i -> copies[i] * choices.get(i).centsEach())
                .sum();
    }

    private static double expected(List<Choice> choices, int[] copies) {
        return IntStream.range(0, copies.length)
                .mapToDouble(i ->
                        choices.get(i).expectedCost()[copies[i] - choices.get(i).least()])
                .sum();
    }

    /** Every combination tried: the least expected cost within the budget. */
    private static double bruteForce(List<Choice> choices, int need, long left) {
        if (need == choices.size()) {
            return 0;
        }
        Choice choice = choices.get(need);
        double best = Double.POSITIVE_INFINITY;
        for (int step = 0; step < choice.expectedCost().length; step++) {
            long rest = left - (choice.least() + step) * choice.centsEach();
            if (rest >= 0) {
                best = Math.min(best, choice.expectedCost()[step] + bruteForce(choices, need + 1, rest));
            }
        }
        return best;
    }

    @Property(tries = 1000)
    void agreesWithTryingEverything(@ForAll long seed) {
        Random random = new Random(seed);
        List<Choice> choices = random(random, 1 + random.nextInt(5), 4, random.nextBoolean() ? 6 : 700);
        long budget = random.nextInt((int) Math.max(1, 3 * Allotment.leastCents(choices)) + 1);
        double best = bruteForce(choices, 0, budget);
        Optional<int[]> copies = Allotment.within(budget, choices);
        if (Double.isInfinite(best)) {
            assertThat(copies).isEmpty();
            return;
        }
        assertThat(cents(choices, copies.orElseThrow())).isLessThanOrEqualTo(budget);
        assertThat(expected(choices, copies.orElseThrow())).isCloseTo(best, within(1e-6));
    }

    @Property(tries = 30)
    void moreMoneyNeverMakesItWorseOnManyNeeds(@ForAll long seed, @ForAll @IntRange(min = 0, max = 60) int percent) {
        List<Choice> choices = random(new Random(seed), 40, 20, 9_000);
        long least = Allotment.leastCents(choices);
        long budget = least + least * percent / 20;
        int[] copies = Allotment.within(budget, choices).orElseThrow();
        int[] richer = Allotment.within(budget + 500, choices).orElseThrow();
        assertThat(cents(choices, copies)).isLessThanOrEqualTo(budget);
        assertThat(cents(choices, richer)).isLessThanOrEqualTo(budget + 500);
        assertThat(expected(choices, richer)).isLessThanOrEqualTo(expected(choices, copies) + 1e-6);
    }

    @Test
    void spendsWhereACentSavesMost() {
        List<Choice> choices = List.of(choice(1, 10, 9, 4, 1), choice(1, 10, 8, 7, 2));
        assertThat(Allotment.within(50, choices).orElseThrow()).containsExactly(2, 3);
        assertThat(Allotment.within(20, choices).orElseThrow()).containsExactly(1, 1);
        assertThat(Allotment.within(1000, choices).orElseThrow()).containsExactly(4, 4);
    }

    @Test
    void takesTwoCheapOnesWhereTheBestOneLeavesMoneyUnspent() {
        // a cent saves most on the first (60 for 6, then 45 for 5 no longer fits), but two of the second save 90 for 10
        List<Choice> choices = List.of(choice(0, 6, 60), choice(0, 5, 45, 45));
        assertThat(Allotment.within(10, choices).orElseThrow()).containsExactly(0, 2);
        assertThat(Allotment.within(11, choices).orElseThrow()).containsExactly(1, 1);
    }

    @Test
    void keepsTheFirstAnswerWhereNothingBeatsIt() {
        List<Choice> choices = List.of(choice(0, 6, 60), choice(0, 5, 30));
        assertThat(Allotment.within(10, choices).orElseThrow()).containsExactly(1, 0);
    }

    @Test
    void pairsAreBoughtAsPairs() {
        List<Choice> choices = List.of(choice(2, 10, 0, 30, 0, 20), choice(1, 10, 12, 11));
        // 15 for each of two, 12, 11, 10 for each of two
        assertThat(Allotment.within(50, choices).orElseThrow()).containsExactly(4, 1);
        assertThat(Allotment.within(70, choices).orElseThrow()).containsExactly(4, 3);
        assertThat(Allotment.within(80, choices).orElseThrow()).containsExactly(6, 2);
        assertThat(Allotment.within(90, choices).orElseThrow()).containsExactly(6, 3);
    }

    @Test
    void takesAllThatCostsNothing() {
        List<Choice> choices = List.of(choice(1, 0, 3, 2, 1), choice(2, 7, 100));
        assertThat(Allotment.within(14, choices).orElseThrow()).containsExactly(4, 2);
    }

    @Test
    void saysWhenEvenTheFewestAreTooDear() {
        List<Choice> choices = List.of(choice(2, 10, 1), choice(3, 5));
        assertThat(Allotment.leastCents(choices)).isEqualTo(35);
        assertThat(Allotment.within(34, choices)).isEmpty();
        assertThat(Allotment.within(35, choices).orElseThrow()).containsExactly(2, 3);
    }
}
