package platecall.odds;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Happening;
import platecall.day.Happening.What;
import platecall.day.Part;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Spelling;
import platecall.day.Step;
import platecall.day.Trouble;
import platecall.odds.Rehearsal.Fact;
import platecall.plan.Plan;
import platecall.plan.Plan.Break;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** What went otherwise than in a plan, row by row as it was noted, and all in it that can't be. */
final class Noted {

    private static final int BEGAN = 0;
    private static final int ENDED = 1;
    private static final int WAITS = 2;

    private final Day day;
    private final Plan plan;
    private final Moment now;
    private final String sheet;
    private final List<Trouble> troubles;
    private final List<Happening> happenings = new ArrayList<>();
    /** For each work, then each break. */
    final Fact[] facts;

    /** For each work and break the rows that tell when it began, when it ended, and that it waits; -1: none. */
    private final int[][] rows;

    /** Copies that are lost, each with the row that tells it. */
    final Map<String, Integer> lostBy = new LinkedHashMap<>();

    /** Rows of lost copies that don't say which number. */
    private final Set<Integer> withoutNumber = new HashSet<>();

    /** For works that wait until after now from when on they may begin. */
    final Map<Integer, Moment> waits = new LinkedHashMap<>();

    private final Map<String, PlannedCopy> copies = new HashMap<>();

