package lapyard.stages;

import java.math.BigDecimal;
import java.time.Duration;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** Counts down the turns of an {@link Effort}. The same search always takes the same turns; the clock can only end it earlier. */
final class StagingBudget {
    private static final long TURNS_A_STEP = 1000;

    private final long startedNs = System.nanoTime();
    private final long limitNs;
    private final long turns;
    private final long patience;
    private final Progress progress;
    private long spent;
    private long gained;

    StagingBudget(Effort effort, Progress progress) {
        this.progress = progress;
        turns = turns(effort.steps());
        patience = turns(effort.patience());
        limitNs = effort.limit().compareTo(Duration.ofDays(365)) > 0 ? Long.MAX_VALUE : effort.limit().toNanos();
    }

    private static long turns(long steps) {
        return steps > Long.MAX_VALUE / TURNS_A_STEP ? Long.MAX_VALUE : steps * TURNS_A_STEP;
    }

    void spend(long innerTurns) {
        spent += innerTurns;
    }

    /** A better schedule was found: patience begins anew. */
    void renew() {
        gained = spent;
    }

    /** @param end clock unit at which the best schedule ends; none ends before {@code bound} */
    void tell(int end, int bound) {
        progress.reached(BigDecimal.valueOf(end), BigDecimal.valueOf(bound));
    }

    boolean over() {
        return spent >= turns || spent - gained >= patience || System.nanoTime() - startedNs >= limitNs
                || Thread.currentThread().isInterrupted();
    }

    /** Whether more than this share of steps or time is gone. */
    boolean past(double share) {
        return spent >= turns * share || System.nanoTime() - startedNs >= limitNs * share;
    }

    double seconds() {
        return (System.nanoTime() - startedNs) / 1e9;
    }
}
