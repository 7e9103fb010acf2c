package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.audit.Flaw;
import platecall.check.DayCheck;
import platecall.copies.CopyCounts;
import platecall.day.CameraTime;
import platecall.day.Day;
import platecall.day.Happening;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Trouble;
import platecall.intake.DayFile;
import platecall.intake.HappeningsFile;
import platecall.intake.NotedFile;
import platecall.looks.Looks;
import platecall.odds.SoFar;
import platecall.plan.Breach;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Readiness;
import platecall.plan.Plan.Verdict;
import platecall.plan.Plan.Work;
import platecall.plan.PlanFile;
import platecall.plan.Rule;
import platecall.report.Changes;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;
import platecall.tasks.Breakdown;
import platecall.tasks.TaskNet;
import platecall.tasks.UnderWay;
import platecall.units.Moment;
import platecall.units.Span;

/** Plans the rest of a day that is under way. */
@Command(
        name = "replan",
        mixinStandardHelpOptions = true,
        description = "Plan the rest of a day that is under way, close to the plan in hand.",
        footer = {
            "",
            "Until now all went as in PLAN, but for what --happened tells: a CSV file with the columns",
            "what (began, ended, waits, lost), setup, dish, part, number, step, person, time.",
            "What the AD changes, calls, takes, inserts, goes into the sheets of DAY; so does who is",
            "away and what is broken. What has begun stays; nothing else begins before now.",
            "Exit code: 0 all that is still to come is ready at its call, 1 it isn't, or a rule is",
            "broken, 2 bad input. It searches again, each time as long, if what has begun can't go",
            "on, if copies would only come after the last take, and if first takes are late while",
            "there are more copies than before."
        })
final class ReplanCommand implements Callable<Integer> {

    /** How a time begins that has its date. */
    private static final Pattern DATED = Pattern.compile("\\s*[0-9]{4}-");

    private static final int DAY_MINUTES = 24 * 60;

    /** So many things that keep people from going on as planned are told. */
    private static final int MOST_TOLD = 3;

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json that people have in their hands")
    private Path planPath;

    @Option(
            names = "--now",
            paramLabel = "TIME",
            required = true,
            description = "from when on to plan: 11:20, or 2026-03-14 01:20")
    private String now;

    @Option(
            names = "--happened",
            paramLabel = "FILE",
            description = "what went otherwise than planned since PLAN was made")
    private Path happened;

    @Option(names = "--out", paramLabel = "DIR", description = "folder to write to (reports/<day>/<time> if not given)")
    private Path out;

    @Mixin
    private Planning planning;

    @Override
    public Integer call() throws UnwritableFolderException {
        planning.limits(spec);
        DayFile file = dayArgument.read();
        Day day = file.day();
        Plan before = PlanFile.readOf(planPath, day);
        Moment at = withinDay(day);
        DayArgument.refuse(file, DayCheck.ofDayUnderWay(day, at));
        DayArgument.refuse(file, onAnotherDate(day, before));
        notBefore(day, before, at);
        DayArgument.refuse(file, new ShotBySheets(day, before, at).troubles());
        Path folder = out != null ? out : dayArgument.reports().resolve(stamp(day, at));
        Reports.mustBeWritable(folder);
        SoFar first = soFar(day, before, at, Set.of());
        Outcome outcome;
        try (Planning.Ending ending = planning.watching(spec)) {
            outcome = cheapest(day, before, first, ending);
        }
        SoFar soFar = outcome.soFar();
        Attempt rest = outcome.rest();
        Set<String> waited = outcome.waited();
        Planning.Planned made = rest.made();
        Set<String> unusable = new TreeSet<>(rest.anew());
        unusable.addAll(rest.left().spoiled());
        Map<String, String> renamed = new LinkedHashMap<>(soFar.renamed());
        Set<String> spoiled = asNumberedBefore(unusable, renamed);
        spoiled.addAll(waited);
        renamed.keySet().removeAll(spoiled);
        Set<String> gone = new TreeSet<>(soFar.lost());
        gone.addAll(spoiled);
        Changes changes = Changes.of(day, soFar.onPaper(), made.plan(), before, soFar.renamed())
                .telling(gone, renamed, stopped(soFar, before, made.plan()), soFar.warming(), soFar.unwanted());

        PrintWriter print = spec.commandLine().getOut();
        warn(print, day, soFar);
        tellSoFar(print, day, soFar, rest, spoiled, renamed, before);
        compare(print, day, first.carriedOn(), made.plan());
        print.println(changes.line());
        print.println();
        List<Trouble> remarks = DayCheck.remarksOnEaters(day).stream()
                .filter(remark -> !isOver(day, remark, at))
                .toList();
        remarks.forEach(remark -> print.println("Remark: " + file.tell(remark)));
        ReadyTable.print(print, day, made.plan());
        planning.tellUnplaced(spec, day, made);
        planning.tellHeldUp(spec, day, made);
        planning.tellOdds(spec, day, made);
        planning.write(spec, day, made, Optional.of(changes), remarks, folder, at);
        boolean served = made.plan().verdict().setups().stream()
                .allMatch(setup -> setup.ready().isPresent() || !day.wantsFood(setup.setup()));
        return made.plan().verdict().sound() && served ? Main.FINE : Main.NOT_READY;
    }

