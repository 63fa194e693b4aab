package lapyard.working;

import java.math.BigDecimal;
import java.time.Duration;

/** Counts down the steps of an {@link Effort}. The same search always takes the same steps; the clock can only end it earlier. */
public final class SearchBudget {
    /** Inner-loop turns that make one step; roughly a microsecond of a present-day core. */
    private static final long TURNS_A_STEP = 1000;

    private final long startedNs = System.nanoTime();
    private final long limitNs;
    private final long turns;
    private final long patience;
    private final Progress progress;
    private long spent;
    private long gained;

    private SearchBudget(Effort effort, long patience, Progress progress) {
        this.progress = progress;
        this.patience = turns(patience);
        turns = turns(effort.steps());
        limitNs = effort.limit().compareTo(Duration.ofDays(365)) > 0 ? Long.MAX_VALUE : effort.limit().toNanos();
    }

    /** Over too once nothing better was found, see {@link #renew}, for as long as the effort's patience. */
    public static SearchBudget patient(Effort effort, Progress progress) {
        return new SearchBudget(effort, effort.patience(), progress);
    }

    /** All steps of the effort, whatever its patience. */
    public static SearchBudget whole(Effort effort, Progress progress) {
        return new SearchBudget(effort, Long.MAX_VALUE, progress);
    }

    public void spend(long innerTurns) {
        spent += innerTurns;
    }

    /** Something better was found: patience begins anew. */
    public void renew() {
        gained = spent;
    }

    /** All of it, in inner-loop turns. */
    public long turns() {
        return turns;
    }

    public long spent() {
        return spent;
    }

    public long steps() {
        return spent / TURNS_A_STEP;
    }

    /** Also where the thread is told to stop: what was found by then stands. */
    public boolean over() {
        return spent >= turns || spent - gained >= patience || System.nanoTime() - startedNs >= limitNs || Thread.currentThread().isInterrupted();
    }

    /** Whether more than this share of steps or time is gone. */
    public boolean past(double share) {
        return spent >= turns * share || System.nanoTime() - startedNs >= limitNs * share;
    }

    /** Inner-loop turns in so many steps. */
    public static long turns(long steps) {
        return steps > Long.MAX_VALUE / TURNS_A_STEP ? Long.MAX_VALUE : steps * TURNS_A_STEP;
    }

    public Progress progress() {
        return progress;
    }

    /** @param best in whole units; none is below {@code bound} */
    public void tell(long best, long bound) {
        progress.reached(BigDecimal.valueOf(best), BigDecimal.valueOf(bound));
    }

    public double seconds() {
        return (System.nanoTime() - startedNs) / 1e9;
    }
}
