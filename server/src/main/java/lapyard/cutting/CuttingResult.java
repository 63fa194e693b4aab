package lapyard.cutting;

import java.math.BigDecimal;
import java.util.List;

/**
 * A cutting plan. {@code lowerBound} is proved in exact arithmetic and never above the true optimum;
 * {@code proven} only where it equals {@code cost}.
 *
 * @param cost     prices and salvage values of the boards opened, exact, not rounded
 * @param salvage  the part of {@code cost} that boards on hand would have been worth kept: nobody pays it
 * @param seconds  of this problem alone
 * @param plan     boards to cut, equal ones on one line
 * @param unplaced pieces that no board can hold, each with its reason
 * @param shortage how few pieces any plan leaves over, and which boards would hold them
 */
public record CuttingResult(
        String name,
        BigDecimal cost,
        BigDecimal salvage,
        int boards,
        BigDecimal lowerBound,
        boolean proven,
        double seconds,
        List<BoardLine> plan,
        List<Unplaced> unplaced,
        Shortage shortage) {
    public CuttingResult {
        plan = List.copyOf(plan);
        unplaced = List.copyOf(unplaced);
    }

    /** What the boards of the plan cost to have: cost less the worth of what is on hand anyway. */
    public BigDecimal paid() {
        return cost.subtract(salvage);
    }

    /** The same plan beside other ways to cut: {@code least} is what none of them costs less than. */
    public CuttingResult bounded(BigDecimal least) {
        BigDecimal bound = lowerBound.min(least);
        return new CuttingResult(
                name, cost, salvage, boards, bound, bound.compareTo(cost) == 0, seconds, plan, unplaced, shortage);
    }

    /** The same plan with its boards and pieces under other names. */
    public CuttingResult renamed(List<BoardLine> lines, List<Unplaced> left) {
        return new CuttingResult(name, cost, salvage, boards, lowerBound, proven, seconds, lines, left, shortage);
    }

    /** The same plan with what it is short of. */
    CuttingResult shortOf(Shortage other) {
        return new CuttingResult(name, cost, salvage, boards, lowerBound, proven, seconds, plan, unplaced, other);
    }

    /** Pieces left over. */
    public int left() {
        return unplaced.stream().mapToInt(Unplaced::count).sum();
    }

    /** Whether it is proved that no plan leaves fewer pieces over. */
    public boolean unplacedProven() {
        return left() <= shortage.atLeast();
    }

    /**
     * {@code count} boards cut alike.
     *
     * @param pieces ids in the order of cutting, earlier stages first; {@code lengthsMm} goes with it
     * @param leftMm usable length less the pieces and the kerfs between them
     */
    public record BoardLine(String stock, int count, List<String> pieces, List<Double> lengthsMm, double leftMm) {
        public BoardLine {
            pieces = List.copyOf(pieces);
            lengthsMm = List.copyOf(lengthsMm);
        }
    }

    /** @param scarce whether boards that could hold it are used up; else none that is given could */
    public record Unplaced(String id, double lengthMm, int count, String why, boolean scarce) {}
}
