package lapyard.cutting;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
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
                ? asTheyLie(problem, effort, Optional.empty(), 0, true, Progress.UNHEARD).orElseThrow()
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
                ? asTheyLie(problem, effort, Optional.of(than), left, true, Progress.UNHEARD)
                : Optional.of(solve(problem, effort));
        return found.filter(plan -> plan.unplaced().size() < left || plan.unplaced().size() == left && plan.cost().compareTo(than) < 0);
    }

    /** Offcuts are taken up again as they lie, whatever the problem says of trimming them. */
    static CuttingResult asTheyLie(CuttingProblem problem, Effort effort) {
        return asTheyLie(problem, effort, Progress.UNHEARD);
    }

    static CuttingResult asTheyLie(CuttingProblem problem, Effort effort, Progress progress) {
        return asTheyLie(problem, effort, Optional.empty(), 0, false, progress).orElseThrow();
    }

    /** @param than empty where no plan that leaves so many kinds of pieces uncut costs less than this, and none leaves fewer */
    private static Optional<CuttingResult> asTheyLie(
            CuttingProblem problem, Effort effort, Optional<BigDecimal> than, int left, boolean moneyAlone, Progress progress) {
        CuttingBudget budget = new CuttingBudget(effort, progress);
        Intake intake = new Intake(problem);
        List<CuttingResult.Unplaced> unplaced = new ArrayList<>(intake.unplaced());
        if (than.isPresent() && unplaced.size() > left) return Optional.empty();
        if (intake.nothingToCut()) {
            return Optional.of(new CuttingResult(
                    problem.name(), BigDecimal.ZERO, BigDecimal.ZERO, 0, BigDecimal.ZERO, true, budget.seconds(), List.of(), unplaced,
                    new Shortage(left(unplaced), List.of())));
        }
        WholeProblem whole = intake.whole();
        // where more might be left uncut, money alone rules nothing out
        long rival = than.filter(any -> unplaced.size() == left).map(whole::unitsIn).orElse(CuttingSearch.NO_RIVAL);
        CuttingSearch search = moneyAlone
                ? CuttingSearch.ofMoney(whole, effort, budget, rival)
                : new CuttingSearch(whole, null, effort, budget);
        Solution solution = search.run();
        if (search.hopeless() || than.isPresent() && left == 0 && solution.uncut() > 0) return Optional.empty();
        long atLeast = left(unplaced);
        if (solution.uncut() > 0) {
            Lacking.Fewest fewest = Lacking.fewest(whole, solution, new Filling(whole, budget), effort, budget);
            atLeast += fewest.atLeast();
            solution = fewest.plan();
            Solution cut = new Solution(whole);
            int[] demand = whole.demand.clone();
            solution.patterns().forEach((pattern, count) -> {
                if (pattern.stock() != Pattern.NONE) {
                    cut.add(pattern, count);
                    return;
                }
                for (int i = 0; i < pattern.items().length; i++) {
                    demand[pattern.items()[i]] -= pattern.counts()[i] * count;
                }
            });
            rival = CuttingSearch.NO_RIVAL;
            if (than.isPresent()) {
                int over = unplaced.size() + new PlanLines(intake, whole, cut).leftOver().size();
                if (over > left) return Optional.empty();
                if (over == left) rival = whole.unitsIn(than.get());
            }
            search = new CuttingSearch(whole.withDemand(demand), cut, effort, budget, 0, rival);
            solution = search.run();
            if (search.hopeless()) return Optional.empty();
        }
        long keep = intake.keepOffcut() / whole.micronsAUnit;
        Tidying tidying = new Tidying(whole, new Filling(whole, budget), effort, budget, keep);
        solution = moneyAlone ? tidying.sparing(solution) : tidying.tidy(solution);
        PlanLines lines = new PlanLines(intake, whole, solution);
        unplaced.addAll(lines.leftOver());
        long least = Math.min(search.moneyBound(), solution.money());
        boolean proven = least == solution.money();
        BigDecimal bound = proven ? lines.cost() : whole.money(least);
        int boards = Math.toIntExact(solution.boards());
        return Optional.of(new CuttingResult(
                problem.name(), lines.cost(), lines.salvage(), boards, bound, proven, budget.seconds(), lines.lines(), unplaced,
                new Shortage(Math.toIntExact(atLeast), List.of())));
    }

    private static int left(List<CuttingResult.Unplaced> unplaced) {
        return unplaced.stream().mapToInt(CuttingResult.Unplaced::count).sum();
    }
}
