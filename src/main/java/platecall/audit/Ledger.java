package platecall.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** A day and a plan of it side by side: who is meant by each name, which work serves which copy. */
final class Ledger {

    private final Day day;
    private final Plan plan;
    private final Words words;
    private final Map<String, Setup> setups;
    private final Map<String, Dish> dishes;
    private final Map<String, Need> needs;
    private final Map<String, Map<String, Step>> steps = new HashMap<>();
    private final Map<String, Station> stations;
    private final Map<String, Person> people;
    private final Map<String, PlannedCopy> copies;
    private final Map<String, List<Work>> workOf = new LinkedHashMap<>();
    private final Map<String, List<Step>> recipes = new HashMap<>();

    Ledger(Day day, Plan plan) {
        this.day = day;
        this.plan = plan;
        words = new Words(day.facts().zone(), day.facts().date());
        setups = byName(day.setups(), Setup::id);
        dishes = byName(day.dishes(), Dish::id);
        needs = byName(day.needs(), Need::key);
        stations = byName(day.stations(), Station::id);
        people = byName(day.people(), Person::id);
        copies = byName(plan.copies(), PlannedCopy::id);
        for (Step step : day.steps()) {
            steps.computeIfAbsent(step.dish(), dish -> new HashMap<>()).putIfAbsent(step.id(), step);
        }
        for (Work work : plan.work()) {
            for (String copy : work.copies()) {
                workOf.computeIfAbsent(copy, id -> new ArrayList<>()).add(work);
            }
        }
    }

    private static <T> Map<String, T> byName(List<T> things, Function<T, String> name) {
        return things.stream()
                .collect(Collectors.toMap(name, Function.identity(), (first, second) -> first, LinkedHashMap::new));
    }

    Day day() {
        return day;
    }

    Plan plan() {
        return plan;
    }

    Words words() {
        return words;
    }

    /** Whether a work had begun when the plan was made: then its times, hands and stations aren't the plan's choice. */
    boolean hasBegun(Work work) {
        return plan.hasBegun(work.span().start());
    }

    /** When the plan was made, if these copies were all shot by then. */
    Optional<Moment> shotBy(List<PlannedCopy> shown) {
        return plan.asOf().filter(now -> shown.stream().allMatch(copy -> plan.isShot(day, copy)));
    }

    /** The part of a span that was still to come when the plan was made. */
    Optional<Span> stillToCome(Span span) {
        Moment from = plan.asOf().map(now -> Moment.later(now, span.start())).orElse(span.start());
        return from.isBefore(span.end()) ? Optional.of(new Span(from, span.end())) : Optional.empty();
    }

    Optional<Station> station(String id) {
        return Optional.ofNullable(stations.get(id));
    }

    Optional<Person> person(String id) {
        return Optional.ofNullable(people.get(id));
    }

    Optional<PlannedCopy> copy(String id) {
        return Optional.ofNullable(copies.get(id));
    }

    Optional<Need> need(PlannedCopy copy) {
        return Optional.ofNullable(needs.get(copy.need()));
    }

    Setup setup(Need need) {
        return setups.get(need.setup());
    }

    Dish dish(Need need) {
        return dishes.get(need.dish());
    }

    Optional<Dish> dish(Work work) {
        return Optional.ofNullable(dishes.get(work.dish()));
    }

    /** Copies of needs that the day has, made or not. */
    List<PlannedCopy> knownCopies() {
        return plan.copies().stream().filter(copy -> need(copy).isPresent()).toList();
    }

    /** Copies that the plan says are made, of needs that the day has. */
    List<PlannedCopy> madeCopies() {
        return knownCopies().stream().filter(PlannedCopy::made).toList();
    }

    List<PlannedCopy> madeFor(Need need) {
        return madeCopies().stream()
                .filter(copy -> copy.need().equals(need.key()))
                .toList();
    }

    /** When a copy is wanted at camera, from the day alone. */
    CameraTime cameraTime(PlannedCopy copy) {
        Need need = need(copy).orElseThrow();
        return CameraTime.of(setup(need), need, Math.max(1, copy.number()));
    }

    /** The step that a work does, if it is one of the recipe. */
    Optional<Step> step(Work work) {
        return work.kind() == Work.Kind.STEP ? step(work.dish(), work.step()) : Optional.empty();
    }

    private Optional<Step> step(String dish, String id) {
        return Optional.ofNullable(steps.getOrDefault(dish, Map.of()).get(id));
    }

    /** The steps that a copy of a need goes through. */
    List<Step> recipe(Need need) {
        return recipes.computeIfAbsent(need.key(), key -> day.stepsTo(need.dish(), need.stage()));
    }

    /** Everything done for a copy. */
    List<Work> work(PlannedCopy copy) {
        return workOf.getOrDefault(copy.id(), List.of());
    }

    /** Every time that a step of the recipe is done for a copy; once in a sound plan. */
    List<Work> work(PlannedCopy copy, String step) {
        return work(copy).stream()
                .filter(work -> work.kind() == Work.Kind.STEP && work.step().equals(step))
                .toList();
    }

