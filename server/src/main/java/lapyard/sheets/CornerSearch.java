package lapyard.sheets;

import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Whether given pieces fit a stretch of roll in any way at all, answered by looking at every way. Any layout can be
 * built up piece by piece so that none comes left of or before an earlier one's far corner, and each piece can be
 * pushed into an inner corner of the stairs that the earlier ones form; so trying every piece in every such corner
 * misses nothing. What lies under the stairs uncovered is lost, and a branch that loses too much is dropped.
 *
 * @see "Martello, Pisinger and Vigo, The three-dimensional bin packing problem, Operations Research 48 (2000)"
 */
final class CornerSearch {
    private static final int MOST_REMEMBERED = 300_000;
    private static final int NODES_BETWEEN_READINGS = 1_000;

    private final RollJob job;
    private final int[] left;
    private final long width;
    private final long height;
    private final RollBudget work;
    private final long bearable;
    private final List<Block.Laid> laid = new ArrayList<>();
    private int missing;
    private long nodes;
    private boolean finished = true;
    private final Set<LongBuffer> seen = new HashSet<>();

    CornerSearch(RollJob job, int[] counts, long width, long height, RollBudget work) {
        this.job = job;
        this.left = counts.clone();
        this.width = width;
        this.height = height;
        this.work = work;
        long area = 0;
        for (int t = 0; t < counts.length; t++) {
            missing += counts[t];
            area += counts[t] * job.types[t].area();
        }
        this.bearable = width * height - area;
    }

    boolean fits() {
        // stairs fall from left to right: corner i is at (x[i], y[i]), from the left edge's top to the near edge's end
        return bearable >= 0 && place(new long[] {0}, new long[] {0}, 0);
    }

    /** False where the work ran out before every way was seen. */
    boolean finished() {
        return finished;
    }

    List<Block.Laid> laid() {
        return List.copyOf(laid);
    }

    /**
     * @param x   inner corners of the stairs, rising
     * @param y   falling
     * @param covered area of the pieces laid
     */
    private boolean place(long[] x, long[] y, long covered) {
        if (missing == 0) return true;
        if (!fresh(x, y)) return false;
        if (++nodes % NODES_BETWEEN_READINGS == 0) {
            work.spend(NODES_BETWEEN_READINGS * 50L);
            if (work.over()) finished = false;
        }
        if (!finished) return false;
        for (int t = 0; t < left.length; t++) {
            if (left[t] == 0) continue;
            RollJob.Type type = job.types[t];
            for (int way = 0; way < (job.turn && type.width() != type.height() ? 2 : 1); way++) {
                long w = way == 0 ? type.width() : type.height();
                long h = way == 0 ? type.height() : type.width();
                for (int corner = 0; corner < x.length; corner++) {
                    if (x[corner] + w > width || y[corner] + h > height) continue;
                    long[][] stairs = stairs(x, y, corner, x[corner] + w, y[corner] + h);
                    long under = under(stairs[0], stairs[1]);
                    if (under - covered - w * h > bearable) continue;
                    left[t]--;
                    missing--;
                    laid.add(new Block.Laid(t, x[corner], y[corner], w, h));
                    if (place(stairs[0], stairs[1], covered + w * h)) return true;
                    laid.remove(laid.size() - 1);
                    missing++;
                    left[t]++;
                    if (!finished) return false;
                }
            }
        }
        return false;
    }

    /** Whether these stairs with these pieces left are met for the first time; another order of laying led here too. */
    private boolean fresh(long[] x, long[] y) {
        if (seen.size() > MOST_REMEMBERED) return true;
        long[] mark = new long[2 * x.length + left.length];
        System.arraycopy(x, 0, mark, 0, x.length);
        System.arraycopy(y, 0, mark, x.length, x.length);
        for (int t = 0; t < left.length; t++) mark[2 * x.length + t] = left[t];
        return seen.add(LongBuffer.wrap(mark));
    }

    /** The stairs with a piece's far corner (right, top) added. */
    private static long[][] stairs(long[] x, long[] y, int corner, long right, long top) {
        // corners left of the piece stay while above it; those it covers go; two new ones appear
        int before = corner;
        while (before > 0 && y[before - 1] <= top) before--;
        int after = corner;
        while (after < x.length && x[after] <= right) after++;
        // the corner above the piece starts where the first covered step did
        long newX = x[before];
        long newY = y[after - 1];
        int size = before + 2 + (x.length - after);
        long[] nx = new long[size];
        long[] ny = new long[size];
        System.arraycopy(x, 0, nx, 0, before);
        System.arraycopy(y, 0, ny, 0, before);
        int at = before;
        nx[at] = newX;
        ny[at++] = top;
        nx[at] = right;
        ny[at++] = newY;
        System.arraycopy(x, after, nx, at, x.length - after);
        System.arraycopy(y, after, ny, at, x.length - after);
        return new long[][] {nx, ny};
    }

    /** The area under the stairs: between one inner corner and the next it is as high as the first. */
    private static long under(long[] x, long[] y) {
        long area = 0;
        for (int i = 0; i + 1 < x.length; i++) area += (x[i + 1] - x[i]) * y[i];
        return area;
    }
}
