package lapyard.cutting;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import lapyard.working.SearchBudget;

/**
 * First answers in no time: boards filled one after another, always the longest piece that still fits, each filled
 * board then swapped for the cheapest that holds the same pieces.
 */
final class Filling {
    private final WholeProblem problem;
    private final SearchBudget budget;
    /** Items longest first, of equal ones those that need more good faces. */
    private final int[] byWeight;
    /** Items that only boards on hand can hold first, then those that need more good faces, then the longest. */
    private final int[] leads;

    // The pieces on the board that is looked at, and on the best board so far.
    private int[] copies;
    private int[] bestCopies;

    Filling(WholeProblem problem, SearchBudget budget) {
        this.problem = problem;
        this.budget = budget;
        Comparator<Integer> longest = Comparator.comparingInt(i -> -problem.weight[i]);
        Comparator<Integer> faces = Comparator.comparingInt(i -> -problem.itemFaces[i]);
        byWeight = sorted(longest.thenComparing(faces));
        leads = sorted(Comparator.<Integer, Boolean>comparing(problem::buyable).thenComparing(faces).thenComparing(longest));
        copies = new int[problem.items()];
        bestCopies = new int[problem.items()];
    }

    private int[] sorted(Comparator<Integer> order) {
        return IntStream.range(0, problem.items()).boxed().sorted(order).mapToInt(Integer::intValue).toArray();
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
        int[] wanted = byWeight.clone();
        int wants = wanted.length;
        for (int at = 0; at < leads.length; ) {
            int lead = leads[at];
            if (left[lead] == 0) {
                at++;
                continue;
            }
            wants = stillWanted(wanted, wants, left);
            double least = Double.POSITIVE_INFINITY;
            boolean fixed = opening >= 0 && boards[opening] > 0 && problem.holds(opening, lead);
            int board = Pattern.NONE;
            for (int k = 0; k < problem.stocks(); k++) {
                if (boards[k] == 0 || !problem.holds(k, lead) || fixed && k != opening) continue;
                long weight = longestFirst(left, k, lead, wanted, wants);
                int on = cheapest(k, weight, faces(wanted, wants), boards);
                double each = (double) problem.cost[on] / weight;
                if (each < least) {
                    least = each;
                    board = on;
                    int[] kept = bestCopies;
                    bestCopies = copies;
                    copies = kept;
                }
            }
            if (board == Pattern.NONE) {
                solution.add(new Pattern(Pattern.NONE, new int[] {lead}, new int[] {1}), left[lead]);
                left[lead] = 0;
                continue;
            }
            Pattern chosen = Pattern.of(board, bestCopies);
            solution.add(chosen, cutAsOftenAsAsked(chosen, left, boards));
        }
        return solution;
    }

    /** Takes the pieces of a pattern, and its boards where those are counted, for as long as both are there; returns how often. */
    private int cutAsOftenAsAsked(Pattern chosen, int[] left, int[] boards) {
        boolean bought = problem.supply[chosen.stock()] == WholeProblem.UNLIMITED;
        int times = bought ? Integer.MAX_VALUE : boards[chosen.stock()];
        for (int i = 0; i < chosen.items().length; i++) {
            times = Math.min(times, left[chosen.items()[i]] / chosen.counts()[i]);
        }
        for (int i = 0; i < chosen.items().length; i++) left[chosen.items()[i]] -= times * chosen.counts()[i];
        if (!bought) boards[chosen.stock()] -= times;
        return times;
    }

    private static int stillWanted(int[] wanted, int wants, int[] left) {
        int still = 0;
        for (int i = 0; i < wants; i++) if (left[wanted[i]] > 0) wanted[still++] = wanted[i];
        return still;
    }

    /** The same pieces on the cheapest board that holds them, the shortest of equal ones. */
    Pattern cheapest(Pattern pattern, int[] boards) {
        return pattern.on(cheapest(pattern.stock(), pattern.weight(problem), pattern.goodFaces(problem), boards));
    }

    private int cheapest(int stock, long weight, int faces, int[] boards) {
        int best = stock;
        for (int k = 0; k < problem.stocks(); k++) {
            if (boards[k] == 0 || problem.capacity[k] < weight || problem.stockFaces[k] < faces) continue;
            long dearer = problem.cost[k] - problem.cost[best];
            if (dearer < 0 || dearer == 0 && problem.capacity[k] < problem.capacity[best]) best = k;
        }
        return best;
    }

    /** Good faces that the pieces of {@link #copies} need. */
    private int faces(int[] wanted, int wants) {
        int faces = 0;
        for (int i = 0; i < wants; i++) if (copies[wanted[i]] > 0) faces = Math.max(faces, problem.itemFaces[wanted[i]]);
        return faces;
    }

    /** Lays the lead and then always the longest that still fits into {@link #copies}; what they weigh together. */
    private long longestFirst(int[] left, int stock, int lead, int[] wanted, int wants) {
        Arrays.fill(copies, 0);
        int room = problem.capacity[stock] - problem.weight[lead];
        copies[lead] = 1;
        for (int at = 0; at < wants; at++) {
            int i = wanted[at];
            if (problem.weight[i] > room || problem.stockFaces[stock] < problem.itemFaces[i]) continue;
            int here = Math.min(left[i] - copies[i], room / problem.weight[i]);
            copies[i] += here;
            room -= here * problem.weight[i];
        }
        budget.spend(left.length * 2L);
        return (long) problem.capacity[stock] - room;
    }
}
