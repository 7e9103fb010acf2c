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
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * Follows each copy that someone eats and that needs time and temperature controlled through the plan, and adds up its
 * minutes between the limits, over all steps and takes: on counters and racks, on the way, on set. In a fridge, a freezer or
 * a hot hold that is open, in an oven and on a burner the clock stands still; a step whose core temperature cooks or heats it through sets
 * the clock to zero. It knows no thermometer: food counts as between the limits whenever nothing holds its temperature.
 * Each branch of a recipe keeps its own clock to the end, and the first to run out counts for the whole.
 */
public final class SafetyClock {

    /** A work and the courses of all that is in it at its end. */
    private record Done(Work work, List<Course> courses) {}

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
        return read(day, plan, true);
    }

    /**
     * The same of those that nobody is to eat, though somebody may, and that must not be eaten any more before their last take has
     * been rolled.
     */
    public static List<ClockReading> ofOnlySeenTooLong(Day day, Plan plan) {
        return read(day, plan, false).stream().filter(ClockReading::over).toList();
    }

    private static List<ClockReading> read(Day day, Plan plan, boolean eaten) {
        Optional<Profile> profile = profile(day);
        if (profile.isEmpty()) {
            return List.of();
        }
        SafetyClock clock = new SafetyClock(day, profile.get());
        List<ClockReading> readings = new ArrayList<>();
        for (Served served : Served.of(day, plan)) {
            if (served.dish().timeTemperatureControlled() && served.eaten() == eaten) {
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
        for (Step step : served.order().steps()) {
            boolean rawBefore = served.order().rawBefore(step);
            for (Work work : served.work(step)) {
                List<Course> courses = before(served, step.predecessors(), work, done).stream()
                        .map(course -> work(step, work, course, rawBefore, kind))
                        .toList();
                done.computeIfAbsent(step.id(), id -> new ArrayList<>()).add(new Done(work, courses));
            }
        }
        List<Done> plated = done.getOrDefault(served.need().stage(), List.of());
        if (plated.isEmpty()) {
            return Optional.empty();
        }
        List<Course> courses = plated.get(plated.size() - 1).courses();
        for (Work carry : served.carries()) {
            courses = before(served, List.of(served.need().stage()), carry, done).stream()
                    .map(course -> course.stay(
                            profile, Stay.Where.OUT, "carry", carry.span().end()))
                    .toList();
        }
        courses = courses.stream()
                .map(course -> course.stay(profile, Stay.Where.OUT, "on set", served.lastBite()))
                .toList();
        Course longest = courses.stream()
                .max(Comparator.comparingInt(course -> course.minutes() - course.mostMinutes(profile)))
                .orElseThrow();
        return Optional.of(new ClockReading(
                served.copy(),
                longest.stays(),
                longest.minutes(),
                longest.mostMinutes(profile),
                longest.warm(),
                discardBy(courses),
                served.firstBite()));
    }

    private Moment discardBy(List<Course> courses) {
        return courses.stream()
                .map(course -> course.discardBy(profile))
                .reduce(Moment::earlier)
                .orElseThrow();
    }

    /** The courses that lead to the start of a work, at least one. */
    private List<Course> before(Served served, List<String> steps, Work work, Map<String, List<Done>> done) {
        List<Course> courses = new ArrayList<>();
        for (String step : steps) {
            for (Done earlier : done.getOrDefault(step, List.of())) {
                courses.addAll(waited(served, earlier, work.span().start()));
            }
        }
        return courses.isEmpty() ? List.of(Course.begun(work.span().start())) : Course.thatMatter(courses);
    }

    /** Waits in its stores as the plan has it, and outside of them. */
    private List<Course> waited(Served served, Done earlier, Moment until) {
        List<Course> courses = earlier.courses();
        List<Storing> stored = earlier.work().storage().stream()
                .filter(storing -> storing.copy().equals(served.copy().id()))
                .sorted(Comparator.comparing(Storing::span))
                .toList();
        for (Storing storing : stored) {
            Moment in = Moment.earlier(until, storing.span().start());
            Moment out = Moment.earlier(until, storing.span().end());
            courses = courses.stream()
                    .map(course -> kept(
                            course.stay(profile, Stay.Where.OUT, "waits", in),
                            storing.station(),
                            storing.station(),
                            out))
                    .toList();
            discardBy.merge(storing, discardBy(courses), Moment::earlier);
        }
        return courses.stream()
                .map(course -> course.stay(profile, Stay.Where.OUT, "waits", until))
                .toList();
    }

    /** Stays in a store until {@code out}; while that is closed, it counts as out. */
    private Course kept(Course course, String store, String what, Moment out) {
        Stay.Where held = held(store);
        if (held == Stay.Where.OUT) {
            return course.stay(profile, held, what, out);
        }
        String closed = (what.equals(store) ? "" : what + ", ") + store + " closed";
        Course on = course;
        for (Span open : day.hoursOf(stations.get(store))) {
            on = on.stay(profile, Stay.Where.OUT, closed, Moment.earlier(out, open.start()))
                    .stay(profile, held, what, Moment.earlier(out, open.end()));
        }
        return on.stay(profile, Stay.Where.OUT, closed, out);
    }

    private Stay.Where held(String station) {
        return held(
                Optional.ofNullable(stations.get(station)).map(Station::kind).orElse(Station.Kind.OTHER));
    }

    static Stay.Where held(Station.Kind store) {
        return switch (store) {
            case FRIDGE, FREEZER -> Stay.Where.COLD;
            case HOT_HOLD -> Stay.Where.HOT;
            default -> Stay.Where.OUT;
        };
    }

    private Course work(Step step, Work work, Course before, boolean rawBefore, FoodKind kind) {
        Moment end = work.span().end();
        Optional<String> store = work.stations().stream()
                .map(StationHold::station)
                .filter(station -> held(station) != Stay.Where.OUT)
                .findFirst();
        Course after = heats(step, work)
                ? before.stay(profile, Stay.Where.HEATED, step.id(), end)
                : store.map(in -> kept(before, in, step.id(), end))
                        .orElseGet(() -> before.stay(profile, Stay.Where.OUT, step.id(), end));
        return cooksThrough(profile, step, work.span().minutes(), rawBefore, kind) ? after.cooked() : after;
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
