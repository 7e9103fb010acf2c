package platecall.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Place;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.units.Moment;
import platecall.units.Span;

/** The times of setups against each other, their places and kitchen hours. */
final class Calls {

    private static final int MOST_DAYS = 14;
    private static final long MOST_MINUTES = MOST_DAYS * 24L * 60;

    private final Day day;

    Calls(Day day) {
        this.day = day;
    }

    /** Whether all that happens lies within two weeks, so that it can be reckoned minute by minute. */
    boolean withinTwoWeeks() {
        long start = kitchenStart();
        long end = kitchenEnd();
        for (Setup setup : day.setups()) {
            start = Math.min(start, setup.call().epochMinute());
            end = Math.max(end, lastMinute(setup));
        }
        return end - start <= MOST_MINUTES;
    }

    private long kitchenStart() {
        return day.facts().kitchenHours().get(0).start().epochMinute();
    }

    private long kitchenEnd() {
        List<Span> hours = day.facts().kitchenHours();
        return hours.get(hours.size() - 1).end().epochMinute();
    }

    private static long lastMinute(Setup setup) {
        long end = setup.shooting().end().epochMinute();
        return setup.release() instanceof Release.At at
                ? Math.max(end, at.moment().epochMinute())
                : end;
    }

    void check(Findings found) {
        if (!withinTwoWeeks()) {
            tooFar(found);
        }
        for (int row = 0; row < day.setups().size(); row++) {
            Setup setup = day.setups().get(row);
            lighting(setup, row, found);
            place(setup, row, found);
            nextTake(setup, row, found);
            if (setup.release() instanceof Release.At at && at.moment().isBefore(setup.call())) {
                found.add(
                        Sheet.SETUPS,
                        row,
                        "release",
                        Wording.clock(day, at.moment()),
                        "is before its call at " + Wording.clock(day, setup.call()),
                        "Maybe at end, or "
                                + Wording.clock(day, setup.shooting().end()) + ".");
            }
        }
        releaseCircles(found);
    }

    private void tooFar(Findings found) {
        if (kitchenEnd() - kitchenStart() > MOST_MINUTES) {
            longHours(found);
            return;
        }
        boolean told = false;
        for (int row = 0; row < day.setups().size(); row++) {
            Setup setup = day.setups().get(row);
            long call = setup.call().epochMinute();
            boolean early = kitchenEnd() - call > MOST_MINUTES;
            boolean late = setup.shooting().end().epochMinute() - kitchenStart() > MOST_MINUTES;
            boolean lateRelease = !late && lastMinute(setup) - kitchenStart() > MOST_MINUTES;
            if (!early && !late && !lateRelease) {
                continue;
            }
            told = true;
            boolean nextTake = late
                    && call - kitchenStart() <= MOST_MINUTES
                    && setup.takesShot().flatMap(Setup.TakesShot::next).isPresent();
            Moment moment = lateRelease ? new Moment(lastMinute(setup)) : nextTake ? setup.nextRoll() : setup.call();
            found.add(
                    Sheet.SETUPS,
                    row,
                    lateRelease ? "release" : nextTake ? "next take" : "call",
                    Wording.clock(day, moment),
                    "lies more than " + MOST_DAYS + " days from kitchen hours "
                            + Wording.clock(day, day.facts().kitchenHours()),
                    "Maybe the year or the month is wrong.");
        }
        if (!told) {
            longHours(found);
        }
    }

    private void longHours(Findings found) {
        found.add(
                Sheet.DAY,
                -1,
                "kitchen hours",
                Wording.clock(day, day.facts().kitchenHours()),
                "reach over more than " + MOST_DAYS + " days with the calls and releases",
                "Maybe the year or the month is wrong, or it is more than one day.");
    }

    private void lighting(Setup setup, int row, Findings found) {
        Optional<Moment> late = setup.lighting().filter(lighting -> lighting.isAfter(setup.call()));
        if (late.isPresent()) {
            found.add(
                    Sheet.SETUPS,
                    row,
                    "lighting",
                    Wording.clock(day, late.get()),
                    "is after the call at " + Wording.clock(day, setup.call()),
                    "Maybe clear it: then stand-ins come at the call.");
        }
    }

    private void nextTake(Setup setup, int row, Findings found) {
        Optional<Moment> next = setup.takesShot().flatMap(Setup.TakesShot::next);
        if (next.isEmpty()) {
            return;
        }
        String value = Wording.clock(day, next.get());
        if (setup.countShot() == 0) {
            found.add(
                    Sheet.SETUPS,
                    row,
                    "next take",
                    value,
                    "comes after takes that are shot, but none is by column takes shot",
                    "Maybe say how many are, or move the call.");
        } else if (next.get().isBefore(setup.call())) {
            found.add(
                    Sheet.SETUPS,
                    row,
                    "next take",
                    value,
                    "is before the call at " + Wording.clock(day, setup.call()),
                    "Maybe another date or call.");
        } else if (setup.countShot() == setup.takesWorst()) {
            found.add(
                    Sheet.SETUPS,
                    row,
                    "next take",
                    value,
                    "is one more than the " + setup.takesWorst() + " takes at worst, and all of those are shot",
                    "Maybe more takes at worst, or no next take.");
        }
    }

    private void place(Setup setup, int row, Findings found) {
        List<Span> open = day.place(setup.place()).map(Place::hours).orElse(List.of());
        if (!open.isEmpty() && open.stream().noneMatch(span -> span.contains(setup.call()))) {
            found.add(
                    Sheet.SETUPS,
                    row,
                    "call",
                    Wording.clock(day, setup.call()),
                    "is outside the hours of place " + setup.place() + ": " + Wording.clock(day, open),
                    "Maybe longer hours for the place, or another place.");
        }
    }

    /** Setups that wait for each other with the release of their food, as a chain in which each waits for the next. */
    private void releaseCircles(Findings found) {
        List<String> told = new ArrayList<>();
        for (int row = 0; row < day.setups().size(); row++) {
            Setup first = day.setups().get(row);
            List<String> chain = new ArrayList<>();
            Optional<Setup> at = Optional.of(first);
            while (at.isPresent() && !chain.contains(at.get().id())) {
                chain.add(at.get().id());
                at = at.get().release() instanceof Release.After after ? day.setup(after.setup()) : Optional.empty();
            }
            boolean circle = at.isPresent() && at.get().id().equals(first.id());
            if (circle && !told.contains(first.id())) {
                told.addAll(chain);
                found.add(
                        Sheet.SETUPS,
                        row,
                        "release",
                        "after setup " + ((Release.After) first.release()).setup(),
                        chain.size() == 1
                                ? "is the setup itself"
                                : "closes a circle: " + String.join(" -> ", chain) + " -> " + first.id(),
                        "Maybe at end.");
            }
        }
    }
}
