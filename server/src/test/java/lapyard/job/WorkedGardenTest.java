package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapyard.cutting.CuttingResult;
import lapyard.order.SlipLine;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A garden worked by hand: bed M, 3000 x 2400 with 1200 x 900 missing at the rear right, and bed N, 1800 x 900;
 * timber 100 x 200, 3 courses, kerf 4, end trim 10, the example prices. M falls 1:80 to the rear.
 */
class WorkedGardenTest {
    private static final String LEVELS =
            "\"ground\":{\"levels\":[{\"at\":[0,0],\"drop\":412},{\"at\":[3000,0],\"drop\":412},{\"at\":[0,2400],\"drop\":442}]}";
    private static final String M =
            "{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],\"courses\":3,\"seen\":[\"A\",\"B\",\"C\",\"D\"]}";
    private static final String N = "{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[4200,0]}";
    private static final String ONLY_4800 =
            ",\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":36.00}]}]}";

    private static JobSheet sheet(String beds, String more) {
        return Gardens.sheet("{" + LEVELS + "," + Gardens.WORKED + ",\"beds\":[" + beds + "]"
                + (more.isEmpty() ? ",\"catalogue\":{" + Gardens.WORKED_BOARDS + "}" : more) + "}");
    }

    /** The order's lines, each multiplied out by hand; soil bags of three kinds add to 349.00 pooled and 526.00 bed by bed. */
    @ParameterizedTest(name = "{0}: {1} pooled, {2} bed by bed")
    @CsvSource(textBlock = """
            timber 100x200, 352.20, 358.80
            bearers 50x75,   30.00,  36.00
            screws,          24.00,  28.00
            finish,          46.00,  60.00
            liner,           49.50,  58.50
            soil.topsoil,   165.00, 220.00
            soil.compost,   124.00, 186.00
            soil.grit,       60.00, 120.00
            mulch,           42.00,  42.00
            staples,          5.00,  10.00
            slats,            0.00,   0.00
            """)
    void everyLineOfTheSlipIsAsWorkedByHand(String item, BigDecimal cost, BigDecimal bedByBed) {
        SlipLine line = line(sheet(M + "," + N, ""), item);
        assertEquals(cost, line.cost().orElseThrow());
        assertEquals(bedByBed, line.bedByBed().orElseThrow());
    }

    /** 352.20 + 30 + 24 + 46 + 49.50 + 349 + 42 + 5 = 897.70; bed by bed 1119.30. */
    @Test
    void theTotalAndTheSavingAreAsWorkedByHand() {
        JobSheet sheet = sheet(M + "," + N, "");
        assertEquals(new BigDecimal("897.70"), sheet.slip().total());
        assertFalse(sheet.slip().atLeast());
        BigDecimal saved = sheet.slip().lines().stream().map(line -> line.saved().orElseThrow()).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(new BigDecimal("221.60"), saved);
        List<BigDecimal> savings = sheet.slip().lines().stream().map(line -> line.saved().orElseThrow()).toList();
        for (int i = 1; i < savings.size(); i++) {
            assertTrue(savings.get(i - 1).compareTo(savings.get(i)) >= 0, "largest saving first: " + savings);
        }
    }

    /** Bound (46200 + 30 x 4) / (4780 + 4) = 9.68, so 10 is least; alone (31200 + 72) / 4784 = 6.54: 7, and N 4. */
    @Test
    void tenBoardsHoldBothBedsWhereOneByOneTheyTakeEleven() {
        JobSheet.SectionCutting cutting = sheet(M + "," + N, ONLY_4800).cutting().get(0);
        assertEquals(10, cutting.result().boards());
        assertTrue(cutting.result().proven());
        assertEquals(0, new BigDecimal("360").compareTo(cutting.result().cost()));
        assertEquals(11, cutting.boardsBedByBed());
    }

    @Test
    void everyPieceIsCutOnceUnderItsOwnMark() {
        JobSheet sheet = sheet(M + "," + N, ONLY_4800);
        List<String> wanted = sheet.beds().stream().flatMap(bed -> bed.work().pieces().stream()).map(piece -> piece.mark()).sorted().toList();
        List<String> cut = sheet.cutting().get(0).result().plan().stream().flatMap(board -> board.pieces().stream()).sorted().toList();
        assertEquals(wanted, cut);
        assertEquals(30, cut.size());
    }

    /** M alone 2460 + 1780 = 4240: 4.5 m; N alone 1860: 2.0 m; together 2460 + 2760 = 5220: 5.5 m. */
    @Test
    void linersOfBothBedsShareARoll() {
        JobSheet.MaterialRolls liner = sheet(M + "," + N, "").rolls().get(0);
        assertEquals(5500, liner.result().rolls().stream().mapToDouble(roll -> roll.boughtMm()).sum());
        assertEquals(5220, liner.result().rolls().get(0).usedMm());
        assertTrue(liner.result().proven());
        assertEquals(6.5, liner.metresBedByBed().orElseThrow());
    }

    /** Each 4.5 pieces of 2300 + 1100 a course: two pairs a board course, 60 x 3 x 2 of each; 720 pieces fill 270 boards. */
    @Test
    void sixtyBedsOfOneTypeTakeTwoHundredAndSeventyBoards() {
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            beds.add("{\"type\":\"T\",\"at\":[" + i % 10 * 4000 + "," + i / 10 * 3000 + "]}");
        }
        JobSheet sheet = Gardens.sheet("{\"types\":[{\"id\":\"T\",\"width\":2400,\"depth\":1200,\"courses\":3}],\"beds\":["
                + String.join(",", beds) + "]" + ONLY_4800 + "}");
        Map<Double, Integer> lengths = new TreeMap<>();
        sheet.beds().forEach(bed -> bed.work().pieces().forEach(piece -> lengths.merge(piece.lengthMm(), 1, Integer::sum)));
        assertEquals(Map.of(2300.0, 360, 1100.0, 360), lengths);
        assertEquals(270, sheet.cutting().get(0).result().boards());
        assertTrue(sheet.cutting().get(0).result().proven());
        assertEquals(300, sheet.cutting().get(0).boardsBedByBed());
    }

    /**
     * Two boards of 2750, bad from 0 to 150 and from 1180 to 1260, give runs 1030 and 1490, each good for one 800: three
     * boards take 1700 + 1700 + 800 each, the other three 800s come from the rack where a fourth board was needed.
     */
    @Test
    void boardsOnHandAreCutAroundTheirBadSpans() {
        JobSheet sheet = sheet(N, ONLY_4800 + ",\"rack\":[{\"id\":\"R1\",\"count\":2,\"length\":2750,\"bad\":[[0,150],[1180,1260]],\"origin\":\"fence\"}]");
        List<CuttingResult.BoardLine> plan = sheet.cutting().get(0).result().plan();
        assertEquals(3, plan.stream().filter(board -> board.stock().equals("4800")).count());
        List<CuttingResult.BoardLine> rack = plan.stream().filter(board -> !board.stock().equals("4800")).toList();
        assertEquals(3, rack.size());
        assertTrue(rack.stream().allMatch(board -> List.of("R1 150-1180", "R1 1260-2750").contains(board.stock())
                && board.lengthsMm().equals(List.of(800.0))), rack.toString());
        assertEquals(new BigDecimal("108.00"), line(sheet, "timber 100x200").cost().orElseThrow());
    }

    @Test
    void aBoardOfUnknownOriginStaysOutOfAFoodBed() {
        String rack = ",\"rack\":[{\"id\":\"R1\",\"length\":4700}]";
        JobSheet food = sheet(N.replace("\"courses\"", "\"food\":true,\"courses\""), rack);
        assertTrue(food.cutting().get(0).result().plan().stream().noneMatch(board -> board.stock().equals("R1")));
        assertTrue(food.snags().stream().anyMatch(finding -> finding.where().equals("board R1") && finding.weight() == Finding.Weight.SNAG));
        JobSheet flowers = sheet(N, rack);
        assertTrue(flowers.cutting().get(0).result().plan().stream().anyMatch(board -> board.stock().equals("R1")));
    }

    @Test
    void linesWithoutAPriceStayAndTheTotalReadsAtLeast() {
        JobSheet sheet = sheet(M, ",\"catalogue\":{\"packs\":[{\"item\":\"staples\",\"unit\":\"staples\",\"packs\":[{\"content\":1000}]}]}");
        assertTrue(sheet.slip().atLeast());
        assertTrue(line(sheet, "staples").cost().isEmpty());
        assertEquals(144, line(sheet, "staples").need());
        assertTrue(sheet.snags().stream().anyMatch(finding -> Told.text(finding).startsWith("1 line has no price, so the total is at least ")));
    }

    @Test
    void aPieceLongerThanEveryBoardIsNamedAndTheRestStaysIn() {
        JobSheet sheet = sheet("{\"id\":\"W\",\"width\":6000,\"depth\":1200,\"courses\":1,\"seams\":false}", "");
        assertTrue(sheet.leftOut());
        assertTrue(sheet.slip().atLeast());
        CuttingResult result = sheet.cutting().get(0).result();
        assertEquals(2, result.unplaced().size());
        assertEquals(2, result.plan().stream().mapToInt(board -> board.pieces().size()).sum());
        assertTrue(sheet.snags().stream().anyMatch(finding -> finding.weight() == Finding.Weight.SNAG && Told.text(finding).contains("5900")));
    }

    /** Inside 5400 x 4600, rise 400 - 45 - 25 + 50 = 380: 6160 x 5360, and the widest roll is 4000: 1360 short; runs of 3 m hold no half of it. */
    @Test
    void aLinerPieceWiderThanEveryRollIsNamedAndTheRestStaysIn() {
        JobSheet sheet = sheet("{\"id\":\"W\",\"width\":5600,\"depth\":4800,\"courses\":2}," + N.replace("4200", "9000"),
                ",\"catalogue\":{\"rolls\":[{\"id\":\"liner-4000\",\"width\":4000,\"step\":500,\"maxLength\":3000,\"price\":9}]}");
        assertTrue(sheet.leftOut());
        assertTrue(sheet.slip().atLeast());
        assertEquals(List.of("W-R1"), sheet.rolls().get(0).result().unplaced().stream().map(one -> one.id()).toList());
        assertEquals(2000, sheet.rolls().get(0).result().rolls().get(0).boughtMm());
        Finding snag = sheet.snags().stream().filter(finding -> finding.where().equals("liner, piece W-R1")).findFirst().orElseThrow();
        assertEquals(Finding.Weight.SNAG, snag.weight());
        assertEquals(1360, snag.amount().orElseThrow().value());
        assertFalse(Told.ways(snag).isEmpty());
    }

    @Test
    void aSnagAcceptedByNameBecomesANoteWithItsReason() {
        String beds = M + "," + N.replace("4200", "2000");
        List<Finding> before = sheet(beds, "").snags();
        Finding snag = before.stream().filter(finding -> finding.weight() == Finding.Weight.SNAG).findFirst().orElseThrow();
        List<Finding> after = sheet(beds, ",\"accepted\":[{\"where\":\"" + snag.where() + "\",\"reason\":\"they share a wall\"}]").snags();
        assertTrue(after.stream().anyMatch(finding -> finding.weight() == Finding.Weight.NOTE
                && finding.where().equals(snag.where()) && Told.text(finding).endsWith("Accepted: They share a wall.")));
    }

    @Test
    void theSameGardenGivesTheSameSheet() {
        JobSheet first = sheet(M + "," + N, "");
        JobSheet second = sheet(M + "," + N, "");
        assertEquals(first.slip(), second.slip());
        assertEquals(first.cutting().get(0).result().plan(), second.cutting().get(0).result().plan());
        assertEquals(first.rolls().get(0).result().rolls(), second.rolls().get(0).result().rolls());
    }

    private static SlipLine line(JobSheet sheet, String item) {
        return sheet.slip().lines().stream().filter(line -> line.item().equals(item)).findFirst().orElseThrow();
    }
}
