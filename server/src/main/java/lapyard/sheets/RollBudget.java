package lapyard.sheets;

import java.time.Duration;
import lapyard.working.Effort;
import lapyard.working.Progress;

/**
 * Counts down the steps of an {@link Effort}. One step is a thousand elementary operations (joining two shapes, trying one
 * piece at one place), so steps take about the same time whatever part of the search spends them.
 */
final class RollBudget {
    private static final long OPERATIONS_PER_STEP = 1_000;
    /** Steps of one second on an idle core, rounded down: what an effort bounded by the clock alone is planned for. */
    private static final long STEPS_PER_SECOND = 150_000;

    /** A share may take a little more of the clock than of the steps, so that the steps decide. */
    private static final double CLOCK_SLACK = 1.3;

    private static final Duration MOST_TIME = Duration.ofDays(1);
    private static final long UNTIMED = Long.MAX_VALUE / 4;

    private final RollBudget whole;
    private final Progress progress;
    private final long startNanos;
    private final long limitNanos;
    private long operations;
    private boolean timeIsUp;

    RollBudget(Effort effort, Progress progress) {
        this.whole = null;
        this.progress = progress;
        this.startNanos = System.nanoTime();
        boolean timed = effort.limit().compareTo(MOST_TIME) <= 0;
        // far above any share of it that a clock could reach
        this.limitNanos = timed ? effort.limit().toNanos() : UNTIMED;
        long worthOfTime = (long) ((timed ? effort.limit() : MOST_TIME).toNanos() / 1e9 * STEPS_PER_SECOND);
        this.operations = Math.min(effort.steps(), worthOfTime) * OPERATIONS_PER_STEP;
    }

    private RollBudget(RollBudget whole, boolean spentThere, double fraction) {
        this.whole = spentThere ? whole : null;
        this.progress = whole.progress;
        this.startNanos = whole.startNanos;
        long elapsed = System.nanoTime() - startNanos;
        this.limitNanos = elapsed + (long) ((whole.limitNanos - elapsed) * Math.min(1, CLOCK_SLACK * fraction));
        this.operations = (long) (whole.operations * fraction);
        this.timeIsUp = whole.timeIsUp;
    }

    /** A share of what is left here; what it spends is spent here too. */
    RollBudget share(double fraction) {
        return new RollBudget(this, true, fraction);
    }

    /** As much as a share of what is left here, to be spent besides it; the clock is the same. */
    RollBudget besides(double fraction) {
        return new RollBudget(this, false, fraction);
    }

    /** Takes operations off; call it at least every few milliseconds, as it also reads the clock. */
    void spend(long count) {
        operations -= count;
        // told to stop is as good as out of time: what was found by then stands
        if (System.nanoTime() - startNanos > limitNanos || Thread.currentThread().isInterrupted()) timeIsUp = true;
        if (whole != null) whole.spend(count);
    }

    boolean over() {
        return timeIsUp || operations <= 0;
    }

    long left() {
        return timeIsUp ? 0 : Math.max(0, operations);
    }

    /** Whether the clock may end it before its steps do. */
    boolean timed() {
        return limitNanos < UNTIMED;
    }

    Progress progress() {
        return progress;
    }

    double seconds() {
        return (System.nanoTime() - startNanos) / 1e9;
    }
}
