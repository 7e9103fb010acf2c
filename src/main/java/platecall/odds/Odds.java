package platecall.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Prices;
import platecall.day.Setup;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.units.Moment;

/**
 * How sure a plan is, by rehearsing it many times with minutes as they fall: see {@link Rehearsal}.
 *
 * @param runs rehearsals
 * @param all chance that every setup is ready at its call, 0 to 1
 * @param points what late minutes of every copy for these setups, and those off its sure peak, come to on average; a plan's own are
 *     reckoned as if every step took its likely minutes
 * @param setups each setup that wants food and isn't shot, in order of call
 */
public record Odds(int runs, double all, double points, List<OfSetup> setups) {

    /** Rehearsals after which a chance is known to within 2 points, 19 times in 20 (Massart 1990: 4612 are enough). */
    public static final int RUNS = 5_000;

    /** Of all rehearsals in which a setup isn't ready at its call, those in which a step must have run over to be named. */
    private static final double LEAST_SHARE = 0.1;

    private static final int MOST_CAUSES = 3;
    /** Keeps a share from being rounded to another number by the error in its last digits. */
    private static final double ROUNDING = 1e-9;

    /**
     * A setup.
     *
     * @param setup its id
     * @param call when its first take should roll
     * @param atCall chance that everything for the first take is at camera at the call, 0 to 1
     * @param atPeak chance that it rolls at the call, each hero at its peak and nothing kept waiting too long
     * @param everyTake chance that every copy of it is at camera when it is due
     * @param halfBy when the first take is ready in half of all rehearsals; empty if something for it is never made
     * @param promisedBy when it is in as many as the day promises
     * @param waits minutes that the crew waits on average, beyond the call
     * @param causes steps that ran over in rehearsals in which it was late and held it up, most frequent first
     */
    public record OfSetup(
            String setup,
            Moment call,
            double atCall,
            double atPeak,
            double everyTake,
            Optional<Moment> halfBy,
            Optional<Moment> promisedBy,
            double waits,
            List<Cause> causes) {}

    /**
     * A step that makes a setup late.
     *
     * @param dish the dish's id
     * @param step the step's id
     * @param share of the rehearsals in which the setup was late, those in which the step ran over and held it up, 0 to 1
     */
    public record Cause(String dish, String step, double share) {}

    /**
     * When a dish surely looks its best: what is off that costs points, in rehearsals as by the plan.
     *
     * @param fromMinutes minutes after plate-up, 0 or more
     * @param toMinutes when that is over, at least {@code fromMinutes}
     */
    public record SurePeak(int fromMinutes, int toMinutes) {}

    /**
     * Rehearses a plan.
     *
     * @param day the day that it is for
     * @param plan a plan that keeps the day's rules; of another the odds mean little
     * @param surePeaks when each dish surely looks its best, by its id
     * @param runs rehearsals, 1 or more
     * @param seed the same seed gives the same chances
     */
    public static Odds of(Day day, Plan plan, Map<String, SurePeak> surePeaks, int runs, long seed) {
        Rehearsal rehearsal = new Rehearsal(day, plan, seed);
        List<Tally> tallies = day.setups().stream()
                .filter(setup -> !plan.isShot(setup) && day.wantsFood(setup.id()))
                .sorted(Comparator.comparing(Setup::nextRoll))
                .map(setup -> new Tally(day, plan, surePeaks, setup, rehearsal, runs))
                .toList();
        int allReady = 0;
        for (int run = 0; run < runs; run++) {
            rehearsal.next();
            boolean ready = true;
            for (Tally tally : tallies) {
                ready &= tally.count(run);
            }
            allReady += ready ? 1 : 0;
        }
        return new Odds(
                runs,
                (double) allReady / runs,
                tallies.stream().mapToDouble(tally -> tally.points).sum() / runs,
                tallies.stream().map(Tally::result).toList());
    }

    /** The odds of a setup, if it wants food. */
    public Optional<OfSetup> of(String setup) {
        return setups.stream().filter(it -> it.setup().equals(setup)).findFirst();
    }

    /** Setups that are ready at their calls less often than promised, the least sure one first. */
    public List<OfSetup> lessSureThan(double promise) {
        return setups.stream()
                .filter(setup -> setup.atCall() < promise)
                .sorted(Comparator.comparingDouble(OfSetup::atCall))
                .toList();
    }

    /** {@code 42 %}, rounded down: never 0 % of what is possible or 100 % of what isn't certain. */
    public static String percent(double chance) {
        int whole = (int) Math.floor(100 * chance + ROUNDING);
        if (whole == 0 && chance > 0) {
            return "under 1 %";
        }
        return 100 * chance > 99 + ROUNDING && chance < 1 ? "over 99 %" : whole + " %";
    }

    /** Minutes, beyond the likely ones, that a step takes at most with the given chance, 0 to 1; negative if it is small. */
    public static int minutesOver(Step step, double chance) {
        return StepMinutes.of(step).at(chance) - step.minutesLikely();
    }

    /**
     * A copy in all rehearsals: its last steps, its peak and its use in minutes after it is plated, and what its minutes late and off
     * its sure peak cost.
     */
    private record Plate(
            int stage,
            int last,
            long due,
            int show,
            boolean hero,
            int peakFrom,
            int peakTo,
            SurePeak surePeak,
            int usableTo,
            long lateMinute,
            long offPeakMinute) {

        /** Points for being there from one minute on, plated at another. */
        long points(long ready, long plated) {
            long roll = Math.max(due, ready);
            long late = Math.max(0, ready - due) + Math.max(0, roll + show - (plated + usableTo));
            long offPeak = Math.max(0, plated + surePeak.fromMinutes() - roll)
                    + Math.max(0, roll + show - (plated + surePeak.toMinutes()));
            return late * lateMinute + offPeak * offPeakMinute;
        }
    }

