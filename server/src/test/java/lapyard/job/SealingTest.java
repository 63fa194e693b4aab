package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import lapyard.order.SlipLine;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Told;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import org.junit.jupiter.api.Test;

/** Seal on what the saw opens, worked by hand on the bed of 18 pieces of 100 x 200 with 5 notches of 25 x 50. */
class SealingTest {
    private static final String M =
            "{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],\"low\":[\"C\",\"E\"]";

    private static JobSheet sheet(String bed, String treated) {
        return Gardens.sheet("{\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200," + treated
                + "\"stock\":[{\"length\":4800,\"price\":36}]}]},\"beds\":[" + M + bed + "}]}");
    }

    private static double litres(JobSheet sheet) {
        return Quantity.sum(sheet.beds().get(0).quantities(), QuantityKind.SEAL_LITRES);
    }

    private static List<Finding> about(JobSheet sheet) {
        return sheet.snags().stream().filter(one -> one.where().endsWith("cut ends")).toList();
    }

    /**
     * Two liberal coats: NHBC Standards 3.3.5 (2025). Ends 18 x 2 x 0.02 = 0.72, notches 5 x (2 x 50 + 25) x 100 mm2 =
     * 0.0625; 0.7825 x 2 / 4 = 0.39125 l, so one tin of half a litre at our example price of 9.00.
     */
    @Test
    void aSealGoesOnEveryCutEndAndNotch() {
        JobSheet sheet = sheet(",\"seal\":true", "\"treated\":true,");
        assertEquals(0.39125, litres(sheet), 1e-9);
        SlipLine line = sheet.slip().lines().stream().filter(one -> one.item().equals("seal")).findFirst().orElseThrow();
        assertEquals(0.39125, line.need(), 1e-9);
        assertEquals(List.of("tin of 0.5 l"), line.packs().stream().map(SlipLine.PackCount::pack).toList());
        assertEquals(0, new BigDecimal("9").compareTo(line.cost().orElseThrow()));
        assertEquals(List.of(), about(sheet));
        assertTrue(Buying.of(sheet).rows().stream().anyMatch(row -> row.item().equals("seal")));
    }

    /** 0.7825 x 3 / 2.5 = 0.939 l of the gardener's own, which no list sells: a line without a price. */
    @Test
    void theTinSaysItsOwnCover() {
        JobSheet sheet = sheet(",\"seal\":{\"item\":\"green-end\",\"coats\":3,\"cover\":2.5}", "");
        assertEquals(0.939, litres(sheet), 1e-9);
        SlipLine line = sheet.slip().lines().stream().filter(one -> one.item().equals("green-end")).findFirst().orElseThrow();
        assertTrue(line.cost().isEmpty());
    }

    /** 0.7825 shows as 0.78. */
    @Test
    void treatedTimberWithoutASealIsASnag() {
        JobSheet sheet = sheet("", "\"treated\":true,");
        Finding snag = about(sheet).get(0);
        assertEquals(Weight.SNAG, snag.weight());
        assertEquals("bed M, cut ends", snag.where());
        assertEquals("0.78 m² of cut ends and notches in treated timber have no seal, and rot starts at cuts.", Told.text(snag));
        assertFalse(Told.ways(snag).isEmpty());
        assertEquals(0, litres(sheet));
    }

    @Test
    void untreatedTimberAsksForNone() {
        assertEquals(List.of(), about(sheet("", "")));
        assertTrue(sheet("", "").slip().lines().stream().noneMatch(line -> line.item().equals("seal")));
    }

    /** A bed of treated boards on hand needs it as well: R12 of 4800 gives the bed's longest pieces. */
    @Test
    void aTreatedBoardOnHandCounts() {
        String board = "{\"id\":\"R12\",\"length\":4800,\"origin\":\"shop\",\"treatment\":\"%s\"}";
        String garden = "{\"rack\":[" + board + "],\"beds\":[{\"id\":\"N\",\"width\":1800,\"depth\":900}]}";
        assertEquals(1, about(Gardens.sheet(garden.formatted("garden"))).size());
        assertEquals(0, about(Gardens.sheet(garden.formatted("none"))).size());
    }

    @Test
    void aBedMayDoWithoutTheGardensSeal() {
        String garden = "{\"defaults\":{\"seal\":{\"cover\":5}},\"beds\":[{\"id\":\"A\",\"width\":1800,\"depth\":900},"
                + "{\"id\":\"B\",\"width\":1800,\"depth\":900,\"seal\":false}]}";
        JobSheet sheet = Gardens.sheet(garden);
        assertTrue(litres(sheet) > 0);
        assertEquals(0, Quantity.sum(sheet.beds().get(1).quantities(), QuantityKind.SEAL_LITRES));
    }

    /** The seal is bought for bed S alone, so no task, sheet or caution tells the other to use it. */
    @Test
    void theSealIsToldToTheBedsThatItIsBoughtFor() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"S\",\"width\":2400,\"depth\":1200,\"courses\":2,\"seal\":true},"
                + "{\"id\":\"T\",\"width\":2400,\"depth\":1200,\"courses\":2,\"at\":[5000,0]}]}");
        assertEquals(List.of("mark pieces, seal ends", "mark pieces"),
                List.of("S", "T").stream().map(id -> sheet.weekends().byId().get(id + ".mark").work().label()).toList());
        assertEquals(List.of("bed S"), sheet.slip().lines().stream().filter(line -> line.item().equals("seal"))
                .flatMap(line -> line.uses().stream()).map(SlipLine.Use::owner).toList());
        List<String> told = sheet.cautions().stream().map(Caution::text).filter(text -> text.contains("cut end")).toList();
        assertEquals(1, told.size());
        assertTrue(told.get(0).endsWith("Coat every cut end of bed S."), told.get(0));
    }
}
