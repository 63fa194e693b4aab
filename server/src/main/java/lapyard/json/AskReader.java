package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/**
 * Reads what is asked in JSON, other than a garden: one fault ends the reading. Places are written as the way through the JSON,
 * {@code pieces[3].count}.
 */
final class AskReader {
    private AskReader() {}

    /** An entry of a list, and its way through the JSON. */
    record Entry(String at, JsonNode node) {}

    /** @throws CannotAnswer where it is no object, or has a field other than these */
    static void known(String at, JsonNode node, Set<String> fields) {
        if (node == null || !node.isObject()) throw shape(at, "an object in curly brackets", node, WayKind.CURLY_BRACKETS);
        node.fieldNames().forEachRemaining(field -> {
            if (!fields.contains(field)) throw new CannotAnswer(Cursor.unknown(at + ", " + FieldFaults.cut(field), field, fields));
        });
    }

    static List<Entry> entries(JsonNode node, String field) {
        List<Entry> entries = new ArrayList<>();
        for (JsonNode entry : list(node, "", field)) entries.add(new Entry(field + "[" + entries.size() + "]", entry));
        return entries;
    }

    static JsonNode list(JsonNode node, String at, String field) {
        JsonNode list = node.get(field);
        if (list == null || !list.isArray()) throw shape(path(at, field), "a list in square brackets", list, WayKind.SQUARE_BRACKETS);
        return list;
    }

    /** A text; a field of an entry may not be blank. */
    static String text(JsonNode node, String at, String field) {
        JsonNode value = node.get(field);
        if (value == null || !value.isTextual() || (!at.isEmpty() && value.textValue().isBlank())) throw shape(path(at, field), "text in quotes", value, WayKind.IN_QUOTES);
        return value.textValue();
    }

    static double length(JsonNode node, String at, String field, Double otherwise, boolean mayBeZero) {
        JsonNode value = node.get(field);
        if (value == null && otherwise != null) return otherwise;
        double mm = number(value, path(at, field), "a number of mm, " + (mayBeZero ? "0 or more" : "above 0"));
        if (mayBeZero ? mm < 0 : mm <= 0) throw shape(path(at, field), "a number of mm, " + (mayBeZero ? "0 or more" : "above 0"), value, WayKind.WITHOUT_QUOTES);
        return mm;
    }

    private static double number(JsonNode value, String path, String wanted) {
        if (value == null || !value.isNumber() || !Double.isFinite(value.doubleValue())) throw shape(path, wanted, value, WayKind.WITHOUT_QUOTES);
        return value.doubleValue();
    }

    /** A whole number of {@code least} or more. */
    static int whole(JsonNode value, String path, int least) {
        String wanted = "a whole number from " + least + " to " + Integer.MAX_VALUE;
        double number = number(value, path, wanted);
        if (number != Math.rint(number) || number < least || number > Integer.MAX_VALUE) throw shape(path, wanted, value, WayKind.WITHOUT_QUOTES);
        return (int) number;
    }

    static int whole(JsonNode node, String at, String field, int least) {
        return whole(node.get(field), path(at, field), least);
    }

    /** Money of 0 or more. */
    static BigDecimal money(JsonNode node, String at, String field, BigDecimal otherwise) {
        JsonNode value = node.get(field);
        if (value == null) return otherwise;
        if (number(value, path(at, field), "a number of 0 or more") < 0) throw shape(path(at, field), "a number of 0 or more", value, WayKind.WITHOUT_QUOTES);
        return value.decimalValue();
    }

    static boolean flag(JsonNode node, String at, String field, boolean otherwise) {
        JsonNode value = node.get(field);
        if (value == null) return otherwise;
        if (!value.isBoolean()) throw shape(path(at, field), "true or false", value, WayKind.TRUE_OR_FALSE);
        return value.booleanValue();
    }

    /** A garden's document, an empty one where none is given. */
    static JsonNode garden(JsonNode ask) {
        JsonNode garden = ask.path("garden");
        if (garden.isMissingNode()) return DocumentText.MAPPER.createObjectNode();
        if (!garden.isObject()) throw shape("garden", "a garden document in curly brackets", garden, WayKind.CURLY_BRACKETS);
        return garden;
    }

    /** A value of another sort than the field takes, or none. */
    static CannotAnswer shape(String path, String wanted, JsonNode has, WayKind way, Fact... values) {
        if (has == null || has.isNull() || has.isMissingNode()) return new CannotAnswer(at(FindingKind.FIELD_MISSING, path).way(WayKind.GIVE_LIKE, Fact.name(wanted)));
        String shown = has.isNumber() && !Double.isFinite(has.doubleValue()) ? "a number too large" : FieldFaults.shown(has);
        return new CannotAnswer(at(FindingKind.FIELD_SHAPE, path).with("wanted", Fact.name(wanted)).with("has", Fact.name(shown)).way(way, values));
    }

    /** A word that is none of these. */
    static CannotAnswer choice(String path, String value, List<String> words) {
        return new CannotAnswer(at(FindingKind.FIELD_CHOICE, path).with("value", Fact.name(FieldFaults.cut(value))).way(WayKind.USE_WORD, new Fact.Choice(words)));
    }

    static Finding at(FindingKind kind, String path) {
        return Finding.of(kind, Place.field(path)).with("name", Fact.name(path));
    }

    static void atMost(String path, int entries, int most) {
        BrokenRule.atMost(path, path, entries, most, "entries");
    }

    static String path(String at, String field) {
        return at.isEmpty() ? field : at + "." + field;
    }
}
