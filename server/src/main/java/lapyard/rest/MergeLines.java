package lapyard.rest;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;

/**
 * Those who change one garden at the same time are served together. The first to come serves itself; whoever comes
 * meanwhile waits, and the first of those then serves all of them at once. Whom that does not suit is served alone, each
 * by itself, before anybody who came later.
 *
 * @param <A> what is asked
 * @param <R> what comes of it
 */
final class MergeLines<A, R> {
    private final Map<String, Deque<Asking<A, R>>> lines = new HashMap<>();

    /** One who asks. */
    static final class Asking<A, R> {
        private final A what;
        private final CompletableFuture<R> result = new CompletableFuture<>();
        /** Told where it is the one to serve, or where there is a result already. */
        private final CompletableFuture<Void> next = new CompletableFuture<>();
        private boolean alone;

        private Asking(A what) {
            this.what = what;
        }

        A what() {
            return what;
        }

        void answer(R with) {
            result.complete(with);
        }

        void refuse(RuntimeException with) {
            result.completeExceptionally(with);
        }

        boolean isServed() {
            return result.isDone();
        }
    }

    /**
     * Waits until it is served.
     *
     * @param together answers or refuses those of a batch, in the order in which they came, one of them at least; whom it
     *     passes over, or all not yet served where it throws, are served alone. What it throws for one alone is thrown here
     */
    R serve(String garden, A what, Consumer<List<Asking<A, R>>> together) {
        Asking<A, R> mine = new Asking<>(what);
        synchronized (lines) {
            Deque<Asking<A, R>> line = lines.get(garden);
            if (line == null) {
                lines.put(garden, new ArrayDeque<>());
                mine.next.complete(null);
            } else {
                line.addLast(mine);
            }
        }
        mine.next.join();
        if (!mine.isServed()) {
            try {
                serveWith(garden, mine, together);
            } finally {
                handOn(garden);
            }
        }
        try {
            return mine.result.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException refused) throw refused;
            throw failed;
        }
    }

    private void serveWith(String garden, Asking<A, R> mine, Consumer<List<Asking<A, R>>> together) {
        List<Asking<A, R>> batch = batch(garden, mine);
        if (batch.size() > 1) {
            try {
                together.accept(batch);
            } catch (RuntimeException notAllOfThem) {
                // each hears by itself what there is to say
            } finally {
                putBack(garden, batch);
            }
        }
        if (mine.isServed()) return;
        try {
            together.accept(List.of(mine));
        } catch (RuntimeException | Error failed) {
            mine.result.completeExceptionally(failed);
        }
        if (!mine.isServed()) mine.refuse(new IllegalStateException("one alone was passed over"));
    }

    private List<Asking<A, R>> batch(String garden, Asking<A, R> mine) {
        List<Asking<A, R>> batch = new ArrayList<>(List.of(mine));
        if (mine.alone) return batch;
        synchronized (lines) {
            Deque<Asking<A, R>> line = lines.get(garden);
            while (!line.isEmpty() && !line.peekFirst().alone) batch.add(line.removeFirst());
        }
        return batch;
    }

    /** The served go their way; the others are first in line again. */
    private void putBack(String garden, List<Asking<A, R>> batch) {
        synchronized (lines) {
            Deque<Asking<A, R>> line = lines.get(garden);
            for (int i = batch.size() - 1; i >= 1; i--) {
                Asking<A, R> one = batch.get(i);
                if (one.isServed()) {
                    one.next.complete(null);
                } else {
                    one.alone = true;
                    line.addFirst(one);
                }
            }
        }
    }

    private void handOn(String garden) {
        synchronized (lines) {
            Deque<Asking<A, R>> line = lines.get(garden);
            if (line.isEmpty()) lines.remove(garden);
            else line.removeFirst().next.complete(null);
        }
    }
}
