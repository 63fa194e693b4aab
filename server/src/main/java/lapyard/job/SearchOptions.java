package lapyard.job;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.LengthPrices;
import lapyard.plan.Garden;
import lapyard.plan.SearchLength;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollSolver;
import lapyard.working.Effort;
import lapyard.working.Look;
import lapyard.working.Progress;

/**
 * How long the searches of one job sheet may take, and who hears of their progress. The plans of single beds share as
 * much search as the plan of the whole garden gets, so that a saving never comes from searching longer. At a first look a
 * plan is what the whole search has found, where it is remembered, and else what a short one finds.
 *
 * @param progress gives the listener for a search by the name of its line on the slip
 * @param alone    whether to work out what each bed would take alone; this changes no plan of beds with square corners
 * @param memory   results of earlier searches
 */
record SearchOptions(SearchLength search, Function<String, Progress> progress, boolean alone, Look look, SearchMemory memory) {
    private static final Effort LONG_BOARDS = Effort.ofSteps(6_000_000, 1_500_000);
    private static final Effort LONG_ROLLS = Effort.ofSteps(300_000);

    /** Chose as the whole quick search did in all samples and in eight made-up gardens of eight Ls; 300 did not. */
    private static final Effort GLANCE = Effort.ofSteps(800);

    private static final Effort BOARDS_GLANCE = Effort.ofSteps(4_000, 800);

    /** For a job sheet. What is told in a tally has to be true of the whole plan, so a garden that is being built has no first look. */
    static SearchOptions of(Garden garden, Function<String, Progress> progress, Look look, SearchMemory memory) {
        boolean first = look == Look.FIRST && garden.people().tally().isEmpty();
        return new SearchOptions(garden.goods().search(), progress, !first, first ? look : Look.WHOLE, memory);
    }

    /**
     * For a first look. Of 40 village halls with one size changed it then takes half as long as with 4000 and 800 steps and
     * comes out 0.8 % dearer; of 15 gardens of beds that all differ 0.03 %. Less saves no more time.
     */
    private static final Effort FIRST_BOARDS = Effort.ofSteps(1_000, 200);

    private static final Effort FIRST_ROLLS = Effort.ofSteps(100);

    /** For the total alone. */
    static SearchOptions pooledOnly(SearchLength search, SearchMemory memory) {
        return new SearchOptions(search, what -> Progress.UNHEARD, false, Look.WHOLE, memory);
    }

    boolean isFirst() {
        return look == Look.FIRST;
    }

    CuttingResult boards(String name, CuttingProblem problem) {
        CuttingResult result = boards(name, problem, Optional.empty());
        chosen(name, result);
        return result;
    }

    /** @param least proved: no plan that may be chosen in the end costs less, whatever the bound of this problem */
    CuttingResult boards(String name, CuttingProblem problem, Optional<BigDecimal> least) {
        Progress heard = progress.apply(name);
        return boards(problem, boards(1), least.isEmpty() ? heard : (best, bound) -> heard.reached(best, bound.min(least.get())));
    }

    /** What was chosen in the end. */
    void chosen(String name, CuttingResult result) {
        progress.apply(name).reached(result.cost(), result.lowerBound());
    }

    /** @param of so many share the search */
    CuttingResult boardsAlone(CuttingProblem problem, int of) {
        return boards(problem, boards(of), Progress.UNHEARD);
    }

    /** As above, the money of a plan that nobody saws and from which no nests are taken. */
    CuttingResult moneyAlone(CuttingProblem problem, int of) {
        return cheapest(problem, boards(of));
    }

    /** Search effort that is enough to compare the cost of two ways to join walls. */
    CuttingResult boardsShortly(CuttingProblem problem) {
        return cheapest(problem, BOARDS_GLANCE);
    }

    /** As {@link CuttingSolver#cheaper}, looked for as shortly. */
    Optional<CuttingResult> boardsCheaper(CuttingProblem problem, BigDecimal than, int left) {
        return memory.of(
                List.of(problem, than, left),
                pieces(problem),
                asked -> CuttingSolver.cheaper(problem, BOARDS_GLANCE, than, left));
    }

    /** Prices that bound what is compared. */
    Optional<LengthPrices> lengthPrices(CuttingProblem problem) {
        return problem.retrimMm() == 0 ? LengthPrices.of(problem, BOARDS_GLANCE) : Optional.empty();
    }

    private CuttingResult cheapest(CuttingProblem problem, Effort effort) {
        return memory.of(List.of("cheapest", problem, effort), pieces(problem), asked -> CuttingSolver.cheapest(problem, effort));
    }

    RollResult rolls(String name, RollProblem problem) {
        Progress heard = progress.apply(name);
        RollResult result = rolls(problem, rolls(1), heard);
        heard.reached(result.cost(), result.lowerBound());
        return result;
    }

    /** As {@link #boardsAlone}. */
    RollResult rollsAlone(RollProblem problem, int of) {
        return rolls(problem, rolls(of), Progress.UNHEARD);
    }

    /** Search effort that is enough to compare two layouts. */
    RollResult rollsShortly(RollProblem problem) {
        return rolls(problem, GLANCE, Progress.UNHEARD);
    }

    private CuttingResult boards(CuttingProblem problem, Effort effort, Progress heard) {
        return found(problem, pieces(problem), effort, FIRST_BOARDS, most -> CuttingSolver.solve(problem, most, heard));
    }

    /** @param first effort at a first look, where nobody has searched with the whole effort */
    private <R> R found(Object problem, int pieces, Effort effort, Effort first, Function<Effort, R> solve) {
        Optional<R> whole = isFirst() ? memory.known(List.of(problem, effort)) : Optional.empty();
        if (whole.isPresent()) return whole.get();
        Effort most = isFirst() ? first : effort;
        return memory.of(List.of(problem, most), pieces, asked -> solve.apply(most));
    }

    private static int pieces(CuttingProblem problem) {
        return problem.pieces().stream().mapToInt(CuttingProblem.Demand::count).sum();
    }

    private RollResult rolls(RollProblem problem, Effort effort, Progress heard) {
        int pieces = problem.pieces().stream().mapToInt(RollProblem.Piece::count).sum();
        return found(problem, pieces, effort, FIRST_ROLLS, most -> RollSolver.solve(problem, most, heard));
    }

    private Effort boards(int of) {
        Effort quick = CuttingSolver.QUICK;
        if (search == SearchLength.SHORT) return quick;
        long patience = Math.max(quick.patience(), LONG_BOARDS.patience() / of);
        return Effort.ofSteps(Math.max(quick.steps(), LONG_BOARDS.steps() / of), patience);
    }

    private Effort rolls(int of) {
        Effort quick = RollSolver.QUICK;
        return search == SearchLength.SHORT
                ? quick
                : Effort.ofSteps(Math.max(quick.steps(), LONG_ROLLS.steps() / of));
    }
}
