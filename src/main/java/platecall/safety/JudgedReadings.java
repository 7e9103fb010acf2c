package platecall.safety;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Part;
import platecall.day.ProbeReading;
import platecall.day.ProbeReading.What;
import platecall.day.Setup;
import platecall.day.Spelling;
import platecall.day.Trouble;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.units.Moment;

/**
 * What the thermometer readings of a copy for one purpose say, by the day's safety profile. Readings count as they are written:
 * a calibrated thermometer and local codes decide.
 *
 * @param copy whose
 * @param what what was going on with it
 * @param grade how it stands
 * @param words the readings, why, and what to do, in sentences
 * @param eaten whether the plan has somebody eat it
 * @param atRisk whether it can harm: raw food that is cooked, or of a dish that is time-and-temperature controlled
 */
public record JudgedReadings(PlannedCopy copy, What what, Grade grade, String words, boolean eaten, boolean atRisk) {

    /** How food stands by its readings. */
    public enum Grade {
        /** All that is asked for is shown. */
        FINE("fine"),
        /** Nothing is wrong so far, but something is to be done by a time, or isn't known. */
        WATCH("watch"),
        /** As it was read it must not be eaten: not yet, or not any more. */
        NOT_SAFE("NOT SAFE");

        private final String word;

        Grade(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** Whether somebody is to eat what isn't safe. */
    public boolean harmful() {
        return grade == Grade.NOT_SAFE && eaten && atRisk;
    }

    private record Log(String copy, What what) {}

    /**
     * Judges readings, each copy and purpose once, in the order of the rows.
     *
     * @param day its safety profile must be known
     * @param rows without {@link #troubles}
     * @param clock prints a time
     */
    public static List<JudgedReadings> of(Day day, Plan plan, List<ProbeReading> rows, Function<Moment, String> clock) {
        Profile profile = SafetyClock.profile(day).orElseThrow();
        Map<String, Served> served = new LinkedHashMap<>();
        Served.of(day, plan).forEach(it -> served.put(it.copy().id(), it));
        Map<Log, List<ProbeReading>> logs = new LinkedHashMap<>();
        for (ProbeReading row : rows) {
            for (String copy : meant(served.values(), row)) {
                logs.computeIfAbsent(new Log(copy, row.what()), log -> new ArrayList<>())
                        .add(row);
            }
        }
        List<JudgedReadings> judged = new ArrayList<>();
        logs.forEach((log, its) ->
                judged.add(new ReadingJudge(day, profile, served.get(log.copy()), log.what(), its, clock).judge()));
        return judged;
    }

    /** Ids of the copies that a row is about. */
    private static List<String> meant(Collection<Served> served, ProbeReading row) {
        return served.stream()
                .map(Served::copy)
                .filter(copy -> copy.isMeant(row.setup(), row.dish(), row.part(), row.number()))
                .map(PlannedCopy::id)
                .toList();
    }

    /**
     * All in the rows that doesn't fit the day or the plan: names that aren't known, copies that aren't made, times before
     * the plan's first work or after the day, and two readings of a copy in one minute.
     *
     * @param sheet name of the rows' sheet
     * @param clock prints a time
     */
    public static List<Trouble> troubles(
            Day day, Plan plan, List<ProbeReading> rows, String sheet, Function<Moment, String> clock) {
        List<Trouble> troubles = new ArrayList<>();
        List<Served> served = Served.of(day, plan);
        List<String> setups = day.setups().stream().map(Setup::id).toList();
        List<String> dishes = day.dishes().stream().map(Dish::id).toList();
        Moment from = plan.work().stream()
                .map(work -> work.span().start())
                .min(Comparator.naturalOrder())
                .orElse(day.horizon().start());
        Set<List<Object>> told = new HashSet<>();
        for (int i = 0; i < rows.size(); i++) {
            ProbeReading row = rows.get(i);
            int before = troubles.size();
            String time = clock.apply(row.time());
            if (row.setup().isPresent()) {
                know(sheet, i, "setup", row.setup().get(), setups, troubles);
            }
            know(sheet, i, "dish", row.dish(), dishes, troubles);
            if (row.time().isBefore(from) || !row.time().isBefore(day.horizon().end())) {
                String where = row.time().isBefore(from) ? "before the plan's first work" : "after the day";
                troubles.add(
                        new Trouble(sheet, i, "time", time, "lies " + where, "Maybe the date is wrong, or missing."));
            }
            List<String> meant = troubles.size() > before ? List.of() : meant(served, row);
            if (troubles.size() == before && meant.isEmpty()) {
                troubles.add(new Trouble(
                        sheet, i, "", named(row), "is no copy that the plan makes", elsewhere(served, row)));
            }
            List<String> twice = meant.stream()
                    .filter(copy -> !told.add(List.of(copy, row.what(), row.time())))
                    .toList();
            if (!twice.isEmpty()) {
                troubles.add(new Trouble(
                        sheet,
                        i,
                        "time",
                        time,
                        "has another reading of " + twice.get(0) + " for "
                                + row.what().word(),
                        "Maybe only the one that counts: of the coolest part, in the cold of the warmest."));
            }
        }
        return troubles;
    }

    private static void know(
            String sheet, int row, String column, String name, List<String> names, List<Trouble> troubles) {
        if (!names.contains(name)) {
            troubles.add(new Trouble(sheet, row, column, name, "is not known", Spelling.suggest(name, names)));
        }
    }

    /** The copies that a row is about, as it names them. */
    private static String named(ProbeReading row) {
        return Stream.of(
                        row.setup(),
                        Optional.of(row.dish()),
                        row.part().map(Part::word),
                        row.number().map(String::valueOf))
                .flatMap(Optional::stream)
                .collect(Collectors.joining(", "));
    }

    /** Copies of the dish that the plan makes, as a way out. */
    private static String elsewhere(List<Served> served, ProbeReading row) {
        List<String> ids = served.stream()
                .filter(it -> it.dish().id().equals(row.dish()))
                .map(it -> it.copy().id())
                .toList();
        return ids.isEmpty()
                ? "Maybe leave the row out."
                : "Maybe one of " + String.join(", ", ids.subList(0, Math.min(3, ids.size())))
                        + (ids.size() > 3 ? ", ..." : "") + ".";
    }
}
