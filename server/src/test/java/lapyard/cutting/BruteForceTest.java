package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BruteForceTest {
    private static final int CASES = 300;

    /** Up to eight pieces of up to five lengths, up to four boards, some on hand only, some without a good face. */
    static CuttingProblem random(long seed) {
        Random random = new Random(seed);
        double[] kerfs = {0, 3, 4, 3.2};
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        boolean onePrice = random.nextInt(4) == 0;
        int kinds = 1 + random.nextInt(4);
        for (int k = 0; k < kinds; k++) {
            int length = 600 + random.nextInt(30) * 50;
            int cents = onePrice ? 100 : random.nextInt(6) == 0 ? 0 : 50 + length / 10 + random.nextInt(60);
            boolean limited = cents == 0 || random.nextInt(3) == 0;
            stock.add(new CuttingProblem.Stock(
                    "S" + k,
                    length,
                    BigDecimal.valueOf(cents, 2),
                    limited ? OptionalInt.of(random.nextInt(4)) : OptionalInt.empty(),
                    random.nextInt(3)));
        }
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        int left = 1 + random.nextInt(8);
        while (left > 0) {
            int count = 1 + random.nextInt(Math.min(left, 3));
            double length = 100 + random.nextInt(16) * (random.nextBoolean() ? 50 : 43.5);
            pieces.add(new CuttingProblem.Demand(
                    "P" + pieces.size(), length, count, 1 + random.nextInt(3), Math.max(0, random.nextInt(6) - 3)));
            left -= count;
        }
        return new CuttingProblem("random " + seed, kerfs[random.nextInt(4)], random.nextInt(3) * 5, 300, 0, stock, pieces);
    }

    @Test
    void noWayOfSharingOutTheseBoardsIsCheaperAndTheProofAlwaysCloses() {
        int whole = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            CuttingProblem problem = random(seed);
            CuttingResult result = Jobs.solved(problem, CuttingSolver.FULL);
            if (!result.unplaced().isEmpty()) {
                boolean canAll = BruteForce.of(problem) != null;
                assertTrue(!canAll, problem.name() + ": all pieces can be placed, yet " + result.unplaced());
                continue;
            }
            BruteForce.Least least = BruteForce.of(problem);
            assertEquals(0, least.money().compareTo(result.cost()), problem.name() + ": " + least + " " + result);
            assertTrue(result.proven(), problem.name() + ": " + result);
            assertEquals(least.boards(), result.boards(), problem.name() + ": boards of " + result);
            whole++;
        }
        assertTrue(whole > CASES / 3, "enough cases place every piece: " + whole);
    }
}
