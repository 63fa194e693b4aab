package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import lapyard.working.Progress;
import org.junit.jupiter.params.provider.CsvSource;

class StagingJsonTest {
    /** Worked by hand: two units of work, a wait of 3 through the break, one unit in the second stretch. */
    @Test
    void aProblemGoesInAndItsScheduleComesOut() throws Exception {
        ObjectNode result = SolveLine.solve("staging", """
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
        ObjectNode result = SolveLine.solve("staging", "{\"resources\":[],\"tasks\":[{\"id\":\"a\",\"duration\":3}],\"calendar\":null}", 1, Progress.UNHEARD);
        assertEquals(3, result.get("makespan").asInt());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        {"tasks":[]} | "resources" is missing
        {"resources":[1],"tasks":[{"id":"a"}]} | duration
        {"resources":[1.5],"tasks":[]} | "resources" must be whole numbers of 0 or more, not the number 1.5
        {"resources":[1],"tasks":[{"id":"a","duration":1,"uses":[2]}]} | task a: The task uses 2 of resource 1, and 1 is there
        {"resources":[1],"tasks":[{"id":"a","duration":1,"after":[{"lag":2}]}]} | task 1, wait 1, task: "task" is missing
        {"resources":[1],"tasks":[{"id":"a","duration":1,"after":[{"task":"a"}]}]} | Tasks wait for each other in a circle: "a" waits for "a"
        {"resources":[1],"tasks":[{"id":"a","duration":1}],"calendar":{"cycle":[2]}} | "cycle[0]" is 2; at most 1 is possible
        {"resources":[1],"tasks":[{"id":"a","duration":1}],"calendar":{"cycle":[]}} | The calendar has no working unit. Give 1 for a working unit, and 0 for one that is not
        {"resources":[1],"tasks":[],"people":2} | Unknown field "people"
        """, quoteCharacter = '`')
    void whatCannotBeReadIsRefusedByName(String text, String told) {
        String message = Told.refusal(assertThrows(IllegalArgumentException.class, () -> SolveLine.solve("staging", text, 1, Progress.UNHEARD)));
        assertTrue(message.contains(told), message);
    }
}
