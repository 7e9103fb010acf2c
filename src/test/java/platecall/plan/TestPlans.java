package platecall.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.TestDays;
import platecall.looks.LookLife;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Points;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Verdict;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * Writes small plans for tests. A copy is made if its work is given, and stands in the plan with the times that follow from
 * it; a work's hands are on throughout unless said otherwise.
 */
public final class TestPlans {

    private final Day day;
    private final List<WorkPart> work = new ArrayList<>();
    private final List<Break> breaks = new ArrayList<>();
    private final Map<String, Integer> copies = new HashMap<>();
    private Optional<Moment> asOf = Optional.empty();

    private TestPlans(Day day) {
        this.day = day;
    }

    public static TestPlans of(Day day) {
        return new TestPlans(day);
    }

    /** Parts of a work. */
    public static final class WorkPart {
        private final Work.Kind kind;
        private final String dish;
        private final String step;
        private final Span span;
        private final List<String> copies = new ArrayList<>();
        private final List<StationHold> stations = new ArrayList<>();
        private final List<Hands> hands = new ArrayList<>();
        private final List<Storing> storage = new ArrayList<>();
        private Optional<Integer> oven = Optional.empty();

        private WorkPart(Work.Kind kind, String dish, String step, Span span) {
            this.kind = kind;
            this.dish = dish;
            this.step = step;
            this.span = span;
        }

        /** Whose hands, from its start to its end. */
        public WorkPart by(String... people) {
            for (String person : people) {
                hands.add(new Hands(person, span));
            }
            return this;
        }

        /** A person's hands for a part of the time. */
        public WorkPart hands(String person, String fromTo) {
            hands.add(new Hands(person, TestDays.span(fromTo)));
            return this;
        }

        public WorkPart on(String station, int units) {
            stations.add(new StationHold(station, units));
            return this;
        }

        public WorkPart at(int celsius) {
            oven = Optional.of(celsius);
            return this;
        }

        /** One more copy of a batch, by its id. */
        public WorkPart and(String copy) {
            copies.add(copy);
            return this;
        }

        /** The first copy waits afterwards. */
        public WorkPart then(String station, int units, String fromTo) {
            storage.add(new Storing(copies.get(0), station, units, TestDays.span(fromTo)));
            return this;
        }
    }

    /** A step for copy {@code number} of the first need of {@code dish}, on the usual date. */
    public TestPlans step(String dish, String step, int number, String fromTo, WorkChange change) {
        return add(Work.Kind.STEP, dish, step, firstNeed(dish) + "#" + number, TestDays.span(fromTo), change);
    }

    public TestPlans carry(String dish, int number, String fromTo, WorkChange change) {
        return add(Work.Kind.CARRY, dish, "carry", firstNeed(dish) + "#" + number, TestDays.span(fromTo), change);
    }

    /** Any work, for any copy. */
    public TestPlans add(Work.Kind kind, String dish, String step, String copy, Span span, WorkChange change) {
        WorkPart part = new WorkPart(kind, dish, step, span);
        part.copies.add(copy);
        change.to(part);
        work.add(part);
        return this;
    }

    /** What a test says of a work. */
    @FunctionalInterface
    public interface WorkChange {
        void to(WorkPart work);
    }

    public TestPlans meal(String person, String fromTo) {
        return meal(person, TestDays.span(fromTo));
    }

    public TestPlans meal(String person, Span span) {
        breaks.add(new Break(person, span));
        return this;
    }

    /** The plan was made then, on a day under way. */
    public TestPlans asOf(String time) {
        asOf = Optional.of(TestDays.at(time));
        return this;
    }

    /** How many copies of a need stand in the plan; without it those that it fixes or that takes at worst use up. */
    public TestPlans copies(String need, int count) {
        copies.put(need, count);
        return this;
    }

    private String firstNeed(String dish) {
        return day.needs().stream()
                .filter(need -> need.dish().equals(dish))
                .map(Need::key)
                .findFirst()
                .orElseThrow();
    }

