package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** First plans: nothing is lost and no board is dearer than it must be. */
class FillingTest {
    private final SearchBudget budget = SearchBudget.whole(Effort.ofSteps(100_000_000), Progress.UNHEARD);
    private final Random random = new Random(827);

    /** @param plain no good faces, and boards on hand that cost nothing */
    static CuttingProblem job(Random random, boolean plain) {
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        for (int k = random.nextInt(5); k >= 0; k--) {
            boolean onHand = random.nextInt(3) > 0;
            int length = 700 + 50 * random.nextInt(40);
            stock.add(new CuttingProblem.Stock("S" + k, length, plain && onHand ? BigDecimal.ZERO : BigDecimal.valueOf(length / 10 + random.nextInt(60), 1),
                    onHand ? OptionalInt.of(1 + random.nextInt(4)) : OptionalInt.empty(), plain ? 1 : random.nextInt(3)));
        }
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (int i = 1 + random.nextInt(7); i > 0; i--) {
            pieces.add(new CuttingProblem.Demand("P" + i, 150 + 50 * random.nextInt(20), 1 + random.nextInt(6), 1, plain ? 0 : Math.max(0, random.nextInt(6) - 3)));
        }
        return new CuttingProblem("some", 4, 0, 300, 0, stock, pieces);
    }

    @Test
    void whatIsLeftOverFitsNoBoardAndNoBoardIsDearerThanItMustBe() {
        int over = 0;
        for (int job = 0; job < 150; job++) {
            WholeProblem problem = new Intake(job(random, job % 3 == 0)).whole();
            if (problem.items() == 0) continue;
            Filling filling = new Filling(problem, budget);
            Solution best = filling.best(problem.demand, problem.supply);
            for (int opening = -1; opening < problem.stocks(); opening++) {
                Solution plan = filling.fill(problem.demand, problem.supply, opening);
                int[] there = check(problem, plan);
                boolean looked = opening < 0 || problem.supply[opening] == WholeProblem.UNLIMITED || problem.stocks() <= 12;
                assertTrue(!looked || best.cost() <= plan.cost(), "the best of all openings");
                for (Pattern pattern : plan.patterns().keySet()) {
                    if (pattern.stock() == Pattern.NONE) {
                        over++;
                        for (int k = 0; k < there.length; k++) assertTrue(there[k] == 0 || !problem.holds(k, pattern.items()[0]), "a board is left that holds it");
                        continue;
                    }
                    int on = filling.cheapest(pattern, problem.supply).stock();
                    for (int k = 0; k < there.length; k++) {
                        if (problem.supply[k] == 0 || problem.capacity[k] < pattern.weight(problem) || problem.stockFaces[k] < pattern.goodFaces(problem)) continue;
                        assertTrue(there[k] == 0 || problem.cost[k] >= problem.cost[pattern.stock()], "a cheaper board holds the same");
                        boolean worse = problem.cost[k] > problem.cost[on] || problem.cost[k] == problem.cost[on] && problem.capacity[k] >= problem.capacity[on];
                        assertTrue(worse, "a cheaper board, or one as cheap and shorter, is left");
                    }
                }
            }
        }
        assertTrue(over > 40, "boards run out: " + over);
    }

    /** The plan cuts each piece or leaves it, takes no more boards than there are and counts its money; returns the boards left. */
    static int[] check(WholeProblem problem, Solution plan) {
        int[] left = problem.demand.clone();
        int[] there = problem.supply.clone();
        long cost = 0;
        long boards = 0;
        long money = 0;
        long uncut = 0;
        for (var line : plan.patterns().entrySet()) {
            Pattern pattern = line.getKey();
            int count = line.getValue();
            assertTrue(count > 0 && pattern.items().length > 0);
            for (int i = 0; i < pattern.items().length; i++) {
                int item = pattern.items()[i];
                left[item] -= count * pattern.counts()[i];
                if (pattern.stock() != Pattern.NONE) {
                    assertTrue(problem.holds(pattern.stock(), item));
                    continue;
                }
                cost += count * pattern.counts()[i] * problem.uncutCost[item];
                uncut += (long) count * pattern.counts()[i];
            }
            if (pattern.stock() == Pattern.NONE) continue;
            assertTrue(pattern.weight(problem) <= problem.capacity[pattern.stock()]);
            cost += count * problem.cost[pattern.stock()];
            money += count * problem.price[pattern.stock()];
            boards += count;
            if (there[pattern.stock()] != WholeProblem.UNLIMITED) there[pattern.stock()] -= count;
        }
        for (int each : left) assertEquals(0, each);
        for (int each : there) assertTrue(each >= 0, "no more boards than there are");
        assertEquals(List.of(cost, boards, money, uncut), List.of(plan.cost(), plan.boards(), plan.money(), plan.uncut()));
        return there;
    }

    /** First fit decreasing takes at most 11/9 of the least and 6/9 of a board more: Dosa, ESCAPE 2007, LNCS 4614, 1-11. */
    @Test
    void boardsOfOneKindAreNoMoreThanElevenNinthsOfTheLeast() {
        for (long seed = 1; seed <= 60; seed++) {
            Shapes.Case planted = Shapes.planted(2 + (int) seed, 4800, (int) (seed % 5), 10, seed);
            WholeProblem problem = new Intake(planted.problem()).whole();
            Solution plan = new Filling(problem, budget).best(problem.demand, problem.supply);
            check(problem, plan);
            assertTrue(9 * plan.boards() <= 11 * planted.optimum() + 6, plan.boards() + " of " + planted.optimum());
        }
    }

    /** The reference fills boards to their end in every order there is: one of them is the cheapest. */
    @Test
    void theBareLengthCostsWhatTheBestOrderOfBoardsDoes() {
        int compared = 0;
        for (int job = 0; job < 300; job++) {
            WholeProblem problem = new Intake(job(random, false)).whole();
            double wanted = 0;
            for (int i = 0; i < problem.items(); i++) wanted += (double) problem.weight[i] * problem.demand[i];
            double least = inAnyOrder(problem, new boolean[problem.stocks()], wanted);
            if (least == Double.POSITIVE_INFINITY) continue;
            long bound = MaterialBound.cost(problem);
            assertTrue(least < 1e9 && bound >= least - 1e-6 && bound < least + 1 - 1e-6, bound + " of " + least);
            compared++;
        }
        assertTrue(compared > 200, "jobs compared: " + compared);
    }

    private static double inAnyOrder(WholeProblem problem, boolean[] taken, double wanted) {
        if (wanted <= 0) return 0;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < taken.length; k++) {
            if (taken[k]) continue;
            double boards = Math.min(problem.supply[k], wanted / problem.capacity[k]);
            taken[k] = true;
            least = Math.min(least, boards * problem.cost[k] + inAnyOrder(problem, taken, wanted - boards * problem.capacity[k]));
            taken[k] = false;
        }
        return least;
    }
}
