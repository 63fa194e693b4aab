package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;

class NearMissesTest {
    private static List<NearMisses.NearMiss> of(CuttingProblem problem) {
        return NearMisses.of(problem, Jobs.solved(problem, CuttingSolver.QUICK), CuttingSolver.QUICK, 99);
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

    /** Sixty repeated lengths, each a little too long for two to a board; the forty that take the most timber are tried. */
    @Test
    void ofManyLengthsThoseThatTakeTheMostTimberAreTried() {
        double[] each = new double[120];
        for (int i = 0; i < 60; i++) {
            each[2 * i] = 1012 + i;
            each[2 * i + 1] = 2;
        }
        var job = job("x", 0, 0, List.of(board(2000, "10")), pieces(each));
        var now = Jobs.solved(job, CuttingSolver.QUICK);
        var misses = NearMisses.of(job, now, new Effort(2_000, Duration.ofMinutes(1), 500), 3);
        assertTrue(misses.size() <= 3);
        assertTrue(misses.stream().allMatch(miss -> miss.lengthMm() >= 1069));
        misses = NearMisses.of(job, now, new Effort(2_000, Duration.ofMinutes(1), 500), 60);
        // 15 less on each 1015 lets two of them share a board; no other piece is short enough to share it sooner
        assertTrue(misses.stream().anyMatch(miss -> miss.lengthMm() == 1015 && miss.shorterMm() == 15));
    }

    /** A plan with no proof: the amount is that beside the plan found, and is not called sure. */
    @Test
    void besideAPlanThatIsNotProvedASavingIsNotSure() {
        var job = job("x", 4, 10, List.of(board(2400, "17.40")), pieces(1200, 2));
        var proved = Jobs.solved(job, CuttingSolver.QUICK);
        var open = new CuttingResult(
                "x", proved.cost(), proved.salvage(), proved.boards(), new BigDecimal("17.40"), false, 0, proved.plan(), List.of(), Shortage.NONE);
        var miss = NearMisses.of(job, open, CuttingSolver.QUICK, 99).get(0);
        assertEquals(List.of(12, 1), List.of(miss.shorterMm(), miss.boardsSaved()));
        assertEquals(new BigDecimal("17.40"), miss.saved());
        assertTrue(!miss.sure());
        assertTrue(NearMisses.of(job, proved, CuttingSolver.QUICK, 99).get(0).sure());
    }

    /** With a cut of 10 two of 1000 take a board each; 5 less and one board of 2000 holds both, for the same money. */
    @Test
    void fewerBoardsForTheSameMoneyAreASavingToo() {
        var miss = of(job("x", 10, 0, List.of(board(1000, "5"), board(2000, "10")), pieces(1000, 2))).get(0);
        assertEquals(List.of(5, 1), List.of(miss.shorterMm(), miss.boardsSaved()));
        assertEquals(0, miss.saved().signum());
    }

    /** 800, 800 and 410 on a board of 2000: 5 less on both longer ones and nothing is left over. Of three of 670 one is left over, so they are no length that is cut. */
    @Test
    void whatLeavesFewerOverCountsAndWhatIsLeftOverIsNotTried() {
        var miss = of(job("x", 0, 0, List.of(Jobs.onHand("R", 2000, "5", 1)), pieces(800, 2, 410, 1))).get(0);
        assertEquals(5, miss.shorterMm());
        assertEquals(800, miss.lengthMm());
        assertEquals(List.of(), miss.then().unplaced());
        assertTrue(of(job("x", 0, 0, List.of(Jobs.onHand("R", 2000, "5", 1)), pieces(670, 3))).isEmpty());
    }

    /** Two of 1010 go from 6 to 5 each, two of 605 from one board at 6 to two at 1: less timber, but more money. */
    @Test
    void theLargestSavingComesFirst() {
        var misses = of(job("x", 0, 0, List.of(board(600, "1"), board(1000, "5"), board(1500, "6")), pieces(1010, 2, 605, 2)));
        assertEquals(List.of(605.0, 1010.0), misses.stream().map(NearMisses.NearMiss::lengthMm).toList());
        assertEquals(List.of(4, 2), misses.stream().map(miss -> miss.saved().intValueExact()).toList());
    }

    /** A piece of 25 less 25 is none. */
    @Test
    void aPieceAsShortAsWhatIsTakenOffIsNotTried() {
        assertTrue(of(job("x", 0, 0, List.of(board(60, "5")), pieces(25, 3))).isEmpty());
    }

    @Test
    void onlyAsManyPiecesAreShorterAsAreChanged() {
        var problem = job("x", 0, 0, List.of(board(1000, "5")), List.of(Jobs.piece("A", 600, 3), Jobs.piece("B", 700, 1)));
        var plan = NearMisses.shortened(problem, new NearMisses.Change(Map.of("A", 2)), CuttingSolver.QUICK).apply(15).orElseThrow();
        var lengths = new TreeMap<String, List<Double>>();
        for (var line : plan.plan()) {
            for (int i = 0; i < line.pieces().size(); i++) {
                for (int n = 0; n < line.count(); n++) lengths.computeIfAbsent(line.pieces().get(i), id -> new ArrayList<>()).add(line.lengthsMm().get(i));
            }
        }
        assertEquals(Map.of("A", List.of(585.0, 585.0), "A as it is", List.of(600.0), "B", List.of(700.0)), lengths);
    }
}
