package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/**
 * A linear programme is at its optimum where its amounts are allowed, its prices are allowed and both come to the same money.
 *
 * @see "Chvatal, Linear Programming (Freeman, 1983), chapter 5, duality"
 */
class RelaxationTest {
    private static final double NEAR = 1e-5;

    private final SearchBudget budget = SearchBudget.whole(Effort.ofSteps(10_000_000), Progress.UNHEARD);
    private final Random random = new Random(826);

    /** Any covering programme, with what is asked for and what there is changed between two looks, and columns let in and shut out. */
    @Test
    void amountsAndPricesComeToTheSameMoney() {
        int anew = 0;
        for (int job = 0; job < 80; job++) {
            int demands = job == 0 ? 40 : 1 + random.nextInt(7);
            int supplies = random.nextInt(4);
            Master master = new Master(demands, supplies, budget);
            List<double[]> columns = new ArrayList<>();
            List<Double> costs = new ArrayList<>();
            int[] start = new int[demands + supplies];
            for (int r = 0; r < start.length; r++) {
                double[] slack = new double[start.length];
                slack[r] = r < demands ? -1 : 1;
                columns.add(slack);
                costs.add(0.0);
                start[r] = r;
            }
            for (int r = 0; r < demands; r++) start[r] = add(master, columns, costs, 3, r, -1);
            master.startWith(start);
            boolean[] barred = new boolean[1500];
            for (int look = 0; look < 4; look++) {
                for (int more = job == 0 ? 120 : random.nextInt(12); more > 0; more--) {
                    add(master, columns, costs, 0.2 + random.nextDouble(), -1, supplies == 0 || random.nextBoolean() ? -1 : demands + random.nextInt(supplies));
                }
                int[] wanted = random.ints(demands, 0, 30).toArray();
                int[] there = random.ints(supplies, 0, 12).toArray();
                for (int c = start.length + demands; c < columns.size(); c++) master.bar(c, barred[c] = random.nextInt(6) == 0);
                master.rightHandSide(wanted, there);
                if (!master.optimise()) {
                    anew++;
                    master.startWith(start);
                    assertTrue(master.optimise(), "from what is below nothing nowhere it stays so");
                }
                assertEquals(columns.size(), master.columns());
                checkOptimum(master, columns, costs, barred, wanted, there);
                // worked out afresh, the same columns say the same
                master.startWith(IntStream.range(0, start.length).map(master::basicColumn).toArray());
                checkOptimum(master, columns, costs, barred, wanted, there);
            }
        }
        assertTrue(anew > 0, "none started anew");
    }

    /** A column that covers one row, or any, with a supply row or none. */
    private int add(Master master, List<double[]> columns, List<Double> costs, double cost, int row, int supply) {
        double[] column = new double[columns.get(0).length];
        int demands = (int) columns.stream().limit(column.length).filter(each -> Arrays.stream(each).min().orElse(0) < 0).count();
        if (row >= 0) column[row] = 1;
        else for (int r = 0; r < demands; r++) column[r] = Math.max(0, random.nextInt(6) - 2);
        if (supply >= 0) column[supply] = 1;
        int[] rows = new int[column.length + 1];
        double[] entries = new double[column.length + 1];
        int n = 0;
        for (int r = 0; r < column.length; r++) {
            if (column[r] == 0) continue;
            rows[n] = r;
            entries[n++] = column[r];
        }
        columns.add(column);
        costs.add(cost);
        return master.addColumn(cost, rows, entries, n);
    }

