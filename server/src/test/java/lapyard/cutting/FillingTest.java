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

/** First plans, and what is made of a plan without more money: whatever they begin with, nothing is lost and nothing that they look for is left. */
class FillingTest {
    private final SearchBudget budget = SearchBudget.whole(Effort.ofSteps(100_000_000), Progress.UNHEARD);
    private final Random random = new Random(827);

    /** @param plain no good faces, and boards on hand that cost nothing */
    private CuttingProblem job(boolean plain) {
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
            WholeProblem problem = new Intake(job(false)).whole();
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
                    for (int k = 0; k < there.length; k++) {
                        boolean holds = there[k] > 0 && problem.capacity[k] >= pattern.weight(problem) && problem.stockFaces[k] >= pattern.goodFaces(problem);
                        assertTrue(!holds || problem.cost[k] >= problem.cost[pattern.stock()], "a cheaper board holds the same");
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
            WholeProblem problem = new Intake(job(false)).whole();
            double wanted = 0;
            for (int i = 0; i < problem.items(); i++) wanted += (double) problem.weight[i] * problem.demand[i];
            double least = inAnyOrder(problem, new boolean[problem.stocks()], wanted);
            if (least == Double.POSITIVE_INFINITY) continue;
            long bound = MaterialBound.cost(problem);
            assertTrue(bound >= least - 1e-6 * least && bound < least + 1 + 1e-6 * least, bound + " of " + least);
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

    /** From plans that open every board in turn, whatever that wastes. */
    @Test
    void tidyingCostsNothingAndLeavesNoShorterRest() {
        int longer = 0;
        int fewer = 0;
        for (int job = 0; job < 100; job++) {
            WholeProblem problem = new Intake(job(job % 2 == 0)).whole();
            if (problem.items() == 0) continue;
            long keep = 60 * (1 + random.nextInt(5)) * 1000 / problem.micronsAUnit;
            Filling filling = new Filling(problem, budget);
            Tidying tidying = new Tidying(problem, filling, Effort.ofSteps(3_000), budget, keep);
            Solution plan = filling.fill(problem.demand, problem.supply, random.nextInt(problem.stocks()));
            if (plan.uncut() > 0) continue;
            Solution spared = tidying.sparing(plan);
            int[] there = check(problem, spared);
            assertTrue(spared.cost() <= plan.cost() && spared.boards() == plan.boards());
            if (job % 2 == 0) checkSpared(problem, spared, there);
            Solution tidy = tidying.tidy(plan);
            check(problem, tidy);
            assertTrue(tidy.cost() <= spared.cost());
            long before = longest(problem, spared);
            long after = longest(problem, tidy);
            if (tidy.cost() == spared.cost()) assertTrue(before < keep || after >= before, "a rest of " + before + " was " + after);
            if (tidy.cost() == spared.cost() && after > before && after >= keep) longer++;
            if (settings(tidy) < settings(plan)) fewer++;
            checkSettings(problem, tidy, keep);
        }
        assertTrue(longer > 10 && fewer > 10, longer + " longer, " + fewer + " with fewer settings");
    }

    /** Jobs of more than 60 pieces are tidied by exchanges alone. */
    @Test
    void exchangesLengthenTheLongestRestOfManyPieces() {
        int longer = 0;
        for (int job = 0; job < 40; job++) {
            List<CuttingProblem.Demand> pieces = new ArrayList<>();
            for (int i = 0; i < 8; i++) pieces.add(new CuttingProblem.Demand("P" + i, 250 + 10 * random.nextInt(120), 8 + random.nextInt(4), 1, 0));
            WholeProblem problem = new Intake(new CuttingProblem("many", 4, 0, 300, 0, List.of(Jobs.board(2400, "17.40"), Jobs.board(3600, "26")), pieces)).whole();
            Filling filling = new Filling(problem, budget);
            long keep = 300_000 / problem.micronsAUnit;
            Solution plan = filling.best(problem.demand, problem.supply);
            Solution tidy = new Tidying(problem, filling, Effort.ofSteps(3_000), budget, keep).tidy(plan);
            check(problem, tidy);
            assertTrue(tidy.cost() <= plan.cost());
            if (tidy.cost() < plan.cost() || longest(problem, tidy) > longest(problem, plan) && longest(problem, tidy) >= keep) longer++;
            else assertTrue(longest(problem, plan) < keep || longest(problem, tidy) >= longest(problem, plan));
        }
        assertTrue(longer > 20, "longer or cheaper: " + longer);
    }

    /** No board that waits is shorter and would do. */
    private static void checkSpared(WholeProblem problem, Solution plan, int[] there) {
        for (Pattern pattern : plan.patterns().keySet()) {
            if (problem.supply[pattern.stock()] == WholeProblem.UNLIMITED) continue;
            for (int k = 0; k < there.length; k++) {
                boolean does = there[k] > 0 && problem.supply[k] != WholeProblem.UNLIMITED && problem.cost[k] <= problem.cost[pattern.stock()] && pattern.weight(problem) <= problem.capacity[k];
                assertTrue(!does || problem.capacity[k] >= problem.capacity[pattern.stock()], "a shorter board waits");
            }
        }
    }

    private static long longest(WholeProblem problem, Solution plan) {
        return plan.patterns().keySet().stream().mapToLong(each -> problem.capacity[each.stock()] - each.weight(problem)).max().orElse(0);
    }

    private static long settings(Solution plan) {
        return plan.patterns().entrySet().stream().mapToLong(line -> (long) line.getKey().items().length * line.getValue()).sum();
    }

    /** No exchange of two pieces between two boards saves a setting, but for the board with the rest that is kept. */
    private static void checkSettings(WholeProblem problem, Solution plan, long keep) {
        List<Pattern> all = List.copyOf(plan.patterns().keySet());
        long longest = longest(problem, plan);
        for (Pattern a : all) {
            for (Pattern b : all) {
                boolean kept = longest >= keep && (rest(problem, a) == longest || rest(problem, b) == longest);
                if (a == b || kept) continue;
                for (int mine = 0; mine < a.items().length; mine++) {
                    for (int theirs = 0; theirs < b.items().length; theirs++) {
                        int more = problem.weight[b.items()[theirs]] - problem.weight[a.items()[mine]];
                        if (more > rest(problem, a) || -more > rest(problem, b)) continue;
                        if (!problem.holds(a.stock(), b.items()[theirs]) || !problem.holds(b.stock(), a.items()[mine])) continue;
                        int fewer = change(a, mine, b.items()[theirs]) + change(b, theirs, a.items()[mine]);
                        assertTrue(fewer >= 0 || a.items()[mine] == b.items()[theirs], "an exchange saves " + -fewer + " settings");
                    }
                }
            }
        }
    }

    private static long rest(WholeProblem problem, Pattern pattern) {
        return problem.capacity[pattern.stock()] - pattern.weight(problem);
    }

    /** Settings more with one piece of a place out and another in. */
    private static int change(Pattern pattern, int out, int in) {
        boolean there = false;
        for (int item : pattern.items()) there |= item == in;
        return (there ? 0 : 1) - (pattern.counts()[out] == 1 ? 1 : 0);
    }
}
