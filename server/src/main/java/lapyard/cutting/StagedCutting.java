package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapyard.working.Effort;

/**
 * What cutting in stages costs, compared with other ways to cut the same pieces.
 *
 * @param pooledOnce   all on one day, so that no offcut is trimmed again
 * @param stageByStage no offcut carried from one stage to the next; boards on hand go to the earliest that takes them
 */
public record StagedCutting(Way pooledOnce, Way stageByStage) {
    /** @param paid what the boards cost to have, without the worth of what is on hand */
    public record Way(int boards, BigDecimal paid) {}

    /** @param now the plan of {@code problem} with its stages */
    public static StagedCutting of(CuttingProblem problem, CuttingResult now, Effort effort) {
        Map<Integer, List<CuttingProblem.Demand>> byStage = new TreeMap<>();
        problem.pieces().forEach(piece -> byStage.computeIfAbsent(piece.stage(), s -> new ArrayList<>()).add(piece));
        Way staged = new Way(now.boards(), now.paid());
        if (byStage.size() <= 1) return new StagedCutting(staged, staged);
        return new StagedCutting(
                problem.retrimMm() > 0 ? once(problem, effort) : staged, apart(problem, byStage.values(), effort));
    }

    private static Way once(CuttingProblem problem, Effort effort) {
        CuttingResult once = CuttingSolver.asTheyLie(problem, effort);
        return new Way(once.boards(), once.paid());
    }

    private static Way apart(
            CuttingProblem problem, Iterable<List<CuttingProblem.Demand>> stages, Effort effort) {
        BigDecimal paid = BigDecimal.ZERO;
        int boards = 0;
        Map<String, Integer> used = new HashMap<>();
        for (List<CuttingProblem.Demand> pieces : stages) {
            CuttingResult own = CuttingSolver.solve(problem.with(problem.stockLess(used), pieces), effort);
            own.plan().forEach(line -> used.merge(line.stock(), line.count(), Integer::sum));
            paid = paid.add(own.paid());
            boards += own.boards();
        }
        return new Way(boards, paid);
    }
}