    /**
     * A plan of the rest of a day.
     *
     * @param anew copies that have begun and are made anew all the same
     * @param enough for some needs how many of its copies are made at most
     */
    private record Attempt(UnderWay left, Planning.Planned made, Set<String> anew, Map<String, Integer> enough) {

        private static final long NEVER = 1_000_000;

        private long missing() {
            return made.plan().copies().stream()
                    .filter(Predicate.not(PlannedCopy::made))
                    .count();
        }

        /** A copy that isn't made costs no points, so more of them would look like less. */
        boolean isBetterThan(Attempt other) {
            long missing = missing() - other.missing();
            return missing < 0 || missing == 0 && points() < other.points();
        }

        /** Minutes by which first takes wait for their plates; one that never has them waits for longer than any day. */
        long firstTakesLate(Day day) {
            return made.plan().verdict().setups().stream()
                    .filter(setup -> day.wantsFood(setup.setup()))
                    .mapToLong(setup -> setup.ready().isEmpty() ? NEVER : Math.max(0, -setup.marginMinutes()))
                    .sum();
        }

        /** Minutes that copies of a need are late or past their use; what isn't made is so for longer than any day. */
        long minutesLate(String need) {
            return ofNeed(made.plan(), need).stream()
                    .mapToLong(copy -> copy.made() ? copy.lateMinutes() : NEVER)
                    .sum();
        }

        private long points() {
            return made.plan().points().total();
        }
    }

    /**
     * The rest of a day as it is planned.
     *
     * @param waited copies, as the plan in hand numbers them, that have waited too long or leave their place to fresh ones
     */
    private record Outcome(SoFar soFar, Set<String> waited, Attempt rest) {}

    /**
     * Plans the rest of a day with all that would be stale made anew where that is sooner; if something is late or missing so, with all
     * of it kept, and with what of each need was better of the two. The cheapest is taken.
     */
    private Outcome cheapest(Day day, Plan before, SoFar first, Planning.Ending ending) {
        Outcome fresh = outcome(day, before, first, Set.of(), ending);
        Attempt rest = fresh.rest();
        Set<String> all = day.needs().stream().map(Need::key).collect(Collectors.toSet());
        boolean late = rest.missing() > 0 || rest.made().plan().verdict().lateMinutes() > 0;
        if (!late || waited(day, before, first, all).equals(fresh.waited()) || ending.stop()) {
            return fresh;
        }
        Outcome kept = outcome(day, before, first, all, ending);
        Outcome best = kept.rest().isBetterThan(rest) ? kept : fresh;
        Set<String> noLater = all.stream()
                .filter(need -> kept.rest().minutesLate(need) <= rest.minutesLate(need))
                .collect(Collectors.toSet());
        Set<String> mixed = waited(day, before, first, noLater);
        if (mixed.equals(kept.waited()) || mixed.equals(fresh.waited()) || ending.stop()) {
            return best;
        }
        Outcome each = outcome(day, before, first, noLater, ending);
        return each.rest().isBetterThan(best.rest()) ? each : best;
    }

