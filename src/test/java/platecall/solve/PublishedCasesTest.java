package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.DayFacts;
import platecall.day.Dish;
import platecall.day.Look;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Place;
import platecall.day.Prices;
import platecall.day.Release;
import platecall.day.Setup;
import platecall.day.Silence;
import platecall.day.Station;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.day.Use;
import platecall.tasks.TaskNet;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/**
 * Published scheduling problems told as kitchens: stations are machines, dishes are jobs, calls are due dates. The very
 * engine that plans a shooting day must find the published optimum.
 */
class PublishedCasesTest {

    private static final Moment ZERO = Moment.of(LocalDate.of(2026, 3, 14).atStartOfDay(ZoneId.of("UTC")));

    /**
     * Jobs, the machine and the minutes of each of their operations, that share a call: the kitchen opens as long before it as the
     * shortest makespan. Fisher and Thompson 1963 (in Muth and Thompson, Industrial Scheduling), 6 jobs, 6 machines: optimum 55.
     */
    @Test
    void opensTheKitchen55MinutesBeforeTheCommonCallForTheSixBySixJobShop() {
        assertThat(makespan(
                        numbers("3/1/1/3/2/6/4/7/6/3/5/6 2/8/3/5/5/10/6/10/1/10/4/4 3/5/4/4/6/8/1/9/2/1/5/7"
                                + " 2/5/1/5/3/5/4/3/5/8/6/9 3/9/2/3/5/5/6/4/1/3/4/1 2/3/4/3/6/9/1/10/5/4/3/1"),
                        2_000_000))
                .isEqualTo(55);
    }

    /**
     * Flow shops, the minutes of each job on each machine. With four machines Pinedo, Scheduling, exercise
     * 6.1.1, where each machine has the jobs in the same order (exact search: other orders gain nothing). With two machines
     * Johnson's rule: textbook data, optima by own enumeration.
     */
    @ParameterizedTest
    @CsvSource({
        "5/4/4/3 5/4/4/6 3/2/3/3 6/4/4/2 3/4/1/5, 32",
        "10/2 5/4 7/5 3/6 1/7, 28",
        "3/8 12/10 5/9 2/6 9/3 11/1, 43",
        "5/8 3/9 8/7 7/2 4/6, 35",
        "11/22 4/5 5/3 15/16 10/8, 64",
        "10/11 8/17 14/10 13/7 10/8 25/9 6/15, 93"
    })
    void opensTheKitchenAsLateAsAFlowShopAllows(String jobs, long optimum) {
        int[][] operations = Arrays.stream(numbers(jobs))
                .map(minutes -> IntStream.range(0, 2 * minutes.length)
                        .map(i -> i % 2 == 0 ? i / 2 + 1 : minutes[i / 2])
                        .toArray())
                .toArray(int[][]::new);
        assertThat(makespan(operations, 200_000)).isEqualTo(optimum);
    }

    /**
     * The least that the latest of some jobs (release, minutes, due date) on one machine can be late: a tail as long as its due
     * date comes before the last one makes each job end at the common call. Pinedo, Scheduling, exercise 3.2.5;
     * textbook data on the earliest due date, and the same with two later dates (Kleinberg and Tardos, value from memory).
     */
    @ParameterizedTest
    @CsvSource({
        "0/4/8 1/2/12 3/6/11 5/5/10, 5",
        "0/3/6 0/2/8 0/1/9 0/4/9 0/3/10 0/2/11, 4",
        "0/3/6 0/2/8 0/1/9 0/4/9 0/3/14 0/2/15, 1"
    })
    void isNoLaterWithItsLatestJobThanItMust(String jobs, long optimum) {
        int[][] all = numbers(jobs);
        int last = Arrays.stream(all).mapToInt(job -> job[2]).max().orElseThrow();
        int[][] operations = Arrays.stream(all)
                .map(job -> new int[] {0, job[0], 1, job[1], 0, last - job[2]})
                .toArray(int[][]::new);
        assertThat(makespan(operations, 200_000)).isEqualTo(last + optimum);
    }

