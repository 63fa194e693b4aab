package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.json.GardenReader;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;

/** Runs the tests of the page's modules, {@code web/src/test}, in the browser that runs the page. */
@ExtendWith(Open.class)
class ModulesIT {
    private static final Map<String, String> TYPES =
            Map.of("html", "text/html; charset=utf-8", "js", "text/javascript; charset=utf-8", "json", "application/json");

    @TestFactory
    Stream<DynamicTest> modulesKeepTheirSentences() throws IOException {
        HttpServer files = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
        files.createContext("/", ModulesIT::serve);
        files.start();
        try (Browser browser = Browser.open()) {
            browser.driver.get("http://127.0.0.1:" + files.getAddress().getPort() + "/test/index.html");
            browser.until("the module tests do not end", "return Array.isArray(window.results)");
            @SuppressWarnings("unchecked")
            List<Map<String, String>> results = (List<Map<String, String>>) browser.js("return window.results");
            assertTrue(results.size() >= PageSources.below(PageSources.TESTS, ".test.js").size(), "tests are missing: " + browser.complaints());
            return results.stream()
                    .map(result -> DynamicTest.dynamicTest(result.get("sentence"), () -> assertNull(result.get("error"), result.get("error"))))
                    .toList()
                    .stream();
        } finally {
            files.stop(0);
        }
    }

    private static void serve(HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath();
        byte[] body = null;
        if (path.equals("/test/all.js")) {
            body = all().getBytes(StandardCharsets.UTF_8);
        } else if (path.equals("/test/schema.json")) {
            body = GardenReader.schema().getBytes(StandardCharsets.UTF_8);
        } else {
            Path file = PageSources.WEB.resolve(path.substring(1)).normalize();
            if (file.startsWith(PageSources.WEB) && Files.isRegularFile(file)) body = Files.readAllBytes(file);
        }
        try (exchange) {
            exchange.getResponseHeaders()
                    .set("Content-Type", TYPES.getOrDefault(path.substring(path.lastIndexOf('.') + 1), "text/plain"));
            exchange.sendResponseHeaders(body == null ? 404 : 200, body == null ? -1 : body.length);
            if (body != null) exchange.getResponseBody().write(body);
        }
    }

    /** Every test of the folder, so that none is forgotten in a list. */
    private static String all() {
        String imports = PageSources.below(PageSources.TESTS, ".test.js").stream()
                .map(test -> "import './" + test + "';")
                .collect(Collectors.joining("\n"));
        return imports + "\nimport { runAll } from './trial.js';\nwindow.results = await runAll();\n";
    }
}
