package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Bands with hardly any waste, for many pieces: pieces stacked to blocks of nearly one width, and blocks of nearly one
 * height beside each other until the roll is full. Of many pieces there are always some that match; the band is sought
 * among all of them and not, as a {@link CutTable} must, among a few. Little waste is allowed first; what matches nothing
 * then may waste more, and what matches nothing in the end is left.
 */
final class DenseBands {
    /** What a block may leave uncovered and by which the heights in a band may differ, from round to round. */
    private static final double[] LOOSE = {0.003, 0.008, 0.018, 0.035, 0.07, 0.14, 0.25};
    /** What a band as a whole may leave uncovered, as a multiple of that. */
    private static final double BAND_WASTE = 1.3;
    private static final int MOST_BLOCKS = 24_000;
    private static final int BLOCKS_A_PIECE = 40;
    /** Pieces up to which blocks of four are looked for. */
    private static final int FEW = 90;
    private static final int ANCHORS = 14;
    private static final int NEAR = 70;
    private static final int TRIES = 12;
    private static final int FAILURES = 8;
    /** So few pieces are better laid by a table. */
    private static final int ENOUGH = 8;

    /** Types of the pieces in a stack, one above the other in a number; 0 where there is none. */
    private static final int TYPE_BITS = 15;
    private static final long TYPE_MASK = (1L << TYPE_BITS) - 1;
    /** Sorted are sizes with a place behind them, as numbers. */
    private static final int PLACE_BITS = 20;
    private static final long PLACE_MASK = (1L << PLACE_BITS) - 1;

    private final RollJob job;
    private final long width;
    private final RollBudget work;
    private final SplittableRandom random;
    private final int[] left;
    private int pieces;
    private final double scale;
    private double loose;

    // stacks: one piece, two stacks one after the other, or another stack turned
    private int made;
    private long[] wide = new long[1024];
    private long[] high = new long[1024];
    private long[] area = new long[1024];
    private long[] types = new long[1024];
    private byte[] count = new byte[1024];
    private int[] first = new int[1024];
    /** The other stack; {@code PIECE} or {@code TURNED} where there is none. */
    private int[] second = new int[1024];
    private static final int PIECE = -1;
    private static final int TURNED = -2;

    /** Stacks for bands, by height, and the heights. */
    private int[] byHeight = new int[0];
    private long[] heights = new long[0];
    private int stacks;
    /** Stacks with a piece of a type, by height: those of type t end where those of the next begin. */
    private int[] withType = new int[0];
    private final int[] begins;

    // the band being sought
    private final int[] taken = new int[1024];
    private int takes;
    private final int[] near = new int[NEAR];
    private final long[] nearWide = new long[NEAR];
    private final long[] nearKeys = new long[NEAR];
    private int nears;
    private int[] best;
    private long bestArea;
    private long spent;

    /**
     * @param pieces how many of each type there are
     * @param scale  how much looser than usual each round is
     */
    DenseBands(RollJob job, long width, int[] pieces, double scale, long seed, RollBudget work) {
        this.job = job;
        this.width = width;
        this.scale = scale;
        this.work = work;
        this.random = new SplittableRandom(seed);
        left = pieces.clone();
        this.pieces = Arrays.stream(left).sum();
        begins = new int[left.length + 1];
    }

    /** @param leftOver takes the pieces that no dense band holds */
    List<Block> bands(List<Block> leftOver) {
        List<Block> bands = new ArrayList<>();
        for (int round = 0; round < LOOSE.length && !work.over() && pieces > ENOUGH; round++) {
            loose = Math.min(LOOSE[LOOSE.length - 1], LOOSE[round] * scale);
            round(1 - BAND_WASTE * loose, bands);
        }
        for (int t = 0; t < left.length; t++)
            for (int i = 0; i < left[t]; i++) leftOver.add(Block.piece(t, job.types[t].width(), job.types[t].height()));
        return bands;
    }

    private void round(double dense, List<Block> bands) {
        build();
        int failures = 0;
        for (int t : order()) {
            while (left[t] > 0 && pieces > ENOUGH && failures < FAILURES && !work.over()) {
                Block band = band(t, dense);
                failures = band == null ? failures + 1 : 0;
                if (band == null) break;
                bands.add(band);
            }
        }
    }

    /** Types, large ones likelier first. */
    private int[] order() {
        double[] weight = new double[left.length];
        for (int t = 0; t < left.length; t++) weight[t] = job.types[t].area() * (0.6 + 0.8 * random.nextDouble());
        int n = 0;
        long[] keys = new long[left.length];
        // a float above 0 is in the order of its bits
        for (int t = 0; t < left.length; t++)
            if (left[t] > 0) keys[n++] = (long) -Float.floatToRawIntBits((float) weight[t]) << PLACE_BITS | t;
        Arrays.sort(keys, 0, n);
        int[] order = new int[n];
        for (int i = 0; i < n; i++) order[i] = (int) (keys[i] & PLACE_MASK);
        return order;
    }

