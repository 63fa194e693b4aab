package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import lapyard.working.Effort;

/** Short ways to write a cutting problem down in a test. */
public final class Jobs {
    private Jobs() {}

    public static CuttingProblem.Stock board(double length, String price) {
        return new CuttingProblem.Stock(id("L", length), length, new BigDecimal(price), OptionalInt.empty(), 1);
    }

    public static CuttingProblem.Stock onHand(String id, double length, String price, int available) {
        return new CuttingProblem.Stock(id, length, new BigDecimal(price), OptionalInt.of(available), 1);
    }

    public static CuttingProblem.Demand piece(String id, double length, int count) {
        return new CuttingProblem.Demand(id, length, count, 1, 0);
    }

    /** Pairs of length and count, named by their length. */
    public static List<CuttingProblem.Demand> pieces(double... lengthsAndCounts) {
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (int i = 0; i < lengthsAndCounts.length; i += 2) {
            pieces.add(piece(
                    "P" + pieces.size() + "-" + id("", lengthsAndCounts[i]),
                    lengthsAndCounts[i],
                    (int) lengthsAndCounts[i + 1]));
        }
        return pieces;
    }

    public static CuttingProblem job(
            String name,
            double kerf,
            double endTrim,
            List<CuttingProblem.Stock> stock,
            List<CuttingProblem.Demand> pieces) {
        return new CuttingProblem(name, kerf, endTrim, 300, 0, stock, pieces);
    }

    public static CuttingResult solved(CuttingProblem problem, Effort effort) {
        return PlanChecker.check(problem, CuttingSolver.solve(problem, effort));
    }

    private static String id(String prefix, double length) {
        return prefix + BigDecimal.valueOf(length).stripTrailingZeros().toPlainString();
    }
}
