package lapyard.cutting;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Optional;
import lapyard.working.Effort;
import lapyard.working.Progress;

/**
 * The least money in boards, then the fewest boards, then the longest offcut worth keeping, then the fewest settings
 * of the saw stop. The same problem and steps always give the same plan.
 *
 * @see "docs/method/cutting.md"
 */
public final class CuttingSolver {
    /** For a slip that follows each change of the garden. A step is about a microsecond of one core. */
    public static final Effort QUICK = Effort.ofSteps(450_000, 6_000);

    /** For a plan that is taken to the saw. */
    public static final Effort FULL = new Effort(20_000_000, Duration.ofSeconds(10));

    private CuttingSolver() {}

    /**
     * @return every piece that some board can hold is in the plan exactly as often as asked, unless boards on hand
     *     run out; what is not is named, and cost and bound are those of what is
     * @throws IllegalArgumentException for lengths, counts, kerfs or prices that can never make sense, naming the value
     */
    public static CuttingResult solve(CuttingProblem problem, Effort effort) {
        return solve(problem, effort, Progress.UNHEARD);
    }

    /** @param progress hears of the plan for offcuts as they lie, where the problem has them trimmed */
    public static CuttingResult solve(CuttingProblem problem, Effort effort, Progress progress) {
        CuttingResult result = plan(problem, effort, progress);
        return result.unplaced().isEmpty()
                ? result
                : result.shortOf(new Shortage(result.shortage().atLeast(), Lacking.ways(problem, result)));
    }

    /** As {@link #solve}, without the boards that would hold what is left over. */
    static CuttingResult plan(CuttingProblem problem, Effort effort, Progress progress) {
        Intake.measure("problem", "retrim", problem.retrimMm(), true);
        return problem.retrimMm() == 0
                ? asTheyLie(problem, effort, progress)
                : Retrim.solve(problem, effort, progress);
    }

    /**
     * As {@link #solve} for who asks for the money alone: the search ends as soon as that is proved. Among plans of that money this
     * one may take more boards, more stops and shorter offcuts.
     */
    public static CuttingResult cheapest(CuttingProblem problem, Effort effort) {
        Intake.measure("problem", "retrim", problem.retrimMm(), true);
        return problem.retrimMm() == 0
                ? new CuttingRun(problem, effort, Optional.empty(), 0, true, Progress.UNHEARD).result().orElseThrow()
                : solve(problem, effort);
    }

    /**
     * The plan that {@link #cheapest} finds, if it leaves fewer kinds of pieces uncut than another, or as many for less money. The
     * search ends as soon as its bound says that no plan does, long before its steps are spent.
     *
     * @param than what the other plan costs
     * @param left how many kinds of pieces it leaves uncut
     */
    public static Optional<CuttingResult> cheaper(CuttingProblem problem, Effort effort, BigDecimal than, int left) {
        Intake.measure("problem", "retrim", problem.retrimMm(), true);
        Optional<CuttingResult> found = problem.retrimMm() == 0
                ? new CuttingRun(problem, effort, Optional.of(than), left, true, Progress.UNHEARD).result()
                : Optional.of(solve(problem, effort));
        return found.filter(plan -> plan.unplaced().size() < left || plan.unplaced().size() == left && plan.cost().compareTo(than) < 0);
    }

    /** Offcuts are taken up again as they lie, whatever the problem says of trimming them. */
    static CuttingResult asTheyLie(CuttingProblem problem, Effort effort) {
        return asTheyLie(problem, effort, Progress.UNHEARD);
    }

    static CuttingResult asTheyLie(CuttingProblem problem, Effort effort, Progress progress) {
        return new CuttingRun(problem, effort, Optional.empty(), 0, false, progress).result().orElseThrow();
    }
}