    private int stack(long w, long h, long covered, long of, int n, int one, int two) {
        if (made == wide.length) {
            wide = Arrays.copyOf(wide, 2 * made);
            high = Arrays.copyOf(high, 2 * made);
            area = Arrays.copyOf(area, 2 * made);
            types = Arrays.copyOf(types, 2 * made);
            count = Arrays.copyOf(count, 2 * made);
            first = Arrays.copyOf(first, 2 * made);
            second = Arrays.copyOf(second, 2 * made);
        }
        wide[made] = w;
        high[made] = h;
        area[made] = covered;
        types[made] = of;
        count[made] = (byte) n;
        first[made] = one;
        second[made] = two;
        return made++;
    }

    private void turned(int stack) {
        stack(high[stack], wide[stack], area[stack], types[stack], count[stack], stack, TURNED);
    }

    private Block block(int stack) {
        if (second[stack] == PIECE) {
            RollJob.Type type = job.types[first[stack]];
            return Block.piece(first[stack], type.width(), type.height());
        }
        if (second[stack] == TURNED) return block(first[stack]).turn();
        return Block.after(block(first[stack]), block(second[stack]));
    }

    private void build() {
        made = 0;
        for (int t = 0; t < left.length; t++) {
            if (left[t] == 0) continue;
            long w = job.types[t].width();
            long h = job.types[t].height();
            int given = stack(w, h, w * h, t + 1, 1, t, PIECE);
            if (job.turn && w != h && h <= width) turned(given);
        }
        // one that is too wide as it is given is only there to be turned
        int singles = made;
        int most = Math.min(MOST_BLOCKS, BLOCKS_A_PIECE * pieces);
        stacked(0, singles, 2, most / 4);
        int pairs = made;
        if (job.turn) for (int pair = singles; pair < pairs; pair++) if (high[pair] <= width) turned(pair);
        int parts = made;
        stacked(0, parts, pieces <= FEW ? 4 : 3, most / 2);
        sort(pairs, parts);
        work.spend(60L * stacks);
    }

    /** By height, and by type and height, all but the turned pairs. */
    private void sort(int pairs, int parts) {
        long[] keys = new long[made];
        int n = 0;
        for (int s = 0; s < made; s++) {
            if (s == pairs) s = parts;
            if (s < made && wide[s] <= width) keys[n++] = high[s] << PLACE_BITS | s;
        }
        Arrays.sort(keys, 0, n);
        stacks = n;
        byHeight = new int[n];
        heights = new long[n];
        Arrays.fill(begins, 0);
        for (int i = 0; i < n; i++) {
            byHeight[i] = (int) (keys[i] & PLACE_MASK);
            heights[i] = keys[i] >>> PLACE_BITS;
            each(byHeight[i], -1);
        }
        for (int t = 0; t < left.length; t++) begins[t + 1] += begins[t];
        withType = new int[begins[left.length]];
        for (int i = n - 1; i >= 0; i--) each(byHeight[i], byHeight[i]);
        // each type has been filled from its end down to its beginning
    }

    /** Counts a stack for each of its types, or notes it. */
    private void each(int stack, int noted) {
        long before = 0;
        for (long of = types[stack]; of != 0; of >>>= TYPE_BITS) {
            long type = of & TYPE_MASK;
            if (type == before) continue;
            before = type;
            if (noted < 0) begins[(int) type - 1]++;
            else withType[--begins[(int) type - 1]] = noted;
        }
    }

    /**
     * Each stack on those that are just a little wider, the nearest first; equal ones in no order, so that any may match.
     *
     * @param together pieces in both: two, or three, or three and four
     */
    private void stacked(int from, int to, int together, int most) {
        int n = 0;
        int[] part = new int[to - from];
        for (int s = from; s < to; s++) if (wide[s] <= width) part[n++] = s;
        long[] keys = new long[n];
        for (int i = n - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            int swap = part[i];
            part[i] = part[j];
            part[j] = swap;
        }
        for (int i = 0; i < n; i++) keys[i] = wide[part[i]] << PLACE_BITS | i;
        Arrays.sort(keys);
        int[] sorted = new int[n];
        for (int i = 0; i < n; i++) sorted[i] = part[(int) (keys[i] & PLACE_MASK)];
        int partners = Math.max(2, most / Math.max(1, n));
        int into = 0;
        for (int i = 0; i < n && into < most; i++) {
            int one = sorted[i];
            long widest = (long) (wide[one] * (1 + 3 * loose));
            int found = 0;
            for (int j = i; j < n && found < partners; j++) {
                int other = sorted[j];
                if (wide[other] > widest) break;
                spent += 2;
                int both = count[one] + count[other];
                if (both < Math.min(3, together) || both > together) continue;
                long h = high[one] + high[other];
                long covered = area[one] + area[other];
                if (covered < wide[other] * h * (1 - loose)) continue;
                long of = types[one] | types[other] << TYPE_BITS * count[one];
                if (!there(of)) continue;
                stack(wide[other], h, covered, of, both, one, other);
                into++;
                found++;
            }
        }
        work.spend(spent + 20L * into);
        spent = 0;
    }

