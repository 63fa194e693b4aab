package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;

/** Whole plans out of fractional ones: whatever they begin with, all is cut once, from boards that there are, and never for more. */
class DivingTest {
    private final SearchBudget budget = SearchBudget.whole(Effort.ofSteps(10_000_000), Progress.UNHEARD);

    @Test
    void aDiveCutsEverythingAndNeverCostsMore() {
        int better = 0;
        int met = 0;
        int jobs = 0;
        for (long seed = 4001; seed <= 4150; seed++) {
            Random random = new Random(seed);
            WholeProblem problem = new Intake(BruteForceTest.random(seed)).whole();
            if (problem.items() == 0) continue;
            Filling filling = new Filling(problem, budget);
            Relaxation relaxation = new Relaxation(problem, budget);
            relaxation.solve(Long.MAX_VALUE, 1000);
            long bound = relaxation.bound();
            Diving diving = new Diving(problem, relaxation, filling, budget);
            Solution best = each(problem);
            for (int turn = 0; turn < 3; turn++) {
                long before = best.cost();
                Solution plan = diving.dive(best, turn == 0 ? null : random);
                FillingTest.check(problem, plan);
                assertEquals(before, best.cost(), "the plan it begins with is left as it is");
                assertTrue(plan == best || plan.cost() < before);
                assertTrue(plan.cost() >= bound);
                if (plan != best) better++;
                best = plan;
            }
            // at the bound nothing is left to find
            if (best.cost() == bound) assertSame(best, diving.dive(best, random));
            jobs++;
            if (best.cost() == bound) met++;
        }
        assertTrue(better > 60 && 3 * met > jobs, better + " times better, the bound met in " + met + " of " + jobs);
    }

    /** Whatever a plan costs at most: every piece left over. */
    private static Solution each(WholeProblem problem) {
        Solution plan = new Solution(problem);
        for (int i = 0; i < problem.items(); i++) plan.add(new Pattern(Pattern.NONE, new int[] {i}, new int[] {1}), problem.demand[i]);
        return plan;
    }

    /** Cut from boards without waste, so the least is known; what is met by fractions in use comes out of the first dive or of those that lean elsewhere. */
    @Test
    void boardsCutUpArePutTogetherAgain() {
        int found = 0;
        for (int seed = 1; seed <= 12; seed++) {
            Shapes.Case planted = Shapes.planted(4 + seed, 4800, 3, 8, seed);
            WholeProblem problem = new Intake(planted.problem()).whole();
            Filling filling = new Filling(problem, budget);
            Relaxation relaxation = new Relaxation(problem, budget);
            relaxation.solve(Long.MAX_VALUE, 1000);
            Diving diving = new Diving(problem, relaxation, filling, budget);
            Solution best = each(problem);
            for (int turn = 0; turn < 6; turn++) best = diving.dive(best, turn == 0 ? null : new Random(turn));
            FillingTest.check(problem, best);
            assertTrue(best.boards() <= planted.optimum() + 1, best.boards() + " of " + planted.optimum());
            if (best.boards() == planted.optimum()) found++;
        }
        assertTrue(found > 8, "the least found in " + found);
    }
}
