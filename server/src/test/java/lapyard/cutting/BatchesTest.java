package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.solved;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapyard.cutting.Batches.Rates;
import lapyard.cutting.CuttingResult.BoardLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The saw day of the two beds worked by hand: M is L-shaped, outer 3000 x 2400 less 1200 x 900, N is 1800 x 900; timber
 * 100 thick, three courses, kerf 4, end trim 10, boards of 4800. M is built in stage 1, N in stage 2 where stages count.
 */
class BatchesTest {
    private static final CuttingProblem BOTH = job("M+N", 4, 10, List.of(board(4800, "36.00")), List.of());

    /** The plan as worked by hand; a piece is named by its bed and length. */
    private static final List<BoardLine> PLAN = List.of(
            line(3, "M-2900", "N-1700"),
            line(1, "N-1700", "M-1700", "M-1200"),
            line(2, "M-1700", "N-1700", "M-1200"),
            line(1, "M-2300", "M-2300"),
            line(1, "M-2300", "M-1400", "M-900"),
            line(2, "M-1400", "M-900", "N-800", "N-800", "N-800"));

    /** The same boards in an order that lets M be built first: both 1700 beside each 1200 belong to N. */
    private static final List<BoardLine> M_FIRST = List.of(
            line(3, "M-2900", "M-1700"),
            line(3, "N-1700", "N-1700", "M-1200"),
            line(1, "M-2300", "M-2300"),
            line(1, "M-2300", "M-1400", "M-900"),
            line(2, "N-800", "N-800", "N-800", "M-1400", "M-900"));

    private static BoardLine line(int count, String... pieces) {
        List<Double> lengths = new ArrayList<>();
        for (String piece : pieces) lengths.add(Double.valueOf(piece.substring(2)));
        double left = 4780 - lengths.stream().mapToDouble(l -> l).sum() - 4 * (pieces.length - 1);
        return new BoardLine("L4800", count, List.of(pieces), lengths, left);
    }

    /** 4 minutes a cut and 10 a setting, as the job was worked by hand. */
    private static final Rates SLOW = new Rates(4, 10);

    private static int bed(String mark) {
        return mark.startsWith("M") ? 1 : 2;
    }

    /** Job worked by hand: 7 settings, 30 pieces, 22 times a board goes on the saw, 30 x 4 + 7 x 10 = 190 min,
     * and 10 ends to trim, 40 min. */
    @Test
    void sevenSettingsCutTheThirtyPiecesOfBothBeds() {
        Batches batches = Batches.of(SawBoard.of(BOTH, PLAN, mark -> 1), 4, SLOW);
        assertEquals(1, batches.stages().size());
        assertEquals(
                List.of(2900.0, 2300.0, 1700.0, 1400.0, 1200.0, 900.0, 800.0),
                batches.stages().get(0).settings().stream().map(Batches.Setting::stopMm).toList());
        assertEquals(
                List.of(3, 3, 9, 3, 3, 3, 6),
                batches.stages().get(0).settings().stream().map(Batches.Setting::pieces).toList());
        assertEquals(List.of(7, 30, 22), List.of(batches.stages().stream().mapToInt(stage -> stage.settings().size()).sum(), batches.pieces(), batches.stages().stream().mapToInt(Batches.Stage::handlings).sum()));
        assertEquals(190 + 40, batches.minutes());
        assertEquals(10, batches.stages().get(0).boards());
    }

    /**
     * Of 4 + 2 moves for each of the first three boards one falls away where the next board begins with the stop of the
     * last cut: 2900 1700 | 2900 1700 | 2900 1700 | 2300 | 1400 900 | 1700 1200 | 1700 1200 | 1700 1200 | 1400 900 800
     * | 1400 900 800 are 6 + 1 + 2 + 6 + 6 = 21 moves.
     */
    @Test
    void boardByBoardEachBoardIsLiftedOnceButTheStopIsMovedMoreOften() {
        Batches.Stage day = Batches.of(SawBoard.of(BOTH, PLAN, mark -> 1), 4, SLOW).stages().get(0);
        assertEquals(21, day.settingsBoardByBoard());
        assertEquals(40 * 4 + 21 * 10, day.minutesBoardByBoard(SLOW));
        assertEquals(40 * 1.5 + 7 * 2, day.minutes(new Rates(1.5, 2)));
    }

