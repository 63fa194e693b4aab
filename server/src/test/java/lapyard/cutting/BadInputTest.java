package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.onHand;
import static lapyard.cutting.Jobs.piece;
import static lapyard.cutting.Jobs.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class BadInputTest {
    private static final List<CuttingProblem.Stock> LONG = List.of(board(4800, "36.00"));

    private static CuttingResult.Unplaced only(CuttingProblem problem) {
        var result = Jobs.solved(problem, CuttingSolver.FULL);
        assertEquals(1, result.unplaced().size(), result.unplaced().toString());
        return result.unplaced().get(0);
    }

    private static String refused(CuttingProblem problem) {
        return Told.refusal(assertThrows(IllegalArgumentException.class, () -> CuttingSolver.solve(problem, CuttingSolver.QUICK)));
    }

    @Test
    void aPieceLongerThanEveryBoardIsNamedAndTheRestIsPlanned() {
        var problem = job("x", 4, 10, LONG, List.of(piece("Z", 6100, 1), piece("A", 2900, 1)));
        assertEquals("longer than every stock length: 6100 needed, 4780 usable", only(problem).why());
        assertEquals(1, Jobs.solved(problem, CuttingSolver.QUICK).boards());
    }

    @Test
    void aPieceAsLongAsTheUsableBoardFitsAndOneThousandthMoreDoesNot() {
        assertEquals(1, Jobs.solved(job("x", 4, 10, LONG, pieces(4780, 1)), CuttingSolver.QUICK).boards());
        var longer = only(job("x", 4, 10, LONG, pieces(4780.001, 1)));
        assertEquals("longer than every stock length: 4780.001 needed, 4780 usable", longer.why());
    }

    @Test
    void withoutAnyStockEveryPieceIsNamed() {
        assertEquals("no board to cut it from: 900 needed", only(job("x", 4, 10, List.of(), pieces(900, 2))).why());
        var none = job("x", 4, 10, List.of(onHand("R", 4800, "0", 0)), pieces(900, 2));
        assertEquals("no board to cut it from: 900 needed", only(none).why());
    }

    @Test
    void whenTheBoardsOnHandRunOutTheShortfallIsCounted() {
        var result = Jobs.solved(
                job("x", 4, 10, List.of(onHand("R", 2000, "3", 2)), pieces(900, 5, 600, 1)), CuttingSolver.FULL);
        assertEquals(2, result.unplaced().stream().mapToInt(CuttingResult.Unplaced::count).sum());
        assertTrue(result.unplaced().get(0).why().contains("wait when the boards on hand are used up"));
        assertTrue(result.proven());
    }

    @Test
    void aGoodFaceThatNoBoardOffersIsNamed() {
        var plain = new CuttingProblem.Stock("plain", 4800, BigDecimal.ONE, OptionalInt.empty(), 0);
        var shortGood = new CuttingProblem.Stock("short", 1000, BigDecimal.ONE, OptionalInt.empty(), 1);
        var seen = List.of(new CuttingProblem.Demand("A", 2300, 2, 1, 1));
        assertEquals("no board with a good face: 2300 needed", only(job("x", 4, 10, List.of(plain), seen)).why());
        assertEquals(
                "longer than every board with a good face: 2300 needed, 980 usable",
                only(job("x", 4, 10, List.of(plain, shortGood), seen)).why());
    }

    @Test
    void countsOfNoneAndOfABillionAreNamed() {
        assertEquals("count is 0: nothing to cut", only(job("x", 4, 10, LONG, pieces(900, 0, 600, 1))).why());
        var many = only(job("x", 4, 10, LONG, pieces(600, 1, 900, 1_000_000_000)));
        assertEquals("1000000000 asked: one job plans at most 1000000 pieces, 1 stand before these", many.why());
        assertTrue(!many.scarce(), "there are boards for it");
    }

    @Test
    void aMillionPiecesAreStillPlanned() {
        var result = Jobs.solved(job("x", 4, 10, LONG, pieces(900, 400_000, 1400, 600_000)), CuttingSolver.QUICK);
        assertTrue(result.unplaced().isEmpty());
        assertTrue(result.cost().doubleValue() <= 1.001 * result.lowerBound().doubleValue());
    }

    @Test
    void aPieceThinnerThanTheSawCutIsNamed() {
        assertEquals(
                "shorter than the saw cut: 3 long, kerf 4", only(job("x", 4, 10, LONG, pieces(3, 1, 900, 1))).why());
    }

    @Test
    void whatCanNeverMakeSenseIsRefusedByName() {
        assertEquals("stock: Board L4800 is listed twice. Give one of the two another code.", refused(job("x", 4, 10, List.of(LONG.get(0), LONG.get(0)), pieces(900, 1))));
        assertEquals("problem: \"kerf\" is -4 mm; at least 0 mm is needed. Give a value from 0 mm to 2000000 mm.", refused(job("x", -4, 10, LONG, List.of())));
        assertEquals("problem: \"endTrim\" is NaN mm; at least 0 mm is needed. Give a value from 0 mm to 2000000 mm.", refused(job("x", 4, Double.NaN, LONG, List.of())));
        assertEquals("piece P0-0: \"length\" is 0 mm; at least 0.001 mm is needed. Give a value from 0.001 mm to 2000000 mm.", refused(job("x", 4, 10, LONG, pieces(0, 1))));
        assertEquals("board L1000000000: \"length\" is 1000000000 mm; at most 2000000 mm is possible. Give a value from 0.001 mm to 2000000 mm.",
                refused(job("x", 4, 10, List.of(board(1e9, "1")), List.of())));
        assertEquals("board L4800: \"price\" is -1; at least 0 is needed. Give a value from 0 to 999999999.", refused(job("x", 4, 10, List.of(board(4800, "-1")), List.of())));
        for (int wrong : new int[] {-1, 3}) {
            assertTrue(refused(job("x", 4, 10, LONG, List.of(new CuttingProblem.Demand("A", 900, 1, 1, wrong)))).startsWith("piece A: \"goodFaces\" is " + wrong));
            assertTrue(refused(job("x", 4, 10, List.of(new CuttingProblem.Stock("R", 900, BigDecimal.ONE, OptionalInt.of(1), wrong)), List.of())).startsWith("board R: \"goodFaces\" is " + wrong));
        }
        assertTrue(refused(job("x", 4, 10, LONG, List.of(new CuttingProblem.Demand("A", 900, 1, -1, 0)))).startsWith("piece A: \"stage\" is -1"));
        assertTrue(refused(job("x", 4, 10, List.of(onHand("R", 900, "1", -1)), List.of())).startsWith("board R: \"available\" is -1"));
        assertEquals("piece A: \"count\" is -2; at least 0 is needed. Give a value from 0 to 2147483647.", refused(job("x", 4, 10, LONG, List.of(piece("A", 9, -2)))));
    }

    /** Named as scarce are those that boards given would hold if there were one of them; a piece may have the name of a board. */
    @Test
    void onlyWhatABoardThatIsUsedUpWouldHoldIsScarce() {
        var gone = onHand("L3000", 3000, "0", 0);
        var there = onHand("L1000", 1000, "0", 9);
        var pieces = List.of(piece("L1000", 900, 1), piece("long", 2980, 1), piece("longer", 2981, 1), piece("none", 2980, 0), new CuttingProblem.Demand("seen", 2980, 1, 1, 2));
        var result = Jobs.solved(job("x", 4, 10, List.of(gone, there), pieces), CuttingSolver.QUICK);
        assertEquals(List.of("long true", "longer false", "none false", "seen false"), result.unplaced().stream().map(one -> one.id() + " " + one.scarce()).toList());
        assertTrue(Jobs.solved(job("x", 3000, 10, List.of(gone, there), List.of(piece("long", 2980, 1))), CuttingSolver.QUICK).unplaced().stream().noneMatch(CuttingResult.Unplaced::scarce));
        var twice = CuttingSolver.solve(job("x", 4, 10, List.of(gone, there), List.of(piece("a", 900, 1), piece("a", 2980, 1))), CuttingSolver.QUICK);
        assertEquals(List.of(false), twice.unplaced().stream().map(CuttingResult.Unplaced::scarce).toList());
    }

    @Test
    void aPieceListedTwiceIsNamedOnceAndTheRestIsPlanned() {
        var result = CuttingSolver.solve(
                job("x", 4, 10, LONG, List.of(piece("A", 900, 1), piece("A", 800, 3), piece("B", 700, 1))), CuttingSolver.QUICK);
        assertEquals(
                List.of(new CuttingResult.Unplaced("A", 800, 3, "listed twice: 3 at 800 left out, give each line its own id", false)),
                result.unplaced());
        assertEquals(List.of("A", "B"), result.plan().get(0).pieces());
    }

    /** One board of 2000 on hand: weekend 1 takes it up, so that nothing is left to cut weekend 2's pieces from. */
    @Test
    void aStageThatNothingCanServeIsNamedWithItsPieces() {
        var late = new CuttingProblem.Demand("late", 900, 2, 2, 0);
        var result = Jobs.solved(
                job("x", 4, 10, List.of(onHand("R", 2000, "3", 1)), List.of(late, piece("early", 900, 2))), CuttingSolver.FULL);
        assertEquals(
                List.of(new CuttingResult.Unplaced(
                        "late", 900, 2,
                        "no board left: 2 of 2 at 900 for stage 2 wait when the boards on hand are used up", true)),
                result.unplaced());
        assertEquals(List.of("early", "early"), result.plan().get(0).pieces());
        var tooLong = new CuttingProblem.Demand("late", 5000, 2, 2, 0);
        assertEquals(
                "longer than every stock length: 5000 needed, 4780 usable",
                only(job("x", 4, 10, LONG, List.of(tooLong, piece("early", 900, 2)))).why());
    }

    @Test
    void aKerfWiderThanEveryPieceLeavesThemAllUncutAndSaysSo() {
        var result = Jobs.solved(job("x", 1000, 0, LONG, pieces(900, 2, 800, 1)), CuttingSolver.QUICK);
        assertEquals(
                List.of("shorter than the saw cut: 900 long, kerf 1000", "shorter than the saw cut: 800 long, kerf 1000"),
                result.unplaced().stream().map(CuttingResult.Unplaced::why).toList());
        assertEquals(0, result.boards());
    }

    @Test
    void aSalvageValueOrRetrimThatCanNeverBeIsRefused() {
        var board = new CuttingProblem.Stock(
                "R", 4800, BigDecimal.ZERO, OptionalInt.of(1), 1, new BigDecimal("-2"), false);
        assertEquals("board R: \"salvage\" is -2; at least 0 is needed. Give a value from 0 to 999999999.", refused(job("x", 4, 10, List.of(board), List.of())));
        assertEquals("problem: \"retrim\" is -1 mm; at least 0 mm is needed. Give a value from 0 mm to 2000000 mm.",
                refused(new CuttingProblem("x", 4, 10, 300, -1, LONG, pieces(900, 1))));
    }

    @Test
    void freeBoardsAreStillCounted() {
        var result = Jobs.solved(job("x", 0, 0, List.of(board(1000, "0")), pieces(600, 3, 400, 3)), CuttingSolver.FULL);
        assertEquals(3, result.boards());
        assertEquals(0, result.cost().signum());
        assertTrue(result.proven());
    }
}
