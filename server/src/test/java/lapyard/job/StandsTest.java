package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lapyard.order.SlipLine;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingKind;
import lapyard.plan.Told;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import org.junit.jupiter.api.Test;

/** The check of standing beds in a whole garden, and the goods of ties and brackets. */
class StandsTest {
    private static final String M =
            "\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],\"courses\":3";

    private static Finding about(JobSheet sheet, String ends) {
        return sheet.snags().stream().filter(one -> one.where().endsWith(ends)).findFirst().orElseThrow();
    }

    /** 18 brackets: a box of 20; 50 straps: a box; 308 screws and a tenth: two boxes of 200; 1 cross tie. */
    @Test
    void bracketsAndTiesAreOrdered() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"M\"," + M
                + ",\"ties\":{\"brackets\":true,\"courseTie\":\"straps\"}}]}");
        assertEquals(new BigDecimal("42.00"), cost(sheet, "brackets"));
        assertEquals(new BigDecimal("45.00"), cost(sheet, "course.ties"));
        assertEquals(new BigDecimal("29.00"), cost(sheet, "fixings"));
        assertEquals(new BigDecimal("19.00"), cost(sheet, "cross.ties"));
    }

    private static BigDecimal cost(JobSheet sheet, String item) {
        return sheet.slip().lines().stream()
                .filter(line -> line.item().equals(item))
                .findFirst()
                .flatMap(SlipLine::cost)
                .orElseThrow();
    }

    /** EN 338:2016: bending 14 of C14, 24 of C24, shear 3.0 and 4.0. A strip of the whole board keeps its class, a ripped one does not. */
    @Test
    void bearersTakeTheClassOfTheirSectionUnlessRipped() {
        double ungraded = bearers("ungraded", 50);
        double graded = bearers("C24", 50);
        assertTrue(graded < ungraded * 0.76 && graded > ungraded * 14 / 24 - 1e-9, graded + " of " + ungraded);
        assertEquals(bearers("ungraded", 23), bearers("C24", 23), 1e-9);
    }

    private static double bearers(String strength, int lift) {
        JobSheet sheet = Gardens.sheet("{\"catalogue\":{\"sections\":[{\"id\":\"50x75\",\"thickness\":50,\"height\":75,"
                + "\"strengthClass\":\"" + strength + "\",\"stock\":[{\"length\":2400,\"price\":5}]}]},\"beds\":[{\"id\":\"M\"," + M
                + ",\"base\":{\"bearerLift\":" + lift + ",\"bearerSpan\":600}}]}");
        return Quantity.sum(sheet.beds().get(0).standing().quantities(), QuantityKind.BEARERS_USE);
    }

    /** Screws of another length are other goods: they are ordered unpriced. */
    @Test
    void otherFixingsAreOtherGoods() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"M\"," + M + ",\"ties\":{\"brackets\":true,\"fixingLength\":60}}]}");
        assertTrue(sheet.slip().lines().stream().anyMatch(line -> line.item().equals("fixings.60") && line.need() == 108));
        assertTrue(sheet.slip().atLeast());
    }

    @Test
    void manyBedsAlikeAreOneFinding() {
        List<String> beds = new ArrayList<>();
        for (int i = 1; i <= 20; i++) {
            beds.add("{\"id\":\"" + (i + 10) + "\",\"width\":" + (i == 7 ? 3700 : 3600) + ",\"depth\":1200,\"courses\":2,\"at\":[" + i * 5000 + ",0]}");
        }
        JobSheet sheet = Gardens.sheet("{\"defaults\":{\"base\":\"open\",\"ties\":{\"crossTies\":false}},\"beds\":[" + String.join(",", beds)
                + "],\"loads\":{\"bow\":400},\"catalogue\":{" + Gardens.WORKED_BOARDS + "}}");
        Finding walls = about(sheet, ", walls");
        assertEquals("beds 11-30, walls", walls.where());
        assertEquals(Weight.NOTE, walls.weight());
        assertTrue(Told.text(walls).contains("of bed 17"), Told.text(walls));
    }

    @Test
    void aPlaceThatIsAcceptedAndHasNothingWrongIsNamed() {
        JobSheet sheet = Gardens.sheet("{'beds':[{'id':'K','width':2400,'depth':1200}],'accepted':[{'where':'nowhere','reason':'x'},{'where':'bed Z, walls','reason':'y'}]}".replace('\'', '"'));
        Finding note = about(sheet, "accepted");
        assertEquals(Weight.NOTE, note.weight());
        assertEquals("What is accepted at bed Z, walls and nowhere is not found there.", Told.text(note));
    }

    /** A wall that may break is a snag, takes nothing out of the order, and can be accepted by name. */
    @Test
    void aWeakWallIsASnagThatLeavesTheOrderWhole() {
        String weak = "{\"catalogue\":{\"sections\":[{\"id\":\"47x200\",\"thickness\":47,\"height\":200,\"stock\":[{\"length\":4800,\"price\":12}]}]},"
                + "\"beds\":[{\"id\":\"K\",\"width\":2900,\"depth\":1200,\"section\":\"47x200\",\"ties\":{\"crossTies\":false}}]";
        JobSheet sheet = Gardens.sheet(weak + "}");
        assertEquals(Weight.SNAG, about(sheet, "bed K, walls").weight());
        assertFalse(sheet.leftOut());
        JobSheet accepted = Gardens.sheet(weak + ",\"accepted\":[{\"where\":\"bed K, walls\",\"reason\":\"posts behind it\"}]}");
        assertEquals(Weight.NOTE, about(accepted, "bed K, walls").weight());
    }

    @Test
    void aTallBedIsNotDesignedHere() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"K\",\"width\":2000,\"depth\":1200,\"courses\":4}]}");
        Finding refused = sheet.snags().stream().filter(one -> one.kind() == FindingKind.NOT_DESIGNED_DEEP).findFirst().orElseThrow();
        assertEquals("bed K", refused.where());
        assertEquals("Bed K holds 705 mm of fill, over the 600 mm designed here.", Told.text(refused));
        assertEquals(Weight.SNAG, refused.weight());
        assertFalse(sheet.leftOut());
    }

    /** Boards of unknown origin that the saw plan puts into a bed refuse the check of that bed alone. */
    @Test
    void unknownBoardsRefuseTheBedTheyGoInto() {
        JobSheet sheet = Gardens.sheet("{\"rack\":[{\"id\":\"R1\",\"length\":3620}],\"beds\":["
                + "{\"id\":\"K\",\"width\":2000,\"depth\":1200},{\"id\":\"L\",\"width\":2200,\"depth\":1000,\"at\":[5000,0]}]}");
        List<String> refused = sheet.beds().stream().flatMap(bed -> bed.standing().notDesigned().stream()).map(Told::text).toList();
        assertTrue(refused.stream().anyMatch(one -> one.endsWith("boards of unknown treatment are in it (R1).")), refused.toString());
        assertTrue(sheet.snags().stream().anyMatch(one -> one.kind() == FindingKind.NOT_DESIGNED_BOARDS));
    }

    /** Screws that break out are left out of the order, and the sheet says that something is. */
    @Test
    void screwsThatBreakOutLeaveTheOrderShort() {
        JobSheet sheet = Gardens.sheet("{\"catalogue\":{\"sections\":[{\"id\":\"38x200\",\"thickness\":38,\"height\":200,\"stock\":[{\"length\":4800,\"price\":12}]}]},"
                + "\"beds\":[{\"id\":\"K\",\"width\":900,\"depth\":900,\"section\":\"38x200\",\"screws\":{\"length\":100}}]}");
        assertTrue(sheet.leftOut());
        assertTrue(sheet.slip().atLeast());
        assertEquals(Weight.SNAG, about(sheet, "bed K, corners").weight());
    }
}
