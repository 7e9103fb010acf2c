package platecall.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Happening;
import platecall.day.Need;
import platecall.day.Person;
import platecall.day.Station;
import platecall.day.Step;
import platecall.day.Trouble;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * How far a plan has been carried out by now: what is known is taken as it is, all else as planned, or held up by what is known;
 * everybody keeps the plan's order. It goes on to the end of the day, so that it tells, too, what comes of the plan if nobody changes it.
 * Where a copy is lost that is still to come, the next ones of its need take each other's place, so that the last is missing.
 *
 * @param now the minute
 * @param begun works that have begun, as they happen, with the copies that aren't lost; in order of time
 * @param breaks meal breaks that have begun
 * @param inHand the plan to stay close to: what has begun is as it is, all else as it was planned for each copy's place
 * @param onPaper what stands on the papers that people have and has not begun, for what is lost, too
 * @param carriedOn the plan as it is carried out, past and future, without storage, points and verdict: what a copy's times would be
 *     stands in its works. What is lost has no works in it
 * @param lost ids of copies that can't be used any more, as the plan in hand numbers them: noted as lost, on a heat that is closed, or given
 *     as useless
 * @param renamed for each copy that takes another's place the id of that one
 * @param notBefore for steps of copies that wait the time before which they aren't begun
 * @param warming for each fridge, freezer and hot hold that is closed by now, or was since, ids of the copies that stand in it, as the
 *     plan in hand numbers them
 * @param unwanted for each storage ids of the copies that stand in it and that the sheets don't ask for any more: setup or need is gone
 */
