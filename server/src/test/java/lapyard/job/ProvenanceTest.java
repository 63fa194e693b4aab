package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which boards on hand may go where. */
class ProvenanceTest {
    private static JobSheet sheet(String board, boolean food) {
        return Gardens.sheet("{\"rack\":[{\"id\":\"R12\",\"length\":4800" + board + "}],\"beds\":["
                + "{\"id\":\"N\",\"width\":1800,\"depth\":900,\"food\":" + food + "}]}");
    }

    private static boolean used(JobSheet sheet) {
        return sheet.cutting().get(0).result().plan().stream().anyMatch(board -> board.stock().equals("R12"));
    }

    /** Restricted in law: creosote REACH annex XVII entry 31, arsenic entry 19; MB by the mark of ISPM 15, from memory. */
    @ParameterizedTest(name = "{0}: food {1}, flowers {2}")
    @CsvSource(textBlock = """
            ,                                              false, true
            '"origin":"shed"',                             false, true
            '"origin":"shed","treatment":"none"',          true,  true
            '"origin":"shed","treatment":"heat"',          true,  true
            '"origin":"shop","treatment":"garden"',        true,  true
            '"treatment":"none"',                          false, true
            '"origin":"shed","treatment":"none","coated":true', false, true
            '"origin":"rail","treatment":"tar"',           false, false
            '"origin":"shed","treatment":"arsenic"',       false, false
            '"origin":"docks","treatment":"gas"',          false, false
            '"origin":"rail","treatment":"creosote"',      false, false
            '"origin":"shed","treatment":"cca"',           false, false
            '"origin":"docks","treatment":"methyl-bromide"', false, false
            """)
    void aBoardGoesOnlyWhereItMay(String fields, boolean food, boolean flowers) {
        String board = fields == null ? "" : "," + fields;
        assertEquals(food, used(sheet(board, true)));
        assertEquals(flowers, used(sheet(board, false)));
        JobSheet barred = sheet(board, true);
        assertEquals(!food, barred.snags().stream()
                .anyMatch(one -> one.where().equals("board R12") && one.weight() == Weight.SNAG));
    }

    @Test
    void aTarredBoardIsBarredEverywherePlanted() {
        JobSheet sheet = sheet(",\"origin\":\"rail\",\"treatment\":\"tar\",\"checkedBy\":\"the lead\"", false);
        Finding snag = sheet.snags().stream().filter(one -> one.where().equals("board R12")).findFirst().orElseThrow();
        assertEquals("Board R12, creosoted, may go nowhere that is planted, so it is left out.", Told.text(snag));
        Provenance board = sheet.provenance().get(0);
        assertEquals("nowhere planted", board.allowed());
        assertEquals("the lead", board.board().past().checkedBy());
        assertEquals(List.of(), board.beds());
    }

    @Test
    void theSheetTellsWhereABoardWent() {
        JobSheet sheet = sheet(",\"origin\":\"shed\",\"treatment\":\"none\"", true);
        assertEquals(List.of("N"), sheet.provenance().get(0).beds());
        assertEquals("anywhere", sheet.provenance().get(0).allowed());
        assertEquals("", sheet.provenance().get(0).why());
        assertEquals(List.of(), sheet.beds().get(0).standing().notDesigned());
    }

    /** A board nobody knows is used for flowers, never without a word. */
    @Test
    void anUnknownBoardIsNeverUsedSilently() {
        JobSheet sheet = sheet("", false);
        assertTrue(used(sheet));
        assertEquals("not food", sheet.provenance().get(0).allowed());
        assertTrue(sheet.snags().stream().anyMatch(one -> one.weight() == Weight.SNAG && Told.text(one).contains("R12")));
    }

    @Test
    void cautionsStandWhereTheWorkIs() {
        List<Caution> with = sheet("", false).cautions();
        assertTrue(with.stream().anyMatch(one -> one.sheet().equals("saw") && one.text().startsWith("Old boards")));
        assertTrue(with.stream().anyMatch(one -> one.sheet().equals("base") && one.text().startsWith("Never stand")));
        List<Caution> without = Gardens.sheet("{\"beds\":[{\"width\":1800,\"depth\":900,\"base\":\"open\",\"finish\":false}]}").cautions();
        assertFalse(without.stream().anyMatch(one -> one.sheet().equals("base") || one.sheet().equals("finish")));
        assertTrue(without.stream().anyMatch(one -> one.text().contains("Local codes")));
        assertEquals(List.of(), Gardens.sheet("{\"beds\":[]}").cautions());
    }
}
