package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import org.junit.jupiter.api.Test;

class GroundJsonTest {
    private static JobSheet sheet(String document) throws Exception {
        return Job.prepare(assertInstanceOf(Reading.Read.class, GardenReader.read(document)).garden());
    }

    private static JobSheet sample() throws Exception {
        return sheet(Gardens.text("lock-keepers-yard"));
    }

    @Test
    void theJobSheetCarriesTheGround() throws Exception {
        ObjectNode ground = (ObjectNode) Written.whole(sample()).get("ground");
        assertEquals(5, ground.at("/survey/corners").size());
        assertEquals(300, ground.at("/usual/clearances/cover").asInt());
        assertEquals(915, ground.at("/usual/standards/ada-2010/path").asInt());
        assertEquals(9, ground.at("/fall/readings").size());
        assertEquals("strip", ground.at("/beds/0/way").asText());
        assertTrue(ground.at("/access/named").asBoolean());
        assertTrue(ground.at("/access/rows").size() > 8);
        assertEquals("B", ground.at("/rims/1/bed").asText());
        assertTrue(ground.at("/keepClear/3/beds/0/distance").asDouble() > 0);
    }

    /** Worked by hand: from wall F's start at the rear, 0 to 30 at the front; F-1 runs past its start by nothing. */
    @Test
    void scribesAreToldPieceEndByPieceEnd() throws Exception {
        JobSheet sheet = sheet("""
                {"ground":{"levels":[{"at":[0,0],"drop":412},{"at":[3000,0],"drop":412},{"at":[0,2400],"drop":442}]},
                 "beds":[{"id":"M","outline":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]]}]}""");
        var scribes = JobSheetJson.part("ground", sheet).at("/beds/0/scribes");
        assertEquals(6, scribes.size());
        assertEquals("M-1B", scribes.get(1).get("mark").asText());
        // B runs y 0 to 1400 of 1500: 30 at its start, 30 - 1400 / 80 at its end
        assertEquals(30, scribes.get(1).get("start").asDouble());
        assertEquals(12.5, scribes.get(1).get("end").asDouble());
    }

    @Test
    void pegsAndSunArePartsOfTheirOwn() throws Exception {
        JsonNode pegs = JobSheetJson.part("pegs", sample());
        assertEquals(11400, pegs.at("/baseline/length").asDouble());
        assertEquals(900, pegs.at("/beds/0/pegs/0/along").asDouble());
        assertEquals(2400, pegs.at("/beds/0/pegs/0/off").asDouble());
        assertEquals(2563.2, pegs.at("/beds/0/pegs/0/first").asDouble());
        JsonNode sun = JobSheetJson.part("sun", sample());
        assertEquals(4, sun.at("/beds").size());
        assertTrue(sun.get("rise").asText().startsWith("2026-03-20T06:"), sun.get("rise").asText());
        JobSheet bare = sheet("{\"beds\":[{\"width\":2400,\"depth\":1200}]}");
        assertEquals("STOP", JobSheetJson.part("pegs", bare).at("/snags/0/weight").asText());
        assertTrue(JobSheetJson.part("sun", bare).get("day").isNull());
    }
}
