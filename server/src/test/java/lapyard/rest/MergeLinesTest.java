package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import lapyard.rest.MergeLines.Asking;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Whoever comes while one is served is served with all others who came, or alone where that does not suit. */
class MergeLinesTest {
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final MergeLines<Integer, String> lines = new MergeLines<>();
    private final CountDownLatch firstIsIn = new CountDownLatch(1);
    private final CountDownLatch allWait = new CountDownLatch(1);
    private final List<List<Integer>> batches = Collections.synchronizedList(new ArrayList<>());

    @AfterEach
    void ends() {
        threads.shutdownNow();
    }

    /** The first waits inside until the others are in line behind it. */
    private List<CompletableFuture<String>> ask(int count, Consumer<List<Asking<Integer, String>>> serving) throws InterruptedException {
        List<CompletableFuture<String>> asked = new ArrayList<>();
        Consumer<List<Asking<Integer, String>>> together = batch -> {
            batches.add(batch.stream().map(Asking::what).toList());
            if (batch.get(0).what() == 0) {
                firstIsIn.countDown();
                try {
                    allWait.await();
                } catch (InterruptedException stopped) {
                    throw new IllegalStateException(stopped);
                }
            }
            serving.accept(batch);
        };
        for (int i = 0; i < count; i++) {
            int number = i;
            CompletableFuture<Thread> thread = new CompletableFuture<>();
            asked.add(CompletableFuture.supplyAsync(() -> {
                thread.complete(Thread.currentThread());
                return lines.serve("g", number, together);
            }, threads));
            if (i == 0) firstIsIn.await();
            else while (thread.join().getState() != Thread.State.WAITING) Thread.onSpinWait();
        }
        allWait.countDown();
        return asked;
    }

    @Test
    void elevenAreTwoBatches() throws Exception {
        List<CompletableFuture<String>> asked = ask(11, batch -> batch.forEach(asking -> asking.answer("done " + asking.what())));
        for (int i = 0; i < 11; i++) assertEquals("done " + i, asked.get(i).get());
        assertEquals(List.of(List.of(0), List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10)), batches);
    }

    /** Of 1 to 4 the third cannot be served with others: it is passed over, and refused by itself. */
    @Test
    void whoIsPassedOverIsServedAlone() throws Exception {
        List<CompletableFuture<String>> asked = ask(5, batch -> batch.forEach(asking -> {
            if (asking.what() != 3) asking.answer("done");
            else if (batch.size() == 1) asking.refuse(new IllegalArgumentException("three"));
        }));
        for (int i : new int[] {0, 1, 2, 4}) assertEquals("done", asked.get(i).get());
        assertEquals("three", assertThrows(CompletionException.class, asked.get(3)::join).getCause().getMessage());
        assertEquals(List.of(List.of(0), List.of(1, 2, 3, 4), List.of(3)), batches);
    }

    /** What fails for all is tried for each, so that only who is to blame is refused; the line goes on. */
    @Test
    void aBatchThatFailsIsTakenApart() throws Exception {
        List<CompletableFuture<String>> asked = ask(4, batch -> {
            if (batch.stream().anyMatch(asking -> asking.what() == 2)) throw new IllegalArgumentException("two");
            batch.forEach(asking -> asking.answer("done"));
        });
        for (int i : new int[] {0, 1, 3}) assertEquals("done", asked.get(i).get());
        assertEquals("two", assertThrows(CompletionException.class, asked.get(2)::join).getCause().getMessage());
        assertEquals("done", lines.serve("g", 7, batch -> batch.forEach(asking -> asking.answer("done"))));
    }
}
