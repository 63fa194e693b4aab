package lapyard.rest;

import static lapyard.rest.Served.BED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.io.IOException;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import lapyard.answers.GardenDesk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code openapi.json} says what the server does: no operation, parameter, status or form more or less. */
class OpenApiTest {
    /** Answered before any resource is reached, or only where something breaks: each has a test of its own. */
    private static final Set<String> EVERYWHERE = Set.of("401", "403", "408", "413", "421", "429", "500", "503", "507");

    private static final JsonMapper MAPPER = new JsonMapper();
    private static final String BEDS = "{\"name\":\"Yard\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200}]}";
    private static final String STOP = "{\"beds\":[{\"id\":\"A\",\"width\":0,\"depth\":1}]}";

    /** Held so that the level stays: it warns of the parts of OpenAPI that are no schema. */
    private static final java.util.logging.Logger SCHEMAS = java.util.logging.Logger.getLogger("com.networknt.schema");

    static {
        SCHEMAS.setLevel(java.util.logging.Level.SEVERE);
    }

    @TempDir
    private java.nio.file.Path folder;

    private final JsonNode api = Documents.object(ApiResource.text());

    /** Operations of the resources by reflection, such as {@code get /api/gardens/{id}}, with their parameters. */
    private static Map<String, Set<String>> ofResources() throws Exception {
        Map<String, Set<String>> operations = new TreeMap<>();
        java.nio.file.Path classes =
                java.nio.file.Path.of(Server.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        try (Stream<java.nio.file.Path> files = Files.walk(classes)) {
            for (java.nio.file.Path file : files.filter(each -> each.toString().endsWith(".class")).toList()) {
                String name = classes.relativize(file).toString().replace('/', '.').replaceAll("\\.class$", "");
                if (!name.startsWith("lapyard.")) continue;
                Class<?> type = Class.forName(name, false, Server.class.getClassLoader());
                if (type.isAnnotationPresent(Path.class)) add(operations, type);
            }
        }
        return operations;
    }

    private static void add(Map<String, Set<String>> operations, Class<?> type) {
        for (Method method : type.getDeclaredMethods()) {
            for (Annotation annotation : method.getAnnotations()) {
                HttpMethod verb = annotation.annotationType().getAnnotation(HttpMethod.class);
                if (verb == null) continue;
                String own = method.isAnnotationPresent(Path.class) ? method.getAnnotation(Path.class).value() : "";
                String path = ("/" + type.getAnnotation(Path.class).value() + "/" + own)
                        .replaceAll("\\{ *([a-z]+) *:[^}]*\\}", "{$1}")
                        .replaceAll("/+", "/")
                        .replaceAll("(.)/$", "$1");
                Set<String> parameters = new TreeSet<>();
                for (Parameter parameter : method.getParameters()) {
                    if (parameter.isAnnotationPresent(QueryParam.class))
                        parameters.add("query " + parameter.getAnnotation(QueryParam.class).value());
                    if (parameter.isAnnotationPresent(HeaderParam.class))
                        parameters.add("header " + parameter.getAnnotation(HeaderParam.class).value());
                }
                // a parameter that stands for files by their names is one operation for each
                String files = own.startsWith("{file:") ? own.replaceAll("\\{file: |}|\\\\", "") : "{file}";
                for (String file : files.split("\\|")) operations.put(verb.value().toLowerCase(Locale.ROOT) + " " + path.replace("{file}", file), parameters);
            }
        }
    }

    private JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? api.at(node.path("$ref").asText().substring(1)) : node;
    }

    private Map<String, Set<String>> ofDescription() {
        Map<String, Set<String>> operations = new TreeMap<>();
        for (Map.Entry<String, JsonNode> path : api.path("paths").properties())
            for (Map.Entry<String, JsonNode> method : path.getValue().properties()) {
                Set<String> parameters = new TreeSet<>();
                Set<String> inPath = new TreeSet<>();
                for (JsonNode given : method.getValue().path("parameters")) {
                    JsonNode parameter = resolved(given);
                    String name = parameter.path("name").asText();
                    if (parameter.path("in").asText().equals("path")) inPath.add("{" + name + "}");
                    else parameters.add(parameter.path("in").asText() + " " + name);
                }
                String operation = method.getKey() + " " + path.getKey();
                Set<String> named = new TreeSet<>();
                java.util.regex.Matcher part = java.util.regex.Pattern.compile("\\{[a-z]+\\}").matcher(path.getKey());
                while (part.find()) named.add(part.group());
                assertEquals(named, inPath, operation);
                operations.put(operation, parameters);
            }
        return operations;
    }