    private Outcome outcome(Day day, Plan before, SoFar first, Set<String> keepsStale, Planning.Ending ending) {
        Set<String> waited = waited(day, before, first, keepsStale);
        SoFar soFar = waited.isEmpty() ? first : soFar(day, before, first.now(), waited);
        return new Outcome(soFar, waited, rest(day, before, soFar, keepsStale, ending));
    }

    /**
     * Plans the rest of a day: once more if what has begun finds no way on, if copies would come when nobody waits for them, and if first
     * takes are late where there are more copies than before.
     */
    private Attempt rest(Day day, Plan before, SoFar soFar, Set<String> keepsStale, Planning.Ending ending) {
        Attempt best = attempt(day, before, soFar, Set.of(), keepsStale, Map.of(), ending);
        Set<String> stuck = stuck(best.left(), best.made().plan());
        if (!stuck.isEmpty() && !ending.stop()) {
            Attempt anew = attempt(day, before, soFar, stuck, keepsStale, Map.of(), ending);
            best = anew.missing() < best.missing() ? anew : best;
        }
        Map<String, Integer> enough =
                new TreeMap<>(beyondReach(day, before, best.made().plan()));
        enough.putAll(enough(day, best.left().net(), best.made().plan(), false));
        if (!enough.isEmpty() && !ending.stop()) {
            Attempt fewer = attempt(day, before, soFar, best.anew(), keepsStale, enough, ending);
            best = fewer.isBetterThan(best) ? fewer : best;
        }
        Map<String, Integer> noMore =
                new TreeMap<>(asBefore(day, before, best.made().plan()));
        if (!noMore.isEmpty() && best.firstTakesLate(day) > 0 && !ending.stop()) {
            best.enough().forEach((need, count) -> noMore.merge(need, count, Math::min));
            Attempt asBefore = attempt(day, before, soFar, best.anew(), keepsStale, noMore, ending);
            best = asBefore.firstTakesLate(day) < best.firstTakesLate(day) ? asBefore : best;
        }
        return best;
    }

    private Attempt attempt(
            Day day,
            Plan before,
            SoFar soFar,
            Set<String> anew,
            Set<String> keepsStale,
            Map<String, Integer> enough,
            Planning.Ending ending) {
        TaskNet all = tasks(day, before, soFar.now(), enough);
        UnderWay left = underWay(day, all, soFar, anew, keepsStale);
        return new Attempt(
                left, planning.plan(spec, day, left.net(), Optional.of(soFar.inHand()), ending), anew, enough);
    }

    /**
     * All tasks of a day with as many copies as the plan in hand has: what was bought and is under way is not reckoned anew. More
     * where the sheets ask for more now and it isn't shot, fewer where takes can't use up as many any more; a number in the sheets stands.
     *
     * @param enough for some needs how many of its copies still come in time
     */
    private static TaskNet tasks(Day day, Plan before, Moment now, Map<String, Integer> enough) {
        CopyCounts counts = CopyCounts.of(day);
        Map<String, Integer> planned = planned(before);
        return Breakdown.of(day, dish -> Looks.of(day, dish), need -> {
            Integer known = planned.get(need.key());
            Setup setup = day.setup(need.setup()).orElseThrow();
            boolean shot = setup.isOver(now);
            int count = known == null || need.copies().isPresent()
                    ? counts.copiesOf(need)
                    : Math.min(Math.max(known, shot ? known : counts.copiesOf(need)), CopyCounts.wantedOf(day, need));
            if (setup.countShot() > 0 && !shot && need.copies().isEmpty()) {
                count = Math.max(count, forCertain(setup, need));
            }
            return Math.min(count, enough.getOrDefault(need.key(), count));
        });
    }

    /** Copies for the takes that are likely, for the next one, whether it was likely or not, and for extra looks. */
    private static int forCertain(Setup setup, Need need) {
        int takes = Math.min(setup.takesWorst(), setup.countShot() + 1);
        return CameraTime.copiesFor(need, Math.max(setup.takesLikely(), takes));
    }

