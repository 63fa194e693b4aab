package lapyard.cutting;

import java.time.Duration;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** Counts down the steps of an {@link Effort}. The same search always takes the same steps; the clock can only end it earlier. */
final class CuttingBudget {
    /** Inner-loop turns that make one step; roughly a microsecond of a present-day core. */
    private static final long TURNS_A_STEP = 1000;

    private final long startedNs = System.nanoTime();
    private final long limitNs;
    private final long turns;
    private final Progress progress;
    private long spent;

    CuttingBudget(Effort effort) {
        this(effort, Progress.UNHEARD);
    }

    CuttingBudget(Effort effort, Progress progress) {
        this.progress = progress;
        turns = turns(effort.steps());
        limitNs = effort.limit().compareTo(Duration.ofDays(365)) > 0 ? Long.MAX_VALUE : effort.limit().toNanos();
    }

    void spend(long innerTurns) {
        spent += innerTurns;
    }

    /** All of it, in inner-loop turns. */
    long turns() {
        return turns;
    }

    long spent() {
        return spent;
    }

    long steps() {
        return spent / TURNS_A_STEP;
    }

    /** Also where the thread is told to stop: what was found by then stands. */
    boolean over() {
        return spent >= turns || System.nanoTime() - startedNs >= limitNs || Thread.currentThread().isInterrupted();
    }

    /** Inner-loop turns in so many steps. */
    static long turns(long steps) {
        return steps > Long.MAX_VALUE / TURNS_A_STEP ? Long.MAX_VALUE : steps * TURNS_A_STEP;
    }

    Progress progress() {
        return progress;
    }

    double seconds() {
        return (System.nanoTime() - startedNs) / 1e9;
    }
}
