package lapyard.rest;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Heavy work takes turns: a few at once, the others in the order in which they came. Who would wait too long, or
 * stand in too long a queue, is told so at once.
 */
final class Turns {
    private final Semaphore turns;
    private final int mostWaiting;
    private final long patienceMs;
    private final AtomicInteger waiting = new AtomicInteger();
    private final int most;

    Turns(int most, int mostWaiting, long patienceMs) {
        this.most = most;
        this.turns = new Semaphore(most, true);
        this.mostWaiting = mostWaiting;
        this.patienceMs = patienceMs;
    }

    int running() {
        return most - turns.availablePermits();
    }

    int waiting() {
        return waiting.get();
    }

    /**
     * @throws Refusal 503 with Retry-After where the queue is full or no turn comes in time
     * @throws InterruptedException if this thread is told to stop while it waits
     */
    <T> T take(Supplier<T> work) throws InterruptedException {
        if (waiting.incrementAndGet() > mostWaiting && turns.availablePermits() == 0) {
            waiting.decrementAndGet();
            throw busy();
        }
        boolean mine;
        try {
            mine = turns.tryAcquire(patienceMs, TimeUnit.MILLISECONDS);
        } finally {
            waiting.decrementAndGet();
        }
        if (!mine) throw busy();
        try {
            return work.get();
        } finally {
            turns.release();
        }
    }

    private Refusal busy() {
        return new Refusal(Problem.later(
                503, "this server works out " + most + " plans already and others wait: nothing was changed, ask again", 5));
    }
}
