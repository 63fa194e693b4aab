package lapyard.rest;

import static lapyard.rest.Served.etag;
import static lapyard.rest.Served.problem;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The page out of a real jar and a real folder, made here, as it comes out of the program's jar or a build folder. */
class PageFilesTest {
    private static final String SCRIPT = "{\"imports\":{\"lit\":\"/webjars/lit/1/index.js\"}}";
    private static final String PAGE = "<!doctype html><script type=\"importmap\">" + SCRIPT
            + "</script><script type=\"module\" src=\"/app.js\"></script><title>Höfe</title>";
    private static final String LONG_SCRIPT = "export const yard = 1; // chalk\n".repeat(500);
    private static final Map<String, String> IN_JAR = Map.of(
            "META-INF/resources/index.html", PAGE,
            "META-INF/resources/app.js", LONG_SCRIPT,
            "META-INF/resources/elements/yard.css", "main { color: #23303a }",
            "META-INF/resources/webjars/lit/1/index.js", "export {}",
            "META-INF/resources/webjars/lit/1/development/index.js", "debug()",
            "META-INF/resources/notes.secret", "nothing to serve",
            "lapyard/samples/hall.json", "{\"name\":\"Hall\",\"beds\":[]}",
            "lapyard/samples/field.json", "{\"name\":\"Field\",\"beds\":[]}",
            "lapyard/samples/README.md", "no sample");
    private static final String FIELD_OF_ANOTHER_JAR = "lapyard/other.json";

    @TempDir
    private static Path folder;

    private static URLClassLoader files;
    private static Served served;

