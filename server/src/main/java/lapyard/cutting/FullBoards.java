package lapyard.cutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Whether so many boards hold everything where next to nothing may be wasted, so that each board must be filled nearly to its end: take
 * the piece that can be filled up in the fewest ways, try each, and go on with the rest. Where two pieces fill its board to the very end,
 * any other filling with one of the two may exchange what lies beside it for the second, so it need not be tried.
 *
 * @see "Martello and Toth, Discrete Applied Mathematics 28 (1990) 59-70: dominance; Korf, IJCAI 2003: board by board"
 */
final class FullBoards {
    /** At most this part of one board may be wasted in all. */
    private static final int WASTE_PART = 50;
    private static final int MOST_UNITS = 200_000;
    private static final int MOST_BOARDS = 1_000;
    private static final int MOST_WAYS = 64;
    private static final long FIRST_TURN = 1_000;
    private static final int MOST_KNOWN = 100_000;

    private final WholeProblem problem;
    private final CuttingBudget budget;
    private Patience patience;
    private final int types;
    private final int board;

    private final int[] left;
    private long waste;
    private final List<int[]> chosen = new ArrayList<>();
    private final Set<ExactFinish.State> hopeless = new HashSet<>();
    private boolean complete;
    /** Whether ways were left out because a piece had too many. */
    private boolean cut;
    /** One more than how often a piece was found without a way to fill its board. */
    private final int[] stuck;

    // the ways to fill up one piece's board
    private List<int[]> ways;
    private int lead;
    private int most;
    private int[] copies;
    private int[] order;
    private BigInteger[] reached;

    FullBoards(WholeProblem problem, CuttingBudget budget) {
        this.problem = problem;
        this.budget = budget;
        types = problem.items();
        board = problem.capacity[0];
        left = problem.demand.clone();
        stuck = new int[types];
        Arrays.fill(stuck, 1);
    }

    /** Whether boards of one kind, so many, would have to be full. */
    static boolean suits(WholeProblem problem, long boards) {
        if (problem.stocks() != 1 || problem.supply[0] != WholeProblem.UNLIMITED || problem.capacity[0] > MOST_UNITS || boards > MOST_BOARDS) return false;
        long spare = spare(problem, boards, problem.demand);
        return spare >= 0 && spare <= problem.capacity[0] / WASTE_PART;
    }

    private static long spare(WholeProblem problem, long boards, int[] pieces) {
        long spare = boards * problem.capacity[0];
        for (int i = 0; i < problem.items(); i++) spare -= (long) problem.weight[i] * pieces[i];
        return spare;
    }

    /**
     * A plan of so many boards, which must {@link #suits suit}, or null where none was found. Begins anew after twice as long each time, with
     * what it learned of the pieces that are hard to place.
     *
     * @param steps after which it gives up
     */
    Solution on(int boards, long steps) {
        Patience all = new Patience(budget, steps);
        for (long turn = FIRST_TURN; ; turn *= 2) {
            patience = new Patience(budget, Math.min(turn, steps));
            complete = true;
            if (fill(boards)) break;
            if (complete || all.over()) return null;
        }
        Solution plan = new Solution(problem);
        for (int[] each : chosen) plan.add(Pattern.of(0, each), 1);
        return plan;
    }

    /** Whether nothing was left untried, so that no plan takes so few boards. */
    boolean complete() {
        return complete && !cut;
    }

    private boolean fill(int boards) {
        if (boards == 0) return true;
        ExactFinish.State state = new ExactFinish.State(left.clone(), new int[] {boards});
        if (hopeless.contains(state)) return false;
        if (patience.over()) {
            complete = false;
            return false;
        }
        waste = spare(problem, boards, left);
        for (int[] way : fewest()) {
            for (int i = 0; i < types; i++) left[i] -= way[i];
            chosen.add(way);
            if (fill(boards - 1)) return true;
            chosen.remove(chosen.size() - 1);
            for (int i = 0; i < types; i++) left[i] += way[i];
            if (!complete && patience.over()) return false;
        }
        if (hopeless.size() < MOST_KNOWN) hopeless.add(state);
        return false;
    }

