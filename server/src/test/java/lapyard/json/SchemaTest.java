package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The schema and the reader say the same: fields by name, samples valid, wrong documents refused by both. */
class SchemaTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final JsonNode SCHEMA = load();
    private static final JsonSchema VALIDATOR = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SCHEMA);

    private static JsonNode load() {
        try {
            return MAPPER.readTree(GardenSchema.text());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static Stream<Path> samples() throws IOException {
        return Files.list(Path.of("../samples")).filter(file -> file.toString().endsWith(".json")).sorted();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everySampleIsValidForBoth(Path sample) throws Exception {
        String text = Files.readString(sample);
        assertEquals(0, VALIDATOR.validate(MAPPER.readTree(text)).size(), () -> VALIDATOR.validate(tree(text)).toString());
        Reading reading = GardenReader.read(text);
        assertInstanceOf(Reading.Read.class, reading, () -> reading.findings().toString());
    }

    private static JsonNode tree(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "{\"beds\":[{\"width\":0,\"depth\":1200}]}",
        "{\"beds\":[{\"width\":2400,\"depth\":1200,\"colour\":1}]}",
        "{\"format\":2,\"beds\":[]}",
        "{\"units\":\"cubits\"}",
        "{\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":2.5}]}",
        "{\"beds\":[{\"width\":2400,\"depth\":1200,\"liner\":\"yes\"}]}",
        "{\"rack\":[{}]}",
        "{\"beds\":[{\"width\":2400,\"depth\":1200,\"give\":true}]}",
        "{\"give\":{\"width\":[10,20]},\"beds\":[]}",
        "{\"layOut\":{\"rank\":[\"beauty\"]},\"beds\":[]}",
        "{\"paths\":[{\"line\":[[0,0]]}]}"
    })
    void whatTheSchemaForbidsTheReaderRefuses(String text) throws Exception {
        assertFalse(VALIDATOR.validate(MAPPER.readTree(text)).isEmpty());
        assertInstanceOf(Reading.Refused.class, GardenReader.read(text));
    }

    @Test
    void theSchemaNamesExactlyTheFieldsThatTheReaderAsksFor() throws Exception {
        Cursor.Notes notes = new Cursor.Notes();
        GardenReader.read(MAPPER.readTree("""
                {"give":{},"layOut":{"beds":[{"type":"T"}]},"loadIn":{"vehicle":{},"passage":{"width":900,"turn":900},"dropSpot":[0,0]},"quote":{"labour":[{}]},
                 "defaults":{"fill":{"layers":[{"share":100}]},"ties":{"supports":[{"at":1}]}},"types":[{"id":"T","width":2400,"depth":1200}],
                 "beds":[{"width":1000,"depth":1000,"joints":[{"startOf":"A"}],"ties":{"supports":[{"at":1}]},"fill":{"layers":[{"share":100}]}},
                         {"walls":[{"length":1000},{"length":1000},{"length":1000},{"length":1000}]}],
                 "paths":[{"line":[[0,0],[1,0]],"layers":[{}]}],"rack":[{"length":1000}],"slatBoards":[{"width":95,"thickness":22,"length":1200}],"crew":{"people":[{}]},"tally":{"done":[{}],"boards":[{}],"bought":[{}]},"accepted":[{"where":"x","reason":"y"}],
                 "ground":{"outline":[[0,0],[9,0],[9,9]],"surfaces":[{"outline":[[0,0],[9,0],[9,9]]}],"levels":[{"at":[0,0],"drop":1}],
                  "survey":{"corners":[{"first":1,"second":1},{"along":0}],"walk":[{"length":1}],"checks":[{"taped":1}]},
                  "baseline":{"from":[0,0],"to":[9,0]},"rims":[{"beds":["A","B"]}],"tall":[{"height":1}],
                  "sun":{"latitude":0,"longitude":0},"picture":{"data":"data:image/png;base64,AA=="},
                  "keepClear":[{"kind":"gate","closed":0},{"at":[0,0]}]},
                 "catalogue":{"sections":[{"id":"S","thickness":50,"height":50,"stock":[{"length":1000}]}],
                  "rolls":[{"id":"R","width":1000}],"packs":[{"item":"I","packs":[{},{"name":"t","tonnes":1}]}],
                  "suppliers":[{"id":"S","vehicle":{}}],"pins":[{"item":"I","pack":"t"}]}}"""), notes);
        TreeSet<String> asked = new TreeSet<>();
        for (String pointer : notes.asked()) {
            if (!pointer.startsWith("/types/")) {
                asked.add(pointer);
            }
        }
        TreeSet<String> named = new TreeSet<>();
        fields(SCHEMA, "", named);
        named.removeIf(pointer -> pointer.startsWith("/types/"));
        assertEquals(String.join("\n", named), String.join("\n", asked));
    }

    private static void fields(JsonNode schema, String pointer, TreeSet<String> named) {
        if (schema.has("$ref")) {
            fields(SCHEMA.at(schema.get("$ref").asText().substring(1)), pointer, named);
        }
        schema.path("oneOf").forEach(one -> fields(one, pointer, named));
        if (schema.path("items").isObject()) {
            fields(schema.get("items"), pointer, named);
        }
        schema.path("properties").properties().forEach(entry -> {
            named.add(pointer + "/" + entry.getKey());
            fields(entry.getValue(), pointer + "/" + entry.getKey(), named);
        });
        assertTrue(pointer.length() < 100, "a schema that refers to itself");
    }
}