    /**
     * For each need of which some copies would only come when the last take at worst is over, though the first one has its plates:
     * how many don't. Nobody waits for the others, and what they take of hands is missing elsewhere.
     *
     * @param fixed whether of the needs whose number of copies stands in the sheets, or of the others
     */
    private static Map<String, Integer> enough(Day day, TaskNet net, Plan plan, boolean fixed) {
        Set<String> begun = begun(net);
        Map<String, Integer> enough = new TreeMap<>();
        for (Need need : day.needs()) {
            Setup setup = day.setup(need.setup()).orElseThrow();
            List<PlannedCopy> copies = plan.copies().stream()
                    .filter(copy -> copy.need().equals(need.key()))
                    .toList();
            // while the first take waits, so do all others
            Optional<Moment> first = plan.verdict().setups().stream()
                    .filter(readiness -> readiness.setup().equals(setup.id()))
                    .findFirst()
                    .flatMap(Readiness::ready);
            if (first.isEmpty() || need.copies().isPresent() != fixed) {
                continue;
            }
            Moment over =
                    setup.shooting().end().plus(Math.max(0, setup.nextRoll().minutesUntil(first.get())));
            int inTime = copies.stream()
                    .filter(copy -> !copy.made()
                            || CameraTime.isOfNextSet(setup, need, copy.number())
                            || begun.contains(copy.id())
                            || copy.ready().filter(over::isAfter).isPresent())
                    .mapToInt(PlannedCopy::number)
                    .max()
                    .orElse(0);
            if (inTime > 0 && inTime < copies.size()) {
                enough.put(need.key(), inTime);
            }
        }
        return enough;
    }

    /**
     * For each need that has more copies than in the plan in hand, for money that is free now, and of which some can't be made: how many can.
     */
    private static Map<String, Integer> beyondReach(Day day, Plan before, Plan plan) {
        Map<String, Integer> enough = asBefore(day, before, plan);
        enough.replaceAll((need, count) -> Math.max(count, (int)
                ofNeed(plan, need).stream().filter(PlannedCopy::made).count()));
        enough.keySet().removeIf(need -> enough.get(need) >= ofNeed(plan, need).size());
        return enough;
    }

    /**
     * For each need that has more copies than in the plan in hand, though the sheets give no number: how many that had. What likely takes
     * and the next one use up is wanted all the same.
     */
    private static Map<String, Integer> asBefore(Day day, Plan before, Plan plan) {
        Map<String, Integer> had = planned(before);
        Map<String, Integer> fewer = new TreeMap<>();
        for (Need need : day.needs()) {
            int certain = forCertain(day.setup(need.setup()).orElseThrow(), need);
            int wanted = Math.max(certain, had.getOrDefault(need.key(), Integer.MAX_VALUE));
            if (need.copies().isEmpty() && wanted < ofNeed(plan, need.key()).size()) {
                fewer.put(need.key(), wanted);
            }
        }
        return fewer;
    }

    private static List<PlannedCopy> ofNeed(Plan plan, String need) {
        return plan.copies().stream().filter(copy -> copy.need().equals(need)).toList();
    }

    /** The highest number among a need's copies, by the need. */
    private static Map<String, Integer> planned(Plan plan) {
        Map<String, Integer> planned = new TreeMap<>();
        plan.copies().forEach(copy -> planned.merge(copy.need(), copy.number(), Math::max));
        return planned;
    }

    /** Whether a remark is on a need of a setup that is shot. */
    private static boolean isOver(Day day, Trouble remark, Moment now) {
        return remark.sheet().equals("needs")
                && day.setup(day.needs().get(remark.row()).setup())
                        .filter(setup -> setup.isOver(now))
                        .isPresent();
    }

    /** Copies by the numbers that people know: what has another's place now had one of its own. */
    private static Set<String> asNumberedBefore(Set<String> copies, Map<String, String> renamed) {
        Set<String> before = new TreeSet<>();
        for (String copy : copies) {
            before.add(renamed.entrySet().stream()
                    .filter(food -> food.getValue().equals(copy))
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .orElse(copy));
        }
        return before;
    }

