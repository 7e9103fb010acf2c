package platecall.bench;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

class MakespanSearchTest {

    private static ProjectSchedule solve(Project project, long schedules, long seed) {
        ProjectSchedule found = MakespanSearch.solve(project, new Budget(Double.POSITIVE_INFINITY, schedules), seed);
        assertThat(ScheduleChecker.broken(project, found.starts(), found.makespan()))
                .isEmpty();
        return found;
    }

    /** Fisher and Thompson 1963, the six by six problem: 55. */
    @Test
    void findsTheKnownShortestMakespanOfSixJobsOnSixMachines() {
        assertThat(MachineOrderSearch.suits(BenchFiles.ft06())).isTrue();
        assertThat(solve(BenchFiles.ft06(), 30_000, 1).makespan()).isEqualTo(55);
    }

    /** Resource-constrained example of the Python-MIP documentation: 21. */
    @Test
    void findsTheKnownShortestMakespanOfTwelveTasks() {
        assertThat(MachineOrderSearch.suits(BenchFiles.twelve())).isFalse();
        ProjectSchedule found = solve(BenchFiles.twelve(), 5_000, 1);
        assertThat(found.makespan()).isEqualTo(21);
        assertThat(found.lowerBound()).isBetween(17, 21);
    }

    @Test
    void plansAJobShopAsAPlainProjectToo() {
        Project shop = BenchFiles.ft06();
        int[] starts = new GeneticSearch(shop, new Budget(Double.POSITIVE_INFINITY, 60_000), 1, 55).run();
        assertThat(ScheduleChecker.broken(shop, starts, 55)).isEmpty();
    }

    @Test
    void givesTheSameScheduleForTheSameSeedAndNumberOfSchedules() {
        Project project = RandomProjects.of(7, 60, 4, 1.5, 8);
        ProjectSchedule once = solve(project, 5_000, 3);
        ProjectSchedule again = solve(project, 5_000, 3);
        assertThat(again.starts()).isEqualTo(once.starts());
        assertThat(again.schedules()).isEqualTo(once.schedules());

        Project shop = RandomProjects.jobShop(7, 10, 5);
        assertThat(solve(shop, 5_000, 3).starts())
                .isEqualTo(solve(shop, 5_000, 3).starts());
    }

    @Test
    void stopsAtOnceWhenTheScheduleIsProvedBest() {
        Project chain = new Project(
                "chain", new int[] {2, 3, 4}, new int[][] {{1}, {2}, {}}, new int[][] {{1}, {1}, {1}}, new int[] {2});
        ProjectSchedule found = solve(chain, 1_000_000, 1);
        assertThat(found.makespan()).isEqualTo(9);
        assertThat(found.lowerBound()).isEqualTo(9);
        assertThat(found.schedules()).isLessThan(10);
    }

    @Property(tries = 40)
    void findsTheProvedShortestMakespanOfSmallProjectsAndNeverBoundsAboveIt(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 1, max = 10) int tasks,
            @ForAll @IntRange(min = 1, max = 4) int resources) {
        Project project = RandomProjects.of(seed, tasks, resources, 1.2, 6);
        int optimum = ProvedOptimum.of(project);
        ProjectSchedule found = solve(project, 10_000, seed);
        assertThat(found.makespan()).isEqualTo(optimum);
        assertThat(found.lowerBound()).isBetween(project.criticalPath, optimum);
    }

    @Property(tries = 25)
    void findsTheProvedShortestMakespanOfSmallJobShopsAndNeverBoundsAboveIt(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 1, max = 5) int jobs,
            @ForAll @IntRange(min = 1, max = 4) int machines) {
        Project shop = RandomProjects.jobShop(seed, jobs, machines);
        int optimum = ProvedOptimum.of(shop);
        ProjectSchedule found = solve(shop, 40_000, seed);
        assertThat(found.makespan()).isEqualTo(optimum);
        assertThat(found.lowerBound()).isBetween(shop.criticalPath, optimum);
    }
}
