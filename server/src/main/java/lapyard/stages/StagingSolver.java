package lapyard.stages;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import lapyard.stages.Placing.Times;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;

/**
 * When to do each task so that all ends early: tasks in an order of priority, each placed as early as it goes, then
 * better orders are searched for until the bound is met or the effort is spent.
 */
public final class StagingSolver {
    /** For a schedule that follows each change of the garden. A step is 1000 turns of the inner loop, a few microseconds of one core. */
    public static final Effort QUICK = Effort.ofSteps(2_000, 1_000);

    /** For a schedule that people come by. */
    public static final Effort FULL = new Effort(400_000, Duration.ofSeconds(10), 100_000);

    private StagingSolver() {}

    /**
     * @throws IllegalArgumentException for what can never be done, naming the task and the amount: an unknown or double
     *     id, a circle of waits, more used than there is, no working unit, an unbroken task longer than any stretch
     */
    public static StagingResult solve(StagingProblem problem, Effort effort) {
        return solve(problem, effort, Progress.UNHEARD);
    }

    /** @param progress hears of ends in clock units; where tasks are due or kept together, of the first alone */
    public static StagingResult solve(StagingProblem problem, Effort effort, Progress progress) {
        SearchBudget budget = SearchBudget.patient(effort, progress);
        Net net = new Net(problem);
        Priority priority = new Priority(net);
        Placing placing = new Placing(net, budget);
        Times best = new Times(net.n);
        int[] order = priority.order(byLatestEnd(priority));
        placing.forward(order, best);
        boolean plain = net.groups == 0 && !net.anyDue();
        Bound bound = new Bound(net, priority, budget);
        int least = bound.quick();
        if (plain) {
            Times better = new Times(net.n);
            better.set(best);
            placing.toAndFro(better, order);
            if (better.last < best.last) best.set(better);
            if (best.last > least) least = bound.best(least, best, placing);
            budget.tell(best.last, least);
            if (best.last > least) {
                new Evolution(net, priority, placing, budget, least, best).run();
            }
        } else {
            budget.tell(best.last, least);
            new WishSearch(net, priority, placing, budget, best).run();
        }
        Map<String, Integer> starts = new LinkedHashMap<>();
        Map<String, Integer> ends = new LinkedHashMap<>();
        long late = 0;
        for (int i = 0; i < net.n; i++) {
            starts.put(net.ids[i], best.start[i]);
            ends.put(net.ids[i], best.end[i]);
            late += Math.max(0, (long) best.end[i] - net.due[i]);
        }
        return new StagingResult(problem.name(), starts, ends, best.last, least, late, budget.seconds());
    }

    private static double[] byLatestEnd(Priority priority) {
        double[] key = new double[priority.latestEnd.length];
        for (int i = 0; i < key.length; i++) key[i] = priority.latestEnd[i];
        return key;
    }
}
