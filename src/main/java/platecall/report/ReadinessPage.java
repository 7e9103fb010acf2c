package platecall.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Diner;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Setup;
import platecall.odds.Odds;
import platecall.odds.Odds.OfSetup;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Readiness;
import platecall.safety.ClockReading;
import platecall.safety.SafetyClock;
import platecall.units.Moment;

/**
 * What an assistant director must see in ten seconds, ready for the page.
 *
 * @param title the day's name
 * @param date the shooting date
 * @param answer the whole in one line
 * @param good whether the answer is that all is well
 * @param rows setups in order of call
 * @param rules what the audit says of the rules, one line
 * @param breaches the first broken rules, one sentence each
 * @param safety what is to be settled before anybody eats, and until when food at risk may be eaten, setup by setup
 * @param kitchenCalls when the kitchen begins, one line; empty if that was before
 * @param print where and when this page comes from
 * @param paper what it is printed on
 * @param fontPoints size of the table's type, so that it stays on one page
 */
public record ReadinessPage(
        String title,
        String date,
        String answer,
        boolean good,
        List<Row> rows,
        String rules,
        List<String> breaches,
        String safety,
        String kitchenCalls,
        Imprint print,
        Paper paper,
        double fontPoints) {

    private static final int MOST_BREACHES = 3;
    private static final int MOST_NAMES = 4;
    private static final List<Double> TYPE_POINTS =
            List.of(16.0, 15.0, 14.0, 13.0, 12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0, 5.0, 4.0, 3.0);

    /** What the state's box says and how it looks. */
    public enum State {
        /** Everything is there in time. */
        READY,
        /** Everything is there in time, but the first hero is past its peak when it rolls. */
        FADED,
        /** The first take can roll, but a later plate is late, past use or missing. */
        SHORT,
        /** Everything is there in time but for a stand-in, which is late for lighting or past use then. */
        STAND_IN,
        /** Everything for the first take is there, but some of it can't be shown any more. */
        STALE,
        /** The first take can't roll at the call. */
        LATE,
        /** Something for the first take is never made. */
        MISSING,
        /** The setup wants no food. */
        NONE;

        /** Name of the style on the page; a stand-in's trouble looks like that of later plates. */
        public String style() {
            return (this == STAND_IN ? SHORT : this).name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * A setup; every cell is text as printed.
     *
     * @param date the date if it begins here and is not the page's, else empty
     * @param sure chance that it is ready at its call; empty where that means nothing
     * @param laterShort whether plates after the first take are late, past use or missing
     * @param standIn what is the matter with a stand-in of a setup ready at its call; empty if nothing
     * @param pastPeak whether the first take rolls at its call, but with its hero past peak
     */
    public record Row(
            String date,
            String setup,
            String shot,
            String call,
            String ready,
            String margin,
            String sure,
            State state,
            String stateWords,
            String peakUntil,
            String resets,
            String words,
            boolean laterShort,
            String standIn,
            boolean pastPeak) {}

    private static final String FOR_LIGHTING = "late for lighting";
    private static final String PAST_USE = "past use";

    /** @param toSettle what is to be settled before anybody eats */
    static ReadinessPage of(Day day, Plan plan, Odds odds, List<String> toSettle, Imprint print, Paper paper) {
        Clock clock = Clock.of(day, plan);
        List<Row> rows = new ArrayList<>();
        Moment before = clock.noon();
        for (Readiness setup : inOrderOfCall(plan)) {
            String date = clock.sameDate(before, setup.call()) ? "" : clock.date(setup.call());
            rows.add(row(day, plan, odds, clock, setup, date));
            before = setup.call();
        }
        List<String> breaches = plan.verdict().breaches().stream()
                .limit(MOST_BREACHES)
                .map(breach -> Wording.plain(breach.what()))
                .toList();
        List<OfSetup> unsure = broken(plan) == 0 ? odds.lessSureThan(day.facts().promise()) : List.of();
        return new ReadinessPage(
                Wording.plain(day.facts().title()),
                clock.date(clock.noon())
                        + plan.asOf()
                                .map(now -> ", as of " + clock.time(now, clock.noon()))
                                .orElse(""),
                answer(rows, broken(plan), worst(day, plan), unsure, plan.asOf().isPresent()),
                broken(plan) == 0
                        && rows.stream().noneMatch(row -> troubled(row.state()))
                        && unsure.stream().noneMatch(ReadinessPage::isProbablyLate),
                rows,
                broken(plan, plan.verdict().breaches().size()),
                breaches,
                Stream.concat(Wording.toSettle(toSettle).stream(), Stream.of(safety(day, plan, clock)))
                        .collect(Collectors.joining(" ")),
                kitchenCalls(day, plan, clock),
                print,
                paper,
                TYPE_POINTS.get(0));
    }

    private static String broken(Plan plan, int all) {
        if (all == 0) {
            return "The plan breaks no rule.";
        }
        int broken = broken(plan);
        int over = (int) plan.verdict().breaches().stream()
                .filter(breach -> breach.over().isPresent())
                .count();
        int unmade = all - broken - over;
        List<String> parts = new ArrayList<>();
        if (broken > 0) {
            parts.add("breaks " + count(broken, "rule", "rules"));
        }
        if (unmade > 0) {
            parts.add("has too few copies for " + count(unmade, "need", "needs"));
        }
        if (over > 0) {
            parts.add("can't mend " + count(over, "rule that was broken", "rules that were broken"));
        }
        return "The plan " + String.join(" and ", parts)
                + (broken > 0 ? ", so nothing tells how sure it is" : "")
                + (all > MOST_BREACHES ? "; first of them:" : ":");
    }

    private static int broken(Plan plan) {
        return plan.verdict().unsettling().size();
    }

    /** When the first copy of each setup must be thrown away that is eaten, at risk and still to be shot. */
    static Map<String, Moment> discardBy(Day day, Plan plan) {
        Map<String, Moment> earliest = new HashMap<>();
        for (ClockReading reading : SafetyClock.of(day, plan)) {
            if (!plan.isShot(day, reading.copy())) {
                earliest.merge(reading.copy().setup(), reading.discardBy(), Moment::earlier);
            }
        }
        return earliest;
    }

    private static String safety(Day day, Plan plan, Clock clock) {
        Map<String, Moment> earliest = discardBy(day, plan);
        List<String> setups = inOrderOfCall(plan).stream()
                .map(Readiness::setup)
                .filter(earliest::containsKey)
                .map(setup ->
                        "setup " + Wording.plain(setup) + " from " + clock.time(earliest.get(setup), clock.noon()))
                .toList();
        return setups.isEmpty()
                ? "Nobody eats food that is time-and-temperature controlled."
                : "Food at risk must not be eaten any more: " + String.join(", ", setups) + ".";
    }

    /** When hands are wanted first, day by day, and an oven if it is set before. */
    private static String kitchenCalls(Day day, Plan plan, Clock clock) {
        List<Moment> ovens = day.stations().stream()
                .flatMap(station -> OvenChange.of(day, station, plan).stream())
                .map(OvenChange::at)
                .sorted()
                .toList();
        List<String> calls = plan.kitchenCalls().stream()
                .filter(call -> !plan.hasBegun(call))
                .map(call -> clock.time(call, clock.noon())
                        + ovens.stream()
                                .filter(at -> at.isBefore(call))
                                .filter(at -> day.facts().kitchenHours().stream()
                                        .anyMatch(span -> span.contains(at) && span.contains(call)))
                                .findFirst()
                                .map(at -> " (first oven set " + clock.time(at, call) + ")")
                                .orElse(""))
                .toList();
        return calls.isEmpty() ? "" : "Kitchen call: " + String.join(", ", calls) + ".";
    }

    /** How sure a setup is; empty where that means nothing: rehearsals know nothing of broken rules, and past use is not ready. */
    static Optional<OfSetup> sure(Day day, Plan plan, Odds odds, Readiness setup) {
        return broken(plan) == 0 && state(day, copiesOf(day, plan, setup), setup) != State.STALE
                ? odds.of(setup.setup())
                : Optional.empty();
    }

    /** Planned to be ready, but late more often than not. */
    private static boolean isProbablyLate(OfSetup setup) {
        return setup.atCall() < 0.5;
    }

    /** Copies for takes that are still to be shot. */
    private static List<PlannedCopy> copiesOf(Day day, Plan plan, Readiness setup) {
        return plan.copies().stream()
                .filter(copy -> copy.setup().equals(setup.setup()) && !plan.isShot(day, copy))
                .toList();
    }

    private static int countShot(Day day, Readiness setup) {
        return day.setup(setup.setup()).map(Setup::countShot).orElse(0);
    }

    private static Row row(Day day, Plan plan, Odds odds, Clock clock, Readiness setup, String date) {
        List<PlannedCopy> copies = copiesOf(day, plan, setup);
        State state = state(day, copies, setup);
        int shot = countShot(day, setup);
        int minutes = setup.marginMinutes();
        String standIn = setup.ready().isPresent() && minutes >= 0 ? standIn(copies) : "";
        Optional<Moment> peak = peakUntil(day, plan, setup);
        boolean untilRelease = peak.isPresent() && !peak.equals(setup.heroPeakTo());
        Optional<OfSetup> sure = sure(day, plan, odds, setup);
        Optional<OfSetup> unsure = sure.filter(it -> state == State.READY)
                .filter(it -> it.atCall() < day.facts().promise());
        Moment first =
                setup.ready().map(ready -> Moment.later(ready, setup.call())).orElse(setup.call());
        return new Row(
                date,
                Wording.plain(setup.setup()),
                Wording.plain(day.setup(setup.setup())
                        .map(it -> Stream.of(it.scene(), it.shot(), shot == 0 ? "" : "take " + (shot + 1) + " next")
                                .filter(Predicate.not(String::isEmpty))
                                .collect(Collectors.joining(" · ")))
                        .orElse("")),
                clock.time(setup.call()),
                setup.ready().map(at -> cell(clock, at, setup)).orElse(state == State.NONE ? "" : "never"),
                setup.ready().isEmpty()
                        ? ""
                        : (minutes < 0 ? "\u2212" : minutes > 0 ? "+" : "") + Math.abs(minutes) + " min",
                // the number and its sign stay in one line
                sure.map(OfSetup::atCall)
                        .map(Odds::percent)
                        .map(chance -> chance.replace(" %", "\u00a0%"))
                        .orElse(""),
                state,
                unsure.map(it -> isProbablyLate(it) ? "PROBABLY LATE" : "READY, NOT SURE")
                        .orElse(words(state, minutes, shot, standIn)),
                peak.map(moment -> untilRelease ? "release" : cell(clock, moment, setup))
                        .orElse(state == State.NONE ? "" : "no hero"),
                setup.resetsQueued() == 0
                        ? "none"
                        : setup.resetsQueued()
                                + setup.nextResetAt()
                                        .map(at -> ", next one there "
                                                + (at.isAfter(first) ? cell(clock, at, setup) : "with the first"))
                                        .orElseGet(() -> nextPlates(day, copies, clock, setup)),
                Wording.plain(setup.words())
                        + (state == State.LATE ? goneBy(day, copies, first) : "")
                        + unsure.flatMap(OfSetup::promisedBy)
                                .map(by -> "; " + Odds.percent(day.facts().promise()) + " sure by "
                                        + cell(clock, by, setup))
                                .orElse("")
                        + dressing(day, copies)
                        + allergies(day, setup),
                copies.stream().anyMatch(copy -> !isFirst(day, copy) && isShort(copy)) || lacksLikelyTakes(day, setup),
                standIn,
                setup.faded() && (state == State.FADED || state == State.SHORT || state == State.STAND_IN));
    }

    /** From which take on there are new plates, where the second one has those of the first: {@code , new plates from take 3, there 02:50}. */
    private static String nextPlates(Day day, List<PlannedCopy> copies, Clock clock, Readiness setup) {
        SortedMap<Integer, Moment> there = new TreeMap<>();
        for (PlannedCopy copy : copies) {
            Optional<Integer> take = day.needs().stream()
                    .filter(need -> need.key().equals(copy.need()))
                    .findFirst()
                    .flatMap(need -> day.setup(need.setup())
                            .filter(it -> !CameraTime.isSpare(it, need, copy.number()))
                            .filter(it -> isForTakes(need, copy, copies))
                            .map(it -> CameraTime.takeOf(it, need, copy.number())));
            copy.ready().ifPresent(at -> take.ifPresent(it -> there.merge(it, at, Moment::later)));
        }
        return there.tailMap(countShot(day, setup) + 1).entrySet().stream()
                .findFirst()
                .map(next -> ", new plates from take " + (next.getKey() + 1) + ", there "
                        + cell(clock, next.getValue(), setup))
                .orElse(", same plates");
    }

    /** A time in the row of a setup, with its date if that is another than the call's. */
    private static String cell(Clock clock, Moment at, Readiness setup) {
        return clock.sameDate(at, setup.call()) ? clock.time(at) : clock.shortDate(at) + " " + clock.time(at);
    }

    private static State state(Day day, List<PlannedCopy> copies, Readiness setup) {
        if (!day.wantsFood(setup.setup())) {
            return State.NONE;
        }
        if (setup.ready().isEmpty()) {
            return State.MISSING;
        }
        if (setup.marginMinutes() < 0) {
            return State.LATE;
        }
        if (copies.stream().anyMatch(copy -> isFirst(day, copy) && isStale(day, copy))) {
            return State.STALE;
        }
        if (copies.stream().anyMatch(ReadinessPage::isShort) || lacksLikelyTakes(day, setup)) {
            return State.SHORT;
        }
        if (!standIn(copies).isEmpty()) {
            return State.STAND_IN;
        }
        return setup.faded() ? State.FADED : State.READY;
    }

    /** What else the first take shows that is past use when the last of it is there. */
    private static String goneBy(Day day, List<PlannedCopy> copies, Moment first) {
        List<String> gone = dishes(
                day,
                copies,
                copy -> isFirst(day, copy)
                        && !isStandIn(copy)
                        && copy.usableTo().map(to -> !to.isAfter(first)).orElse(false));
        return gone.isEmpty() ? "" : "; past use by then: " + String.join(", ", gone);
    }

    /** What is only for looks. */
    private static String dressing(Day day, List<PlannedCopy> copies) {
        List<String> names = dishes(
                day,
                copies,
                copy -> day.dish(copy.dish()).map(it -> !it.edible()).orElse(false));
        return names.isEmpty() ? "" : "; " + Wording.DO_NOT_EAT + ": " + String.join(", ", names);
    }

    /** Where somebody eats, who of the cast must not eat which food that is there: {@code Cid must not eat Stew (celery)}. */
    private static String allergies(Day day, Readiness setup) {
        List<Need> needs = day.needs().stream()
                .filter(need -> need.setup().equals(setup.setup()))
                .toList();
        if (needs.stream().allMatch(need -> need.eatenBy().isEmpty())) {
            return "";
        }
        StringBuilder told = new StringBuilder();
        for (Diner diner : day.cast()) {
            Map<String, Set<String>> harmful = new LinkedHashMap<>();
            needs.stream()
                    // what is only for looks is told as food for nobody
                    .filter(need -> day.dish(need.dish()).map(Dish::edible).orElse(false))
                    .forEach(need -> diner.harmedBy(day.ingredientsIn(need))
                            .forEach(what -> harmful.computeIfAbsent(need.dish(), key -> new TreeSet<>())
                                    .add(what)));
            if (!harmful.isEmpty()) {
                told.append("; ")
                        .append(Wording.plain(diner.id() + " must not eat "
                                + harmful.entrySet().stream()
                                        .map(it -> day.dish(it.getKey())
                                                        .orElseThrow()
                                                        .name() + " (" + String.join(", ", it.getValue()) + ")")
                                        .collect(Collectors.joining(", "))));
            }
        }
        return told.toString();
    }

    private static List<String> dishes(Day day, List<PlannedCopy> copies, Predicate<PlannedCopy> which) {
        return copies.stream()
                .filter(which)
                .map(PlannedCopy::dish)
                .distinct()
                .map(id -> Wording.plain(day.dish(id).map(Dish::name).orElse(id)))
                .toList();
    }

    private static boolean troubled(State state) {
        return state != State.READY && state != State.FADED && state != State.NONE;
    }

    private static boolean isShort(PlannedCopy copy) {
        return !copy.made() || copy.lateMinutes() > 0 && !isStandIn(copy);
    }

    /** Whether a copy that is made serves takes, rather than an extra look. */
    private static boolean isForTakes(Need need, PlannedCopy copy, List<PlannedCopy> copies) {
        List<PlannedCopy> made = copies.stream()
                .filter(other -> other.made() && other.need().equals(copy.need()))
                .toList();
        return made.stream().filter(other -> other.number() <= copy.number()).count()
                <= CameraTime.forTakes(need, made.size());
    }

    private static boolean isStandIn(PlannedCopy copy) {
        return copy.part().equals(Part.STAND_IN.word());
    }

    /** What is the matter with a stand-in that is made; empty if nothing. */
    private static String standIn(List<PlannedCopy> copies) {
        List<PlannedCopy> troubled = copies.stream()
                .filter(copy -> isStandIn(copy) && copy.made() && copy.lateMinutes() > 0)
                .toList();
        return troubled.isEmpty() ? "" : troubled.stream().anyMatch(copy -> lateBy(copy) > 0) ? FOR_LIGHTING : PAST_USE;
    }

    /** Whether there are no plates for as many takes as are likely. */
    private static boolean lacksLikelyTakes(Day day, Readiness setup) {
        return countShot(day, setup) + setup.resetsQueued() + 1
                < day.setup(setup.setup()).map(Setup::takesLikely).orElse(1);
    }

    private static boolean isFirst(Day day, PlannedCopy copy) {
        return day.needs().stream()
                .filter(need -> need.key().equals(copy.need()))
                .findFirst()
                .flatMap(need -> day.setup(copy.setup()).map(it -> CameraTime.isOfNextSet(it, need, copy.number())))
                .orElse(false);
    }

    /** Whether a copy of the first take is past use before that take is over. */
    private static boolean isStale(Day day, PlannedCopy copy) {
        if (!copy.made() || copy.showMinutes() == 0) {
            return false;
        }
        int rolling = day.setup(copy.setup()).map(Setup::rollingMinutes).orElse(copy.showMinutes());
        Moment cut = Moment.later(copy.due(), copy.ready().orElseThrow()).plus(Math.min(rolling, copy.showMinutes()));
        return copy.usableTo().orElseThrow().isBefore(cut);
    }

    private static String words(State state, int marginMinutes, int shot, String standIn) {
        return switch (state) {
            case READY -> "READY";
            case FADED -> shot == 0 ? "PAST PEAK AT CALL" : "PAST PEAK";
            case SHORT -> "READY, THEN SHORT";
            case STAND_IN -> standIn.equals(PAST_USE) ? "STAND-IN PAST USE" : "STAND-IN LATE";
            case STALE -> (shot == 0 ? "FIRST" : "NEXT") + " TAKE PAST USE";
            case LATE -> "LATE " + -marginMinutes + " min";
            case MISSING -> "NOT READY";
            case NONE -> "NO FOOD";
        };
    }

    /**
     * @param broken rules that the plan breaks beside that something is not made
     * @param worst the latest plate, if first takes are late, but none that is told as much
     * @param unsure setups that are ready less often than promised, the least sure one first
     * @param underWay whether the day is, so that what is shot isn't told any more
     */
    private static String answer(
            List<Row> rows, int broken, Optional<String> worst, List<OfSetup> unsure, boolean underWay) {
        List<Row> fed = rows.stream().filter(row -> row.state() != State.NONE).toList();
        if (fed.isEmpty()) {
            return underWay ? "No setup wants food any more." : "No setup wants food.";
        }
        List<String> late = fed.stream()
                .filter(row -> row.state() == State.LATE || row.state() == State.MISSING)
                .map(row -> "setup " + row.setup()
                        + (row.state() == State.LATE ? " by " + row.margin().substring(1) : " not at all"))
                .toList();
        List<String> stale = setups(fed, row -> row.state() == State.STALE);
        List<String> tooShort =
                setups(fed, row -> row.state() == State.SHORT || row.state() == State.STALE && row.laterShort());
        List<String> faded = setups(fed, Row::pastPeak);
        List<String> parts = new ArrayList<>();
        if (broken > 0) {
            parts.add("The plan breaks " + count(broken, "rule", "rules") + ", see below");
        }
        if (!late.isEmpty()) {
            parts.add(late.size() + " of " + count(fed.size(), "setup", "setups") + " late: " + first(late));
        }
        if (!stale.isEmpty()) {
            parts.add((underWay ? "next" : "first") + " take past use: " + first(stale));
        }
        if (late.isEmpty() && stale.isEmpty()) {
            boolean planned = broken > 0 || !unsure.isEmpty();
            parts.add((fed.size() == 1
                            ? "the setup is " + (planned ? "planned to be " : "") + "ready at its call"
                            : "all " + fed.size() + " setups are " + (planned ? "planned to be " : "")
                                    + "ready at their calls")
                    + (tooShort.isEmpty() ? "" : ", but later plates run short: " + first(tooShort)));
        } else if (!tooShort.isEmpty()) {
            parts.add("later plates short: " + first(tooShort));
        }
        for (String trouble : List.of(FOR_LIGHTING, PAST_USE)) {
            List<String> standIns = setups(fed, row -> row.standIn().equals(trouble));
            if (!standIns.isEmpty()) {
                parts.add("stand-in " + trouble + ": " + first(standIns));
            }
        }
        worst.ifPresent(parts::add);
        if (!faded.isEmpty()) {
            parts.add("past peak at call: " + first(faded));
        }
        List<String> probably = unsure.stream()
                .filter(ReadinessPage::isProbablyLate)
                .map(setup -> "setup " + Wording.plain(setup.setup()) + " (" + Odds.percent(setup.atCall()) + " sure)")
                .toList();
        if (late.isEmpty() && !probably.isEmpty()) {
            parts.add("probably late: " + first(probably));
        } else if (late.isEmpty() && !unsure.isEmpty()) {
            OfSetup least = unsure.get(0);
            String chance = Odds.percent(least.atCall());
            parts.add(
                    fed.size() == 1
                            ? "but only " + chance + " sure"
                            : "least sure is setup " + Wording.plain(least.setup()) + " (" + chance + ")");
        }
        String all = String.join("; ", parts) + ".";
        return all.substring(0, 1).toUpperCase(Locale.ROOT) + all.substring(1);
    }

    /** {@code worst: setup 6, Stew hero 3 by 45 min}, where first takes are late, but none that has a name in the answer as much. */
    private static Optional<String> worst(Day day, Plan plan) {
        List<Integer> late = inOrderOfCall(plan).stream()
                .filter(setup -> setup.ready().isPresent() && setup.marginMinutes() < 0)
                .limit(MOST_NAMES)
                .map(setup -> -setup.marginMinutes())
                .toList();
        Copies names = new Copies(plan);
        return plan.verdict().setups().stream()
                .flatMap(setup -> copiesOf(day, plan, setup).stream())
                .filter(PlannedCopy::made)
                .max(Comparator.comparingInt(ReadinessPage::lateBy))
                .filter(copy -> !late.isEmpty() && lateBy(copy) > Collections.max(late))
                .map(copy -> Wording.plain("worst: setup " + copy.setup() + ", "
                        + day.dish(copy.dish()).map(Dish::name).orElse(copy.dish()) + " " + names.name(copy) + " by "
                        + lateBy(copy) + " min"));
    }

    /** Minutes by which a copy that is made is at camera too late. */
    private static int lateBy(PlannedCopy copy) {
        return copy.due().minutesUntil(copy.ready().orElseThrow());
    }

    private static List<String> setups(List<Row> rows, Predicate<Row> which) {
        return rows.stream().filter(which).map(row -> "setup " + row.setup()).toList();
    }

    /** The first of the names, and how many more there are. */
    private static String first(List<String> names) {
        return String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size())))
                + (names.size() > MOST_NAMES ? " and " + (names.size() - MOST_NAMES) + " more" : "");
    }

    static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    static List<Readiness> inOrderOfCall(Plan plan) {
        return plan.verdict().setups().stream()
                .sorted(Comparator.comparing(Readiness::call))
                .toList();
    }

    /** When the first hero's peak is over, at the latest when it may be struck; empty without a hero. */
    static Optional<Moment> peakUntil(Day day, Plan plan, Readiness readiness) {
        Optional<Moment> release = day.setup(readiness.setup()).map(setup -> KeptBack.releaseOf(day, plan, setup));
        return readiness
                .heroPeakTo()
                .map(peak -> release.map(it -> Moment.earlier(it, peak)).orElse(peak));
    }

    /** In the biggest type in which it is one page. */
    byte[] pdf() {
        String page = "";
        for (double points : TYPE_POINTS) {
            page = Glyphs.explained(Html.of("readiness.jte", inType(points)));
            if (Pdf.pagesOf(page).equals(List.of(1))) {
                break;
            }
        }
        return Pdf.of(page, print).bytes();
    }

    private ReadinessPage inType(double points) {
        return new ReadinessPage(
                title, date, answer, good, rows, rules, breaches, safety, kitchenCalls, print, paper, points);
    }
}
