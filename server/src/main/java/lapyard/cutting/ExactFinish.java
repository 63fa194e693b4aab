package lapyard.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Every plan that could still be cheaper, for small jobs: take the piece with the fewest full boards that it can lie on,
 * try each of them, and go on with the rest, as long as the exact bound of the rest allows. Of boards taken one after
 * the other for the same piece the fuller comes first, so no set of boards is tried in two orders.
 */
final class ExactFinish {
    private static final int ROUNDS = 200;
    private static final int MOST_CHOICES = 20_000;
    private static final int MOST_TO_COUNT = 2_000;
    private static final int MOST_KNOWN = 300_000;

    private final WholeProblem problem;
    private final Relaxation relaxation;
    private final Filling filling;
    private final CuttingBudget budget;
    private final Patience patience;

    private final Map<State, Long> seen = new HashMap<>();
    private final List<Pattern> chosen = new ArrayList<>();
    private Solution best;
    private boolean complete;

    record State(int[] demand, int[] supply) {
        @Override
        public boolean equals(Object other) {
            return other instanceof State s && Arrays.equals(demand, s.demand) && Arrays.equals(supply, s.supply);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(demand) * 31 + Arrays.hashCode(supply);
        }
    }

    private record Choice(Pattern pattern, long leastCost) {}

    /** @param patience when it runs out the search gives up */
    ExactFinish(WholeProblem problem, Relaxation relaxation, Filling filling, CuttingBudget budget, Patience patience) {
        this.problem = problem;
        this.relaxation = relaxation;
        this.filling = filling;
        this.budget = budget;
        this.patience = patience;
    }

    /**
     * @param demand    what is to be cut, a part of the problem or all of it
     * @param supply    the boards there are for it
     * @param known     a plan for the same pieces
     * @return the best plan found, {@code known} if none is better
     */
    Solution improve(int[] demand, int[] supply, Solution known) {
        best = known;
        complete = true;
        seen.clear();
        explore(demand, supply, 0, -1, null);
        return best;
    }

    /** Whether the last search left nothing out, so that what it returned is proved best. */
    boolean complete() {
        return complete;
    }

    private void explore(int[] demand, int[] supply, long cost, int lastLead, int[] lastCopies) {
        if (!complete) return;
        if (longest(demand) < 0) {
            record(new Solution(problem));
            return;
        }
        if (patience.over()) {
            complete = false;
            return;
        }
        State state = new State(demand, supply);
        Long before = seen.get(state);
        if (before != null && before <= cost) return;
        relaxation.of(demand, supply);
        relaxation.solve(best.cost() - cost, ROUNDS);
        if (relaxation.bound() >= best.cost() - cost) return;
        if (record(filling.best(demand, supply))) patience.renew();
        int lead = scarcest(demand, supply, cost);
        if (lead != lastLead && (before != null || seen.size() < MOST_KNOWN)) seen.put(state, cost);
        List<Choice> here = choices(demand, supply, cost, lead, lead == lastLead ? lastCopies : null);
        if (here.size() > MOST_CHOICES) {
            complete = false;
            return;
        }
        if (!problem.buyable(lead)) {
            Pattern uncut = new Pattern(Pattern.NONE, new int[] {lead}, new int[] {1});
            here.add(new Choice(uncut, relaxation.leastCostUncut(lead)));
        }
        here.sort(Comparator.comparingLong(Choice::leastCost));
        for (Choice choice : here) {
            if (!complete) return;
            if (cost + choice.leastCost() < best.cost()) take(choice.pattern(), demand, supply, cost, lead);
        }
    }

    /** Goes on with what this pattern leaves. */
    private void take(Pattern pattern, int[] demand, int[] supply, long cost, int lead) {
        int[] demandLeft = demand.clone();
        int[] copies = new int[demand.length];
        for (int i = 0; i < pattern.items().length; i++) {
            demandLeft[pattern.items()[i]] -= pattern.counts()[i];
            copies[pattern.items()[i]] = pattern.counts()[i];
        }
        chosen.add(pattern);
        int board = pattern.stock();
        if (board == Pattern.NONE) {
            explore(demandLeft, supply, cost + problem.uncutCost[lead], -1, null);
        } else {
            int[] supplyLeft = supply;
            if (problem.supply[board] != WholeProblem.UNLIMITED) {
                supplyLeft = supply.clone();
                supplyLeft[board]--;
            }
            explore(demandLeft, supplyLeft, cost + problem.cost[board], lead, copies);
        }
        chosen.remove(chosen.size() - 1);
    }

