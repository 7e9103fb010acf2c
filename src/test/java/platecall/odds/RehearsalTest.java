package platecall.odds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.Work;
import platecall.solve.InventedDays;
import platecall.units.Span;

/** Whatever minutes fall, a rehearsal keeps the day's rules that it promises to keep; without luck it is the plan. */
class RehearsalTest {

    private static Day withMinutes(Day day, double low, double high) {
        List<Step> steps = day.steps().stream()
                .map(step -> new Step(
                        step.dish(),
                        step.id(),
                        step.after(),
                        step.leastWait(),
                        step.mostWait(),
                        Math.max(1, (int) (low * step.minutesLikely())),
                        step.minutesLikely(),
                        (int) Math.ceil(high * step.minutesLikely()),
                        step.minutesPerCopy(),
                        step.batchMost(),
                        step.hands(),
                        step.skill(),
                        step.handsFirst(),
                        step.handsLast(),
                        step.stations(),
                        step.ovenCelsius(),
                        step.noisy(),
                        step.waitsIn(),
                        step.raw(),
                        step.coreCelsius(),
                        step.anyTimeAfter()))
                .toList();
        return new Day(
                day.facts(),
                day.setups(),
                day.needs(),
                day.dishes(),
                day.looks(),
                steps,
                day.ingredients(),
                day.stations(),
                day.circuits(),
                day.people(),
                day.cast(),
                day.places());
    }

    @Property(tries = 30)
    void isThePlanItselfWhereEveryStepTakesItsLikelyMinutes(
            @ForAll @IntRange(min = 8, max = 120) int size,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double load,
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Day day = withMinutes(InventedDays.day(size, load, seed), 1, 1);
        Plan plan = InventedDays.plan(day, seed);
        Rehearsal rehearsal = new Rehearsal(day, plan, seed);
        rehearsal.next();
        for (int i = 0; i < plan.work().size(); i++) {
            Span span = plan.work().get(i).span();
            assertThat(rehearsal.start[i]).isEqualTo(span.start().epochMinute());
            assertThat(rehearsal.end[i]).isEqualTo(span.end().epochMinute());
        }
    }

    @Property(tries = 30)
    void keepsOrderHandsAndStationsWhateverMinutesFall(
            @ForAll @IntRange(min = 8, max = 120) int size,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double load,
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Day day = withMinutes(InventedDays.day(size, load, seed), 0.7, 2);
        Plan plan = InventedDays.plan(day, seed);
        Rehearsal rehearsal = new Rehearsal(day, plan, seed);
        boolean held = false;
        for (int run = 0; run < 10; run++) {
            rehearsal.next();
            for (int i = 0; i < plan.work().size(); i++) {
                long planned = plan.work().get(i).span().start().epochMinute();
                assertThat(rehearsal.start[i]).isGreaterThanOrEqualTo(planned);
                held |= rehearsal.start[i] > planned;
            }
            keepsOrder(day, plan, rehearsal);
            keepsHands(plan, rehearsal);
            keepsStations(day, plan, rehearsal);
            keepsQuiet(day, plan, rehearsal);
        }
        assertThat(held || plan.work().isEmpty()).isTrue();
    }

    private static void keepsOrder(Day day, Plan plan, Rehearsal rehearsal) {
        for (int i = 0; i < plan.work().size(); i++) {
            Work work = plan.work().get(i);
            for (int j = 0; j < plan.work().size(); j++) {
                Work other = plan.work().get(j);
                if (work.copies().stream().noneMatch(other.copies()::contains) || other.kind() == Work.Kind.CARRY) {
                    continue;
                }
                Optional<Step> step = day.step(work.dish(), work.step());
                if (work.kind() == Work.Kind.CARRY
                        || step.orElseThrow().predecessors().contains(other.step())) {
                    int least = work.kind() == Work.Kind.STEP
                                    && step.orElseThrow().after().contains(other.step())
                            ? step.orElseThrow().leastWait()
                            : 0;
                    assertThat(rehearsal.start[i] - rehearsal.end[j]).isGreaterThanOrEqualTo(least);
                }
            }
        }
    }

