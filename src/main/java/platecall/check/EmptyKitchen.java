package platecall.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import platecall.day.Circuit;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * When a step could run if nothing else did, minute by minute from the start of the day's horizon: stations open with
 * enough of them, circuits under their load, ovens hot, hands with the skill there, noise allowed. A plan can never do
 * better than this.
 */
final class EmptyKitchen {

    static final int NEVER = Integer.MAX_VALUE;

    private final Day day;
    private final ToIntFunction<Need> copiesOf;
    private final Moment origin;
    private final int minutes;
    private final Map<String, int[]> freeOfStation = new HashMap<>();
    private final Map<String, int[]> freeOfCircuit = new HashMap<>();
    private final Map<String, int[]> openSince = new HashMap<>();
    private final Map<Amount, int[]> runs = new HashMap<>();
    private final List<int[]> handRuns = new ArrayList<>();
    private final Map<Step, List<Way>> waysOf = new HashMap<>();
    private final Map<Step, List<Integer>> skilledOf = new HashMap<>();
    private final Map<Step, int[]> lengthsOf = new HashMap<>();
    private final Map<Step, int[]> nextEndsOf = new HashMap<>();
    private final Map<Hands, Integer> togetherOf = new HashMap<>();
    private final int[] quietRun;
    private final Map<Step, int[]> lastEndsOf = new HashMap<>();
    private final Map<Set<String>, EmptyKitchen> opened = new HashMap<>();
    private Optional<EmptyKitchen> staffed = Optional.empty();

    /** So many units of a station or tenths of amps of a circuit. */
    private record Amount(boolean circuit, String id, int units) {}

    /** So many pairs of hands with a skill. */
    private record Hands(int count, Optional<String> skill) {}

    /**
     * One choice of stations.
     *
     * @param stations units of each
     * @param tenths tenths of amps drawn from each circuit
     * @param oven the oven that must be hot
     * @param heard whether its noise is heard on set
     */
    record Way(Map<String, Integer> stations, Map<String, Integer> tenths, Optional<Station> oven, boolean heard) {}

    /**
     * @param day whose stations have names of their own and whose horizon is not absurdly long
     * @param copiesOf copies that a need gets: no batch is larger than all of its dish
     */
    EmptyKitchen(Day day, ToIntFunction<Need> copiesOf) {
        this.day = day;
        this.copiesOf = copiesOf;
        Span horizon = day.horizon();
        origin = horizon.start();
        minutes = horizon.minutes();
        for (Station station : day.stations()) {
            int[] free = new int[minutes];
            int[] since = new int[minutes];
            for (Span span : day.hoursOf(station)) {
                int start = minuteOf(span.start());
                int end = minuteOf(span.end());
                Arrays.fill(free, start, end, station.capacity());
                Arrays.fill(since, start, end, start);
            }
            freeOfStation.put(station.id(), free);
            openSince.put(station.id(), since);
        }
        for (Circuit circuit : day.circuits()) {
            freeOfCircuit.put(circuit.id(), freeTenths(circuit));
        }
        for (Person person : day.people()) {
            int[] there = new int[minutes];
            for (Span span : day.hoursOf(person)) {
                Arrays.fill(there, minuteOf(span.start()), minuteOf(span.end()), 1);
            }
            handRuns.add(run(there, 1));
        }
        int[] quiet = new int[minutes];
        Arrays.fill(quiet, 1);
        for (Span span : day.quietSpans()) {
            Arrays.fill(quiet, minuteOf(span.start()), minuteOf(span.end()), 0);
        }
        quietRun = run(quiet, 1);
    }

    private int[] freeTenths(Circuit circuit) {
        int[] free = new int[minutes];
        Arrays.fill(free, circuit.usableTenths());
        for (Station station : day.stations()) {
            if (station.kind().alwaysOn() && station.circuit().equals(Optional.of(circuit.id()))) {
                for (Span span : day.hoursOf(station)) {
                    for (int t = minuteOf(span.start()); t < minuteOf(span.end()); t++) {
                        free[t] -= station.tenthsOfAmps();
                    }
                }
            }
        }
        return free;
    }

