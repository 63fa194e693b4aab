package lapyard.sheets;

import java.util.Arrays;

/**
 * The best ways to go on from the partial layouts of a beam, not worked out yet. A choice has a score, lower is better; the partial
 * layout it goes on from; what is done there; and the mark of what then is there. Of choices with equal marks the best is kept.
 */
final class BeamChoices {
    private long[] order = new long[64];
    private int[] from = new int[64];
    private int[] chosen = new int[64];
    private long[] mark = new long[64];
    private int choices;
    private int keep;
    private long[] seen = new long[64];
    /** No choice of this score or above is kept. */
    float worst;

    /** Marks of equal things are equal; those of others are taken for different. */
    static long mix(long a, long b) {
        long z = a * 0x9E3779B97F4A7C15L + b * 0xC2B2AE3D27D4EB4FL;
        z = (z ^ z >>> 29) * 0xBF58476D1CE4E5B9L;
        return z ^ z >>> 32;
    }

    /** @param keep so many of the best */
    void clear(int keep) {
        this.keep = keep;
        choices = 0;
        worst = Float.MAX_VALUE;
    }

    int from(int place) {
        return from[(int) order[place]];
    }

    int chosen(int place) {
        return chosen[(int) order[place]];
    }

    void note(float score, int f, int choice, long now) {
        if (choices == order.length) {
            if (choices >= 4 * keep) sift();
            if (choices > order.length / 2) {
                order = Arrays.copyOf(order, 2 * choices);
                from = Arrays.copyOf(from, 2 * choices);
                chosen = Arrays.copyOf(chosen, 2 * choices);
                mark = Arrays.copyOf(mark, 2 * choices);
            }
            if (score >= worst) return;
        }
        from[choices] = f;
        chosen[choices] = choice;
        mark[choices] = now;
        // scores are never negative, so their bits are in their order
        order[choices] = (long) Float.floatToRawIntBits(score) << 32 | choices;
        choices++;
    }

    /** Brings the best choices to the front in their order, and drops those that are alike and those that are too many. @return how many are left */
    int sift() {
        Arrays.sort(order, 0, choices);
        int size = Integer.highestOneBit(Math.max(16, Math.min(choices, 2 * keep) * 4));
        if (seen.length < size) seen = new long[size];
        Arrays.fill(seen, 0);
        int mask = seen.length - 1;
        int n = 0;
        for (int c = 0; c < choices && n < keep; c++) {
            long now = mark[(int) order[c]] | 1;
            int slot = (int) (now >>> 20) & mask;
            while (seen[slot] != 0 && seen[slot] != now) slot = slot + 1 & mask;
            if (seen[slot] == now) continue;
            seen[slot] = now;
            order[n++] = order[c];
        }
        if (n == keep) worst = Float.intBitsToFloat((int) (order[n - 1] >>> 32));
        // what is kept moves to the first places
        int[] f = new int[n];
        int[] o = new int[n];
        long[] m = new long[n];
        for (int c = 0; c < n; c++) {
            int at = (int) order[c];
            f[c] = from[at];
            o[c] = chosen[at];
            m[c] = mark[at];
            order[c] = order[c] >>> 32 << 32 | c;
        }
        System.arraycopy(f, 0, from, 0, n);
        System.arraycopy(o, 0, chosen, 0, n);
        System.arraycopy(m, 0, mark, 0, n);
        choices = n;
        return n;
    }
}
