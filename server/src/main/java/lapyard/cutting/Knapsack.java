package lapyard.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapyard.working.SearchBudget;

/**
 * The most valuable pattern for each board, item values given: a bounded knapsack in exact whole numbers. One table
 * over positions along the board serves every board length at once; pieces that any face serves come first in it, so
 * boards with fewer good faces read their answer on the way. Prices of a cutting job often give the table few different
 * values: as long as that is so it is kept as {@link WorthSteps}. Where the table would be too large, a {@link Frontier}
 * of the fillings worth having answers board by board.
 */
final class Knapsack {
    private static final long LARGEST_TABLE = 6_000_000;
    /** Steps are kept as long as there is at most one for so many positions. */
    private static final int POSITIONS_A_STEP = 16;

    private final WholeProblem problem;
    private final SearchBudget budget;
    private final int longest;

    /** Worth by position before each of the first layers, then before the first one that is in the table. */
    private final List<WorthSteps> steps = new ArrayList<>(List.of(new WorthSteps()));
    /** Layers that are kept as steps; the later ones are in the table. */
    private int stepLayers;
    private long[] table = new long[0];
    private final List<long[]> taken = new ArrayList<>();
    private int[] layerItem = new int[0];
    private int[] layerCopies = new int[0];
    private int layers;
    /** Layers of the items that a board of so many good faces may hold. */
    private final int[] layersUpTo = new int[CuttingProblem.MOST_GOOD_FACES + 1];
    /** Value at each board's end after each layer. */
    private long[][] atEnd = new long[0][];

    private final long[] best;
    private final Frontier[] frontiers;
    private boolean byTable;
    private long[] value;
    private int[] limit;

    Knapsack(WholeProblem problem, SearchBudget budget) {
        this.problem = problem;
        this.budget = budget;
        int most = 0;
        for (int capacity : problem.capacity) most = Math.max(most, capacity);
        longest = most;
        best = new long[problem.stocks()];
        frontiers = new Frontier[problem.stocks()];
    }

    /**
     * @param values what a copy of each item is worth, 0 or more
     * @param limits copies of each item that may be used
     * @param open   boards that may be used
     * @param enough what each board must be worth more than to be of interest; below that a board's answer may be this
     */
    void solve(long[] values, int[] limits, boolean[] open, long[] enough) {
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
            else best[k] = byFrontier(k, enough[k]);
        }
    }

    /** The most that board {@code stock} can be worth; exact, or too high where there were too many fillings to tell. */
    long best(int stock) {
        return best[stock];
    }

    /** A pattern for the board, the best one where that is known; leftover length takes unvalued pieces. */
    Pattern pattern(int stock) {
        int[] copies = byTable ? trace(layersFor(stock) - 1, stock) : frontiers[stock].copies(0);
        return filled(stock, copies);
    }

    /** Patterns worth more than {@code above}, each with a different last item of the table; best first, at most {@code most}. */
    List<Pattern> more(int stock, long above, int most) {
        if (!byTable) return moreByFrontier(stock, most);
        List<Pattern> patterns = new ArrayList<>();
        int last = layersFor(stock) - 1;
        // the most that is made of fewer layers is never worth more
        for (int layer = last; layer >= 0 && patterns.size() < most && atEnd[layer][stock] > above; layer--) {
            boolean closesItem = layer == last || layerItem[layer + 1] != layerItem[layer];
            if (closesItem && usesItemOf(layer, stock)) patterns.add(filled(stock, trace(layer, stock)));
        }
        return patterns;
    }

    private long byFrontier(int stock, long enough) {
        Frontier frontier = new Frontier(problem, stock, value, limit, enough);
        frontiers[stock] = frontier;
        budget.spend(frontier.turns());
        return frontier.best();
    }

    private List<Pattern> moreByFrontier(int stock, int most) {
        List<Pattern> patterns = new ArrayList<>();
        for (int rank = 1; rank < Math.min(most, frontiers[stock].found()); rank++) {
            patterns.add(filled(stock, frontiers[stock].copies(rank)));
        }
        return patterns;
    }

    private boolean usesItemOf(int layer, int stock) {
        int position = problem.capacity[stock];
        for (int l = layer; l >= 0 && layerItem[l] == layerItem[layer]; l--) {
            if (takes(l, position)) return true;
        }
        return false;
    }

    private int layersFor(int stock) {
        return layersUpTo[problem.stockFaces[stock]];
    }

    private int copies(int item, int capacity) {
        return Math.min(limit[item], capacity / problem.weight[item]);
    }

    private void fillTable(int count) {
        if (layerItem.length < count) {
            layerItem = new int[count];
            layerCopies = new int[count];
            atEnd = new long[count][best.length];
        }
        layers = 0;
        stepLayers = 0;
        Arrays.fill(layersUpTo, 0);
        for (int i = 0; i < value.length; i++) {
            if (value[i] <= 0 || limit[i] <= 0) continue;
            int left = copies(i, longest);
            for (int part = 1; left > 0; part *= 2) {
                int here = Math.min(part, left);
                left -= here;
                addLayer(i, here);
            }
            Arrays.fill(layersUpTo, problem.itemFaces[i], layersUpTo.length, layers);
        }
        budget.spend((long) layers * longest + 1000);
    }

    private void addLayer(int item, int copies) {
        int step = problem.weight[item] * copies;
        long gain = value[item] * copies;
        layerItem[layers] = item;
        layerCopies[layers] = copies;
        long[] ends = atEnd[layers];
        if (stepLayers == layers && (long) steps.get(layers).count() * POSITIONS_A_STEP <= longest) {
            if (steps.size() == layers + 1) steps.add(new WorthSteps());
            WorthSteps with = steps.get(layers + 1);
            with.bettered(steps.get(layers), step, gain, longest);
            for (int k = 0; k < ends.length; k++) ends[k] = with.at(problem.capacity[k]);
            stepLayers++;
        } else {
            if (stepLayers == layers) {
                if (table.length == 0) table = new long[longest + 1];
                steps.get(layers).spread(table);
            }
            addToTable(step, gain);
            for (int k = 0; k < ends.length; k++) ends[k] = table[problem.capacity[k]];
        }
        layers++;
    }

    private void addToTable(int step, long gain) {
        while (taken.size() <= layers - stepLayers) taken.add(new long[(longest >> 6) + 1]);
        long[] bits = taken.get(layers - stepLayers);
        Arrays.fill(bits, 0);
        long[] v = table;
        for (int at = longest; at >= step; at--) {
            long with = v[at - step] + gain;
            if (with > v[at]) {
                v[at] = with;
                bits[at >> 6] |= 1L << (at & 63);
            }
        }
    }

    /** Whether the most that fits in so much room has the copies of this layer. */
    private boolean takes(int layer, int room) {
        if (layer >= stepLayers) return (taken.get(layer - stepLayers)[room >> 6] >>> (room & 63) & 1) != 0;
        int step = problem.weight[layerItem[layer]] * layerCopies[layer];
        WorthSteps before = steps.get(layer);
        return step <= room && before.at(room - step) + value[layerItem[layer]] * layerCopies[layer] > before.at(room);
    }

    private int[] trace(int layer, int stock) {
        int[] copies = new int[problem.items()];
        int position = problem.capacity[stock];
        for (int l = layer; l >= 0; l--) {
            if (!takes(l, position)) continue;
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
}
