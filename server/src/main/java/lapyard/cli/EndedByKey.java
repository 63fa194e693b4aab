package lapyard.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** While it is open, Ctrl-C ends what this thread looks for, and the program ends once what was found by then is told. */
final class EndedByKey implements AutoCloseable {
    private static final long LONGEST_SECONDS = 30;

    private final Thread looking = Thread.currentThread();
    private final CountDownLatch told = new CountDownLatch(1);
    private final Thread ending = new Thread(this::end, "ended by key");

    EndedByKey() {
        Runtime.getRuntime().addShutdownHook(ending);
    }

    private void end() {
        looking.interrupt();
        try {
            told.await(LONGEST_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException nobodyWaits) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        told.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(ending);
        } catch (IllegalStateException endingAlready) {
            // the hook runs, and ends now that everything is told
        }
    }
}
