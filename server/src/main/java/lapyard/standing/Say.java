package lapyard.standing;

/** Numbers as they are spoken. */
final class Say {
    private Say() {}

    /** Spans are told in whole 10 mm, rounded down: nobody sets out finer. */
    static double down(double mm) {
        return 10 * Math.floor(mm / 10 + 1e-9);
    }
}
