package lapyard.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import lapyard.working.Effort;
import lapyard.working.SearchBudget;

/**
 * Sets of whole boards in the order of their cost. Whatever each piece is said to be worth, the boards of a plan must be able to hold the
 * worth of all pieces, so sets that cannot are passed over. Whether one that can does hold the pieces is asked of the fractional plan
 * on just these boards: where that says no, its prices are one more worth to ask of all sets to come. Where it says yes, the pieces are
 * cut from that set in earnest. The first set that holds them is the cheapest there is, if all before it were refuted.
 *
 * @see "Benders, Numerische Mathematik 4 (1962) 238-252"
 */
final class BoardSets {
    private static final int ROUNDS = 400;
    private static final int MOST_SETS = 20_000;
    private static final int MOST_NODES = 500_000;
    /** One listing may take this part of the whole search, whatever patience is left. */
    private static final int LIST_SHARE = 32;
    /** The first range of costs to list is this part of the bound. */
    private static final int FIRST_RANGE = 4096;
    /** Steps without a gain after which a set is left open for the first time; four times as many each time after. */
    private static final long FIRST_PATIENCE = 2_000;

    private final WholeProblem problem;
    private final WholeProblem given;
    private final SearchBudget budget;
    /** Of the pieces on given boards; made when it is first asked. */
    private Relaxation relaxation;
    private final List<Worth> worths;
    private final long[] cost;
    /** Boards that cost nothing are in every set. */
    private final int[] free;
    /** Boards that cost something, those on hand first, then by how little they hold for their cost. */
    private final int[] order;
    private final int onHand;

    private List<Boards> listed = new ArrayList<>();
    private int at;
    private long from;
    private long range;
    private boolean stuck;
    private List<Open> open = new ArrayList<>();

    /** What each board can hold of a worth given to the pieces, and what all pieces are worth together. */
    private record Worth(long[] board, long need) {
        private static final int BITS = 36;

        /** Brought down to 36 bits, so that sums stay exact: boards round up, the need rounds down. */
        Worth {
            int over = Math.max(0, 64 - Long.numberOfLeadingZeros(need) - BITS);
            board = Arrays.stream(board).map(all -> -(-all >> over)).toArray();
            need >>= over;
        }

        /** What these boards lack; 0 or less where they can hold it. */
        long lacking(int[] counts) {
            long left = need;
            for (int k = 0; k < counts.length && left > 0; k++) left -= board[k] * counts[k];
            return left;
        }
    }

    private record Boards(int[] counts, long cost, long number) {}

    private record Open(Boards boards, long patience) {}

    private BoardSets(WholeProblem problem, WholeProblem given, SearchBudget budget, Relaxation relaxation, List<Worth> worths, long[] cost, long from) {
        this.problem = problem;
        this.given = given;
        this.budget = budget;
        this.relaxation = relaxation;
        this.worths = worths;
        this.cost = cost;
        this.from = from;
        range = Math.max(1, from / FIRST_RANGE);
        free = new int[cost.length];
        for (int k = 0; k < cost.length; k++) if (cost[k] == 0) free[k] = given.supply[k];
        Worth first = worths.get(0);
        order = IntStream.range(0, cost.length).filter(k -> cost[k] > 0).boxed()
                .sorted(Comparator.<Integer>comparingInt(k -> bought(k) ? 1 : 0).thenComparingDouble(k -> first.board()[k] / (double) cost[k]))
                .mapToInt(k -> k).toArray();
        onHand = (int) IntStream.of(order).filter(k -> !bought(k)).count();
    }

    private boolean bought(int stock) {
        return problem.supply[stock] == WholeProblem.UNLIMITED;
    }

    /**
     * In the order of their money.
     *
     * @param root       solved for the whole problem
     * @param moneyBound price units known to be needed
     */
    static BoardSets ofMoney(WholeProblem problem, Relaxation root, SearchBudget budget, long moneyBound) {
        long[] lengths = Arrays.stream(problem.capacity).asLongStream().toArray();
        long length = 0;
        for (int i = 0; i < problem.items(); i++) length += (long) problem.weight[i] * problem.demand[i];
        List<Worth> worths = new ArrayList<>(List.of(new Worth(root.boardWorth(), root.wholeWorth()), new Worth(lengths, length)));
        WholeProblem given = problem.given();
        return new BoardSets(problem, given, budget, null, worths, problem.price, moneyBound);
    }

    /** Those of this money, which is proved, in the order of their number. */
    BoardSets ofNumber(long money) {
        return new BoardSets(problem, given, budget, relaxation, worths, problem.cost, money * problem.boardWeight);
    }

    /** No plan costs less than this; at most {@code below}. */
    long atLeast(long below) {
        long least = at < listed.size() ? listed.get(at).cost() : from;
        for (Open one : open) least = Math.min(least, one.boards().cost());
        return Math.min(least, below);
    }

    /** Passes over all sets that cannot hold the worths known, without asking for more. */
    void pass(long below, Patience patience) {
        next(below, patience);
    }

    /**
     * Tries the sets that are open once more and then goes on to dearer ones, up to the first that holds the pieces.
     *
     * @param below sets that cost as much are of no interest
     * @param rival ends as soon as no plan costs less than this
     */
    Solution round(Solution best, long below, long rival, Effort effort, Patience patience) {
        List<Open> again = open;
        open = new ArrayList<>();
        for (int i = 0; i < again.size(); i++) {
            Open one = again.get(i);
            boolean over = patience.over();
            Solution found = over ? best : cut(one.boards(), one.patience(), effort);
            if (found != null) {
                open.addAll(again.subList(over ? i : i + 1, again.size()));
                return found;
            }
        }
        for (Boards set = next(below, patience); set != null && !patience.over(); set = next(below, patience)) {
            if (atLeast(below) >= rival) return best;
            at++;
            if (refuted(set.counts())) continue;
            Solution found = cut(set, FIRST_PATIENCE, effort);
            if (found != null) return found;
        }
        return best;
    }

