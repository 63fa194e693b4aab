package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.construction.BedWork;
import lapyard.construction.LinerPiece;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.SearchLength;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

/**
 * Worked by hand on walls of three courses of 200 and timber 100 thick: the liner rises 580, so a floor of 4800 x 3800
 * takes 5960 x 4960. One roll, 4000 wide, sold by 500, unless the test says more.
 */
class LiningTest {
    private static final String RIGHT =
            "\"ground\":{\"levels\":[{\"at\":[0,0],\"drop\":400},{\"at\":[4000,0],\"drop\":450},{\"at\":[0,4000],\"drop\":400}]}";
    private static final String BED = "{\"id\":\"T\",\"width\":5000,\"depth\":4000,\"courses\":3%s}";

    private static JobSheet sheet(String ground, String more, String catalogue) {
        return Gardens.sheet("{" + ground + (ground.isEmpty() ? "" : ",") + "\"beds\":[" + BED.formatted(more) + "]"
                + (catalogue.isEmpty() ? "" : ",\"catalogue\":{\"rolls\":[" + catalogue + "]}") + "}");
    }

    private static String sizes(List<LinerPiece> pieces) {
        return String.join("; ", pieces.stream()
                .map(one -> one.id() + " " + (long) one.widthMm() + " x " + (long) one.heightMm() + " laid " + one.layingOrder())
                .toList());
    }

    private static Finding about(JobSheet sheet, String where) {
        return sheet.snags().stream().filter(one -> one.where().equals(where)).findFirst()
                .orElseThrow(() -> new AssertionError(sheet.snags().toString()));
    }

    /** Divided across, two runs of 4960: 5 + 5 m; divided up, two runs of 5960: 6 + 6 m. Parts add to 5960 + 300. */
    @Test
    void aPieceTooWideForTheRollIsDividedWhereItTakesLeastRoll() {
        JobSheet sheet = sheet(RIGHT, "", "");
        List<LinerPiece> liner = sheet.beds().get(0).work().liner();
        assertEquals("T-R1a 4000 x 4960 laid 2; T-R1b 2260 x 4960 laid 1", sizes(liner));
        assertEquals(3120, liner.get(0).floor().widthMm(), 1e-6, "580 of rise and 300 of lap on the uphill part");
        assertEquals(1680, liner.get(1).floor().widthMm(), 1e-6);
        assertEquals(liner.get(0).floor().right(), liner.get(1).floor().x(), 1e-6);
        assertEquals(10_000, sheet.rolls().get(0).result().rolls().stream().mapToDouble(roll -> roll.boughtMm()).sum());
        assertTrue(sheet.rolls().get(0).result().unplaced().isEmpty());
        assertFalse(sheet.leftOut());
        assertEquals(6.260 * 4.960, sheet.beds().get(0).quantities().stream()
                .filter(one -> one.key().toString().equals("liner.area")).findFirst().orElseThrow().value(), 1e-9);
        Finding told = about(sheet, "bed T, liner T-R1");
        assertEquals(Finding.Weight.NOTE, told.weight());
        assertEquals("Liner T-R1 of bed T (5960 x 4960 mm) is wider than every roll: it lies in 2 parts that lap by 300 mm.", Told.text(told));
    }

    /** A 2500 roll at 5.00: 5 m x 9.00 + 5 m x 5.00 = 70.00 with the seam 2260 from the edge; in equal parts 90.00. */
    @Test
    void theSeamLiesWhereACheaperRollHoldsTheRest() {
        JobSheet sheet = sheet(RIGHT, "", "{\"id\":\"narrow\",\"width\":2500,\"price\":5.00,\"step\":500}");
        assertEquals(0, new BigDecimal("70").compareTo(sheet.rolls().get(0).result().cost()));
    }

    @Test
    void theLapIsTheDocumentsAndAShortOneIsNamed() {
        JobSheet sheet = sheet("", ",\"liner\":{\"lap\":100}", "");
        List<LinerPiece> liner = sheet.beds().get(0).work().liner();
        assertEquals(5960 + 100, liner.get(0).widthMm() + liner.get(1).widthMm(), 1e-6);
        assertEquals(Finding.Weight.SNAG, about(sheet, "bed T, liner").weight());
    }

    @Test
    void aLapAsWideAsTheRollIsNamedWithAWayOut() {
        JobSheet sheet = sheet("", ",\"liner\":{\"lap\":1500}", "{\"id\":\"liner-4000\",\"width\":1200,\"price\":5.00,\"step\":500}");
        Finding told = about(sheet, "bed T, liner T-R1");
        assertEquals(Finding.Weight.SNAG, told.weight());
        assertEquals(300, told.amount().orElseThrow().value());
        assertTrue(Told.text(told).endsWith("its lap of 1500 mm is no narrower than the roll of 1200 mm."), Told.text(told));
        assertEquals(1, sheet.rolls().get(0).result().unplaced().size());
        assertTrue(sheet.leftOut());
    }

