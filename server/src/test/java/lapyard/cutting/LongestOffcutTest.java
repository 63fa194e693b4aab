package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** The reference lays every piece on every board that the plan opens and on every other that its money buys. */
class LongestOffcutTest {
    private static final Effort EFFORT = Effort.ofSteps(100_000, 6_000);

    private final Random random = new Random(829);

    private static SearchBudget budget() {
        return SearchBudget.whole(EFFORT, Progress.UNHEARD);
    }

    /** @param kind 0 bought boards, 1 bought ones and others on hand that cost nothing, 2 on hand alone */
    private WholeProblem job(int kind) {
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        if (kind < 2) stock.add(Jobs.board(3000, "30"));
        if (kind < 2 && random.nextBoolean()) stock.add(Jobs.board(2000, "20"));
        if (kind > 0) for (int k = 0; k < 2; k++) stock.add(Jobs.onHand("S" + k, 1500 + 250 * random.nextInt(12), "0", 1 + random.nextInt(2)));
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (int left = 3 + random.nextInt(4); left > 0; left--) pieces.add(Jobs.piece("P" + left, 300 + 50 * random.nextInt(22), 1));
        return new Intake(Jobs.job("some", random.nextInt(2) * 4, 0, stock, pieces)).whole();
    }

    @Test
    void noPlanOfTheMoneyAndTheBoardsOpenedLeavesALongerRest() {
        int longer = 0;
        int cheaper = 0;
        int[] kinds = new int[3];
        for (int job = 0; job < 150; job++) {
            WholeProblem problem = job(job % 3);
            long keep = 300_000 / problem.micronsAUnit;
            Solution plan = new Filling(problem, budget()).best(problem.demand, problem.supply);
            if (plan.uncut() > 0) continue;
            Solution found = new LongestOffcut(problem, keep, EFFORT, budget()).search(plan);
            FillingTest.check(problem, found);
            assertTrue(found.cost() <= plan.cost());
            if (found.cost() < plan.cost()) {
                cheaper++;
                plan = found;
            }
            int most = most(problem, plan);
            boolean worth = most >= keep && most > plan.longestRest();
            assertEquals(worth ? most : plan.longestRest(), found.longestRest(), "job " + job + ", " + plan.patterns().keySet());
            if (worth) longer++;
            kinds[job % 3]++;
        }
        assertTrue(longer > 20 && cheaper > 0 && kinds[1] > 20 && kinds[2] > 10, longer + " longer, " + cheaper + " cheaper, of " + List.of(kinds[0], kinds[1], kinds[2]));
    }

    private static int most(WholeProblem problem, Solution plan) {
        int[] there = problem.supply.clone();
        for (int k = 0; k < there.length; k++) if (there[k] != WholeProblem.UNLIMITED) there[k] = 0;
        plan.patterns().forEach((pattern, count) -> {
            if (there[pattern.stock()] != WholeProblem.UNLIMITED) there[pattern.stock()] += count;
        });
        List<Integer> pieces = new ArrayList<>();
        for (int i = 0; i < problem.items(); i++) for (int n = 0; n < problem.demand[i]; n++) pieces.add(problem.weight[i]);
        return most(problem, pieces, 0, new ArrayList<>(), there, plan.cost());
    }

    /** @param rests of the boards opened so far */
    private static int most(WholeProblem problem, List<Integer> pieces, int at, List<Integer> rests, int[] there, long money) {
        if (at == pieces.size()) return rests.stream().mapToInt(rest -> rest).max().orElseThrow();
        int most = -1;
        int piece = pieces.get(at);
        for (int b = 0; b < rests.size(); b++) {
            if (rests.get(b) < piece) continue;
            rests.set(b, rests.get(b) - piece);
            most = Math.max(most, most(problem, pieces, at + 1, rests, there, money));
            rests.set(b, rests.get(b) + piece);
        }
        for (int k = 0; k < there.length; k++) {
            if (there[k] == 0 || problem.capacity[k] < piece || problem.cost[k] > money) continue;
            if (there[k] != WholeProblem.UNLIMITED) there[k]--;
            rests.add(problem.capacity[k] - piece);
            most = Math.max(most, most(problem, pieces, at + 1, rests, there, money - problem.cost[k]));
            rests.remove(rests.size() - 1);
            if (there[k] != WholeProblem.UNLIMITED) there[k]++;
        }
        return most;
    }

    /** Two boards of 3000 for 1700, 1700, 500 and 500: 1300 instead of 800; not with all steps spent, of more than 60 pieces or with one left over. */
    @Test
    void whereNothingIsLookedForThePlanStays() {
        WholeProblem problem = new Intake(Jobs.job("four", 0, 0, List.of(Jobs.board(3000, "30")), Jobs.pieces(1700, 2, 500, 2))).whole();
        Solution plan = new Solution(problem);
        plan.add(new Pattern(0, new int[] {0, 1}, new int[] {1, 1}), 2);
        long keep = 1;
        assertEquals(1300_000 / problem.micronsAUnit, new LongestOffcut(problem, keep, EFFORT, budget()).search(plan).longestRest());
        SearchBudget spent = budget();
        spent.spend(Long.MAX_VALUE / 4);
        assertSame(plan, new LongestOffcut(problem, keep, EFFORT, spent).search(plan));
        assertSame(plan, new LongestOffcut(problem, 1300_000 / problem.micronsAUnit + 1, EFFORT, budget()).search(plan));
        Solution over = new Solution(plan);
        over.add(new Pattern(Pattern.NONE, new int[] {1}, new int[] {1}), 1);
        assertSame(over, new LongestOffcut(problem, keep, EFFORT, budget()).search(over));
        for (int more = 0; more <= 1; more++) {
            WholeProblem many = new Intake(Jobs.job("many", 0, 0, List.of(Jobs.board(3000, "30")), Jobs.pieces(1700, 2, 500, 2, 3000, 56 + more))).whole();
            Solution whole = new Solution(many);
            whole.add(new Pattern(0, new int[] {1, 2}, new int[] {1, 1}), 2);
            whole.add(new Pattern(0, new int[] {0}, new int[] {1}), 56 + more);
            assertEquals(more == 0, new LongestOffcut(many, keep, EFFORT, budget()).search(whole) != whole, 60 + more + " pieces");
        }
        SearchBudget own = budget();
        new LongestOffcut(problem, keep, EFFORT, own).search(plan);
        assertTrue(own.spent() > 0, "its steps are counted");
    }
}