    /** The same kitchen if everybody were there in all kitchen hours. */
    EmptyKitchen staffed() {
        if (staffed.isEmpty()) {
            List<Person> always = day.people().stream()
                    .map(person -> new Person(person.id(), person.skills(), List.of(), List.of(), person.costPerHour()))
                    .toList();
            staffed = Optional.of(new EmptyKitchen(day.with(day.facts(), day.stations(), always), copiesOf));
        }
        return staffed.get();
    }

    /** The same kitchen if some stations had no hours of their own. */
    EmptyKitchen open(Set<String> ids) {
        return opened.computeIfAbsent(Set.copyOf(ids), key -> {
            List<Station> stations = day.stations().stream()
                    .map(station -> key.contains(station.id()) ? station.withHours(List.of()) : station)
                    .toList();
            return new EmptyKitchen(day.with(day.facts(), stations, day.people()), copiesOf);
        });
    }

    /** The minute of a moment, the nearest one if it lies outside. */
    int minuteOf(Moment moment) {
        long minute = moment.epochMinute() - origin.epochMinute();
        return (int) Math.max(0, Math.min(minutes, minute));
    }

    Moment momentOf(int minute) {
        return origin.plus(minute);
    }

    /** For each minute, how many minutes from then on there is at least {@code units}. */
    private static int[] run(int[] free, int units) {
        int[] run = new int[free.length];
        for (int t = free.length - 1, length = 0; t >= 0; t--) {
            length = free[t] >= units ? length + 1 : 0;
            run[t] = length;
        }
        return run;
    }

    private int[] runOf(boolean circuit, String id, int units) {
        return runs.computeIfAbsent(
                new Amount(circuit, id, units),
                amount -> run((circuit ? freeOfCircuit : freeOfStation).get(id), units));
    }

    /** Every choice of stations, whether it can work or not. */
    static List<Way> ways(Day day, Step step) {
        List<Map<String, Integer>> choices = new ArrayList<>();
        choices.add(new LinkedHashMap<>());
        for (StationUse use : step.stations()) {
            List<Map<String, Integer>> longer = new ArrayList<>();
            for (Map<String, Integer> choice : choices) {
                for (String id : use.anyOf()) {
                    Map<String, Integer> more = new LinkedHashMap<>(choice);
                    more.merge(id, use.units(), Integer::sum);
                    longer.add(more);
                }
            }
            choices = longer;
        }
        return choices.stream().map(choice -> way(day, step, choice)).toList();
    }

    private static Way way(Day day, Step step, Map<String, Integer> stations) {
        Map<String, Integer> tenths = new LinkedHashMap<>();
        Optional<Station> oven = Optional.empty();
        for (Map.Entry<String, Integer> use : stations.entrySet()) {
            Station station = day.station(use.getKey()).orElseThrow();
            if (station.kind() == Station.Kind.OVEN && step.ovenCelsius().isPresent()) {
                oven = Optional.of(station);
            }
            if (!station.kind().alwaysOn() && station.amps() > 0) {
                station.circuit()
                        .filter(circuit -> day.circuit(circuit).isPresent())
                        .ifPresent(circuit ->
                                tenths.merge(circuit, station.tenthsOfAmps() * use.getValue(), Integer::sum));
            }
        }
        return new Way(stations, tenths, oven, day.disturbsSet(step, List.copyOf(stations.keySet())));
    }

    /** Longest time that one of the stations of {@code use} is open with enough of it, the oven's heating taken off. */
    int longestOpening(StationUse use, Step step) {
        int longest = 0;
        for (String id : use.anyOf()) {
            Station station = day.station(id).orElseThrow();
            int heating = heating(Optional.of(station).filter(s -> s.kind() == Station.Kind.OVEN), step);
            int open = Arrays.stream(runOf(false, id, use.units())).max().orElse(0);
            longest = Math.max(longest, open - heating);
        }
        return longest;
    }

    private static int heating(Optional<Station> oven, Step step) {
        return oven.isEmpty() || step.ovenCelsius().isEmpty()
                ? 0
                : oven.get()
                        .minutesToChange(
                                Station.COLD_OVEN_CELSIUS, step.ovenCelsius().get());
    }

