package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.BooleanSupplier;

/**
 * A plain way of free layouts that the search is measured against, written apart from it: the lowest niche of the front takes
 * the piece that fits it best, either way round, and of those that fit alike the first in an order; two pieces change places in
 * the order, and what is no longer stays.
 *
 * @see "Burke, Kendall and Whitwell, A new placement heuristic for the orthogonal stock-cutting problem, Operations Research
 *     52 (2004), for the niche; Leung, Zhang and Sim, A two-stage intelligent search algorithm for the two-dimensional strip
 *     packing problem, European Journal of Operational Research 215 (2011), for walls that are met"
 */
public final class PlainSkyline {
    private PlainSkyline() {}

    /** The rectangles of the shortest layout found: left, near, right and far end, mm. */
    public static List<long[]> lay(RollProblem problem, long seed, BooleanSupplier over) {
        RollProblem.Stock roll = problem.rolls().get(0);
        Random random = new Random(seed);
        long[][] sizes = PlainPackers.lying(problem, roll, false).toArray(long[][]::new);
        Arrays.sort(sizes, (a, b) -> Long.compare(b[0] * b[1], a[0] * a[1]));
        List<long[]> best = laid(sizes, (long) roll.widthMm(), problem.turn());
        while (!over.getAsBoolean()) {
            int i = random.nextInt(sizes.length);
            int j = random.nextInt(sizes.length);
            swap(sizes, i, j);
            List<long[]> found = laid(sizes, (long) roll.widthMm(), problem.turn());
            if (PlainOffcuts.far(found) <= PlainOffcuts.far(best)) best = found;
            else swap(sizes, i, j);
        }
        return best;
    }

    private static void swap(long[][] sizes, int i, int j) {
        long[] one = sizes[i];
        sizes[i] = sizes[j];
        sizes[j] = one;
    }

    /** A level of the front is its left end and its height; the last one is the roll's far side. */
    private static List<long[]> laid(long[][] sizes, long width, boolean turn) {
        List<long[]> front = new ArrayList<>(List.of(new long[] {0, 0}, new long[] {width, Long.MAX_VALUE}));
        boolean[] done = new boolean[sizes.length];
        List<long[]> laid = new ArrayList<>();
        while (laid.size() < sizes.length) {
            int at = 0;
            for (int i = 1; i < front.size(); i++) if (front.get(i)[1] < front.get(at)[1]) at = i;
            long[] niche = front.get(at);
            long room = front.get(at + 1)[0] - niche[0];
            long left = at == 0 ? Long.MAX_VALUE : front.get(at - 1)[1];
            long right = front.get(at + 1)[1];
            int most = -1;
            int which = -1;
            for (int p = 0; p < 2 * sizes.length; p++) {
                long[] size = sizes[p / 2];
                if (done[p / 2] || size[p % 2] > room || p % 2 == 1 && !turn) continue;
                long top = niche[1] + size[1 - p % 2];
                int met = (size[p % 2] == room ? 2 : 0) + (top == left ? 1 : 0) + (top == right ? 1 : 0);
                if (met > most) {
                    most = met;
                    which = p;
                }
            }
            if (which < 0) {
                niche[1] = Math.min(left, right);
            } else {
                done[which / 2] = true;
                long[] size = sizes[which / 2];
                laid.add(put(front, at, size[which % 2], size[1 - which % 2], room, left, right));
            }
            for (int i = front.size() - 1; i > 0; i--) if (front.get(i)[1] == front.get(i - 1)[1]) front.remove(i);
        }
        return laid;
    }

    /** Beside the wall that it meets, else beside the higher one. */
    private static long[] put(List<long[]> front, int at, long wide, long high, long room, long left, long right) {
        long[] niche = front.get(at);
        long near = niche[1];
        boolean atLeft = near + high == left || near + high != right && left >= right;
        long x = atLeft ? niche[0] : niche[0] + room - wide;
        if (wide == room) niche[1] += high;
        else if (atLeft) {
            front.add(at, new long[] {x, near + high});
            niche[0] += wide;
        } else front.add(at + 1, new long[] {x, near + high});
        return new long[] {x, near, x + wide, near + high};
    }
}
