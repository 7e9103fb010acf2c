package platecall.day;

import java.util.Optional;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * One camera position with its takes.
 *
 * @param id short name, unique
 * @param scene scene number or name; may be empty
 * @param shot what the shot is; may be empty
 * @param place where it is shot
 * @param call the minute its first take should roll
 * @param lighting when stand-ins must be on set; empty: at the call
 * @param takesLikely takes expected, at least 1
 * @param takesWorst takes in a bad case (90th percentile), at least {@code takesLikely}
 * @param cycleMinutes minutes from one roll to the next, 1 to 1440
 * @param rollingMinutes minutes that a take rolls, 0 to {@code cycleMinutes}
 * @param silent whether the set needs silence while it rolls
 * @param release when its food may be struck
 * @param weight how much a late minute of this setup counts, at least 1
 * @param takesShot what is shot of it already; empty: nothing
 */
public record Setup(
        String id,
        String scene,
        String shot,
        String place,
        Moment call,
        Optional<Moment> lighting,
        int takesLikely,
        int takesWorst,
        int cycleMinutes,
        int rollingMinutes,
        boolean silent,
        Release release,
        int weight,
        Optional<TakesShot> takesShot) {

    /**
     * Takes of a setup that are shot.
     *
     * @param takes how many, 0 to those at worst, 500 at most
     * @param next when the next one rolls; empty: as if none had slipped
     */
    public record TakesShot(int takes, Optional<Moment> next) {

        public TakesShot {
            Demand.that(takes >= 0 && takes <= 500, "takes shot must be from 0 to 500", takes);
        }
    }

    public Setup {
        Demand.text(id, "setup");
        Demand.text(place, "place");
        Demand.that(takesLikely >= 1, "takes likely must be at least 1", takesLikely);
        Demand.that(takesWorst >= takesLikely, "takes at worst must be at least takes likely", takesWorst);
        Demand.that(takesWorst <= 500, "takes at worst must be at most 500", takesWorst);
        Demand.that(
                cycleMinutes >= 1 && cycleMinutes <= 1440, "take cycle must be from 1 to 1440 minutes", cycleMinutes);
        Demand.that(
                rollingMinutes >= 0 && rollingMinutes <= cycleMinutes,
                "rolling minutes must be from 0 to the take cycle",
                rollingMinutes);
        Demand.that(weight >= 1 && weight <= 1000, "weight must be from 1 to 1000", weight);
        int already = takesShot.map(TakesShot::takes).orElse(0);
        Demand.that(already <= takesWorst, "takes shot must be at most takes at worst", already);
    }

    /** How many of its takes are shot, 0 to those at worst. */
    public int countShot() {
        return takesShot.map(TakesShot::takes).orElse(0);
    }

    /** When take {@code number}, counted from 0, rolls if nothing slips from now on; takes that are shot rolled as called. */
    public Moment rollOf(int number) {
        Moment asCalled = call.plus((long) number * cycleMinutes);
        // a next take before the call is told by the check, and can't be reckoned with
        Optional<Moment> next = takesShot.flatMap(TakesShot::next).map(at -> Moment.later(at, call));
        if (next.isEmpty()) {
            return asCalled;
        }
        return number < countShot()
                ? Moment.earlier(asCalled, next.get())
                : next.get().plus((long) (number - countShot()) * cycleMinutes);
    }

    /** When the first take rolls that isn't shot; the last one if all are. */
    public Moment nextRoll() {
        return rollOf(Math.min(countShot(), takesWorst - 1));
    }

    /** From the first roll to the end of the last take cycle at worst. */
    public Span shooting() {
        return new Span(call, rollOf(takesWorst - 1).plus(cycleMinutes));
    }

    /** Whether all of its takes at worst are shot, or would be by now. */
    public boolean isOver(Moment now) {
        return countShot() >= takesWorst || !shooting().end().isAfter(now);
    }
}
