package platecall.safety;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.ProbeReading;
import platecall.day.ProbeReading.What;
import platecall.day.Step;
import platecall.safety.JudgedReadings.Grade;
import platecall.safety.ProbeLog.Out;
import platecall.units.Moment;

/** Judges the readings of one copy for one purpose by a profile. */
final class ReadingJudge {

    /** What is going on with food that nobody keeps once it was eaten of. */
    private static final Set<What> LEFT_OVER =
            EnumSet.of(What.HOT_HOLD, What.REHEATING, What.TAKEN_OUT, What.CUT_OR_OPENED);

    private final Day day;
    private final Profile profile;
    private final Served served;
    private final What what;
    private final ProbeLog all;
    private final ProbeLog log;
    private final Function<Moment, String> clock;

    /** @param rows of one copy for one purpose, at least one */
    ReadingJudge(
            Day day,
            Profile profile,
            Served served,
            What what,
            List<ProbeReading> rows,
            Function<Moment, String> clock) {
        this.day = day;
        this.profile = profile;
        this.served = served;
        this.what = what;
        this.clock = clock;
        all = new ProbeLog(rows);
        List<ProbeReading> counting =
                rows.stream().filter(row -> !afterEaten(row)).toList();
        log = counting.isEmpty() ? all : new ProbeLog(counting);
    }

    /** What is left over harms nobody; what cools, is kept cold or thaws is kept for later, and cooking may be late. */
    private boolean afterEaten(ProbeReading row) {
        return LEFT_OVER.contains(what) && served.eaten() && row.time().isAfter(served.lastBite());
    }

    private record Verdict(Grade grade, String words) {

        private static Verdict fine(String words) {
            return new Verdict(Grade.FINE, words);
        }

        private static Verdict watch(String words) {
            return new Verdict(Grade.WATCH, words);
        }

        private static Verdict notSafe(String words) {
            return new Verdict(Grade.NOT_SAFE, words);
        }

        /** The worst of some; where food isn't safe only why. */
        private static Verdict worst(List<Verdict> verdicts) {
            Grade worst = verdicts.stream()
                    .map(Verdict::grade)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
            return new Verdict(
                    worst,
                    verdicts.stream()
                            .filter(verdict -> worst != Grade.NOT_SAFE || verdict.grade() == worst)
                            .map(Verdict::words)
                            .collect(Collectors.joining(" ")));
        }
    }

    JudgedReadings judge() {
        Verdict verdict = afterEaten(log.rows().get(0))
                ? Verdict.watch("Nobody read it before: tell replan if it is eaten later.")
                : verdict();
        boolean atRisk = what == What.COOKING || served.dish().timeTemperatureControlled();
        String rows = all.rows().stream().map(this::row).collect(Collectors.joining(", "));
        String aside = !served.eaten()
                ? " Nobody eats it by the plan."
                : atRisk ? "" : " By the sheets it needs no control of time and temperature.";
        return new JudgedReadings(
                served.copy(), what, verdict.grade(), rows + ". " + verdict.words() + aside, served.eaten(), atRisk);
    }

    private Verdict verdict() {
        return switch (what) {
            case COOKING -> cooking();
            case COOLING -> cooling(false);
            case CHILLING -> cooling(true);
            case HOT_HOLD -> hold(true);
            case COLD_HOLD -> hold(false);
            case REHEATING -> reheating();
            case THAWING -> thawing();
            case TAKEN_OUT -> takenOut(TimeMark.Food.HELD);
            case CUT_OR_OPENED -> takenOut(TimeMark.Food.CUT_OR_OPENED);
        };
    }

    private String row(ProbeReading row) {
        return clock.apply(row.time()) + " " + number(row.celsius()) + " °C"
                + (row.heldSeconds() == 0 ? "" : " for " + seconds(row.heldSeconds()))
                + (afterEaten(row) ? " after it was eaten by the plan" : "");
    }

    private Verdict cooking() {
        FoodKind kind = served.kind(day);
        // what is enough for a stricter kind is enough: 75 °C once needs no 15 s at 63 °C
        List<Cooking> rows = profile.cooking().stream()
                .filter(row -> row.kinds().stream().anyMatch(it -> it.compareTo(kind) >= 0))
                .toList();
        String worth = worth(kind, rows);
        Optional<Cooking> met = rows.stream()
                .filter(row -> log.heldSeconds(row.celsius()).stream()
                        .anyMatch(seconds -> row.reached(row.celsius(), seconds)))
                .max(Comparator.comparing(ReadingJudge::strictest));
        if (met.isPresent()) {
            Moment when =
                    log.at(log.reached(met.get().celsius(), met.get().seconds()).orElseThrow());
            return Verdict.fine(done(strictest(met.get())) + ": at least "
                    + held(met.get().celsius(), met.get().seconds()) + " at " + clock.apply(when) + "." + worth);
        }
        return Verdict.notSafe("Not done" + (kind == FoodKind.INTACT ? "" : " for " + kind.words()) + ": "
                + missing(rows) + roast(kind) + worth);
    }

