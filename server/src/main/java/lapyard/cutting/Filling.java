package lapyard.cutting;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * First answers in no time: boards filled one after another, always the longest piece that still fits, each filled
 * board then swapped for the cheapest that holds the same pieces.
 */
final class Filling {
    private final WholeProblem problem;
    private final CuttingBudget budget;
    /** Items longest first, of equal ones those that need more good faces. */
    private final int[] byWeight;

    Filling(WholeProblem problem, CuttingBudget budget) {
        this.problem = problem;
        this.budget = budget;
        byWeight = IntStream.range(0, problem.items())
                .boxed()
                .sorted(Comparator.<Integer>comparingInt(i -> -problem.weight[i]).thenComparingInt(i -> -problem.itemFaces[i]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** The cheapest over opening each board kind throughout, and over opening whichever costs least for what it takes. */
    Solution best(int[] demand, int[] supply) {
        Solution best = fill(demand, supply, -1);
        for (int k = 0; k < problem.stocks(); k++) {
            if (supply[k] == 0 || problem.supply[k] != WholeProblem.UNLIMITED && problem.stocks() > 12) continue;
            Solution here = fill(demand, supply, k);
            if (here.cost() < best.cost()) best = here;
        }
        return best;
    }

    /** @param opening the board to open wherever it can hold the longest piece left, or -1 for the best value each time */
    Solution fill(int[] demand, int[] supply, int opening) {
        int[] left = demand.clone();
        int[] boards = supply.clone();
        Solution solution = new Solution(problem);
        while (true) {
            int lead = lead(left);
            if (lead < 0) return solution;
            Pattern chosen = null;
            double least = Double.POSITIVE_INFINITY;
            boolean fixed = opening >= 0 && boards[opening] > 0 && problem.holds(opening, lead);
            for (int k = 0; k < problem.stocks(); k++) {
                if (boards[k] == 0 || !problem.holds(k, lead) || fixed && k != opening) continue;
                Pattern pattern = cheapest(longestFirst(left, k, lead), boards);
                double each = (double) problem.cost[pattern.stock()] / pattern.weight(problem);
                if (each < least) {
                    least = each;
                    chosen = pattern;
                }
            }
            if (chosen == null) {
                solution.add(new Pattern(Pattern.NONE, new int[] {lead}, new int[] {1}), left[lead]);
                left[lead] = 0;
                continue;
            }
            int times = problem.supply[chosen.stock()] == WholeProblem.UNLIMITED
                    ? Integer.MAX_VALUE
                    : boards[chosen.stock()];
            for (int i = 0; i < chosen.items().length; i++) {
                times = Math.min(times, left[chosen.items()[i]] / chosen.counts()[i]);
            }
            for (int i = 0; i < chosen.items().length; i++) left[chosen.items()[i]] -= times * chosen.counts()[i];
            if (problem.supply[chosen.stock()] != WholeProblem.UNLIMITED) boards[chosen.stock()] -= times;
            solution.add(chosen, times);
        }
    }

    /** The same pieces on the cheapest board that holds them, the shortest of equal ones. */
    Pattern cheapest(Pattern pattern, int[] boards) {
        long weight = pattern.weight(problem);
        int faces = pattern.goodFaces(problem);
        int best = pattern.stock();
        for (int k = 0; k < problem.stocks(); k++) {
            if (boards[k] == 0 || problem.capacity[k] < weight || problem.stockFaces[k] < faces) continue;
            long dearer = problem.cost[k] - problem.cost[best];
            if (dearer < 0 || dearer == 0 && problem.capacity[k] < problem.capacity[best]) best = k;
        }
        return pattern.on(best);
    }

    /** Pieces that only boards on hand can hold go first, then good faces, then the longest. */
    private int lead(int[] left) {
        int lead = -1;
        for (int i = 0; i < left.length; i++) {
            if (left[i] > 0 && (lead < 0 || before(i, lead))) lead = i;
        }
        return lead;
    }

    private boolean before(int a, int b) {
        boolean buyableA = problem.buyable(a);
        boolean buyableB = problem.buyable(b);
        if (buyableA != buyableB) return !buyableA;
        if (problem.itemFaces[a] != problem.itemFaces[b]) return problem.itemFaces[a] > problem.itemFaces[b];
        return problem.weight[a] > problem.weight[b];
    }

    private Pattern longestFirst(int[] left, int stock, int lead) {
        int[] copies = new int[left.length];
        int room = problem.capacity[stock] - problem.weight[lead];
        copies[lead] = 1;
        for (int i : byWeight) {
            if (problem.weight[i] > room || problem.stockFaces[stock] < problem.itemFaces[i]) continue;
            int here = Math.min(left[i] - copies[i], room / problem.weight[i]);
            if (here <= 0) continue;
            copies[i] += here;
            room -= here * problem.weight[i];
        }
        budget.spend(left.length * 2L);
        return Pattern.of(stock, copies);
    }
}
