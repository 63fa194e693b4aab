package lapyard.answers;

import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import lapyard.answers.TurnQueue.Turn;

/** One thing that is worked out for all who wait for it, and stopped once nobody does. */
final class Task<T> {
    private final WorkKind kind;
    private final Runnable givenUp;
    private final CompletableFuture<T> result = new CompletableFuture<>();
    private Optional<Turn> turn = Optional.empty();
    private int waiters;
    private boolean abandoned;

    /** @param givenUp told once where nobody waits any more before there is a result */
    Task(WorkKind kind, Runnable givenUp) {
        this.kind = kind;
        this.givenUp = givenUp;
    }

    /** Asks for its turn. Is called once, by its first waiter. */
    synchronized void begin(TurnQueue queue, String garden, Optional<String> document, Callable<T> work) {
        turn = Optional.of(queue.ask(kind, Caller.now().name(), garden, document, () -> run(work)));
    }

    private void run(Callable<T> work) {
        try {
            result.complete(work.call());
        } catch (Throwable failed) { // whoever waits hears of it, also of an error
            result.completeExceptionally(failed);
        }
    }

    /** Runs this once there is a result, at once where there is one. */
    void whenDone(Runnable then) {
        result.whenComplete((made, failed) -> then.run());
    }

    synchronized Optional<Turn> turn() {
        return turn;
    }

    /** False where it is given up already: then it must be asked for anew. */
    synchronized boolean join() {
        if (abandoned) return false;
        waiters++;
        return true;
    }

    synchronized int waiters() {
        return waiters;
    }

    synchronized boolean isGivenUp() {
        return abandoned;
    }

    /** For who joined and does not {@link #await}: no longer waits. */
    void leave() {
        synchronized (this) {
            if (--waiters > 0 || result.isDone()) return;
            abandoned = true;
            turn.ifPresent(Turn::abandon);
        }
        givenUp.run();
    }

    /**
     * Waits as one who has joined, and then waits no more.
     *
     * @throws Busy if no turn comes in time, or the turn takes too long
     * @throws CallerLeft if the caller leaves
     */
    T await(TurnQueue queue) {
        Caller caller = Caller.now();
        CompletableFuture<T> mine = result.copy();
        Runnable left = () -> mine.completeExceptionally(new CallerLeft());
        caller.waitsFor(left);
        try {
            return within(mine, queue);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException unchecked) throw unchecked;
            if (failed.getCause() instanceof Error error) throw error;
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Busy("The server stops. Nothing was changed. Ask again.", 5);
        } finally {
            caller.waitsNoMoreFor(left);
            leave();
        }
    }

    private T within(CompletableFuture<T> mine, TurnQueue queue) throws ExecutionException, InterruptedException {
        long asked = System.nanoTime();
        while (true) {
            long started = turn().map(Turn::startedNanos).orElse(0L);
            long seconds = started == 0 ? kind.patienceSeconds : kind.limitSeconds;
            long leftNanos = TimeUnit.SECONDS.toNanos(seconds) - (System.nanoTime() - (started == 0 ? asked : started));
            try {
                return mine.get(Math.max(0, leftNanos), TimeUnit.NANOSECONDS);
            } catch (TimeoutException over) {
                boolean began = started == 0 && turn().map(Turn::startedNanos).orElse(0L) != 0;
                if (began) continue;
                throw queue.busy(started == 0
                        ? "No turn came within " + seconds + " s: "
                        : "It was given up after " + seconds + " s of work: ");
            }
        }
    }
}