    /** Minutes from the kitchen's opening to a call for which all jobs are wanted; machine 0 is none, and no minutes no step. */
    private static long makespan(int[][] jobs, long moves) {
        List<Step> steps = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        List<Dish> dishes = new ArrayList<>();
        Map<String, Station> stations = new TreeMap<>();
        int sum = 0;
        for (int[] job : jobs) {
            String dish = "job " + (dishes.size() + 1);
            List<String> before = List.of();
            for (int i = 0; i < job.length; i += 2) {
                if (job[i + 1] == 0) {
                    continue;
                }
                List<StationUse> uses = new ArrayList<>();
                if (job[i] > 0) {
                    String machine = "machine " + job[i];
                    stations.put(machine, counter(machine, 1));
                    uses.add(new StationUse(List.of(machine), 1));
                }
                steps.add(step(dish, "step " + (i / 2 + 1), before, job[i + 1], uses));
                before = List.of(steps.get(steps.size() - 1).id());
                sum += job[i + 1];
            }
            dishes.add(dish(dish, Look.table(0, 1000, 1440)));
            needs.add(need("call", dish, before.get(0), 1));
        }
        Day day = day(
                List.of(setup("call", sum, 1)),
                needs,
                dishes,
                steps,
                List.copyOf(stations.values()),
                sum,
                new Prices(1000, 10, 1, 0, 0));
        Planner.Found found = plan(day, moves);
        assertThat(found.brokenTotal()).isZero();
        return found.points();
    }

    /**
     * The resource-constrained project of 10 activities and two dummies in the examples of python-mip (COIN-OR): optimum
     * 21. A minute of plating stands for the closing dummy, so the kitchen is open for 22.
     */
    @Test
    void opensTheKitchen21MinutesBeforePlatingForTheSmallProject() {
        int[] minutes = {0, 3, 2, 5, 4, 2, 3, 4, 2, 4, 6, 0};
        int[][] use = {{0, 0}, {5, 1}, {0, 4}, {1, 4}, {1, 3}, {3, 2}, {3, 1}, {2, 4}, {4, 0}, {5, 2}, {2, 5}, {0, 0}};
        int[][] arcs = {{1, 4}, {1, 5}, {2, 9}, {2, 10}, {3, 8}, {4, 6}, {4, 7}, {5, 9}, {5, 10}, {6, 8}, {6, 9}, {7, 8}
        };
        List<Step> steps = new ArrayList<>();
        for (int j = 1; j <= 10; j++) {
            int wanted = j;
            List<String> before = Arrays.stream(arcs)
                    .filter(arc -> arc[1] == wanted)
                    .map(arc -> "a" + arc[0])
                    .toList();
            List<StationUse> uses = new ArrayList<>();
            for (int r = 0; r < 2; r++) {
                if (use[j][r] > 0) {
                    uses.add(new StationUse(List.of("r" + r), use[j][r]));
                }
            }
            steps.add(step("project", "a" + j, before, minutes[j], uses));
        }
        steps.add(step("project", "plate", List.of("a8", "a9", "a10"), 1, List.of()));
        Day day = day(
                List.of(setup("call", 60, 1)),
                List.of(need("call", "project", "plate", 1)),
                List.of(dish("project", Look.table(0, 1000, 1440))),
                steps,
                List.of(counter("r0", 6), counter("r1", 8)),
                60,
                new Prices(1000, 10, 1, 0, 0));
        Planner.Found found = plan(day, 200_000);
        assertThat(found.brokenTotal()).isZero();
        assertThat(found.points()).isEqualTo(22);
    }

    /** Minutes, price of a minute early and of a minute late of each job: file sch10 of the OR-Library. */
    private static final List<String> COMMON_DUE_DATE = List.of(
            "20/4/5 6/1/15 13/5/13 13/2/13 12/7/6 12/9/8 12/5/15 3/6/1 12/6/8 13/10/1",
            "6/5/9 19/8/12 20/5/1 16/8/15 11/3/12 11/6/1 5/9/13 11/7/1 10/10/2 20/5/1",
            "12/6/12 11/4/9 7/6/3 20/5/2 11/9/4 10/4/8 19/3/10 20/8/2 9/4/10 6/9/15",
            "19/7/15 4/1/6 15/7/6 3/1/4 11/5/11 9/1/15 12/7/7 8/9/3 8/8/3 13/4/15",
            "5/8/4 16/7/3 2/7/8 6/7/6 10/1/2 8/8/8 5/1/5 16/10/3 7/2/11 19/8/15",
            "11/9/7 9/4/15 9/8/11 10/4/8 10/8/9 6/5/15 18/4/2 5/1/4 5/6/5 5/3/14",
            "18/9/10 1/10/12 16/8/13 13/10/10 9/4/1 5/2/7 12/8/15 13/2/5 4/10/13 12/8/14",
            "4/10/14 14/7/9 4/9/1 16/6/12 9/10/7 4/9/14 5/2/12 2/3/5 3/4/6 18/2/13",
            "10/1/2 6/4/6 11/9/3 20/3/14 8/6/14 3/7/7 18/6/10 10/4/6 1/8/15 5/7/13",
            "16/2/6 19/10/3 18/10/6 3/9/1 8/2/6 2/4/14 12/10/7 18/5/7 20/2/8 11/1/12");

