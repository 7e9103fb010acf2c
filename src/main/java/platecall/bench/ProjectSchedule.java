package platecall.bench;

/**
 * What a search found for a project.
 *
 * @param starts start of each task
 * @param makespan end of the last task
 * @param lowerBound no schedule is shorter; equal to the makespan if the schedule is proved best
 * @param schedules how many serial schedules (or, for a job shop, complete machine orders) were built
 * @param cpuSeconds CPU time of the search thread
 */
record ProjectSchedule(int[] starts, int makespan, int lowerBound, long schedules, double cpuSeconds) {}
