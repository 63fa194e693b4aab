package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Supplier;
import lapyard.answers.GivenDocument;
import lapyard.json.DocumentText;
import lapyard.plan.CannotAnswer;
import lapyard.words.Wording;

/** Documents as plain JSON objects: read strictly, compared, patched. Knows no garden. */
final class Documents {
    static final String UNNAMED = "Garden without a name";

    private Documents() {}

    /**
     * Reads one JSON object.
     *
     * @throws ProblemException 400 naming line and column where it is not one
     */
    static ObjectNode object(String text) {
        if (text.isBlank()) throw new ProblemException(400, "the body is empty: send one JSON object");
        if (readable(() -> DocumentText.tree(text)) instanceof ObjectNode object) return object;
        throw new ProblemException(400, "the body is JSON but not an object: it should start with {");
    }

    /** Empty where it is no base64. */
    static byte[] base64(String text) {
        try {
            return Base64.getDecoder().decode(text);
        } catch (IllegalArgumentException notBase64) {
            return new byte[0];
        }
    }

    /**
     * A garden's text, parsed for all that follows.
     *
     * @throws ProblemException as {@link #object}
     */
    static GivenDocument given(String text) {
        return GivenDocument.of(text, object(text));
    }

    /** @throws ProblemException 400 with what keeps it from being read */
    static <T> T readable(Supplier<T> reading) {
        try {
            return reading.get();
        } catch (CannotAnswer bad) {
            throw new ProblemException(400, Wording.METRIC.paragraph(bad.findings().get(0)));
        }
    }

    /** What a list shows for this document. */
    static String name(String document) {
        String name = Json.topLevel(document, "name").strip();
        return name.isEmpty() ? UNNAMED : name;
    }

    /** As {@link #name(String)}, of a tree. */
    static String name(ObjectNode document) {
        String name = document.path("name").isTextual() ? document.path("name").asText().strip() : "";
        return name.isEmpty() ? UNNAMED : name;
    }

    /** As text; half a pair of signs, which only an escape can bring, stays an escape. */
    static String text(JsonNode tree) {
        String text = tree.toString();
        StringBuilder safe = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            boolean pair = Character.isHighSurrogate(sign)
                    && i + 1 < text.length()
                    && Character.isLowSurrogate(text.charAt(i + 1));
            if (pair) safe.append(sign).append(text.charAt(++i));
            else if (Character.isSurrogate(sign)) safe.append(String.format("\\u%04x", (int) sign));
            else safe.append(sign);
        }
        return safe.toString();
    }

    /** Names of the top-level members that differ, in order. */
    static List<String> changed(ObjectNode before, ObjectNode after) {
        TreeSet<String> names = new TreeSet<>();
        before.fieldNames().forEachRemaining(names::add);
        after.fieldNames().forEachRemaining(names::add);
        names.removeIf(name -> Objects.equals(before.get(name), after.get(name)));
        return new ArrayList<>(names);
    }

    /** @see "RFC 7396, section 2: MergePatch(Target, Patch)" */
    static JsonNode merged(JsonNode target, JsonNode patch) {
        if (!(patch instanceof ObjectNode changes)) return patch;
        ObjectNode result =
                target instanceof ObjectNode object ? object.deepCopy() : JsonNodeFactory.instance.objectNode();
        for (Map.Entry<String, JsonNode> change : changes.properties()) {
            String name = change.getKey();
            if (change.getValue().isNull()) result.remove(name);
            else result.set(name, merged(result.get(name), change.getValue()));
        }
        return result;
    }
}