    /** An empty page as PDF, base64. */
    private static String onePage() {
        try (org.apache.pdfbox.pdmodel.PDDocument document = new org.apache.pdfbox.pdmodel.PDDocument()) {
            document.addPage(new org.apache.pdfbox.pdmodel.PDPage());
            java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
            document.save(out);
            return java.util.Base64.getEncoder().encodeToString(out.toByteArray());
        } catch (java.io.IOException failed) {
            throw new java.io.UncheckedIOException(failed);
        }
    }

    @Test
    void everyOperationOfEveryResourceIsDescribedWithItsParameters() throws Exception {
        Map<String, Set<String>> described = ofDescription();
        assertEquals(Set.of(), described.remove("get /api/gardens/{id}/events")); // answered before the resources
        Map<String, Set<String>> resources = ofResources();
        assertEquals(resources.keySet(), described.keySet(), "openapi.json beside Server.java describes every operation");
        resources.forEach((operation, parameters) -> assertEquals(parameters, described.get(operation), operation));
    }

    @Test
    void everyNameIsThereAndEveryOperationHasItsOwn() {
        Set<String> ids = new TreeSet<>();
        for (JsonNode path : api.path("paths"))
            for (JsonNode operation : path) assertTrue(ids.add(operation.path("operationId").asText()));
        for (JsonNode reference : api.findValues("$ref"))
            assertFalse(api.at(reference.asText().substring(1)).isMissingNode(), reference::asText);
        assertEquals("3.1.0", api.path("openapi").asText());
    }

    private record Call(int status, String operation, String path, String body, String... headers) {}

