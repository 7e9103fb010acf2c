package platecall.copies;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Step;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * What one more copy of a need takes.
 *
 * <p>The wait for another set of plates begins when takes go past the likely number, at {@code call + likely takes x take
 * cycle}; for plates of which one set is enough, when the first is due. It is the longest path through the recipe from
 * there: a step starts at the first minute at which the steps before it and its least waits are over, its stations are
 * open and enough skilled people are on shift; it takes its likely minutes, a batch step those of one set of plates. Carry
 * and walk come on top. What else the kitchen is busy with is left out. Own reasoning, no source.
 *
 * @param minutes minutes until another set of plates is at camera, at least 1
 * @param sameDay false if the kitchen can't make another any more; then {@code minutes} run to the end of the day, but at
 *     least through the recipe
 * @param foodCents food money of one copy: the dish, and the ingredients of the steps up to the wanted stage
 * @param handCents pay for the hands-on minutes of one copy, at the mean pay of those who have the skill; of a batch step
 *     a copy's share in a full batch
 */
record Reset(int minutes, boolean sameDay, long foodCents, double handCents) {

    static Reset of(Day day, Setup setup, Need need) {
        List<Step> steps = day.stepsTo(need.dish(), need.stage());
        boolean oneSet = CameraTime.setsFor(need, setup.takesWorst()) == 1;
        Moment from = oneSet ? CameraTime.of(setup, need, 1).due() : setup.rollOf(setup.takesLikely());
        Optional<Moment> plated = plated(day, need, steps, from);
        int cooking = from.minutesUntil(plated.orElseGet(() ->
                Moment.later(from.plus(pathMinutes(need, steps)), day.horizon().end())));
        return new Reset(
                Math.max(1, cooking + day.minutesToCamera(need)),
                plated.isPresent(),
                day.foodCost(need).cents(),
                steps.stream().mapToDouble(step -> handCents(day, step)).sum());
    }

    /** When a set that is begun at {@code from} has passed all steps; empty if a step fits nowhere any more. */
    private static Optional<Moment> plated(Day day, Need need, List<Step> steps, Moment from) {
        Map<String, Moment> ended = new HashMap<>();
        Moment last = from;
        for (Step step : steps) {
            Moment ready = from;
            for (String before : step.predecessors()) {
                if (ended.containsKey(before)) {
                    ready = Moment.later(ready, ended.get(before).plus(waitAfter(before, step)));
                }
            }
            int minutes = minutesOfSet(step, need);
            Optional<Moment> start = firstStart(day, step, ready, minutes);
            if (start.isEmpty()) {
                return Optional.empty();
            }
            last = start.get().plus(minutes);
            ended.put(step.id(), last);
        }
        return Optional.of(last);
    }

    /** Minutes of the longest path through the steps if everything is always open. */
    private static int pathMinutes(Need need, List<Step> steps) {
        Map<String, Integer> ended = new HashMap<>();
        int last = 0;
        for (Step step : steps) {
            int ready = step.predecessors().stream()
                    .filter(ended::containsKey)
                    .mapToInt(before -> ended.get(before) + waitAfter(before, step))
                    .max()
                    .orElse(0);
            last = ready + minutesOfSet(step, need);
            ended.put(step.id(), last);
        }
        return last;
    }

    private static int waitAfter(String before, Step step) {
        return step.after().contains(before) ? step.leastWait() : 0;
    }

    private static int minutesOfSet(Step step, Need need) {
        return step.minutesFor(Math.min(need.platesPerTake(), step.batchMost().orElse(1)));
    }

    /** Stations and hands can only free up at the start of a span, so those and {@code ready} are all that need a look. */
    private static Optional<Moment> firstStart(Day day, Step step, Moment ready, int minutes) {
        Stream<Span> opening = Stream.concat(
                step.stations().stream()
                        .flatMap(use -> use.anyOf().stream())
                        .flatMap(id -> day.station(id).stream())
                        .flatMap(station -> day.hoursOf(station).stream()),
                day.people().stream().flatMap(person -> day.hoursOf(person).stream()));
        int handsLater = minutes - step.handsLast().orElse(minutes);
        Stream<Moment> starts =
                opening.flatMap(span -> Stream.of(span.start(), span.start().plus(-Math.max(0, handsLater))));
        return Stream.concat(Stream.of(ready), starts.filter(start -> start.isAfter(ready)))
                .sorted()
                .filter(start -> isOpen(day, step, start, minutes) && isStaffed(day, step, start, minutes))
                .findFirst();
    }

    private static boolean isOpen(Day day, Step step, Moment start, int minutes) {
        Span busy = Span.ofMinutes(start, minutes);
        return step.stations().stream()
                .allMatch(use -> use.anyOf().stream()
                        .flatMap(id -> day.station(id).stream())
                        .anyMatch(station -> day.hoursOf(station).stream().anyMatch(hours -> hours.contains(busy))));
    }

    private static boolean isStaffed(Day day, Step step, Moment start, int minutes) {
        List<Span> handsOn = handsOn(step, minutes).stream()
                .map(span -> new Span(
                        start.plus(span.start().epochMinute()),
                        start.plus(span.end().epochMinute())))
                .toList();
        return day.people().stream()
                        .filter(person -> hasSkill(person, step))
                        .filter(person -> handsOn.stream()
                                .allMatch(span -> day.hoursOf(person).stream().anyMatch(hours -> hours.contains(span))))
                        .count()
                >= step.hands();
    }

    /** When hands are on, counted from the start of the step. */
    private static List<Span> handsOn(Step step, int minutes) {
        if (step.handsThroughout()) {
            return List.of(Span.ofMinutes(new Moment(0), minutes));
        }
        int first = Math.min(minutes, step.handsFirst().orElse(0));
        int last = Math.min(minutes, step.handsLast().orElse(0));
        Stream<Span> begin = first == 0 ? Stream.of() : Stream.of(Span.ofMinutes(new Moment(0), first));
        Stream<Span> end = last == 0 ? Stream.of() : Stream.of(Span.ofMinutes(new Moment((long) minutes - last), last));
        return Span.union(Stream.concat(begin, end).toList());
    }

    private static boolean hasSkill(Person person, Step step) {
        return step.skill().map(person.skills()::contains).orElse(true);
    }

    private static double handCents(Day day, Step step) {
        int batch = step.batchMost().orElse(1);
        int handMinutes = handsOn(step, step.minutesFor(batch)).stream()
                .mapToInt(Span::minutes)
                .sum();
        double centsAnHour = day.people().stream()
                .filter(person -> hasSkill(person, step))
                .mapToLong(person -> person.costPerHour().cents())
                .average()
                .orElse(0);
        return step.hands() * handMinutes * centsAnHour / 60 / batch;
    }
}
