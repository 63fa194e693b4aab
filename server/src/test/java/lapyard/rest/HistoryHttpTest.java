package lapyard.rest;

import static lapyard.rest.Served.etag;
import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lapyard.store.Retention;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A garden's past: told, stamped, copied, carried away; and changes of several people put together. */
class HistoryHttpTest {
    private static final String TWO =
            "{\"name\":\"Yard\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"at\":[0,0]},"
                    + "{\"id\":\"C\",\"width\":2400,\"depth\":1200,\"at\":[800,1500]}]}";

    @TempDir
    private static Path folder;

    private static Served served;

    @BeforeAll
    static void start() throws IOException {
        served = new Served(folder);
    }

    @AfterAll
    static void stop() {
        served.close();
    }

    private static HttpResponse<String> saved(HttpResponse<String> answer) {
        assertEquals(200, answer.statusCode(), answer::body);
        return answer;
    }

    private static String put(String text, String from, String to) {
        assertTrue(text.contains(from), text);
        return text.replace(from, to);
    }

    @Test
    void theDifferenceOfAnyTwoRevisionsIsToldInWords() throws Exception {
        String address = served.created(TWO);
        String moved = put(TWO, "[800,1500]", "[1000,1500]");
        saved(served.put(address, moved, "If-Match", "\"1\""));
        saved(served.put(address, put(moved, "\"Yard\"", "\"Hof\""), "If-Match", "\"2\""));
        JsonNode told = json(served.get(address + "/difference?from=1&to=2"));
        assertEquals("[{\"where\":\"bed C\",\"text\":\"moved 200 right\"}]", told.path("lines").toString());
        assertEquals(2, json(served.get(address + "/difference?from=1")).path("lines").size());
        JsonNode back = json(served.get(address + "/difference?from=2&to=1"));
        assertEquals("moved 200 left", back.path("lines").get(0).path("text").asText());
        assertEquals("[]", json(served.get(address + "/difference?from=3")).path("lines").toString());
        problem(400, served.get(address + "/difference"));
        problem(400, served.get(address + "/difference?from=x"));
        problem(404, served.get(address + "/difference?from=9"));
        problem(404, served.get("/api/gardens/none/difference?from=1"));
    }

    @Test
    void aStampedAndAPrintedRevisionStayWhenTheOthersAreThinnedOut() throws Exception {
        String address = served.created(TWO);
        for (int revision = 1; revision < 8; revision++)
            saved(served.patch(address, "{\"name\":\"n" + revision + "\"}", "If-Match", "\"" + revision + "\""));
        assertEquals(204, served.put(address + "/revisions/3/stamp", "{\"stamp\":\"for the saw\"}").statusCode());
        assertEquals(200, served.get(address + "/plan.pdf", "Prefer", "ahead").statusCode());
        assertFalse(json(served.get(address + "/revisions")).path("revisions").get(0).has("printed"));
        assertEquals(200, served.get(address + "/plan.pdf").statusCode());
        JsonNode history = json(served.get(address + "/revisions"));
        assertEquals("for the saw", history.path("revisions").get(5).path("stamp").asText());
        assertTrue(history.path("revisions").get(0).path("printed").asBoolean());
        assertFalse(history.path("revisions").get(1).has("printed"));
        served.store.thin(new Retention(1, 1)); // nothing is a day old
        assertEquals(8, json(served.get(address + "/revisions")).path("revisions").size());
        assertEquals(204, served.delete(address + "/revisions/3/stamp").statusCode());
        assertFalse(json(served.get(address + "/revisions")).path("revisions").get(5).has("stamp"));
        problem(400, served.put(address + "/revisions/3/stamp", "{\"stamp\":7}"));
        problem(400, served.put(address + "/revisions/3/stamp", "{\"stamp\":\" \"}"));
        problem(404, served.put(address + "/revisions/33/stamp", "{\"stamp\":\"x\"}"));
        problem(404, served.delete("/api/gardens/none/revisions/3/stamp"));
    }

    @Test
    void aCopyIsAGardenOfItsOwn() throws Exception {
        String address = served.created(TWO);
        saved(served.patch(address, "{\"beds\":[]}", "If-Match", "\"1\""));
        HttpResponse<String> copy = served.post(address + "/copy?revision=1", "");
        assertEquals(201, copy.statusCode(), copy::body);
        JsonNode document = json(served.get(copy.headers().firstValue("Location").orElseThrow()));
        assertEquals("Copy of Yard", document.path("name").asText());
        assertEquals(2, document.path("beds").size());
        assertEquals(0, json(served.get(json(served.post(address + "/copy", "")).path("id").asText().isEmpty() ? "" : address))
                .path("beds").size());
        problem(404, served.post(address + "/copy?revision=7", ""));
        problem(404, served.post("/api/gardens/none/copy", ""));
        served.delete(address, "If-Match", "*");
        problem(410, served.post(address + "/copy", ""));
        assertEquals(201, served.post(address + "/copy?revision=1", "").statusCode());
    }

