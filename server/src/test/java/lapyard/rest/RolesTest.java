package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import lapyard.store.SetClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Editors change, readers read, the holder of a share reads one garden as it stands, and nobody guesses. */
class RolesTest {
    private static final String EDITOR = "editors-token-of-26-signs-a";
    private static final String READER = "readers-token-of-26-signs-b";

    @TempDir
    private Path folder;

    private final SetClock clock = new SetClock();
    private Served served;
    private String address;

    @BeforeEach
    void start() throws Exception {
        Keys keys = Keys.read(List.of("# ours", "", "editor " + EDITOR, "reader " + READER));
        served = new Served(clock.open(folder), keys, RolesTest.class.getClassLoader(), new SizesDesk());
        HttpResponse<String> made = served.post("/api/gardens", BED, as(EDITOR));
        address = made.headers().firstValue("Location").orElseThrow();
    }

    @AfterEach
    void stop() {
        served.close();
    }

    private static String[] as(String token, String... more) {
        String[] headers = new String[more.length + 2];
        headers[0] = "Authorization";
        headers[1] = "Bearer " + token;
        System.arraycopy(more, 0, headers, 2, more.length);
        return headers;
    }

    @Test
    void aReaderReadsEverythingAndChangesNothing() throws Exception {
        for (String path : List.of("/api/gardens", address, address + "/job-sheet", address + "/revisions", "/metrics"))
            assertEquals(200, served.get(path, as(READER)).statusCode(), path);
        for (String path : List.of("job-sheet", "job-sheet/loads", "site-plan", "site-file", "merchant-list", "try-out", "solve/cutting", "solve/lay-out"))
            assertNotEquals(403, served.post("/api/" + path, BED, as(READER)).statusCode(), path);
        problem(403, served.post("/api/gardens", BED, as(READER)));
        problem(403, served.put(address, BED, as(READER, "If-Match", "*")));
        problem(403, served.patch(address, "{}", as(READER, "If-Match", "*")));
        problem(403, served.delete(address, as(READER, "If-Match", "*")));
        problem(403, served.post(address + "/copy", "", as(READER)));
        problem(403, served.post("/api/gardens/file", "{}", as(READER)));
        problem(403, served.post(address + "/shares", "{\"label\":\"x\"}", as(READER)));
        problem(403, served.post(address + "/revisions/1/restore", "", as(READER, "If-Match", "*")));
        problem(403, served.put(address + "/revisions/1/stamp", "{\"stamp\":\"x\"}", as(READER)));
        assertEquals("\"1\"", Served.etag(served.get(address, as(EDITOR))));
    }

    @Test
    void whoHasAShareReadsThatGardenAsItStandsAndNothingElse() throws Exception {
        String other = served.post("/api/gardens", BED, as(EDITOR)).headers().firstValue("Location").orElseThrow();
        HttpResponse<String> made = served.post(address + "/shares", "{\"label\":\"neighbour\"}", as(EDITOR));
        assertEquals(201, made.statusCode(), made::body);
        String token = json(made).path("token").asText();
        assertTrue(token.matches("share-[a-z0-9]{32}"), token);
        for (String path : List.of("", "/job-sheet", "/job-sheet/take-off", "/plan.svg", "/slip.csv"))
            assertEquals(200, served.get(address + path, as(token)).statusCode(), path);
        JsonNode list = json(served.get("/api/gardens", as(token)));
        assertEquals(1, list.path("total").asInt());
        assertEquals(address, "/api/gardens/" + list.path("gardens").get(0).path("id").asText());
        for (String path : List.of("/revisions", "/revisions/1", "/difference?from=1", "/variation", "/variation.pdf?from=1", "/file", "/shares",
                "/saw-day.pdf?revision=1", "/saw-day.pdf?%72evision=1", "/%72evisions"))
            problem(403, served.get(address + path, as(token)));
        problem(403, served.get(other, as(token)));
        problem(403, served.get("/metrics", as(token)));
        problem(403, served.put(address, BED, as(token, "If-Match", "*")));
        problem(403, served.post("/api/gardens", BED, as(token)));
        problem(403, served.post("/api/job-sheet", BED, as(token)));

        JsonNode shares = json(served.get(address + "/shares", as(EDITOR))).path("shares");
        assertEquals(1, shares.size());
        assertEquals("neighbour", shares.get(0).path("label").asText());
        assertFalse(shares.toString().contains(token.substring(8)), "the token is told once");
        String share = made.headers().firstValue("Location").orElseThrow();
        assertEquals(204, served.delete(share, as(EDITOR)).statusCode());
        problem(404, served.delete(share, as(EDITOR)));
        problem(401, served.get(address, as(token)));
        problem(400, served.post(address + "/shares", "{\"label\":\"\"}", as(EDITOR)));
        problem(404, served.post("/api/gardens/none/shares", "{\"label\":\"x\"}", as(EDITOR)));
    }

