package platecall.audit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.day.CameraTime;
import platecall.day.Need;
import platecall.day.Prices;
import platecall.looks.LookLife;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.units.Moment;

/**
 * A made copy as the camera sees it, worked out from its work.
 *
 * @param copy the copy
 * @param need what it is for
 * @param plated end of its stage in the kitchen
 * @param ready when it is at camera
 * @param peakFrom when its peak begins
 * @param peakTo when its peak ends
 * @param usableTo when it can't be shown any more
 * @param behindMinutes minutes that it is ready after it is due
 * @param pastUseMinutes minutes from the end of its use to the cut, also those before the camera rolls
 * @param offPeakMinutes minutes from the roll to the time at which it surely looks its best, and from the end of that to
 *     the cut, also those in which the camera does not roll
 * @param handChanges people at it beyond the first
 */
record AtCamera(
        PlannedCopy copy,
        Need need,
        Moment plated,
        Moment ready,
        Moment peakFrom,
        Moment peakTo,
        Moment usableTo,
        int behindMinutes,
        int pastUseMinutes,
        int offPeakMinutes,
        int handChanges) {

    /**
     * Every copy that the plan says is made and whose way to camera is in it, by id.
     *
     * @param looks look-life of each dish, by its id
     */
    static Map<String, AtCamera> of(Ledger ledger, Map<String, LookLife> looks) {
        Map<String, AtCamera> seen = new LinkedHashMap<>();
        for (PlannedCopy copy : ledger.madeCopies()) {
            of(ledger, copy, looks).ifPresent(atCamera -> seen.putIfAbsent(copy.id(), atCamera));
        }
        return seen;
    }

    private static Optional<AtCamera> of(Ledger ledger, PlannedCopy copy, Map<String, LookLife> looks) {
        Need need = ledger.need(copy).orElseThrow();
        Optional<Moment> plated = end(ledger.work(copy, need.stage()));
        Optional<Moment> ready = ledger.day().minutesToCamera(need) > 0 ? end(ledger.carries(copy)) : plated;
        if (plated.isEmpty() || ready.isEmpty()) {
            return Optional.empty();
        }
        LookLife look = looks.get(need.dish());
        CameraTime camera = ledger.cameraTime(copy);
        Moment roll = Moment.later(camera.due(), ready.get());
        Moment cut = roll.plus(camera.showMinutes());
        Moment peakFrom = plated.get().plus(look.peakFromMinutes());
        Moment peakTo = plated.get().plus(look.peakToMinutes());
        Moment usableTo = plated.get().plus(look.usableToMinutes());
        return Optional.of(new AtCamera(
                copy,
                need,
                plated.get(),
                ready.get(),
                peakFrom,
                peakTo,
                usableTo,
                minutesOver(camera.due(), ready.get()),
                minutesOver(usableTo, cut),
                minutesOver(roll, plated.get().plus(look.surelyFromMinutes()))
                        + minutesOver(plated.get().plus(look.surelyToMinutes()), cut),
                handChanges(ledger, copy)));
    }

    private static Optional<Moment> end(List<Work> works) {
        return works.stream().map(work -> work.span().end()).findFirst();
    }

    /** Minutes by which {@code moment} is after {@code limit}; 0 if it is not. */
    private static int minutesOver(Moment limit, Moment moment) {
        return Math.max(0, limit.minutesUntil(moment));
    }

    private static int handChanges(Ledger ledger, PlannedCopy copy) {
        long people = ledger.work(copy).stream()
                .flatMap(work -> work.hands().stream())
                .map(Hands::person)
                // whoever has gone home for good doesn't count any more
                .filter(person ->
                        ledger.plan().asOf().isEmpty() || ledger.person(person).isPresent())
                .distinct()
                .count();
        return (int) Math.max(0, people - 1);
    }

    /** Minutes late, and past use until the cut. */
    int lateMinutes() {
        return behindMinutes + pastUseMinutes;
    }

    long latePoints(Ledger ledger, Prices prices) {
        return (long) lateMinutes() * ledger.setup(need).weight() * prices.lateMinute();
    }

    long offPeakPoints(Prices prices) {
        return (long) offPeakMinutes * need.looksWeight() * prices.offPeakMinute();
    }

    long handChangePoints(Prices prices) {
        return (long) handChanges * prices.handChange();
    }
}
