package lapyard.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * First-fit decreasing height: pieces from high to low, each on the first shelf across the roll that has room.
 *
 * @see "Coffman, Garey, Johnson and Tarjan, Performance bounds for level-oriented two-dimensional packing
 *     algorithms, SIAM Journal on Computing 9 (1980)"
 */
final class Shelves {
    private Shelves() {}

    /** How a piece that may be turned is laid, before the shelves are filled. */
    enum Lie {
        AS_GIVEN,
        LOW,
        HIGH
    }

    /**
     * @param width   of the roll
     * @param longest no shelf is higher than this
     * @return full-width bands, high ones first; null where a piece fits no shelf
     */
    static List<Block> bands(RollJob job, int[] counts, long width, long longest, Lie lie) {
        List<Block> pieces = new ArrayList<>();
        for (int t = 0; t < counts.length; t++) {
            if (counts[t] == 0) continue;
            Block piece = lie(job, t, width, longest, lie);
            if (piece == null) return null;
            for (int i = 0; i < counts[t]; i++) pieces.add(piece);
        }
        pieces.sort(Comparator.comparingLong((Block p) -> -p.height).thenComparingLong(p -> -p.width));
        List<Block> shelves = new ArrayList<>();
        for (Block piece : pieces) {
            int at = 0;
            while (at < shelves.size() && shelves.get(at).width + piece.width > width) at++;
            if (at == shelves.size()) shelves.add(piece);
            else shelves.set(at, Block.beside(shelves.get(at), piece));
        }
        return shelves;
    }

    /** @return the piece as it is laid; null where it does not fit the roll */
    static Block lie(RollJob job, int t, long width, long longest, Lie lie) {
        RollJob.Type type = job.types[t];
        Block given = Block.piece(t, type.width(), type.height());
        boolean asGiven = given.width <= width && given.height <= longest;
        if (!job.turn) return asGiven ? given : null;
        boolean turned = given.height <= width && given.width <= longest;
        if (!asGiven) return turned ? given.turn() : null;
        // with turning allowed a type is stored with its long side across, that is, low
        return lie == Lie.HIGH && turned ? given.turn() : given;
    }
}
