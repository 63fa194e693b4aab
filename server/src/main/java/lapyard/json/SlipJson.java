package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.Supplier;
import lapyard.order.Savings;
import lapyard.order.Slip;
import lapyard.order.SlipCsv;
import lapyard.order.SlipLine;

/** The wire form of a slip: its lines, one order a supplier, what pooling saves, what each bed costs. */
final class SlipJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private SlipJson() {}

    /** @param areasM2 inside the walls, by owner, for the cost of a square metre */
    static ObjectNode of(Slip slip, Map<String, Double> areasM2) {
        ObjectNode json = NODES.objectNode();
        json.put("currency", slip.currency().getCode());
        json.put("goods", slip.goods().toPlainString());
        json.put("total", slip.total().toPlainString());
        json.put("atLeast", slip.atLeast());
        json.put("lowerBound", slip.lowerBound().toPlainString());
        json.put("proven", slip.proven());
        ArrayNode lines = json.putArray("lines");
        for (SlipLine line : slip.lines()) {
            lines.add(line(line));
        }
        ArrayNode orders = json.putArray("orders");
        for (Slip.Order order : slip.orders()) {
            orders.add(order(order));
        }
        ArrayNode savings = json.putArray("savings");
        for (Savings.Saving saving : Savings.of(slip)) {
            ObjectNode one = savings.addObject();
            one.put("item", saving.item());
            one.put("label", saving.label());
            one.put("pooled", saving.pooled().toPlainString());
            one.put("bedByBed", saving.bedByBed().toPlainString());
            one.put("saved", saving.saved().toPlainString());
            one.set("working", JobSheetJson.working(saving.working()));
        }
        ArrayNode shares = json.putArray("shares");
        for (Savings.Share share : Savings.shares(slip)) {
            ObjectNode one = shares.addObject();
            one.put("owner", share.owner());
            one.put("cost", share.cost().toPlainString());
            Double area = areasM2.get(share.owner());
            if (area != null && area > 0) {
                one.set("areaM2", JobSheetJson.number(area, 6));
                one.put("perM2", share.cost()
                        .divide(BigDecimal.valueOf(area), slip.currency().getDecimalPlaces(), RoundingMode.HALF_UP)
                        .toPlainString());
            }
            ArrayNode of = one.putArray("lines");
            share.lines().forEach((item, cost) -> {
                ObjectNode part = of.addObject();
                part.put("item", item);
                part.put("cost", cost.toPlainString());
            });
        }
        return json;
    }

    private static ObjectNode line(SlipLine line) {
        ObjectNode one = NODES.objectNode();
        one.put("item", line.item());
        one.put("label", line.label());
        one.set("need", JobSheetJson.number(line.need(), 6));
        one.put("unit", line.unit());
        one.set("packs", packs(line.packs()));
        one.set("leftOver", JobSheetJson.number(line.leftOver(), 6));
        JobSheetJson.money(one, "cost", line.cost());
        JobSheetJson.money(one, "bedByBed", line.bedByBed());
        JobSheetJson.money(one, "saved", line.saved());
        one.set("working", JobSheetJson.working(line.working()));
        return one;
    }

    private static ArrayNode packs(Iterable<SlipLine.PackCount> packs) {
        ArrayNode json = NODES.arrayNode();
        for (SlipLine.PackCount pack : packs) {
            ObjectNode count = json.addObject();
            count.put("pack", pack.pack());
            count.put("count", pack.count());
            JobSheetJson.money(count, "price", pack.price());
            count.put("supplier", pack.supplier());
        }
        return json;
    }

    private static ObjectNode order(Slip.Order order) {
        Supplier supplier = order.supplier();
        ObjectNode one = NODES.objectNode();
        one.put("supplier", supplier.id());
        one.put("name", supplier.name());
        one.put("leadDays", supplier.leadDays());
        one.put("validUntil", supplier.validUntil());
        one.put("goods", order.goods().toPlainString());
        one.put("delivery", order.charge().toPlainString());
        one.put("total", order.total().toPlainString());
        one.put("tax", order.tax().toPlainString());
        one.put("taxRate", supplier.taxPercent().toPlainString());
        one.put("atLeast", order.atLeast());
        JobSheetJson.money(one, "freeOver", supplier.freeOver());
        JobSheetJson.money(one, "shortOfFree", order.shortOfFree().filter(less -> less.compareTo(BigDecimal.ZERO) >= 0));
        ArrayNode lines = one.putArray("lines");
        for (Slip.Part part : order.lines()) {
            ObjectNode of = lines.addObject();
            of.put("item", part.line().item());
            of.put("label", part.line().label());
            ArrayNode packs = packs(part.packs());
            List<BigDecimal> costs = SlipCsv.packCosts(part);
            for (int i = 0; i < packs.size(); i++) {
                JobSheetJson.money((ObjectNode) packs.get(i), "cost", costs.isEmpty() ? Optional.empty() : Optional.of(costs.get(i)));
            }
            of.set("packs", packs);
            JobSheetJson.money(of, "cost", part.cost());
        }
        return one;
    }
}