    List<Work> carries(PlannedCopy copy) {
        return work(copy).stream()
                .filter(work -> work.kind() == Work.Kind.CARRY)
                .toList();
    }

    /** The first copy that a work serves and that the day has a need for. */
    Optional<Need> need(Work work) {
        return work.copies().stream()
                .flatMap(id -> copy(id).stream())
                .flatMap(copy -> need(copy).stream())
                .findFirst();
    }

    /** When a copy must wait in the storage of a work's step, if at all: to the latest start of what comes next. */
    Optional<Span> waiting(Work work, PlannedCopy copy) {
        Optional<Step> step = step(work);
        Optional<Need> need = need(copy);
        boolean waits = need.isPresent()
                && step.isPresent()
                && step.get().waitsIn().isPresent()
                && dish(need.get()).storageUnits() > 0;
        if (!waits) {
            return Optional.empty();
        }
        Moment end = work.span().end();
        Moment until = end;
        for (Work next : work(copy)) {
            boolean follows = next.kind() == Work.Kind.CARRY
                    ? need.get().stage().equals(work.step())
                    : step(next)
                            .map(then -> then.predecessors().contains(work.step()))
                            .orElse(false);
            if (follows) {
                until = Moment.later(until, next.span().start());
            }
        }
        return until.isAfter(end) ? Optional.of(new Span(end, until)) : Optional.empty();
    }

    /** When a made copy occupies the storage in which it waits for its release, and that storage. */
    Optional<Held> held(PlannedCopy copy) {
        Need need = need(copy).orElseThrow();
        Dish dish = dish(need);
        Optional<Station> station = dish.heldIn().flatMap(this::station);
        if (!copy.made() || station.isEmpty() || dish.storageUnits() == 0) {
            return Optional.empty();
        }
        Moment leaves = CameraTime.leaves(setup(need), need, copy.number());
        Moment arrives = copy.ready().orElse(leaves);
        Moment from = Moment.later(day.horizon().start(), Moment.later(leaves, arrives));
        Moment until = Moment.earlier(day.horizon().end(), day.releaseOf(setup(need)));
        return from.isBefore(until)
                ? Optional.of(new Held(station.get(), dish.storageUnits(), new Span(from, until)))
                : Optional.empty();
    }

    /** Units of a storage that a used copy takes up until it may be struck. */
    record Held(Station station, int units, Span span) {}

    /** Whether noise of a work is heard on set: its step is noisy, and no station that it uses stands out of earshot. */
    boolean disturbsSet(Work work) {
        List<String> at = work.stations().stream().map(StationHold::station).toList();
        return step(work).map(step -> day.disturbsSet(step, at)).orElse(false);
    }

    /** Units of stations that a work's step needs and that the work does not hold; 0 in a sound plan. */
    int missingUnits(Work work) {
        List<StationUse> uses = step(work).map(Step::stations).orElse(List.of());
        Map<String, Integer> held = new HashMap<>();
        for (StationHold hold : work.stations()) {
            held.merge(hold.station(), hold.units(), Integer::sum);
        }
        return missingUnits(uses, held);
    }

    /** The least units that can be missing, whichever of the stations that serve as well is taken for each use. */
    private static int missingUnits(List<StationUse> uses, Map<String, Integer> held) {
        if (uses.isEmpty()) {
            return 0;
        }
        StationUse use = uses.get(0);
        List<StationUse> others = uses.subList(1, uses.size());
        int least = use.units() + missingUnits(others, held);
        for (String station : use.anyOf()) {
            int units = held.getOrDefault(station, 0);
            if (units >= use.units()) {
                held.put(station, units - use.units());
                least = Math.min(least, missingUnits(others, held));
                held.put(station, units);
            }
        }
        return least;
    }

    /** {@code Onion tart #1 for setup 4A}, with the part if it is not the hero. */
    String name(PlannedCopy copy) {
        return shortName(copy) + " for setup " + copy.setup();
    }

    /** {@code Onion tart #1}, with the part if it is not the hero. */
    String shortName(PlannedCopy copy) {
        return name(copy.dish()) + " #" + copy.number()
                + (copy.part().equals(Part.HERO.word()) ? "" : " (" + copy.part() + ")");
    }

    /** A dish's name as printed. */
    String name(String dish) {
        return Optional.ofNullable(dishes.get(dish)).map(Dish::name).orElse(dish);
    }

    /** {@code fry of Onion tart #1 for setup 4A}; of a batch the first copy and how many more. */
    String name(Work work) {
        String first = work.copies().isEmpty()
                ? name(work.dish())
                : copy(work.copies().get(0))
                        .map(this::name)
                        .orElse(work.copies().get(0));
        int others = work.copies().size() - 1;
        return work.step() + " of " + first + (others > 0 ? " and " + Words.copies(others) + " more" : "");
    }
}
