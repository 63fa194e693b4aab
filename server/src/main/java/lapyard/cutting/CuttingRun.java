package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;

/** One run of {@link CuttingSolver} with offcuts as they lie: search, fewest pieces left over, tidying. */
final class CuttingRun {
    private final CuttingProblem problem;
    private final Effort effort;
    private final Optional<BigDecimal> than;
    private final int left;
    private final boolean moneyAlone;
    private final SearchBudget budget;
    private final Intake intake;
    private final List<CuttingResult.Unplaced> unplaced;

    private WholeProblem whole;
    private CuttingSearch search;
    private Solution solution;
    /** Pieces that any plan leaves over. */
    private long atLeast;

    /**
     * @param than what another plan costs; empty where no other is to be beaten
     * @param left how many kinds of pieces the other plan leaves uncut
     */
    CuttingRun(CuttingProblem problem, Effort effort, Optional<BigDecimal> than, int left, boolean moneyAlone, Progress progress) {
        this.problem = problem;
        this.effort = effort;
        this.than = than;
        this.left = left;
        this.moneyAlone = moneyAlone;
        budget = SearchBudget.whole(effort, progress);
        intake = new Intake(problem);
        unplaced = new ArrayList<>(intake.unplaced());
        atLeast = unplaced.stream().mapToInt(CuttingResult.Unplaced::count).sum();
    }

    /** @return empty where no plan that leaves so many kinds of pieces uncut costs less than the other, and none leaves fewer */
    Optional<CuttingResult> result() {
        if (than.isPresent() && unplaced.size() > left) return Optional.empty();
        whole = intake.whole();
        searchAll();
        if (search.hopeless() || than.isPresent() && left == 0 && solution.uncut() > 0) return Optional.empty();
        if (solution.uncut() > 0 && !searchWhatBoardsHold()) return Optional.empty();
        Tidying tidying = new Tidying(whole, new Filling(whole, budget), effort, budget, intake.keepOffcut() / whole.micronsAUnit);
        solution = moneyAlone ? tidying.sparing(solution) : tidying.tidy(solution);
        PlanLines lines = new PlanLines(intake, whole, solution);
        unplaced.addAll(lines.leftOver());
        long least = Math.min(search.moneyBound(), solution.money());
        boolean proven = least == solution.money();
        BigDecimal bound = proven ? lines.cost() : whole.money(least);
        return Optional.of(told(lines.cost(), lines.salvage(), Math.toIntExact(solution.boards()), bound, proven, lines.lines()));
    }

    private void searchAll() {
        // where more might be left uncut, money alone rules nothing out
        search = moneyAlone
                ? CuttingSearch.ofMoney(whole, effort, budget, rival(unplaced.size()))
                : new CuttingSearch(whole, null, effort, budget);
        solution = search.run();
    }

    /** The fewest pieces are left over first, then the rest is cut for the least money; false where the other plan stands. */
    private boolean searchWhatBoardsHold() {
        Lacking.Fewest fewest = Lacking.fewest(whole, solution, new Filling(whole, budget), effort, budget);
        atLeast += fewest.atLeast();
        Solution cut = new Solution(whole);
        int[] demand = whole.demand.clone();
        fewest.plan().patterns().forEach((pattern, count) -> {
            if (pattern.stock() != Pattern.NONE) {
                cut.add(pattern, count);
                return;
            }
            for (int i = 0; i < pattern.items().length; i++) {
                demand[pattern.items()[i]] -= pattern.counts()[i] * count;
            }
        });
        int over = than.isEmpty() ? 0 : unplaced.size() + new PlanLines(intake, whole, cut).leftOver().size();
        if (than.isPresent() && over > left) return false;
        search = new CuttingSearch(whole.withDemand(demand), cut, effort, budget, 0, rival(over));
        solution = search.run();
        return !search.hopeless();
    }

    /** What a plan that leaves so many kinds of pieces over must cost less than, in price units. */
    private long rival(int over) {
        return than.filter(any -> over == left).map(whole::unitsIn).orElse(CuttingSearch.NO_RIVAL);
    }

    private CuttingResult told(BigDecimal cost, BigDecimal salvage, int boards, BigDecimal bound, boolean proven, List<CuttingResult.BoardLine> lines) {
        return new CuttingResult(
                problem.name(), cost, salvage, boards, bound, proven, budget.seconds(), lines, unplaced,
                new Shortage(Math.toIntExact(atLeast), List.of()));
    }
}
