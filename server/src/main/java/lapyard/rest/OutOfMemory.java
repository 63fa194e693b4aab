package lapyard.rest;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.IntConsumer;

/**
 * Ends the process where the heap is used up: threads of the libraries may be dead by then, and a server that is half
 * there answers 200 at /health for ever. Whoever runs it starts it again; nothing that was acknowledged is lost.
 */
public final class OutOfMemory {
    /** Exit code by which it is told from other ends. */
    public static final int EXIT = 3;

    private static final byte[] LAST_LINE = ("Lapyard ends: the heap of " + (Runtime.getRuntime().maxMemory() >> 20)
            + " MB is used up. Start it again, with a larger -Xmx where this happens more than once.\n").getBytes(StandardCharsets.UTF_8);
    private static final FileOutputStream ERROR = new FileOutputStream(FileDescriptor.err);

    /** Takes the exit code. */
    static volatile IntConsumer ending = code -> {
        try {
            ERROR.write(LAST_LINE);
        } catch (IOException nobodyReads) {
            // the exit code says it too
        }
        Runtime.getRuntime().halt(code);
    };

    private OutOfMemory() {}

    /** Every thread that ends by an error nobody caught is looked at. */
    public static void watch() {
        Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();
        Thread.setDefaultUncaughtExceptionHandler((thread, thrown) -> {
            check(thrown);
            if (before != null) before.uncaughtException(thread, thrown);
            else System.getLogger("lapyard").log(System.Logger.Level.ERROR, "thread " + thread.getName() + " ended", thrown);
        });
    }

    /** Ends the process where that is what was thrown, or its cause. Makes no object. */
    static void check(Throwable thrown) {
        for (Throwable each = thrown; each != null; each = each.getCause())
            if (each instanceof OutOfMemoryError) ending.accept(EXIT);
    }
}
