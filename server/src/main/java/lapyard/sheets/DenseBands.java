package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Bands with hardly any waste, for many pieces: pieces stacked to blocks of nearly one width, and blocks of nearly one
 * height beside each other until the roll is full. Of many pieces there are always some that match; the band is sought
 * among all of them and not, as a {@link CutTable} must, among a few. What matches nothing is left.
 */
final class DenseBands {
    /** The most that a block may leave uncovered, and by which the heights in a band may differ. */
    private static final double LOOSE = 0.012;
    private static final int MOST_BLOCKS = 30_000;
    private static final int TRIES_A_BAND = 60;
    private static final int BRANCHES = 10;
    private static final int NODES_A_TRY = 400;
    private static final int MOST_BESIDE = 7;
    private static final double GOOD = 0.995;

    /** Blocks and the pieces in them, each type as often as it is in there. */
    private record Stack(Block block, int[] types) {}

    private final RollJob job;
    private final long width;
    private final RollBudget work;
    private final SplittableRandom random;
    private final int[] left;
    /** By height, then by width. */
    private final List<Stack> stacks = new ArrayList<>();
    private final List<List<Stack>> withType = new ArrayList<>();
    private final double least;

    // the band being sought
    private final Stack[] taken = new Stack[MOST_BESIDE];
    private Stack[] best;
    private long bestArea;
    private long bandHeight;
    private int nodes;

    /**
     * @param pieces how many of each type there are
     * @param least  share of a band that its pieces cover
     */
    DenseBands(RollJob job, long width, int[] pieces, double least, long seed, RollBudget work) {
        this.job = job;
        this.width = width;
        this.least = least;
        this.work = work;
        this.random = new SplittableRandom(seed);
        left = pieces.clone();
        build();
    }

    private void build() {
        List<Stack> singles = new ArrayList<>();
        for (int t = 0; t < left.length; t++) {
            if (left[t] == 0) continue;
            Block block = Block.piece(t, job.types[t].width(), job.types[t].height());
            singles.add(new Stack(block, new int[] {t}));
            if (job.turn && block.width != block.height) singles.add(new Stack(block.turn(), new int[] {t}));
        }
        singles.removeIf(stack -> stack.block().width > width);
        singles.sort(Comparator.comparingLong(stack -> stack.block().width));
        List<Stack> pairs = new ArrayList<>();
        stack(singles, singles, pairs);
        List<Stack> all = new ArrayList<>(pairs);
        if (job.turn) for (Stack pair : pairs) if (pair.block().height <= width) all.add(new Stack(pair.block().turn(), pair.types()));
        all.sort(Comparator.comparingLong(stack -> stack.block().width));
        List<Stack> threes = new ArrayList<>();
        stack(singles, all, threes);
        stacks.addAll(singles);
        stacks.addAll(pairs);
        stacks.addAll(threes);
        stacks.sort(Comparator.<Stack>comparingLong(stack -> stack.block().height).thenComparingLong(stack -> stack.block().width));
        for (int t = 0; t < left.length; t++) withType.add(new ArrayList<>());
        for (Stack stack : stacks) Arrays.stream(stack.types()).distinct().forEach(t -> withType.get(t).add(stack));
        work.spend(30L * stacks.size());
    }

    /** Every single with every block that is nearly as wide. Both lists by width. */
    private void stack(List<Stack> singles, List<Stack> others, List<Stack> into) {
        int from = 0;
        for (int i = 0; i < singles.size(); i++) {
            Stack one = singles.get(i);
            long w = one.block().width;
            while (from < others.size() && others.get(from).block().width < w * (1 - 2 * LOOSE)) from++;
            for (int j = singles == others ? i : from; j < others.size() && others.get(j).block().width <= w * (1 + 2 * LOOSE); j++) {
                if (into.size() >= MOST_BLOCKS) return;
                Stack other = others.get(j);
                Block block = Block.after(one.block(), other.block());
                if (block.width > width || block.area < block.width * block.height * (1 - LOOSE)) continue;
                int[] types = Arrays.copyOf(one.types(), one.types().length + other.types().length);
                System.arraycopy(other.types(), 0, types, one.types().length, other.types().length);
                if (there(types)) into.add(new Stack(block, types));
            }
        }
        work.spend(10L * into.size());
    }

