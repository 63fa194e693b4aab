package lapyard.sheets;

import java.time.Duration;

/**
 * What is left of an {@link Effort}. One step is a thousand elementary operations (joining two shapes, trying one
 * piece at one place), so steps take about the same time whatever part of the search spends them.
 */
final class Work {
    private static final long OPERATIONS_PER_STEP = 1_000;

    private final long startNanos = System.nanoTime();
    private final long limitNanos;
    private long operations;
    private boolean timeIsUp;

    Work(Effort effort) {
        this.operations = Math.multiplyExact(Math.min(effort.steps(), Long.MAX_VALUE / 2_000), OPERATIONS_PER_STEP);
        this.limitNanos = effort.limit().compareTo(Duration.ofDays(1)) > 0
                ? Duration.ofDays(1).toNanos()
                : effort.limit().toNanos();
    }

    /** Takes operations off; call it at least once a millisecond or so, as it also reads the clock. */
    void spend(long count) {
        operations -= count;
        if (System.nanoTime() - startNanos > limitNanos) timeIsUp = true;
    }

    boolean over() {
        return timeIsUp || operations <= 0;
    }

    long left() {
        return timeIsUp ? 0 : Math.max(0, operations);
    }

    double seconds() {
        return (System.nanoTime() - startNanos) / 1e9;
    }
}