    /**
     * Biskup and Feldmann 2001, Computers and Operations Research 28, 787-801: ten jobs on one machine with a common due
     * date after 2, 4, 6 and 8 tenths of all minutes, the closest published relative of plates that must all be at camera
     * at the call. Values as published in the OR-Library; that they are optima is proved by own exact search.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 1936, 1025, 841, 818", "2, 1042, 615, 615, 615", "3, 1586, 917, 793, 793", "4, 2139, 1230, 815, 803",
        "5, 1187, 630, 521, 521", "6, 1521, 908, 755, 755", "7, 2170, 1374, 1101, 1083", "8, 1720, 1020, 610, 540",
        "9, 1574, 876, 582, 554", "10, 1869, 1136, 710, 671"
    })
    void weighsEarlyAgainstLateLikeTheCommonDueDateCases(int set, long at2, long at4, long at6, long at8) {
        int[][] jobs = numbers(COMMON_DUE_DATE.get(set - 1));
        int sum = Arrays.stream(jobs).mapToInt(job -> job[0]).sum();
        long[] optima = {at2, at4, at6, at8};
        for (int i = 0; i < optima.length; i++) {
            int due = sum * 2 * (i + 1) / 10;
            int[][] told = Arrays.stream(jobs)
                    .map(job -> new int[] {job[0], due, job[1], job[2]})
                    .toArray(int[][]::new);
            Planner.Found found = plan(oneMachine(told, false), 500_000);
            assertThat(found.brokenTotal()).isZero();
            assertThat(found.points()).as("due at %d", due).isEqualTo(optima[i]);
        }
    }

    /**
     * Minutes, due date and weight of jobs on one machine. Pinedo, Scheduling, exercise 3.4.5, and the data of 3.6.3, of whose
     * 24 orders the best costs 67. With all due at once it is the weighted sum of ends: own example, by Smith's rule.
     */
    @ParameterizedTest
    @CsvSource({
        "121/260/1 79/266/1 147/266/1 83/336/1 130/337/1, 370",
        "12/16/4 8/26/5 15/25/3 9/27/5, 67",
        "3/0/1 5/0/4 2/0/3 6/0/2 4/0/5, 134"
    })
    void isLateByAsFewWeightedMinutesAsPublished(String jobs, long optimum) {
        int[][] told = Arrays.stream(numbers(jobs))
                .map(job -> new int[] {job[0], job[1], 0, job[2]})
                .toArray(int[][]::new);
        Planner.Found found = plan(oneMachine(told, false), 200_000);
        assertThat(found.brokenTotal()).isZero();
        assertThat(found.points()).isEqualTo(optimum);
    }

    /**
     * Minutes and due date of jobs on one machine, of which the fewest may be late (Moore): each needs something that closes when
     * it is due, so that one that would be late isn't made. Pinedo, Scheduling, exercise 3.3.3; textbook data, optimum by
     * own enumeration.
     */
    @ParameterizedTest
    @CsvSource({"7/9 8/17 4/18 6/19 6/21, 2", "19/48 23/75 5/170 31/215 17/205 8/240 32/85 41/67 26/100 18/95, 2"})
    void leavesOutAsFewJobsAsMooresRule(String jobs, long optimum) {
        int[][] told = Arrays.stream(numbers(jobs))
                .map(job -> new int[] {job[0], job[1], 0, 1})
                .toArray(int[][]::new);
        Planner.Found found = plan(oneMachine(told, true), 200_000);
        assertThat(found.brokenTotal()).isEqualTo(optimum);
        assertThat(found.points()).isZero();
    }