    /** A copy is another job: nothing of it is done, cut, bought or handed over, unless all that goes along. */
    @Test
    void aCopyIsANewJobUnlessWhatIsDoneGoesAlong() throws Exception {
        String done = "\"state\":\"ordered\",\"tally\":{\"done\":[{\"task\":\"A.set-out\"}]},\"handOver\":{\"snags\":[{\"text\":\"rim split\"}]},";
        String address = served.created(TWO.replaceFirst("\\{", "{" + done));
        for (String query : List.of("", "?done=true")) {
            JsonNode copy = json(served.get(served.post(address + "/copy" + query, "").headers().firstValue("Location").orElseThrow()));
            assertEquals(query.isEmpty() ? 0 : 3, Stream.of("state", "tally", "handOver").filter(copy::has).count(), copy.toString());
        }
        problem(400, served.post(address + "/copy?done=perhaps", ""));
    }

    @Test
    void aGardensFileBringsItsWholeHistoryToAnotherServer() throws Exception {
        String address = served.created(TWO);
        saved(served.put(address, put(TWO, "[800,1500]", "[1000,1500]"), "If-Match", "\"1\""));
        served.put(address + "/revisions/1/stamp", "{\"stamp\":\"first\"}");
        HttpResponse<String> file = served.get(address + "/file");
        assertTrue(file.headers().firstValue("Content-Disposition").orElseThrow().endsWith("-r2.garden.json\""));
        try (Served other = new Served(folder.resolve("other"))) {
            HttpResponse<String> in = other.post("/api/gardens/file", file.body());
            assertEquals(201, in.statusCode(), in::body);
            String brought = in.headers().firstValue("Location").orElseThrow();
            assertEquals(served.get(address).body(), other.get(brought).body());
            assertEquals(TWO, other.get(brought + "/revisions/1").body());
            JsonNode history = json(other.get(brought + "/revisions")).path("revisions");
            assertEquals("first", history.get(1).path("stamp").asText());
            assertEquals("\"2\"", etag(other.get(brought)));
            assertEquals(file.body(), other.get(brought + "/file").body());
        }
    }

    @Test
    void whatCannotBeRestoredIsMarkedAndChangesNothingWhenItIsAskedFor() throws Exception {
        String address = served.created(TWO);
        saved(served.put(address, put(TWO, "[800,1500]", "[1000,1500]"), "If-Match", "\"1\""));
        String file = served.get(address + "/file").body();
        String bad = file.replaceFirst("width\\\\\":[0-9]+", "width\\\\\":-5");
        assertFalse(bad.equals(file));
        HttpResponse<String> in = served.post("/api/gardens/file", bad);
        assertEquals(201, in.statusCode(), in::body);
        String brought = in.headers().firstValue("Location").orElseThrow();
        JsonNode history = json(served.get(brought + "/revisions")).path("revisions");
        assertFalse(history.get(0).has("refused"));
        assertTrue(history.get(1).path("refused").asBoolean());
        String stands = served.get(brought).body();
        problem(422, served.post(brought + "/revisions/1/restore", "", "If-Match", "\"2\""));
        assertEquals("\"2\"", etag(served.get(brought)));
        assertEquals(stands, served.get(brought).body());
        assertEquals(2, json(served.get(brought + "/revisions")).path("revisions").size());
        assertEquals(200, served.get(brought + "/job-sheet").statusCode());
        problem(412, served.post(brought + "/revisions/1/restore", "", "If-Match", "\"1\""));
    }

    @Test
    void aFileThatIsNoGardenFileIsRefusedByThePlace() throws Exception {
        String good = served.get(served.created(TWO) + "/file").body();
        List<String[]> bad = List.of(
                new String[] {"{}", "no garden file"},
                new String[] {good.replace("\"format\":1", "\"format\":2"), "no garden file"},
                new String[] {good.replaceAll("\"revisions\":\\[.*\\]", "\"revisions\":[]"), "1 to 20000"},
                new String[] {good.replace("\"number\":1", "\"number\":0"), "revision 1 of the file: its number"},
                new String[] {good.replace("\"created\"", "\"dreamt\""), "revision 1 of the file: its kind"},
                new String[] {good.replaceAll("\"saved\":\"[^\"]*\"", "\"saved\":\"today\""), "its saved should be"},
                new String[] {good.replaceAll("\"document\":.*", "\"document\":\"[]\"}]}"), "not an object"});
        for (String[] each : bad) {
            String detail = problem(400, served.post("/api/gardens/file", each[0])).path("detail").asText();
            assertTrue(detail.contains(each[1]), detail);
        }
        problem(422, served.post("/api/gardens/file", good.replace("2400", "0")));
        problem(413, served.post("/api/gardens/file", " ".repeat(BodyReader.LONG_LIMIT) + good));
    }