    /** Copies that have begun and can't go on, for want of a station, hands or silence in time: they may be made anew. */
    private static Set<String> stuck(UnderWay left, Plan plan) {
        Set<String> begun = begun(left.net());
        return plan.copies().stream()
                .filter(copy -> !copy.made() && begun.contains(copy.id()))
                .map(PlannedCopy::id)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static Set<String> begun(TaskNet net) {
        return net.copies().stream()
                .filter(copy -> copy.recipe().tasks().stream().anyMatch(TaskNet.Task::hasBegun))
                .map(TaskNet.Copy::id)
                .collect(Collectors.toSet());
    }

    /** Works under way that serve no copy any more, as they were planned. */
    private static List<Work> stopped(SoFar soFar, Plan before, Plan plan) {
        Set<CopyStep> used = new HashSet<>();
        // what is made anew has the same step again, later
        plan.work().stream()
                .filter(work -> plan.hasBegun(work.span().start()))
                .forEach(work -> work.copies().forEach(copy -> used.add(work.with(copy))));
        Set<String> stopped = soFar.begun().stream()
                .filter(work -> work.span().end().isAfter(soFar.now())
                        && work.copies().stream().noneMatch(copy -> used.contains(work.with(copy))))
                .map(Work::id)
                .collect(Collectors.toSet());
        return before.work().stream()
                .filter(work -> stopped.contains(work.id()))
                .toList();
    }

    /** Tells that all calls of the plan are as many days away, and not for a call that has moved: the sheet day has another date. */
    private static List<Trouble> onAnotherDate(Day day, Plan before) {
        ZoneId zone = day.facts().zone();
        LocalDate date = day.facts().date();
        Set<LocalDate> called = new HashSet<>();
        Set<Long> moved = new HashSet<>();
        for (Readiness planned : before.verdict().setups()) {
            LocalDate was = planned.call().in(zone).toLocalDate();
            called.add(was);
            day.setup(planned.setup())
                    .map(setup -> setup.nextRoll().in(zone).toLocalDate())
                    .ifPresent(is -> moved.add(ChronoUnit.DAYS.between(was, is)));
        }
        long days = moved.size() == 1 ? moved.iterator().next() : 0;
        boolean another = days > 0
                ? called.stream().allMatch(date::isAfter)
                : before.work().stream()
                        .anyMatch(work -> !day.horizon().contains(work.span().start()));
        if (days == 0 || !another) {
            return List.of();
        }
        LocalDate planned = date.minusDays(days);
        return List.of(new Trouble(
                "day",
                -1,
                "date",
                date.toString(),
                "is not the date of the plan in hand, whose calls are those of " + planned,
                "Maybe " + planned + ", or the plan.json of " + date + "."));
    }

    private void notBefore(Day day, Plan before, Moment at) {
        ZoneId zone = day.facts().zone();
        before.asOf().filter(at::isBefore).ifPresent(made -> {
            throw unusableNow(stamp(zone, at) + " is before " + stamp(zone, made)
                    + ", when the plan in hand was made. Maybe take the plan before it.");
        });
    }

    /** A clock time belongs to the one date on which it lies within the day, the shooting date first; if to none, the nearest is told. */
    private Moment withinDay(Day day) {
        ZoneId zone = day.facts().zone();
        boolean dated = DATED.matcher(now).lookingAt();
        List<String> texts = new ArrayList<>(List.of(now));
        // one date more: a day that runs over may end after midnight
        LocalDate last = day.horizon().end().in(zone).toLocalDate().plusDays(1);
        for (LocalDate date = day.horizon().start().in(zone).toLocalDate();
                !dated && !date.isAfter(last);
                date = date.plusDays(1)) {
            texts.add(date + " " + now.strip());
        }
        List<String> whyNot = new ArrayList<>();
        List<Moment> outside = new ArrayList<>();
        for (String text : texts) {
            try {
                Moment at = HappeningsFile.time(text, day);
                if (day.horizon().contains(at)) {
                    return at;
                }
                outside.add(at);
            } catch (IllegalArgumentException noTime) {
                whyNot.add(noTime.getMessage());
            }
        }
        throw unusableNow(outside.stream()
                .min(Comparator.comparingInt(at -> minutesOutside(day, at)))
                .map(nearest -> outside(day, nearest, dated))
                .orElseGet(() -> whyNot.get(0)));
    }

    private static int minutesOutside(Day day, Moment at) {
        Span horizon = day.horizon();
        return Math.max(at.minutesUntil(horizon.start()), horizon.end().minutesUntil(at));
    }

    private static String outside(Day day, Moment at, boolean dated) {
        ZoneId zone = day.facts().zone();
        Span horizon = day.horizon();
        boolean runsOver = !at.isBefore(horizon.end()) && minutesOutside(day, at) < DAY_MINUTES;
        return stamp(zone, at) + " is not within the day, which goes from " + stamp(zone, horizon.start()) + " to "
                + stamp(zone, horizon.end()) + ". "
                + (runsOver
                        ? "Maybe longer kitchen hours in sheet day, if it runs over."
                        : "Maybe " + (dated ? "another date" : "give the date too") + ": --now \""
                                + stamp(zone, horizon.end().plus(-60)) + "\".");
    }

    private ParameterException unusableNow(String why) {
        return new ParameterException(spec.commandLine(), "--now: " + why);
    }

    private static UnderWay underWay(Day day, TaskNet all, SoFar soFar, Set<String> anew, Set<String> keepsStale) {
        return UnderWay.of(day, all, soFar.now(), soFar.begun(), soFar.breaks(), anew, keepsStale, soFar.notBefore());
    }

    /** Copies that have waited too long, as the plan in hand numbers them: they leave their places to others of their need, as what is lost does. */
    private static Set<String> waited(Day day, Plan before, SoFar soFar, Set<String> keepsStale) {
        UnderWay left = underWay(day, tasks(day, before, soFar.now(), Map.of()), soFar, Set.of(), keepsStale);
        return asNumberedBefore(Set.copyOf(left.spoiled()), soFar.renamed());
    }

    /** @param useless copies that have waited too long, as the plan in hand numbers them */
    private SoFar soFar(Day day, Plan before, Moment at, Set<String> useless) {
        Optional<NotedFile<Happening>> file = Optional.ofNullable(happened).map(path -> HappeningsFile.read(path, day));
        List<Trouble> troubles = new ArrayList<>();
        SoFar soFar = SoFar.of(
                day,
                before,
                at,
                file.map(NotedFile::rows).orElse(List.of()),
                useless,
                HappeningsFile.SHEET_NAME,
                troubles);
        if (!troubles.isEmpty()) {
            throw file.orElseThrow().bad(troubles);
        }
        return soFar;
    }

    /** As cells and {@code --now} take it: {@code 2026-10-25 01:20}, or {@code 2026-10-25 02:30+01:00} where clocks show it twice. */
    static String stamp(ZoneId zone, Moment moment) {
        String offset = moment.comesTwice(zone) ? "xxx" : "";
        return DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm" + offset, Locale.ROOT)
                .format(moment.in(zone));
    }

    /** {@code 1120}, or with the date before it if it isn't the day's, and the offset after it where clocks show it twice. */
    static String stamp(Day day, Moment moment) {
        boolean onTheDay =
                moment.in(day.facts().zone()).toLocalDate().equals(day.facts().date());
        String offset = moment.comesTwice(day.facts().zone()) ? "x" : "";
        return DateTimeFormatter.ofPattern((onTheDay ? "HHmm" : "uuuu-MM-dd-HHmm") + offset, Locale.ROOT)
                .format(moment.in(day.facts().zone()));
    }

    /** Who has been served what he or she must not eat, and what may be warm or cold by now: the first thing to be done is to say so. */
    private static void warn(PrintWriter print, Day day, SoFar soFar) {
        for (Trouble served : DayCheck.served(day, soFar.now())) {
            Setup setup = day.setup(day.needs().get(served.row()).setup()).orElseThrow();
            print.printf(
                    Locale.ROOT,
                    "WARNING  Setup %s, shot from %s: [%s] %s. Tell whoever ate it and first aid on set at once.%n",
                    setup.id(),
                    setup.call().clock(day.facts().zone()),
                    served.value(),
                    served.what());
        }
        soFar.warming()
                .forEach((store, copies) -> print.println("WARNING  " + store
                        + " is closed by the sheets of now, or was for a while, and in it by the plan: "
                        + String.join(", ", copies) + ". "
                        + Changes.HOW_WARM));
    }

    private static void tellSoFar(
            PrintWriter print,
            Day day,
            SoFar soFar,
            Attempt rest,
            Set<String> spoiled,
            Map<String, String> renamed,
            Plan before) {
        Plan plan = rest.made().plan();
        long underWay = soFar.begun().stream()
                .filter(work -> work.span().end().isAfter(soFar.now()))
                .count();
        print.printf(
                Locale.ROOT,
                "%s: %s begun, %d of them %s under way.%n",
                stamp(day.facts().zone(), soFar.now()),
                soFar.begun().size() == 1 ? "1 job has" : soFar.begun().size() + " jobs have",
                underWay,
                underWay == 1 ? "is" : "are");
        Map<String, Integer> had = planned(before);
        tellLost(print, soFar, spoiled, replaced(spoiled, had, plan));
        numberedAnew(renamed).forEach((need, places) -> list(print, "Numbered anew, " + need + ": ", places));
        tellTooLate(print, day, rest, had);
        list(
                print,
                "Not wanted any more, to be taken out: ",
                soFar.unwanted().entrySet().stream()
                        .map(store -> String.join(", ", store.getValue()) + " in " + store.getKey())
                        .toList());
        list(
                print,
                "To be told again if you replan before then, waiting until ",
                soFar.notBefore().entrySet().stream()
                        .map(wait -> ReadyTable.dated(wait.getValue(), day) + ": "
                                + wait.getKey().copy() + " "
                                + wait.getKey().step().orElse(Happening.CARRY))
                        .toList());
        list(
                print,
                "More copies than in the plan in hand: ",
                more(had, planned(plan)).stream()
                        .filter(need -> day.setup(need.substring(0, need.indexOf('/')))
                                .filter(plan::isShot)
                                .isEmpty())
                        .toList());
        list(
                print,
                "Not made while their setup was shot, not made any more: ",
                rest.left().net().past().missed().stream()
                        .map(TaskNet.Copy::id)
                        .filter(copy ->
                                before.copies().stream().anyMatch(it -> it.id().equals(copy)))
                        .toList());
        list(
                print,
                "Under way for no copy any more, to be stopped: ",
                stopped(soFar, before, plan).stream()
                        .map(work -> work.dish() + " " + work.step() + " of " + String.join(", ", work.copies())
                                + work.stations().stream()
                                        .map(hold -> " in " + hold.station())
                                        .collect(Collectors.joining()))
                        .toList());
        print.println();
    }

    private static void tellLost(PrintWriter print, SoFar soFar, Set<String> spoiled, Set<String> replaced) {
        list(
                print,
                "Lost: ",
                soFar.lost().stream().filter(Predicate.not(spoiled::contains)).toList());
        list(print, "Can't be used any more, made anew: ", replaced);
        list(
                print,
                "Can't be used any more, and no other is made: ",
                spoiled.stream().filter(Predicate.not(replaced::contains)).toList());
    }

    private static void tellTooLate(PrintWriter print, Day day, Attempt rest, Map<String, Integer> had) {
        list(
                print,
                "Too late for the last take, not made any more: ",
                rest.enough().entrySet().stream()
                        .filter(need -> need.getValue()
                                < Optional.ofNullable(had.get(need.getKey()))
                                        .orElseGet(() -> asked(day, need.getKey())))
                        .map(ReplanCommand::andOn)
                        .toList());
        list(
                print,
                "Too late for the last take, made only because column copies of sheet needs asks for them: ",
                enough(day, rest.left().net(), rest.made().plan(), true).entrySet().stream()
                        .map(ReplanCommand::andOn)
                        .toList());
    }

    /** How many copies the sheets ask for, for a need that is new. */
    private static int asked(Day day, String key) {
        CopyCounts counts = CopyCounts.of(day);
        return day.needs().stream()
                .filter(need -> need.key().equals(key))
                .mapToInt(counts::copiesOf)
                .sum();
    }

    /** The copies of a need that come after the first so many. */
    private static String andOn(Map.Entry<String, Integer> first) {
        return first.getKey() + "#" + (first.getValue() + 1) + " and on";
    }

    /** Those of the copies that can't be used any more for which others are made: their needs have as many as they had. */
    private static Set<String> replaced(Set<String> spoiled, Map<String, Integer> had, Plan plan) {
        Map<String, Integer> fewer = new TreeMap<>(had);
        plan.copies().stream()
                .filter(PlannedCopy::made)
                .forEach(copy -> fewer.computeIfPresent(copy.need(), (need, count) -> count - 1));
        Set<String> replaced = new TreeSet<>();
        for (String copy : new TreeSet<>(spoiled).descendingSet()) {
            if (fewer.merge(need(copy), -1, Integer::sum) < 0) {
                replaced.add(copy);
            }
        }
        return replaced;
    }

    /** For each need the copies that take another's place. */
    private static Map<String, List<String>> numberedAnew(Map<String, String> renamed) {
        Map<String, List<String>> places = new LinkedHashMap<>();
        renamed.forEach((was, is) -> places.computeIfAbsent(need(was), need -> new ArrayList<>())
                .add(was.substring(need(was).length()) + " is now " + is.substring(need(is).length())));
        return places;
    }

    /** Needs that have more copies than they had. */
    private static List<String> more(Map<String, Integer> had, Map<String, Integer> has) {
        return has.keySet().stream()
                .filter(need -> had.containsKey(need) && has.get(need) > had.get(need))
                .map(need -> need + " " + has.get(need) + " instead of " + had.get(need))
                .toList();
    }

    /** A copy's id without its number. */
    private static String need(String copy) {
        return copy.substring(0, copy.lastIndexOf('#'));
    }

    private static void list(PrintWriter print, String what, Collection<String> copies) {
        if (!copies.isEmpty()) {
            print.println(what + String.join(", ", copies) + ".");
        }
    }

    /** When each setup that isn't shot yet is ready if people go on as they are, and by the new plan. */
    private static void compare(PrintWriter print, Day day, Plan asPlanned, Plan plan) {
        ZoneId zone = day.facts().zone();
        if (plan.verdict().setups().isEmpty()) {
            print.println("Every setup is shot.");
            print.println();
            return;
        }
        Verdict carriedOn = Audit.of(day, asPlanned);
        Map<String, Flaw> flawsThen = Audit.flaws(day, asPlanned);
        Map<String, Flaw> flaws = Audit.flaws(day, plan);
        SetupColumns columns = ReadyTable.columns(zone, plan.verdict().setups());
        String row = "%s  %-26s  %s%n";
        print.printf(Locale.ROOT, row, columns.head(), "if people go on as planned", "by the new plan");
        for (int i = 0; i < plan.verdict().setups().size(); i++) {
            Readiness then = plan.verdict().setups().get(i);
            print.printf(
                    Locale.ROOT,
                    row,
                    columns.of(then.setup(), then.call()),
                    inTime(day, carriedOn.setups().get(i), flawsThen),
                    inTime(day, then, flaws));
        }
        List<String> impossible = carriedOn.breaches().stream()
                .filter(breach -> breach.rule() == Rule.SHIFT || breach.rule() == Rule.OPEN)
                .map(Breach::what)
                .toList();
        impossible.stream()
                .limit(MOST_TOLD)
                .forEach(what -> print.println("If people go on as planned, " + what + "."));
        if (impossible.size() > MOST_TOLD) {
            print.println("And " + (impossible.size() - MOST_TOLD) + " more like that.");
        }
        print.println();
    }

    private static String inTime(Day day, Readiness setup, Map<String, Flaw> flaws) {
        return setup.ready()
                .map(at -> at.clock(day.facts().zone())
                        + (setup.marginMinutes() < 0
                                ? ", " + -setup.marginMinutes() + " min late"
                                : Optional.ofNullable(flaws.get(setup.setup()))
                                        .map(flaw -> ", " + words(flaw))
                                        .orElse("")))
                .orElse(day.wantsFood(setup.setup()) ? "not ready" : "no food");
    }

    private static String words(Flaw flaw) {
        return switch (flaw) {
            case PAST_USE -> "past use";
            case SHORT -> "then short";
            case STAND_IN_LATE -> "stand-in late";
            case PAST_PEAK -> "past peak";
        };
    }
}