    private static FoodKind strictest(Cooking row) {
        return row.kinds().stream().max(Comparator.naturalOrder()).orElseThrow();
    }

    /** Words guess the kind, so it is told where a stricter one would ask for more. */
    private static String done(FoodKind kind) {
        return switch (kind) {
            case INTACT -> "Done unless it is ground, poultry or stuffed";
            case GROUND -> "Done unless it is poultry or stuffed";
            case POULTRY -> "Done";
        };
    }

    /** The shortest ways to have it done, a sentence. */
    private String missing(List<Cooking> rows) {
        double now = log.last().celsius();
        Comparator<Cooking> cooler = Comparator.comparingDouble(Cooking::celsius);
        Optional<Cooking> hold =
                rows.stream().filter(row -> row.celsius() <= now).min(Comparator.comparingLong(this::secondsMissing));
        List<Cooking> hotter =
                rows.stream().filter(row -> row.celsius() > now).sorted(cooler).toList();
        Optional<Cooking> fastest =
                hotter.stream().min(Comparator.comparingInt(Cooking::seconds).thenComparing(cooler));
        List<String> ways = Stream.of(
                        hold.map(row ->
                                "hold " + number(row.celsius()) + " °C for " + seconds(secondsMissing(row)) + " more"),
                        hotter.stream().findFirst().map(ReadingJudge::reach),
                        fastest.map(ReadingJudge::reach))
                .flatMap(Optional::stream)
                .distinct()
                .toList();
        return String.join(", or ", ways) + (ways.size() > 1 ? "," : "") + " and read again.";
    }

    private long secondsMissing(Cooking row) {
        return row.seconds() - log.heldNow(row.celsius()).orElse(0);
    }

    private static String reach(Cooking row) {
        return "reach " + number(row.celsius()) + " °C"
                + (row.seconds() == 0 ? "" : " and hold it for " + seconds(row.seconds()));
    }

    /** No sheet tells a whole roast from a cut. */
    private String roast(FoodKind kind) {
        if (kind != FoodKind.INTACT || !profile.isFoodCode()) {
            return "";
        }
        return log.rows().stream()
                .map(ProbeReading::celsius)
                .filter(core -> Roast.holdSeconds(core).stream()
                        .anyMatch(least -> log.heldSeconds(core).orElse(0) >= least))
                .max(Comparator.naturalOrder())
                .map(core -> " Done only if it is a whole roast of beef, pork, lamb or ham: " + number(core)
                        + " °C held long enough (" + Roast.source() + ").")
                .orElse("");
    }

    /** What the readings are worth beside the profile's own rows, which decide. */
    private String worth(FoodKind kind, List<Cooking> rows) {
        boolean equivalents = rows.stream()
                .anyMatch(row ->
                        row.celsius() == Lethality.UK_REFERENCE_CELSIUS && row.seconds() == 60 * Lethality.UK_MINUTES);
        double minutes = Lethality.leastMinutes(log.readings(), Lethality.UK_REFERENCE_CELSIUS, Lethality.UK_Z_CELSIUS);
        if (equivalents && minutes >= 0.1) {
            return " Worth at least " + number(Math.floor(10 * minutes) / 10) + " min at "
                    + number(Lethality.UK_REFERENCE_CELSIUS) + " °C (z " + number(Lethality.UK_Z_CELSIUS) + " °C), of "
                    + number(Lethality.UK_MINUTES) + ".";
        }
        // the table is for meat, and only ground meat is known to be meat by its words
        if (kind == FoodKind.GROUND && profile.isFoodCode()) {
            return reduced(MeatLethality.Reduction.LOG_7)
                    ? " Bacteria are 10^7 times fewer (USDA FSIS Appendix A)."
                    : reduced(MeatLethality.Reduction.LOG_6_5)
                            ? " Bacteria are 10^6.5 times fewer (USDA FSIS Appendix A)."
                            : "";
        }
        return "";
    }

    private boolean reduced(MeatLethality.Reduction reduction) {
        return log.rows().stream()
                .map(ProbeReading::celsius)
                .anyMatch(core -> MeatLethality.tableSeconds(core * 1.8 + 32, reduction).stream()
                        .anyMatch(least -> log.heldSeconds(core).orElse(0) >= least));
    }

