package lapyard.standing;

import lapyard.working.Whole;

/** Rounds spans for people. */
final class SpanRounding {
    private SpanRounding() {}

    /** Rounds a span down to a multiple of 10 mm, which is as fine as people set out. */
    static double down(double mm) {
        return 10 * Whole.down(mm / 10);
    }
}
