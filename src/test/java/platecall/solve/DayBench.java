package platecall.solve;

import java.util.Locale;
import java.util.Optional;
import platecall.day.Day;
import platecall.tasks.TaskNet;

/** Plans generated days and prints a table: {@code DayBench SECONDS SEEDS SIZE:LOAD:DAYSEED[:plain] ...} */
public final class DayBench {

    public static void main(String[] args) {
        double seconds = Double.parseDouble(args[0]);
        int seeds = Integer.parseInt(args[1]);
        for (int i = 2; i < args.length; i++) {
            String[] parts = args[i].split(":");
            boolean everyRule = parts.length < 4;
            Day day = DayGenerator.day(
                    Integer.parseInt(parts[0]), Double.parseDouble(parts[1]), Long.parseLong(parts[2]), everyRule);
            TaskNet net = DayGenerator.netOf(day);
            for (int seed = 1; seed <= seeds; seed++) {
                Planner.Found found = Planner.plan(
                        day,
                        net,
                        "",
                        "",
                        new Planner.Limits(seconds, Optional.empty(), seed, 1),
                        Optional.empty(),
                        Planner.Watcher.NONE);
                System.out.printf(
                        Locale.ROOT,
                        "%-16s tasks %4d seed %d  missing %d  points %8d  bound %6d  (late %d, off-peak %d, kitchen %d, hands %d)  %.0f moves/s  first plan %.3f s%n",
                        args[i],
                        net.size(),
                        seed,
                        found.brokenTotal(),
                        found.points(),
                        found.plan().bound().orElse(0L),
                        found.plan().points().late(),
                        found.plan().points().offPeak(),
                        found.plan().points().kitchen(),
                        found.plan().points().handChanges(),
                        found.moves() / seconds,
                        found.firstPlanSeconds());
            }
        }
    }
}
