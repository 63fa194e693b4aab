package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.concurrent.TimeUnit;

/**
 * The program as it is handed on, {@code java -jar target/lapyard.jar serve}, over a folder of its own. With
 * {@code -Dlapyard.at=http://host:port/} the tests run against a server that is there already.
 */
final class RunningServer implements AutoCloseable {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final int START_SECONDS = 60;

    final URI address;
    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final Path folder;
    private Process process;

    RunningServer() throws IOException, InterruptedException {
        String there = System.getProperty("lapyard.at");
        if (there != null) {
            folder = null;
            address = URI.create(there);
            return;
        }
        folder = Files.createTempDirectory("lapyard-data");
        try (ServerSocket free = new ServerSocket(0)) {
            address = URI.create("http://127.0.0.1:" + free.getLocalPort() + "/");
        }
        start();
    }

    /** True where the server is ours to stop. */
    static boolean isOurs() {
        return System.getProperty("lapyard.at") == null;
    }

    void start() throws IOException, InterruptedException {
        Path jar = Path.of("target", "lapyard.jar").toAbsolutePath();
        assertTrue(Files.exists(jar), () -> jar + " is missing: run mvn verify, which makes it before these tests");
        process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-jar",
                        jar.toString(),
                        "serve",
                        "--port",
                        String.valueOf(address.getPort()),
                        "--data",
                        folder.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolveSibling(folder.getFileName() + ".log").toFile())
                .start();
        boolean answering = false;
        try {
            long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_SECONDS);
            while (!answers()) {
                assertTrue(process.isAlive(), () -> "the server ended: " + log());
                assertTrue(System.nanoTime() < until, () -> "the server does not answer: " + log());
                Thread.sleep(50);
            }
            answering = true;
        } finally {
            if (!answering) process.destroyForcibly();
        }
    }

    private boolean answers() throws InterruptedException {
        try {
            return send("GET", "health", BodyPublishers.noBody()).statusCode() == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    private String log() {
        try {
            return Files.readString(folder.resolveSibling(folder.getFileName() + ".log"));
        } catch (IOException none) {
            return "it wrote nothing";
        }
    }

    /** Kills the process: no clean end. */
    void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor();
    }

    /** Stores a garden and returns its id. */
    String stored(String document) throws IOException, InterruptedException {
        HttpResponse<String> answer = send("POST", "api/gardens", BodyPublishers.ofString(document));
        assertEquals(201, answer.statusCode(), answer::body);
        String location = answer.headers().firstValue("Location").orElseThrow();
        return location.substring(location.lastIndexOf('/') + 1);
    }

    JsonNode garden(String id) throws IOException, InterruptedException {
        return MAPPER.readTree(read("api/gardens/" + id).body());
    }

    JsonNode get(String path) throws IOException, InterruptedException {
        return MAPPER.readTree(read(path).body());
    }

    private HttpResponse<String> read(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer = send("GET", path, BodyPublishers.noBody());
        assertEquals(200, answer.statusCode(), answer::body);
        return answer;
    }

    /** Somebody else changes a garden. */
    void changed(String id, String document) throws IOException, InterruptedException {
        String tag = read("api/gardens/" + id).headers().firstValue("ETag").orElseThrow();
        HttpRequest request = HttpRequest.newBuilder(address.resolve("api/gardens/" + id))
                .PUT(BodyPublishers.ofString(document))
                .header("Content-Type", "application/json")
                .header("If-Match", tag)
                .build();
        HttpResponse<String> answer = client.send(request, BodyHandlers.ofString());
        assertEquals(200, answer.statusCode(), answer::body);
    }

    private HttpResponse<String> send(String method, String path, HttpRequest.BodyPublisher body)
            throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(address.resolve(path))
                .method(method, body)
                .header("Content-Type", "application/json")
                .build();
        return client.send(request, BodyHandlers.ofString());
    }

    @Override
    public void close() {
        if (process == null) return;
        process.destroy();
        try {
            if (!process.waitFor(5, TimeUnit.SECONDS)) process.destroyForcibly().waitFor();
            Files.deleteIfExists(folder.resolveSibling(folder.getFileName() + ".log"));
            try (var files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
            }
        } catch (IOException left) {
            folder.toFile().deleteOnExit();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
