package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import lapyard.plan.CannotAnswer;
import lapyard.plan.WayKind;

/** Reads what is asked in JSON besides a garden, by the fields of its schema. */
final class Asked {
    private Asked() {}

    /**
     * @param kind as the schema of what is asked names it
     * @throws CannotAnswer with everything that cannot be read
     */
    static <T> T read(String kind, JsonNode node, Function<Cursor, T> reader) {
        Cursor.Notes notes = new Cursor.Notes("problem");
        try {
            T read = new Cursor(node, FieldTable.ASKED.inner(kind), "", "", notes).whole(reader);
            if (!notes.stopped()) return read;
        } catch (FieldFaults.Full | IllegalArgumentException consequence) {
            if (!notes.stopped()) throw consequence;
        }
        throw new CannotAnswer(notes.findings);
    }

    /** A list that cannot be left out. */
    static <T> List<T> each(Cursor of, String field, String what, Function<Cursor, T> reader) {
        if (!of.has(field)) of.missing(field, "a list in square brackets");
        return of.each(field, what, reader);
    }

    /** A text that cannot be left out. */
    static String text(Cursor of, String field) {
        String text = of.text(field);
        if (text.isBlank() && !of.raw(field).isNumber()) of.missing(field, "text in quotes");
        return text;
    }

    /** Whole numbers of 0 or more. */
    static List<Integer> wholes(Cursor of, String field) {
        if (!of.has(field)) of.missing(field, "a list in square brackets");
        List<Integer> numbers = new ArrayList<>();
        for (JsonNode one : of.list(field)) {
            boolean whole = one.isNumber() && one.doubleValue() == Math.rint(one.doubleValue()) && one.doubleValue() >= 0 && one.doubleValue() <= Integer.MAX_VALUE;
            if (!whole) of.misshapen(field, "whole numbers of 0 or more", one, "[2, 0]");
            numbers.add(whole ? one.intValue() : 0);
        }
        return numbers;
    }

    /** An object whose fields are not looked at here, empty where it is not given. */
    static ObjectNode object(Cursor of, String field) {
        JsonNode given = of.raw(field);
        if (given instanceof ObjectNode object) return object;
        if (!given.isMissingNode()) of.shape(field, "an object in curly brackets", given, WayKind.CURLY_BRACKETS);
        return DocumentText.MAPPER.createObjectNode();
    }
}