public record SoFar(
        Moment now,
        List<Work> begun,
        List<Break> breaks,
        Plan inHand,
        Plan onPaper,
        Plan carriedOn,
        Set<String> lost,
        Map<String, String> renamed,
        Map<CopyStep, Moment> notBefore,
        Map<String, Set<String>> warming,
        Map<String, Set<String>> unwanted) {

    /**
     * Carries a plan out.
     *
     * @param day the day as it is known now
     * @param plan the plan that people keep
     * @param happenings what went otherwise than planned, since that plan was made
     * @param troubles is given what in them doesn't fit day or plan; each row as numbered from 0
     */
    public static SoFar of(
            Day day, Plan plan, Moment now, List<Happening> happenings, String sheet, List<Trouble> troubles) {
        return of(day, plan, now, happenings, Set.of(), sheet, troubles);
    }

    /**
     * The same where some copies can't go on any more, so that others take their places.
     *
     * @param useless their ids, as the plan in hand numbers them
     */
    public static SoFar of(
            Day day,
            Plan plan,
            Moment now,
            List<Happening> happenings,
            Set<String> useless,
            String sheet,
            List<Trouble> troubles) {
        Noted noted = new Noted(day, plan, now, sheet, troubles);
        for (int row = 0; row < happenings.size(); row++) {
            noted.note(row, happenings.get(row));
        }
        return new Reckoning(day, plan, now, noted).carriedOut(useless);
    }

    private static final class Reckoning {

        private final Day day;
        private final Plan plan;
        private final Moment now;
        private final Noted noted;
        private final Rehearsal rehearsal;
        private final boolean[] begun;

        private final Set<String> lost = new LinkedHashSet<>();
        private final Map<String, String> renamed = new LinkedHashMap<>();
        /** For each copy, as the plan numbers it, the steps that have begun for it. */
        private final Map<String, Set<String>> begunFor = new HashMap<>();

        Reckoning(Day day, Plan plan, Moment now, Noted noted) {
            this.day = day;
            this.plan = plan;
            this.now = now;
            this.noted = noted;
            rehearsal = new Rehearsal(day, plan, 0);
            begun = new boolean[plan.work().size() + plan.breaks().size()];
        }

        SoFar carriedOut(Set<String> useless) {
            noted.tellContradictions(rehearsal);
            rehearsal.carryOut(noted.facts, now.epochMinute(), null);
            noted.tellImpossible(rehearsal);
            for (int i = 0; i < begun.length; i++) {
                begun[i] = rehearsal.start[i] < now.epochMinute();
            }
            for (Work work : worksThat(true)) {
                work.copies()
                        .forEach(copy -> begunFor.computeIfAbsent(copy, it -> new HashSet<>())
                                .add(work.step()));
            }
            noted.tellUnbegun(begun);
            lost.addAll(noted.lostBy.keySet());
            lost.retainAll(begunFor.keySet());
            noted.tellLost(lost);
            lost.addAll(cutOff());
            lost.addAll(useless);
            Set<String> missing = missing();
            List<PlannedCopy> left = plan.copies().stream()
                    .filter(copy -> !missing.contains(copy.id()))
                    .toList();
            boolean[] all = new boolean[begun.length];
            Arrays.fill(all, true);
            Plan carriedOn = with(Optional.of(now), plan.copies(), works(all), breaks(all));
            // once more without what hasn't begun: it holds up what has only if nobody plans otherwise
            rehearsal.carryOut(noted.facts, now.epochMinute(), begun);
            List<Work> past = relieved(works(begun), breaks(begun));
            List<Work> toCome = worksThat(false);
            List<Work> asPlanned = new ArrayList<>(past);
            toCome.forEach(work -> asPlanned.add(at(work, work.span(), forPlaces(work))));
            return new SoFar(
                    now,
                    past,
                    breaks(begun),
                    with(plan.asOf(), left, asPlanned, plan.breaks()),
                    with(plan.asOf(), plan.copies(), toCome, plan.breaks()),
                    carriedOn,
                    Collections.unmodifiableSet(lost),
                    renamed,
                    notBefore(),
                    warming(),
                    unwanted());
        }

        /** The works, as planned, that have begun, or those that haven't. */
        private List<Work> worksThat(boolean haveBegun) {
            return IntStream.range(0, plan.work().size())
                    .filter(i -> begun[i] == haveBegun)
                    .mapToObj(plan.work()::get)
                    .toList();
        }

        private Map<CopyStep, Moment> notBefore() {
            Map<CopyStep, Moment> notBefore = new LinkedHashMap<>();
            noted.waits.forEach((i, until) -> {
                Work work = plan.work().get(i);
                if (!begun[i]) {
                    // what is made anew waits for the same
                    Stream<String> anew = work.copies().stream()
                            .filter(place -> foodIn(place)
                                    .map(food -> begunFor.getOrDefault(food, Set.of()))
                                    .filter(steps -> steps.contains(work.step()))
                                    .isEmpty());
                    Stream.concat(forPlaces(work).stream(), anew)
                            .forEach(place -> notBefore.put(work.with(place), until));
                }
            });
            return notBefore;
        }

        /** What stands in stores that keep it cold or hot, but weren't open all the time: nobody knows from the plan how warm it is by now. */
        private Map<String, Set<String>> warming() {
            Map<String, List<Span>> hours = new LinkedHashMap<>();
            for (Station station : day.stations()) {
                if (station.kind().keepsColdOrHot()) {
                    hours.put(station.id(), day.hoursOf(station));
                }
            }
            // of a store that the sheets don't have any more nobody knows what it kept
            plan.work().stream()
                    .flatMap(work -> work.storage().stream())
                    .filter(storing -> day.station(storing.station()).isEmpty())
                    .forEach(storing -> hours.put(storing.station(), List.of()));
            Map<String, Set<String>> warming = new LinkedHashMap<>();
            hours.forEach((store, open) -> {
                Set<String> standing = standingIn(store, open);
                if (!standing.isEmpty()) {
                    warming.put(store, standing);
                }
            });
            return warming;
        }

        /** What stands in stores for needs that the sheets don't have any more. */
        private Map<String, Set<String>> unwanted() {
            Set<String> needs = day.needs().stream().map(Need::key).collect(Collectors.toSet());
            Map<String, Set<String>> unwanted = new LinkedHashMap<>();
            for (Work work : worksThat(true)) {
                for (Storing storing : work.storage()) {
                    // the sheets may not know its recipe any more, but the plan tells what it waits for
                    boolean stands = worksThat(false).stream()
                            .anyMatch(next -> next.copies().contains(storing.copy())
                                    && next.span().start().equals(storing.span().end()));
                    boolean known = needs.contains(noted.copy(storing.copy()).need());
                    if (stands && !known && !lost.contains(storing.copy())) {
                        unwanted.computeIfAbsent(storing.station(), store -> new LinkedHashSet<>())
                                .add(storing.copy());
                    }
                }
            }
            return unwanted;
        }

        /** Copies that stand in a store that was closed for some of that time. */
        private Set<String> standingIn(String store, List<Span> hours) {
            Set<String> standing = new LinkedHashSet<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                boolean underWay = rehearsal.span(i).end().isAfter(now);
                Moment since =
                        underWay ? rehearsal.span(i).start() : rehearsal.span(i).end();
                if (!begun[i] || hours.stream().anyMatch(open -> !since.isBefore(open.start()) && open.contains(now))) {
                    continue;
                }
                Stream<String> there = underWay
                        ? work.copies().stream()
                                .filter(copy -> work.stations().stream()
                                        .anyMatch(hold -> hold.station().equals(store)))
                        : work.storage().stream()
                                .filter(storing -> storing.station().equals(store))
                                .map(Storing::copy)
                                .filter(copy -> waitsAfter(work, copy));
                there.filter(copy -> !lost.contains(copy) && noted.isToCome(noted.copy(copy)))
                        .forEach(standing::add);
            }
            return standing;
        }

        /** Whether anything that a copy goes through next, after a work that has ended, has yet to begin. */
        private boolean waitsAfter(Work work, String copy) {
            return worksThat(false).stream()
                    .filter(next -> next.copies().contains(copy))
                    .anyMatch(next -> next.kind() == Work.Kind.CARRY
                            ? noted.copy(copy).stage().equals(work.step())
                            : day.step(next.dish(), next.step())
                                    .filter(step -> step.predecessors().contains(work.step()))
                                    .isPresent());
        }

        /**
         * Copies of what is under way on a burner or in an oven that is closed now, or was to be used while it is closed, or in an oven
         * that the sheets don't have any more: where it broke nothing cooks. What only takes longer than the hours may go on.
         */
        private Set<String> cutOff() {
            Set<String> cut = new LinkedHashSet<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                Span took = rehearsal.span(i);
                Moment until = Moment.earlier(
                        Moment.earlier(work.span().end(), took.end()),
                        took.start().plus(work.span().minutes()));
                boolean gone = work.ovenCelsius().isPresent()
                        && work.stations().stream()
                                .allMatch(hold -> day.station(hold.station()).isEmpty());
                boolean heated = !gone
                        && work.stations().stream()
                                .flatMap(hold -> day.station(hold.station()).stream())
                                .filter(station ->
                                        station.kind() == Station.Kind.OVEN || station.kind() == Station.Kind.BURNERS)
                                .map(day::hoursOf)
                                .allMatch(hours -> hours.stream().anyMatch(open -> open.contains(now))
                                        && hours.stream()
                                                .anyMatch(open -> !took.start().isBefore(open.start())
                                                        && !open.end().isBefore(until)));
                if (begun[i] && took.end().isAfter(now) && !heated) {
                    work.copies().stream()
                            .filter(copy -> noted.isToCome(noted.copy(copy)))
                            .forEach(cut::add);
                }
            }
            return cut;
        }

        /** Some of the works as they were carried out, in order of time. */
        private List<Work> works(boolean[] which) {
            List<Work> works = new ArrayList<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                if (which[i]) {
                    works.add(at(work, rehearsal.span(i), begun[i] ? ofFood(work) : forPlaces(work)));
                }
            }
            works.sort(Comparator.comparing(Work::span));
            return works;
        }

        /**
         * What is left of hands' time of those who aren't there any more goes to others, if somebody can do it; but for what is
         * carried, which is on its way.
         */
        private List<Work> relieved(List<Work> past, List<Break> pauses) {
            List<Work> relieved = new ArrayList<>(past);
            for (int i = 0; i < relieved.size(); i++) {
                if (relieved.get(i).kind() != Work.Kind.STEP || !serves(relieved.get(i))) {
                    continue;
                }
                for (Hands hands : relieved.get(i).hands()) {
                    Work work = relieved.get(i);
                    int at = i;
                    Moment gone = goneFrom(hands);
                    if (gone.isBefore(hands.span().end())) {
                        Span rest = new Span(gone, hands.span().end());
                        relief(work, rest, relieved, pauses)
                                .map(person -> handedOver(work, hands, rest, person))
                                .ifPresent(other -> relieved.set(at, other));
                    }
                }
            }
            return relieved;
        }

        /** Whether a work that has begun is for anything that the camera still wants. */
        private boolean serves(Work work) {
            return work.copies().stream().anyMatch(copy -> noted.isToCome(noted.copy(copy)));
        }

        /** First minute from now on at which somebody isn't there who is to be at work; its end if there is none. */
        private Moment goneFrom(Hands hands) {
            Moment from = Moment.later(now, hands.span().start());
            return hoursOf(hands.person()).stream()
                    .filter(on -> on.contains(from))
                    .map(Span::end)
                    .map(end -> Moment.earlier(end, hands.span().end()))
                    .findFirst()
                    .orElse(from);
        }

        private List<Span> hoursOf(String person) {
            return day.people().stream()
                    .filter(one -> one.id().equals(person))
                    .flatMap(one -> day.hoursOf(one).stream())
                    .toList();
        }

        /** Who can do the rest of a work: rather somebody who had nothing else to do then. */
        private Optional<String> relief(Work work, Span rest, List<Work> past, List<Break> pauses) {
            Optional<String> skill = day.step(work.dish(), work.step()).flatMap(Step::skill);
            List<String> able = day.people().stream()
                    .filter(person -> skill.map(person.skills()::contains).orElse(true))
                    .map(Person::id)
                    .filter(person -> hoursOf(person).stream().anyMatch(on -> on.contains(rest)))
                    .filter(person -> !isBusy(
                            person, rest, past.stream().filter(this::serves).toList(), pauses))
                    .toList();
            return able.stream()
                    .filter(person -> !isBusy(person, rest, plan.work(), plan.breaks()))
                    .findFirst()
                    .or(() -> able.stream().findFirst());
        }

        private static boolean isBusy(String person, Span span, List<Work> works, List<Break> pauses) {
            return Stream.concat(
                            works.stream()
                                    .flatMap(work -> work.hands().stream()
                                            .filter(hands -> hands.person().equals(person))
                                            .map(Hands::span)),
                            pauses.stream()
                                    .filter(pause -> pause.person().equals(person))
                                    .map(Break::span))
                    .anyMatch(span::overlaps);
        }

        private static Work handedOver(Work work, Hands hands, Span rest, String person) {
            List<Hands> all = new ArrayList<>(work.hands());
            int at = all.indexOf(hands);
            all.set(at, new Hands(person, rest));
            if (hands.span().start().isBefore(rest.start())) {
                all.add(at, new Hands(hands.person(), new Span(hands.span().start(), rest.start())));
            }
            return work.withHands(all);
        }

        /** The copies of a work that aren't lost, by the places that they have now. */
        private List<String> ofFood(Work work) {
            return work.copies().stream()
                    .filter(copy -> !lost.contains(copy))
                    .map(copy -> renamed.getOrDefault(copy, copy))
                    .toList();
        }

        /**
         * The places for which a work is still to be done: as it was planned for the place if what is in it now has come as far,
         * else as it was planned for what is in it.
         */
        private List<String> forPlaces(Work work) {
            List<String> places = new ArrayList<>();
            for (String copy : work.copies()) {
                if (foodIn(copy).filter(food -> asFar(food, copy)).isPresent()) {
                    places.add(copy);
                }
                String place = renamed.getOrDefault(copy, copy);
                if (!lost.contains(copy) && !place.equals(copy) && !asFar(copy, place)) {
                    places.add(place);
                }
            }
            return places;
        }

        /** Whether the same steps have begun for two copies. */
        private boolean asFar(String one, String other) {
            return one.equals(other)
                    || begunFor.getOrDefault(one, Set.of()).equals(begunFor.getOrDefault(other, Set.of()));
        }

        /** The copy that has a place now. */
        private Optional<String> foodIn(String place) {
            return renamed.entrySet().stream()
                    .filter(one -> one.getValue().equals(place))
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .or(() -> Optional.of(place).filter(copy -> !lost.contains(copy) && !renamed.containsKey(copy)));
        }

        private List<Break> breaks(boolean[] which) {
            List<Break> breaks = new ArrayList<>();
            for (int n = 0; n < plan.breaks().size(); n++) {
                int i = plan.work().size() + n;
                if (which[i]) {
                    breaks.add(new Break(plan.breaks().get(n).person(), rehearsal.span(i)));
                }
            }
            return breaks;
        }

        /**
         * Copies that are missing once those that are begun and still to come have taken the places of lost ones.
         */
        private Set<String> missing() {
            Set<String> missing = new HashSet<>(lost);
            Map<String, List<PlannedCopy>> toCome = plan.copies().stream()
                    .filter(copy -> copy.made() && noted.isToCome(copy) && begunFor.containsKey(copy.id()))
                    .collect(Collectors.groupingBy(PlannedCopy::need, LinkedHashMap::new, Collectors.toList()));
            for (List<PlannedCopy> places : toCome.values()) {
                places.sort(Comparator.comparingInt(PlannedCopy::number));
                List<PlannedCopy> left = places.stream()
                        .filter(copy -> !lost.contains(copy.id()))
                        .toList();
                for (int i = 0; i < places.size() && left.size() < places.size(); i++) {
                    if (i >= left.size()) {
                        missing.add(places.get(i).id());
                    } else {
                        missing.remove(places.get(i).id());
                        if (!left.get(i).equals(places.get(i))) {
                            renamed.put(left.get(i).id(), places.get(i).id());
                        }
                    }
                }
            }
            return missing;
        }

        private Plan with(Optional<Moment> asOf, List<PlannedCopy> copies, List<Work> work, List<Break> breaks) {
            return new Plan(
                    plan.day(),
                    plan.dayDigest(),
                    plan.version(),
                    plan.seed(),
                    plan.moves(),
                    asOf,
                    plan.kitchenCalls(),
                    copies,
                    work,
                    breaks,
                    plan.points(),
                    plan.bound(),
                    plan.verdict());
        }
    }

    /** The work at another time, for some copies; where they wait then isn't told. */
    private static Work at(Work work, Span span, List<String> copies) {
        List<Hands> hands = new ArrayList<>();
        for (Hands each : work.hands()) {
            boolean fromStart = !each.span().start().isAfter(work.span().start());
            boolean toEnd = !each.span().end().isBefore(work.span().end());
            boolean relieves = work.hands().stream()
                    .anyMatch(other -> !other.person().equals(each.person())
                            && other.span().end().equals(each.span().start()));
            Moment from = Moment.later(span.start(), moved(each.span().start(), work, fromStart || relieves, span));
            Moment to = moved(each.span().end(), work, !toEnd, span);
            to = toEnd ? to : Moment.earlier(span.end(), to);
            if (from.isBefore(to)) {
                hands.add(new Hands(each.person(), new Span(from, to)));
            }
        }
        return new Work(
                work.id(),
                work.kind(),
                work.dish(),
                work.step(),
                copies,
                span,
                work.stations(),
                work.ovenCelsius(),
                hands,
                List.of());
    }

    /** A moment as far from a work's start, or else from its end, as before. */
    private static Moment moved(Moment moment, Work work, boolean fromStart, Span span) {
        return fromStart
                ? span.start().plus(work.span().start().minutesUntil(moment))
                : span.end().plus(work.span().end().minutesUntil(moment));
    }
}
