package lapyard.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Betters a plan a few boards at a time: takes some of its boards apart and cuts their pieces afresh, by the same means
 * as the whole. Where the bound of the part says that nothing is to be gained, that costs one pricing only.
 */
record Exchange(WholeProblem problem, Relaxation relaxation, Diving diving, Filling filling, CuttingBudget budget) {
    private static final int FEWEST = 3;
    private static final int MOST = 14;
    private static final long STEPS_A_PART = 400;

    /** Takes one random set of boards apart; the plan returned is never dearer. */
    Solution once(Solution plan, Random random) {
        List<Pattern> boards = new ArrayList<>();
        plan.patterns().forEach((pattern, count) -> {
            // More copies of one pattern than this in one part only repeat each other.
            for (int i = 0; i < Math.min(count, 4); i++) boards.add(pattern);
        });
        int size = Math.min(boards.size(), FEWEST + random.nextInt(MOST - FEWEST + 1));
        int[] demand = new int[problem.items()];
        int[] supply = problem.supply.clone();
        plan.patterns().forEach((pattern, count) -> {
            int k = pattern.stock();
            if (k != Pattern.NONE && supply[k] != WholeProblem.UNLIMITED) supply[k] -= count;
        });
        Solution part = new Solution(problem);
        for (int i = 0; i < size; i++) {
            int at = i + random.nextInt(boards.size() - i);
            Pattern pattern = boards.set(at, boards.get(i));
            part.add(pattern, 1);
            int k = pattern.stock();
            if (k != Pattern.NONE && supply[k] != WholeProblem.UNLIMITED) supply[k]++;
            for (int p = 0; p < pattern.items().length; p++) demand[pattern.items()[p]] += pattern.counts()[p];
        }
        ExactFinish exact =
                new ExactFinish(problem, relaxation, filling, budget, new Patience(budget, STEPS_A_PART));
        Solution better = exact.improve(demand, supply, part);
        if (!exact.complete()) better = diving.dive(demand, supply, better, null);
        if (better.cost() >= part.cost()) return plan;
        Solution whole = new Solution(problem);
        plan.patterns().forEach((pattern, count) -> {
            int gone = part.patterns().getOrDefault(pattern, 0);
            whole.add(pattern, count - gone);
        });
        whole.addAll(better);
        return whole;
    }
}
