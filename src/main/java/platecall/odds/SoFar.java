package platecall.odds;

import java.util.ArrayList;
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
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Happening;
import platecall.day.Happening.What;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Spelling;
import platecall.day.Station;
import platecall.day.Step;
import platecall.day.Trouble;
import platecall.odds.Rehearsal.Fact;
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
        Map<String, Set<String>> warming) {

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
        Reckoning reckoning = new Reckoning(day, plan, now, sheet, troubles);
        for (int row = 0; row < happenings.size(); row++) {
            reckoning.note(row, happenings.get(row));
        }
        return reckoning.carriedOut(useless);
    }

    private static final class Reckoning {

        private static final int BEGAN = 0;
        private static final int ENDED = 1;
        private static final int WAITS = 2;

        private final Day day;
        private final Plan plan;
        private final Moment now;
        private final String sheet;
        private final List<Trouble> troubles;
        private final Fact[] facts;
        /** For each work and break the rows that tell when it began, when it ended, and that it waits; -1: none. */
        private final int[][] rows;

        /** Copies that are lost, each with the row that tells it. */
        private final Map<String, Integer> lostBy = new LinkedHashMap<>();

        /** Rows of lost copies that don't say which number. */
        private final Set<Integer> withoutNumber = new HashSet<>();

        /** For works that wait until after now from when on they may begin. */
        private final Map<Integer, Moment> waits = new LinkedHashMap<>();

        private final Set<String> lost = new LinkedHashSet<>();
        private final Map<String, String> renamed = new LinkedHashMap<>();
        /** For each copy, as the plan numbers it, the steps that have begun for it. */
        private final Map<String, Set<String>> begunFor = new HashMap<>();

        private final Map<String, PlannedCopy> copies = new HashMap<>();

        Reckoning(Day day, Plan plan, Moment now, String sheet, List<Trouble> troubles) {
            this.day = day;
            this.plan = plan;
            this.now = now;
            this.sheet = sheet;
            this.troubles = troubles;
            facts = Stream.generate(Fact::new)
                    .limit((long) plan.work().size() + plan.breaks().size())
                    .toArray(Fact[]::new);
            rows = Stream.generate(() -> new int[] {-1, -1, -1})
                    .limit(facts.length)
                    .toArray(int[][]::new);
            plan.copies().forEach(copy -> copies.put(copy.id(), copy));
            for (int i = 0; i < facts.length; i++) {
                Span span = i < plan.work().size()
                        ? plan.work().get(i).span()
                        : plan.breaks().get(i - plan.work().size()).span();
                if (plan.hasBegun(span.start())) {
                    facts[i].began = span.start().epochMinute();
                    facts[i].ended = span.end().epochMinute();
                }
            }
        }

        void note(int row, Happening it) {
            // what ended at a minute was there until the one before
            int until = it.what() == What.ENDED ? -1 : 0;
            if (it.time().isPresent() && !day.horizon().contains(it.time().get().plus(until))) {
                tell(row, "time", "", "lies outside the day", "Maybe the date is wrong, or missing.");
            } else if (it.what() == What.BEGAN && !it.time().orElseThrow().isBefore(now)) {
                tell(row, "time", "", "what began must lie before now", "Maybe it ended then, or hasn't begun.");
            } else if (it.what() == What.WAITS && it.time().filter(now::isAfter).isPresent()) {
                tell(row, "time", "", "is over by now", "Maybe a later time, or none; or tell when it began.");
            } else if (it.person().isPresent()) {
                noteBreak(row, it, it.person().get());
            } else if (known(row, it)) {
                if (it.what() == What.LOST) {
                    noteLost(row, it);
                } else {
                    noteWork(row, it);
                }
            }
        }

        private void tell(int row, String column, String value, String what, String wayOut) {
            troubles.add(new Trouble(sheet, row, column, value, what, wayOut));
        }

        /** Whether the day knows the names in a row; if not, it is told. */
        private boolean known(int row, Happening it) {
            int before = troubles.size();
            String dish = it.dish().orElseThrow();
            it.setup()
                    .ifPresent(setup -> know(
                            row,
                            "setup",
                            setup,
                            day.setups().stream().map(Setup::id).toList()));
            know(row, "dish", dish, day.dishes().stream().map(Dish::id).toList());
            if (troubles.size() == before && it.step().isPresent()) {
                List<String> steps = Stream.concat(day.stepsOf(dish).stream().map(Step::id), Stream.of(Happening.CARRY))
                        .toList();
                know(row, "step", it.step().get(), steps);
            }
            return troubles.size() == before;
        }

        private boolean know(int row, String column, String name, List<String> names) {
            if (!names.contains(name)) {
                tell(row, column, name, "is not known", Spelling.suggest(name, names));
                return false;
            }
            return true;
        }

        private boolean isMeant(Happening it, PlannedCopy copy) {
            return it.dish().equals(Optional.of(copy.dish()))
                    && it.setup().map(copy.setup()::equals).orElse(true)
                    && it.part().map(part -> part.word().equals(copy.part())).orElse(true)
                    && it.number().map(number -> number == copy.number()).orElse(true);
        }

        /** Setups for which a plan has a dish, if not for the one that is told; else the way out that is given. */
        private String orElsewhere(Happening it, String wayOut) {
            List<String> setups = plan.copies().stream()
                    .filter(copy -> copy.made() && it.dish().equals(Optional.of(copy.dish())))
                    .map(PlannedCopy::setup)
                    .distinct()
                    .toList();
            boolean elsewhere = !setups.isEmpty()
                    && it.setup().filter(setup -> !setups.contains(setup)).isPresent();
            return elsewhere ? "Maybe for setup " + String.join(", ", setups) + "." : wayOut;
        }

        private void noteLost(int row, Happening it) {
            List<PlannedCopy> meant = plan.copies().stream()
                    .filter(copy -> copy.made() && isMeant(it, copy))
                    .filter(copy -> it.step().map(copy.stage()::equals).orElse(true))
                    .toList();
            List<String> toCome =
                    meant.stream().filter(this::isToCome).map(PlannedCopy::id).toList();
            if (meant.isEmpty()) {
                tell(row, "", "", "the plan makes no such copy", orElsewhere(it, "Maybe leave part or number blank."));
            } else if (toCome.isEmpty()) {
                tell(row, "", "", "its takes are over by the sheets", "Maybe leave the row out, or move the call.");
            }
            toCome.forEach(copy -> lostBy.put(copy, row));
            if (it.number().isEmpty()) {
                withoutNumber.add(row);
            } else if (toCome.size() > 1) {
                tell(
                        row,
                        "step",
                        "",
                        "would mean " + toCome.size() + " copies: " + String.join(", ", toCome),
                        "Maybe tell the setup, the part, and in column step the stage in which it is wanted.");
            }
        }

        /** Whether the camera still wants a copy, by the day as it is now. */
        private boolean isToCome(PlannedCopy copy) {
            return day.needs().stream()
                    .filter(need -> need.key().equals(copy.need()))
                    .map(need -> CameraTime.leaves(day.setup(need.setup()).orElseThrow(), need, copy.number()))
                    .anyMatch(now::isBefore);
        }

        private void noteWork(int row, Happening it) {
            String step = it.step().orElseThrow();
            Work.Kind kind = step.equals(Happening.CARRY) ? Work.Kind.CARRY : Work.Kind.STEP;
            List<Integer> meant = new ArrayList<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                boolean serves = work.copies().stream()
                        .anyMatch(copy -> copies.containsKey(copy) && isMeant(it, copies.get(copy)));
                if (work.kind() == kind && work.step().equals(step) && serves) {
                    meant.add(i);
                }
            }
            if (meant.isEmpty()) {
                tell(
                        row,
                        "",
                        "",
                        "the plan has no such work",
                        orElsewhere(it, "Maybe leave setup, part or number blank."));
            } else if (it.what() == What.WAITS) {
                noteWaits(row, meant, it.time().orElse(now));
            } else if (meant.size() > 1) {
                List<String> numbers = meant.stream()
                        .map(i -> plan.work().get(i).copies().get(0))
                        .limit(3)
                        .toList();
                tell(
                        row,
                        "",
                        "",
                        "the plan does that " + meant.size() + " times",
                        "Maybe say which, by setup, part and number: " + String.join(", ", numbers)
                                + (meant.size() > 3 ? ", ..." : "") + ".");
            } else {
                noteTime(row, it, meant.get(0));
            }
        }

        private void noteBreak(int row, Happening it, String person) {
            if (!know(
                    row, "person", person, day.people().stream().map(Person::id).toList())) {
                return;
            }
            Moment about = it.time().orElse(now);
            List<Integer> all = IntStream.range(0, plan.breaks().size())
                    .filter(n -> plan.breaks().get(n).person().equals(person))
                    .boxed()
                    .toList();
            List<Integer> open =
                    all.stream().filter(n -> isOpen(n, it.what(), about)).toList();
            Optional<Integer> nearest = (open.isEmpty() ? all : open)
                    .stream()
                            .min(Comparator.comparingInt(
                                    n -> minutesBetween(plan.breaks().get(n), it.what(), about)));
            if (nearest.isEmpty()) {
                tell(row, "person", person, "has no meal break in the plan", "");
                return;
            }
            int i = plan.work().size() + nearest.get();
            if (it.what() == What.WAITS) {
                noteWait(row, i, now);
            } else {
                noteTime(row, it, i);
            }
        }

        /** Minutes between a time and that at which a break is planned to do what is told of it. */
        private static int minutesBetween(Break meal, What what, Moment at) {
            Span span = meal.span();
            return Math.abs((what == What.ENDED ? span.end() : span.start()).minutesUntil(at));
        }

        /** Whether a row can tell of a break what happened at a time: not if it was over before by the plan in hand. */
        private boolean isOpen(int meal, What what, Moment at) {
            int i = plan.work().size() + meal;
            long minute = at.epochMinute();
            long made = plan.asOf().map(Moment::epochMinute).orElse(minute);
            // one under way when the plan was made may end later than planned
            boolean over = what == What.ENDED ? facts[i].ended <= made && made < minute : facts[i].ended <= minute;
            return !isOfBefore(i) || !over;
        }

        /** Whether a work or break had begun when the plan in hand was made. */
        private boolean isOfBefore(int i) {
            return facts[i].began != Rehearsal.UNKNOWN && rows[i][BEGAN] < 0;
        }

        /** Copies of a work whose setups are shot by the sheets: they have been made, or are not made any more. */
        private List<String> shot(int i) {
            return plan.work().get(i).copies().stream()
                    .filter(copy -> day.setup(copies.get(copy).setup())
                            .filter(setup -> !setup.shooting().end().isAfter(now))
                            .isPresent())
                    .toList();
        }

        /** Notes that works wait; of those that are done once and again the ones for setups that aren't shot. */
        private void noteWaits(int row, List<Integer> meant, Moment until) {
            List<Integer> toCome = meant.stream()
                    .filter(i -> shot(i).size() < plan.work().get(i).copies().size())
                    .toList();
            for (int i : toCome) {
                shot(i).stream()
                        .findFirst()
                        .ifPresent(copy -> tell(
                                row,
                                "step",
                                plan.work().get(i).step(),
                                "can't wait: it is done together with " + copy + ", and setup "
                                        + copies.get(copy).setup() + " is shot by the sheets",
                                "Maybe a later step, lost if a copy is to be made anew, or a later call."));
            }
            (toCome.isEmpty() ? meant : toCome).forEach(i -> noteWait(row, i, until));
        }

        private void noteWait(int row, int i, Moment until) {
            if (isOfBefore(i)) {
                tell(row, "", "", "has begun by the plan in hand", "Maybe leave the row out.");
            } else {
                rows[i][WAITS] = row;
                facts[i].notBefore = Moment.later(now, until).epochMinute();
                if (until.isAfter(now)) {
                    waits.put(i, until);
                }
            }
        }

        private void noteTime(int row, Happening it, int i) {
            Fact fact = facts[i];
            long minute = it.time().orElseThrow().epochMinute();
            int which = it.what() == What.BEGAN ? BEGAN : ENDED;
            boolean over =
                    plan.asOf().map(made -> fact.ended <= made.epochMinute()).orElse(false);
            if (isOfBefore(i) && (which == BEGAN || over)) {
                tell(
                        row,
                        "",
                        "",
                        "has " + (over ? "ended" : "begun") + " by the plan in hand",
                        "Maybe leave the row out.");
            } else if (rows[i][which] >= 0) {
                tell(row, "", "", "is told twice", "Maybe remove one of the two.");
            } else {
                rows[i][which] = row;
                if (which == BEGAN) {
                    fact.began = minute;
                } else {
                    fact.ended = minute;
                }
                if (fact.began != Rehearsal.UNKNOWN && fact.ended != Rehearsal.UNKNOWN && fact.ended <= fact.began) {
                    tell(row, "time", "", "it can't end before it began", "Maybe a time is mistyped.");
                }
            }
        }

        /** Tells what is said to wait and to have begun by rows of its own; a row about several leaves out those that have begun. */
        private void begunAndWaiting() {
            for (int[] told : rows) {
                int row = told[WAITS];
                if (row >= 0 && Math.max(told[BEGAN], told[ENDED]) >= 0) {
                    if (Stream.of(rows).filter(other -> other[WAITS] == row).count() == 1) {
                        tell(
                                row,
                                "",
                                "",
                                "waits, but another row tells when it began or ended",
                                "Maybe remove one of the two.");
                    }
                    told[WAITS] = -1;
                }
            }
        }

        /** Tells what can't have begun, since what comes before it in its recipe had not ended. */
        private void contradictions(Rehearsal rehearsal) {
            for (int i = 0; i < plan.work().size(); i++) {
                int row = Math.max(rows[i][BEGAN], rows[i][ENDED]);
                long began = facts[i].began != Rehearsal.UNKNOWN ? facts[i].began : facts[i].ended - 1;
                for (int before : row < 0 ? new int[0] : rehearsal.before(i)) {
                    boolean waits = rows[before][WAITS] >= 0;
                    if (waits || facts[before].ended != Rehearsal.UNKNOWN && facts[before].ended > began) {
                        tell(
                                row,
                                "step",
                                plan.work().get(i).step(),
                                "can't have begun then: "
                                        + plan.work().get(before).step() + " before it "
                                        + (waits ? "waits" : "had not ended"),
                                "Maybe leave one of the two rows out.");
                    }
                }
            }
        }

        /** Whether the kitchen was open when somebody had to begin a work. */
        private boolean whileOpen(Work work, Span span) {
            return work.hands().stream()
                            .noneMatch(hands ->
                                    hands.span().start().equals(work.span().start()))
                    || day.facts().kitchenHours().stream().anyMatch(hours -> hours.contains(span.start()));
        }

        /** Tells of a step whose end is told that it would have had far too little time. */
        private void tooShort(Rehearsal rehearsal, int i) {
            int least = leastMinutes(plan.work().get(i));
            int minutes = span(rehearsal, i).minutes();
            boolean possible = facts[i].began == Rehearsal.UNKNOWN || facts[i].began < facts[i].ended;
            if (rows[i][ENDED] >= 0 && possible && 2 * minutes < least) {
                tell(
                        rows[i][ENDED],
                        "time",
                        "",
                        "would be after " + minutes + " min, and it takes " + least + " at least",
                        "Maybe the time is mistyped, or tell when it began; what came out too soon is lost.");
            }
        }

        private int leastMinutes(Work work) {
            return day.step(work.dish(), work.step()).map(Step::minutesLow).orElse(0);
        }

        /** Tells of a row that what nobody told of, and comes before in the recipe, would have had far too little time for it. */
        private void squeezed(Rehearsal rehearsal, int i, int row) {
            for (int before : rehearsal.before(i)) {
                if (isOfBefore(before) || Math.max(rows[before][BEGAN], rows[before][ENDED]) >= 0) {
                    continue;
                }
                Work work = plan.work().get(before);
                Span took = span(rehearsal, before);
                int least = leastMinutes(work);
                boolean open = whileOpen(work, took);
                int minutes = minutesSince(rehearsal, before, took);
                if (!open || 2 * minutes < least) {
                    tell(
                            row,
                            "time",
                            "",
                            open
                                    ? "leaves " + minutes + " min for " + work.step() + " before it, which takes "
                                            + least + " at least"
                                    : work.step() + " before it would have begun while the kitchen was closed",
                            "Maybe tell when " + work.step() + " began or ended, too.");
                } else if (!took.equals(work.span())) {
                    squeezed(rehearsal, before, row);
                }
            }
        }

        /** Minutes of a work from when what comes before it in its recipe had ended. */
        private int minutesSince(Rehearsal rehearsal, int i, Span took) {
            Moment from = took.start();
            for (int before : rehearsal.before(i)) {
                from = Moment.later(from, span(rehearsal, before).end());
            }
            return Math.max(0, from.minutesUntil(took.end()));
        }

        /** Tells of a meal break that began while its person was at what another row, or the plan's own past, has later. */
        private void stillAtWork(Rehearsal rehearsal, int meal) {
            String person = plan.breaks().get(meal - plan.work().size()).person();
            for (Work work : rehearsal.stillAt(meal)) {
                tell(
                        rows[meal][BEGAN],
                        "time",
                        "",
                        "can't have begun then: " + person + " was still at " + work.step() + " of " + work.dish(),
                        "Maybe tell when " + work.step() + " ended, or leave one of the two rows out.");
            }
        }

        SoFar carriedOut(Set<String> useless) {
            Rehearsal rehearsal = new Rehearsal(day, plan, 0);
            begunAndWaiting();
            contradictions(rehearsal);
            long minute = now.epochMinute();
            rehearsal.carryOut(facts, minute, null);
            for (int i = 0; i < plan.work().size(); i++) {
                int row = Math.max(rows[i][BEGAN], rows[i][ENDED]);
                if (row >= 0
                        && rows[i][BEGAN] < 0
                        && !isOfBefore(i)
                        && !whileOpen(plan.work().get(i), span(rehearsal, i))) {
                    tell(
                            row,
                            "time",
                            "",
                            "it would have begun while the kitchen was closed",
                            "Maybe the time is mistyped, or tell when it began, too.");
                } else if (row >= 0) {
                    tooShort(rehearsal, i);
                    squeezed(rehearsal, i, row);
                }
            }
            for (int i = plan.work().size(); i < facts.length; i++) {
                if (rows[i][BEGAN] >= 0) {
                    squeezed(rehearsal, i, rows[i][BEGAN]);
                    stillAtWork(rehearsal, i);
                }
            }
            boolean[] all = new boolean[facts.length];
            boolean[] begun = new boolean[facts.length];
            for (int i = 0; i < facts.length; i++) {
                all[i] = true;
                begun[i] = rehearsal.start[i] < minute;
            }
            for (int i = 0; i < plan.work().size(); i++) {
                if (begun[i]) {
                    for (String copy : plan.work().get(i).copies()) {
                        begunFor.computeIfAbsent(copy, it -> new HashSet<>())
                                .add(plan.work().get(i).step());
                    }
                }
            }
            tellUnbegun(begun);
            lost.addAll(lostBy.keySet());
            lost.retainAll(begunFor.keySet());
            tellLost();
            lost.addAll(cutOff(rehearsal, begun));
            lost.addAll(useless);
            Set<String> missing = missing();
            List<PlannedCopy> left = plan.copies().stream()
                    .filter(copy -> !missing.contains(copy.id()))
                    .toList();
            Plan carriedOn =
                    with(Optional.of(now), plan.copies(), works(rehearsal, all, begun), breaks(rehearsal, all));
            // once more without what hasn't begun: it holds up what has only if nobody plans otherwise
            rehearsal.carryOut(facts, minute, begun);
            List<Work> past = relieved(works(rehearsal, begun, begun), breaks(rehearsal, begun));
            List<Work> toCome = new ArrayList<>();
            List<Work> asPlanned = new ArrayList<>(past);
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                if (!begun[i]) {
                    toCome.add(work);
                    asPlanned.add(at(work, work.span(), forPlaces(work)));
                }
            }
            return new SoFar(
                    now,
                    past,
                    breaks(rehearsal, begun),
                    with(plan.asOf(), left, asPlanned, plan.breaks()),
                    with(plan.asOf(), plan.copies(), toCome, plan.breaks()),
                    carriedOn,
                    Collections.unmodifiableSet(lost),
                    renamed,
                    notBefore(begun),
                    warming(rehearsal, begun));
        }

        private Map<CopyStep, Moment> notBefore(boolean[] begun) {
            Map<CopyStep, Moment> notBefore = new LinkedHashMap<>();
            waits.forEach((i, until) -> {
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
        private Map<String, Set<String>> warming(Rehearsal rehearsal, boolean[] begun) {
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
                Set<String> standing = standingIn(store, open, rehearsal, begun);
                if (!standing.isEmpty()) {
                    warming.put(store, standing);
                }
            });
            return warming;
        }

        /** Copies that stand in a store that was closed for some of that time. */
        private Set<String> standingIn(String store, List<Span> hours, Rehearsal rehearsal, boolean[] begun) {
            Set<String> standing = new LinkedHashSet<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                boolean underWay = span(rehearsal, i).end().isAfter(now);
                Moment since = underWay
                        ? span(rehearsal, i).start()
                        : span(rehearsal, i).end();
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
                                .filter(copy -> waitsAfter(work, copy, begun));
                there.filter(copy -> !lost.contains(copy) && isToCome(copies.get(copy)))
                        .forEach(standing::add);
            }
            return standing;
        }

        /** Whether anything that a copy goes through next, after a work that has ended, has yet to begin. */
        private boolean waitsAfter(Work work, String copy, boolean[] begun) {
            for (int i = 0; i < plan.work().size(); i++) {
                Work next = plan.work().get(i);
                if (!begun[i] && next.copies().contains(copy)) {
                    boolean follows = next.kind() == Work.Kind.CARRY
                            ? copies.get(copy).stage().equals(work.step())
                            : day.step(next.dish(), next.step())
                                    .filter(step -> step.predecessors().contains(work.step()))
                                    .isPresent();
                    if (follows) {
                        return true;
                    }
                }
            }
            return false;
        }

        /**
         * Copies of what is under way on a burner or in an oven that is closed now, or was to be used while it is closed, or in an oven
         * that the sheets don't have any more: where it broke nothing cooks. What only takes longer than the hours may go on.
         */
        private Set<String> cutOff(Rehearsal rehearsal, boolean[] begun) {
            Set<String> cut = new LinkedHashSet<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                Span took = span(rehearsal, i);
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
                            .filter(copy -> isToCome(copies.get(copy)))
                            .forEach(cut::add);
                }
            }
            return cut;
        }

        /** What ends at or after now must have begun to be of any use. */
        private void tellUnbegun(boolean[] begun) {
            for (int i = 0; i < facts.length; i++) {
                if (rows[i][ENDED] >= 0 && !begun[i]) {
                    tell(rows[i][ENDED], "time", "", "it has not begun by the plan", "Maybe tell when it began.");
                }
            }
        }

        /** A row of which nothing has begun tells of nothing that can be lost; one of several copies must say which. */
        private void tellLost() {
            for (int row : withoutNumber) {
                List<String> all =
                        lost.stream().filter(copy -> lostBy.get(copy) == row).toList();
                if (all.size() > 1) {
                    tell(
                            row,
                            "number",
                            "",
                            "would mean " + all.size() + " copies: "
                                    + all.stream().limit(3).collect(Collectors.joining(", "))
                                    + (all.size() > 3 ? ", ..." : ""),
                            "Maybe a row for each that is lost, with its number.");
                }
            }
            lostBy.values().stream()
                    .distinct()
                    .filter(row -> lostBy.entrySet().stream()
                            .noneMatch(one -> one.getValue().equals(row) && lost.contains(one.getKey())))
                    .forEach(row -> tell(row, "", "", "nothing of it has begun", "Maybe leave the row out."));
        }

        /** Some of the works as they were carried out, in order of time. */
        private List<Work> works(Rehearsal rehearsal, boolean[] which, boolean[] begun) {
            List<Work> works = new ArrayList<>();
            for (int i = 0; i < plan.work().size(); i++) {
                Work work = plan.work().get(i);
                if (which[i]) {
                    works.add(at(work, span(rehearsal, i), begun[i] ? ofFood(work) : forPlaces(work)));
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
            return work.copies().stream().anyMatch(copy -> isToCome(copies.get(copy)));
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

        private List<Break> breaks(Rehearsal rehearsal, boolean[] which) {
            List<Break> breaks = new ArrayList<>();
            for (int n = 0; n < plan.breaks().size(); n++) {
                int i = plan.work().size() + n;
                if (which[i]) {
                    breaks.add(new Break(plan.breaks().get(n).person(), span(rehearsal, i)));
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
                    .filter(copy -> copy.made() && isToCome(copy) && begunFor.containsKey(copy.id()))
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

        private static Span span(Rehearsal rehearsal, int i) {
            return new Span(new Moment(rehearsal.start[i]), new Moment(rehearsal.end[i]));
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
