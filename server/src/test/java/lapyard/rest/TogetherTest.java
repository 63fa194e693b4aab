package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Fifty people, each with a bed of their own, all saving from the same revision and asking for a merge: none is lost, and
 * those who come at the same time share a revision.
 */
class TogetherTest {
    private static final int EDITORS = 50;
    private static final int EDITS = Integer.getInteger("lapyard.edits", 2);

    @TempDir
    private Path folder;

    @Test
    void editsOfDifferentBedsNeedNoSecondTry() throws Exception {
        StringBuilder beds = new StringBuilder();
        for (int bed = 0; bed < EDITORS; bed++)
            beds.append(bed == 0 ? "" : ",").append("{\"id\":\"b").append(bed).append("\",\"width\":1000,\"depth\":900}");
        String text = "{\"name\":\"Shared\",\"beds\":[" + beds + "]}";
        ExecutorService threads = Executors.newFixedThreadPool(EDITORS);
        try (Served served = new Served(folder)) {
            String address = served.created(text);
            CountDownLatch together = new CountDownLatch(EDITORS);
            AtomicInteger acknowledged = new AtomicInteger();
            List<Future<?>> editors = new ArrayList<>();
            for (int editor = 0; editor < EDITORS; editor++) {
                String id = "\"b" + editor + "\",\"width\":";
                editors.add(threads.submit(() -> {
                    together.countDown();
                    together.await();
                    String mine = text;
                    String tag = "\"1\"";
                    for (int edit = 1; edit <= EDITS; edit++) {
                        mine = mine.replace(id + (999 + edit), id + (1000 + edit));
                        HttpResponse<String> answer = served.put(address + "?merge=true", mine, "If-Match", tag);
                        assertEquals(200, answer.statusCode(), answer::body);
                        acknowledged.incrementAndGet();
                        tag = Served.etag(answer);
                        mine = served.get(address + "/revisions/" + tag.replace("\"", "")).body();
                    }
                    return null;
                }));
            }
            for (Future<?> editor : editors) editor.get();
            assertEquals(EDITORS * EDITS, acknowledged.get());
            Map<String, Integer> widths = new HashMap<>();
            for (JsonNode bed : Served.json(served.get(address)).path("beds"))
                widths.put(bed.path("id").asText(), bed.path("width").asInt());
            assertEquals(EDITORS, widths.size());
            widths.forEach((id, width) -> assertEquals(1000 + EDITS, width, id));
            int revision = Integer.parseInt(Served.etag(served.get(address)).replace("\"", ""));
            assertTrue(revision > EDITS && revision <= EDITORS * EDITS + 1, () -> "revision " + revision);
        } finally {
            threads.shutdownNow();
        }
    }
}
