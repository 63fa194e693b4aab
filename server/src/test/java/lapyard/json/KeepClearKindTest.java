package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.stream.StreamSupport;
import lapyard.job.Job;
import lapyard.plan.KeepClearKind;
import org.junit.jupiter.api.Test;

/** A kind of what is kept clear is one word in the schema, in the code and in the answers. */
class KeepClearKindTest {
    @Test
    void theSchemaListsEveryKind() throws Exception {
        JsonNode words = DocumentText.parse(GardenReader.schema()).findValue("keepClear").findValue("kind").findValue("enum");
        List<String> listed = StreamSupport.stream(words.spliterator(), false).map(JsonNode::textValue).sorted().toList();
        assertEquals(Arrays.stream(KeepClearKind.values()).map(KeepClearKind::code).sorted().toList(), listed);
        for (String code : listed) assertEquals(code, KeepClearKind.of(code).code());
    }

    @Test
    void anAnswerHasTheWordOfTheDocumentAndItsUsualClearance() throws Exception {
        String garden = "{\"ground\":{\"outline\":[[0,0],[9000,0],[9000,9000],[0,9000]],\"keepClear\":[{\"kind\":\"air-brick\",\"at\":[4000,0]}]},"
                + "\"beds\":[{\"width\":2400,\"depth\":1200,\"at\":[2000,3000]}]}";
        JsonNode ground = JobSheetJson.part("ground", Job.prepare(((Reading.Read) GardenReader.read(garden)).garden()));
        assertEquals("air-brick", ground.at("/keepClear/0/kind").textValue());
        assertEquals(300, ground.at("/keepClear/0/clearance").asInt());
        assertEquals(300, ground.at("/usual/clearances/air-brick").asInt());
    }
}
