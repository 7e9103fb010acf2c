package platecall.copies;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import platecall.copies.CopyCount.Basis;
import platecall.copies.CopyCount.Row;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Trouble;
import platecall.day.Use;
import platecall.units.Money;

/**
 * How many copies of every need of a day.
 *
 * <p>Copies needed: takes are random ({@link Takes}); {@code t} takes use up {@code plates x sets(t)} copies, where a set
 * serves one take (fresh each take), n takes (lasts n takes) or all (topped up, stand-in); extra looks come on top; each
 * copy made is whole at camera with chance {@code (1 - breakage)(1 - spoilage)}, on its own.
 *
 * <p>What is missing is made again in whole sets, {@code ceil((needed - n) / plates)} of them: half a set lets no take roll.
 * Number made, if the day gives a crew cost: the n that minimises {@code Co n + (Cu + plates x Co) E[sets missing]}. Cu, a set
 * missing: the minutes to bring another one to camera times crew cost a minute. Co, a copy: its food and its hands-on
 * minutes. Of numbers that lie whole sets apart that is the least with {@code P(needed <= n) >= Cu / (Cu + plates x Co)}, the
 * critical ratio of the newsvendor problem (Arrow, Harris and Marschak, "Optimal inventory policy", Econometrica 19, 1951).
 * Without a crew cost: what takes at worst and extra looks use up, more by what breaks on average. A number fixed by hand
 * stands. A food budget that is too small for all of it is shared out by {@link Allotment}: least expected cost, or without a
 * crew cost fewest waiting minutes; nobody gets less than the plates of a first take.
 *
 * @param counts one for each need, in sheet order
 * @param food food money of all chosen copies
 * @param budget the day's food budget, if there is one
 * @param troubles what can't be had, for the reader of the day sheets
 */
public record CopyCounts(List<CopyCount> counts, Money food, Optional<Money> budget, List<Trouble> troubles) {

    /** Most copies of one need, the same as a number fixed by hand can be. */
    public static final int MOST_COPIES = 1000;

    /** Numbers of needed copies above this count as this; it only blunts averages far above {@link #MOST_COPIES}. */
    private static final int MOST_NEEDED = 4 * MOST_COPIES;

    /** The table goes on a set beyond the best number, and until running out is rarer than this. */
    private static final double RARE = 0.001;

    public CopyCounts {
        counts = List.copyOf(counts);
        troubles = List.copyOf(troubles);
    }

    /** The counts for a day whose needs name setups, dishes and steps that exist. */
    public static CopyCounts of(Day day) {
        List<Draft> drafts = new ArrayList<>();
        for (Need need : day.needs()) {
            drafts.add(Draft.of(day, need));
        }
        List<Trouble> troubles = new ArrayList<>();
        for (int row = 0; row < drafts.size(); row++) {
            if (drafts.get(row).best > MOST_COPIES) {
                troubles.add(tooManyWanted(row, drafts.get(row)));
            }
        }
        List<Allotment.Choice> choices = drafts.stream().map(Draft::choice).toList();
        Optional<Money> budget = day.facts().foodBudget();
        int[] chosen = drafts.stream().mapToInt(Draft::most).toArray();
        if (budget.isPresent()) {
            Optional<int[]> allotted = Allotment.within(budget.get().cents(), choices);
            if (allotted.isEmpty()) {
                troubles.add(budgetTooSmall(day, budget.get(), new Money(Allotment.leastCents(choices))));
            }
            chosen = allotted.orElseGet(
                    () -> drafts.stream().mapToInt(Draft::least).toArray());
        }
        List<CopyCount> counts = new ArrayList<>();
        Money food = Money.ZERO;
        for (int i = 0; i < chosen.length; i++) {
            counts.add(drafts.get(i).count(chosen[i]));
            food = food.plus(counts.get(i).food());
        }
        return new CopyCounts(counts, food, budget, troubles);
    }

    /**
     * The copies to make for a need, 1 or more.
     *
     * @throws IllegalArgumentException if the day has no such need
     */
    public int copiesOf(Need need) {
        return counts.stream()
                .filter(count -> count.need().equals(need))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no need [" + need.key() + "]"))
                .chosen();
    }

