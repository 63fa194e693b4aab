package lapyard.stages;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tries every start of every task: for a handful of tasks that wait only for those before them in the list. */
final class BruteForce {
    private final StagingProblem problem;
    private final int[][] held;
    private final Map<String, Integer> ends = new HashMap<>();

    private BruteForce(StagingProblem problem, int horizon) {
        this.problem = problem;
        held = new int[horizon][problem.resources().size()];
    }

    /** @param reached an end that is known to be possible */
    static int leastEnd(StagingProblem problem, int reached) {
        int end = reached;
        while (end > 0 && new BruteForce(problem, end - 1).fits(0)) end--;
        return end;
    }

    private boolean fits(int number) {
        if (number == problem.tasks().size()) return true;
        StagingProblem.Task task = problem.tasks().get(number);
        int earliest = task.notBefore();
        for (StagingProblem.Wait wait : task.after()) earliest = Math.max(earliest, ends.get(wait.task()) + wait.lag());
        for (int start = earliest; start + task.duration() <= held.length; start++) {
            List<Integer> units = new ArrayList<>();
            boolean broken = false;
            for (int t = start; t < held.length && units.size() < task.duration(); t++) {
                if (ScheduleJudge.canWork(problem, task, t)) units.add(t);
                else broken = true;
                if (units.isEmpty()) break;
            }
            if (units.size() < task.duration() || task.unbroken() && broken) continue;
            if (take(task, units, 1)) {
                ends.put(task.id(), task.duration() == 0 ? start : units.get(units.size() - 1) + 1);
                if (fits(number + 1)) return true;
            }
            take(task, units, -1);
        }
        return false;
    }

    private boolean take(StagingProblem.Task task, List<Integer> units, int sign) {
        boolean within = true;
        for (int unit : units) {
            for (int r = 0; r < held[unit].length; r++) {
                held[unit][r] += sign * task.uses().get(r);
                within &= held[unit][r] <= ScheduleJudge.there(problem, r, unit);
            }
        }
        return within;
    }
}
