package lapyard.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Bounded knapsack for one board by the fillings worth having: of two fillings the longer one stays only if it is worth
 * more, and one that cannot come to more than {@code enough} goes. Serves boards whose length in units is too large for
 * a table.
 *
 * @see "Nemhauser and Ullmann, Management Science 15 (1969) 494-505"
 */
final class Frontier {
    private static final int MOST_STATES = 3_000_000;

    private final WholeProblem problem;
    private final int capacity;
    private final long[] value;
    private final int[] limit;
    private final long enough;

    // Every filling ever kept: how long, how much worth, which came before it, and which layer was added to that.
    private int[] length = new int[4096];
    private long[] worth = new long[4096];
    private int[] before = new int[4096];
    private int[] added = new int[4096];
    private int states;

    private final List<int[]> layers = new ArrayList<>();
    private int[] now = new int[1024];
    private int[] next = new int[1024];
    private int count;
    private long turns;
    private long best;
    private int[] ranked;

    Frontier(WholeProblem problem, int stock, long[] value, int[] limit, long enough) {
        this.problem = problem;
        this.value = value;
        this.limit = limit;
        this.enough = enough;
        capacity = problem.capacity[stock];
        List<Integer> items = new ArrayList<>();
        for (int i = 0; i < value.length; i++) {
            if (value[i] > 0 && problem.holds(stock, i)) items.add(i);
        }
        items.sort((a, b) -> {
            int byWorth = Double.compare(value[b] / (double) problem.weight[b], value[a] / (double) problem.weight[a]);
            return byWorth != 0 ? byWorth : Integer.compare(problem.weight[b], problem.weight[a]);
        });
        for (int item : items) {
            int left = Math.min(limit[item], capacity / problem.weight[item]);
            for (int part = 1; left > 0; part *= 2) {
                int here = Math.min(part, left);
                left -= here;
                layers.add(new int[] {item, here});
            }
        }
        keep(0, 0, -1, -1);
        now[0] = 0;
        count = 1;
        boolean complete = true;
        for (int layer = 0; layer < layers.size() && complete; layer++) complete = add(layer);
        rank();
        best = worth[ranked[0]];
        if (!complete) best = Math.max(best, relaxed(items));
        else best = Math.max(best, enough);
    }

    /** At least room x value / weight. */
    static long atMost(int room, long value, int weight) {
        return (long) ((double) room * value / weight * (1 + 1e-14)) + 1;
    }

    /** Exact where above {@code enough}, otherwise no filling is worth more than this. */
    long best() {
        return best;
    }

    long turns() {
        return turns;
    }

    /** Fillings in the last frontier. */
    int found() {
        return ranked.length;
    }

    /** Copies of each item in the filling of this rank, the most valuable being 0. */
    int[] copies(int rank) {
        int[] copies = new int[value.length];
        for (int state = ranked[rank]; before[state] >= 0; state = before[state]) {
            int[] layer = layers.get(added[state]);
            copies[layer[0]] += layer[1];
        }
        return copies;
    }

    private boolean add(int layer) {
        if (next.length < 2 * count + 2) next = new int[4 * count + 2];
        if (states + count > MOST_STATES) return false;
        turns += 4L * count;
        int kept = merge(layer);
        int[] swap = now;
        now = next;
        next = swap;
        count = kept;
        return true;
    }

    /** Puts the fillings without and with this layer into {@code next}, shortest first; returns how many are worth having. */
    private int merge(int layer) {
        int item = layers.get(layer)[0];
        int step = problem.weight[item] * layers.get(layer)[1];
        long gain = value[item] * layers.get(layer)[1];
        int follower = layer + 1 < layers.size() ? layers.get(layer + 1)[0] : -1;
        int kept = 0;
        int plain = 0;
        int shifted = 0;
        long most = -1;
        while (plain < count || shifted < count) {
            int lengthPlain = plain < count ? length[now[plain]] : Integer.MAX_VALUE;
            int lengthShifted = shifted < count ? length[now[shifted]] + step : Integer.MAX_VALUE;
            if (lengthShifted > capacity || lengthShifted < 0) {
                shifted = count;
                lengthShifted = Integer.MAX_VALUE;
                if (plain == count) break;
            }
            boolean with = lengthShifted < lengthPlain;
            int from = with ? now[shifted++] : now[plain++];
            long here = with ? worth[from] + gain : worth[from];
            int reach = with ? lengthShifted : lengthPlain;
            if (here <= most || !promising(reach, here, follower)) continue;
            most = here;
            next[kept++] = with ? keep(reach, here, from, layer) : from;
        }
        return kept;
    }

    /** Whether the rest of the board, filled with the best of what is to follow, could bring it above enough. */
    private boolean promising(int used, long here, int follower) {
        if (here > enough) return true;
        return follower >= 0 && here + atMost(capacity - used, value[follower], problem.weight[follower]) > enough;
    }

    private int keep(int lengthHere, long worthHere, int from, int layer) {
        if (states == length.length) {
            int size = states * 2;
            length = Arrays.copyOf(length, size);
            worth = Arrays.copyOf(worth, size);
            before = Arrays.copyOf(before, size);
            added = Arrays.copyOf(added, size);
        }
        length[states] = lengthHere;
        worth[states] = worthHere;
        before[states] = from;
        added[states] = layer;
        return states++;
    }

    private void rank() {
        if (count == 0) {
            ranked = new int[] {0};
            return;
        }
        // Worth rises with length along a frontier, so the last is the best.
        ranked = new int[count];
        for (int i = 0; i < count; i++) ranked[i] = now[count - 1 - i];
    }

    private long relaxed(List<Integer> items) {
        long room = capacity;
        long sum = 0;
        for (int item : items) {
            long copies = Math.min(limit[item], room / problem.weight[item]);
            sum += copies * value[item];
            room -= copies * problem.weight[item];
            if (copies < limit[item]) return sum + atMost((int) room, value[item], problem.weight[item]);
        }
        return sum;
    }
}