    /** Runs of at most 3 m: 5960 x 4960 has no two parts that fit; it stays named and the other bed is laid. */
    @Test
    void whatNoDivisionHelpsStaysNamedAndTheRestIsLaid() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[" + BED.formatted("") + ",{\"id\":\"U\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[6000,0]}],"
                + "\"catalogue\":{\"rolls\":[{\"id\":\"liner-4000\",\"width\":4000,\"step\":500,\"maxLength\":3000,\"price\":9}]}}");
        assertEquals(List.of("T-R1"), sheet.rolls().get(0).result().unplaced().stream().map(one -> one.id()).toList());
        assertTrue(about(sheet, "liner, piece T-R1").kind() == FindingKind.ROLL_NARROW, sheet.snags().toString());
        assertEquals(1, sheet.rolls().get(0).result().rolls().stream().mapToInt(roll -> roll.placed().size()).sum());
    }

    /**
     * 2400 x 3600 with 900 x 900 missing at the rear right. Level cut: 3360 x 3660 and 2460 x 1780, 3360 + 1780 = 5140:
     * 5.5 m. Upright cut, which the base takes: 2460 x 4560 and 1780 x 3660, side by side 4240 wide, so 4560 + 1780 =
     * 6340: 6.5 m.
     */
    @Test
    void theLinerTakesAnotherSplitThanTheBaseWhereThatTakesLessRoll() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"L\",\"courses\":3,"
                + "\"outline\":[[0,0],[2400,0],[2400,2700],[1500,2700],[1500,3600],[0,3600]]}]}");
        assertEquals("L-L1 3360 x 3660 laid 1; L-L2 2460 x 1780 laid 2", sizes(sheet.beds().get(0).work().liner()));
        assertEquals(1300, sheet.beds().get(0).work().bottom().floor().get(0).widthMm(), "the base keeps its own split");
        assertEquals(5500, sheet.rolls().get(0).result().rolls().stream().mapToDouble(roll -> roll.boughtMm()).sum());
        Finding told = about(sheet, "bed L, liner");
        assertEquals(Finding.Weight.NOTE, told.weight());
        assertEquals(1, told.amount().orElseThrow().value(), 1e-9);
        assertTrue(Told.text(told).endsWith("which saves 1 m of liner."), Told.text(told));
    }

    private static double metres(Garden garden, List<BedWork> works, SearchOptions looking) {
        List<double[]> sizes = works.stream().flatMap(work -> work.liner().stream()).map(piece -> new double[] {piece.widthMm(), piece.heightMm()}).toList();
        return new RollGoods.Leasts(garden, looking, new HashMap<>()).of(works.get(0).bed().inside().liner().material(), sizes).metres();
    }

    /** As above, each L of a size of its own: more than are looked at one by one. What they are told to save adds up. */
    @Test
    void veryManyLinersTakeTheOtherSplitAtOnce() {
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 160; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"id\":\"L%d\",\"courses\":3,\"at\":[%d,%d],\"outline\":[[0,0],[2400,0],[2400,%d],[1500,%d],[1500,%d],[0,%d]]}"
                    .formatted(i, i % 20 * 4000, i / 20 * 6000, 2500 + i, 2500 + i, 3400 + i, 3400 + i));
        }
        Garden garden = Gardens.garden("{\"beds\":[" + beds + "]}");
        List<BedWork> built = garden.beds().stream().map(bed -> lapyard.construction.Beds.work(bed, garden.goods().saw(), 2980, Map.of(), Optional.empty(), 2400, 25)).toList();
        SearchOptions looking = SearchOptions.pooledOnly(SearchLength.SHORT, new SearchMemory(4 << 20));
        Lining lining = new Lining(garden, built, bed -> Optional.empty(), looking);
        lining.choose(List.of());
        long others = lining.works().stream().filter(work -> work.liner().get(0).id().equals(work.bed().id() + "-L1")).count();
        assertTrue(others > 20, others + " take the other split");
        double saved = lining.findings().stream().mapToDouble(one -> one.amount().orElseThrow().value()).sum();
        assertEquals(metres(garden, built, looking) - metres(garden, lining.works(), looking), saved, 0.0005 * others, "what is told adds up to what all save");
        assertTrue(saved > 1, saved + " m");
    }

    @Test
    void theSameGardenIsLinedTheSameWayTwice() {
        assertEquals(sizes(sheet(RIGHT, "", "").beds().get(0).work().liner()), sizes(sheet(RIGHT, "", "").beds().get(0).work().liner()));
    }
}
