package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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
            Dives dives = new Dives(BruteForceTest.random(seed));
            WholeProblem problem = dives.problem;
            if (problem.items() == 0) continue;
            long bound = dives.bound;
            Diving diving = dives.diving;
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

    /**
     * Fractions rounded step by step come within a board of their bound, and nearly always to it: Waescher and Gau, OR Spektrum 18 (1996) 131-144.
     * Where boards cut up without waste are put together again, dives that lean elsewhere find what the first does not.
     */
    @Test
    void aDiveOfOneKindOfBoardEndsAtItsBoundOrABoardAbove() {
        int first = 0;
        int found = 0;
        for (int seed = 31; seed <= 38; seed++) {
            for (CuttingProblem job : List.of(Shapes.trade(seed - 16, 10 * seed - 240, 1, 0, seed).problem(), Shapes.planted(seed - 13, 4800, 3, 10, seed + 20).problem())) {
                Dives dives = new Dives(job);
                Solution best = dives.diving.dive(each(dives.problem), null);
                FillingTest.check(dives.problem, best);
                assertTrue(best.cost() <= dives.bound + 1, best.cost() + " of " + dives.bound);
                if (best.cost() == dives.bound) first++;
                for (int turn = 0; turn < 6; turn++) best = dives.diving.dive(best, new Random(turn));
                FillingTest.check(dives.problem, best);
                if (best.cost() == dives.bound) found++;
            }
        }
        assertTrue(first >= 12 && found >= 15 && found > first, "the bound met by the first dive in " + first + ", then in " + found + " of 16");
    }

    /** Over the bound of fractions a dive wastes less than half of what the plain filling does. */
    @Test
    void aDiveOfSeveralKindsWastesLessThanHalfOfThePlainFilling() {
        double wasted = 0;
        double plain = 0;
        for (int seed = 41; seed <= 48; seed++) {
            Dives dives = new Dives(Shapes.trade(seed - 26, 10 * seed - 340, 3, 0, seed).problem());
            wasted += dives.diving.dive(each(dives.problem), null).cost() / (double) dives.bound - 1;
            plain += dives.filling.best(dives.problem.demand, dives.problem.supply).cost() / (double) dives.bound - 1;
        }
        assertTrue(wasted < 0.5 * plain, wasted + " of " + plain);
    }

    private final class Dives {
        final WholeProblem problem;
        final Filling filling;
        final long bound;
        final Diving diving;

        Dives(CuttingProblem job) {
            problem = new Intake(job).whole();
            filling = new Filling(problem, budget);
            Relaxation relaxation = new Relaxation(problem, budget);
            relaxation.solve(Long.MAX_VALUE, 1000);
            bound = relaxation.bound();
            diving = new Diving(problem, relaxation, filling, budget);
        }
    }
}
