package lapyard.loadin;

/**
 * The longest thing that goes level round a square corner between two passages.
 *
 * <p>With its outer long side against both outer walls at an angle t, a thing {@code across} wide clears the inner
 * corner where its length is at most {@code (before sin t + after cos t - across) / (sin t cos t)}; it goes round where
 * that holds at every angle.
 *
 * @see "The ladder problem of calculus textbooks, from memory: a line goes round where its length is at most
 *     (a^(2/3) + b^(2/3))^(3/2), which is the case across = 0"
 */
final class Passage {
    private static final int STEPS = 900;

    private Passage() {}

    /** @return whole mm, rounded down; 0 where it does not go in at all */
    static double longestMm(double beforeMm, double afterMm, double acrossMm) {
        if (acrossMm >= Math.min(beforeMm, afterMm)) return 0;
        double best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < STEPS; i++) {
            double angle = Math.PI / 2 * i / STEPS;
            double length = at(beforeMm, afterMm, acrossMm, angle);
            if (length < least) {
                least = length;
                best = angle;
            }
        }
        double low = best - Math.PI / 2 / STEPS;
        double high = best + Math.PI / 2 / STEPS;
        for (int i = 0; i < 60; i++) {
            double a = low + (high - low) / 3;
            double b = high - (high - low) / 3;
            if (at(beforeMm, afterMm, acrossMm, a) < at(beforeMm, afterMm, acrossMm, b)) {
                high = b;
            } else {
                low = a;
            }
        }
        return Math.max(0, Math.floor(at(beforeMm, afterMm, acrossMm, (low + high) / 2) + 1e-6));
    }

    private static double at(double before, double after, double across, double angle) {
        double sin = Math.sin(angle);
        double cos = Math.cos(angle);
        return (before * sin + after * cos - across) / (sin * cos);
    }
}
