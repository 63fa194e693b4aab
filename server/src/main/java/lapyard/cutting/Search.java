package lapyard.cutting;

import java.util.Random;

/** From a first filling to the best plan that the effort buys, and the bound that tells how good it is. */
final class Search {
    private static final long SEED = 20_260_501L;
    private static final int ROOT_ROUNDS = 100_000;
    /** Pieces up to which every plan is tried. */
    private static final int SMALL = 100;
    private static final int DIVES_BEFORE_FINISH = 4;
    /** Share of the budget that trying every plan may reach. */
    private static final double EXACT_SHARE = 0.9;
    /** What may go into fewer boards once the money is proved: this part of what was spent, and of the whole. */
    private static final double BOARDS_SHARE = 0.02;

    /** Price units up to which whole boards are counted out. */
    private static final long MOST_MONEY = 5_000_000;


    private final WholeProblem problem;
    private final Budget budget;
    private final Filling filling;
    private Solution best;
    private double dives = 1;
    private long bound;
    private long moneyBound;

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
        moneyBound = problem.moneyAtLeast(bound);
        if (problem.boardWeight > 1 && best.uncut() == 0) wholeBoards(relaxation);
        Diving diving = new Diving(problem, relaxation, filling, budget);
        Random random = null;
        boolean small = pieces() <= SMALL;
        for (int dive = 0; !settled() && !budget.past(dives); dive++) {
            best = diving.dive(best, random);
            random = new Random(SEED + dive);
            if (small && dive == DIVES_BEFORE_FINISH) finish(relaxation);
            // Once the money is proved, only a little more goes into fewer boards.
            if (dives == 1 && moneyBound() >= best.money() && best.uncut() == 0) dives = budget.shareWith(BOARDS_SHARE);
        }
        return best;
    }

    private int pieces() {
        int sum = 0;
        for (int count : problem.demand) sum = (int) Math.min(1_000_000, (long) sum + count);
        return sum;
    }

    private void wholeBoards(Relaxation relaxation) {
        if (best.money() > MOST_MONEY) return;
        WholeBoards boards = new WholeBoards(problem, budget);
        moneyBound = relaxation.wholeBoards(boards, moneyBound, best.money());
        long[] length = new long[problem.stocks()];
        for (int k = 0; k < length.length; k++) length[k] = problem.capacity[k];
        long need = 0;
        for (int i = 0; i < problem.items(); i++) need += (long) problem.weight[i] * problem.demand[i];
        moneyBound = boards.leastMoney(length, problem.supply, need, moneyBound, best.money());
    }

    private void finish(Relaxation relaxation) {
        if (best.uncut() == 0 && moneyBound < best.money()) {
            ExactFinish money = new ExactFinish(problem, relaxation, filling, budget, EXACT_SHARE);
            best = money.improve(best, true);
            if (!money.complete()) return;
            moneyBound = best.money();
        }
        double share = best.uncut() == 0 ? budget.shareWith(BOARDS_SHARE) : EXACT_SHARE;
        ExactFinish boards = new ExactFinish(problem, relaxation, filling, budget, share);
        best = boards.improve(best, false);
        if (boards.complete()) bound = best.cost();
    }

    private boolean settled() {
        return bound >= best.cost();
    }

    /** No plan that cuts as much costs less money than this, in price units. */
    long moneyBound() {
        return Math.max(moneyBound, problem.moneyAtLeast(bound));
    }

    /** No plan that cuts as much costs less than this, money and boards together. */
    long bound() {
        return bound;
    }
}
