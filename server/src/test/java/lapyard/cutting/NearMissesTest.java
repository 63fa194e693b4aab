package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

class NearMissesTest {
    private static List<NearMisses.NearMiss> of(CuttingProblem problem) {
        return NearMisses.of(problem, Jobs.solved(problem, Effort.QUICK), Effort.QUICK);
    }

    /** By hand: 2 x 1200 + 4 + 2 x 10 = 2424, 24 over 2400, so 12 less on each lets one board hold both. */
    @Test
    void twelveLessOnEach1200SavesOne2400() {
        var misses = of(job("x", 4, 10, List.of(board(2400, "17.40")), pieces(1200, 2)));
        assertEquals(1, misses.size());
        assertEquals(12, misses.get(0).shorterMm());
        assertEquals(new BigDecimal("17.40"), misses.get(0).saved());
        assertEquals(1, misses.get(0).boardsSaved());
        assertEquals(List.of("P0-1200"), misses.get(0).ids());
    }

    /** 2 x 1226 + 4 + 20 = 2476: 38 less on each would do, more than may be offered. */
    @Test
    void nothingIsOfferedBeyondTwentyFive() {
        assertTrue(of(job("x", 4, 10, List.of(board(2400, "17.40")), pieces(1226, 2))).isEmpty());
    }

    @Test
    void aSinglePieceIsNotARepeatedLength() {
        assertTrue(of(job("x", 0, 0, List.of(board(1000, "5"), board(1500, "9")), pieces(1010, 1))).isEmpty());
    }

    /** Two of 1010 take 9 each; 10 less brings each to the 1000 board at 5, saving 8. */
    @Test
    void aCheaperBoardCountsAsMoneySaved() {
        var miss = of(job("x", 0, 0, List.of(board(1000, "5"), board(1500, "9")), pieces(1010, 2))).get(0);
        assertEquals(10, miss.shorterMm());
        assertEquals(new BigDecimal("8"), miss.saved());
        assertEquals(0, miss.boardsSaved());
    }
}