    /** Nobody has hands on two things at a time, each counted from the start or the end of its work as in the plan. */
    private static void keepsHands(Plan plan, Rehearsal rehearsal) {
        Map<String, List<long[]>> busy = new HashMap<>();
        for (int i = 0; i < plan.work().size(); i++) {
            Work work = plan.work().get(i);
            for (Hands hands : work.hands()) {
                boolean fromStart = hands.span().start().equals(work.span().start());
                boolean toEnd = !hands.span().end().isBefore(work.span().end());
                long from = fromStart
                        ? rehearsal.start[i]
                        : rehearsal.end[i]
                                - hands.span().start().minutesUntil(work.span().end());
                long to = toEnd
                        ? rehearsal.end[i]
                                + work.span().end().minutesUntil(hands.span().end())
                        : rehearsal.start[i]
                                + work.span().start().minutesUntil(hands.span().end());
                busy.computeIfAbsent(hands.person(), name -> new ArrayList<>()).add(new long[] {from, to});
            }
        }
        for (int n = 0; n < plan.breaks().size(); n++) {
            int i = plan.work().size() + n;
            Break pause = plan.breaks().get(n);
            assertThat(rehearsal.end[i] - rehearsal.start[i])
                    .isEqualTo(pause.span().minutes());
            busy.computeIfAbsent(pause.person(), name -> new ArrayList<>())
                    .add(new long[] {rehearsal.start[i], rehearsal.end[i]});
        }
        busy.values().forEach(spans -> {
            spans.sort((a, b) -> Long.compare(a[0], b[0]));
            for (int n = 1; n < spans.size(); n++) {
                assertThat(spans.get(n)[0]).isGreaterThanOrEqualTo(spans.get(n - 1)[1]);
            }
        });
    }

    private static void keepsStations(Day day, Plan plan, Rehearsal rehearsal) {
        for (Station station : day.stations()) {
            TreeMap<Long, Integer> change = new TreeMap<>();
            for (int i = 0; i < plan.work().size(); i++) {
                for (Plan.StationHold hold : plan.work().get(i).stations()) {
                    if (hold.station().equals(station.id())) {
                        change.merge(rehearsal.start[i], hold.units(), Integer::sum);
                        change.merge(rehearsal.end[i], -hold.units(), Integer::sum);
                    }
                }
            }
            int used = 0;
            for (int delta : change.values()) {
                used += delta;
                assertThat(used).isLessThanOrEqualTo(station.capacity());
            }
            if (station.kind() == Station.Kind.OVEN) {
                keepsTemperature(plan, rehearsal, station);
            }
        }
    }

    private static void keepsTemperature(Plan plan, Rehearsal rehearsal, Station oven) {
        for (int i = 0; i < plan.work().size(); i++) {
            for (int j = 0; j < plan.work().size(); j++) {
                if (bakes(plan.work().get(i), oven)
                        && bakes(plan.work().get(j), oven)
                        && rehearsal.start[i] < rehearsal.start[j]) {
                    int from = plan.work().get(i).ovenCelsius().orElseThrow();
                    int to = plan.work().get(j).ovenCelsius().orElseThrow();
                    if (from != to) {
                        assertThat(rehearsal.start[j] - rehearsal.end[i])
                                .isGreaterThanOrEqualTo(oven.minutesToChange(from, to));
                    }
                }
            }
        }
    }

    private static boolean bakes(Work work, Station oven) {
        return work.ovenCelsius().isPresent()
                && work.stations().stream().anyMatch(hold -> hold.station().equals(oven.id()));
    }

    private static void keepsQuiet(Day day, Plan plan, Rehearsal rehearsal) {
        for (int i = 0; i < plan.work().size(); i++) {
            Work work = plan.work().get(i);
            Optional<Step> step = day.step(work.dish(), work.step());
            if (work.kind() == Work.Kind.STEP && day.disturbsSet(step.orElseThrow())) {
                for (Span quiet : day.quietSpans()) {
                    assertThat(rehearsal.start[i] >= quiet.end().epochMinute()
                                    || rehearsal.end[i] <= quiet.start().epochMinute())
                            .isTrue();
                }
            }
        }
    }
}