    /** Trim 10, 1400, 900, three of 800, each with its kerf of 4: 4800 - 10 - 4700 - 20 = 70 are left. */
    @Test
    void theBoardOfFivePiecesIsMarkedFromItsEnd() {
        SawBoard nine = SawBoard.of(BOTH, PLAN, mark -> 1).get(8);
        assertEquals(List.of("M-1400", "M-900", "N-800", "N-800", "N-800"), nine.cuts().stream().map(SawBoard.Cut::mark).toList());
        assertEquals(List.of(10.0, 1414.0, 2318.0, 3122.0, 3926.0), nine.cuts().stream().map(SawBoard.Cut::fromMm).toList());
        assertEquals(List.of(1410.0, 2314.0, 3118.0, 3922.0, 4726.0), nine.cuts().stream().map(SawBoard.Cut::toMm).toList());
        assertEquals(70, nine.restMm());
    }

    /**
     * After the 1200: 4800 - 10 - 1200 - 4 = 3586; after 1400 and 900: 4800 - 10 - 2300 - 8 = 2482. Five offcuts wait,
     * and all ten boards hold a piece of M.
     */
    @Test
    void fiveOffcutsAreCarriedFromTheFirstBedToTheSecond() {
        List<SawBoard> boards = SawBoard.of(BOTH, M_FIRST, BatchesTest::bed);
        Ledger ledger = Ledger.of(boards, 4, 300);
        List<Ledger.Offcut> carried =
                ledger.offcuts().stream().filter(o -> o.fate() == Ledger.Fate.CARRIED).toList();
        assertEquals(List.of(2482.0, 2482.0, 3586.0, 3586.0, 3586.0), carried.stream().map(Ledger.Offcut::lengthMm).toList());
        assertTrue(carried.stream().allMatch(o -> o.madeIn() == 1 && o.usedIn().getAsInt() == 2));
        assertEquals(List.of("#6-1", "#7-1", "#8-1", "#9-1", "#10-1"), carried.stream().map(Ledger.Offcut::tag).toList());
        assertEquals(List.of("N-1700", "N-1700"), carried.get(4).marks());
        Ledger.Stage first = ledger.stages().get(0);
        assertEquals(List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10), first.opened());
        assertEquals(5, first.open());
        assertEquals(3586, first.longestMm());
        Ledger.Stage second = ledger.stages().get(1);
        assertEquals(List.of(), second.opened());
        assertEquals(carried.stream().map(Ledger.Offcut::tag).toList(), second.taken());
        assertEquals(0, second.open());
    }

    /** 3586 - 1700 - 1700 - 8 = 178 with the far trim of 10, 168 without; 2482 - 3 x 804 = 70 and 60. */
    @Test
    void whatTheSecondBedLeavesIsScrapAndTheRestOfAShortPlanIsKept() {
        Ledger ledger = Ledger.of(SawBoard.of(BOTH, M_FIRST, BatchesTest::bed), 4, 300);
        assertEquals(
                List.of(70.0, 70.0, 178.0, 178.0, 178.0),
                ledger.offcuts().stream().filter(o -> o.madeIn() == 2).map(Ledger.Offcut::lengthMm).toList());
        assertTrue(ledger.offcuts().stream().filter(o -> o.madeIn() == 2).allMatch(o -> o.fate() == Ledger.Fate.SCRAP));
        Ledger alone = Ledger.of(SawBoard.of(BOTH, List.of(line(1, "M-1200", "M-1200", "M-1200")), mark -> 1), 4, 300);
        assertEquals(Ledger.Fate.KEPT, alone.offcuts().get(0).fate());
        assertEquals(1178, alone.offcuts().get(0).lengthMm());
        assertEquals(1178, alone.lengthMm(Ledger.Fate.KEPT));
    }

    /** Common practice, no source: 4 minutes a cut, 3 a setting; ten boards have an end to trim. */
    @Test
    void endsThatAreTrimmedCountAsCuts() {
        Batches.Stage day = Batches.of(SawBoard.of(BOTH, PLAN, mark -> 1), 4, Rates.USUAL).stages().get(0);
        assertEquals(10, day.trims());
        assertEquals(40, day.cuts());
        assertEquals(40 * 4 + 7 * 3, day.minutes(Rates.USUAL));
    }

    /** M on one day, N on the next: an end that was cut is trimmed again only where the saw is told to. */
    @ParameterizedTest
    @CsvSource({"0, 10, 0", "50, 10, 5"})
    void anOffcutIsTrimmedAgainOnlyWhereTheSawIsToldTo(double retrimMm, int first, int second) {
        CuttingProblem told = new CuttingProblem(BOTH.name(), 4, 10, 300, retrimMm, BOTH.stock(), BOTH.pieces());
        List<Batches.Stage> days = Batches.of(SawBoard.of(told, M_FIRST, BatchesTest::bed), 4, Rates.USUAL).stages();
        assertEquals(List.of(first, second), days.stream().map(Batches.Stage::trims).toList());
    }

    /** The long-wall lap of the same beds: thirteen lengths, 30 x 4 + 13 x 10 = 250 min, and an end to trim a board. */
    @Test
    void thirteenSettingsCutTheLongWallLap() {
        double[] m = {3000, 2, 1300, 4, 800, 2, 1800, 2, 2200, 2, 2800, 1, 1500, 1, 1100, 1, 1000, 1, 1600, 1, 2400, 1};
        double[] n = {1800, 4, 700, 4, 1600, 2, 900, 2};
        List<CuttingProblem.Demand> pieces = new ArrayList<>(Jobs.pieces(m));
        Jobs.pieces(n).forEach(p -> pieces.add(Jobs.piece("N" + p.id(), p.lengthMm(), p.count())));
        CuttingProblem problem = job("long-wall", 4, 10, List.of(board(4800, "36.00")), pieces);
        Batches batches = Batches.of(SawBoard.of(problem, solved(problem, CuttingSolver.QUICK).plan()), 4, SLOW);
        assertEquals(List.of(13, 30), List.of(batches.stages().stream().mapToInt(stage -> stage.settings().size()).sum(), batches.pieces()));
        assertEquals(250 + 4 * batches.stages().get(0).boards(), batches.minutes());
    }

    /** Whatever the plan: every piece is cut once, in its stage, stops fall, no part overlaps, boards count from 1. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyComputedPlanKeepsItsPiecesPlacesAndStages(long seed) {
        CuttingProblem problem = Shapes.trade(8, 60, 3, 4, seed).problem();
        CuttingResult result = solved(problem, CuttingSolver.QUICK);
        List<SawBoard> boards = SawBoard.of(problem, result.plan());
        Batches batches = Batches.of(boards, problem.kerfMm(), SLOW);
        Ledger ledger = Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm());
        Map<String, Integer> planned = new TreeMap<>();
        result.plan().forEach(line -> line.pieces().forEach(id -> planned.merge(id, line.count(), Integer::sum)));
        Map<String, Integer> drawn = new TreeMap<>();
        Map<String, Integer> stageOf = new HashMap<>();
        problem.pieces().forEach(piece -> stageOf.put(piece.id(), piece.stage()));
        for (Batches.Stage stage : batches.stages()) {
            double above = Double.POSITIVE_INFINITY;
            for (Batches.Setting setting : stage.settings()) {
                assertTrue(setting.stopMm() < above);
                above = setting.stopMm();
                int number = 0;
                for (Batches.Draw draw : setting.draws()) {
                    assertTrue(draw.board() > number);
                    number = draw.board();
                    draw.marks().forEach(mark -> drawn.merge(mark, 1, Integer::sum));
                    draw.marks().forEach(mark -> assertEquals(stage.stage(), stageOf.get(mark)));
                }
            }
            assertTrue(stage.settingsBoardByBoard() >= stage.settings().size());
            assertTrue(stage.handlings() >= stage.boards());
        }
        assertEquals(planned, drawn);
        assertEquals(result.boards(), boards.size());
        int opened = 0;
        for (int i = 0; i < boards.size(); i++) {
            SawBoard board = boards.get(i);
            assertEquals(i + 1, board.number());
            assertTrue(board.openedIn() >= opened);
            opened = board.openedIn();
            double from = board.trimMm();
            for (SawBoard.Cut cut : board.cuts()) {
                assertEquals(from, cut.fromMm(), 1e-9);
                assertEquals(cut.lengthMm(), cut.toMm() - cut.fromMm(), 1e-9);
                from = cut.toMm() + problem.kerfMm();
            }
            assertEquals(Math.max(0, board.lengthMm() - from), board.restMm(), 1e-9);
            int own = board.number();
            List<Ledger.Offcut> offcuts = ledger.offcuts().stream().filter(o -> o.board() == own).toList();
            assertEquals(board.stages().size() - 1, offcuts.stream().filter(o -> o.fate() == Ledger.Fate.CARRIED).count());
        }
    }

    /** A kerf that runs off the end leaves nothing: 2400 - 10 - 1189 - 4 - 1187 = 10 of trim, of which the kerf takes 4. */
    @ParameterizedTest(name = "trim {0}, kerf {1}: {2} left")
    @CsvSource({"10, 4, 6", "0, 4, 16", "10, 12, 0"})
    void theLastKerfIsTakenFromWhatIsLeft(double trim, double kerf, double left) {
        double second = 2380 - 1189 - 4;
        CuttingProblem problem = job("tight", kerf, trim, List.of(board(2400, "1")), List.of());
        double first = 1189 - (kerf - 4);
        var line = new BoardLine("L2400", 1, List.of("a", "b"), List.of(first, second), 0);
        SawBoard board = SawBoard.of(problem, List.of(line), mark -> 1).get(0);
        assertEquals(left, board.restMm());
        assertEquals(left > 0 ? 1 : 0, Ledger.of(List.of(board), kerf, 300).offcuts().size());
    }

    /** Boards of 4800 where 3000 passes: 10 + 2900 = 2910 and 4800 - 2914 = 1886; the third piece of 1700 ends at 3122. */
    @Test
    void theMerchantCutsWhereAPieceEndsSoThatEveryPartPasses() {
        List<SawBoard> boards = SawBoard.of(BOTH, PLAN, mark -> 1);
        List<SawBoard.FirstCut> first = SawBoard.firstCuts(boards, 3000, 4);
        assertEquals(10, first.size());
        for (SawBoard.FirstCut cut : first) {
            SawBoard board = boards.get(cut.board() - 1);
            double from = 0;
            for (double at : cut.atMm()) {
                assertTrue(at - from <= 3000);
                assertTrue(board.cuts().stream().anyMatch(c -> c.toMm() == at));
                from = at + 4;
            }
            assertTrue(board.lengthMm() - from <= 3000, cut.toString());
            assertTrue(cut.tooLongPiece().isEmpty());
        }
        assertEquals(List.of(2910.0), first.get(0).atMm());
        assertEquals(List.of(2314.0), first.get(8).atMm());
        assertEquals(List.of(), SawBoard.firstCuts(boards, 4800, 4));
    }

    /** A board of 4002 cut at 2000: the saw takes 4, so the part behind is 1998 and passes where 2000 does. */
    @Test
    void theMerchantsSawTakesItsKerfToo() {
        CuttingProblem problem = job("kerf", 4, 0, List.of(board(4002, "1")), List.of());
        var line = new BoardLine("L4002", 1, List.of("a", "b", "c"), List.of(2000.0, 1000.0, 994.0), 0);
        SawBoard.FirstCut cut = SawBoard.firstCuts(SawBoard.of(problem, List.of(line), mark -> 1), 2000, 4).get(0);
        assertEquals(List.of(2000.0), cut.atMm());
        assertTrue(cut.tooLongPiece().isEmpty());
    }

    @Test
    void aPieceThatCannotBeCarriedItselfIsNamed() {
        SawBoard.FirstCut cut = SawBoard.firstCuts(SawBoard.of(BOTH, PLAN, mark -> 1), 2500, 4).get(0);
        assertEquals(1, cut.tooLongPiece().getAsInt());
        assertEquals(List.of(2910.0), cut.atMm());
    }

    @Test
    void plansThatCannotBeAreRefusedByName() {
        var unknown = assertThrows(IllegalArgumentException.class, () ->
                SawBoard.of(BOTH, List.of(new BoardLine("Q", 1, List.of("a"), List.of(1.0), 0)), mark -> 1));
        assertTrue(unknown.getMessage().contains("Q"), unknown.getMessage());
        var over = assertThrows(IllegalArgumentException.class, () -> SawBoard.of(BOTH, List.of(line(1, "M-4000", "M-900")), mark -> 1));
        assertTrue(over.getMessage().contains("4914"), over.getMessage());
        assertThrows(IllegalArgumentException.class, () -> new Rates(-1, 10));
        assertThrows(IllegalArgumentException.class, () -> SawBoard.firstCuts(List.of(), 0, 4));
    }
}
