package lapyard.job;

import java.util.List;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.construction.LinerPiece;
import lapyard.construction.Piece;
import lapyard.plan.Bed;

/**
 * One way to build a bed, as far as it decides what is bought: many are compared at once, and a whole work takes ten times as
 * much memory.
 *
 * @param goods amounts of what is sold in packs, by item; empty where nobody compares
 */
record BedWay(Bed bed, List<Piece> pieces, List<LinerPiece> liner, Map<String, Double> goods) {
    /** Without its goods. */
    static BedWay of(BedWork work) {
        return new BedWay(work.bed(), work.pieces(), work.liner(), Map.of());
    }

    BedWay with(Map<String, Double> amounts) {
        return new BedWay(bed, pieces, liner, amounts);
    }

    /** The same with pieces that another way has too. */
    BedWay with(List<Piece> equal) {
        return new BedWay(bed, equal, liner, goods);
    }

    boolean buysAs(BedWay other) {
        return pieces.equals(other.pieces) && liner.equals(other.liner);
    }
}
