package lapyard.sheets;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.PriorityQueue;

/**
 * Whether straight cuts lay all pieces within a stretch of a roll, answered by looking at all layouts. As the stretch is given, so is
 * the waste that it can bear. A rectangle is dropped where it and what pieces cannot fill beside it and after it ({@link SideSums})
 * waste more, and most selections of pieces have none left.
 *
 * <p>Of the two parts of any cut one wastes no more than half of what both may. So rectangles are built up, from small to large, only as
 * far as they waste half; from the whole stretch such rectangles are then cut off, over all its width or all its length, until the rest
 * is one of them too.
 *
 * @see "Wang, Two algorithms for constrained two-dimensional cutting stock problems, Operations Research 31 (1983), for building up
 *     and a limit on waste"
 */
final class CutWithin {
    /** Bits of all counts together, with one above each to borrow from. */
    private static final int MOST_BITS = 63;
    private static final int MOST_GROUPS = 60_000;
    /** Groups that come about are all looked at in pairs, so that very many are given up at once: the least that a pair takes, all in all. */
    private static final double OPERATIONS_A_PAIR = 0.5;
    private static final int LOOKS_AN_OPERATION = 4;
    private static final int JOINING = 8;

    /** A selection of pieces and its smallest rectangles, width rising and height falling; of each the parts that it is joined of. */
    private static final class Group {
        final long counts;
        final long area;
        long[] width = new long[2];
        long[] height = new long[2];
        Group[] first = new Group[2];
        Group[] second = new Group[2];
        boolean[] beside = new boolean[2];
        int size;

        Group(long counts, long area) {
            this.counts = counts;
            this.area = area;
        }

        /** The last rectangle no wider than this, which is the lowest; -1 where there is none. */
        int within(long wide) {
            int at = size - 1;
            while (at >= 0 && width[at] > wide) at--;
            return at;
        }

        /** The first rectangle no higher than this, which is the narrowest; -1 where there is none. */
        int under(long high) {
            int at = 0;
            while (at < size && height[at] > high) at++;
            return at == size ? -1 : at;
        }

        /** Adds a rectangle unless one there is no wider and no higher. */
        void offer(long wide, long high, Group one, Group two, boolean besides) {
            int from = 0;
            while (from < size && width[from] < wide) from++;
            if (from > 0 && height[from - 1] <= high || from < size && width[from] == wide && height[from] <= high) return;
            int to = from;
            while (to < size && height[to] >= high) to++;
            int size = this.size + from + 1 - to;
            if (size > width.length) grow();
            System.arraycopy(width, to, width, from + 1, this.size - to);
            System.arraycopy(height, to, height, from + 1, this.size - to);
            System.arraycopy(first, to, first, from + 1, this.size - to);
            System.arraycopy(second, to, second, from + 1, this.size - to);
            System.arraycopy(beside, to, beside, from + 1, this.size - to);
            this.size = size;
            width[from] = wide;
            height[from] = high;
            first[from] = one;
            second[from] = two;
            beside[from] = besides;
        }

        private void grow() {
            width = Arrays.copyOf(width, 2 * size + 2);
            height = Arrays.copyOf(height, 2 * size + 2);
            first = Arrays.copyOf(first, 2 * size + 2);
            second = Arrays.copyOf(second, 2 * size + 2);
            beside = Arrays.copyOf(beside, 2 * size + 2);
        }
    }

    /** A rest that is to be laid in a rectangle of this width. */
    private record Rest(long counts, long width) {}

    private final RollJob job;
    private final SideSums sums;
    private final RollBudget work;
    private final int[] shift;
    private final long borrows;
    private final long all;
    private boolean finished;

