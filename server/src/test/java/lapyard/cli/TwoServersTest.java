package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import lapyard.store.TestPostgres;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Two servers, each a process of its own, on one PostgreSQL: one set of gardens, and no single one is needed. */
class TwoServersTest {
    private static final int EDITORS = 8;
    private static final int EDITS = 12;
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    record Running(Process process, URI address) {
        static Running start(String database) throws IOException {
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                            "-XX:TieredStopAtLevel=1",
                            "-XX:+UseSerialGC",
                            "-cp",
                            System.getProperty("java.class.path"),
                            ServeMain.class.getName(),
                            "--port",
                            "0",
                            "--database",
                            database)
                    .redirectErrorStream(true)
                    .start();
            BufferedReader lines =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
            String line = lines.readLine();
            StringBuilder said = new StringBuilder();
            while (line != null && !line.startsWith("Lapyard answers at ")) {
                said.append(line).append('\n');
                line = lines.readLine();
            }
            assertTrue(line != null, said::toString);
            new Thread(() -> lines.lines().forEach(ignored -> { }), "drain").start();
            return new Running(process, URI.create(line.split(" ")[3]));
        }

        HttpResponse<String> send(String method, String path, String body, String... headers)
                throws IOException, InterruptedException {
            HttpRequest.Builder request = HttpRequest.newBuilder(address.resolve(path))
                    .timeout(java.time.Duration.ofSeconds(30))
                    .method(method, BodyPublishers.ofString(body))
                    .header("Content-Type", method.equals("PATCH") ? "application/merge-patch+json" : "application/json");
            if (headers.length > 0) request.headers(headers);
            return CLIENT.send(request.build(), BodyHandlers.ofString());
        }
    }

    @Test
    @Timeout(120)
    void nothingThatWasAcknowledgedIsLostWhenOneIsKilledAmongEdits() throws Exception {
        String database = TestPostgres.newStoreDatabase();
        Running first = Running.start(database);
        Running second = Running.start(database);
        ExecutorService threads = Executors.newFixedThreadPool(EDITORS + 1);
        try {
            String made = first.send("POST", "/api/gardens", "{\"name\":\"Shared\",\"notes\":{},\"beds\":[]}")
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            AtomicLong heard = new AtomicLong();
            threads.submit(() -> listen(first, made, heard));
            Map<String, Long> acknowledged = new ConcurrentHashMap<>();
            AtomicInteger done = new AtomicInteger();
            List<Future<?>> editors = new ArrayList<>();
            for (int editor = 0; editor < EDITORS; editor++) {
                int number = editor;
                editors.add(threads.submit(() -> edit(number, first, second, made, acknowledged, done)));
            }
            while (done.get() < EDITORS * EDITS / 3) Thread.sleep(5);
            second.process().destroyForcibly(); // SIGKILL, among the edits of those who speak with it
            for (Future<?> editor : editors) editor.get(120, TimeUnit.SECONDS);

            assertEquals(EDITORS * EDITS, acknowledged.size());
            JsonNode notes = new JsonMapper()
                    .readTree(first.send("GET", made, "").body())
                    .path("notes");
            acknowledged.forEach((note, revision) -> assertTrue(notes.has(note), note + " was acknowledged in " + revision));
            String newest = first.send("GET", made, "").headers().firstValue("ETag").orElseThrow();
            assertEquals("\"" + (1 + EDITORS * EDITS) + "\"", newest);
            while (heard.get() < 1 + EDITORS * EDITS) Thread.sleep(5); // whoever listens at one hears of both
        } finally {
            threads.shutdownNow();
            first.process().destroyForcibly();
            second.process().destroyForcibly();
        }
    }

    /** Changes by the server it is used to; where that does not answer, by the other. Sends again what may be lost. */
    private static Void edit(
            int number, Running first, Running second, String garden, Map<String, Long> acknowledged, AtomicInteger done)
            throws InterruptedException, IOException {
        Running server = number % 2 == 0 ? first : second;
        for (int edit = 0; edit < EDITS; edit++) {
            String note = "n" + number + "-" + edit;
            while (!acknowledged.containsKey(note)) {
                try {
                    String tag = server.send("GET", garden, "").headers().firstValue("ETag").orElse("\"0\"");
                    HttpResponse<String> answer = server.send(
                            "PATCH", garden, "{\"notes\":{\"" + note + "\":1}}", "If-Match", tag);
                    if (answer.statusCode() == 200)
                        acknowledged.put(
                                note,
                                Long.parseLong(answer.headers().firstValue("ETag").orElseThrow().replace("\"", "")));
                    else assertEquals(412, answer.statusCode(), answer::body);
                } catch (IOException killed) {
                    server = first;
                }
            }
            done.incrementAndGet();
        }
        return null;
    }

    /** Keeps the highest revision that it hears of. */
    static Void listen(Running server, String garden, AtomicLong heard) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(server.address().resolve(garden + "/events")).build();
        HttpResponse<java.util.stream.Stream<String>> events = CLIENT.send(request, BodyHandlers.ofLines());
        for (String line : (Iterable<String>) events.body()::iterator)
            if (line.startsWith("id: ")) heard.accumulateAndGet(Long.parseLong(line.substring(4)), Math::max);
        return null;
    }

    @Test
    void aGardenMadeAtOneIsReadAtTheOtherAtOnce() throws Exception {
        String database = TestPostgres.newStoreDatabase();
        Running first = Running.start(database);
        Running second = Running.start(database);
        try {
            String made = first.send("POST", "/api/gardens", "{\"name\":\"Shared\",\"beds\":[]}")
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            assertEquals(200, second.send("PATCH", made, "{\"name\":\"B\"}", "If-Match", "\"1\"").statusCode());
            assertEquals(412, first.send("PATCH", made, "{\"name\":\"C\"}", "If-Match", "\"1\"").statusCode());
            assertTrue(first.send("GET", "/health", "").body().contains("\"database\":\"postgresql\""));
            String list = second.send("GET", "/api/gardens?limit=200", "").body();
            assertEquals(list, first.send("GET", "/api/gardens?limit=200", "").body());
            second.process().destroy(); // SIGTERM: a clean stop
            assertTrue(second.process().waitFor(20, TimeUnit.SECONDS));
            assertEquals("\"2\"", first.send("GET", made, "").headers().firstValue("ETag").orElseThrow());
        } finally {
            first.process().destroyForcibly();
            second.process().destroyForcibly();
        }
    }
}
