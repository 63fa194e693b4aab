package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * A wide roll cut lengthwise into equal slices first. Bands of so many pieces that they fill a wide roll are hard to end
 * well: what is left for the last one wastes a part of the whole width. Bands for a slice are smaller and more, and are
 * shared out among the slices so that all come out equally long.
 */
final class Slices {
    /** Passes over all pairs of slices. */
    private static final int PASSES = 40;

    private Slices() {}

    /** The bands of one narrow run beside each other in so many slices, as one block. */
    static Block beside(List<Block> bands, int slices) {
        List<List<Block>> shared = shared(bands, slices);
        Block all = null;
        for (List<Block> slice : shared) {
            Block run = null;
            for (Block band : slice) run = run == null ? band : Block.after(run, band);
            if (run != null) all = all == null ? run : Block.beside(all, run);
        }
        return all;
    }

    /** Longest first into the shortest slice, then moves and exchanges between two as long as the longer becomes shorter. */
    private static List<List<Block>> shared(List<Block> bands, int slices) {
        List<Block> order = new ArrayList<>(bands);
        order.sort(Comparator.comparingLong(band -> -band.height));
        List<List<Block>> shared = new ArrayList<>();
        for (int s = 0; s < slices; s++) shared.add(new ArrayList<>());
        long[] length = new long[slices];
        for (Block band : order) {
            int shortest = 0;
            for (int s = 1; s < slices; s++) if (length[s] < length[shortest]) shortest = s;
            shared.get(shortest).add(band);
            length[shortest] += band.height;
        }
        boolean better = true;
        for (int pass = 0; better && pass < PASSES; pass++) {
            better = false;
            Integer[] byLength = new Integer[slices];
            for (int s = 0; s < slices; s++) byLength[s] = s;
            Arrays.sort(byLength, Comparator.comparingLong(s -> -length[s]));
            for (int i = 0; i < slices && !better; i++) {
                for (int j = slices - 1; j > i && !better; j--) {
                    int from = byLength[i];
                    int to = byLength[j];
                    long moved = evened(shared.get(from), shared.get(to), length[from] - length[to]);
                    length[from] -= moved;
                    length[to] += moved;
                    better = moved > 0;
                }
            }
        }
        return shared;
    }

    /** Exchanges up to two bands for up to two so that the difference becomes least; returns what moves over. */
    private static long evened(List<Block> longer, List<Block> shorter, long difference) {
        List<int[]> out = choices(longer.size());
        List<int[]> in = choices(shorter.size());
        long[] heights = new long[in.size()];
        Integer[] order = new Integer[in.size()];
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
            heights[i] = height(shorter, in.get(i));
        }
        Arrays.sort(order, Comparator.comparingLong(i -> heights[i]));
        long bestMoved = 0;
        int[] bestOut = null;
        int[] bestIn = null;
        for (int[] some : out) {
            long high = height(longer, some);
            // what comes back should be near high - difference / 2
            int low = 0;
            int up = order.length;
            while (low < up) {
                int middle = (low + up) >>> 1;
                if (heights[order[middle]] < high - difference / 2) low = middle + 1;
                else up = middle;
            }
            for (int at = Math.max(0, low - 1); at <= low && at < order.length; at++) {
                long moved = high - heights[order[at]];
                if (moved > 0 && moved < difference && Math.abs(difference - 2 * moved) < Math.abs(difference - 2 * bestMoved)) {
                    bestMoved = moved;
                    bestOut = some;
                    bestIn = in.get(order[at]);
                }
            }
        }
        if (bestOut == null) return 0;
        List<Block> away = taken(longer, bestOut);
        List<Block> back = taken(shorter, bestIn);
        longer.addAll(back);
        shorter.addAll(away);
        return bestMoved;
    }

    private static List<int[]> choices(int bands) {
        List<int[]> choices = new ArrayList<>();
        choices.add(new int[0]);
        for (int i = 0; i < bands; i++) {
            choices.add(new int[] {i});
            for (int j = i + 1; j < bands; j++) choices.add(new int[] {i, j});
        }
        return choices;
    }

    private static long height(List<Block> bands, int[] some) {
        long height = 0;
        for (int i : some) height += bands.get(i).height;
        return height;
    }

    private static List<Block> taken(List<Block> bands, int[] some) {
        List<Block> taken = new ArrayList<>();
        for (int n = some.length - 1; n >= 0; n--) taken.add(bands.remove(some[n]));
        return taken;
    }
}