    // of one stretch
    private long wide;
    private long high;
    private long bearable;
    private long[] chargedAcross;
    private long[] lostAlong;
    private final Map<Long, Group> byCounts = new HashMap<>();
    /** In the order of their area; of each its counts and the least waste once more, as they are looked at most. */
    private Group[] groups = new Group[64];
    private long[] countsOf = new long[64];
    private long[] leastOf = new long[64];
    private int known;
    private PriorityQueue<Group> open;
    private final Map<Rest, Long> failed = new HashMap<>();

    private CutWithin(RollJob job, SideSums sums, int[] shift, RollBudget work) {
        this.job = job;
        this.sums = sums;
        this.shift = shift;
        this.work = work;
        long high = 0;
        long whole = 0;
        for (int t = 0; t < shift.length; t++) {
            whole |= (long) job.types[t].count() << shift[t];
            high |= 1L << shift[t] + bits(job.types[t]) - 1;
        }
        this.borrows = high;
        this.all = whole;
    }

    /**
     * @param longest no stretch is longer, nor any roll wider
     * @return null where there are too many pieces or sizes for the work
     */
    static CutWithin of(RollJob job, long longest, RollBudget work) {
        int[] shift = new int[job.types.length];
        int bits = 0;
        for (int t = 0; t < shift.length; t++) {
            shift[t] = bits;
            bits += bits(job.types[t]);
            if (bits > MOST_BITS) return null;
        }
        if (SideSums.operations(job, longest) > work.left()) return null;
        SideSums sums = new SideSums(job, longest, work);
        return sums.known() ? new CutWithin(job, sums, shift, work) : null;
    }

    /** Of a count, and one more. */
    private static int bits(RollJob.Type type) {
        return 33 - Integer.numberOfLeadingZeros(type.count());
    }

    /** False where the work ran out before all layouts were looked at. */
    boolean finished() {
        return finished;
    }

    /** @return all pieces within this width and height; null where no straight cuts do that, or where not {@link #finished} */
    Block fit(long width, long height) {
        wide = width;
        high = height;
        bearable = width * height - job.area();
        finished = true;
        if (bearable < 0) return null;
        chargedAcross = new long[(int) width + 1];
        lostAlong = new long[(int) height + 1];
        for (int w = 0; w <= width; w++) chargedAcross[w] = width - sums.across(width - w, height);
        for (int h = 0; h <= height; h++) lostAlong[h] = height - h - sums.along(height - h, width);
        byCounts.clear();
        known = 0;
        failed.clear();
        if (!buildUp()) {
            finished = false;
            return null;
        }
        int[] every = new int[known];
        for (int g = 0; g < known; g++) every[g] = g;
        return cutOff(width, height, all, job.area(), every);
    }

    private boolean buildUp() {
        open = new PriorityQueue<>(Comparator.comparingLong((Group g) -> g.area).thenComparingLong(g -> g.counts));
        for (int t = 0; t < job.types.length; t++) {
            RollJob.Type type = job.types[t];
            offer(1L << shift[t], type.area(), type.width(), type.height(), null, null, false);
            if (job.turn) offer(1L << shift[t], type.area(), type.height(), type.width(), null, null, false);
        }
        double most = Math.min(MOST_GROUPS, Math.sqrt(2 * work.left() / OPERATIONS_A_PAIR));
        while (!open.isEmpty()) {
            Group next = open.poll();
            long least = Long.MAX_VALUE;
            for (int i = 0; i < next.size; i++) least = Math.min(least, next.width[i] * next.height[i] - next.area);
            know(next, least);
            long room = all + borrows - next.counts;
            long spare = bearable / 2 - least;
            long looked = 10 + known / LOOKS_AN_OPERATION;
            for (int g = 0; g < known; g++)
                if (leastOf[g] <= spare && (room - countsOf[g] & borrows) == borrows) looked += JOINING + beside(groups[g], next) + after(groups[g], next);
            work.spend(looked);
            if (work.over() || byCounts.size() > most) return false;
        }
        return true;
    }

