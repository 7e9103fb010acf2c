package platecall.safety;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.StepOrder;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * Most waits that keep a copy within its {@link SafetyClock} wherever a plan puts it. Enough, not the least needed. Three
 * things bound the minutes in which nothing holds the food's temperature: those that the profile allows from when it was
 * cooked through to the last take; as many until it is heated up again, unless it was raw; and those of the first cooling
 * stage from when it was hot last until it is in the cold. What the longest way through the steps leaves of them is shared out
 * evenly among its waits. What these limits don't reach is a wait at camera of a copy that comes long before its
 * take, whose look lasts for hours.
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
    private final StepOrder order;
    private final FoodKind kind;
    /** The steps of a copy that have begun, as they happen; and now, if any have. */
    private final Map<String, Span> begun;

    private final Optional<Moment> now;
    private final Map<Wait, Integer> limits = new HashMap<>();

    private SafetyLimits(
            Day day, Profile profile, Need need, Dish dish, Map<String, Span> begun, Optional<Moment> now) {
        this.day = day;
        this.profile = profile;
        this.need = need;
        this.dish = dish;
        this.begun = begun;
        this.now = now;
        order = StepOrder.of(day, need);
        kind = Served.kind(day, dish, order.steps());
    }

    /** Empty if nobody eats it, if it is not time-and-temperature controlled, or if the day does not know all of it. */
    private static Optional<SafetyLimits> of(Day day, Need need) {
        return of(day, need, Map.of(), Optional.empty());
    }

    private static Optional<SafetyLimits> of(Day day, Need need, Map<String, Span> begun, Optional<Moment> now) {
        Optional<Dish> dish = day.dish(need.dish()).filter(Dish::timeTemperatureControlled);
        Optional<Profile> profile = SafetyClock.profile(day);
        return dish.isEmpty()
                        || profile.isEmpty()
                        || need.eatenBy().isEmpty()
                        || day.step(need.dish(), need.stage()).isEmpty()
                ? Optional.empty()
                : Optional.of(new SafetyLimits(day, profile.get(), need, dish.get(), begun, now));
    }

    /**
     * The waits that need a limit, each with its most minutes; none if nobody eats it, if it is not time-and-temperature
     * controlled, or if it can't be kept in time like this.
     *
     * @param usableMinutes minutes from plate-up for which its look may be shown
     */
    public static Map<Wait, Integer> mostWaits(Day day, Need need, int usableMinutes) {
        Optional<SafetyLimits> limits = of(day, need);
        limits.ifPresent(it -> it.shareAll(usableMinutes));
        return limits.map(it -> it.limits).orElse(Map.of());
    }

    /**
     * The same for a copy that is under way: what its clocks have left is shared out among the waits that aren't over, on top of what
     * they have lasted. Where there is a way to camera its look-life to come is not kept in reserve; the wait for that way has a share instead.
     *
     * @param begun the steps that have begun, as they happen
     * @param now when the rest is planned
     * @return empty if a clock has nothing left to share out
     */
    public static Optional<Map<Wait, Integer>> mostWaitsLeft(
            Day day, Need need, int usableMinutes, Map<String, Span> begun, Moment now) {
        Optional<SafetyLimits> limits = of(day, need, begun, Optional.of(now));
        boolean left = limits.map(it -> it.shareAll(usableMinutes)).orElse(true);
        return left ? Optional.of(limits.map(it -> it.limits).orElse(Map.of())) : Optional.empty();
    }

    /** Whether each clock has something to share out. */
    private boolean shareAll(int usableMinutes) {
        Optional<Setup> setup = day.setup(need.setup());
        return setup.isEmpty() || untilEaten(setup.get(), usableMinutes) & untilHeated() & untilCold();
    }

    /**
     * Hot food on its way into the cold, for which the first cooling stage must be over by then.
     *
     * @param hot step at whose end it was hot last; at its start, if it comes from a hot hold
     * @param held whether it comes from a hot hold
     * @param cold step at whose end it goes into a fridge or freezer; at its start, if it is done in one
     * @param inside whether it is done in one
     * @param most minutes between the two
     */
    public record Chill(Step hot, boolean held, Step cold, boolean inside, int most) {}

    /** What surely is hot and then cold, whichever stations are chosen; none where {@link #mostWaits} has no limits. */
    public static List<Chill> chills(Day day, Need need) {
        Set<Chill> chills = new LinkedHashSet<>();
        of(day, need).ifPresent(limits -> {
            for (Step step : limits.order.steps()) {
                if (limits.mayCool(step) && !limits.stands(step) && !limits.mayHeat(step)) {
                    limits.chills(step, step, true, chills);
                } else if (limits.heldAfter(step) == Stay.Where.COLD && limits.surelyOut(step)) {
                    limits.chills(step, step, false, chills);
                }
            }
        });
        return List.copyOf(chills);
    }

    private void chills(Step step, Step cold, boolean inside, Set<Chill> chills) {
        Optional<Limit> stage = profile.cooling().stream().findFirst().map(Cooling.Stage::minutes);
        if (stage.isEmpty()) {
            return;
        }
        int most = stage.get().mostWhole();
        for (Step before : order.before(step)) {
            Stay.Where held = heldAfter(before);
            if (held == Stay.Where.HOT) {
                chills.add(new Chill(step, true, cold, inside, most));
            } else if (held == Stay.Where.OUT && surelyOut(before)) {
                chills(before, cold, inside, chills);
            } else if (held == Stay.Where.OUT && surelyHeats(before)) {
                chills.add(new Chill(before, false, cold, inside, most));
            }
        }
    }

    /** Steps that leave the food hot and after which it goes straight into a fridge or freezer; none where {@link #mostWaits} has no limits. */
    public static List<Step> hotIntoCold(Day day, Need need) {
        return of(day, need).stream()
                .flatMap(limits -> limits.order.steps().stream()
                        .filter(step -> limits.surelyHeats(step) && limits.heldAfter(step) == Stay.Where.COLD))
                .toList();
    }

    private boolean surelyHeats(Step step) {
        return mayHeat(step) && !stands(step) && !mayCool(step);
    }

    private boolean surelyOut(Step step) {
        return stands(step) && !mayHeat(step) && !mayCool(step);
    }

    private int mostOut() {
        return Math.min(profile.outHot().mostWhole(), profile.outCold().mostWhole());
    }

    private boolean untilEaten(Setup setup, int usableMinutes) {
        int most = mostOut();
        int way = day.minutesToCamera(need);
        int seen = way + CameraTime.of(setup, need, 1).showMinutes();
        // a look that ends soon keeps the copy from waiting for camera; one that lasts does not
        boolean lookLimits = usableMinutes <= most / 2 && (way == 0 || now.isEmpty());
        Step stage = order.steps().get(order.steps().size() - 1);
        return share(
                most - (lookLimits ? Math.max(seen, usableMinutes) : seen),
                false,
                ways -> lookLimits || way == 0 ? ways.toEndOf(stage) : ways.throughWait(stage, CARRY));
    }

    private boolean untilHeated() {
        boolean left = true;
        for (Step step : order.steps()) {
            if (cooksThrough(step)) {
                left &= share(
                        mostOut(),
                        false,
                        ways -> order.before(step).stream()
                                .flatMapToInt(before -> ways.throughWait(before, step.id()).stream())
                                .max());
            }
        }
        return left;
    }

    private boolean untilCold() {
        if (profile.cooling().isEmpty()) {
            return true;
        }
        boolean left = true;
        int most = profile.cooling().get(0).minutes().mostWhole();
        for (Step step : order.steps()) {
            if (heldAfter(step) == Stay.Where.COLD) {
                left &= share(most, true, ways -> ways.toEndOf(step));
            }
            if (mayCool(step)) {
                left &= share(most, true, ways -> ways.toStartOf(step));
            }
        }
        return left;
    }

    /**
     * Limits the waits on some ways evenly, as much as the longest of them allows; a wait that the recipe limits to less leaves
     * more to the others, one that must be longer less.
     *
     * @return whether there is a minute for each
     */
    private boolean share(int most, boolean whileHot, Function<Ways, OptionalInt> longest) {
        int share = 0;
        for (int tooMuch = most + 1; tooMuch - share > 1; ) {
            int middle = (share + tooMuch) / 2;
            boolean fits = longest.apply(new Ways(whileHot, middle)).orElse(0) <= most;
            share = fits ? middle : share;
            tooMuch = fits ? tooMuch : middle;
        }
        if (share < 1) {
            return false;
        }
        Ways ways = new Ways(whileHot, share);
        longest.apply(ways);
        for (Wait wait : ways.waits) {
            if (ways.minutes(wait) < most(wait)) {
                limits.merge(wait, ways.minutes(wait), Math::min);
            }
        }
        return true;
    }

    private int minutes(Step step) {
        Span span = begun.get(step.id());
        return span == null ? step.minutesFor(step.batchMost().orElse(1)) : span.minutes();
    }

    private boolean isOver(Wait wait) {
        return begun.containsKey(wait.before()) && begun.containsKey(wait.after());
    }

    /** Minutes that a wait has lasted, until now if it isn't over. */
    private int lasted(Wait wait) {
        Span before = begun.get(wait.before());
        Span after = begun.get(wait.after());
        return before == null
                ? 0
                : Math.max(0, before.end().minutesUntil(after == null ? now.orElseThrow() : after.start()));
    }

    /** The wait's own limit in the recipe. */
    private int most(Wait wait) {
        return timed(wait).flatMap(Step::mostWait).orElse(Integer.MAX_VALUE);
    }

    private int least(Wait wait) {
        return timed(wait).map(Step::leastWait).orElse(0);
    }

    private Optional<Step> timed(Wait wait) {
        return day.step(need.dish(), wait.after()).filter(step -> step.after().contains(wait.before()));
    }

    /** The longest ways through the recipe in minutes out, and the waits that lie on them. */
    private final class Ways {

        private final boolean whileHot;
        private final int share;
        private final Set<Wait> waits = new HashSet<>();
        private final Map<Step, OptionalInt> ends = new HashMap<>();

        /**
         * @param whileHot whether they begin when the food was hot last and end in the cold, or begin when it was cooked
         * @param share minutes of each wait, where the recipe allows as many and asks for no more
         */
        private Ways(boolean whileHot, int share) {
            this.whileHot = whileHot;
            this.share = share;
        }

        private int minutes(Wait wait) {
            return isOver(wait) ? lasted(wait) : Math.max(least(wait), Math.min(lasted(wait) + share, most(wait)));
        }

        private OptionalInt toEndOf(Step step) {
            OptionalInt end = ends.get(step);
            if (end == null) {
                ends.put(step, OptionalInt.empty());
                end = whileHot ? sinceHot(step) : sinceCooked(step);
                ends.put(step, end);
            }
            return end;
        }

        private OptionalInt sinceCooked(Step step) {
            return cooksThrough(step) ? OptionalInt.of(0) : done(step);
        }

        private OptionalInt sinceHot(Step step) {
            OptionalInt on = stands(step) && !cooksThrough(step) ? done(step) : OptionalInt.empty();
            return mayHeat(step) ? OptionalInt.of(on.orElse(0)) : on;
        }

        private OptionalInt done(Step step) {
            OptionalInt start = toStartOf(step);
            return stands(step) ? plus(start, SafetyLimits.this.minutes(step)) : start;
        }

        private OptionalInt toStartOf(Step step) {
            IntStream begun = !whileHot && step.predecessors().isEmpty() ? IntStream.of(0) : IntStream.empty();
            return IntStream.concat(
                            begun,
                            order.before(step).stream().flatMapToInt(before -> throughWait(before, step.id()).stream()))
                    .max();
        }

        private OptionalInt throughWait(Step before, String after) {
            OptionalInt end = toEndOf(before);
            Wait wait = new Wait(before.id(), after);
            // what may go on at once may never have been in there
            boolean surelyIn = whileHot && least(wait) > 0;
            return switch (heldAfter(before)) {
                case COLD -> surelyIn ? OptionalInt.empty() : end;
                case HOT, HEATED -> surelyIn || whileHot && end.isEmpty() ? OptionalInt.of(0) : end;
                case OUT -> end.isEmpty() ? end : out(end.getAsInt(), wait);
            };
        }

        private OptionalInt out(int end, Wait wait) {
            waits.add(wait);
            return OptionalInt.of(end + minutes(wait));
        }

        private static OptionalInt plus(OptionalInt one, int minutes) {
            return one.isEmpty() ? one : OptionalInt.of(one.getAsInt() + minutes);
        }
    }

    private boolean cooksThrough(Step step) {
        return SafetyClock.cooksThrough(profile, step, step.minutesLikely(), order.rawBefore(step), kind);
    }

    /** Whether nothing surely holds its temperature while the step is done. */
    private boolean stands(Step step) {
        return !hotCore(step) && step.stations().stream().noneMatch(use -> holds(use, warmOven(step)));
    }

    /** Whether it may come out of the step hot. */
    private boolean mayHeat(Step step) {
        return cooksThrough(step)
                || hotCore(step)
                || kinds(step).anyMatch(station -> switch (station) {
                    case HOT_HOLD -> true;
                    case OVEN, BURNERS -> !warmOven(step);
                    default -> false;
                });
    }

    /** Whether the step may be done in the cold. */
    private boolean mayCool(Step step) {
        return !hotCore(step)
                && kinds(step).anyMatch(station -> station == Station.Kind.FRIDGE || station == Station.Kind.FREEZER);
    }

    private boolean hotCore(Step step) {
        return step.coreCelsius().map(profile.hot()::allows).orElse(false);
    }

    private boolean warmOven(Step step) {
        return step.ovenCelsius().isPresent()
                && !profile.hot().allows(step.ovenCelsius().get());
    }

    private Stream<Station.Kind> kinds(Step step) {
        return step.stations().stream().flatMap(use -> use.anyOf().stream()).map(this::kindOf);
    }

    private boolean holds(StationUse use, boolean warmOven) {
        return use.anyOf().stream().map(this::kindOf).allMatch(station -> switch (station) {
            case FRIDGE, FREEZER, HOT_HOLD -> true;
            case OVEN, BURNERS -> !warmOven;
            default -> false;
        });
    }

    /** Where it waits after a step. */
    private Stay.Where heldAfter(Step step) {
        return step.waitsIn()
                .filter(station -> dish.storageUnits() > 0)
                .map(station -> SafetyClock.held(kindOf(station)))
                .orElse(Stay.Where.OUT);
    }

    private Station.Kind kindOf(String station) {
        return day.station(station).map(Station::kind).orElse(Station.Kind.OTHER);
    }
}