    /** A plan on these boards, or null where none was found; the set stays open where there may be one. */
    private Solution cut(Boards set, long steps, Effort effort) {
        long mine = Math.min(steps, effort.patience());
        CuttingSearch search = CuttingSearch.on(
                given.withSupply(set.counts()), relaxation, new Effort(effort.steps(), effort.limit(), mine), budget, set.number());
        Solution found = search.run();
        if (found.uncut() > 0) {
            if (search.bound() <= set.number()) open.add(new Open(set, 4 * steps));
            return null;
        }
        Solution plan = new Solution(problem);
        found.patterns().forEach(plan::add);
        return plan;
    }

    private boolean refuted(int[] counts) {
        long boards = IntStream.of(counts).asLongStream().sum();
        if (relaxation == null) relaxation = new Relaxation(given, budget);
        relaxation.of(given.demand, counts);
        relaxation.solve(boards + 1, ROUNDS);
        if (relaxation.bound() <= boards) return false;
        worths.add(new Worth(relaxation.anyBoardWorth(), relaxation.wholeWorth()));
        return true;
    }

    /** The cheapest set not yet looked at that holds every worth; null where none costs less than this, or none was found in time. */
    private Boards next(long below, Patience patience) {
        while (true) {
            for (; at < listed.size(); at++) {
                Boards set = listed.get(at);
                if (set.cost() >= below) return null;
                budget.spend((long) worths.size() * cost.length);
                if (worths.stream().allMatch(worth -> worth.lacking(set.counts()) <= 0)) return set;
            }
            if (from >= below || stuck || patience.over()) return null;
            list(below, patience);
        }
    }

    // One listing.

    private long end;
    private long nodes;
    private long mostNodes;
    private double[][] rate;
    private double[][] beyond;
    private long[][] board;
    private long[] left;
    private int[] now;

    /** Lists all sets of the next range of costs that hold every worth. */
    private void list(long below, Patience patience) {
        int turnsANode = 4 * worths.size() + 8;
        mostNodes = Math.min(MOST_NODES, Math.max(patience.left(), budget.turns() / LIST_SHARE) / turnsANode);
        end = Math.min(below, from + range);
        listed = new ArrayList<>();
        at = 0;
        nodes = 1;
        rates();
        now = free.clone();
        if (mayHold(0, end - 1)) choose(0, 0);
        budget.spend(nodes * turnsANode);
        if (nodes > mostNodes || listed.size() > MOST_SETS) {
            listed.clear();
            stuck = range == 1;
            range = Math.max(1, range / 8);
            return;
        }
        if (listed.size() < MOST_SETS / 16 && nodes < mostNodes / 4) range *= 4;
        listed.sort(Comparator.comparingLong(Boards::cost).thenComparingLong(Boards::number));
        from = end;
    }

    /** For each worth and place in the order: what one of cost can hold at most on boards bought from there on, and what those on hand hold beyond that. */
    private void rates() {
        int cuts = worths.size();
        rate = new double[cuts][order.length + 1];
        beyond = new double[cuts][order.length + 1];
        board = worths.stream().map(Worth::board).toArray(long[][]::new);
        left = new long[cuts];
        for (int j = 0; j < cuts; j++) {
            Worth worth = worths.get(j);
            left[j] = worth.lacking(free);
            for (int place = order.length - 1; place >= 0; place--) {
                int k = order[place];
                double own = worth.board()[k] / (double) cost[k];
                rate[j][place] = place < onHand ? rate[j][place + 1] : Math.max(rate[j][place + 1], own);
                double more = place < onHand ? Math.max(0, own - rate[j][place]) * cost[k] * problem.supply[k] : 0;
                beyond[j][place] = beyond[j][place + 1] + more;
            }
        }
    }

    /** One that {@link #mayHold} what is left with the boards from this place on. */
    private void choose(int place, long sum) {
        if (place == order.length) {
            if (sum >= from) listed.add(new Boards(now.clone(), sum, IntStream.of(now).asLongStream().sum()));
            return;
        }
        int k = order[place];
        long each = cost[k];
        long room = end - 1 - sum;
        long dearEnough = place == order.length - 1 ? from - sum : 0;
        int n = (int) Math.min(given.supply[k], room / each);
        for (int j = 0; j < left.length; j++) left[j] -= n * board[j][k];
        for (; n >= 0 && n * each >= dearEnough; n--) {
            now[k] = n;
            if (++nodes <= mostNodes && listed.size() <= MOST_SETS && mayHold(place + 1, room - n * each)) choose(place + 1, sum + n * each);
            for (int j = 0; j < left.length; j++) left[j] += board[j][k];
        }
        for (int j = 0; j < left.length; j++) left[j] += n * board[j][k];
        now[k] = 0;
    }

    /** Whether boards from this place on can hold all that is left, for so much money. */
    private boolean mayHold(int place, long room) {
        for (int j = 0; j < left.length; j++) {
            if ((rate[j][place] * room + beyond[j][place]) * (1 + 1e-9) + 1 < left[j]) return false;
        }
        return true;
    }
}
