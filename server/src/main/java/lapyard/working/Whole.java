package lapyard.working;

/** Counts out of amounts in binary: what misses a whole number by a rounding error, 1e-9 at most, is that number. */
public final class Whole {
    private static final double NOISE = 1e-9;

    private Whole() {}

    /** As many as are needed. */
    public static double up(double amount) {
        return Math.ceil(amount - NOISE);
    }

    /** As many as there is room for. */
    public static double down(double amount) {
        return Math.floor(amount + NOISE);
    }
}