    private void know(Group group, long least) {
        if (known == groups.length) {
            groups = Arrays.copyOf(groups, 2 * known);
            countsOf = Arrays.copyOf(countsOf, 2 * known);
            leastOf = Arrays.copyOf(leastOf, 2 * known);
        }
        groups[known] = group;
        countsOf[known] = group.counts;
        leastOf[known++] = least;
    }

    private int beside(Group one, Group two) {
        int steps = 0;
        for (int i = 0, j = 0; i < one.size && j < two.size; steps++) {
            long h = Math.max(one.height[i], two.height[j]);
            offer(one.counts + two.counts, one.area + two.area, one.width[i] + two.width[j], h, one, two, true);
            boolean first = one.height[i] == h;
            if (two.height[j] == h) j++;
            if (first) i++;
        }
        return steps;
    }

    private int after(Group one, Group two) {
        int steps = 0;
        for (int i = one.size - 1, j = two.size - 1; i >= 0 && j >= 0; steps++) {
            long w = Math.max(one.width[i], two.width[j]);
            offer(one.counts + two.counts, one.area + two.area, w, one.height[i] + two.height[j], one, two, false);
            boolean first = one.width[i] == w;
            if (two.width[j] == w) j--;
            if (first) i--;
        }
        return steps;
    }

    private void offer(long counts, long area, long w, long h, Group one, Group two, boolean beside) {
        if (w > wide || h > high || 2 * (w * h - area) > bearable) return;
        if (chargedAcross[(int) w] * h + lostAlong[(int) h] * w - area > bearable) return;
        Group group = byCounts.get(counts);
        if (group == null) {
            group = new Group(counts, area);
            byCounts.put(counts, group);
            open.add(group);
        }
        group.offer(w, h, one, two, beside);
    }

    /** Lays these pieces in a rectangle; {@code among} are numbers of groups that may be cut off first. Null where they do not fit or the work ran out. */
    private Block cutOff(long w, long h, long counts, long area, int[] among) {
        long waste = w * h - area;
        if (waste < 0) return null;
        Group alone = byCounts.get(counts);
        int lowest = alone == null ? -1 : alone.within(w);
        if (lowest >= 0 && alone.height[lowest] <= h) return block(alone, lowest);
        Rest rest = new Rest(counts, w);
        if (failed.getOrDefault(rest, -1L) >= h) return null;
        int[] here = new int[among.length];
        int many = 0;
        for (int g : among) if (2 * leastOf[g] <= waste && (counts + borrows - countsOf[g] & borrows) == borrows) here[many++] = g;
        here = Arrays.copyOf(here, many);
        work.spend(among.length / LOOKS_AN_OPERATION + 4L * many + 10);
        for (int g : here) {
            if (work.over()) {
                finished = false;
                return null;
            }
            Group group = groups[g];
            int low = group.within(w);
            if (low >= 0 && group.height[low] * w - group.area <= waste) {
                Block after = cutOff(w, h - group.height[low], counts - group.counts, area - group.area, here);
                if (after != null) return Block.after(block(group, low), after);
            }
            int narrow = group.under(h);
            if (narrow >= 0 && group.width[narrow] * h - group.area <= waste) {
                Block beside = cutOff(w - group.width[narrow], h, counts - group.counts, area - group.area, here);
                if (beside != null) return Block.beside(block(group, narrow), beside);
            }
        }
        if (finished) failed.merge(rest, h, Math::max);
        return null;
    }

    private Block block(Group group, int at) {
        if (group.first[at] == null) return Block.piece(type(group.counts), group.width[at], group.height[at]);
        if (group.beside[at]) {
            long h = group.height[at];
            return Block.beside(block(group.first[at], group.first[at].under(h)), block(group.second[at], group.second[at].under(h)));
        }
        long w = group.width[at];
        return Block.after(block(group.first[at], group.first[at].within(w)), block(group.second[at], group.second[at].within(w)));
    }

    private int type(long single) {
        int type = 0;
        while (1L << shift[type] != single) type++;
        return type;
    }
}
