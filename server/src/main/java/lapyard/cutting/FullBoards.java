package lapyard.cutting;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import lapyard.working.SearchBudget;

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
    /** Lengths along the board times kinds of pieces. */
    private static final int MOST_SUMS = 50_000_000;
    private static final int MOST_BOARDS = 1_000;
    private static final int MOST_WAYS = 64;
    private static final long FIRST_TURN = 1_000;
    private static final int MOST_KNOWN = 100_000;

    private final WholeProblem problem;
    private final SearchBudget budget;
    private Patience patience;
    private final int types;
    private final int board;

    private final int[] left;
    private long waste;
    private final List<int[]> chosen = new ArrayList<>();
    /** Pieces left and boards for them, of which nothing came. */
    private final Set<IntBuffer> hopeless = new HashSet<>();
    private boolean complete;
    /** Whether ways were left out because a piece had too many. */
    private boolean cut;
    /** One more than how often a piece was found without a way to fill its board. */
    private final int[] stuck;
    /** Steps of the next beginning, and steps given but not yet used, or below 0 used but not yet given. */
    private long turn = FIRST_TURN;
    private long saved;

    // the ways to fill up one piece's board
    private List<int[]> ways;
    private int most;
    private int[] copies;
    /** Which lengths all pieces that are left make, and those that one piece's board may hold. */
    private final Sums all;
    private final Sums some;
    private long looks;

    FullBoards(WholeProblem problem, SearchBudget budget) {
        this.problem = problem;
        this.budget = budget;
        types = problem.items();
        board = problem.capacity[0];
        left = problem.demand.clone();
        stuck = new int[types];
        Arrays.fill(stuck, 1);
        all = new Sums();
        some = new Sums();
    }

    /** Whether boards of one kind, so many, would have to be full. */
    static boolean suits(WholeProblem problem, long boards) {
        if (problem.stocks() != 1 || problem.supply[0] != WholeProblem.UNLIMITED || boards > MOST_BOARDS) return false;
        if ((long) problem.capacity[0] * problem.items() > MOST_SUMS) return false;
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
     * @param steps more that it may take, give or take half of the last beginning; the rest is settled with the next call
     */
    Solution on(int boards, long steps) {
        saved += steps;
        complete = false;
        while (2 * saved >= turn && !budget.over()) {
            saved -= turn;
            patience = new Patience(budget, turn);
            turn *= 2;
            complete = true;
            if (!fill(boards)) {
                if (complete) return null;
                continue;
            }
            Solution plan = new Solution(problem);
            for (int[] each : chosen) plan.add(Pattern.of(0, each), 1);
            return plan;
        }
        return null;
    }

    /** Whether nothing was left untried, so that no plan takes so few boards. */
    boolean complete() {
        return complete && !cut;
    }

    private boolean fill(int boards) {
        if (boards == 0) return true;
        int[] rest = Arrays.copyOf(left, types + 1);
        rest[types] = boards;
        IntBuffer state = IntBuffer.wrap(rest);
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
        all.of(left, board, new boolean[types]);
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
        ways = new ArrayList<>();
        most = atMost;
        copies = new int[types];
        copies[item] = 1;
        left[item]--;
        budget.spend(16L * types);
        int room = board - problem.weight[item];
        if (!byOne(room)) {
            boolean[] dominated = byTwo(room);
            if (ways.size() <= most) byMore(room, dominated);
        }
        left[item]++;
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

    /** With what all pieces left make, at first; what the dominated ones cannot make is left out once it takes longer than to find out. */
    private void byMore(int room, boolean[] dominated) {
        int before = ways.size();
        looks = (long) all.count * (room / 64 + 1) / 4;
        extend(all, 0, room, dominated);
        if (looks > 0) return;
        ways = new ArrayList<>(ways.subList(0, before));
        some.of(left, room, dominated);
        looks = Long.MAX_VALUE;
        extend(some, 0, room, dominated);
    }

    private void extend(Sums sums, int from, int room, boolean[] dominated) {
        if (room <= waste) ways.add(copies.clone());
        for (int at = from; at < sums.count && ways.size() <= most && sums.near(at, room); at++) {
            budget.spend(4);
            if (--looks <= 0) return;
            int item = sums.order[at];
            if (dominated[item]) continue;
            for (int n = Math.min(left[item], room / problem.weight[item]); n > 0; n--) {
                int rest = room - n * problem.weight[item];
                if (!sums.near(at + 1, rest)) continue;
                copies[item] += n;
                extend(sums, at + 1, rest, dominated);
                copies[item] -= n;
            }
        }
    }

    /** Which lengths some pieces make, the longest piece first. */
    private final class Sums {
        final int[] order = new int[types];
        int count;
        /** Of the pieces from each place in the order on. */
        private final long[][] reached = new long[types + 1][];

        void of(int[] copies, int room, boolean[] without) {
            count = 0;
            for (int i = 0; i < types; i++) if (copies[i] > 0 && !without[i] && problem.weight[i] <= room) order[count++] = i;
            int words = room / 64 + 1;
            row(count, words)[0] = 1;
            for (int at = count - 1; at >= 0; at--) {
                int weight = problem.weight[order[at]];
                long[] row = row(at, words);
                System.arraycopy(reached[at + 1], 0, row, 0, words);
                int there = Math.min(copies[order[at]], room / weight);
                for (int part = 1; there > 0; part *= 2) {
                    int here = Math.min(part, there);
                    there -= here;
                    shift(row, here * weight, words);
                    budget.spend(words + 20L);
                }
            }
        }

        private long[] row(int at, int words) {
            if (reached[at] == null) reached[at] = new long[board / 64 + 1];
            Arrays.fill(reached[at], 0, words, 0);
            return reached[at];
        }

        /** Adds what is longer by so much. */
        private static void shift(long[] row, int by, int words) {
            int whole = by >> 6;
            for (int w = words - 1; w > whole; w--) row[w] |= row[w - whole] << by | row[w - whole - 1] >>> 1 >>> (~by & 63);
            if (whole < words) row[whole] |= row[0] << by;
        }

        /** Whether they fill so much but for what may be wasted. */
        boolean near(int at, int room) {
            for (int spare = 0; spare <= Math.min(waste, room); spare++) {
                int sum = room - spare;
                if ((reached[at][sum >> 6] >>> sum & 1) != 0) return true;
            }
            return false;
        }
    }
}
