package lapyard.rest;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.answers.Answer;
import lapyard.working.OwnFile;
import org.glassfish.grizzly.http.Method;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/** The page: a fixed table of what lies under {@code META-INF/resources/} of the class path, and nothing else. */
final class PageFiles {
    private static final String FOLDER = "META-INF/resources/";
    private static final Map<String, String> TYPES = Map.ofEntries(
            Map.entry("html", "text/html; charset=utf-8"),
            Map.entry("js", "text/javascript; charset=utf-8"),
            Map.entry("mjs", "text/javascript; charset=utf-8"),
            Map.entry("css", "text/css; charset=utf-8"),
            Map.entry("json", "application/json"),
            Map.entry("webmanifest", "application/manifest+json"),
            Map.entry("svg", "image/svg+xml"),
            Map.entry("png", "image/png"),
            Map.entry("ico", "image/x-icon"),
            Map.entry("woff2", "font/woff2"),
            Map.entry("txt", "text/plain; charset=utf-8"));
    private static final String POLICY = "default-src 'none'; script-src 'self'%s; style-src 'self';"
            + " img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; manifest-src 'self';"
            + " worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    /** Sources and development builds inside library jars, which no page asks for. */
    private static final Pattern LEFT_OUT = Pattern.compile("webjars/.*/(src|development|node|test)/.*");

    private static final Pattern INLINE_SCRIPT =
            Pattern.compile("<script(?![^>]*\\bsrc=)[^>]*>(.*?)</script>", Pattern.DOTALL);

    /** All modules as one, and all style sheets as one: see {@link PageBundle}. */
    private static final String SCRIPT = "/page.js";

    private static final String STYLES = "/page.css";

    private final ClassLoader loader;
    private final Map<String, String> resources = new HashMap<>();
    private final ConcurrentHashMap<String, PageFile> read = new ConcurrentHashMap<>();

    private record PageFile(Answer output, String type, String policy) {}

    PageFiles(ClassLoader loader) {
        this.loader = loader;
        for (String file : Packed.files(loader, FOLDER)) {
            String ending = file.substring(file.lastIndexOf('.') + 1);
            if (TYPES.containsKey(ending) && !LEFT_OUT.matcher(file).matches())
                resources.put("/" + file, FOLDER + file);
        }
        if (resources.containsKey("/index.html")) resources.put("/", resources.get("/index.html"));
        if (resources.containsKey("/main.js")) resources.put(SCRIPT, FOLDER + "main.js");
        if (resources.containsKey("/css/all.css")) resources.put(STYLES, FOLDER + "css/all.css");
    }

    boolean has(String path) {
        return resources.containsKey(path);
    }

    /** Answers for a path of the table. */
    void serve(String path, Request request, Response response) throws IOException {
        boolean head = request.getMethod().equals(Method.HEAD);
        if (!head && !request.getMethod().equals(Method.GET)) {
            FrontHandler.notAllowed(response, "GET, HEAD");
            return;
        }
        PageFile file = file(path);
        String tag = Tags.quoted(file.output().tag());
        response.setHeader("ETag", tag);
        response.setHeader("Cache-Control", "no-cache");
        response.setHeader("Content-Security-Policy", file.policy());
        if (Tags.has(request.getHeader("If-None-Match"), tag)) {
            response.setStatus(304);
            return;
        }
        response.setContentType(file.type());
        response.setContentLength(file.output().bytes().length);
        if (!head) response.getOutputStream().write(file.output().bytes());
    }

    private PageFile file(String path) {
        PageFile known = read.get(path);
        if (known != null) return known;
        String resource = resources.get(path);
        byte[] bytes = switch (path) {
            case SCRIPT -> PageBundle.script("main.js", this::text).getBytes(StandardCharsets.UTF_8);
            case STYLES -> PageBundle.styles(text("css/all.css"), this::text).getBytes(StandardCharsets.UTF_8);
            default -> OwnFile.bytes(loader, resource);
        };
        String type = TYPES.get(resource.substring(resource.lastIndexOf('.') + 1));
        String policy = String.format(POLICY, type.startsWith("text/html") ? inlineScripts(bytes) : "");
        PageFile file = new PageFile(Answer.of(bytes), type, policy);
        read.put(path, file);
        return file;
    }

    private String text(String file) {
        return new String(OwnFile.bytes(loader, FOLDER + file), StandardCharsets.UTF_8);
    }

    /** The page's own inline scripts, such as its import map, are let through by their hash. */
    private static String inlineScripts(byte[] html) {
        StringBuilder sources = new StringBuilder();
        Matcher script = INLINE_SCRIPT.matcher(new String(html, StandardCharsets.UTF_8));
        while (script.find()) {
            byte[] digest = Answer.sha256().digest(script.group(1).getBytes(StandardCharsets.UTF_8));
            sources.append(" 'sha256-")
                    .append(Base64.getEncoder().encodeToString(digest))
                    .append('\'');
        }
        return sources.toString();
    }
}