    /** Longest time in kitchen hours in which noise is allowed. */
    int longestNoise() {
        int longest = 0;
        for (Span span : day.facts().kitchenHours()) {
            int end = minuteOf(span.end());
            for (int t = minuteOf(span.start()); t < end; t++) {
                longest = Math.max(longest, Math.min(quietRun[t], end - t));
            }
        }
        return longest;
    }

    /** Longest time that enough of those with the skill are there together. */
    int longestTogether(Step step) {
        return togetherOf.computeIfAbsent(new Hands(step.hands(), step.skill()), hands -> together(step));
    }

    private int together(Step step) {
        List<Integer> people = skilled(step);
        int longest = 0;
        for (int t = 0; t < minutes; t++) {
            int minute = t;
            int[] left = people.stream()
                    .mapToInt(person -> handRuns.get(person)[minute])
                    .sorted()
                    .toArray();
            if (left.length >= step.hands()) {
                longest = Math.max(longest, left[left.length - step.hands()]);
            }
        }
        return longest;
    }

    /** Rows of the people who can do a step. */
    List<Integer> skilled(Step step) {
        List<Integer> rows = new ArrayList<>();
        for (int row = 0; row < day.people().size(); row++) {
            if (step.skill().map(day.people().get(row).skills()::contains).orElse(true)) {
                rows.add(row);
            }
        }
        return rows;
    }

    /** Longest stretch in which the hands of a step must be on without a break. */
    static int longestHandsOn(Step step) {
        int all = step.minutesFor(1);
        return handsMeet(step)
                ? all
                : Math.max(step.handsFirst().orElse(0), step.handsLast().orElse(0));
    }

    /** Whether hands are on all the time: if they are with one copy, then with any number of them. */
    private static boolean handsMeet(Step step) {
        return step.handsThroughout()
                || step.handsFirst().orElse(0) + step.handsLast().orElse(0) >= step.minutesFor(1);
    }

    /** A circuit that for want of power allows none of the step's choices of stations at any time, if there is one. */
    Optional<String> tooWeak(Step step) {
        int length = step.minutesFor(1);
        Optional<String> weak = Optional.empty();
        for (Way way : waysOf.computeIfAbsent(step, key -> ways(day, key))) {
            Optional<String> first = way.tenths().entrySet().stream()
                    .filter(draw -> Arrays.stream(runOf(true, draw.getKey(), draw.getValue()))
                            .allMatch(run -> run < length))
                    .map(Map.Entry::getKey)
                    .findFirst();
            if (first.isEmpty()) {
                return first;
            }
            weak = weak.or(() -> first);
        }
        return weak;
    }

    /** Minutes that the step takes with as many copies in its batch as there can be, from one on. */
    private int[] lengths(Step step) {
        return lengthsOf.computeIfAbsent(step, key -> {
            int copies = step.minutesPerCopy() == 0
                    ? 1
                    : day.needs().stream()
                            .filter(need -> need.dish().equals(step.dish()))
                            .mapToInt(copiesOf)
                            .sum();
            return IntStream.rangeClosed(
                            1, Math.max(1, Math.min(copies, step.batchMost().orElse(1))))
                    .map(step::minutesFor)
                    .toArray();
        });
    }

    /** How much longer the step takes with its largest batch than with its smallest. */
    int mostLonger(Step step) {
        int[] lengths = lengths(step);
        return lengths[lengths.length - 1] - lengths[0];
    }

    /** First minute at which the step can end if it starts at or after {@code from}; {@link #NEVER} if there is none. */
    int earliestEnd(Step step, int from) {
        int[] next = nextEndsOf.computeIfAbsent(step, this::nextEnds);
        return from < minutes ? next[Math.max(0, from)] : NEVER;
    }

    private int[] nextEnds(Step step) {
        int[] next = new int[minutes];
        for (int t = minutes - 1, end = NEVER; t >= 0; t--) {
            int start = t;
            end = Math.min(
                    end,
                    Arrays.stream(lengths(step))
                            .filter(length -> fits(step, start, length))
                            .map(length -> start + length)
                            .findFirst()
                            .orElse(NEVER));
            next[t] = end;
        }
        return next;
    }

    /** Last end of the step by {@code by}, those before it in time for its waits; -1 if there is none. */
    int latestEnd(Step step, int by) {
        return lastEnds(step)[Math.max(0, Math.min(by, minutes))];
    }

