package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
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
 *
 * @param at way through the JSON, empty for the whole of it
 */
record AskReader(String at, JsonNode node) {
    /** The whole, which findings call {@code name}. */
    static AskReader of(String name, JsonNode node, String... fields) {
        return new AskReader(name, node).known(fields).at("");
    }

    private AskReader at(String other) {
        return new AskReader(other, node);
    }

    /** @throws CannotAnswer where it is no object, or has a field other than these */
    AskReader known(String... fields) {
        if (node == null || !node.isObject()) throw shape(at, "an object in curly brackets", node, WayKind.CURLY_BRACKETS);
        Set<String> known = Set.of(fields);
        node.fieldNames().forEachRemaining(field -> {
            if (!known.contains(field)) throw new CannotAnswer(Cursor.unknown(at + ", " + FieldFaults.cut(field), field, known));
        });
        return this;
    }

    <T> List<T> each(String field, Function<AskReader, T> reader) {
        return entries(field).stream().map(reader).toList();
    }

    List<AskReader> entries(String field) {
        List<AskReader> entries = new ArrayList<>();
        for (JsonNode entry : list(field)) entries.add(new AskReader(path(field) + "[" + entries.size() + "]", entry));
        return entries;
    }

    JsonNode list(String field) {
        JsonNode list = node.get(field);
        if (list == null || !list.isArray()) throw shape(path(field), "a list in square brackets", list, WayKind.SQUARE_BRACKETS);
        return list;
    }

    boolean has(String field) {
        return node.has(field);
    }

    /** A text; a field of an entry may not be blank. */
    String text(String field) {
        JsonNode value = node.get(field);
        if (value == null || !value.isTextual() || (!at.isEmpty() && value.textValue().isBlank())) throw shape(path(field), "text in quotes", value, WayKind.IN_QUOTES);
        return value.textValue();
    }

    String textIfAny(String field) {
        return has(field) ? text(field) : "";
    }

    /** A length above 0. */
    double length(String field) {
        return length(field, false);
    }

    double length(String field, double otherwise, boolean mayBeZero) {
        return has(field) ? length(field, mayBeZero) : otherwise;
    }

    OptionalDouble lengthIfAny(String field, boolean mayBeZero) {
        return has(field) ? OptionalDouble.of(length(field, mayBeZero)) : OptionalDouble.empty();
    }

    private double length(String field, boolean mayBeZero) {
        String wanted = "a number of mm, " + (mayBeZero ? "0 or more" : "above 0");
        double mm = number(node.get(field), path(field), wanted);
        if (mayBeZero ? mm < 0 : mm <= 0) throw shape(path(field), wanted, node.get(field), WayKind.WITHOUT_QUOTES);
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

    int whole(String field, int least) {
        return whole(node.get(field), path(field), least);
    }

    int whole(String field, int least, int otherwise) {
        return has(field) ? whole(field, least) : otherwise;
    }

    OptionalInt wholeIfAny(String field) {
        return has(field) ? OptionalInt.of(whole(field, 0)) : OptionalInt.empty();
    }

    /** Money of 0 or more. */
    BigDecimal money(String field, BigDecimal otherwise) {
        if (!has(field)) return otherwise;
        if (number(node.get(field), path(field), "a number of 0 or more") < 0) throw shape(path(field), "a number of 0 or more", node.get(field), WayKind.WITHOUT_QUOTES);
        return node.get(field).decimalValue();
    }

    boolean flag(String field, boolean otherwise) {
        if (!has(field)) return otherwise;
        if (!node.get(field).isBoolean()) throw shape(path(field), "true or false", node.get(field), WayKind.TRUE_OR_FALSE);
        return node.get(field).booleanValue();
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
        if (has == null || has.isNull() || has.isMissingNode()) return new CannotAnswer(fault(FindingKind.FIELD_MISSING, path).way(WayKind.GIVE_LIKE, Fact.name(wanted)));
        String shown = has.isNumber() && !Double.isFinite(has.doubleValue()) ? "a number too large" : FieldFaults.shown(has);
        return new CannotAnswer(fault(FindingKind.FIELD_SHAPE, path).with("wanted", Fact.name(wanted)).with("has", Fact.name(shown)).way(way, values));
    }

    /** A word that is none of these. */
    static CannotAnswer choice(String path, String value, List<String> words) {
        return new CannotAnswer(fault(FindingKind.FIELD_CHOICE, path).with("value", Fact.name(FieldFaults.cut(value))).way(WayKind.USE_WORD, new Fact.Choice(words)));
    }

    static Finding fault(FindingKind kind, String path) {
        return Finding.of(kind, Place.field(path)).with("name", Fact.name(path));
    }

    static void atMost(String path, int entries, int most) {
        BrokenRule.atMost(path, path, entries, most, "entries");
    }

    String path(String field) {
        return at.isEmpty() ? field : at + "." + field;
    }
}
