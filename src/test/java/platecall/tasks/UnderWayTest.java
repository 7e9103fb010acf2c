package platecall.tasks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import platecall.audit.Audit;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Happening;
import platecall.day.Look;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.day.Trouble;
import platecall.looks.Looks;
import platecall.odds.SoFar;
import platecall.plan.Breach;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.plan.TestPlans;
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
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
            @ForAll boolean storesOff) {
        Day asPlanned = InventedDays.day(size, load, seed);
        Plan before = InventedDays.plan(asPlanned, seed);
        SplittableRandom random = new SplittableRandom(seed);
        Span horizon = asPlanned.horizon();
        Moment now = horizon.start().plus(random.nextInt(horizon.minutes()));
        Day day = storesOff
                ? withStoresOff(asPlanned, new Span(now.plus(-random.nextInt(20)), now.plus(1 + random.nextInt(40))))
                : asPlanned;
        List<Trouble> troubles = new ArrayList<>();
        List<Happening> happenings = happenings(before, now, random);
        SoFar soFar = SoFar.of(day, before, now, happenings, "happenings", troubles);
        // what is told may not have begun after all if what comes before it takes longer
        assertThat(troubles)
                .allMatch(trouble ->
                        trouble.what().contains("has begun") || trouble.what().contains("has not begun"));
        Set<String> keepsStale =
                seed % 2 == 0 ? Set.of() : day.needs().stream().map(Need::key).collect(Collectors.toSet());
        UnderWay left =
                UnderWay.of(day, net(day), now, soFar.begun(), soFar.breaks(), Set.of(), keepsStale, soFar.notBefore());
        Planner.Found found = Planner.plan(
                day,
                left.net(),
                "digest",
                "test",
                new Planner.Limits(60, Optional.of(400L), seed, 1),
                Optional.of(soFar.inHand()),
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
        soFar.notBefore()
                .forEach((step, time) -> assertThat(plan.work().stream()
                                .filter(work -> work.copies().contains(step.copy())
                                        && work.with(step.copy()).equals(step)))
                        .allSatisfy(work -> assertThat(work.span().start()).isGreaterThanOrEqualTo(time)));
        Map<Rule, Long> broken = new EnumMap<>(Rule.class);
        for (Breach breach : Audit.of(day, plan).breaches()) {
            // what chills in a store that is off, or comes back from set when it is, has nowhere else to go
            boolean nowhereElse =
                    storesOff && breach.rule() == Rule.OPEN && !breach.what().contains(" waits in ");
            if (!nowhereElse) {
                broken.merge(breach.rule(), breach.amount(), Long::sum);
            }
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

    private static Day withStoresOff(Day day, Span off) {
        Span horizon = day.horizon();
        List<Span> around = List.of(
                new Span(horizon.start().plus(-60), off.start()),
                new Span(off.end(), horizon.end().plus(120)));
        List<Station> stations = day.stations().stream()
                .map(it -> it.kind().storesFood()
                        ? new Station(
                                it.id(),
                                it.kind(),
                                it.capacity(),
                                it.unit(),
                                Span.intersection(day.hoursOf(it), around),
                                it.place(),
                                it.heatPerMinute(),
                                it.coolPerMinute(),
                                it.amps(),
                                it.circuit())
                        : it)
                .toList();
        return day.with(day.facts(), stations, day.people());
    }

    /** Boiled for ten minutes, plated in two at most five later, for a call at ten. */
    private static TestDays pasta() {
        return new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "10:00", setup -> setup.cycle = 30)
                .dish("pasta", dish -> dish.look = Look.table(0, 10, 15))
                .need("S1", "pasta", "plate", need -> need.copies(1))
                .step("pasta", "boil", 10, step -> step.hands = 1)
                .step("pasta", "plate", 2, step -> step.after("boil").most(5).hands = 1);
    }

    private static UnderWay left(TestDays days, String now, Consumer<TestPlans> works) {
        return left(days, now, works, Set.of(), Map.of());
    }

    private static UnderWay left(
            TestDays days,
            String now,
            Consumer<TestPlans> works,
            Set<String> keepsStale,
            Map<CopyStep, Moment> notBefore) {
        Day day = days.build();
        TestPlans plan = TestPlans.of(day);
        works.accept(plan);
        Plan built = plan.build();
        return UnderWay.of(
                day, net(day), TestDays.at(now), built.work(), built.breaks(), Set.of(), keepsStale, notBefore);
    }

    private static List<String> windows(UnderWay left) {
        int midnight = left.net().origin().minutesUntil(TestDays.at("00:00"));
        return left.net().copies().get(0).recipe().tasks().stream()
                .map(task -> task.name() + (task.hasBegun() ? " begun " : " ") + (task.earliest() - midnight) + "-"
                        + (task.latest() == Integer.MAX_VALUE ? "" : task.latest() - midnight))
                .toList();
    }

    @Test
    void whatHasNotBegunBeginsFromNowOn() {
        assertThat(windows(left(pasta(), "09:00", plan -> {}))).containsExactly("boil 540-", "plate 550-");
    }

    /** Not boiled before 9:20, so plated from 9:30 on; boiled by 9:10, but not plated before 9:15, the last minute at which it may be. */
    @Test
    void whatWaitsUntilATimeBeginsFromThenOn() {
        CopyStep boil = CopyStep.of("S1/pasta/plate/hero#1", "boil");
        CopyStep plate = CopyStep.of("S1/pasta/plate/hero#1", "plate");
        assertThat(windows(left(pasta(), "09:00", plan -> {}, Set.of(), Map.of(boil, TestDays.at("09:20")))))
                .containsExactly("boil 560-", "plate 570-");
        Consumer<TestPlans> boiled = plan -> plan.step("pasta", "boil", 1, "09:00-09:10", work -> work.by("Ana"));
        assertThat(windows(left(pasta(), "09:05", boiled, Set.of(), Map.of(plate, TestDays.at("09:15")))))
                .containsExactly("boil begun 540-540", "plate 555-555");
        assertThat(left(pasta(), "09:05", boiled, Set.of(), Map.of(plate, TestDays.at("09:16")))
                        .spoiled())
                .containsExactly("S1/pasta/plate/hero#1");
    }

    /** Boiled at 9:45, so plated from now to 9:50; one minute later it is too late for that, and another is boiled. */
    @Test
    void whatFollowsBeginsBeforeItsWaitIsOverOrTheCopyIsMadeAnew() {
        Consumer<TestPlans> boiled = plan -> plan.step("pasta", "boil", 1, "09:35-09:45", work -> work.by("Ana"));
        assertThat(windows(left(pasta(), "09:50", boiled))).containsExactly("boil begun 575-575", "plate 590-590");
        assertThat(left(pasta(), "09:50", boiled).spoiled()).isEmpty();
        UnderWay late = left(pasta(), "09:51", boiled);
        assertThat(windows(late)).containsExactly("boil 591-", "plate 601-");
        assertThat(late.spoiled()).containsExactly("S1/pasta/plate/hero#1");
        assertThat(late.net().past().begun().get(0).work().copies()).isEmpty();
    }

    /**
     * FDA Food Code 2022 3-501.19(B): 240 minutes from cooked to eaten, of which 15 are for portioning and plating, 2 for the way and 5
     * in the take. The plan keeps the 90 minutes of its looks in reserve, so each of two waits may last 67. Cooked at 6:30 and
     * waiting still at 8:00, it goes on: what is left, 128 minutes, is for three waits, 42 and two thirds each.
     */
    @Test
    void whatHasWaitedLongerThanItsShareTakesFromTheWaitsToCome() {
        TestDays stew = new TestDays()
                .with(days -> days.profile = "fda-2022")
                .place("kitchen", place -> place.walk.put("set", 2))
                .place("set", place -> place.walk.put("kitchen", 2))
                .person("Ana", person -> {})
                .setup("S1", "13:00", setup -> {
                    setup.place = "set";
                    setup.rolling = 5;
                })
                .dish("stew", dish -> {
                    dish.controlled = true;
                    dish.look = Look.table(0, 30, 90);
                })
                .need("S1", "stew", "plate", need -> need.copies(1).eatenBy = List.of("Guest"))
                .step("stew", "cook", 30, step -> {
                    step.core = Optional.of(75.0);
                    step.hands = 1;
                })
                .step("stew", "portion", 10, step -> step.after("cook").hands = 1)
                .step("stew", "plate", 5, step -> step.after("portion").uses("counter", 1).hands = 1)
                .station("counter", Station.Kind.COUNTER, 1, station -> {})
                .diner("Guest");
        Consumer<TestPlans> cooked = plan -> plan.step("stew", "cook", 1, "06:00-06:30", work -> work.by("Ana"));

        assertThat(windows(left(stew, "07:37", cooked)).get(1)).isEqualTo("portion 457-457");
        assertThat(windows(left(stew, "08:00", cooked)).get(1)).isEqualTo("portion 480-522");
        assertThat(left(stew, "08:00", cooked).spoiled()).isEmpty();
        // at 10:05 a minute is left for each wait, at 10:06 less
        assertThat(left(stew, "10:05", cooked).spoiled()).isEmpty();
        assertThat(left(stew, "10:06", cooked).spoiled()).containsExactly("S1/stew/plate/hero#1");
    }

    /** Under way until 9:55 the boil has Ana until then, and she plates it by 10:00. */
    @Test
    void whatIsUnderWayKeepsItsHandsToItsEnd() {
        UnderWay left =
                left(pasta(), "09:50", plan -> plan.step("pasta", "boil", 1, "09:45-09:55", work -> work.by("Ana")));
        int now = left.net().past().now();
        assertThat(windows(left)).containsExactly("boil begun 585-585", "plate 595-600");
        assertThat(left.net().handsFree()[now + 4]).isZero();
        assertThat(left.net().handsFree()[now + 5]).isOne();
    }

    /** Two doughs stand in a fridge that is off from 9:20 to 9:40, one more is to be mixed; all are baked from 9:42 on, when the only oven is free. */
    @Test
    void whatStandsInAStoreThatIsClosedNowKeepsItsPlaceUntilItOpens() {
        TestDays days = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "10:00", setup -> setup.takes(3))
                .dish("bread", dish -> dish.storage = 1)
                .need("S1", "bread", "bake", need -> need.copies(3))
                .step("bread", "mix", 5, step -> {
                    step.hands = 1;
                    step.waitsIn = Optional.of("fridge");
                })
                .step("bread", "bake", 5, step -> step.after("mix").uses("oven", 1))
                .station("oven", Station.Kind.OVEN, 1, oven -> oven.hours = List.of(TestDays.span("09:42-18:00")))
                .station(
                        "fridge",
                        Station.Kind.FRIDGE,
                        2,
                        fridge -> fridge.hours = List.of(TestDays.span("06:00-09:20"), TestDays.span("09:40-18:00")));
        Day day = days.build();
        UnderWay left = left(
                days,
                "09:25",
                plan -> plan.step("bread", "mix", 1, "09:00-09:05", work -> work.by("Ana"))
                        .step("bread", "mix", 2, "09:05-09:10", work -> work.by("Ana")));
        Plan plan = Planner.plan(
                        day,
                        left.net(),
                        "digest",
                        "test",
                        new Planner.Limits(60, Optional.of(400L), 1, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE)
                .plan();
        assertThat(plan.copies()).allMatch(PlannedCopy::made);
        assertThat(Audit.of(day, plan).breaches()).isEmpty();
        assertThat(plan.work().stream()
                        .filter(work -> work.step().equals("mix"))
                        .map(work -> work.span().start())
                        .sorted())
                .first()
                .isEqualTo(TestDays.at("09:00"));
        assertThat(plan.work().stream()
                        .flatMap(work -> work.storage().stream())
                        .filter(storing -> storing.span().contains(TestDays.at("09:30"))))
                .hasSize(2);
    }

    /** Shown from 10:00 to 10:30 it has to be usable until then; plated at 9:41 it is so until 9:56, and another is ready sooner. */
    @Test
    void whatIsPlatedAndWillBeStaleByItsCallIsMadeAnewIfThatIsSooner() {
        Consumer<TestPlans> plated = plan -> plan.step("pasta", "boil", 1, "09:27-09:37", work -> work.by("Ana"))
                .step("pasta", "plate", 1, "09:39-09:41", work -> work.by("Ana"));
        assertThat(left(pasta(), "09:45", plated).spoiled()).containsExactly("S1/pasta/plate/hero#1");
        assertThat(left(pasta(), "09:45", plated, Set.of("S1/pasta/plate/hero"), Map.of())
                        .spoiled())
                .isEmpty();
        // at 10:25 another would be 37 minutes late, five minutes past use is 34
        assertThat(left(pasta(), "10:25", plated).spoiled()).isEmpty();
        assertThat(left(pasta(), "10:25", plated).net().past().done()).hasSize(1);
    }

    /**
     * One take is shot, the next rolls at 10:45 to 10:50: its pasta, plated at 10:24, is usable until 10:39, eleven minutes too short. One
     * boiled anew from 10:44 on would be eleven minutes late; the one for the third take can be plated by 10:46 and takes its place.
     */
    @Test
    void whatIsPlatedAndWillBeStaleLeavesItsPlaceToTheNextThatIsBegun() {
        TestDays days = pasta().setup("S1", "10:00", setup -> {
                    setup.takes(3).shot(1, "10:45");
                    setup.cycle = 30;
                })
                .need("S1", "pasta", "plate", need -> need.copies(3));
        Consumer<TestPlans> second = plan -> plan.step("pasta", "boil", 2, "10:11-10:21", work -> work.by("Ana"))
                .step("pasta", "plate", 2, "10:22-10:24", work -> work.by("Ana"));
        Consumer<TestPlans> third = plan -> plan.step("pasta", "boil", 3, "10:32-10:42", work -> work.by("Ana"));
        UnderWay alone = left(days, "10:44", second);
        assertThat(alone.spoiled()).isEmpty();
        UnderWay both = left(days, "10:44", second.andThen(third));
        assertThat(both.spoiled()).containsExactly("S1/pasta/plate/hero#2");
    }

    @Test
    void whatWasNotMadeForATakeThatIsShotIsNotMadeAnyMore() {
        TestDays days = pasta().setup("S1", "10:00", setup -> {
                    setup.takes(3).shot(2, "11:20");
                    setup.cycle = 30;
                })
                .need("S1", "pasta", "plate", need -> need.copies(3));
        UnderWay left = left(days, "10:50", plan -> {});
        assertThat(left.net().copies().stream().map(TaskNet.Copy::id)).containsExactly("S1/pasta/plate/hero#3");
        assertThat(left.net().past().missed().stream().map(TaskNet.Copy::id))
                .containsExactly("S1/pasta/plate/hero#1", "S1/pasta/plate/hero#2");
    }

    @Test
    void whatWasNotMadeWhileItsSetupWasShotIsNotMadeAnyMore() {
        assertThat(left(pasta(), "10:29", plan -> {}).net().copies()).hasSize(1);
        UnderWay shot = left(pasta(), "10:30", plan -> {});
        assertThat(shot.net().copies()).isEmpty();
        assertThat(shot.net().past().missed()).hasSize(1);
    }

    /** From 6:00 to 18:00 with a break of half an hour after five hours at most: two are due, 7:00 to 11:00 and 12:30 to 16:30. */
    @Test
    void breaksThatAreStillDueFollowTheLastThatBegan() {
        TestDays days = pasta().with(it -> it.mealAfter = Optional.of(300));
        assertThat(breaks(left(days, "05:00", plan -> {}))).containsExactly("420-660", "750-990");
        // after one until 9:10 the rest takes one more, until 14:10, and not before 12:30
        assertThat(breaks(left(days, "09:15", plan -> plan.meal("Ana", "08:40-09:10"))))
                .containsExactly("750-850");
        // by 12:00 the first is overdue
        assertThat(breaks(left(days, "12:00", plan -> {}))).containsExactly("720-750", "750-990");
        // who is away from 10:40 until 13:00 may have it once back, if it is too late to have it before
        days.person("Ana", ana -> ana.away = List.of(new Absence.During(TestDays.span("10:40-13:00"))));
        assertThat(breaks(left(days, "10:10", plan -> {}))).containsExactly("610-660", "750-990");
        assertThat(breaks(left(days, "10:11", plan -> {}))).containsExactly("611-810", "750-990");
    }

    private static List<String> breaks(UnderWay left) {
        int midnight = left.net().origin().minutesUntil(TestDays.at("00:00"));
        return left.net().breaks().stream()
                .map(meal -> (meal.earliest() - midnight) + "-" + (meal.latest() - midnight))
                .toList();
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
                Optional<Moment> until =
                        Optional.of(now.plus(random.nextInt(60))).filter(it -> random.nextBoolean());
                all.add(happening(Happening.What.WAITS, copy, work.step(), until));
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