    public Plan build() {
        List<Work> numbered = new ArrayList<>();
        for (WorkPart part : work) {
            numbered.add(new Work(
                    "w" + (numbered.size() + 1),
                    part.kind,
                    part.dish,
                    part.step,
                    part.copies,
                    part.span,
                    part.stations,
                    part.oven,
                    part.hands,
                    part.storage));
        }
        List<PlannedCopy> planned = new ArrayList<>();
        long late = 0;
        long offPeak = 0;
        long handChanges = 0;
        for (Need need : day.needs()) {
            Setup setup = day.setup(need.setup()).orElseThrow();
            int count = copies.getOrDefault(need.key(), need.copies().orElse(CameraTime.copiesAtWorst(setup, need)));
            for (int number = 1; number <= count; number++) {
                PlannedCopy copy = copy(need, number, numbered);
                planned.add(copy);
                late += (long) copy.lateMinutes()
                        * setup.weight()
                        * day.facts().prices().lateMinute();
                offPeak += (long) copy.offPeakMinutes()
                        * need.looksWeight()
                        * day.facts().prices().offPeakMinute();
                handChanges += copy.made() ? handChangePoints(copy.id(), numbered) : 0;
            }
        }
        long kitchen = 0;
        List<Moment> calls = new ArrayList<>();
        for (Span hours : day.facts().kitchenHours()) {
            TreeSet<Moment> starts = new TreeSet<>();
            numbered.stream()
                    .map(item -> item.span().start())
                    .filter(hours::contains)
                    .forEach(starts::add);
            if (!starts.isEmpty()) {
                calls.add(starts.first());
                kitchen += (long) starts.first().minutesUntil(hours.end())
                        * day.facts().prices().kitchenMinute();
            }
        }
        return new Plan(
                day.facts().title(),
                "digest",
                "test",
                1,
                0,
                asOf,
                calls,
                planned,
                numbered,
                breaks,
                new Points(late, offPeak, kitchen, handChanges, 0),
                Optional.empty(),
                new Verdict(List.of(), 0, 0, List.of()));
    }

    private PlannedCopy copy(Need need, int number, List<Work> all) {
        String id = need.key() + "#" + number;
        Setup setup = day.setup(need.setup()).orElseThrow();
        Dish dish = day.dish(need.dish()).orElseThrow();
        CameraTime camera = CameraTime.of(setup, need, number);
        Optional<Moment> plated = end(id, need.stage(), all);
        Optional<Moment> ready = day.minutesToCamera(need) > 0 ? end(id, "carry", all) : plated;
        boolean made = plated.isPresent() && ready.isPresent();
        int late = 0;
        int offPeak = 0;
        long points = 0;
        int peakFrom = dish.look().peakFrom().orElse(0);
        int peakTo = dish.look().peakTo().orElse(LookLife.MOST_MINUTES);
        int usableTo = dish.look().usableTo().orElse(LookLife.MOST_MINUTES);
        if (made) {
            Moment roll = Moment.later(camera.due(), ready.get());
            int age = plated.get().minutesUntil(roll);
            int ageAtCut = age + camera.showMinutes();
            late = camera.due().minutesUntil(roll) + Math.max(0, ageAtCut - usableTo);
            offPeak = Math.max(0, peakFrom - age) + Math.max(0, ageAtCut - peakTo);
            points = (long) late * setup.weight() * day.facts().prices().lateMinute()
                    + (long) offPeak * need.looksWeight() * day.facts().prices().offPeakMinute()
                    + handChangePoints(id, all);
        }
        return new PlannedCopy(
                id,
                need.key(),
                need.setup(),
                need.dish(),
                need.stage(),
                need.part().word(),
                number,
                camera.due(),
                camera.showMinutes(),
                made,
                plated.filter(end -> made),
                ready.filter(end -> made),
                plated.filter(end -> made).map(end -> end.plus(peakFrom)),
                plated.filter(end -> made).map(end -> end.plus(peakTo)),
                plated.filter(end -> made).map(end -> end.plus(usableTo)),
                late,
                offPeak,
                points,
                day.foodCost(need),
                day.releaseOf(setup),
                dish.heldIn());
    }

    private static Optional<Moment> end(String copy, String step, List<Work> all) {
        return all.stream()
                .filter(item -> item.copies().contains(copy) && item.step().equals(step))
                .map(item -> item.span().end())
                .findFirst();
    }

    private long handChangePoints(String copy, List<Work> all) {
        long people = all.stream()
                .filter(item -> item.copies().contains(copy))
                .flatMap(item -> item.hands().stream())
                .map(Hands::person)
                .distinct()
                .count();
        return Math.max(0, people - 1) * day.facts().prices().handChange();
    }

    /** A plan with one of its copies changed. */
    public static Plan withCopy(Plan plan, PlannedCopy changed) {
        return with(
                plan,
                plan.copies().stream()
                        .map(copy -> copy.id().equals(changed.id()) ? changed : copy)
                        .toList(),
                plan.kitchenCalls(),
                plan.points());
    }

    /** A plan that says something else of itself. */
    public static Plan with(Plan plan, List<PlannedCopy> copies, List<Moment> kitchenCalls, Points points) {
        return new Plan(
                plan.day(),
                plan.dayDigest(),
                plan.version(),
                plan.seed(),
                plan.moves(),
                plan.asOf(),
                kitchenCalls,
                copies,
                plan.work(),
                plan.breaks(),
                points,
                plan.bound(),
                plan.verdict());
    }
}