    /** What the rehearsals come to for one setup. */
    private static final class Tally {

        private final Setup setup;
        private final Rehearsal rehearsal;
        private final List<Plate> firstTake = new ArrayList<>();
        private final List<Plate> all = new ArrayList<>();
        private final double promise;
        private final boolean made;
        private final boolean firstMade;
        private final int[] lateBy;
        private int atCall;
        private int atPeak;
        private int everyTake;
        private int late;
        private long points;
        private final Map<List<String>, Integer> causes = new LinkedHashMap<>();

        Tally(Day day, Plan plan, Map<String, SurePeak> surePeaks, Setup setup, Rehearsal rehearsal, int runs) {
            this.setup = setup;
            this.rehearsal = rehearsal;
            lateBy = new int[runs];
            promise = day.facts().promise();
            boolean every = true;
            boolean first = true;
            for (PlannedCopy copy : plan.copies()) {
                Optional<Need> need = day.needs().stream()
                        .filter(it -> it.setup().equals(setup.id()) && it.key().equals(copy.need()))
                        .findFirst();
                if (need.isEmpty() || plan.isShot(day, copy)) {
                    continue;
                }
                boolean forFirst = CameraTime.isOfNextSet(setup, need.get(), copy.number());
                Optional<Plate> plate =
                        plate(day, copy, need.get(), surePeaks.get(need.get().dish()));
                every &= plate.isPresent();
                first &= plate.isPresent() || !forFirst;
                plate.ifPresent(all::add);
                plate.filter(it -> forFirst).ifPresent(firstTake::add);
            }
            made = every;
            firstMade = first && !firstTake.isEmpty();
        }

        private Optional<Plate> plate(Day day, PlannedCopy copy, Need need, SurePeak surePeak) {
            int stage = rehearsal.work(copy.id(), need.stage());
            int carry = day.minutesToCamera(need) > 0 ? rehearsal.carry(copy.id()) : stage;
            if (!copy.made()
                    || stage < 0
                    || carry < 0
                    || copy.plated().isEmpty()
                    || copy.peakFrom().isEmpty()
                    || copy.peakTo().isEmpty()
                    || copy.usableTo().isEmpty()) {
                return Optional.empty();
            }
            Moment plated = copy.plated().orElseThrow();
            Prices prices = day.facts().prices();
            return Optional.of(new Plate(
                    stage,
                    carry,
                    copy.due().epochMinute(),
                    copy.showMinutes(),
                    need.part() == Part.HERO,
                    plated.minutesUntil(copy.peakFrom().orElseThrow()),
                    plated.minutesUntil(copy.peakTo().orElseThrow()),
                    surePeak,
                    plated.minutesUntil(copy.usableTo().orElseThrow()),
                    (long) setup.weight() * prices.lateMinute(),
                    (long) need.looksWeight() * prices.offPeakMinute()));
        }

        /** Counts the last rehearsal; returns whether the first take was ready at its call. */
        boolean count(int run) {
            all.forEach(plate -> points += plate.points(rehearsal.end[plate.last()], rehearsal.end[plate.stage()]));
            if (!firstMade) {
                return false;
            }
            long call = setup.nextRoll().epochMinute();
            Plate latest = firstTake.get(0);
            boolean peak = true;
            for (Plate plate : firstTake) {
                latest = rehearsal.end[plate.last()] > rehearsal.end[latest.last()] ? plate : latest;
                long plated = rehearsal.end[plate.stage()];
                peak &= rehearsal.keptWaits(plate.last())
                        && (!plate.hero() || plated + plate.peakFrom() <= call && call < plated + plate.peakTo());
            }
            lateBy[run] = (int) (rehearsal.end[latest.last()] - call);
            boolean ready = lateBy[run] <= 0;
            atCall += ready ? 1 : 0;
            atPeak += ready && peak ? 1 : 0;
            everyTake += made && all.stream().allMatch(plate -> rehearsal.end[plate.last()] <= plate.due()) ? 1 : 0;
            if (!ready) {
                late++;
                blame(latest);
            }
            return ready;
        }

        private void blame(Plate latest) {
            Set<List<String>> steps = new LinkedHashSet<>();
            rehearsal.ranOver(latest.last(), work -> steps.add(List.of(work.dish(), work.step())));
            steps.forEach(step -> causes.merge(step, 1, Integer::sum));
        }

        OfSetup result() {
            int runs = lateBy.length;
            Arrays.sort(lateBy);
            return new OfSetup(
                    setup.id(),
                    setup.nextRoll(),
                    (double) atCall / runs,
                    (double) atPeak / runs,
                    (double) everyTake / runs,
                    by(0.5),
                    by(promise),
                    firstMade
                            ? Arrays.stream(lateBy)
                                    .map(minutes -> Math.max(0, minutes))
                                    .average()
                                    .orElse(0)
                            : 0,
                    causes.entrySet().stream()
                            .map(it -> new Cause(
                                    it.getKey().get(0), it.getKey().get(1), (double) it.getValue() / Math.max(1, late)))
                            .filter(cause -> cause.share() >= LEAST_SHARE)
                            .sorted(Comparator.comparingDouble(Cause::share)
                                    .reversed()
                                    .thenComparing(Cause::dish)
                                    .thenComparing(Cause::step))
                            .limit(MOST_CAUSES)
                            .toList());
        }

        private Optional<Moment> by(double share) {
            int index = Math.max(0, (int) Math.ceil(share * lateBy.length - ROUNDING) - 1);
            return firstMade ? Optional.of(setup.nextRoll().plus(lateBy[index])) : Optional.empty();
        }
    }
}
