package lapyard.cutting;

import java.util.Random;

/** From a first filling to the best plan that the effort buys, and the bound that tells how good it is. */
final class Search {
    private static final long SEED = 20_260_501L;
    private static final int ROOT_ROUNDS = 100_000;

    private final WholeProblem problem;
    private final Budget budget;
    private final Filling filling;
    private Solution best;
    private long bound;

    /** @param known a plan of the same demand to start from, or null */
    Search(WholeProblem problem, Solution known, Budget budget) {
        this.problem = problem;
        this.budget = budget;
        filling = new Filling(problem, budget);
        best = known;
    }

    /** The best plan found; its cost is at least {@link #bound()}. */
    Solution run() {
        Solution first = filling.best(problem.demand, problem.supply);
        if (best == null || first.cost() < best.cost()) best = first;
        bound = MaterialBound.cost(problem);
        if (settled()) return best;
        Relaxation relaxation = new Relaxation(problem, budget);
        for (Pattern pattern : best.patterns().keySet()) relaxation.add(pattern);
        relaxation.of(problem.demand, problem.supply);
        relaxation.solve(best.cost(), ROOT_ROUNDS);
        bound = Math.max(bound, relaxation.bound());
        Diving diving = new Diving(problem, relaxation, filling, budget);
        Random random = null;
        for (int dive = 0; !settled() && !budget.over(); dive++) {
            best = diving.dive(best, random);
            random = new Random(SEED + dive);
        }
        return best;
    }

    private boolean settled() {
        return bound >= best.cost();
    }

    /** No plan that cuts as much costs less than this, money and boards together. */
    long bound() {
        return bound;
    }
}
