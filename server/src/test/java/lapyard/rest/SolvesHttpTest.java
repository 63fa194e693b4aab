package lapyard.rest;

import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SolvesHttpTest {
    @TempDir
    private Path folder;

    /** A desk whose solves go on until they are told to stop. */
    private static final class EndlessDesk extends SizesDesk {
        @Override
        public String solve(String kind, String problem, double seconds, Function<String, Progress> progress) {
            if (!problem.contains("endless")) return super.solve(kind, problem, seconds, progress);
            progress.apply("boards").reached(new BigDecimal("36.00"), new BigDecimal("30.00"));
            progress.apply("boards").reached(new BigDecimal("34.80"), new BigDecimal("31.50"));
            while (!Thread.currentThread().isInterrupted()) Thread.onSpinWait();
            return "{\"name\":\"best so far\"}";
        }
    }

    @Test
    void aSolveThatNobodyWaitsForIsToldOfAndStopsWithTheBestItHas() throws Exception {
        try (Served served = new Served(folder, Keys.NONE, SolvesHttpTest.class.getClassLoader(), new EndlessDesk())) {
            HttpResponse<String> begun =
                    served.post("/api/solve/cutting?seconds=30", "{\"endless\":1}", "Prefer", "respond-async");
            assertEquals(202, begun.statusCode(), begun::body);
            String address = begun.headers().firstValue("Location").orElseThrow();
            JsonNode told = json(served.get(address));
            while (told.path("state").asText().equals("waiting")) told = json(served.get(address));
            assertEquals("running", told.path("state").asText());
            assertEquals(30, told.path("limitSeconds").asDouble());
            assertTrue(served.get("/metrics").body().contains("lapyard_solves_running 1\n"));
            while (told.path("progress").path(0).path("best").asDouble() != 34.8) told = json(served.get(address));
            assertEquals("boards", told.path("progress").path(0).path("of").asText());
            assertEquals(31.5, told.path("progress").path(0).path("bound").asDouble());
            assertEquals(1, told.path("progress").size());
            assertEquals(202, served.delete(address).statusCode());
            while (told.path("state").asText().equals("running")) told = json(served.get(address));
            assertEquals("stopped", told.path("state").asText());
            assertEquals("best so far", told.path("result").path("name").asText());

            String refused = served.post("/api/solve/rolls", "{}", "Prefer", "respond-async")
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            while (List.of("waiting", "running").contains(told.path("state").asText()) || told.path("kind").asText().equals("cutting"))
                told = json(served.get(refused));
            assertEquals("refused", told.path("state").asText());
            assertEquals(422, told.path("problem").path("status").asInt());
            problem(404, served.get("/api/solves/none"));
            problem(404, served.delete("/api/solves/none"));
            problem(400, served.post("/api/solve/rolls?seconds=0", "{\"pieces\":[]}"));
        }
    }

    @Test
    void ofTooManyOpenSolvesTheLastIsToldToComeAgain() throws Exception {
        try (Served served = new Served(folder, Keys.NONE, SolvesHttpTest.class.getClassLoader(), new EndlessDesk())) {
            List<String> open = new ArrayList<>();
            for (int i = 0; i < Solves.MOST_OPEN; i++)
                open.add(served.post("/api/solve/cutting", "{\"endless\":1}", "Prefer", "respond-async")
                        .headers()
                        .firstValue("Location")
                        .orElseThrow());
            HttpResponse<String> more = served.post("/api/solve/cutting", "{\"endless\":1}", "Prefer", "respond-async");
            problem(503, more);
            assertTrue(more.headers().firstValue("Retry-After").isPresent());
            assertEquals(200, served.get("/health").statusCode());
            for (String each : open) served.delete(each);
        }
    }
}
