package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import lapyard.job.Gardens;
import lapyard.plan.Garden;
import lapyard.plan.SurfaceKind;
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
            return MAPPER.readTree(GardenReader.schema());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void everySampleIsValidForBoth(String sample) throws Exception {
        String text = Gardens.text(sample);
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

    /** A garden in which every object and list of the schema stands. */
    private static final String WHOLE = """
                {"give":{},"shelf":[{"id":"p"}],"layOut":{"beds":[{"type":"T"}]},"loadIn":{"vehicle":{},"passage":{"width":900,"turn":900},"dropSpot":[0,0]},"quote":{"labour":[{}]},
                 "defaults":{"screws":{},"notches":{},"base":{},"liner":{},"finish":{},"seal":{},"fill":{"layers":[{"share":100}]},"ties":{"supports":[{"at":1}]}},"types":[{"id":"T","width":2400,"depth":1200}],
                 "beds":[{"width":2400,"depth":1200,"screws":{},"notches":{},"base":{},"liner":{},"finish":{},"seal":{},"joints":[{"startOf":"A"}],"ties":{"supports":[{"at":1}]},"fill":{"layers":[{"share":100}]}},
                         {"walls":[{"length":2000},{"length":1000},{"length":2000},{"length":1000}]}],
                 "paths":[{"line":[[0,0],[1,0]],"layers":[{}]}],"rack":[{"length":1000}],"slatBoards":[{"width":95,"thickness":22,"length":1200}],
                 "handOver":{"finishYears":2,"tenders":[{"bed":"A","who":"x"}],"snags":[{"text":"x"}]},"crew":{"people":[{}],"rates":{}},"saw":{},"loads":{},
                 "tally":{"done":[{"task":"A.course-1"}],"boards":[{"stock":"2400"},{"stock":"2400","cut":["A-1A"],"sawn":[{"piece":"A-1A","length":900}]}],"bought":[{"item":"screws.100","pack":"box of 100"}]},"accepted":[{"where":"x","reason":"y"}],
                 "ground":{"outline":[[0,0],[9,0],[9,9]],"surfaces":[{"outline":[[0,0],[9,0],[9,9]]}],"levels":[{"at":[0,0],"drop":1}],
                  "baseline":{"from":[0,0],"to":[900,0]},"rims":[{"beds":["A","B"]}],"tall":[{"height":1,"line":[[0,0],[1,0]]}],"preparation":{},"access":{},
                  "sun":{"latitude":0,"longitude":0},"picture":{"data":"data:image/png;base64,AA=="},
                  "keepClear":[{"kind":"gate","closed":0}]},
                 "catalogue":{"sections":[{"id":"S","thickness":50,"height":50,"stock":[{"length":1000}]}],
                  "rolls":[{"id":"R","width":1000}],"packs":[{"item":"I","unit":"m3","density":600,"packs":[{"name":"t"}]}],
                  "suppliers":[{"id":"S","vehicle":{}}],"pins":[{"item":"I","pack":"t"}]}}""";
    /** What cannot stand in a garden beside the rest of {@link #WHOLE}. */
    private static final String SURVEYED = """
                {"ground":{"keepClear":[{"at":[0,0]}],"survey":{"corners":[{"first":1,"second":1},{"along":0}],"walk":[{"length":1}],"checks":[{"taped":1}]}},
                 "catalogue":{"packs":[{"item":"I","unit":"m3","density":600,"packs":[{"name":"t","tonnes":1}]}]},
                 "beds":[{"outline":[[0,0],[9,0],[9,9]],"at":[0,0]}]}""";

    @Test
    void kindsOfGroundAreThoseOfTheSchema() {
        List<String> words = new ArrayList<>();
        SCHEMA.at("/$defs/ground/properties/surfaces/items/properties/kind/enum").forEach(word -> words.add(word.asText()));
        assertEquals(Stream.of(SurfaceKind.values()).map(SurfaceKind::code).toList(), words);
    }

    @Test
    void theReaderAsksForEveryFieldOfTheSchema() {
        TreeSet<String> named = new TreeSet<>();
        fields(SCHEMA, "", named);
        for (String text : List.of(WHOLE, SURVEYED)) {
            Cursor.Notes notes = new Cursor.Notes();
            GardenReader.read(tree(text), notes);
            named.removeAll(notes.asked());
        }
        named.removeIf(path -> path.startsWith("/types/"));
        assertEquals(new TreeSet<>(), named);
    }

    /** What stands in the schema as a default is what a garden without the field has. */
    @Test
    void aDefaultOfTheSchemaIsWhatAGardenHasWithoutTheField() throws Exception {
        Garden without = read(tree(WHOLE));
        int tried = 0;
        for (Map.Entry<String, JsonNode> each : defaults(SCHEMA, "", new TreeMap<>()).entrySet()) {
            JsonNode document = tree(WHOLE);
            int slash = each.getKey().lastIndexOf('/');
            for (JsonNode object : objects(document, each.getKey().substring(0, slash))) {
                String field = each.getKey().substring(slash + 1);
                if (object.has(field)) continue;
                ((ObjectNode) object).set(field, each.getValue());
                tried++;
            }
            Garden with = read(document);
            for (RecordComponent part : Garden.class.getRecordComponents()) {
                if (part.getName().equals("defaulted")) continue;
                assertEquals(part.getAccessor().invoke(without), part.getAccessor().invoke(with), each.getKey() + " = " + each.getValue());
            }
        }
        assertTrue(tried > 150, "tried " + tried);
    }

    private static Garden read(JsonNode document) {
        Reading reading = GardenReader.read(document);
        return assertInstanceOf(Reading.Read.class, reading, () -> reading.findings().toString()).garden();
    }

    /** The objects of the document under a path of the schema, which has no places in lists. */
    private static List<JsonNode> objects(JsonNode document, String path) {
        List<JsonNode> found = List.of(document);
        for (String field : path.isEmpty() ? new String[0] : path.substring(1).split("/")) {
            List<JsonNode> next = new ArrayList<>();
            for (JsonNode object : found) {
                JsonNode value = object.path(field);
                if (value.isArray()) value.forEach(next::add);
                else next.add(value);
            }
            found = next.stream().filter(JsonNode::isObject).toList();
        }
        return found;
    }

    private static Map<String, JsonNode> defaults(JsonNode schema, String path, Map<String, JsonNode> found) {
        if (schema.has("$ref")) defaults(SCHEMA.at(schema.get("$ref").asText().substring(1)), path, found);
        schema.path("oneOf").forEach(one -> defaults(one, path, found));
        if (schema.path("items").isObject()) defaults(schema.get("items"), path, found);
        schema.path("properties").properties().forEach(entry -> {
            String field = path + "/" + entry.getKey();
            JsonNode named = entry.getValue();
            JsonNode usual = named.has("default") ? named.get("default") : SCHEMA.at(named.path("$ref").asText("#/none").substring(1)).path("default");
            if (!usual.isMissingNode()) found.put(field, usual);
            defaults(named, field, found);
        });
        return found;
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
