package lapyard.rest;

import static lapyard.rest.Served.BED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import lapyard.store.NewGarden;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever sends slowly, stops halfway or says nothing at all holds a connection, and nobody else up. */
class SlowClientsTest {
    private static final int IDLE = Integer.getInteger("lapyard.idle", 2000);
    private static final int SLOW = 200;
    /** More than there are threads that answer. */
    private static final int NOT_READING = 50;

    /** The system's own buffers take some 4 MB of a line. */
    private static final int MORE_THAN_A_LINE_HOLDS = 20_000_000;

    @TempDir
    private Path folder;

    private Served served;
    private final List<Socket> open = new ArrayList<>();

    @BeforeEach
    void start() throws IOException {
        served = new Served(folder);
    }

    @AfterEach
    void stop() throws IOException {
        for (Socket socket : open) socket.close();
        served.close();
    }

    private OutputStream connect(String first) throws IOException {
        Socket socket = new Socket("127.0.0.1", served.port());
        open.add(socket);
        socket.setSoTimeout(30_000);
        OutputStream out = socket.getOutputStream();
        out.write(first.getBytes(StandardCharsets.US_ASCII));
        out.flush();
        return out;
    }

    private void othersAreServed() throws Exception {
        String address = served.created(BED);
        for (int i = 0; i < 5; i++) {
            assertEquals(200, served.get(address).statusCode());
            assertEquals(200, served.get("/health").statusCode());
            assertEquals(200, served.patch(address, "{\"name\":\"n" + i + "\"}", "If-Match", "*").statusCode());
        }
    }

    @Test
    void twoThousandConnectionsThatSayNothingStopNobody() throws Exception {
        for (int i = 0; i < IDLE; i++) connect("");
        othersAreServed();
    }

    @Test
    void headersThatNeverEndStopNobody() throws Exception {
        for (int i = 0; i < SLOW; i++) connect("GET /api/gardens HTTP/1.1\r\nHost: localhost\r\nX-Slow: ");
        othersAreServed();
    }

    @Test
    void bodiesThatComeSlowlyStopNobodyAndAreTakenWhenTheyAreWhole() throws Exception {
        String head = "POST /api/gardens HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: application/json\r\n";
        List<OutputStream> slow = new ArrayList<>();
        for (int i = 0; i < SLOW; i++)
            slow.add(connect(head + (i % 2 == 0 ? "Content-Length: " + BED.length() + "\r\n\r\n" + BED.substring(0, 5)
                    : "Transfer-Encoding: chunked\r\n\r\n5\r\n" + BED.substring(0, 5) + "\r\n")));
        othersAreServed();
        for (int i = 0; i < SLOW; i++) {
            String rest = BED.substring(5);
            String more = i % 2 == 0 ? rest : Integer.toHexString(rest.length()) + "\r\n" + rest + "\r\n0\r\n\r\n";
            for (String part : List.of(more.substring(0, 9), more.substring(9))) {
                slow.get(i).write(part.getBytes(StandardCharsets.US_ASCII));
                slow.get(i).flush();
            }
        }
        for (Socket socket : open) {
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
            assertTrue(answer.startsWith("HTTP/1.1 201 "), answer);
        }
    }

    @Test
    void answersThatNobodyTakesStopNobody() throws Exception {
        String address = served.created("{\"name\":\"" + "x".repeat(1_000_000) + "\",\"beds\":[]}");
        for (int i = 0; i < NOT_READING; i++)
            connect(("GET " + address + " HTTP/1.1\r\nHost: localhost\r\n\r\n").repeat(20));
        othersAreServed();
    }

    /** Long answers come from threads of their own, the others from those of the library: documents, answers that stand, sheets. */
    @Test
    void whoTakesNothingForTheTimeOfAWriteLosesTheLine(@TempDir Path other) throws Exception {
        try (Served impatient = Served.givingUpAfter(1, other)) {
            String address = moreThanALineHolds(impatient);
            for (String path : List.of("/revisions/1", "", "", "/job-sheet")) {
                int begun = Integer.parseInt(impatient.get("/metrics").body().replaceAll("(?s).*\\nlapyard_requests_running ([0-9]+)\n.*", "$1"));
                try (Socket socket = new Socket()) {
                    socket.setReceiveBufferSize(4096);
                    socket.connect(new InetSocketAddress("127.0.0.1", impatient.port()));
                    socket.getOutputStream().write(("GET " + address + path + " HTTP/1.1\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
                    assertTrue(isClosed(socket), path);
                }
                // a line is closed before its request is counted as ended
                long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
                while (!impatient.get("/metrics").body().contains("\nlapyard_requests_running " + begun + "\n")) {
                    assertTrue(System.nanoTime() < until, "the request never ends: " + path);
                    Thread.sleep(10);
                }
            }
        }
    }

    @Test
    void whoTakesAnAnswerSlowlyGetsAllOfIt(@TempDir Path other) throws Exception {
        try (Served impatient = Served.givingUpAfter(1, other);
                Socket socket = new Socket()) {
            String address = moreThanALineHolds(impatient);
            socket.setReceiveBufferSize(4096);
            socket.connect(new InetSocketAddress("127.0.0.1", impatient.port()));
            socket.getOutputStream().write(("GET " + address + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            long bytes = 0;
            for (int read = 1; read > 0; bytes += read) {
                Thread.sleep(300); // thrice within what the server waits for, some 7 s in all
                read = socket.getInputStream().readNBytes(1 << 20).length;
            }
            assertTrue(bytes > MORE_THAN_A_LINE_HOLDS, "only " + bytes);
        }
    }

    private static String moreThanALineHolds(Served served) {
        served.store.create(new NewGarden("long", "Long", "{\"name\":\"" + "x".repeat(MORE_THAN_A_LINE_HOLDS) + "\",\"beds\":[]}"));
        return "/api/gardens/long";
    }

    /** Says a byte now and then, which the other end refuses once it is closed. */
    private static boolean isClosed(Socket socket) throws InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        try {
            while (System.nanoTime() < until) {
                Thread.sleep(100);
                socket.getOutputStream().write('G');
            }
            return false;
        } catch (IOException refused) {
            return true;
        }
    }
}
