package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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

    /** Blocks and the pieces in them, each type as often as it is in there. */
    private record Stack(Block block, int[] types) {}

    private final RollJob job;
    private final long width;
    private final RollBudget work;
    private final SplittableRandom random;
    private final int[] left;
    /** By height. */
    private final List<Stack> stacks = new ArrayList<>();
    private final List<List<Stack>> withType = new ArrayList<>();
    private final double scale;
    private double loose;

    // the band being sought
    private final List<Stack> taken = new ArrayList<>();
    private final Stack[] near = new Stack[NEAR];
    private int nears;
    private List<Stack> best;
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
    }

    /** @param leftOver takes the pieces that no dense band holds */
    List<Block> bands(List<Block> leftOver) {
        List<Block> bands = new ArrayList<>();
        for (int round = 0; round < LOOSE.length && !work.over() && Arrays.stream(left).sum() > ENOUGH; round++) {
            loose = Math.min(LOOSE[LOOSE.length - 1], LOOSE[round] * scale);
            round(1 - BAND_WASTE * loose, bands);
        }
        for (int t = 0; t < left.length; t++)
            for (int i = 0; i < left[t]; i++) leftOver.add(Block.piece(t, job.types[t].width(), job.types[t].height()));
        return bands;
    }

    private void round(double dense, List<Block> bands) {
        build();
        Integer[] order = new Integer[left.length];
        for (int t = 0; t < order.length; t++) order[t] = t;
        double[] weight = new double[left.length];
        for (int t = 0; t < order.length; t++) weight[t] = job.types[t].area() * (0.6 + 0.8 * random.nextDouble());
        Arrays.sort(order, Comparator.comparingDouble(t -> -weight[t]));
        int failures = 0;
        for (int t : order) {
            while (left[t] > 0 && Arrays.stream(left).sum() > ENOUGH && failures < FAILURES && !work.over()) {
                Block band = band(t, dense);
                failures = band == null ? failures + 1 : 0;
                if (band == null) break;
                bands.add(band);
            }
        }
    }

    private void build() {
        int pieces = 0;
        List<Stack> singles = new ArrayList<>();
        for (int t = 0; t < left.length; t++) {
            if (left[t] == 0) continue;
            pieces += left[t];
            Block block = Block.piece(t, job.types[t].width(), job.types[t].height());
            int[] own = {t};
            if (block.width <= width) singles.add(new Stack(block, own));
            if (job.turn && block.width != block.height && block.height <= width) singles.add(new Stack(block.turn(), own));
        }
        int most = Math.min(MOST_BLOCKS, BLOCKS_A_PIECE * pieces);
        List<Stack> pairs = stacked(byWidth(singles), 2, most / 4);
        List<Stack> parts = new ArrayList<>(pairs);
        if (job.turn) for (Stack pair : pairs) if (pair.block().height <= width) parts.add(new Stack(pair.block().turn(), pair.types()));
        stacks.clear();
        stacks.addAll(singles);
        stacks.addAll(pairs);
        List<Stack> both = new ArrayList<>(singles);
        both.addAll(parts);
        stacks.addAll(stacked(byWidth(both), pieces <= FEW ? 4 : 3, most / 2));
        stacks.sort(Comparator.comparingLong(stack -> stack.block().height));
        withType.clear();
        for (int t = 0; t < left.length; t++) withType.add(new ArrayList<>());
        for (Stack stack : stacks) {
            int before = -1;
            for (int t : stack.types()) {
                if (t != before) withType.get(t).add(stack);
                before = t;
            }
        }
        work.spend(60L * stacks.size());
    }

    /** By width; equal ones in no order, so that any may match. */
    private List<Stack> byWidth(List<Stack> all) {
        for (int i = all.size() - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            Stack swap = all.get(i);
            all.set(i, all.get(j));
            all.set(j, swap);
        }
        all.sort(Comparator.comparingLong(stack -> stack.block().width));
        return all;
    }

    /**
     * Each block on those that are just a little wider, the nearest first.
     *
     * @param together pieces in both: two, or three, or three and four
     */
    private List<Stack> stacked(List<Stack> parts, int together, int most) {
        List<Stack> into = new ArrayList<>();
        int partners = Math.max(2, most / Math.max(1, parts.size()));
        for (int i = 0; i < parts.size() && into.size() < most; i++) {
            Stack one = parts.get(i);
            long w = one.block().width;
            int found = 0;
            for (int j = i; j < parts.size() && found < partners; j++) {
                Stack other = parts.get(j);
                if (other.block().width > w * (1 + 3 * loose)) break;
                spent += 2;
                int n = one.types().length;
                int m = other.types().length;
                if (n + m < Math.min(3, together) || n + m > together) continue;
                long high = one.block().height + other.block().height;
                long area = one.block().area + other.block().area;
                if (area < other.block().width * high * (1 - loose)) continue;
                int[] types = Arrays.copyOf(one.types(), n + m);
                System.arraycopy(other.types(), 0, types, n, m);
                if (!there(types)) continue;
                into.add(new Stack(Block.after(one.block(), other.block()), types));
                found++;
            }
        }
        work.spend(spent + 20L * into.size());
        spent = 0;
        return into;
    }

    /** Whether there are as many pieces of each type. */
    private boolean there(int[] types) {
        if (types.length == 1) return left[types[0]] > 0;
        boolean there = true;
        for (int t : types) there &= --left[t] >= 0;
        for (int t : types) left[t]++;
        return there;
    }

    /** The densest band found with a piece of this type; null where none is dense enough. */
    private Block band(int type, double dense) {
        List<Stack> anchors = withType.get(type);
        double densest = dense;
        List<Stack> chosen = null;
        int tries = Math.min(ANCHORS, anchors.size());
        int first = anchors.size() > tries ? random.nextInt(anchors.size()) : 0;
        for (int i = 0; i < tries && !work.over(); i++) {
            Stack anchor = anchors.get((int) ((first + (long) i * anchors.size() / tries) % anchors.size()));
            if (!there(anchor.types())) continue;
            long high = anchor.block().height;
            best = null;
            bestArea = (long) (densest * width * high);
            use(anchor.types(), -1);
            taken.clear();
            taken.add(anchor);
            near(high);
            for (int n = 0; n < TRIES; n++) fill(width - anchor.block().width, anchor.block().area, high);
            use(anchor.types(), 1);
            work.spend(spent + 100);
            spent = 0;
            if (best != null) {
                densest = (double) bestArea / width / high;
                chosen = best;
            }
        }
        if (chosen == null) return null;
        Block band = null;
        for (Stack stack : chosen) {
            use(stack.types(), -1);
            band = band == null ? stack.block() : Block.beside(band, stack.block());
        }
        return band;
    }

    private void use(int[] types, int by) {
        for (int t : types) left[t] += by;
    }

    /** What is just a little lower and still there, by width. */
    private void near(long high) {
        nears = 0;
        long lowest = (long) Math.ceil(high * (1 - loose));
        for (int i = above(high) - 1; i >= 0 && nears < NEAR; i--) {
            Stack stack = stacks.get(i);
            if (stack.block().height < lowest) break;
            spent += 3;
            if (there(stack.types())) near[nears++] = stack;
        }
        Arrays.sort(near, 0, nears, Comparator.comparingLong(stack -> stack.block().width));
        spent += 12L * nears;
    }

    /** The first stack that is higher. */
    private int above(long height) {
        int low = 0;
        int high = stacks.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (stacks.get(middle).block().height <= height) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    /** Takes blocks at random until two can fill the rest, and those two so that they fill it best. */
    private void fill(long rest, long area, long high) {
        int from = taken.size();
        while (true) {
            int end = under(rest);
            if (end == 0) {
                note(area, null, null);
                break;
            }
            if (rest <= near[end - 1].block().width * 2) {
                finish(rest, area, end);
                break;
            }
            Stack next = null;
            for (int attempt = 0; attempt < 6 && next == null; attempt++) {
                Stack stack = near[random.nextInt(end)];
                if (there(stack.types())) next = stack;
            }
            spent += 10;
            if (next == null) {
                finish(rest, area, end);
                break;
            }
            use(next.types(), -1);
            taken.add(next);
            rest -= next.block().width;
            area += next.block().area;
            // no fill of the rest can better what was found
            if (area + rest * high <= bestArea) break;
        }
        while (taken.size() > from) use(taken.remove(taken.size() - 1).types(), 1);
    }

    /** The one or two blocks that cover most of the rest. */
    private void finish(long rest, long area, int end) {
        Stack one = null;
        Stack two = null;
        long most = bestArea - area;
        for (int i = end - 1; i >= 0; i--) {
            Stack stack = near[i];
            if (!there(stack.types())) continue;
            if (stack.block().area > most) {
                most = stack.block().area;
                one = stack;
                two = null;
            }
            long after = rest - stack.block().width;
            int j = Math.min(i + 1, under(after));
            spent += 8;
            if (j == 0) continue;
            use(stack.types(), -1);
            for (int looked = 0; j > 0 && looked < 3; j--) {
                Stack other = near[j - 1];
                if (!there(other.types())) continue;
                looked++;
                if (stack.block().area + other.block().area > most) {
                    most = stack.block().area + other.block().area;
                    one = stack;
                    two = other;
                }
            }
            use(stack.types(), 1);
        }
        if (one != null) note(area + most, one, two);
    }

    private void note(long area, Stack one, Stack two) {
        if (area <= bestArea) return;
        bestArea = area;
        best = new ArrayList<>(taken);
        if (one != null) best.add(one);
        if (two != null) best.add(two);
    }

    /** How many are no wider. */
    private int under(long rest) {
        int low = 0;
        int high = nears;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (near[middle].block().width <= rest) low = middle + 1;
            else high = middle;
        }
        return low;
    }
}
