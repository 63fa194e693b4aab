package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.etag;
import static lapyard.rest.Served.json;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is made from a garden, over HTTP. */
class SheetsHttpTest {
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
    void theJobSheetIsMadeOnceForOneText() throws Exception {
        String address = served.created(BED);
        HttpResponse<String> first = served.get(address + "/job-sheet");
        assertEquals(200, first.statusCode());
        assertEquals(
                "application/json", first.headers().firstValue("Content-Type").orElseThrow());
        assertEquals(2.88, json(first).path("beds").get(0).path("area").asDouble());
        assertEquals(first.body(), served.get(address + "/job-sheet").body());
        assertEquals(
                304,
                served.get(address + "/job-sheet", "If-None-Match", etag(first)).statusCode());
        assertEquals(
                first.body(), served.get(served.created(BED) + "/job-sheet").body());
        assertEquals(1, served.desk.made.get());
        served.put(address, BED.replace("2400", "3000"), "If-Match", "\"1\"");
        HttpResponse<String> changed = served.get(address + "/job-sheet", "If-None-Match", etag(first));
        assertEquals(200, changed.statusCode());
        assertEquals(3.6, json(changed).path("beds").get(0).path("area").asDouble());
        assertEquals(2, served.desk.made.get());
    }

    @Test
    void aPartOfTheJobSheetIsHandedOutAlone() throws Exception {
        String address = served.created(BED);
        assertEquals(
                "[{\"area\":2.88}]", served.get(address + "/job-sheet/take-off").body());
        assertEquals(
                "[{\"area\":2.88}]", served.get(address + "/job-sheet/take-off").body());
        assertEquals(1, served.desk.made.get());
    }

    @Test
    void aGardenIsWorkedOutWithoutBeingKept() throws Exception {
        HttpResponse<String> sheet = served.post("/api/job-sheet", BED);
        assertEquals(200, sheet.statusCode());
        assertEquals("Yard", json(sheet).path("garden").asText());
        assertEquals(0, json(served.get("/api/gardens")).path("total").asInt());
        JsonNode problem = problem(422, served.post("/api/job-sheet", BED.replace("1200", "-1")));
        assertEquals("bed A", problem.path("snags").get(0).path("where").asText());
    }

    @Test
    void thePlanIsDrawnInEachFormatWithScalePaperAndRevision() throws Exception {
        String address = served.created(BED);
        LocalDate today = LocalDate.ofInstant(
                served.store.find(address.substring(13)).orElseThrow().saved(), ZoneOffset.UTC);
        for (List<String> format : List.of(
                List.of("svg", "image/svg+xml"), List.of("pdf", "application/pdf"), List.of("png", "image/png"))) {
            HttpResponse<String> plan = served.get(address + "/plan." + format.get(0) + "?scale=25&paper=A4");
            assertEquals(200, plan.statusCode());
            assertEquals(
                    format.get(1), plan.headers().firstValue("Content-Type").orElseThrow());
            assertTrue(plan.body().contains("width=\"96.0mm\""), plan::body); // 2400 at 1:25
            assertTrue(plan.body().contains(format.get(0) + " A4 revision 1, " + today), plan::body);
            assertEquals(
                    304,
                    served.get(address + "/plan." + format.get(0) + "?scale=25&paper=A4", "If-None-Match", etag(plan))
                            .statusCode());
        }
    }

    @Test
    void aPlanThatDoesNotFitNamesTheScaleThatDoes() throws Exception {
        JsonNode problem = problem(422, served.get(served.created(BED) + "/plan.svg?scale=1"));
        assertEquals("Unknown field \"does not fit; 1:6 does\".", problem.path("snags").get(0).path("text").asText()); // 2400 / 420 = 5.7
    }

