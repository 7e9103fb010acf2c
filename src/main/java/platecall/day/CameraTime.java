package platecall.day;

import platecall.units.Moment;

/**
 * When one copy of a need is wanted at camera, and for how long it is looked at.
 *
 * @param due the minute it must be at camera
 * @param showMinutes minutes from {@code due} in which the camera sees it, 0 or more
 */
public record CameraTime(Moment due, int showMinutes) {

    /**
     * Copy {@code number}, counted from 1, of {@code need} at {@code setup}. Copies beyond those that takes at worst use
     * up are spares, due with the last of those. Of takes that are shot a plate has no more to serve, if it has others.
     */
    public static CameraTime of(Setup setup, Need need, int number) {
        if (need.part() == Part.STAND_IN) {
            return new CameraTime(setup.lighting().orElse(setup.call()), 0);
        }
        int last = lastTakeOf(setup, need, number);
        int next = isShot(setup, need, number)
                ? takeOf(setup, need, number)
                : Math.max(takeOf(setup, need, number), setup.countShot());
        Moment due = setup.rollOf(next);
        return new CameraTime(due, due.minutesUntil(setup.rollOf(last)) + setup.rollingMinutes());
    }

    /** Whether all takes are shot that copy {@code number}, counted from 1, serves; a stand-in serves before the first. */
    public static boolean isShot(Setup setup, Need need, int number) {
        return need.part() == Part.STAND_IN
                ? setup.countShot() > 0
                : lastTakeOf(setup, need, number) < setup.countShot();
    }

    /** Whether no take that is still to be shot wants anything of a need. */
    public static boolean isDone(Setup setup, Need need) {
        return isShot(setup, need, copiesAtWorst(setup, need));
    }

    private static int lastTakeOf(Setup setup, Need need, int number) {
        int take = takeOf(setup, need, number);
        return take + Math.min(takesOf(need.use(), setup), setup.takesWorst() - take) - 1;
    }

    /**
     * When copy {@code number}, 1 or less is the first, leaves the set, if nothing is late: after its last take; a stand-in when
     * the hero is called, for it is lit until then.
     */
    public static Moment leaves(Setup setup, Need need, int number) {
        CameraTime seen = of(setup, need, Math.max(1, number));
        return need.part() == Part.STAND_IN ? Moment.later(seen.due, setup.call()) : seen.due.plus(seen.showMinutes);
    }

    /** Takes that a plate serves: topping it up gives back what was eaten, not its looks. */
    private static int takesOf(Use use, Setup setup) {
        return use instanceof Use.LastsTakes lasts
                ? lasts.takes()
                : use instanceof Use.ToppedUp ? setup.takesWorst() : 1;
    }

    /** The take, counted from 0, at which copy {@code number}, counted from 1, is first seen; 0 for stand-ins. */
    public static int takeOf(Setup setup, Need need, int number) {
        int set = Math.min((number - 1) / need.platesPerTake(), setsFor(need, setup.takesWorst()) - 1);
        return need.use() instanceof Use.LastsTakes lasts ? set * lasts.takes() : set;
    }

    /** Whether copy {@code number}, counted from 1, is beyond those that takes at worst use up: no take waits for it. */
    public static boolean isSpare(Setup setup, Need need, int number) {
        return number > copiesAtWorst(setup, need);
    }

    /** Whether copy {@code number} is of the set of plates that the next take shows: without it nothing rolls, where a spare may come later. */
    public static boolean isOfNextSet(Setup setup, Need need, int number) {
        int before = need.platesPerTake() * setsShot(setup, need);
        return !isDone(setup, need) && (before == 0 || number > before) && number <= before + need.platesPerTake();
    }

    /** Sets of plates that serve none but takes that are shot; the last set never counts. */
    public static int setsShot(Setup setup, Need need) {
        int sets = need.use() instanceof Use.LastsTakes lasts
                ? setup.countShot() / lasts.takes()
                : need.use() instanceof Use.ToppedUp ? 0 : setup.countShot();
        return Math.min(sets, setsFor(need, setup.takesWorst()) - 1);
    }

    /**
     * How many of so many copies, 0 or more, serve takes. The last ones are the extra looks, though each is due as if takes used
     * it up; the plates of the set that is shown first never are, for without them nothing rolls.
     */
    public static int forTakes(Need need, int copies) {
        return Math.max(Math.min(copies, need.platesPerTake()), copies - need.extraLooks());
    }

    /** Copies that are wanted for {@code takes} takes, 1 or more: what these use up, and extra looks beside it. */
    public static int copiesFor(Need need, int takes) {
        return need.platesPerTake() * setsFor(need, takes) + need.extraLooks();
    }

    /** Copies that the takes at worst use up, plates per take counted; stand-ins one set. */
    public static int copiesAtWorst(Setup setup, Need need) {
        return need.platesPerTake() * setsFor(need, setup.takesWorst());
    }

    /** Sets of plates that {@code takes} takes use up, 1 or more. */
    public static int setsFor(Need need, int takes) {
        if (need.part() == Part.STAND_IN || need.use() instanceof Use.ToppedUp) {
            return 1;
        }
        if (need.use() instanceof Use.LastsTakes lasts) {
            return (takes + lasts.takes() - 1) / lasts.takes();
        }
        return takes;
    }
}
