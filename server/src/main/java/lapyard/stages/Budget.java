package lapyard.stages;

import java.time.Duration;

/** What is left of an {@link Effort}. The same work always costs the same turns; the clock can only end it earlier. */
final class Budget {
    private static final long TURNS_A_STEP = 1000;

    private final long startedNs = System.nanoTime();
    private final long limitNs;
    private final long turns;
    private final long patience;
    private long spent;
    private long gained;

    Budget(Effort effort) {
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

    boolean over() {
        return spent >= turns || spent - gained >= patience || System.nanoTime() - startedNs >= limitNs;
    }

    /** Whether more than this share of steps or time is gone. */
    boolean past(double share) {
        return spent >= turns * share || System.nanoTime() - startedNs >= limitNs * share;
    }

    double seconds() {
        return (System.nanoTime() - startedNs) / 1e9;
    }
}
