package platecall.audit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToLongFunction;
import platecall.day.CameraTime;
import platecall.day.Need;
import platecall.day.Prices;
import platecall.day.Station;
import platecall.day.Step;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.units.Moment;
import platecall.units.Span;

/** What the plan says of itself is true: its names, the times of its copies, its kitchen calls and its points. */
final class Statements {

    private final Ledger ledger;
    private final Map<String, AtCamera> seen;
    private final Prices prices;
    private final Breaches breaches;
    private final List<String> wrong = new ArrayList<>();

    private Statements(Ledger ledger, Map<String, AtCamera> seen, Breaches breaches) {
        this.ledger = ledger;
        this.seen = seen;
        this.prices = ledger.day().facts().prices();
        this.breaches = breaches;
    }

    static void check(Ledger ledger, Map<String, AtCamera> seen, Breaches breaches) {
        Statements statements = new Statements(ledger, seen, breaches);
        statements.unique();
        ledger.plan().copies().forEach(statements::copy);
        ledger.plan().work().forEach(statements::work);
        ledger.plan().breaks().forEach(statements::meal);
        statements.kitchenCalls();
        statements.points();
    }

    private void report(String about) {
        List<String> all = List.copyOf(wrong);
        breaches.add(Rule.STATEMENT, all.size(), () -> about + ": " + Words.list(all));
        wrong.clear();
    }

    private void says(String what, Object said, Object found) {
        if (!Objects.equals(said, found)) {
            wrong.add("the plan says " + what + " " + word(said) + ", but it is " + word(found));
        }
    }

    private void knows(String what, String name, boolean known) {
        if (!known) {
            wrong.add("no such " + what + " [" + name + "]");
        }
    }

