package platecall.safety;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.Use;

/**
 * Most waits that keep a copy within its {@link SafetyClock} wherever a plan puts it. Enough, not the least needed: what the
 * profile allows, less all steps and limited waits in which nothing holds the food's temperature since it was last cooked
 * through, less its time on set, is shared out evenly among the waits that the recipe leaves open. What these limits don't
 * reach is a wait at camera of a copy that comes long before its take, whose look lasts for hours.
 */
public final class SafetyLimits {

    /** The way to camera as the later end of a wait. */
    public static final String CARRY = "carry";

    /**
     * A wait between two steps.
     *
     * @param before step that has ended
     * @param after step that starts, or {@link #CARRY}
     */
    public record Wait(String before, String after) {}

    private final Day day;
    private final Profile profile;
    private final Need need;
    private final Dish dish;
    private final List<Step> steps;
    private final FoodKind kind;

    private SafetyLimits(Day day, Profile profile, Need need, Dish dish) {
        this.day = day;
        this.profile = profile;
        this.need = need;
        this.dish = dish;
        steps = day.stepsTo(need.dish(), need.stage());
        kind = Served.kind(day, dish, steps);
    }

    /**
     * The waits that need a limit, each with its most minutes; none if nobody eats it, if it is not time-and-temperature
     * controlled, or if it can't be kept in time like this.
     *
     * @param usableMinutes minutes from plate-up for which its look may be shown
     */
    public static Map<Wait, Integer> mostWaits(Day day, Need need, int usableMinutes) {
        Optional<Dish> dish = day.dish(need.dish()).filter(Dish::timeTemperatureControlled);
        Optional<Profile> profile = SafetyClock.profile(day);
        Optional<Setup> setup = day.setup(need.setup());
        if (dish.isEmpty()
                || profile.isEmpty()
                || setup.isEmpty()
                || need.eatenBy().isEmpty()) {
            return Map.of();
        }
        return new SafetyLimits(day, profile.get(), need, dish.get()).share(setup.get(), usableMinutes);
    }

    private Map<Wait, Integer> share(Setup setup, int usableMinutes) {
        int most = Math.min(profile.outHot().mostWhole(), profile.outCold().mostWhole());
        int way = day.minutesToCamera(need);
        int seen = way + shownMinutes(setup);
        // a look that ends soon keeps the copy from waiting for camera; one that lasts does not
        boolean lookLimits = usableMinutes <= most / 2;
        int left = most - (lookLimits ? Math.max(seen, usableMinutes) : seen);
        Set<String> exposed = exposed();
        List<Wait> open = new ArrayList<>();
        Map<Wait, Integer> least = new HashMap<>();
        for (Step step : steps) {
            if (!exposed.contains(step.id()) || cooksThrough(step)) {
                continue;
            }
            left -= stands(step) ? step.minutesFor(step.batchMost().orElse(1)) : 0;
            for (String before : step.predecessors()) {
                boolean timed = step.after().contains(before);
                Optional<Integer> limit = timed ? step.mostWait() : Optional.empty();
                if (standsAfter(before) && limit.isPresent()) {
                    left -= limit.get();
                } else if (standsAfter(before)) {
                    open.add(new Wait(before, step.id()));
                    least.put(new Wait(before, step.id()), timed ? step.leastWait() : 0);
                }
            }
        }
        if (!lookLimits && way > 0 && standsAfter(need.stage())) {
            open.add(new Wait(need.stage(), CARRY));
        }
        Map<Wait, Integer> shares = new HashMap<>();
        for (Wait wait : open) {
            int share = left / open.size();
            if (share >= Math.max(1, least.getOrDefault(wait, 0))) {
                shares.put(wait, share);
            }
        }
        return shares;
    }

    private int shownMinutes(Setup setup) {
        return need.use() instanceof Use.ToppedUp
                ? setup.shooting().minutes()
                : CameraTime.of(setup, need, 1).showMinutes();
    }

    /** Steps whose minutes, or whose waits, can still be on the clock at camera. */
    private Set<String> exposed() {
        Set<String> exposed = new HashSet<>(Set.of(need.stage()));
        for (int i = steps.size() - 1; i >= 0; i--) {
            Step step = steps.get(i);
            if (exposed.contains(step.id()) && !cooksThrough(step)) {
                exposed.addAll(step.predecessors());
            }
        }
        return exposed;
    }

    private boolean cooksThrough(Step step) {
        boolean rawBefore = step.predecessors().isEmpty()
                || steps.stream()
                        .anyMatch(before -> before.raw() && step.predecessors().contains(before.id()));
        return SafetyClock.cooksThrough(profile, step, step.minutesLikely(), rawBefore, kind);
    }

    /** Whether nothing surely holds its temperature while the step is done. */
    private boolean stands(Step step) {
        boolean core = step.coreCelsius().map(profile.hot()::allows).orElse(false);
        boolean warmOven = step.ovenCelsius().isPresent()
                && !profile.hot().allows(step.ovenCelsius().get());
        return !core && step.stations().stream().noneMatch(use -> holds(use, warmOven));
    }

    private boolean holds(StationUse use, boolean warmOven) {
        return use.anyOf().stream().map(this::kindOf).allMatch(station -> switch (station) {
            case FRIDGE, FREEZER, HOT_HOLD -> true;
            case OVEN, BURNERS -> !warmOven;
            default -> false;
        });
    }

    private boolean standsAfter(String step) {
        Optional<Station.Kind> store = day.step(need.dish(), step)
                .flatMap(Step::waitsIn)
                .filter(station -> dish.storageUnits() > 0)
                .map(this::kindOf);
        return store.isEmpty() || store.get() == Station.Kind.RACK;
    }

    private Station.Kind kindOf(String station) {
        return day.station(station).map(Station::kind).orElse(Station.Kind.OTHER);
    }
}
