package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

    /** Fisher and Thompson 1963 (in Muth and Thompson, Industrial Scheduling), 6 jobs, 6 machines: optimum 55. */
    private static final int[][] FT06 = {
        {3, 1, 1, 3, 2, 6, 4, 7, 6, 3, 5, 6},
        {2, 8, 3, 5, 5, 10, 6, 10, 1, 10, 4, 4},
        {3, 5, 4, 4, 6, 8, 1, 9, 2, 1, 5, 7},
        {2, 5, 1, 5, 3, 5, 4, 3, 5, 8, 6, 9},
        {3, 9, 2, 3, 5, 5, 6, 4, 1, 3, 4, 1},
        {2, 3, 4, 3, 6, 9, 1, 10, 5, 4, 3, 1}
    };

    @Test
    void opensTheKitchen55MinutesBeforeTheCommonCallForTheSixBySixJobShop() {
        List<Step> steps = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        List<Dish> dishes = new ArrayList<>();
        for (int job = 0; job < FT06.length; job++) {
            String dish = "job " + (job + 1);
            String before = null;
            for (int i = 0; i < 6; i++) {
                String step = "step " + (i + 1);
                steps.add(step(
                        dish,
                        step,
                        before == null ? List.of() : List.of(before),
                        FT06[job][2 * i + 1],
                        List.of(new StationUse(List.of("machine " + FT06[job][2 * i]), 1))));
                before = step;
            }
            dishes.add(dish(dish, Look.table(0, 1000, 1440)));
            needs.add(need("call", dish, before, 1));
        }
        List<Station> stations = new ArrayList<>();
        for (int machine = 1; machine <= 6; machine++) {
            stations.add(counter("machine " + machine, 1));
        }
        Day day =
                day(List.of(setup("call", 100, 1)), needs, dishes, steps, stations, 100, new Prices(1000, 10, 1, 0, 0));
        Planner.Found found = plan(day, 2_000_000);
        assertThat(found.brokenTotal()).isZero();
        assertThat(found.points()).isEqualTo(55);
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

    private static final int[][] K1 = {
        {20, 4, 5},
        {6, 1, 15},
        {13, 5, 13},
        {13, 2, 13},
        {12, 7, 6},
        {12, 9, 8},
        {12, 5, 15},
        {3, 6, 1},
        {12, 6, 8},
        {13, 10, 1}
    };
    private static final int[][] K2 = {
        {6, 5, 9},
        {19, 8, 12},
        {20, 5, 1},
        {16, 8, 15},
        {11, 3, 12},
        {11, 6, 1},
        {5, 9, 13},
        {11, 7, 1},
        {10, 10, 2},
        {20, 5, 1}
    };

    /**
     * Biskup and Feldmann 2001, Computers and Operations Research 28, 787-801: ten jobs on one machine with a common due
     * date, the closest published relative of plates that must all be at camera at the call. Optima as published; those
     * of the second set by own enumeration.
     */
    @ParameterizedTest
    @CsvSource({"1,23,1936", "1,46,1025", "1,69,841", "1,92,818", "2,25,1042", "2,51,615", "2,77,615", "2,103,615"})
    void weighsEarlyAgainstLateLikeTheCommonDueDateCases(int set, int due, long optimum) {
        int[][] jobs = set == 1 ? K1 : K2;
        List<Setup> setups = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        List<Dish> dishes = new ArrayList<>();
        List<Step> steps = new ArrayList<>();
        for (int j = 0; j < jobs.length; j++) {
            setups.add(setup("call " + j, due, jobs[j][2]));
            dishes.add(dish("job " + j, Look.table(0, 0, 1440)));
            steps.add(step("job " + j, "cook", List.of(), jobs[j][0], List.of(new StationUse(List.of("machine"), 1))));
            needs.add(need("call " + j, "job " + j, "cook", jobs[j][1]));
        }
        int sum = Arrays.stream(jobs).mapToInt(job -> job[0]).sum();
        Day day = day(setups, needs, dishes, steps, List.of(counter("machine", 1)), 2 * sum, new Prices(1, 1, 0, 0, 0));
        Planner.Found found = plan(day, 2_000_000);
        assertThat(found.brokenTotal()).isZero();
        assertThat(found.points()).isEqualTo(optimum);
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
        return new Station(id, Station.Kind.COUNTER, capacity, "", List.of(), "kitchen", 10, 10, 0, Optional.empty());
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
                weight);
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
                Optional.empty());
    }
}