    @Test
    void changesOfDifferentBedsArePutTogetherWhenAskedTo() throws Exception {
        String address = served.created(TWO);
        saved(served.put(address, put(TWO, "[0,0]", "[50,0]"), "If-Match", "\"1\""));
        HttpResponse<String> merged =
                saved(served.put(address + "?merge=true", put(TWO, "[800,1500]", "[900,1500]"), "If-Match", "\"1\""));
        assertTrue(json(merged).path("merged").asBoolean());
        assertEquals("\"3\"", etag(merged));
        JsonNode both = json(served.get(address));
        assertEquals("[50,0]", both.path("beds").get(0).path("at").toString());
        assertEquals("[900,1500]", both.path("beds").get(1).path("at").toString());
        // sent again, as after a lost answer: both stand already and nothing is added
        HttpResponse<String> again =
                saved(served.put(address + "?merge=true", put(TWO, "[800,1500]", "[900,1500]"), "If-Match", "\"1\""));
        assertEquals("\"3\"", etag(again));
        problem(412, served.put(address, put(TWO, "[800,1500]", "[7,1500]"), "If-Match", "\"1\""));
        problem(428, served.put(address + "?merge=true", TWO));
        problem(400, served.put(address + "?merge=perhaps", TWO, "If-Match", "\"1\""));
        problem(412, served.put(address + "?merge=true", TWO, "If-Match", "\"77\""));
    }

    @Test
    void aMergeThatAsksForABedItLacksIsRefusedAndABedThatOthersTookOutIsNot() throws Exception {
        String address = served.created(TWO);
        String without = put(TWO, ",{\"id\":\"C\",\"width\":2400,\"depth\":1200,\"at\":[800,1500]}", "");
        String moved = put(TWO, "[0,0]", "[50,0]");
        String asking = "?merge=true&with=job-sheet&bed=";
        for (HttpResponse<String> refused : List.of(
                served.put(address + asking + "Q", moved, "If-Match", "\"1\""),
                served.patch(address + asking + "Q", "{\"name\":\"Hof\"}", "If-Match", "\"1\""))) {
            assertEquals("the garden has no bed Q: it has beds A, C", problem(400, refused).path("detail").asText());
        }
        assertEquals("\"1\"", etag(served.get(address)));
        saved(served.put(address, without, "If-Match", "\"1\""));
        JsonNode kept = json(saved(served.put(address + asking + "C", moved, "If-Match", "\"1\"")));
        assertFalse(kept.has("jobSheet"), "the bed is gone");
        assertEquals(put(without, "[0,0]", "[50,0]"), kept.path("document").toString());
    }

    @Test
    void aClashShowsBothSidesAndChangesNothing() throws Exception {
        String address = served.created(TWO);
        saved(served.put(address, put(TWO, "[800,1500]", "[1000,1500]"), "If-Match", "\"1\""));
        JsonNode clash = problem(
                409, served.put(address + "?merge=true", put(TWO, "[800,1500]", "[800,1600]"), "If-Match", "\"1\""));
        assertEquals(2, clash.path("revision").asInt());
        assertEquals(1, clash.path("clashes").size());
        JsonNode side = clash.path("clashes").get(0);
        assertEquals("bed C", side.path("where").asText());
        assertEquals("[800,1600]", side.path("mine").path("at").toString());
        assertEquals("[1000,1500]", side.path("theirs").path("at").toString());
        assertEquals("\"2\"", etag(served.get(address)));
    }

    @Test
    void aMergeThatCannotBeKeptIsRefusedByItsSnags() throws Exception {
        String address = served.created(TWO);
        saved(served.put(address, put(TWO, "[0,0]", "[50,0]"), "If-Match", "\"1\""));
        JsonNode refused = problem(
                422,
                served.patch(
                        address + "?merge=true",
                        "{\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"at\":[0,0]},{\"id\":\"C\",\"width\":0}]}",
                        "If-Match",
                        "\"1\""));
        assertEquals("bed C", refused.path("snags").get(0).path("where").asText());
    }
}