    @BeforeAll
    static void start() throws IOException {
        Path jar = folder.resolve("page.jar");
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar))) {
            for (String parent : List.of("META-INF/", "META-INF/resources/", "lapyard/", "lapyard/samples/"))
                out.putNextEntry(new JarEntry(parent));
            for (Map.Entry<String, String> file : IN_JAR.entrySet()) add(out, file.getKey(), file.getValue());
            add(out, FIELD_OF_ANOTHER_JAR, "{}");
        }
        Path plain = Files.createDirectories(folder.resolve("plain/META-INF/resources/icons"));
        Files.writeString(plain.resolve("bed.svg"), "<svg/>");
        files = new URLClassLoader(
                new URL[] {jar.toUri().toURL(), folder.resolve("plain/").toUri().toURL()}, null);
        served = new Served(folder.resolve("data"), Keys.NONE, files);
    }

    private static void add(JarOutputStream out, String name, String text) throws IOException {
        out.putNextEntry(new JarEntry(name));
        ((OutputStream) out).write(text.getBytes(StandardCharsets.UTF_8));
    }

    @AfterAll
    static void stop() throws IOException {
        served.close();
        files.close();
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "/, text/html;charset=utf-8",
        "/index.html, text/html;charset=utf-8",
        "/app.js, text/javascript;charset=utf-8",
        "/elements/yard.css, text/css;charset=utf-8",
        "/icons/bed.svg, image/svg+xml",
        "/webjars/lit/1/index.js, text/javascript;charset=utf-8"
    })
    void filesOfThePageAreServedWithTheirType(String path, String type) throws Exception {
        HttpResponse<String> file = served.get(path);
        assertEquals(200, file.statusCode());
        assertEquals(
                type,
                file.headers()
                        .firstValue("Content-Type")
                        .orElseThrow()
                        .replace("; ", ";")
                        .toLowerCase());
    }

    @Test
    void theRootIsThePage() throws Exception {
        assertEquals(PAGE, served.get("/").body());
        assertEquals(etag(served.get("/index.html")), etag(served.get("/")));
    }

    @ParameterizedTest(name = "{0} is not reachable")
    @ValueSource(
            strings = {
                "/notes.secret",
                "/webjars/lit/1/development/index.js",
                "/elements",
                "/elements/",
                "/META-INF/resources/app.js",
                "/../lapyard/samples/hall.json",
                "/%2e%2e/lapyard/samples/hall.json",
                "/..%2flapyard/samples/hall.json",
                "/lapyard/samples/hall.json",
                "/app.js/",
                "//app.js",
                "/app.js%00",
                "/app.js;x",
                "/APP.JS",
                "/elements%5cyard.css"
            })
    void nothingElseIsReachable(String path) throws Exception {
        String answer = served.raw("GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 4"), answer);
        Served.assertShowsNoInsides(answer);
    }

    @Test
    void everyFileHasItsOwnTagAndIsSentOnce() throws Exception {
        String tag = etag(served.get("/app.js"));
        assertNotEquals(tag, etag(served.get("/")));
        HttpResponse<String> again = served.get("/app.js", "If-None-Match", "\"x\", W/" + tag);
        assertEquals(304, again.statusCode());
        assertEquals(tag, etag(again));
        assertEquals("", again.body());
        assertEquals(200, served.get("/app.js", "If-None-Match", "\"x\"").statusCode());
        assertEquals("no-cache", again.headers().firstValue("Cache-Control").orElseThrow());
    }

    @Test
    void headIsAnsweredWithTheLengthAndOtherMethodsAreNot() throws Exception {
        HttpResponse<String> head = served.send("HEAD", "/app.js", BodyPublishers.noBody());
        assertEquals(200, head.statusCode());
        assertEquals(
                LONG_SCRIPT.length(),
                head.headers().firstValueAsLong("Content-Length").orElseThrow());
        for (String method : List.of("POST", "PUT", "DELETE", "OPTIONS")) {
            HttpResponse<String> refused = served.send(method, "/app.js", BodyPublishers.noBody());
            problem(405, refused);
            assertEquals("GET, HEAD", refused.headers().firstValue("Allow").orElseThrow());
        }
    }

    @Test
    void longFilesAreCompressedForThoseWhoTakeIt() throws Exception {
        HttpResponse<byte[]> zipped = java.net.http.HttpClient.newHttpClient()
                .send(served.to("/app.js").header("Accept-Encoding", "gzip").build(), BodyHandlers.ofByteArray());
        assertEquals("gzip", zipped.headers().firstValue("Content-Encoding").orElseThrow());
        assertTrue(zipped.headers().allValues("Vary").contains("Accept-Encoding"), () -> "" + zipped.headers());
        assertTrue(zipped.body().length < LONG_SCRIPT.length() / 4, () -> zipped.body().length + " bytes");
        assertArrayEquals(
                LONG_SCRIPT.getBytes(StandardCharsets.UTF_8),
                new GZIPInputStream(new ByteArrayInputStream(zipped.body())).readAllBytes());
    }

    /** Content Security Policy Level 3, 2.3.1: a hash source is the base64 of the SHA-256 of the script's text. */
    @Test
    void thePageMayRunItsOwnFilesAndItsOwnInlineScriptOnly() throws Exception {
        String policy =
                served.get("/").headers().firstValue("Content-Security-Policy").orElseThrow();
        byte[] hash = MessageDigest.getInstance("SHA-256").digest(SCRIPT.getBytes(StandardCharsets.UTF_8));
        String source = "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
        assertTrue(policy.contains("script-src 'self' " + source + ";"), policy);
        assertTrue(policy.contains("default-src 'none'"), policy);
        assertTrue(policy.contains("frame-ancestors 'none'"), policy);
        assertTrue(!policy.contains("unsafe"), policy);
        assertEquals(List.of(policy), served.get("/").headers().allValues("Content-Security-Policy"));
    }

    @Test
    void samplesAreListedAndHandedOut() throws Exception {
        assertEquals(
                "[{\"id\":\"field\",\"name\":\"Field\"},{\"id\":\"hall\",\"name\":\"Hall\"}]",
                served.get("/api/samples").body());
        assertEquals(
                IN_JAR.get("lapyard/samples/hall.json"),
                served.get("/api/samples/hall").body());
        problem(404, served.get("/api/samples/README"));
        problem(404, served.get("/api/samples/..%2fother"));
    }
}
