package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** Findings as every answer shows them, worded for a person and with their kind and figures for a program. */
public final class FindingsJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private FindingsJson() {}

    public static ArrayNode of(List<Finding> findings, Wording words) {
        ArrayNode json = NODES.arrayNode();
        findings.forEach(finding -> json.add(one(finding, words)));
        return json;
    }

    /** Keys: kind concern weight where text amount ways, and list (where, text) behind a merged one. */
    private static ObjectNode one(Finding finding, Wording words) {
        ObjectNode one = NODES.objectNode();
        one.put("kind", finding.kind().code());
        one.put("concern", finding.kind().concern().name());
        one.put("weight", finding.weight().name());
        one.put("where", finding.where());
        one.put("text", words.text(finding));
        finding.amount().ifPresentOrElse(
                amount -> {
                    ObjectNode by = one.putObject("amount");
                    by.set("value", Wire.number(amount.value(), 6));
                    by.put("unit", amount.unit());
                },
                () -> one.putNull("amount"));
        ArrayNode ways = one.putArray("ways");
        words.ways(finding).forEach(ways::add);
        if (!finding.alike().isEmpty()) {
            ArrayNode list = one.putArray("list");
            finding.alike().forEach(alike -> list.addObject().put("where", alike.where()).put("text", words.text(alike)));
        }
        return one;
    }
}
