package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import java.util.Map;

/** The OpenAPI description as a page for reading: no script, no request to anywhere. */
final class ApiPage {
    private static final String STYLE = "body{font:16px/1.5 system-ui,sans-serif;margin:0 auto;max-width:56rem;padding:1rem;"
            + "color-scheme:light dark}h2{margin-top:2.5rem}section{border-top:1px solid #8886;padding:.5rem 0}"
            + "h3{font-size:1rem;margin:.5rem 0;overflow-wrap:anywhere}code{font-family:ui-monospace,monospace}"
            + "b{display:inline-block;min-width:4.5rem}dt{font-family:ui-monospace,monospace}dd{margin:0 0 .25rem 1.5rem}"
            + "dl{margin:.5rem 0}p{margin:.25rem 0}";

    private ApiPage() {}

    static String of(String description) {
        JsonNode api = Documents.object(description);
        StringBuilder page = new StringBuilder("<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\">"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><title>");
        page.append(text(api.at("/info/title"))).append(" HTTP interface</title><style>").append(STYLE);
        page.append("</style></head><body><main><h1>").append(text(api.at("/info/title"))).append(" HTTP interface</h1><p>");
        page.append(text(api.at("/info/description"))).append(" <a href=\"/openapi.json\">openapi.json</a></p>");
        for (JsonNode tag : api.path("tags")) {
            page.append("<h2>").append(text(tag.path("name"))).append("</h2>");
            for (Map.Entry<String, JsonNode> path : api.path("paths").properties())
                for (Map.Entry<String, JsonNode> method : path.getValue().properties())
                    if (method.getValue().path("tags").path(0).equals(tag.path("name")))
                        operation(page, api, path.getKey(), method.getKey(), method.getValue());
        }
        return page.append("</main></body></html>").toString();
    }

    private static void operation(StringBuilder page, JsonNode api, String path, String method, JsonNode operation) {
        page.append("<section id=\"").append(text(operation.path("operationId"))).append("\"><h3><b>");
        page.append(method.toUpperCase(Locale.ROOT)).append("</b> <code>").append(escaped(path)).append("</code></h3><p>");
        page.append(text(operation.path("summary"))).append("</p><dl>");
        for (JsonNode given : operation.path("parameters")) {
            JsonNode parameter = resolved(api, given);
            page.append("<dt>").append(text(parameter.path("name"))).append("</dt><dd>");
            page.append(text(parameter.path("in"))).append(parameter.path("required").asBoolean() ? ", needed" : "");
            if (parameter.has("description")) page.append(": ").append(text(parameter.path("description")));
            page.append(bounds(parameter.path("schema"))).append("</dd>");
        }
        page.append("</dl><dl>");
        for (Map.Entry<String, JsonNode> answer : operation.path("responses").properties()) {
            page.append("<dt>").append(escaped(answer.getKey())).append("</dt><dd>");
            page.append(text(resolved(api, answer.getValue()).path("description"))).append("</dd>");
        }
        page.append("</dl></section>");
    }

    private static String bounds(JsonNode schema) {
        StringBuilder text = new StringBuilder();
        if (schema.has("minimum"))
            text.append(", ").append(text(schema.path("minimum"))).append(" to ").append(text(schema.path("maximum")));
        if (schema.has("enum")) text.append(", one of ").append(escaped(schema.path("enum").toString()));
        if (schema.has("default")) text.append(", ").append(text(schema.path("default"))).append(" unless given");
        return text.toString();
    }

    private static JsonNode resolved(JsonNode api, JsonNode node) {
        return node.has("$ref") ? api.at(node.path("$ref").asText().substring(1)) : node;
    }

    private static String text(JsonNode node) {
        return escaped(node.asText());
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
