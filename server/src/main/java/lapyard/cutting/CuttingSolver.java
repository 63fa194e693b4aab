package lapyard.cutting;

/** The least money in boards. */
public final class CuttingSolver {
    private CuttingSolver() {}

    /**
     * @return every piece that some board can hold is in the plan exactly as often as asked
     * @throws IllegalArgumentException for lengths, counts, kerfs or prices that can never make sense, naming the value
     */
    public static CuttingResult solve(CuttingProblem problem, Effort effort) {
        throw new UnsupportedOperationException();
    }
}
