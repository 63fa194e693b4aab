package lapyard.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import lapyard.answers.GardenDesk;
import lapyard.rest.AccessLog;
import lapyard.rest.Binding;
import lapyard.rest.Keys;
import lapyard.rest.Server;
import lapyard.store.Change;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import org.glassfish.grizzly.http.server.HttpHandler;
import org.glassfish.grizzly.http.server.HttpServer;
import org.glassfish.grizzly.http.server.NetworkListener;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/**
 * Cached reads beside a bare handler of the same HTTP library in the same run, saves with full synchronisation, and
 * 200 listeners. Loopback, keep-alive, client and server in one process. Argument: seconds a part (3).
 */
public final class ServerBench {
    private static final int CLIENTS = 8;

    /** The library closes a line after 256 requests. */
    private static final int MOST_A_LINE = 250;

    private static final int LISTENERS = 200;
    private static final PrintStream OUT = System.out;

    private ServerBench() {}

    public static void main(String[] args) throws Exception {
        double seconds = args.length == 0 ? 3 : Double.parseDouble(args[0]);
        String document = Files.readString(Path.of("../samples/village-hall.json"));
        Path folder = Files.createTempDirectory("lapyard-bench");
        try (GardenStore store = GardenStore.open(folder);
                Server server = Server.start(new Binding("127.0.0.1", 0, Keys.NONE, Optional.empty(), Set.of()), () -> store, new GardenDesk(), ServerBench.class.getClassLoader(), AccessLog.NONE)) {
            store.create(new NewGarden("hall", "Hall", document));
            int port = server.address().getPort();
            byte[] sheet = body(port, "/api/gardens/hall/job-sheet");
            byte[] plan = body(port, "/api/gardens/hall/plan.svg");
            for (Object[] each : new Object[][] {{"", document.getBytes(StandardCharsets.UTF_8)}, {"job-sheet", sheet}, {"plan.svg", plan}}) {
                byte[] bytes = (byte[]) each[1];
                try (Bare bare = new Bare(bytes)) {
                    for (int round = 0; round < 3; round++) { // the first one warms
                        double plain = rate(bare.port(), "/", seconds);
                        double ours = rate(port, "/api/gardens/hall" + (each[0].equals("") ? "" : "/" + each[0]), seconds);
                        OUT.printf("%s of %d bytes: %.0f/s, bare handler %.0f/s, share %.2f%n", each[0], bytes.length, ours, plain, ours / plain);
                    }
                }
            }
            saves(store, document, seconds);
            listeners(port, store);
        }
    }

    private static void saves(GardenStore store, String document, double seconds) {
        long revision = 1;
        long from = System.nanoTime();
        while (System.nanoTime() - from < seconds * 1e9)
            revision = ((Change.Made) store.save("hall", revision, "Hall", document + " ".repeat((int) (revision % 2) + 1))).stored().revision();
        OUT.printf("saves of %d bytes with full sync, one after the other: %.0f/s%n", document.length(), (revision - 1) / ((System.nanoTime() - from) / 1e9));
    }