    /** Keeps the chosen boards with this rest where that is the cheapest plan so far. */
    private boolean record(Solution rest) {
        Solution found = new Solution(problem);
        for (Pattern pattern : chosen) found.add(pattern, 1);
        found.addAll(rest);
        if (found.cost() >= best.cost()) return false;
        best = found;
        return true;
    }

    private int longest(int[] demand) {
        int lead = -1;
        for (int i = 0; i < demand.length; i++) {
            if (demand[i] > 0 && (lead < 0 || problem.weight[i] > problem.weight[lead])) lead = i;
        }
        return lead;
    }

    // The choices at one node.

    private int[] order;
    private int[] copies;
    private int[] left;
    private int[] bar;
    private int stock;
    private int first;
    private long leastWorth;
    private long zeroWorthCost;
    private List<Choice> choices;
    private int[] boardsLeft;

    /** Full boards with the lead piece that the prices of the last round allow, the most promising first. */
    private List<Choice> choices(int[] demand, int[] supply, long cost, int lead, int[] notAfter) {
        choices = new ArrayList<>();
        left = demand;
        bar = notAfter;
        boardsLeft = supply;
        first = lead;
        List<Integer> items = new ArrayList<>();
        for (int i = 0; i < demand.length; i++) if (demand[i] > 0 && i != lead) items.add(i);
        items.sort(Comparator.comparingInt((Integer i) -> problem.weight[i]).reversed());
        if (lead >= 0) items.add(0, lead);
        order = items.stream().mapToInt(Integer::intValue).toArray();
        for (stock = 0; stock < problem.stocks(); stock++) {
            if (supply[stock] == 0 || lead >= 0 && !problem.holds(stock, lead)) continue;
            copies = new int[demand.length];
            leastWorth = relaxation.leastWorth(stock, best.cost() - cost);
            zeroWorthCost = relaxation.leastWorth(stock, 1);
            extend(0, problem.capacity[stock], 0);
        }
        return choices;
    }

    /** The piece that the fewest full boards allow for: what must go somewhere is settled where the choice is least. */
    private int scarcest(int[] demand, int[] supply, long cost) {
        int[] boards = new int[demand.length];
        List<Choice> all = choices(demand, supply, cost, -1, null);
        if (all.size() > MOST_TO_COUNT) return longest(demand);
        for (Choice choice : all) for (int item : choice.pattern().items()) boards[item]++;
        int lead = -1;
        for (int i = 0; i < demand.length; i++) {
            if (demand[i] == 0) continue;
            if (lead < 0 || boards[i] < boards[lead]
                    || boards[i] == boards[lead] && problem.weight[i] > problem.weight[lead]) lead = i;
        }
        return lead;
    }

    private void extend(int at, int room, long worth) {
        if (choices.size() > (first < 0 ? MOST_TO_COUNT : MOST_CHOICES)) return;
        budget.spend(20);
        if (worth + relaxation.knapsack().atMost(room) < leastWorth) return;
        if (at == order.length) {
            keep(room, worth);
            return;
        }
        int item = order[at];
        int most = problem.holds(stock, item) ? Math.min(left[item], room / problem.weight[item]) : 0;
        for (int n = most; n >= (at == 0 && first >= 0 ? 1 : 0); n--) {
            copies[item] = n;
            extend(at + 1, room - n * problem.weight[item], worth + n * relaxation.worth()[item]);
        }
        copies[item] = 0;
    }

    private void keep(int room, long worth) {
        for (int item : order) {
            if (problem.weight[item] <= room && copies[item] < left[item] && problem.holds(stock, item)) return;
        }
        if (bar != null && Arrays.compare(copies, bar) > 0) return;
        long weight = (long) problem.capacity[stock] - room;
        Pattern pattern = Pattern.of(stock, copies);
        int faces = pattern.goodFaces(problem);
        for (int k = 0; k < problem.stocks(); k++) {
            boolean cheaper = problem.cost[k] < problem.cost[stock] && boardsLeft[k] == WholeProblem.UNLIMITED;
            if (cheaper && problem.capacity[k] >= weight && problem.stockFaces[k] >= faces) return;
        }
        choices.add(new Choice(pattern, relaxation.leastCost(zeroWorthCost - worth)));
    }
}