    /** Every operation in every way it may end, less what is answered everywhere. */
    private static List<Call> calls(String g, String gone, String share, String solve) {
        String none = "/api/gardens/none";
        String[] any = {"If-Match", "*"};
        List<Call> calls = new ArrayList<>(List.of(
                new Call(200, "get /api/gardens", "/api/gardens?limit=1", ""),
                new Call(400, "get /api/gardens", "/api/gardens?limit=0", ""),
                new Call(400, "get /api/gardens", "/api/gardens?deleted=true&archived=true", ""),
                new Call(400, "get /api/gardens", "/api/gardens?state=begun", ""),
                new Call(200, "get /api/gardens", "/api/gardens?find=yard&state=pencilled&order=client&archived=true", ""),
                new Call(201, "post /api/gardens", "/api/gardens", BEDS),
                new Call(400, "post /api/gardens", "/api/gardens", "[]"),
                new Call(422, "post /api/gardens", "/api/gardens", STOP),
                new Call(200, "get /api/gardens/{id}", g, ""),
                new Call(404, "get /api/gardens/{id}", none, ""),
                new Call(410, "get /api/gardens/{id}", gone, ""),
                new Call(404, "get /api/gardens/{id}/events", none + "/events", ""),
                new Call(410, "get /api/gardens/{id}/events", gone + "/events", ""),
                new Call(201, "post /api/gardens/{id}/copy", g + "/copy", ""),
                new Call(400, "post /api/gardens/{id}/copy", g + "/copy?revision=x", ""),
                new Call(404, "post /api/gardens/{id}/copy", none + "/copy", ""),
                new Call(410, "post /api/gardens/{id}/copy", gone + "/copy", ""),
                new Call(200, "get /api/gardens/{id}/file", g + "/file", ""),
                new Call(404, "get /api/gardens/{id}/file", none + "/file", ""),
                new Call(201, "post /api/gardens/file", "/api/gardens/file", file(BEDS)),
                new Call(400, "post /api/gardens/file", "/api/gardens/file", "{}"),
                new Call(422, "post /api/gardens/file", "/api/gardens/file", file(STOP)),
                new Call(200, "get /api/gardens/{id}/difference", g + "/difference?from=1", ""),
                new Call(400, "get /api/gardens/{id}/difference", g + "/difference", ""),
                new Call(404, "get /api/gardens/{id}/difference", g + "/difference?from=99", ""),
                new Call(200, "get /api/gardens/{id}/revisions", g + "/revisions", ""),
                new Call(400, "get /api/gardens/{id}/revisions", g + "/revisions?limit=x", ""),
                new Call(404, "get /api/gardens/{id}/revisions", none + "/revisions", ""),
                new Call(200, "get /api/gardens/{id}/revisions/{number}", g + "/revisions/1", ""),
                new Call(400, "get /api/gardens/{id}/revisions/{number}", g + "/revisions/x", ""),
                new Call(404, "get /api/gardens/{id}/revisions/{number}", g + "/revisions/99", ""),
                new Call(204, "put /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/1/stamp", "{\"stamp\":\"s\"}"),
                new Call(400, "put /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/1/stamp", "{}"),
                new Call(404, "put /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/99/stamp", "{\"stamp\":\"s\"}"),
                new Call(415, "put /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/1/stamp", "x", "Content-Type", "text/plain"),
                new Call(204, "delete /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/1/stamp", ""),
                new Call(400, "delete /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/x/stamp", ""),
                new Call(404, "delete /api/gardens/{id}/revisions/{number}/stamp", g + "/revisions/99/stamp", ""),
                new Call(200, "get /api/gardens/{id}/shares", g + "/shares", ""),
                new Call(404, "get /api/gardens/{id}/shares", none + "/shares", ""),
                new Call(201, "post /api/gardens/{id}/shares", g + "/shares", "{\"label\":\"x\"}"),
                new Call(400, "post /api/gardens/{id}/shares", g + "/shares", "{}"),
                new Call(201, "post /api/gardens/{id}/shares", g + "/shares", "{\"label\":\"x\",\"ends\":null}"),
                new Call(400, "post /api/gardens/{id}/shares", g + "/shares", "{\"label\":\"x\",\"ends\":\"tomorrow\"}"),
                new Call(404, "post /api/gardens/{id}/shares", none + "/shares", "{\"label\":\"x\"}"),
                new Call(410, "post /api/gardens/{id}/shares", gone + "/shares", "{\"label\":\"x\"}"),
                new Call(201, "post /api/gardens/{id}/photos", g + "/photos", PHOTO),
                new Call(400, "post /api/gardens/{id}/photos", g + "/photos", "{}"),
                new Call(404, "post /api/gardens/{id}/photos", none + "/photos", PHOTO),
                new Call(410, "post /api/gardens/{id}/photos", gone + "/photos", PHOTO),
                new Call(422, "post /api/gardens/{id}/photos", g + "/photos", "{\"photo\":\"R0lGODlh\"}"),
                new Call(200, "get /api/gardens/{id}/photos", g + "/photos", ""),
                new Call(404, "get /api/gardens/{id}/photos", none + "/photos", ""),
                new Call(200, "get /api/gardens/{id}/photos/{photo}", g + "/photos/" + PHOTO_ID, ""),
                new Call(404, "get /api/gardens/{id}/photos/{photo}", none + "/photos/" + PHOTO_ID, ""),
                new Call(204, "delete /api/gardens/{id}/photos/{photo}", g + "/photos/" + PHOTO_ID, ""),
                new Call(404, "delete /api/gardens/{id}/photos/{photo}", g + "/photos/" + PHOTO_ID, ""),
                new Call(204, "delete /api/gardens/{id}/shares/{share}", share, ""),
                new Call(404, "delete /api/gardens/{id}/shares/{share}", share, ""),
                new Call(200, "get /api/gardens/{id}/job-sheet", g + "/job-sheet", ""),
                new Call(200, "get /api/gardens/{id}/job-sheet", g + "/job-sheet?parts=beds,searches,yard&bed=A", ""),
                new Call(400, "get /api/gardens/{id}/job-sheet", g + "/job-sheet?parts=benches", ""),
                new Call(404, "get /api/gardens/{id}/job-sheet", none + "/job-sheet", ""),
                new Call(410, "get /api/gardens/{id}/job-sheet", gone + "/job-sheet", ""),
                new Call(200, "get /api/gardens/{id}/job-sheet/{part}", g + "/job-sheet/slip", ""),
                new Call(400, "get /api/gardens/{id}/job-sheet/{part}", g + "/job-sheet/a.b", ""),
                new Call(404, "get /api/gardens/{id}/job-sheet/{part}", g + "/job-sheet/none", ""),
                new Call(410, "get /api/gardens/{id}/job-sheet/{part}", gone + "/job-sheet/slip", ""),
                new Call(200, "get /api/gardens/{id}/{sheets}.{format}", g + "/plan.svg", ""),
                new Call(200, "get /api/gardens/{id}/{sheets}.{format}", g + "/plan.pdf", ""),
                new Call(200, "get /api/gardens/{id}/{sheets}.{format}", g + "/plan.png", ""),
                new Call(422, "get /api/gardens/{id}/{sheets}.{format}", g + "/plan.svg?scale=1", ""),
                new Call(200, "get /api/gardens/{id}/{sheets}.{format}", g + "/saw-day.pdf", ""),
                new Call(200, "get /api/gardens/{id}/{sheets}.{format}", g + "/saw-day.svg", ""),
                new Call(400, "get /api/gardens/{id}/{sheets}.{format}", g + "/saw-day.pdf?page=0", ""),
                new Call(404, "get /api/gardens/{id}/{sheets}.{format}", g + "/none.pdf", ""),
                new Call(410, "get /api/gardens/{id}/{sheets}.{format}", gone + "/saw-day.pdf", ""),
                new Call(422, "get /api/gardens/{id}/{sheets}.{format}", g + "/saw-day.svg?page=999", ""),
                new Call(200, "get /api/gardens/{id}/slip.csv", g + "/slip.csv", ""),
                new Call(400, "get /api/gardens/{id}/slip.csv", g + "/slip.csv?supplier=a!b", ""),
                new Call(200, "get /api/shelf", "/api/shelf", ""),
                new Call(201, "post /api/shelf", "/api/shelf", PIECE),
                new Call(400, "post /api/shelf", "/api/shelf", "{}"),
                new Call(422, "post /api/shelf", "/api/shelf", "{\"kind\":\"crew\",\"name\":\"x\",\"content\":{\"none\":1}}"),
                new Call(200, "get /api/shelf/{piece}", "/api/shelf/p", ""),
                new Call(400, "get /api/shelf/{piece}", "/api/shelf/p?revision=x", ""),
                new Call(404, "get /api/shelf/{piece}", "/api/shelf/none", ""),
                new Call(428, "put /api/shelf/{piece}", "/api/shelf/p", PIECE),
                new Call(412, "put /api/shelf/{piece}", "/api/shelf/p", PIECE, "If-Match", "\"7\""),
                new Call(400, "put /api/shelf/{piece}", "/api/shelf/p", "{}", any),
                new Call(404, "put /api/shelf/{piece}", "/api/shelf/none", PIECE, any),
                new Call(415, "put /api/shelf/{piece}", "/api/shelf/p", "x", "Content-Type", "text/plain"),
                new Call(422, "put /api/shelf/{piece}", "/api/shelf/p", "{\"name\":\"x\",\"content\":{\"none\":1}}", any),
                new Call(200, "put /api/shelf/{piece}", "/api/shelf/p", PIECE, any),
                new Call(428, "post /api/gardens/{id}/shelf", g + "/shelf", "{\"piece\":\"p\"}"),
                new Call(412, "post /api/gardens/{id}/shelf", g + "/shelf", "{\"piece\":\"p\"}", "If-Match", "\"99\""),
                new Call(400, "post /api/gardens/{id}/shelf", g + "/shelf", "x", any),
                new Call(404, "post /api/gardens/{id}/shelf", none + "/shelf", "{\"piece\":\"p\"}", any),
                new Call(410, "post /api/gardens/{id}/shelf", gone + "/shelf", "{\"piece\":\"p\"}", any),
                new Call(409, "post /api/gardens/{id}/shelf", "/api/gardens/quoted/shelf", "{\"piece\":\"p\"}", any),
                new Call(422, "post /api/gardens/{id}/shelf", "/api/gardens/older/shelf", "{\"piece\":\"p\"}", any),
                new Call(200, "post /api/gardens/{id}/shelf", "/api/gardens/taker/shelf", "{\"piece\":\"p\",\"revision\":1}", any),
                new Call(200, "get /api/gardens/{id}/shelf", g + "/shelf", ""),
                new Call(404, "get /api/gardens/{id}/shelf", none + "/shelf", ""),
                new Call(410, "get /api/gardens/{id}/shelf", gone + "/shelf", ""),
                new Call(200, "get /api/shelf/{piece}/gardens", "/api/shelf/p/gardens?effect=true", ""),
                new Call(400, "get /api/shelf/{piece}/gardens", "/api/shelf/p/gardens?effect=x", ""),
                new Call(404, "get /api/shelf/{piece}/gardens", "/api/shelf/none/gardens", ""),
                new Call(204, "delete /api/shelf/{piece}", "/api/shelf/p", ""),
                new Call(404, "delete /api/shelf/{piece}", "/api/shelf/none", ""),
                new Call(200, "post /api/site-file", "/api/site-file", "{\"file\":\"x,y\\n0,0\\n5,0\\n5,4\\n\",\"unit\":\"m\",\"take\":{\"\":\"outline\"}}"),
                new Call(400, "post /api/site-file", "/api/site-file", "x"),
                new Call(422, "post /api/site-file", "/api/site-file", "{}"),
                new Call(200, "post /api/merchant-list", "/api/merchant-list", "{\"list\":\"section,length,price\\n100x200,4800,36\\n\"}"),
                new Call(400, "post /api/merchant-list", "/api/merchant-list", "x"),
                new Call(200, "post /api/try-out", "/api/try-out", "{\"garden\":" + BEDS + ",\"changes\":[{\"bed\":\"A\",\"set\":{\"courses\":2}}]}"),
                new Call(400, "post /api/try-out", "/api/try-out", "x"),
                new Call(422, "post /api/try-out", "/api/try-out", "{}"),
                new Call(422, "post /api/merchant-list", "/api/merchant-list", "{}"),
                new Call(404, "get /api/gardens/{id}/slip.csv", none + "/slip.csv", ""),
                new Call(410, "get /api/gardens/{id}/slip.csv", gone + "/slip.csv", ""),
                new Call(200, "post /api/job-sheet", "/api/job-sheet", BEDS),
                new Call(200, "post /api/job-sheet", "/api/job-sheet?parts=yard,slip,searches", BEDS),
                new Call(400, "post /api/job-sheet", "/api/job-sheet", "x"),
                new Call(200, "post /api/site-plan", "/api/site-plan", "{\"pdf\":\"" + onePage() + "\"}"),
                new Call(400, "post /api/site-plan", "/api/site-plan", "{\"pdf\":\"?\"}"),
                new Call(413, "post /api/site-plan", "/api/site-plan", "{\"pdf\":\"" + "AAAA".repeat(1_200_001) + "\"}"),
                new Call(422, "post /api/site-plan", "/api/site-plan", "{\"pdf\":\"" + "AAAA".repeat(9) + "\"}"),
                new Call(200, "post /api/job-sheet/{part}", "/api/job-sheet/loads", BEDS),
                new Call(400, "post /api/job-sheet/{part}", "/api/job-sheet/loads", "x"),
                new Call(404, "post /api/job-sheet/{part}", "/api/job-sheet/nothing", BEDS),
                new Call(422, "post /api/job-sheet/{part}", "/api/job-sheet/loads", STOP),
                new Call(422, "post /api/job-sheet", "/api/job-sheet", STOP),
                new Call(200, "post /api/solve/{kind}", "/api/solve/cutting", "{\"pieces\":[]}"),
                new Call(202, "post /api/solve/{kind}", "/api/solve/rolls", "{\"pieces\":[]}", "Prefer", "respond-async"),
                new Call(200, "post /api/solve/{kind}", "/api/solve/sizes?seconds=1", "{\"beds\":[]}"),
                new Call(200, "post /api/solve/{kind}", "/api/solve/lay-out", "{\"beds\":[]}"),
                new Call(422, "post /api/solve/{kind}", "/api/solve/sizes", "{\"beds\":[{\"width\":2400,\"depth\":1200}]}"),
                new Call(422, "post /api/solve/{kind}", "/api/solve/lay-out", "{\"beds\":[{\"width\":2400,\"depth\":1200}]}"),
                new Call(400, "post /api/solve/{kind}", "/api/solve/cutting?seconds=x", "{\"pieces\":[]}"),
                new Call(422, "post /api/solve/{kind}", "/api/solve/cutting", "{}"),
                new Call(200, "get /api/solves/{id}", solve, ""),
                new Call(404, "get /api/solves/{id}", "/api/solves/none", ""),
                new Call(202, "delete /api/solves/{id}", solve, ""),
                new Call(404, "delete /api/solves/{id}", "/api/solves/none", ""),
                new Call(200, "get /api/sheets", "/api/sheets", ""),
                new Call(200, "get /api/example-catalogue", "/api/example-catalogue", ""),
                new Call(200, "get /api/samples", "/api/samples", ""),
                new Call(200, "get /api/samples/{id}", "/api/samples/village-hall", ""),
                new Call(404, "get /api/samples/{id}", "/api/samples/none", ""),
                new Call(200, "get /health", "/health", ""),
                new Call(200, "get /metrics", "/metrics", ""),
                new Call(200, "put /api/gardens/{id}", g, BED, "If-Match", "\"1\""),
                new Call(400, "put /api/gardens/{id}", g, "[]", any),
                new Call(404, "put /api/gardens/{id}", none, BED, any),
                new Call(409, "put /api/gardens/{id}", g + "?merge=true", BEDS.replace("2400", "2500"), "If-Match", "\"1\""),
                new Call(410, "put /api/gardens/{id}", gone, BED, any),
                new Call(412, "put /api/gardens/{id}", g, BEDS, "If-Match", "\"1\""),
                new Call(415, "put /api/gardens/{id}", g, "x", "If-Match", "*", "Content-Type", "text/plain"),
                new Call(422, "put /api/gardens/{id}", g, STOP, any),
                new Call(428, "put /api/gardens/{id}", g, BED),
                new Call(200, "patch /api/gardens/{id}", g, "{\"name\":\"P\"}", any),
                new Call(400, "patch /api/gardens/{id}", g, "[]", any),
                new Call(404, "patch /api/gardens/{id}", none, "{}", any),
                new Call(409, "patch /api/gardens/{id}", g + "?merge=true", "{\"name\":\"Q\"}", "If-Match", "\"1\""),
                new Call(410, "patch /api/gardens/{id}", gone, "{}", any),
                new Call(412, "patch /api/gardens/{id}", g, "{\"name\":\"R\"}", "If-Match", "\"1\""),
                new Call(415, "patch /api/gardens/{id}", g, "{}", "If-Match", "*", "Content-Type", "application/json"),
                new Call(422, "patch /api/gardens/{id}", g, STOP, any),
                new Call(428, "patch /api/gardens/{id}", g, "{}"),
                new Call(200, "post /api/gardens/{id}/revisions/{number}/restore", g + "/revisions/1/restore", "", any),
                new Call(400, "post /api/gardens/{id}/revisions/{number}/restore", g + "/revisions/x/restore", "", any),
                new Call(404, "post /api/gardens/{id}/revisions/{number}/restore", g + "/revisions/99/restore", "", any),
                new Call(412, "post /api/gardens/{id}/revisions/{number}/restore", g + "/revisions/1/restore", "", "If-Match", "\"1\""),
                new Call(428, "post /api/gardens/{id}/revisions/{number}/restore", g + "/revisions/1/restore", ""),
                new Call(404, "delete /api/gardens/{id}", none, "", any),
                new Call(412, "delete /api/gardens/{id}", g, "", "If-Match", "\"1\""),
                new Call(428, "delete /api/gardens/{id}", g, ""),
                new Call(200, "delete /api/gardens/{id}", g, "", any),
                new Call(410, "delete /api/gardens/{id}", gone, "", any)));
        for (String path : List.of("/api/gardens", "/api/gardens/file", g + "/shares", g + "/photos", g + "/shelf", "/api/shelf", "/api/site-file",
                "/api/merchant-list", "/api/try-out", "/api/site-plan", "/api/job-sheet", "/api/job-sheet/loads", "/api/solve/cutting")) {
            String operation = path.replace(g, "/api/gardens/{id}").replace("loads", "{part}").replace("cutting", "{kind}");
            calls.add(0, new Call(415, "post " + operation, path, "x", "Content-Type", "text/plain"));
        }
        for (String verb : List.of("delete", "put")) {
            for (Map.Entry<Integer, String> end : Map.of(204, g, 404, none, 410, gone).entrySet())
                calls.add(0, new Call(end.getKey(), verb + " /api/gardens/{id}/archived", end.getValue() + "/archived", ""));
        }
        Map<String, String> tagged = Map.of(
                "get /api/gardens/{id}", g, "get /api/gardens/{id}/revisions/{number}", g + "/revisions/1",
                "get /api/gardens/{id}/job-sheet", g + "/job-sheet",
                "get /api/gardens/{id}/job-sheet/{part}", g + "/job-sheet/slip",
                "get /api/gardens/{id}/{sheets}.{format}", g + "/saw-day.pdf",
                "get /api/gardens/{id}/slip.csv", g + "/slip.csv", "get /api/sheets", "/api/sheets",
                "get /api/example-catalogue", "/api/example-catalogue");
        tagged.forEach((operation, path) -> calls.add(0, new Call(304, operation, path, "", "If-None-Match", "*")));
        for (Call call : List.of(
                new Call(410, "get /api/gardens/{id}/tables/{table}.{format}", gone + "/tables/offers.csv", ""),
                new Call(404, "get /api/gardens/{id}/tables/{table}.{format}", g + "/tables/tiles.csv", ""),
                new Call(422, "get /api/gardens/{id}/tables/{table}.{format}", "/api/gardens/older/tables/offers.csv", ""),
                new Call(304, "get /api/gardens/{id}/tables/{table}.{format}", g + "/tables/offers.xlsx", "", "If-None-Match", "*"),
                new Call(200, "get /api/gardens/{id}/tables/{table}.{format}", g + "/tables/price-request.xlsx", ""),
                new Call(200, "get /api/gardens/{id}/tables/{table}.{format}", g + "/tables/offers.csv", ""))) calls.add(0, call);
        for (String sheet : List.of("/weekends.ics", "/care.ics", "/weekends.csv", "/garden.xlsx", "/plan.dxf")) {
            String operation = "get /api/gardens/{id}" + sheet;
            calls.add(0, new Call(200, operation, g + sheet, ""));
            calls.add(0, new Call(304, operation, g + sheet, "", "If-None-Match", "*"));
            calls.add(0, new Call(404, operation, none + sheet, ""));
            calls.add(0, new Call(410, operation, gone + sheet, ""));
            calls.add(0, new Call(422, operation, "/api/gardens/older" + sheet, ""));
        }
        for (String sheet : List.of("/variation", "/variation.pdf")) {
            String operation = "get /api/gardens/{id}" + sheet;
            calls.add(0, new Call(200, operation, g + sheet + "?from=1", ""));
            calls.add(0, new Call(304, operation, g + sheet, "", "If-None-Match", "*"));
            calls.add(0, new Call(400, operation, g + sheet + "?from=x", ""));
            calls.add(0, new Call(404, operation, none + sheet, ""));
            calls.add(0, new Call(410, operation, gone + sheet, ""));
            calls.add(0, new Call(422, operation, "/api/gardens/older" + sheet, ""));
        }
        for (String open : List.of("/schema/garden.json", "/openapi.json", "/openapi.html")) {
            calls.add(new Call(200, "get " + open, open, ""));
            calls.add(new Call(304, "get " + open, open, "", "If-None-Match", "*"));
        }
        return calls;
    }

