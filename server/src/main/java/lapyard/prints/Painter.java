package lapyard.prints;

import java.io.IOException;
import java.util.ArrayDeque;
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

    /** A page that is painted or will be. */
    static final class Coming {
        private Page page;
        private PdfWriter.Painted painted;

        private Coming(Page page) {
            this.page = page;
        }

        /** Only after {@link Painter#awaitAll}. */
        PdfWriter.Painted painted() {
            return painted;
        }
    }

    private final PdfWriter writer;
    private final ArrayDeque<Coming> waiting = new ArrayDeque<>();
    private final Thread thread = new Thread(this::work, "lapyard-paint");
    private boolean last;
    private boolean dropped;
    private boolean ended;
    private Throwable failed;

    /** @param writer used by nobody else before {@link #awaitAll} */
    Painter(PdfWriter writer) {
        this.writer = writer;
        thread.setDaemon(true);
        thread.start();
    }

    /** Takes a page; waits while many are ahead of it. */
    synchronized Coming paint(Page page) throws IOException {
        while (waiting.size() >= MOST_WAITING && failed == null) pause();
        rethrow();
        Coming coming = new Coming(page);
        waiting.add(coming);
        notifyAll();
        return coming;
    }

    /** Waits until all pages are painted; the writer is the caller's from then on. */
    synchronized void awaitAll() throws IOException {
        last = true;
        notifyAll();
        while (!ended) pause();
        rethrow();
    }

    /** Ends the thread, whether all is painted or not. */
    @Override
    public void close() {
        synchronized (this) {
            dropped = true;
            notifyAll();
        }
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join(); // one page at most
            } catch (InterruptedException asked) {
                interrupted = true;
            }
        }
        if (interrupted) Thread.currentThread().interrupt();
    }

    private void work() {
        try {
            for (Coming next = next(); next != null; next = next()) {
                next.painted = writer.paint(next.page);
                next.page = null;
            }
        } catch (Throwable thrown) { // told to whoever lays out
            synchronized (this) {
                failed = thrown;
            }
        }
        synchronized (this) {
            ended = true;
            notifyAll();
        }
    }

    private synchronized Coming next() throws InterruptedException {
        while (waiting.isEmpty() && !last && !dropped) wait();
        notifyAll();
        return dropped ? null : waiting.poll();
    }

    /** An interrupt asks a search for what it has by then; a print goes on, unless nobody wants it. */
    private void pause() {
        Abandonable.check();
        boolean interrupted = Thread.interrupted();
        try {
            wait(LOOK_MS);
        } catch (InterruptedException asked) {
            interrupted = true;
        }
        if (interrupted) Thread.currentThread().interrupt();
    }

    private void rethrow() throws IOException {
        if (failed instanceof IOException writing) throw writing;
        if (failed instanceof RuntimeException drawing) throw drawing;
        if (failed instanceof Error error) throw error;
    }
}
