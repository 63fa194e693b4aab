package lapyard.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Bottom-left fill: pieces in a fixed order, each at the least running distance it fits at, then as far left as it
 * goes there; gaps left behind earlier are filled too.
 *
 * @see "Chazelle, The bottom-left bin-packing heuristic: an efficient implementation, IEEE Transactions on Computers
 *     32 (1983)"
 */
final class BottomLeft {
    private BottomLeft() {}

    enum Order {
        HEIGHT(Comparator.comparingLong((Block b) -> -b.height).thenComparingLong(b -> -b.width)),
        WIDTH(Comparator.comparingLong((Block b) -> -b.width).thenComparingLong(b -> -b.height)),
        AREA(Comparator.comparingLong((Block b) -> -b.area).thenComparingLong(b -> -b.height));

        final Comparator<Block> blocks;

        Order(Comparator<Block> blocks) {
            this.blocks = blocks;
        }
    }

    /** @return the run; null where a piece is wider than the roll as it lies, or the work ran out */
    static Layout.Run run(RollJob job, RollJob.Roll roll, Order order, Shelves.Lie lie, RollBudget work) {
        List<Block> pieces = new ArrayList<>();
        for (int t = 0; t < job.types.length; t++) {
            Block piece = Shelves.lie(job, t, roll.width(), roll.longest(), lie);
            if (piece == null) return null;
            for (int i = 0; i < job.types[t].count(); i++) pieces.add(piece);
        }
        pieces.sort(order.blocks);
        List<Block.Laid> laid = new ArrayList<>();
        long used = 0;
        for (Block piece : pieces) {
            Block.Laid spot = lowest(piece, roll.width(), laid);
            long n = laid.size() + 1L;
            work.spend(n * n / 4);
            if (work.over()) return null;
            laid.add(spot);
            used = Math.max(used, spot.y() + spot.height());
        }
        return used <= roll.longest() ? new Layout.Run(roll, used, laid) : null;
    }

    /** A lowest spot touches the near end or the far side of a piece, and on its left the edge or a piece. */
    private static Block.Laid lowest(Block piece, long width, List<Block.Laid> laid) {
        Block.Laid best = null;
        for (int i = -1; i < laid.size(); i++) {
            long x = i < 0 ? 0 : laid.get(i).x() + laid.get(i).width();
            if (x + piece.width > width) continue;
            long y = leastY(piece, x, laid);
            if (best == null || y < best.y() || y == best.y() && x < best.x())
                best = new Block.Laid(piece.type, x, y, piece.width, piece.height);
        }
        return best;
    }

    private static long leastY(Block piece, long x, List<Block.Laid> laid) {
        List<Block.Laid> over = new ArrayList<>();
        for (Block.Laid other : laid) if (other.x() < x + piece.width && x < other.x() + other.width()) over.add(other);
        over.sort(Comparator.comparingLong(Block.Laid::y));
        long y = 0;
        for (Block.Laid other : over) {
            if (other.y() >= y + piece.height) break;
            y = Math.max(y, other.y() + other.height());
        }
        return y;
    }
}