    /** @param troubles is given what in the rows doesn't fit day or plan */
    Noted(Day day, Plan plan, Moment now, String sheet, List<Trouble> troubles) {
        this.day = day;
        this.plan = plan;
        this.now = now;
        this.sheet = sheet;
        this.troubles = troubles;
        facts = Stream.generate(Fact::new)
                .limit((long) plan.work().size() + plan.breaks().size())
                .toArray(Fact[]::new);
        rows = Stream.generate(() -> new int[] {-1, -1, -1}).limit(facts.length).toArray(int[][]::new);
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

    /** @param row its number, from 0 on without a gap */
    void note(int row, Happening it) {
        happenings.add(it);
        // what ended at a minute was there until the one before
        int until = it.what() == What.ENDED ? -1 : 0;
        if (it.time().isPresent() && !day.horizon().contains(it.time().get().plus(until))) {
            tell(row, "time", "lies outside the day", "Maybe the date is wrong, or missing.");
        } else if (it.what() == What.BEGAN && !it.time().orElseThrow().isBefore(now)) {
            tell(row, "time", "is not before now, as what began must be", "Maybe it ended then, or hasn't begun.");
        } else if (it.what() == What.WAITS && it.time().filter(now::isAfter).isPresent()) {
            tell(row, "time", "is over by now", "Maybe a later time, or none; or tell when it began.");
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

    private void tell(int row, String column, String what, String wayOut) {
        tell(row, column, value(happenings.get(row), column), what, wayOut);
    }

    /** Tells once what several ways through a recipe lead to. */
    private void tell(int row, String column, String value, String what, String wayOut) {
        Trouble trouble = new Trouble(sheet, row, column, value, what, wayOut);
        if (!troubles.contains(trouble)) {
            troubles.add(trouble);
        }
    }

    /** What stands in a column, or without one which food or whose break a row is about. */
    private String value(Happening it, String column) {
        Stream<Optional<String>> cells = switch (column) {
            case "time" -> Stream.of(it.time().map(this::clock));
            case "step" -> Stream.of(it.step());
            case "number" -> Stream.of(it.number().map(String::valueOf));
            default ->
                Stream.of(
                        it.setup(),
                        it.dish(),
                        it.part().map(Part::word),
                        it.number().map(String::valueOf),
                        it.step(),
                        it.person());
        };
        return cells.flatMap(Optional::stream).collect(Collectors.joining(", "));
    }

    /** Local clock time, with its date unless it is the day's. */
    private String clock(Moment moment) {
        ZoneId zone = day.facts().zone();
        LocalDate date = moment.in(zone).toLocalDate();
        return (date.equals(day.facts().date()) ? "" : date + " ") + moment.clock(zone);
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

    private static boolean isMeant(Happening it, PlannedCopy copy) {
        return copy.isMeant(it.setup(), it.dish().orElseThrow(), it.part(), it.number());
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
        Set<String> stages = plan.copies().stream()
                .filter(copy -> copy.made() && isMeant(it, copy))
                .map(PlannedCopy::stage)
                .collect(Collectors.toCollection(TreeSet::new));
        if (meant.isEmpty() && !stages.isEmpty()) {
            tell(
                    row,
                    "step",
                    it.step().orElseThrow(),
                    "is no stage in which it is wanted, and that is what the step of a lost copy says",
                    "Maybe " + String.join(" or ", stages) + ", or blank.");
        } else if (meant.isEmpty()) {
            tell(row, "", "is no copy that the plan makes", orElsewhere(it, "Maybe leave part or number blank."));
        } else if (toCome.isEmpty()) {
            tell(
                    row,
                    "",
                    "is not wanted any more: its takes are over by the sheets",
                    "Maybe leave the row out, or move the call.");
        }
        toCome.forEach(copy -> lostBy.put(copy, row));
        if (it.number().isEmpty()) {
            withoutNumber.add(row);
        } else if (toCome.size() > 1) {
            tell(
                    row,
                    "step",
                    "would mean " + toCome.size() + " copies: " + String.join(", ", toCome),
                    "Maybe tell the setup, the part, and in column step the stage in which it is wanted.");
        }
    }

    /** Whether the camera still wants a copy, by the day as it is now. */
    boolean isToCome(PlannedCopy copy) {
        return day.needs().stream()
                .filter(need -> need.key().equals(copy.need()))
                .anyMatch(need -> {
                    Setup setup = day.setup(need.setup()).orElseThrow();
                    return !CameraTime.isShot(setup, need, copy.number())
                            && now.isBefore(CameraTime.leaves(setup, need, copy.number()));
                });
    }

    PlannedCopy copy(String id) {
        return copies.get(id);
    }

    private void noteWork(int row, Happening it) {
        String step = it.step().orElseThrow();
        Work.Kind kind = step.equals(Happening.CARRY) ? Work.Kind.CARRY : Work.Kind.STEP;
        List<Integer> meant = new ArrayList<>();
        for (int i = 0; i < plan.work().size(); i++) {
            Work work = plan.work().get(i);
            boolean serves =
                    work.copies().stream().anyMatch(copy -> copies.containsKey(copy) && isMeant(it, copies.get(copy)));
            if (work.kind() == kind && work.step().equals(step) && serves) {
                meant.add(i);
            }
        }
        if (meant.isEmpty()) {
            tell(row, "", "is no work of the plan", orElsewhere(it, "Maybe leave setup, part or number blank."));
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
                    "is done " + meant.size() + " times by the plan",
                    "Maybe say which, by setup, part and number: " + String.join(", ", numbers)
                            + (meant.size() > 3 ? ", ..." : "") + ".");
        } else {
            noteTime(row, it, meant.get(0));
        }
    }

    private void noteBreak(int row, Happening it, String person) {
        if (!know(row, "person", person, day.people().stream().map(Person::id).toList())) {
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
                        .filter(setup -> setup.isOver(now))
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
            tell(row, "", "has begun by the plan in hand", "Maybe leave the row out.");
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
        boolean over = plan.asOf().map(made -> fact.ended <= made.epochMinute()).orElse(false);
        if (isOfBefore(i) && (which == BEGAN || over)) {
            tell(row, "", "has " + (over ? "ended" : "begun") + " by the plan in hand", "Maybe leave the row out.");
        } else if (rows[i][which] >= 0) {
            tell(row, "", "is told twice", "Maybe remove one of the two.");
        } else {
            rows[i][which] = row;
            if (which == BEGAN) {
                fact.began = minute;
            } else {
                fact.ended = minute;
            }
            if (fact.began != Rehearsal.UNKNOWN && fact.ended != Rehearsal.UNKNOWN && fact.ended <= fact.began) {
                tell(row, "time", "would have it end before it began", "Maybe a time is mistyped.");
            }
        }
    }

    /** Tells of rows that can't be true beside each other. */
    void tellContradictions(Rehearsal rehearsal) {
        begunAndWaiting();
        contradictions(rehearsal);
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
                        .noneMatch(
                                hands -> hands.span().start().equals(work.span().start()))
                || day.facts().kitchenHours().stream().anyMatch(hours -> hours.contains(span.start()));
    }

    /** Tells of a step whose end is told that it would have had far too little time. */
    private void tooShort(Rehearsal rehearsal, int i) {
        int least = leastMinutes(plan.work().get(i));
        int minutes = rehearsal.span(i).minutes();
        boolean possible = facts[i].began == Rehearsal.UNKNOWN || facts[i].began < facts[i].ended;
        if (rows[i][ENDED] >= 0 && possible && 2 * minutes < least) {
            tell(
                    rows[i][ENDED],
                    "time",
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
            Span took = rehearsal.span(before);
            int least = leastMinutes(work);
            boolean open = whileOpen(work, took);
            int minutes = minutesSince(rehearsal, before, took);
            if (!open || 2 * minutes < least) {
                tell(
                        row,
                        "time",
                        open
                                ? "leaves " + minutes + " min for " + work.step() + " before it, which takes " + least
                                        + " at least"
                                : "would have " + work.step() + " before it begin while the kitchen was closed",
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
            from = Moment.later(from, rehearsal.span(before).end());
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
                    "can't be when it began: " + person + " was still at " + work.step() + " of " + work.dish(),
                    "Maybe tell when " + work.step() + " ended, or leave one of the two rows out.");
        }
    }

    /** Tells of rows that leave far too little time, as the plan was carried out with them. */
    void tellImpossible(Rehearsal rehearsal) {
        for (int i = 0; i < plan.work().size(); i++) {
            int row = Math.max(rows[i][BEGAN], rows[i][ENDED]);
            if (row >= 0
                    && rows[i][BEGAN] < 0
                    && !isOfBefore(i)
                    && !whileOpen(plan.work().get(i), rehearsal.span(i))) {
                tell(
                        row,
                        "time",
                        "would have it begin while the kitchen was closed",
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
    }

    /** What ends at or after now must have begun to be of any use. */
    void tellUnbegun(boolean[] begun) {
        for (int i = 0; i < facts.length; i++) {
            if (rows[i][ENDED] >= 0 && !begun[i]) {
                tell(
                        rows[i][ENDED],
                        "time",
                        "can't be its end: by the plan it has not begun",
                        "Maybe tell when it began.");
            }
        }
    }

    /** A row of which nothing has begun tells of nothing that can be lost; one of several copies must say which. */
    void tellLost(Set<String> lost) {
        for (int row : withoutNumber) {
            List<String> all =
                    lost.stream().filter(copy -> lostBy.get(copy) == row).toList();
            if (all.size() > 1) {
                tell(
                        row,
                        "number",
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
                .forEach(row -> tell(row, "", "can't be lost: nothing of it has begun", "Maybe leave the row out."));
    }
}