    private static String file(String document) {
        return "{\"lapyard\":\"garden\",\"format\":1,\"revisions\":[{\"number\":1,\"saved\":\"2026-05-02T10:00:00Z\",\"document\":"
                + MAPPER.createObjectNode().textNode(document) + "}]}";
    }

    /** One pixel, and the SHA-256 of its bytes. */
    private static final String PHOTO = "{\"photo\":\"iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNk+A8AAQUBAScY42YAAAAASUVORK5CYII=\"}";
    private static final String PHOTO_ID = "431ced6916a2a21a156e38701afe55bbd7f88969fbbfc56d7fe099d47f265460";

    /** Documents that only an older program kept hold a STOP; copies and sheets of them are refused. This one has all the shares that it may have. */
    private static List<Call> ofOlder(String old) {
        return List.of(
                new Call(409, "post /api/gardens/{id}/shares", old + "/shares", "{\"label\":\"x\"}"),
                new Call(409, "post /api/gardens/{id}/photos", old + "/photos", PHOTO),
                new Call(422, "post /api/gardens/{id}/copy", old + "/copy", ""),
                new Call(422, "get /api/gardens/{id}/job-sheet", old + "/job-sheet", ""),
                new Call(422, "get /api/gardens/{id}/job-sheet/{part}", old + "/job-sheet/slip", ""),
                new Call(422, "get /api/gardens/{id}/slip.csv", old + "/slip.csv", ""),
                new Call(422, "post /api/gardens/{id}/revisions/{number}/restore", old + "/revisions/1/restore", "", "If-Match", "*"));
    }

