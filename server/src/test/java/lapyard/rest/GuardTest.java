package lapyard.rest;

import static lapyard.rest.Served.BED;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuardTest {
    private static final String SECRET = "a-token-of-26-characters-ok";

    @TempDir
    private static Path openFolder;

    @TempDir
    private static Path guardedFolder;

    private static Served open;
    private static Served guarded;
    private static String address;

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        open = new Served(openFolder);
        address = open.created(BED);
        guarded = new Served(guardedFolder, new Keys(List.of(Keys.Token.of(SECRET)), List.of()), GuardTest.class.getClassLoader());
    }

    @AfterAll
    static void stop() {
        open.close();
        guarded.close();
    }

    /** A page of another site whose name was rebound to this machine still sends that name as Host. */
    @ParameterizedTest(name = "Host {0} is {1}")
    @CsvSource({
        "localhost, 200",
        "localhost:9000, 200",
        "LOCALHOST, 200",
        "127.0.0.1:1, 200",
        "127.1.2.3, 200",
        "[::1]:80, 200",
        "elsewhere.example, 421",
        "localhost.elsewhere.example, 421",
        "127.0.0.1.elsewhere.example, 421",
        "elsewhere.example:8080, 421",
        "192.168.0.7, 421",
        "[::2], 421",
        "0.0.0.0, 421",
        "user@localhost, 421"
    })
    void onlyOurOwnNamesAreAnsweredTo(String host, int status) throws IOException {
        for (String path : List.of("/health", address)) {
            String answer = open.raw("GET " + path + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");
            assertTrue(answer.startsWith("HTTP/1.1 " + status + " "), answer);
        }
    }

    @ParameterizedTest(name = "Origin {0}, Sec-Fetch-Site {1} is {2}")
    @CsvSource({
        "http://localhost:8080, same-origin, 201",
        "https://localhost:8080, none, 201",
        "'', '', 201",
        "'', none, 201",
        "HTTP://LOCALHOST:8080, '', 201",
        "http://elsewhere.example, '', 403",
        "http://localhost:3000, '', 403",
        "http://localhost, '', 403",
        "null, '', 403",
        "'', cross-site, 403",
        "'', same-site, 403",
        "http://localhost:8080, cross-site, 403",
        "http://localhost:8080.elsewhere.example, '', 403"
    })
    void anotherSitesPageMayNotWrite(String origin, String site, int status) throws IOException {
        String headers = (origin.isEmpty() ? "" : "Origin: " + origin + "\r\n")
                + (site.isEmpty() ? "" : "Sec-Fetch-Site: " + site + "\r\n");
        String answer = open.raw("POST /api/gardens HTTP/1.1\r\nHost: localhost:8080\r\nConnection: close\r\n" + headers
                + "Content-Type: application/json\r\nContent-Length: " + BED.length() + "\r\n\r\n" + BED);
        assertTrue(answer.startsWith("HTTP/1.1 " + status + " "), answer);
    }

    @Test
    void everyMethodThatWritesIsGuarded() throws Exception {
        String[] foreign = {"Origin", "http://elsewhere.example", "If-Match", "*"};
        problem(403, open.post("/api/gardens", BED, foreign));
        problem(403, open.put(address, BED, foreign));
        problem(403, open.patch(address, "{}", foreign));
        problem(403, open.delete(address, foreign));
        problem(403, open.post(address + "/revisions/1/restore", "", foreign));
        problem(403, open.get(address, "Origin", "http://elsewhere.example"));
        assertEquals(200, open.get("/", "Origin", "http://elsewhere.example").statusCode());
    }

    @Test
    void aReadFromAnotherSiteGetsNoLeaveToShowWhatItGot() throws Exception {
        HttpResponse<String> got = open.get("/", "Origin", "http://elsewhere.example");
        assertTrue(got.headers().firstValue("Access-Control-Allow-Origin").isEmpty());
        assertEquals(
                "same-origin",
                got.headers().firstValue("Cross-Origin-Resource-Policy").orElseThrow());
    }

    @Test
    void everyAnswerCarriesTheGuardingHeaders() throws Exception {
        for (HttpResponse<String> answer : List.of(
                open.get("/health"),
                open.get("/none"),
                open.get(address),
                open.post("/api/gardens", "x"),
                open.get("/api/gardens", "Origin", "null"))) {
            Map<String, List<String>> headers = answer.headers().map();
            assertEquals(List.of("nosniff"), headers.get("X-Content-Type-Options"));
            assertTrue(headers.get("Content-Security-Policy").get(0).startsWith("default-src 'none'"));
            assertTrue(headers.get("Cache-Control").get(0).endsWith("no-cache"));
            assertEquals(1, headers.get("Date").size());
        }
    }

    @Test
    void withATokenNothingIsReadOrWrittenWithoutIt() throws Exception {
        for (String wrong : List.of(
                "",
                "Bearer",
                "Bearer ",
                "Bearer " + SECRET.substring(1),
                "Bearer " + SECRET + "x",
                "Basic " + SECRET,
                SECRET)) {
            String[] headers = wrong.isEmpty() ? new String[0] : new String[] {"Authorization", wrong};
            for (HttpResponse<String> refused : List.of(
                    guarded.get("/api/gardens", headers), guarded.post("/api/gardens", BED, headers),
                    guarded.get("/metrics", headers), guarded.get("/api/none", headers))) {
                problem(401, refused);
                assertEquals(
                        "Bearer realm=\"lapyard\"",
                        refused.headers().firstValue("WWW-Authenticate").orElseThrow());
            }
        }
        problem(401, guarded.get("/api/gardens?token=" + SECRET));
        assertEquals(
                201,
                guarded.post("/api/gardens", BED, "Authorization", "Bearer " + SECRET)
                        .statusCode());
        assertEquals(
                200,
                guarded.get("/api/gardens", "Authorization", "bearer " + SECRET).statusCode());
        assertEquals(200, guarded.get("/health").statusCode());
    }

    @Test
    void withATokenAnyNameOfTheMachineWillDo() throws IOException {
        String answer = guarded.raw("GET /api/gardens HTTP/1.1\r\nHost: beds.example\r\nConnection: close\r\n"
                + "Authorization: Bearer " + SECRET + "\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 200 "), answer);
    }

    @Test
    void noOtherMachineIsServedWithoutAToken() {
        for (String host : List.of("0.0.0.0", "::", "192.0.2.1")) {
            Binding binding = new Binding(host, 0, Keys.NONE, Optional.empty(), Set.of());
            IllegalArgumentException refused = assertThrows(
                    IllegalArgumentException.class,
                    () -> Server.start(binding, () -> open.store, open.desk, GuardTest.class.getClassLoader(), AccessLog.NONE));
            assertTrue(refused.getMessage().contains("--token-file"), refused.getMessage());
        }
    }

    @Test
    void aTokenThatCouldBeGuessedIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Keys.Token.of("short"));
        assertThrows(IllegalArgumentException.class, () -> Keys.Token.of("with spaces in it, but long enough"));
    }
}
