package lapyard.plan;

import lapyard.working.Whole;

/** Drain notches under course 1 of the low walls; {@code depthMm} at most a quarter of the timber's height. */
public record Notches(double widthMm, double depthMm, double maxGapMm, double fromCornersMm) {
    public static final Notches USUAL = new Notches(25, 50, 900, 200);

    /** Usual depth of a notch, mm: 50, or a quarter of the height in timber under 200 mm. */
    public static double usualDepthMm(double heightMm) {
        return Math.min(USUAL.depthMm, Whole.down(heightMm / 4 * 10) / 10);
    }
}
