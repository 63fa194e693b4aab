package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** An offcut's end is trimmed each time that a later stage takes the board up again. */
class RetrimTest {
    private static CuttingProblem.Demand piece(String id, double length, int count, int stage) {
        return new CuttingProblem.Demand(id, length, count, stage, 0);
    }

    private static CuttingProblem twoStages(double retrim, double early) {
        return new CuttingProblem("x", 4, 10, 300, retrim, List.of(board(4800, "36.00")), List.of(
                piece("early", early, 1, 1), piece("late", 1700, 2, 2)));
    }

    /** 4800 - 20 - 1200 - 2 x 1700 - 2 x 4 = 172; a retrim of 25 leaves 147, one of 173 does not fit. */
    @Test
    void theTrimIsTakenOffWhatIsLeft() {
        var result = Jobs.solved(twoStages(25, 1200), CuttingSolver.FULL);
        assertEquals(1, result.boards());
        assertEquals(147, result.plan().get(0).leftMm());
        assertEquals(1, Jobs.solved(twoStages(172, 1200), CuttingSolver.FULL).boards());
        assertEquals(2, Jobs.solved(twoStages(173, 1200), CuttingSolver.FULL).boards());
    }

    /** 10 + 1200 + 4 end the first cut at 1214; the second weekend trims 25 and cuts from 1239 on. */
    @Test
    void theSecondVisitStartsBehindItsTrim() {
        var problem = twoStages(25, 1200);
        var board = SawBoard.of(problem, Jobs.solved(problem, CuttingSolver.FULL).plan()).get(0);
        assertEquals(List.of(10.0, 1239.0, 2943.0), board.cuts().stream().map(SawBoard.Cut::fromMm).toList());
        assertEquals(3586, board.leftAfterMm(1, 4));
    }

    @Test
    void withinOneStageNothingIsTrimmedAgain() {
        var problem = new CuttingProblem("x", 4, 10, 300, 500, List.of(board(4800, "36.00")), List.of(
                piece("a", 1200, 1, 1), piece("b", 1700, 2, 1)));
        assertEquals(172, Jobs.solved(problem, CuttingSolver.FULL).plan().get(0).leftMm());
    }

    /** The bound of the plan that trims nothing holds; on small jobs the true least is never missed by much. */
    @Test
    void everyPlanFindsRoomForItsTrimsAndStaysAboveItsBound() {
        int reached = 0;
        int cases = 120;
        for (long seed = 1; seed <= cases; seed++) {
            Random random = new Random(seed);
            List<CuttingProblem.Stock> stock = new ArrayList<>();
            stock.add(board(2400, "17.40"));
            if (random.nextBoolean()) stock.add(board(3000, "21.90"));
            if (random.nextBoolean()) {
                stock.add(new CuttingProblem.Stock("R", 1800, new BigDecimal("2"), OptionalInt.of(1), 1));
            }
            List<CuttingProblem.Demand> pieces = new ArrayList<>();
            int left = 3 + random.nextInt(5);
            while (left > 0) {
                int count = 1 + random.nextInt(Math.min(left, 2));
                pieces.add(piece("P" + pieces.size(), 300 + random.nextInt(40) * 40, count, 1 + random.nextInt(3)));
                left -= count;
            }
            var problem = new CuttingProblem("random " + seed, 4, 10, 300, 10 + random.nextInt(4) * 20, stock, pieces);
            CuttingResult result = Jobs.solved(problem, CuttingSolver.FULL);
            BruteForce.Least least = BruteForce.of(problem);
            assertTrue(result.unplaced().isEmpty(), problem.name());
            assertTrue(result.lowerBound().compareTo(least.money()) <= 0, problem.name() + ": bound above the least");
            assertTrue(result.cost().compareTo(least.money()) >= 0, problem.name() + ": cheaper than can be");
            if (result.cost().compareTo(least.money()) == 0) reached++;
        }
        assertTrue(reached >= 0.9 * cases, "reached " + reached + " of " + cases);
    }

    private static CuttingResult on(List<CuttingProblem.Stock> stock, CuttingProblem.Demand... pieces) {
        return Jobs.solved(new CuttingProblem("x", 0, 0, 300, 100, stock, List.of(pieces)), CuttingSolver.QUICK);
    }

    /** Ten of eleven early halves fill five boards as they are; the eleventh and the late one take a board each. Boards as short as a trim hold nothing. */
    @Test
    void boardsThatNeedNoTrimStandAndTheRestIsCutAfresh() {
        List<CuttingProblem.Stock> stock = List.of(board(2000, "5"), Jobs.onHand("stub", 100, "0", 1), Jobs.onHand("end", 80, "0", 1));
        var result = on(stock, piece("early", 1000, 11, 1), piece("late", 1000, 1, 2));
        assertEquals(7, result.boards());
        assertEquals(List.of(), result.unplaced());
        assertEquals(List.of(1, 2), List.copyOf(new TreeSet<>(result.plan().stream().map(line -> line.pieces().get(0).equals("early") ? 1 : 2).toList())));
        for (var mirrored : List.of(result, on(stock, piece("early", 1000, 1, 1), piece("late", 1000, 5, 2)))) {
            assertEquals("early", mirrored.plan().get(0).pieces().get(0), "boards stand in the order in which they are cut");
            assertEquals("late", mirrored.plan().get(mirrored.plan().size() - 1).pieces().get(0));
        }
    }

    /** Two of 1000 on a board leave no room for a trim; 1000, a trim of 100 and 900 fill one to its end. */
    @Test
    void allIsCutAfreshWhereThatTakesFewerBoards() {
        assertEquals(2, on(List.of(board(2000, "5")), piece("a", 1000, 1, 1), piece("b", 900, 1, 1), piece("c", 1000, 1, 2), piece("d", 900, 1, 2)).boards());
    }

    /** Of two boards one holds out with two early halves; the other holds one half more. What they cost is the least for what is cut. */
    @Test
    void whereBoardsRunOutTheRestIsCutAsFarAsItFits() {
        var result = on(List.of(Jobs.onHand("R", 2000, "5", 2)), piece("early", 1000, 3, 1), piece("late", 1000, 1, 2));
        assertEquals(1, result.left());
        assertEquals(0, new BigDecimal("10").compareTo(result.cost()));
        assertEquals(0, result.cost().compareTo(result.lowerBound()));
        assertTrue(result.proven());
    }

    /** A board on hand of 2000 is all there is: the late piece finds no room behind its trim and is named. */
    @Test
    void whatFindsNoRoomBehindItsTrimIsNamed() {
        var problem = new CuttingProblem(
                "x", 0, 0, 300, 50, List.of(Jobs.onHand("R", 2000, "5", 1)), List.of(piece("a", 1000, 1, 1), piece("b", 1000, 1, 2)));
        var result = Jobs.solved(problem, CuttingSolver.FULL);
        assertTrue(!result.unplaced().isEmpty());
        assertTrue(result.unplaced().get(0).why().contains("trimmed by 50 again"), result.toString());
    }
}
