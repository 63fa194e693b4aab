package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.etag;
import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Gardens over HTTP, status by status. Statuses and headers are those of RFC 9110 and RFC 6585 (428). */
class GardensHttpTest {
    private static final String WIDER = BED.replace("2400", "3000");
    private static final String STOPPED = BED.replace("2400", "0");

    @TempDir
    private Path folder;

    private Served served;

    @BeforeEach
    void start() throws IOException {
        served = new Served(folder);
    }

    @AfterEach
    void stop() {
        served.close();
    }

    @Test
    void aGardenIsCreatedReadAndComesBackAsItWasGiven() throws Exception {
        String spaced = BED.replace(",", " ,\n ");
        HttpResponse<String> created = served.post("/api/gardens", spaced);
        assertEquals(201, created.statusCode());
        assertEquals("\"1\"", etag(created));
        assertEquals("Yard", json(created).path("name").asText());
        String address = created.headers().firstValue("Location").orElseThrow();
        assertEquals("/api/gardens/" + json(created).path("id").asText(), address);
        HttpResponse<String> got = served.get(address);
        assertEquals(200, got.statusCode());
        assertEquals("\"1\"", etag(got));
        assertEquals(
                "application/json", got.headers().firstValue("Content-Type").orElseThrow());
        assertEquals(spaced, got.body());
        assertEquals(304, served.get(address, "If-None-Match", "\"1\"").statusCode());
        assertEquals(200, served.get(address, "If-None-Match", "\"2\"").statusCode());
    }

    @Test
    void headAnswersAsGetWithoutTheBody() throws Exception {
        String address = served.created(BED);
        HttpResponse<String> head = served.send("HEAD", address, BodyPublishers.noBody());
        assertEquals(200, head.statusCode());
        assertEquals("\"1\"", etag(head));
        assertEquals("", head.body());
    }

    @Test
    void aBedThatCannotBeIsRefusedWithPlaceAmountAndWay() throws Exception {
        JsonNode problem = problem(422, served.post("/api/gardens", STOPPED));
        JsonNode snag = problem.path("snags").get(0);
        assertEquals("STOP", snag.path("weight").asText());
        assertEquals("bed A", snag.path("where").asText());
        assertEquals(0, snag.path("amount").path("value").asDouble());
        assertEquals("mm", snag.path("amount").path("unit").asText());
        assertEquals("Give a value from 1 mm to 6000 mm", snag.path("ways").get(0).asText());
        assertEquals(0, json(served.get("/api/gardens")).path("total").asInt());
    }

    @Test
    void aSnagIsKeptAndNamedInTheReceipt() throws Exception {
        HttpResponse<String> created = served.post("/api/gardens", BED.replace("2400", "6100"));
        assertEquals(201, created.statusCode());
        assertEquals(
                100,
                json(created).path("snags").get(0).path("amount").path("value").asDouble());
    }

    @Test
    void aChangeNeedsTheRevisionItWasMadeFrom() throws Exception {
        String address = served.created(BED);
        assertEquals(
                1, problem(428, served.put(address, WIDER)).path("revision").asInt());
        problem(428, served.patch(address, "{\"name\":\"Other\"}"));
        problem(428, served.delete(address));
        problem(428, served.post(address + "/revisions/1/restore", ""));
        assertEquals("\"1\"", etag(served.get(address)));

        HttpResponse<String> put = served.put(address, WIDER, "If-Match", "\"1\"");
        assertEquals(200, put.statusCode());
        assertEquals("\"2\"", etag(put));
        HttpResponse<String> patched =
                served.patch(address, "{\"name\":\"Other\",\"x\":{\"y\":1}}", "If-Match", "\"2\"");
        assertEquals(200, patched.statusCode());
        assertEquals("\"3\"", etag(patched));
        JsonNode document = json(served.get(address));
        assertEquals("Other", document.path("name").asText());
        assertEquals(3000, document.path("beds").get(0).path("width").asInt());
        HttpResponse<String> deleted = served.delete(address, "If-Match", "\"3\"");
        assertEquals(200, deleted.statusCode());
        assertEquals("\"4\"", etag(deleted));
    }