    @Test
    void everyOperationAnswersAsDescribedInEveryWayItMayEnd() throws Exception {
        Map<String, Set<String>> seen = new TreeMap<>();
        try (Served served = new Served(folder, Keys.NONE, OpenApiTest.class.getClassLoader(), new GardenDesk())) {
            String gone = served.created(BEDS);
            served.delete(gone, "If-Match", "*");
            String g = served.created(BEDS);
            String share = served.post(g + "/shares", "{\"label\":\"x\"}").headers().firstValue("Location").orElseThrow();
            String solve = served.post("/api/solve/cutting", PROBLEM, "Prefer", "respond-async")
                    .headers().firstValue("Location").orElseThrow();
            served.store.create(new lapyard.store.NewGarden("older", "Older", STOP));
            served.store.create(new lapyard.store.NewGarden("quoted", "Quoted", BEDS.replaceFirst("\\{", "{\"state\":\"quoted\",")));
            served.store.create(new lapyard.store.NewGarden("taker", "Taker", BEDS));
            served.store.shelf().add("p", "crew", "Crew", "{\"hours\":6}");
            for (int i = 0; i < 999; i++) served.store.shelf().add("p" + i, "crew", "Crew", "{}");
            check(new Call(409, "post /api/shelf", "/api/shelf", PIECE), served);
            seen.computeIfAbsent("post /api/shelf", key -> new TreeSet<>()).add("409");
            served.store.shelf().remove("p0");
            served.store.shelf().add("q", "crew", "Crew", "{}");
            check(new Call(409, "put /api/shelf/{piece}", "/api/shelf/p0", PIECE, "If-Match", "*"), served);
            seen.computeIfAbsent("put /api/shelf/{piece}", key -> new TreeSet<>()).add("409");
            for (int i = 0; i < 999; i++) served.store.shelf().remove("p" + i);
            served.store.shelf().remove("q");
            for (int i = 0; i < SharesResource.MOST_SHARES; i++)
                served.store.shares().add("s" + i, "older", "hash " + i, "x", Optional.empty());
            for (int i = 0; i < lapyard.store.Photos.MOST; i++)
                served.store.photos().add("older", List.of(new lapyard.store.Photos.Kept("x" + i, "image/png", java.time.Instant.EPOCH, new byte[1])));
            List<Call> calls = new ArrayList<>(ofOlder("/api/gardens/older"));
            calls.addAll(calls(g, gone, share, solve));
            for (Call call : calls) {
                check(call, served);
                seen.computeIfAbsent(call.operation(), key -> new TreeSet<>()).add(String.valueOf(call.status()));
            }
            try (LiveTest.Ear ear = new LiveTest.Ear(served.port(), served.created(BEDS))) {
                assertEquals("Content-Type: text/event-stream; charset=utf-8", ear.next("Content-Type"));
                assertEquals(1, ear.revision());
                seen.get("get /api/gardens/{id}/events").add("200");
            }
        }
        for (Map.Entry<String, JsonNode> path : api.path("paths").properties())
            for (Map.Entry<String, JsonNode> method : path.getValue().properties()) {
                Set<String> told = new TreeSet<>();
                method.getValue().path("responses").fieldNames().forEachRemaining(told::add);
                told.removeAll(EVERYWHERE);
                String operation = method.getKey() + " " + path.getKey();
                told.removeAll(seen.getOrDefault(operation, Set.of()));
                assertEquals(Set.of(), told, operation + " is said to answer so, and no call here shows it");
            }
    }

