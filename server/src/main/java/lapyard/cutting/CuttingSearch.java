package lapyard.cutting;

import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.SearchBudget;

/** Improves a first plan as long as the effort lasts, and proves a lower bound for its cost. */
final class CuttingSearch {
    private static final long SEED = 20_260_501L;
    private static final int ROOT_ROUNDS = 100_000;
    /** Money that every plan costs less than. */
    static final long NO_RIVAL = Long.MAX_VALUE;
    /** How much more may go into sets of boards than into all else. */
    private static final int SETS_SHARE = 3;
    /** What may go into fewer boards once the money is proved, on top of as much as was spent before. */
    private static final long BOARDS_STEPS = 1000;

    /** What may go into boards filled one by one before any prices are sought. */
    private static final long FULL_STEPS = 200_000;

    /** Lengths and boards up to which patterns are priced; beyond, the first filling and the material bound stand. */
    private static final int MOST_ROWS = 1500;

    private final WholeProblem problem;
    private final SearchBudget budget;
    private final Effort effort;
    private final Filling filling;
    private final Relaxation known;
    private final long goal;
    private final long below;
    private final boolean moneyAlone;
    private Solution best;
    private boolean moneyProved;
    /** Of boards filled one by one; null where more may be wasted. */
    private FullBoards full;
    /** Null where sets of boards tell nothing: where all boards cost the same, or nothing. */
    private BoardSets sets;
    /** Steps spent on them. */
    private long inSets;
    private long bound;
    private long moneyBound;
    private long toldMoney = -1;
    private long toldBound = -1;

    /** @param known a plan of the same demand to start from, or null */
    CuttingSearch(WholeProblem problem, Solution known, Effort effort, SearchBudget budget) {
        this(problem, known, effort, budget, 0, NO_RIVAL);
    }

    /**
     * For who asks for the money alone: ends as soon as that of a plan is proved, however many boards it takes.
     *
     * @param below ends as soon as it is {@link #hopeless} to find a plan for less money than this, in price units
     */
    static CuttingSearch ofMoney(WholeProblem problem, Effort effort, SearchBudget budget, long below) {
        return new CuttingSearch(problem, null, null, effort, budget, 0, below, true);
    }

    /**
     * @param goal  ends as soon as a plan costs no more than this, or none can
     * @param below as for {@link #ofMoney}
     */
    CuttingSearch(WholeProblem problem, Solution known, Effort effort, SearchBudget budget, long goal, long below) {
        this(problem, known, null, effort, budget, goal, below, false);
    }

    /** As above for a given set of boards, with a relaxation of the same pieces and boards, however many of each. */
    static CuttingSearch on(WholeProblem problem, Relaxation relaxation, Effort effort, SearchBudget budget, long goal) {
        return new CuttingSearch(problem, null, relaxation, effort, budget, goal, NO_RIVAL, false);
    }

    private CuttingSearch(
            WholeProblem problem, Solution known, Relaxation relaxation, Effort effort, SearchBudget budget, long goal, long below, boolean moneyAlone) {
        this.problem = problem;
        this.known = relaxation;
        this.moneyAlone = moneyAlone;
        this.goal = goal;
        this.below = below;
        this.budget = budget;
        this.effort = effort;
        filling = new Filling(problem, budget);
        best = known;
    }

    /** The best plan found; its cost is at least {@link #bound()}. */
    Solution run() {
        Solution first = filling.best(problem.demand, problem.supply);
        if (best == null || first.cost() < best.cost()) best = first;
        bound = MaterialBound.cost(problem);
        moneyBound = problem.moneyAtLeast(bound);
        fullBoards(Math.min(effort.patience(), FULL_STEPS));
        tell();
        if (settled() || problem.items() + problem.stocks() > MOST_ROWS) return best;
        Relaxation relaxation = known == null ? new Relaxation(problem, budget) : known;
        for (Pattern pattern : best.patterns().keySet()) relaxation.add(pattern);
        relaxation.of(problem.demand, problem.supply);
        relaxation.solve(best.cost(), ROOT_ROUNDS);
        bound = Math.max(bound, relaxation.bound());
        moneyBound = problem.moneyAtLeast(bound);
        if (hopeless()) return best;
        if (problem.boardWeight > 1) {
            sets = BoardSets.ofMoney(problem, relaxation, budget, moneyBound);
            sets.pass(Math.min(best.money(), below), new Patience(budget, budget.steps()));
        }
        count();
        if (hopeless()) return best;
        tell();
        dives(new Diving(problem, relaxation, filling, budget));
        return best;
    }

    private void dives(Diving diving) {
        Random random = null;
        Patience patience = new Patience(budget, effort.patience());
        for (int turn = 0; !settled() && !patience.over(); turn++) {
            long before = best.cost();
            long from = budget.spent();
            best = diving.dive(best, random);
            long dived = budget.spent() - from;
            random = new Random(SEED + turn);
            fullBoards(1 + dived / SearchBudget.turns(1));
            if (sets != null && best.uncut() == 0 && !settled()) {
                long steps = budget.steps();
                boolean open = !moneyProved;
                Patience share = new Patience(budget, SETS_SHARE * (steps - inSets) - inSets);
                best = sets.round(best, open ? Math.min(best.money(), below) : best.cost(), open ? below : NO_RIVAL, effort, share);
                count();
                steps = budget.steps() - steps;
                inSets += steps;
                patience.skip(steps);
                // Once the money is proved, only as much again goes into fewer boards.
                if (open && moneyProved) patience = new Patience(budget, Math.min(effort.patience(), budget.steps() + BOARDS_STEPS));
            }
            if (best.cost() < before) patience.renew();
            tell();
        }
    }

    /** Nothing of a search on given boards, whose money is none. */
    private void tell() {
        long least = Math.min(moneyBound(), best.money());
        if (known != null || best.uncut() > 0 || best.money() == toldMoney && least == toldBound) return;
        toldMoney = best.money();
        toldBound = least;
        budget.progress().reached(problem.money(toldMoney), problem.money(toldBound));
    }

    /** What the sets of boards say of the money, and once that is proved, of the number. */
    private void count() {
        if (sets == null || best.uncut() > 0) return;
        if (!moneyProved) moneyBound = Math.max(moneyBound, sets.atLeast(best.money()));
        if (!moneyProved && moneyBound() >= best.money()) {
            moneyProved = true;
            sets = sets.ofNumber(best.money());
            sets.pass(best.cost(), new Patience(budget, BOARDS_STEPS));
        }
        if (moneyProved) bound = Math.max(bound, sets.atLeast(best.cost()));
    }

    /** Where next to nothing may be wasted, boards filled one by one refuse the least number or reach it. */
    private void fullBoards(long steps) {
        while (!settled() && FullBoards.suits(problem, bound)) {
            if (full == null) full = new FullBoards(problem, budget);
            Solution found = full.on(Math.toIntExact(bound), steps);
            if (found != null) best = found;
            if (found != null || !full.complete()) return;
            bound++;
            full = null;
        }
    }

    private boolean settled() {
        if (moneyAlone && best.uncut() == 0 && moneyBound() >= best.money()) return true;
        return bound >= best.cost() || goal > 0 && (best.cost() <= goal || bound > goal) || hopeless();
    }

    /** Whether no plan that cuts everything costs less than what is asked for. */
    boolean hopeless() {
        return moneyBound() >= below;
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
