package lapyard.cutting;

import static lapyard.cutting.Jobs.board;
import static lapyard.cutting.Jobs.job;
import static lapyard.cutting.Jobs.onHand;
import static lapyard.cutting.Jobs.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Money, then boards, then the longest offcut worth keeping, then settings; boards on hand are worth what they are worth. */
class ObjectiveOrderTest {
    private static CuttingProblem.Stock worth(String id, double length, String salvage, int available) {
        return new CuttingProblem.Stock(
                id, length, BigDecimal.ZERO, OptionalInt.of(available), 1, new BigDecimal(salvage), false);
    }

    /** Two lengths at one price a metre, or one length: many plans of equal money and boards, few with the longest rest. */
    private static CuttingProblem random(long seed) {
        Random random = new Random(seed);
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        stock.add(board(3000, "30"));
        if (random.nextBoolean()) stock.add(board(2000, "20"));
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        int left = 4 + random.nextInt(4);
        while (left > 0) {
            int count = 1 + random.nextInt(Math.min(left, 2));
            pieces.add(Jobs.piece("P" + pieces.size(), 300 + random.nextInt(22) * 50, count));
            left -= count;
        }
        return job("random " + seed, random.nextInt(2) * 4, random.nextInt(2) * 10, stock, pieces);
    }

    @Test
    void noPlanOfTheSameMoneyAndBoardsLeavesALongerOffcut() {
        for (long seed = 1; seed <= 150; seed++) {
            CuttingProblem problem = random(seed);
            CuttingResult result = Jobs.solved(problem, CuttingSolver.FULL);
            BruteForce.Least least = BruteForce.of(problem);
            double longest = result.plan().stream()
                    .mapToDouble(CuttingResult.BoardLine::leftMm)
                    .filter(left -> left >= 300)
                    .max()
                    .orElse(0);
            assertEquals(0, least.money().compareTo(result.cost()), problem.name());
            assertEquals(least.boards(), result.boards(), problem.name());
            assertEquals(least.longest().doubleValue(), longest, problem.name() + ": " + least + " " + result.plan());
        }
    }

    /** The credit for an offcut never buys a board: two of 1000 at 5 leave nothing, one of 3000 at 11 would leave 1000. */
    @Test
    void aLongOffcutIsNeverPaidFor() {
        var result = Jobs.solved(job("x", 0, 0, List.of(board(1000, "5"), board(3000, "11")), pieces(1000, 2)), CuttingSolver.FULL);
        assertEquals("10", result.cost().toPlainString());
    }

    /** A piece of 900 off the rack's 4000, worth 10.15 kept, or a new 1000 at 8: the long board stays whole. */
    @Test
    void aBoardOnHandIsNotBurnedToSaveLessThanItIsWorth() {
        var stock = List.of(worth("R", 4000, "10.15", 1), board(1000, "8"));
        var result = Jobs.solved(job("x", 0, 0, stock, pieces(900, 1)), CuttingSolver.FULL);
        assertEquals("L1000", result.plan().get(0).stock());
        assertEquals(new BigDecimal("8"), result.paid());
        result = Jobs.solved(job("x", 0, 0, stock, pieces(900, 2)), CuttingSolver.FULL);
        assertEquals("R", result.plan().get(0).stock());
        assertEquals(new BigDecimal("10.15"), result.salvage());
        assertEquals(0, result.paid().signum());
        assertTrue(result.proven());
    }

    @Test
    void ofFreeBoardsTheShortestThatDoesIsTaken() {
        var rack = List.of(onHand("long", 4000, "0", 1), onHand("middle", 2000, "0", 1), onHand("short", 1000, "0", 1));
        assertEquals(
                List.of("short"),
                Jobs.solved(job("x", 0, 0, rack, pieces(900, 1)), CuttingSolver.FULL).plan().stream()
                        .map(CuttingResult.BoardLine::stock)
                        .toList());
        var both = Jobs.solved(job("x", 0, 0, rack, pieces(900, 1, 1900, 1)), CuttingSolver.FULL);
        // 900 + 1900 = 2800 lie on one board of 4000: fewer boards count before shorter ones
        assertEquals(1, both.boards());
    }

    /** On four boards of 4000 for three 3000s and three 500s, all free, no fourth is opened for a longer rest. */
    @Test
    void aFreeBoardIsNotOpenedForALongerRest() {
        var result = Jobs.solved(job("x", 0, 0, List.of(onHand("R", 4000, "0", 4)), pieces(3000, 3, 500, 3)), CuttingSolver.FULL);
        assertEquals(3, result.boards());
        double longest = result.plan().stream().mapToDouble(CuttingResult.BoardLine::leftMm).max().orElseThrow();
        assertEquals(1000, longest);
    }

    /** By hand: 1001 + 999 twice and 500 four times twice is 2 + 2 + 1 + 1 settings; any other way of four boards is more. */
    @Test
    void theSettingsAreFewestWhenAllElseIsEqual() {
        var result = Jobs.solved(
                job("x", 0, 0, List.of(board(2000, "20")), pieces(1001, 2, 999, 2, 500, 8)), CuttingSolver.FULL);
        int settings = result.plan().stream()
                .mapToInt(line -> line.count() * (int) line.lengthsMm().stream().distinct().count())
                .sum();
        assertEquals(6, settings);
    }
}
