package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapyard.geometry.Length;

/**
 * A garden with the lines of a merchant's list in its catalogue. What a line says of the same section and length, roll, or goods and pack
 * from the same supplier holds from now on; of what it does not say ({@code bundle}, a price that was left empty) and of all else
 * nothing changes.
 */
final class IntoCatalogue {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private static final JsonNode EXAMPLES = DocumentText.parse(MerchantList.examples());

    private IntoCatalogue() {}

    /** The document given is not changed. */
    static ObjectNode of(ObjectNode garden, List<MerchantList.Line> lines) {
        ObjectNode changed = garden.deepCopy();
        ObjectNode catalogue = changed.withObject("/catalogue");
        for (MerchantList.Line line : lines) {
            switch (line.kind()) {
                case "section" -> section(catalogue, line.fields());
                case "roll" -> roll(catalogue, line.fields());
                default -> goods(catalogue, line.fields());
            }
        }
        return changed;
    }

    /** Whether the catalogue has what the line is of, from the same supplier. */
    static boolean has(JsonNode catalogue, String kind, Map<String, String> fields) {
        JsonNode goods = first(catalogue.path("packs"), item(fields));
        return switch (kind) {
            case "section" -> first(first(catalogue.path("sections"), section(fields)).path("stock"), length(fields)).isObject();
            case "roll" -> first(catalogue.path("rolls"), roll(fields)).isObject();
            default -> first(goods.path("packs"), pack(goods, fields)).isObject();
        };
    }

    private static Map<String, JsonNode> section(Map<String, String> fields) {
        return Map.of("id", NODES.textNode(fields.get("item")));
    }

    private static Map<String, JsonNode> length(Map<String, String> fields) {
        return from(fields, Map.of("length", number(fields, "length")));
    }

    private static Map<String, JsonNode> roll(Map<String, String> fields) {
        return from(fields, Map.of("material", NODES.textNode(fields.get("item")), "width", number(fields, "width")));
    }

    private static Map<String, JsonNode> item(Map<String, String> fields) {
        return Map.of("item", NODES.textNode(fields.get("item")));
    }

    private static Map<String, JsonNode> pack(JsonNode goods, Map<String, String> fields) {
        String name = fields.containsKey("pack") ? fields.get("pack")
                : fields.containsKey("tonnes") ? fields.get("tonnes") + " t" : (fields.get("content") + " " + goods.path("unit").asText("")).strip();
        return from(fields, Map.of("name", NODES.textNode(name)));
    }

    private static void section(ObjectNode catalogue, Map<String, String> fields) {
        ObjectNode section = entry(array(catalogue, "sections"), section(fields), EXAMPLES.path("sections"));
        put(section, fields, "thickness", "height", "density");
        ObjectNode length = entry(array(section, "stock"), length(fields), NODES.missingNode());
        put(length, fields, "price", "bundle", "least");
    }

    private static void roll(ObjectNode catalogue, Map<String, String> fields) {
        ArrayNode rolls = array(catalogue, "rolls");
        ObjectNode roll = entry(rolls, roll(fields), EXAMPLES.path("rolls"));
        if (!roll.has("id")) {
            String id = fields.get("item") + "-" + fields.get("width") + (fields.containsKey("supplier") ? "-" + fields.get("supplier") : "");
            roll.put("id", id.length() > 40 ? id.substring(0, 40) : id);
        }
        put(roll, fields, "price", "step");
        if (fields.containsKey("price") && fields.getOrDefault(MerchantList.FOR, "").matches("(?i)(a )?(foot|ft)"))
            roll.put("price", roll.get("price").decimalValue().divide(BigDecimal.valueOf(Length.FOOT_MM).movePointLeft(3), 4, RoundingMode.HALF_UP).stripTrailingZeros());
    }

    private static void goods(ObjectNode catalogue, Map<String, String> fields) {
        ObjectNode goods = entry(array(catalogue, "packs"), item(fields), EXAMPLES.path("packs"));
        for (String name : List.of("label", "unit")) if (fields.containsKey(name)) goods.put(name, fields.get(name));
        put(goods, fields, "density");
        ObjectNode pack = entry(array(goods, "packs"), pack(goods, fields), first(EXAMPLES.path("packs"), item(fields)).path("packs"));
        if (fields.containsKey("content")) pack.remove("tonnes");
        else if (fields.containsKey("tonnes")) pack.remove("content");
        put(pack, fields, "content", "tonnes", "price", "bundle", "least", "mass");
    }

    private static ArrayNode array(ObjectNode in, String field) {
        return in.get(field) instanceof ArrayNode there ? there : in.putArray(field);
    }

    /** With who sells it. */
    private static Map<String, JsonNode> from(Map<String, String> fields, Map<String, JsonNode> key) {
        Map<String, JsonNode> all = new TreeMap<>(key);
        all.put("supplier", NODES.textNode(fields.getOrDefault("supplier", "")));
        return all;
    }

    /**
     * The one of the list that has all of the key, or a new one with it at its end. Of a new one holds what our example says of the same,
     * but for who sells it and for how much, until the list says otherwise.
     */
    private static ObjectNode entry(ArrayNode list, Map<String, JsonNode> key, JsonNode examples) {
        if (first(list, key) instanceof ObjectNode there) return there;
        ObjectNode added = list.addObject();
        Map<String, JsonNode> sizes = new TreeMap<>(key);
        sizes.remove("supplier");
        first(examples, sizes).properties().forEach(said -> {
            if (said.getValue().isValueNode() && !List.of("id", "price", "supplier", "bundle", "least").contains(said.getKey())) added.set(said.getKey(), said.getValue());
        });
        key.forEach((name, value) -> {
            if (!value.asText().isEmpty()) added.set(name, value);
        });
        return added;
    }

    private static JsonNode first(JsonNode list, Map<String, JsonNode> key) {
        for (JsonNode one : list) if (key.entrySet().stream().allMatch(part -> same(one.path(part.getKey()), part.getValue()))) return one;
        return NODES.missingNode();
    }

    private static boolean same(JsonNode there, JsonNode asked) {
        return asked.isNumber() ? there.isNumber() && there.decimalValue().compareTo(asked.decimalValue()) == 0 : there.asText("").equals(asked.asText());
    }

    private static JsonNode number(Map<String, String> fields, String name) {
        return NODES.numberNode(new BigDecimal(fields.get(name)));
    }

    private static void put(ObjectNode to, Map<String, String> fields, String... names) {
        for (String name : names) if (fields.containsKey(name)) to.set(name, number(fields, name));
    }
}
