package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Pieces as they may lie across a width, narrowest first, and sets of them as bits. */
final class Lies {
    final int count;
    final long[] wide;
    final long[] high;
    final long[] size;
    final int[] typeOf;
    /** The same piece the other way; itself where there is none. */
    final int[] other;
    /** Largest first, and which of these each is. */
    final int[] bySize;
    final int[] rank;
    /** Of each piece the lie that is less high, the highest first. */
    final int[] tallest;

    /** @param counts of each type, those that are left out have none */
    Lies(RollJob job, int[] counts, long width) {
        List<long[]> all = new ArrayList<>();
        for (int t = 0; t < counts.length; t++) {
            if (counts[t] == 0) continue;
            long w = job.types[t].width();
            long h = job.types[t].height();
            if (w <= width) all.add(new long[] {w, h, t});
            if (job.turn && w != h && h <= width) all.add(new long[] {h, w, t});
        }
        all.sort(Comparator.comparingLong((long[] a) -> a[0]).thenComparingLong(a -> a[1]));
        count = all.size();
        wide = all.stream().mapToLong(a -> a[0]).toArray();
        high = all.stream().mapToLong(a -> a[1]).toArray();
        size = all.stream().mapToLong(a -> a[0] * a[1]).toArray();
        typeOf = all.stream().mapToInt(a -> (int) a[2]).toArray();
        other = others(counts.length);
        bySize = order(IntStream.range(0, count), size);
        rank = new int[count];
        for (int s = 0; s < count; s++) rank[bySize[s]] = s;
        tallest = order(IntStream.range(0, count).filter(o -> high[o] < high[other[o]] || other[o] == o), high);
    }

    private int[] others(int types) {
        int[] others = new int[count];
        int[] seen = new int[types];
        Arrays.fill(seen, -1);
        for (int o = 0; o < count; o++) {
            int before = seen[typeOf[o]];
            others[o] = before < 0 ? o : before;
            if (before >= 0) others[before] = o;
            seen[typeOf[o]] = o;
        }
        return others;
    }

    private static int[] order(IntStream some, long[] largestFirst) {
        return some.boxed().sorted(Comparator.comparingLong(o -> -largestFirst[o])).mapToInt(o -> o).toArray();
    }

    /** All, whatever their order. */
    long[] all() {
        long[] bits = new long[(count + 63) / 64];
        for (int o = 0; o < count; o++) bits[o >> 6] |= 1L << o;
        return bits;
    }

    static boolean has(long[] bits, int o) {
        return (bits[o >> 6] >>> o & 1) == 1;
    }

    static void remove(long[] bits, int o) {
        bits[o >> 6] &= ~(1L << o);
    }

    /** The first from this one on; {@link #count} where there is none. */
    int next(long[] bits, int from) {
        int word = from >> 6;
        if (word >= bits.length) return count;
        long rest = bits[word] & -1L << from;
        while (rest == 0) {
            if (++word == bits.length) return count;
            rest = bits[word];
        }
        return 64 * word + Long.numberOfTrailingZeros(rest);
    }

    /** How many are at most so wide. */
    int upTo(long most) {
        return DenseBands.under(wide, count, most);
    }
}