    private static void checkOptimum(Master master, List<double[]> columns, List<Double> costs, boolean[] barred, int[] wanted, int[] there) {
        double[] amounts = master.amounts();
        double[] prices = master.prices();
        double[] sum = new double[amounts.length];
        double money = 0;
        boolean shutIn = false;
        for (int r = 0; r < amounts.length; r++) {
            int column = master.basicColumn(r);
            assertTrue(amounts[r] > -NEAR, "below nothing: " + amounts[r] + " rows " + amounts.length + " cols " + columns.size());
            shutIn |= barred[column] && amounts[r] > NEAR;
            money += amounts[r] * costs.get(column);
            for (int i = 0; i < sum.length; i++) sum[i] += amounts[r] * columns.get(column)[i];
        }
        double value = 0;
        for (int r = 0; r < sum.length; r++) {
            double wants = r < wanted.length ? wanted[r] : there[r - wanted.length];
            assertEquals(wants, sum[r], NEAR, "row " + r);
            value += wants * prices[r];
        }
        assertEquals(value, master.value(), NEAR);
        assertEquals(money, value, NEAR);
        for (int c = 0; c < columns.size(); c++) {
            double reduced = costs.get(c);
            for (int r = 0; r < prices.length; r++) reduced -= prices[r] * columns.get(c)[r];
            assertTrue(barred[c] || shutIn || reduced > -NEAR, "column " + c + " would bring the money down by " + reduced);
        }
    }

    /** The reference is the programme over all fillings of all boards, without which no more is left out. */
    @Test
    void noFillingIsLeftOut() {
        int scarce = 0;
        int met = 0;
        int cutShort = 0;
        for (long seed = 3001; seed <= 3070; seed++) {
            WholeProblem problem = new Intake(BruteForceTest.random(seed)).whole();
            if (problem.items() == 0) continue;
            Relaxation relaxation = new Relaxation(problem, budget);
            for (int look = 0; look < 3; look++) {
                int[] left = problem.demand.clone();
                int[] boards = problem.supply.clone();
                if (look > 0) {
                    for (int i = 0; i < left.length; i++) left[i] = random.nextInt(left[i] + 1);
                    for (int k = 0; k < boards.length; k++) if (boards[k] != WholeProblem.UNLIMITED) boards[k] = random.nextInt(boards[k] + 1);
                    relaxation.of(left, boards);
                }
                relaxation.solve(Long.MAX_VALUE, 1000);
                double least = overAllFillings(problem, left, boards);
                double near = 1e-7 * Math.max(1, least);
                long bound = relaxation.bound();
                // a filling that is in use may stay, though it holds more than is left to cut
                assertTrue((look > 0 || bound >= Math.ceil(least - near)) && bound <= Math.ceil(least + near), seed + ": " + bound + " of " + least);
                // where the bound can't rise any more, the fractions are left as they are
                double value = relaxation.value();
                assertTrue((look > 0 || value >= least - near) && value < Math.max(bound, least) + near, seed + ": " + value + " of " + least);
                if (bound >= Math.ceil(least - near)) met++;
                // cut short, by rounds or by steps, the bound is lower but holds
                Relaxation early = new Relaxation(problem, look == 0 ? budget : SearchBudget.whole(Effort.ofSteps(1), Progress.UNHEARD));
                early.of(left, boards);
                early.solve(Long.MAX_VALUE, look == 0 ? 1 : 1000);
                if (early.bound() < bound) cutShort++;
                assertTrue(early.bound() <= Math.ceil(least + near), seed + ": " + early.bound() + " early, of " + least);
                checkShares(problem, relaxation.shares(), left, boards, value);
                checkWorths(problem, relaxation, left, boards);
                if (Arrays.stream(boards).anyMatch(there -> there != WholeProblem.UNLIMITED)) scarce++;
            }
        }
        assertTrue(scarce > 50, "boards on hand: " + scarce);
        assertTrue(met > 150, "mostly met: " + met);
        assertTrue(cutShort > 10, "cut short: " + cutShort);
    }

