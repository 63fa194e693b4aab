package lapyard.rest;

import static lapyard.rest.Served.BED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import lapyard.answers.GivenDocument;
import lapyard.store.GardenStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the server writes down of a request, and how it ends while some are running. */
class AccessLogTest {
    private static final String EDITOR = "editors-token-of-26-signs-a";

    @TempDir
    private Path folder;

    @Test
    void everyRequestIsALineWithItsIdAndNoTokenOrQuery() throws Exception {
        Path file = folder.resolve("access.log");
        GardenStore store = GardenStore.open(folder.resolve("data"));
        HttpClient client = HttpClient.newHttpClient();
        String id;
        try (AccessLog log = AccessLog.to(file);
                Server server = Server.start(
                        new Binding("127.0.0.1", 0, Keys.read(List.of(EDITOR)), Optional.empty(), Set.of()), () -> store, new SizesDesk(),
                        AccessLogTest.class.getClassLoader(), log)) {
            URI address = server.address();
            HttpResponse<String> answer = client.send(
                    HttpRequest.newBuilder(address.resolve("/api/gardens?limit=3"))
                            .header("Authorization", "Bearer " + EDITOR)
                            .build(),
                    BodyHandlers.ofString());
            id = answer.headers().firstValue("X-Request-Id").orElseThrow();
            client.send(HttpRequest.newBuilder(address.resolve("/api/gardens/x%0Ay")).build(), BodyHandlers.ofString());
        }
        store.close();
        List<String> lines = Files.readAllLines(file);
        assertEquals(2, lines.size(), lines::toString);
        assertTrue(
                lines.get(0).matches("\\S+Z " + id + " 127.0.0.1 editor GET /api/gardens 200 [0-9]+"), lines.get(0));
        assertTrue(lines.get(1).matches("\\S+Z \\S+ 127.0.0.1 refused GET /api/gardens/x%0Ay 401 [0-9]+"), lines.get(1));
        assertFalse(lines.toString().contains(EDITOR));
    }

    /** A desk that checks slowly: the save is under way while the server is told to stop. */
    @Test
    void aSaveThatIsRunningEndsBeforeTheServerDoes() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        SizesDesk slow = new SizesDesk() {
            @Override
            public Checked check(GivenDocument document) {
                begun.countDown();
                try {
                    goOn.await();
                } catch (InterruptedException stopped) {
                    throw new IllegalStateException(stopped);
                }
                return super.check(document);
            }
        };
        GardenStore store = GardenStore.open(folder);
        Server server = Server.start(new Binding("127.0.0.1", 0, Keys.NONE, Optional.empty(), Set.of()), () -> store, slow, AccessLogTest.class.getClassLoader(), AccessLog.NONE);
        HttpRequest save = HttpRequest.newBuilder(server.address().resolve("/api/gardens"))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(BED))
                .build();
        CompletableFuture<HttpResponse<String>> answer =
                HttpClient.newHttpClient().sendAsync(save, BodyHandlers.ofString());
        begun.await();
        Thread stopping = new Thread(server::close);
        stopping.start();
        while (stopping.getState() == Thread.State.NEW || stopping.getState() == Thread.State.RUNNABLE) Thread.onSpinWait();
        goOn.countDown();
        assertEquals(201, answer.get().statusCode());
        stopping.join();
        assertEquals(1, store.list(new lapyard.store.GardenList.Ask(10, java.util.Optional.empty(), lapyard.store.GardenList.Place.STANDING, java.util.Optional.empty(), List.of(), lapyard.store.GardenList.Order.NAME)).total());
        store.close();
    }

    @Test
    void aLogThatCannotBeWrittenStopsNoRequest() throws IOException {
        AccessLog log = AccessLog.to(folder.resolve("a.log"));
        log.close();
        log.line("id", "a", "who", "GET", "/", 200, 1);
        assertTrue(Files.readAllLines(folder.resolve("a.log")).isEmpty());
    }
}