    private static final String PIECE = "{\"kind\":\"crew\",\"name\":\"Two of us\",\"content\":{\"hours\":7}}";
    private static final String PROBLEM = "{\"name\":\"x\",\"stock\":[{\"id\":\"L\",\"length\":4800}],\"pieces\":[{\"id\":\"a\",\"length\":900,\"count\":2}]}";

    private void check(Call call, Served served) throws IOException, InterruptedException {
        String[] words = call.operation().split(" ");
        JsonNode operation = api.path("paths").path(words[1]).path(words[0]);
        List<String> headers = new ArrayList<>(List.of(call.headers()));
        if (!call.body().isEmpty() && !headers.contains("Content-Type"))
            headers.addAll(List.of("Content-Type", words[0].equals("patch") ? GardenResource.MERGE_PATCH : "application/json"));
        String body = words[1].startsWith("/api/solve/") && call.status() < 400 ? solvable(call.path()) : call.body();
        HttpResponse<String> answer = served.send(
                words[0].toUpperCase(Locale.ROOT), call.path(), BodyPublishers.ofString(body), headers.toArray(String[]::new));
        String told = call.operation() + " " + call.path() + " " + headers;
        assertEquals(call.status(), answer.statusCode(), () -> told + ": " + answer.body());
        JsonNode response = resolved(operation.path("responses").path(String.valueOf(call.status())));
        assertFalse(response.isMissingNode(), () -> told + ": " + call.status() + " is not described");
        String type = answer.headers().firstValue("Content-Type").orElse("").replaceAll(";.*", "");
        if (!response.has("content")) {
            assertEquals("", answer.body(), told);
            return;
        }
        assertTrue(response.path("content").has(type), () -> told + ": " + type + " is not described");
        for (Map.Entry<String, JsonNode> header : response.path("headers").properties())
            if (!header.getKey().equals("Link")) assertTrue(answer.headers().firstValue(header.getKey()).isPresent(), () -> told + ": no " + header.getKey());
        if (type.endsWith("json")) validate(response.path("content").path(type).path("schema"), answer.body(), told);
    }

    private static String solvable(String path) {
        if (path.contains("sizes") || path.contains("lay-out")) {
            return "{\"ground\":{\"outline\":[[0,0],[6000,0],[6000,5000],[0,5000]]},\"give\":{\"width\":[-10,0]},\"beds\":[{\"width\":1500,\"depth\":900}]}";
        }
        return path.contains("rolls")
                ? "{\"name\":\"x\",\"rolls\":[{\"id\":\"W\",\"width\":4000,\"price\":9}],\"pieces\":[{\"id\":\"a\",\"width\":900,\"height\":900,\"count\":1}]}"
                : PROBLEM;
    }

    private void validate(JsonNode schema, String body, String told) throws IOException {
        com.fasterxml.jackson.databind.node.ObjectNode whole = MAPPER.createObjectNode();
        whole.set("components", api.path("components"));
        whole.setAll((com.fasterxml.jackson.databind.node.ObjectNode) schema.deepCopy());
        JsonSchema compiled = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SchemaLocation.of("urn:lapyard"), whole);
        assertEquals(Set.of(), compiled.validate(MAPPER.readTree(body)), told);
    }
}
