package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import lapyard.working.Progress;
import org.junit.jupiter.params.provider.CsvSource;

class StagingJsonTest {
    /** Worked by hand: two units of work, a wait of 3 through the break, one unit in the second stretch. */
    @Test
    void aProblemGoesInAndItsScheduleComesOut() throws Exception {
        ObjectNode result = SolveLine.staging("""
                {"name":"x","resources":[4,2],"tasks":[
                  {"id":"1","duration":2,"uses":[2,0]},
                  {"id":2,"duration":1,"uses":[4,2],"after":[{"task":"1","lag":3}],"unbroken":true}],
                 "calendar":{"cycle":[0,0,1,1]}}""", 1, Progress.UNHEARD);
        assertEquals("x", result.get("name").asText());
        assertEquals("{\"1\":2,\"2\":7}", result.get("starts").toString());
        assertEquals(8, result.get("makespan").asInt());
        assertEquals(8, result.get("lowerBound").asInt());
        assertTrue(result.get("proven").asBoolean());
        assertTrue(result.get("seconds").isNumber());
    }

    @Test
    void aMissingCalendarMeansEveryUnitIsWorked() throws Exception {
        ObjectNode result = SolveLine.staging("{\"resources\":[],\"tasks\":[{\"id\":\"a\",\"duration\":3}],\"calendar\":null}", 1, Progress.UNHEARD);
        assertEquals(3, result.get("makespan").asInt());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        {"tasks":[]} | resources must be a list
        {"resources":[1],"tasks":[{"id":"a"}]} | duration
        {"resources":[1.5],"tasks":[]} | resources[0] must be a whole number
        {"resources":[1],"tasks":[{"id":"a","duration":1,"uses":[2]}]} | 1 too many
        {"resources":[1],"tasks":[{"id":"a","duration":1,"after":[{"lag":2}]}]} | after[0].task must be a text
        {"resources":[1],"tasks":[{"id":"a","duration":1,"after":[{"task":"a"}]}]} | "a" waits for "a"
        {"resources":[1],"tasks":[{"id":"a","duration":1}],"calendar":{"cycle":[2]}} | 1 for a working unit
        {"resources":[1],"tasks":[{"id":"a","duration":1}],"calendar":{"cycle":[]}} | cycle is empty
        {"resources":[1],"tasks":[],"people":2} | unknown field "people"
        """, quoteCharacter = '`')
    void whatCannotBeReadIsRefusedByName(String text, String told) {
        String message = assertThrows(IllegalArgumentException.class, () -> SolveLine.staging(text, 1, Progress.UNHEARD)).getMessage();
        assertTrue(message.contains(told), message);
    }
}
