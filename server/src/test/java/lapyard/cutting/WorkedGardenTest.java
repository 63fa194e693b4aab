package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.pieces;
import static lapyard.cutting.Jobs.solved;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Two beds worked by hand: M is L-shaped, outer 3000 x 2400 less 1200 x 900, N is 1800 x 900; timber 100 thick, three
 * courses, turning lap, kerf 4, end trim 10.
 */
class WorkedGardenTest {
    private static final List<CuttingProblem.Demand> BED_M =
            pieces(2900, 3, 1400, 3, 1200, 3, 900, 3, 1700, 3, 2300, 3);
    private static final List<CuttingProblem.Demand> BED_N = pieces(1700.0, 6, 800, 6);
    private static final List<CuttingProblem.Stock> LONG_ONLY = List.of(board(4800, "36.00"));
    private static final List<CuttingProblem.Stock> MIXED =
            List.of(board(2400, "17.40"), board(3000, "21.90"), board(3600, "26.40"), board(4800, "36.00"));

    private static List<CuttingProblem.Demand> both() {
        List<CuttingProblem.Demand> all = new ArrayList<>(BED_M);
        for (var piece : BED_N) all.add(Jobs.piece("N-" + piece.id(), piece.lengthMm(), piece.count()));
        return all;
    }

    @Test
    void bedMAloneTakesSevenLongBoardsAndBedNFour() {
        var m = solved(job("M", 4, 10, LONG_ONLY, BED_M), CuttingSolver.QUICK);
        var n = solved(job("N", 4, 10, LONG_ONLY, BED_N), CuttingSolver.QUICK);
        assertEquals(List.of(7, 4), List.of(m.boards(), n.boards()));
        assertTrue(m.proven() && n.proven());
    }

    /** Bound 46320 / 4784 = 9.68, so ten is the least; filling longest first gives eleven. */
    @Test
    void theTwoBedsPooledTakeTenLongBoardsProven() {
        var result = solved(job("M+N", 4, 10, LONG_ONLY, both()), CuttingSolver.QUICK);
        assertEquals(10, result.boards());
        assertEquals(new BigDecimal("360.00"), result.cost());
        assertEquals(result.cost(), result.lowerBound());
        assertTrue(result.proven());
    }

    @Test
    void mixedStockLengthsPooledCost35220() {
        var result = solved(job("M+N mixed", 4, 10, MIXED, both()), CuttingSolver.QUICK);
        assertEquals(new BigDecimal("352.20"), result.cost());
    }

    @Test
    void mixedStockLengthsBedByBedCost23580And12300() {
        assertEquals(new BigDecimal("235.80"), solved(job("M", 4, 10, MIXED, BED_M), CuttingSolver.QUICK).cost());
        assertEquals(new BigDecimal("123.00"), solved(job("N", 4, 10, MIXED, BED_N), CuttingSolver.QUICK).cost());
    }

    /** 360 of 2300 go two to a board, 360 of 1100 four to a board: 180 + 90, and no board holds more of either. */
    @Test
    void sixtyBedsOf2400By1200InThreeCoursesTake270Boards() {
        var result = solved(job("field", 4, 10, LONG_ONLY, pieces(2300, 360, 1100, 360)), CuttingSolver.QUICK);
        assertEquals(270, result.boards());
        assertTrue(result.proven());
    }
}
