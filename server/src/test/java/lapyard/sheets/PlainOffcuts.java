package lapyard.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BooleanSupplier;

/**
 * A plain way of straight cuts that the search is measured against, written apart from it: each piece in an order is cut from
 * that offcut from which it ends nearest, an offcut is parted along the shorter rest; two pieces change places in the order, or
 * one is turned, and what is no longer stays.
 *
 * @see "Jylänki, A thousand ways to pack the bin (2010), for free rectangles parted by straight cuts"
 */
public final class PlainOffcuts {
    private static final long ENDLESS = Long.MAX_VALUE / 4;

    private PlainOffcuts() {}

    /** The rectangles of the shortest layout found: left, near, right and far end, mm. */
    public static List<long[]> lay(RollProblem problem, long seed, BooleanSupplier over) {
        RollProblem.Stock roll = problem.rolls().get(0);
        long width = (long) roll.widthMm();
        Random random = new Random(seed);
        long[][] sizes = PlainPackers.lying(problem, roll, false).toArray(long[][]::new);
        List<long[]> best = laid(sizes, width);
        while (!over.getAsBoolean()) {
            int i = random.nextInt(sizes.length);
            int j = random.nextInt(sizes.length);
            boolean flip = problem.turn() && random.nextInt(3) == 0 && sizes[i][1] <= width;
            change(sizes, i, j, flip);
            List<long[]> found = laid(sizes, width);
            if (far(found) <= far(best)) best = found;
            else change(sizes, i, j, flip);
        }
        return best;
    }

    private static void change(long[][] sizes, int i, int j, boolean flip) {
        long[] one = sizes[i];
        sizes[i] = flip ? new long[] {one[1], one[0]} : sizes[j];
        if (!flip) sizes[j] = one;
    }

    public static long far(List<long[]> rectangles) {
        long far = 0;
        for (long[] one : rectangles) far = Math.max(far, one[3]);
        return far;
    }

    /** An offcut is left, near, width and length; one of them is endless. */
    private static List<long[]> laid(long[][] sizes, long width) {
        List<long[]> offcuts = new ArrayList<>(List.of(new long[] {0, 0, width, ENDLESS}));
        List<long[]> laid = new ArrayList<>();
        for (long[] size : sizes) {
            int from = -1;
            for (int i = 0; i < offcuts.size(); i++) {
                long[] cut = offcuts.get(i);
                if (cut[2] < size[0] || cut[3] < size[1]) continue;
                if (from < 0 || cut[1] < offcuts.get(from)[1] || cut[1] == offcuts.get(from)[1] && cut[2] < offcuts.get(from)[2]) from = i;
            }
            long[] cut = offcuts.remove(from);
            laid.add(new long[] {cut[0], cut[1], cut[0] + size[0], cut[1] + size[1]});
            long beside = cut[2] - size[0];
            long after = cut[3] - size[1];
            boolean across = beside < after;
            if (beside > 0) offcuts.add(new long[] {cut[0] + size[0], cut[1], beside, across ? size[1] : cut[3]});
            if (after > 0) offcuts.add(new long[] {cut[0], cut[1] + size[1], across ? cut[2] : size[0], after});
        }
        return laid;
    }
}
