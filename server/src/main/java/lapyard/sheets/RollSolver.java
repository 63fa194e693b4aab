package lapyard.sheets;

/** The least money in roll goods. */
public final class RollSolver {
    private RollSolver() {}

    public static RollResult solve(RollProblem problem, Effort effort) {
        throw new UnsupportedOperationException();
    }
}
