package lapyard.standing;

/** Rounds spans for people. */
final class SpanRounding {
    private SpanRounding() {}

    /** Rounds a span down to a multiple of 10 mm, as nobody sets out finer. */
    static double down(double mm) {
        return 10 * Math.floor(mm / 10 + 1e-9);
    }
}
