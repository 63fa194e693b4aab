package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RollSolverTest {
    private static final RollProblem.Stock W4 =
            new RollProblem.Stock("W4", 4000, new BigDecimal("9.00"), 500, OptionalDouble.empty());
    private static final List<RollProblem.Piece> M =
            List.of(new RollProblem.Piece("M-R1", 3960, 2460, 1), new RollProblem.Piece("M-R2", 2760, 1780, 1));
    private static final List<RollProblem.Piece> N = List.of(new RollProblem.Piece("N-R1", 2760, 1860, 1));

    /** Worked by hand: 2460 and 1780 one after the other; 1860; 2460, then the two 2760s turned side by side. */
    @ParameterizedTest(name = "{0}: used {1}, bought {2}, {3}")
    @CsvSource({"M, 4240, 4500, 40.50", "N, 1860, 2000, 18.00", "MN, 5220, 5500, 49.50"})
    void linersOfTwoBedsTakeTheWorkedLengths(String beds, double used, double bought, BigDecimal cost) {
        List<RollProblem.Piece> pieces = new java.util.ArrayList<>();
        if (beds.contains("M")) pieces.addAll(M);
        if (beds.contains("N")) pieces.addAll(N);
        RollProblem problem = new RollProblem(beds, List.of(W4), pieces, true, true);
        for (Effort effort : List.of(Effort.QUICK, Effort.FULL)) {
            RollResult result = LayoutJudge.check(problem, RollSolver.solve(problem, effort));
            assertEquals(1, result.rolls().size());
            assertEquals(used, result.rolls().get(0).usedMm());
            assertEquals(bought, result.rolls().get(0).boughtMm());
            assertEquals(cost, result.cost());
            assertTrue(result.proven());
        }
    }
}
