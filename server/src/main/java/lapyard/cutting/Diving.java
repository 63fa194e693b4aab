package lapyard.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import lapyard.working.SearchBudget;

/**
 * Whole plans out of the fractional one: keep the whole part of every pattern, or the fullest fraction when there is
 * no whole part, then price afresh for what is left to cut, until nothing is. Later dives lean elsewhere.
 */
record Diving(WholeProblem problem, Relaxation relaxation, Filling filling, SearchBudget budget) {
    private static final int ROUNDS_A_STEP = 12;

    /**
     * @param best   a plan of the problem
     * @param random how this dive leans; null for the plain first dive
     * @return a plan cheaper than {@code best}, or {@code best}
     */
    Solution dive(Solution best, Random random) {
        int[] left = problem.demand.clone();
        int[] boards = problem.supply.clone();
        Solution soFar = new Solution(problem);
        while (true) {
            relaxation.of(left, boards);
            relaxation.solve(best.cost() - soFar.cost(), ROUNDS_A_STEP);
            if (soFar.cost() + relaxation.bound() >= best.cost() || budget.over()) return best;
            Solution rest = filling.best(left, boards);
            if (soFar.cost() + rest.cost() < best.cost()) {
                best = new Solution(soFar);
                best.addAll(rest);
            }
            if (!keep(relaxation.shares(), left, boards, soFar, random)) return best;
            boolean done = true;
            for (int d : left) done &= d == 0;
            if (done) return soFar.cost() < best.cost() ? soFar : best;
        }
    }

    private boolean keep(
            List<Relaxation.Share> shares, int[] demand, int[] supply, Solution soFar, Random random) {
        boolean any = false;
        List<Relaxation.Share> whole = new ArrayList<>(shares);
        whole.removeIf(s -> s.amount() < 1 - 1e-6);
        whole.sort(Comparator.comparingDouble(Relaxation.Share::amount).reversed());
        for (Relaxation.Share share : whole) {
            int times = (int) Math.floor(share.amount() + 1e-6);
            if (random != null && random.nextInt(4) == 0) times--;
            any |= take(share.pattern(), times, demand, supply, soFar) > 0;
        }
        if (any) return true;
        Relaxation.Share chosen = null;
        double most = 0;
        for (Relaxation.Share share : shares) {
            double amount = share.amount() - Math.floor(share.amount());
            if (share.amount() >= 1 - 1e-6) amount = 1;
            double lean = random == null ? amount : amount * (0.6 + 0.4 * random.nextDouble());
            if (lean > most) {
                most = lean;
                chosen = share;
            }
        }
        return chosen != null && take(chosen.pattern(), 1, demand, supply, soFar) > 0;
    }

    /** Takes the pattern, cut down to what is still wanted, on the cheapest board that holds what remains of it. */
    private int take(Pattern pattern, int most, int[] demand, int[] supply, Solution soFar) {
        int taken = 0;
        while (taken < most) {
            int[] copies = new int[problem.items()];
            int times = most - taken;
            int pieces = 0;
            for (int i = 0; i < pattern.items().length; i++) {
                int item = pattern.items()[i];
                copies[item] = Math.min(pattern.counts()[i], demand[item]);
                pieces += copies[item];
                if (copies[item] > 0) times = Math.min(times, demand[item] / copies[item]);
            }
            if (pieces == 0) break;
            Pattern cut = Pattern.of(pattern.stock(), copies);
            if (pattern.stock() != Pattern.NONE) {
                if (supply[pattern.stock()] == 0) break;
                if (pieces < pattern.pieces()) cut = filling.cheapest(cut, supply);
                if (problem.supply[cut.stock()] != WholeProblem.UNLIMITED) {
                    times = Math.min(times, supply[cut.stock()]);
                    supply[cut.stock()] -= times;
                }
            }
            for (int i = 0; i < cut.items().length; i++) demand[cut.items()[i]] -= times * cut.counts()[i];
            soFar.add(cut, times);
            taken += times;
        }
        return taken;
    }
}
