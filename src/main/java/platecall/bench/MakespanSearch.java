package platecall.bench;

/** Finds a short schedule of a project, by the search that suits its class, and says how short one can be at best. */
final class MakespanSearch {

    private MakespanSearch() {}

    /**
     * Searches in the calling thread until the budget is spent or the schedule is proved best.
     *
     * @param seed with the same seed and a budget of schedules alone the result is the same
     */
    static ProjectSchedule solve(Project project, Budget budget, long seed) {
        int lowerBound = LowerBound.of(project, project.horizon);
        int[] starts = MachineOrderSearch.suits(project)
                ? new MachineOrderSearch(project, budget, seed, lowerBound).run()
                : new GeneticSearch(project, budget, seed, lowerBound).run();
        int makespan = 0;
        for (int task = 0; task < project.tasks; task++) {
            makespan = Math.max(makespan, starts[task] + project.durations[task]);
        }
        return new ProjectSchedule(starts, makespan, lowerBound, budget.built(), budget.cpuSeconds());
    }
}