    @Test
    void benchSheetsAreHandedOutAndThoseOfAnOlderRevisionAreStale() throws Exception {
        String address = served.created(BED);
        for (String sheets : List.of("saw-day", "rolls")) {
            HttpResponse<String> pdf = served.get(address + "/" + sheets + ".pdf");
            assertEquals(200, pdf.statusCode());
            assertEquals("application/pdf", pdf.headers().firstValue("Content-Type").orElseThrow());
            assertTrue(pdf.body().startsWith(sheets + " fresh revision 1, "), pdf::body);
            assertEquals(304, served.get(address + "/" + sheets + ".pdf", "If-None-Match", etag(pdf)).statusCode());
            HttpResponse<String> svg = served.get(address + "/" + sheets + ".svg?page=1&mono=true&longest=3000");
            assertEquals("image/svg+xml", svg.headers().firstValue("Content-Type").orElseThrow());
        }
        served.put(address, BED.replace("2400", "3000"), "If-Match", "\"1\"");
        assertTrue(served.get(address + "/saw-day.pdf").body().startsWith("saw-day fresh revision 2, "));
        String old = served.get(address + "/saw-day.pdf?revision=1").body();
        assertTrue(old.startsWith("saw-day made from revision 1; the garden is at revision 2."), old);
        problem(404, served.get(address + "/saw-day.pdf?revision=3"));
        problem(422, served.get(address + "/saw-day.svg?page=2"));
        for (String wrong : List.of("page=0", "page=x", "mono=1", "longest=0", "cut=-1", "setting=2000", "revision=0"))
            problem(400, served.get(address + "/rolls.svg?" + wrong));
        problem(404, served.get(address + "/saw-night.pdf"));
    }

    @Test
    void weekendsAreHandedOutAsCalendarAndTable() throws Exception {
        String address = served.created(BED);
        HttpResponse<String> calendar = served.get(address + "/weekends.ics");
        assertEquals(200, calendar.statusCode());
        assertEquals("text/calendar;charset=utf-8", calendar.headers().firstValue("Content-Type").orElseThrow());
        assertTrue(calendar.body().endsWith(" 1"), calendar::body);
        served.put(address, BED.replace("2400", "3000"), "If-Match", "\"1\"");
        assertTrue(served.get(address + "/weekends.ics").body().endsWith(" 2"));
        assertTrue(served.get(address + "/weekends.csv").body().startsWith("weekend,item"));
    }

    @Test
    void aTryOutIsAnsweredAndNotKept() throws Exception {
        assertEquals(200, served.post("/api/try-out", "{\"garden\":{},\"changes\":[]}").statusCode());
        problem(422, served.post("/api/try-out", "{}"));
    }

    @Test
    void theSlipIsCsvToKeep() throws Exception {
        HttpResponse<String> slip = served.get(served.created(BED) + "/slip.csv");
        assertEquals(
                "text/csv;charset=utf-8",
                slip.headers().firstValue("Content-Type").orElseThrow());
        assertTrue(
                slip.headers().firstValue("Content-Disposition").orElseThrow().startsWith("attachment; filename=\""));
        assertEquals("item,need\r\ntimber,1\r\n", slip.body());
    }

    @Test
    void problemsAreSolvedByKind() throws Exception {
        assertEquals(
                "{\"name\":\"cutting\",\"pieces\":2}",
                served.post("/api/solve/cutting", "{\"pieces\":[1,2]}").body());
        assertEquals(
                "{\"name\":\"rolls\",\"pieces\":0}",
                served.post("/api/solve/rolls", "{\"pieces\":[]}").body());
        problem(422, served.post("/api/solve/cutting", "{}"));
    }

    @Test
    void theSchemaIsServed() throws Exception {
        HttpResponse<String> schema = served.get("/schema/garden.json");
        assertEquals(
                "application/schema+json",
                schema.headers().firstValue("Content-Type").orElseThrow());
        assertEquals("object", json(schema).path("type").asText());
    }