    private double overAllFillings(WholeProblem problem, int[] left, int[] boards) {
        int[] limited = IntStream.range(0, boards.length).filter(k -> boards[k] != WholeProblem.UNLIMITED).toArray();
        Master master = new Master(left.length, limited.length, budget);
        int[] start = IntStream.range(0, left.length + limited.length).toArray();
        double unit = 1000;
        for (int i = 0; i < left.length; i++) start[i] = master.addColumn(problem.uncutCost[i] / unit, new int[] {i}, new double[] {1}, 1);
        for (int k = 0; k < boards.length; k++) {
            int supply = Arrays.binarySearch(limited, k);
            List<int[]> fillings = new ArrayList<>();
            if (boards[k] > 0) fillings(problem, k, left, 0, problem.capacity[k], new int[left.length], fillings);
            for (int[] each : fillings) {
                int[] rows = IntStream.concat(IntStream.range(0, left.length), IntStream.of(Math.max(0, left.length + supply))).toArray();
                double[] entries = Arrays.copyOf(Arrays.stream(each).asDoubleStream().toArray(), rows.length);
                entries[left.length] = 1;
                master.addColumn(problem.cost[k] / unit, rows, entries, supply < 0 ? left.length : rows.length);
            }
        }
        master.startWith(start);
        master.rightHandSide(left, Arrays.stream(limited).map(k -> boards[k]).toArray());
        master.optimise();
        return master.value() * unit;
    }

    private static void fillings(WholeProblem problem, int stock, int[] left, int item, int room, int[] copies, List<int[]> all) {
        if (item == left.length) {
            all.add(copies.clone());
            return;
        }
        int most = problem.holds(stock, item) ? Math.min(left[item], room / problem.weight[item]) : 0;
        for (int n = 0; n <= most; n++) {
            copies[item] = n;
            fillings(problem, stock, left, item + 1, room - n * problem.weight[item], copies, all);
        }
        copies[item] = 0;
    }

    private static void checkShares(WholeProblem problem, List<Relaxation.Share> shares, int[] left, int[] boards, double value) {
        double[] cut = new double[left.length];
        double[] used = new double[boards.length];
        double cost = 0;
        for (Relaxation.Share share : shares) {
            Pattern pattern = share.pattern();
            for (int i = 0; i < pattern.items().length; i++) {
                cut[pattern.items()[i]] += share.amount() * pattern.counts()[i];
                if (pattern.stock() == Pattern.NONE) cost += share.amount() * pattern.counts()[i] * problem.uncutCost[pattern.items()[i]];
            }
            if (pattern.stock() == Pattern.NONE) continue;
            assertTrue(pattern.weight(problem) <= problem.capacity[pattern.stock()]);
            used[pattern.stock()] += share.amount();
            cost += share.amount() * problem.cost[pattern.stock()];
        }
        for (int i = 0; i < left.length; i++) assertTrue(cut[i] > left[i] - NEAR, "all is cut");
        for (int k = 0; k < boards.length; k++) assertTrue(boards[k] == WholeProblem.UNLIMITED || used[k] < boards[k] + NEAR, "no board is used twice");
        assertEquals(value, cost, NEAR * Math.max(1, value));
    }

    /** What the boards hold of the worths of the last round, counted out. */
    private static void checkWorths(WholeProblem problem, Relaxation relaxation, int[] left, int[] boards) {
        double[] prices = relaxation.prices();
        double sum = 0;
        for (int i = 0; i < left.length; i++) sum += prices[i] * left[i];
        double whole = relaxation.wholeWorth();
        long[] open = relaxation.boardWorth();
        long[] any = relaxation.anyBoardWorth();
        double unit = whole == 0 ? 1 : sum / whole;
        for (int k = 0; k < boards.length; k++) {
            assertEquals(KnapsackTest.most(problem, k, prices, left, 0, problem.capacity[k]), any[k] * unit, 1e-9 * sum);
            assertEquals(boards[k] == 0 ? 0 : any[k], open[k]);
        }
        assertTrue(sum == 0 || sum >= (1 - NEAR) * relaxation.value(), "pieces are worth what the fractions cost, and what scarce boards are worth beyond");
    }
}
