package platecall.tasks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.Happening;
import platecall.day.Part;
import platecall.day.Trouble;
import platecall.looks.Looks;
import platecall.odds.SoFar;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.solve.InventedDays;
import platecall.solve.Planner;
import platecall.units.Moment;
import platecall.units.Span;

/** What has begun stays, nothing else begins before now, and the rest keeps every rule by the audit, which knows nothing of the search. */
class UnderWayTest {

    @Property(tries = 300)
    void theRestOfADayKeepsEveryRuleWhateverHappenedBefore(
            @ForAll @IntRange(min = 8, max = 60) int size,
            @ForAll @DoubleRange(min = 0.5, max = 1.5) double load,
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Day day = InventedDays.day(size, load, seed);
        Plan before = InventedDays.plan(day, seed);
        SplittableRandom random = new SplittableRandom(seed);
        Span horizon = day.horizon();
        Moment now = horizon.start().plus(random.nextInt(horizon.minutes()));
        List<Trouble> troubles = new ArrayList<>();
        List<Happening> happenings = happenings(before, now, random);
        SoFar soFar = SoFar.of(day, before, now, happenings, "happenings", troubles);
        assertThat(troubles).isEmpty();
        UnderWay left = UnderWay.of(day, net(day), now, soFar.begun(), soFar.breaks(), Set.of());
        Planner.Found found = Planner.plan(
                day,
                left.net(),
                "digest",
                "test",
                new Planner.Limits(60, Optional.of(400L), seed, 1),
                Optional.of(soFar.inHand(before)),
                Planner.Watcher.NONE);
        Plan plan = found.plan();

        for (Work work : plan.work()) {
            if (work.span().start().isBefore(now)) {
                assertThat(soFar.begun()).anySatisfy(begun -> {
                    assertThat(begun.span()).isEqualTo(work.span());
                    assertThat(begun.step()).isEqualTo(work.step());
                    assertThat(begun.stations()).isEqualTo(work.stations());
                    assertThat(begun.hands()).isEqualTo(work.hands());
                    assertThat(begun.copies()).containsAll(work.copies());
                });
            }
        }
        assertThat(plan.copies().stream().map(PlannedCopy::id))
                .containsExactlyElementsOf(
                        net(day).copies().stream().map(TaskNet.Copy::id).toList());
        Map<Rule, Long> broken = new EnumMap<>(Rule.class);
        for (Breach breach : Audit.of(day, plan).breaches()) {
            broken.merge(breach.rule(), breach.amount(), Long::sum);
        }
        long wanted = plan.copies().stream()
                .filter(copy -> !copy.made() && toCome(day, copy, now))
                .count();
        assertThat(broken.getOrDefault(Rule.COPIES, 0L)).isEqualTo(wanted);
        broken.remove(Rule.COPIES);
        // where a break is overdue, or finds no place, nothing can help
        broken.remove(Rule.MEAL);
        // nor where what is under way takes longer: into a take, or beyond a shift
        if (happenings.stream().anyMatch(it -> it.what() == Happening.What.ENDED)) {
            broken.remove(Rule.SILENCE);
            broken.remove(Rule.SHIFT);
        }
        assertThat(broken).isEmpty();
        if (found.brokenTotal() == 0) {
            assertThat(plan.bound().orElseThrow())
                    .isLessThanOrEqualTo(plan.points().total());
        }
    }

    private static boolean toCome(Day day, PlannedCopy copy, Moment now) {
        return day.setup(copy.setup()).orElseThrow().shooting().end().isAfter(now);
    }

    private static TaskNet net(Day day) {
        return Breakdown.of(
                day, dish -> Looks.of(day, dish), need -> need.copies().orElse(2));
    }

    /** Some works were to begin and wait, some under way take longer, some copies are lost. */
    private static List<Happening> happenings(Plan plan, Moment now, SplittableRandom random) {
        List<Happening> all = new ArrayList<>();
        for (Work work : plan.work()) {
            PlannedCopy copy = plan.copies().stream()
                    .filter(it -> work.copies().contains(it.id()))
                    .findFirst()
                    .orElseThrow();
            boolean underWay = work.span().contains(now) && work.span().start().isBefore(now);
            if (underWay && random.nextInt(2) == 0) {
                all.add(happening(Happening.What.WAITS, copy, work.step(), Optional.empty()));
            } else if (underWay
                    && plan.work().stream()
                                    .filter(it -> isMeant(plan, it, work, copy))
                                    .count()
                            == 1) {
                Moment end = work.span().end().plus(random.nextInt(20));
                all.add(happening(Happening.What.ENDED, copy, work.step(), Optional.of(end)));
            }
        }
        for (PlannedCopy copy : plan.copies()) {
            boolean toCome = copy.due().plus(copy.showMinutes()).isAfter(now);
            if (copy.made() && toCome && random.nextInt(15) == 0) {
                all.add(new Happening(
                        Happening.What.LOST,
                        Optional.of(copy.setup()),
                        Optional.of(copy.dish()),
                        Optional.of(part(copy)),
                        Optional.of(copy.number()),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
            }
        }
        return all;
    }

    private static boolean isMeant(Plan plan, Work other, Work work, PlannedCopy copy) {
        return other.step().equals(work.step())
                && other.dish().equals(work.dish())
                && plan.copies().stream()
                        .filter(it -> other.copies().contains(it.id()))
                        .anyMatch(it -> it.setup().equals(copy.setup())
                                && it.part().equals(copy.part())
                                && it.number() == copy.number());
    }

    private static Happening happening(Happening.What what, PlannedCopy copy, String step, Optional<Moment> time) {
        return new Happening(
                what,
                Optional.of(copy.setup()),
                Optional.of(copy.dish()),
                Optional.of(part(copy)),
                Optional.of(copy.number()),
                Optional.of(step),
                Optional.empty(),
                time);
    }

    private static Part part(PlannedCopy copy) {
        for (Part part : Part.values()) {
            if (part.word().equals(copy.part())) {
                return part;
            }
        }
        throw new AssertionError(copy.part());
    }
}
