package lapyard.sheets;

import java.util.Arrays;
import java.util.stream.LongStream;

/**
 * How much of one side of a rectangle pieces can fill: the largest sum of their sides that is no longer, of pieces whose other side
 * fits the other side of the rectangle. A piece counts once, in any way that it may lie. Pushed together to one corner, whatever lies in the
 * rectangle stays within what can be filled of both sides, so that the rest of them is waste.
 *
 * @see "Christofides and Whitlock, An algorithm for two-dimensional cutting problems, Operations Research 25 (1977), for normal
 *     patterns"
 */
final class SideSums {
    private static final int MOST_CELLS = 4_000_000;
    private static final int WORDS_AN_OPERATION = 4;

    /** How many of the sides of pieces fit a length, by the length; null where that would be too much to work out. */
    private final int[] fitting;
    /** By how many sides fit the other side of a rectangle, and by its own side; null where that would be too much to work out. */
    private final int[][] across;

    private final int[][] along;

    /** @param longest no rectangle has a longer side */
    SideSums(RollJob job, long longest, RollBudget work) {
        long[] sides = Arrays.stream(job.types).flatMapToLong(type -> LongStream.of(type.width(), type.height())).sorted().distinct().toArray();
        boolean small = longest < MOST_CELLS / (sides.length + 1);
        fitting = small ? fitting(sides, (int) longest) : null;
        across = small ? new int[sides.length + 1][] : null;
        along = small && !job.turn ? new int[sides.length + 1][] : across;
        if (!small) return;
        int words = (int) (longest / 64 + 1);
        work.spend(operations(job, longest));
        for (int n = 0; n <= sides.length; n++) {
            long other = n == 0 ? 0 : sides[n - 1];
            across[n] = filled(job, false, other, (int) longest, words);
            if (!job.turn) along[n] = filled(job, true, other, (int) longest, words);
        }
    }

    /** About what it takes to work them out. */
    static long operations(RollJob job, long longest) {
        return 2L * job.types.length * job.pieces() * (longest / 64 + 1) / WORDS_AN_OPERATION;
    }

    private static int[] fitting(long[] sides, int longest) {
        int[] fitting = new int[longest + 1];
        int fit = 0;
        for (int at = 0; at <= longest; at++) {
            while (fit < sides.length && sides[fit] <= at) fit++;
            fitting[at] = fit;
        }
        return fitting;
    }

    private static int[] filled(RollJob job, boolean along, long other, int longest, int words) {
        long[] sums = new long[words];
        sums[0] = 1;
        for (RollJob.Type type : job.types) {
            boolean wide = (job.turn || !along) && type.height() <= other;
            boolean high = (job.turn || along) && type.width() <= other;
            for (int i = 0; i < type.count() && (wide || high); i++) {
                long[] before = sums.clone();
                if (wide) add(before, type.width(), sums);
                if (high) add(before, type.height(), sums);
            }
        }
        int[] filled = new int[longest + 1];
        int last = 0;
        for (int at = 0; at <= longest; at++) {
            if ((sums[at >> 6] >>> at & 1) == 1) last = at;
            filled[at] = last;
        }
        return filled;
    }

    private static void add(long[] sums, long side, long[] to) {
        int skip = (int) Math.min(sums.length, side >> 6);
        int bits = (int) (side & 63);
        for (int i = sums.length - 1; i >= skip; i--) {
            to[i] |= sums[i - skip] << bits;
            if (bits > 0 && i > skip) to[i] |= sums[i - skip - 1] >>> 64 - bits;
        }
    }

    /** False where every side is taken to be filled. */
    boolean known() {
        return across != null;
    }

    /** How many of the sides of pieces fit this length; 0 where that is not known. */
    int fitting(long length) {
        return fitting == null ? 0 : fitting[(int) length];
    }

    /** What can be filled of a width, at most, where so many sides fit the height. */
    long acrossWhere(long width, int fitting) {
        return across == null ? width : across[fitting][(int) width];
    }

    /** What can be filled of a height, at most, where so many sides fit the width. */
    long alongWhere(long height, int fitting) {
        return along == null ? height : along[fitting][(int) height];
    }

    /** What can be filled of a width, at most. */
    long across(long width, long height) {
        return acrossWhere(width, fitting(height));
    }

    /** What can be filled of a height, at most. */
    long along(long height, long width) {
        return alongWhere(height, fitting(width));
    }
}
