package platecall.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Points;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.Arc;
import platecall.tasks.TaskNet.Copy;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Task;
import platecall.units.Moment;
import platecall.units.Span;

/** Writes what the search found as a {@link Plan}, in the stylist's words. */
final class PlanWriter {

    private final Day day;
    private final TaskNet net;
    private final List<Block> solved;
    private final Map<Integer, Work> begun = new HashMap<>();
    private final Map<Integer, Work> batches = new HashMap<>();
    /** What is done for one copy alone. */
    private final List<Work> alone = new ArrayList<>();

    private PlanWriter(Day day, TaskNet net, DayPlan solved) {
        this.day = day;
        this.net = net;
        this.solved = solved.blocks();
    }

    /** Every copy, done or not, in the order of the day. */
    private List<Block> copies() {
        List<Need> needs = day.needs();
        return Stream.concat(
                        solved.stream().limit(net.copies().size()),
                        Stream.concat(
                                net.past().done().stream().map(this::asItWas),
                                net.past().missed().stream().map(copy -> Block.ofCopy(copy, null))))
                .sorted(Comparator.comparingInt((Block block) ->
                                needs.indexOf(block.copy().recipe().need()))
                        .thenComparingInt(block -> block.copy().number()))
                .toList();
    }

    static Plan write(
            Day day, TaskNet net, DayPlan solved, String digest, String version, long seed, long moves, long bound) {
        PlanWriter writer = new PlanWriter(day, net, solved);
        List<PlannedCopy> copies = new ArrayList<>();
        long late = 0;
        long offPeak = 0;
        long handChanges = 0;
        long moved = writer.solved.stream()
                        .skip(net.copies().size())
                        .filter(Block::isPlaced)
                        .mapToLong(Block::movedMinutes)
                        .sum()
                * net.prices().movedMinute();
        for (Block block : writer.copies()) {
            copies.add(writer.copy(block.copy(), block));
            if (block.isPlacedCopy()) {
                late += block.latePoints();
                offPeak += block.offPeakPoints();
                handChanges +=
                        (long) block.placement().handChanges() * net.prices().handChange();
                moved += block.movedMinutes() * net.prices().movedMinute();
            }
        }
        long kitchen = 0;
        List<Moment> calls = new ArrayList<>();
        for (Span hours : day.facts().kitchenHours()) {
            Optional<Moment> first = writer.firstIn(hours);
            first.ifPresent(calls::add);
            kitchen += first.map(start -> start.minutesUntil(hours.end())).orElse(0)
                    * (long) net.prices().kitchenMinute();
        }
        boolean underWay = net.past() != TaskNet.Past.NONE;
        return new Plan(
                day.facts().title(),
                digest,
                version,
                seed,
                moves,
                underWay ? Optional.of(net.momentOf(net.past().now())) : Optional.empty(),
                calls,
                copies,
                writer.sortedWork(),
                writer.breaks(),
                new Points(late, offPeak, kitchen, handChanges, moved),
                Optional.of(bound + writer.pointsPast()),
                new Plan.Verdict(List.of(), 0, 0, List.of()));
    }

    private PlannedCopy copy(Copy copy, Block block) {
        Recipe recipe = copy.recipe();
        Setup setup = day.setup(recipe.need().setup()).orElseThrow();
        Dish dish = day.dish(recipe.need().dish()).orElseThrow();
        Placement placement = block.placement();
        boolean made = !placement.nowhere();
        int plated = made ? placement.end(recipe.plated()) : 0;
        int ready = made ? placement.end(recipe.last()) : 0;
        for (int i = 0; i < recipe.size(); i++) {
            if (made) {
                addWork(copy, placement, i, dish);
            } else if (recipe.tasks().get(i).hasBegun()) {
                // a later plan may go on from it
                addBegun(copy, recipe.tasks().get(i), List.of());
            }
        }
        return new PlannedCopy(
                copy.id(),
                recipe.need().key(),
                setup.id(),
                dish.id(),
                recipe.need().stage(),
                recipe.need().part().word(),
                copy.number(),
                net.momentOf(copy.due()),
                copy.show(),
                made,
                when(made, plated),
                when(made, ready),
                when(made, plated + recipe.look().peakFromMinutes()),
                when(made, plated + recipe.look().peakToMinutes()),
                when(made, plated + recipe.usableTo()),
                made ? recipe.lateMinutes(copy.due(), copy.show(), plated, ready) : 0,
                made ? recipe.offPeakMinutes(copy.due(), copy.show(), plated, ready) : 0,
                made ? points(block) : 0,
                day.foodCost(recipe.need()),
                day.releaseOf(setup),
                dish.heldIn());
    }

    private Optional<Moment> when(boolean made, int minute) {
        return made ? Optional.of(net.momentOf(minute)) : Optional.empty();
    }

    private Span span(int start, int end) {
        return new Span(net.momentOf(start), net.momentOf(end));
    }

