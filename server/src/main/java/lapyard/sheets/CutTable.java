package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * For every selection from a small set of blocks: all smallest rectangles that straight cuts take apart into that
 * selection. Selections are worked up from small to large; a selection's rectangles come from every way of parting
 * it into two, beside each other or one after the other, so nothing that straight cuts can make is missed.
 *
 * <p>A selection holds some of each item and is numbered in mixed radix, the count of item i times its stride. The
 * rectangles of a selection form a staircase, width rising and height falling. Joining two staircases beside each
 * other adds widths at equal height, so it takes time in the sum of their lengths, not the product.
 *
 * @see "Wang, Two algorithms for constrained two-dimensional cutting stock problems, Operations Research 31 (1983)"
 */
final class CutTable {
    /** Blocks of one kind; {@code count} of them. */
    record Item(Block block, int count) {}

    /** Single pieces of one type become one item with a count. */
    static List<Item> items(List<Block> blocks) {
        List<Item> items = new ArrayList<>();
        for (Block block : blocks) {
            int same = -1;
            for (int i = 0; i < items.size() && block.type >= 0; i++)
                if (items.get(i).block().type == block.type) same = i;
            if (same < 0) items.add(new Item(block, 1));
            else items.set(same, new Item(items.get(same).block(), items.get(same).count() + 1));
        }
        return items;
    }

    /**
     * What a rectangle must keep to.
     *
     * @param width  the widest roll
     * @param height the longest of use
     * @param waste  the most that a rectangle of everything may leave uncovered, in square units;
     *               {@code Long.MAX_VALUE} where nothing may be missed
     * @param narrow the narrowest side of any piece: a rectangle that leaves less than this beside itself across
     *               {@code width} is charged with the whole width. 0 where there are rolls of several widths
     */
    record Limits(long width, long height, long waste, long narrow) {
        static Limits size(long width, long height) {
            return new Limits(width, height, Long.MAX_VALUE, 0);
        }
    }

    /**
     * A small selection may waste this share of what all may, a larger one more in step with its area. With limits on
     * waste a table may so miss a layout; it is a third smaller for it, and searches that use such limits go on.
     */
    private static final double SMALL_SHARE = 0.3;

    private static final int OPERATIONS_AN_OFFER = 2;
    /** More than any waste; the sum of two is still a number. */
    private static final long NONE = Long.MAX_VALUE / 2;

    private final List<Item> items;
    private final boolean turn;
    private final Limits limits;
    private final int[] stride;
    private final boolean allSingle;
    private final int selections;
    private final int[] start;
    private final long[] areas;
    /** By selection: the least that any of its rectangles leaves uncovered; {@code NONE} where it has none. */
    private final long[] leastWaste;

    private long[] widths = new long[256];
    private long[] heights = new long[256];
    private int[] origins = new int[256];
    private int used;

    // the staircase being gathered
    private long[] stairWidth = new long[64];
    private long[] stairHeight = new long[64];
    private int[] stairOrigin = new int[64];
    private int stairs;
    private int cursor;
    private long allowed;

    private CutTable(List<Item> items, boolean turn, Limits limits) {
        this.items = items;
        this.turn = turn;
        this.limits = limits;
        this.stride = new int[items.size()];
        int product = 1;
        boolean single = true;
        for (int i = 0; i < items.size(); i++) {
            stride[i] = product;
            product *= items.get(i).count() + 1;
            single &= items.get(i).count() == 1;
        }
        this.selections = product;
        this.allSingle = single;
        this.start = new int[product + 1];
        this.areas = new long[product];
        this.leastWaste = new long[product];
    }

    /** Ways of parting all selections, which is what a table costs to work out; a double, as it grows fast. */
    static double partings(List<Item> items) {
        double product = 1;
        for (Item item : items) product *= (item.count() + 1.0) * (item.count() + 2.0) / 2;
        return product / 2;
    }

    /** @return null when the work ran out first */
    static CutTable of(List<Item> items, boolean turn, Limits limits, RollBudget work) {
        CutTable table = new CutTable(items, turn, limits);
        return table.fill(work) ? table : null;
    }

    int selections() {
        return selections;
    }

    int full() {
        return selections - 1;
    }

    int stride(int item) {
        return stride[item];
    }

    int count(int selection, int item) {
        return selection / stride[item] % (items.get(item).count() + 1);
    }