    private Verdict cooling(boolean neverHot) {
        List<Cooling.Stage> stages = stages(neverHot);
        Cooling.Stage last = stages.get(stages.size() - 1);
        List<Reading> readings = log.readings();
        int cold = 0;
        while (cold < readings.size() && readings.get(cold).celsius() > last.toCelsius()) {
            cold++;
        }
        List<Reading> until = readings.subList(0, Math.min(cold + 1, readings.size()));
        List<Verdict> verdicts = new ArrayList<>();
        for (Cooling.Stage stage : stages) {
            // one that was over before the first reading counts with a later one that starts no lower
            boolean over = until.stream().allMatch(reading -> reading.celsius() <= stage.toCelsius());
            if (!over || stage == last || stage.fromCelsius() > last.fromCelsius()) {
                verdicts.add(stage(stage, until));
            }
        }
        if (cold < readings.size()) {
            Out out = log.out(profile.cold(), readings.get(cold).minute());
            if (out.times() > 0) {
                verdicts.add(outOfRange(false, out));
            }
        }
        Verdict worst = Verdict.worst(verdicts);
        return profile.cooling().contains(last)
                ? worst
                : new Verdict(
                        worst.grade(),
                        worst.words() + " This profile has no minutes down to " + number(last.toCelsius())
                                + " °C: those that food may stand out count.");
    }

    /** The profile's stages, and the minutes between the limits where those don't reach down to the cold one. */
    private List<Cooling.Stage> stages(boolean neverHot) {
        List<Cooling.Stage> stages = new ArrayList<>(profile.cooling().stream()
                .filter(stage -> stage.fromAmbient() == neverHot)
                .toList());
        double cold = profile.cold().value();
        double lowest = stages.stream()
                .mapToDouble(Cooling.Stage::toCelsius)
                .min()
                .orElse(neverHot ? Cooling.ambientCelsius() : profile.hot().value());
        if (lowest > cold) {
            stages.add(
                    neverHot
                            ? new Cooling.Stage(Cooling.FROM_AMBIENT, lowest, cold, profile.outCold())
                            : new Cooling.Stage("to cold", lowest, cold, profile.outHot()));
        }
        return stages;
    }

    private Verdict stage(Cooling.Stage stage, List<Reading> readings) {
        String from = number(stage.fromCelsius()) + " °C";
        String to = number(stage.toCelsius()) + " °C";
        int most = stage.minutes().mostWhole();
        double first = readings.get(0).celsius();
        // the food may have been below for long before its first reading
        boolean unknown = first < stage.fromCelsius();
        String start = stage.fromAmbient() && first > stage.fromCelsius() ? "its first reading" : from;
        OptionalDouble taken = stage.taken(readings);
        OptionalDouble began = stage.began(readings);
        if (taken.isPresent()) {
            double reached = began.orElseThrow() + taken.getAsDouble();
            if (!stage.kept(readings)) {
                return Verdict.notSafe("From " + start + " to " + to + " took " + (unknown ? "more than " : "")
                        + minutes(taken.getAsDouble()) + " " + most(stage.minutes()) + ": discard it.");
            }
            return unknown
                    ? Verdict.watch(to + " at " + clock.apply(log.at(reached)) + ": in time only if it fell below "
                            + from + " at " + clock.apply(log.at(reached - most)) + " or later.")
                    : Verdict.fine("From " + start + " to " + to + " in " + minutes(taken.getAsDouble()) + " "
                            + most(stage.minutes()) + ".");
        }
        if (began.isEmpty()) {
            return Verdict.watch("Not below " + from + " yet; then " + to + " within " + minutes(most) + ".");
        }
        Moment due = log.at(began.getAsDouble() + most);
        return stage.minutes().allows(lastMinute() - began.getAsDouble())
                ? Verdict.watch("Get it to " + to + " by " + clock.apply(due)
                        + (unknown ? ", sooner if it fell below " + from + " before its first reading." : "."))
                : Verdict.notSafe("Not at " + to + " by " + clock.apply(due) + ", " + minutes(most) + " after "
                        + (unknown ? "its first reading" : start) + ": discard it.");
    }

    private Verdict hold(boolean hot) {
        Limit limit = hot ? profile.hot() : profile.cold();
        String line = number(limit.value()) + " °C";
        Out out = log.out(limit);
        if (out.times() > 0) {
            return outOfRange(hot, out);
        }
        return Verdict.fine(
                hot
                        ? "Hot enough: never below " + number(log.lowest()) + " °C, and " + line + " is hot."
                        : "Cold enough: never above " + number(log.highest()) + " °C, and " + line + " is cold.");
    }

