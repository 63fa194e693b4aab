package lapyard.rest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;

/**
 * A line a request: time, request id, address, who, method, path, status, milliseconds. The path without what stands
 * behind its question mark; no header, no body, no token.
 */
public final class AccessLog implements AutoCloseable {
    /** Writes nothing. */
    public static final AccessLog NONE = new AccessLog(null);

    private static final System.Logger LOG = System.getLogger("lapyard.rest");

    private final BufferedWriter writer;
    private boolean failed;

    private AccessLog(BufferedWriter writer) {
        this.writer = writer;
    }

    /** @throws IOException if the file cannot be written behind its end */
    public static AccessLog to(Path file) throws IOException {
        return new AccessLog(Files.newBufferedWriter(
                file, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND));
    }

    synchronized void line(String request, String address, String who, String method, String path, int status, long ms) {
        if (writer == null) return;
        try {
            writer.write(Instant.now() + " " + request + " " + address + " " + who + " " + printable(method) + " "
                    + printable(path) + " " + status + " " + ms + "\n");
            writer.flush();
            failed = false;
        } catch (IOException full) {
            // said once, not with every request; requests are answered all the same
            if (!failed) LOG.log(System.Logger.Level.WARNING, "the access log cannot be written: " + full.getMessage());
            failed = true;
        }
    }

    /** One word of ASCII, so that nobody writes a line of his own. */
    private static String printable(String text) {
        String safe = text.replaceAll("[^\\x21-\\x7e]", "?");
        return safe.length() <= 500 ? safe : safe.substring(0, 500) + "...";
    }

    @Override
    public synchronized void close() throws IOException {
        if (writer != null) writer.close();
    }
}