    private int[] lastEnds(Step step) {
        int[] known = lastEndsOf.get(step);
        if (known != null) {
            return known;
        }
        List<Step> before = step.predecessors().stream()
                .map(id -> day.step(step.dish(), id).orElseThrow())
                .toList();
        before.forEach(this::lastEnds);
        int[] last = new int[minutes + 1];
        Arrays.fill(last, -1);
        for (int end = 1; end <= minutes; end++) {
            int by = end;
            // a larger batch may begin while its hands are there and yet end in time for what follows
            boolean can = Arrays.stream(lengths(step))
                    .filter(length -> length <= by)
                    .anyMatch(length -> fits(step, by - length, length)
                            && before.stream().allMatch(earlier -> follows(step, by - length, earlier)));
            last[end] = can ? end : last[end - 1];
        }
        lastEndsOf.put(step, last);
        return last;
    }

    /** Whether a step that starts at {@code start} can come after another as its waits ask for. */
    private boolean follows(Step step, int start, Step earlier) {
        boolean timed = step.after().contains(earlier.id());
        int by = start - (timed ? step.leastWait() : 0);
        int end = by < 0 ? -1 : latestEnd(earlier, by);
        return end >= 0
                && (!timed || step.mostWait().isEmpty() || end + step.mostWait().get() >= start);
    }

    /** Last minute at which the step alone can start so that it has ended by {@code end}; -1 if there is none. */
    int latest(Step step, int end) {
        int by = Math.min(end, minutes);
        for (int t = by - step.minutesFor(1); t >= 0; t--) {
            int start = t;
            if (Arrays.stream(lengths(step)).anyMatch(length -> start + length <= by && fits(step, start, length))) {
                return t;
            }
        }
        return -1;
    }

    private boolean fits(Step step, int t, int length) {
        return t + length <= minutes
                && handsFit(step, skilledOf.computeIfAbsent(step, this::skilled), t, length)
                && waysOf.computeIfAbsent(step, key -> ways(day, key)).stream()
                        .anyMatch(way -> fits(step, way, t, length));
    }

    private boolean fits(Step step, Way way, int t, int length) {
        for (Map.Entry<String, Integer> use : way.stations().entrySet()) {
            if (runOf(false, use.getKey(), use.getValue())[t] < length) {
                return false;
            }
        }
        for (Map.Entry<String, Integer> draw : way.tenths().entrySet()) {
            if (runOf(true, draw.getKey(), draw.getValue())[t] < length) {
                return false;
            }
        }
        return (!way.heard() || quietRun[t] >= length)
                && way.oven()
                        .map(oven -> t - openSince.get(oven.id())[t] >= heating(way.oven(), step))
                        .orElse(true);
    }

    private boolean handsFit(Step step, List<Integer> people, int t, int length) {
        if (step.hands() == 0) {
            return true;
        }
        int first = step.handsFirst().orElse(0);
        int last = step.handsLast().orElse(0);
        return handsMeet(step)
                ? there(people, t, length) >= step.hands()
                : there(people, t, first) >= step.hands() && there(people, t + length - last, last) >= step.hands();
    }

    private long there(List<Integer> people, int t, int length) {
        return length == 0
                ? Long.MAX_VALUE
                : people.stream()
                        .filter(person -> handRuns.get(person)[t] >= length)
                        .count();
    }

    /** First minute from {@code from} on at which somebody can carry a copy and come back. */
    int earliestCarry(int from, int thereAndBack) {
        for (int t = Math.max(0, from); t < minutes; t++) {
            if (canCarry(t, thereAndBack)) {
                return t;
            }
        }
        return NEVER;
    }

    /** Last minute at or before {@code by} at which somebody can; -1 if there is none. */
    int latestCarry(int by, int thereAndBack) {
        for (int t = Math.min(by, minutes - 1); t >= 0; t--) {
            if (canCarry(t, thereAndBack)) {
                return t;
            }
        }
        return -1;
    }

    private boolean canCarry(int t, int thereAndBack) {
        return handRuns.stream().anyMatch(run -> run[t] >= thereAndBack);
    }
}
