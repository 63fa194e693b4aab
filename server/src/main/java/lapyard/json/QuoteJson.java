package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import lapyard.order.Quote;
import lapyard.order.Variation;
import lapyard.plan.QuoteTerms;

/** The wire form of a quote and of a variation. */
public final class QuoteJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private QuoteJson() {}

    public static ObjectNode of(Quote quote, QuoteTerms terms) {
        ObjectNode json = NODES.objectNode();
        json.put("number", terms.number());
        json.put("client", terms.client());
        json.put("validUntil", terms.validUntil());
        json.put("currency", quote.currency().getCode());
        json.put("margin", quote.marginPercent().toPlainString());
        json.put("cost", quote.cost().toPlainString());
        json.put("price", quote.price().toPlainString());
        json.put("atLeast", quote.atLeast());
        ArrayNode lines = json.putArray("lines");
        for (Quote.Line line : quote.lines()) {
            ObjectNode one = lines.addObject();
            one.put("what", line.what());
            JobSheetJson.money(one, "cost", line.priced() ? java.util.Optional.of(line.cost()) : java.util.Optional.empty());
            JobSheetJson.money(one, "price", line.priced() ? java.util.Optional.of(line.price()) : java.util.Optional.empty());
        }
        ArrayNode exclusions = json.putArray("exclusions");
        terms.exclusions().forEach(exclusions::add);
        json.set("working", JobSheetJson.working(quote.working()));
        return json;
    }

    public static ObjectNode of(Variation variation) {
        ObjectNode json = NODES.objectNode();
        json.put("currency", variation.currency());
        json.put("before", variation.before().toPlainString());
        json.put("after", variation.after().toPlainString());
        json.put("difference", variation.difference().toPlainString());
        json.put("atLeast", variation.atLeast());
        ArrayNode lines = json.putArray("lines");
        for (Variation.Line line : variation.lines()) {
            ObjectNode one = lines.addObject();
            one.put("item", line.item());
            one.put("label", line.label());
            one.put("unit", line.unit());
            one.set("needBefore", JobSheetJson.number(line.needBefore(), 6));
            one.set("needAfter", JobSheetJson.number(line.needAfter(), 6));
            one.put("packsBefore", line.packsBefore());
            one.put("packsAfter", line.packsAfter());
            JobSheetJson.money(one, "costBefore", line.costBefore());
            JobSheetJson.money(one, "costAfter", line.costAfter());
            one.put("difference", line.difference().toPlainString());
        }
        return json;
    }
}
