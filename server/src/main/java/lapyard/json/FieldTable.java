package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import lapyard.working.OwnFile;

/**
 * The fields of one object of the garden document as the schema has them: names, bounds, steps, units, words and defaults.
 * The schema is the one place that states them; the readers and the docs take them from here.
 */
final class FieldTable {
    /** More decimals than anybody writes, for numbers whose step the schema leaves open. */
    static final int ANY_DECIMALS = 15;

    private static final JsonNode SCHEMA = DocumentText.tree(GardenReader.schema());
    static final FieldTable GARDEN = new FieldTable("", SCHEMA);
    /** What is asked for besides a garden; its schema refers to nothing. */
    static final FieldTable ASKED = new FieldTable("", DocumentText.tree(OwnFile.text("lapyard/json/asked.schema.json")));

    /**
     * One field. What the schema leaves open is as wide as can be.
     *
     * @param unit of a number, empty where it has none
     * @param longest characters of a text
     * @param entries most entries of a list
     * @param words of a choice, without those of older documents
     * @param usual the default, missing where there is none or where it depends on other fields
     */
    record Field(double least, double most, int decimals, String unit, int longest, int entries, List<String> words, JsonNode usual) {
        private static Field of(List<JsonNode> forms) {
            List<String> words = new ArrayList<>();
            for (JsonNode form : forms) {
                if (!form.path("deprecated").asBoolean()) form.path("enum").forEach(word -> words.add(word.asText()));
            }
            return new Field(
                    first(forms, "minimum").asDouble(Double.NEGATIVE_INFINITY),
                    first(forms, "maximum").asDouble(Double.POSITIVE_INFINITY),
                    decimals(forms),
                    first(forms, "unit").asText(""),
                    first(forms, "maxLength").asInt(Integer.MAX_VALUE),
                    first(forms, "maxItems").asInt(Integer.MAX_VALUE),
                    List.copyOf(words),
                    first(forms, "default"));
        }

        private static int decimals(List<JsonNode> forms) {
            if (first(forms, "type").asText().equals("integer")) return 0;
            JsonNode step = first(forms, "multipleOf");
            return step.isMissingNode() ? ANY_DECIMALS : step.decimalValue().stripTrailingZeros().scale();
        }

        Field withMost(double other) {
            return new Field(least, other, decimals, unit, longest, entries, words, usual);
        }

        Field withUnit(String other) {
            return new Field(least, most, decimals, other, longest, entries, words, usual);
        }

        BigDecimal step() {
            return BigDecimal.ONE.movePointLeft(decimals);
        }
    }

    private final String path;
    /** The object's schema with all that it refers to, nearest first. */
    final List<JsonNode> forms;
    private final Map<String, Field> fields = new ConcurrentHashMap<>();
    private final Map<String, Boolean> there = new ConcurrentHashMap<>();
    private final Map<String, FieldTable> inner = new ConcurrentHashMap<>();

    private FieldTable(String path, JsonNode schema) {
        this.path = path;
        this.forms = forms(schema);
    }

    /** The field's path from the garden, without places in lists: {@code /beds/screws/length}. */
    String path(String field) {
        return path + "/" + field;
    }

    /** @throws IllegalStateException when the schema does not have it */
    Field field(String name) {
        return fields.computeIfAbsent(name, field -> Field.of(forms(property(field))));
    }

    /** The fields of the object, or of the objects of the list, under this name. */
    FieldTable inner(String name) {
        return inner.computeIfAbsent(name, field -> new FieldTable(path(field), property(field)));
    }

    boolean has(String name) {
        return there.computeIfAbsent(name, field -> forms.stream().anyMatch(form -> form.path("properties").has(field)));
    }

    private JsonNode property(String name) {
        for (JsonNode form : forms) if (form.path("properties").has(name)) return form.path("properties").get(name);
        throw new IllegalStateException("the schema has no field " + path(name));
    }

    /** A schema with all that it refers to, allows in its place, or has in its list; what stands nearer comes first. */
    private static List<JsonNode> forms(JsonNode schema) {
        List<JsonNode> forms = new ArrayList<>(List.of(schema));
        if (schema.has("$ref")) forms.addAll(forms(SCHEMA.at(schema.get("$ref").asText().substring(1))));
        for (String alternatives : List.of("oneOf", "anyOf")) schema.path(alternatives).forEach(one -> forms.addAll(forms(one)));
        if (schema.path("items").isObject()) forms.addAll(forms(schema.get("items")));
        return forms;
    }

    static JsonNode first(List<JsonNode> forms, String keyword) {
        for (JsonNode form : forms) if (form.has(keyword)) return form.get(keyword);
        return MissingNode.getInstance();
    }
}
