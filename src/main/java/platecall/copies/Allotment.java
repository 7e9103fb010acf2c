package platecall.copies;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Shares a food budget out among needs so that the sum of expected costs is least.
 *
 * <p>Copies are added where they save most for their money, as many at once as that takes: of plates that are wanted two at a
 * time, two (marginal gain on the convex hull of each need's costs, exact wherever it stops; B. Fox, "Discrete optimization
 * via marginal analysis", Management Science 13, 1966). Money that is left because the next best ones no longer fit may be
 * spent better still; the last step finds that exactly, by keeping of all part answers only those that no other undercuts
 * and that can still beat the answer of the first step.
 */
final class Allotment {

    private static final double ROUNDING = 1e-9;

    private Allotment() {}

    /**
     * What may be chosen for one need.
     *
     * @param least fewest copies
     * @param centsEach food money of one copy, 0 or more
     * @param expectedCost expected cost of {@code least}, {@code least + 1}, ... copies, in cents or in minutes; least at the end
     */
    record Choice(int least, long centsEach, double[] expectedCost) {

        /** Food money of the fewest copies, in cents. */
        long leastCents() {
            return least * centsEach;
        }

        /** The first of the numbers after {@code step} that save most for each copy from there on. */
        int bestAfter(int step) {
            int best = step + 1;
            for (int to = step + 2; to < expectedCost.length; to++) {
                if (gainEach(step, to) > gainEach(step, best)) {
                    best = to;
                }
            }
            return best;
        }

        private double gainEach(int from, int to) {
            return (expectedCost[from] - expectedCost[to]) / (to - from);
        }
    }

    /** Food money for the fewest copies of everything. */
    static long leastCents(List<Choice> choices) {
        return choices.stream().mapToLong(Choice::leastCents).sum();
    }

    /** Copies of each need at the least expected cost within the budget; empty if it can't buy the fewest. */
    static Optional<int[]> within(long budgetCents, List<Choice> choices) {
        long left = budgetCents - leastCents(choices);
        if (left < 0) {
            return Optional.empty();
        }
        int[] more = new int[choices.size()];
        double price = byMarginalGain(left, choices, more);
        if (price > 0) {
            refine(left, choices, more, price);
        }
        int[] copies = new int[more.length];
        Arrays.setAll(copies, i -> choices.get(i).least() + more[i]);
        return Optional.of(copies);
    }

    /** Further copies of a need: from the {@code from}-th beyond its fewest to the {@code to}-th. */
    private record Next(int need, int from, int to, long cents, double gain) {
        /** Expected cost that they save for each cent of food money. */
        double gainPerCent() {
            return cents == 0 ? Double.POSITIVE_INFINITY : gain / cents;
        }
    }

    /** Fills {@code more}; returns the gain a cent of the first copies that did not fit, 0 if all did. */
    private static double byMarginalGain(long left, List<Choice> choices, int[] more) {
        List<Next> all = new ArrayList<>();
        for (int need = 0; need < choices.size(); need++) {
            Choice choice = choices.get(need);
            double[] cost = choice.expectedCost();
            for (int from = 0; from + 1 < cost.length; ) {
                int to = choice.bestAfter(from);
                all.add(new Next(need, from, to, (to - from) * choice.centsEach(), cost[from] - cost[to]));
                from = to;
            }
        }
        all.sort(Comparator.comparingDouble(Next::gainPerCent).reversed().thenComparingInt(Next::from));
        double price = 0;
        for (Next next : all) {
            if (next.cents() <= left && more[next.need()] == next.from()) {
                more[next.need()] = next.to();
                left -= next.cents();
            } else if (price == 0) {
                price = next.gainPerCent();
            }
        }
        return price;
    }

    /** A part answer for the first needs: what it costs, what it leaves to expect, and how it came about. */
    private record Part(Part before, int more, long cents, double expected) {}

    private static void refine(long left, List<Choice> choices, int[] more, double price) {
        double best = 0;
        for (int need = 0; need < more.length; need++) {
            best += choices.get(need).expectedCost()[more[need]];
        }
        double[] boundAfter = new double[more.length + 1];
        for (int need = more.length - 1; need >= 0; need--) {
            boundAfter[need] = boundAfter[need + 1] + priced(choices.get(need), price);
        }
        double toBeat = best - ROUNDING * Math.max(1, Math.abs(best));
        List<Part> parts = List.of(new Part(null, 0, 0, 0));
        for (int need = 0; need < more.length; need++) {
            Choice choice = choices.get(need);
            List<Part> longer = new ArrayList<>();
            for (Part part : parts) {
                for (int step = 0; step < choice.expectedCost().length; step++) {
                    long cents = part.cents() + step * choice.centsEach();
                    double expected = part.expected() + choice.expectedCost()[step];
                    double bound = expected + boundAfter[need + 1] - price * (left - cents);
                    if (cents <= left && bound < toBeat) {
                        longer.add(new Part(part, step, cents, expected));
                    }
                }
            }
            parts = undercutByNone(longer);
        }
        parts.stream()
                .filter(part -> part.expected() < toBeat)
                .min(Comparator.comparingDouble(Part::expected))
                .ifPresent(end -> {
                    Part part = end;
                    for (int need = more.length - 1; need >= 0; need--) {
                        more[need] = part.more();
                        part = part.before();
                    }
                });
    }

    /** Least of expected cost plus money at {@code price} a cent: no answer can do better for this need at that price. */
    private static double priced(Choice choice, double price) {
        double least = Double.POSITIVE_INFINITY;
        for (int step = 0; step < choice.expectedCost().length; step++) {
            least = Math.min(least, choice.expectedCost()[step] + price * step * choice.centsEach());
        }
        return least;
    }

    private static List<Part> undercutByNone(List<Part> parts) {
        parts.sort(Comparator.comparingLong(Part::cents).thenComparingDouble(Part::expected));
        List<Part> kept = new ArrayList<>();
        for (Part part : parts) {
            if (kept.isEmpty() || part.expected() < kept.get(kept.size() - 1).expected()) {
                kept.add(part);
            }
        }
        return kept;
    }
}