    @Test
    void aStaleChangeIsToldWhatChangedSinceAndOverwritesNothing() throws Exception {
        String address = served.created(BED);
        served.put(address, WIDER.replace("Yard", "Court"), "If-Match", "\"1\"");
        for (HttpResponse<String> stale : List.of(
                served.put(address, BED.replace("1200", "1300"), "If-Match", "\"1\""),
                served.patch(address, "{\"name\":\"Mine\"}", "If-Match", "\"1\""),
                served.delete(address, "If-Match", "\"1\""),
                served.post(address + "/revisions/1/restore", "", "If-Match", "\"1\""))) {
            JsonNode problem = problem(412, stale);
            assertEquals(2, problem.path("revision").asInt());
            assertEquals(1, problem.path("yours").asInt());
            assertEquals("[\"beds\",\"name\"]", problem.path("changed").toString());
        }
        assertEquals(WIDER.replace("Yard", "Court"), served.get(address).body());
        assertEquals(
                2, json(served.get(address + "/revisions")).path("revisions").size());
    }

    @Test
    void aTagThatIsNoRevisionOfItIsStaleToo() throws Exception {
        String address = served.created(BED);
        for (String tag : List.of("\"9\"", "\"abc\"", "1", "\"99999999999999999999\"")) {
            JsonNode problem = problem(412, served.put(address, WIDER, "If-Match", tag));
            assertEquals(1, problem.path("revision").asInt());
            assertFalse(problem.has("changed"));
        }
    }

    @Test
    void tagsInAListAndAStarAreUnderstoodAndAWeakTagMatchesNothing() throws Exception {
        String address = served.created(BED);
        assertEquals(200, served.put(address, WIDER, "If-Match", "\"7\", \"1\"").statusCode());
        // RFC 9110, 13.1.1: If-Match takes the strong comparison
        assertEquals(412, served.put(address, BED, "If-Match", "W/\"2\"").statusCode());
        HttpResponse<String> star = served.put(address, BED, "If-Match", "*");
        assertEquals(200, star.statusCode());
        assertEquals("\"3\"", etag(star));
    }

    @Test
    void aRepeatedSaveIsAnsweredAsTheFirst() throws Exception {
        String address = served.created(BED);
        assertEquals("\"2\"", etag(served.put(address, WIDER, "If-Match", "\"1\"")));
        HttpResponse<String> again = served.put(address, WIDER, "If-Match", "\"1\"");
        assertEquals(200, again.statusCode());
        assertEquals("\"2\"", etag(again));
        assertEquals(
                2, json(served.get(address + "/revisions")).path("revisions").size());
    }

    @Test
    void aPatchThatChangesNothingAddsNoRevision() throws Exception {
        String address = served.created(BED);
        assertEquals("\"1\"", etag(served.patch(address, "{\"none\":null}", "If-Match", "\"1\"")));
    }

    @Test
    void aPatchLeavesNumbersAsTheyWereWritten() throws Exception {
        String exact = "{\"name\":\"N\",\"a\":1.10,\"b\":12345678901234567890.125,\"c\":1E+40,\"beds\":[]}";
        String address = served.created(exact);
        served.patch(address, "{\"name\":\"M\"}", "If-Match", "\"1\"");
        assertEquals(exact.replace("\"N\"", "\"M\""), served.get(address).body());
    }

    @Test
    void aPatchThatEndsInAStopIsRefused() throws Exception {
        String address = served.created(BED);
        problem(422, served.patch(address, "{\"beds\":[{\"width\":-5,\"depth\":1}]}", "If-Match", "\"1\""));
        assertEquals("\"1\"", etag(served.get(address)));
    }

    @Test
    void whatIsNotThereIsNotFound() throws Exception {
        for (String path : List.of(
                "/api/gardens/none",
                "/api/gardens/none/revisions",
                "/api/gardens/none/job-sheet",
                "/api/gardens/none/plan.svg",
                "/api/gardens/none/slip.csv",
                "/api/none",
                "/none",
                "/api/samples/none",
                "/api/gardens/%2e%2e%2fx",
                "/api/gardens/a%20b")) problem(404, served.get(path));
        problem(404, served.put("/api/gardens/none", BED, "If-Match", "\"1\""));
        problem(404, served.patch("/api/gardens/none", "{}", "If-Match", "\"1\""));
        problem(404, served.delete("/api/gardens/none", "If-Match", "\"1\""));
        String address = served.created(BED);
        problem(404, served.get(address + "/revisions/2"));
        problem(404, served.get(address + "/job-sheet/none"));
        problem(404, served.get(address + "/plan.gif"));
        problem(404, served.post(address + "/revisions/2/restore", "", "If-Match", "\"1\""));
        problem(404, served.post("/api/solve/none", "{}"));
    }

