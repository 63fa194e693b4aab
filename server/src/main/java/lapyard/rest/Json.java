package lapyard.rest;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** JSON as a stream: what the first answers need, without loading the tree model and its dates. */
final class Json {
    /** How deep arrays and objects may lie inside each other. */
    static final int DEPTH = 64;

    static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEPTH)
                    .maxNumberLength(100)
                    .maxNameLength(1000)
                    .build())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private Json() {}

    /** Something that writes one JSON value. */
    interface Writing {
        void to(JsonGenerator json) throws IOException;
    }

    static String text(Writing writing) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            writing.to(json);
        } catch (IOException neverInMemory) {
            throw new UncheckedIOException(neverInMemory);
        }
        return text.toString();
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
