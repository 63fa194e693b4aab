package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/** The numerical parts against general-purpose libraries and plain enumeration. */
class PartsTest {
    /** ojAlgo's linear solver as the outside reference, over random covering programmes. */
    @Test
    void theLinearProgrammeAgreesWithAnOutsideSolver() {
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            int demands = 2 + random.nextInt(12);
            int limits = random.nextInt(4);
            int rows = demands + limits;
            Master master = new Master(demands, limits, new CuttingBudget(CuttingSolver.FULL));
            ExpressionsBasedModel model = new ExpressionsBasedModel();
            Expression[] lines = new Expression[rows];
            int[] want = random.ints(demands, 0, 20).toArray();
            int[] there = random.ints(limits, 0, 5).toArray();
            for (int r = 0; r < rows; r++) {
                lines[r] = model.newExpression("row" + r);
                if (r < demands) lines[r].lower(want[r]);
                else lines[r].upper(there[r - demands]);
            }
            int[] start = new int[rows];
            for (int r = demands; r < rows; r++) start[r] = r;
            for (int c = 0; c < demands + 30; c++) {
                double cost = c < demands ? 1 : 0.3 + random.nextDouble();
                int[] at;
                double[] entries;
                if (c < demands) {
                    at = new int[] {c};
                    entries = new double[] {1};
                } else {
                    int limit = limits > 0 && random.nextBoolean() ? demands + random.nextInt(limits) : -1;
                    int[] picked = random.ints(0, demands).distinct().limit(2).sorted().toArray();
                    at = limit < 0 ? picked : new int[] {picked[0], picked[1], limit};
                    entries = new double[at.length];
                    for (int i = 0; i < at.length; i++) entries[i] = at[i] < demands ? 1 + random.nextInt(3) : 1;
                }
                int column = master.addColumn(cost, at, entries, at.length);
                if (c < demands) start[c] = column;
                Variable variable = model.newVariable("x" + c).lower(0).weight(cost);
                for (int i = 0; i < at.length; i++) lines[at[i]].set(variable, entries[i]);
            }
            master.startWith(start);
            master.rightHandSide(want, there);
            master.optimise();
            Optimisation.Result outside = model.minimise();
            assertEquals(outside.getValue(), master.value(), 1e-6, "seed " + seed);
        }
    }

    @Test
    void theTableAndTheSearchFindTheBestPatternThatEnumerationFinds() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            int scale = seed % 2 == 0 ? 1 : 900_001; // so fine a unit that no table is kept
            var stock = List.of(Jobs.board(90.0, "1"), Jobs.board(70.0, "1.5"));
            List<CuttingProblem.Demand> pieces = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                double length = 10 + random.nextInt(40) + (scale == 1 ? 0 : random.nextInt(1000) / 1000.0);
                pieces.add(Jobs.piece("P" + i, length, 1 + random.nextInt(3)));
            }
            var problem = new Intake(Jobs.job("x", 0, 0, stock, pieces)).whole();
            long[] values = random.longs(problem.items(), 0, 1000).toArray();
            boolean[] open = new boolean[problem.stocks()];
            Arrays.fill(open, true);
            Knapsack knapsack = new Knapsack(problem, new CuttingBudget(CuttingSolver.FULL));
            knapsack.solve(values, problem.demand, open, new long[problem.stocks()]);
            for (int k = 0; k < problem.stocks(); k++) {
                long best = enumerate(problem, values, 0, problem.capacity[k]);
                assertEquals(best, knapsack.best(k), "seed " + seed);
                Pattern pattern = knapsack.pattern(k);
                assertTrue(pattern.weight(problem) <= problem.capacity[k]);
                long worth = 0;
                for (int i = 0; i < pattern.items().length; i++) {
                    worth += values[pattern.items()[i]] * pattern.counts()[i];
                    assertTrue(pattern.counts()[i] <= problem.demand[pattern.items()[i]]);
                }
                assertEquals(best, worth, "seed " + seed);
            }
        }
    }

    /** Few values make few steps, which are kept as such; many make a table after the first layers. */
    @Test
    void theBestPatternOfALongBoardIsFoundByStepsAndByTheTable() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            var stock = List.of(Jobs.board(4800, "36"), Jobs.board(3600, "26.4"), Jobs.board(2400, "17.4"));
            List<CuttingProblem.Demand> pieces = new ArrayList<>();
            for (int i = 0; i < 7; i++) pieces.add(Jobs.piece("P" + i, 300 + random.nextInt(2000), 1 + random.nextInt(4)));
            var problem = new Intake(Jobs.job("x", 4, 10, stock, pieces)).whole();
            int worths = seed % 2 == 0 ? 3 : 1_000_000;
            long[] values = random.longs(problem.items(), 0, worths).toArray();
            boolean[] open = new boolean[problem.stocks()];
            Arrays.fill(open, true);
            Knapsack knapsack = new Knapsack(problem, new CuttingBudget(CuttingSolver.FULL));
            knapsack.solve(new long[problem.items()], problem.demand, open, new long[problem.stocks()]);
            knapsack.solve(values, problem.demand, open, new long[problem.stocks()]);
            for (int k = 0; k < problem.stocks(); k++) {
                long best = enumerate(problem, values, 0, problem.capacity[k]);
                assertEquals(best, knapsack.best(k), "seed " + seed);
                Pattern pattern = knapsack.pattern(k);
                long worth = 0;
                for (int i = 0; i < pattern.items().length; i++) worth += values[pattern.items()[i]] * pattern.counts()[i];
                assertEquals(best, worth, "seed " + seed);
            }
        }
    }

    private static long enumerate(WholeProblem problem, long[] values, int item, long room) {
        if (item == problem.items()) return 0;
        long best = 0;
        for (int n = 0; n <= problem.demand[item] && (long) n * problem.weight[item] <= room; n++) {
            long rest = enumerate(problem, values, item + 1, room - (long) n * problem.weight[item]);
            best = Math.max(best, n * values[item] + rest);
        }
        return best;
    }
}