    @Test
    void aDeletedGardenIsGoneAndComesBackByRestoring() throws Exception {
        String address = served.created(BED);
        served.delete(address, "If-Match", "\"1\"");
        assertEquals(2, problem(410, served.get(address)).path("revision").asInt());
        problem(410, served.get(address + "/job-sheet"));
        problem(410, served.put(address, WIDER, "If-Match", "\"2\""));
        problem(410, served.delete(address, "If-Match", "\"2\""));
        assertEquals(0, json(served.get("/api/gardens")).path("gardens").size());
        assertEquals(
                1, json(served.get("/api/gardens?deleted=true")).path("gardens").size());
        HttpResponse<String> history = served.get(address + "/revisions");
        assertTrue(json(history).path("deleted").asBoolean());
        HttpResponse<String> back = served.post(address + "/revisions/1/restore", "", "If-Match", etag(history));
        assertEquals(200, back.statusCode(), back::body);
        assertEquals("\"3\"", etag(back));
        assertEquals(BED, served.get(address).body());
    }

    @Test
    void theHistoryNamesEveryRevisionAndHandsOutEach() throws Exception {
        String address = served.created(BED);
        served.put(address, WIDER, "If-Match", "\"1\"");
        served.post(address + "/revisions/1/restore", "", "If-Match", "\"2\"");
        HttpResponse<String> history = served.get(address + "/revisions");
        assertEquals("\"3\"", etag(history));
        JsonNode lines = json(history).path("revisions");
        assertEquals(3, lines.size());
        assertEquals("restored", lines.get(0).path("kind").asText());
        assertEquals(1, lines.get(0).path("restored").asInt());
        assertEquals("created", lines.get(2).path("kind").asText());
        HttpResponse<String> second = served.get(address + "/revisions/2");
        assertEquals(WIDER, second.body());
        assertEquals("\"2\"", etag(second));
        JsonNode part = json(served.get(address + "/revisions?limit=2"));
        assertEquals(address + "/revisions?before=2&limit=2", part.path("next").asText());
        assertEquals(
                1,
                json(served.get(part.path("next").asText())).path("revisions").size());
    }

    @Test
    void theListIsHandedOutInPages() throws Exception {
        for (String name : List.of("Elm", "Ash", "Oak", "Fir", "Bay")) served.created(BED.replace("Yard", name));
        List<String> names = new ArrayList<>();
        String next = "/api/gardens?limit=2";
        while (!next.isEmpty()) {
            HttpResponse<String> page = served.get(next);
            assertEquals(5, json(page).path("total").asInt());
            json(page).path("gardens").forEach(row -> names.add(row.path("name").asText()));
            next = json(page).path("next").asText();
            String link = next.isEmpty() ? "" : "<" + next + ">; rel=\"next\"";
            assertEquals(link, page.headers().firstValue("Link").orElse(""));
        }
        assertEquals(List.of("Ash", "Bay", "Elm", "Fir", "Oak"), names);
    }

    /** The plain questions are answered without the resource library; one that weighs its answers asks the library. */
    @Test
    void theFirstAnswersAreThoseOfTheResources() throws Exception {
        for (int i = 0; i <= 51; i++) {
            for (String path : List.of("/api/gardens", "/health")) {
                HttpResponse<String> first = served.get(path);
                HttpResponse<String> resource = served.get(path, "Accept", "application/json, */*;q=0.5");
                assertEquals(resource.body(), first.body());
                assertEquals(resource.statusCode(), first.statusCode());
                assertEquals(headers(resource), headers(first));
            }
            served.post("/api/gardens", Served.BED);
        }
        assertTrue(served.get("/api/gardens").headers().firstValue("Link").isPresent());
    }

    /** Those that do not differ from request to request. */
    private static Map<String, List<String>> headers(HttpResponse<String> answer) {
        Map<String, List<String>> headers = new TreeMap<>(answer.headers().map());
        headers.keySet().removeAll(List.of("connection", "date", "x-request-id"));
        return headers;
    }

    @Test
    void parametersThatMakeNoSenseAreRefusedByName() throws Exception {
        String address = served.created(BED);
        for (String path : List.of(
                "/api/gardens?limit=0",
                "/api/gardens?limit=201",
                "/api/gardens?limit=x",
                address + "/revisions?limit=-1",
                address + "/plan.svg?scale=0",
                address + "/plan.svg?scale=99999999999"))
            assertTrue(problem(400, served.get(path)).path("detail").asText().contains("whole number"), path);
        problem(400, served.get("/api/gardens?after=../x"));
        problem(400, served.get("/api/gardens?deleted=yes"));
        problem(400, served.get(address + "/plan.svg?paper=%3Cb%3E"));
        problem(400, served.get(address + "/revisions/x"));
        problem(400, served.post(address + "/revisions/0/restore", "", "If-Match", "\"1\""));
    }
}
