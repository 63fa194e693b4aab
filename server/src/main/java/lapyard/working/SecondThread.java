package lapyard.working;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Work on a thread of its own beside that of its caller, on a machine with more than one core in the time of the longer of both. The
 * two share nothing that changes, so that their results do not depend on which of them is faster.
 */
public final class SecondThread<T> implements AutoCloseable {
    private static final long LOOK_MS = 100;

    private final Thread caller = Thread.currentThread();
    private final Worker worker;
    private T result;
    private Throwable failed;

    /** Whoever abandons the caller abandons its work too. */
    private final class Worker extends Thread implements Abandonable {
        private final Supplier<T> work;
        private volatile boolean dropped;

        Worker(Supplier<T> work) {
            super("lapyard-beside");
            this.work = work;
            setDaemon(true);
        }

        @Override
        public void run() {
            try {
                result = work.get();
            } catch (Throwable thrown) { // told to the caller
                failed = thrown;
            }
        }

        @Override
        public boolean isAbandoned() {
            return dropped || caller instanceof Abandonable thread && thread.isAbandoned();
        }
    }

    /** Begins at once. */
    public SecondThread(Supplier<T> work) {
        worker = new Worker(work);
        worker.start();
    }

    /** What is made of each, in their order; whichever of two threads is free takes the next. */
    public static <S, R> List<R> each(List<S> of, Function<S, R> making) {
        AtomicInteger next = new AtomicInteger();
        Supplier<SortedMap<Integer, R>> taking = () -> {
            SortedMap<Integer, R> made = new TreeMap<>();
            for (int i = next.getAndIncrement(); i < of.size(); i = next.getAndIncrement()) {
                Abandonable.check();
                made.put(i, making.apply(of.get(i)));
            }
            return made;
        };
        try (SecondThread<SortedMap<Integer, R>> second = new SecondThread<>(taking)) {
            SortedMap<Integer, R> all = taking.get();
            all.putAll(second.result());
            return List.copyOf(all.values());
        }
    }

    /**
     * Waits for the result. An interrupt of the caller stops the work with what it has found, and the interrupt is kept.
     *
     * @throws RuntimeException what the work threw
     */
    public T result() {
        boolean interrupted = false;
        while (worker.isAlive()) {
            try {
                worker.join(LOOK_MS);
                Abandonable.check();
            } catch (InterruptedException stop) {
                interrupted = true;
                worker.interrupt();
            }
        }
        if (interrupted) Thread.currentThread().interrupt();
        if (failed instanceof RuntimeException unchecked) throw unchecked;
        if (failed instanceof Error error) throw error;
        return result;
    }

    /** Ends work whose result nobody took. */
    @Override
    public void close() {
        if (!worker.isAlive()) return;
        worker.dropped = true;
        worker.interrupt();
    }
}