    @Test
    void whoseShareIsTakenBackHearsNothingMore() throws Exception {
        HttpResponse<String> made = served.post(address + "/shares", "{\"label\":\"neighbour\"}", as(EDITOR));
        String token = json(made).path("token").asText();
        try (Socket socket = listening(token)) {
            BufferedReader lines = lines(socket);
            while (!lines.readLine().equals("id: 1")) continue;
            assertEquals(204, served.delete(made.headers().firstValue("Location").orElseThrow(), as(EDITOR)).statusCode());
            String line = "";
            while (line != null) line = lines.readLine(); // the server ends it
        }
    }

    @Test
    void aShareEndsByItself() throws Exception {
        Instant now = Instant.parse("2026-03-01T10:00:00Z");
        clock.set(now);
        String ninety = post(201, "{\"label\":\"neighbour\"}").path("token").asText();
        assertEquals("2026-05-30T10:00:00Z", json(served.get(address + "/shares", as(EDITOR))).at("/shares/0/ends").asText());
        assertEquals("2026-03-08T22:30:00Z", post(201, "{\"label\":\"builder\",\"ends\":\"2026-03-09T00:00:00+01:30\"}").path("ends").asText());
        JsonNode lasting = post(201, "{\"label\":\"aunt\",\"ends\":null}");
        assertFalse(lasting.has("ends"), lasting::toString);
        for (String wrong : List.of("\"2026-03-01T10:00:00Z\"", "\"2026-04-01\"", "\"soon\"", "90", "true", "{}", "\"+1000000000-01-01T00:00:00Z\"", "\"2036-12-01T00:00:00Z\""))
            assertEquals("ends should be a time within the next 3660 days, such as \"2026-05-30T10:00:00Z\", or null for a share without an end",
                    post(400, "{\"label\":\"x\",\"ends\":" + wrong + "}").path("detail").asText(), wrong);
        try (Socket socket = listening(ninety)) {
            BufferedReader lines = lines(socket);
            while (!lines.readLine().equals("id: 1")) continue;
            clock.set(now.plus(Duration.ofDays(90)));
            assertEquals(200, served.put(address, BED.replace("2400", "2500"), as(EDITOR, "If-Match", "\"1\"")).statusCode());
            for (String line = lines.readLine(); line != null; line = lines.readLine()) assertFalse(line.equals("id: 2"), "it heard of the save after its end");
        }
        problem(401, served.get(address, as(ninety)));
        assertEquals(200, served.get(address, as(lasting.path("token").asText())).statusCode());
        JsonNode listed = json(served.get(address + "/shares", as(EDITOR))).path("shares");
        assertEquals(1, listed.size(), listed::toString);
    }

    private JsonNode post(int status, String share) throws Exception {
        HttpResponse<String> answer = served.post(address + "/shares", share, as(EDITOR));
        assertEquals(status, answer.statusCode(), answer::body);
        return json(answer);
    }

    private Socket listening(String token) throws IOException {
        Socket socket = new Socket("127.0.0.1", served.port());
        socket.setSoTimeout(60_000);
        socket.getOutputStream().write(("GET " + address + "/events HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer " + token
                + "\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    private static BufferedReader lines(Socket socket) throws IOException {
        return new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    }

    @Test
    void afterAFewWrongTokensNothingFromThatAddressIsCompared() throws Exception {
        problem(401, served.get(address));
        for (int i = 0; i < Attempts.MOST; i++) problem(401, served.get(address, as("wrong-token-of-26-signs-x" + i)));
        HttpResponse<String> slowed = served.get(address, as(EDITOR));
        problem(429, slowed);
        int wait = Integer.parseInt(slowed.headers().firstValue("Retry-After").orElseThrow());
        assertTrue(wait > 0 && wait <= 60, "wait " + wait);
        assertEquals(200, served.get("/health").statusCode());
    }

    @Test
    void theCountOfWrongTokensEndsWithItsMinuteAndIsKeptByAddress() {
        AtomicLong now = new AtomicLong();
        Attempts attempts = new Attempts(now::get);
        for (int i = 0; i < Attempts.MOST; i++) {
            assertEquals(0, attempts.waitSeconds("a"));
            attempts.wrong("a");
        }
        assertEquals(60, attempts.waitSeconds("a"));
        assertEquals(0, attempts.waitSeconds("b"));
        now.set(59_500_000_000L);
        assertEquals(1, attempts.waitSeconds("a"));
        now.set(60_000_000_000L);
        assertEquals(0, attempts.waitSeconds("a"));
        attempts.wrong("a");
        assertEquals(0, attempts.waitSeconds("a"));
    }

    @Test
    void aTokenFileIsReadLineByLineAndATokenIsNeverTold() throws IOException {
        assertTrue(Keys.read(List.of()).isEmpty());
        assertEquals(1, Keys.read(List.of(EDITOR)).editors().size());
        for (String line : List.of("owner " + EDITOR, "editor " + EDITOR + " more", "reader short")) {
            IllegalArgumentException refused =
                    assertThrows(IllegalArgumentException.class, () -> Keys.read(List.of(line)));
            assertFalse(refused.getMessage().contains(EDITOR), refused.getMessage());
        }
        Binding noEditor = new Binding("127.0.0.1", 0, Keys.read(List.of("reader " + READER)), Optional.empty(), Set.of());
        assertThrows(IllegalArgumentException.class, noEditor::check);
    }
}
