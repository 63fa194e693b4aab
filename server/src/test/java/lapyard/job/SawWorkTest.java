package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.Replan;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Sawn;
import lapyard.cutting.SawnBoards;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Stretch;
import lapyard.job.JobSheet.SawWork;
import lapyard.json.JobSheetJson;
import lapyard.order.SlipLine;
import lapyard.plan.Bed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The days at the saw of beds M (weekend 1) and N (weekend 2), worked by hand: boards of 4800 at 36.00, kerf 4, trim 10. */
class SawWorkTest {
    private static JobSheet sheet(String lap, int weekendOfN) {
        return Gardens.sheet("{\"beds\":["
                + "{\"id\":\"M\",\"weekend\":1,\"courses\":3,\"lap\":\"" + lap + "\","
                + "\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]]},"
                + "{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[4200,0],\"lap\":\"" + lap + "\",\"weekend\":" + weekendOfN + "}],"
                + "\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":36.00}]}]},\"crew\":{\"rates\":{\"setting\":10}}}");
    }

    /** Turning lap: 7 lengths, 30 x 4 + 7 x 10 = 190 min; long-wall lap: 13 lengths, 30 x 4 + 13 x 10 = 250 min; and an end to trim a board. */
    @ParameterizedTest(name = "{0}: {1} settings, {2} min")
    @CsvSource({"turning, 7, 190", "long-wall, 13, 250"})
    void bothBedsInOneWeekendTakeTheSettingsWorkedByHand(String lap, int settings, double minutes) {
        SawWork saw = sheet(lap, 1).cutting().get(0).saw();
        assertEquals(List.of(settings, 30), List.of(saw.batches().stages().stream().mapToInt(stage -> stage.settings().size()).sum(), saw.batches().pieces()));
        assertEquals(minutes + 4 * saw.boards().size(), saw.batches().minutes());
        int handlings = saw.batches().stages().stream().mapToInt(stage -> stage.handlings()).sum();
        assertTrue(handlings <= 22 || !lap.equals("turning"), "as worked by hand 22 times: " + handlings);
    }

    /** Pooled 10 = 360.00; nothing carried over 7 + 4 = 11 = 396.00, as bed by bed. */
    @Test
    void carryingOffcutsOverSavesABoard() {
        JobSheet sheet = sheet("turning", 2);
        assertEquals(
                List.of(
                        new JobSheet.Way(JobSheet.Pooling.POOLED, 10, Optional.of(new BigDecimal("360.00"))),
                        new JobSheet.Way(JobSheet.Pooling.BED_BY_BED, 11, Optional.of(new BigDecimal("396.00")))),
                sheet.cutting().get(0).saw().ways());
        SawAdvice advice = SawAdvice.of(sheet).get(0);
        assertEquals(new JobSheet.Way(JobSheet.Pooling.WEEKEND_BY_WEEKEND, 11, Optional.of(new BigDecimal("396.00"))), advice.weekendByWeekend());
    }

    /** Every piece stands in its own weekend; an offcut is taken up under the tag that it was given. */
    @Test
    void theLedgerCarriesOffcutsFromTheFirstWeekendToTheSecond() {
        SawWork saw = sheet("turning", 2).cutting().get(0).saw();
        for (SawBoard board : saw.boards()) {
            for (SawBoard.Cut cut : board.cuts()) {
                assertEquals(cut.mark().startsWith("M") ? 1 : 2, cut.stage(), cut.mark());
            }
        }
        Ledger.Stage first = saw.ledger().stages().get(0);
        Ledger.Stage second = saw.ledger().stages().get(1);
        assertEquals(10, first.opened().size() + second.opened().size());
        assertEquals(first.open(), second.taken().size());
        assertEquals(
                saw.ledger().offcuts().stream().filter(o -> o.fate() == Ledger.Fate.CARRIED).map(Ledger.Offcut::tag).collect(Collectors.toCollection(TreeSet::new)),
                new TreeSet<>(second.taken()));
    }

    private static final String ONLY_2400 =
            ",\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":2400,\"price\":17.40}]}]}}";

    /**
     * Two of 1200, a kerf and both trims are 2424, 24 over a board of 2400. Made 24 narrower, A and C are 1176 and each shares a board
     * with B or D; 24 shallower likewise; 12 less both ways makes all four 1188. Each saves two boards of four.
     */
    @Test
    void aNearMissIsAChangeOfABedThatCloses() {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"Q\",\"width\":1300,\"depth\":1300,\"courses\":1}]" + ONLY_2400);
        assertEquals(4, sheet.cutting().get(0).result().boards());
        List<SawAdvice.NearMiss> misses = SawAdvice.of(sheet).get(0).nearMisses();
        assertEquals(
                List.of("make bed Q narrower and shallower by 12 mm each", "make bed Q 24 mm narrower", "make bed Q 24 mm shallower"),
                misses.stream().map(miss -> miss.sizes().words(miss.shorterMm(), false)).toList());
        assertEquals(List.of("34.80", "34.80", "34.80"), misses.stream().map(miss -> miss.saved().orElseThrow().toPlainString()).toList());
        assertEquals(List.of(2, 2, 2), misses.stream().map(SawAdvice.NearMiss::boardsSaved).toList());
        assertTrue(misses.stream().allMatch(SawAdvice.NearMiss::sure));
        assertEquals(List.of("Q-1A", "Q-1C"), misses.get(1).marks());
    }

    /** 24 mm are 15.1 sixteenths of 25.4 mm, 12 mm 7.56: 15/16" less would not save. */
    @Test
    void feetAndInchesRoundANearMissUpToTheNextSixteenth() {
        JobSheet sheet = Gardens.sheet("{\"units\":\"imperial\",\"beds\":[{\"id\":\"Q\",\"width\":1300,\"depth\":1300,\"courses\":1}]" + ONLY_2400);
        assertEquals(
                List.of("make bed Q narrower and shallower by 1/2\" each", "make bed Q 1\" narrower", "make bed Q 1\" shallower"),
                JobSheetJson.part("advice", sheet).get(0).get("nearMisses").findValuesAsText("text"));
    }

    /**
     * Whatever is offered can be had: the beds made smaller by so much, as the document says it, close, and their timber costs so
     * much less. Sizes near what boards hold, rectangles and Ls, the seed fixed.
     */
    @Test
    void whatIsOfferedCanBeHad() {
        Random random = new Random(7);
        int offered = 0;
        for (int i = 0; i < 12; i++) {
            int width = 1290 + random.nextInt(40);
            int depth = 1290 + random.nextInt(40);
            int notch = 300 + random.nextInt(100);
            boolean ell = i % 3 == 0;
            Outline outline = ell
                    ? new Outline(List.of(new Point(0, 0), new Point(2 * width, 0), new Point(2 * width, depth), new Point(2 * width - notch, depth),
                            new Point(2 * width - notch, 2 * depth), new Point(0, 2 * depth)))
                    : Outline.rectangle(width, depth);
            JobSheet sheet = Gardens.sheet(asDrawn(outline, outline));
            for (SawAdvice.NearMiss miss : SawAdvice.of(sheet).get(0).nearMisses()) {
                Outline smaller = outline;
                for (boolean acrossX : new boolean[] {true, false}) {
                    if (acrossX ? miss.sizes().narrower() : miss.sizes().shallower()) {
                        smaller = span(outline, acrossX, miss.sizes().walls()).applied(smaller, -miss.shorterMm());
                    }
                }
                JobSheet then = Gardens.sheet(miss.sizes().beds().size() == 2 ? asDrawn(smaller, smaller) : asDrawn(smaller, outline));
                assertEquals(2, miss.sizes().beds().size(), "alike beds change together");
                BigDecimal less = sheet.cutting().get(0).result().cost().subtract(then.cutting().get(0).result().cost());
                assertTrue(less.compareTo(miss.saved().orElseThrow()) >= 0, outline + ": " + miss + " saved " + less);
                offered++;
            }
        }
        assertTrue(offered >= 5, "offered " + offered);
    }

    /**
     * A six-sided bed of sides of 1010, one course: no board of 2000 gives two of its pieces, 1010 each at the long points of their
     * mitres, where 1980 can be used. Opposite walls are parallel and can both be shorter, and so can every second wall and all six.
     * Each is tried on a garden drawn so.
     */
    @Test
    void angledBedsBecomeSmallerWhereTheyClose() {
        JobSheet sheet = Gardens.sheet(sixSided(List.of()));
        Outline outline = sheet.beds().get(0).work().bed().outline();
        assertEquals(List.of(List.of(0, 3), List.of(1, 4), List.of(2, 5), List.of(0, 2, 4), List.of(1, 3, 5), List.of(0, 1, 2, 3, 4, 5)),
                Stretch.closing(outline), "unit vectors at 0, 60 ... 300 degrees that add up to nothing");
        List<SawAdvice.NearMiss> misses = SawAdvice.of(sheet).get(0).nearMisses();
        assertTrue(!misses.isEmpty());
        for (SawAdvice.NearMiss miss : misses) {
            assertTrue(miss.sizes().words(1, false).startsWith("make walls "), miss.sizes().words(1, false));
            JobSheet then = Gardens.sheet(sixSided(Stretch.shorter(outline, miss.sizes().sides(), miss.shorterMm()).corners()));
            for (int corner = 0; corner < 6; corner++) {
                assertEquals(60, then.beds().get(0).work().bed().outline().turnDeg(corner), 0.01, "every angle stays");
            }
            BigDecimal less = sheet.cutting().get(0).result().cost().subtract(then.cutting().get(0).result().cost());
            assertTrue(less.compareTo(miss.saved().orElseThrow()) >= 0, miss + " saved " + less);
        }
    }

    /** Each change is worked out to its end, or is not told and not counted; told anew or remembered, the same. */
    @Test
    void adviceThatIsCutShortTellsOnlyWhatWasWorkedOut() {
        JobSheet sheet = Gardens.sheet(sixSided(List.of()));
        SawAdvice all = SawAdvice.of(sheet).get(0);
        assertEquals(all, SawAdvice.of(sheet).get(0));
        assertEquals(6, all.changesTried());
        int some = 0;
        for (long most : new long[] {1, 60, 120, 240, 480, 960}) {
            SawAdvice cut = SawAdvice.of(sheet, sheet.cutting().get(0), new Glances(most));
            assertEquals(6, cut.changesThere());
            assertTrue(cut.nearMisses().size() <= cut.changesTried(), cut::toString);
            for (SawAdvice.NearMiss miss : cut.nearMisses()) {
                all.nearMisses().stream().filter(one -> one.sizes().equals(miss.sizes())).forEach(one -> assertEquals(one, miss));
            }
            if (most == 1) assertEquals(0, cut.changesTried());
            if (cut.changesTried() > 0 && cut.changesTried() < 6) some++;
        }
        assertTrue(some > 0, "none was cut short");
    }

    private static String sixSided(List<Point> corners) {
        List<Point> at = new java.util.ArrayList<>(corners);
        for (int i = 0; corners.isEmpty() && i < 6; i++) {
            at.add(new Point(1010 * Math.cos(Math.toRadians(60 * i - 120)), 1010 * Math.sin(Math.toRadians(60 * i - 120))));
        }
        String text = at.stream().map(point -> "[%.1f,%.1f]".formatted(point.x(), point.y())).collect(Collectors.joining(","));
        return "{\"beds\":[{\"id\":\"H\",\"outline\":[" + text + "],\"courses\":1,\"seams\":false}]"
                + ONLY_2400.replace("2400", "2000");
    }

    /** A rectangle with one chamfer: nothing is parallel to the chamfer, so it stays, and only opposite walls become shorter. */
    @Test
    void aChamferStaysAsItIs() {
        Outline chamfered = new Outline(List.of(new Point(0, 0), new Point(2400, 0), new Point(2400, 900), new Point(2100, 1200), new Point(0, 1200)));
        assertEquals(List.of(List.of(0, 3), List.of(1, 4)), Stretch.closing(chamfered));
        Outline less = Stretch.shorter(chamfered, List.of(0, 3), 24);
        assertEquals(List.of(new Point(0, 0), new Point(2376, 0), new Point(2376, 900)), less.corners().subList(0, 3));
        assertEquals(List.of(2376.0, 900.0, Math.hypot(300, 300), 2076.0, 1200.0),
                java.util.stream.IntStream.range(0, 5).mapToObj(side -> Math.round(1e6 * less.sideMm(side)) / 1e6)
                        .map(mm -> Math.abs(mm - Math.hypot(300, 300)) < 1e-5 ? Math.hypot(300, 300) : mm).toList());
    }

    /**
     * Walls joined of two or three boards, a few millimetres too long to spare one. Made smaller they are joined anew, with all their
     * pieces, and the garden drawn so costs so much less.
     */
    @ParameterizedTest
    @ValueSource(ints = {4985, 5285, 6695, 7280})
    void joinedWallsBecomeSmallerToo(int width) {
        JobSheet sheet = Gardens.sheet(joined(width, 1300));
        assertTrue(!sheet.beds().get(0).work().frame().seams().isEmpty());
        List<SawAdvice.NearMiss> narrower = SawAdvice.of(sheet).get(0).nearMisses().stream().filter(miss -> miss.sizes().narrower()).toList();
        assertTrue(!narrower.isEmpty(), "some boards are saved by 25 mm less of " + width);
        for (SawAdvice.NearMiss miss : narrower) {
            JobSheet then = Gardens.sheet(joined(width - miss.shorterMm(), miss.sizes().shallower() ? 1300 - miss.shorterMm() : 1300));
            BigDecimal less = sheet.cutting().get(0).result().cost().subtract(then.cutting().get(0).result().cost());
            assertTrue(less.compareTo(miss.saved().orElseThrow()) >= 0, miss + " saved " + less);
            assertTrue(!miss.sure(), "other joints could save it too");
        }
    }

    private static String joined(int width, int depth) {
        return "{\"beds\":[{\"id\":\"J\",\"width\":" + width + ",\"depth\":" + depth + ",\"courses\":2}]" + ONLY_2400;
    }

    private static Stretch span(Outline outline, boolean acrossX, List<String> walls) {
        return Stretch.of(outline).stream()
                .filter(one -> one.acrossX() == acrossX && one.sides().stream().map(Bed::wallLetter).allMatch(walls::contains))
                .findFirst().orElseThrow(() -> new AssertionError("no span has walls " + walls));
    }

    private static String asDrawn(Outline one, Outline other) {
        return "{\"beds\":[" + bed("A", one, 0) + "," + bed("B", other, 6000) + "]" + ONLY_2400;
    }

    private static String bed(String id, Outline outline, int x) {
        String corners = outline.corners().stream().map(at -> "[" + (int) at.x() + "," + (int) at.y() + "]").collect(Collectors.joining(","));
        return "{\"id\":\"" + id + "\",\"at\":[" + x + ",0],\"outline\":[" + corners + "],\"courses\":1,\"seams\":false}";
    }

    /** Every strip of both floors is in the bearers' saw work under its own name, once. */
    @Test
    void bearersAreNamedOnTheBoardsThatTheyAreCutFrom() {
        JobSheet sheet = sheet("turning", 2);
        List<String> wanted = sheet.beds().stream().flatMap(bed -> bed.work().bottom().strips().stream()).map(strip -> strip.id()).sorted().toList();
        List<String> cut = sheet.strips().get(0).saw().boards().stream()
                .flatMap(board -> board.cuts().stream()).map(SawBoard.Cut::mark).sorted().toList();
        assertEquals(wanted, cut);
    }

    private static SawWork onRack(String saw, String board) {
        return rackSheet(saw, board).cutting().get(0).saw();
    }

    private static JobSheet rackSheet(String saw, String board) {
        return Gardens.sheet("{\"beds\":[{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3}],\"saw\":{" + saw + "},"
                + "\"rack\":[{\"id\":\"K\",\"length\":2750," + board + "\"origin\":\"shed roof\"}],"
                + "\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":36.00}]}]},\"crew\":{\"rates\":{\"setting\":10}}}");
    }

    /** 36.00 for 4800 is 0.0075 a mm: 2750 are 20.625 new, 35 percent 7.21, in steps of 0.50 as 36.00 allows: 7.00. */
    @ParameterizedTest(name = "{2}: {0} {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        ``                | ``                                    | 7.00
        `"salvage":50`    | ``                                    | 10.00
        `"salvage":0`     | ``                                    | 0.00
        ``                | `"salvage":3.20,`                     | 3.20
        ``                | `"bad":[[1250,1500]],`                | 3.00
        ``                | `"bad":[[1250,1500]],"salvage":4,`    | 2.00
        """)
    void aBoardOnHandIsWorthItsPartOfTheCheapestNewOne(String saw, String board, String worth) {
        assertEquals(
                new BigDecimal(worth),
                onRack(saw, board).problem().stock().get(0).salvage().setScale(2));
    }

    /** Bed N needs four boards, or three and the one on hand: 108.00 to pay, and 115.00 with the 7.00 that the one was worth. */
    @Test
    void theSlipAsksForWhatIsPaidAndNotForWhatTheRackWasWorth() {
        JobSheet sheet = rackSheet("", "");
        assertEquals(0, new BigDecimal("115").compareTo(sheet.cutting().get(0).result().cost()));
        assertEquals(Optional.of(new BigDecimal("108.00")), sheet.slip().lines().stream()
                .filter(line -> line.label().startsWith("Timber"))
                .findFirst()
                .orElseThrow()
                .cost());
        assertEquals(new BigDecimal("108.00"), sheet.cutting().get(0).saw().ways().get(0).cost().orElseThrow().setScale(2));
    }

    /** Pooled on one day 10 boards; a second weekend that trims 200 off each offcut finds no room for its third 800. */
    @Test
    void stagingHasAPriceWhereOffcutsAreTrimmedAgain() {
        JobSheet sheet = Gardens.sheet("{\"saw\":{\"retrim\":200},\"beds\":["
                + "{\"id\":\"M\",\"weekend\":1,\"courses\":3,"
                + "\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]]},"
                + "{\"id\":\"N\",\"width\":1800,\"depth\":900,\"courses\":3,\"at\":[4200,0],\"weekend\":2}],"
                + "\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":36.00}]}]},\"crew\":{\"rates\":{\"setting\":10}}}");
        SawAdvice advice = SawAdvice.of(sheet).get(0);
        assertEquals(10, advice.pooledOnce().boards());
        assertEquals(11, sheet.cutting().get(0).saw().ways().get(0).boards());
        assertEquals(11, advice.weekendByWeekend().boards());
    }

    /** What is left of the plan can be asked for by the marks on the pieces. */
    @Test
    void aJobByMarksHasEachPieceOnce() {
        SawWork saw = sheet("turning", 2).cutting().get(0).saw();
        CuttingProblem byMark = saw.problem().with(saw.problem().stock(), saw.problem().pieces().stream()
                .flatMap(demand -> saw.marks().get(demand.id()).stream()
                        .map(mark -> new CuttingProblem.Demand(mark, demand.lengthMm(), 1, demand.stage(), demand.goodFaces())))
                .toList());
        assertEquals(30, byMark.pieces().size());
        List<Sawn> sawn = saw.boards().stream().map(board -> board.number() < 7 ? SawnBoards.done(board) : SawnBoards.waiting(board)).toList();
        Replan.Planned after = (Replan.Planned) Replan.of(byMark, sawn, CuttingSolver.QUICK);
        assertTrue(after.buy().isEmpty());
        assertEquals(30, after.cut() + after.wanted());
    }

    /** The boards and the money of the plan are the slip's: strips as boards, whole bundles, nothing for a board on hand; seeded. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void whatIsBoughtIsTheSlipsFigure(long seed) {
        Random random = new Random(seed);
        int bundle = 1 + random.nextInt(3);
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"A\",\"width\":" + (1500 + 100 * random.nextInt(15)) + ",\"depth\":1200,\"courses\":2},"
                + "{\"id\":\"B\",\"width\":1800,\"depth\":" + (900 + 100 * random.nextInt(9)) + ",\"courses\":3,\"at\":[5000,0]}],"
                + "\"rack\":[{\"id\":\"R1\",\"count\":3,\"length\":" + (1900 + 100 * random.nextInt(9)) + ",\"origin\":\"fence\",\"treatment\":\"none\"}],"
                + "\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":["
                + "{\"length\":2400,\"price\":17.40,\"bundle\":" + bundle + "},{\"length\":3600,\"price\":26.40}]}]}}");
        for (JobSheet.SectionCutting cutting : sheet.cutting()) same(sheet, "timber ", cutting);
        for (JobSheet.SectionCutting cutting : sheet.strips()) same(sheet, "bearers ", cutting);
    }

    private static void same(JobSheet sheet, String kind, JobSheet.SectionCutting cutting) {
        SlipLine line = sheet.slip().lines().stream().filter(one -> one.item().equals(kind + cutting.section())).findFirst().orElseThrow();
        JobSheet.Way pooled = cutting.saw().ways().get(0);
        assertEquals(0, line.cost().orElseThrow().compareTo(pooled.cost().orElseThrow()), line.item());
        assertEquals(0, line.bedByBed().orElseThrow().compareTo(cutting.saw().ways().get(1).cost().orElseThrow()), line.item());
        cutting.saw().ripping().ifPresent(ripping -> assertEquals(line.packs().stream().mapToLong(SlipLine.PackCount::count).sum(), ripping.boards()));
    }
}