    private Verdict outOfRange(boolean hot, Out out) {
        Limit most = hot ? profile.outHot() : profile.outCold();
        String line = number((hot ? profile.hot() : profile.cold()).value()) + " °C";
        String side = (hot ? "Below " : "Above ") + line;
        String sum = side + (out.unknown() ? " since before its first reading, for at least " : " for up to ")
                + minutes(out.minutes()) + " " + most(most);
        if (!profile.mayStandOut(hot, out.minutes(), out.times() - 1)) {
            boolean often = out.times() > 1 && profile.limit("occasions").isPresent();
            return Verdict.notSafe(sum + (often ? ", and more than once" : "") + ": discard it.");
        }
        if (out.since().isEmpty()) {
            return Verdict.watch(sum + "; in range again, but these minutes count on"
                    + (hot ? " unless it was heated up to " + reheat() + "." : "."));
        }
        Moment by = log.at(out.due(most));
        return eatenUntil(
                by,
                side + ", " + (out.unknown() ? "nobody knows since when, counted from " : "at most since ")
                        + clock.apply(log.at(out.since().getAsDouble())) + ". "
                        + (hot ? "Heat it up to " + reheat() : "Get it to " + line) + ", or use it by "
                        + clock.apply(by) + ".");
    }

    private String reheat() {
        return held(limit("reheat").value(), limit("reheat seconds").value());
    }

    private double lastMinute() {
        return log.readings().get(log.readings().size() - 1).minute();
    }

    /** To be used by a time, after which the plan must not have anybody eat it. */
    private Verdict eatenUntil(Moment by, String words) {
        // at best it is marked with that time
        Optional<Moment> mark = Optional.of(by);
        return served.eaten() && TimeMark.mustDiscard(mark, mark, served.lastBite())
                ? Verdict.notSafe(words + " Setup " + served.setup().id() + " eats of it from "
                        + clock.apply(served.firstBite()) + " to " + clock.apply(served.lastBite()) + ": too late.")
                : Verdict.watch(words);
    }

    private Limit limit(String name) {
        return profile.limit(name).orElseThrow();
    }

    private Verdict reheating() {
        Map<Cooking, Double> reached = new LinkedHashMap<>();
        for (Cooking row : profile.reheating()) {
            log.reached(row.celsius(), row.seconds()).ifPresent(minute -> reached.put(row, minute));
        }
        Optional<Cooking> met = reached.keySet().stream().min(Comparator.comparing(reached::get));
        if (met.isEmpty()) {
            return heated(met, lastMinute());
        }
        double until = reached.get(met.get());
        Out out = log.out(profile.hot(), until);
        Verdict heated = heated(met, until);
        return out.times() == 0 ? heated : Verdict.worst(List.of(heated, outOfRange(true, out)));
    }

    /** @param met what is enough and was reached at minute {@code until}, or the last if it is empty */
    private Verdict heated(Optional<Cooking> met, double until) {
        String core = met.map(row -> held(row.celsius(), row.seconds())).orElse(reheat());
        Optional<Limit> soon = profile.limit("reheat minutes");
        // it was at the cold limit no later than its last reading there
        OptionalDouble cold = log.readings().stream()
                .filter(reading -> reading.minute() <= until && profile.holdsCold(reading.celsius()))
                .mapToDouble(Reading::minute)
                .max();
        double taken = until - cold.orElse(0);
        String left = number(profile.cold().value()) + " °C";
        if (met.isEmpty()) {
            boolean late = soon.filter(limit -> !limit.allows(taken)).isPresent();
            boolean pack = Reheating.right(profile, true, log.highest(), 0, taken);
            return Verdict.notSafe((late
                            ? "Not at " + core + " in time: discard it."
                            : "Not hot yet: reach " + core
                                    + soon.map(limit ->
                                                    ", by " + clock.apply(log.at(cold.orElse(0) + limit.mostWhole())))
                                            .orElse("")
                                    + ", and read again.")
                    + (pack ? " Enough only for what came in a sealed pack, ready to eat." : ""));
        }
        if (!Reheating.right(profile, false, met.get().celsius(), met.get().seconds(), taken)) {
            return Verdict.notSafe("From " + left + " to " + core + " took " + (cold.isEmpty() ? "more than " : "")
                    + minutes(taken) + soon.map(limit -> " " + most(limit)).orElse("") + ": discard it.");
        }
        String done = "At least " + core + " at " + clock.apply(log.at(until));
        return soon.isPresent() && cold.isEmpty()
                ? Verdict.watch(done + ": in time only if it was at " + left + " at "
                        + clock.apply(log.at(until - soon.get().mostWhole())) + " or later.")
                : Verdict.fine(done
                        + soon.map(limit -> ", " + minutes(taken) + " from " + left + " " + most(limit))
                                .orElse("")
                        + ".");
    }

