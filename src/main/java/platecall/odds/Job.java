package platecall.odds;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Work;
import platecall.units.Span;

/** A work or meal break as the plan has it, in numbers: minutes since 1970, stations as in the day's list. */
final class Job {

    /** A work that must have ended before, and the least and most minutes from then on. */
    record Before(int work, int least, int most) {}

    /** Hands of a person: until so many minutes after the start or end, or from so many before the end. */
    record Part(int person, boolean untilEnd, int from, int to) {}

    record Use(int station, int units) {}

    final long planned;
    final int minutes;
    /** Hands that are there from the start, and those that come for the last part. */
    final Part[] first;

    final Part[] last;
    Before[] before = {};
    /** Minutes of its step; 0 if it is none. */
    int low;

    int likely;
    int high;
    /** Minutes for which it had been under way when the plan was made. */
    int begunFor;
    /** How the minutes fall; null if they are for certain. */
    StepMinutes fall;

    SplittableRandom dice;
    Use[] uses = {};
    /** The oven that has to have its temperature, if any. */
    int oven = Rehearsal.NONE;

    int celsius;
    /** In which of its oven's openings it begins: it is cold before each, and the plan has the time to heat it. */
    int opening;

    boolean noisy;

    /** @param people numbers of people; who has none gets the next one */
    Job(Span span, List<Hands> hands, Map<String, Integer> people) {
        planned = span.start().epochMinute();
        minutes = span.minutes();
        List<Part> atFirst = new ArrayList<>();
        List<Part> atLast = new ArrayList<>();
        for (Hands hand : hands) {
            int person = people.computeIfAbsent(hand.person(), name -> people.size());
            boolean fromStart = span.start().minutesUntil(hand.span().start()) <= 0;
            boolean toTheEnd = !fromStart || !hand.span().end().isBefore(span.end());
            int from = fromStart ? 0 : hand.span().start().minutesUntil(span.end());
            int to = (toTheEnd ? span.end() : span.start())
                    .minutesUntil(hand.span().end());
            (fromStart ? atFirst : atLast).add(new Part(person, toTheEnd, from, to));
        }
        first = atFirst.toArray(Part[]::new);
        last = atLast.toArray(Part[]::new);
    }

    /** @param seed of all luck with this plan */
    static Job of(Day day, Plan plan, Work work, Map<String, Integer> people, long seed) {
        Job job = new Job(work.span(), work.hands(), people);
        job.begunFor = plan.hasBegun(work.span().start())
                ? work.span().start().minutesUntil(plan.asOf().orElseThrow())
                : 0;
        if (work.kind() == Work.Kind.STEP) {
            day.step(work.dish(), work.step()).ifPresent(step -> job.takeMinutes(day, work, step, seed));
        }
        job.takeStations(day, work);
        return job;
    }

    private void takeMinutes(Day day, Work work, Step step, long seed) {
        low = step.minutesLow();
        likely = step.minutesLikely();
        high = step.minutesHigh();
        if (low < high && begunFor < minutes) {
            fall = StepMinutes.of(step);
            // from the copy's name, so that other plans of the day are tried with the same luck
            long name = (work.dish() + " " + work.step() + " " + String.join(";", work.copies())).hashCode();
            dice = new SplittableRandom(new SplittableRandom(seed).nextLong() + name);
        }
        noisy = day.disturbsSet(
                step, work.stations().stream().map(StationHold::station).toList());
    }

    private void takeStations(Day day, Work work) {
        List<String> ids = day.stations().stream().map(Station::id).toList();
        uses = work.stations().stream()
                .map(hold -> new Use(ids.indexOf(hold.station()), hold.units()))
                .filter(use -> use.station() >= 0)
                .toArray(Use[]::new);
        for (Use use : uses) {
            Station station = day.stations().get(use.station());
            if (work.ovenCelsius().isPresent() && station.kind() == Station.Kind.OVEN) {
                oven = use.station();
                celsius = work.ovenCelsius().get();
                opening = (int) day.hoursOf(station).stream()
                        .filter(open -> !open.end().isAfter(work.span().start()))
                        .count();
            }
        }
    }

    /** Units of a station that it takes up. */
    int unitsOf(int station) {
        int taken = 0;
        for (Use use : uses) {
            taken += use.station() == station ? use.units() : 0;
        }
        return taken;
    }
}
