package lapyard.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The most valuable pattern for each board, item values given: a bounded knapsack in exact whole numbers. One table
 * over positions along the board serves every board length at once; pieces that any face serves come first in it, so
 * boards without a good face read their answer half way. Where the table would be too large, a depth-first search by
 * value per length answers board by board.
 */
final class Knapsack {
    private static final long LARGEST_TABLE = 6_000_000;
    private static final long SEARCH_NODES = 400_000;

    private final WholeProblem problem;
    private final Budget budget;
    private final int longest;

    private long[] table = new long[0];
    private final List<long[]> taken = new ArrayList<>();
    private int[] layerItem = new int[0];
    private int[] layerCopies = new int[0];
    private int layers;
    private int plainLayers;
    /** Value at each board's end after each layer. */
    private long[][] atEnd = new long[0][];

    private final long[] best;
    private final int[][] searched;
    private boolean byTable;
    private long[] value;
    private int[] limit;

    Knapsack(WholeProblem problem, Budget budget) {
        this.problem = problem;
        this.budget = budget;
        int most = 0;
        for (int capacity : problem.capacity) most = Math.max(most, capacity);
        longest = most;
        best = new long[problem.stocks()];
        searched = new int[problem.stocks()][];
    }

    /**
     * @param values what a copy of each item is worth, 0 or more
     * @param limits copies of each item that may be used
     * @param open   boards that may be used
     */
    void solve(long[] values, int[] limits, boolean[] open) {
        value = values;
        limit = limits;
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            if (values[i] > 0 && limits[i] > 0) count += 32 - Integer.numberOfLeadingZeros(copies(i, longest));
        }
        byTable = (long) count * longest <= LARGEST_TABLE;
        if (byTable) fillTable(count);
        for (int k = 0; k < best.length; k++) {
            if (!open[k]) best[k] = 0;
            else if (byTable) best[k] = layersFor(k) == 0 ? 0 : atEnd[layersFor(k) - 1][k];
            else best[k] = search(k);
        }
    }

    /** The most that board {@code stock} can be worth; exact, or too high where a search had to stop early. */
    long best(int stock) {
        return best[stock];
    }

    /** No pattern on this much of a board is worth more than this. */
    long atMost(int room) {
        if (byTable) return table[room];
        long most = 0;
        for (int i = 0; i < value.length; i++) {
            if (limit[i] > 0) most = Math.max(most, scaled(room, value[i], problem.weight[i]));
        }
        return most;
    }

    /** A pattern for the board, the best one unless the search stopped early; leftover length takes unvalued pieces. */
    Pattern pattern(int stock) {
        int[] copies = byTable ? trace(layersFor(stock) - 1, stock) : searched[stock].clone();
        return filled(stock, copies);
    }

    /** Patterns worth more than {@code above}, each with a different last item of the table; best first, at most {@code most}. */
    List<Pattern> more(int stock, long above, int most) {
        if (!byTable) return List.of();
        List<long[]> ends = new ArrayList<>();
        int last = layersFor(stock) - 1;
        for (int layer = last; layer >= 0; layer--) {
            boolean closesItem = layer == last || layerItem[layer + 1] != layerItem[layer];
            if (closesItem && atEnd[layer][stock] > above && usesItemOf(layer, stock)) {
                ends.add(new long[] {atEnd[layer][stock], layer});
            }
        }
        ends.sort((a, b) -> Long.compare(b[0], a[0]));
        List<Pattern> patterns = new ArrayList<>();
        for (long[] end : ends.subList(0, Math.min(most, ends.size()))) {
            patterns.add(filled(stock, trace((int) end[1], stock)));
        }
        return patterns;
    }

    private boolean usesItemOf(int layer, int stock) {
        int position = problem.capacity[stock];
        for (int l = layer; l >= 0 && layerItem[l] == layerItem[layer]; l--) {
            if ((taken.get(l)[position >> 6] >>> (position & 63) & 1) != 0) return true;
        }
        return false;
    }

    private int layersFor(int stock) {
        return problem.stockGood[stock] ? layers : plainLayers;
    }

    private int copies(int item, int capacity) {
        return Math.min(limit[item], capacity / problem.weight[item]);
    }

    private void fillTable(int count) {
        if (table.length == 0) table = new long[longest + 1];
        else Arrays.fill(table, 0);
        if (layerItem.length < count) {
            layerItem = new int[count];
            layerCopies = new int[count];
            atEnd = new long[count][best.length];
            while (taken.size() < count) taken.add(new long[(longest >> 6) + 1]);
        }
        layers = 0;
        plainLayers = 0;
        for (int i = 0; i < value.length; i++) {
            if (value[i] <= 0 || limit[i] <= 0) continue;
            int left = copies(i, longest);
            for (int part = 1; left > 0; part *= 2) {
                int here = Math.min(part, left);
                left -= here;
                addLayer(i, here);
            }
            if (!problem.itemGood[i]) plainLayers = layers;
        }
        budget.spend((long) layers * longest + 1000);
    }

    private void addLayer(int item, int copies) {
        long[] bits = taken.get(layers);
        Arrays.fill(bits, 0);
        int step = problem.weight[item] * copies;
        long gain = value[item] * copies;
        long[] v = table;
        for (int at = longest; at >= step; at--) {
            long with = v[at - step] + gain;
            if (with > v[at]) {
                v[at] = with;
                bits[at >> 6] |= 1L << (at & 63);
            }
        }
        layerItem[layers] = item;
        layerCopies[layers] = copies;
        long[] ends = atEnd[layers];
        for (int k = 0; k < ends.length; k++) ends[k] = v[problem.capacity[k]];
        layers++;
    }

    private int[] trace(int layer, int stock) {
        int[] copies = new int[problem.items()];
        int position = problem.capacity[stock];
        for (int l = layer; l >= 0; l--) {
            if ((taken.get(l)[position >> 6] >>> (position & 63) & 1) == 0) continue;
            copies[layerItem[l]] += layerCopies[l];
            position -= problem.weight[layerItem[l]] * layerCopies[l];
        }
        return copies;
    }

    private Pattern filled(int stock, int[] copies) {
        long room = problem.capacity[stock];
        for (int i = 0; i < copies.length; i++) room -= (long) copies[i] * problem.weight[i];
        for (int i = 0; i < copies.length; i++) {
            if (problem.weight[i] > room || !problem.holds(stock, i)) continue;
            int extra = (int) Math.min(limit[i] - copies[i], room / problem.weight[i]);
            copies[i] += extra;
            room -= (long) extra * problem.weight[i];
        }
        return Pattern.of(stock, copies);
    }

    // Depth-first search, items by value per length; the bound fills the rest of the board with a cut piece.

    private int[] order;
    private int[] now;
    private long searchBest;
    private long nodes;

    private long search(int stock) {
        List<Integer> items = new ArrayList<>();
        for (int i = 0; i < value.length; i++) {
            if (value[i] > 0 && limit[i] > 0 && problem.holds(stock, i)) items.add(i);
        }
        items.sort((a, b) -> {
            int byWorth = Double.compare(
                    value[b] / (double) problem.weight[b], value[a] / (double) problem.weight[a]);
            return byWorth != 0 ? byWorth : Integer.compare(problem.weight[b], problem.weight[a]);
        });
        order = items.stream().mapToInt(Integer::intValue).toArray();
        now = new int[value.length];
        searched[stock] = new int[value.length];
        searchBest = 0;
        nodes = 0;
        descend(stock, 0, problem.capacity[stock], 0);
        budget.spend(nodes * 8 + 1000);
        return nodes < SEARCH_NODES ? searchBest : Math.max(searchBest, relaxed(stock));
    }

    private void descend(int stock, int depth, int room, long worth) {
        if (worth > searchBest) {
            searchBest = worth;
            System.arraycopy(now, 0, searched[stock], 0, now.length);
        }
        for (int at = depth; at < order.length && nodes < SEARCH_NODES; at++) {
            nodes++;
            int item = order[at];
            int weight = problem.weight[item];
            if (worth + scaled(room, value[item], weight) <= searchBest) return;
            int most = Math.min(limit[item], room / weight);
            for (int copies = most; copies > 0; copies--) {
                now[item] = copies;
                descend(stock, at + 1, room - copies * weight, worth + copies * value[item]);
            }
            now[item] = 0;
        }
    }

    /** At least room x value / weight; the items that follow are worth no more per length. */
    private static long scaled(long room, long value, long weight) {
        return (long) ((double) room * value / weight * (1 + 1e-14)) + 1;
    }

    private long relaxed(int stock) {
        long room = problem.capacity[stock];
        long worth = 0;
        for (int item : order) {
            long copies = Math.min(limit[item], room / problem.weight[item]);
            worth += copies * value[item];
            room -= copies * problem.weight[item];
            if (copies < limit[item]) return worth + scaled(room, value[item], problem.weight[item]) + 1;
        }
        return worth;
    }
}
