package lapyard.rest;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import lapyard.plan.Finding;

/**
 * An error as RFC 9457 writes it: {@code title} is the status in words, {@code detail} says what to put right.
 *
 * @param more  further members, each a string, a whole number or a list of strings
 * @param snags findings, where there are any
 */
record Problem(int status, String detail, Map<String, Object> more, List<Finding> snags) {
    static final String TYPE = "application/problem+json";

    Problem {
        more = Map.copyOf(more);
        snags = List.copyOf(snags);
    }

    static Problem of(int status, String detail) {
        return new Problem(status, detail, Map.of(), List.of());
    }

    static Problem of(int status, String detail, List<Finding> snags) {
        return new Problem(status, detail, Map.of(), snags);
    }

    /** The status in the words of RFC 9110, of RFC 4918 for 507. */
    static String title(int status) {
        return switch (status) {
            case 413 -> "Content Too Large";
            case 421 -> "Misdirected Request";
            case 422 -> "Unprocessable Content";
            case 507 -> "Insufficient Storage";
            default -> {
                Response.Status known = Response.Status.fromStatusCode(status);
                yield known == null ? "Status " + status : known.getReasonPhrase();
            }
        };
    }

    String json() {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("title", title(status)).put("status", status).put("detail", detail);
        more.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(entry -> put(node, entry));
        if (!snags.isEmpty()) node.set("snags", snags(snags));
        return node.toString();
    }

    private static void put(ObjectNode node, Map.Entry<String, Object> entry) {
        Object value = entry.getValue();
        if (value instanceof Long number) node.put(entry.getKey(), number);
        else if (value instanceof List<?> list) list.forEach(each -> node.withArray(entry.getKey()).add((String) each));
        else node.put(entry.getKey(), (String) value);
    }

    /** Findings as every answer shows them. */
    static ArrayNode snags(List<Finding> findings) {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (Finding finding : findings) {
            ObjectNode node = list.addObject();
            node.put("weight", finding.weight().name()).put("where", finding.where()).put("text", finding.text());
            finding.amount()
                    .ifPresent(amount ->
                            node.putObject("amount").put("value", amount.value()).put("unit", amount.unit()));
            ArrayNode ways = node.putArray("ways");
            finding.ways().forEach(ways::add);
        }
        return list;
    }
}
