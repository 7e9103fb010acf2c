package platecall.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * How far a copy has come on one way through its recipe, and what its clock shows. What is put together keeps the courses of
 * all that is in it, for each may be the first to ask that it be thrown away.
 *
 * @param stays so far, in order
 * @param at until when it has been followed
 * @param minutes between the limits since it was cooked last, or since it was begun
 * @param warm whether it was hot when its temperature was last held
 * @param cooling minutes out since it was last hot, while it has not been cold
 * @param reached when the minutes reached the most allowed, if they did since it was cooked last
 * @param discard from when it must not be eaten whatever is done with it later, if ever
 */
record Course(
        List<Stay> stays,
        Moment at,
        int minutes,
        boolean warm,
        int cooling,
        Optional<Moment> reached,
        Optional<Moment> discard) {

    static Course begun(Moment at) {
        return new Course(List.of(), at, 0, false, 0, Optional.empty(), Optional.empty());
    }

    /** Goes on to {@code until}, which is not earlier; nothing happens if it is no later. */
    Course stay(Profile profile, Stay.Where where, String what, Moment until) {
        if (!until.isAfter(at)) {
            return this;
        }
        List<Stay> more = new ArrayList<>(stays);
        more.add(new Stay(where, what, new Span(at, until)));
        List<Stay> on = List.copyOf(more);
        return switch (where) {
            case OUT -> out(profile, on, until);
            case COLD -> new Course(on, until, minutes, false, 0, reached, cooledTooSlowly(profile));
            case HOT, HEATED -> new Course(on, until, minutes, true, 0, reached, discard);
        };
    }

    private Course out(Profile profile, List<Stay> on, Moment until) {
        int passed = at.minutesUntil(until);
        int left = mostMinutes(profile) - minutes;
        Optional<Moment> now =
                reached.isPresent() || left >= passed ? reached : Optional.of(at.plus(Math.max(0, left)));
        return new Course(on, until, minutes + passed, warm, warm ? cooling + passed : 0, now, discard);
    }

    /** Hot food that comes into the cold has to have got through the first cooling stage by then. */
    private Optional<Moment> cooledTooSlowly(Profile profile) {
        if (!warm || discard.isPresent() || profile.cooling().isEmpty()) {
            return discard;
        }
        Limit most = profile.cooling().get(0).minutes();
        return most.allows(cooling) ? discard : Optional.of(at.plus(most.mostWhole() - cooling));
    }

    /** Cooked through: the clock starts anew. What stood too long before, raw or not, is not saved by it. */
    Course cooked() {
        return new Course(stays, at, 0, true, 0, Optional.empty(), earlier(discard, reached));
    }

    /** Minutes between the limits that the profile allows, after hot or after cold food as it was held last. */
    int mostMinutes(Profile profile) {
        return (warm ? profile.outHot() : profile.outCold()).mostWhole();
    }

    /** Those courses that can still be the first to ask for anything, each once. */
    static List<Course> thatMatter(List<Course> courses) {
        List<Course> kept = new ArrayList<>();
        for (Course course : courses) {
            if (kept.stream().noneMatch(other -> other.covers(course))) {
                kept.removeIf(course::covers);
                kept.add(course);
            }
        }
        return kept;
    }

    /** Whether this one, at the same time, asks for all that the other asks for, now and later. */
    private boolean covers(Course other) {
        return at.equals(other.at)
                && warm == other.warm
                && minutes >= other.minutes
                && cooling >= other.cooling
                && earlier(reached, other.reached).equals(reached)
                && earlier(discard, other.discard).equals(discard);
    }

    private static Optional<Moment> earlier(Optional<Moment> one, Optional<Moment> other) {
        return one.isPresent() && other.isPresent()
                ? Optional.of(Moment.earlier(one.get(), other.get()))
                : one.or(() -> other);
    }

    /** The last moment at which it may be eaten, if it stands out from the end of what was followed. */
    Moment discardBy(Profile profile) {
        Moment clock = reached.orElseGet(() -> at.plus(mostMinutes(profile) - minutes));
        return discard.map(other -> Moment.earlier(other, clock)).orElse(clock);
    }
}
