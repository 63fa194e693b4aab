package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import lapyard.answers.GardenDesk;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Requests that a seed makes up, at the real program: whatever comes in, it answers below 500 or hangs up on what is no
 * HTTP, shows nothing of its insides, and lives. {@code -Dlapyard.fuzz=100000} for a long run.
 */
class FuzzTest {
    private static final int REQUESTS = Integer.getInteger("lapyard.fuzz", 2000);
    private static final int THREADS = 4;
    private static final int PATIENCE_MS = 30_000;
    /** Whatever takes longer is sent once more: what hangs hangs again, a busy machine does not. */
    private static final int HANGS_MS = 2000;
    private static final int WARMING = 200;
    /** What kept outputs and ready answers may hold together, and a little. */
    private static final long MOST_GROWN_BYTES = 48L << 20;

    @TempDir
    private Path folder;

    @Test
    void nothingThatComesInBringsTheServerDown() throws Exception {
        GardenStore store = GardenStore.open(folder);
        store.create(new NewGarden("g1", "Yard", FuzzedRequest.GARDEN));
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        try (Server server = Server.start(new Binding("127.0.0.1", 0, Keys.NONE, Optional.empty(), Set.of()), () -> store, new GardenDesk(), FuzzTest.class.getClassLoader(), AccessLog.NONE)) {
            int port = server.address().getPort();
            run(port, 699, WARMING);
            long level = inUse();
            List<Future<List<String>>> runs = new ArrayList<>();
            for (int thread = 0; thread < THREADS; thread++) {
                long seed = 700 + thread;
                runs.add(threads.submit(() -> run(port, seed, REQUESTS / THREADS)));
            }
            List<String> wrong = new ArrayList<>();
            for (Future<List<String>> run : runs) wrong.addAll(run.get());
            assertEquals(List.of(), wrong.subList(0, Math.min(5, wrong.size())), wrong.size() + " of " + REQUESTS);
            long grown = inUse() - level;
            assertTrue(grown < MOST_GROWN_BYTES, grown / (1 << 20) + " MB more in use than after " + WARMING + " requests");
            String answer = new String(
                    sent(port, "GET /api/gardens/g1 HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n".getBytes(StandardCharsets.US_ASCII)),
                    StandardCharsets.ISO_8859_1);
            assertTrue(answer.startsWith("HTTP/1.1 200 ") || answer.startsWith("HTTP/1.1 410 "), answer);
        } finally {
            threads.shutdownNow();
            store.close();
        }
    }

    /** Bytes of the heap that are held. */
    private static long inUse() throws InterruptedException {
        for (int time = 0; time < 3; time++) {
            System.gc();
            Thread.sleep(100);
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static List<String> run(int port, long seed, int requests) throws IOException {
        Random random = new Random(seed);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < requests; i++) {
            byte[] request = FuzzedRequest.next(random);
            String complaint = complaint(port, request);
            if (!complaint.isEmpty())
                wrong.add("seed " + seed + ", request " + i + ": " + complaint + "\n"
                        + new String(Arrays.copyOf(request, Math.min(request.length, 600)), StandardCharsets.ISO_8859_1));
        }
        return wrong;
    }

    /** Empty where all is as it should be. */
    private static String complaint(int port, byte[] request) throws IOException {
        String answer;
        try {
            long from = System.nanoTime();
            byte[] bytes = sent(port, request);
            if (took(from) > HANGS_MS) {
                from = System.nanoTime();
                bytes = sent(port, request);
                if (took(from) > HANGS_MS) return "took " + took(from) + " ms, twice over " + HANGS_MS;
            }
            answer = new String(bytes, StandardCharsets.ISO_8859_1);
        } catch (SocketTimeoutException hangs) {
            return "no answer in " + PATIENCE_MS + " ms";
        }
        if (answer.isEmpty()) return "";
        // 505 is the right answer to a version of HTTP that there is not (RFC 9110, section 15.6.6)
        if (!answer.matches("(?s)HTTP/1\\.1 ([1-4][0-9][0-9]|505) .*")) return answer.lines().findFirst().orElse("");
        int body = answer.indexOf("\r\n\r\n");
        String shown = body < 0 ? "" : answer.substring(body);
        for (String inside : List.of("Exception", "\tat ", "java.lang", "jackson", "jersey", "grizzly", "org.sqlite", "SQLITE_"))
            if (shown.contains(inside)) return inside + " in the answer";
        return "";
    }

    private static long took(long fromNanos) {
        return (System.nanoTime() - fromNanos) / 1_000_000;
    }

    private static byte[] sent(int port, byte[] request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(PATIENCE_MS);
            try {
                socket.getOutputStream().write(request);
                socket.getOutputStream().flush();
                socket.shutdownOutput();
            } catch (IOException hungUp) {
                return new byte[0]; // it said no before it had heard all
            }
            InputStream in = socket.getInputStream();
            try {
                return in.readAllBytes();
            } catch (SocketTimeoutException hangs) {
                throw hangs;
            } catch (IOException reset) {
                return new byte[0];
            }
        }
    }
}
