package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One bed of 2400 x 1200 in three courses and what it takes, bought from several suppliers. */
class SuppliersTest {
    private static final String SUPPLIERS = "\"suppliers\":[{\"id\":\"mill\",\"delivery\":35.00,\"freeOver\":400.00,\"leadDays\":5},"
            + "{\"id\":\"yard\",\"delivery\":20.00,\"tax\":20,\"taxIncluded\":false}]";

    private static JobSheet sheet(String catalogue) {
        return Gardens.sheet("{\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":3}],\"catalogue\":{" + catalogue + "}}");
    }

    private static SlipLine line(JobSheet sheet, String item) {
        return sheet.slip().lines().stream().filter(line -> line.item().equals(item)).findFirst().orElseThrow();
    }

    private static String stock(String rows) {
        return ",\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[" + rows + "]}]";
    }

    /**
     * Each course is 2300 + 1100 twice: three 4800s hold 2 x 2300, three 2400s 2 x 1100 and so on; the mill's five boards
     * are 4.5 used. Dearer boards from one place beat cheaper ones from two where the second charge is more.
     */
    @Test
    void allBoardsOfASectionComeFromOneSupplierAndTheCuttingIsTheChosenOnes() {
        JobSheet sheet = sheet(SUPPLIERS + stock(
                "{\"length\":4800,\"price\":36.00,\"supplier\":\"mill\"},{\"length\":2400,\"price\":10.00,\"supplier\":\"yard\"}"));
        SlipLine timber = line(sheet, "timber 100x200");
        assertEquals(1, timber.packs().stream().map(SlipLine.PackCount::supplier).distinct().count());
        assertEquals("yard", timber.packs().get(0).supplier());
        // 2400s: six hold a 2300 each, three hold two 1100s each, at 10.00 and 20 percent
        assertEquals(9, timber.packs().get(0).count());
        assertEquals(new BigDecimal("108.00"), timber.cost().orElseThrow());
        assertTrue(sheet.cutting().get(0).result().plan().stream().allMatch(board -> board.stock().equals("2400")));
        Slip.Order yard = sheet.slip().orders().stream().filter(order -> order.supplier().id().equals("yard")).findFirst().orElseThrow();
        assertEquals(new BigDecimal("24.00"), yard.charge(), "20.00 without tax");
        assertEquals(new BigDecimal("22.00"), yard.tax(), "132.00 hold 22.00");
    }

    @Test
    void whoCannotServeEveryPieceIsPassedOver() {
        JobSheet sheet = sheet(SUPPLIERS + stock(
                "{\"length\":4800,\"price\":36.00,\"supplier\":\"mill\"},{\"length\":1800,\"price\":1.00,\"supplier\":\"yard\"}"));
        assertEquals("mill", line(sheet, "timber 100x200").packs().get(0).supplier());
        assertEquals(List.of(), sheet.cutting().get(0).result().unplaced());
    }

    @Test
    void aPinnedLineStaysWithItsSupplierWhateverItCosts() {
        String stock = stock("{\"length\":4800,\"price\":36.00,\"supplier\":\"mill\"},{\"length\":2400,\"price\":10.00,\"supplier\":\"yard\"}");
        JobSheet sheet = sheet(SUPPLIERS + stock + ",\"pins\":[{\"item\":\"100x200\",\"supplier\":\"mill\"},{\"item\":\"finish\",\"pack\":\"tin of 1 l\"}]");
        assertEquals("mill", line(sheet, "timber 100x200").packs().get(0).supplier());
        assertEquals("tin of 1 l", line(sheet, "finish").packs().get(0).pack());
        assertEquals(1, line(sheet, "finish").packs().size());
    }

    @Test
    void aPinThatNothingFitsIsNamedAndPassedOver() throws Exception {
        Reading reading = GardenReader.read("{\"catalogue\":{\"pins\":[{\"item\":\"finish\",\"pack\":\"tin of 7 l\"},{\"item\":\"tar\",\"pack\":\"x\"}]}}");
        assertInstanceOf(Reading.Read.class, reading);
        assertEquals(
                List.of("pin finish", "pin tar"),
                reading.findings().stream().filter(finding -> finding.weight() == Finding.Weight.SNAG).map(Finding::where).toList());
    }

    /** 1000 kg over 1200 kg/m3 is 0.8333 m3, down to 0.833. */
    @Test
    void aLoadByTheTonneHoldsItsWeightOverTheDensity() {
        JobSheet sheet = sheet("\"packs\":[{\"item\":\"soil.topsoil\",\"unit\":\"m3\",\"density\":1200,\"packs\":["
                + "{\"name\":\"loose tonne\",\"tonnes\":1,\"price\":40.00,\"least\":2}]}]");
        SlipLine soil = line(sheet, "soil.topsoil");
        assertEquals(Math.max(2, Math.ceil(soil.need() / 0.833)), soil.packs().get(0).count());
        assertEquals(0.833 * soil.packs().get(0).count() - soil.need(), soil.leftOver(), 1e-6);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            "suppliers":[{"id":"a"},{"id":"a"}]                                                  | supplier a, id
            "suppliers":[{"id":"a","delivery":-1}]                                               | supplier a, delivery
            "suppliers":[{"id":"a","taxIncluded":false}]                                         | supplier a, tax
            "suppliers":[{"id":"a","validUntil":"soon"}]                                         | supplier a, validUntil
            "rolls":[{"id":"W","width":2000,"price":-2}]                                         | roll W, price
            "rolls":[{"id":"W","width":2000,"supplier":"who"}]                                   | roll W, supplier
            "packs":[{"item":"screws","unit":"screws","packs":[{"content":50,"price":1e9}]}]     | goods screws, pack 1, price
            "packs":[{"item":"soil","unit":"l","packs":[{"tonnes":1}]}]                          | goods soil, pack 1, tonnes
            "sections":[{"id":"S","thickness":50,"height":50,"stock":[{"length":2400,"price":-3}]}] | section S, stock length 1, price
            """)
    void whatMakesNoSenseStopsWithTheNameOfItsLine(String catalogue, String where) throws Exception {
        Reading reading = GardenReader.read("{\"catalogue\":{" + catalogue.strip() + "}}");
        assertInstanceOf(Reading.Refused.class, reading);
        assertTrue(reading.findings().stream().anyMatch(finding -> finding.where().equals(where.strip()) && !Told.ways(finding).isEmpty()),
                () -> reading.findings().toString());
    }

    @Test
    void justUnderFreeDeliveryIsSaid() {
        JobSheet sheet = sheet("\"suppliers\":[{\"id\":\"mill\",\"delivery\":35.00,\"freeOver\":200.00}]" + stock("{\"length\":4800,\"price\":36.00,\"supplier\":\"mill\"}"));
        Slip.Order mill = sheet.slip().orders().get(0);
        assertEquals(Optional.of(new BigDecimal("200.01").subtract(mill.goods())), mill.shortOfFree());
        assertTrue(sheet.snags().stream().anyMatch(finding -> finding.where().equals("slip, mill") && finding.weight() == Finding.Weight.NOTE
                && Told.text(finding).contains(mill.shortOfFree().orElseThrow() + " short of free delivery")), sheet.snags().toString());
    }

    /**
     * Four walls of 4700 - 100 are over what boards of 4200 give, so the yard's boards are passed over whatever they cost, which is told. With the
     * mill's 4800 off the list the walls are joined, as the way out says.
     */
    @Test
    void aMerchantWhoseBoardsAreTooShortForSomeWallsIsNamed() {
        String garden = "{\"beds\":[{\"id\":\"A\",\"width\":4700,\"depth\":1200,\"courses\":2}],\"catalogue\":{\"suppliers\":[{\"id\":\"mill\"},{\"id\":\"yard\",\"name\":\"Weir Yard\"}]"
                + stock("%s{\"length\":4200,\"price\":20,\"supplier\":\"yard\"}") + "}}";
        JobSheet both = Gardens.sheet(garden.formatted("{\"length\":4800,\"price\":50,\"supplier\":\"mill\"},"));
        Finding told = both.snags().stream().filter(one -> one.kind() == FindingKind.SELLER_SHORT).findFirst().orElseThrow();
        assertEquals(4, told.amount().orElseThrow().value());
        assertTrue(told.toString().contains("Weir Yard") && told.toString().contains("4600"), told.toString());
        assertEquals("mill", line(both, "timber 100x200").packs().get(0).supplier());
        JobSheet yard = Gardens.sheet(garden.formatted(""));
        assertTrue(yard.snags().stream().noneMatch(one -> one.kind() == FindingKind.SELLER_SHORT));
        assertTrue(yard.slip().total().compareTo(both.slip().total()) < 0);
        assertFalse(MerchantOffers.of(both).proven());
        assertTrue(MerchantOffers.of(yard).proven());
    }
}
