package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.Place;
import lapyard.plan.WayOut;
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

    /** Keys: kind concern weight where place text amount ways, at and acts (see {@link #acts}), and list (where, place, text, ways, at, acts) behind a merged one. */
    private static ObjectNode one(Finding finding, Wording words) {
        ObjectNode one = NODES.objectNode();
        one.put("kind", finding.kind().code);
        one.put("concern", finding.kind().concern.name());
        one.put("weight", finding.weight().name());
        one.put("where", finding.where());
        one.put("place", finding.place().words());
        one.put("text", words.text(finding));
        finding.amount().ifPresentOrElse(amount -> {
                    ObjectNode by = one.putObject("amount");
                    by.set("value", Wire.number(amount.value(), 6));
                    by.put("unit", amount.unit());
                },
                () -> one.putNull("amount"));
        ArrayNode ways = one.putArray("ways");
        words.ways(finding).forEach(ways::add);
        acts(one, finding.alike().isEmpty() ? finding : finding.alike().get(0));
        if (!finding.alike().isEmpty()) {
            ArrayNode list = one.putArray("list");
            for (Finding alike : finding.alike()) {
                ObjectNode single = list.addObject().put("where", alike.where()).put("place", alike.place().words()).put("text", words.text(alike));
                if (!alike.ways().isEmpty()) {
                    ArrayNode own = single.putArray("ways");
                    words.ways(alike).forEach(own::add);
                    acts(single, alike);
                }
            }
        }
        return one;
    }

    /**
     * The ways out as data: {@code acts} has one entry for each of {@code ways} with its kind and figures, lengths in mm, and
     * {@code at} names the bed, wall, path or weekend that they change; a merged finding has those of its worst.
     */
    private static void acts(ObjectNode json, Finding finding) {
        if (finding.ways().isEmpty()) return;
        ObjectNode at = json.putObject("at");
        for (Place.What what : List.of(Place.What.BED, Place.What.WALL, Place.What.PATH, Place.What.WEEKEND)) {
            List<String> ids = finding.place().ids(what);
            if (!ids.isEmpty()) at.put(what.one, ids.get(0));
        }
        ArrayNode acts = json.putArray("acts");
        for (WayOut way : finding.ways()) {
            ArrayNode values = acts.addObject().put("way", way.kind().code()).putArray("values");
            way.values().forEach(value -> values.add(value(value)));
        }
    }

    private static JsonNode value(Fact fact) {
        if (fact instanceof Fact.Name name) return NODES.textNode(name.name());
        if (fact instanceof Fact.Names names) {
            ArrayNode all = NODES.arrayNode();
            names.names().forEach(all::add);
            return all;
        }
        if (fact instanceof Fact.Choice choice) {
            ArrayNode all = NODES.arrayNode();
            choice.words().forEach(all::add);
            return all;
        }
        if (fact instanceof Fact.Lengths lengths) {
            ArrayNode all = NODES.arrayNode();
            lengths.mm().forEach(mm -> all.add(Wire.number(mm, 1)));
            return all;
        }
        if (fact instanceof Fact.Spot spot) return NODES.arrayNode().add(Wire.number(spot.xMm(), 1)).add(Wire.number(spot.yMm(), 1));
        if (fact instanceof Fact.Day day) return NODES.textNode(day.date().toString());
        return Wire.number(fact.amount().value(), 6);
    }
}