    /**
     * A day of dishes that take one machine in turn.
     *
     * @param jobs minutes, due date, price of a minute early and of a minute late
     * @param strict whether a job can't end after its due date
     */
    private static Day oneMachine(int[][] jobs, boolean strict) {
        List<Setup> setups = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        List<Dish> dishes = new ArrayList<>();
        List<Step> steps = new ArrayList<>();
        List<Station> stations = new ArrayList<>(List.of(counter("machine", 1)));
        for (int j = 0; j < jobs.length; j++) {
            int due = jobs[j][1];
            List<StationUse> uses = new ArrayList<>(List.of(new StationUse(List.of("machine"), 1)));
            if (strict) {
                stations.add(counter("until " + j, 1, List.of(Span.ofMinutes(ZERO, due))));
                uses.add(new StationUse(List.of("until " + j), 1));
            }
            setups.add(setup("call " + j, due, jobs[j][3]));
            dishes.add(dish("job " + j, Look.table(0, 0, 1440)));
            steps.add(step("job " + j, "cook", List.of(), jobs[j][0], uses));
            needs.add(need("call " + j, "job " + j, "cook", jobs[j][2]));
        }
        int sum = Arrays.stream(jobs).mapToInt(job -> job[0]).sum();
        return day(setups, needs, dishes, steps, stations, 2 * sum, new Prices(1, 1, 0, 0, 0));
    }

    /** Numbers with strokes between them, a job each. */
    private static int[][] numbers(String jobs) {
        return Arrays.stream(jobs.split(" "))
                .map(job -> Arrays.stream(job.split("/"))
                        .mapToInt(Integer::parseInt)
                        .toArray())
                .toArray(int[][]::new);
    }

    private static Planner.Found plan(Day day, long steps) {
        TaskNet net = DayGenerator.netOf(day);
        return Planner.plan(
                day,
                net,
                "",
                "test",
                new Planner.Limits(60, Optional.of(steps), 1, 1),
                Optional.empty(),
                Planner.Watcher.NONE);
    }

    private static Day day(
            List<Setup> setups,
            List<Need> needs,
            List<Dish> dishes,
            List<Step> steps,
            List<Station> stations,
            int minutes,
            Prices prices) {
        return new Day(
                new DayFacts(
                        "published case",
                        LocalDate.of(2026, 3, 14),
                        ZoneId.of("UTC"),
                        List.of(Span.ofMinutes(ZERO, minutes)),
                        "EUR",
                        Optional.empty(),
                        Optional.empty(),
                        0.95,
                        "fda-2022",
                        20,
                        50,
                        0,
                        Silence.NONE,
                        Optional.empty(),
                        30,
                        prices),
                setups,
                needs,
                dishes,
                List.of(),
                steps,
                List.of(),
                stations,
                List.of(),
                List.of(),
                List.of(),
                List.of(new Place("kitchen", Map.of(), List.of(), true)));
    }

    private static Station counter(String id, int capacity) {
        return counter(id, capacity, List.of());
    }

    private static Station counter(String id, int capacity, List<Span> hours) {
        return new Station(id, Station.Kind.COUNTER, capacity, "", hours, "kitchen", 10, 10, 0, Optional.empty());
    }

    private static Setup setup(String id, int call, int weight) {
        return new Setup(
                id,
                "",
                "",
                "kitchen",
                ZERO.plus(call),
                Optional.empty(),
                1,
                1,
                1,
                0,
                false,
                new Release.AtEnd(),
                weight,
                Optional.empty());
    }

    private static Dish dish(String id, Look look) {
        return new Dish(id, id, look, true, Money.ZERO, false, 0, Optional.empty(), false, 0, 1, 0, 0);
    }

    private static Need need(String setup, String dish, String stage, int looksWeight) {
        return new Need(
                setup, dish, stage, 1, new Use.FreshEachTake(), Part.HERO, List.of(), Optional.of(1), looksWeight);
    }

    private static Step step(String dish, String id, List<String> after, int minutes, List<StationUse> stations) {
        return new Step(
                dish,
                id,
                after,
                0,
                Optional.empty(),
                minutes,
                minutes,
                minutes,
                0,
                Optional.empty(),
                0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                stations,
                Optional.empty(),
                false,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of());
    }
}
