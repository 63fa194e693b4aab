package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.etag;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LiveTest {
    @TempDir
    private Path folder;

    private Served served;
    private String address;

    @BeforeEach
    void start() throws Exception {
        served = new Served(folder);
        address = served.created(BED);
    }

    @AfterEach
    void stop() {
        served.close();
    }

    /** A browser that waits for news. */
    static final class Ear implements AutoCloseable {
        private final Socket socket;
        private final BufferedReader lines;

        Ear(int port, String address) throws IOException {
            socket = new Socket("127.0.0.1", port);
            socket.setSoTimeout(20_000);
            socket.getOutputStream()
                    .write(("GET " + address + "/events HTTP/1.1\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            lines = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
        }

        /** The next line that starts so. */
        String next(String start) throws IOException {
            String line = lines.readLine();
            while (line != null && !line.startsWith(start)) line = lines.readLine();
            return line;
        }

        /** The number of the next revision that is told. */
        long revision() throws IOException {
            return Long.parseLong(next("id: ").substring(4));
        }

        @Override
        public void close() throws IOException {
            socket.close();
        }
    }

    @Test
    void whoListensHearsTheRevisionThatStandsAndEachNewOne() throws Exception {
        try (Ear ear = new Ear(served.port(), address)) {
            assertEquals("Content-Type: text/event-stream; charset=utf-8", ear.next("Content-Type"));
            assertEquals("retry: 2000", ear.next("retry"));
            assertEquals(1, ear.revision());
            String tag = etag(served.patch(address, "{\"name\":\"B\"}", "If-Match", "\"1\""));
            assertEquals(2, ear.revision());
            assertEquals(
                    "data: {\"garden\":\"" + address.replaceAll(".*/", "") + "\",\"revision\":2}", ear.next("data"));
            served.delete(address, "If-Match", tag);
            assertEquals(3, ear.revision());
            served.post(address + "/revisions/1/restore", "", "If-Match", "\"3\"");
            assertEquals(4, ear.revision());
        }
    }

    @Test
    void manyListenAndHoldNobodyUp() throws Exception {
        List<Ear> ears = new ArrayList<>();
        for (int i = 0; i < 60; i++) ears.add(new Ear(served.port(), address));
        for (Ear ear : ears) assertEquals(1, ear.revision());
        assertTrue(served.get("/metrics").body().contains("lapyard_listeners 60\n"));
        served.patch(address, "{\"name\":\"B\"}", "If-Match", "*");
        for (Ear ear : ears) assertEquals(2, ear.revision());
        for (Ear ear : ears.subList(0, 59)) ear.close();
        while (!served.get("/metrics").body().contains("lapyard_listeners 1\n"))
            served.patch(address, "{\"name\":\"" + System.nanoTime() + "\"}", "If-Match", "*");
        ears.get(59).close();
    }

    @Test
    void aServerThatStopsEndsItsListenersAtOnce() throws Exception {
        try (Ear ear = new Ear(served.port(), address)) {
            assertEquals(1, ear.revision());
            long from = System.nanoTime();
            served.close();
            assertEquals(null, ear.next("never"));
            assertTrue(System.nanoTime() - from < 8e9, "it waited for a listener");
        }
        served = new Served(folder);
    }

    @Test
    void whatCannotBeListenedToIsAProblem() throws Exception {
        problem(404, served.get("/api/gardens/none/events"));
        problem(405, served.post(address + "/events", "{}"));
        served.delete(address, "If-Match", "*");
        problem(410, served.get(address + "/events"));
    }
}