    long area(int selection) {
        return areas[selection];
    }

    /** @return the least height on a roll of this width; {@code RollJob.NO_LIMIT} where none is known */
    long height(int selection, long rollWidth) {
        int point = point(selection, rollWidth);
        return point < 0 ? RollJob.NO_LIMIT : heights[point];
    }

    /** The cut tree behind {@link #height}. */
    Block block(int selection, long rollWidth) {
        int point = point(selection, rollWidth);
        if (point < 0)
            throw new IllegalStateException("no rectangle of selection " + selection + " within " + rollWidth);
        return rebuild(selection, point);
    }

    /** The last point no wider than this: the staircase falls, so it is the lowest. */
    private int point(int selection, long rollWidth) {
        int low = start[selection];
        int high = start[selection + 1];
        if (low == high || widths[low] > rollWidth) return -1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (widths[middle] <= rollWidth) low = middle;
            else high = middle;
        }
        return low;
    }

    /** The first point no higher than this: the narrowest. */
    private int pointUnder(int selection, long height) {
        int point = start[selection];
        while (heights[point] > height) point++;
        return point;
    }

    private Block rebuild(int selection, int point) {
        int origin = origins[point];
        if (origin < 0) {
            Block block = items.get(-origin - 1 >> 1).block();
            return (-origin - 1 & 1) == 0 ? block : block.turn();
        }
        int first = origin >> 1;
        int second = selection - first;
        if ((origin & 1) == 0) {
            long height = heights[point];
            return Block.beside(rebuild(first, pointUnder(first, height)), rebuild(second, pointUnder(second, height)));
        }
        long width = widths[point];
        return Block.after(rebuild(first, point(first, width)), rebuild(second, point(second, width)));
    }

    private boolean fill(RollBudget work) {
        double whole = 0;
        for (Item item : items) whole += (double) item.count() * item.block().area;
        int[] counts = new int[items.size()];
        long spent = 0;
        for (int selection = 1; selection < selections; selection++) {
            int item = 0;
            while (counts[item] == items.get(item).count()) counts[item++] = 0;
            counts[item]++;
            areas[selection] = areas[selection - stride[item]] + items.get(item).block().area;
            allowed = limits.waste == Long.MAX_VALUE
                    ? NONE - 1
                    : (long) (limits.waste * (SMALL_SHARE + (1 - SMALL_SHARE) * areas[selection] / whole));
            stairs = 0;
            cursor = 0;
            int total = 0;
            int only = -1;
            for (int i = 0; i < counts.length; i++) {
                total += counts[i];
                if (counts[i] > 0) only = i;
            }
            if (total == 1) {
                Block block = items.get(only).block();
                offer(block, 2 * only, selection);
                if (turn && block.width != block.height) offer(block.turn(), 2 * only + 1, selection);
            } else {
                spent += part(selection, counts);
            }
            keep(selection);
            spent += 20;
            if (spent > 500_000) {
                work.spend(spent);
                spent = 0;
                if (work.over()) return false;
            }
        }
        work.spend(spent);
        return true;
    }

    /** Joins both parts of every way of parting a selection; returns the work that it took. */
    private long part(int selection, int[] counts) {
        return allSingle ? partSingles(selection) : partCounts(selection, counts);
    }

    private long partSingles(int selection) {
        long spent = 0;
        // (a - selection) & selection walks the selections within this one upwards
        for (int first = -selection & selection; 2 * first <= selection; first = (first - selection) & selection)
            spent += 1 + join(first, selection - first, selection);
        return spent;
    }

    private long partCounts(int selection, int[] counts) {
        long spent = 0;
        int[] part = new int[counts.length];
        int first = 0;
        while (true) {
            int item = 0;
            while (part[item] == counts[item]) {
                first -= part[item] * stride[item];
                part[item++] = 0;
            }
            part[item]++;
            first += stride[item];
            if (2L * first > selection) return spent;
            spent += 1 + join(first, selection - first, selection);
        }
    }

    /** Offers what two selections make beside each other and one after the other; returns the work that it took. */
    private int join(int first, int second, int selection) {
        // what both leave uncovered by themselves stays uncovered
        if (leastWaste[first] + leastWaste[second] > allowed) return 0;
        // what a rectangle may cover at most
        long most = allowed + areas[selection];
        int offers = joinBeside(first, second, most) + joinAfter(first, second, most);
        return start[first + 1] - start[first] + start[second + 1] - start[second] + OPERATIONS_AN_OFFER * offers;
    }

    private int joinBeside(int first, int second, long most) {
        int endOne = start[first + 1];
        int endTwo = start[second + 1];
        long whole = limits.width;
        long narrow = limits.narrow;
        long[] widths = this.widths;
        long[] heights = this.heights;
        int offers = 0;
        int i = start[first];
        int j = start[second];
        while (i < endOne && j < endTwo) {
            long width = widths[i] + widths[j];
            if (width > whole) break;
            long one = heights[i];
            long two = heights[j];
            long height = Math.max(one, two);
            if (height <= limits.height && covered(width, height, whole, narrow) <= most) {
                offer(width, height, first << 1);
                offers++;
            }
            if (one >= two) i++;
            if (two >= one) j++;
        }
        return offers;
    }

    private int joinAfter(int first, int second, long most) {
        int startOne = start[first];
        int startTwo = start[second];
        long whole = limits.width;
        long narrow = limits.narrow;
        long[] widths = this.widths;
        long[] heights = this.heights;
        int offers = 0;
        int i = start[first + 1] - 1;
        int j = start[second + 1] - 1;
        while (i >= startOne && j >= startTwo) {
            long height = heights[i] + heights[j];
            if (height > limits.height) break;
            long one = widths[i];
            long two = widths[j];
            long width = Math.max(one, two);
            if (covered(width, height, whole, narrow) <= most) {
                offer(width, height, first << 1 | 1);
                offers++;
            }
            if (one >= two) i--;
            if (two >= one) j--;
        }
        return offers;
    }

    /** The area of a rectangle and of what is surely lost round it. */
    private long covered(long width, long height, long whole, long narrow) {
        return (whole - width < narrow ? whole : width) * height;
    }

    /** A block alone, as it lies. */
    private void offer(Block block, int item, int selection) {
        if (block.width > limits.width || block.height > limits.height) return;
        if (covered(block.width, block.height, limits.width, limits.narrow) - areas[selection] <= allowed) offer(block.width, block.height, -item - 1);
    }

    /** Adds a step to the staircase unless one there is no wider and no higher. */
    private void offer(long width, long height, int origin) {
        // candidates come in order of width, so the place of the last one is near
        int at = Math.min(cursor, stairs);
        while (at < stairs && stairWidth[at] <= width) at++;
        while (at > 0 && stairWidth[at - 1] > width) at--;
        cursor = at;
        if (at > 0 && stairHeight[at - 1] <= height) return;
        int from = at > 0 && stairWidth[at - 1] == width ? at - 1 : at;
        int to = at;
        while (to < stairs && stairHeight[to] >= height) to++;
        int shift = from + 1 - to;
        if (shift != 0) {
            if (stairs + shift > stairWidth.length) grow();
            System.arraycopy(stairWidth, to, stairWidth, from + 1, stairs - to);
            System.arraycopy(stairHeight, to, stairHeight, from + 1, stairs - to);
            System.arraycopy(stairOrigin, to, stairOrigin, from + 1, stairs - to);
            stairs += shift;
        }
        stairWidth[from] = width;
        stairHeight[from] = height;
        stairOrigin[from] = origin;
    }

    private void grow() {
        int size = stairWidth.length * 2;
        stairWidth = Arrays.copyOf(stairWidth, size);
        stairHeight = Arrays.copyOf(stairHeight, size);
        stairOrigin = Arrays.copyOf(stairOrigin, size);
    }

    private long leastArea() {
        long least = NONE;
        for (int i = 0; i < stairs; i++) least = Math.min(least, stairWidth[i] * stairHeight[i]);
        return least;
    }

    private void keep(int selection) {
        if (used + stairs > widths.length) {
            int size = Math.max(used + stairs, widths.length * 2);
            widths = Arrays.copyOf(widths, size);
            heights = Arrays.copyOf(heights, size);
            origins = Arrays.copyOf(origins, size);
        }
        System.arraycopy(stairWidth, 0, widths, used, stairs);
        System.arraycopy(stairHeight, 0, heights, used, stairs);
        System.arraycopy(stairOrigin, 0, origins, used, stairs);
        used += stairs;
        leastWaste[selection] = stairs == 0 ? NONE : leastArea() - areas[selection];
        start[selection + 1] = used;
    }
}
