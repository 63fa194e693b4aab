package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is sent, the answer is a refusal in plain words: never a 5xx, never the program's insides. */
class BadRequestsTest {
    private static final int OVER_THE_LIMIT = 6 * 1024 * 1024;

    @TempDir
    private static Path folder;

    private static Served served;
    private static String address;

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        served = new Served(folder);
        address = served.created(BED);
    }

    @AfterAll
    static void stop() {
        served.close();
    }

    private static List<HttpResponse<String>> everywhere(BodyPublisher body) throws IOException, InterruptedException {
        String json = "application/json";
        return List.of(
                served.send("POST", "/api/gardens", body, "Content-Type", json),
                served.send("PUT", address, body, "Content-Type", json, "If-Match", "\"1\""),
                served.send(
                        "PATCH", address, body, "Content-Type", "application/merge-patch+json", "If-Match", "\"1\""),
                served.send("POST", "/api/job-sheet", body, "Content-Type", json),
                served.send("POST", "/api/solve/cutting", body, "Content-Type", json));
    }

    @ParameterizedTest(name = "{0} of a job sheet is refused")
    @CsvSource(delimiter = '|', textBlock = """
            ?parts=,           | parts names nothing: give words with commas between, or leave it out
            ?parts=,,&bed=A    | parts names nothing: give words with commas between, or leave it out
            ?bed=Q             | the garden has no bed Q: it has bed A
            ?parts=slip&bed=a  | the garden has no bed a: it has bed A
            """)
    void whatAJobSheetDoesNotHaveIsNamedWithWhatThereIs(String asked, String detail) throws Exception {
        for (HttpResponse<String> refused : List.of(
                served.get(address + "/job-sheet" + asked),
                served.send("POST", "/api/job-sheet" + asked, BodyPublishers.ofString(BED), "Content-Type", "application/json"),
                served.put(address + asked + "&with=job-sheet", BED.replace("2400", "2500"), "If-Match", "\"1\""))) {
            assertEquals(detail, problem(400, refused).path("detail").asText());
        }
        assertEquals("\"1\"", Served.etag(served.get(address)));
    }

    @ParameterizedTest(name = "{0} is refused")
    @ValueSource(
            strings = {
                "",
                " \n",
                "x",
                "{",
                "}",
                "[",
                "[]",
                "\"text\"",
                "12",
                "null",
                "true",
                "{\"a\":}",
                "{\"a\":1,}",
                "{'a':1}",
                "{\"a\":NaN}",
                "{\"a\":Infinity}",
                "{\"a\":01}",
                "{\"a\":1}{\"b\":2}",
                "{\"a\":1} x",
                "{\"a\":1,\"a\":2}",
                "{\"a\":\"\\ud8\"}",
                "{\"a\":\"\u0001\"}",
                "{\"a\":1e}",
                "<garden/>",
                "name: yard"
            })
    void aBodyThatIsNoJsonObjectIsRefused(String body) throws Exception {
        for (HttpResponse<String> response : everywhere(BodyPublishers.ofString(body))) problem(400, response);
    }

    @Test
    void theRefusalNamesThePlace() throws Exception {
        String detail = problem(400, served.post("/api/gardens", "{\"name\":\"a\",\n \"beds\": oops}"))
                .path("detail")
                .asText();
        assertTrue(detail.contains("line 2, column 1"), detail);
        assertTrue(problem(400, served.post("/api/gardens", "{\"name\":\"a\",\"name\":\"b\"}"))
                .path("detail")
                .asText()
                .contains("twice"));
        assertTrue(problem(400, served.post("/api/gardens", "{\"name\":"))
                .path("detail")
                .asText()
                .contains("not JSON"));
    }

    @Test
    void deepNestingIsRefusedByItsDepth() throws Exception {
        for (String deep :
                List.of("{\"a\":" + "[".repeat(41), "{\"a\":".repeat(100_000), "{\"a\":" + "[".repeat(1_000_000)))
            for (HttpResponse<String> response : everywhere(BodyPublishers.ofString(deep)))
                assertTrue(problem(400, response).path("detail").asText().contains("nested deeper than 40 brackets"));
        String allowed = "{\"name\":\"deep\",\"x\":" + "[".repeat(38) + "]".repeat(38) + "}";
        assertEquals(201, served.post("/api/gardens", allowed).statusCode());
    }

    @Test
    void aNumberThatIsTooLongIsRefused() throws Exception {
        for (HttpResponse<String> response : everywhere(BodyPublishers.ofString("{\"a\":" + "9".repeat(200_000) + "}")))
            assertTrue(problem(400, response).path("detail").asText().contains("more than 100 digits"));
    }

    @Test
    void aBodyOverTheLimitIsRefusedWhetherItsLengthIsToldOrNot() throws Exception {
        byte[] big = ("{\"name\":\"" + "x".repeat(OVER_THE_LIMIT) + "\"}").getBytes(StandardCharsets.UTF_8);
        for (HttpResponse<String> response : everywhere(BodyPublishers.ofByteArray(big))) problem(413, response);
        BodyPublisher chunked = BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(big));
        for (HttpResponse<String> response : everywhere(chunked)) problem(413, response);
    }

    @Test
    void aBodyJustUnderTheLimitIsRead() throws Exception {
        String big = "{\"name\":\"big\",\"note\":\"" + "x".repeat(5 * 1024 * 1024 - 100) + "\"}";
        assertEquals(201, served.post("/api/gardens", big).statusCode());
    }

    @ParameterizedTest(name = "{0} {1} as {2} is {3}")
    @CsvSource({
        "POST, /api/gardens, text/plain, 415",
        "POST, /api/gardens, application/x-www-form-urlencoded, 415",
        "POST, /api/gardens, application/merge-patch+json, 415",
        "POST, /api/gardens, application/json; charset=utf-16, 415",
        "POST, /api/gardens, application/json; charset=UTF-8, 201",
        "POST, /api/gardens, nonsense, 400",
        "POST, /api/job-sheet, text/html, 415",
        "POST, /api/solve/rolls, text/csv, 415",
    })
    void theContentTypeIsHeldTo(String method, String path, String type, int status) throws Exception {
        HttpResponse<String> response = served.send(method, path, BodyPublishers.ofString(BED), "Content-Type", type);
        if (status < 400) assertEquals(status, response.statusCode());
        else problem(status, response);
    }

    @Test
    void aPatchMustSayThatItIsAMergePatch() throws Exception {
        problem(
                415,
                served.send(
                        "PATCH",
                        address,
                        BodyPublishers.ofString("{}"),
                        "Content-Type",
                        "application/json",
                        "If-Match",
                        "\"1\""));
    }

    @Test
    void aBodyWithoutAContentTypeIsRefused() throws Exception {
        problem(415, served.send("POST", "/api/gardens", BodyPublishers.ofString(BED)));
        problem(415, served.send("PUT", address, BodyPublishers.ofString(BED), "If-Match", "\"1\""));
    }

    @ParameterizedTest(name = "{0} {1} is 405")
    @CsvSource({
        "DELETE, /api/gardens", "PUT, /api/gardens", "PATCH, /api/gardens", "POST, /api/gardens/x",
        "POST, /api/gardens/x/job-sheet", "DELETE, /health", "PUT, /metrics", "GET, /api/job-sheet",
        "GET, /api/solve/cutting", "DELETE, /api/samples", "POST, /schema/garden.json", "BREW, /api/gardens",
        "PROPFIND, /health"
    })
    void aMethodThatIsNotTakenIsRefusedWithThoseThatAre(String method, String path) throws Exception {
        HttpResponse<String> response = served.send(method, path, BodyPublishers.noBody());
        problem(405, response);
        assertTrue(
                response.headers().firstValue("Allow").orElse("").matches(".*(GET|POST).*"),
                () -> "" + response.headers());
    }

    @Test
    void traceIsNotAnswered() throws Exception {
        assertEquals(405, served.send("TRACE", "/", BodyPublishers.noBody()).statusCode());
    }

    @Test
    void anAnswerInAFormThatIsNotMadeIsRefused() throws Exception {
        problem(406, served.get(address, "Accept", "image/webp"));
    }

    @Test
    void otherEncodingsAreRefusedByNameAndAByteOrderMarkIsTaken() throws Exception {
        String utf16 = problem(
                        400,
                        served.send(
                                "POST",
                                "/api/gardens",
                                BodyPublishers.ofByteArray(BED.getBytes(StandardCharsets.UTF_16)),
                                "Content-Type",
                                "application/json"))
                .path("detail")
                .asText();
        assertTrue(utf16.contains("UTF-16"), utf16);
        byte[] latin = "{\"name\":\"Höfe\"}".getBytes(StandardCharsets.ISO_8859_1);
        for (HttpResponse<String> response : everywhere(BodyPublishers.ofByteArray(latin))) problem(400, response);
        assertEquals(201, served.post("/api/gardens", "\ufeff" + BED).statusCode());
    }

    @Test
    void randomBytesAreRefused() throws Exception {
        Random random = new Random(41);
        for (int i = 0; i < 60; i++) {
            byte[] noise = new byte[1 + random.nextInt(400)];
            random.nextBytes(noise);
            if (i % 2 == 0) noise[0] = '{';
            for (HttpResponse<String> response : everywhere(BodyPublishers.ofByteArray(noise))) problem(400, response);
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "GET /api/gardens/%zz HTTP/1.1",
                "GET /%00 HTTP/1.1",
                "GET /api/gardens/%ff%fe HTTP/1.1",
                "GET /../../etc/passwd HTTP/1.1",
                "GET /%2e%2e/%2e%2e/x HTTP/1.1",
                "GET /..%2f..%2fx HTTP/1.1",
                "GET //api//gardens HTTP/1.1",
                "GET /api/gardens/a|b\"c<d> HTTP/1.1",
                "GET /api/gardens?limit=%zz HTTP/1.1",
                "GET /api/gardens?a=[]{}|^` HTTP/1.1",
                "GET /api/gardens/; HTTP/1.1",
                "GET /api/gardens;a=b HTTP/1.1",
                "GET api HTTP/1.1",
                "GET * HTTP/1.1",
                "OPTIONS * HTTP/1.1",
                "GET http://127.0.0.1/none HTTP/1.1",
                "GET http://[/ HTTP/1.1",
                "G\u00e9T / HTTP/1.1",
                "GET / HTTP/3.7",
                "GET /",
                "GET / x y HTTP/1.1",
                "nonsense",
                "GET /\\..\\x HTTP/1.1",
                "GET /api/gardens/\u00ff HTTP/1.1"
            })
    void oddRequestLinesGetNoInsides(String line) throws Exception {
        String answer = served.raw(line + "\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
        assertTrue(answer.isEmpty() || answer.matches("(?s)HTTP/1\\.[01] ([234]|505).*"), answer); // 505: its version
        Served.assertShowsNoInsides(answer);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Content-Length: abc",
                "Content-Length: -1",
                "Content-Length: 99999999999999999999",
                "Content-Length: 2\r\nContent-Length: 3",
                "Transfer-Encoding: nonsense",
                "If-Match: \u00ff\u0001",
                "Accept: ;;;",
                "Accept: nonsense",
                "Accept-Encoding: \u00ff",
                "Content-Type: \u00ff/\u00ff",
                "Cookie: \u00ff=;",
                "Accept-Language: ,,;q=x",
                "If-None-Match: \"",
                "If-None-Match: x",
                "If-Modified-Since: never",
                "Range: bytes=x",
                "Expect: miracles",
                "X: ",
                ": x",
                "Host: 127.0.0.1"
            })
    void oddHeadersGetNoInsides(String header) throws Exception {
        for (String line : List.of("GET " + address, "PUT " + address, "POST /api/gardens")) {
            String answer = served.raw(line + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n"
                    + "Content-Type: application/json\r\n" + header + "\r\n\r\n{}");
            assertTrue(answer.isEmpty() || answer.matches("(?s)HTTP/1\\.[01] [234].*"), answer);
            Served.assertShowsNoInsides(answer);
        }
    }

    @Test
    void aBodyThatBreaksOffIsNotKept() throws Exception {
        String total = served.get("/api/gardens").body();
        for (String length : List.of("Content-Length: 500", "Transfer-Encoding: chunked")) {
            String answer = served.rawAndNoMore("POST /api/gardens HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n"
                    + "Content-Type: application/json\r\n" + length + "\r\n\r\n"
                    + (length.contains("chunked") ? "1f4\r\n" : "") + "{}");
            assertTrue(answer.isEmpty() || answer.startsWith("HTTP/1.1 4"), answer);
            Served.assertShowsNoInsides(answer);
        }
        assertEquals(total, served.get("/api/gardens").body());
    }

    @Test
    void headersWithoutEndAreRefused() throws Exception {
        String answer = served.raw("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX: " + "x".repeat(100_000) + "\r\n\r\n");
        assertTrue(answer.isEmpty() || answer.startsWith("HTTP/1.1 4"), answer);
        Served.assertShowsNoInsides(answer);
    }
}
