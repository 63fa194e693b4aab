package lapyard.plan;

/** Drain notches under course 1 of the low walls. */
public record Notches(double widthMm, double depthMm, double maxGapMm, double keepFromCornersMm) {
    public static final Notches USUAL = new Notches(25, 50, 900, 200);
}
