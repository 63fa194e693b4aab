package lapyard.prints;

import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import lapyard.working.Abandonable;

/**
 * Paints pages into one file on a thread of its own, in the order in which they come, while the next ones are laid out. Few wait
 * at a time, so that no more shapes are held than without it.
 */
final class Painter implements AutoCloseable {
    private static final int MOST_WAITING = 8;
    private static final long LOOK_MS = 200;

    private final PdfWriter writer;
    private final Semaphore room = new Semaphore(MOST_WAITING);
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "lapyard-paint");
        made.setDaemon(true);
        return made;
    });
    private volatile boolean dropped;
    private volatile Throwable failed;

    /** @param writer used by nobody else before {@link #awaitAll} */
    Painter(PdfWriter writer) {
        this.writer = writer;
    }

    /** Takes a page; waits while many are ahead of it. What is painted is there after {@link #awaitAll}. */
    CompletableFuture<PdfWriter.Painted> paint(Page page) throws IOException {
        await(() -> room.tryAcquire(LOOK_MS, TimeUnit.MILLISECONDS), true);
        rethrow();
        return CompletableFuture.supplyAsync(() -> painted(page), thread);
    }

    /** Nothing where that is of no use any more. */
    private PdfWriter.Painted painted(Page page) {
        room.release();
        try {
            return dropped || failed != null ? null : writer.paint(page);
        } catch (Throwable thrown) { // told to whoever lays out
            failed = thrown;
            return null;
        }
    }

    /** Waits until all pages are painted; the writer is the caller's from then on. */
    void awaitAll() throws IOException {
        thread.shutdown();
        await(() -> thread.awaitTermination(LOOK_MS, TimeUnit.MILLISECONDS), true);
        rethrow();
    }

    /** Ends the thread, whether all is painted or not: it paints one page more at most. */
    @Override
    public void close() {
        dropped = true;
        thread.shutdown();
        await(() -> thread.awaitTermination(LOOK_MS, TimeUnit.MILLISECONDS), false);
    }

    private interface Look {
        boolean there() throws InterruptedException;
    }

    /** An interrupt asks a search for what it has by then; a print goes on, unless nobody wants it. */
    private static void await(Look look, boolean wanted) {
        boolean interrupted = false;
        try {
            for (boolean there = false; !there; ) {
                if (wanted) Abandonable.check();
                try {
                    there = look.there();
                } catch (InterruptedException asked) {
                    interrupted = true;
                }
            }
        } finally {
            if (interrupted) Thread.currentThread().interrupt();
        }
    }

    private void rethrow() throws IOException {
        if (failed instanceof IOException writing) throw writing;
        if (failed instanceof RuntimeException drawing) throw drawing;
        if (failed instanceof Error error) throw error;
    }
}
