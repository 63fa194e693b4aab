package lapyard.cutting;

import java.time.Duration;

/** What is left of an {@link Effort}. The same work always costs the same steps; the clock can only end it earlier. */
final class Budget {
    /** Inner-loop turns that make one step; roughly a microsecond of a present-day core. */
    private static final long TURNS_A_STEP = 1000;

    private final long startedNs = System.nanoTime();
    private final long limitNs;
    private final long turns;
    private long spent;

    Budget(Effort effort) {
        turns = Math.multiplyExact(effort.steps(), TURNS_A_STEP);
        limitNs = saturatedNs(effort.limit());
    }

    private static long saturatedNs(Duration limit) {
        return limit.compareTo(Duration.ofDays(365)) > 0 ? Long.MAX_VALUE : limit.toNanos();
    }

    void spend(long innerTurns) {
        spent += innerTurns;
    }

    long spent() {
        return spent;
    }

    boolean over() {
        return spent >= turns || System.nanoTime() - startedNs >= limitNs;
    }

    /** Whether at least this share of the steps, or the whole time, is gone. */
    boolean past(double share) {
        return spent >= share * turns || System.nanoTime() - startedNs >= limitNs;
    }

    /** The share that is spent when as much again, and {@code more} of the whole, has gone on top of what is gone now. */
    double shareWith(double more) {
        return Math.min(1, 2.0 * spent / turns + more);
    }

    double seconds() {
        return (System.nanoTime() - startedNs) / 1e9;
    }
}
