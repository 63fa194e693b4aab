package lapyard.rest;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** JSON as a stream: what the first answers need, without loading the tree model and its dates. */
final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();

    private Json() {}

    /** JSON text that is written as it stands. */
    record Raw(String text) {}

    /** An object of these names and values, in their order; a value that is null or an empty optional is left out. */
    static Map<String, Object> object(Object... members) {
        Map<String, Object> object = new LinkedHashMap<>();
        for (int i = 0; i < members.length; i += 2) {
            Object value = members[i + 1] instanceof Optional<?> optional ? optional.orElse(null) : members[i + 1];
            if (value != null) object.put((String) members[i], value);
        }
        return object;
    }

    /** @param value a map, a list, a text, a number, a truth value or {@link Raw}; anything else is written as its text */
    static String text(Object value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            write(json, value);
        } catch (IOException neverInMemory) {
            throw new UncheckedIOException(neverInMemory);
        }
        return text.toString();
    }

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> object) {
            json.writeStartObject();
            for (Map.Entry<?, ?> member : object.entrySet()) {
                json.writeFieldName((String) member.getKey());
                write(json, member.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object each : list) write(json, each);
            json.writeEndArray();
        } else if (value instanceof Raw raw) {
            json.writeRawValue(raw.text());
        } else if (value instanceof Number || value instanceof Boolean) {
            json.writeObject(value);
        } else {
            json.writeString(value.toString());
        }
    }

    /** The string of that name at the top level of an object; empty where there is none or it is no string. */
    static String topLevel(String object, String name) {
        try (JsonParser json = FACTORY.createParser(object)) {
            if (json.nextToken() != JsonToken.START_OBJECT) return "";
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                boolean wanted = json.currentName().equals(name);
                JsonToken value = json.nextToken();
                if (wanted) return value == JsonToken.VALUE_STRING ? json.getText() : "";
                json.skipChildren();
            }
            return "";
        } catch (IOException notJson) {
            return "";
        }
    }
}
