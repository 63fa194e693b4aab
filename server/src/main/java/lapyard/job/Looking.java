package lapyard.job;

import java.time.Duration;
import java.util.function.Function;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.plan.Search;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;
import lapyard.sheets.RollSolver;
import lapyard.working.Progress;

/**
 * How long a garden's plans are looked for. What each bed would take alone shares as long a search as all together get,
 * so that a saving is none of the search.
 *
 * @param progress for what is looked for by its name on the slip, who hears of it
 */
record Looking(Search search, Function<String, Progress> progress) {
    private static final Duration LONGEST = Duration.ofSeconds(60);
    private static final lapyard.cutting.Effort LONG_BOARDS = new lapyard.cutting.Effort(6_000_000, LONGEST, 1_500_000);
    private static final lapyard.sheets.Effort LONG_ROLLS = new lapyard.sheets.Effort(300_000, LONGEST);

    CuttingResult boards(String name, CuttingProblem problem) {
        return CuttingSolver.solve(problem, boards(1), progress.apply(name));
    }

    /** @param of so many share the search */
    CuttingResult boardsAlone(CuttingProblem problem, int of) {
        return CuttingSolver.solve(problem, boards(of));
    }

    RollResult rolls(String name, RollProblem problem) {
        return RollSolver.solve(problem, rolls(1), progress.apply(name));
    }

    /** As {@link #boardsAlone}. */
    RollResult rollsAlone(RollProblem problem, int of) {
        return RollSolver.solve(problem, rolls(of));
    }

    private lapyard.cutting.Effort boards(int of) {
        lapyard.cutting.Effort quick = lapyard.cutting.Effort.QUICK;
        if (search == Search.SHORT) {
            return quick;
        }
        long patience = Math.max(quick.patience(), LONG_BOARDS.patience() / of);
        return new lapyard.cutting.Effort(Math.max(quick.steps(), LONG_BOARDS.steps() / of), LONGEST, patience);
    }

    private lapyard.sheets.Effort rolls(int of) {
        lapyard.sheets.Effort quick = lapyard.sheets.Effort.QUICK;
        return search == Search.SHORT
                ? quick
                : new lapyard.sheets.Effort(Math.max(quick.steps(), LONG_ROLLS.steps() / of), LONGEST);
    }
}
