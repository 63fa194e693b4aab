package lapyard.plan;

/** The saw and how offcuts are kept, all in millimetres; {@code leastPartMm} is the least part of a joined wall. */
public record Saw(double kerfMm, double endTrimMm, double keepOffcutMm, double leastPieceMm, double leastPartMm, double seamStaggerMm, double seamFromCornerMm) {
    public static final Saw USUAL = new Saw(4, 10, 300, 300, 600, 600, 400);
}