    private static void listeners(int port, GardenStore store) throws Exception {
        List<Socket> ears = new ArrayList<>();
        List<Thread> threads = new ArrayList<>();
        long[] heardNanos = new long[LISTENERS];
        long start = store.find("hall").orElseThrow().revision();
        for (int i = 0; i < LISTENERS; i++) {
            Socket socket = new Socket("127.0.0.1", port);
            ears.add(socket);
            socket.getOutputStream().write("GET /api/gardens/hall/events HTTP/1.1\r\nHost: localhost\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            BufferedReader lines = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            while (!lines.readLine().equals("id: " + start)) continue;
            int number = i;
            Thread thread = new Thread(() -> {
                try {
                    while (!lines.readLine().equals("id: " + (start + 1))) continue;
                    heardNanos[number] = System.nanoTime();
                } catch (IOException closed) {
                    return;
                }
            });
            thread.start();
            threads.add(thread);
        }
        long from = System.nanoTime();
        store.save("hall", start, "Hall", "{\"name\":\"new\"}");
        for (Thread thread : threads) thread.join();
        Arrays.sort(heardNanos);
        OUT.printf("%d listeners hear of a save: half after %.1f ms, all after %.1f ms%n", LISTENERS,
                (heardNanos[LISTENERS / 2] - from) / 1e6, (heardNanos[LISTENERS - 1] - from) / 1e6);
        for (Socket ear : ears) ear.close();
    }

    private static byte[] body(int port, String path) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.getOutputStream().write(("GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            byte[] all = socket.getInputStream().readAllBytes();
            int end = new String(all, StandardCharsets.ISO_8859_1).indexOf("\r\n\r\n") + 4;
            return Arrays.copyOfRange(all, end, all.length);
        }
    }

    private static double rate(int port, String path, double seconds) throws Exception {
        AtomicLong answered = new AtomicLong();
        AtomicReference<Throwable> failed = new AtomicReference<>();
        long until = System.nanoTime() + (long) (seconds * 1e9);
        List<Thread> clients = new ArrayList<>();
        byte[] request = ("GET " + path + " HTTP/1.1\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
        for (int i = 0; i < CLIENTS; i++) {
            Thread client = new Thread(() -> {
                byte[] buffer = new byte[1 << 16];
                while (System.nanoTime() < until) {
                    try (Socket socket = new Socket("127.0.0.1", port)) {
                        socket.setTcpNoDelay(true);
                        InputStream in = socket.getInputStream();
                        OutputStream out = socket.getOutputStream();
                        for (int asked = 0; asked < MOST_A_LINE && System.nanoTime() < until; asked++) {
                            out.write(request);
                            take(in, buffer);
                            answered.incrementAndGet();
                        }
                    } catch (IOException broken) {
                        throw new IllegalStateException(broken);
                    }
                }
            });
            client.setUncaughtExceptionHandler((thread, broken) -> failed.set(broken));
            client.start();
            clients.add(client);
        }
        for (Thread client : clients) client.join();
        if (failed.get() != null) throw new IllegalStateException(failed.get());
        return answered.get() / seconds;
    }

    /** Reads one answer that says its length. */
    private static void take(InputStream in, byte[] buffer) throws IOException {
        int have = 0;
        int end = -1;
        while (end < 0) {
            int read = in.read(buffer, have, buffer.length - have);
            if (read < 0) throw new IOException("closed");
            have += read;
            end = new String(buffer, 0, have, StandardCharsets.ISO_8859_1).indexOf("\r\n\r\n");
        }
        String head = new String(buffer, 0, end, StandardCharsets.ISO_8859_1).toLowerCase(java.util.Locale.ROOT);
        if (head.contains("transfer-encoding: chunked")) {
            takeChunks(in, buffer, have);
            return;
        }
        int length = Integer.parseInt(head.replaceAll("(?s).*content-length: *([0-9]+).*", "$1"));
        for (long left = length - (have - end - 4); left > 0; ) {
            int read = in.read(buffer, 0, (int) Math.min(buffer.length, left));
            if (read < 0) throw new IOException("closed");
            left -= read;
        }
    }

    /** Until the last chunk, which is empty. */
    private static void takeChunks(InputStream in, byte[] buffer, int have) throws IOException {
        String tail = new String(buffer, Math.max(0, have - 7), Math.min(7, have), StandardCharsets.ISO_8859_1);
        while (!tail.endsWith("\r\n0\r\n\r\n")) {
            int read = in.read(buffer);
            if (read < 0) throw new IOException("closed");
            tail += new String(buffer, Math.max(0, read - 7), Math.min(7, read), StandardCharsets.ISO_8859_1);
            tail = tail.substring(Math.max(0, tail.length() - 7));
        }
    }

    /** Answers everything with the same bytes. */
    private static final class Bare implements AutoCloseable {
        private final HttpServer server = new HttpServer();
        private final NetworkListener listener = new NetworkListener("bare", "127.0.0.1", 0);

        Bare(byte[] bytes) throws IOException {
            server.addListener(listener);
            server.getServerConfiguration().addHttpHandler(new HttpHandler() {
                @Override
                public void service(Request request, Response response) throws Exception {
                    response.setContentType("application/json");
                    response.setContentLength(bytes.length);
                    response.getOutputStream().write(bytes);
                }
            }, "/");
            server.start();
        }

        int port() {
            return listener.getPort();
        }

        @Override
        public void close() {
            server.shutdownNow();
        }
    }
}
