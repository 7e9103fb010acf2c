package platecall.plan;

import java.util.List;
import java.util.Optional;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Part;
import platecall.day.Setup;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * A plan for a day: everything that a later command needs.
 *
 * @param day title of the day
 * @param dayDigest digest of the day it was made for, so that it is not used with another
 * @param version Platecall version that made it
 * @param seed random seed with which it was planned
 * @param moves moves that the search tried
 * @param asOf when it was made, if the day was under way: what begins before has happened, all else was planned then
 * @param kitchenCalls first minute of work in each span of kitchen hours that is used
 * @param copies every copy that is wanted, made or not
 * @param work every step, once for each copy or batch
 * @param breaks meal breaks
 * @param points what the plan costs in points, by kind
 * @param bound points that no plan can undercut, if one is known
 * @param verdict what the audit says
 */
public record Plan(
        String day,
        String dayDigest,
        String version,
        long seed,
        long moves,
        Optional<Moment> asOf,
        List<Moment> kitchenCalls,
        List<PlannedCopy> copies,
        List<Work> work,
        List<Break> breaks,
        Points points,
        Optional<Long> bound,
        Verdict verdict) {

    public Plan {
        kitchenCalls = List.copyOf(kitchenCalls);
        copies = List.copyOf(copies);
        work = List.copyOf(work);
        breaks = List.copyOf(breaks);
    }

    /** The same with the seed that gives it again: what searches side by side use follows from it. */
    public Plan withSeed(long given) {
        return new Plan(
                day,
                dayDigest,
                version,
                given,
                moves,
                asOf,
                kitchenCalls,
                copies,
                work,
                breaks,
                points,
                bound,
                verdict);
    }

    public Plan withVerdict(Verdict audited) {
        return new Plan(
                day, dayDigest, version, seed, moves, asOf, kitchenCalls, copies, work, breaks, points, bound, audited);
    }

    /** Whether what begins at a moment has happened, so that nothing can be planned about it any more. */
    public boolean hasBegun(Moment start) {
        return asOf.map(start::isBefore).orElse(false);
    }

    /** Whether a setup had been shot when the plan was made, so that nothing is made for it any more. */
    public boolean isShot(Setup setup) {
        return asOf.map(setup::isOver).orElse(false);
    }

    /** Whether nothing is made any more for the takes of a copy, since they had been shot when the plan was made. */
    public boolean isShot(Day day, PlannedCopy copy) {
        return asOf.isPresent()
                && day.needs().stream()
                        .filter(need -> need.key().equals(copy.need()))
                        .anyMatch(need -> day.setup(need.setup())
                                .filter(setup ->
                                        isShot(setup) || CameraTime.isShot(setup, need, Math.max(1, copy.number())))
                                .isPresent());
    }

    /**
     * One copy.
     *
     * @param id unique: {@code setup/dish/stage/part#number}
     * @param need key of the need
     * @param setup the setup's id
     * @param dish the dish's id
     * @param stage step after which it is wanted
     * @param part word of the part: hero, stand-in, insert, background
     * @param number counted from 1 within its need
     * @param due when it is wanted at camera
     * @param showMinutes minutes from then (or from its arrival if late) in which the camera sees it
     * @param made false if the plan has no place for it; then the times below are empty
     * @param plated end of its last step in the kitchen, from which its look-life counts
     * @param ready when it is at camera
     * @param peakFrom when its peak begins; empty if not made
     * @param peakTo when its peak ends
     * @param usableTo when it can't be shown any more
     * @param lateMinutes minutes it comes late, and from the end of its use to the cut
     * @param offPeakMinutes minutes from the roll to its peak, and from the end of its peak to the cut
     * @param points what it costs in points: late and off-peak minutes, changes of hands
     * @param money what it costs in money, dish and ingredients
     * @param releasedAt when it may be struck
     * @param heldIn storage in which it waits for release, if any
     */
    public record PlannedCopy(
            String id,
            String need,
            String setup,
            String dish,
            String stage,
            String part,
            int number,
            Moment due,
            int showMinutes,
            boolean made,
            Optional<Moment> plated,
            Optional<Moment> ready,
            Optional<Moment> peakFrom,
            Optional<Moment> peakTo,
            Optional<Moment> usableTo,
            int lateMinutes,
            int offPeakMinutes,
            long points,
            Money money,
            Moment releasedAt,
            Optional<String> heldIn) {

        /** Far more than any need has: {@value} copies. */
        private static final int MOST_COPIES = 100_000;

        public PlannedCopy {
            if (number > MOST_COPIES) {
                throw new IllegalArgumentException("number must not be above " + MOST_COPIES + ": [" + number + "]");
            }
        }

        /** Whether somebody means it who notes something of a dish; what is left blank may be any. */
        public boolean isMeant(
                Optional<String> ofSetup, String ofDish, Optional<Part> ofPart, Optional<Integer> ofNumber) {
            return dish.equals(ofDish)
                    && ofSetup.map(setup::equals).orElse(true)
                    && ofPart.map(it -> it.word().equals(part)).orElse(true)
                    && ofNumber.map(it -> it == number).orElse(true);
        }
    }

    /**
     * A step that is done once: for one copy, or for the copies of a batch.
     *
     * @param id unique within the plan
     * @param kind {@code step} for a step of the recipe, {@code carry} for the way to camera
     * @param dish the dish's id
     * @param step the step's id; {@code carry} for the way to camera
     * @param copies ids of the copies it serves, at least one
     * @param span from start to end
     * @param stations stations used throughout
     * @param ovenCelsius oven temperature, if an oven is used at one
     * @param hands whose hands, when; an empty list if nobody's
     * @param storage where each copy waits afterwards, if in a storage
     */
    public record Work(
            String id,
            Kind kind,
            String dish,
            String step,
            List<String> copies,
            Span span,
            List<StationHold> stations,
            Optional<Integer> ovenCelsius,
            List<Hands> hands,
            List<Storing> storage) {

        /** Recipe step or the way to camera. */
        public enum Kind {
            STEP,
            CARRY
        }

        public Work {
            copies = List.copyOf(copies);
            stations = List.copyOf(stations);
            hands = List.copyOf(hands);
            storage = List.copyOf(storage);
        }

        /** What it does with one of its copies. */
        public CopyStep with(String copy) {
            return kind == Kind.CARRY ? CopyStep.toCamera(copy) : CopyStep.of(copy, step);
        }

        public Work withId(String other) {
            return new Work(other, kind, dish, step, copies, span, stations, ovenCelsius, hands, storage);
        }

        public Work withHands(List<Hands> others) {
            return new Work(id, kind, dish, step, copies, span, stations, ovenCelsius, others, storage);
        }

        /** The same for other copies, which wait afterwards as given. */
        public Work serving(List<String> others, List<Storing> waiting) {
            return new Work(id, kind, dish, step, others, span, stations, ovenCelsius, hands, waiting);
        }
    }

    /** Units of a station held throughout a step. */
    public record StationHold(String station, int units) {}

    /** A person's hands on something for a span. */
    public record Hands(String person, Span span) {}

    /** A copy that waits in a storage for a span, taking up units of it. */
    public record Storing(String copy, String station, int units, Span span) {}

    /** A person's meal break. */
    public record Break(String person, Span span) {}

    /**
     * Points of a plan by kind; see the day's prices.
     *
     * @param late late minutes times weights and price
     * @param offPeak minutes outside the peak times weights and price
     * @param kitchen minutes of open kitchen times price
     * @param handChanges changes of hands times price
     * @param moved minutes by which steps and meal breaks moved from a published plan, and what other hands and stations count, times price
     */
    public record Points(long late, long offPeak, long kitchen, long handChanges, long moved) {
        public long total() {
            return late + offPeak + kitchen + handChanges + moved;
        }
    }

    /**
     * What the audit found.
     *
     * @param breaches every broken rule
     * @param lateMinutes sum over copies, of setups that aren't shot
     * @param offPeakMinutes sum over the same
     * @param setups each setup that isn't shot, with its readiness
     */
    public record Verdict(List<Breach> breaches, int lateMinutes, int offPeakMinutes, List<Readiness> setups) {

        public Verdict {
            breaches = List.copyOf(breaches);
            setups = List.copyOf(setups);
        }

        /** No rule broken and nothing late. */
        public boolean sound() {
            return breaches.isEmpty() && lateMinutes == 0;
        }

        /**
         * Broken rules without which chances would tell how sure the plan is: those that aren't over, beside that something is not
         * made, which is told setup by setup.
         */
        public List<Breach> unsettling() {
            return breaches.stream()
                    .filter(breach ->
                            breach.rule() != Rule.COPIES && breach.over().isEmpty())
                    .toList();
        }
    }

    /**
     * Whether a setup is ready at its call.
     *
     * @param setup the setup's id
     * @param call when its first take should roll, or the next one if some are shot
     * @param ready when everything for that take is at camera; empty if something is not made
     * @param marginMinutes minutes from ready to call; negative if late
     * @param heroPeakTo until when the first hero is at its peak, if there is one
     * @param resetsQueued further takes, up to those at worst, for which every plate is made beside extra looks
     * @param nextResetAt when all that the take after it brings in anew is at camera; empty if it brings in nothing
     * @param words verdict in words
     */
    public record Readiness(
            String setup,
            Moment call,
            Optional<Moment> ready,
            int marginMinutes,
            Optional<Moment> heroPeakTo,
            int resetsQueued,
            Optional<Moment> nextResetAt,
            String words) {

        /** Whether the first hero's peak is over when the first take rolls. */
        public boolean faded() {
            return ready.isPresent()
                    && heroPeakTo
                            .filter(peak -> !Moment.later(ready.get(), call).isBefore(peak))
                            .isPresent();
        }

        /** The same, told in other words. */
        public Readiness told(String otherWords) {
            return new Readiness(setup, call, ready, marginMinutes, heroPeakTo, resetsQueued, nextResetAt, otherWords);
        }
    }
}
