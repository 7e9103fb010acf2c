package platecall.safety;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;

/**
 * Follows each copy that someone eats and that needs time and temperature controlled through the plan, and adds up its
 * minutes between the limits, over all steps and takes: on counters and racks, on the way, on set. In a fridge, a freezer or
 * a hot hold, in an oven and on a burner the clock stands still; a step whose core temperature cooks or heats it through sets
 * the clock to zero. It knows no thermometer: food counts as between the limits whenever nothing holds its temperature.
 */
public final class SafetyClock {

    /** Tells which work a {@link Course} is at the end of. */
    private record Done(Work work, Course course) {}

    private final Profile profile;
    private final Day day;
    private final Map<String, Station> stations = new HashMap<>();
    private final Map<Storing, Moment> discardBy = new HashMap<>();

    private SafetyClock(Day day, Profile profile) {
        this.day = day;
        this.profile = profile;
        day.stations().forEach(station -> stations.put(station.id(), station));
    }

    /** The profile of a day, if its name is known. */
    public static Optional<Profile> profile(Day day) {
        return Profile.named(day.facts().safetyProfile());
    }

    /**
     * The clock of every made copy that someone eats and whose dish is time-and-temperature controlled, in the plan's order;
     * none if the day's profile is unknown.
     */
    public static List<ClockReading> of(Day day, Plan plan) {
        Optional<Profile> profile = profile(day);
        if (profile.isEmpty()) {
            return List.of();
        }
        SafetyClock clock = new SafetyClock(day, profile.get());
        List<ClockReading> readings = new ArrayList<>();
        for (Served served : Served.of(day, plan)) {
            if (served.dish().timeTemperatureControlled() && served.eaten()) {
                clock.read(served).ifPresent(readings::add);
            }
        }
        return readings;
    }

    /**
     * For each stay in a store the last moment at which the food may be used if it stands out from its end; none for dishes
     * that are not time-and-temperature controlled.
     */
    public static Map<Storing, Moment> discardByOfStores(Day day, Plan plan) {
        Optional<Profile> profile = profile(day);
        if (profile.isEmpty()) {
            return Map.of();
        }
        SafetyClock clock = new SafetyClock(day, profile.get());
        Served.of(day, plan).stream()
                .filter(served -> served.dish().timeTemperatureControlled())
                .forEach(clock::read);
        return clock.discardBy;
    }

    private Optional<ClockReading> read(Served served) {
        FoodKind kind = served.kind(day);
        Map<String, List<Done>> done = new HashMap<>();
        for (Step step : served.recipe()) {
            for (Work work : served.work(step)) {
                Course course = work(step, work, before(served, step.predecessors(), work, done), kind);
                done.computeIfAbsent(step.id(), id -> new ArrayList<>()).add(new Done(work, course));
            }
        }
        List<Done> plated = done.getOrDefault(served.need().stage(), List.of());
        if (plated.isEmpty()) {
            return Optional.empty();
        }
        Course course = plated.get(plated.size() - 1).course();
        for (Work carry : served.carries()) {
            course = before(served, List.of(served.need().stage()), carry, done)
                    .stay(profile, Stay.Where.OUT, "carry", carry.span().end());
        }
        course = course.stay(profile, Stay.Where.OUT, "on set", served.lastBite());
        return Optional.of(new ClockReading(
                served.copy(),
                course.stays(),
                course.minutes(),
                course.mostMinutes(profile),
                course.warm(),
                course.discardBy(profile),
                served.firstBite()));
    }

    /** The course that leads to the start of a work: of all that comes before it the one with the most minutes. */
    private Course before(Served served, List<String> steps, Work work, Map<String, List<Done>> done) {
        List<Course> courses = new ArrayList<>();
        for (String step : steps) {
            for (Done earlier : done.getOrDefault(step, List.of())) {
                courses.add(waited(served, earlier, work.span().start()));
            }
        }
        Course longest = courses.stream()
                .max(Comparator.comparingInt((Course course) -> course.minutes() - course.mostMinutes(profile)))
                .orElse(Course.begun(work.span().start()));
        for (Course course : courses) {
            longest = longest.withDiscardOf(course);
        }
        return longest;
    }

    /** Waits in its stores as the plan has it, and outside of them. */
    private Course waited(Served served, Done earlier, Moment until) {
        Course course = earlier.course();
        List<Storing> stored = earlier.work().storage().stream()
                .filter(storing -> storing.copy().equals(served.copy().id()))
                .sorted(Comparator.comparing(Storing::span))
                .toList();
        for (Storing storing : stored) {
            course = course.stay(
                            profile,
                            Stay.Where.OUT,
                            "waits",
                            Moment.earlier(until, storing.span().start()))
                    .stay(
                            profile,
                            held(storing.station()),
                            storing.station(),
                            Moment.earlier(until, storing.span().end()));
            discardBy.merge(storing, course.discardBy(profile), Moment::earlier);
        }
        return course.stay(profile, Stay.Where.OUT, "waits", until);
    }

    private Stay.Where held(String station) {
        Station.Kind kind =
                Optional.ofNullable(stations.get(station)).map(Station::kind).orElse(Station.Kind.OTHER);
        return switch (kind) {
            case FRIDGE, FREEZER -> Stay.Where.COLD;
            case HOT_HOLD -> Stay.Where.HOT;
            default -> Stay.Where.OUT;
        };
    }

    private Course work(Step step, Work work, Course before, FoodKind kind) {
        Course after =
                before.stay(profile, where(step, work), step.id(), work.span().end());
        if (cooksThrough(profile, step, work.span().minutes(), before.raw(), kind)) {
            after = after.cooked();
        }
        return after.rawAfter(step.raw());
    }

    private Stay.Where where(Step step, Work work) {
        if (heats(step, work)) {
            return Stay.Where.HEATED;
        }
        return work.stations().stream()
                .map(hold -> held(hold.station()))
                .filter(where -> where != Stay.Where.OUT)
                .findFirst()
                .orElse(Stay.Where.OUT);
    }

    /** In an oven that is not merely warm, on a burner, or up to a core temperature that is hot. */
    private boolean heats(Step step, Work work) {
        boolean core = step.coreCelsius().map(profile.hot()::allows).orElse(false);
        boolean warmOven = step.ovenCelsius().isPresent()
                && !profile.hot().allows(step.ovenCelsius().get());
        boolean heater = work.stations().stream()
                .flatMap(hold -> Optional.ofNullable(stations.get(hold.station())).stream())
                .anyMatch(station -> station.kind() == Station.Kind.OVEN || station.kind() == Station.Kind.BURNERS);
        return core || heater && !warmOven;
    }

    /**
     * Whether a step sets the clock to zero: raw food is cooked as its kind asks for, cooked food heated up as the profile
     * asks for; the step's minutes bound the time that the core temperature is held.
     */
    static boolean cooksThrough(Profile profile, Step step, int minutes, boolean rawBefore, FoodKind kind) {
        if (step.coreCelsius().isEmpty()) {
            return false;
        }
        double celsius = step.coreCelsius().get();
        double seconds = 60.0 * minutes;
        return rawBefore ? profile.cooks(kind, celsius, seconds) : profile.reheats(celsius, seconds);
    }
}
