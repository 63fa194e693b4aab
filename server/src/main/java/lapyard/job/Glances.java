package lapyard.job;

import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.NearMisses;

/** Short searches for one section's advice: bounded by the timbers cut in all of them, and what was just solved is not solved again. */
final class Glances {
    /** One glance at 700 timbers takes about 20 ms; nesting those of one change anew takes up to 200 glances, six times over. */
    static final long MOST_TIMBERS = 500_000;

    /** Room for the problems of one nesting, a third of which come again. */
    private final SearchMemory memory = new SearchMemory(32L << 20);

    private final long most;
    private long timbers;

    Glances(long mostTimbers) {
        most = mostTimbers;
    }

    CuttingResult solve(CuttingProblem problem) {
        int pieces = problem.pieces().stream().mapToInt(CuttingProblem.Demand::count).sum();
        return memory.of(problem, pieces, asked -> {
            timbers += pieces;
            return CuttingSolver.solve(asked, NearMisses.GLANCE);
        });
    }

    /** Whether nothing more is begun. */
    boolean spent() {
        return timbers >= most;
    }
}