    private void addWork(Copy copy, Placement placement, int i, Dish dish) {
        Task task = copy.recipe().tasks().get(i);
        List<Storing> storing = storing(copy, placement, i);
        if (task.hasBegun()) {
            addBegun(copy, task, storing);
            return;
        }
        List<StationHold> stations = task.modes().get(placement.way()[i]).stations();
        boolean inOven = stations.stream()
                .anyMatch(hold -> day.station(hold.station()).orElseThrow().kind() == Station.Kind.OVEN);
        Work work = new Work(
                "",
                task.step() == null ? Work.Kind.CARRY : Work.Kind.STEP,
                dish.id(),
                task.name(),
                List.of(copy.id()),
                span(placement.start()[i], placement.end(i)),
                stations,
                inOven && task.ovenCelsius() > 0 ? Optional.of(task.ovenCelsius()) : Optional.empty(),
                hands(task, placement, i),
                storing);
        if (placement.batch()[i] >= 0) {
            batches.merge(placement.batch()[i], work, PlanWriter::together);
        } else {
            alone.add(work);
        }
    }

    /** A task that has begun, as it was. */
    private void addBegun(Copy copy, Task task, List<Storing> storing) {
        Work work = net.past().begun().get(task.begun()).work();
        begun.merge(task.begun(), work.withId("").serving(List.of(copy.id()), storing), PlanWriter::together);
    }

    /** A work that is done for what another one was to be done for, too. */
    private static Work together(Work work, Work other) {
        return work.serving(concat(work.copies(), other.copies()), concat(work.storage(), other.storage()));
    }

    private Stream<Work> works() {
        return Stream.of(begun.values(), batches.values(), alone).flatMap(Collection::stream);
    }

    private List<Hands> hands(Task task, Placement placement, int i) {
        List<Hands> hands = new ArrayList<>();
        for (int part = 0; part < task.handParts().size(); part++) {
            HandPart handPart = task.handParts().get(part);
            int duration = placement.duration()[i];
            int from = placement.start()[i] + handPart.offset(duration);
            long people = part == 0 ? placement.handsA()[i] : placement.handsB()[i];
            for (int p = 0; p < net.people().size(); p++) {
                if ((people >>> p & 1) != 0) {
                    hands.add(new Hands(net.people().get(p), span(from, from + handPart.lengthIn(duration))));
                }
            }
        }
        return hands;
    }

    private List<Storing> storing(Copy copy, Placement placement, int i) {
        Task task = copy.recipe().tasks().get(i);
        int until = placement.end(i);
        for (Arc arc : copy.recipe().outOf().get(i)) {
            until = Math.max(until, placement.start()[arc.after()]);
        }
        if (task.waitLane() < 0 || until == placement.end(i)) {
            return List.of();
        }
        return List.of(new Storing(
                copy.id(),
                net.lanes().get(task.waitLane()).station(),
                task.waitUnits(),
                span(placement.end(i), until)));
    }

    private static <T> List<T> concat(List<T> one, List<T> other) {
        return Stream.concat(one.stream(), other.stream()).toList();
    }

    /** Work in order of time, numbered. */
    private List<Work> sortedWork() {
        List<Work> sorted = works().sorted(Comparator.comparing(Work::span)
                        .thenComparing(Work::dish)
                        .thenComparing(Work::step)
                        .thenComparing(work -> work.copies().get(0)))
                .toList();
        return IntStream.range(0, sorted.size())
                .mapToObj(i -> sorted.get(i).withId("w" + (i + 1)))
                .toList();
    }

    private Optional<Moment> firstIn(Span hours) {
        return works().map(work -> work.span().start()).filter(hours::contains).min(Moment::compareTo);
    }

    /** Points that can't be won back any more: of copies that are done. What opened the kitchen isn't counted. */
    private long pointsPast() {
        return net.past().done().stream()
                .map(this::asItWas)
                .mapToLong(this::points)
                .sum();
    }

    private long points(Block block) {
        return block.latePoints()
                + block.offPeakPoints()
                + (long) block.placement().handChanges() * net.prices().handChange();
    }

    /** A copy whose every task has begun. */
    private Block asItWas(Copy copy) {
        List<Task> tasks = copy.recipe().tasks();
        int[] none = new int[tasks.size()];
        Arrays.fill(none, -1);
        Block block = Block.ofCopy(copy, null);
        block.placement(new Placement(
                tasks.stream().mapToInt(Task::earliest).toArray(),
                tasks.stream().mapToInt(Task::minutes).toArray(),
                new int[tasks.size()],
                tasks.stream()
                        .mapToLong(task -> net.past().begun().get(task.begun()).people())
                        .toArray(),
                new long[tasks.size()],
                none,
                new int[tasks.size()]));
        return block;
    }

    private List<Plan.Break> breaks() {
        List<Plan.Break> breaks = new ArrayList<>(net.past().breaks());
        for (int i = 0; i < net.breaks().size(); i++) {
            Placement placement = solved.get(net.copies().size() + i).placement();
            if (!placement.nowhere()) {
                breaks.add(new Plan.Break(
                        net.people().get(net.breaks().get(i).person()),
                        span(placement.start()[0], placement.end(0))));
            }
        }
        breaks.sort(Comparator.comparing(Plan.Break::span).thenComparing(Plan.Break::person));
        return breaks;
    }
}