    /** Whether there are as many pieces of each type. */
    private boolean there(long of) {
        if (of <= TYPE_MASK) return left[(int) of - 1] > 0;
        boolean there = true;
        for (long rest = of; rest != 0; rest >>>= TYPE_BITS) there &= --left[(int) (rest & TYPE_MASK) - 1] >= 0;
        for (long rest = of; rest != 0; rest >>>= TYPE_BITS) left[(int) (rest & TYPE_MASK) - 1]++;
        return there;
    }

    private void use(int stack, int by) {
        for (long rest = types[stack]; rest != 0; rest >>>= TYPE_BITS) left[(int) (rest & TYPE_MASK) - 1] += by;
        pieces += by * count[stack];
    }

    /** The densest band found with a piece of this type; null where none is dense enough. */
    private Block band(int type, double dense) {
        int anchors = begins[type + 1] - begins[type];
        double densest = dense;
        int[] chosen = null;
        int tries = Math.min(ANCHORS, anchors);
        int start = anchors > tries ? random.nextInt(anchors) : 0;
        for (int i = 0; i < tries && !work.over(); i++) {
            int anchor = withType[begins[type] + (int) ((start + (long) i * anchors / tries) % anchors)];
            if (!there(types[anchor])) continue;
            long highest = high[anchor];
            best = null;
            bestArea = (long) (densest * width * highest);
            use(anchor, -1);
            taken[0] = anchor;
            takes = 1;
            near(highest);
            for (int n = 0; n < TRIES; n++) fill(width - wide[anchor], area[anchor], highest);
            use(anchor, 1);
            work.spend(spent + 100);
            spent = 0;
            if (best != null) {
                densest = (double) bestArea / width / highest;
                chosen = best;
            }
        }
        if (chosen == null) return null;
        Block band = null;
        for (int stack : chosen) {
            use(stack, -1);
            band = band == null ? block(stack) : Block.beside(band, block(stack));
        }
        return band;
    }

    /** What is just a little lower and still there, by width. */
    private void near(long highest) {
        nears = 0;
        long lowest = (long) Math.ceil(highest * (1 - loose));
        for (int i = under(heights, stacks, highest) - 1; i >= 0 && nears < NEAR && heights[i] >= lowest; i--) {
            spent += 3;
            if (!there(types[byHeight[i]])) continue;
            nearKeys[nears++] = wide[byHeight[i]] << PLACE_BITS | i;
        }
        // of one width the highest first
        for (int i = 0; i < nears; i++) nearKeys[i] ^= PLACE_MASK;
        Arrays.sort(nearKeys, 0, nears);
        for (int i = 0; i < nears; i++) {
            near[i] = byHeight[(int) (nearKeys[i] & PLACE_MASK ^ PLACE_MASK)];
            nearWide[i] = nearKeys[i] >>> PLACE_BITS;
        }
        spent += 12L * nears;
    }

    /** How many of these, which rise, are no more than this. */
    static int under(long[] sizes, int n, long most) {
        int low = 0;
        int high = n;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sizes[middle] <= most) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    /** Takes stacks at random until two can fill the rest, and those two so that they fill it best. */
    private void fill(long rest, long covered, long highest) {
        int from = takes;
        while (true) {
            int end = under(nearWide, nears, rest);
            if (end == 0) {
                note(covered, -1, -1);
                break;
            }
            if (rest <= nearWide[end - 1] * 2) {
                finish(rest, covered, end);
                break;
            }
            int next = -1;
            for (int attempt = 0; attempt < 6 && next < 0; attempt++) {
                int stack = near[random.nextInt(end)];
                if (there(types[stack])) next = stack;
            }
            spent += 10;
            if (next < 0 || takes == taken.length) {
                finish(rest, covered, end);
                break;
            }
            use(next, -1);
            taken[takes++] = next;
            rest -= wide[next];
            covered += area[next];
            // no fill of the rest can better what was found
            if (covered + rest * highest <= bestArea) break;
        }
        while (takes > from) use(taken[--takes], 1);
    }

    /** The one or two stacks that cover most of the rest. */
    private void finish(long rest, long covered, int end) {
        int one = -1;
        int two = -1;
        long most = bestArea - covered;
        for (int i = end - 1; i >= 0; i--) {
            int stack = near[i];
            if (!there(types[stack])) continue;
            if (area[stack] > most) {
                most = area[stack];
                one = stack;
                two = -1;
            }
            int j = Math.min(i + 1, under(nearWide, nears, rest - nearWide[i]));
            spent += 8;
            if (j == 0) continue;
            use(stack, -1);
            for (int looked = 0; j > 0 && looked < 3; j--) {
                int other = near[j - 1];
                if (!there(types[other])) continue;
                looked++;
                if (area[stack] + area[other] > most) {
                    most = area[stack] + area[other];
                    one = stack;
                    two = other;
                }
            }
            use(stack, 1);
        }
        if (one >= 0) note(covered + most, one, two);
    }

    private void note(long covered, int one, int two) {
        if (covered <= bestArea) return;
        bestArea = covered;
        int n = takes + (one < 0 ? 0 : 1) + (two < 0 ? 0 : 1);
        best = Arrays.copyOf(taken, n);
        if (one >= 0) best[takes] = one;
        if (two >= 0) best[takes + 1] = two;
    }
}
