package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EditorsTest {
    private static final int EDITORS = 50;
    /** Few by default, as each edit of one asks all the others to try again; {@code -Dlapyard.edits=5} for more. */
    private static final int EDITS = Integer.getInteger("lapyard.edits", 1);

    @TempDir
    private Path folder;

    @Test
    void ofFiftyEditorsAtOnceNobodysAcknowledgedEditIsLost() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(EDITORS);
        try (Served served = new Served(folder)) {
            String address = served.created("{\"name\":\"Shared\",\"notes\":{},\"beds\":[]}");
            Map<String, String> acknowledged = new ConcurrentHashMap<>();
            CountDownLatch together = new CountDownLatch(EDITORS);
            List<Future<Integer>> editors = new ArrayList<>();
            for (int editor = 0; editor < EDITORS; editor++) {
                String name = "editor-" + editor;
                editors.add(threads.submit(() -> {
                    together.countDown();
                    together.await();
                    return edit(served, address, name, acknowledged);
                }));
            }
            int refused = 0;
            for (Future<Integer> editor : editors) refused += editor.get();

            assertEquals(EDITORS * EDITS, acknowledged.size());
            JsonNode notes = Served.json(served.get(address)).path("notes");
            assertEquals(EDITORS * EDITS, notes.size());
            assertEquals("\"" + (EDITORS * EDITS + 1) + "\"", Served.etag(served.get(address)));
            assertEquals(
                    EDITORS * EDITS, acknowledged.values().stream().distinct().count());
            for (Map.Entry<String, String> edit : acknowledged.entrySet()) {
                assertTrue(notes.has(edit.getKey()), edit::toString);
                String number = edit.getValue().replace("\"", "");
                JsonNode saved = Served.json(served.get(address + "/revisions/" + number));
                assertTrue(saved.path("notes").has(edit.getKey()), edit::toString);
                assertEquals(Integer.parseInt(number) - 1, saved.path("notes").size());
            }
            String counters = served.get("/metrics").body();
            assertTrue(counters.contains("lapyard_stale_saves_total " + refused + "\n"), counters);
        } finally {
            threads.shutdownNow();
        }
    }

    /** Gets, changes, saves, and does so again where somebody else was first; returns how often that was. */
    private static int edit(Served served, String address, String name, Map<String, String> acknowledged)
            throws Exception {
        int refused = 0;
        for (int edit = 0; edit < EDITS; edit++) {
            String key = name + "-" + edit;
            Callable<HttpResponse<String>> save = () -> served.patch(
                    address, "{\"notes\":{\"" + key + "\":1}}", "If-Match", Served.etag(served.get(address)));
            HttpResponse<String> answer = save.call();
            while (answer.statusCode() == 412) {
                refused++;
                answer = save.call();
            }
            assertEquals(200, answer.statusCode(), answer::body);
            acknowledged.put(key, Served.etag(answer));
        }
        return refused;
    }
}
