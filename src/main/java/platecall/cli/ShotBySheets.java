package platecall.cli;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Setup;
import platecall.day.Trouble;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.units.Moment;

/** What is shot by the sheets of a day under way, held against the time it is and the plan in hand: a slip of the pen would drop its food. */
final class ShotBySheets {

    private final Day day;
    private final Plan before;
    private final Moment now;
    private final ZoneId zone;
    private final List<Trouble> troubles = new ArrayList<>();

    ShotBySheets(Day day, Plan before, Moment now) {
        this.day = day;
        this.before = before;
        this.now = now;
        zone = day.facts().zone();
    }

    /** All that can't be meant, in the order of the sheet setups. */
    List<Trouble> troubles() {
        troubles.clear();
        for (Setup setup : day.setups()) {
            if (setup.countShot() > 0 && setup.call().isAfter(now)) {
                beforeItsCall(setup);
            } else if (isOverUnsaid(setup)) {
                before.verdict().setups().stream()
                        .filter(planned -> planned.setup().equals(setup.id()))
                        .forEach(planned -> over(setup, planned));
            }
        }
        return List.copyOf(troubles);
    }

    private void beforeItsCall(Setup setup) {
        tell(
                setup,
                "takes shot",
                String.valueOf(setup.countShot()),
                (setup.countShot() == 1 ? "take is shot" : "takes are shot") + ", but its call is "
                        + ReadyTable.dated(setup.call(), day) + " and it is " + ReadyTable.dated(now, day) + " now",
                "Maybe another row, or an earlier call.");
    }

    /** Whether a setup is over by its times alone, nobody having said that all takes are shot. */
    private boolean isOverUnsaid(Setup setup) {
        return setup.isOver(now) && setup.countShot() < setup.takesWorst();
    }

    /**
     * Of a setup that is over by its times: the plan in hand calls it later than now, or its new call, earlier than that, would be to
     * come one date later: a date is missing. Or its next take isn't the one that the plan in hand is for, and all that follow are over.
     * Or its food came only then: its call hasn't been moved.
     */
    private void over(Setup setup, Readiness planned) {
        boolean sameCall = setup.nextRoll().equals(planned.call());
        Optional<Moment> next = setup.takesShot().flatMap(Setup.TakesShot::next);
        if (next.isPresent() && !sameCall) {
            nextTakeIsOver(setup, next.get());
        } else if (planned.call().isAfter(now)
                || setup.call().isBefore(planned.call()) && isToCome(nextDate(setup.call()))) {
            callIsOver(setup, planned);
        } else if (sameCall) {
            planned.ready()
                    .filter(planned.call()::isBefore)
                    .filter(setup.shooting().end()::isBefore)
                    .ifPresent(late -> foodCameLater(setup, late));
        }
    }

    private void nextTakeIsOver(Setup setup, Moment next) {
        tell(
                setup,
                "next take",
                clock(next),
                "is over by now, and so are all takes after it, but by column takes shot " + setup.countShot() + " of "
                        + setup.takesWorst() + (setup.countShot() == 1 ? " is shot" : " are shot"),
                "Maybe a later time, or takes shot " + setup.takesWorst() + " if it is done.");
    }

    private void callIsOver(Setup setup, Readiness planned) {
        Moment nextDate = nextDate(setup.call());
        tell(
                setup,
                "call",
                clock(setup.call()),
                "is over by now, but the plan in hand calls setup " + setup.id() + " at " + clock(planned.call()),
                isToCome(nextDate)
                        ? "Maybe " + clock(nextDate) + ", or no row if it isn't shot any more."
                        : "Maybe no row if it isn't shot any more.");
    }

    private void foodCameLater(Setup setup, Moment late) {
        tell(
                setup,
                "call",
                clock(setup.call()),
                "is over by now, but by the plan in hand its food comes at " + clock(late) + " only",
                "Maybe " + clock(late) + ", or no row if it isn't shot any more.");
    }

    private void tell(Setup setup, String column, String value, String what, String wayOut) {
        troubles.add(new Trouble("setups", day.setups().indexOf(setup), column, value, what, wayOut));
    }

    private String clock(Moment moment) {
        return ReplanCommand.stamp(zone, moment);
    }

    private Moment nextDate(Moment call) {
        return Moment.of(call.in(zone).plusDays(1));
    }

    private boolean isToCome(Moment at) {
        return at.isAfter(now) && day.horizon().contains(at);
    }
}