    /** The copies that a need of a day would get if food cost nothing, 1 or more. */
    public static int wantedOf(Day day, Need need) {
        return Draft.of(day, need).most();
    }

    /** Expected cost of the whole day: all copies, and waiting crew, food and hands for those that run out. */
    public Optional<Money> expectedCost() {
        return counts.stream()
                .map(count -> count.chosenRow().expectedCost())
                .reduce(Optional.of(Money.ZERO), (sum, cost) -> sum.flatMap(so -> cost.map(so::plus)));
    }

    /** A chance as a reader wants it: {@code 9.3 %}, never a flat 0 or 100 that is none. */
    public static String percent(double chance) {
        if (chance > 0 && chance < 0.0005) {
            return "under 0.1 %";
        }
        if (chance < 1 && chance >= 0.9995) {
            return "over 99.9 %";
        }
        return String.format(Locale.ROOT, "%.1f %%", 100 * chance);
    }

    /** The chance with which a number of sets should be enough; a set missing 0 or more, one too many above 0, both in one unit. */
    static double criticalRatio(double missing, double tooMany) {
        return missing / (missing + tooMany);
    }

    private static Trouble tooManyWanted(int row, Draft draft) {
        return new Trouble(
                "needs",
                row,
                "dish",
                draft.need.dish(),
                "would want " + draft.best + " copies, but at most " + MOST_COPIES + " of a need can be planned",
                "Maybe the takes at worst or the plates per take are meant lower.");
    }

    /** @param cheapest food money of the fewest copies with which everything can be shot once; fixed numbers as fixed */
    private static Trouble budgetTooSmall(Day day, Money budget, Money cheapest) {
        String currency = day.facts().currency();
        return new Trouble(
                "day",
                -1,
                "food budget",
                budget.toString(),
                "can't buy one hero of each need (numbers fixed by hand as fixed): the cheapest is " + currency + " "
                        + cheapest,
                "Maybe raise the food budget by " + currency + " " + cheapest.minus(budget)
                        + ", or let plates last more takes.");
    }

    /** A need with everything known but the choice under the budget. */
    private static final class Draft {
        private final Setup setup;
        private final Need need;
        private final CountDistribution needed;
        private final Reset reset;
        private final String currency;
        private final Optional<Money> crewMinute;
        /** What a set costs in cents that is missing, by its waiting crew, and what one that is too many does. */
        private final double missing;

        private final double tooMany;
        private final int atWorst;
        private final int best;

        private Draft(Day day, Setup setup, Dish dish, Need need) {
            this.setup = setup;
            this.need = need;
            double survival = (1 - dish.breakage()) * (1 - dish.spoilage());
            this.needed = copiesNeeded(setup, need, survival);
            this.reset = Reset.of(day, setup, need);
            this.currency = day.facts().currency();
            this.crewMinute =
                    day.facts().crewCostPerMinute().filter(crew -> day.facts().knowsCrewCost());
            this.missing =
                    (double) reset.minutes() * crewMinute.map(Money::cents).orElse(0L);
            // a copy that costs nothing would be made without end
            this.tooMany = need.platesPerTake() * Math.max(1, reset.foodCents() + reset.handCents());
            this.atWorst = CameraTime.copiesFor(need, setup.takesWorst());
            this.best = crewMinute.isPresent() ? cheapest() : (int) Math.ceil(atWorst / survival - 1e-9);
        }

        static Draft of(Day day, Need need) {
            return new Draft(
                    day,
                    day.setup(need.setup())
                            .orElseThrow(() -> new IllegalArgumentException("no setup [" + need.setup() + "]")),
                    day.dish(need.dish())
                            .orElseThrow(() -> new IllegalArgumentException("no dish [" + need.dish() + "]")),
                    need);
        }

        private static CountDistribution copiesNeeded(Setup setup, Need need, double survival) {
            return Takes.fit(setup.takesLikely(), setup.takesWorst())
                    .counts()
                    .map(takes -> CameraTime.copiesFor(need, takes))
                    .madeToKeep(survival, MOST_NEEDED);
        }

