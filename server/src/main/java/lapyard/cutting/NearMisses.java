package lapyard.cutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which repeated length, cut a little shorter, would save a board or money. Offered, never applied. */
public final class NearMisses {
    /** How much shorter a piece may be offered, mm; common practice, no source. */
    public static final int MOST_MM = 25;

    private NearMisses() {}

    /**
     * {@code count} pieces of {@code lengthMm}, each {@code shorterMm} less, change the plan to {@code then}.
     *
     * @param shorterMm the least whole millimetres that bring the whole saving
     * @param saved     money, 0 where only boards are saved
     * @param ids       the demands that would be cut shorter
     */
    public record NearMiss(
            double lengthMm, int count, int shorterMm, BigDecimal saved, int boardsSaved, List<String> ids, CuttingResult then) {
        public NearMiss {
            ids = List.copyOf(ids);
        }
    }

    /**
     * Solves once for every length that is cut at least twice, shortened by {@link #MOST_MM}, and where that saves
     * looks for the least shortening that saves as much.
     *
     * @param now the plan of {@code problem} as it stands
     * @return the largest saving of money first, then of boards, then the longest length
     */
    public static List<NearMiss> of(CuttingProblem problem, CuttingResult now, Effort effort) {
        Map<Double, List<CuttingProblem.Demand>> byLength = new LinkedHashMap<>();
        for (var piece : problem.pieces()) {
            boolean cut = now.unplaced().stream().noneMatch(u -> u.id().equals(piece.id()));
            if (cut) byLength.computeIfAbsent(piece.lengthMm(), l -> new ArrayList<>()).add(piece);
        }
        List<NearMiss> misses = new ArrayList<>();
        byLength.forEach((length, demands) -> {
            int count = demands.stream().mapToInt(CuttingProblem.Demand::count).sum();
            if (count < 2 || length <= MOST_MM) return;
            CuttingResult most = shortened(problem, length, MOST_MM, effort);
            if (!better(most, now)) return;
            int enough = MOST_MM;
            int tooLittle = 0;
            CuttingResult then = most;
            while (enough - tooLittle > 1) {
                int middle = (enough + tooLittle) / 2;
                CuttingResult here = shortened(problem, length, middle, effort);
                if (better(most, here)) {
                    tooLittle = middle;
                } else {
                    enough = middle;
                    then = here;
                }
            }
            misses.add(new NearMiss(
                    length,
                    count,
                    enough,
                    now.cost().subtract(then.cost()),
                    now.boards() - then.boards(),
                    demands.stream().map(CuttingProblem.Demand::id).toList(),
                    then));
        });
        misses.sort((a, b) -> {
            int byMoney = b.saved().compareTo(a.saved());
            if (byMoney != 0) return byMoney;
            int byBoards = Integer.compare(b.boardsSaved(), a.boardsSaved());
            return byBoards != 0 ? byBoards : Double.compare(b.lengthMm(), a.lengthMm());
        });
        return misses;
    }

    private static boolean better(CuttingResult a, CuttingResult b) {
        int byMoney = a.cost().compareTo(b.cost());
        return byMoney < 0 || byMoney == 0 && a.boards() < b.boards();
    }

    private static CuttingResult shortened(CuttingProblem problem, double lengthMm, int byMm, Effort effort) {
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (var piece : problem.pieces()) {
            double length = piece.lengthMm() == lengthMm ? lengthMm - byMm : piece.lengthMm();
            pieces.add(new CuttingProblem.Demand(piece.id(), length, piece.count(), piece.stage(), piece.goodFace()));
        }
        return CuttingSolver.solve(problem.with(problem.stock(), pieces), effort);
    }
}
