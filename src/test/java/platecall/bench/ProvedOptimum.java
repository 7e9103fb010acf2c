package platecall.bench;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;

/** The shortest makespan, proved by an exact solver that shares no code with the search. */
final class ProvedOptimum {

    private ProvedOptimum() {}

    static int of(Project project) {
        Loader.loadNativeLibraries();
        CpModel model = new CpModel();
        IntVar[] starts = new IntVar[project.tasks];
        IntervalVar[] intervals = new IntervalVar[project.tasks];
        IntVar makespan = model.newIntVar(0, project.horizon, "makespan");
        for (int task = 0; task < project.tasks; task++) {
            starts[task] = model.newIntVar(0, project.horizon, "start");
            intervals[task] = model.newFixedSizeIntervalVar(starts[task], project.durations[task], "task");
            model.addLessOrEqual(LinearExpr.affine(starts[task], 1, project.durations[task]), makespan);
        }
        for (int task = 0; task < project.tasks; task++) {
            for (int after : project.successors[task]) {
                model.addLessOrEqual(LinearExpr.affine(starts[task], 1, project.durations[task]), starts[after]);
            }
        }
        for (int k = 0; k < project.capacities.length; k++) {
            CumulativeConstraint resource = model.addCumulative(project.capacities[k]);
            for (int task = 0; task < project.tasks; task++) {
                resource.addDemand(intervals[task], project.requests[task][k]);
            }
        }
        model.minimize(makespan);
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setMaxTimeInSeconds(60);
        CpSolverStatus status = solver.solve(model);
        if (status != CpSolverStatus.OPTIMAL) {
            throw new IllegalStateException(project.name + " was not proved: " + status);
        }
        return (int) solver.objectiveValue();
    }
}
