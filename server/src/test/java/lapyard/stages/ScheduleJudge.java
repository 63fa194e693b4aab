package lapyard.stages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Walks every task over the clock unit by unit, sharing no code with the search, and checks what was promised. */
public final class ScheduleJudge {
    private ScheduleJudge() {}

    public static StagingResult check(StagingProblem problem, StagingResult result) {
        Map<Integer, int[]> held = new TreeMap<>();
        Map<String, Integer> ends = new TreeMap<>();
        int last = 0;
        assertEquals(problem.tasks().size(), result.starts().size(), problem.name());
        for (StagingProblem.Task task : problem.tasks()) {
            int start = result.starts().get(task.id());
            assertTrue(start >= task.notBefore(), () -> problem.name() + ": " + task.id() + " begins too early");
            int left = task.duration();
            int unit = start;
            boolean paused = false;
            while (left > 0) {
                if (canWork(problem, task, unit)) {
                    boolean broken = paused && left < task.duration();
                    assertTrue(!(task.unbroken() && broken), () -> problem.name() + ": " + task.id() + " is broken");
                    int[] sum = held.computeIfAbsent(unit, u -> new int[problem.resources().size()]);
                    for (int r = 0; r < sum.length; r++) sum[r] += task.uses().get(r);
                    left--;
                } else {
                    paused = true;
                    int at = unit;
                    assertTrue(unit > start, () -> problem.name() + ": " + task.id() + " begins at " + at + ", when it cannot be worked");
                }
                unit++;
            }
            ends.put(task.id(), unit);
            assertEquals(unit, result.ends().get(task.id()), problem.name() + ": end of " + task.id());
            last = Math.max(last, unit);
        }
        for (StagingProblem.Task task : problem.tasks()) {
            for (StagingProblem.Wait wait : task.after()) {
                assertTrue(result.starts().get(task.id()) >= ends.get(wait.task()) + wait.lag(),
                        () -> problem.name() + ": " + task.id() + " does not wait for " + wait.task());
            }
        }
        held.forEach((unit, sum) -> {
            for (int r = 0; r < sum.length; r++) {
                assertTrue(sum[r] <= there(problem, r, unit), problem.name() + ": unit " + unit + " holds " + sum[r] + " of resource " + (r + 1));
            }
        });
        assertEquals(last, result.makespan(), problem.name());
        assertTrue(result.lowerBound() <= result.makespan(), problem.name() + ": bound above the makespan");
        assertEquals(result.makespan() == result.lowerBound(), result.proven());
        return result;
    }

    static boolean canWork(StagingProblem problem, StagingProblem.Task task, int unit) {
        if (problem.calendar().isEmpty()) return true;
        List<Boolean> cycle = problem.calendar().get().cycle();
        boolean works = cycle.get(unit % cycle.size());
        for (int r = 0; r < problem.resources().size(); r++) works &= task.uses().get(r) <= there(problem, r, unit);
        return works;
    }

    static int there(StagingProblem problem, int resource, int unit) {
        if (problem.calendar().isEmpty() || problem.calendar().get().there().isEmpty()) return problem.resources().get(resource);
        List<Integer> each = problem.calendar().get().there().get(resource);
        return each.isEmpty() ? problem.resources().get(resource)
                : Math.min(problem.resources().get(resource), each.get(unit % each.size()));
    }
}
