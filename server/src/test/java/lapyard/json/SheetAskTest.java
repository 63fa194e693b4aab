package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is asked for of a job sheet is what the whole has, and nothing else. */
class SheetAskTest {
    private static JsonNode written(JobSheet sheet, List<String> parts, Optional<String> bed) {
        try {
            return Written.part(sheet, SheetAsk.of(parts, bed));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JobSheet sample(String name) throws IOException {
        return Gardens.sample(name);
    }

    private static List<String> names(JsonNode object) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "lock-keepers-yard", "chapel-corner", "terrace-feet"})
    void aPartAskedForAloneStandsAsInTheWhole(String sample) throws IOException {
        JobSheet sheet = sample(sample);
        JsonNode whole = written(sheet, List.of(), Optional.empty());
        for (String part : names(whole)) {
            if (part.equals("caution")) continue;
            JsonNode asked = written(sheet, List.of(part), Optional.empty());
            assertEquals(whole.get(part), asked.get(part), part);
            assertEquals(part.equals("snags") && whole.has("caution") ? List.of("snags", "caution") : List.of(part), names(asked));
        }
        assertEquals(List.of("beds", "slip"), names(written(sheet, List.of("slip", "beds", "slip"), Optional.empty())));
    }

    /** The yard has of each bed the timbers of its top course, and a search is told with the figures of its plan. */
    @ParameterizedTest
    @ValueSource(strings = {"village-hall", "lock-keepers-yard", "chapel-corner", "terrace-feet"})
    void theYardAndTheSearchesAreTheWholeInShort(String sample) throws IOException {
        JobSheet sheet = sample(sample);
        JsonNode whole = written(sheet, List.of(), Optional.empty());
        assertTrue(!whole.has("yard") && !whole.has("searches"));
        JsonNode shown = written(sheet, List.of("yard", "searches"), Optional.empty());
        assertEquals(whole.path("beds").size(), shown.path("yard").size());
        for (int i = 0; i < whole.path("beds").size(); i++) {
            JsonNode bed = whole.path("beds").get(i);
            assertEquals(bed.get("id"), shown.path("yard").get(i).get("bed"));
            List<JsonNode> top = StreamSupport.stream(bed.path("pieces").spliterator(), false)
                    .filter(piece -> piece.path("course").asInt() == bed.path("courses").asInt()).map(piece -> piece.get("lies")).toList();
            assertEquals(top, StreamSupport.stream(shown.path("yard").get(i).get("timbers").spliterator(), false).toList());
        }
        List<String> told = new ArrayList<>();
        for (String kind : List.of("cutting", "strips", "rolls")) {
            for (JsonNode one : whole.path(kind)) told.add(one.path("result").path("cost") + " " + one.path("result").path("lowerBound") + " " + one.path("result").path("proven"));
        }
        assertEquals(told, StreamSupport.stream(shown.path("searches").spliterator(), false).map(one -> one.path("cost") + " " + one.path("lowerBound") + " " + one.path("proven")).toList());
    }

    @Test
    void ofTheBedsOneAloneCanBeAskedFor() throws IOException {
        JobSheet sheet = sample("village-hall");
        JsonNode beds = written(sheet, List.of("beds"), Optional.empty()).get("beds");
        assertTrue(beds.size() > 3);
        for (JsonNode bed : beds) {
            JsonNode one = written(sheet, List.of("beds", "slip"), Optional.of(bed.path("id").asText()));
            assertEquals(1, one.get("beds").size());
            assertEquals(bed, one.get("beds").get(0));
        }
        assertEquals(0, written(sheet, List.of("beds"), Optional.of("nobody")).get("beds").size());
    }

    @Test
    void aPartThatIsNotThereIsRefusedWithThoseThatAre() {
        String refused = assertThrows(IllegalArgumentException.class, () -> SheetAsk.of(List.of("slip", "benches"), Optional.empty())).getMessage();
        assertTrue(refused.startsWith("the whole job sheet has no part benches: its parts are garden, ") && refused.contains("searches"), refused);
        assertEquals(SheetAsk.of(List.of("slip", "beds"), Optional.empty()).key(), SheetAsk.of(List.of("beds", "slip"), Optional.empty()).key());
    }
}