        /** The cheapest number of the least that are sure enough, each with other copies beyond whole sets. */
        private int cheapest() {
            int enough = Math.max(need.platesPerTake(), needed.quantile(criticalRatio(missing, tooMany)));
            return IntStream.range(enough, enough + need.platesPerTake())
                    .boxed()
                    .min(Comparator.comparingDouble(this::expectedCents))
                    .orElseThrow();
        }

        int least() {
            return need.copies().orElse(need.platesPerTake());
        }

        int most() {
            return need.copies().orElse(Math.min(best, MOST_COPIES));
        }

        Allotment.Choice choice() {
            return new Allotment.Choice(
                    least(),
                    reset.foodCents(),
                    IntStream.rangeClosed(least(), most())
                            .mapToDouble(crewMinute.isPresent() ? this::expectedCents : this::waitingMinutes)
                            .toArray());
        }

        private double setsMissing(int copies) {
            return needed.expectedExcess(copies, need.platesPerTake());
        }

        private double waitingMinutes(int copies) {
            return reset.minutes() * setsMissing(copies);
        }

        private double expectedCents(int copies) {
            return tooMany * copies / need.platesPerTake() + (missing + tooMany) * setsMissing(copies);
        }

        CopyCount count(int chosen) {
            Basis basis = need.copies().isPresent()
                    ? Basis.FIXED_BY_HAND
                    : chosen < most()
                            ? Basis.FOOD_BUDGET
                            : crewMinute.isPresent() ? Basis.CRITICAL_RATIO : Basis.TAKES_AT_WORST;
            int rare = Math.max(most() + need.platesPerTake(), needed.quantile(1 - RARE));
            int last = Math.min(MOST_COPIES, rare);
            return new CopyCount(
                    setup,
                    need,
                    chosen,
                    basis,
                    why(chosen, basis),
                    IntStream.rangeClosed(Math.min(need.platesPerTake(), chosen), last)
                            .mapToObj(this::row)
                            .toList());
        }

        private Row row(int copies) {
            return new Row(
                    copies,
                    needed.chanceAbove(copies),
                    waitingMinutes(copies),
                    new Money(reset.foodCents()).times(copies),
                    crewMinute.map(crew -> new Money(Math.round(expectedCents(copies)))));
        }

        private String why(int chosen, Basis basis) {
            String runsOut = "runs out in " + percent(needed.chanceAbove(chosen)) + " of cases";
            if (basis == Basis.FIXED_BY_HAND) {
                return "Fixed by hand; " + runsOut + ".";
            }
            if (basis == Basis.FOOD_BUDGET) {
                return "The food budget allows " + chosen + " of " + most() + "; " + runsOut + ".";
            }
            if (basis == Basis.TAKES_AT_WORST) {
                return "Enough for " + setup.takesWorst() + " takes at worst, " + useInWords() + "; " + runsOut + ".";
            }
            String one = need.platesPerTake() > 1 ? "A set of " + need.platesPerTake() + " plates" : "One";
            return one + " too many costs " + currency + " " + new Money(Math.round(tooMany)) + ", one missing "
                    + currency
                    + " " + new Money(Math.round(missing)) + " (" + waitInWords() + "): worth "
                    + percent(criticalRatio(missing, tooMany)) + " certainty; " + runsOut + ".";
        }

        private String waitInWords() {
            return "crew waits " + reset.minutes() + " min"
                    + (reset.sameDay() ? "" : ", none can be made again that day");
        }

        private String useInWords() {
            String use = "fresh each take";
            if (CameraTime.setsFor(need, setup.takesWorst()) == 1) {
                use = "one set is enough";
            } else if (need.use() instanceof Use.LastsTakes lasts) {
                use = "a plate lasts " + lasts.takes();
            }
            return use
                    + (need.platesPerTake() > 1 ? ", " + need.platesPerTake() + " plates at a time" : "")
                    + (need.extraLooks() > 0 ? ", " + need.extraLooks() + " for extra looks" : "")
                    + (best > atWorst ? ", " + (best - atWorst) + " for what breaks or spoils" : "");
        }
    }
}
