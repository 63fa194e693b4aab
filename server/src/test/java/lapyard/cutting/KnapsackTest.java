package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The most valuable filling of a board, against every filling there is. */
class KnapsackTest {
    /** What the lengths are like decides how a filling is looked for: few worths as steps, many in a table, fine lengths by fillings worth having. */
    private enum Lengths {
        COARSE(60, 12), TABLE(400, 12), FINE(4_000_000, 30_000);

        final int board;
        final int least;

        Lengths(int board, int least) {
            this.board = board;
            this.least = least;
        }
    }

    private final SearchBudget budget = SearchBudget.whole(Effort.ofSteps(1_000_000), Progress.UNHEARD);
    private final Random random = new Random(825);

    /** Up to six lengths and three boards; thousandths of a millimetre are the unit, as one length is odd. */
    private WholeProblem problem(Lengths lengths) {
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            stock.add(new CuttingProblem.Stock("S" + k, (lengths.board - k * lengths.least + random.nextInt(lengths.least)) / 1000.0,
                    BigDecimal.valueOf(9 - k), OptionalInt.empty(), random.nextInt(3)));
        }
        List<CuttingProblem.Demand> pieces = new ArrayList<>(List.of(new CuttingProblem.Demand("odd", (lengths.least | 1) / 1000.0, 1, 1, 0)));
        for (int i = 0; i < 5; i++) {
            pieces.add(new CuttingProblem.Demand("P" + i, (lengths.least + random.nextInt(lengths.board / 3)) / 1000.0, 1 + random.nextInt(6), 1, Math.max(0, random.nextInt(5) - 2)));
        }
        return new Intake(new CuttingProblem("some", 0, 0, 0, 0, stock, pieces)).whole();
    }

    private long[] worths(int items, boolean few) {
        long[] worths = new long[items];
        for (int i = 0; i < items; i++) worths[i] = random.nextInt(8) == 0 ? 0 : few ? 1 + random.nextInt(3) : 1 + random.nextInt(1_000_000);
        return worths;
    }

    @ParameterizedTest
    @EnumSource
    void noFillingIsWorthMore(Lengths lengths) {
        for (int job = 0; job < 150; job++) {
            WholeProblem problem = problem(lengths);
            Knapsack knapsack = new Knapsack(problem, budget);
            // one knapsack serves many rounds, the second with other worths and fewer pieces
            for (int round = 0; round < 2; round++) {
                int[] limits = problem.demand.clone();
                if (round > 0) for (int i = 0; i < limits.length; i++) limits[i] = random.nextInt(limits[i] + 1);
                check(problem, knapsack, worths(problem.items(), lengths == Lengths.COARSE), limits);
            }
        }
    }

    private void check(WholeProblem problem, Knapsack knapsack, long[] worths, int[] limits) {
        boolean[] open = new boolean[problem.stocks()];
        long[] enough = new long[open.length];
        long[] most = new long[open.length];
        for (int k = 0; k < open.length; k++) {
            open[k] = random.nextInt(5) > 0;
            most[k] = (long) most(problem, k, LongStream.of(worths).asDoubleStream().toArray(), limits, 0, problem.capacity[k]);
            enough[k] = random.nextInt(3) > 0 ? 0 : most[k] * (1 + random.nextInt(4)) / 3;
        }
        knapsack.solve(worths, limits, open, enough);
        for (int k = 0; k < open.length; k++) {
            if (!open[k]) {
                assertEquals(0, knapsack.best(k));
                continue;
            }
            if (most[k] > enough[k]) assertEquals(most[k], knapsack.best(k));
            else assertTrue(knapsack.best(k) >= most[k] && knapsack.best(k) <= Math.max(most[k], enough[k]));
            if (most[k] <= enough[k]) continue;
            assertEquals(most[k], worth(knapsack.pattern(k), problem, k, worths, limits));
            List<Pattern> more = knapsack.more(k, enough[k], 3);
            assertTrue(more.size() <= 3);
            // those that differ in what is worth something may be the same once the rest is filled up
            for (Pattern each : more) assertTrue(worth(each, problem, k, worths, limits) > enough[k]);
        }
    }

    /** What a filling is worth that holds no more than it may, with no room for a piece more. */
    private static long worth(Pattern pattern, WholeProblem problem, int stock, long[] worths, int[] limits) {
        assertEquals(stock, pattern.stock());
        int[] left = limits.clone();
        long room = problem.capacity[stock];
        long worth = 0;
        for (int i = 0; i < pattern.items().length; i++) {
            int item = pattern.items()[i];
            assertTrue(problem.stockFaces[stock] >= problem.itemFaces[item]);
            left[item] -= pattern.counts()[i];
            room -= (long) problem.weight[item] * pattern.counts()[i];
            worth += worths[item] * pattern.counts()[i];
        }
        assertTrue(room >= 0);
        for (int i = 0; i < left.length; i++) {
            assertTrue(left[i] >= 0);
            assertTrue(left[i] == 0 || problem.weight[i] > room || !problem.holds(stock, i), "one more would fit");
        }
        return worth;
    }

    /** What a board can hold at most, all fillings of it counted out; exact for worths in whole numbers below 2^53. */
    static double most(WholeProblem problem, int stock, double[] worths, int[] limits, int item, int room) {
        if (item == worths.length) return 0;
        double most = most(problem, stock, worths, limits, item + 1, room);
        if (problem.stockFaces[stock] < problem.itemFaces[item]) return most;
        for (int n = 1; n <= limits[item] && n * problem.weight[item] <= room; n++) {
            most = Math.max(most, n * worths[item] + most(problem, stock, worths, limits, item + 1, room - n * problem.weight[item]));
        }
        return most;
    }

    /** The best comes first; what takes longer to look through costs more steps. */
    @ParameterizedTest
    @EnumSource
    void furtherFillingsAreOthers(Lengths lengths) {
        int several = 0;
        for (int job = 0; job < 60; job++) {
            WholeProblem problem = problem(lengths);
            Knapsack knapsack = new Knapsack(problem, budget);
            boolean[] open = new boolean[problem.stocks()];
            Arrays.fill(open, true);
            long[] worths = worths(problem.items(), false);
            long before = budget.spent();
            knapsack.solve(worths, problem.demand, open, new long[open.length]);
            assertTrue(budget.spent() - before > (lengths == Lengths.FINE ? 0 : problem.capacity[0]));
            List<Pattern> more = knapsack.more(0, 0, 5);
            List<Long> each = more.stream().map(one -> worth(one, problem, 0, worths, problem.demand)).toList();
            assertTrue(lengths == Lengths.FINE || more.isEmpty() || each.get(0) == knapsack.best(0));
            if (new HashSet<>(more).size() > 2) several++;
        }
        assertTrue(several > 20, "often there are several: " + several);
    }

    /** What can't come above enough is passed over, and so are nearly all fillings where enough is nearly the best. */
    @Test
    void fewFillingsAreLookedAtWhereEnoughIsKnown() {
        long all = 0;
        long few = 0;
        for (int job = 0; job < 100; job++) {
            WholeProblem problem = problem(Lengths.FINE);
            long[] worths = worths(problem.items(), false);
            Frontier none = new Frontier(problem, 0, worths, problem.demand, 0);
            Frontier nearly = new Frontier(problem, 0, worths, problem.demand, Math.max(0, none.best() - 1));
            assertEquals(none.best(), nearly.best());
            all += none.turns();
            few += nearly.turns();
        }
        assertTrue(3 * few < all, few + " turns of " + all);
    }

    /** Forty lengths have more fillings worth having than are kept: then the best is bounded by filling the board with parts of pieces. */
    @Test
    void pastCountingTheBestIsBoundedByPartsOfPieces() {
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (int i = 0; i < 40; i++) pieces.add(new CuttingProblem.Demand("P" + i, 100 + random.nextInt(100_000) / 1000.0, 1, 1, 0));
        WholeProblem problem = new Intake(Jobs.job("many", 0, 0, List.of(Jobs.board(2999.999, "1")), pieces)).whole();
        // nearly as much as they are long, so that nothing is passed over
        long[] worths = Arrays.stream(problem.weight).mapToLong(weight -> 1000L * weight + random.nextInt(500)).toArray();
        Frontier frontier = new Frontier(problem, 0, worths, problem.demand, 0);
        assertTrue(frontier.turns() > 8_000_000, "turns " + frontier.turns());
        List<Integer> dearest = IntStream.range(0, worths.length).boxed().sorted(Comparator.comparingDouble(i -> -worths[i] / (double) problem.weight[i])).toList();
        double room = problem.capacity[0];
        double parts = 0;
        for (int i : dearest) {
            double part = Math.min(1, room / problem.weight[i]);
            parts += part * worths[i];
            room -= part * problem.weight[i];
        }
        assertEquals(parts, frontier.best(), 2);
        long found = worth(Pattern.of(0, frontier.copies(0)), problem, worths);
        assertTrue(found > 0 && found <= frontier.best());
    }

    private static long worth(Pattern pattern, WholeProblem problem, long[] worths) {
        assertTrue(pattern.weight(problem) <= problem.capacity[0]);
        return IntStream.range(0, pattern.items().length).mapToLong(i -> worths[pattern.items()[i]] * pattern.counts()[i]).sum();
    }

    /** Against exact fractions: never less than the part of a piece that still fits is worth, and hardly more. */
    @Test
    void thePartOfAPieceIsNeverWorthLessThanIsSaid() {
        for (int i = 0; i < 2000; i++) {
            int room = random.nextInt(Integer.MAX_VALUE);
            int weight = 1 + random.nextInt(i % 2 == 0 ? 10 : Integer.MAX_VALUE - 1);
            long value = random.nextInt(1 << 20);
            BigInteger worth = BigInteger.valueOf(room).multiply(BigInteger.valueOf(value));
            long said = Frontier.atMost(room, value, weight);
            assertTrue(worth.compareTo(BigInteger.valueOf(said).multiply(BigInteger.valueOf(weight))) <= 0);
            BigInteger most = worth.divide(BigInteger.valueOf(weight));
            assertTrue(said - 2 <= most.doubleValue() * (1 + 1e-13), said + " of " + most);
        }
    }

    /** By hand: 3, 5 and 5 + 3 of room; a part of 3 more that is worth 4 beats what is longer and worth less. */
    @Test
    void stepsRiseWhereMoreIsWorthMore() {
        WorthSteps none = new WorthSteps();
        WorthSteps one = new WorthSteps();
        one.bettered(none, 5, 3, 20);
        WorthSteps two = new WorthSteps();
        two.bettered(one, 3, 4, 20);
        assertEquals(3, two.count());
        for (int room = 0; room <= 20; room++) assertEquals(room < 3 ? 0 : room < 8 ? 4 : 7, two.at(room));
        long[] table = new long[21];
        two.spread(table);
        for (int room = 0; room <= 20; room++) assertEquals(two.at(room), table[room]);
        two.bettered(one, 3, 4, 8);
        assertEquals(3, two.count());
        two.bettered(one, 3, 4, 7);
        assertEquals(2, two.count());
    }
}
