package lapyard.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Bands of pieces of one height, each filled so that hardly any of its width is left: the longest piece that is left and
 * those others that leave least beside it, looked for among all within a number of tries.
 *
 * @see "Fleszar and Hindi, New heuristics for one-dimensional bin-packing, Computers and Operations Research 29 (2002),
 *     for filling one bin at a time round a piece that must be in it"
 */
final class FullLanes {
    /** What a full lane may leave of its width. */
    private static final double MOST_LEFT = 0.01;
    private static final int TRIES = 4_000;
    private static final int OPERATIONS_A_TRY = 20;

    private final RollJob job;
    private final long width;
    private final RollBudget work;
    private final int[] left;

    // the lane being sought
    private final List<Block> loose = new ArrayList<>();
    private final List<Block> taken = new ArrayList<>();
    private List<Block> best;
    private long least;
    private int tries;

    FullLanes(RollJob job, long width, RollBudget work) {
        this.job = job;
        this.width = width;
        this.work = work;
        left = new int[job.types.length];
        for (int t = 0; t < left.length; t++) left[t] = job.types[t].count();
    }

    /** @param leftOver takes the pieces that no full lane holds */
    List<Block> bands(List<Block> leftOver) {
        List<Block> bands = new ArrayList<>();
        for (long height : heights()) for (Block lane = lane(height); lane != null; lane = lane(height)) bands.add(lane);
        for (int t = 0; t < left.length; t++) for (int i = 0; i < left[t]; i++) leftOver.add(piece(t));
        return bands;
    }

    private Block piece(int type) {
        return Block.piece(type, job.types[type].width(), job.types[type].height());
    }

    /** Sides of pieces, those that most pieces have first. */
    private List<Long> heights() {
        Map<Long, Integer> pieces = new TreeMap<>();
        for (RollJob.Type type : job.types) {
            pieces.merge(type.height(), type.count(), Integer::sum);
            if (job.turn && type.width() != type.height()) pieces.merge(type.width(), type.count(), Integer::sum);
        }
        return pieces.keySet().stream().sorted(Comparator.comparing(height -> -pieces.get(height))).toList();
    }

    /** Null where none is full, or the work ran out. */
    private Block lane(long height) {
        loose.clear();
        for (int t = 0; t < left.length && !work.over(); t++) {
            Block block = piece(t);
            if (block.height != height && job.turn) block = block.turn();
            for (int i = 0; i < left[t] && block.height == height && block.width <= width; i++) loose.add(block);
        }
        if (loose.isEmpty()) return null;
        loose.sort(Comparator.comparingLong(block -> -block.width));
        best = null;
        least = (long) (MOST_LEFT * width) + 1;
        tries = TRIES;
        taken.clear();
        taken.add(loose.get(0));
        fill(1, width - loose.get(0).width);
        work.spend((long) OPERATIONS_A_TRY * (TRIES - tries));
        if (best == null) return null;
        Block lane = null;
        for (Block block : best) {
            left[block.type]--;
            lane = lane == null ? block : Block.beside(lane, block);
        }
        return lane;
    }

    /** Notes what is taken where it leaves less than any before, and takes one more from here on, each in turn. */
    private void fill(int from, long rest) {
        if (rest < least) {
            least = rest;
            best = new ArrayList<>(taken);
        }
        for (int i = from; i < loose.size() && least > 0 && --tries > 0; i++) {
            Block block = loose.get(i);
            if (block.width > rest || i > from && block.width == loose.get(i - 1).width) continue;
            taken.add(block);
            fill(i + 1, rest - block.width);
            taken.remove(taken.size() - 1);
        }
    }
}
