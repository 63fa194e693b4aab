package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StageAndGradeTest {
    private static CuttingProblem.Stock board(String id, double length, String price, boolean goodFace) {
        return new CuttingProblem.Stock(id, length, new BigDecimal(price), OptionalInt.empty(), goodFace ? 1 : 0);
    }

    private static CuttingProblem.Demand piece(String id, double length, int count, int stage, boolean goodFace) {
        return new CuttingProblem.Demand(id, length, count, stage, goodFace ? 1 : 0);
    }

    @Test
    void earlierStagesAreCutFirstFromABoardThatLaterOnesShare() {
        var result = Jobs.solved(
                Jobs.job("two weekends", 4, 10, List.of(board("L", 4800, "36", true)), List.of(
                        piece("late", 1700, 2, 2, false), piece("early", 1200, 1, 1, false))),
                CuttingSolver.FULL);
        assertEquals(1, result.boards());
        assertEquals(List.of("early", "late", "late"), result.plan().get(0).pieces());
        // 4800 - 2 x 10 - 1200 - 2 x 1700 - 2 x 4
        assertEquals(172, result.plan().get(0).leftMm());
    }

    @Test
    void waitingForALaterWeekendNeverChangesTheMoney() {
        var p = Shapes.trade(6, 24, 2, 1, 3).problem();
        var pooled = p.pieces().stream()
                .map(d -> piece(d.id(), d.lengthMm(), d.count(), 1, false))
                .toList();
        var once = new CuttingProblem(p.name(), p.kerfMm(), p.endTrimMm(), p.keepOffcutMm(), 0, p.stock(), pooled);
        assertEquals(Jobs.solved(once, CuttingSolver.FULL).cost(), Jobs.solved(p, CuttingSolver.FULL).cost());
    }

    /** Four seen pieces must come from good boards at 10; the four hidden ones fit the cheap boards at 6. */
    @Test
    void seenPiecesTakeGoodBoardsAndHiddenOnesTheCheap() {
        var result = Jobs.solved(
                Jobs.job("faces", 0, 0, List.of(board("good", 2000, "10", true), board("plain", 2000, "6", false)), List.of(
                        piece("seen", 1000, 4, 1, true), piece("hidden", 1000, 4, 1, false))),
                CuttingSolver.FULL);
        assertEquals("32", result.cost().toPlainString());
        assertTrue(result.proven());
    }

    @Test
    void aHiddenPieceFillsUpAGoodBoard() {
        var result = Jobs.solved(
                Jobs.job("mixed", 0, 0, List.of(board("good", 2000, "10", true), board("plain", 2000, "9", false)), List.of(
                        piece("seen", 1200, 1, 1, true), piece("hidden", 800, 1, 1, false))),
                CuttingSolver.FULL);
        assertEquals("10", result.cost().toPlainString());
    }

    @Test
    void boardsOnHandAreUsedOnlyAsOftenAsTheyAreThere() {
        var result = Jobs.solved(
                Jobs.job("rack", 4, 10, List.of(Jobs.onHand("R1", 2750, "0", 1), Jobs.board(4800, "36.00")),
                        Jobs.pieces(2700, 3)),
                CuttingSolver.FULL);
        assertEquals(new BigDecimal("72.00"), result.cost().setScale(2));
        assertEquals(3, result.boards());
    }

    /** One board and the same money either way; fewer boards at equal money: one long board at 10, not two at 5. */
    @Test
    void atEqualMoneyTheFewerBoardsWin() {
        var result = Jobs.solved(
                Jobs.job("equal", 0, 0, List.of(board("half", 1000, "5", true), board("long", 2000, "10", true)),
                        Jobs.pieces(1000, 2)),
                CuttingSolver.FULL);
        assertEquals(1, result.boards());
    }

    /** Three boards either way; the short pieces gather so that one board keeps 1500 rather than several keeping less. */
    @Test
    void atEqualBoardsOneLongOffcutIsKept() {
        var result = Jobs.solved(
                Jobs.job("offcut", 0, 0, List.of(board("L", 3000, "20", true)), Jobs.pieces(2000, 3, 500, 3)),
                CuttingSolver.FULL);
        assertEquals(3, result.boards());
        // 3 x 2000 + 3 x 500 = 7500 of 9000; two boards take 2000 + 500 + 500 and one takes 2000 + 500 at most
        double longest = result.plan().stream().mapToDouble(CuttingResult.BoardLine::leftMm).max().orElseThrow();
        assertEquals(1000, longest);
    }

    @Test
    void atEqualOffcutsABoardMeetsFewerStops() {
        var result = Jobs.solved(
                Jobs.job("stops", 0, 0, List.of(board("L", 2000, "20", true)), Jobs.pieces(1001, 2, 999, 2, 500, 8)),
                CuttingSolver.FULL);
        assertEquals(4, result.boards());
        int settings = result.plan().stream()
                .mapToInt(line -> line.count() * (int) line.lengthsMm().stream().distinct().count())
                .sum();
        // two boards of 1001 + 999 and two of 4 x 500
        assertEquals(6, settings);
    }

    /** Boards that are opened sooner come first, then longer ones, then those with the longer pieces; no two lines say the same. */
    @Test
    void linesStandInTheOrderOfWork() {
        int several = 0;
        for (long seed = 1; seed <= 24; seed++) {
            CuttingProblem problem = Shapes.trade(5 + (int) (seed % 4), 30, 1 + (int) (seed % 3), (int) (seed % 2), seed).problem();
            if (seed % 2 == 0) problem = problem.with(problem.stock(), problem.pieces().stream().map(d -> piece(d.id(), d.lengthMm(), d.count(), 1, false)).toList());
            var stock = problem.stock();
            var pieces = problem.pieces();
            CuttingResult.BoardLine before = null;
            Set<List<Object>> said = new HashSet<>();
            for (var line : Jobs.solved(problem, CuttingSolver.QUICK).plan()) {
                assertTrue(said.add(List.of(line.stock(), line.pieces())));
                if (before != null) {
                    int stage = stage(pieces, line) - stage(pieces, before);
                    assertTrue(stage >= 0);
                    double shorter = length(stock, before) - length(stock, line);
                    assertTrue(seed % 2 != 0 || shorter >= 0, "longer boards first");
                    if (seed % 2 == 0 && before.stock().equals(line.stock())) {
                        several++;
                        int at = 0;
                        while (at < Math.min(line.pieces().size(), before.pieces().size()) && line.lengthsMm().get(at).equals(before.lengthsMm().get(at))) at++;
                        boolean end = at == before.pieces().size() || at == line.pieces().size();
                        assertTrue(end || line.lengthsMm().get(at) < before.lengthsMm().get(at), before + ", " + line);
                    }
                }
                before = line;
            }
        }
        assertTrue(several > 30, "lines of one board: " + several);
    }

    private static int stage(List<CuttingProblem.Demand> pieces, CuttingResult.BoardLine line) {
        return pieces.stream().filter(one -> one.id().equals(line.pieces().get(0))).findFirst().orElseThrow().stage();
    }

    private static double length(List<CuttingProblem.Stock> stock, CuttingResult.BoardLine line) {
        return stock.stream().filter(one -> one.id().equals(line.stock())).findFirst().orElseThrow().lengthMm();
    }
}
