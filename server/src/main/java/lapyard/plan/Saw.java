package lapyard.plan;

/**
 * The saw and how offcuts are kept, all in millimetres.
 *
 * @param leastPartMm    the least part of a joined wall
 * @param salvagePercent what a board on hand is worth kept, in percent of what the same length costs in the cheapest new
 *     board; under 100
 * @param retrimMm       cut off an offcut's end each time that a later weekend takes it up again
 */
public record Saw(
        double kerfMm,
        double endTrimMm,
        double keepOffcutMm,
        double leastPieceMm,
        double leastPartMm,
        double seamStaggerMm,
        double seamFromCornerMm,
        double salvagePercent,
        double retrimMm) {
    /** What a board of this length gives, both ends trimmed. */
    public double usableMm(double boardMm) {
        return boardMm - 2 * endTrimMm;
    }

    public static final Saw USUAL = new Saw(4, 10, 300, 300, 600, 600, 400, 35, 0);
}
