package lapyard.stages;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** OR-Tools CP-SAT 9.15, an independent general-purpose solver, with two models of its own. */
public final class Reference {
    static {
        Loader.loadNativeLibraries();
    }

    private Reference() {}

    /** {@code bound} is proved; {@code makespan} is -1 where none was found. */
    public record Answer(int makespan, int bound, boolean optimal) {}

    /** One variable for each task and start, one limit for each resource and clock unit: any calendar. */
    public static Answer byStarts(StagingProblem problem, int horizon, double seconds) {
        CpModel model = new CpModel();
        IntVar last = model.newIntVar(0, horizon, "last");
        Map<String, LinearExpr> starts = new HashMap<>();
        Map<String, LinearExpr> ends = new HashMap<>();
        List<List<LinearExprBuilder>> held = new ArrayList<>();
        for (int r = 0; r < problem.resources().size(); r++) {
            List<LinearExprBuilder> own = new ArrayList<>();
            for (int t = 0; t < horizon; t++) own.add(LinearExpr.newBuilder());
            held.add(own);
        }
        for (StagingProblem.Task task : problem.tasks()) {
            List<Literal> choices = new ArrayList<>();
            LinearExprBuilder start = LinearExpr.newBuilder();
            LinearExprBuilder end = LinearExpr.newBuilder();
            for (int from = task.notBefore(); from <= horizon; from++) {
                List<Integer> units = units(problem, task, from, horizon);
                if (units.size() < task.duration()) continue;
                int to = task.duration() == 0 ? from : units.get(units.size() - 1) + 1;
                BoolVar chosen = model.newBoolVar(task.id() + "@" + from);
                choices.add(chosen);
                start.addTerm(chosen, from);
                end.addTerm(chosen, to);
                for (int unit : units) {
                    for (int r = 0; r < held.size(); r++) held.get(r).get(unit).addTerm(chosen, task.uses().get(r));
                }
            }
            model.addExactlyOne(choices);
            starts.put(task.id(), start.build());
            ends.put(task.id(), end.build());
            model.addGreaterOrEqual(last, ends.get(task.id()));
        }
        for (int r = 0; r < held.size(); r++) {
            for (int t = 0; t < horizon; t++) model.addLessOrEqual(held.get(r).get(t).build(), ScheduleJudge.there(problem, r, t));
        }
        for (StagingProblem.Task task : problem.tasks()) {
            for (StagingProblem.Wait wait : task.after()) {
                model.addGreaterOrEqual(starts.get(task.id()),
                        LinearExpr.newBuilder().add(ends.get(wait.task())).add(wait.lag()).build());
            }
        }
        return solve(model, last, seconds);
    }

    private static List<Integer> units(StagingProblem problem, StagingProblem.Task task, int from, int horizon) {
        List<Integer> units = new ArrayList<>();
        for (int t = from; t < horizon && units.size() < task.duration(); t++) {
            if (ScheduleJudge.canWork(problem, task, t)) {
                units.add(t);
            } else if (t == from || task.unbroken()) {
                return List.of();
            }
        }
        return units;
    }

    /** Intervals and one cumulative a resource: no calendar. */
    public static Answer byIntervals(StagingProblem problem, int horizon, double seconds) {
        CpModel model = new CpModel();
        IntVar last = model.newIntVar(0, horizon, "last");
        Map<String, IntervalVar> intervals = new HashMap<>();
        List<CumulativeConstraint> limits = new ArrayList<>();
        problem.resources().forEach(capacity -> limits.add(model.addCumulative(capacity)));
        for (StagingProblem.Task task : problem.tasks()) {
            IntVar start = model.newIntVar(0, horizon, task.id());
            IntervalVar interval = model.newFixedSizeIntervalVar(start, task.duration(), task.id());
            intervals.put(task.id(), interval);
            for (int r = 0; r < limits.size(); r++) {
                if (task.uses().get(r) > 0) limits.get(r).addDemand(interval, task.uses().get(r));
            }
            model.addGreaterOrEqual(last, interval.getEndExpr());
            for (StagingProblem.Wait wait : task.after()) {
                model.addGreaterOrEqual(start, LinearExpr.newBuilder()
                        .add(intervals.get(wait.task()).getEndExpr()).add(wait.lag()).build());
            }
        }
        return solve(model, last, seconds);
    }

    private static Answer solve(CpModel model, IntVar last, double seconds) {
        model.minimize(last);
        CpSolver solver = new CpSolver();
        solver.getParameters().setMaxTimeInSeconds(seconds).setNumWorkers(2).setRandomSeed(1);
        CpSolverStatus status = solver.solve(model);
        boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        return new Answer(found ? (int) solver.value(last) : -1, (int) Math.ceil(solver.bestObjectiveBound() - 1e-6),
                status == CpSolverStatus.OPTIMAL);
    }
}
