package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import lapyard.working.Progress;
import org.junit.jupiter.api.Test;

class CuttingReportTest {
    private static String job(String more) {
        return "{\"kerf\":4,\"endTrim\":10,\"stock\":[{\"id\":\"L24\",\"length\":2400,\"price\":17.40}],"
                + "\"pieces\":[{\"id\":\"a\",\"length\":1200,\"count\":2},{\"id\":\"b\",\"length\":900,\"stage\":2}]" + more + "}";
    }

    @Test
    void nothingIsAddedUnlessAsked() {
        assertFalse(SolveLine.solve("cutting", job(""), 1, Progress.UNHEARD).has("ledger"));
    }

    /** By hand: 10 + 1200 + 4 leave 1186 of 2400 for the 900; 12 less on each 1200 and one board holds both: 2424 - 24. */
    @Test
    void theReportTellsHowItIsSawnWhatWaitsWhatStagingCostsAndWhatNearlySaves() {
        var json = SolveLine.solve("cutting", job(",\"report\":true"), 1, Progress.UNHEARD);
        assertEquals("34.80", json.get("cost").toString());
        assertEquals(2, json.get("sawBoards").size());
        var carried = json.get("ledger").get("offcuts").get(0);
        assertEquals("carried", carried.get("fate").textValue());
        assertEquals(1186, carried.get("length").intValue());
        assertEquals("34.80", json.get("staging").get("staged").get("cost").toString());
        assertEquals("52.20", json.get("staging").get("stageByStage").get("cost").toString());
        assertTrue(json.get("batches").get("minutes").doubleValue() > 0);
        // a shorter 1200 would share a board with the other, but the 900 then needs the second board all the same
        assertEquals(0, json.get("nearMisses").size());
    }

    @Test
    void aNearMissIsTold() {
        var json = SolveLine.solve("cutting", "{\"kerf\":4,\"endTrim\":10,\"report\":true,\"stock\":[{\"id\":\"L24\",\"length\":2400,\"price\":17.40}],"
                        + "\"pieces\":[{\"id\":\"a\",\"length\":1200,\"count\":2}]}",
                1, Progress.UNHEARD);
        assertEquals(
                "[{\"length\":1200,\"count\":2,\"shorter\":12,\"sure\":true,\"saved\":17.40,\"boardsSaved\":1,\"pieces\":[\"a\"]}]",
                json.get("nearMisses").toString());
    }
}