    private Verdict thawing() {
        String line = number(profile.cold().value()) + " °C";
        Out out = log.out(profile.cold());
        if (Thawing.fridge(profile, log.highest())) {
            return Verdict.fine("Cold enough: never above " + number(log.highest()) + " °C, and " + line + " is cold.");
        }
        Limit water = Thawing.water(profile);
        if (!water.allows(log.highest())) {
            return Verdict.notSafe("At " + number(log.highest()) + " °C warmer than running water may be, at most "
                    + number(water.value()) + " °C: discard it.");
        }
        boolean raw = served.order().steps().stream().anyMatch(Step::raw);
        if (!Thawing.aboveCold(profile, raw, log.highest(), out.minutes())) {
            return Verdict.notSafe("Above " + line
                    + (raw
                            ? " for up to " + minutes(out.minutes()) + " " + most(Thawing.rawMinutes(profile))
                            : ", and it isn't raw")
                    + ": discard it.");
        }
        String running = " Running water: at most " + number(water.value()) + " °C.";
        if (out.since().isEmpty()) {
            return Verdict.watch("Raw, above " + line + " for up to " + minutes(out.minutes()) + " "
                    + most(Thawing.rawMinutes(profile)) + " with its preparation; cold again." + running);
        }
        Moment by = log.at(out.due(Thawing.rawMinutes(profile)));
        String words = "Raw, above " + line + " at most since "
                + clock.apply(log.at(out.since().getAsDouble())) + ": cook it or get it below by " + clock.apply(by)
                + "." + running;
        return cooked().filter(start -> served.eaten() && start.isAfter(by))
                .map(start -> Verdict.notSafe(words + " The plan cooks it from " + clock.apply(start) + ": too late."))
                .orElseGet(() -> Verdict.watch(words));
    }

    /** When the plan begins to cook the raw food; empty if no step says that it gets hot enough. */
    private Optional<Moment> cooked() {
        FoodKind kind = served.kind(day);
        return served.order().steps().stream()
                .filter(served.order()::rawBefore)
                .flatMap(step -> served.work(step).stream()
                        .filter(work -> SafetyClock.cooksThrough(
                                profile, step, work.span().minutes(), true, kind)))
                .map(work -> work.span().start())
                .min(Comparator.naturalOrder());
    }

    private Verdict takenOut(TimeMark.Food food) {
        double start = log.rows().get(0).celsius();
        Optional<Moment> mark = TimeMark.discardBy(profile, food, start, log.start());
        if (mark.isEmpty()) {
            return Verdict.notSafe("Neither hot nor cold enough at " + clock.apply(log.start())
                    + " for time alone to keep it safe: discard it.");
        }
        Optional<Moment> six = TimeMark.discardBySixHours(profile, start, log.start())
                .filter(late -> !TimeMark.tooWarmForSixHours(profile, log.highest()));
        String words = "Mark it " + clock.apply(mark.get()) + " and throw it away then, or at once if it isn't marked."
                + six.map(late -> " Until " + clock.apply(late) + " if it is read till then and never above "
                                + number(limit("six hours warmest").value()) + " °C.")
                        .orElse("");
        boolean readSince = log.rows().size() > 1;
        return eatenUntil(readSince ? six.orElse(mark.get()) : mark.get(), words);
    }

    private static String held(double celsius, double seconds) {
        return number(celsius) + " °C" + (seconds == 0 ? "" : " for " + seconds(Math.round(seconds)));
    }

    private static String seconds(long seconds) {
        return seconds % 60 == 0 && seconds > 0 ? seconds / 60 + " min" : seconds + " s";
    }

    /** Rounded up to tenths, so that what is over never reads as if it weren't. */
    private static String minutes(double minutes) {
        return number(Math.ceil(10 * minutes - 1e-6) / 10) + " min";
    }

    private static String most(Limit limit) {
        return "(" + (limit.bound() == Limit.Bound.UNDER ? "less than " : "at most ") + number(limit.value())
                + " min allowed)";
    }

    /** All digits that were given: rounded, 5.004 would read as if it were 5. */
    private static String number(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
