package lapyard.job;

import java.util.List;
import java.util.Optional;
import lapyard.construction.Nest;
import lapyard.construction.Piece;

/**
 * What is cut square off a board: one piece by its long point, or a nest of them.
 *
 * @param showing faces of its board that will be seen
 */
record Blank(String mark, double lengthMm, int stage, List<Piece> pieces, Optional<Nest> nest, int showing) {
    static Blank of(Piece piece, int stage) {
        return new Blank(piece.mark(), piece.lengthMm(), stage, List.of(piece), Optional.empty(), piece.seen() ? 1 : 0);
    }

    static Blank of(Nest nest, int stage) {
        return new Blank(nest.mark(), nest.lengthMm(), stage, nest.pieces(), Optional.of(nest), nest.goodFaces());
    }

    /** A nest that is cut already: whoever cut it found both faces good. */
    static Blank sawn(Nest nest, int stage) {
        return new Blank(nest.mark(), nest.lengthMm(), stage, nest.pieces(), Optional.of(nest), Math.min(1, nest.goodFaces()));
    }

    /** @param graded whether some boards have no good face */
    int goodFaces(boolean graded) {
        return showing > 1 || graded ? showing : 0;
    }

    /** What of the board goes into this piece of it, its kerfs left out; in proportion to the pieces' means. */
    double takesMm(Piece piece, double kerfMm) {
        double all = lengthMm - (pieces.size() - 1) * kerfMm;
        return pieces.size() == 1 ? all : all * piece.meanMm() / pieces.stream().mapToDouble(Piece::meanMm).sum();
    }
}