    private String word(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.map(this::word).orElse("none");
        }
        if (value instanceof Moment moment) {
            return ledger.words().clock(moment);
        }
        if (value instanceof Collection<?> all) {
            return all.isEmpty()
                    ? "none"
                    : Words.list(all.stream().map(this::word).toList());
        }
        return String.valueOf(value);
    }

    private void unique() {
        Set<String> known = new HashSet<>();
        for (PlannedCopy copy : ledger.plan().copies()) {
            if (!known.add("copy " + copy.id())) {
                wrong.add("copy [" + copy.id() + "] stands in it twice");
            }
        }
        for (Work work : ledger.plan().work()) {
            if (!known.add("work " + work.id())) {
                wrong.add("work [" + work.id() + "] stands in it twice");
            }
        }
        report("the plan");
    }

    private void copy(PlannedCopy copy) {
        Optional<Need> need = ledger.need(copy);
        knows("need", copy.need(), need.isPresent());
        need.ifPresent(known -> {
            CameraTime camera = ledger.cameraTime(copy);
            says("id", copy.id(), known.key() + "#" + copy.number());
            says("setup", copy.setup(), known.setup());
            says("dish", copy.dish(), known.dish());
            says("stage", copy.stage(), known.stage());
            says("part", copy.part(), known.part().word());
            says("due", copy.due(), camera.due());
            says("minutes on camera", copy.showMinutes(), camera.showMinutes());
            says("release", copy.releasedAt(), ledger.day().releaseOf(ledger.setup(known)));
            says("held in", copy.heldIn(), ledger.dish(known).heldIn());
            says("money", copy.money(), ledger.day().foodCost(known));
            times(copy, Optional.ofNullable(seen.get(copy.id())));
        });
        report(ledger.name(copy));
    }

    private void times(PlannedCopy copy, Optional<AtCamera> found) {
        says("plated", copy.plated(), found.map(AtCamera::plated));
        says("ready", copy.ready(), found.map(AtCamera::ready));
        says("peak from", copy.peakFrom(), found.map(AtCamera::peakFrom));
        says("peak to", copy.peakTo(), found.map(AtCamera::peakTo));
        says("usable to", copy.usableTo(), found.map(AtCamera::usableTo));
        says(
                "late minutes",
                copy.lateMinutes(),
                found.map(AtCamera::lateMinutes).orElse(0));
        says(
                "off-peak minutes",
                copy.offPeakMinutes(),
                found.map(AtCamera::offPeakMinutes).orElse(0));
        says(
                "points",
                copy.points(),
                found.map(one -> one.latePoints(ledger, prices)
                                + one.offPeakPoints(prices)
                                + one.handChangePoints(prices))
                        .orElse(0L));
    }

    private void work(Work work) {
        Optional<Step> step = ledger.step(work);
        knows("dish", work.dish(), ledger.dish(work).isPresent());
        knows("step", work.step(), work.kind() == Work.Kind.CARRY || step.isPresent());
        if (work.copies().isEmpty()) {
            wrong.add("it serves no copy");
        }
        for (String id : work.copies()) {
            // what has begun for a copy that isn't finished was done all the same
            knows(
                    "made copy",
                    id,
                    ledger.copy(id)
                            .filter(copy -> copy.made() || ledger.hasBegun(work))
                            .isPresent());
        }
        if (!ledger.hasBegun(work)) {
            means(work, step);
        }
        for (Storing storing : work.storage()) {
            storing(work, storing);
        }
        report(ledger.name(work) + " at " + ledger.words().clock(work.span().start()));
    }

    /** Where and by whom: what has begun may have had stations and people that the day has no longer. */
    private void means(Work work, Optional<Step> step) {
        boolean inOven = false;
        for (StationHold hold : work.stations()) {
            Optional<Station> station = ledger.station(hold.station());
            knows("station", hold.station(), station.isPresent());
            inOven |= station.filter(known -> known.kind() == Station.Kind.OVEN).isPresent();
        }
        says("oven", work.ovenCelsius(), inOven ? step.flatMap(Step::ovenCelsius) : Optional.empty());
        for (Hands hands : work.hands()) {
            knows("person", hands.person(), ledger.person(hands.person()).isPresent());
        }
    }

    private void storing(Work work, Storing storing) {
        knows("station", storing.station(), ledger.station(storing.station()).isPresent());
        boolean waits = work.copies().contains(storing.copy())
                && ledger.step(work).flatMap(Step::waitsIn).equals(Optional.of(storing.station()))
                && ledger.copy(storing.copy())
                        .flatMap(copy -> ledger.waiting(work, copy))
                        .filter(span -> span.contains(storing.span()))
                        .isPresent();
        if (!waits) {
            wrong.add("the plan says [" + storing.copy() + "] waits in " + storing.station() + " from "
                    + ledger.words().clock(storing.span()) + ", but it need not");
        }
    }

    private void meal(Break meal) {
        boolean known = ledger.plan().hasBegun(meal.span().start())
                || ledger.person(meal.person()).isPresent();
        knows("person", meal.person(), known);
        report("meal break at " + ledger.words().clock(meal.span().start()));
    }

    private void kitchenCalls() {
        List<Moment> calls = ledger.day().facts().kitchenHours().stream()
                .flatMap(span -> firstWork(span).stream())
                .toList();
        says("kitchen calls", ledger.plan().kitchenCalls(), calls);
        report("the plan");
    }

    private Optional<Moment> firstWork(Span kitchen) {
        return ledger.plan().work().stream()
                .map(work -> work.span().start())
                .filter(kitchen::contains)
                .min(Moment::compareTo);
    }

    private void points() {
        Plan.Points points = ledger.plan().points();
        long late = sum(one -> one.latePoints(ledger, prices));
        long offPeak = sum(one -> one.offPeakPoints(prices));
        long handChanges = sum(one -> one.handChangePoints(prices));
        long kitchen = 0;
        for (Span span : ledger.day().facts().kitchenHours()) {
            kitchen += (long) prices.kitchenMinute()
                    * firstWork(span)
                            .map(first -> first.minutesUntil(span.end()))
                            .orElse(0);
        }
        says("points for late minutes", points.late(), late);
        says("points for off-peak minutes", points.offPeak(), offPeak);
        says("points for the open kitchen", points.kitchen(), kitchen);
        says("points for changes of hands", points.handChanges(), handChanges);
        // from where it moved stands in neither day nor plan
        long minute = prices.movedMinute();
        if (points.moved() < 0 || (minute == 0 ? points.moved() != 0 : points.moved() % minute != 0)) {
            wrong.add("the plan says points for moved minutes " + points.moved() + ", but each costs " + minute);
        }
        long bound = ledger.plan().bound().orElse(0L);
        if (breaches.none() && wrong.isEmpty() && points.total() < bound) {
            wrong.add("the plan says no plan can cost less than " + bound + " points, but it costs " + points.total());
        }
        report("the plan");
    }

    private long sum(ToLongFunction<AtCamera> points) {
        return seen.values().stream().mapToLong(points).sum();
    }
}