    /** The ways to fill a board with the piece that has the fewest; none where some piece has none. */
    private List<int[]> fewest() {
        List<int[]> best = null;
        List<int[]> first = List.of();
        double least = MOST_WAYS;
        for (int item = 0; item < types; item++) {
            if (left[item] == 0) continue;
            ways(item, (int) Math.min(MOST_WAYS, Math.max(1, Math.ceil(least * stuck[item]) - 1)));
            if (ways.isEmpty()) stuck[item]++;
            if (ways.size() <= 1) return ways;
            if (first.isEmpty()) first = ways;
            if (ways.size() > most) continue;
            best = ways;
            least = ways.size() / (double) stuck[item];
        }
        if (best != null) return best;
        cut = true;
        return first;
    }

    /** Lists one more than {@code atMost} where there are more. */
    private void ways(int item, int atMost) {
        lead = item;
        ways = new ArrayList<>();
        most = atMost;
        copies = new int[types];
        copies[lead] = 1;
        left[lead]--;
        budget.spend(16L * types);
        int room = board - problem.weight[lead];
        if (!byOne(room)) {
            boolean[] dominated = byTwo(room);
            if (ways.size() <= most) byMore(room, dominated);
        }
        left[lead]++;
    }

    /** One piece that fills the board to the end is as good as any that could lie there. */
    private boolean byOne(int room) {
        for (int i = 0; i < types; i++) {
            if (problem.weight[i] != room || left[i] == 0) continue;
            copies[i]++;
            ways.add(copies.clone());
            return true;
        }
        return false;
    }

    private boolean[] byTwo(int room) {
        boolean[] used = new boolean[types];
        int low = types - 1;
        for (int high = 0; high <= low; high++) {
            while (low > high && problem.weight[low] + problem.weight[high] < room) low--;
            if (problem.weight[low] + problem.weight[high] != room || left[low] == 0 || left[high] == 0 || low == high && left[low] < 2) continue;
            int[] way = copies.clone();
            way[high]++;
            way[low]++;
            ways.add(way);
            used[high] = true;
            used[low] = true;
        }
        return used;
    }

    private void byMore(int room, boolean[] dominated) {
        int count = 0;
        order = new int[types];
        for (int i = 0; i < types; i++) if (left[i] > 0 && !dominated[i] && problem.weight[i] <= room) order[count++] = i;
        reached = new BigInteger[count + 1];
        reached[count] = BigInteger.ONE;
        BigInteger all = BigInteger.ONE.shiftLeft(room + 1).subtract(BigInteger.ONE);
        for (int at = count - 1; at >= 0; at--) {
            BigInteger sums = reached[at + 1];
            int there = Math.min(left[order[at]], room / problem.weight[order[at]]);
            for (int part = 1; there > 0; part *= 2) {
                int here = Math.min(part, there);
                there -= here;
                sums = sums.or(sums.shiftLeft(here * problem.weight[order[at]])).and(all);
                budget.spend(room / 8 + 300);
            }
            reached[at] = sums;
        }
        extend(0, room);
    }

    private void extend(int at, int room) {
        if (ways.size() > most) return;
        budget.spend(20);
        boolean near = false;
        for (int spare = 0; !near && spare <= Math.min(waste, room); spare++) near = reached[at].testBit(room - spare);
        if (!near) return;
        if (at == reached.length - 1) {
            budget.spend(2L * types);
            for (int i = 0; i < types; i++) if (problem.weight[i] <= room && copies[i] < left[i] + (i == lead ? 1 : 0)) return;
            ways.add(copies.clone());
            return;
        }
        int item = order[at];
        int before = copies[item];
        for (int n = Math.min(left[item], room / problem.weight[item]); n >= 0; n--) {
            copies[item] = before + n;
            extend(at + 1, room - n * problem.weight[item]);
        }
        copies[item] = before;
    }
}