    /** Whether there are as many pieces of each type. */
    private boolean there(int[] types) {
        boolean there = true;
        for (int t : types) there &= --left[t] >= 0;
        for (int t : types) left[t]++;
        return there;
    }

    /** @param leftOver takes the pieces that no dense band holds */
    List<Block> bands(List<Block> leftOver) {
        List<Block> bands = new ArrayList<>();
        Integer[] order = new Integer[left.length];
        for (int t = 0; t < order.length; t++) order[t] = t;
        double[] weight = new double[left.length];
        for (int t = 0; t < order.length; t++) weight[t] = job.types[t].area() * (0.7 + 0.6 * random.nextDouble());
        Arrays.sort(order, Comparator.comparingDouble(t -> -weight[t]));
        for (int t : order) {
            while (left[t] > 0 && !work.over()) {
                Block band = band(t);
                if (band == null) break;
                bands.add(band);
            }
        }
        for (int t = 0; t < left.length; t++)
            for (int i = 0; i < left[t]; i++) leftOver.add(Block.piece(t, job.types[t].width(), job.types[t].height()));
        return bands;
    }

    /** The densest band found with a piece of this type; null where none is dense enough. */
    private Block band(int type) {
        List<Stack> anchors = withType.get(type);
        double densest = least;
        Stack[] chosen = null;
        int tries = Math.min(TRIES_A_BAND, anchors.size());
        int first = anchors.size() > tries ? random.nextInt(anchors.size()) : 0;
        for (int i = 0; i < tries && densest < GOOD && !work.over(); i++) {
            Stack anchor = anchors.get((int) ((first + (long) i * anchors.size() / tries) % anchors.size()));
            if (!there(anchor.types())) continue;
            bandHeight = anchor.block().height;
            best = null;
            bestArea = (long) (densest * width * bandHeight);
            nodes = NODES_A_TRY;
            List<Stack> near = near(bandHeight);
            use(anchor.types(), -1);
            taken[0] = anchor;
            fill(near, 1, width - anchor.block().width, anchor.block().area);
            use(anchor.types(), 1);
            work.spend(12L * (NODES_A_TRY - nodes) + 4L * near.size());
            if (best != null) {
                densest = (double) bestArea / width / bandHeight;
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

    /** What is nearly so high and still there, by width. */
    private List<Stack> near(long height) {
        List<Stack> near = new ArrayList<>();
        for (int i = at((long) Math.ceil(height * (1 - LOOSE))); i < stacks.size() && stacks.get(i).block().height <= height; i++)
            if (there(stacks.get(i).types())) near.add(stacks.get(i));
        near.sort(Comparator.comparingLong(stack -> stack.block().width));
        return near;
    }

    /** The first stack that is at least so high. */
    private int at(long height) {
        int low = 0;
        int high = stacks.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (stacks.get(middle).block().height < height) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    private void fill(List<Stack> near, int depth, long rest, long area) {
        if (nodes-- <= 0) return;
        if (area > bestArea) {
            bestArea = area;
            best = Arrays.copyOf(taken, depth);
        }
        if (depth == MOST_BESIDE || near.isEmpty() || near.get(0).block().width > rest) return;
        // no fill of the rest can better what was found
        if (area + rest * bandHeight <= bestArea) return;
        int end = under(near, rest);
        // the widest that still fit end the band
        int looked = 0;
        for (int i = end - 1; i >= 0 && looked < 4; i--) {
            Stack stack = near.get(i);
            if (area + stack.block().width * bandHeight <= bestArea) break;
            if (!there(stack.types())) continue;
            looked++;
            take(near, stack, depth, rest, area);
        }
        for (int branch = 0; branch < BRANCHES && nodes > 0; branch++) {
            Stack stack = near.get(random.nextInt(end));
            if (there(stack.types())) take(near, stack, depth, rest, area);
        }
    }

    private void take(List<Stack> near, Stack stack, int depth, long rest, long area) {
        taken[depth] = stack;
        use(stack.types(), -1);
        fill(near, depth + 1, rest - stack.block().width, area + stack.block().area);
        use(stack.types(), 1);
    }

    /** How many are no wider. */
    private static int under(List<Stack> near, long rest) {
        int low = 0;
        int high = near.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (near.get(middle).block().width <= rest) low = middle + 1;
            else high = middle;
        }
        return low;
    }
}
