package lapyard.cutting;

import lapyard.working.Effort;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;

/**
 * Looks for a longer single offcut at the same money and boards: the rest to be left is one more piece to place, so the
 * engine itself tells whether that can be had, and halving finds how long it can be. Boards on hand stay those that the
 * plan opens, as opening a longer one would leave a longer rest of what could have stayed whole.
 */
final class LongestOffcut {
    /** Jobs of more pieces are left to the exchanges of {@link Tidying}. */
    private static final int MOST_PIECES = 60;
    /** Steps for each length tried: no more than this, and a part of the patience where an answer is wanted at once. */
    private static final long MOST_STEPS = 1_500;

    private static final int PATIENCE_SHARE = 15;

    private static final int MOST_TRIES = 10;

    private final WholeProblem problem;
    private final long keep;
    private final SearchBudget budget;
    private final long steps;

    LongestOffcut(WholeProblem problem, long keep, Effort effort, SearchBudget budget) {
        this.problem = problem;
        this.keep = keep;
        this.budget = budget;
        steps = Math.max(1, Math.min(MOST_STEPS, effort.patience() / PATIENCE_SHARE));
    }

    Solution search(Solution plan) {
        long pieces = 0;
        for (int count : problem.demand) pieces += count;
        if (pieces > MOST_PIECES || plan.uncut() > 0) return plan;
        int[] boards = problem.supply.clone();
        int longest = 0;
        for (int k = 0; k < boards.length; k++) {
            if (boards[k] != WholeProblem.UNLIMITED) boards[k] = 0;
            longest = Math.max(longest, problem.capacity[k]);
        }
        plan.patterns().forEach((pattern, count) -> {
            if (boards[pattern.stock()] != WholeProblem.UNLIMITED) boards[pattern.stock()] += count;
        });
        int lightest = longest;
        for (int weight : problem.weight) lightest = Math.min(lightest, weight);
        Solution best = plan;
        int had = plan.longestRest();
        int most = longest - lightest;
        for (int tries = 0; tries < MOST_TRIES && most > had && most >= keep && !budget.over(); tries++) {
            // First what may just be kept, or one unit more than is there; then halves.
            int from = (int) Math.max(had + 1, keep);
            int wanted = tries == 0 ? from : from + (most - from) / 2;
            Solution there = leaving(plan, wanted, boards);
            if (there == plan) {
                most = wanted - 1;
            } else if (there.cost() < plan.cost()) {
                return search(there);
            } else {
                best = there;
                had = Math.max(wanted, there.longestRest());
            }
        }
        return best;
    }

    /** A plan of no more money and boards with a rest of at least this on one board, or {@code plan}. */
    private Solution leaving(Solution plan, int wanted, int[] boards) {
        WholeProblem with = problem.leaving(wanted, boards);
        Effort effort = Effort.ofSteps(steps);
        SearchBudget own = SearchBudget.whole(effort, Progress.UNHEARD);
        Solution found = new CuttingSearch(with, null, effort, own, plan.cost(), CuttingSearch.NO_RIVAL).run();
        budget.spend(own.spent());
        if (found.cost() > plan.cost() || found.uncut() > 0) return plan;
        int at = problem.place(wanted);
        Solution without = new Solution(problem);
        found.patterns().forEach((pattern, count) -> {
            int[] copies = new int[problem.items()];
            for (int i = 0; i < pattern.items().length; i++) {
                int item = pattern.items()[i];
                if (item != at) copies[item < at ? item : item - 1] = pattern.counts()[i];
            }
            Pattern cut = Pattern.of(pattern.stock(), copies);
            if (cut.items().length > 0) without.add(cut, count);
        });
        return without;
    }
}
