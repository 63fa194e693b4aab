package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import lapyard.answers.GardenDesk;
import lapyard.store.GardenStore;

/** A real server on a free port over a folder of its own, and a client for it. */
final class Served implements AutoCloseable {
    static final String BED =
            "{\"name\":\"Yard\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3}]}";
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    final GardenStore store;
    /** Of use where it is the desk that was given. */
    final SizesDesk desk;
    private final Server server;

    Served(Path folder) throws IOException {
        this(folder, Keys.NONE, Served.class.getClassLoader());
    }

    Served(Path folder, Keys keys, ClassLoader files) throws IOException {
        this(folder, keys, files, new SizesDesk());
    }

    Served(Path folder, Keys keys, ClassLoader files, GardenDesk desk) throws IOException {
        this(GardenStore.open(folder), keys, files, desk);
    }

    Served(GardenStore store, Keys keys, ClassLoader files, GardenDesk desk) throws IOException {
        this(store, keys, files, desk, 10);
    }

    private Served(GardenStore store, Keys keys, ClassLoader files, GardenDesk desk, int writeSeconds) throws IOException {
        this.store = store;
        this.desk = desk instanceof SizesDesk sizes ? sizes : new SizesDesk();
        server = Server.start(new Binding("127.0.0.1", 0, keys, Optional.empty(), Set.of()), () -> store, desk, files, AccessLog.NONE, writeSeconds);
    }

    /** One that gives up an answer which nobody takes for that long. */
    static Served givingUpAfter(int writeSeconds, Path folder) throws IOException {
        return new Served(GardenStore.open(folder), Keys.NONE, Served.class.getClassLoader(), new SizesDesk(), writeSeconds);
    }

    /** As a server does that was just started. */
    void workAhead() {
        server.workAhead().join();
    }

    boolean hasResources() {
        return server.hasResources();
    }

    int port() {
        return server.address().getPort();
    }

    HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(server.address().resolve(path));
    }

    HttpResponse<String> get(String path, String... headers) throws IOException, InterruptedException {
        return send("GET", path, BodyPublishers.noBody(), headers);
    }

    HttpResponse<String> post(String path, String json, String... headers) throws IOException, InterruptedException {
        return json("POST", path, json, headers);
    }

    HttpResponse<String> put(String path, String json, String... headers) throws IOException, InterruptedException {
        return json("PUT", path, json, headers);
    }

    HttpResponse<String> patch(String path, String json, String... headers) throws IOException, InterruptedException {
        HttpRequest.Builder request = to(path).method("PATCH", BodyPublishers.ofString(json))
                .header("Content-Type", "application/merge-patch+json");
        return send(request, headers);
    }

    HttpResponse<String> delete(String path, String... headers) throws IOException, InterruptedException {
        return send("DELETE", path, BodyPublishers.noBody(), headers);
    }

    private HttpResponse<String> json(String method, String path, String json, String... headers)
            throws IOException, InterruptedException {
        HttpRequest.Builder request =
                to(path).method(method, BodyPublishers.ofString(json)).header("Content-Type", "application/json");
        return send(request, headers);
    }

    HttpResponse<String> send(String method, String path, BodyPublisher body, String... headers)
            throws IOException, InterruptedException {
        return send(to(path).method(method, body), headers);
    }

    private static HttpResponse<String> send(HttpRequest.Builder request, String... headers)
            throws IOException, InterruptedException {
        if (headers.length > 0) request.headers(headers);
        return CLIENT.send(request.build(), BodyHandlers.ofString());
    }

    /** Sends these bytes as they are and returns all that comes back until the server closes. */
    String raw(byte[] bytes) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", server.address().getPort())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(bytes);
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    /** As {@link #raw(String)}, and says that nothing more will come. */
    String rawAndNoMore(String text) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", server.address().getPort())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
            socket.shutdownOutput();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    String raw(String text) throws IOException {
        return raw(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Creates a garden and returns its address. */
    String created(String document) throws IOException, InterruptedException {
        HttpResponse<String> response = post("/api/gardens", document);
        assertEquals(201, response.statusCode(), response::body);
        return response.headers().firstValue("Location").orElseThrow();
    }

    static String etag(HttpResponse<?> response) {
        return response.headers().firstValue("ETag").orElseThrow();
    }

    static JsonNode json(HttpResponse<String> response) throws JsonProcessingException {
        return MAPPER.readTree(response.body());
    }

    /** A problem of RFC 9457 with this status, which shows nothing of the program's insides. */
    static JsonNode problem(int status, HttpResponse<String> response) throws JsonProcessingException {
        assertEquals(status, response.statusCode(), response::body);
        assertEquals(
                "application/problem+json",
                response.headers().firstValue("Content-Type").orElse("none"));
        JsonNode problem = json(response);
        assertEquals(status, problem.path("status").asInt());
        assertTrue(problem.path("title").asText().length() > 2, response::body);
        assertTrue(problem.path("detail").asText().length() > 2, response::body);
        assertShowsNoInsides(response.body());
        return problem;
    }

    static void assertShowsNoInsides(String answer) {
        for (String inside : new String[] {"Exception", "\tat ", "java.", "jackson", "jersey", "grizzly", "lapyard."})
            assertTrue(!answer.contains(inside), () -> inside + " in " + answer);
    }

    @Override
    public void close() {
        server.close();
        store.close();
    }
}