    @Test
    void healthAsksTheStoreAndCountersCount() throws Exception {
        assertEquals("ok", json(served.get("/health")).path("store").asText());
        String address = served.created(BED);
        served.get(address + "/job-sheet");
        served.get(address + "/job-sheet");
        served.put(address, BED.replace("2400", "2500"), "If-Match", "\"9\"");
        String counters = served.get("/metrics").body();
        for (String line : List.of(
                "lapyard_requests_total{method=\"POST\",status=\"201\"} 1",
                "lapyard_requests_total{method=\"PUT\",status=\"412\"} 1",
                "lapyard_saves_total 1",
                "lapyard_stale_saves_total 1",
                "lapyard_output_hits_total 1",
                "lapyard_output_misses_total 1"))
            assertTrue(counters.contains(line + "\n"), () -> line + " in " + counters);
    }

    /** Java's client offers HTTP/2 by an Upgrade header unless told not to, with bodies too. */
    @Test
    void aClientThatOffersAnotherProtocolIsServedInThisOne() throws Exception {
        HttpClient offering = HttpClient.newHttpClient();
        String name = "x".repeat(20_000);
        HttpResponse<String> created = offering.send(
                served.to("/api/gardens")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(BED.replace("Yard", name)))
                        .build(),
                BodyHandlers.ofString());
        assertEquals(201, created.statusCode(), created::body);
        assertEquals(HttpClient.Version.HTTP_1_1, created.version());
        String address = created.headers().firstValue("Location").orElseThrow();
        for (int i = 0; i < 2; i++) {
            HttpResponse<byte[]> got = offering.send(
                    served.to(address).header("Accept-Encoding", "gzip").build(), BodyHandlers.ofByteArray());
            assertEquals("gzip", got.headers().firstValue("Content-Encoding").orElseThrow());
            byte[] text = new GZIPInputStream(new ByteArrayInputStream(got.body())).readAllBytes();
            assertEquals(BED.replace("Yard", name), new String(text, StandardCharsets.UTF_8));
        }
    }

    @Test
    void aStoreThatFailsIsToldWithoutItsInsides() throws Exception {
        served.created(BED);
        served.store.close();
        for (String path : List.of("/health", "/api/gardens")) {
            HttpResponse<String> failed = served.get(path);
            JsonNode problem = problem(503, failed);
            assertEquals(failed.headers().firstValue("X-Request-Id").orElseThrow(), problem.path("id").asText());
            assertEquals("5", failed.headers().firstValue("Retry-After").orElseThrow());
        }
    }

    @Test
    void aVariationIsBetweenTwoRevisionsOrTheOneThatStands() throws Exception {
        String address = served.created(BED);
        served.put(address, BED.replace("[{", "[{\"id\":\"B\",\"width\":1800,\"depth\":900},{"), "If-Match", "\"1\"");
        assertEquals("{\"before\":1,\"after\":2}", served.get(address + "/variation?from=1&to=2").body());
        assertEquals("{\"before\":1,\"after\":2}", served.get(address + "/variation?from=1").body());
        HttpResponse<String> sheet = served.get(address + "/variation.pdf?from=1");
        assertEquals("application/pdf", sheet.headers().firstValue("Content-Type").orElseThrow());
        assertTrue(sheet.body().startsWith("revision 1, ") && sheet.body().contains(" to revision 2, "), sheet.body());
        problem(404, served.get(address + "/variation?from=9"));
        problem(400, served.get(address + "/variation?from=x"));
    }

    @Test
    void aMerchantsListIsReadWithoutBeingKept() throws Exception {
        assertEquals("the list is empty", json(served.post("/api/merchant-list", "{\"list\":\"item,price\"}")).at("/bad/0/text").asText());
        assertEquals(0, json(served.get("/api/gardens")).path("total").asInt());
        assertEquals(200, served.get("/api/example-catalogue").statusCode());
        problem(400, served.post("/api/merchant-list", "[]"));
    }

    @Test
    void oneSuppliersOrderIsAskedForByItsCode() throws Exception {
        String address = served.created(BED);
        assertTrue(served.get(address + "/slip.csv?supplier=mill").headers().firstValue("Content-Disposition").orElseThrow()
                .endsWith("-r1-slip-mill.csv\""));
        problem(400, served.get(address + "/slip.csv?supplier=a%20b"));
    }
}
